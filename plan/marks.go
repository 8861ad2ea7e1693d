package plan

import (
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
		if ok && l.placed && !l.house.inside(at) {
			t.Errorf("at", "found the point %s, which is outside of the house", l.house.pointText(at))
		}
		l.house.Marks = append(l.house.Marks, mk)
	}
}
