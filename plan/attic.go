package plan

import (
	"topplate/plan/geom"
	"topplate/plan/source"
)

// joistSizes are the names of lumber that joists, rafters and chords are made
// of.
var joistSizes = []string{"2x4", "2x6", "2x8", "2x10", "2x12"}

// attic reads [attic].
func (l *houseLoader) attic(root *source.Table) {
	t, ok := root.Table("attic", source.Required)
	if !ok {
		return
	}
	a := l.house.Attic
	a.Pos = t.Pos()
	run, _ := t.Choice("joists_run", source.Required, "N", "E")
	a.AlongY = run == "N"
	if kind, _ := t.Choice("joist", source.Required, "sawn", "truss"); kind == "truss" {
		a.Joist = Truss
	}
	a.Spacing, _ = length(t, "spacing", source.Required, onCentre)
	a.First, _ = length(t, "first", source.Required, coordinates)
	a.Width = lengthOr(t, "width", members, l.std.studWidth)
	l.joistDepth(t, a)
	a.Insulation = lengthOr(t, "insulation", insulations, 0)
	if a.Spacing != 0 && a.Spacing <= a.Width {
		t.Errorf("width", "found joists of %s at %s on centre; want room between them", a.Width, a.Spacing)
	}
	for _, d := range tables(t, "decking", source.Optional, mostOthers) {
		if r, ok := rect(d); ok && l.underRoof(d, "from", r, "decking") {
			a.Decking = append(a.Decking, r)
		}
	}
}

// joistDepth reads the depth of the joists, by the name of a size or as a
// length.
func (l *houseLoader) joistDepth(t *source.Table, a *Space) {
	switch {
	case t.Has("size") && t.Has("depth"):
		t.Errorf("depth", "found both size and depth; want one of them")
	case t.Has("depth"):
		a.Depth, _ = length(t, "depth", source.Required, depths)
	default:
		a.Depth, _ = lumberDepth(t, "size", source.Required, joistSizes, depths)
	}
}

// underRoof reports whether some of a rectangle is within the outer walls.
// That can't be told before they are placed.
func (l *houseLoader) underRoof(t *source.Table, key string, r geom.Rect, what string) bool {
	if !l.placed || touchesInside(l.house.OutsideOf, r) {
		return true
	}
	t.Errorf(key, "found %s from %s to %s, which is outside of the house", what, l.house.pointText(r.Min), l.house.pointText(r.Max)).
		Note(l.house.Walls[l.outerFirst].Pos, "the outer walls are taped here")
	return false
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
