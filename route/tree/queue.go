package tree

import "math/bits"

// far is more than any price.
const far = 1 << 62

// A queue is a radix heap (Ahuja, Mehlhorn, Orlin and Tarjan, "Faster
// algorithms for the shortest path problem", J. ACM 37, 1990): no key pushed
// may be below the last one popped. Of equal keys the one pushed last tends
// to come first; the order depends on the pushes alone.
type queue struct {
	last   int64
	size   int
	bucket [64][]entry
}

type entry struct {
	key  int64
	item int32
}

func (q *queue) reset() {
	q.last, q.size = 0, 0
	for i := range q.bucket {
		q.bucket[i] = q.bucket[i][:0]
	}
}

func (q *queue) push(key int64, item int32) {
	i := bits.Len64(uint64(key ^ q.last))
	q.bucket[i] = append(q.bucket[i], entry{key, item})
	q.size++
}

// pop takes out an item of the least key. The queue is not empty.
func (q *queue) pop() (key int64, item int32) {
	if len(q.bucket[0]) == 0 {
		q.refill()
	}
	b := q.bucket[0]
	top := b[len(b)-1]
	q.bucket[0] = b[:len(b)-1]
	q.size--
	return top.key, top.item
}

// refill spreads the first bucket that is not empty over those before it.
func (q *queue) refill() {
	i := 1
	for len(q.bucket[i]) == 0 {
		i++
	}
	least := q.bucket[i][0].key
	for _, e := range q.bucket[i][1:] {
		least = min(least, e.key)
	}
	q.last = least
	for _, e := range q.bucket[i] {
		j := bits.Len64(uint64(e.key ^ least))
		q.bucket[j] = append(q.bucket[j], e)
	}
	q.bucket[i] = q.bucket[i][:0]
}
