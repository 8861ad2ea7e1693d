package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/source"
)

// rooms reads [[room]] and finds their outlines from the walls.
func (l *houseLoader) rooms(root *source.Table) {
	regions := make([]*geom.Region, len(l.house.Levels))
	for level := range regions {
		if l.placed && l.outers[level].run != nil {
			regions[level] = l.house.region(level)
		}
	}
	for _, t := range tables(root, "room", source.Need(!root.Has("inside")), mostRooms) {
		r := Room{Pos: t.Pos()}
		r.ID, _ = t.Name("id", source.Required)
		l.roomNames.add(t, "id", r.ID)
		if r.ID == "" {
			l.roomNames.take("", r.Pos)
		}
		r.Name, _ = t.Title("name", source.Required)
		level, okLevel := l.levelOr(t, "level", 0)
		r.Level = max(0, level)
		l.readUse(t, &r)
		at, ok := pair(t, "at", coordinates)
		r.At = at
		switch {
		case !ok || !okLevel || !l.placed:
		case regions[level] != nil:
			l.findRoom(t, &r, regions[level])
		default:
			t.Errorf("level", "found room %s on level %s, which has no outer walls; want one run with exterior = true and closes = true on it", r.ID, l.house.Levels[level].ID)
		}
		l.house.Rooms = append(l.house.Rooms, r)
	}
	for i := range l.insides {
		in := &l.insides[i]
		l.insideRoom(in, regions[in.level])
	}
	for i := range l.house.Rooms {
		for _, f := range l.house.facesOf(i) {
			l.house.Walls[f.wall].RoomAt[f.side] = true
		}
	}
}

// stairsUse is a room with stairs, which open the floor.
const stairsUse = "stairs"

// uses are what a room may be used as, as far as anything asks.
var uses = []string{"room", "garage", "closet", "bath", "kitchen", "laundry", stairsUse, "mechanical", "storage"}

// readUse reads what a room is used as, and whether its ceiling has a board.
func (l *houseLoader) readUse(t *source.Table, r *Room) {
	if use := choiceOr(t, "use", uses...); use != uses[0] {
		r.Use = use
	}
	r.Open = choiceOr(t, "ceiling", "board", "open") == "open"
}

// region is the plane without the walls of a level.
func (h *House) region(level int) *geom.Region {
	var solids []geom.Rect
	for i := range h.Walls {
		if h.Walls[i].Level == level {
			solids = append(solids, h.Walls[i].Body)
		}
	}
	// A margin joins all that is outside.
	return geom.NewRegion(solids, h.Boundaries.Outset(1*foot))
}

// findRoom finds the outline of a room.
func (l *houseLoader) findRoom(t *source.Table, r *Room, region *geom.Region) {
	h := l.house
	for i := range h.Walls {
		if h.Walls[i].Level == r.Level && h.Walls[i].Body.Contains(r.At) {
			t.Errorf("at", "found the point %s, which is in wall %s; want a point in the open of the room", h.pointText(r.At), h.Walls[i].ID).
				Note(h.Walls[i].here())
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
		if other.found() && other.Level == r.Level && region.Reaches(r.At, other.At) {
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
