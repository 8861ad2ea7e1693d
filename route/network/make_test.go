package network

import (
	"math/rand/v2"
	"testing"
)

// A problem is what New takes.
type problem struct {
	nodes int
	arcs  []Arc
	bend  []int64
}

func (p problem) network(t testing.TB) *Network {
	t.Helper()
	n, err := New(p.nodes, p.arcs, p.bend)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// random makes a problem with so many nodes and arcs of any heading, several
// of them between the same nodes. Prices are from least up to least + some.
func random(r *rand.Rand, nodes, arcs int, least, some int64) problem {
	p := problem{nodes: nodes, bend: make([]int64, nodes)}
	for len(p.arcs) < arcs {
		a := Arc{
			From: int32(r.IntN(nodes)), To: int32(r.IntN(nodes)), Heading: Heading(r.IntN(int(Free) + 1)),
			Fixed: least + r.Int64N(some+1), PerCable: r.Int64N(some + 1),
		}
		if a.From != a.To {
			p.arcs = append(p.arcs, a)
		}
	}
	for v := range p.bend {
		p.bend[v] = r.Int64N(some + 1)
	}
	return p
}

// without is the problem without headings.
func (p problem) without() problem {
	arcs := append([]Arc(nil), p.arcs...)
	for i := range arcs {
		arcs[i].Heading = Free
	}
	return problem{p.nodes, arcs, p.bend}
}

// lattice is a square lattice of so many nodes a side, numbered from south to
// north and west to east.
func lattice(side int, bend int64, fixed func() int64) problem {
	p := problem{nodes: side * side, bend: make([]int64, side*side)}
	for v := range p.nodes {
		p.bend[v] = bend
		if v%side < side-1 {
			p.arcs = append(p.arcs, Arc{From: int32(v), To: int32(v + 1), Heading: East, Fixed: fixed()})
		}
		if v+side < p.nodes {
			p.arcs = append(p.arcs, Arc{From: int32(v), To: int32(v + side), Heading: North, Fixed: fixed()})
		}
	}
	return p
}

// check walks a path and adds up what it costs.
func (p problem) check(t *testing.T, got Path, source, target int32, cables int64) {
	t.Helper()
	if len(got.Nodes) != len(got.Arcs)+1 || got.Nodes[0] != source || got.Nodes[len(got.Arcs)] != target {
		t.Fatalf("path from %d to %d has nodes %v and arcs %v", source, target, got.Nodes, got.Arcs)
	}
	var cost int64
	bends, last := 0, Free
	for i, arc := range got.Arcs {
		a, from, to := p.arcs[arc], got.Nodes[i], got.Nodes[i+1]
		h := a.Heading
		switch {
		case a.From == from && a.To == to:
		case a.To == from && a.From == to:
			h = h.Reverse()
		default:
			t.Fatalf("arc %d does not join nodes %d and %d", arc, from, to)
		}
		if i > 0 && (arc == got.Arcs[i-1] || h != Free && h == last.Reverse()) {
			t.Errorf("path doubles back at node %d", from)
		}
		cost += a.Fixed + cables*a.PerCable
		if h != last && h != Free && last != Free {
			cost += cables * p.bend[from]
			bends++
		}
		last = h
	}
	if cost != got.Cost || bends != got.Bends {
		t.Errorf("path %v costs %d with %d bends, said to cost %d with %d", got.Nodes, cost, bends, got.Cost, got.Bends)
	}
}

// from is a search of a fresh network.
func (p problem) from(t testing.TB, source int32, cables int64, targets ...int32) *Search {
	t.Helper()
	s := NewSearch(p.network(t))
	if err := s.From(source, cables, targets...); err != nil {
		t.Fatal(err)
	}
	return s
}
