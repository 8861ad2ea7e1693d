package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// An inside is a room that the file gives by its inside dimensions, from
// finished face to finished face. Walls are made round it and its neighbours.
type inside struct {
	t        *source.Table
	id, name string
	level    int  // once it is placed
	ownLevel bool // the file says on which level it is
	sized    bool
	shape    geom.Polygon // from the south-west corner of its bounds, if it is sized
	size     geom.Point   // of its bounds
	corner   geom.Point   // where the walk starts, from there
	legs     []survey.Leg // of the walk, none of a room by width and depth
	walked   geom.Polygon // its corners from there, as they come in the walk
	state    insideState
	outline  geom.Polygon // once it is placed, against the clock
	bounds   geom.Rect
	parts    []geom.Rect // the outline cut into rectangles
	from     int         // the room beside which it is, -1 if it is at a point
	heading  Heading
	line     string // of which faces are in line
	lineOf   int
	shift    measure.Length
	at       geom.Point // of one that is at a point
	over     insideSpot // what at is measured from, if it is a room
}

// An insideState says how far the placing of a room has come.
type insideState uint8

const (
	insideUnplaced insideState = iota
	insidePlacing
	insidePlaced
	insideLost
)

// insideRuns reads [[inside]], [outer], [inner] and [[partition]], and adds the
// runs of walls that follow from them.
func (l *houseLoader) insideRuns(root *source.Table) {
	found := tables(root, "inside", source.Optional, mostRooms)
	if !root.Has("inside") {
		for _, key := range []string{"outer", "inner", "partition"} {
			if root.Has(key) {
				root.Errorf(key, "found %s in a house without [[inside]]; want it only with rooms by inside dimensions", key)
				askBelow(root, key)
			}
		}
		return
	}
	good := len(found) > 0
	l.inNames = names{kind: "room", place: "under [[inside]]"}
	ids := &l.inNames
	for _, t := range found {
		in := inside{t: t, from: -1, lineOf: -1, over: insideSpot{room: -1}}
		in.id, _ = t.Name("id", source.Required)
		ids.take(in.id, t.ValuePos("id"))
		in.name, _ = t.Title("name", source.Required)
		l.readShape(&in)
		l.insides = append(l.insides, in)
	}
	good = l.checkCorners() && good
	m := l.readMakeup(root, ids)
	good = good && m != nil
	for i := range l.insides {
		good = l.readInsidePlace(&l.insides[i], ids) && good
	}
	if l.adjust {
		l.list.Errorf(l.adjustPos, "house.adjust", "found adjust = true with rooms by inside dimensions, of which no walls were taped; want adjust = false")
	}
	for i := range l.insides {
		good = good && l.placeInside(i, m)
	}
	if m != nil {
		l.inherit(m)
	}
	l.checkMadeBlocks(m)
	if good && l.deriveRuns(m) {
		return
	}
	l.badRun = true
	if m != nil && m.outerNames != nil {
		askAllKeys(m.outerNames)
	}
}

// askBelow keeps the keys of tables from being called unknown.
func askBelow(root *source.Table, key string) {
	for _, t := range oneOrMore(root, key) {
		askAllKeys(t)
	}
}

// anyInside reports whether a level has rooms by inside dimensions, or may have
// some since not all of them are placed.
func (l *houseLoader) anyInside(level int) bool {
	return slices.ContainsFunc(l.insides, func(in inside) bool { return in.level == level || in.state != insidePlaced })
}

// insideRoom takes up a room whose walls were made round it.
func (l *houseLoader) insideRoom(in *inside, region *geom.Region) {
	r := Room{ID: in.id, Pos: in.t.Pos(), Name: in.name, Level: in.level}
	l.readUse(in.t, &r)
	l.roomNames.add(in.t, "id", r.ID)
	if r.ID == "" {
		l.roomNames.take("", r.Pos)
	}
	if in.state == insidePlaced {
		r.At = in.middle()
		if region != nil {
			l.findRoom(in.t, &r, region)
			l.checkAsSketched(in, &r)
		}
	}
	l.house.Rooms = append(l.house.Rooms, r)
}
