package plan

import (
	"fmt"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// cornerWords are the corners of a room as a [[check]] calls them, and outwards
// which way each looks.
var cornerWords = []string{"southwest", "southeast", "northeast", "northwest"}

var cornerLooks = [4]geom.Point{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}}

// readRoomCorner reads an end of a check such as { room = "bed", corner = "northwest" }.
func (l *houseLoader) readRoomCorner(t *source.Table) (e checkEnd, ok bool) {
	e.kind = roomCorner
	if len(l.insides) == 0 {
		t.Errorf("room", "found the corner of a room in a house without [[inside]]; want a wall: only rooms by inside dimensions have corners that a check can name")
		askAllKeys(t)
		return e, false
	}
	e.room, ok = l.inNames.find(t, "room", source.Required)
	for _, key := range []string{"wall", "end", "at", "from", "side"} {
		if t.Has(key) {
			t.Errorf(key, "found %s together with the corner of a room; want room and corner alone", key)
			ok = false
		}
	}
	if !ok {
		t.Has("corner")
		return e, false
	}
	in := &l.insides[e.room]
	if t.Kind("corner") == source.KindInteger {
		return l.readNumbered(t, e, in)
	}
	word, ok := t.Choice("corner", source.Required, cornerWords...)
	if !ok || !in.sized {
		return e, ok
	}
	outermost := in.outermost(cornerLooks[slices.Index(cornerWords, word)])
	if len(outermost) > 1 {
		t.Errorf("corner", "found %q of room %s, of whose corners %s are as far to the %s; want the number of one, counted along its walk from 1",
			word, in.id, numbersText(outermost), word)
		return e, false
	}
	e.corner = outermost[0]
	return e, true
}

// readNumbered reads the number of a corner along the walk round a room.
func (l *houseLoader) readNumbered(t *source.Table, e checkEnd, in *inside) (checkEnd, bool) {
	if in.sized && in.legs == nil {
		t.Errorf("corner", "found a number for a corner of room %s, which has width and depth and no walk; want %s", in.id, quoted(cornerWords))
		return e, false
	}
	most := mostWalkLegs
	if in.sized {
		most = len(in.walked)
	}
	n, ok := t.Int("corner", source.Required, 1, most)
	e.corner = n - 1
	return e, ok
}

// outermost are the corners of a room that are farthest in a direction, of two
// ones or minus ones.
func (in *inside) outermost(looks geom.Point) (corners []int) {
	far := func(p geom.Point) measure.Length { return p.X*looks.X + p.Y*looks.Y }
	for i, p := range in.walked {
		switch {
		case corners == nil || far(p) > far(in.walked[corners[0]]):
			corners = []int{i}
		case far(p) == far(in.walked[corners[0]]):
			corners = append(corners, i)
		}
	}
	return corners
}

// numbersText lists corners as people count them: "2 and 5".
func numbersText(corners []int) string {
	text := ""
	for i, c := range corners {
		switch {
		case i == 0:
		case i == len(corners)-1:
			text += " and "
		default:
			text += ", "
		}
		text += fmt.Sprint(c + 1)
	}
	return text
}

// levelOfEnd is the level of an end of a check.
func (l *houseLoader) levelOfEnd(e *checkEnd) int {
	if e.kind == roomCorner {
		return l.insides[e.room].level
	}
	r, _ := l.runOf(e.wall)
	return r.shared.Level
}

// endText names what an end of a check is on.
func (l *houseLoader) endText(e *checkEnd) string {
	if e.kind == roomCorner {
		return "room " + l.insides[e.room].id
	}
	r, k := l.runOf(e.wall)
	return "wall " + r.ids[k]
}
