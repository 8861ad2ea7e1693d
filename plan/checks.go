package plan

import (
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// A Check is a length between two places on walls that was taped to see
// whether the sketch is right, such as a diagonal.
type Check struct {
	ID     string
	Pos    diag.Pos
	Length measure.Length // as taped
	// Drawn is what the walls of the House make it.
	Drawn measure.Length
	// A and B are its ends on the walls of the House; between parallel walls
	// they are square across from the middle of the first wall's taped line.
	A, B geom.Point
	// Agrees is true if the two differ by no more than the tape may be off.
	Agrees bool
}

// A check is a [[check]] while the walls are being placed.
type check struct {
	t      *source.Table
	id     string
	ends   [2]checkEnd
	length measure.Length
	error  measure.Length // how far off the length may be
}

// An endKind says what place on a wall an end of a check is.
type endKind uint8

const (
	wallFace   endKind = iota // the wall as a line; the length is taped square to it
	wallCorner                // the start or the end of the wall
	wallPoint                 // a place along the wall
	roomCorner                // an inside corner of a room by inside dimensions
)

// A checkEnd is one end of a check: a wall's taped line, or its finished face
// on a side, or the corner of a room.
type checkEnd struct {
	wall    int
	kind    endKind
	end     int // of wallCorner
	at      measure.Length
	fromEnd bool
	faced   bool
	side    Side
	room    int // of roomCorner, and which of its corners along its walk
	corner  int
}

// readChecks reads all [[check]], and returns those without an error.
func (l *houseLoader) readChecks(root *source.Table) (checks []check) {
	ids := l.newNames("check")
	for _, t := range tables(root, "check", source.Optional, mostChecks) {
		c := check{t: t}
		c.id, _ = t.Name("id", source.Required)
		ids.add(t, "id", c.id)
		var okEnds [2]bool
		for i, key := range [2]string{"from", "to"} {
			c.ends[i], okEnds[i] = l.readCheckEnd(t, key)
		}
		var okLength bool
		c.length, okLength = length(t, "length", source.Required, checkLengths)
		c.error = lengthOr(t, "error", checkErrors, l.house.SketchError)
		if okEnds[0] && okEnds[1] && l.sameKind(&c) && okLength {
			checks = append(checks, c)
		}
	}
	return checks
}

// readCheckEnd reads a place such as { wall = "south", end = "start" }.
func (l *houseLoader) readCheckEnd(t *source.Table, key string) (checkEnd, bool) {
	in, ok := t.Table(key, source.Required)
	if !ok {
		return checkEnd{}, false
	}
	var e checkEnd
	if in.Has("room") || in.Has("corner") {
		return l.readRoomCorner(in)
	}
	e.wall, ok = l.findWall(in, "wall", source.Required)
	if in.Has("side") {
		side, okSide := in.Choice("side", source.Optional, "left", "right")
		e.faced, e.side = true, sideOf(side)
		ok = ok && okSide
	}
	switch {
	case in.Has("end") && in.Has("at"):
		in.Errorf("at", "found both end and at; want one of them")
		return e, false
	case in.Has("end"):
		end, okEnd := in.Choice("end", source.Optional, "start", "end")
		e.kind = wallCorner
		if end == "end" {
			e.end = atEnd
		}
		ok = ok && okEnd
	case in.Has("at"):
		var okAt bool
		e.kind = wallPoint
		e.at, okAt = length(in, "at", source.Optional, alongWalls)
		e.fromEnd = choiceOr(in, "from", "start", "end") == "end"
		ok = ok && okAt && l.onTapedWall(in, &e, ok)
	}
	return e, ok
}

// onTapedWall reports whether a place is on its wall as it was taped.
func (l *houseLoader) onTapedWall(t *source.Table, e *checkEnd, known bool) bool {
	if !known || l.badRun {
		return true
	}
	r, k := l.runOf(e.wall)
	if taped := r.legs[k].Length; e.at > taped {
		t.Errorf("at", "found %s along wall %s, which %s %s", l.house.text(e.at), r.ids[k], r.known(), l.house.text(taped)).
			Note(r.here(k))
		return false
	}
	return true
}

// sameKind reports whether the two ends of a check make a length: two places
// that are apart, or two parallel walls.
func (l *houseLoader) sameKind(c *check) bool {
	a, b := c.ends[0], c.ends[1]
	if (a.kind == wallFace) != (b.kind == wallFace) {
		c.t.Errorf("to", `found a place at one end and a wall as a whole at the other; want end, at or corner for both, or a wall alone for both where walls are parallel`)
		return false
	}
	if a == b {
		c.t.Errorf("to", "found a check from a place to itself; want two places")
		return false
	}
	if l.badRun {
		return true
	}
	if from, to := l.levelOfEnd(&a), l.levelOfEnd(&b); from != to {
		d := c.t.Errorf("to", "found a check from %s%s to %s%s; want two places on one level", l.endText(&a), l.house.onLevel(from), l.endText(&b), l.house.onLevel(to))
		if b.kind != roomCorner {
			q, k := l.runOf(b.wall)
			d.Note(q.here(k))
		}
		return false
	}
	if a.kind != wallFace {
		return true
	}
	p, j := l.runOf(a.wall)
	q, k := l.runOf(b.wall)
	if alongY(p.legs[j]) != alongY(q.legs[k]) {
		c.t.Errorf("to", "found walls %s and %s, which are not parallel; want end or at for both ends of the check", p.ids[j], q.ids[k]).
			Note(q.here(k))
		return false
	}
	return true
}

// faceOffsets is how far the finished faces of a leg, on its left and on its
// right, are from its taped line, along the axis across it.
func (l *houseLoader) faceOffsets(r *run, k int) [2]measure.Length {
	of := r
	if r.each != nil {
		of = r.each[k]
	}
	w := of.shared
	w.Boards = [2]measure.Length{of.board, of.board}
	if w.Exterior && r.closes {
		w.Boards[outerSide(survey.Close(r.legs, false, 0).Points)] = r.cladOf(k).thick
	}
	w.B = geom.Point{X: signedAlong(r.legs[k], foot)}
	if alongY(r.legs[k]) {
		w.B = geom.Point{Y: w.B.X}
	}
	g := newLeg(&w, r.face)
	var out [2]measure.Length
	for s := range out {
		out[s] = g.across[body].end(g.heading.Turn(Side(s)).Rising())
	}
	return out
}
