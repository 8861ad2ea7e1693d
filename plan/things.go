package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
)

func (l *houseLoader) spots() spotReader { return spotReader{house: l.house, rooms: l.roomNames} }

// hatches reads [[hatch]].
func (l *houseLoader) hatches(root *source.Table) {
	found := tables(root, "hatch", source.Optional, mostOthers)
	if len(found) == 0 && root.Kind("hatch") == source.KindNone {
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
	r, a := &l.house.Rooms[h.Room], &l.house.Attic
	if r.found() && !r.holds(h.Area) {
		t.Warnf("at", "the hatch is not wholly in room %s", r.ID).Note(r.Pos, "%s is here", r.ID)
	}
	across := h.Area.Height()
	if a.AlongY {
		across = h.Area.Width()
	}
	if gap := a.Spacing - a.Width; a.Kind == Truss && gap > 0 && across > gap {
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

// hotByKind are the kinds of obstacle, and which are hot unless the file says
// otherwise.
var hotByKind = map[string]bool{"duct": false, "chimney": true, "flue": true, "tank": false, "light": true, "unit": false}

// obstacles reads [[obstacle]].
func (l *houseLoader) obstacles(root *source.Table) {
	ids := l.newNames("obstacle")
	for _, t := range tables(root, "obstacle", source.Optional, mostOthers) {
		o := Obstacle{Pos: t.Pos()}
		o.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", o.ID)
		o.Kind, _ = t.Choice("kind", source.Required, "duct", "chimney", "flue", "tank", "light", "unit")
		area, okArea := rect(t)
		o.Bottom = lengthOr(t, "bottom", inAttic, 0)
		top, okTop := length(t, "top", source.Required, inAttic)
		o.Hot = boolOr(t, "hot", hotByKind[o.Kind])
		o.ByRule = !t.Has("clearance")
		o.Clearance = lengthOr(t, "clearance", clearances, clearanceBy(rule.NewBook(nil), o.Kind))
		if okTop && top <= o.Bottom {
			t.Errorf("top", "found a top at %s; want it above the bottom at %s", top, o.Bottom)
		}
		o.Area, o.Top = area, top
		if okArea && l.underRoof(t, "from", area, "an obstacle") {
			l.house.Obstacles = append(l.house.Obstacles, o)
		}
	}
}

// clearanceBy is the distance that a book asks for round a kind of obstacle.
func clearanceBy(book rule.Book, kind string) measure.Length {
	if id, ok := rule.ClearanceOf(kind); ok {
		return book.Length(id)
	}
	return 0
}

// eaves reads [[soffit]] and [[baffle]].
func (l *houseLoader) eaves(root *source.Table) {
	ids := l.newNames("soffit")
	for _, t := range tables(root, "soffit", source.Optional, mostOthers) {
		id, w, e, ok := l.eave(t, ids)
		if ok {
			l.house.Soffits = append(l.house.Soffits, SoffitOpening{ID: id, Pos: t.Pos(), Wall: w, Start: e.lo, End: e.hi})
		}
	}
	ids = l.newNames("baffle")
	for _, t := range tables(root, "baffle", source.Optional, mostOthers) {
		id, w, e, ok := l.eave(t, ids)
		if ok {
			l.house.Baffles = append(l.house.Baffles, Baffle{ID: id, Pos: t.Pos(), Wall: w, Start: e.lo, End: e.hi})
		}
	}
}

// eave reads a stretch of the eave along an outer wall.
func (l *houseLoader) eave(t *source.Table, ids *names) (id string, w int, e extent, ok bool) {
	id, _ = t.Name("id", source.Required)
	ids.add(t, "id", id)
	w, okWall := l.findWall(t, "wall", source.Required)
	e, okStretch := l.stretch(t, w, alongWalls)
	if !okWall || !okStretch {
		return id, w, e, false
	}
	return id, w, e, l.house.underEave(t, w) && l.house.besideWall(t, w, e)
}

// underEave reports whether a wall is an outer wall with an overhang over it.
func (h *House) underEave(t *source.Table, w int) bool {
	wall := &h.Walls[w]
	if !wall.Exterior {
		t.Errorf("wall", "found wall %s, which is not exterior; want an outer wall, which has a soffit", wall.ID).
			Note(wall.Pos, "%s is taped here", wall.ID)
		return false
	}
	if h.Roof.Surface != nil && h.Roof.Overhang == 0 {
		t.Errorf("wall", "found wall %s under a roof without an overhang, which has no soffit", wall.ID).
			Note(h.Roof.Pos, "the roof is described here")
		return false
	}
	return true
}

// besideWall reports whether a stretch is beside a wall or past its ends by no
// more than the overhang.
func (h *House) besideWall(t *source.Table, w int, e extent) bool {
	wall := &h.Walls[w]
	whole := ordered(wall.Along(wall.Body.Min), wall.Along(wall.Body.Max))
	if whole.lo-h.Roof.Overhang <= e.lo && e.hi <= whole.hi+h.Roof.Overhang {
		return true
	}
	t.Errorf("at", "found %s along wall %s; want it from %s to %s, with the overhang at its ends", h.stretchText(e), wall.ID,
		h.text(whole.lo-h.Roof.Overhang), h.text(whole.hi+h.Roof.Overhang)).
		Note(wall.Pos, "%s is taped here", wall.ID)
	return false
}

// mostCircuits bounds the circuits of one power run.
const mostCircuits = 40

// powerRuns reads [[power]].
func (l *houseLoader) powerRuns(root *source.Table) {
	ids := l.newNames("power run")
	for _, t := range tables(root, "power", source.Optional, mostOthers) {
		p := PowerRun{Pos: t.Pos()}
		p.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", p.ID)
		p.Circuits = intOr(t, "circuits", 1, mostCircuits, 1)
		path, ok := t.Array("path", source.Required)
		if !ok {
			continue
		}
		for _, key := range path.Keys() {
			if at, ok := pair(path, key, coordinates); ok {
				p.Path = append(p.Path, at)
				l.cautionOutside(path, key, at)
			}
		}
		l.checkPath(t, path, p.Path)
		l.house.PowerRuns = append(l.house.PowerRuns, p)
	}
}

// checkPath reports a path that is too short, or stands still.
func (l *houseLoader) checkPath(t, path *source.Table, points []geom.Point) {
	if n := len(path.Keys()); n < 2 || n > mostOthers {
		t.Errorf("path", "found %s; want 2 to %d", counted(n, "point"), mostOthers)
	}
	for i := 1; i < len(points); i++ {
		if points[i] == points[i-1] {
			t.Errorf("path", "found the point %s twice in a row; want a path whose legs have a length", l.house.pointText(points[i]))
		}
	}
}

func (l *houseLoader) cautionOutside(t *source.Table, key string, p geom.Point) {
	if l.placed && !l.house.inside(p) {
		t.Warnf(key, "the point %s is outside of the house", l.house.pointText(p))
	}
}

// marks reads [[mark]].
func (l *houseLoader) marks(root *source.Table) {
	ids := l.newNames("mark")
	for _, t := range tables(root, "mark", source.Optional, mostOthers) {
		mk := Mark{Pos: t.Pos()}
		mk.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", mk.ID)
		mk.Kind, _ = t.Choice("kind", source.Required, "light box", "vent", "corner", "pipe", "nail")
		at, ok := l.spots().read(t, "at")
		seen, _ := t.Choice("seen", source.Required, "above", "below", "both")
		mk.At, mk.Above, mk.Below = at, seen != "below", seen != "above"
		if ok && l.placed && !l.house.inside(at) {
			t.Errorf("at", "found the point %s, which is outside of the house", l.house.pointText(at))
		}
		l.house.Marks = append(l.house.Marks, mk)
	}
}
