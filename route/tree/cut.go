package tree

import (
	"fmt"
	"slices"

	"topplate/route/network"
)

// A Cut is an arc that a given number of cables travel one way, no more and no
// fewer.
type Cut struct {
	Half   int32 // half-arc that they travel, towards the root
	Cables int64
	// Others, if there are any, are half-arcs of which the other cables travel one, so
	// many of them together at least.
	Others   []int32
	Together int64
}

// Crossing is what Through finds.
type Crossing struct {
	Bound int64
	Plans [][]Path // that the cheapest flow may stand for; there may be none
	Work  int64    // done
}

// Through finds what no plan costs less than in which the cables of cut, and they
// alone, travel its arc: neither the arc's own prices nor any steps are counted.
// If no plan below opt.Below is left, that may be any bound from there on, and if
// there is no plan at all it is far too much.
//
// # Why it is a bound
//
// Take the arc out, leave the cables at its near end, and let them set out anew
// from its far end. What remains is a flow from the terminals and the far end to
// the root and the near end, and all its prices are concave, so that it is
// cheapest where the arcs in use are a forest. On the way from the near end to
// the root through this forest the flow to the near end only falls, as every
// branch adds what it brings, and from one place on it runs the other way. So
// there are three kinds of branches: those all of whose cables go to the root or
// all to the near end; those that the near end is at, still short of cables; and
// those that had more for it than it takes, whose cables have parted. The search
// sets them together as the sets of search. Cables of one terminal may part as
// well, which those of a plan never do, so the flow may cost less than any plan.
//
// Arcs in use both ways are no matter: two cables that travel an arc in opposite
// ways can change what they do from there on, see the package comment, and then
// no arc has more cables than before. So the search may price the ways apart.
func Through(n *network.Network, root int32, terms []Terminal, cut Cut, opt Options) (Crossing, error) {
	if err := check(n, root, terms); err != nil {
		return Crossing{}, err
	}
	for _, t := range terms {
		if t.Node == n.Source[cut.Half] || len(terms) >= maxMembers {
			return Crossing{}, nil
		}
	}
	p, err := newParting(n, root, terms, cut, opt)
	if err != nil || p == nil {
		return Crossing{Bound: far}, err
	}
	w := &meter{left: opt.Work, stop: opt.Stop}
	if opt.Work <= 0 {
		w.left = DefaultWork
	}
	below, before := opt.Below, w.left
	if below <= 0 || below > far/p.scale {
		below = far / p.scale
	}
	found, goal := p.solve(p.below(below*p.scale), w)
	out := Crossing{Bound: p.whole(found), Work: before - w.left}
	if goal >= 0 {
		for _, paths := range p.plans(goal) {
			if plan := (Plan{Paths: paths}); plan.valid(n) {
				out.Plans = append(out.Plans, paths)
			}
		}
	}
	return out, nil
}

// A parting is the search for the cheapest flow through a cut.
type parting struct {
	cut severed
	*space
	*search
	member   []int32
	supply   []int64 // by member
	sink     int32   // state that ends at the near end
	short    int64   // cables that the near end is to have
	own      int64   // price per cable of sink
	shut     []bool  // by state: fewer cables than together may not travel it
	together int64
	guide    guide

	view
	pot   []int64 // by state, what a cable pays from there at least
	worth []int64 // by member, and members to be sorted by it
	order []int
	limit int64 // flows that cost so much are of no interest
}

// A severed network is one that was cut, without what is closed.
type severed struct {
	net        *network.Network
	old        []int32 // by arc: which it was; the last of these is the cut, and others come after
	near, anew int32   // the near end, and where cables set out anew
}

// sever cuts a network.
func (c Cut) sever(n *network.Network, root int32, open *Open) (severed, error) {
	u, v := n.Source[c.Half], n.Target[c.Half]
	s := severed{near: int32(n.Nodes()), anew: int32(n.Nodes()) + 1}
	var arcs []network.Arc
	for h, back := range n.Twin {
		if int32(h) < back && (open == nil || open.Ways[h] || open.Ways[back]) && n.ArcOf[h] != n.ArcOf[c.Half] {
			arcs = append(arcs, network.Arc{From: n.Source[h], To: n.Target[h], Heading: n.Way[h], Fixed: n.Fixed[h], PerCable: n.PerUnit[h]})
			s.old = append(s.old, n.ArcOf[h])
		}
	}
	way := n.Way[c.Half]
	s.old = append(s.old, n.ArcOf[c.Half])
	arcs = append(arcs,
		network.Arc{From: u, To: s.near, Heading: way},
		network.Arc{From: s.anew, To: v, Heading: way}, network.Arc{From: s.near, To: root, Heading: network.Free},
		network.Arc{From: s.anew + 1, To: v, Heading: way}) // leads nowhere: what is relaxed at v shall see the arc that was there
	bend := append(slices.Clone(n.Bend), 0, 0, 0)
	var err error
	if s.net, err = network.New(len(bend), arcs, bend); err != nil {
		return s, fmt.Errorf("tree: %w", err)
	}
	return s, nil
}

// newParting cuts a network. There is none if the cut's arc can't be travelled.
func newParting(n *network.Network, root int32, terms []Terminal, cut Cut, opt Options) (*parting, error) {
	for _, t := range terms {
		if t.Node == n.Target[cut.Half] {
			return nil, nil
		}
	}
	if n.Source[cut.Half] == root {
		return nil, nil
	}
	c, err := cut.sever(n, root, opt.Open)
	if err != nil {
		return nil, err
	}
	all := append(append([]Terminal(nil), terms...), Terminal{c.anew, cut.Cables})
	s, _ := newSpace(c.net, root, all, Options{Open: openOf(n, c, opt.Open)}, true)
	p := &parting{space: s, cut: c, short: cut.Cables, sink: -1}
	for g := range s.exit {
		for _, h := range s.chain[s.chainFirst[g]:s.chainFirst[g+1]] {
			if c.net.Source[h] == c.near {
				p.sink = g
			}
		}
	}
	reached := newShape(n, root, terms, Options{Open: opt.Open}, false).reached(terms)
	for t := range all {
		if len(s.start[t]) > 0 {
			p.member = append(p.member, int32(t))
			p.supply = append(p.supply, all[t].Cables)
		} else if t < len(terms) && reached[t] {
			return nil, nil
		}
	}
	last := len(p.member) - 1
	if p.sink < 0 || last < 0 || p.member[last] != int32(len(terms)) {
		return nil, nil
	}
	p.own = s.unit[p.sink]
	p.shutOthers(n, cut)
	p.guide = s.guideBy(p.member, cut.known(n, c, opt.Known))
	return p, nil
}

// shutOthers shuts the half-arcs that other cables travel together to fewer of them.
// All that travel one of these are one set when they do, as they meet there at the
// latest.
func (p *parting) shutOthers(n *network.Network, cut Cut) {
	p.shut, p.together = make([]bool, len(p.fixed)), cut.Together
	for g := range p.exit {
		for _, h := range p.chain[p.chainFirst[g]:p.chainFirst[g+1]] {
			for _, o := range cut.Others {
				a := int(p.net.ArcOf[h])
				p.shut[g] = p.shut[g] || a < len(p.cut.old) && p.cut.old[a] == n.ArcOf[o] && p.net.Target[h] == n.Target[o]
			}
		}
	}
}

// known is a plan for a network that was cut: those who travel the cut end at its
// near end, and one of them goes on for those who set out anew.
func (c Cut) known(n *network.Network, s severed, plan []Path) []Path {
	if plan == nil {
		return nil
	}
	is := slices.Repeat([]int32{-1}, len(n.Target)/2)
	for a, o := range s.old {
		is[o] = int32(a)
	}
	out := make([]Path, len(plan)+1)
	for t, p := range plan {
		arcs := make([]int32, len(p.Arcs))
		for j, a := range p.Arcs {
			arcs[j] = is[a]
		}
		out[t] = Path{Nodes: p.Nodes, Arcs: arcs}
		for j, a := range p.Arcs {
			if a == n.ArcOf[c.Half] && p.Nodes[j] == n.Target[c.Half] {
				out[len(plan)] = Path{Nodes: append(slices.Clone(p.Nodes[:j+1]), s.anew), Arcs: append(slices.Clone(arcs[:j]), int32(len(s.old)))}
				out[t] = Path{Nodes: append([]int32{s.near}, p.Nodes[j+1:]...), Arcs: arcs[j:]}
			}
		}
	}
	return out
}

// A view is what a dual says of labels. Cables that end at the near end pay a
// toll in it, which they get back.
type view struct {
	toll   int64
	bound  int64
	base   []int64
	floors []int64 // by member, what it pays
	total  int64   // sum of the floors
	row    []int32 // by state: row of lifts, 0 if it has none
	lifts  []int64
	coming [][]int64 // by member and state, see dual.coming
}

// look makes a view with a dual of its own.
func (p *parting) look(toll, rounds int64, w *meter) (*dual, view) {
	p.unit[p.sink] = p.own + toll
	v := view{toll: toll, base: p.distances(0)}
	d := newDual(p.space, v.base)
	d.reset(p.member, p.space.fixed)
	d.guide = p.guide
	d.ascend(rounds, w)
	v.bound = d.bound() - p.short*toll
	return d, v
}

// see fills in what a view has by member and state.
func (v *view) see(d *dual, gap int64, w *meter) {
	k := len(d.member)
	v.row, v.lifts = make([]int32, len(d.base)), make([]int64, k)
	for i := range d.member {
		d.load(i)
		v.floors = append(v.floors, d.floor(i))
		v.total += v.floors[i]
		v.coming = append(v.coming, d.coming(i, gap, w))
		d.drop(i)
		for _, r := range d.records[i] {
			if v.row[r.state] == 0 {
				v.row[r.state] = int32(len(v.lifts) / k)
				v.lifts = append(v.lifts, make([]int64, k)...)
			}
			v.lifts[int(v.row[r.state])*k+i] = r.lift
		}
	}
}

// solve finds a bound, which is the least cost if that is below the limit. Then
// goal is the label of a flow that costs that, -1 otherwise. A quick dual comes
// first, as it is enough for most cuts.
func (p *parting) solve(limit int64, w *meter) (bound int64, goal int32) {
	var cables int64
	for _, q := range p.supply {
		cables += q
	}
	p.worth = make([]int64, len(p.member))
	for _, try := range []struct{ tolls, steps, work int64 }{{0, 0, quickWork}, {tollSteps, cutSteps, w.left}} {
		if p.lookAround(limit, try.tolls, try.steps, w); p.bound >= limit || w.left <= 0 {
			break
		}
		p.pot = p.distances(cables)
		p.search = newSearch(p.space, newCrowd(p.space))
		p.limit, p.search.limit = limit, far
		own := &meter{left: min(try.work, w.left), stop: w.stop}
		before := own.left
		bound, goal = p.run(own)
		w.spend(int(before - own.left))
		if bound > 0 {
			return max(p.bound, bound), goal
		}
	}
	return p.bound, -1
}

// lookAround tries tolls in so many steps and keeps the view with the best bound,
// after so many steps towards the best dual. Where too many cables end at the near
// end a higher toll is better, a lower one where too few do.
func (p *parting) lookAround(limit, tolls, steps int64, w *meter) {
	p.unit[p.sink] = far >> 20
	first := p.distances(0)[p.start[p.member[len(p.member)-1]][0]]
	best, v := p.look(first, fewRounds, w)
	try := func(toll, rounds int64) bool {
		d, o := p.look(toll, rounds, w)
		if o.bound <= v.bound {
			return false
		}
		best, v = d, o
		return true
	}
	for step := first / 2; step*tolls > first && v.bound < limit; step /= 2 {
		if toll := v.toll; !try(toll+step, fewRounds) && toll >= step {
			try(toll-step, fewRounds)
		}
	}
	if steps > 0 && v.bound < limit {
		try(v.toll, roundsFor(len(p.member)))
	}
	p.unit[p.sink] = p.own + v.toll
	if steps > 0 && v.bound < limit {
		best.tighten(limit+p.short*v.toll, steps, w)
		v.bound = best.bound() - p.short*v.toll
	}
	if v.bound < limit {
		v.see(best, limit-v.bound, w)
	}
	p.view = v
}

// near is the bit of the near end in a set.
func (p *parting) near() uint64 { return 1 << len(p.member) }

// tollSteps is how finely tolls are tried, cutSteps how good the dual is then. quickWork bounds the first search.
const (
	tollSteps = 8
	cutSteps  = 20
	quickWork = 2_000_000
)

// openOf is what is open of a network that was cut.
func openOf(n *network.Network, s severed, open *Open) *Open {
	if open == nil {
		return nil
	}
	at := make([]int32, len(n.Target)/2) // a half-arc of every arc
	for h := range n.Twin {
		at[n.ArcOf[h]] = int32(h)
	}
	out := &Open{Ways: make([]bool, len(s.net.Target))}
	for h := range s.net.Target {
		a := int(s.net.ArcOf[h])
		if a >= len(s.old)-1 { // the cut itself, too
			out.Ways[h] = true
			continue
		}
		was := at[s.old[a]]
		if n.Source[was] != s.net.Source[h] {
			was = n.Twin[was]
		}
		out.Ways[h] = open.Ways[was]
	}
	return out
}
