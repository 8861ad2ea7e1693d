package plan

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/source"
)

// makeSpaces finds the outlines of the roofs and of all framing spaces.
func (l *houseLoader) makeSpaces() {
	h := l.house
	l.setRoofLevels()
	for _, r := range l.tops {
		l.makeRoof(r)
		h.Roofs = append(h.Roofs, r.roof)
	}
	l.cautionSameRoof()
	for _, a := range l.attics {
		l.makeAttic(a)
		h.Spaces = append(h.Spaces, a.space)
	}
	for _, f := range l.floors {
		l.makeFloor(f)
		h.Spaces = append(h.Spaces, f.space)
	}
	l.putMainFirst()
	for _, a := range l.attics {
		l.decking(a)
	}
	l.cautionSameSpace()
}

// putMainFirst finds the main attic: the first under the first roof that has
// one.
func (l *houseLoader) putMainFirst() {
	h := l.house
	l.spaceAt = make([]int, len(h.Spaces))
	for i := range l.spaceAt {
		l.spaceAt[i] = i
	}
	main := -1
	for i, a := range l.attics {
		if a.roof >= 0 && a.ok && (main < 0 || a.roof < l.attics[main].roof) {
			main = i
		}
	}
	if main < 0 {
		// Something is wrong, and is told. What follows needs some attic.
		if len(h.Spaces) == 0 || len(l.attics) == 0 {
			h.Spaces = append([]*Space{{Above: -1, Roof: -1}}, h.Spaces...)
			for i := range l.spaceAt {
				l.spaceAt[i]++
			}
		}
		if len(h.Roofs) == 0 {
			h.Roofs = []*Roof{{}}
		}
		h.Attic, h.Roof = h.Spaces[0], h.Roofs[0]
		return
	}
	h.Attic, h.Roof = h.Spaces[main], h.Roofs[l.attics[main].roof]
	h.Spaces = slices.Concat([]*Space{h.Attic}, h.Spaces[:main], h.Spaces[main+1:])
	for i := range l.spaceAt[:main+1] {
		l.spaceAt[i] = i + 1
	}
	l.spaceAt[main] = 0
	if v := &h.Levels[h.Roof.Level]; v.OutsideOf != nil {
		h.OutsideOf, h.PlateLine = v.OutsideOf, v.PlateLine
	}
}

// makeAttic finds where an attic is: over its level and under its roof, less
// the levels that stand in it.
func (l *houseLoader) makeAttic(a *attic) {
	h, s := l.house, a.space
	v := &h.Levels[s.Below]
	s.Base = v.plates()
	if !a.ok || !l.placed {
		return
	}
	r := l.tops[a.roof]
	s.Roof, s.Lift = a.roof, s.Base-h.Levels[r.roof.Level].plates()
	if r.roof.Flat {
		s.Kind, s.Roof, s.Lift = FloorSpace, -1, 0
		if s.Insulation > s.Depth {
			a.t.Errorf("insulation", "found %s under a flat roof, whose joists are %s deep; want at most that", h.text(s.Insulation), h.text(s.Depth))
		}
	}
	if v.PlateLine == nil {
		a.t.Errorf("level", "found an attic over level %s, which has no outer walls", v.ID)
		a.ok = false
		return
	}
	if r.roof.Outline == nil {
		a.ok = false
		return
	}
	area := geom.Intersect(v.area(), geom.AreaOf(r.roof.Outline))
	if len(a.area) > 0 {
		area = geom.Intersect(area, l.atPlates(a.area))
	}
	area = geom.Subtract(area, l.areasOver(s.Below)...)
	a.ok = l.outlined(a.t, s, area, v.PlateLine, "attic")
	if a.ok && s.Roof >= 0 && r.roof.Surface != nil && r.roof.Surface.RidgeHeight() <= s.Lift {
		a.t.Errorf("roof", "found an attic whose joists lie %s over the plates under roof %s, which is %s high at its ridge; want a ceiling under the roof",
			h.text(s.Lift), r.roof.ID, h.text(r.roof.Surface.RidgeHeight())).Note(r.roof.Pos, "the roof is described here")
	}
}

// areasOver are the areas of the levels that are higher than one.
func (l *houseLoader) areasOver(level int) (out []geom.Area) {
	for i := range l.house.Levels {
		if v := &l.house.Levels[i]; v.Floor > l.house.Levels[level].Floor && v.PlateLine != nil {
			out = append(out, v.area())
		}
	}
	return out
}

// narrowest is half the width of a part of a space that may come of the error of a
// tape alone, and that no cable is laid in: less than a plate between two faces
// (common practice, no source).
const narrowest = 3 * inch / 2

// outlined gives a space its outlines, without slivers, and reports a space that has none.
func (l *houseLoader) outlined(t *source.Table, s *Space, area geom.Area, whole geom.Polygon, what string) bool {
	if area = area.Opened(narrowest); area.Empty() {
		key := "area"
		if !t.Has(key) {
			key = ""
		}
		t.Errorf(key, "found %s %s, which is nowhere: nothing of its levels, its roof and its area lies over one another", what, s.ID)
		return false
	}
	s.Outlines, s.Holes = area.Outlines, area.Holes
	// The outline of a level as a whole begins where its run does.
	if len(s.Holes) == 0 && len(s.Outlines) == 1 && slices.Equal(s.Outlines[0], geom.Unite(geom.AreaOf(whole)).Outlines[0]) {
		s.Outlines = []geom.Polygon{whole}
	}
	return true
}

// area is all of the space.
func (s *Space) area() geom.Area { return geom.Area{Outlines: s.Outlines, Holes: s.Holes} }

// level is the level below a space, or above a crawl space.
func (s *Space) level() int {
	if s.Below >= 0 {
		return s.Below
	}
	return s.Above
}

// whole is the level below a space, or above a crawl space, if the space has all
// of its outline, else nil.
func (h *House) whole(s *Space) *Level {
	v := &h.Levels[s.level()]
	if len(s.Outlines) == 1 && len(s.Holes) == 0 && slices.Equal(s.Outlines[0], v.PlateLine) {
		return v
	}
	return nil
}

// cautionSameSpace reports spaces that lie in one place.
func (l *houseLoader) cautionSameSpace() {
	for i, s := range l.house.Spaces {
		for _, r := range l.house.Spaces[:i] {
			if (s.Below < 0 || s.Below != r.Below) && (s.Above < 0 || s.Above != r.Above) || geom.Intersect(s.area(), r.area()).Empty() {
				continue
			}
			later, first := s, r
			if cmp.Or(cmp.Compare(s.Pos.Line, r.Pos.Line), cmp.Compare(s.Pos.Col, r.Pos.Col)) < 0 {
				later, first = r, s
			}
			l.list.Errorf(later.Pos, "area", "found %s %s where %s %s is; want area to keep them apart", later.Kind, later.ID, first.Kind, first.ID).
				Note(first.Pos, "%s is described here", first.ID)
			break
		}
	}
}

// spaceOr reads the space that a thing is in, or gives the main attic if it is
// left out.
func (l *houseLoader) spaceOr(t *source.Table) (int, bool) {
	if !t.Has("space") {
		return 0, true
	}
	i, ok := l.spaceNames.find(t, "space", source.Required)
	if !ok {
		return 0, false
	}
	return l.spaceAt[i], true
}

// inSpace reports whether some of a rectangle is in a space, up to the outer
// faces of the walls around it. That can't be told before they are placed.
func (l *houseLoader) inSpace(t *source.Table, key string, s *Space, r geom.Rect, what string) bool {
	h := l.house
	if !l.placed || len(s.Outlines) == 0 {
		return true
	}
	if h.touches(s, r) {
		return true
	}
	d := t.Errorf(key, "found %s from %s to %s, which is %s", what, h.pointText(r.Min), h.pointText(r.Max), h.outsideText(s))
	if h.whole(s) == nil {
		d.Note(s.Pos, "%s is described here", s.ID)
	} else {
		d.Note(h.Walls[l.outers[s.level()].first].Pos, "the outer walls go round from here")
	}
	return false
}

// touches reports whether some of a rectangle is in a space, up to the outer
// faces of the walls around it.
func (h *House) touches(s *Space, r geom.Rect) bool {
	if v := h.whole(s); v != nil {
		return touchesInside(v.OutsideOf, r)
	}
	return slices.ContainsFunc(s.Outlines, func(o geom.Polygon) bool {
		return touchesInside(o, r) && (len(s.Holes) == 0 || !geom.Subtract(geom.Intersect(geom.AreaOf(o), geom.AreaOfRects(r)), geom.AreaOf(s.Holes...)).Empty())
	})
}

// within reports whether p is in a space, up to the outer faces of the walls
// around it.
func (h *House) within(s *Space, p geom.Point) bool {
	if v := h.whole(s); v != nil {
		return v.OutsideOf.Contains(p)
	}
	return s.Contains(p)
}
