package plan

import (
	"cmp"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// wallPlace reads a place on a wall, at some height: from a corner of the room
// that faces the wall, along the wall from one of its ends, or from another
// thing on it. ok is false also without a house.
func (l *jobLoader) wallPlace(t *source.Table, height measure.Length) (Spot, bool) {
	w, room, okWall := l.onWall(t)
	at, okAt := readOffset(t, "at")
	s := Spot{Wall: w, Height: height, Room: -1}
	var ok bool
	if t.Has("side") && !t.Has("between") {
		ok = l.placeAlong(t, &s, at, okWall && okAt)
	} else {
		ok = l.placeFromCorner(t, &s, room, at, okWall && okAt)
	}
	return s, ok && l.spotFits(t, &s)
}

// onWall reads which wall a place is on: by its name, or by the two rooms that
// it is between, of which it then returns the first.
func (l *jobLoader) onWall(t *source.Table) (wall, room int, ok bool) {
	if t.Has("between") {
		on, room, ok := readBetween(t, l.house, &l.roomNames)
		return on.wall, room, ok
	}
	wall, ok = l.find(t, "wall", &l.wallNames)
	return wall, -1, ok
}

// placeAlong places s along its wall from the wall's start or end, or from a
// thing on the wall.
func (l *jobLoader) placeAlong(t *source.Table, s *Spot, at offset, ok bool) bool {
	side, okSide := t.Choice("side", source.Required, "left", "right")
	fromEnd := choiceOr(t, "from", "start", "end") == "end"
	if !ok || !okSide {
		return false
	}
	w := &l.house.Walls[s.Wall]
	s.Side, s.At = sideOf(side), at.length
	switch {
	case at.way != plainly:
		if s.At, ok = l.things.place(at, s.Wall, facing{s.Side, true}, 0, sayAt(t, "at")); !ok {
			return false
		}
	case fromEnd:
		s.At = w.Length() - at.length
	}
	if whole := ordered(w.Along(w.Body.Min), w.Along(w.Body.Max)); s.At <= whole.lo || s.At >= whole.hi {
		t.Errorf("at", "found a place at %s along wall %s; want it from %s to %s", l.house.text(s.At), w.ID, l.house.text(whole.lo), l.house.text(whole.hi)).
			Note(w.here())
		return false
	}
	s.Room = l.house.RoomBeside(w, s.At, s.Side)
	if w.Exterior && s.Side == w.Out {
		t.Errorf("side", "found the %s side of wall %s, which is out of doors; want %s, or a soffit spot", s.Side, w.ID, s.Side.Opposite()).
			Note(w.here())
		return false
	}
	return true
}

// placeFromCorner places s on its wall from an inside corner of a room, as one
// faces the wall from the room, or from a thing on the wall. The room is read
// unless it is known already.
func (l *jobLoader) placeFromCorner(t *source.Table, s *Spot, room int, at offset, ok bool) bool {
	from := choiceOr(t, "from", "left", "right")
	if room < 0 && !t.Has("between") {
		if !t.Has("room") {
			t.Errorf("room", `missing; want the room from which the wall is faced, or side = "left" or "right" of the wall`)
			return false
		}
		var okRoom bool
		room, okRoom = l.find(t, "room", &l.roomNames)
		ok = ok && okRoom
	}
	if !ok {
		return false
	}
	s.Room = room
	if at.way != plainly {
		return l.placeFromThing(t, s, at)
	}
	f, ok := l.faceOf(t, room, s.Wall)
	if !ok {
		return false
	}
	s.Side = f.side
	s.At = f.fromCorner(at.length, from == "right")
	if f.from < s.At && s.At < f.to {
		return true
	}
	t.Errorf("at", "found %s from the room's %s corner, which is not on wall %s; want %s", exact(t.Units(), at.length), from, l.house.Walls[s.Wall].ID, l.allowedFrom(f, from == "right")).
		Note(l.house.Walls[s.Wall].here())
	return false
}

// placeFromThing places s on its wall from a thing on the wall, which bounds the
// room in one place or in several, but on one side.
func (l *jobLoader) placeFromThing(t *source.Table, s *Spot, at offset) bool {
	faces := l.facesOn(t, s.Room, s.Wall)
	if faces == nil {
		return false
	}
	s.Side = faces[0].side
	w, h := &l.house.Walls[s.Wall], l.house
	if slices.ContainsFunc(faces, func(f face) bool { return f.side != s.Side }) {
		t.Errorf("room", "found room %s on both sides of wall %s; want side = \"left\" or \"right\" instead of room", h.Rooms[s.Room].ID, w.ID).
			Note(w.here())
		return false
	}
	var ok bool
	if s.At, ok = l.things.place(at, s.Wall, facing{s.Side, true}, 0, sayAt(t, "at")); !ok {
		return false
	}
	slices.SortFunc(faces, func(f, g face) int { return cmp.Compare(f.from, g.from) })
	var stretches []string
	for _, f := range faces {
		if f.from < s.At && s.At < f.to {
			return true
		}
		stretches = append(stretches, h.text(f.from)+" to "+h.text(f.to))
	}
	t.Errorf("at", "found a place at %s along wall %s, which is not in room %s; want it from %s", h.text(s.At), w.ID, h.Rooms[s.Room].ID, strings.Join(stretches, " or from ")).
		Note(w.here())
	return false
}

// fromCorner is where on the wall a distance from an inside corner is.
func (f face) fromCorner(at measure.Length, fromRight bool) measure.Length {
	corner := f.corner(fromRight)
	if corner == f.first {
		return corner + at
	}
	return corner - at
}

// allowedFrom says which distances from a corner are on the wall.
func (l *jobLoader) allowedFrom(f face, fromRight bool) string {
	corner := f.corner(fromRight)
	d := ordered(max(corner-f.from, f.from-corner), max(corner-f.to, f.to-corner))
	return l.house.text(d.lo) + " to " + l.house.text(d.hi)
}

// faceOf finds the one stretch of a wall that bounds a room.
func (l *jobLoader) faceOf(t *source.Table, room, wall int) (face, bool) {
	faces := l.facesOn(t, room, wall)
	if len(faces) > 1 {
		r, w := &l.house.Rooms[room], &l.house.Walls[wall]
		t.Errorf("wall", "found wall %s, which bounds room %s in %d places; want at from a thing on it, such as %s, or side = \"left\" or \"right\" instead of room, and at along the wall",
			w.ID, r.ID, len(faces), l.exampleFrom(wall)).
			Note(w.here())
	}
	if len(faces) != 1 {
		return face{}, false
	}
	return faces[0], true
}

// exampleFrom is a place on a wall that is measured from something on it, or from
// a wall that meets it: where it bounds a room in several places, one does.
func (l *jobLoader) exampleFrom(wall int) string {
	var on, meet []string
	for _, th := range l.things.all {
		if th.wall == wall {
			on = append(on, th.id)
		}
	}
	l.house.meeting(wall, func(other int, _ extent) { meet = append(meet, "wall "+l.house.Walls[other].ID) })
	slices.Sort(on)
	slices.Sort(meet)
	return `"` + l.house.text(2*foot) + " left of " + append(on, meet...)[0] + `"`
}

// facesOn finds the stretches of a wall that bound a room, and reports if there
// are none.
func (l *jobLoader) facesOn(t *source.Table, room, wall int) []face {
	h := l.house
	faces := slices.DeleteFunc(h.facesOf(room), func(f face) bool { return f.wall != wall })
	if len(faces) > 0 {
		return faces
	}
	w := &h.Walls[wall]
	t.Errorf("wall", "found wall %s, which does not bound room %s; it is bounded by %s", w.ID, h.Rooms[room].ID, h.wallsOf(room)).
		Note(w.here())
	return nil
}

// spotFits reports whether a box can be there at all: off openings, devices,
// and walls that meet the wall there, and under the ceiling.
func (l *jobLoader) spotFits(t *source.Table, s *Spot) bool {
	h := l.house
	w, ceiling := &h.Walls[s.Wall], h.levelOf(s.Wall).Ceiling
	if s.Height > ceiling {
		t.Errorf("height", "found %s; want at most the ceiling at %s", exact(t.Units(), s.Height), h.text(ceiling))
		return false
	}
	if !h.clearOfOpenings(t, s.Wall, s.At, s.Height) {
		return false
	}
	good := true
	face := w.FacePoint(s.At, s.Side)
	h.meeting(s.Wall, func(other int, _ extent) {
		if v := &h.Walls[other]; v.Body.Contains(face) && good {
			good = false
			t.Errorf("at", "found a place on wall %s where wall %s meets it", w.ID, v.ID).Note(v.here())
		}
	})
	return good && l.offDevices(t, s)
}

// offDevices reports whether a place is not in a device, which takes up a
// single-gang box.
func (l *jobLoader) offDevices(t *source.Table, s *Spot) bool {
	w := &l.house.Walls[s.Wall]
	width, height := l.book.Length(rule.BoxSingle), l.book.Length(rule.BoxHeight)
	for i := range w.Devices {
		d := &w.Devices[i]
		along, up := max(d.At-s.At, s.At-d.At), max(d.Height-s.Height, s.Height-d.Height)
		if d.Side == s.Side && 2*along < width && 2*up < height {
			t.Errorf("at", "found a place at %s along wall %s and %s above the floor, which is in the %s %s", l.house.text(s.At), w.ID, l.house.text(s.Height), d.Kind, d.ID).
				Note(d.Pos, "%s is at %s, %s above the floor", d.ID, l.house.text(d.At), l.house.text(d.Height))
			return false
		}
	}
	return true
}
