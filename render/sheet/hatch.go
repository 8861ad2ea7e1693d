package sheet

import (
	"cmp"
	"math/bits"
	"slices"
)

// A Hatch is a row of the table of hatchings: it says what an area is, and the
// table says how that looks.
type Hatch uint8

// The hatchings, by what they fill.
const (
	HatchMasonry Hatch = iota
	HatchInsulation
	HatchObstacle
	HatchCrawl
	HatchReach
	HatchRod
	HatchOut
	hatchCount
)

// A HatchStyle is how an area is hatched: with parallel lines at each of the
// angles.
type HatchStyle struct {
	Name    string // a word of ASCII letters and hyphens, unique in the table
	Meaning string // what a legend says
	Pen     Pen
	Angles  []Angle
	Spacing Paper // between neighbouring lines, across them
}

// Style returns the row of h. A Hatch that is not in the table looks like
// HatchMasonry.
func (h Hatch) Style() HatchStyle {
	if h >= hatchCount {
		h = HatchMasonry
	}
	return hatches[h]
}

// minSpacing is the least distance between hatch lines, 0.7 mm (ISO 128-2:2020
// on parallel lines, from memory).
const minSpacing = 700 * Micrometre

// speck is the length up to which a hatch line would be a dot and is left out.
const speck = 100 * Micrometre

const (
	rising  = 45 * Degree
	falling = 135 * Degree
	level   = 0 * Degree
	upright = 90 * Degree
)

// hatches is the table of hatchings. All differ in angle or spacing.
var hatches = [hatchCount]HatchStyle{
	HatchMasonry:    {"masonry", "masonry, cut", PenHatch, []Angle{rising}, 1000},
	HatchInsulation: {"insulation", "insulation", PenZone, []Angle{60 * Degree, 120 * Degree}, 3000},
	HatchObstacle:   {"obstacle", "obstacle", PenHatch, []Angle{falling}, 1500},
	HatchCrawl:      {"crawl", "room to crawl", PenZone, []Angle{rising}, 5000},
	HatchReach:      {"reach", "within arm's reach only", PenZone, []Angle{falling}, 3000},
	HatchRod:        {"rod", "within reach of rods only", PenZone, []Angle{rising, falling}, 2500},
	HatchOut:        {"out", "out of reach", PenZone, []Angle{level, upright}, 1500},
}

// HatchLines returns the lines of the hatching that lie inside an odd number
// of the rings and outside the gaps, which keep lettering clear (ISO 128-50).
// Each line has two points. Lines of equal angle and spacing continue each
// other from area to area, since all are counted from the origin of the
// sheet. Rings that leave the drawable range are not hatched.
//
// It takes time O(l·e) for l lines across the rings and e sides of rings and
// gaps.
func HatchLines(h Hatch, rings [][]Point, gaps ...Box) [][]Point {
	for _, ring := range rings {
		for _, p := range ring {
			if !p.onPaper() {
				return nil
			}
		}
	}
	var lines [][]Point
	s := h.Style()
	for _, a := range s.Angles {
		lines = append(lines, newRuling(a, s.Spacing).lines(rings, gaps)...)
	}
	return lines
}

// A ruling is a family of parallel lines, given by the direction along them
// and the distance between neighbours, both times unit. Line k is where the
// distance across is k steps and a half: no line then runs along a side that
// is drawn on a round coordinate.
type ruling struct {
	sin, cos int64
	step     int64
}

func newRuling(a Angle, spacing Paper) ruling {
	sin, cos := a.sinCos()
	return ruling{sin, cos, int64(max(spacing, minSpacing)) * unit}
}

// across is the distance of p from the line through the origin.
func (r ruling) across(p Point) int64 { return int64(p.X)*r.sin + int64(p.Y)*r.cos }

// along is the distance of p along the lines.
func (r ruling) along(p Point) int64 { return int64(p.X)*r.cos - int64(p.Y)*r.sin }

func (r ruling) lines(rings [][]Point, gaps []Box) [][]Point {
	first, last, ok := r.span(rings)
	if !ok {
		return nil
	}
	var lines [][]Point
	for k := first; k <= last; k++ {
		at := k*r.step + r.step/2
		inside := r.cut(at, rings)
		for _, g := range gaps {
			inside = r.without(inside, r.cut(at, [][]Point{g.Corners()}))
		}
		for i := 0; i+1 < len(inside); i += 2 {
			if d := inside[i+1].Sub(inside[i]); max(d.X, -d.X, d.Y, -d.Y) > speck {
				lines = append(lines, []Point{inside[i], inside[i+1]})
			}
		}
	}
	return lines
}

// span returns the numbers of the first and the last line that can meet the
// rings.
func (r ruling) span(rings [][]Point) (first, last int64, ok bool) {
	var ends []int64
	for _, ring := range rings {
		for _, p := range ring {
			ends = append(ends, r.across(p))
		}
	}
	if len(ends) == 0 {
		return 0, 0, false
	}
	return slices.Min(ends)/r.step - 1, slices.Max(ends)/r.step + 1, true
}

// cut returns where the line at the given distance enters and leaves the
// rings, by turns along the line. A side counts if its ends lie on different
// sides of the line, an end on the line counting as above: so the number of
// crossings is always even.
func (r ruling) cut(at int64, rings [][]Point) []Point {
	var crossings []Point
	for _, ring := range rings {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			a, b := r.across(p)-at, r.across(q)-at
			if (a < 0) != (b < 0) {
				crossings = append(crossings, Point{
					p.X + Paper(mulDiv(int64(q.X-p.X), a, a-b)),
					p.Y + Paper(mulDiv(int64(q.Y-p.Y), a, a-b)),
				})
			}
		}
	}
	slices.SortFunc(crossings, r.compare)
	return crossings
}

func (r ruling) compare(p, q Point) int { return cmp.Compare(r.along(p), r.along(q)) }

// without takes the stretches of gap, sorted, away from those of inside.
func (r ruling) without(inside, gap []Point) []Point {
	if len(gap) < 2 {
		return inside
	}
	from, to := gap[0], gap[len(gap)-1]
	var left []Point
	for i := 0; i+1 < len(inside); i += 2 {
		a, b := inside[i], inside[i+1]
		if r.compare(b, from) <= 0 || r.compare(to, a) <= 0 {
			left = append(left, a, b)
			continue
		}
		if r.compare(a, from) < 0 {
			left = append(left, a, from)
		}
		if r.compare(to, b) < 0 {
			left = append(left, to, b)
		}
	}
	return left
}

// mulDiv is a*b/c rounded to nearest, halves away from zero, where |b| <= |c|
// and c is not zero.
func mulDiv(a, b, c int64) int64 {
	negative := (a < 0) != (b < 0) != (c < 0)
	d := magnitude(c)
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	lo, carry := bits.Add64(lo, d/2, 0)
	q, _ := bits.Div64(hi+carry, lo, d)
	if negative {
		return -int64(q)
	}
	return int64(q)
}

func magnitude(a int64) uint64 {
	if a < 0 {
		return -uint64(a)
	}
	return uint64(a)
}
