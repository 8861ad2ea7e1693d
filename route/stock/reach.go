package stock

import "math/bits"

// A reach is a set of loads: bit l is set if some of the pieces add up to l.
type reach []uint64

func newReach(most int) reach { return make(reach, most/64+1) }

func (r reach) has(l int) bool { return r[l>>6]>>(l&63)&1 != 0 }

// below is the largest load in r that is at most l, or -1.
func (r reach) below(l int) int {
	if l < 0 {
		return -1
	}
	l = min(l, 64*len(r)-1)
	w := l >> 6
	word := r[w] << (63 - l&63)
	if word != 0 {
		return l - bits.LeadingZeros64(word)
	}
	for w--; w >= 0; w-- {
		if r[w] != 0 {
			return w<<6 + 63 - bits.LeadingZeros64(r[w])
		}
	}
	return -1
}

// addShifted adds every load of r plus by, as far as it fits. It goes from
// high to low, so that what it has added is not taken for a load of r.
func (r reach) addShifted(by int) {
	words, shift := by>>6, uint(by&63)
	for i := len(r) - 1; i >= words; i-- {
		v := r[i-words] << shift
		if shift > 0 && i > words {
			v |= r[i-words-1] >> (64 - shift)
		}
		r[i] |= v
	}
}

// addPieces adds the loads with up to n pieces of length w, in steps of 1, 2,
// 4, ... pieces and the rest.
func (r reach) addPieces(w, n int) (steps int) {
	for k := 1; n > 0; k *= 2 {
		k = min(k, n)
		if k*w < 64*len(r) {
			r.addShifted(k * w)
			steps += len(r)
		}
		n -= k
	}
	return steps
}
