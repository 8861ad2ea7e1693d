package plan

import (
	"slices"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// doorless is the widest gap between two rooms that is taken as a mistake: less
// than anybody walks through (common practice, no source).
const doorless = 3 * foot

// A facedPair is two rooms that face each other across a wall: a to the west of
// b, or to the south.
type facedPair struct {
	a, b   int
	alongY bool           // the wall runs along Y
	gap    extent         // from face to face
	along  extent         // what of the faces is across from each other
	line   measure.Length // the middle of the gap
	id     string         // of the wall, once walls are called
	pos    diag.Pos
}

// fits reports rooms of a level that overlap, or are nearer or farther apart than
// the wall between them is thick, and finds the walls. For n faces it takes time
// O(n²), and O(n) for each pair of faces that a wall may be between.
func (l *houseLoader) fits(on []int, m *makeup) (pairs []facedPair, good bool) {
	good = true
	faces := make([][]insideFace, len(on))
	for n, j := range on {
		faces[n] = l.insides[j].faces()
		good = l.noNib(j, faces[n], m) && good
		for k, i := range on[:n] {
			if !l.apart(i, j, m) {
				good = false
				continue
			}
			var told []extent
			for _, p := range l.faced(i, j, faces[k], faces[n], l.farthest(i, j, m)) {
				say := !slices.Contains(told, extent{0, p.gap.hi - p.gap.lo})
				wall, fit := l.gapFits(p, m, say)
				told = append(told, extent{0, p.gap.hi - p.gap.lo})
				good = good && fit
				if wall {
					pairs = append(pairs, p)
				}
			}
		}
	}
	return pairs, good
}

// farthest is how far two rooms may be apart for anything to be said of it.
func (l *houseLoader) farthest(i, j int, m *makeup) measure.Length {
	return max(doorless, m.between(i, j).thick()+l.house.SketchError)
}

// apart reports whether two rooms do not overlap.
func (l *houseLoader) apart(i, j int, m *makeup) bool {
	a, b := &l.insides[i], &l.insides[j]
	if !overlaps(a.bounds, b.bounds) {
		return true
	}
	shared := geom.Intersect(geom.AreaOf(a.outline), geom.AreaOf(b.outline))
	if len(shared.Outlines) == 0 {
		return true
	}
	over, h := shared.Outlines[0].Bounds(), l.house
	if min(over.Width(), over.Height()) <= h.SketchError {
		b.t.Errorf("id", "found rooms %s and %s without the wall between them along %s; want it, %s, in between",
			a.id, b.id, h.text(max(over.Width(), over.Height())), h.text(m.between(i, j).thick())).
			Note(a.t.Pos(), "%s is here", a.id)
		return false
	}
	b.t.Errorf("id", "found room %s over room %s by %s east to west and %s north to south; want the wall between them, %s, in between",
		b.id, a.id, h.text(over.Width()), h.text(over.Height()), h.text(m.between(i, j).thick())).
		Note(a.t.Pos(), "%s is here", a.id)
	return false
}

// faced finds where two rooms face each other, no farther apart than most and
// with no room in between.
func (l *houseLoader) faced(i, j int, of, with []insideFace, most measure.Length) (pairs []facedPair) {
	for _, f := range of {
		for _, g := range with {
			if f.looks != g.looks.Opposite() {
				continue
			}
			p := facedPair{a: i, b: j, alongY: !f.looks.AlongY(), gap: extent{f.at, g.at}}
			if !f.looks.Rising() {
				p.a, p.b, p.gap = j, i, extent{g.at, f.at}
			}
			p.along = extent{max(f.along.lo, g.along.lo), min(f.along.hi, g.along.hi)}
			if p.gap.lo > p.gap.hi || p.gap.hi-p.gap.lo > most || p.along.hi-p.along.lo <= l.house.SketchError {
				continue
			}
			p.line = middle(p.gap.lo, p.gap.hi)
			if l.clearBetween(p) {
				pairs = append(pairs, p)
			}
		}
	}
	return pairs
}

// clearBetween reports whether no room of their level is between two faces.
func (l *houseLoader) clearBetween(p facedPair) bool {
	across, along := !p.alongY, p.alongY
	for k := range l.insides {
		if l.insides[k].level != l.insides[p.a].level {
			continue
		}
		for _, r := range l.insides[k].parts {
			if extentOf(r, across).overlap(p.gap) > 0 && extentOf(r, along).overlap(p.along) > 0 {
				return false
			}
		}
	}
	return true
}

// noNib reports faces of one room between which there is but the thickness of a
// wall: none is made that has the same room on both its sides.
func (l *houseLoader) noNib(i int, faces []insideFace, m *makeup) bool {
	in, h := &l.insides[i], l.house
	for _, p := range l.faced(i, i, faces, faces, m.thickest()+h.SketchError) {
		at := p.point(p.along.lo)
		in.t.Errorf("walk", "found a walk round something %s thick at %s, which only a wall can be that stands in the room; want the room without it, and the wall by itself under [[wall]]",
			h.text(p.gap.hi-p.gap.lo), h.pointText(at))
		return false
	}
	return true
}

// gapFits reports whether the gap between two rooms that face each other is a
// wall, and whether it is one that it may be. It tells what is wrong with it if it
// should say so.
func (l *houseLoader) gapFits(p facedPair, m *makeup, say bool) (wall, fit bool) {
	thick := m.between(p.a, p.b).thick()
	gap := p.gap.hi - p.gap.lo
	off, way := gap-thick, "too far apart"
	if off < 0 {
		off, way = -off, "too near"
	}
	h, a, b := l.house, &l.insides[p.a], &l.insides[p.b]
	switch {
	case off == 0:
		return true, true
	case off <= h.SketchError:
		if !say || !l.tells(off) {
			return true, true
		}
		b.t.Warnf("id", "rooms %s and %s are %s apart, and the wall between them is %s thick: %s %s, half of which goes to either face",
			a.id, b.id, h.text(gap), h.text(thick), h.text(off), way)
		return true, true
	case gap > l.farthest(p.a, p.b, m), gap > thick && p.along.hi-p.along.lo <= m.thickest()+h.SketchError:
		// Farther than anybody means to be a wall, or with one in between.
		return false, true
	case !say:
		return false, false
	}
	b.t.Errorf("id", "found rooms %s and %s %s apart, and the wall between them is %s thick: they are %s %s; want it within %s (sketch_error in [house])",
		a.id, b.id, h.text(gap), h.text(thick), h.text(off), way, h.text(h.SketchError)).
		Note(a.t.Pos(), "%s is here", a.id)
	return false, false
}

// tells reports whether a length is more than nothing as messages print it.
func (l *houseLoader) tells(d measure.Length) bool { return l.house.text(d) != l.house.text(0) }

// sayDerived says why two walls that were made round rooms are in each other's
// way: their rooms leave corners that no walls can fill.
func (l *houseLoader) sayDerived(i, j int) bool {
	p, _ := l.runOf(i)
	q, _ := l.runOf(j)
	if !p.derived || !q.derived {
		return false
	}
	a, b := &l.house.Walls[i], &l.house.Walls[j]
	l.list.Errorf(a.Pos, "inside", "found walls %s and %s, made round rooms, in each other's way: faces of rooms are out of line there by less than a wall is thick; want them in line, or farther apart", a.ID, b.ID).
		Note(b.Pos, "%s is made here", b.ID)
	return true
}

// checkAsSketched reports a room that does not come out as it was sketched, but
// for what faces were moved by since a tape is off and for walls that stand free in
// it: where faces are out of line by less than a wall is thick, the ends of walls
// get into it.
func (l *houseLoader) checkAsSketched(in *inside, r *Room) {
	if !r.found() || slices.Equal(r.Outline, in.outline) {
		return
	}
	var made []geom.Rect
	for i := range l.house.Walls {
		if w := &l.house.Walls[i]; w.Level == r.Level && overlaps(w.Body, in.bounds) {
			if run, _ := l.runOf(i); run.derived {
				made = append(made, w.Body)
			}
		}
	}
	was := geom.AreaOf(in.outline)
	off := geom.Unite(geom.Subtract(r.area(), was), geom.Intersect(was, geom.AreaOfRects(made...))).Opened(l.house.SketchError / 2)
	if len(off.Outlines) == 0 {
		return
	}
	at := off.Outlines[0].Bounds()
	in.t.Errorf("id", "found room %s, which its walls make another shape by %s by %s at %s: faces of rooms are out of line there by less than a wall is thick; want them in line, or farther apart",
		in.id, l.house.text(at.Width()), l.house.text(at.Height()), l.house.pointText(at.Min))
}
