package network

import "math"

// A Search finds cheapest paths on one Network. It keeps its memory from one
// run to the next; it is not safe for concurrent use.
//
// The state of the search is the half-arc a cable arrived by, so that bends
// can be priced and doubling back ruled out. Among paths of one cost the one
// with fewer bends wins, then the one whose states come first in the order of
// half-arcs, which is the order of the nodes.
type Search struct {
	net     *Network
	key     []uint64 // best key of each half-arc, none if not reached
	pred    []int32  // half-arc before it, -1 at the source
	settled []bool
	touched []int32
	heap    radixHeap
}

const (
	none      = math.MaxUint64
	bendBits  = 12 // of a key; the cost is above them
	bendMask  = 1<<bendBits - 1
	noHalfArc = -1
)

// NewSearch makes a search on a network.
func NewSearch(n *Network) *Search {
	m := len(n.Target)
	s := &Search{net: n, key: make([]uint64, m), pred: make([]int32, m), settled: make([]bool, m)}
	for i := range s.key {
		s.key[i] = none
	}
	return s
}

// A Path is a cheapest path from the source of a search to a target.
type Path struct {
	Nodes []int32 // source first
	Arcs  []int32 // one fewer
	Cost  int64
	Bends int
}

// From searches from a node with a bundle of so many cables, one at least,
// until all targets are reached or nothing is left. With no targets it
// searches everything. It takes O(s d log C) time for s half-arcs at nodes of
// degree d.
func (s *Search) From(source int32, cables int64, targets ...int32) {
	s.clear()
	n := s.net
	for h := n.First[source]; h < n.First[source+1]; h++ {
		s.reach(h, noHalfArc, uint64(n.Fixed[h]+cables*n.PerUnit[h])<<bendBits)
	}
	left := len(targets)
	found := make(map[int32]bool, left)
	for s.heap.size > 0 {
		top := s.heap.pop()
		in := top.state
		if s.settled[in] {
			continue
		}
		s.settled[in] = true
		v := n.Target[in]
		if left > 0 && isTarget(targets, v) && !found[v] {
			found[v] = true
			if len(found) == left {
				return
			}
		}
		s.spread(in, v, top.key, cables)
	}
}

func isTarget(targets []int32, v int32) bool {
	for _, t := range targets {
		if t == v {
			return true
		}
	}
	return false
}

// spread reaches on from half-arc in, which arrives at v.
func (s *Search) spread(in, v int32, key uint64, cables int64) {
	n := s.net
	bendKey := uint64(cables*n.Bend[v])<<bendBits + 1
	for out := n.First[v]; out < n.First[v+1]; out++ {
		bend, ok := n.Turn(in, out)
		if !ok || s.settled[out] {
			continue
		}
		k := key + uint64(n.Fixed[out]+cables*n.PerUnit[out])<<bendBits
		if bend {
			k += bendKey
		}
		s.reach(out, in, k)
	}
}

// reach offers a key for half-arc h. Of equal offers the first in the order
// of half-arcs is kept.
func (s *Search) reach(h, pred int32, key uint64) {
	switch {
	case key < s.key[h]:
		if s.key[h] == none {
			s.touched = append(s.touched, h)
		}
		s.key[h], s.pred[h] = key, pred
		s.heap.push(key, h)
	case key == s.key[h] && pred < s.pred[h]:
		s.pred[h] = pred
	}
}

func (s *Search) clear() {
	for _, h := range s.touched {
		s.key[h], s.settled[h] = none, false
	}
	s.touched = s.touched[:0]
	s.heap.reset()
}

// best is the half-arc by which node v is reached most cheaply.
func (s *Search) best(v int32) (in int32, ok bool) {
	n := s.net
	in, key := int32(noHalfArc), uint64(none)
	for out := n.First[v]; out < n.First[v+1]; out++ {
		if t := n.Twin[out]; s.key[t] < key || s.key[t] == key && key != none && t < in {
			in, key = t, s.key[t]
		}
	}
	return in, key != none
}

// To is the path of the last search to node v; ok is false if there is none.
// The source itself has no path.
func (s *Search) To(v int32) (p Path, ok bool) {
	in, ok := s.best(v)
	if !ok {
		return Path{}, false
	}
	p.Cost, p.Bends = int64(s.key[in]>>bendBits), int(s.key[in]&bendMask)
	for h := in; h != noHalfArc; h = s.pred[h] {
		p.Nodes, p.Arcs = append(p.Nodes, s.net.Target[h]), append(p.Arcs, s.net.ArcOf[h])
		if s.pred[h] == noHalfArc {
			p.Nodes = append(p.Nodes, s.net.Source[h])
		}
	}
	reverse(p.Nodes)
	reverse(p.Arcs)
	return p, true
}

func reverse(s []int32) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}
