package route

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
	"topplate/route/bundle"
	"topplate/route/network"
)

func sample(t testing.TB, name string) *plan.Job {
	t.Helper()
	job, list := plan.LoadJob("../samples/"+name+"/job.toml", source.ReadFile)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%s does not load", name)
	}
	return job
}

// Brute force: on the starter's graph no allowed walk from the closet to any
// drop, whatever it takes, costs less than the price that was found, and one
// costs as much. All walks are tried that could still be cheaper; the bound
// that leaves the others out is a Bellman-Ford distance without bends, so it is
// never too high.
func TestBruteForceOnTheStarter(t *testing.T) {
	for seed := range uint64(3) {
		r := rand.New(rand.NewPCG(seed, 9))
		job := starter(t)
		for i := range job.Drops {
			job.Drops[i].Count = 1 + r.IntN(4)
		}
		res := solved(t, job)
		for i := range res.Routes {
			route := &res.Routes[i]
			b := newBrute(res.Graph, int64(job.Drops[route.Drop].Count), res.Graph.Terminals[route.Drop])
			if got := b.cheapest(route.Alone); got != route.Alone {
				t.Errorf("seed %d: %s costs %d by itself, brute force finds %d", seed, job.Drops[route.Drop].Tag, route.Alone, got)
			}
			if b.tried < len(route.Arcs) {
				t.Errorf("only %d states were looked at", b.tried)
			}
		}
	}
}

// A brute tries walks on a graph, from its arcs alone.
type brute struct {
	g     *Graph
	q     int64
	to    int
	arcs  [][]int // by node
	left  []int64 // what is still to pay at least
	best  int64
	tried int
}

func newBrute(g *Graph, q int64, to int) *brute {
	b := &brute{g: g, q: q, to: to, arcs: make([][]int, len(g.Nodes)), left: make([]int64, len(g.Nodes))}
	for i := range g.Arcs {
		b.arcs[g.Arcs[i].From] = append(b.arcs[g.Arcs[i].From], i)
		b.arcs[g.Arcs[i].To] = append(b.arcs[g.Arcs[i].To], i)
	}
	for i := range b.left {
		b.left[i] = math.MaxInt64 / 4
	}
	b.left[to] = 0
	for changed := true; changed; {
		changed = false
		for i := range g.Arcs {
			a := &g.Arcs[i]
			p := b.price(i)
			if b.left[a.To]+p < b.left[a.From] {
				b.left[a.From], changed = b.left[a.To]+p, true
			}
			if b.left[a.From]+p < b.left[a.To] {
				b.left[a.To], changed = b.left[a.From]+p, true
			}
		}
	}
	return b
}

func (b *brute) price(arc int) int64 { return b.g.Arcs[arc].Fixed() + b.q*b.g.Arcs[arc].PerCable() }

// cheapest is the least cost of a walk that costs at most limit, or limit+1.
func (b *brute) cheapest(limit int64) int64 {
	b.best = limit + 1
	seen := map[[2]int]int64{}
	b.walk(b.g.Root, -1, 0, seen)
	return b.best
}

// walk goes on from node n, which was reached by arc in. A state that was left
// more cheaply before is not tried again.
func (b *brute) walk(n, in int, cost int64, seen map[[2]int]int64) {
	if cost+b.left[n] >= b.best {
		return
	}
	if old, ok := seen[[2]int{n, in}]; ok && old <= cost {
		return
	}
	seen[[2]int{n, in}] = cost
	b.tried++
	if n == b.to {
		b.best = cost
		return
	}
	for _, out := range b.arcs[n] {
		extra, ok := b.turn(n, in, out)
		if !ok {
			continue
		}
		a := &b.g.Arcs[out]
		b.walk(a.From+a.To-n, out, cost+extra+b.price(out), seen)
	}
}

// turn is what a bend at n from arc in to arc out costs.
func (b *brute) turn(n, in, out int) (int64, bool) {
	if in < 0 {
		return 0, true
	}
	last := b.g.Arcs[in].Heading
	if b.g.Arcs[in].To != n {
		last = last.Reverse()
	}
	next := b.g.way(out, n)
	switch {
	case in == out:
		return 0, false
	case last == network.Free || next == network.Free || last == next:
		return 0, true
	case last == next.Reverse():
		return 0, false
	}
	return b.q * b.g.Bend[n], true
}

// Facts of the trade, as check values (common practice, no source).

// Four cables go to one single-gang plate with four ports, through one hole.
func TestFourCablesOneGangOneHole(t *testing.T) {
	job := starter(t, "count = 2", "count = 4")
	res := solved(t, job)
	b := newBuilder(job, false)
	if b.boxWidth(4) != b.book.Length(rule.BoxSingle) || b.boxWidth(5) != b.book.Length(rule.BoxDouble) {
		t.Errorf("boxes for 4 and 5 cables are %v and %v wide", b.boxWidth(4), b.boxWidth(5))
	}
	r := routeOf(t, res, "D1")
	last := r.Arcs[len(r.Arcs)-1]
	for _, h := range res.Holes {
		if res.Graph.Holes[h.Place].Kind == PlateArc && h.Cables == 4 && len(h.Drops) == 1 && h.Count != 1 {
			t.Errorf("hole %s for four cables is bored %d times", h.ID, h.Count)
		}
	}
	if res.Graph.Arcs[last].Kind != EnterArc {
		t.Errorf("the route of D1 ends with %v", res.Graph.Arcs[last].Kind)
	}
	// 4 x 6.0 mm bundle to 14.49 mm, 1/4 in more is 20.8 mm: a 1 in bit, the
	// largest that leaves 1-1/4 in on both sides of a 3-1/2 in plate.
	four := []measure.Length{6 * measure.Millimetre, 6 * measure.Millimetre, 6 * measure.Millimetre, 6 * measure.Millimetre}
	f := newFitting(job.Tools.Bits, b.book, inch(7, 4), four)
	if !f.everythingIn || f.holes != 1 || f.bit != measure.Inch || f.bundle != bundle.Diameter(4, 6*measure.Millimetre) {
		t.Errorf("four cables go through %+v", f)
	}
}

// The hole goes through the middle of a 2x4 plate, and about 15 ft of joined
// rod reaches from an opened soffit to where a hand takes it.
func TestHolesAndRodsOfTheSamples(t *testing.T) {
	shots := 0
	for _, name := range []string{"corner-house", "long-roof"} {
		res := solved(t, sample(t, name))
		for _, h := range res.Holes {
			p := &res.Graph.Holes[h.Place]
			if p.Kind != PlateArc {
				continue
			}
			w := &res.Job.House.Walls[p.Wall]
			if got := (geom.Point{X: p.At.X, Y: p.At.Y}); got != w.PointAt(p.Along) {
				t.Errorf("%s: hole %s is at %v, not in the middle of the plate at %v", name, h.ID, got, w.PointAt(p.Along))
			}
		}
		for i := range res.Routes {
			for _, l := range res.Routes[i].Legs {
				if l.Kind == RodArc {
					shots++
					if l.Length > 15*measure.Foot+2*measure.Foot {
						t.Errorf("%s: a rod shot of %v", name, l.Length)
					}
				}
			}
		}
	}
	if shots < 4 {
		t.Errorf("only %d rod shots in both samples", shots)
	}
}

// A spool holds 1,000 ft: both samples are cut from one spool of each cable,
// and every drop has a route.
func TestSamplesFitASpool(t *testing.T) {
	for _, name := range []string{"corner-house", "long-roof"} {
		res := solved(t, sample(t, name))
		if c := res.Cost; res.Stops() || c.LowerBound > c.Total || 100*(c.Total-c.LowerBound) > c.LowerBound {
			t.Errorf("%s: stops %v, cost %d, bound %d: more than 1 %% apart", name, res.Stops(), c.Total, c.LowerBound)
		}
		for _, total := range res.Tails {
			if total.Length > 1000*measure.Foot {
				t.Errorf("%s: %v of %s", name, total.Length, total.Cable)
			}
		}
	}
}
