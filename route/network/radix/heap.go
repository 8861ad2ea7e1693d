package radix

import "math/bits"

type entry struct {
	key  uint64
	item int32
}

// A Heap is a monotone priority queue of items by key.
type Heap struct {
	last   uint64
	size   int
	full   uint64 // bit i-1 set: bucket i is not empty
	bucket [65][]entry
}

// Reset empties the heap and lets keys start from 0 again. It keeps memory.
func (h *Heap) Reset() {
	h.last, h.size, h.full = 0, 0, 0
	for i := range h.bucket {
		h.bucket[i] = h.bucket[i][:0]
	}
}

// Len is the number of items in the heap.
func (h *Heap) Len() int { return h.size }

// Push adds an item.
func (h *Heap) Push(key uint64, item int32) {
	i := bits.Len64(key ^ h.last)
	h.bucket[i] = append(h.bucket[i], entry{key, item})
	h.size++
}

// Pop takes out an item of the least key.
func (h *Heap) Pop() (key uint64, item int32) {
	if len(h.bucket[0]) == 0 {
		h.refill()
	}
	b := h.bucket[0]
	top := b[len(b)-1]
	h.bucket[0] = b[:len(b)-1]
	h.size--
	return top.key, top.item
}

func (h *Heap) refill() {
	i := 1
	for len(h.bucket[i]) == 0 {
		i++
	}
	b := h.bucket[i]
	least := b[0].key
	for _, e := range b[1:] {
		least = min(least, e.key)
	}
	h.last = least
	for _, e := range b {
		j := bits.Len64(e.key ^ least)
		h.bucket[j] = append(h.bucket[j], e)
	}
	h.bucket[i] = b[:0]
}
