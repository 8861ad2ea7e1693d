package route

import (
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route/bundle"
)

// A fitting puts cables through a member in as few holes as possible.
type fitting struct {
	bits         []plan.Bit
	over         measure.Length // by how much a hole is larger than its bundle
	largest      measure.Length // hole that the member allows
	holes        int
	bundle       measure.Length // the largest
	bit          measure.Length // the largest
	width        measure.Length // of all holes side by side, gaps counted
	gap          measure.Length
	counts       []int // cables by hole, thickest first
	everythingIn bool
}

// A Bore is one of the holes that are bored side by side at a place.
type Bore struct {
	Cables int
	// Bundle is the diameter of a circle that surely encloses its cables.
	Bundle measure.Length
	// Bit is the smallest of the bits that leaves a bundle its room.
	Bit measure.Length
}

// Bores says how cables of the given diameters go through a member that allows
// holes up to largest: in as few holes as a plan counts on, side by side, each
// no larger than its own bundle needs. width is that of all of them, gaps
// counted. ok is false if a cable goes through no hole that one of the bits
// makes; it and those after it are then left out.
func Bores(bits []plan.Bit, book rule.Book, largest measure.Length, cables []measure.Length) (bores []Bore, width measure.Length, ok bool) {
	f := newFitting(bits, book, largest, cables)
	rest := slices.Clone(cables)
	slices.Sort(rest)
	slices.Reverse(rest)
	for _, n := range f.counts {
		// A plan takes cables of different diameters to be as thick as the
		// thickest, so that one more never needs less. Here they are told apart.
		b := Bore{Cables: n, Bundle: min(bundle.Diameter(n, rest[0]), bundle.Enclosing(rest[:n]))}
		b.Bit, _ = smallestBit(bits, b.Bundle+f.over, largest)
		if bores = append(bores, b); len(bores) > 1 {
			width += f.gap
		}
		width += b.Bit
		rest = rest[n:]
	}
	return bores, width, f.everythingIn
}

// newFitting fits cables of the given diameters. Cables go through a hole as
// the bundle of so many of its thickest; the thickest cables come first, and
// each hole takes as many as it can, which needs the fewest holes.
func newFitting(bits []plan.Bit, book rule.Book, largest measure.Length, cables []measure.Length) fitting {
	f := fitting{bits: bits, over: book.Length(rule.HoleOverBundle), largest: largest, gap: book.Length(rule.HoleToMember), everythingIn: true}
	rest := slices.Clone(cables)
	slices.Sort(rest)
	slices.Reverse(rest)
	for len(rest) > 0 {
		n := f.take(rest)
		if n == 0 {
			f.everythingIn = false
			return f
		}
		rest = rest[n:]
	}
	return f
}

// take bores one more hole for as many of the cables as it takes, thickest
// first, and returns how many those are.
func (f *fitting) take(cables []measure.Length) int {
	n, bit := 0, measure.Length(0)
	for n < len(cables) {
		b, ok := smallestBit(f.bits, bundle.Diameter(n+1, cables[0])+f.over, f.largest)
		if !ok {
			break
		}
		n, bit = n+1, b
	}
	if n == 0 {
		return 0
	}
	if f.holes > 0 {
		f.width += f.gap
	}
	f.holes++
	f.counts = append(f.counts, n)
	f.width += bit
	f.bit = max(f.bit, bit)
	f.bundle = max(f.bundle, bundle.Diameter(n, cables[0]))
	return n
}

// smallestBit is the smallest bit between need and most.
func smallestBit(bits []plan.Bit, need, most measure.Length) (best measure.Length, ok bool) {
	for _, b := range bits {
		if need <= b.Diameter && b.Diameter <= most && (!ok || b.Diameter < best) {
			best, ok = b.Diameter, true
		}
	}
	return best, ok
}

// diameters lists the diameters of all cables of some drops.
func diameters(job *plan.Job, drops []int) []measure.Length {
	var out []measure.Length
	for _, d := range drops {
		for range job.Drops[d].Count {
			out = append(out, job.Drops[d].Cable.Diameter)
		}
	}
	return out
}

// capacity is the largest number of the job's thickest cables that go through
// the plate of w in the free stretch.
func (b *builder) capacity(w *plan.Wall, free measure.Length) int {
	var thickest measure.Length
	for i := range b.job.Drops {
		thickest = max(thickest, b.job.Drops[i].Cable.Diameter)
	}
	const most = 500
	cables := make([]measure.Length, 0, most)
	for len(cables) < most {
		cables = append(cables, thickest)
		f := newFitting(b.job.Tools.Bits, b.book, b.holeSize(w), cables)
		if !f.everythingIn || f.width > free {
			return len(cables) - 1
		}
	}
	return most
}
