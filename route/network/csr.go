package network

import (
	"cmp"
	"fmt"
	"slices"
)

// A Network is the compact form of a routing problem. It is never changed
// after New.
//
// Each arc stands as two half-arcs, one for each way of travelling it. The
// half-arcs that leave node n are First[n] up to First[n+1], ordered by the
// node they lead to; a half-arc's number is its place in that order. The
// number does not depend on the order in which arcs were given, except among
// arcs that join the same two nodes.
type Network struct {
	First   []int32
	Target  []int32   // node a half-arc leads to
	Source  []int32   // node it leaves
	Twin    []int32   // half-arc of the same arc, travelled the other way
	ArcOf   []int32   // index of its arc
	Way     []Heading // heading of travel
	Fixed   []int64
	PerUnit []int64 // price per cable
	Bend    []int64 // price of a bend per cable, by node

	arcs []Arc
}

// New builds the network of so many nodes. bend[n] is the price per cable of
// a bend at node n. It takes O(a log a) time for a arcs.
func New(nodes int, arcs []Arc, bend []int64) (*Network, error) {
	if len(bend) != nodes {
		return nil, fmt.Errorf("network: %d bend prices for %d nodes", len(bend), nodes)
	}
	for n, p := range bend {
		if p < 0 || p > MaxPrice {
			return nil, fmt.Errorf("network: bend price %d of node %d is not between 0 and %d", p, n, int64(MaxPrice))
		}
	}
	for i, a := range arcs {
		if err := check(a, nodes); err != nil {
			return nil, fmt.Errorf("network: arc %d: %w", i, err)
		}
	}
	n := &Network{arcs: slices.Clone(arcs), Bend: slices.Clone(bend), First: make([]int32, nodes+1)}
	n.fill(n.order())
	return n, nil
}

func check(a Arc, nodes int) error {
	switch {
	case a.From < 0 || int(a.From) >= nodes || a.To < 0 || int(a.To) >= nodes:
		return fmt.Errorf("joins nodes %d and %d of %d", a.From, a.To, nodes)
	case a.From == a.To:
		return fmt.Errorf("joins node %d to itself", a.From)
	case a.Heading > Free:
		return fmt.Errorf("has no heading %d", a.Heading)
	case a.Fixed < 0 || a.Fixed > MaxPrice || a.PerCable < 0 || a.PerCable > MaxPrice:
		return fmt.Errorf("prices %d and %d are not between 0 and %d", a.Fixed, a.PerCable, int64(MaxPrice))
	}
	return nil
}

// half is arc i travelled forward, or backward if back.
type half struct {
	from, to int32
	arc      int32
	back     bool
}

// order lists all half-arcs by where they leave, then where they lead.
func (n *Network) order() []half {
	halves := make([]half, 0, 2*len(n.arcs))
	for i, a := range n.arcs {
		halves = append(halves, half{a.From, a.To, int32(i), false}, half{a.To, a.From, int32(i), true})
	}
	slices.SortStableFunc(halves, func(a, b half) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	return halves
}

func (n *Network) fill(halves []half) {
	m := len(halves)
	n.Target, n.Source, n.Twin, n.ArcOf = make([]int32, m), make([]int32, m), make([]int32, m), make([]int32, m)
	n.Way, n.Fixed, n.PerUnit = make([]Heading, m), make([]int64, m), make([]int64, m)
	seen := make([]int32, len(n.arcs))
	for i := range seen {
		seen[i] = -1
	}
	for i, h := range halves {
		a := n.arcs[h.arc]
		n.First[h.from+1]++
		n.Source[i], n.Target[i], n.ArcOf[i] = h.from, h.to, h.arc
		n.Fixed[i], n.PerUnit[i], n.Way[i] = a.Fixed, a.PerCable, a.Heading
		if h.back {
			n.Way[i] = a.Heading.Reverse()
		}
		if other := seen[h.arc]; other >= 0 {
			n.Twin[i], n.Twin[other] = other, int32(i)
		}
		seen[h.arc] = int32(i)
	}
	for v := range n.Bend {
		n.First[v+1] += n.First[v]
	}
}

// Nodes is the number of nodes.
func (n *Network) Nodes() int { return len(n.Bend) }

// Turn says whether a cable that arrived by half-arc in may leave by half-arc
// out, and whether that is a bend. A cable never doubles back: neither along
// the arc it came by nor along another in the opposite direction.
func (n *Network) Turn(in, out int32) (bend, ok bool) {
	if n.Twin[in] == out {
		return false, false
	}
	a, b := n.Way[in], n.Way[out]
	if a == Free || b == Free || a == b {
		return false, true
	}
	return true, a != b.Reverse()
}
