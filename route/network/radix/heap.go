// Package radix is a priority queue for searches in order of cost.
//
// What comes in are numbered items with whole keys, none below the key that
// came out last. What goes out are the items in order of their keys. The
// package never compares two items otherwise: of equal keys, any comes first,
// but for the same calls always the same.
package radix

import "math/bits"

// A Heap is a monotone priority queue; its zero value is empty.
//
// It has a level for each hexadecimal digit of a key. An item waits on the
// level of the highest digit in which its key differs from the last key that
// was popped, in the bucket of that digit's value, and comes down at least one
// level each time its bucket is the first that is not empty (Denardo and Fox,
// "Shortest-route methods: 1. Reaching, pruning, and buckets", Operations
// Research 27, 1979). So n items take O(n log C) for keys up to C.
type Heap struct {
	last   uint64
	size   int
	levels uint64         // bit l set: some bucket of level l is not empty
	full   [levels]uint64 // bit d set: bucket d of the level is not empty
	bucket [levels << digitBits][]entry
}

type entry struct {
	key  uint64
	item int32
}

const (
	digitBits = 4
	levels    = 64 / digitBits
)

// Reset empties the heap and lets keys start from 0 again. It keeps memory.
func (h *Heap) Reset() {
	for h.levels != 0 {
		l, d := h.lowest()
		h.bucket[l<<digitBits|d] = h.bucket[l<<digitBits|d][:0]
		h.drained(l, d)
	}
	h.last, h.size = 0, 0
}

// Len is the number of items in the heap.
func (h *Heap) Len() int { return h.size }

// Push adds an item. The key is not below the one popped last.
func (h *Heap) Push(key uint64, item int32) {
	h.size++
	h.put(entry{key, item})
}

func (h *Heap) put(e entry) {
	l := uint(bits.Len64((e.key^h.last)|1)-1) / digitBits
	d := uint(e.key>>(l*digitBits)) & (1<<digitBits - 1)
	i := l<<digitBits | d
	h.bucket[i] = append(h.bucket[i], e)
	h.full[l] |= 1 << d
	h.levels |= 1 << l
}

// Pop takes out an item of the least key. The heap is not empty.
func (h *Heap) Pop() (key uint64, item int32) {
	for {
		l, d := h.lowest()
		i := l<<digitBits | d
		b := h.bucket[i]
		last := len(b) - 1
		if l > 0 && last > 0 {
			h.spread(l, d, b)
			continue
		}
		top := b[last]
		h.bucket[i] = b[:last]
		if last == 0 {
			h.drained(l, d)
		}
		h.last = top.key
		h.size--
		return top.key, top.item
	}
}

// lowest finds the first bucket that is not empty.
func (h *Heap) lowest() (level, digit uint) {
	level = uint(bits.TrailingZeros64(h.levels)) % levels
	return level, uint(bits.TrailingZeros64(h.full[level])) % (1 << digitBits)
}

func (h *Heap) drained(level, digit uint) {
	h.full[level] &^= 1 << digit
	if h.full[level] == 0 {
		h.levels &^= 1 << level
	}
}

// spread moves the items of bucket b to the levels below.
func (h *Heap) spread(level, digit uint, b []entry) {
	h.bucket[level<<digitBits|digit] = b[:0]
	h.drained(level, digit)
	h.last = b[0].key
	for _, e := range b[1:] {
		h.last = min(h.last, e.key)
	}
	for _, e := range b {
		h.put(e)
	}
}
