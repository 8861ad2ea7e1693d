package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/source"
)

// rooms reads [[room]] and finds their outlines from the walls.
func (l *houseLoader) rooms(root *source.Table) {
	var region *geom.Region
	if l.placed {
		region = l.house.region()
	}
	for _, t := range tables(root, "room", source.Need(!root.Has("inside")), mostRooms) {
		r := Room{Pos: t.Pos()}
		r.ID, _ = t.Name("id", source.Required)
		l.roomNames.add(t, "id", r.ID)
		if r.ID == "" {
			l.roomNames.take("", r.Pos)
		}
		r.Name, _ = t.Title("name", source.Required)
		at, ok := pair(t, "at", coordinates)
		r.At = at
		if ok && region != nil {
			l.findRoom(t, &r, region)
		}
		l.house.Rooms = append(l.house.Rooms, r)
	}
	for i := range l.insides {
		l.insideRoom(&l.insides[i], region)
	}
	for i := range l.house.Rooms {
		for _, f := range l.house.facesOf(i) {
			l.house.Walls[f.wall].RoomAt[f.side] = true
		}
	}
}

// region is the plane without the walls.
func (h *House) region() *geom.Region {
	solids := make([]geom.Rect, len(h.Walls))
	for i := range h.Walls {
		solids[i] = h.Walls[i].Body
	}
	// A margin joins all that is outside.
	return geom.NewRegion(solids, h.Boundaries.Outset(1*foot))
}

// findRoom finds the outline of a room.
func (l *houseLoader) findRoom(t *source.Table, r *Room, region *geom.Region) {
	h := l.house
	for i := range h.Walls {
		if h.Walls[i].Body.Contains(r.At) {
			t.Errorf("at", "found the point %s, which is in wall %s; want a point in the open of the room", h.pointText(r.At), h.Walls[i].ID).
				Note(h.Walls[i].Pos, "%s is taped here", h.Walls[i].ID)
			return
		}
	}
	outline, holes, ok := region.Outline(r.At)
	if !ok {
		t.Errorf("at", "found the point %s, which no walls enclose; want a point in a room, with walls all round", h.pointText(r.At))
		return
	}
	for i := range h.Rooms {
		other := &h.Rooms[i]
		if other.found() && region.Reaches(r.At, other.At) {
			t.Errorf("at", "found room %s in the same space as room %s; want one room for each space between walls", r.ID, other.ID).
				Note(other.Pos, "%s is here", other.ID)
			return
		}
	}
	r.Outline, r.Holes, r.Bounds = outline, holes, outline.Bounds()
}

// found reports whether the outline of the room is known.
func (r *Room) found() bool { return len(r.Outline) > 0 }

// wallsOf lists the walls that bound a room.
func (h *House) wallsOf(room int) string {
	var ids []string
	for _, f := range h.facesOf(room) {
		if id := h.Walls[f.wall].ID; !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	return quoted(ids)
}
