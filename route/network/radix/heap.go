// Package radix is a priority queue for searches in order of cost.
//
// What comes in are numbered items with whole keys, none below the key that
// came out last. What goes out are the items in order of their keys, and of
// equal keys the one pushed last. The package never touches what the items
// stand for, and knows nothing of costs.
package radix

import "math/bits"

// A Heap is a monotone priority queue; its zero value is empty.
//
// An item waits on the level of the highest digit in which its key differs
// from the last key that was popped, in the bucket of that digit's value, and
// comes down at least one level each time its bucket is the first that is not
// empty (Denardo and Fox, "Shortest-route methods: 1. Reaching, pruning, and
// buckets", Operations Research 27, 1979). All items of one key are always in
// one bucket, in the order they were pushed. n items take O(n log C) for keys
// up to C.
//
// One digit is wide, and Fit puts it where it tells most items apart. Then
// most come out of their first bucket alone. The digits above and below, for
// odd ones, are hexadecimal.
type Heap struct {
	last  uint64
	size  int
	shift uint  // of the wide digit
	near  tower // items that have the wide digit of last
	far   tower // items that differ from last above it

	// The wide level. Its buckets are lists in pool, the newest entry first.
	used uint64              // bit w set: busy[w] is not 0
	busy [wide / word]uint64 // bit b set: bucket b is not empty
	head [wide]int32         // index of the newest entry, 0 for none
	pool []entry             // pool[0] is not used
	free int32               // list of entries to use again
}

type entry struct {
	key  uint64
	item int32
	next int32 // in the wide level: index of the entry pushed before
}

const (
	wideBits = 12
	wide     = 1 << wideBits
	word     = 64
	// few entries of a bucket are searched rather than spread.
	few = 8
)

// Fit empties the heap and makes it fast for keys that are pushed about step
// above the last one popped. They come out in the same order for any step.
func (h *Heap) Fit(step uint64) {
	h.Reset()
	// The wide level is four steps long, so that few items lie behind its end.
	h.shift = uint(max(0, bits.Len64(step)+2-wideBits))
}

// Reset empties the heap and lets keys start from 0 again. It keeps memory.
func (h *Heap) Reset() {
	h.near.reset()
	h.far.reset()
	for ; h.used != 0; h.used &= h.used - 1 {
		w := bits.TrailingZeros64(h.used)
		for ; h.busy[w] != 0; h.busy[w] &= h.busy[w] - 1 {
			h.head[w*word+bits.TrailingZeros64(h.busy[w])] = 0
		}
	}
	h.pool, h.free = h.pool[:0], 0
	h.last, h.size = 0, 0
}

// Len is the number of items in the heap.
func (h *Heap) Len() int { return h.size }

// Push adds an item. The key is not below the one popped last.
func (h *Heap) Push(key uint64, item int32) {
	h.size++
	h.put(key, item)
}

func (h *Heap) put(key uint64, item int32) {
	shift := h.shift % 64
	differ := (key ^ h.last) >> shift
	if differ >= wide || differ == 0 && h.near.levels != 0 {
		h.putNarrow(key, item)
		return
	}
	if h.free == 0 {
		h.grow()
	}
	b := key >> shift % wide
	i := h.free
	e := &h.pool[i]
	h.free = e.next
	e.key, e.item, e.next = key, item, h.head[b]
	h.head[b] = i
	h.busy[b/word] |= 1 << (b % word)
	h.used |= 1 << (b / word)
}

// putNarrow adds an item that does not belong on the wide level.
func (h *Heap) putNarrow(key uint64, item int32) {
	e, differ := entry{key: key, item: item}, key^h.last
	if differ>>h.shift >= wide {
		h.far.put(e, differ, h.shift+wideBits)
	} else {
		h.near.put(e, differ, 0)
	}
}

// grow adds a free entry to the pool.
func (h *Heap) grow() {
	if len(h.pool) == 0 {
		h.pool = append(h.pool, entry{})
	}
	h.free = int32(len(h.pool))
	h.pool = append(h.pool, entry{})
}

// Pop takes out an item of the least key. The heap is not empty.
func (h *Heap) Pop() (key uint64, item int32) {
	if h.near.levels != 0 {
		return h.popNear()
	}
	if h.used == 0 {
		h.fetch()
	}
	w := uint(bits.TrailingZeros64(h.used)) % word
	b := w*word | uint(bits.TrailingZeros64(h.busy[w]))%word
	i := h.head[b]
	e := &h.pool[i]
	if e.next != 0 && h.shift != 0 {
		return h.popCrowded(b)
	}
	h.head[b] = e.next
	h.close(b, e.next)
	return h.out(i)
}

// popNear pops from below the wide level, which is not empty.
func (h *Heap) popNear() (key uint64, item int32) {
	for {
		level, digit := h.near.lowest()
		b := &h.near.bucket[level<<digitBits|digit]
		last := len(*b) - 1
		if level == 0 || last == 0 {
			top := (*b)[last]
			*b = (*b)[:last]
			if last == 0 {
				h.near.drained(level, digit)
			}
			h.last = top.key
			h.size--
			return top.key, top.item
		}
		list := h.near.take()
		h.last = leastKey(list)
		for _, e := range list {
			h.near.put(e, e.key^h.last, 0)
		}
	}
}

// fetch brings items down to the wide level when all are above it.
func (h *Heap) fetch() {
	list := h.far.take()
	h.last = leastKey(list)
	for _, e := range list {
		h.put(e.key, e.item)
	}
}
