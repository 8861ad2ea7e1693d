package plan

import (
	"topplate/plan/geom"
	"topplate/plan/source"
)

// hatches reads [[hatch]].
func (l *houseLoader) hatches(root *source.Table) {
	found := tables(root, "hatch", source.Optional, mostOthers)
	if array, ok := root.Array("hatch", source.Optional); !root.Has("hatch") || ok && len(array.Keys()) == 0 {
		root.Errorf("hatch", "found no [[hatch]]; want at least one: without it the attic can't be entered")
	}
	ids := l.newNames("hatch")
	for _, t := range found {
		h := Hatch{Pos: t.Pos()}
		h.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", h.ID)
		room, okRoom := l.roomNames.find(t, "room", source.Required)
		at, okAt := l.spots().read(t, "at")
		size, okSize := pair(t, "size", hatchSizes)
		if !okRoom || !okAt || !okSize {
			continue
		}
		h.Room = room
		h.Area.Min = geom.Point{X: at.X - size.X/2, Y: at.Y - size.Y/2}
		h.Area.Max = h.Area.Min.Add(size)
		if l.underRoof(t, "at", h.Area, "a hatch") {
			l.cautionHatch(t, &h)
			l.house.Hatches = append(l.house.Hatches, h)
		}
	}
}

// cautionHatch warns of a hatch that is not in its room, or that cuts trusses.
func (l *houseLoader) cautionHatch(t *source.Table, h *Hatch) {
	r, a := &l.house.Rooms[h.Room], l.house.Attic
	if r.found() && !r.holds(h.Area) {
		t.Warnf("at", "the hatch is not wholly in room %s", r.ID).Note(r.Pos, "%s is here", r.ID)
	}
	across := h.Area.Height()
	if a.AlongY {
		across = h.Area.Width()
	}
	if gap := a.Spacing - a.Width; a.Joist == Truss && gap > 0 && across > gap {
		t.Warnf("size", "the hatch is %s wide across the trusses, and the gap between two of them is %s; a truss must not be cut", l.house.text(across), l.house.text(gap)).
			Note(a.Pos, "the trusses are described here")
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
