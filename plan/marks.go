package plan

import (
	"topplate/plan/geom"
	"topplate/plan/source"
)

// marks reads [[mark]].
func (l *houseLoader) marks(root *source.Table) {
	ids := l.newNames("mark")
	for _, t := range tables(root, "mark", source.Optional, mostOthers) {
		mk := Mark{Pos: t.Pos()}
		mk.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", mk.ID)
		mk.Kind, _ = t.Choice("kind", source.Required, "light box", "vent", "corner", "pipe", "nail")
		at, ok := l.spots().read(t, "at")
		seen, _ := t.Choice("seen", source.Required, "above", "below", "both")
		mk.At, mk.Above, mk.Below = at, seen != "below", seen != "above"
		mk.Space = l.markSpace(t, at, ok)
		if s := l.house.Spaces[mk.Space]; ok && l.placed && len(s.Outlines) > 0 && !l.house.within(s, at) {
			t.Errorf("at", "found the point %s, which is %s", l.house.pointText(at), l.house.outsideText(s))
		}
		l.house.Marks = append(l.house.Marks, mk)
	}
}

// markSpace is the space that a mark is in: the one that the file names, that
// over its room, or the main attic.
func (l *houseLoader) markSpace(t *source.Table, at geom.Point, known bool) int {
	if t.Has("space") || !known || t.Kind("at") != source.KindTable {
		space, _ := l.spaceOr(t)
		return space
	}
	in, _ := t.Table("at", source.Required)
	room, ok := l.roomNames.find(in, "room", source.Required)
	if !ok {
		return 0
	}
	return max(0, l.house.SpaceOver(l.house.Rooms[room].Level, at))
}
