package plan

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
)

// Bounds of how levels stand on one another (common practice, no source). They
// catch slips of the pen and judge no structure.
var (
	// cantilevers is how far walls may stand beyond the outline below.
	cantilevers = between(0, 4*foot, "a floor that reaches out over the walls below")
	// onGround are the heights of floors that may be on foundations of their
	// own: a basement, the floor by the ground, the higher half of a split level.
	onGround = between(floors.Min, 6*foot, "a floor on foundations of its own")
	// floorDepths is how far a floor may be over the plates that carry it.
	floorDepths = between(0, 3*foot, "the joists and the boards of a floor")
)

// stack holds the levels against each other.
func (l *houseLoader) stack() {
	if !l.placed {
		return
	}
	l.checkVolumes()
	for level := range l.house.Levels {
		if l.outers[level].run != nil {
			l.checkStanding(level)
			l.cautionNoFloor(level)
		}
	}
	l.cautionBare()
}

// checkVolumes reports levels of which rooms are in one place.
func (l *houseLoader) checkVolumes() {
	h := l.house
	for i := range h.Levels {
		for j := range i {
			a, b := &h.Levels[j], &h.Levels[i]
			if a.Floor >= b.Floor+b.Ceiling || b.Floor >= a.Floor+a.Ceiling {
				continue
			}
			if p, q, ok := h.sharedRooms(j, i); ok {
				l.list.Errorf(b.Pos, "level", "found level %s from %s to %s and level %s from %s to %s, of which rooms %s and %s are in one place; want levels over or beside one another",
					b.ID, h.text(b.Floor), h.text(b.Floor+b.Ceiling), a.ID, h.text(a.Floor), h.text(a.Floor+a.Ceiling), q.ID, p.ID).
					Note(a.Pos, "%s is described here", a.ID)
			}
		}
	}
}

// sharedRooms finds rooms of two levels that overlap in plan, the first by id.
func (h *House) sharedRooms(i, j int) (p, q *Room, ok bool) {
	for a := range h.Rooms {
		for b := range h.Rooms {
			r, s := &h.Rooms[a], &h.Rooms[b]
			if r.Level != i || s.Level != j || !r.found() || !s.found() ||
				ok && cmp.Or(cmp.Compare(r.ID, p.ID), cmp.Compare(s.ID, q.ID)) > 0 || !r.over(s) {
				continue
			}
			p, q, ok = r, s, true
		}
	}
	return p, q, ok
}

// over reports whether two rooms overlap in plan.
func (r *Room) over(s *Room) bool {
	return overlaps(r.Bounds, s.Bounds) && !geom.Intersect(r.area(), s.area()).Empty()
}

// area is the floor of a room.
func (r *Room) area() geom.Area {
	return geom.Area{Outlines: []geom.Polygon{r.Outline}, Holes: r.Holes}
}

// carriers are the levels whose plates are right below a level's floor.
func (h *House) carriers(level int) (out []int) {
	v := &h.Levels[level]
	for i := range h.Levels {
		if w := &h.Levels[i]; w.Floor < v.Floor && w.PlateLine != nil && floorDepths.Contains(v.Floor-w.plates()) {
			out = append(out, i)
		}
	}
	return out
}

// checkStanding reports walls of a level that stand on nothing.
func (l *houseLoader) checkStanding(level int) {
	h := l.house
	if onGround.Contains(h.Levels[level].Floor) {
		return
	}
	var below []geom.Area
	for _, i := range h.carriers(level) {
		below = append(below, h.Levels[i].area())
	}
	for _, s := range h.Spaces {
		if s.Kind == CrawlSpace && s.Above == level {
			below = append(below, s.area())
		}
	}
	var frames []geom.Rect
	for i := range h.Walls {
		if h.Walls[i].Level == level {
			frames = append(frames, h.Walls[i].Frame)
		}
	}
	hanging := geom.Subtract(geom.AreaOfRects(frames...), geom.Unite(below...).Outset(cantilevers.Max)).Rects()
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != level || !slices.ContainsFunc(hanging, func(r geom.Rect) bool { return overlaps(r, w.Frame) }) {
			continue
		}
		l.list.Errorf(w.Pos, "wall", "found wall %s%s, which stands on nothing: no level whose plates are up to %s below its floor at %s is under it or less than %s away; want walls or a crawl space under it",
			w.ID, h.onLevel(level), h.text(floorDepths.Max), h.text(h.Levels[level].Floor), h.text(cantilevers.Max))
	}
}

// overlaps reports whether two rectangles have more in common than an edge.
func overlaps(r, s geom.Rect) bool {
	both := r.Intersect(s)
	return both.Width() > 0 && both.Height() > 0
}

// cautionNoFloor warns of a level that stands on others with no floor between
// them.
func (l *houseLoader) cautionNoFloor(level int) {
	h := l.house
	if l.list.HasErrors() {
		return
	}
	for _, below := range h.carriers(level) {
		v, w := &h.Levels[level], &h.Levels[below]
		if geom.Intersect(v.area(), w.area()).Empty() || slices.ContainsFunc(l.floors, func(f *floor) bool { return f.space.Above == level && f.space.Below == below }) {
			continue
		}
		l.list.Warnf(v.Pos, "floor", "the file has no [[floor]] under level %s and over level %s, so that nothing can be routed between them", v.ID, w.ID).
			Note(w.Pos, "%s is described here", w.ID)
	}
}

// cautionBare warns of rooms over which there is no space.
func (l *houseLoader) cautionBare() {
	h := l.house
	if l.list.HasErrors() {
		return
	}
	parts := make([][]geom.Rect, len(h.Levels))
	for _, s := range h.Spaces {
		if s.Below >= 0 {
			parts[s.Below] = append(parts[s.Below], s.area().Rects()...)
		}
	}
	for i := range h.Rooms {
		r := &h.Rooms[i]
		over := slices.ContainsFunc(parts[r.Level], func(part geom.Rect) bool {
			return overlaps(part, r.Bounds) && !geom.Intersect(r.area(), geom.AreaOfRects(part)).Empty()
		})
		if r.found() && !over && r.Use != stairsUse {
			l.list.Warnf(r.Pos, "room", "there is no attic and no floor over room %s, so that nothing can be routed over its ceiling", r.ID)
		}
	}
}
