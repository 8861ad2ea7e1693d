package route

import (
	"fmt"
	"math"
	"slices"

	"topplate/plan/rule"
	"topplate/route/network"
	"topplate/route/tree"
)

// cheapestPlan finds the cheapest plan for the terminals, holes beyond the
// first counted, and a bound that no plan is below. It takes the quick ways first,
// and ends as soon as the plan costs what the bound is.
func (g *Graph) cheapestPlan(book rule.Book, terms []tree.Terminal) (tree.Plan, error) {
	o, err := g.newOutlook(book, terms)
	if err != nil {
		return tree.Plan{}, err
	}
	return o.cheapest()
}

// cheapest finds it.
func (o *outlook) cheapest() (tree.Plan, error) {
	best, err := o.first()
	if err != nil {
		return best, err
	}
	for _, look := range []func(*tree.Plan) error{o.keepOff, o.narrow, o.mend, o.tollsNow, o.lookAgain, o.countSteps, o.narrow, o.partedBound} {
		if best.LowerBound >= best.Cost {
			break
		}
		o.found = best.Paths
		if err := look(&best); err != nil {
			return best, err
		}
	}
	if err := o.shorten(o.book, o.terms, o.steps, &best); err != nil {
		return best, err
	}
	best.LowerBound = min(best.LowerBound, best.Cost)
	best.Together = max(min(best.Together, best.Cost), best.LowerBound)
	best.Proved = best.LowerBound == best.Cost
	return best, nil
}

// first is a plan to begin with, and a bound. The search leaves steps in prices out: if
// the plan pays none, that is the end of it as a rule. Where several holes are needed
// somewhere it won't be, so these are paid for beforehand.
func (o *outlook) first() (tree.Plan, error) {
	best := tree.Plan{Cost: math.MaxInt64}
	if len(o.gates) > 0 && !o.many() {
		err := o.mendBound(&best)
		best.Together = best.LowerBound
		return best, err
	}
	best, err := o.solveTree(o.Net, tree.Options{Work: o.share(work)})
	if err != nil {
		return best, err
	}
	best.Together = best.LowerBound
	if o.many() {
		err = o.mendBound(&best)
	}
	return best, err
}

// An outlook is what is known while the cheapest plan is searched for.
type outlook struct {
	*Graph
	book    rule.Book
	terms   []tree.Terminal // in the order of drops
	steps   *tree.Steps
	gates   []gate
	taken   map[int]int64 // by arc, see takes
	prepaid []*prepayment
	// reached tells which drops have a way to the closet.
	reached []bool

	found     []tree.Path // of the best plan so far, in the order of drops; nil if there is none
	open      *tree.Open  // what a plan may travel that is cheaper than the best; nil if everything
	openBelow int64       // price for which that was found
}

func (g *Graph) newOutlook(book rule.Book, terms []tree.Terminal) (*outlook, error) {
	o := &outlook{Graph: g, book: book, terms: terms, steps: g.steps(book), taken: map[int]int64{}, reached: tree.Reached(g.Net, int32(g.Root), terms)}
	o.gates = g.gates(book, o.reached)
	if err := o.prepay(); err != nil {
		return nil, err
	}
	return o, nil
}

// mend improves the best plan by a few paths at a time, which takes little once little
// is left to travel.
func (o *outlook) mend(best *tree.Plan) error {
	if o.many() {
		return nil
	}
	return o.improve(best.Paths, mendPaths, best)
}

// mendPaths is how many paths are laid anew at a time.
const mendPaths = 3

// known is the best plan so far in the order of tags.
func (o *outlook) known() []tree.Path {
	if o.found == nil {
		return nil
	}
	return inOrder(tagOrder(o.Job), o.found)
}

// keepOff looks for a plan without full places, where the first has some: it puts
// their price on those before it searches again.
func (o *outlook) keepOff(best *tree.Plan) error {
	arcs, last := plainArcs(o.Arcs), *best
	for range fewTries {
		full := o.crowdedIn(last.Paths)
		if len(full) == 0 || o.many() {
			return nil
		}
		for _, a := range full {
			arcs[a].Fixed = dearer(arcs[a].Fixed, o.crowded)
		}
		net, err := o.Net.Reprice(arcs)
		if err != nil {
			return fmt.Errorf("route: %w", err)
		}
		if last, err = o.solveTree(net, tree.Options{Work: firstWork}); err != nil {
			return err
		}
		if last.Cost < best.Cost {
			best.Paths, best.Cost = last.Paths, last.Cost
		}
	}
	return nil
}

// dearer is a price with more on it, as far as prices go.
func dearer(price, more int64) int64 { return price + min(more, network.MaxPrice-price) }

// crowdedIn lists the arcs that take less than paths ask of them.
func (o *outlook) crowdedIn(paths []tree.Path) (out []int) {
	users := map[int][]int{}
	for d := range paths {
		for _, a := range paths[d].Arcs {
			if o.stepped(int(a)) {
				users[int(a)] = append(users[int(a)], d)
			}
		}
	}
	for a, drops := range users {
		if _, crowded := o.beyond(o.book, a, drops); crowded {
			out = append(out, a)
		}
	}
	slices.Sort(out)
	return out
}

// fewTries is how often it is tried.
const fewTries = 3

// lookAgain searches once more for a plan that pays no steps, if the best is one.
// Where cables can't travel an arc in opposite ways any more, nothing has to be
// allowed for that.
func (o *outlook) lookAgain(best *tree.Plan) error {
	if o.open == nil || len(o.gates) > 0 || o.paidSteps(o.steps, o.terms, best) > 0 {
		return nil
	}
	p, err := o.solveTree(o.Net, tree.Options{Below: best.Cost, Work: trialWork})
	if err != nil {
		return err
	}
	best.LowerBound = max(best.LowerBound, min(p.LowerBound, best.Cost))
	best.Together = best.LowerBound
	return nil
}

// countSteps improves a plan, and what is known of the best, with all steps in
// prices counted. It tries the quick ways first. For many drops it searches only
// once.
func (o *outlook) countSteps(best *tree.Plan) error {
	net, shared, err := o.shareHoles(o.gates, o.steps)
	if err != nil {
		return err
	}
	var last struct { // search
		below, work int64
		open        *tree.Open
	}
	together := func(work int64) func(*tree.Plan) error {
		return func(best *tree.Plan) error {
			if last.below == best.Cost && last.work >= work && last.open == o.open {
				return nil // nothing is new
			}
			last.below, last.work, last.open = best.Cost, work, o.open
			return o.together(net, tree.Options{Steps: shared, Ahead: o.ahead(o.gates), Work: work}, best)
		}
	}
	if o.many() {
		return together(o.share(work))(best)
	}
	for _, look := range []func(*tree.Plan) error{o.narrow, together(firstWork), o.narrow, o.oneByOne, o.narrow, together(stepWork), o.narrow, together(stepWork)} {
		o.found = best.Paths
		if err := look(best); err != nil {
			return err
		}
		if best.Together >= best.Cost || best.LowerBound >= best.Cost {
			break
		}
	}
	return nil
}

// together looks for a plan that is cheaper with all steps in prices counted,
// among those whose bundles stay together.
func (o *outlook) together(net *network.Network, opt tree.Options, best *tree.Plan) error {
	opt.Below = best.Cost
	p, err := o.solveTree(net, opt)
	if err != nil {
		return err
	}
	best.Together = max(best.Together, p.Together)
	if p.Cost < best.Cost {
		best.Paths, best.Cost = p.Paths, p.Cost
	}
	return nil
}

// stepWork bounds each search that counts steps, firstWork the first of them, and
// trialWork each that only looks for a plan to go on with, as work bounds the first
// of all. partedWork bounds all those
// together for plans whose bundles part.
const (
	firstWork  = work / 60
	stepWork   = work / 8
	trialWork  = work / 100
	partedWork = work / 4
)

// manyDrops is for how many drops a plan is as a rule not proved cheapest,
// however long the search goes on. Beyond, the searches of a job share the work
// that one has for few drops, since each of them takes long.
const (
	manyDrops = 64
	sharedBy  = 8
)

func (g *Graph) many() bool { return len(g.Job.Drops) > manyDrops }

// share is how much of the work for few drops a search of this job has.
func (g *Graph) share(work int64) int64 {
	if g.many() {
		return work / sharedBy
	}
	return work
}

// solveTree plans the terminals, which are in the order of the job's drops. The
// search sees them in the order of their tags, so that of two plans that cost
// the same the order of the file does not choose.
//
// The network has the arcs of the graph, maybe at other prices. The plan is the
// best for these; its cost is at the prices of the graph, steps counted.
func (o *outlook) solveTree(net *network.Network, opt tree.Options) (tree.Plan, error) {
	order := tagOrder(o.Job)
	byTag := inOrder(order, o.terms)
	opt.Stop, opt.Open, opt.Known = o.stop, o.open, o.known()
	p, err := tree.Solve(net, int32(o.Root), byTag, opt)
	if err != nil {
		return p, fmt.Errorf("route: %w", err)
	}
	p.Price(o.Net, byTag, o.steps)
	paths := make([]tree.Path, len(order))
	for i, d := range order {
		if paths[d] = p.Paths[i]; len(p.Paths[i].Nodes) == 0 && o.reached[d] {
			p.Cost = math.MaxInt64 // no plan at all
		}
	}
	p.Paths = paths
	return p, nil
}

func inOrder[T any](order []int, of []T) []T {
	out := make([]T, len(of))
	for i, d := range order {
		out[i] = of[d]
	}
	return out
}

// paidSteps is what a plan pays for steps.
func (g *Graph) paidSteps(steps *tree.Steps, terms []tree.Terminal, p *tree.Plan) int64 {
	byTag := tree.Plan{Paths: inOrder(tagOrder(g.Job), p.Paths)}
	byTag.Price(g.Net, inOrder(tagOrder(g.Job), terms), nil)
	return p.Cost - byTag.Cost
}

// reprice adds up a plan whose paths were changed.
func (g *Graph) reprice(terms []tree.Terminal, steps *tree.Steps, p *tree.Plan) {
	order := tagOrder(g.Job)
	byTag := tree.Plan{Paths: inOrder(order, p.Paths)}
	byTag.Price(g.Net, inOrder(order, terms), steps)
	p.Cost = byTag.Cost
}
