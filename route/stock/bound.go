package stock

import (
	"slices"

	"topplate/plan/measure"
)

// lengthBound is the number of new spools that are needed because of the
// lengths of pieces, whatever is on the spools in stock. It needs s.fresh > 0.
//
// For every t up to half a new spool N, let a piece between N-t and N weigh N
// and a piece below t nothing. Then no new spool holds more weight than N
// (Martello and Toth 1990, L2). A spool in stock of length c holds at most c,
// and t more for each piece above N-t: a piece above N weighs its length. The
// bound is the largest over all t, with t = 0 it is the total length.
// O(n log n) for n lengths and stock.
func lengthBound(d demand, s supply) int {
	n := s.fresh
	best := roundUpDiv(d.total()-s.stocked(), n)
	for _, t := range d.size {
		if t > n/2 {
			continue
		}
		weight := measure.Length(0)
		for j, w := range d.size {
			switch {
			case w < t:
				w = 0
			case w > n-t && w < n:
				w = n
			}
			weight += w * measure.Length(d.need[j])
		}
		for k, c := range s.kind {
			weight -= stockWeight(c, n, t) * measure.Length(s.have[k])
		}
		best = max(best, roundUpDiv(weight, n))
	}
	return best
}

// stockWeight bounds the weight that a spool of length c holds at threshold t.
func stockWeight(c, n, t measure.Length) measure.Length {
	if c <= n-t {
		return c
	}
	if c <= n {
		return min(n, c+t)
	}
	return c + c/(n-t+1)*t
}

// roundUpDiv is a/b rounded up, at least 0. It needs b > 0.
func roundUpDiv(a, b measure.Length) int {
	if a <= 0 {
		return 0
	}
	return int((a-1)/b) + 1
}

// bestFit cuts pieces from long to short, each from the spool on which least
// is left after it, and opens new spools where none will do. Pieces longer than
// a new spool may find none: then it returns nil. start is what has been cut
// already, and counts in d. O(pieces * spools).
func bestFit(d demand, s supply, start packing) packing {
	b := newBench(d, s, start)
	for j, w := range d.size {
		for b.need[j] > 0 {
			at := b.tightest(w)
			if at < 0 {
				if s.fresh < w {
					return nil
				}
				at = b.open(freshKind)
			}
			b.put(at, j, 1)
		}
	}
	return b.used()
}

// A bench holds the spools while they are filled.
type bench struct {
	demand
	supply
	need []int // still to cut
	room []measure.Length
	all  packing
}

func newBench(d demand, s supply, start packing) *bench {
	b := &bench{demand: d, supply: s, need: slices.Clone(d.need)}
	left := slices.Clone(s.have)
	for _, f := range start {
		at := b.open(f.kind)
		if f.kind != freshKind {
			left[f.kind]--
		}
		for j, n := range f.count {
			b.put(at, j, n)
		}
	}
	for k, n := range left {
		for range n {
			b.open(k)
		}
	}
	return b
}

func (b *bench) open(kind int) int {
	b.all = append(b.all, filled{kind, make([]int, len(b.size))})
	b.room = append(b.room, b.length(kind))
	return len(b.all) - 1
}

func (b *bench) put(at, j, n int) {
	b.all[at].count[j] += n
	b.need[j] -= n
	b.room[at] -= b.size[j] * measure.Length(n)
}

// tightest is the spool with the least room for a piece of length w, or -1.
func (b *bench) tightest(w measure.Length) int {
	best := -1
	for i, r := range b.room {
		if r >= w && (best < 0 || r < b.room[best]) {
			best = i
		}
	}
	return best
}

// used leaves out spools that are not cut.
func (b *bench) used() packing {
	return slices.DeleteFunc(b.all, func(f filled) bool { return !slices.ContainsFunc(f.count, positive) })
}

func positive(n int) bool { return n > 0 }
