package route

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// An Explanation says why a drop goes the way it goes.
type Explanation struct {
	Route *Route
	// Terms add up to Total: what the drop adds to the plan, given that what
	// the others pay for anyway is there.
	Terms []TermSum
	Total int64
	// With are the drops that share a part of the route.
	With []int
	// Dearer are the best other ways that are allowed, Barred the best ones
	// that a rule keeps out; up to two of each.
	Dearer, Barred []Alternative
}

// An Alternative is another way for a drop.
type Alternative struct {
	Without string // what the way was looked for without
	// More is what it costs more than the chosen one. A barred way may cost
	// less: then More is negative.
	More   int64
	Blocks []Block // rules that keep it out
}

// ErrNoRoute is returned for a drop that has no route to explain.
var ErrNoRoute = errors.New("no allowed route; topplate check says what blocks it")

// Explain says why the drop with this tag goes the way it goes.
func Explain(res *Result, tag string) (*Explanation, error) {
	i := slices.IndexFunc(res.Routes, func(r Route) bool { return res.Job.Drops[r.Drop].Tag == tag })
	if i < 0 {
		return nil, fmt.Errorf("no drop has the tag %q", tag)
	}
	e := &Explanation{Route: &res.Routes[i]}
	if e.Route.Blocked != nil {
		return nil, fmt.Errorf("%s: %w", tag, ErrNoRoute)
	}
	e.share(res)
	if err := e.lookElsewhere(res); err != nil {
		return nil, err
	}
	return e, e.lookBeyondRules(res)
}

// share adds up what the drop pays and what others pay for it.
func (e *Explanation) share(res *Result) {
	g, r := res.Graph, e.Route
	q := int64(res.Job.Drops[r.Drop].Count)
	paid := paidByOthers(res, r.Drop)
	sums := map[price.ID]int64{}
	for _, a := range r.Arcs {
		for _, c := range g.Arcs[a].Charges {
			switch {
			case c.PerCable:
				sums[c.Term] += q * c.Amount
			case len(paid[a]) == 0:
				sums[c.Term] += c.Amount
			}
		}
		e.With = append(e.With, paid[a]...)
		g.boredFor(res.Job.Book(), a, r.Drop, paid[a], sums)
	}
	g.eachBend(*r, func(n int) { sums[bendTerm(g.Nodes[n].Kind)] += q * g.Bend[n] })
	for _, t := range price.Terms {
		if s := sums[t.ID]; s != 0 {
			e.Terms = append(e.Terms, TermSum{t.ID, s})
			e.Total += s
		}
	}
	slices.SortFunc(e.With, func(a, b int) int { return CompareTags(res.Job.Drops[a].Tag, res.Job.Drops[b].Tag) })
	e.With = slices.Compact(e.With)
}

// boredFor adds the holes beside the first that a drop makes necessary on an arc
// that others use.
func (g *Graph) boredFor(book rule.Book, a, drop int, others []int, sums map[price.ID]int64) {
	if len(others) == 0 || g.Arcs[a].Hole < 0 {
		return
	}
	before, _ := g.beyond(book, a, others)
	after, _ := g.beyond(book, a, append(slices.Clone(others), drop))
	for _, c := range g.Arcs[a].Charges {
		if !c.PerCable && slices.Contains(price.Bores, c.Term) {
			sums[c.Term] += (after - before) * c.Amount
		}
	}
}

// beside are the prices for a drop whose way the others' routes are beside: what
// they pay is paid, but for what one more needs where a place is full.
func (g *Graph) beside(book rule.Book, drop int, paid map[int][]int) []network.Arc {
	arcs := plainArcs(g.Arcs)
	for a := range arcs {
		others := paid[a]
		if len(others) > 0 {
			arcs[a].Fixed = 0
		}
		if g.stepped(a) {
			more := g.more(book, a, append(slices.Clone(others), drop))
			if len(others) > 0 {
				more -= g.more(book, a, others)
			}
			arcs[a].Fixed += max(0, more)
		}
	}
	return arcs
}

// paidByOthers lists, by arc, the other drops that use it.
func paidByOthers(res *Result, drop int) map[int][]int {
	paid := map[int][]int{}
	for i := range res.Routes {
		if r := &res.Routes[i]; r.Drop != drop {
			for _, a := range r.Arcs {
				paid[a] = append(paid[a], r.Drop)
			}
		}
	}
	return paid
}

// lookElsewhere finds the best ways that do without one of the places the
// route passes through.
func (e *Explanation) lookElsewhere(res *Result) error {
	g, r := res.Graph, e.Route
	arcs := g.beside(res.Job.Book(), r.Drop, paidByOthers(res, r.Drop))
	for _, a := range r.Arcs {
		if g.Arcs[a].Hole < 0 && g.Arcs[a].There == nil && g.Arcs[a].Kind != RodArc && g.Arcs[a].Kind != EnterArc {
			continue
		}
		saved := arcs[a]
		arcs[a].Fixed, arcs[a].PerCable = network.MaxPrice, 0
		cost, _, err := g.cheapest(arcs, r.Drop)
		if err != nil {
			return err
		}
		arcs[a] = saved
		if cost < network.MaxPrice {
			e.Dearer = append(e.Dearer, Alternative{Without: g.placeName(res, a), More: cost - e.Total})
		}
	}
	slices.SortStableFunc(e.Dearer, func(a, b Alternative) int { return cmp.Compare(a.More, b.More) })
	e.Dearer = e.Dearer[:min(len(e.Dearer), 2)]
	return nil
}

// cheapest is the price of the cheapest path of a drop at given prices.
func (g *Graph) cheapest(arcs []network.Arc, drop int) (cost int64, p network.Path, err error) {
	net, err := network.New(len(g.Nodes), arcs, g.Bend)
	if err != nil {
		return 0, p, fmt.Errorf("route: %w", err)
	}
	s := network.NewSearch(net)
	if err := s.From(int32(g.Root), int64(g.Job.Drops[drop].Count), int32(g.Terminals[drop])); err != nil {
		return 0, p, fmt.Errorf("route: %w", err)
	}
	p, ok := s.To(int32(g.Terminals[drop]))
	if !ok {
		return network.MaxPrice, p, nil
	}
	return p.Cost, p, nil
}

// placeName is what people call what arc a goes through.
func (g *Graph) placeName(res *Result, a int) string {
	if h := g.Arcs[a].Hole; h >= 0 {
		for i := range res.Holes {
			if res.Holes[i].Place == h {
				return fmt.Sprintf("hole %s (%s)", res.Holes[i].ID, g.Arcs[a].Kind)
			}
		}
	}
	if t := g.Arcs[a].There; t != nil {
		return fmt.Sprintf("hole %s, which is there (%s)", t.ID, t.Kind)
	}
	if g.Arcs[a].Kind == EnterArc {
		return "the place at this end of it"
	}
	return "the " + g.Arcs[a].Kind.String() + " shot"
}

// lookBeyondRules finds the best ways that a rule keeps out, by themselves: on
// the graph that keeps what is forbidden, with the changes for nothing.
func (e *Explanation) lookBeyondRules(res *Result) error {
	g, err := build(res.Job, true)
	if err != nil {
		return err
	}
	arcs := plainArcs(g.Arcs)
	for i := range g.Arcs {
		for _, bl := range g.Arcs[i].Blocks {
			arcs[i].Fixed -= bl.Price
		}
		if g.Arcs[i].Kind == RacewayArc && len(g.Arcs[i].Blocks) > 0 {
			arcs[i].Fixed = network.MaxPrice
		}
	}
	seen := map[string]bool{}
	for range looksBeyond {
		cost, p, err := g.cheapest(arcs, e.Route.Drop)
		if err != nil {
			return err
		}
		blocks := g.blocksOn(p.Arcs)
		if len(blocks) == 0 || cost >= network.MaxPrice {
			return nil
		}
		key := ""
		for _, bl := range blocks {
			key += bl.Change + "\n"
		}
		if !seen[key] {
			e.Barred = append(e.Barred, Alternative{More: cost - e.Route.Alone, Blocks: blocks})
		}
		seen[key] = true
		if len(e.Barred) == 2 {
			return nil
		}
		for _, a := range p.Arcs {
			if len(g.Arcs[a].Blocks) > 0 {
				arcs[a].Fixed = network.MaxPrice
			}
		}
	}
	return nil
}

// looksBeyond is how many ways beyond the rules are looked at, to find two that
// differ in what would allow them.
const looksBeyond = 8

// blocksOn lists the rules on a path, each change once.
func (g *Graph) blocksOn(arcs []int32) []Block {
	var out []Block
	seen := map[string]bool{}
	for _, a := range arcs {
		for _, bl := range g.Arcs[a].Blocks {
			if key := string(bl.Rule) + bl.Change; !seen[key] {
				seen[key] = true
				out = append(out, bl)
			}
		}
	}
	return out
}

// Title is what the rule that blocks is about.
func (b *Block) Title() string {
	rl, _ := rule.Lookup(b.Rule)
	return rl.Title
}
