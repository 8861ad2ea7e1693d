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
	cost, _, ok = s.best(v)
	return cost, ok
}

// To is the cheapest path of the last search to node v. ok is false if there
// is none, or if the search stopped before it was known. The path to the
// source is the source alone. It takes time in proportion to its arcs.
func (s *Search) To(v int32) (p Path, ok bool) {
	cost, in, ok := s.best(v)
	if !ok {
		return Path{}, false
	}
	i := 0
	for j := in; j != noSlot; j = s.by.before(j) {
		i++
	}
	p = Path{Nodes: make([]int32, i+1), Arcs: make([]int32, i), Cost: cost}
	p.Nodes[i] = v
	for j := in; j != noSlot; {
		i--
		p.Nodes[i], p.Arcs[i] = s.net.Target[j], s.net.ArcOf[j]
		next := s.by.before(j)
		if next != noSlot {
			if bend, _ := s.net.Turn(s.net.Twin[next], s.net.Twin[j]); bend {
				p.Bends++
			}
		}
		j = next
	}
	return p, true
}

// best is the least cost of node v and its slot, noSlot at the source.
func (s *Search) best(v int32) (cost int64, slot int32, ok bool) {
	switch {
	case s.source == noSlot:
		return 0, noSlot, false
	case v == s.source:
		return 0, noSlot, true
	}
	key, cost, slot, reached := s.by.best(v)
	if !reached || key > s.done {
		return 0, noSlot, false
	}
	return cost, slot, true
}
