package network

// Which labels have to be spread.
//
// Let a be the label of a node with the least key. A label c with a greater
// key offers nothing better than a does, except that it may go straight on
// where a has to bend, and leave by what a must not: half-arcs of its heading,
// or its slot alone if that is Free. So c needs to offer these only, if its own
// key after a bend is above that of a, as every other offer it makes is dearer
// than the one a makes. And if its key as it is is above that of a after a bend,
// it is of use only for half-arcs that a must not leave by: spreadBack.
//
// Let b be another label of the node that must not leave by other half-arcs
// than a: its slot is another, and it has not a's heading unless a is Free.
// (If a's heading is Free, a must not leave by its slot, which b may unless
// that is its own. If it is not, all that a must not leave by has that heading,
// and b, which has another, may.) So every half-arc that c may leave by, a or
// b may as well. If the key of c is above those of both after a bend, each of
// its offers is dearer than one of theirs, and c is of no use at all: such keys
// are what a node's bound keeps out.
//
// A label that is only good for spreadBack is not even queued if all it might
// offer are keys that bounds keep out, which is the rule where a itself came by
// the half-arcs in question. Should another label a2 become a later, nothing is
// lost: if it must not leave by the same half-arcs, c is still good for them
// only; and if it must not leave by others, the old a may, and so a2 and the old
// a are the a and b above, which the key of c is above after a bend.
//
// All these rules want the key of c strictly above, so no tie is lost. They
// hold for keys and bounds that may still fall as well, because then what a and
// b offer gets cheaper too. At the source, a cable that has not moved yet may
// leave by everything at no bend, so no label is of use there.

// spread offers the half-arcs that a cable in slot in of node v may leave by.
// If it is not that of a, it leaves out those that a leaves by for less.
func (t *turns) spread(s *Search, in, v int32, key uint64) {
	p, back := &t.node[v], t.arcs[in].way()
	bent := p.bent(key, back)
	// The key after a turn into each heading, unbound where there is no turn.
	turned := [...]uint64{bent, bent, bent, bent, bent, bent, key, unbound}
	if in != p.slot && p.back != Free && bent > p.bent(p.least, p.back) {
		turned = [...]uint64{unbound, unbound, unbound, unbound, unbound, unbound, unbound, unbound}
		turned[p.back] = bent
	}
	turned[back.Reverse()] = key
	if back != Free {
		turned[back] = unbound
	}
	lo, hi := t.net.First[v], t.net.First[v+1]
	arcs := t.arcs[lo:hi]
	for i := range arcs {
		a := &arcs[i]
		k := turned[a.price%8] + a.price&^bendMask
		if k < t.node[a.to].bound && lo+int32(i) != in {
			t.take(s, a, in, key, k)
		}
	}
}

// spreadBack offers the half-arcs that a cable in slot in of node v may leave
// by and a must not.
func (t *turns) spreadBack(s *Search, in, v int32, key uint64) {
	arcs, turned := t.barred(v, key, t.arcs[in].way())
	back := t.node[v].back
	for i := range arcs {
		a := &arcs[i]
		if k := turned + a.price&^bendMask; a.way() == back && k < t.node[a.to].bound {
			t.take(s, a, in, key, k)
		}
	}
}

// mayGoBack says whether spreadBack would offer anything for a label of node v,
// whose slot has heading back.
func (t *turns) mayGoBack(v int32, key uint64, back Heading) bool {
	arcs, turned := t.barred(v, key, back)
	for i := range arcs {
		a := &arcs[i]
		if turned+a.price&^bendMask < t.node[a.to].bound && a.way() == t.node[v].back {
			return true
		}
	}
	return false
}

// barred are half-arcs of node v, and those of the heading of a are all that a
// must not leave by. turned is the key of a label whose slot has heading back
// after a turn into that heading; it may leave by none if there are none.
func (t *turns) barred(v int32, key uint64, back Heading) (arcs []turnArc, turned uint64) {
	p := &t.node[v]
	switch {
	case p.back == Free:
		return t.arcs[p.slot : p.slot+1], key
	case p.back == back:
		return nil, key
	case p.back != back.Reverse():
		key = p.bent(key, back)
	}
	return t.arcs[t.net.First[v]:t.net.First[v+1]], key
}

// bent is a key of the node after a bend, if the cable is in a slot of heading
// back; for a cable that has no heading nothing is a bend.
func (p *turnNode) bent(key uint64, back Heading) uint64 {
	if back == Free {
		return key
	}
	return key + min(1, bendMask-key&bendMask) + p.bend
}

// take offers a cable that leaves by half-arc a from slot in, whose key is
// from, a label of key k, which is below the bound.
//
// A step that costs nothing never replaces a predecessor of the same key, so
// that predecessors never go in circles: the label of such a step was offered
// after its predecessor had its key.
func (t *turns) take(s *Search, a *turnArc, in int32, from, k uint64) {
	p := &t.node[a.to]
	if p.state == untouched {
		p.state, p.least = labelled, unbound
		s.touched = append(s.touched, a.to)
		labels := t.label[t.net.First[a.to]:t.net.First[a.to+1]]
		for j := range labels {
			labels[j].key = unbound
		}
	}
	l := &t.label[a.slot]
	switch {
	case k < l.key:
		l.key, l.pred = k, in
		if t.note(p, a, k) {
			s.queue.Push(k, a.slot)
		}
	case k == l.key && k > from && in < l.pred:
		l.pred = in
	}
}

// note reckons with a new key of the slot that half-arc h leads to: it finds
// what is a and the bound from it and what was a so far. It says whether the
// label is of use.
func (t *turns) note(p *turnNode, h *turnArc, key uint64) bool {
	back := h.way().Reverse()
	if h.slot == p.slot || p.least == unbound {
		p.least, p.slot, p.back = key, h.slot, back
		return true
	}
	bentA := p.bent(p.least, p.back)
	if p.back == Free || p.back != back {
		p.bound = min(p.bound, max(bentA, p.bent(key, back))+1)
	}
	if key < p.least {
		p.least, p.slot, p.back = key, h.slot, back
		return true
	}
	return key < p.bound && (key <= bentA || t.mayGoBack(h.to, key, back))
}
