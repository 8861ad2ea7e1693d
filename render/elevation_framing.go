package render

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A memberKind says what a piece of a wall's frame is.
type memberKind uint8

// Pieces of a frame.
const (
	plateMember memberKind = iota
	studMember             // kings, jacks, cripples and those in between
	backingMember
	headerMember
	sillMember
	blockMember
)

// A member is one piece of a wall's frame, From and To along the wall, Bottom
// and Top over the floor.
type member struct {
	kind        memberKind
	from, to    measure.Length
	bottom, top measure.Length
}

// framing lays out the frame of a wall around the bays that the routes were
// planned in: what is no bay and no opening is wood. Beside an opening a king
// stud goes up to the plate and a jack to the header; a header lies on the
// jacks, and what is over it is drawn with it, as nobody has seen where it
// ends.
func framing(h *plan.House, w *plan.Wall, bays []route.Bay) []member {
	lvl := &h.Levels[w.Level]
	a, b := w.Along(w.Frame.Min), w.Along(w.Frame.Max)
	whole := stretch{min(a, b), max(a, b)}
	under := lvl.PlateTop - measure.Length(w.TopPlates)*route.PlateThickness
	var out []member
	for i := range w.TopPlates {
		bottom := under + measure.Length(i)*route.PlateThickness
		out = append(out, member{plateMember, whole.from, whole.to, bottom, bottom + route.PlateThickness})
	}
	out = append(out, solePlates(w, whole)...)
	for _, s := range studPieces(h, w, bays, whole) {
		out = append(out, studIn(w, s, under))
	}
	for i := range w.Openings {
		out = append(out, aroundOpening(w, &w.Openings[i], whole, under)...)
	}
	for _, fb := range w.FireBlocks {
		for i := range bays {
			if bays[i].Bottom < fb && fb < bays[i].Top {
				out = append(out, member{
					blockMember, bays[i].Start, bays[i].End,
					max(bays[i].Bottom, fb-route.PlateThickness/2), min(bays[i].Top, fb+route.PlateThickness/2),
				})
			}
		}
	}
	return out
}

// A stretch is a part of a wall, along it.
type stretch struct{ from, to measure.Length }

// solePlates are the plate on the floor, cut out where one walks through.
func solePlates(w *plan.Wall, whole stretch) []member {
	parts := []stretch{whole}
	for i := range w.Openings {
		if o := &w.Openings[i]; o.Sill <= 0 {
			parts = cutOut(parts, stretch{o.Start, o.End})
		}
	}
	var out []member
	for _, s := range parts {
		out = append(out, member{plateMember, s.from, s.to, 0, route.PlateThickness})
	}
	return out
}

// cutOut takes a cut away from parts.
func cutOut(parts []stretch, cut stretch) []stretch {
	var out []stretch
	for _, p := range parts {
		for _, s := range [2]stretch{{p.from, min(p.to, cut.from)}, {max(p.from, cut.to), p.to}} {
			if s.from < s.to {
				out = append(out, s)
			}
		}
	}
	return out
}

// studPieces are the pieces of wood between the bays, each cut where one stud
// ends and the next one begins.
func studPieces(h *plan.House, w *plan.Wall, bays []route.Bay, whole stretch) []stretch {
	solid := []stretch{whole}
	for i := range bays {
		solid = cutOut(solid, stretch{bays[i].Start, bays[i].End})
	}
	t := w.StudWidth
	cuts := []measure.Length{whole.from + t, whole.to - t}
	for i := range w.Openings {
		o := &w.Openings[i]
		cuts = append(cuts, o.Start-2*t, o.Start-t, o.Start, o.End, o.End+t, o.End+2*t)
	}
	for v := range h.Walls {
		if o := &h.Walls[v]; o != w && o.Level == w.Level && o.AlongY() != w.AlongY() && !o.Body.Intersect(w.Body).Empty() {
			a, b := w.Along(o.Frame.Min), w.Along(o.Frame.Max)
			cuts = append(cuts, min(a, b)-t, min(a, b), max(a, b), max(a, b)+t)
		}
	}
	slices.Sort(cuts)
	var out []stretch
	for _, s := range solid {
		for _, c := range cuts {
			if s.from < c && c < s.to {
				out = append(out, stretch{s.from, c})
				s.from = c
			}
		}
		out = append(out, s)
	}
	return slices.DeleteFunc(out, func(s stretch) bool { return noStud(w, bays, s) })
}

// noStud reports whether a piece lies in an opening without a stud in it: all
// of one that goes down to the floor, or to a sill too low for a bay.
func noStud(w *plan.Wall, bays []route.Bay, s stretch) bool {
	for i := range w.Openings {
		if o := &w.Openings[i]; o.Start <= s.from && s.to <= o.End {
			return !slices.ContainsFunc(bays, func(b route.Bay) bool { return b.Window == i })
		}
	}
	return false
}

// studIn is the stud that a piece is: a cripple under a sill, a jack under a
// header, or one up to the plate. A piece that is wider than a stud is
// backing, where another wall meets this one.
func studIn(w *plan.Wall, s stretch, top measure.Length) member {
	m := member{studMember, s.from, s.to, route.PlateThickness, top}
	if s.to-s.from > w.StudWidth {
		m.kind = backingMember
	}
	for i := range w.Openings {
		o := &w.Openings[i]
		switch t := w.StudWidth; {
		case o.Start <= s.from && s.to <= o.End:
			m.top = min(m.top, o.Sill-route.PlateThickness)
		case o.Start-t <= s.from && s.to <= o.Start, o.End <= s.from && s.to <= o.End+t:
			m.top = min(m.top, o.Head)
		}
	}
	return m
}

// aroundOpening is the header over an opening and the sill under it.
func aroundOpening(w *plan.Wall, o *plan.Opening, whole stretch, under measure.Length) []member {
	var out []member
	if o.Head < under {
		out = append(out, member{headerMember, max(whole.from, o.Start-w.StudWidth), min(whole.to, o.End+w.StudWidth), o.Head, under})
	}
	if o.Sill > 0 {
		out = append(out, member{sillMember, o.Start, o.End, max(0, o.Sill-route.PlateThickness), o.Sill})
	}
	return out
}

// crossings are where the members at the given centres cross a wall, along it,
// those between two ends of it only.
func crossings(w *plan.Wall, centres []measure.Length) []measure.Length {
	var out []measure.Length
	lo, hi := w.Frame.Min, w.Frame.Max
	for _, c := range centres {
		p, inside := geom.Point{X: c, Y: lo.Y}, lo.X < c && c < hi.X
		if w.AlongY() {
			p, inside = geom.Point{X: lo.X, Y: c}, lo.Y < c && c < hi.Y
		}
		if inside {
			out = append(out, w.Along(p))
		}
	}
	return out
}

// rafterCentres are where rafters come down on a wall, on the axis it runs
// along.
func rafterCentres(r *plan.Roof, w *plan.Wall) []measure.Length {
	if !w.Exterior || w.Gable || r.Spacing <= 0 {
		return nil
	}
	first, lo, hi := r.FirstX, w.Frame.Min.X, w.Frame.Max.X
	if w.AlongY() {
		first, lo, hi = r.FirstY, w.Frame.Min.Y, w.Frame.Max.Y
	}
	var out []measure.Length
	for c := first + (lo-first)/r.Spacing*r.Spacing - r.Spacing; c < hi; c += r.Spacing {
		if c > lo {
			out = append(out, c)
		}
	}
	return out
}
