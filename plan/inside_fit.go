package plan

import (
	"slices"

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
}

// fits reports rooms of a level that overlap, or are nearer or farther apart than
// the wall between them is thick, and finds the walls. It takes time O(n³).
func (l *houseLoader) fits(on []int, m *makeup) (pairs []facedPair, good bool) {
	good = true
	for n, j := range on {
		for _, i := range on[:n] {
			if !l.apart(i, j, m) {
				good = false
				continue
			}
			p, ok := l.faced(i, j)
			if !ok {
				continue
			}
			wall, fit := l.gapFits(p, m)
			good = good && fit
			if wall {
				pairs = append(pairs, p)
			}
		}
	}
	return pairs, good
}

// apart reports whether two rooms do not overlap.
func (l *houseLoader) apart(i, j int, m *makeup) bool {
	a, b := &l.insides[i], &l.insides[j]
	over := a.area.Intersect(b.area)
	if over.Width() <= 0 || over.Height() <= 0 {
		return true
	}
	h := l.house
	b.t.Errorf("id", "found room %s over room %s by %s east to west and %s north to south; want the wall between them, %s, in between",
		b.id, a.id, h.text(over.Width()), h.text(over.Height()), h.text(m.between(i, j).thick())).
		Note(a.t.Pos(), "%s is here", a.id)
	return false
}

// faced tells how two rooms face each other, if they do with no room in
// between.
func (l *houseLoader) faced(i, j int) (facedPair, bool) {
	for _, alongY := range [2]bool{true, false} {
		p := facedPair{a: i, b: j, alongY: alongY}
		a, b := l.insides[i].sides(alongY), l.insides[j].sides(alongY)
		if a[0].lo > b[0].lo {
			p.a, p.b, a, b = j, i, b, a
		}
		p.gap = extent{a[0].hi, b[0].lo}
		p.along = extent{max(a[1].lo, b[1].lo), min(a[1].hi, b[1].hi)}
		if p.gap.lo > p.gap.hi || p.along.hi-p.along.lo <= l.house.SketchError {
			continue
		}
		p.line = middle(p.gap.lo, p.gap.hi)
		if l.clearBetween(p) {
			return p, true
		}
	}
	return facedPair{}, false
}

// sides are the extents of a room across the walls on two of its sides, and
// along them.
func (in *inside) sides(alongY bool) [2]extent {
	x, y := extent{in.area.Min.X, in.area.Max.X}, extent{in.area.Min.Y, in.area.Max.Y}
	if alongY {
		return [2]extent{x, y}
	}
	return [2]extent{y, x}
}

// clearBetween reports whether no third room of their level is between two that
// face each other.
func (l *houseLoader) clearBetween(p facedPair) bool {
	for k := range l.insides {
		s := l.insides[k].sides(p.alongY)
		if k != p.a && k != p.b && l.insides[k].level == l.insides[p.a].level && s[0].overlap(p.gap) > 0 && s[1].overlap(p.along) > 0 {
			return false
		}
	}
	return true
}

// gapFits reports whether the gap between two rooms that face each other is a
// wall, and whether it is one that it may be.
func (l *houseLoader) gapFits(p facedPair, m *makeup) (wall, fit bool) {
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
		b.t.Warnf("id", "rooms %s and %s are %s apart, and the wall between them is %s thick: %s %s, half of which goes to either face",
			a.id, b.id, h.text(gap), h.text(thick), h.text(off), way)
		return true, true
	case gap > max(doorless, thick+h.SketchError):
		return false, true
	}
	b.t.Errorf("id", "found rooms %s and %s %s apart, and the wall between them is %s thick: they are %s %s; want it within %s (sketch_error in [house])",
		a.id, b.id, h.text(gap), h.text(thick), h.text(off), way, h.text(h.SketchError)).
		Note(a.t.Pos(), "%s is here", a.id)
	return false, false
}

// closingReach is how far rooms are grown so that they and the walls between
// them are one.
func (l *houseLoader) closingReach(m *makeup) measure.Length {
	return (m.thickest()+l.house.SketchError)/2 + 1
}

// thickest is how thick the thickest wall between rooms is.
func (m *makeup) thickest() measure.Length {
	thick := m.inner.thick()
	for i := range m.partitions {
		thick = max(thick, m.partitions[i].run.thick())
	}
	return thick
}

// insideOutline is the line of the inner faces of a level's outer walls. It
// reports rooms that hang together with no others, and spaces that are enclosed
// and no room.
func (l *houseLoader) insideOutline(on []int, m *makeup) (geom.Polygon, bool) {
	reach := l.closingReach(m)
	grown := make([]geom.Rect, len(on))
	var bounds geom.Rect
	for i, k := range on {
		grown[i] = l.insides[k].area.Outset(reach)
		if i == 0 {
			bounds = grown[i]
		}
		bounds.Min = geom.Point{X: min(bounds.Min.X, grown[i].Min.X), Y: min(bounds.Min.Y, grown[i].Min.Y)}
		bounds.Max = geom.Point{X: max(bounds.Max.X, grown[i].Max.X), Y: max(bounds.Max.Y, grown[i].Max.Y)}
	}
	bounds = bounds.Outset(1 * foot)
	indoors := geom.NewRegion(outOfDoors(grown, bounds), bounds)
	good := true
	first := &l.insides[on[0]]
	for _, k := range on {
		if in := &l.insides[k]; !indoors.Reaches(first.area.Min, in.area.Min) {
			in.t.Errorf("id", "found room %s, which no wall joins to room %s; want all rooms%s", in.id, first.id, l.together(first.level)).
				Note(first.t.Pos(), "%s is here", first.id)
			good = false
		}
	}
	outline, holes, ok := indoors.Outline(first.area.Min)
	for _, hole := range holes {
		// The rooms were grown into it.
		b := hole.Bounds().Outset(reach)
		first.t.Errorf("id", "found a space of %s by %s at %s that rooms enclose and that is none; want a room there, or the rooms round it where no gap is left",
			l.house.text(b.Width()), l.house.text(b.Height()), l.house.pointText(b.Min))
		good = false
	}
	return shrunk(outline, reach), good && ok
}

// together says what all rooms of a level have in common.
func (l *houseLoader) together(level int) string {
	if l.house.several() {
		return l.house.onLevel(level) + " within one run of outer walls"
	}
	return " under one roof"
}

// outOfDoors are rectangles that cover what of the bounds no room covers.
func outOfDoors(rooms []geom.Rect, bounds geom.Rect) []geom.Rect {
	free := geom.NewRegion(rooms, bounds)
	xs, ys := []measure.Length{bounds.Min.X, bounds.Max.X}, []measure.Length{bounds.Min.Y, bounds.Max.Y}
	for _, r := range rooms {
		xs, ys = append(xs, r.Min.X, r.Max.X), append(ys, r.Min.Y, r.Max.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	var out []geom.Rect
	for y := range len(ys) - 1 {
		for x := range len(xs) - 1 {
			if !free.Free(geom.Point{X: middle(xs[x], xs[x+1]), Y: middle(ys[y], ys[y+1])}) {
				continue
			}
			if last := len(out) - 1; last >= 0 && out[last].Min.Y == ys[y] && out[last].Max.X == xs[x] {
				out[last].Max.X = xs[x+1]
				continue
			}
			out = append(out, geom.Rect{Min: geom.Point{X: xs[x], Y: ys[y]}, Max: geom.Point{X: xs[x+1], Y: ys[y+1]}})
		}
	}
	return out
}

// shrunk is a counter-clockwise outline moved inwards.
func shrunk(p geom.Polygon, by measure.Length) geom.Polygon {
	out := make(geom.Polygon, len(p))
	for i, at := range p {
		before, after := p[(i+len(p)-1)%len(p)], p[(i+1)%len(p)]
		out[i] = at.Add(inwards(headingOf(before, at), by)).Add(inwards(headingOf(at, after), by))
	}
	return out
}

// inwards is a step to the left of a direction.
func inwards(h Heading, by measure.Length) geom.Point {
	switch h.Turn(Left) {
	case East:
		return geom.Point{X: by}
	case North:
		return geom.Point{Y: by}
	case West:
		return geom.Point{X: -by}
	default:
		return geom.Point{Y: -by}
	}
}

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
