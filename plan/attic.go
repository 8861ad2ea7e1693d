package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// joistSizes are the names of lumber that joists, rafters and chords are made
// of.
var joistSizes = []string{"2x4", "2x6", "2x8", "2x10", "2x12"}

// mostAttics bounds the attics, the roofs and the floors of a house, of each
// kind.
const mostAttics = 30

// An attic is an [attic] while the roofs are not made.
type attic struct {
	t     *source.Table
	space *Space
	roof  int // index of the roof over it, -1 if not known
	area  []geom.Rect
	ok    bool
}

// readAttics reads [attic] or several [[attic]], and takes up the names of
// roofs, which attics refer to.
func (l *houseLoader) readAttics(root *source.Table) {
	roofs := oneOrMore(root, "roof")
	for _, t := range roofs {
		l.tops = append(l.tops, &top{t: t, roof: &Roof{ID: l.nameOne(t, "roof", len(roofs), l.roofNames), Pos: t.Pos()}})
	}
	attics := oneOrMore(root, "attic")
	for _, t := range attics {
		s := &Space{Kind: AtticSpace, Above: -1, Roof: -1, Pos: t.Pos()}
		s.ID = l.nameOne(t, "attic", len(attics), l.spaceNames)
		a := &attic{t: t, space: s}
		level, okLevel := l.levelOr(t, "level", l.highest())
		s.Below = max(0, level)
		a.roof, a.ok = 0, okLevel && len(roofs) > 0
		if len(roofs) > 1 || t.Has("roof") {
			roof, ok := l.roofNames.find(t, "roof", source.Required)
			a.roof, a.ok = roof, a.ok && ok
		}
		l.framing(t, s, "sawn", "truss", "i-joist")
		a.area = areas(t)
		l.attics = append(l.attics, a)
	}
}

// oneOrMore reads a table [key], or several [[key]].
func oneOrMore(root *source.Table, key string) []*source.Table {
	if root.Kind(key) == source.KindArray {
		return tables(root, key, source.Required, mostAttics)
	}
	if t, ok := root.Table(key, source.Required); ok {
		return []*source.Table{t}
	}
	return nil
}

// nameOne reads the id of one of several tables. One alone may do without, and
// is called as its table.
func (l *houseLoader) nameOne(t *source.Table, kind string, several int, known *names) string {
	id, _ := t.Name("id", source.Need(several > 1))
	if id == "" {
		if several == 1 && !t.Has("id") {
			id = kind
		}
		known.take(id, t.Pos())
		return id
	}
	known.add(t, "id", id)
	return id
}

// areas reads the rectangles under the key area.
func areas(t *source.Table) (out []geom.Rect) {
	for _, a := range tables(t, "area", source.Optional, mostAttics) {
		if r, ok := rect(a); ok {
			out = append(out, r)
		}
	}
	return out
}

// atPlates moves the sides of areas that lie along outer walls to
// the outer faces of their plates: one draws an area along the finished faces.
func (l *houseLoader) atPlates(rects []geom.Rect) geom.Area {
	var xs, ys []measure.Length
	for i := range l.house.Levels {
		for _, p := range l.house.Levels[i].PlateLine {
			xs, ys = append(xs, p.X), append(ys, p.Y)
		}
	}
	out := make([]geom.Rect, len(rects))
	for i, r := range rects {
		out[i] = geom.Rect{
			Min: geom.Point{X: nearest(r.Min.X, xs), Y: nearest(r.Min.Y, ys)},
			Max: geom.Point{X: nearest(r.Max.X, xs), Y: nearest(r.Max.Y, ys)},
		}
	}
	return geom.AreaOfRects(out...)
}

// besidePlates is how far the side of an area may be from the plates that it is
// meant to be at (common practice, no source): cladding, or the whole wall.
const besidePlates = 6 * inch

// nearest is the line nearest to at, the lesser of two, or at itself if none is
// beside it.
func nearest(at measure.Length, lines []measure.Length) measure.Length {
	best, off := at, measure.Length(besidePlates+1)
	for _, x := range lines {
		if d := max(x-at, at-x); d < off || d == off && x < best {
			best, off = x, d
		}
	}
	return best
}

// framing reads the joists of a space and what lies on them.
func (l *houseLoader) framing(t *source.Table, s *Space, kinds ...string) {
	run, _ := t.Choice("joists_run", source.Required, "N", "E")
	s.AlongY = run == "N"
	switch kind, _ := t.Choice("joist", source.Required, kinds...); kind {
	case "truss":
		s.Joist = Truss
	case "i-joist":
		s.Joist = IJoist
	}
	s.Spacing, _ = length(t, "spacing", source.Required, onCentre)
	s.First, _ = length(t, "first", source.Required, coordinates)
	s.Width = lengthOr(t, "width", members, l.std.studWidth)
	l.joistDepth(t, s)
	s.Insulation = lengthOr(t, "insulation", insulations, 0)
	if s.Spacing != 0 && s.Spacing <= s.Width {
		t.Errorf("width", "found joists of %s at %s on centre; want room between them", exact(t.Units(), s.Width), exact(t.Units(), s.Spacing))
	}
}

// decking reads the boards that lie on the joists of an attic.
func (l *houseLoader) decking(a *attic) {
	for _, d := range tables(a.t, "decking", source.Optional, mostOthers) {
		if r, ok := rect(d); ok && l.inSpace(d, "from", a.space, r, "decking") {
			a.space.Decking = append(a.space.Decking, r)
		}
	}
}

// joistDepth reads the depth of the joists, by the name of a size or as a
// length.
func (l *houseLoader) joistDepth(t *source.Table, s *Space) {
	switch {
	case t.Has("size") && t.Has("depth"):
		t.Errorf("depth", "found both size and depth; want one of them")
	case t.Has("depth"):
		s.Depth, _ = length(t, "depth", source.Required, depths)
	default:
		s.Depth, _ = lumberDepth(t, "size", source.Required, joistSizes, depths)
	}
}

// touchesInside reports whether r and the area of p have more in common than
// an edge.
func touchesInside(p geom.Polygon, r geom.Rect) bool {
	if depth, ok := p.Depth(geom.Point{X: middle(r.Min.X, r.Max.X), Y: middle(r.Min.Y, r.Max.Y)}); ok && depth > 0 {
		return true
	}
	for i, a := range p {
		if geom.SegmentEntersRect(a, p[(i+1)%len(p)], r) {
			return true
		}
	}
	return false
}
