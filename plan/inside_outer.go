package plan

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// An outerMake is one [outer]: what outer walls are made of, all of them or those
// on a level, along a room or looking one way.
type outerMake struct {
	run               *run
	level, room, side int // -1 if it does not say
	used              bool
}

// general reports whether a make is that of all outer walls that no other names.
func (o *outerMake) general() bool { return o.level < 0 && o.room < 0 && o.side < 0 }

// rank orders makes: what names a room goes before what names a level, and that
// before what names a side alone.
func (o *outerMake) rank() (rank int) {
	if o.room >= 0 {
		rank += 4
	}
	if o.level >= 0 {
		rank += 2
	}
	if o.side >= 0 {
		rank++
	}
	return rank
}

// key is the key that says most of what a make is for.
func (o *outerMake) key() string {
	switch {
	case o.room >= 0:
		return "room"
	case o.side >= 0:
		return "side"
	case o.level >= 0:
		return "level"
	}
	return "frame"
}

// readOuters reads [outer] or all [[outer]]. The first is the general one, made
// if the file has none. ok is false if what they are for can't be told.
func (l *houseLoader) readOuters(root *source.Table, ids *names) (outers []outerMake, ok bool) {
	ok = true
	for _, t := range oneOrMoreOptional(root, "outer") {
		o := outerMake{run: l.readMade(t, "outer", true), level: -1, room: -1, side: -1}
		okAll := true
		if t.Has("level") {
			o.level, okAll = l.levelNames.find(t, "level", source.Required)
		}
		if t.Has("room") {
			room, okRoom := ids.find(t, "room", source.Required)
			o.room, okAll = room, okAll && okRoom
		}
		if t.Has("side") {
			word, okSide := t.Choice("side", source.Required, headingWords[:]...)
			o.side, okAll = slices.Index(headingWords[:], word), okAll && okSide
		}
		same := func(p outerMake) bool { return p.level == o.level && p.room == o.room && p.side == o.side }
		if i := slices.IndexFunc(outers, same); okAll && i >= 0 {
			t.Errorf(o.key(), "found another [[outer]] for the same walls; want a level, a room or a side of its own").
				Note(outers[i].run.t.Pos(), "the first is here")
			okAll = false
		}
		ok = ok && okAll
		outers = append(outers, o)
	}
	if i := slices.IndexFunc(outers, func(o outerMake) bool { return o.general() }); i >= 0 {
		o := outers[i]
		return slices.Insert(slices.Delete(outers, i, i+1), 0, o), ok
	}
	// Nothing in an empty table can be wrong.
	t, _ := source.Parse(l.house.File, nil)
	return slices.Insert(outers, 0, outerMake{run: l.readMade(t, "outer", true), level: -1, room: -1, side: -1, used: true}), ok
}

// oneOrMoreOptional reads a table [key], several [[key]], or none.
func oneOrMoreOptional(root *source.Table, key string) []*source.Table {
	if !root.Has(key) {
		return nil
	}
	return oneOrMore(root, key)
}

// inherit takes what a make of outer walls does not say from that of its level,
// or from the general one. It needs the levels of the rooms.
func (l *houseLoader) inherit(m *makeup) {
	byLevel := func(level int) *outerMake {
		i := slices.IndexFunc(m.outers, func(o outerMake) bool { return o.level == level && o.room < 0 && o.side < 0 })
		if level < 0 || i < 0 {
			return &m.outers[0]
		}
		return &m.outers[i]
	}
	// Makes of a level alone come first.
	slices.SortStableFunc(m.outers[1:], func(p, q outerMake) int { return cmp.Compare(p.rank(), q.rank()) })
	for _, alone := range [2]bool{true, false} {
		for i := range m.outers {
			o := &m.outers[i]
			if o.general() || alone != (o.rank() == 2) {
				continue
			}
			of := &m.outers[0]
			if !alone {
				level := o.level
				if o.room >= 0 {
					level = l.insides[o.room].level
				}
				of = byLevel(level)
			}
			o.run.asUnless(o.run.t, of.run)
		}
	}
}

// outerOf is what an outer wall of a level along a room that looks one way is
// made of.
func (m *makeup) outerOf(level, room int, looks Heading) *outerMake {
	best := &m.outers[0]
	for i := range m.outers {
		o := &m.outers[i]
		if (o.level < 0 || o.level == level) && (o.room < 0 || o.room == room) && (o.side < 0 || o.side == int(looks)) && o.rank() >= best.rank() {
			best = o
		}
	}
	return best
}

// An outerPiece is a stretch of outer wall of one make.
type outerPiece struct {
	a, b geom.Point
	of   *outerMake
	room int // along most of it
}

// outerPieces cuts the line of a level's outer walls where what they are made of
// changes: halfway between the rooms there.
func (l *houseLoader) outerPieces(p geom.Polygon, on []int, m *makeup) (pieces []outerPiece) {
	type stretch struct {
		along extent
		of    *outerMake
		room  int
	}
	for i, a := range p {
		b := p[(i+1)%len(p)]
		side := faceBetween(a, b)
		var along []stretch
		for _, k := range on {
			in := &l.insides[k]
			for _, f := range in.faces() {
				off := max(f.at-side.at, side.at-f.at)
				if f.looks == side.looks && off <= l.house.SketchError && f.along.overlap(side.along) > 0 {
					along = append(along, stretch{f.along, m.outerOf(in.level, k, f.looks), k})
				}
			}
		}
		slices.SortFunc(along, func(p, q stretch) int {
			return cmp.Or(cmp.Compare(p.along.lo, q.along.lo), cmp.Compare(p.along.hi, q.along.hi))
		})
		if !headingOf(a, b).Rising() {
			slices.Reverse(along)
		}
		at, most := a, stretch{}
		for k, s := range along {
			s.of.used = true
			if s.along.hi-s.along.lo > most.along.hi-most.along.lo {
				most = s
			}
			if k+1 < len(along) && along[k+1].of == s.of {
				continue
			}
			to := b
			if k+1 < len(along) {
				next := along[k+1].along
				gap := ordered(min(s.along.hi, next.hi), max(s.along.lo, next.lo))
				to = onFace(a, b, middle(gap.lo, gap.hi))
			}
			pieces = append(pieces, outerPiece{at, to, s.of, most.room})
			at, most = to, stretch{}
		}
		if len(along) == 0 {
			pieces = append(pieces, outerPiece{a, b, m.outerOf(l.insides[on[0]].level, -1, side.looks), on[0]})
		}
	}
	return pieces
}

// onFace is the point of a line along an axis from a to b with a coordinate along
// it.
func onFace(a, b geom.Point, along measure.Length) geom.Point {
	if headingOf(a, b).AlongY() {
		return geom.Point{X: a.X, Y: along}
	}
	return geom.Point{X: along, Y: a.Y}
}

// checkOutersUsed reports makes of outer walls that there are none of.
func (l *houseLoader) checkOutersUsed(m *makeup) bool {
	good := true
	for i := range m.outers {
		o := &m.outers[i]
		if o.used || o.general() {
			continue
		}
		good = false
		where := "outer wall"
		if o.room >= 0 {
			where += " along room " + l.insides[o.room].id
		}
		if o.level >= 0 {
			where += " on level " + l.house.Levels[o.level].ID
		}
		if o.side >= 0 {
			where += " that looks " + headingWords[o.side]
		}
		o.run.t.Errorf(o.key(), "found no %s, which this would be for", where)
	}
	return good
}

// checkMadeBlocks holds rows of fire blocking against the lowest of the levels
// that have them.
func (l *houseLoader) checkMadeBlocks(m *makeup) {
	if m == nil || len(l.insides) == 0 {
		return
	}
	lowest := map[*run]int{}
	lower := func(r *run, level int) {
		if was, ok := lowest[r]; !ok || l.house.Levels[level].PlateTop < l.house.Levels[was].PlateTop {
			lowest[r] = level
		}
	}
	for i := range l.insides {
		level := l.insides[i].level
		lower(m.inner, level)
		for k := range m.partitions {
			lower(m.partitions[k].run, level)
		}
		of := m.outers[0].run
		for k := range m.outers {
			o := &m.outers[k]
			if o.level >= 0 && o.level != level || o.room >= 0 && l.insides[o.room].level != level {
				continue
			}
			if o.rank() == 2 && (o.run.t.Has("fire_blocks") || o.run.shared.Masonry) {
				of = o.run
			}
			if !o.general() {
				lower(o.run, level)
			}
		}
		lower(of, level)
	}
	for _, r := range m.runs() {
		if level, ok := lowest[r]; ok {
			l.checkBlocks(r, level)
		}
	}
}

// runs are all makes, in the order of reading.
func (m *makeup) runs() []*run {
	all := []*run{m.inner}
	for i := range m.outers {
		all = append(all, m.outers[i].run)
	}
	for i := range m.partitions {
		all = append(all, m.partitions[i].run)
	}
	return all
}
