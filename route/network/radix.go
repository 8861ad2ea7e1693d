package network

import "math/bits"

// A radixHeap is a monotone priority queue of states by key: no key pushed is
// below the last one popped. A bucket holds the keys that first differ from
// the last one popped in the same bit (Ahuja, Mehlhorn, Orlin and Tarjan,
// "Faster algorithms for the shortest path problem", J. ACM 37, 1990). All
// operations together take O(n log C) for n pushes of keys up to C.
type radixHeap struct {
	last   uint64
	size   int
	bucket [65][]keyed
}

type keyed struct {
	key   uint64
	state int32
}

func (h *radixHeap) reset() {
	h.last, h.size = 0, 0
	for i := range h.bucket {
		h.bucket[i] = h.bucket[i][:0]
	}
}

func (h *radixHeap) push(key uint64, state int32) {
	i := bits.Len64(key ^ h.last)
	h.bucket[i] = append(h.bucket[i], keyed{key, state})
	h.size++
}

// pop takes out a state of the least key. The heap is not empty.
func (h *radixHeap) pop() keyed {
	if len(h.bucket[0]) == 0 {
		h.refill()
	}
	b := h.bucket[0]
	top := b[len(b)-1]
	h.bucket[0] = b[:len(b)-1]
	h.size--
	return top
}

// refill spreads the first bucket that is not empty over those before it.
func (h *radixHeap) refill() {
	i := 1
	for len(h.bucket[i]) == 0 {
		i++
	}
	least := h.bucket[i][0].key
	for _, k := range h.bucket[i][1:] {
		least = min(least, k.key)
	}
	h.last = least
	for _, k := range h.bucket[i] {
		j := bits.Len64(k.key ^ least)
		h.bucket[j] = append(h.bucket[j], k)
	}
	h.bucket[i] = h.bucket[i][:0]
}
