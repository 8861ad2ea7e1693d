package network

import (
	"math"
	"math/bits"
)

// A plain method searches a network without headings. Nothing bends there, and
// to double back is to pass a node twice, which no path does that follows the
// predecessors of nodes. So there is one way into a node to remember, its best,
// and the key is the cost. K is wide enough for any.
//
// What the search needs of a node or a half-arc lies in one place, so that it
// is in the processor's cache at once, and is as short as K allows.
type plain[K uint32 | uint64] struct {
	net  *Network
	arcs []plainArc[K]  // by half-arc
	node []plainNode[K] // by node
}

type plainArc[K uint32 | uint64] struct {
	price K
	to    int32
}

type plainNode[K uint32 | uint64] struct {
	cost  K     // the largest K if there is no way yet
	first int32 // half-arc that it comes by, noSlot at the source
}

// fits32 says whether all costs on a network without headings are below the
// largest uint32, for so many cables. A search never looks at more than a path
// and one half-arc that leaves its end: half-arcs, all different, one for each
// node at most.
func fits32(n *Network, cables int64) bool {
	most := uint64(0)
	for h, f := range n.Fixed {
		most = max(most, uint64(f+cables*n.PerUnit[h]))
	}
	high, low := bits.Mul64(most, uint64(n.Nodes()))
	return high == 0 && low < math.MaxUint32
}

func newPlain[K uint32 | uint64](n *Network) *plain[K] {
	p := &plain[K]{net: n, arcs: make([]plainArc[K], len(n.Target)), node: make([]plainNode[K], n.Nodes())}
	for h, u := range n.Target {
		p.arcs[h].to = u
	}
	for v := range p.node {
		p.node[v].cost = ^K(0)
	}
	return p
}

func (p *plain[K]) price(cables int64) uint64 {
	var rise mean
	for h, f := range p.net.Fixed {
		cost := f + cables*p.net.PerUnit[h]
		p.arcs[h].price = K(cost)
		rise.add(cost)
	}
	return rise.value()
}

func (p *plain[K]) forget(touched []int32) {
	for _, v := range touched {
		p.node[v].cost = ^K(0)
	}
}

func (p *plain[K]) run(s *Search) {
	first, arcs, nodes, queue := p.net.First, p.arcs, p.node, &s.queue
	nodes[s.source] = plainNode[K]{0, noSlot}
	touched, count := s.touched[:cap(s.touched)], 1
	touched[0] = s.source
	queue.Push(0, s.source)
	for queue.Len() > 0 {
		cost, v := queue.Pop()
		if cost > s.stop {
			s.done = s.stop
			break
		}
		key := K(cost)
		if key != nodes[v].cost {
			continue // a better way was found since
		}
		if s.targets > 0 {
			s.reached(v, cost)
		}
		lo, hi := first[v], first[v+1]
		for i, a := range arcs[lo:hi] {
			u, k := &nodes[a.to], key+a.price
			if k > u.cost {
				continue
			}
			if h := lo + int32(i); k < u.cost {
				fresh := 0
				// Noted even if it is not new, as that takes no branch.
				touched[count] = a.to
				if u.cost == ^K(0) {
					fresh = 1
				}
				count += fresh
				*u = plainNode[K]{k, h}
				queue.Push(uint64(k), a.to)
			} else if k > key && h < u.first {
				u.first = h
			}
		}
	}
	s.touched = touched[:count]
}

func (p *plain[K]) best(v int32) (key uint64, cost int64, slot int32, reached bool) {
	n := &p.node[v]
	if n.cost == ^K(0) {
		return 0, 0, noSlot, false
	}
	return uint64(n.cost), int64(n.cost), p.slot(v), true
}

func (p *plain[K]) before(j int32) int32 { return p.slot(p.net.Target[j]) }

func (p *plain[K]) slot(v int32) int32 {
	if h := p.node[v].first; h != noSlot {
		return p.net.Twin[h]
	}
	return noSlot
}
