package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// mostLevels bounds the levels of a house.
const mostLevels = 20

// An outer is the closed run of outer walls of a level. It has no run if the
// level has none.
type outer struct {
	*run
	ring *ring
}

// levels reads [[level]].
func (l *houseLoader) levels(root *source.Table) {
	for _, t := range tables(root, "level", source.Required, mostLevels) {
		level := Level{Pos: t.Pos()}
		level.ID, _ = t.Name("id", source.Required)
		l.levelNames.add(t, "id", level.ID)
		if level.ID == "" {
			l.levelNames.take("", level.Pos)
		}
		level.Floor = lengthOr(t, "floor", floors, 0)
		// What stands in for a height that can't be read keeps the checks of
		// heights from following it.
		ceiling, ok := length(t, "ceiling", source.Required, ceilings)
		if !ok {
			ceiling = ceilings.Max
		}
		plates := bound{measure.Range{Min: ceiling, Max: ceiling + aboveCeiling.Max}, aboveCeiling.why}
		level.Ceiling, level.PlateTop = ceiling, lengthOr(t, "plate_top", plates, ceiling+l.std.ceilingBoard)
		l.house.Levels = append(l.house.Levels, level)
	}
	if len(l.house.Levels) == 0 {
		l.house.Levels = []Level{{Ceiling: ceilings.Max, PlateTop: ceilings.Max + aboveCeiling.Max}}
	}
	l.outers = make([]outer, len(l.house.Levels))
}

// levelOr reads the level that a key names, or gives otherwise if it is left
// out.
func (l *houseLoader) levelOr(t *source.Table, key string, otherwise int) (int, bool) {
	if !t.Has(key) {
		return otherwise, true
	}
	return l.levelNames.find(t, key, source.Required)
}

// several reports whether the house has more than one level.
func (h *House) several() bool { return len(h.Levels) > 1 }

// onLevel names a level in a message about a house that has several.
func (h *House) onLevel(level int) string {
	if !h.several() {
		return ""
	}
	return " on level " + h.Levels[level].ID
}

// levelOf is the level of a wall.
func (h *House) levelOf(wall int) *Level { return &h.Levels[h.Walls[wall].Level] }

// plates is the height of the top of a level's plates over the house's zero.
func (v *Level) plates() measure.Length { return v.Floor + v.PlateTop }

// area is what a level's plates enclose.
func (v *Level) area() geom.Area {
	if v.PlateLine == nil {
		return geom.Area{}
	}
	return geom.AreaOf(v.PlateLine)
}

// highest is the highest level that has outer walls, the first in the file of
// several.
func (l *houseLoader) highest() int {
	best := 0
	for i := range l.outers {
		if b := &l.outers[best]; l.outers[i].run != nil && (b.run == nil || l.house.Levels[i].Floor > l.house.Levels[best].Floor) {
			best = i
		}
	}
	return best
}

// setLevels finds the level of each run: its own, or that of the wall on which
// it starts.
func (l *houseLoader) setLevels() {
	for _, r := range l.runs {
		l.setLevel(r, nil)
	}
}

func (l *houseLoader) setLevel(r *run, seen []*run) {
	if r.from < 0 || r.levelSet || slices.Contains(seen, r) {
		r.levelSet = true
		return
	}
	on, _ := l.runOf(r.from)
	l.setLevel(on, append(seen, r))
	if r.levelSet {
		return
	}
	r.levelSet = true
	if r.t.Has("level") && r.shared.Level != on.shared.Level && r.state != unplaceable && on.state != unplaceable {
		r.t.Errorf("level", "found level %s for walls that start on wall %s of level %s; want that level, or a start at a point",
			l.house.Levels[r.shared.Level].ID, l.wallNames.ids[r.from], l.house.Levels[on.shared.Level].ID).
			Note(l.wallNames.here(r.from))
		r.state = unplaceable
		return
	}
	r.shared.Level = on.shared.Level
}

// findOuters finds the one run of each level that has its outer walls. ok is
// false if a level with walls has none, or several, or if some run is not known.
func (l *houseLoader) findOuters() (ok bool) {
	ok = true
	walled := make([]*run, len(l.outers))
	outlined := make([]bool, len(l.outers)) // or an exterior run at fault, of which enough is said
	for _, r := range l.runs {
		level := r.shared.Level
		if r.badLevel {
			ok = false
			continue
		}
		if walled[level] == nil {
			walled[level] = r
		}
		if !r.shared.Exterior {
			continue
		}
		outlined[level] = true
		first := l.outers[level].run
		switch {
		case !r.closes:
		case first == nil:
			l.outers[level].run = r
		default:
			r.t.Errorf("exterior", "found a second closed exterior run%s; want one, which %s", l.house.onLevel(level), l.carries()).
				Note(first.t.Pos(), "the first is here")
			ok = false
		}
	}
	for level, r := range walled {
		if r == nil {
			continue
		}
		ok = ok && l.outers[level].run != nil
		if !outlined[level] && !l.anyInside(level) && !slices.ContainsFunc(l.runs, func(r *run) bool { return r.badLevel }) {
			r.t.Errorf("exterior", "found no exterior run that closes%s; want exactly one run with exterior = true and closes = true, which %s", l.house.onLevel(level), l.carries())
		}
	}
	return ok && !l.badRun && len(l.runs) > 0
}

// carries says what the outer walls of a level are for.
func (l *houseLoader) carries() string {
	if l.house.several() {
		return "is the outline of the level"
	}
	return "carries the roof"
}

// setOutlines takes the outer faces of the outer run of each level.
func (l *houseLoader) setOutlines() bool {
	good := true
	for level := range l.outers {
		if l.outers[level].run != nil && !l.setOutline(level) {
			good = false
		}
	}
	if !good {
		return false
	}
	l.cautionOutsiders()
	main := &l.house.Levels[l.highest()]
	l.house.OutsideOf, l.house.PlateLine = main.OutsideOf, main.PlateLine
	return true
}
