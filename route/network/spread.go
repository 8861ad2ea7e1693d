package network

// Which labels have to be spread.
//
// Let a be the label of a node with the least key. A label c with a greater
// key offers nothing better than a does, except that it may go straight on
// where a has to bend. So if its key is above that of a after a bend, c is of
// use only for half-arcs that a must not leave by: spreadBack.
//
// Let b be another label of the node that must not leave by other half-arcs
// than a: its slot is another, and it has not a's heading unless a is Free.
// (If a's heading is Free, a must not leave by its slot, which b may unless
// that is its own. If it is not, all that a must not leave by has that heading,
// and b, which has another, may.) So every half-arc that c may leave by, a or
// b may as well. If the key of c is above those of both after a bend, each of
// its offers is dearer than one of theirs, and c is of no use at all: such keys
// are what a place's bound keeps out.
//
// Both rules want the key of c strictly above, so no tie is lost. They hold
// for keys that may still fall as well, because then what a and b offer gets
// cheaper too. At the source, a cable that has not moved yet may leave by
// everything at no bend, so no label is of use there.

// spread offers all half-arcs that a cable in slot in of node v may leave by.
func (s *Search) spread(in, v int32, key uint64) {
	n, places, price := s.net, s.place, s.price
	back := s.label[in].back
	ahead, bent := back.Reverse(), s.bent(s.label[in], v)
	for h := n.First[v]; h < n.First[v+1]; h++ {
		way := n.Way[h]
		if h == in || way == back && back != Free {
			continue
		}
		k := key
		if way != ahead && way != Free {
			k = bent
		}
		if k += price[h]; k < places[n.Target[h]].bound {
			s.take(h, in, key, k)
		}
	}
}

// spreadBack offers the half-arcs that a cable in slot in of node v may leave
// by, and one in slot first must not.
func (s *Search) spreadBack(in, first, v int32, key uint64) {
	n, back := s.net, s.label[first].back
	lo, hi := n.First[v], n.First[v+1]
	if back == Free {
		lo, hi = first, first+1
	} else if s.label[in].back == back {
		return
	}
	k := key
	if back != Free && s.label[in].back != back.Reverse() {
		k = s.bent(s.label[in], v)
	}
	for h := lo; h < hi; h++ {
		if n.Way[h] != back {
			continue
		}
		if k := k + s.price[h]; k < s.place[n.Target[h]].bound {
			s.take(h, in, key, k)
		}
	}
}

// bent is the key of label l of node v after a bend; for a cable that has no
// heading nothing is a bend.
func (s *Search) bent(l label, v int32) uint64 {
	if l.back == Free {
		return l.key
	}
	return l.key + min(1, bendMask-l.key&bendMask) + uint64(s.cables*s.net.Bend[v])<<bendBits
}

// take offers a cable that leaves by half-arc h from slot in, whose key is
// from, a label of key k.
//
// A step that costs nothing never replaces a predecessor of the same key, so
// that predecessors never go in circles: the label of such a step was offered
// after its predecessor had its key.
func (s *Search) take(h, in int32, from, k uint64) {
	n, slot := s.net, s.net.Twin[h]
	v := n.Target[h]
	p, labels := &s.place[v], s.label[n.First[v]:n.First[v+1]]
	if p.first == untouched {
		p.first = noSlot
		s.touched = append(s.touched, v)
		for j := range labels {
			labels[j].key = none
		}
	}
	l := &s.label[slot]
	switch {
	case k < l.key:
		l.key, l.pred = k, in
		p.bound = s.tighten(v, labels)
		if k < p.bound {
			s.queue.Push(k, slot)
		}
	case k == l.key && k > from && in < l.pred:
		l.pred = in
	}
}

// tighten finds the bound of node v from its labels.
func (s *Search) tighten(v int32, labels []label) uint64 {
	a, b := label{key: none, back: Free}, label{key: none}
	for _, l := range labels {
		apart := a.back == Free || l.back != a.back
		switch {
		case l.key < a.key:
			if apart {
				b = a
			}
			a = l
		case l.key < b.key && apart:
			b = l
		}
	}
	if b.key == none {
		return none
	}
	return max(s.bent(a, v), s.bent(b, v)) + 1
}
