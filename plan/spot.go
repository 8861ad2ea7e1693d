package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A spotReader reads places in plan: a point, or distances from the faces of
// a room.
type spotReader struct {
	house *House
	rooms *names
}

// spots reads places in the house.
func (l *houseLoader) spots() spotReader { return spotReader{house: l.house, rooms: l.roomNames} }

// read reads the place under key. ok is false also if it is measured from a
// room whose outline is not known.
func (s spotReader) read(t *source.Table, key string) (geom.Point, bool) {
	if t.Kind(key) != source.KindTable {
		return pair(t, key, coordinates)
	}
	in, _ := t.Table(key, source.Required)
	room, ok := s.rooms.find(in, "room", source.Required)
	x, lowX, okX := oneOf(in, "west", "east", alongWalls)
	y, lowY, okY := oneOf(in, "south", "north", alongWalls)
	if !ok || !okX || !okY || !s.house.Rooms[room].found() {
		return geom.Point{}, false
	}
	p := fromFaces(s.house.Rooms[room].Bounds, x, lowX, y, lowY)
	r := &s.house.Rooms[room]
	if !r.contains(p) {
		t.Errorf(key, "found a place at %s, which is not in room %s", s.house.pointText(p), r.ID).Note(r.Pos, "%s is here", r.ID)
		return p, false
	}
	return p, true
}

// fromFaces is the point at two distances from faces of a rectangle, from the lower
// or the higher on either axis.
func fromFaces(b geom.Rect, x measure.Length, lowX bool, y measure.Length, lowY bool) geom.Point {
	p := geom.Point{X: b.Max.X - x, Y: b.Max.Y - y}
	if lowX {
		p.X = b.Min.X + x
	}
	if lowY {
		p.Y = b.Min.Y + y
	}
	return p
}

// oneOf reads the distance from one of two opposite faces of a room. isLow is
// true for the first of them.
func oneOf(t *source.Table, low, high string, b bound) (v measure.Length, isLow, ok bool) {
	isLow = t.Has(low)
	switch {
	case isLow && t.Has(high):
		t.Errorf(high, "found both %s and %s; want one of them", low, high)
		return 0, false, false
	case isLow:
		v, ok = length(t, low, source.Required, b)
	case t.Has(high):
		v, ok = length(t, high, source.Required, b)
	default:
		t.Errorf(low, "missing; want the distance from the %s or the %s face of the room", low, high)
	}
	return v, isLow, ok
}
