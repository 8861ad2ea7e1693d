package plan

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// wallPlace reads a place on a wall, at some height: from a corner of the room
// that faces the wall, or along the wall from one of its ends. ok is false
// also without a house.
func (l *jobLoader) wallPlace(t *source.Table, height measure.Length) (Spot, bool) {
	w, okWall := l.find(t, "wall", &l.wallNames)
	at, okAt := length(t, "at", source.Required, alongWalls)
	s := Spot{Wall: w, Height: height, Room: -1}
	var ok bool
	if t.Has("side") {
		ok = l.placeAlong(t, &s, at, okWall && okAt)
	} else {
		ok = l.placeFromCorner(t, &s, at, okWall && okAt)
	}
	return s, ok && l.spotFits(t, &s)
}

// placeAlong places s along its wall from the wall's start or end.
func (l *jobLoader) placeAlong(t *source.Table, s *Spot, at measure.Length, ok bool) bool {
	side, okSide := t.Choice("side", source.Required, "left", "right")
	fromEnd := choiceOr(t, "from", "start", "end") == "end"
	if !ok || !okSide {
		return false
	}
	w := &l.house.Walls[s.Wall]
	s.Side, s.At = sideOf(side), at
	if fromEnd {
		s.At = w.Length() - at
	}
	if whole := ordered(w.Along(w.Body.Min), w.Along(w.Body.Max)); s.At <= whole.lo || s.At >= whole.hi {
		t.Errorf("at", "found a place at %s along wall %s; want it from %s to %s", l.house.text(s.At), w.ID, l.house.text(whole.lo), l.house.text(whole.hi)).
			Note(w.Pos, "%s is taped here", w.ID)
		return false
	}
	s.Room = l.house.RoomBeside(w, s.At, s.Side)
	if w.Exterior && s.Side == w.Out {
		t.Errorf("side", "found the %s side of wall %s, which is out of doors; want %s, or a soffit spot", s.Side, w.ID, s.Side.Opposite()).
			Note(w.Pos, "%s is taped here", w.ID)
		return false
	}
	return true
}

// placeFromCorner places s on its wall from an inside corner of a room, as one
// faces the wall from the room.
func (l *jobLoader) placeFromCorner(t *source.Table, s *Spot, at measure.Length, ok bool) bool {
	from := choiceOr(t, "from", "left", "right")
	if !t.Has("room") {
		t.Errorf("room", `missing; want the room from which the wall is faced, or side = "left" or "right" of the wall`)
		return false
	}
	room, okRoom := l.find(t, "room", &l.roomNames)
	if !ok || !okRoom {
		return false
	}
	f, ok := l.faceOf(t, room, s.Wall)
	if !ok {
		return false
	}
	s.Room, s.Side = room, f.side
	s.At = f.fromCorner(at, from == "right")
	if f.from < s.At && s.At < f.to {
		return true
	}
	t.Errorf("at", "found %s from the room's %s corner, which is not on wall %s; want %s", at, from, l.house.Walls[s.Wall].ID, l.allowedFrom(f, from == "right")).
		Note(l.house.Walls[s.Wall].Pos, "%s is taped here", l.house.Walls[s.Wall].ID)
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
	h := l.house
	faces := h.facesOf(room)
	faces = slices.DeleteFunc(faces, func(f face) bool { return f.wall != wall })
	r, w := &h.Rooms[room], &h.Walls[wall]
	switch {
	case len(faces) == 1:
		return faces[0], true
	case len(faces) == 0:
		t.Errorf("wall", "found wall %s, which does not bound room %s; it is bounded by %s", w.ID, r.ID, h.wallsOf(room)).
			Note(w.Pos, "%s is taped here", w.ID)
	default:
		t.Errorf("wall", "found wall %s, which bounds room %s in %d places; want side = \"left\" or \"right\" instead of room, and at along the wall", w.ID, r.ID, len(faces)).
			Note(w.Pos, "%s is taped here", w.ID)
	}
	return face{}, false
}

// spotFits reports whether a box can be there at all: off openings, devices,
// and walls that meet the wall there, and under the ceiling.
func (l *jobLoader) spotFits(t *source.Table, s *Spot) bool {
	h := l.house
	w, ceiling := &h.Walls[s.Wall], h.levelOf(s.Wall).Ceiling
	if s.Height > ceiling {
		t.Errorf("height", "found %s; want at most the ceiling at %s", s.Height, h.text(ceiling))
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
			t.Errorf("at", "found a place on wall %s where wall %s meets it", w.ID, v.ID).Note(v.Pos, "%s is taped here", v.ID)
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
