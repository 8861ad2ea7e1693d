package route

import (
	"fmt"

	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
	"topplate/route/tree"
)

// A second hole beside the first, where one would be too large, is a step in
// the price that the search for the cheapest plan does not see. So plans are
// priced anew with every hole, and the bound is mended where most cables meet:
// on their way out of the closet.

// boring are the terms that are paid once for each hole.
var boring = map[price.ID]bool{
	price.BoreFromAbove: true, price.BoreFromBelow: true, price.BoreBlock: true, price.BoreStud: true, price.BoreGable: true,
}

// bore is what one hole of arc a costs to bore.
func (a *Arc) bore() int64 {
	var n int64
	for _, c := range a.Charges {
		if boring[c.Term] && !c.PerCable {
			n += c.Amount
		}
	}
	return n
}

// holesNeeded is how many holes some drops' cables need at a place.
func (g *Graph) holesNeeded(book rule.Book, place int, drops []int) int {
	p := &g.Holes[place]
	return max(1, newFitting(g.Job.Tools.Bits, book, g.largestHole(book, p), diameters(g.Job, drops)).holes)
}

// extraHoles adds up, for each arc that the paths use, what its holes beyond
// the first cost.
func (g *Graph) extraHoles(book rule.Book, paths []tree.Path) int64 {
	users := map[int][]int{}
	for d := range paths {
		for _, a := range paths[d].Arcs {
			if g.Arcs[a].Hole >= 0 && g.Arcs[a].bore() > 0 {
				users[int(a)] = append(users[int(a)], d)
			}
		}
	}
	var sum int64
	for a, drops := range users {
		sum += int64(g.holesNeeded(book, g.Arcs[a].Hole, drops)-1) * g.Arcs[a].bore()
	}
	return sum
}

// cheapestPlan finds the cheapest plan for the terminals, extra holes counted,
// and a bound that no plan is below.
//
// It takes the better of two plans: the cheapest if every place is bored once,
// and the cheapest if the holes out of the closet are paid beforehand. The
// second gives a better bound: all cables leave the closet through one of the
// places next to it, and however they are shared out they need as many holes
// as if all went through the best one.
func (g *Graph) cheapestPlan(book rule.Book, terms []tree.Terminal) (tree.Plan, error) {
	best, err := g.solveTree(g.Net, terms)
	if err != nil {
		return best, err
	}
	extra := g.extraHoles(book, best.Paths)
	best.Cost += extra
	if extra == 0 {
		return best, nil
	}
	unavoidable := g.unavoidable(book, best.Paths)
	best.LowerBound += unavoidable
	prepaid, err := g.prepaidPlan(book, terms, best.Paths)
	if err != nil || prepaid.Paths == nil {
		return best, err
	}
	bound := max(best.LowerBound, prepaid.LowerBound+unavoidable)
	if prepaid.Cost < best.Cost {
		best = prepaid
	}
	best.LowerBound = bound
	return best, nil
}

// solveTree plans the terminals, which are in the order of the job's drops. The
// search sees them in the order of their tags, so that of two plans that cost
// the same the order of the file does not choose.
func (g *Graph) solveTree(net *network.Network, terms []tree.Terminal) (tree.Plan, error) {
	order := tagOrder(g.Job)
	byTag := make([]tree.Terminal, len(terms))
	for i, d := range order {
		byTag[i] = terms[d]
	}
	p, err := tree.Solve(net, int32(g.Root), byTag, tree.Options{Work: work})
	if err != nil {
		return p, fmt.Errorf("route: %w", err)
	}
	paths := make([]tree.Path, len(terms))
	for i, d := range order {
		paths[d] = p.Paths[i]
	}
	p.Paths = paths
	return p, nil
}

// prepaidPlan is the cheapest plan if the least price of the holes out of the
// closet is paid beforehand and one hole there is free. It has no paths if the
// holes out of the closet can't be told.
func (g *Graph) prepaidPlan(book rule.Book, terms []tree.Terminal, reached []tree.Path) (tree.Plan, error) {
	exits := g.exits(g.Root)
	var drops []int
	for d := range reached {
		if len(reached[d].Nodes) > 0 {
			drops = append(drops, d)
		}
	}
	if len(exits) == 0 || len(drops) == 0 {
		return tree.Plan{}, nil
	}
	arcs := plainArcs(g.Arcs)
	least, need := g.Arcs[exits[0]].bore(), 0
	for _, a := range exits {
		least = min(least, g.Arcs[a].bore())
		n := g.holesNeeded(book, g.Arcs[a].Hole, drops)
		if need == 0 || n < need {
			need = n
		}
	}
	for _, a := range exits {
		arcs[a].Fixed -= least
	}
	net, err := network.New(len(g.Nodes), arcs, g.Bend)
	if err != nil {
		return tree.Plan{}, fmt.Errorf("route: %w", err)
	}
	p, err := g.solveTree(net, terms)
	if err != nil {
		return p, err
	}
	paid := int64(need) * least
	p.LowerBound += paid
	p.Cost += least*g.opened(exits, p.Paths) + g.extraHoles(book, p.Paths)
	return p, nil
}

// opened is how many of the arcs the paths use.
func (g *Graph) opened(arcs []int, paths []tree.Path) int64 {
	used := map[int32]bool{}
	for i := range paths {
		for _, a := range paths[i].Arcs {
			used[a] = true
		}
	}
	var n int64
	for _, a := range arcs {
		if used[int32(a)] {
			n++
		}
	}
	return n
}

// unavoidable is what holes beyond the first cost at the drops' ends at least:
// all cables of a drop go through one of the places next to it, and need as
// many holes there as if they had the best one to themselves. Of drops that
// may share such a place only the worst counts.
func (g *Graph) unavoidable(book rule.Book, paths []tree.Path) int64 {
	taken := map[int]bool{}
	for _, a := range g.exits(g.Root) {
		taken[a] = true
	}
	group := map[int]int{} // of each place, by arc
	var worst []int64
	for _, d := range tagOrder(g.Job) {
		if len(paths[d].Nodes) == 0 {
			continue
		}
		exits := g.exits(g.Terminals[d])
		extra, free := g.extraFor(book, d, exits, taken)
		if !free || extra == 0 {
			continue
		}
		k := len(worst)
		worst = append(worst, extra)
		for _, a := range exits {
			if id, ok := group[a]; ok && id != k {
				worst[k], worst[id] = max(worst[k], worst[id]), 0
				for other, at := range group {
					if at == id {
						group[other] = k
					}
				}
			}
			group[a] = k
		}
	}
	var sum int64
	for _, w := range worst {
		sum += w
	}
	return sum
}

// extraFor is the least that drop d's own cables pay for holes beyond the first
// at the exits; free is false if there are none or one is taken.
func (g *Graph) extraFor(book rule.Book, d int, exits []int, taken map[int]bool) (extra int64, free bool) {
	for i, a := range exits {
		if taken[a] {
			return 0, false
		}
		e := int64(g.holesNeeded(book, g.Arcs[a].Hole, []int{d})-1) * g.Arcs[a].bore()
		if i == 0 || e < extra {
			extra = e
		}
	}
	return extra, len(exits) > 0
}

// exits are the arcs through top plates that can be come to from a node inside
// a wall without another hole in a plate or a ceiling: every cable from there
// takes one of them. There are none if a cable may get to the attic or from the
// closet to a drop otherwise.
func (g *Graph) exits(from int) []int {
	seen := make([]bool, len(g.Nodes))
	seen[from] = true
	queue := []int{from}
	isExit := map[int]bool{}
	for len(queue) > 0 {
		v := queue[0]
		queue = queue[1:]
		for h := g.Net.First[v]; h < g.Net.First[v+1]; h++ {
			a, to := int(g.Net.ArcOf[h]), int(g.Net.Target[h])
			switch kind := g.Nodes[to].Kind; {
			case g.Arcs[a].Kind == PlateArc && g.Arcs[a].Hole >= 0:
				isExit[a] = true
			case seen[to] || kind == TerminalNode && from != g.Root:
				// Been there; and nobody passes through another drop.
			case g.Arcs[a].Kind == CeilingArc || g.Arcs[a].Kind == SoffitArc || kind == TerminalNode || kind == RootNode || kind == LowNode:
				return nil
			default:
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	var out []int
	for a := range g.Arcs {
		if isExit[a] {
			out = append(out, a)
		}
	}
	return out
}
