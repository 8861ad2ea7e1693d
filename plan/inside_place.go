package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// An insideSpot is a place that is measured from the faces of another room.
type insideSpot struct {
	room       int // -1 if it is none
	x, y       measure.Length
	lowX, lowY bool // from its west and its south face
}

// besideKeys are the keys that put a room beside another, by the direction.
var besideKeys = [4]string{East: "east_of", North: "north_of", West: "west_of", South: "south_of"}

// readInsidePlace reads where a room is: at a point, or beside another room.
func (l *houseLoader) readInsidePlace(in *inside, ids *names) bool {
	t, key := in.t, "at"
	in.ownLevel = t.Has("level")
	level, okLevel := l.levelOr(t, "level", 0)
	in.level = max(0, level)
	count := 0
	if t.Has("at") {
		count++
	}
	for h, k := range besideKeys {
		if t.Has(k) {
			count++
			key, in.heading = k, Heading(h)
		}
	}
	if count != 1 {
		t.Errorf(key, "found %d of at, east_of, west_of, north_of and south_of; want one of them: the south-west inside corner of the first room, or the one where its walk starts, and beside which room each other one is", count)
		askAllKeys(t)
		return false
	}
	if key == "at" {
		for _, k := range []string{"line", "line_of", "shift"} {
			if t.Has(k) {
				t.Errorf(k, "found %s together with at; want it only with east_of, west_of, north_of or south_of", k)
				return false
			}
		}
		return in.readAt(ids) && okLevel && in.sized
	}
	from, okFrom := ids.find(t, key, source.Required)
	in.from, in.lineOf = from, from
	in.line = "south"
	sides := []string{"south", "north"}
	if in.heading.AlongY() {
		in.line, sides = "west", []string{"west", "east"}
	}
	okLine := true
	if t.Has("line") {
		in.line, okLine = t.Choice("line", source.Optional, sides...)
	}
	if t.Has("line_of") {
		var ok bool
		in.lineOf, ok = ids.find(t, "line_of", source.Required)
		okLine = okLine && ok
	}
	in.shift = lengthOr(t, "shift", insideShifts, 0)
	return okFrom && okLine && okLevel && in.sized
}

// readAt reads the point at which a room is: its coordinates, or distances from
// the faces of another room, on any level.
func (in *inside) readAt(ids *names) (ok bool) {
	if in.t.Kind("at") != source.KindTable {
		in.at, ok = pair(in.t, "at", coordinates)
		return ok
	}
	t, _ := in.t.Table("at", source.Required)
	var okX, okY bool
	in.over.room, ok = ids.find(t, "room", source.Required)
	in.over.x, in.over.lowX, okX = oneOf(t, "west", "east", insideShifts)
	in.over.y, in.over.lowY, okY = oneOf(t, "south", "north", insideShifts)
	return ok && okX && okY
}

// placeInside places a room, after those that it is placed from.
func (l *houseLoader) placeInside(i int, m *makeup) bool {
	in := &l.insides[i]
	switch in.state {
	case insidePlaced:
		return true
	case insideLost:
		return false
	case insidePlacing:
		in.t.Errorf("id", "found rooms that are measured from each other in a circle; want one of them at a point")
		in.state = insideLost
		return false
	}
	in.state = insidePlacing
	if in.from >= 0 && (!l.placeInside(in.from, m) || !l.placeInside(in.lineOf, m)) {
		in.state = insideLost
		return false
	}
	if o := in.over; o.room >= 0 {
		if !l.placeInside(o.room, m) {
			in.state = insideLost
			return false
		}
		if !in.ownLevel {
			in.level = l.insides[o.room].level
		}
		in.at = fromFaces(l.insides[o.room].bounds, o.x, o.lowX, o.y, o.lowY)
	}
	at := in.at.Sub(in.corner)
	if in.from >= 0 {
		if !l.besideLevel(in) {
			in.state = insideLost
			return false
		}
		at = l.beside(i, m)
	}
	in.put(at)
	return true
}

// besideLevel puts a room on the level of that beside which it is.
func (l *houseLoader) besideLevel(in *inside) bool {
	h, from := l.house, &l.insides[in.from]
	if in.ownLevel && in.level != from.level {
		in.t.Errorf("level", "found level %s for a room beside room %s of level %s; want that level, or the room at a point",
			h.Levels[in.level].ID, from.id, h.Levels[from.level].ID).
			Note(from.t.Pos(), "%s is here", from.id)
		return false
	}
	in.level = from.level
	return true
}

// beside is the south-west corner of the bounds of a room that is beside another,
// with the wall between them: as near as it can be moved up from its direction.
func (l *houseLoader) beside(i int, m *makeup) geom.Point {
	in := &l.insides[i]
	from, line := &l.insides[in.from], l.insides[in.lineOf].bounds
	var at geom.Point
	switch in.line {
	case "south":
		at.Y = line.Min.Y
	case "north":
		at.Y = line.Max.Y - in.size.Y
	case "west":
		at.X = line.Min.X
	case "east":
		at.X = line.Max.X - in.size.X
	}
	thick := m.between(i, in.from).thick()
	if in.heading.AlongY() {
		at.X += in.shift
		at.Y = l.upAgainst(from, in, at.X, thick)
	} else {
		at.Y += in.shift
		at.X = l.upAgainst(from, in, at.Y, thick)
	}
	return at
}

// upAgainst is where a room begins, on the axis on which it is beside another,
// given where it begins on the axis across: so that faces that are across from
// each other are apart by the thickness of a wall. Faces of which less than that
// is across from each other don't count, unless there are no others.
func (l *houseLoader) upAgainst(from, in *inside, across, thick measure.Length) measure.Length {
	alongY, rising := in.heading.AlongY(), in.heading.Rising()
	width := extentOf(geom.Rect{Max: in.size}, !alongY)
	little := min(max(thick, l.house.SketchError), (width.hi-1)/2)
	reach := extent{width.lo + little, width.hi - little}
	var best measure.Length
	found := false
	for _, r := range from.parts {
		for _, s := range geom.AreaOf(in.shape).Rects() {
			beside, own := extentOf(r, !alongY), extentOf(s, !alongY)
			own = extent{max(own.lo, reach.lo) + across, min(own.hi, reach.hi) + across}
			if own.overlap(beside) <= 0 {
				continue
			}
			at := extentOf(r, alongY).hi + thick - extentOf(s, alongY).lo
			if !rising {
				at = extentOf(r, alongY).lo - thick - extentOf(s, alongY).hi
			}
			if !found || rising == (at > best) {
				best, found = at, true
			}
		}
	}
	if found {
		return best
	}
	b := extentOf(from.bounds, alongY)
	if rising {
		return b.hi + thick
	}
	return b.lo - thick - extentOf(geom.Rect{Max: in.size}, alongY).hi
}

// extentOf is the extent of a rectangle along X or along Y.
func extentOf(r geom.Rect, alongY bool) extent {
	if alongY {
		return extent{r.Min.Y, r.Max.Y}
	}
	return extent{r.Min.X, r.Max.X}
}
