package route

import (
	"fmt"
	"maps"
	"slices"

	"topplate/plan/conduit"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
	"topplate/route/tree"
)

// A second hole beside the first, where one would be too large, is a step in
// the price, and so is a place that is full. The search for the cheapest plan
// sees these steps for plans whose bundles stay together. The bound for all plans
// is mended where most cables meet, on their way out of the closet, and then by
// looking at every place that can be full, see partedBound.

// bore is what one hole of arc a costs to bore.
func (a *Arc) bore() int64 {
	var n int64
	for _, c := range a.Charges {
		if slices.Contains(price.Bores, c.Term) && !c.PerCable {
			n += c.Amount
		}
	}
	return n
}

// steps are the prices that rise in steps, for terminals in the order of their
// tags: holes beyond the first at a place, and places that are fuller than
// they can be.
func (g *Graph) steps(book rule.Book) *tree.Steps {
	order := tagOrder(g.Job)
	known := map[string]int64{}
	s := &tree.Steps{}
	for a := range g.Arcs {
		if g.stepped(a) {
			s.Arcs = append(s.Arcs, int32(a))
		}
	}
	s.More = func(a int32, terms []int32) int64 {
		drops := make([]int, len(terms))
		for i, t := range terms {
			drops[i] = order[t]
		}
		key := g.stepKey(int(a), drops)
		more, ok := known[key]
		if !ok {
			more = g.more(book, int(a), drops)
			known[key] = more
		}
		return more
	}
	return s
}

// stepKey is the same for arcs and drops that surely have the same step.
func (g *Graph) stepKey(a int, drops []int) string {
	key := fmt.Append(nil, g.stepPlace(a), " ")
	count := map[string]int{}
	for _, d := range drops {
		count[g.Job.Drops[d].Cable.ID] += g.Job.Drops[d].Count
	}
	for _, name := range slices.Sorted(maps.Keys(count)) {
		key = fmt.Append(key, name, count[name])
	}
	return string(key)
}

// stepPlace is the same for arcs that surely have the same steps.
func (g *Graph) stepPlace(a int) string {
	arc := &g.Arcs[a]
	key := fmt.Append(nil, arc.bore(), " ", arc.Capacity)
	if arc.Hole >= 0 {
		p := &g.Holes[arc.Hole]
		key = fmt.Append(key, " ", p.Kind, p.Wall, " ", p.MemberWidth, " ", p.Free)
	}
	if arc.Through != nil {
		key = fmt.Append(key, " in ", arc.Through.ID)
	}
	if arc.Chase != nil {
		key = fmt.Append(key, " up ", arc.Chase.ID)
	}
	return string(key)
}

// more is what some drops' cables cost on arc a beyond its fixed price.
func (g *Graph) more(book rule.Book, a int, drops []int) int64 {
	return g.moreFor(book, a, diameters(g.Job, drops))
}

// moreFor is the same for cables of these diameters.
func (g *Graph) moreFor(book rule.Book, a int, cables []measure.Length) int64 {
	holes, crowded := g.beyondFor(book, a, cables)
	more := holes * g.Arcs[a].bore()
	if crowded {
		more += g.crowded
	}
	return more
}

// beyond is how many holes beyond the first some drops' cables need on arc a,
// and whether they are more than it takes.
func (g *Graph) beyond(book rule.Book, a int, drops []int) (holes int64, crowded bool) {
	return g.beyondFor(book, a, diameters(g.Job, drops))
}

// beyondFor is the same for cables of these diameters.
func (g *Graph) beyondFor(book rule.Book, a int, cables []measure.Length) (holes int64, crowded bool) {
	arc := &g.Arcs[a]
	switch {
	case arc.Chase != nil:
		return 0, overfilled(book, arc.Chase, cables)
	case arc.Through != nil:
		return 0, !conduit.Fits(arc.Through.Inside, slices.Concat(arc.Through.Holds, cables))
	case arc.Hole < 0:
		return 0, arc.Capacity > 0 && len(cables) > arc.Capacity
	}
	p := &g.Holes[arc.Hole]
	f := newFitting(g.Job.Tools.Bits, book, g.largestHole(book, p), cables)
	return int64(max(1, f.holes) - 1), !f.everythingIn || f.width > p.Free
}

// cheapestPlan finds the cheapest plan for the terminals, holes beyond the
// first counted, and a bound that no plan is below. The first search leaves
// steps in prices out; if the plan it finds pays none, that is the end of it.
func (g *Graph) cheapestPlan(book rule.Book, terms []tree.Terminal) (tree.Plan, error) {
	steps := g.steps(book)
	best, err := g.solveTree(g.Net, terms, steps, tree.Options{Work: g.share(work)})
	if err != nil {
		return best, err
	}
	if best.Together = best.LowerBound; best.LowerBound < best.Cost {
		if err := g.countSteps(book, terms, steps, &best); err != nil {
			return best, err
		}
		if err := g.partedBound(book, g.gates(book, best.Paths), terms, steps, &best); err != nil {
			return best, err
		}
	}
	if err := g.shorten(book, terms, steps, &best); err != nil {
		return best, err
	}
	best.LowerBound = min(best.LowerBound, best.Cost)
	best.Together = max(min(best.Together, best.Cost), best.LowerBound)
	best.Proved = best.LowerBound == best.Cost
	return best, nil
}

// countSteps improves a plan, and what is known of the best, with all steps in
// prices counted. It tries the quick ways first. For many drops it searches only
// once.
func (g *Graph) countSteps(book rule.Book, terms []tree.Terminal, steps *tree.Steps, best *tree.Plan) error {
	gates := g.gates(book, best.Paths)
	if err := g.mendBound(gates, terms, steps, best); err != nil || best.LowerBound >= best.Cost {
		return err
	}
	net, shared, err := g.shareHoles(gates, steps)
	if err != nil {
		return err
	}
	quick := tree.Options{Steps: shared, Work: trialWork}
	if g.many() {
		quick.Work = g.share(work)
		return g.together(net, terms, steps, quick, best)
	}
	if err := g.together(net, terms, steps, quick, best); err != nil || best.Together >= best.Cost {
		return err
	}
	for i := range gates {
		if err := g.oneByOne(book, &gates[i], terms, steps, best); err != nil {
			return err
		}
	}
	return g.together(net, terms, steps, tree.Options{Steps: shared, Work: stepWork}, best)
}

// together looks for a plan that is cheaper with all steps in prices counted,
// among those whose bundles stay together.
func (g *Graph) together(net *network.Network, terms []tree.Terminal, steps *tree.Steps, opt tree.Options, best *tree.Plan) error {
	opt.Below = best.Cost
	p, err := g.solveTree(net, terms, steps, opt)
	if err != nil {
		return err
	}
	best.Together = max(best.Together, p.Together)
	if p.Cost < best.Cost {
		best.Paths, best.Cost = p.Paths, p.Cost
	}
	return nil
}

// shareHoles changes how holes at gates are paid, but not what they come to:
// every cable pays its share of a full hole, and the step only what that
// leaves. So a search sees early what these holes will cost.
func (g *Graph) shareHoles(gates []gate, steps *tree.Steps) (*network.Network, *tree.Steps, error) {
	arcs, order := plainArcs(g.Arcs), tagOrder(g.Job)
	bore, share := make([]int64, len(arcs)), make([]int64, len(arcs))
	for _, c := range gates {
		for _, a := range c.exits {
			bore[a] = g.Arcs[a].bore()
			share[a] = bore[a] / int64(c.most)
			arcs[a].Fixed -= bore[a]
			arcs[a].PerCable += share[a]
		}
	}
	shared := &tree.Steps{Arcs: steps.Arcs, More: func(a int32, t []int32) int64 {
		more := steps.More(a, t) + bore[a]
		for _, i := range t {
			more -= share[a] * int64(g.Job.Drops[order[i]].Count)
		}
		return more
	}}
	net, err := network.New(len(g.Nodes), arcs, g.Bend)
	if err != nil {
		return nil, nil, fmt.Errorf("route: %w", err)
	}
	return net, shared, nil
}

// stepWork bounds each search that counts steps, trialWork each that only looks
// for a plan to begin with, as work bounds the first. partedWork bounds all those
// together for plans whose bundles part.
const (
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
func (g *Graph) solveTree(net *network.Network, terms []tree.Terminal, steps *tree.Steps, opt tree.Options) (tree.Plan, error) {
	order := tagOrder(g.Job)
	byTag := inOrder(order, terms)
	opt.Stop = g.stop
	p, err := tree.Solve(net, int32(g.Root), byTag, opt)
	if err != nil {
		return p, fmt.Errorf("route: %w", err)
	}
	p.Price(g.Net, byTag, steps)
	paths := make([]tree.Path, len(terms))
	for i, d := range order {
		paths[d] = p.Paths[i]
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

// reprice adds up a plan whose paths were changed.
func (g *Graph) reprice(terms []tree.Terminal, steps *tree.Steps, p *tree.Plan) {
	order := tagOrder(g.Job)
	byTag := tree.Plan{Paths: inOrder(order, p.Paths)}
	byTag.Price(g.Net, inOrder(order, terms), steps)
	p.Cost = byTag.Cost
}
