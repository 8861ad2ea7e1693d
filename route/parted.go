package route

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"sync"

	"topplate/route/network"
	"topplate/route/tree"
)

// partedBound raises the bound of a plan, where it can, to what no plan costs
// less than whose bundles stay together. For that it shows that a plan whose
// bundles part does not cost less either.
//
// Take every cable to be one by itself: that makes no plan dearer. Of all plans
// that cost least take one with the least length, and of these one with the
// largest sum of squares of the numbers of cables on every arc. If its cables
// don't stay together, then two part at a node and meet again at another, at the
// closet at last, having gone two ways. Either the first could go the way of the
// second or the other way round. But for steps, prices are concave in the number
// of cables, so the two changes together save something, or cost nothing and make
// the squares more. So does one of them, which can't be, as the plan is the best:
// unless it pays a step. (Two cables that travel an arc in opposite ways would
// change what they do from there on, see package tree. On every arc one then comes
// in the place of the other, which pays no step either where one more does not,
// and both ways are shorter.)
//
// So that plan either stays together or has a full place, where one cable more or
// fewer would pay a step, and package tree says what plans cost at least that have
// so many cables there.
//
// The cable that would come was with one of those at the full place before they
// parted. So if the place leads out of a part of the house that no cable comes
// into, all of them are from drops in that part.
func (o *outlook) partedBound(best *tree.Plan) error {
	if best.LowerBound >= best.Together || o.many() {
		return nil
	}
	mixes := o.newMixes(o.book, best.Paths)
	if mixes == nil {
		return nil
	}
	least := min(best.Together, best.Cost)
	p, err := o.newPartings(best)
	if err != nil {
		return err
	}
	places, err := p.places(mixes, least)
	if err != nil {
		return err
	}
	least, err = p.boundAll(places, min(least, best.Cost))
	best.LowerBound = max(best.LowerBound, least)
	return err
}

// boundAll is what plans with any of the full places cost at least, or a limit. It
// looks at several places at a time, and takes over cheaper plans that it comes
// upon.
func (p *partings) boundAll(places []full, limit int64) (int64, error) {
	least := limit
	for some := range slices.Chunk(places, atATime) {
		if some[0].least >= least {
			break
		}
		if p.left <= 0 {
			return some[0].least, nil // as the others are no cheaper
		}
		looks, share := make([]look, len(some)), p.left/int64(len(some))
		var all sync.WaitGroup
		for i, f := range some {
			looks[i] = look{partings: p, left: share}
			all.Go(func() { looks[i].least, looks[i].err = looks[i].bound(f, least) })
		}
		all.Wait()
		for i, l := range looks {
			if l.err != nil {
				return 0, l.err
			}
			p.left -= share - l.left
			p.takeOver(l.plans)
			least = min(least, max(l.least, some[i].least))
		}
		if least <= p.best.LowerBound {
			break
		}
	}
	return least, nil
}

// atATime is how many places are looked at together. It doesn't depend on the
// machine, as what is found does on it.
const atATime = 2

// A look is what is found of a full place.
type look struct {
	*partings
	left  int64 // work
	least int64 // what plans with it cost
	plans [][]tree.Path
	err   error
}

// takeOver takes over the cheapest of some plans, if it is cheaper than the best.
func (p *partings) takeOver(plans [][]tree.Path) {
	order := tagOrder(p.Job)
	for _, paths := range plans {
		plan := tree.Plan{Paths: paths}
		plan.Price(p.Net, p.terms, p.steps)
		if plan.Cost < p.best.Cost {
			p.best.Cost, p.best.Paths = plan.Cost, make([]tree.Path, len(paths))
			for i, d := range order {
				p.best.Paths[d] = plan.Paths[i]
			}
		}
	}
}

// A full place is a half-arc with so many cables, what they pay there beyond
// its prices, and what plans with it cost at least, as Detours say.
type full struct {
	half   int32
	cables int64
	more   int64
	least  int64
}

// places lists the full places of plans that cost less than a limit, those with
// the least bound first. There are fewer if cables are told apart by number alone.
func (p *partings) places(m *mixes, limit int64) ([]full, error) {
	places := p.filled(m.full, min(limit, p.best.Cost))
	if len(m.kinds) > 1 && len(places) > fewPlaces {
		if by, err := p.byNumber(m, limit); err != nil || by {
			return p.filled(m.leastFull, min(limit, p.best.Cost)), err
		}
	}
	return places, nil
}

// fewPlaces are as quickly looked at one by one.
const fewPlaces = 3

// byNumber reports whether plans that stay together cost as much if so many cables
// pay no more than so many pay at least, whatever their diameters. Then fewer
// places can be full.
func (p *partings) byNumber(m *mixes, limit int64) (bool, error) {
	net, shared, err := p.shareHoles(p.gates, m.leastSteps(p.steps.Arcs))
	if err != nil {
		return false, err
	}
	t, err := p.solveTree(net, tree.Options{Steps: shared, Ahead: p.ahead(p.gates), Below: limit, Work: stepWork})
	if err != nil {
		return false, err
	}
	if t.Cost < p.best.Cost {
		p.best.Paths, p.best.Cost = t.Paths, t.Cost
	}
	return t.Together >= min(limit, p.best.Cost), nil
}

// filled lists full places, as full gives them by arc.
func (p *partings) filled(mixes func(int) []fullMix, limit int64) []full {
	var out []full
	for h := range p.Net.Target {
		a := int(p.Net.ArcOf[h])
		if p.open != nil && !p.open.Ways[h] || !p.stepped(a) {
			continue
		}
		near := p.near(int32(h), limit)
		at := map[int]full{}
		for _, m := range mixes(a) {
			f := full{half: int32(h), cables: int64(m.cables), more: m.more}
			if o, ok := at[m.cables]; m.cables > near || !m.fewer && m.cables >= near || ok && o.more <= f.more {
				continue
			}
			at[m.cables] = f
		}
		for _, n := range slices.Sorted(maps.Keys(at)) {
			f := at[n]
			if f.least = p.detours.Bound(f.half, f.cables) + p.paidWith(f); f.least < limit {
				out = append(out, f)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b full) int { return cmp.Compare(a.least, b.least) })
	return out
}

// paidWith is what plans with a full place pay for holes at the gate, and for that
// place beyond its prices.
func (p *partings) paidWith(f full) int64 {
	a := int(p.Net.ArcOf[f.half])
	if p.gate == nil || !slices.Contains(p.gate.exits, a) {
		return p.paid + f.more
	}
	_, rest := p.others(f)
	least := p.leastBore(p.gate.exits) // which free has for nothing, of every first hole
	return max(p.paid, least+f.more+rest.holes*least)
}

// others are the other exits of the gate, and the case of the cables that a full place
// does not take at these.
func (p *partings) others(f full) (exits []int, rest gateCase) {
	a := int(p.Net.ArcOf[f.half])
	exits = slices.DeleteFunc(slices.Clone(p.gate.exits), func(e int) bool { return e == a })
	return exits, p.gate.anyExit(exits, p.inside-f.cables)
}

// leastBore is the least price of a hole at some exits.
func (g *Graph) leastBore(exits []int) (least int64) {
	for i, e := range exits {
		if b := g.Arcs[e].bore(); i == 0 || b < least {
			least = b
		}
	}
	return least
}

// partings are what is known of plans whose bundles part.
type partings struct {
	*outlook
	terms   []tree.Terminal // in the order of tags
	gate    *gate           // the first that needs several holes, the closet's as a rule; nil if none
	inside  int64           // cables that pass the gate
	free    *network.Network
	paid    int64 // for the holes of the gate, which free has for nothing
	detours *tree.Detours
	parts   []*part
	all     int // cables
	best    *tree.Plan
	left    int64 // work
}

func (o *outlook) newPartings(best *tree.Plan) (*partings, error) {
	p := &partings{outlook: o, terms: inOrder(tagOrder(o.Job), o.terms), free: o.Net, parts: o.parts(best.Paths), best: best, left: partedWork}
	for d := range best.Paths {
		if len(best.Paths[d].Nodes) > 0 {
			p.all += o.Job.Drops[d].Count
		}
	}
	var err error
	if len(o.gates) > 0 {
		p.gate = &o.gates[0]
		for _, d := range p.gate.drops {
			p.inside += int64(o.Job.Drops[d].Count)
		}
		if p.free, p.paid, err = o.payFor(p.gate, p.gate.anyExit(p.gate.exits, p.inside), -1); err != nil {
			return nil, err
		}
	}
	if p.detours, err = tree.NewDetours(p.free, int32(o.Root), p.terms, tree.Options{Open: o.open, Known: o.known(), Work: stepWork, Stop: o.stop}); err != nil {
		return nil, fmt.Errorf("route: %w", err)
	}
	return p, nil
}

// A gateCase is how the cables that a full place does not take pass the gate: by
// which exits, with so many holes at least.
type gateCase struct {
	exits []int
	holes int64
}

// anyExit is the case of so many cables at some exits, whatever their diameters.
func (c *gate) anyExit(exits []int, cables int64) gateCase {
	return gateCase{exits, max(0, (cables+int64(c.most)-1)/int64(c.most))}
}

// payFor is the network with holes at the exits of a case for nothing, if it needs any,
// and what these cost at least. No other exits are in it, but the arc that is kept.
func (g *Graph) payFor(c *gate, by gateCase, kept int) (*network.Network, int64, error) {
	arcs, least := plainArcs(g.Arcs), g.leastBore(by.exits)
	for _, e := range c.exits {
		switch {
		case slices.Contains(by.exits, e):
			if by.holes > 0 {
				arcs[e].Fixed -= least
			}
		case e != kept:
			arcs[e].Fixed = dearer(arcs[e].Fixed, g.crowded)
		}
	}
	net, err := g.Net.Reprice(arcs)
	if err != nil {
		return nil, 0, fmt.Errorf("route: %w", err)
	}
	return net, by.holes * least, nil
}

// near is how many cables there are to fill the place of a half-arc, in plans
// that cost less than a limit.
func (p *partings) near(half int32, limit int64) int {
	at := p.parts[p.Net.Source[half]]
	if at == nil || at == p.parts[p.Net.Target[half]] {
		return p.all
	}
	for _, h := range at.in {
		if p.detours.Bound(h, 1)+p.paid < limit {
			return p.all
		}
	}
	return at.cables
}

// bound is what plans with a full place cost at least, or the limit if that is
// less. At the gate the other cables take other exits. If one hole may be enough
// for them, either they need two, or all go through one.
func (p *look) bound(f full, limit int64) (int64, error) {
	a := int(p.Net.ArcOf[f.half])
	arc := &p.Arcs[a]
	own := arc.Fixed() + f.more + f.cables*arc.PerCable()
	cut := tree.Cut{Half: f.half, Cables: f.cables}
	if p.gate == nil || !slices.Contains(p.gate.exits, a) {
		return p.through(cut, p.free, p.paid+own, limit)
	}
	others, all := p.others(f)
	if all.holes != 1 || len(others) < 2 || p.gate.inside == nil {
		return p.throughGate(cut, all, own, limit)
	}
	several := all
	several.holes = 2
	least, err := p.throughGate(cut, several, own, limit)
	if err != nil {
		return 0, err
	}
	cut.Others, cut.Together = p.outOf(p.gate, others), p.inside-f.cables
	return p.throughGate(cut, all, own, least)
}

// outOf are the half-arcs of exits that lead to the closet's side.
func (p *partings) outOf(c *gate, exits []int) (out []int32) {
	for h := range p.Net.Target {
		if slices.Contains(exits, int(p.Net.ArcOf[h])) && c.inside[p.Net.Target[h]] {
			out = append(out, int32(h))
		}
	}
	return out
}

// throughGate is through in one case.
func (p *look) throughGate(cut tree.Cut, by gateCase, own, limit int64) (int64, error) {
	net, paid, err := p.payFor(p.gate, by, int(p.Net.ArcOf[cut.Half]))
	if err != nil {
		return 0, err
	}
	return p.through(cut, net, paid+own, limit)
}

// through is what plans with a full place cost at least on a network, with what
// is paid already, or the limit if that is less.
func (p *look) through(cut tree.Cut, net *network.Network, paid, limit int64) (int64, error) {
	if p.left <= 0 {
		return p.best.LowerBound, nil
	}
	c, err := tree.Through(net, int32(p.Root), p.terms, cut, tree.Options{Open: p.open, Known: p.known(), Below: limit - paid, Work: p.left, Stop: p.stop})
	if err != nil {
		return 0, fmt.Errorf("route: %w", err)
	}
	p.left -= c.Work
	p.plans = append(p.plans, c.Plans...)
	return min(limit, c.Bound+paid), nil
}
