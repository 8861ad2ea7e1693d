package network

// runPlain searches a network without headings. Nothing bends there, and to
// double back is to pass a node twice, which no path does that follows the
// predecessors of nodes. So the states are the nodes: the bound of a place is
// its best key, and first is the half-arc that goes with it.
func (s *Search) runPlain() {
	n, places, price := s.net, s.place, s.price
	s.queue.Push(0, s.source)
	for s.queue.Len() > 0 {
		key, v := s.queue.Pop()
		if key > s.stop {
			s.done = s.stop
			return
		}
		if key != places[v].bound {
			continue
		}
		s.reached(&places[v], key)
		for h := n.First[v]; h < n.First[v+1]; h++ {
			u := n.Target[h]
			p, k := &places[u], key+price[h]
			if k < p.bound {
				if p.bound == none {
					s.touched = append(s.touched, u)
				}
				p.bound, p.first = k, h
				s.queue.Push(k, u)
			} else if k == p.bound && k > key && h < p.first {
				p.first = h
			}
		}
	}
}
