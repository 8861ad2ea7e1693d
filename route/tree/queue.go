package tree

import "math/bits"

// far is more than any price.
const far = 1 << 62

// A queue is a radix heap (Ahuja, Mehlhorn, Orlin and Tarjan, "Faster
// algorithms for the shortest path problem", J. ACM 37, 1990): no key pushed
// may be below the last one popped. Of equal keys the one pushed last tends
// to come first; the order depends on the pushes alone.
//
// A key is in the bucket of the highest digit in which it differs from the last
// one, and of that digit.
type queue struct {
	last   int64
	size   int
	full   [levels]uint64 // digits whose buckets have entries
	bucket [levels][digits][]entry
}

const (
	digitBits = 4
	digits    = 1 << digitBits
	levels    = (64 + digitBits - 1) / digitBits
)

type entry struct {
	key  int64
	item int32
}

func (q *queue) reset() {
	for i := range q.full {
		for full := q.full[i]; full != 0; full &= full - 1 {
			d := bits.TrailingZeros64(full)
			q.bucket[i][d] = q.bucket[i][d][:0]
		}
		q.full[i] = 0
	}
	q.last, q.size = 0, 0
}

func (q *queue) push(key int64, item int32) {
	q.put(entry{key, item})
	q.size++
}

// put lays an entry into its bucket.
func (q *queue) put(e entry) {
	i := (bits.Len64(uint64(e.key^q.last)|1) - 1) / digitBits
	d := e.key >> (i * digitBits) & (digits - 1)
	q.bucket[i][d] = append(q.bucket[i][d], e)
	q.full[i] |= 1 << d
}

// pop takes out an item of the least key. The queue is not empty.
func (q *queue) pop() (key int64, item int32) {
	if q.full[0] == 0 {
		q.refill()
	}
	d := bits.TrailingZeros64(q.full[0])
	b := q.bucket[0][d]
	top := b[len(b)-1]
	if q.bucket[0][d] = b[:len(b)-1]; len(b) == 1 {
		q.full[0] &^= 1 << d
	}
	q.last = top.key
	q.size--
	return top.key, top.item
}

// refill spreads the first bucket that is not empty over those of lower digits.
func (q *queue) refill() {
	i := 1
	for q.full[i] == 0 {
		i++
	}
	d := bits.TrailingZeros64(q.full[i])
	b := q.bucket[i][d]
	least := b[0].key
	for _, e := range b[1:] {
		least = min(least, e.key)
	}
	q.last = least
	q.bucket[i][d] = b[:0]
	q.full[i] &^= 1 << d
	for _, e := range b {
		q.put(e)
	}
}
