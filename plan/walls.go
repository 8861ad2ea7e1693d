package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// walls reads the runs of walls, places them and joins their ends. The walls
// are placed only if nothing is wrong with any of them, since what is wrong
// with one shows up in the rooms around it.
func (l *houseLoader) walls(root *source.Table) {
	l.readRuns(root)
	l.insideRuns(root)
	for _, r := range l.runs {
		l.readStart(r)
	}
	l.readCladdings(root)
	l.setLevels()
	for _, r := range l.runs {
		if !r.derived {
			l.checkBlocks(r, r.shared.Level)
		}
	}
	checks := l.readChecks(root)
	nets := l.tapedNets(checks)
	l.placed = l.findOuters()
	for _, r := range l.runs {
		if !l.place(r) {
			l.placed = false
		}
	}
	l.judge(nets)
	if !l.placed {
		return
	}
	for _, r := range l.runs {
		l.makeWalls(r)
	}
	joinLegs(l.legs)
	l.finishWalls()
	l.things.again()
	l.placed = l.checkLengths() && l.checkSize() && l.checkOverlaps() && l.setOutlines()
}

// readStart reads where a run starts: at a point, or at a wall of another run.
func (l *houseLoader) readStart(r *run) {
	if r.derived {
		return
	}
	if r.t.Kind("start") != source.KindTable {
		start, ok := pair(r.t, "start", coordinates)
		if !ok {
			r.state = unplaceable
		}
		r.start = start
		return
	}
	t, _ := r.t.Table("start", source.Required)
	w, okWall := l.findWall(t, "wall", source.Required)
	at, okAt := readOffset(t, "at")
	if !okWall || !okAt {
		r.state = unplaceable
	}
	r.from, r.fromAt, r.offset = w, at.length, at
}

// place finds the points of a run, after those of the run that it starts from.
func (l *houseLoader) place(r *run) bool {
	switch r.state {
	case placed:
		return true
	case placing:
		r.t.Errorf("start", "found runs of walls that start from each other in a circle; start one of them at a point")
		r.state = unplaceable
		return false
	case unplaceable:
		return false
	}
	r.state = placing
	if r.from >= 0 && !l.placeStart(r) || !l.closeRun(r) || r.state == unplaceable {
		r.state = unplaceable
		return false
	}
	r.state = placed
	return true
}

// placeStart finds where on another wall r starts.
func (l *houseLoader) placeStart(r *run) bool {
	other, leg := l.runOf(r.from)
	if !l.place(other) {
		return false
	}
	t, _ := r.t.Table("start", source.Required)
	if r.offset.way != plainly {
		at, ok := l.placeFrom(r.offset, r.from, facing{}, 0, sayAt(t, "at"))
		if !ok {
			return false
		}
		r.fromAt = at
	}
	a, b := other.points(leg)
	w := Wall{A: a, B: b}
	if length := w.Length(); r.fromAt < 0 || r.fromAt > length {
		t.Errorf("at", "found %s along wall %s, which is %s long", l.house.text(r.fromAt), l.wallNames.ids[r.from], l.house.text(length)).
			Note(l.wallNames.here(r.from))
		return false
	}
	r.start = onLine(&w, r.fromAt)
	return true
}

// onLine is the point of the taped line of w at a distance from its start.
func onLine(w *Wall, along measure.Length) geom.Point {
	if !w.Heading().Rising() {
		along = -along
	}
	if w.AlongY() {
		return geom.Point{X: w.A.X, Y: w.A.Y + along}
	}
	return geom.Point{X: w.A.X + along, Y: w.A.Y}
}

// runOf is the run of a wall, and which of its legs the wall is.
func (l *houseLoader) runOf(wall int) (r *run, leg int) {
	for _, r = range l.runs {
		if wall < r.first+len(r.ids) {
			break
		}
	}
	return r, wall - r.first
}

// points are the ends of a leg of a placed run.
func (r *run) points(leg int) (a, b geom.Point) {
	p := r.traverse.Points
	return r.start.Add(p[leg]), r.start.Add(p[leg+1])
}

// closeRun follows the legs of a run and spreads its misclosure.
func (l *houseLoader) closeRun(r *run) bool {
	h := l.house
	r.traverse = survey.Close(r.legs, r.closes, h.Closes)
	mis := r.traverse.Misclosure
	if r.closes && !r.traverse.Closes {
		r.missed = r.t.Errorf("run", "found a run that ends %s of its start, %s off; want at most %s (closing in [house])",
			h.offText(mis.DX, mis.DY), h.text(mis.Linear), h.text(h.Closes))
		return false
	}
	for k, leg := range r.legs {
		if a, b := r.points(k); a == b {
			l.list.Errorf(r.t.ValuePosAt("run", leg.Offset), r.t.Path("run"), "found wall %s, which has no length left once the run is closed", r.ids[k])
			return false
		}
	}
	if mis.Linear != 0 {
		r.missed = r.t.Warnf("run", "the run ends %s of its start, %s in %s (1:%d), which is spread over its legs",
			h.offText(mis.DX, mis.DY), h.text(mis.Linear), h.text(mis.Perimeter), mis.Ratio())
	}
	if !r.derived {
		l.keepTraverse(r)
	}
	return true
}

func (l *houseLoader) keepTraverse(r *run) {
	mis := r.traverse.Misclosure
	t := Traverse{ID: r.id, Pos: r.t.Pos(), Closed: r.closes, MisX: mis.DX, MisY: mis.DY, First: r.ids[0], At: r.fromAt}
	if r.from >= 0 {
		t.On = l.wallNames.ids[r.from]
	}
	for _, leg := range r.legs {
		t.Perimeter += leg.Length
	}
	l.house.Traverses = append(l.house.Traverses, t)
}

// outerSide is the side of a closed run, by its points, that looks out.
func outerSide(p []geom.Point) Side {
	if geom.Polygon(p[:len(p)-1]).IsCCW() {
		return Right
	}
	return Left
}

// wall makes the wall of a leg of a placed run, and the leg before it is joined.
func (r *run) wall(k int) (Wall, leg) {
	of := r
	if r.each != nil {
		of = r.each[k]
	}
	w := of.shared
	w.Level = r.shared.Level
	w.ID, w.Pos, w.Boards = r.ids[k], r.idPos[k], [2]measure.Length{of.board, of.board}
	if w.Exterior && r.closes {
		w.Out = outerSide(r.traverse.Points)
		c := r.cladOf(k)
		w.Boards[w.Out], w.Cladding = c.thick, c.kind
	}
	w.A, w.B = r.points(k)
	w.Taped, w.Made = r.legs[k].Length, r.derived
	return w, newLeg(&w, r.face)
}

// makeWalls makes the walls of a run and their legs.
func (l *houseLoader) makeWalls(r *run) {
	n := len(r.legs)
	for k := range r.legs {
		w, g := r.wall(k)
		if k > 0 || r.closes && n > 1 {
			g.corner[atStart] = r.first + (k+n-1)%n
		}
		if k < n-1 || r.closes && n > 1 {
			g.corner[atEnd] = r.first + (k+1)%n
		}
		l.house.Walls = append(l.house.Walls, w)
		l.legs = append(l.legs, g)
	}
}

// newLeg is the leg of a wall whose tape ran along a face of it, or along its
// centre, before its ends are joined.
func newLeg(w *Wall, face string) leg {
	thick := w.Boards[Left] + w.StudDepth + w.Boards[Right]
	onLeft := thick / 2
	switch face {
	case "left":
		onLeft = 0
	case "right":
		onLeft = thick
	}
	g := leg{level: w.Level, heading: w.Heading(), corner: [2]int{-1, -1}, joined: [2]int{-1, -1}}
	g.taped, g.line = ordered(w.A.X, w.B.X), w.A.Y
	if w.AlongY() {
		g.taped, g.line = ordered(w.A.Y, w.B.Y), w.A.X
	}
	left, right := onLeft, onLeft-thick
	g.across[body] = g.besides(left, right)
	g.across[frame] = g.besides(left-w.Boards[Left], right+w.Boards[Right])
	g.along, g.clear = [layers]extent{g.taped, g.taped}, g.taped
	return g
}

// besides is the extent across between two distances to the left of the taped
// line.
func (l *leg) besides(p, q measure.Length) extent {
	if !l.heading.Turn(Left).Rising() {
		p, q = -p, -q
	}
	return ordered(l.line+p, l.line+q)
}

// finishWalls takes the joined legs back into the walls.
func (l *houseLoader) finishWalls() {
	h := l.house
	for i := range h.Walls {
		h.Walls[i].Body, h.Walls[i].Frame = l.legs[i].rect(body), l.legs[i].rect(frame)
		if b := h.Walls[i].Body; i == 0 {
			h.Boundaries = b
		} else {
			h.Boundaries.Min = geom.Point{X: min(h.Boundaries.Min.X, b.Min.X), Y: min(h.Boundaries.Min.Y, b.Min.Y)}
			h.Boundaries.Max = geom.Point{X: max(h.Boundaries.Max.X, b.Max.X), Y: max(h.Boundaries.Max.Y, b.Max.Y)}
		}
	}
}

// clearStretch is the part of a wall between the walls at its ends.
func (l *houseLoader) clearStretch(wall int) extent {
	w, c := &l.house.Walls[wall], l.legs[wall].clear
	return ordered(w.Along(geom.Point{X: c.lo, Y: c.lo}), w.Along(geom.Point{X: c.hi, Y: c.hi}))
}
