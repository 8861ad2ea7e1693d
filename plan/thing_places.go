package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// gatherThings notes what distances along walls may be measured from, before
// anything of it is read. It asks only for keys that are read later, and says
// nothing of what is wrong with them.
func (l *houseLoader) gatherThings(root *source.Table) {
	l.things = things{walls: l.wallNames, early: true, meets: l.meets, find: l.findThing}
	for _, kind := range thingKinds[1:] {
		if root.Kind(kind) != source.KindArray {
			continue
		}
		array, _ := root.Array(kind, source.Optional)
		if len(array.Keys()) > mostOthers {
			continue
		}
		for _, key := range array.Keys() {
			if array.Kind(key) != source.KindTable {
				continue
			}
			t, _ := array.Table(key, source.Optional)
			l.things.all = append(l.things.all, thing{kind: kind, id: textOf(t, "id"), pos: t.Pos(), wall: -1, t: t})
		}
	}
}

// textOf is the text that stands for a key, if one does.
func textOf(t *source.Table, key string) string {
	if t.Kind(key) != source.KindText {
		return ""
	}
	text, _ := t.Text(key, source.Optional)
	return text
}

// again forgets the places of things, which may move with their walls.
func (s *things) again() {
	s.early = false
	for i := range s.all {
		s.all[i].state = thingUnknown
	}
}

// onWall reads which wall a thing is on: by its name, or by the two rooms that it
// is between, and then it is faced from the first of them.
func (l *houseLoader) onWall(t *source.Table) (w int, from facing, ok bool) {
	if !t.Has("between") {
		w, ok = l.findWall(t, "wall", source.Required)
		return w, facing{}, ok
	}
	h := l.house
	if !l.placed {
		h = nil
	}
	on, _, ok := readBetween(t, h, l.roomNames)
	if !ok {
		return -1, facing{}, false
	}
	return on.wall, facing{on.side, true}, true
}

// placeThing is where a thing that is being read begins along its wall.
func (l *houseLoader) placeThing(t *source.Table, o offset, w int, from facing, width measure.Length) (measure.Length, bool) {
	self := slices.IndexFunc(l.things.all, func(th thing) bool { return th.t == t })
	if self >= 0 {
		l.things.all[self].state = thingSought
	}
	at, ok := l.placeFrom(o, w, from, width, sayAt(t, "at"))
	if self >= 0 && l.things.all[self].state == thingSought {
		l.things.all[self].state = thingUnknown
	}
	return at, ok
}

// placeFrom is where something begins along a wall.
func (l *houseLoader) placeFrom(o offset, w int, from facing, width measure.Length, say sayer) (measure.Length, bool) {
	for i := range l.things.all {
		if th := &l.things.all[i]; th.wall < 0 {
			th.wall, _ = l.wallQuietly(th.t)
		}
	}
	at, ok := l.things.place(o, w, from, width, say)
	if ids := l.things.circle; ids != nil {
		say(o.nameAt, "found places that are measured from each other in a circle: %s; measure one of them from an end of its wall", quoted(ids))
		l.things.circle = nil
	}
	return at, ok
}

// wallQuietly is the wall that a thing is on, and the side it is faced from.
func (l *houseLoader) wallQuietly(t *source.Table) (int, facing) {
	if !t.Has("between") {
		w := slices.Index(l.wallNames.ids, textOf(t, "wall"))
		if w < 0 {
			return -1, facing{}
		}
		return w, l.sideQuietly(t, w)
	}
	if l.things.early || t.Kind("between") != source.KindArray {
		return -1, facing{}
	}
	array, _ := t.Array("between", source.Optional)
	a, b := slices.Index(l.roomNames.ids, textOf(array, "0")), slices.Index(l.roomNames.ids, textOf(array, "1"))
	if a < 0 || b < 0 {
		return -1, facing{}
	}
	found := l.house.wallsBetween(a, b)
	if len(found) != 1 {
		return -1, facing{}
	}
	return found[0].wall, facing{found[0].side, true}
}

// sideQuietly is the side of a wall that a device or a conduit is on.
func (l *houseLoader) sideQuietly(t *source.Table, w int) facing {
	if l.things.kindOfTable(t) == "opening" {
		return facing{}
	}
	if side := textOf(t, "side"); side == "left" || side == "right" {
		return facing{sideOf(side), true}
	}
	room := slices.Index(l.roomNames.ids, textOf(t, "room"))
	if room < 0 || !l.house.Rooms[room].found() {
		return facing{}
	}
	from := facing{}
	for _, f := range l.house.facesOf(room) {
		if f.wall == w {
			if from.known && from.side != f.side {
				return facing{}
			}
			from = facing{f.side, true}
		}
	}
	return from
}

func (s *things) kindOfTable(t *source.Table) string {
	for i := range s.all {
		if s.all[i].t == t {
			return s.all[i].kind
		}
	}
	return ""
}

// findThing finds the place of a thing. What is wrong with its own text is said
// where it is read; a circle is said here, once.
func (l *houseLoader) findThing(i int, say sayer) bool {
	th := &l.things.all[i]
	if th.state == thingSought {
		l.things.close()
		return false
	}
	th.state = thingSought
	on, ok := l.sought(th)
	if ok {
		th.on, th.state = on, thingFound
		return true
	}
	th.state = thingLost
	if l.things.early && l.things.circle == nil {
		say(0, "found a place measured from %s, whose own place is not known before that of the walls", th.id).Note(th.pos, "%s is here", th.id)
	}
	return false
}

// close notes the things that wait for each other, in the order of the file.
func (s *things) close() {
	for i := range s.all {
		if th := &s.all[i]; th.state == thingSought {
			th.state = thingLost
			s.circle = append(s.circle, th.id)
		}
	}
}

// sought is the stretch that a thing takes up along its wall.
func (l *houseLoader) sought(th *thing) (extent, bool) {
	wall, from := l.wallQuietly(th.t)
	o, known, fault := parseOffset(textOf(th.t, "at"), l.house.Units)
	var width measure.Length
	var err error
	if th.kind == "opening" {
		width, err = measure.Parse(textOf(th.t, "width"))
	}
	if wall < 0 || err != nil || fault != nil {
		return extent{}, false
	}
	if known {
		at, ok := l.things.place(o, wall, from, width, unsaid)
		return extent{at, at + width}, ok
	}
	at, err := measure.Parse(textOf(th.t, "at"))
	if err != nil {
		return extent{}, false
	}
	if textOf(th.t, "from") == "end" {
		line, ok := l.wallLine(wall)
		if !ok {
			return extent{}, false
		}
		at = line.Length() - at - width
	}
	return extent{at, at + width}, true
}

// wallLine is the taped line of a wall, once its run is placed.
func (l *houseLoader) wallLine(wall int) (*Wall, bool) {
	if !l.things.early {
		return &l.house.Walls[wall], true
	}
	r, k := l.runOf(wall)
	if k >= len(r.legs) || !l.place(r) {
		return nil, false
	}
	a, b := r.points(k)
	return &Wall{A: a, B: b}, true
}

// meets is the stretch of a wall that another of its level takes up that meets
// it. Before
// walls are joined, one meets another whose taped line ends at it.
func (l *houseLoader) meets(wall, other int) (extent, bool) {
	if !l.things.early {
		return l.house.meets(wall, other)
	}
	p, j := l.runOf(wall)
	q, k := l.runOf(other)
	if wall == other || p.shared.Level != q.shared.Level || j >= len(p.legs) || k >= len(q.legs) || p.state != placed || q.state == unplaceable || q.state == placing || !l.place(q) {
		return extent{}, false
	}
	w, g := p.wall(j)
	_, v := q.wall(k)
	if g.heading.AlongY() == v.heading.AlongY() || g.grown().overlap(v.across[body]) < 0 || v.grown().overlap(g.across[body]) < 0 {
		return extent{}, false
	}
	lo, hi := v.across[body].lo, v.across[body].hi
	return ordered(w.Along(geom.Point{X: lo, Y: lo}), w.Along(geom.Point{X: hi, Y: hi})), true
}
