package plan

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/survey"
)

// addRooms adds the rooms of a level by inside dimensions to its network: their
// sides as they were taped, the walls between them, and where each is. The first
// by its id of those that are beside no other is held. Walls that were made round
// rooms add nothing of their own.
func (s *tapedNet) addRooms(level int) {
	s.rooms = map[int][]survey.Station{}
	all := s.l.insides
	var on []int
	for i := range all {
		if all[i].level == level {
			on = append(on, i)
		}
	}
	if on == nil {
		return
	}
	slices.SortFunc(on, func(i, j int) int { return strings.Compare(all[i].id, all[j].id) })
	root := slices.IndexFunc(on, func(i int) bool {
		in := &all[i]
		return in.from < 0 && (in.over.room < 0 || all[in.over.room].level != level)
	})
	s.root = on[root]
	for _, i := range on {
		s.addRoom(i, i == s.root)
	}
	walls := s.addBetween()
	for _, i := range on {
		s.addPlace(i, walls)
	}
}

// addRoom adds the sides of a room.
func (s *tapedNet) addRoom(i int, held bool) {
	in := &s.l.insides[i]
	corners := moved(in.walked, in.bounds.Min)
	start := survey.Station{X: s.unknown(corners[0].X, held), Y: s.unknown(corners[0].Y, held)}
	if in.legs == nil {
		x, y := s.unknown(corners[2].X, false), s.unknown(corners[2].Y, false)
		s.rooms[i] = []survey.Station{start, {X: x, Y: start.Y}, {X: x, Y: y}, {X: start.X, Y: y}}
		for _, side := range [2]struct {
			key   string
			along survey.Along
			size  measure.Length
		}{{"width", survey.AlongX, in.size.X}, {"depth", survey.AlongY, in.size.Y}} {
			s.observe(survey.Observation{From: start, To: s.rooms[i][2], Along: side.along, Length: side.size}, s.l.house.SketchError,
				"the "+side.key+" of room "+in.id, in.t.ValuePos(side.key))
		}
		return
	}
	stations := s.addLegs(in.legs, true, start, func(k int) (string, diag.Pos) {
		return fmt.Sprintf("leg %d of the walk round room %s", k+1, in.id), in.t.ValuePosAt("walk", in.legs[k].Offset)
	})
	s.rooms[i] = stations[:len(corners)]
	for k, at := range s.rooms[i] {
		s.net.Near[at.X], s.net.Near[at.Y] = corners[k].X, corners[k].Y
	}
}

// given adds a length that the file says and nobody taped.
func (s *tapedNet) given(o survey.Observation, name string, pos diag.Pos) {
	s.observe(o, s.l.house.SketchError, name, pos)
	s.taped[len(s.taped)-1].given = true
}

// A roomPair is two rooms, the lower index first, and the axis on which a wall
// between them keeps them apart.
type roomPair struct {
	a, b int
	onY  bool
}

// addBetween adds the walls between rooms, as thick as they are made, and says
// between which rooms there are some.
func (s *tapedNet) addBetween() map[roomPair]bool {
	walls := map[roomPair]bool{}
	for _, r := range s.runs {
		if !r.derived || r.closes {
			continue
		}
		at := r.start
		for k, leg := range r.legs {
			low, high := r.rooms[k][Right], r.rooms[k][Left]
			if alongY(leg) {
				low, high = high, low
			}
			onY := !alongY(leg)
			o := survey.Observation{From: s.faceOf(low, onY, at), To: s.faceOf(high, onY, at), Along: alongAxis(onY), Length: r.each[k].thick()}
			s.given(o, "the thickness of wall "+r.ids[k], r.idPos[k])
			walls[roomPair{min(low, high), max(low, high), onY}] = true
			at = afterLeg(at, leg)
		}
	}
	return walls
}

// addPlace adds where a room is: beside another and in line with one, or at a
// point.
func (s *tapedNet) addPlace(i int, walls map[roomPair]bool) {
	in := &s.l.insides[i]
	at, pos := place(s.rooms[i][0], s.net.Near), in.t.ValuePos("at")
	switch o := in.over; {
	case in.from >= 0:
		onY := in.heading.AlongY()
		if !walls[roomPair{min(i, in.from), max(i, in.from), onY}] {
			s.givenPlace(i, in.from, onY, in.bounds.Min, s.l.insides[in.from].bounds.Min, in.t.ValuePos(besideKeys[in.heading]))
		}
		line, of := in.bounds.Min, s.l.insides[in.lineOf].bounds.Min
		if in.line == "north" || in.line == "east" {
			line, of = in.bounds.Max, s.l.insides[in.lineOf].bounds.Max
		}
		if pos = in.t.Pos(); in.t.Has("shift") {
			pos = in.t.ValuePos("shift")
		}
		s.givenPlace(i, in.lineOf, !onY, line, of, pos)
	case o.room >= 0 && s.rooms[o.room] != nil:
		b := s.l.insides[o.room].bounds
		from := b.Max
		if o.lowX {
			from.X = b.Min.X
		}
		if o.lowY {
			from.Y = b.Min.Y
		}
		s.givenPlace(i, o.room, false, at, from, pos)
		s.givenPlace(i, o.room, true, at, from, pos)
	case i != s.root:
		from := place(s.rooms[s.root][0], s.net.Near)
		s.givenPlace(i, s.root, false, at, from, pos)
		s.givenPlace(i, s.root, true, at, from, pos)
	}
}

// givenPlace adds how far the line of a room at a point is from that of another on
// one axis: from the room that is held, if the other is on another level.
func (s *tapedNet) givenPlace(i, other int, onY bool, at, from geom.Point, pos diag.Pos) {
	if s.rooms[other] == nil {
		other = s.root
	}
	o := survey.Observation{From: s.faceOf(other, onY, from), To: s.faceOf(i, onY, at), Along: alongAxis(onY)}
	p, q := place(o.From, s.net.Near), place(o.To, s.net.Near)
	way := "east to west"
	o.Length = q.X - p.X
	if onY {
		o.Length, way = q.Y-p.Y, "north to south"
	}
	s.given(o, fmt.Sprintf("the place of room %s by room %s, %s", s.l.insides[i].id, s.l.insides[other].id, way), pos)
}

// alongAxis is what is observed on an axis.
func alongAxis(onY bool) survey.Along {
	if onY {
		return survey.AlongY
	}
	return survey.AlongX
}

// faceOf is a station on the face of a room that is nearest to a point on one
// axis.
func (s *tapedNet) faceOf(room int, onY bool, near geom.Point) survey.Station {
	at := s.rooms[room][0]
	s.snap(&at, onY, room, near)
	if onY {
		at.Known.Y = 0
	} else {
		at.Known.X = 0
	}
	return at
}

// snap puts a station on one axis at a point, known from the face of a room that
// is nearest to it.
func (s *tapedNet) snap(at *survey.Station, onY bool, room int, p geom.Point) {
	of := func(st survey.Station) (unknown int, off measure.Length) {
		if onY {
			return st.Y, p.Y - s.net.Near[st.Y]
		}
		return st.X, p.X - s.net.Near[st.X]
	}
	best, least := of(s.rooms[room][0])
	for _, st := range s.rooms[room][1:] {
		if u, off := of(st); max(off, -off) < max(least, -least) {
			best, least = u, off
		}
	}
	if onY {
		at.Y, at.Known.Y = best, least
	} else {
		at.X, at.Known.X = best, least
	}
}

// madeStations are where the walls of a run that was made start and end, known from
// the faces of the rooms round which they were made: at a corner of both.
func (s *tapedNet) madeStations(r *run) []survey.Station {
	n, at := len(r.legs), r.start
	room := func(k int) int {
		if left := r.rooms[k][Left]; left >= 0 {
			return left
		}
		return r.rooms[k][Right]
	}
	stations := make([]survey.Station, n+1)
	for k := range stations {
		leg := min(k, n-1)
		s.snap(&stations[k], false, room(leg), at)
		s.snap(&stations[k], true, room(leg), at)
		if before := (k + n - 1) % n; r.closes && k < n && alongY(r.legs[before]) != alongY(r.legs[k]) {
			s.snap(&stations[k], !alongY(r.legs[before]), room(before), at)
		}
		if k < n {
			at = afterLeg(at, r.legs[k])
		}
	}
	if r.closes {
		stations[n] = stations[0]
	}
	return stations
}

// afterLeg is where a leg ends.
func afterLeg(at geom.Point, leg survey.Leg) geom.Point {
	if alongY(leg) {
		return at.Add(geom.Point{Y: signedAlong(leg, leg.Length)})
	}
	return at.Add(geom.Point{X: signedAlong(leg, leg.Length)})
}
