package plan

import (
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A thing is what a distance along a wall may be measured from: an opening, a
// device or a conduit, by its id.
type thing struct {
	kind, id string
	pos      diag.Pos
	wall     int // -1 if that is not known
	on       extent
	state    thingState
	t        *source.Table // of one whose place is still to be found
}

// A thingState says how far the finding of a thing's place has come.
type thingState uint8

const (
	thingUnknown thingState = iota
	thingSought             // it waits for what it is measured from
	thingFound
	thingLost // what is wrong with it is said where it is read, or has been
)

// things are all that distances along walls may be measured from.
type things struct {
	all   []thing
	walls *names
	// early is true until all walls are placed, when no room is known yet.
	early bool
	// circle are things that were found to be measured from each other, until
	// that is said.
	circle []string
	// meets is the stretch of a wall that another takes up that meets it.
	meets func(wall, other int) (extent, bool)
	// find finds the place of a thing that is not known yet.
	find func(i int, say sayer) bool
}

// A sayer reports what is wrong at a byte of the text of an offset.
type sayer func(at int, format string, args ...any) *diag.Diagnostic

// sayAt reports about the text under key.
func sayAt(t *source.Table, key string) sayer {
	return func(at int, format string, args ...any) *diag.Diagnostic {
		return t.ErrorfAt(key, at, format, args...)
	}
}

// unsaid drops what is wrong: it is said where the thing itself is read.
func unsaid(int, string, ...any) *diag.Diagnostic { return &diag.Diagnostic{} }

// A facing is the side of a wall that it is faced from, if that is known.
type facing struct {
	side  Side
	known bool
}

// place is where a thing of some width begins along a wall, given how it is
// measured from another.
func (s *things) place(o offset, wall int, from facing, width measure.Length, say sayer) (measure.Length, bool) {
	if (o.way == leftOf || o.way == rightOf) && !from.known {
		say(0, "found %s %s, and nothing here says from which side wall %s is faced; want before or beyond, towards its start or its end", o.way, o.name, s.walls.ids[wall])
		return 0, false
	}
	e, ok := s.named(o, wall, say)
	if !ok {
		return 0, false
	}
	// A room on the left of a wall has the wall's end on its left.
	towardsEnd := o.way == beyond || o.way == leftOf && from.side == Left || o.way == rightOf && from.side == Right
	if towardsEnd {
		return e.hi + o.length, true
	}
	return e.lo - o.length - width, true
}

// named is the stretch of a wall that what an offset names takes up.
func (s *things) named(o offset, wall int, say sayer) (extent, bool) {
	var here, elsewhere []int
	for i := range s.all {
		th := &s.all[i]
		if o.kind != "" && o.kind != th.kind || th.id == "" || !s.isCalled(th, o.name) {
			continue
		}
		if th.wall == wall {
			here = append(here, i)
		} else {
			elsewhere = append(elsewhere, i)
		}
	}
	other := -1
	if o.kind == "" || o.kind == "wall" {
		other = slices.Index(s.walls.ids, o.name)
	}
	switch {
	case len(here) > 1 || len(here) == 1 && other >= 0:
		say(o.nameAt, "found %q, which is the name of more than one thing here; want its kind before the name, as in %s %s %s", o.name, o.way, s.kindOf(here, other), o.name)
	case len(here) == 1:
		th := &s.all[here[0]]
		if th.state == thingUnknown || th.state == thingSought {
			s.find(here[0], say)
		}
		return th.on, th.state == thingFound
	case other >= 0:
		if e, ok := s.meets(wall, other); ok {
			return e, true
		}
		say(o.nameAt, "found wall %s, which does not meet wall %s; %s", o.name, s.walls.ids[wall], s.suggest(o.name, wall)).
			Note(s.walls.here(other))
	case len(elsewhere) > 0:
		th := &s.all[elsewhere[0]]
		if th.wall < 0 && s.early {
			say(o.nameAt, "found %s, which is placed by rooms; what a run of walls starts from must have its wall under wall", th.id).Note(th.pos, "%s is here", th.id)
		} else if th.wall >= 0 {
			say(o.nameAt, "found %s, which is on wall %s and not on wall %s; %s", th.id, s.walls.ids[th.wall], s.walls.ids[wall], s.suggest(o.name, wall)).
				Note(th.pos, "%s is here", th.id)
		}
	default:
		say(o.nameAt, "found %q, which is nothing on wall %s; %s", o.name, s.walls.ids[wall], s.suggest(o.name, wall))
	}
	return extent{}, false
}

// isCalled reports whether a thing has a name: its id, or that behind the name
// of its wall.
func (s *things) isCalled(th *thing, name string) bool {
	if th.id == name {
		return true
	}
	before, ok := strings.CutSuffix(name, "."+th.id)
	return ok && th.wall >= 0 && before == s.walls.ids[th.wall]
}

// kindOf is a kind of one of several things of a name.
func (s *things) kindOf(here []int, wall int) string {
	if wall >= 0 {
		return "wall"
	}
	return s.all[here[0]].kind
}

// suggest says what a distance along a wall may be measured from.
func (s *things) suggest(word string, wall int) string {
	var known []string
	for i := range s.all {
		if th := &s.all[i]; th.wall == wall && th.id != "" && th.id != word && th.state != thingSought {
			known = append(known, th.id)
		}
	}
	for other, id := range s.walls.ids {
		if id == "" || id == word {
			continue
		}
		if _, ok := s.meets(wall, other); ok {
			known = append(known, id)
		}
	}
	return suggest(word, "thing on it", known)
}

// things are those of a loaded house.
func (h *House) things(walls *names) *things {
	s := &things{walls: walls, meets: h.meets}
	for w := range h.Walls {
		for i := range h.Walls[w].Openings {
			o := &h.Walls[w].Openings[i]
			s.all = append(s.all, thing{kind: "opening", id: o.ID, pos: o.Pos, wall: w, on: extent{o.Start, o.End}, state: thingFound})
		}
		for i := range h.Walls[w].Devices {
			d := &h.Walls[w].Devices[i]
			s.all = append(s.all, thing{kind: "device", id: d.ID, pos: d.Pos, wall: w, on: extent{d.At, d.At}, state: thingFound})
		}
	}
	for i := range h.Conduits {
		c := &h.Conduits[i]
		s.all = append(s.all, thing{kind: "conduit", id: c.ID, pos: c.Pos, wall: c.Wall, on: extent{c.At, c.At}, state: thingFound})
	}
	return s
}

// meets is the stretch of a wall that another takes up that ends at it, or that
// it ends at.
func (h *House) meets(wall, other int) (e extent, ok bool) {
	h.meeting(wall, func(i int, taken extent) {
		if i == other {
			e, ok = taken, true
		}
	})
	return e, ok
}
