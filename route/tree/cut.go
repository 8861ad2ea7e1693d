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
	*space
	*search
	member []int32
	supply []int64 // by member
	sink   int32   // state that ends at the near end
	short  int64   // cables that the near end is to have
	own    int64   // price per cable of sink

	view
	pot   []int64 // by state, what a cable pays from there at least
	worth []int64 // by member, and members to be sorted by it
	order []int
	limit int64 // flows that cost so much are of no interest
}

// newParting cuts a network. There is none if the cut's arc can't be travelled.
func newParting(n *network.Network, root int32, terms []Terminal, cut Cut, opt Options) (*parting, error) {
	u, v := n.Source[cut.Half], n.Target[cut.Half]
	for _, t := range terms {
		if t.Node == v {
			return nil, nil
		}
	}
	if u == root {
		return nil, nil
	}
	arcs := make([]network.Arc, len(n.Target)/2, len(n.Target)/2+2)
	for h, back := range n.Twin {
		if int32(h) < back {
			arcs[n.ArcOf[h]] = network.Arc{From: n.Source[h], To: n.Target[h], Heading: n.Way[h], Fixed: n.Fixed[h], PerCable: n.PerUnit[h]}
		}
	}
	near, anew, none, way := int32(n.Nodes()), int32(n.Nodes())+1, int32(n.Nodes())+2, n.Way[cut.Half]
	arcs[n.ArcOf[cut.Half]] = network.Arc{From: u, To: near, Heading: way}
	arcs = append(arcs,
		network.Arc{From: anew, To: v, Heading: way}, network.Arc{From: near, To: root, Heading: network.Free},
		network.Arc{From: none, To: v, Heading: way}) // leads nowhere: what is relaxed at v shall see the arc that was there
	bend := append(slices.Clone(n.Bend), 0, 0, 0)
	net, err := network.New(len(bend), arcs, bend)
	if err != nil {
		return nil, fmt.Errorf("tree: %w", err)
	}
	all := append(append([]Terminal(nil), terms...), Terminal{anew, cut.Cables})
	s, _ := newSpace(net, root, all, Options{Open: openOf(n, net, opt.Open, cut.Half)}, true)
	p := &parting{space: s, short: cut.Cables, sink: -1}
	for g := range s.exit {
		for _, h := range s.chain[s.chainFirst[g]:s.chainFirst[g+1]] {
			if net.Source[h] == near {
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
	return p, nil
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
	for _, try := range []struct{ rounds, steps, work int64 }{{fewRounds, 0, quickWork}, {manyRounds, tollSteps, w.left}} {
		if p.lookAround(limit, try.rounds, try.steps, w); p.bound >= limit || w.left <= 0 {
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

// lookAround tries tolls in so many steps and keeps the view with the best bound.
// Where too many cables end at the near end a higher toll is better, a lower one
// where too few do.
func (p *parting) lookAround(limit, rounds, steps int64, w *meter) {
	p.unit[p.sink] = far >> 20
	first := p.distances(0)[p.start[p.member[len(p.member)-1]][0]]
	best, v := p.look(first, rounds, w)
	try := func(toll int64) bool {
		d, o := p.look(toll, rounds, w)
		if o.bound <= v.bound {
			return false
		}
		best, v = d, o
		return true
	}
	for step := first / 2; step*steps > first && v.bound < limit; step /= 2 {
		if toll := v.toll; !try(toll+step) && toll >= step {
			try(toll - step)
		}
	}
	p.unit[p.sink] = p.own + v.toll
	if v.bound < limit {
		v.see(best, limit-v.bound, w)
	}
	p.view = v
}

// near is the bit of the near end in a set.
func (p *parting) near() uint64 { return 1 << len(p.member) }

// tollSteps is how finely tolls are tried. quickWork bounds the first search.
const (
	tollSteps = 20
	quickWork = 4_000_000
)

// openOf is what is open of a network that was cut.
func openOf(n, cut *network.Network, open *Open, half int32) *Open {
	if open == nil {
		return nil
	}
	at := make([]int32, len(n.Target)/2) // a half-arc of every arc
	for h := range n.Twin {
		at[n.ArcOf[h]] = int32(h)
	}
	out := &Open{Ways: make([]bool, len(cut.Target))}
	for h := range cut.Target {
		a := int(cut.ArcOf[h])
		if a >= len(at) || a == int(n.ArcOf[half]) {
			out.Ways[h] = true
			continue
		}
		old := at[a]
		if n.Source[old] != cut.Source[h] {
			old = n.Twin[old]
		}
		out.Ways[h] = open.Ways[old]
	}
	return out
}
