package plan

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/source"
)

// devices reads [[device]].
func (l *houseLoader) devices(root *source.Table) {
	ids := l.newNames("device")
	for _, t := range tables(root, "device", source.Optional, mostOthers) {
		d := Device{Pos: t.Pos()}
		d.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", d.ID)
		d.Kind, _ = t.Choice("kind", source.Required, "receptacle", "switch", "light", "panel")
		feed := choiceOr(t, "feed", "up", "down", "both")
		d.Up, d.Down = feed != "down", feed != "up"
		w, from, okWall := l.onWall(t)
		side, okSide := l.deviceSide(t, w, from)
		at, okAt := l.centre(t, w, facing{side, okSide})
		height, okHeight := length(t, "height", source.Required, boxHeights)
		if !okWall || !okAt || !okHeight || !okSide {
			continue
		}
		d.At, d.Height, d.Side = at, height, side
		if l.house.Walls[w].Masonry {
			d.Up, d.Down = false, false
			if t.Has("feed") {
				t.Errorf("feed", "found a cable inside masonry wall %s, which has no bays; want no feed: the device is on its face", l.house.Walls[w].ID).
					Note(l.house.Walls[w].here())
			}
		}
		if l.deviceFits(t, w, &d) {
			l.house.Walls[w].Devices = append(l.house.Walls[w].Devices, d)
		}
	}
}

// deviceFits reports whether a device is in its wall.
func (l *houseLoader) deviceFits(t *source.Table, w int, d *Device) bool {
	if ceiling := l.house.levelOf(w).Ceiling; d.Height > ceiling {
		t.Errorf("height", "found %s, which is above the ceiling at %s", exact(t.Units(), d.Height), exact(t.Units(), ceiling))
		return false
	}
	place := extent{d.At, d.At}
	return l.inWall(t, "at", w, place) && l.clearOfWalls(t, "at", w, place, 0) && l.house.clearOfOpenings(t, w, d.At, d.Height)
}

// centre reads a place along wall w from the keys at and from. ok is false
// also if the walls are not placed.
func (l *houseLoader) centre(t *source.Table, w int, from facing) (measure.Length, bool) {
	at, ok := readOffset(t, "at")
	fromEnd := choiceOr(t, "from", "start", "end") == "end"
	if !ok || w < 0 || !l.placed {
		return 0, false
	}
	if at.way != plainly {
		return l.placeThing(t, at, w, from, 0)
	}
	if fromEnd {
		return l.house.Walls[w].Length() - at.length, true
	}
	return at.length, true
}

// deviceSide reads the side of wall w that a device is on: by the rooms that the
// wall is between, by its name, or by the room that it faces.
func (l *houseLoader) deviceSide(t *source.Table, w int, from facing) (Side, bool) {
	if t.Has("between") {
		return from.side, from.known
	}
	if !t.Has("room") {
		word, ok := t.Choice("side", source.Required, "left", "right")
		return sideOf(word), ok
	}
	if t.Has("side") {
		t.Errorf("side", "found both side and room; want one of them")
		return Left, false
	}
	room, ok := l.roomNames.find(t, "room", source.Required)
	if !ok || w < 0 || !l.placed || !l.house.Rooms[room].found() {
		return Left, false
	}
	var sides []Side
	for _, f := range l.house.facesOf(room) {
		if f.wall == w && !slices.Contains(sides, f.side) {
			sides = append(sides, f.side)
		}
	}
	switch len(sides) {
	case 1:
		return sides[0], true
	case 2:
		t.Errorf("room", "found room %s, which is on both sides of wall %s; want side = \"left\" or \"right\"", l.house.Rooms[room].ID, l.house.Walls[w].ID)
		return Left, false
	}
	t.Errorf("room", "found room %s, which wall %s does not bound; it has %s", l.house.Rooms[room].ID, l.house.Walls[w].ID, l.house.wallsOf(room))
	return Left, false
}

// sideOf is the side that a word names.
func sideOf(word string) Side {
	if word == "right" {
		return Right
	}
	return Left
}
