package network

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// A Network is the compact form of a routing problem. It is never changed
// after New.
//
// Each arc stands as two half-arcs, one for each way of travelling it. The
// half-arcs that leave node v are First[v] up to First[v+1], ordered by the
// node they lead to, their heading and their prices; a half-arc's number is
// its place in that order. The number does not depend on the order in which
// arcs were given or on which end of an arc came first; only of arcs that are
// alike in everything does the first given stand first.
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

	plain bool // no arc has a heading, so nothing bends

	// What a path that takes no half-arc twice costs at most, bends included:
	// this much whatever its cables, and this much for each.
	mostFixed, mostPerUnit int64
}

// New builds the network of so many nodes. bend[v] is the price per cable of
// a bend at node v. It takes O(a log d) time for a arcs and d of them at one
// node.
func New(nodes int, arcs []Arc, bend []int64) (*Network, error) {
	if len(bend) != nodes {
		return nil, fmt.Errorf("network: %d bend prices for %d nodes", len(bend), nodes)
	}
	if len(arcs) > math.MaxInt32/2 {
		return nil, fmt.Errorf("network: %d arcs, at most %d are allowed", len(arcs), math.MaxInt32/2)
	}
	for v, p := range bend {
		if p < 0 || p > MaxPrice {
			return nil, fmt.Errorf("network: bend price %d of node %d is not between 0 and %d", p, v, int64(MaxPrice))
		}
	}
	for i, a := range arcs {
		if err := check(a, nodes); err != nil {
			return nil, fmt.Errorf("network: arc %d: %w", i, err)
		}
	}
	n := &Network{Bend: slices.Clone(bend), plain: true}
	n.fill(arcs, n.order(arcs))
	return n, nil
}

// Reprice is the network at other prices of its arcs, which are the same else and in
// the same order. Half-arcs keep their numbers, also where parallel arcs would be
// numbered otherwise by New. It takes O(a) time for a arcs.
func (n *Network) Reprice(arcs []Arc) (*Network, error) {
	if 2*len(arcs) != len(n.Target) {
		return nil, fmt.Errorf("network: prices of %d arcs for %d", len(arcs), len(n.Target)/2)
	}
	for i, a := range arcs {
		if err := check(a, n.Nodes()); err != nil {
			return nil, fmt.Errorf("network: arc %d: %w", i, err)
		}
	}
	out := *n
	out.Fixed, out.PerUnit = make([]int64, len(n.Target)), make([]int64, len(n.Target))
	out.mostFixed, out.mostPerUnit = 0, 0
	for h, a := range n.ArcOf {
		out.price(h, arcs[a])
	}
	return &out, nil
}

// price sets the prices of a half-arc of an arc.
func (n *Network) price(h int, a Arc) {
	n.Fixed[h], n.PerUnit[h] = a.Fixed, a.PerCable
	n.mostFixed = addBounded(n.mostFixed, a.Fixed)
	n.mostPerUnit = addBounded(n.mostPerUnit, a.PerCable+n.Bend[n.Source[h]])
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

// A way is an arc to be travelled: twice its index, plus one if it is
// travelled from To to From.
type way int32

func (w way) from(arcs []Arc) int32 {
	if w%2 == 0 {
		return arcs[w/2].From
	}
	return arcs[w/2].To
}

func (w way) heading(arcs []Arc) Heading {
	if w%2 == 0 {
		return arcs[w/2].Heading
	}
	return arcs[w/2].Heading.Reverse()
}

// order lists all ways in the order of half-arcs, and sets First.
func (n *Network) order(arcs []Arc) []way {
	n.First = make([]int32, n.Nodes()+1)
	for _, a := range arcs {
		n.First[a.From+1]++
		n.First[a.To+1]++
	}
	for v := range n.Bend {
		n.First[v+1] += n.First[v]
	}
	list := make([]way, 2*len(arcs))
	next := slices.Clone(n.First)
	for i := range list {
		v := way(i).from(arcs)
		list[next[v]] = way(i)
		next[v]++
	}
	for v := range n.Bend {
		slices.SortFunc(list[n.First[v]:n.First[v+1]], func(a, b way) int {
			p, q := &arcs[a/2], &arcs[b/2]
			return cmp.Or(
				cmp.Compare((a^1).from(arcs), (b^1).from(arcs)), cmp.Compare(a.heading(arcs), b.heading(arcs)),
				cmp.Compare(p.Fixed, q.Fixed), cmp.Compare(p.PerCable, q.PerCable), cmp.Compare(a, b))
		})
	}
	return list
}

func (n *Network) fill(arcs []Arc, list []way) {
	m := len(list)
	n.Target, n.Source, n.Twin, n.ArcOf = make([]int32, m), make([]int32, m), make([]int32, m), make([]int32, m)
	n.Way, n.Fixed, n.PerUnit = make([]Heading, m), make([]int64, m), make([]int64, m)
	number := make([]int32, m) // of the half-arc, by way
	for h, w := range list {
		number[w] = int32(h)
	}
	for h, w := range list {
		a := &arcs[w/2]
		n.Source[h], n.Target[h] = w.from(arcs), (w ^ 1).from(arcs)
		n.Twin[h], n.ArcOf[h], n.Way[h] = number[w^1], int32(w/2), w.heading(arcs)
		n.plain = n.plain && a.Heading == Free
		n.price(h, *a)
	}
}

// addBounded adds prices up to a sum that is too much in any case.
func addBounded(sum, price int64) int64 { return min(sum+price, 2*maxCost) }

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
