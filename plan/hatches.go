package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/source"
)

// hatches reads [[hatch]].
func (l *houseLoader) hatches(root *source.Table) {
	found := tables(root, "hatch", source.Optional, mostOthers)
	if array, ok := root.Array("hatch", source.Optional); l.entered() && (!root.Has("hatch") || ok && len(array.Keys()) == 0) {
		root.Errorf("hatch", "found no [[hatch]]; want at least one: without it the attic can't be entered")
	}
	ids := l.newNames("hatch")
	for _, t := range found {
		h := Hatch{Pos: t.Pos(), Room: -1}
		h.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", h.ID)
		space, okSpace := l.spaceOr(t)
		h.Space = space
		outside := boolOr(t, "outside", false)
		room, okRoom := l.roomNames.find(t, "room", source.Need(!outside))
		okRoom = okRoom || outside && !t.Has("room")
		at, okAt := l.spots().read(t, "at")
		size, okSize := pair(t, "size", hatchSizes)
		if !okSpace || !okRoom || !okAt || !okSize {
			continue
		}
		h.Room = room
		h.Area.Min = geom.Point{X: at.X - size.X/2, Y: at.Y - size.Y/2}
		h.Area.Max = h.Area.Min.Add(size)
		if l.inSpace(t, "at", l.house.Spaces[space], h.Area, "a hatch") && l.hatchLeads(t, &h) {
			l.cautionHatch(t, &h)
			l.house.Hatches = append(l.house.Hatches, h)
		}
	}
	if !l.list.HasErrors() {
		l.cautionShut()
	}
}

// entered reports whether the house has a space that one gets into, as far as
// can be told.
func (l *houseLoader) entered() bool {
	return !l.placed || slices.ContainsFunc(l.house.Spaces, func(s *Space) bool { return s.Kind != FloorSpace })
}

// cautionShut warns of attics and crawl spaces that no hatch leads to.
func (l *houseLoader) cautionShut() {
	for i, s := range l.house.Spaces {
		if s.Kind != FloorSpace && s.ID != "" && len(l.house.Spaces) > 1 && !slices.ContainsFunc(l.house.Hatches, func(h Hatch) bool { return h.Space == i }) {
			l.list.Warnf(s.Pos, "hatch", "no hatch leads into %s %s, where then nothing can be run by hand", s.Kind, s.ID)
		}
	}
}

// hatchLeads reports whether the room of a hatch is beside its space: below
// or above it, or on a level that stands in an attic.
func (l *houseLoader) hatchLeads(t *source.Table, h *Hatch) bool {
	s := l.house.Spaces[h.Space]
	if len(s.Outlines) == 0 {
		return true // what is wrong with the space is told
	}
	if s.Kind == FloorSpace {
		t.Errorf("space", "found a hatch into floor %s, which no hand gets into; want an attic or a crawl space", s.ID).Note(s.Pos, "%s is described here", s.ID)
		return false
	}
	if h.Room < 0 {
		return true
	}
	r := &l.house.Rooms[h.Room]
	if s.Kind == CrawlSpace && (r.Level == s.Above || l.house.stepsDown(s, r.Level)) || s.Kind == AtticSpace && l.house.Levels[r.Level].Floor >= l.house.Levels[s.Below].Floor {
		return true
	}
	t.Errorf("room", "found room %s%s, which %s %s is not beside", r.ID, l.house.onLevel(r.Level), s.Kind, s.ID).Note(s.Pos, "%s is described here", s.ID)
	return false
}

// stepsDown reports whether a level stands beside a crawl space at the height of
// what lies under the joists there, as in a split level: one gets in through the
// wall between.
func (h *House) stepsDown(s *Space, level int) bool {
	v := &h.Levels[level]
	return v.Floor < s.Base && s.Base-s.Clear < v.Floor+v.Ceiling
}

// cautionHatch warns of a hatch that is not in its room, or that cuts trusses.
// One in a low wall leads to the strip of the space behind it.
func (l *houseLoader) cautionHatch(t *source.Table, h *Hatch) {
	s := l.house.Spaces[h.Space]
	if h.Room >= 0 {
		r := &l.house.Rooms[h.Room]
		if level := s.level(); r.found() && r.Level == level && !r.holds(h.Area) {
			t.Warnf("at", "the hatch is not wholly in room %s", r.ID).Note(r.Pos, "%s is here", r.ID)
		} else if r.Level != level {
			return
		}
	}
	across := h.Area.Height()
	if s.AlongY {
		across = h.Area.Width()
	}
	if gap := s.Spacing - s.Width; s.Joist == Truss && gap > 0 && across > gap {
		t.Warnf("size", "the hatch is %s wide across the trusses, and the gap between two of them is %s; a truss must not be cut", l.house.text(across), l.house.text(gap)).
			Note(s.Pos, "the trusses are described here")
	}
}

// holds reports whether the whole of a rectangle is in the room.
func (r *Room) holds(area geom.Rect) bool {
	for _, p := range [4]geom.Point{area.Min, {X: area.Max.X, Y: area.Min.Y}, area.Max, {X: area.Min.X, Y: area.Max.Y}} {
		if !r.contains(p) {
			return false
		}
	}
	for _, p := range append([]geom.Polygon{r.Outline}, r.Holes...) {
		for i, a := range p {
			if geom.SegmentEntersRect(a, p[(i+1)%len(p)], area) {
				return false
			}
		}
	}
	return true
}
