package route

import (
	"sort"

	"topplate/plan/measure"
)

// A span is the closed stretch from lo to hi along one axis. It is empty when
// lo exceeds hi.
type span struct{ lo, hi measure.Length }

func (s span) width() measure.Length                 { return s.hi - s.lo }
func (s span) mid() measure.Length                   { return s.lo + (s.hi-s.lo)/2 }
func (s span) contains(x measure.Length) bool        { return s.lo <= x && x <= s.hi }
func (s span) inset(d measure.Length) span           { return span{s.lo + d, s.hi - d} }
func (s span) overlaps(t span) bool                  { return s.lo < t.hi && t.lo < s.hi }
func around(c, half measure.Length) span             { return span{c - half, c + half} }
func ordered(a, b measure.Length) span               { return span{min(a, b), max(a, b)} }
func (s span) clamp(x measure.Length) measure.Length { return max(s.lo, min(x, s.hi)) }

// everywhere has all coordinates in it.
var everywhere = span{-1 << 61, 1 << 61}

// spans are disjoint, in rising order.
type spans []span

// without cuts the open inside of each cut out of the spans, so that the ends
// of a cut itself stay allowed: a limit may be met exactly.
func (ss spans) without(cuts ...span) spans {
	sort.Slice(cuts, func(i, j int) bool { return cuts[i].lo < cuts[j].lo })
	var out spans
	for _, s := range ss {
		lo := s.lo
		for _, c := range cuts {
			if c.hi <= lo || c.lo >= s.hi {
				continue
			}
			if c.lo >= lo {
				out = append(out, span{lo, c.lo})
			}
			lo = max(lo, c.hi)
		}
		if lo <= s.hi {
			out = append(out, span{lo, s.hi})
		}
	}
	return out.nonEmpty()
}

func (ss spans) nonEmpty() spans {
	out := ss[:0:0]
	for _, s := range ss {
		if s.lo <= s.hi {
			out = append(out, s)
		}
	}
	return out
}

// joined are the places in either of two sets of spans.
func (ss spans) joined(tt spans) spans {
	all := append(append(spans(nil), ss...), tt...)
	sort.Slice(all, func(i, j int) bool { return all[i].lo < all[j].lo })
	out := all[:1]
	for _, s := range all[1:] {
		if last := &out[len(out)-1]; s.lo <= last.hi {
			last.hi = max(last.hi, s.hi)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// contains reports whether x is in one of the spans.
func (ss spans) contains(x measure.Length) bool {
	k := sort.Search(len(ss), func(i int) bool { return ss[i].hi >= x })
	return k < len(ss) && ss[k].lo <= x
}
