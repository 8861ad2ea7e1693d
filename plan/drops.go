package plan

import (
	"slices"
	"strings"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// mostPorts bounds the ports of a closet.
const mostPorts = 1000

// closet reads [closet].
func (l *jobLoader) closet(root *source.Table) {
	t, ok := root.Table("closet", source.Required)
	if !ok {
		return
	}
	c := &l.job.Closet
	c.Pos = t.Pos()
	c.Name, _ = t.Title("name", source.Required)
	c.Ports, _ = t.Int("ports", source.Required, 1, mostPorts)
	c.Panel = "A"
	if panel, ok := t.Name("panel", source.Optional); ok {
		c.Panel = panel
	}
	c.Width = lengthOr(t, "width", panelWidths, l.std.panelWidth)
	room, okRoom := -1, true
	if t.Has("room") || !t.Has("between") {
		room, okRoom = l.find(t, "room", &l.roomNames)
	}
	c.Room = room
	if c.Ceiling = t.Has("ceiling"); c.Ceiling {
		l.closetCeiling(t, c, okRoom)
		return
	}
	height, okHeight := length(t, "height", source.Required, boxHeights)
	spot, ok := l.wallPlace(t, height)
	c.Spot = spot
	if t.Has("between") {
		c.Room = spot.Room
		return
	}
	if !okHeight || !ok || !okRoom || spot.Room == room {
		return
	}
	t.Errorf("room", "found room %s, but the place is on the side of wall %s that faces %s", l.house.Rooms[room].ID, l.house.Walls[spot.Wall].ID, l.house.roomText(spot.Room)).
		Note(l.house.Rooms[room].Pos, "%s is here", l.house.Rooms[room].ID)
}

// closetCeiling reads the place where the cables come through the closet's
// ceiling.
func (l *jobLoader) closetCeiling(t *source.Table, c *Closet, okRoom bool) {
	for _, key := range []string{"wall", "between", "at", "from", "side"} {
		if t.Has(key) {
			t.Errorf(key, "found %s together with ceiling; want a place on a wall or in the ceiling", key)
		}
	}
	c.Spot.Wall, c.Spot.Room = -1, c.Room
	at, ok := l.spot(t, "ceiling")
	ceiling := measure.Length(0)
	if okRoom {
		ceiling = l.house.Levels[l.house.Rooms[c.Room].Level].Ceiling
	}
	c.Spot.Height = lengthOr(t, "height", boxHeights, ceiling)
	if ok && okRoom && l.inRoom(t, "ceiling", at, c.Room) {
		c.Point = at
	}
}

// inRoom reports whether a place under key is in a room.
func (l *jobLoader) inRoom(t *source.Table, key string, at geom.Point, room int) bool {
	r := &l.house.Rooms[room]
	in := l.house.RoomOn(r.Level, at)
	if in == room {
		return true
	}
	t.Errorf(key, "found the point %s, which is in %s; want one in room %s", l.house.pointText(at), l.house.roomText(in), r.ID).
		Note(r.Pos, "%s is here", r.ID)
	return false
}

// roomText names a room, or what is not one.
func (h *House) roomText(room int) string {
	if room < 0 {
		return "no room"
	}
	return "room " + h.Rooms[room].ID
}

// drops reads [[drop]].
func (l *jobLoader) drops(root *source.Table) {
	tags := names{kind: "drop"}
	for _, t := range tables(root, "drop", source.Required, mostDrops) {
		d := Drop{Pos: t.Pos(), Room: -1, Eave: -1}
		d.Spot.Wall, d.Spot.Room = -1, -1
		d.Tag, _ = t.Name("tag", source.Required)
		tags.add(t, "tag", d.Tag)
		if l.dropDetails(t, &d) {
			[...]func(*source.Table, *Drop){WallPlate: l.wallPlate, CeilingPoint: l.ceilingPoint, SoffitSpot: l.soffitSpot}[d.Kind](t, &d)
		}
		l.job.Drops = append(l.job.Drops, d)
	}
	l.cautionPorts(root)
}

// cautionPorts warns of more cables than the closet has ports.
func (l *jobLoader) cautionPorts(root *source.Table) {
	cables := 0
	for i := range l.job.Drops {
		cables += l.job.Drops[i].Count
	}
	if ports := l.job.Closet.Ports; ports > 0 && cables > ports {
		t, _ := root.Table("closet", source.Required)
		t.Warnf("ports", "there are %d ports for %d cables", ports, cables)
	}
}

// mostCables bounds the cables to one place.
const mostCables = 48

// dropDetails reads what drops of every kind have. If the kind is not known
// nothing can be said about the other keys, and ok is false.
func (l *jobLoader) dropDetails(t *source.Table, d *Drop) (ok bool) {
	kind, ok := t.Choice("kind", source.Required, dropKindNames[:]...)
	if ok {
		d.Kind = DropKind(slices.Index(dropKindNames[:], kind))
	} else {
		for _, key := range t.Keys() {
			t.Has(key)
		}
	}
	d.Cable = l.cableOr(t, "cable", source.Optional)
	d.Count = intOr(t, "count", 1, mostCables, 1)
	d.Note = titleOr(t, "note")
	d.Later = choiceOr(t, "when", "now", "later") == "later"
	d.Shift = lengthOr(t, "shift", shifts, 0)
	l.dropPower(t, d)
	l.dropEnd(t, d, ok)
	return ok
}

func (l *jobLoader) wallPlate(t *source.Table, d *Drop) {
	if t.Has("side") && t.Has("room") {
		t.Errorf("side", "found both side and room; want one of them")
	}
	height := lengthOr(t, "height", boxHeights, l.std.outletHeight)
	if spot, ok := l.wallPlace(t, height); ok {
		d.Spot, d.Room = spot, spot.Room
	}
}

func (l *jobLoader) ceilingPoint(t *source.Table, d *Drop) {
	at, ok := l.spot(t, "at")
	room, okRoom := l.roomUnder(t, at, ok)
	if !ok || !okRoom {
		return
	}
	d.Point, d.Room = at, room
	level := l.house.Rooms[room].Level
	for i := range l.house.Hatches {
		if h := &l.house.Hatches[i]; h.Area.Contains(at) && l.house.Spaces[h.Space].Below == level {
			t.Errorf("at", "found the point %s, which is in hatch %s", l.house.pointText(at), h.ID).Note(h.Pos, "%s is here", h.ID)
		}
	}
}

// roomUnder finds the room of a point of a ceiling: on the level that the file
// names, on that of the room it is measured from, or on the one level that has a
// room there.
func (l *jobLoader) roomUnder(t *source.Table, at geom.Point, known bool) (room int, ok bool) {
	level, named := -1, t.Has("level")
	if named {
		if level, ok = l.find(t, "level", &l.levelNames); !ok {
			return -1, false
		}
	}
	if !known {
		return -1, false
	}
	h := l.house
	if t.Kind("at") == source.KindTable {
		in, _ := t.Table("at", source.Required)
		of, _ := l.find(in, "room", &l.roomNames)
		if r := &h.Rooms[of]; named && level != r.Level {
			t.Errorf("level", "found level %s with a place in room %s, which is on level %s; want one of them", h.Levels[level].ID, r.ID, h.Levels[r.Level].ID).
				Note(r.Pos, "%s is here", r.ID)
			return -1, false
		}
		level = h.Rooms[of].Level
	}
	var rooms []int
	for i := range h.Levels {
		if r := h.RoomOn(i, at); r >= 0 && (level < 0 || i == level) {
			rooms = append(rooms, r)
		}
	}
	switch {
	case len(rooms) == 1:
		return rooms[0], true
	case len(rooms) == 0 && level >= 0:
		t.Errorf("at", "found the point %s, which is in no room%s; want a point of a ceiling", h.pointText(at), h.onLevel(level))
	case len(rooms) == 0:
		t.Errorf("at", "found the point %s, which is in no room; want a point of a ceiling", h.pointText(at))
	default:
		words := make([]string, len(rooms))
		for i, r := range rooms {
			words[i] = h.roomText(r) + h.onLevel(h.Rooms[r].Level)
		}
		t.Errorf("at", "found the point %s, which is in %s; want level to say on which", h.pointText(at), strings.Join(words, " and in "))
	}
	return -1, false
}

// soffitSpot reads a place under the overhang beside an outer wall.
func (l *jobLoader) soffitSpot(t *source.Table, d *Drop) {
	w, okWall := l.find(t, "wall", &l.wallNames)
	o, okAt := readOffset(t, "at")
	fromEnd := choiceOr(t, "from", "start", "end") == "end"
	out := lengthOr(t, "out", soffitOuts, -1)
	if !okWall || !okAt {
		return
	}
	wall, at := &l.house.Walls[w], o.length
	switch {
	case o.way != plainly:
		// A soffit is faced from out of doors.
		var ok bool
		if at, ok = l.things.place(o, w, facing{wall.Out, true}, 0, sayAt(t, "at")); !ok {
			return
		}
	case fromEnd:
		at = wall.Length() - at
	}
	roof, ok := l.house.underEave(t, w, extent{at, at})
	if !ok || !l.house.besideWall(t, w, extent{at, at}, roof) {
		return
	}
	room := roof.soffit(wall)
	if out < 0 {
		out = room / 2
	}
	if out == 0 || out > room {
		t.Errorf("out", "found %s out of wall %s; want it above zero and at most %s, the end of the overhang", exact(t.Units(), out), wall.ID, l.house.text(room)).
			Note(roof.Pos, "the overhang is given here")
		return
	}
	d.Eave, d.Point = w, wall.outOf(at, out)
}

// soffit is how far the overhang reaches beyond the finished face of an outer
// wall. It is measured from the plate.
func (r *Roof) soffit(w *Wall) measure.Length { return max(0, r.Overhang-w.Boards[w.Out]) }

// outOf is the point at a distance along an exterior wall and out from its
// outer face.
func (w *Wall) outOf(along, out measure.Length) geom.Point {
	return w.Faces(w.Out).Step(w.FacePoint(along, w.Out), out)
}
