package plan

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// deriveRuns makes the walls round the rooms of each level: one closed run of
// outer walls along the inner faces, and a run for all walls between rooms that
// are in one line. What comes out does not depend on the order of the rooms.
func (l *houseLoader) deriveRuns(m *makeup) bool {
	var made []*run
	good := true
	for level := range l.house.Levels {
		var on []int
		for i := range l.insides {
			if l.insides[i].level == level {
				on = append(on, i)
			}
		}
		if on == nil {
			continue
		}
		runs, ok := l.deriveLevel(on, m)
		made, good = append(made, runs...), good && ok
	}
	if !good {
		return false
	}
	for _, r := range made {
		l.takeRun(r)
	}
	good = l.checkOutersUsed(m)
	for i := range m.partitions {
		if p := &m.partitions[i]; !p.used {
			p.run.t.Errorf("between", "found no wall between rooms %s and %s, which have no faces across from each other", l.insides[p.a].id, l.insides[p.b].id)
			good = false
		}
	}
	return good
}

// deriveLevel makes the walls round the rooms of one level.
func (l *houseLoader) deriveLevel(on []int, m *makeup) ([]*run, bool) {
	pairs, good := l.fits(on, m)
	if !good {
		return nil, false
	}
	outline, good := l.insideOutline(on, m)
	if !good {
		return nil, false
	}
	if outline, good = l.straightened(outline, on, m); !good {
		return nil, false
	}
	pieces := l.outerPieces(fromSouthWest(outline), on, m)
	l.callInner(pairs, m)
	return append([]*run{l.outerRun(pieces, &l.insides[on[0]], m)}, l.innerRuns(pairs, m)...), true
}

// takeRun takes up a run that was made.
func (l *houseLoader) takeRun(r *run) {
	r.first = len(l.wallNames.ids)
	l.takeNames(r)
	l.runs = append(l.runs, r)
}

// outerRun is the closed run of outer walls of a level, given the first of its
// rooms in the file: from the western of its southernmost inside corners, against
// the clock.
func (l *houseLoader) outerRun(pieces []outerPiece, in *inside, m *makeup) *run {
	made := *m.outers[0].run
	r := &made
	r.t, r.shared.Level = in.t, in.level
	r.closes, r.face, r.start = true, "left", pieces[0].a
	before := ""
	if in.level > 0 {
		before = l.house.Levels[in.level].ID + "-"
	}
	r.id = before + r.id
	r.ids = outerIDs(pieces)
	for i, piece := range pieces {
		r.ids[i] = before + r.ids[i]
		r.legs, r.each = append(r.legs, legBetween(piece.a, piece.b)), append(r.each, piece.of.run)
		r.rooms = append(r.rooms, [2]int{Left: piece.room, Right: -1})
		pos := l.insides[piece.room].t.Pos()
		if m.outerNames != nil && m.outerNames.Has(r.ids[i]) {
			pos = m.outerNames.ValuePos(r.ids[i])
			if own, ok := m.outerNames.Name(r.ids[i], source.Optional); ok {
				r.ids[i] = own
			}
		}
		r.idPos = append(r.idPos, pos)
	}
	return r
}

// legBetween is the leg of a run from a to b.
func legBetween(a, b geom.Point) survey.Leg {
	bearing := [4]survey.Bearing{East: survey.East, North: survey.North, West: survey.West, South: survey.South}[headingOf(a, b)]
	return survey.Leg{Bearing: bearing, Length: geom.Dist(a, b)}
}

// outerIDs names outer walls by where they look: "south", or "south.1",
// "south.2" from the west and then from the south.
func outerIDs(pieces []outerPiece) []string {
	ids := make([]string, len(pieces))
	for h, word := range headingWords {
		var sides []int
		for i, p := range pieces {
			if headingOf(p.a, p.b).Turn(Right) == Heading(h) {
				sides = append(sides, i)
			}
		}
		low := func(i int) geom.Point {
			a, b := pieces[i].a, pieces[i].b
			return geom.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}
		}
		slices.SortFunc(sides, func(i, j int) int {
			return cmp.Or(cmp.Compare(low(i).X, low(j).X), cmp.Compare(low(i).Y, low(j).Y))
		})
		for n, i := range sides {
			ids[i] = word
			if len(sides) > 1 {
				ids[i] = fmt.Sprintf("%s.%d", word, n+1)
			}
		}
	}
	return ids
}

// innerRuns are the walls between rooms. Walls that are in one line and as thick
// are legs of one run, but where walls cross only those along X go through.
func (l *houseLoader) innerRuns(pairs []facedPair, m *makeup) (runs []*run) {
	slices.SortFunc(pairs, func(p, q facedPair) int {
		return cmp.Or(order(p.alongY, q.alongY), cmp.Compare(p.line, q.line), cmp.Compare(p.along.lo, q.along.lo))
	})
	taken := make([]bool, len(pairs))
	var through []facedPair // the lines along X
	for i := range pairs {
		if taken[i] {
			continue
		}
		line := []facedPair{pairs[i]}
		for taken[i] = true; ; {
			k := l.goesOn(line[len(line)-1], pairs, taken, through, m)
			if k < 0 {
				break
			}
			taken[k] = true
			line = append(line, pairs[k])
		}
		if !pairs[i].alongY {
			whole := line[0]
			whole.along.hi = line[len(line)-1].along.hi
			through = append(through, whole)
		}
		runs = append(runs, l.innerRun(line, m))
	}
	return runs
}

// order puts false before true.
func order(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// goesOn finds the wall that goes on in the line of another, -1 if none does.
// Walls that meet the line from both sides, nearly across from each other, leave
// a gap of two of them at most.
func (l *houseLoader) goesOn(p facedPair, pairs []facedPair, taken []bool, through []facedPair, m *makeup) int {
	most := 2*m.thickest() + l.house.SketchError
	for k, q := range pairs {
		gap := extent{p.along.hi, q.along.lo}
		off := max(q.line-p.line, p.line-q.line)
		if taken[k] || q.alongY != p.alongY || off > l.house.SketchError || gap.lo > gap.hi || gap.hi-gap.lo > most || !sameLayers(m.between(p.a, p.b), m.between(q.a, q.b)) {
			continue
		}
		crossed := slices.ContainsFunc(through, func(t facedPair) bool {
			return gap.lo <= t.line && t.line <= gap.hi && t.along.lo < p.line && p.line < t.along.hi
		})
		if !p.alongY || !crossed {
			return k
		}
	}
	return -1
}

// sameLayers reports whether the walls of two runs are as thick, layer by layer.
func sameLayers(r, s *run) bool {
	return r.board == s.board && r.shared.StudDepth == s.shared.StudDepth && r.shared.Masonry == s.shared.Masonry
}

// innerRun is a run of walls between rooms in one line. Where two of them meet
// is halfway between the rooms.
func (l *houseLoader) innerRun(line []facedPair, m *makeup) *run {
	of := m.between(line[0].a, line[0].b)
	r := &run{t: l.insides[line[0].b].t, from: -1, face: "center", derived: true, shared: of.shared, board: of.board}
	r.shared.Level = l.insides[line[0].a].level
	at := line[0].along.lo
	r.start = line[0].point(at)
	for i, p := range line {
		end := p.along.hi
		if i+1 < len(line) {
			end = middle(end, line[i+1].along.lo)
		}
		r.legs = append(r.legs, legBetween(line[0].point(at), line[0].point(end)))
		r.each = append(r.each, m.between(p.a, p.b))
		rooms := [2]int{Left: p.b, Right: p.a} // of a wall that runs east
		if p.alongY {
			rooms = [2]int{Left: p.a, Right: p.b}
		}
		r.rooms = append(r.rooms, rooms)
		r.ids, r.idPos = append(r.ids, p.id), append(r.idPos, p.pos)
		at = end
	}
	r.id = r.ids[0]
	return r
}

// point is a point of a line between rooms.
func (p facedPair) point(along measure.Length) geom.Point {
	if p.alongY {
		return geom.Point{X: p.line, Y: along}
	}
	return geom.Point{X: along, Y: p.line}
}

// callInner calls the walls between rooms: by the rooms in the order of the
// alphabet, "bed-hall", or by their own name; where two rooms have several walls
// between them "bed-hall.1" and so on, from the west and then from the south.
func (l *houseLoader) callInner(pairs []facedPair, m *makeup) {
	slices.SortFunc(pairs, func(p, q facedPair) int {
		a, b := p.point(p.along.lo), q.point(q.along.lo)
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y), order(p.alongY, q.alongY))
	})
	of := map[[2]int][]int{}
	for i, p := range pairs {
		between := [2]int{min(p.a, p.b), max(p.a, p.b)}
		of[between] = append(of[between], i)
	}
	for i := range pairs {
		p := &pairs[i]
		p.id, p.pos = l.wallID(*p, m)
		if all := of[[2]int{min(p.a, p.b), max(p.a, p.b)}]; len(all) > 1 {
			p.id = fmt.Sprintf("%s.%d", p.id, slices.Index(all, i)+1)
		}
	}
}

// wallID names the wall between two rooms: by its own name, or by the rooms in
// the order of the alphabet.
func (l *houseLoader) wallID(p facedPair, m *makeup) (string, diag.Pos) {
	if own := m.partition(p.a, p.b); own != nil {
		own.used = true
		return own.id, own.run.t.ValuePos("id")
	}
	a, b := &l.insides[p.a], &l.insides[p.b]
	return min(a.id, b.id) + "-" + max(a.id, b.id), b.t.Pos()
}
