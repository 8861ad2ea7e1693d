package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A floor is a [[floor]] while its outline is not known.
type floor struct {
	t     *source.Table
	space *Space
	area  []geom.Rect
	ok    bool
}

// subfloor is the thickness of the boards under a floor unless the file says
// otherwise (common practice, no source).
const subfloor = 3 * inch / 4

// mostGap is how far the joists and boards of a floor may miss its finished
// floor: what is laid on the boards, and what a tape is off (common practice,
// no source).
const mostGap = inch / 2

// readFloors reads [[floor]].
func (l *houseLoader) readFloors(root *source.Table) {
	for _, t := range tables(root, "floor", source.Optional, mostAttics) {
		s := &Space{Kind: FloorSpace, Below: -1, Above: -1, Roof: -1, Pos: t.Pos()}
		s.ID, _ = t.Name("id", source.Required)
		if s.ID == "" {
			l.spaceNames.take("", s.Pos)
		}
		l.spaceNames.add(t, "id", s.ID)
		f := &floor{t: t, space: s}
		under, okUnder := l.levelNames.find(t, "under", source.Required)
		s.Above, f.ok = under, okUnder
		switch {
		case t.Has("over") && t.Has("crawl"):
			t.Errorf("crawl", "found both over and crawl; want over, the level below, or crawl, the height under the joists where there is none")
			f.ok = false
		case t.Has("over"):
			over, ok := l.levelNames.find(t, "over", source.Required)
			s.Below, f.ok = over, f.ok && ok
		default:
			s.Kind = CrawlSpace
			clear, ok := length(t, "crawl", source.Required, crawls)
			s.Clear, f.ok = clear, f.ok && ok
		}
		l.framing(t, s, "sawn", "i-joist", "truss")
		s.Subfloor = lengthOr(t, "subfloor", subfloors, subfloor)
		f.area = areas(t)
		l.floors = append(l.floors, f)
	}
}

// makeFloor finds where a floor is: over the level below it and under the one
// that it carries, less the stairs through it.
func (l *houseLoader) makeFloor(f *floor) {
	h, s := l.house, f.space
	if !f.ok {
		// An index must be in range for what refers to the space.
		s.Kind, s.Below = FloorSpace, 0
		return
	}
	above := &h.Levels[s.Above]
	area := above.area()
	s.Base = above.Floor - s.Subfloor - s.Depth
	if s.Below >= 0 {
		below := &h.Levels[s.Below]
		s.Base = below.plates()
		if !l.floorFits(f, below, above) {
			return
		}
		area = geom.Intersect(area, below.area())
	}
	if !l.placed {
		return
	}
	if len(f.area) > 0 {
		area = geom.Intersect(area, l.atPlates(f.area))
	}
	area = geom.Subtract(area, l.stairs(s)...)
	f.ok = l.outlined(f.t, s, area, above.PlateLine, "floor")
}

// floorFits reports whether a floor is between its levels.
func (l *houseLoader) floorFits(f *floor, below, above *Level) bool {
	h, s := l.house, f.space
	if below.Floor >= above.Floor {
		f.t.Errorf("over", "found a floor over level %s, whose floor at %s is not below that of level %s at %s", below.ID, h.text(below.Floor), above.ID, h.text(above.Floor))
		return false
	}
	if s.Depth == 0 {
		return false // told
	}
	gap := above.Floor - s.Top()
	if max(gap, -gap) <= mostGap {
		return true
	}
	key := "depth"
	if f.t.Has("size") {
		key = "size"
	}
	f.t.Errorf(key, "found joists whose boards end at %s, %s; level %s has its floor at %s: %s", h.text(s.Top()),
		h.text(s.Depth)+" of joists and "+h.text(s.Subfloor)+" of boards on the plates at "+h.text(s.Base), above.ID, h.text(above.Floor), l.wouldFit(above.Floor-s.Base-s.Subfloor, gap))
	return false
}

// wouldFit says what would close the gap between a floor's boards and the
// finished floor.
func (l *houseLoader) wouldFit(depth, gap measure.Length) string {
	h := l.house
	if depth >= depths.Min {
		return "want joists " + h.text(depth) + " deep, or heights of levels that are " + h.text(max(gap, -gap)) + " off"
	}
	return "want heights of levels that are " + h.text(max(gap, -gap)) + " off"
}

// stairs are the openings that stairs make in a floor: where a room below and a
// room above are both stairs.
func (l *houseLoader) stairs(s *Space) (out []geom.Area) {
	rooms := func(level int) geom.Area {
		var all []geom.Area
		for i := range l.house.Rooms {
			if r := &l.house.Rooms[i]; r.Level == level && r.Use == stairsUse && r.found() {
				all = append(all, geom.AreaOf(r.Outline))
			}
		}
		return geom.Unite(all...)
	}
	if s.Below < 0 {
		return nil
	}
	return []geom.Area{geom.Intersect(rooms(s.Below), rooms(s.Above))}
}
