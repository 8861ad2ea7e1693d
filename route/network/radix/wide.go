package radix

// The wide level.

func (h *Heap) putWide(e entry) {
	b := e.key >> h.shift % wide
	e.next = h.head[b]
	i := h.free
	if i != 0 {
		p := &h.pool[i]
		h.free, *p = p.next, e
	} else {
		if len(h.pool) == 0 {
			h.pool = append(h.pool, entry{})
		}
		i = int32(len(h.pool))
		h.pool = append(h.pool, e)
	}
	h.head[b] = i
	h.busy[b/word] |= 1 << (b % word)
	h.used |= 1 << (b / word)
}

// out takes entry i, which is in no list any more, out of the heap.
func (h *Heap) out(i int32) (key uint64, item int32) {
	e := &h.pool[i]
	e.next, h.free = h.free, i
	h.size--
	h.last = e.key
	return e.key, e.item
}

func (h *Heap) emptied(b uint) {
	h.busy[b/word] &^= 1 << (b % word)
	if h.busy[b/word] == 0 {
		h.used &^= 1 << (b / word)
	}
}

// popCrowded pops from bucket b, which has several entries. If they are few it
// finds the newest of the least, else it moves them to the levels below.
func (h *Heap) popCrowded(b uint) (key uint64, item int32) {
	before, least, count := int32(0), h.head[b], 1
	for last, i := least, h.pool[least].next; i != 0; last, i = i, h.pool[i].next {
		if h.pool[i].key < h.pool[least].key {
			before, least = last, i
		}
		count++
	}
	if count > few {
		h.narrow(b, h.pool[least].key)
		return h.popNear()
	}
	if before == 0 {
		h.head[b] = h.pool[least].next
	} else {
		h.pool[before].next = h.pool[least].next
	}
	return h.out(least)
}

// narrow moves all of bucket b, whose least key is given, to the levels below,
// the oldest first.
func (h *Heap) narrow(b uint, least uint64) {
	oldest := int32(0)
	for i := h.head[b]; i != 0; {
		e := &h.pool[i]
		i, e.next, oldest = e.next, oldest, i
	}
	h.head[b] = 0
	h.emptied(b)
	h.last = least
	for i := oldest; i != 0; {
		e := &h.pool[i]
		h.near.put(*e, e.key^least, 0)
		i, e.next, h.free = e.next, h.free, i
	}
}
