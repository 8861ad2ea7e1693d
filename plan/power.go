package plan

import (
	"topplate/plan/geom"
	"topplate/plan/source"
)

// mostCircuits bounds the circuits of one power run.
const mostCircuits = 40

// powerRuns reads [[power]].
func (l *houseLoader) powerRuns(root *source.Table) {
	ids := l.newNames("power run")
	for _, t := range tables(root, "power", source.Optional, mostOthers) {
		p := PowerRun{Pos: t.Pos()}
		p.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", p.ID)
		p.Clear = lengthOr(t, "clear", clearances, 0)
		p.Circuits = intOr(t, "circuits", 1, mostCircuits, 1)
		p.Space, _ = l.spaceOr(t)
		path, ok := t.Array("path", source.Required)
		if !ok {
			continue
		}
		for _, key := range path.Keys() {
			if at, ok := pair(path, key, coordinates); ok {
				p.Path = append(p.Path, at)
				l.cautionOutside(path, key, l.house.Spaces[p.Space], at)
			}
		}
		l.checkPath(t, path, p.Path)
		l.house.PowerRuns = append(l.house.PowerRuns, p)
	}
}

// checkPath reports a path that is too short, or stands still.
func (l *houseLoader) checkPath(t, path *source.Table, points []geom.Point) {
	if n := len(path.Keys()); n < 2 || n > mostOthers {
		t.Errorf("path", "found %s; want 2 to %d", counted(n, "point"), mostOthers)
	}
	for i := 1; i < len(points); i++ {
		if points[i] == points[i-1] {
			t.Errorf("path", "found the point %s twice in a row; want a path whose legs have a length", l.house.pointText(points[i]))
		}
	}
}

func (l *houseLoader) cautionOutside(t *source.Table, key string, s *Space, p geom.Point) {
	if !l.placed || len(s.Outlines) == 0 || l.house.within(s, p) {
		return
	}
	t.Warnf(key, "the point %s is %s", l.house.pointText(p), l.house.outsideText(s))
}

// outsideText says what a point is that is not in a space.
func (h *House) outsideText(s *Space) string {
	if h.whole(s) != nil {
		return "outside of the house"
	}
	return "not in the " + s.Kind.String() + " " + s.ID
}
