package plan

import (
	"errors"
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/survey"
)

// What a length may be off is taken as so many standard deviations of it, and
// no length as better than the least (common practice, no source).
const (
	sigmasOff  = 3
	leastSigma = mm / 2
)

// mostDoubted is how many doubtful measurements a message lists.
const mostDoubted = 8

// A tapedNet is all that was taped of the walls of a level as a network. The unknowns are
// the lines that walls run on: one coordinate each, shared by all walls on it,
// so that walls stay square whatever is wrong. It is made before the runs are
// placed, and also of runs that do not close.
type tapedNet struct {
	l        *houseLoader
	runs     []*run
	net      survey.Network
	taped    []taped
	stations map[*run][]survey.Station // where its legs start and end; nil if not known
	legs     map[*run]int              // the observation of its first leg
	checks   []check
	first    int                      // the observation of the first check
	root     int                      // of the rooms by inside dimensions, the one that is held
	rooms    map[int][]survey.Station // the corners of rooms by inside dimensions, along their walks
}

// A taped is an observation as messages name it.
type taped struct {
	name  string
	pos   diag.Pos
	given bool // nobody taped it: the file says so
}

// tapedNets makes the network of each level.
func (l *houseLoader) tapedNets(checks []check) (nets []*tapedNet) {
	for level := range l.house.Levels {
		if s := l.newTapedNet(level, checks); s != nil {
			nets = append(nets, s)
		}
	}
	return nets
}

// judge judges the networks that have anything to tell, and keeps the checks in
// the order of their ids. The house is adjusted if all of these are.
func (l *houseLoader) judge(nets []*tapedNet) {
	settled := true
	for _, s := range nets {
		if len(s.checks) > 0 || slices.ContainsFunc(s.runs, func(r *run) bool { return r.missed != nil }) {
			l.house.Adjusted = false
			s.judge()
			settled = settled && l.house.Adjusted
		}
	}
	l.house.Adjusted = l.house.Adjusted && settled
	slices.SortFunc(l.house.Checks, func(a, b Check) int { return strings.Compare(a.ID, b.ID) })
}

// newTapedNet makes the network of the runs and checks of a level. It is nil if
// some run has no place.
func (l *houseLoader) newTapedNet(level int, checks []check) *tapedNet {
	if l.badRun {
		return nil
	}
	s := &tapedNet{l: l}
	for _, r := range l.runs {
		if r.shared.Level == level {
			s.runs = append(s.runs, r)
		}
	}
	for _, c := range checks {
		if l.levelOfEnd(&c.ends[0]) == level {
			s.checks = append(s.checks, c)
		}
	}
	s.stations = map[*run][]survey.Station{}
	s.legs = map[*run]int{}
	// Sums are rounded in their order, so the order is that of the ids and not
	// that of the file.
	slices.SortFunc(s.checks, func(a, b check) int { return strings.Compare(a.id, b.id) })
	slices.SortFunc(s.runs, func(a, b *run) int { return strings.Compare(a.id, b.id) })
	s.addRooms(level)
	for _, r := range s.runs {
		if !s.addRun(r) {
			return nil
		}
	}
	s.first = len(s.taped)
	for i := range s.checks {
		s.addCheck(&s.checks[i])
	}
	return s
}

// unknown adds an unknown that is about at near.
func (s *tapedNet) unknown(near measure.Length, held bool) int {
	s.net.Near, s.net.Held = append(s.net.Near, near), append(s.net.Held, held)
	return len(s.net.Near) - 1
}

func (s *tapedNet) observe(o survey.Observation, off measure.Length, name string, pos diag.Pos) {
	o.Sigma = max(off/sigmasOff, leastSigma)
	s.net.Observations = append(s.net.Observations, o)
	s.taped = append(s.taped, taped{name: name, pos: pos})
}

// addRun adds a run, after the one that it starts from. ok is false if its
// start is not known, or is in a circle of runs.
func (s *tapedNet) addRun(r *run) (ok bool) {
	if at, seen := s.stations[r]; seen {
		return at != nil
	}
	s.stations[r] = nil
	if r.state == unplaceable {
		return false
	}
	if r.derived {
		s.stations[r] = s.madeStations(r)
		return true
	}
	at := survey.Station{}
	if r.from < 0 {
		at.X, at.Y = s.unknown(r.start.X, true), s.unknown(r.start.Y, true)
	} else if at, ok = s.startOnWall(r); !ok {
		return false
	}
	s.legs[r] = len(s.taped)
	s.stations[r] = s.addLegs(r.legs, r.closes, at, func(k int) (string, diag.Pos) { return "wall " + r.ids[k], r.idPos[k] })
	return true
}

// startOnWall is where a run starts on another: the place along that wall was
// taped.
func (s *tapedNet) startOnWall(r *run) (survey.Station, bool) {
	other, k := s.l.runOf(r.from)
	// Where a start is that is measured from another thing is known only once
	// it is placed.
	if !s.addRun(other) || r.offset.way != plainly && !s.l.place(r) {
		return survey.Station{}, false
	}
	leg, start := other.legs[k], s.stations[other][k]
	at := start
	signed, along, unknown := legAxis(leg, r.fromAt, &at)
	*unknown = s.unknown(s.net.Near[*unknown]+signed, false)
	s.observe(survey.Observation{From: start, To: at, Along: along, Length: signed}, s.l.house.SketchError,
		"the start of "+r.ids[0]+" on "+other.ids[k], r.t.ValuePos("start"))
	return at, true
}

// addLegs adds the legs of a run, or of the walk round a room, from its first
// station. In one that closes the last leg on each axis comes back to the line of
// the start.
func (s *tapedNet) addLegs(legs []survey.Leg, closes bool, at survey.Station, called func(k int) (string, diag.Pos)) []survey.Station {
	start := at
	stations := []survey.Station{at}
	back := map[bool]int{}
	for k, leg := range legs {
		back[alongY(leg)] = k
	}
	for k, leg := range legs {
		to := at
		signed, along, unknown := legAxis(leg, leg.Length, &to)
		switch {
		case !closes || back[alongY(leg)] != k:
			*unknown = s.unknown(s.net.Near[*unknown]+signed, false)
		case along == survey.AlongY:
			to.Y = start.Y
		default:
			to.X = start.X
		}
		name, pos := called(k)
		s.observe(survey.Observation{From: at, To: to, Along: along, Length: signed}, s.l.house.SketchError, name, pos)
		stations, at = append(stations, to), to
	}
	return stations
}

// alongY reports whether a leg runs along Y.
func alongY(leg survey.Leg) bool { return leg.Bearing == survey.North || leg.Bearing == survey.South }

// signedAlong is a length along a leg as a step of the coordinate on its axis.
func signedAlong(leg survey.Leg, length measure.Length) measure.Length {
	if leg.Bearing == survey.South || leg.Bearing == survey.West {
		return -length
	}
	return length
}

// legAxis is a length along a leg with its sign, the axis, and the unknown of a
// station on that axis.
func legAxis(leg survey.Leg, length measure.Length, at *survey.Station) (signed measure.Length, along survey.Along, unknown *int) {
	if alongY(leg) {
		return signedAlong(leg, length), survey.AlongY, &at.Y
	}
	return signedAlong(leg, length), survey.AlongX, &at.X
}

// addCheck adds a check.
func (s *tapedNet) addCheck(c *check) {
	from, to := s.stationOf(&c.ends[0]), s.stationOf(&c.ends[1])
	o := survey.Observation{From: from, To: to, Along: survey.Straight, Length: c.length}
	if c.ends[0].kind == wallFace {
		r, k := s.l.runOf(c.ends[0].wall)
		o.Along = survey.AlongY
		if alongY(r.legs[k]) {
			o.Along = survey.AlongX
		}
		p, q := place(from, s.net.Near), place(to, s.net.Near)
		if d := q.Sub(p); o.Along == survey.AlongX && d.X < 0 || o.Along == survey.AlongY && d.Y < 0 {
			o.From, o.To = to, from
		}
	}
	s.observe(o, c.error, "check "+c.id, c.t.ValuePos("length"))
}

// stationOf is the station of an end of a check.
func (s *tapedNet) stationOf(e *checkEnd) survey.Station {
	if e.kind == roomCorner {
		return s.rooms[e.room][e.corner]
	}
	r, k := s.l.runOf(e.wall)
	leg, at := r.legs[k], s.stations[r][k]
	if e.kind == wallCorner && e.end == atEnd || e.kind == wallPoint && e.fromEnd {
		at = s.stations[r][k+1]
	}
	if e.kind == wallPoint {
		along := signedAlong(leg, e.at)
		if e.fromEnd {
			along = -along
		}
		shift(&at, alongY(leg), along)
	}
	if !e.faced {
		return at
	}
	s.toFace(&at, r, k, e.side)
	if next, ok := r.neighbour(k, e.end); ok && e.kind == wallCorner && alongY(r.legs[next]) != alongY(leg) {
		s.toFace(&at, r, next, e.side)
	}
	return at
}

// toFace moves a station from the line of a wall to its finished face on a side:
// that of the room there, if the wall was made round it.
func (s *tapedNet) toFace(at *survey.Station, r *run, k int, side Side) {
	across := !alongY(r.legs[k])
	shift(at, across, s.l.faceOffsets(r, k)[side])
	if r.derived && r.rooms[k][side] >= 0 {
		s.snap(at, across, r.rooms[k][side], place(*at, s.net.Near))
	}
}

// shift moves what is known of a station along one axis.
func shift(at *survey.Station, onY bool, by measure.Length) {
	if onY {
		at.Known.Y += by
	} else {
		at.Known.X += by
	}
}

// neighbour is the leg of the run that a leg turns into at an end.
func (r *run) neighbour(leg, end int) (int, bool) {
	n := len(r.legs)
	next := leg + 2*end - 1
	if r.closes && n > 1 {
		return (next + n) % n, true
	}
	return next, 0 <= next && next < n
}

// place is where a station is.
func place(at survey.Station, values []measure.Length) geom.Point {
	return geom.Point{X: values[at.X], Y: values[at.Y]}.Add(at.Known)
}

// judge adjusts the network, adds to the messages about runs that do not close
// which measurement is doubtful, and reports the checks. It moves the walls if
// the file asks for it and nothing is in doubt.
func (s *tapedNet) judge() {
	a, err := survey.Adjust(s.net)
	var misfit *survey.FitError
	if errors.As(err, &misfit) {
		s.reportMisfit(misfit)
		return
	}
	doubtful := a.Doubtful(survey.Snooping)
	if s.l.placed && s.l.adjust {
		s.settle(a, doubtful)
	}
	told := s.noteRuns(a, doubtful)
	if s.l.placed {
		told = s.reportChecks(a, doubtful) || told
	}
	if !told && doubtful != nil {
		o := s.taped[doubtful[0]]
		s.noteDoubt(s.l.list.Warnf(o.pos, "wall", "what was taped of the walls and checks does not come together"), a, doubtful)
	}
}

// reportMisfit says why the sketch has no best fit.
func (s *tapedNet) reportMisfit(e *survey.FitError) {
	if i := e.Observation - s.first; e.Observation >= 0 && i >= 0 {
		s.checks[i].t.Errorf("to", "found a check between two places that are in one place; want two places that are apart")
		return
	}
	if len(s.checks) > 0 {
		s.checks[0].t.Errorf("length", "the checks and the walls do not come together at all; look for a wrong length, or take out this check and the next ones until they do")
	}
}

// settle moves the runs to where least squares has them.
func (s *tapedNet) settle(a *survey.Adjustment, doubtful []int) {
	if doubtful != nil {
		o := s.taped[doubtful[0]]
		s.l.list.Warnf(s.l.adjustPos, "house.adjust", "the walls are not adjusted by least squares while a measurement is in doubt").
			Note(o.pos, "%s is", o.name)
		return
	}
	for _, r := range s.runs {
		if r.derived {
			continue
		}
		at := s.stations[r]
		points := make([]geom.Point, len(at))
		r.start = place(at[0], a.Values)
		for k := range at {
			points[k] = place(at[k], a.Values).Sub(r.start)
		}
		for k, leg := range r.legs {
			if signedAlong(leg, points[k+1].X-points[k].X+points[k+1].Y-points[k].Y) <= 0 {
				s.l.list.Errorf(r.idPos[k], r.t.Path("run"), "found wall %s, which has no length left once the sketch is adjusted", r.ids[k])
				s.l.placed = false
			}
		}
		r.traverse.Points = points
	}
	s.l.house.Adjusted = true
}

// noteRuns adds the doubtful measurements to the messages about runs that miss
// their start and have one of them.
func (s *tapedNet) noteRuns(a *survey.Adjustment, doubtful []int) (told bool) {
	for _, r := range s.runs {
		for _, i := range doubtful {
			if k := i - s.legs[r]; r.missed != nil && 0 <= k && k < len(r.legs) {
				s.noteDoubt(r.missed, a, doubtful)
				told = true
				break
			}
		}
	}
	return told
}

// noteDoubt adds notes about doubtful measurements.
func (s *tapedNet) noteDoubt(d *diag.Diagnostic, a *survey.Adjustment, doubtful []int) {
	h := s.l.house
	for n, i := range doubtful {
		if n == mostDoubted {
			break
		}
		o, length, expected := s.taped[i], s.net.Observations[i].Length, a.Outcomes[i].Expected
		which := "most doubtful is"
		if len(doubtful) > 1 {
			which = "one of " + counted(len(doubtful), "measurement") + " that cannot be told apart:"
		}
		other := ""
		if length < 0 {
			length, expected = -length, -expected
		}
		if expected < 0 {
			expected, other = -expected, " the other way"
		}
		from := "taped"
		if o.given {
			from = "given"
		}
		d.Note(o.pos, "%s %s, %s as %s; the rest makes it %s%s: tape it again", which, o.name, from, h.text(length), h.text(expected), other)
	}
}

// reportChecks keeps the checks in the house, and warns of each that differs from
// the walls as they are drawn by more than the tape may be off.
func (s *tapedNet) reportChecks(a *survey.Adjustment, doubtful []int) (told bool) {
	h := s.l.house
	drawn := s.drawn()
	for i := range s.checks {
		c, o := &s.checks[i], s.net.Observations[s.first+i]
		k := Check{ID: c.id, Pos: c.t.Pos(), Length: c.length, Drawn: drawnLength(place(o.From, drawn), place(o.To, drawn), o.Along)}
		k.A, k.B = s.checkEnds(c, drawn)
		w := a.Outcomes[s.first+i].Standardised
		off, way := k.Length-k.Drawn, "longer"
		if off < 0 {
			off, way = -off, "shorter"
		}
		// A wrong length elsewhere may spoil the test of one that is right.
		k.Agrees = max(w, -w) <= survey.Snooping.Value || off <= c.error
		h.Checks = append(h.Checks, k)
		if !k.Agrees {
			d := c.t.Warnf("length", "the check is %s %s than the walls make it, %s: more than the tape may be off", h.text(off), way, h.text(k.Drawn))
			s.noteDoubt(d, a, doubtful)
			told = true
		}
	}
	return told
}

// checkEnds is where a check is on the walls as they are placed.
func (s *tapedNet) checkEnds(c *check, drawn []measure.Length) (p, q geom.Point) {
	p, q = place(s.stationOf(&c.ends[0]), drawn), place(s.stationOf(&c.ends[1]), drawn)
	if c.ends[0].kind != wallFace {
		return p, q
	}
	r, k := s.l.runOf(c.ends[0].wall)
	a, b := r.points(k)
	if alongY(r.legs[k]) {
		p.Y = middle(a.Y, b.Y)
		q.Y = p.Y
	} else {
		p.X = middle(a.X, b.X)
		q.X = p.X
	}
	return p, q
}

// drawn is the unknowns as the runs are placed; those of rooms are near them.
func (s *tapedNet) drawn() []measure.Length {
	values := slices.Clone(s.net.Near)
	for _, r := range s.runs {
		if r.derived {
			continue
		}
		for k, at := range s.stations[r] {
			p := r.start.Add(r.traverse.Points[k]).Sub(at.Known)
			values[at.X], values[at.Y] = p.X, p.Y
		}
	}
	return values
}

// drawnLength is the length of a check between two points.
func drawnLength(p, q geom.Point, along survey.Along) measure.Length {
	switch along {
	case survey.AlongX:
		return max(q.X-p.X, p.X-q.X)
	case survey.AlongY:
		return max(q.Y-p.Y, p.Y-q.Y)
	}
	return geom.Dist(p, q)
}
