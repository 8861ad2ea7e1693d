package radix

// The wide level.

// out takes entry i, which is in no list any more, out of the heap.
func (h *Heap) out(i int32) (key uint64, item int32) {
	e := &h.pool[i]
	e.next, h.free = h.free, i
	h.size--
	h.last = e.key
	return e.key, e.item
}

// close notes that bucket b is empty if its first entry is 0. It is written
// without branches, as a processor can't foresee them.
func (h *Heap) close(b uint, first int32) {
	var empty, idle uint64
	if first == 0 {
		empty = 1
	}
	busy := h.busy[b/word] &^ (empty << (b % word))
	if busy == 0 {
		idle = 1
	}
	h.busy[b/word] = busy
	h.used &^= idle << (b / word)
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
	h.close(b, 0)
	for i := oldest; i != 0; {
		e := &h.pool[i]
		h.near.put(*e, e.key^least, 0)
		i, e.next, h.free = e.next, h.free, i
	}
}
