package network

// A Path is a cheapest path from the source of a search to a target.
type Path struct {
	Nodes []int32 // source first
	Arcs  []int32 // one fewer
	Cost  int64
	Bends int
}

// Cost is the cost of the cheapest path of the last search to node v. ok is
// false if there is none, or if the search stopped before it was known.
func (s *Search) Cost(v int32) (cost int64, ok bool) {
	key, _, ok := s.best(v)
	return int64(key >> bendBits), ok
}

// To is the cheapest path of the last search to node v. ok is false if there
// is none, or if the search stopped before it was known. The path to the
// source is the source alone. It takes time in proportion to its arcs.
func (s *Search) To(v int32) (p Path, ok bool) {
	key, in, ok := s.best(v)
	if !ok {
		return Path{}, false
	}
	i := 0
	for j := in; j != noSlot; j = s.before(j) {
		i++
	}
	p = Path{Nodes: make([]int32, i+1), Arcs: make([]int32, i), Cost: int64(key >> bendBits)}
	p.Nodes[i] = v
	for j := in; j != noSlot; {
		i--
		p.Nodes[i], p.Arcs[i] = s.net.Target[j], s.net.ArcOf[j]
		next := s.before(j)
		if next != noSlot {
			if bend, _ := s.net.Turn(s.net.Twin[next], s.net.Twin[j]); bend {
				p.Bends++
			}
		}
		j = next
	}
	return p, true
}

// best is the least key of node v and its slot, noSlot at the source.
func (s *Search) best(v int32) (key uint64, slot int32, ok bool) {
	p := &s.place[v]
	switch {
	case p.first == untouched:
		return 0, noSlot, false
	case v == s.source:
		return 0, noSlot, true
	case s.net.plain:
		return p.bound, s.net.Twin[p.first], p.bound <= s.done
	}
	key = none
	for j := s.net.First[v]; j < s.net.First[v+1]; j++ {
		if k := s.label[j].key; k < key {
			key, slot = k, j
		}
	}
	return key, slot, key <= s.done
}

// before is the slot that the cable in slot j had one node earlier.
func (s *Search) before(j int32) int32 {
	if !s.net.plain {
		return s.label[j].pred
	}
	if h := s.place[s.net.Target[j]].first; h != noSlot {
		return s.net.Twin[h]
	}
	return noSlot
}
