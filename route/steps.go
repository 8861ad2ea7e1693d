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
	net, err := g.Net.Reprice(arcs)
	if err != nil {
		return nil, nil, fmt.Errorf("route: %w", err)
	}
	return net, shared, nil
}

// ahead is, by node, what plans pay at least for holes at the closet's gate beyond
// the shares that cables have of them, as long as none has passed it; nil if
// nothing.
func (g *Graph) ahead(gates []gate) []int64 {
	if len(gates) == 0 || gates[0].inside == nil {
		return nil
	}
	c := &gates[0]
	cables := int64(0)
	for _, d := range c.drops {
		cables += int64(g.Job.Drops[d].Count)
	}
	most := int64(c.most)
	more := int64(c.need)*c.least - (c.least*cables+most-1)/most
	if more <= 0 {
		return nil
	}
	out := make([]int64, len(g.Nodes))
	for v := range out {
		if !c.inside[v] {
			out[v] = more
		}
	}
	return out
}
