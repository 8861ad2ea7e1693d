package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/source"
)

// mostChases bounds the chases of a house.
const mostChases = 100

// besideChase is how far a room may be from a chase that opens into it: the
// wall between them (common practice, no source).
const besideChase = 1 * foot

// chaseUses are the uses of rooms through which a chase may be expected to go.
var chaseUses = []string{"closet", "mechanical", "storage", "laundry"}

// chases reads [[chase]].
func (l *houseLoader) chases(root *source.Table) {
	ids := l.newNames("chase")
	for _, t := range tables(root, "chase", source.Optional, mostChases) {
		c := Chase{Pos: t.Pos()}
		c.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", c.ID)
		area, okArea := rect(t)
		c.Area = area
		okLevels := l.chaseLevels(t, &c)
		c.Down, c.Hot = boolOr(t, "down", false), boolOr(t, "hot", false)
		holds, okHolds := heldCables(t)
		c.Holds = holds
		okRooms := l.chaseRooms(t, &c, okArea && okLevels)
		if okArea && okLevels && okHolds && okRooms && l.placed && l.chaseFits(t, &c) {
			l.house.Chases = append(l.house.Chases, c)
		}
	}
}

// chaseLevels reads the lowest and the highest level of a chase, or the one
// that it is on.
func (l *houseLoader) chaseLevels(t *source.Table, c *Chase) bool {
	array, ok := t.Array("levels", source.Required)
	if !ok {
		return false
	}
	keys := array.Keys()
	if n := len(keys); n < 1 || n > 2 {
		t.Errorf("levels", "found %s; want the lowest and the highest, or one", counted(n, "level"))
		return false
	}
	var found [2]int
	for i, key := range keys {
		level, okLevel := l.levelNames.find(array, key, source.Required)
		found[i], ok = level, ok && okLevel
	}
	if len(keys) == 1 {
		found[1] = found[0]
	}
	if c.From, c.To = found[0], found[1]; !ok {
		return false
	}
	if from, to := &l.house.Levels[c.From], &l.house.Levels[c.To]; from.Floor > to.Floor {
		t.Errorf("levels", "found level %s before level %s, which is lower; want the lowest first", from.ID, to.ID)
		return false
	}
	return true
}

// chaseRooms reads the rooms that a chase opens into. Whether it does can be
// told only if its place is known.
func (l *houseLoader) chaseRooms(t *source.Table, c *Chase, known bool) bool {
	if !t.Has("rooms") {
		return true
	}
	array, ok := t.Array("rooms", source.Optional)
	if !ok {
		return false
	}
	for _, key := range array.Keys() {
		room, okRoom := l.roomNames.find(array, key, source.Required)
		if ok = ok && okRoom; !okRoom || slices.Contains(c.Rooms, room) {
			continue
		}
		c.Rooms = append(c.Rooms, room)
		r := &l.house.Rooms[room]
		near := geom.AreaOfRects(c.Area.Outset(besideChase))
		if known && r.found() && (!l.house.passes(c, r.Level) || geom.Intersect(near, geom.AreaOf(r.Outline)).Empty()) {
			array.Errorf(key, "found room %s, which the chase is not in or beside", r.ID).Note(r.Pos, "%s is here", r.ID)
			ok = false
		}
	}
	slices.Sort(c.Rooms)
	return ok
}

// passes reports whether a chase goes through a level.
func (h *House) passes(c *Chase, level int) bool {
	floor := h.Levels[level].Floor
	return h.Levels[c.From].Floor <= floor && floor <= h.Levels[c.To].Floor
}

// chaseFits reports whether a chase is within the outer walls of its levels and
// not in stairs. It warns of one in a room that is lived in.
func (l *houseLoader) chaseFits(t *source.Table, c *Chase) bool {
	h := l.house
	area := geom.AreaOfRects(c.Area)
	for _, level := range []int{c.From, c.To} {
		if v := &h.Levels[level]; !geom.Subtract(area, v.area()).Empty() {
			t.Errorf("from", "found a chase from %s to %s, which is not within the outer walls of level %s", h.pointText(c.Area.Min), h.pointText(c.Area.Max), v.ID)
			return false
		}
	}
	for i := range h.Rooms {
		r := &h.Rooms[i]
		if !r.found() || !h.passes(c, r.Level) || !overlaps(c.Area, r.Bounds) || geom.Intersect(area, r.area()).Empty() {
			continue
		}
		if r.Use == stairsUse {
			t.Errorf("from", "found a chase through room %s, which is stairs", r.ID).Note(r.Pos, "%s is here", r.ID)
			return false
		}
		if !slices.Contains(chaseUses, r.Use) {
			t.Warnf("from", `the chase goes through room %s, which is no closet: say use = "closet" if it is one, or tape the walls around the chase`, r.ID).Note(r.Pos, "%s is here", r.ID)
		}
	}
	if c.Down && h.SpaceUnder(c.From, c.middle()) < 0 {
		t.Errorf("down", "found a chase down into the space under level %s, where the file has none: no floor and no crawl space", h.Levels[c.From].ID)
		return false
	}
	return true
}

// middle is the middle of a chase in plan.
func (c *Chase) middle() geom.Point {
	return geom.Point{X: middle(c.Area.Min.X, c.Area.Max.X), Y: middle(c.Area.Min.Y, c.Area.Max.Y)}
}
