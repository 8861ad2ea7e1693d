package radix

import "math/bits"

// A tower is a part of a heap in levels of hexadecimal digits.
type tower struct {
	levels uint64         // bit l set: some bucket of level l is not empty
	full   [levels]uint64 // bit d set: bucket d of the level is not empty
	bucket [levels << digitBits][]entry
}

const (
	digitBits = 4
	levels    = 64 / digitBits
)

// put adds an item whose key differs from the last one popped by some bits.
// The lowest digit starts at bit shift.
func (t *tower) put(e entry, differ uint64, shift uint) {
	l := uint(bits.Len64(differ>>shift|1)-1) / digitBits
	d := uint(e.key>>(shift+l*digitBits)) % (1 << digitBits)
	i := l<<digitBits | d
	t.bucket[i] = append(t.bucket[i], e)
	t.full[l] |= 1 << d
	t.levels |= 1 << l
}

// lowest finds the first bucket that is not empty.
func (t *tower) lowest() (level, digit uint) {
	level = uint(bits.TrailingZeros64(t.levels)) % levels
	return level, uint(bits.TrailingZeros64(t.full[level])) % (1 << digitBits)
}

func (t *tower) drained(level, digit uint) {
	t.full[level] &^= 1 << digit
	if t.full[level] == 0 {
		t.levels &^= 1 << level
	}
}

// take empties the first bucket that is not empty. Its items are good until
// the next call of put for that bucket.
func (t *tower) take() []entry {
	level, digit := t.lowest()
	i := level<<digitBits | digit
	list := t.bucket[i]
	t.bucket[i] = list[:0]
	t.drained(level, digit)
	return list
}

func (t *tower) reset() {
	for t.levels != 0 {
		t.take()
	}
}

func leastKey(list []entry) uint64 {
	least := list[0].key
	for _, e := range list {
		least = min(least, e.key)
	}
	return least
}
