package route

import (
	"sort"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Bay is the hollow between two neighbouring studs of a wall: a shaft in
// which cable can be fished straight up and down. Start and End are measured
// along the wall, Bottom and Top above the floor of its level.
type Bay struct {
	Wall       int
	Index      int // counted along the wall from its start, from 0
	Start, End measure.Length
	Bottom     measure.Length // top of the sole plate
	Top        measure.Length // underside of the top plate, or of the sill above
	// Window is the opening that closes the bay at Top, -1 if it goes up to
	// the top plate.
	Window int
}

// PlateThickness is the thickness of one wall plate: dressed 2-by lumber,
// 1-1/2 in (American Softwood Lumber Standard PS 20).
const PlateThickness = 3 * measure.Inch / 2

// Bays lays out the studs of wall w and returns the bays between them, in
// order along the wall. Studs stand at the ends of the frame, on centre from
// its start, in pairs (king and jack) beside every opening, and on both sides
// of every wall that meets this one. In masonry there are none.
func Bays(h *plan.House, w int) []Bay {
	wall := &h.Walls[w]
	if wall.Masonry {
		return nil
	}
	lvl := h.Levels[wall.Level]
	whole := frameSpan(wall, wall.Frame)
	solid := studs(h, w, whole)
	var bays []Bay
	for i, gap := range (spans{whole}).without(solid...) {
		b := Bay{
			Wall: w, Index: i, Start: gap.lo, End: gap.hi,
			Bottom: PlateThickness,
			Top:    lvl.PlateTop - measure.Length(wall.TopPlates)*PlateThickness,
			Window: -1,
		}
		if gap.width() > 0 && closeByOpening(wall, &b) {
			bays = append(bays, b)
		}
	}
	for i := range bays {
		bays[i].Index = i
	}
	return bays
}

// frameSpan projects r on the wall's line.
func frameSpan(w *plan.Wall, r geom.Rect) span {
	return ordered(w.Along(r.Min), w.Along(r.Max))
}

// studs returns what is solid in the frame of wall w, as spans along it.
func studs(h *plan.House, w int, whole span) []span {
	wall := &h.Walls[w]
	t := wall.StudWidth
	out := []span{{whole.lo, whole.lo + t}, {whole.hi - t, whole.hi}}
	for c := whole.lo + wall.Spacing; c < whole.hi; c += wall.Spacing {
		if !besideOpening(wall, c) {
			out = append(out, around(c, t/2))
		}
	}
	for i := range wall.Openings {
		o := &wall.Openings[i]
		out = append(out, span{o.Start - 2*t, o.Start}, span{o.End, o.End + 2*t})
	}
	for v := range h.Walls {
		if v != w && h.Walls[v].Level == wall.Level {
			if s, ok := meets(wall, &h.Walls[v]); ok {
				out = append(out, span{s.lo - t, s.hi + t})
			}
		}
	}
	for i := range out {
		out[i].lo, out[i].hi = max(out[i].lo, whole.lo), min(out[i].hi, whole.hi)
	}
	return out
}

// besideOpening reports whether a stud on layout at c would stand in an
// opening without a sill under it; there is none.
func besideOpening(w *plan.Wall, c measure.Length) bool {
	for i := range w.Openings {
		o := &w.Openings[i]
		if o.Sill <= 0 && o.Start < c && c < o.End {
			return true
		}
	}
	return false
}

// meets returns where the frame of v meets or crosses that of w, as a span
// along w.
func meets(w, v *plan.Wall) (span, bool) {
	if v.AlongY() == w.AlongY() || v.Body.Intersect(w.Body).Empty() {
		return span{}, false
	}
	return frameSpan(w, v.Frame), true
}

// closeByOpening lowers the top of a bay that lies under a window and reports
// whether anything of the bay is left. Over an opening nothing is left: the
// header and its cripples take it up to the plate.
func closeByOpening(w *plan.Wall, b *Bay) bool {
	for i := range w.Openings {
		o := &w.Openings[i]
		if b.Start >= o.End || b.End <= o.Start {
			continue
		}
		b.Window = i
		b.Top = o.Sill - PlateThickness
		return b.Top > b.Bottom
	}
	return true
}

// bayAt returns the bay that holds the point s along the wall, or the index
// it would be inserted at and false.
func bayAt(bays []Bay, s measure.Length) (int, bool) {
	i := sort.Search(len(bays), func(i int) bool { return bays[i].End >= s })
	return i, i < len(bays) && bays[i].Start <= s
}
