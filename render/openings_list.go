package render

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// An openedAs says in which surface an opening is, and so how it is drawn and
// what becomes of it.
type openedAs uint8

// Kinds of opening, as a homeowner tells them apart.
const (
	openWall    openedAs = iota // for a plate or a panel, which covers it
	openAgain                   // in a wall, closed again
	openCeiling                 // a round hole in a ceiling
	openEave                    // a round hole under the roof's edge
	openGable                   // a round hole in the wall under the roof's edge
	openBoard                   // in a ceiling, closed again
	openThrough                 // a round hole through a wall, behind a channel
	openFloor                   // a round hole in a floor, behind a channel
)

// An opened is one opening in a finished surface.
type opened struct {
	number int
	kind   openedAs
	room   int // -1 out of doors
	level  int
	// at is where it is in plan; into is the direction out of the face of an
	// opening in a wall, and width its size along that wall.
	at    geom.Point
	into  plan.Heading
	width measure.Length

	purpose, where, size, cover, after string
}

// A surface gathers the openings of a result.
type surface struct {
	res  *route.Result
	book rule.Book
	list []opened
}

// openingsOf lists every opening in a finished surface, numbered level by level
// from the lowest up, and there room by room in the order of the house's file,
// out of doors last; in a room from north to
// south, then from west to east.
func openingsOf(res *route.Result) []opened {
	s := &surface{res: res, book: res.Job.Book()}
	s.plates()
	s.panel()
	for i := range res.Holes {
		s.hole(&res.Holes[i])
	}
	last := len(res.Job.House.Rooms)
	rank := make([]int, len(res.Job.House.Levels))
	for i, level := range byHeight(res.Job.House) {
		rank[level] = i
	}
	for i := range s.list {
		if o := &s.list[i]; o.room >= 0 {
			o.level = res.Job.House.Rooms[o.room].Level
		}
	}
	order := func(o *opened) int {
		if o.room < 0 {
			return last
		}
		return o.room
	}
	slices.SortStableFunc(s.list, func(a, b opened) int {
		return cmp.Or(cmp.Compare(rank[a.level], rank[b.level]), cmp.Compare(order(&a), order(&b)), cmp.Compare(b.at.Y, a.at.Y), cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.kind, b.kind))
	})
	for i := range s.list {
		s.list[i].number = i + 1
	}
	return s.list
}

// plates adds the openings for wall plates: one for all drops at one place.
func (s *surface) plates() {
	drops := map[geom.Point3][]int{}
	var places []geom.Point3
	for i := range s.res.Routes {
		r := &s.res.Routes[i]
		if r.Blocked != nil || s.res.Job.Drops[r.Drop].Kind != plan.WallPlate {
			continue
		}
		if drops[r.Place] == nil {
			places = append(places, r.Place)
		}
		drops[r.Place] = append(drops[r.Place], r.Drop)
	}
	for _, p := range places {
		s.plate(p, drops[p])
	}
}

func (s *surface) plate(p geom.Point3, drops []int) {
	h := s.res.Job.House
	spot := s.res.Job.Drops[drops[0]].Spot
	w := &h.Walls[spot.Wall]
	spot.At = w.Along(flat(p))
	cables, jacks := 0, 0
	for _, i := range drops {
		d := &s.res.Job.Drops[i]
		cables += d.Count
		if d.End == connector.Jack {
			jacks += d.Count
		}
	}
	cover := "a wall plate with " + counted(jacks, "port", "ports")
	if jacks == 0 {
		cover = "a wall plate that " + counted(cables, "cable comes", "cables come") + " out of"
	}
	width := route.BoxWidth(s.book, cables)
	s.list = append(s.list, opened{
		kind: openWall, room: spot.Room, at: w.FacePoint(spot.At, spot.Side), into: w.Faces(spot.Side), width: width,
		purpose: s.purpose(drops), where: onWall(h, spot), size: s.across(width, s.book.Length(rule.BoxHeight)),
		cover: cover, after: "No. It stays, out of sight behind the plate.",
	})
}

// across says how wide and how high an opening is.
func (s *surface) across(width, height measure.Length) string {
	u := s.res.Job.House.Units
	return fmt.Sprintf("%s wide, %s high", spaced(u.Format(width)), spaced(u.Format(height)))
}

// panel adds the opening behind the panel, if the cables come out of a wall.
func (s *surface) panel() {
	c := &s.res.Job.Closet
	if c.Ceiling || !slices.ContainsFunc(s.res.Routes, func(r route.Route) bool { return r.Blocked == nil }) {
		return
	}
	h := s.res.Job.House
	w := &h.Walls[c.Spot.Wall]
	s.list = append(s.list, opened{
		kind: openWall, room: c.Room, at: w.FacePoint(c.Spot.At, c.Spot.Side), into: w.Faces(c.Spot.Side), width: c.Width,
		purpose: c.Name + " (all cables end here)", where: onWall(h, c.Spot),
		size:  fmt.Sprintf("up to %s wide", plainLength(h.Units, c.Width)),
		cover: "the panel that the cables go to", after: "No. It stays, out of sight behind the panel.",
	})
}

// purpose says what the openings for some drops are for, with their tags.
func (s *surface) purpose(drops []int) string {
	var words []string
	for _, i := range drops {
		d := &s.res.Job.Drops[i]
		what := d.Note
		if what == "" {
			what = map[plan.DropKind]string{plan.WallPlate: "wall plate", plan.CeilingPoint: "ceiling device", plan.SoffitSpot: "device outside"}[d.Kind]
		}
		mark := d.Tag
		if d.Later {
			mark += " (later)"
		}
		words = append(words, mark+": "+what)
	}
	return strings.Join(words, "; ")
}

// hole adds what a bored hole opens. Holes in the framing open nothing.
func (s *surface) hole(h *route.Hole) {
	place := &s.res.Graph.Holes[h.Place]
	switch place.Kind {
	case route.CeilingArc:
		s.ceiling(h, place)
	case route.SoffitArc, route.GableArc:
		s.outside(h, place)
	case route.StudArc:
		s.patch(h, place)
	case route.FloorArc:
		s.floor(h, place)
	case route.JoistArc:
		s.board(h, place)
	case route.WallArc:
		s.through(h, place)
	}
}

func (s *surface) ceiling(hole *route.Hole, place *route.HolePlace) {
	h := s.res.Job.House
	o := opened{
		kind: openCeiling, room: place.Room, at: flat(place.At), where: inCeiling(h, place.Room, flat(place.At)), size: s.bored(hole),
		cover: "the device itself", after: "No. It stays, out of sight behind the device.",
	}
	ends := s.ending(hole, func(r *route.Route) bool { return r.Place.X == place.At.X && r.Place.Y == place.At.Y })
	o.purpose = s.purpose(ends)
	switch {
	case len(ends) == 0 && s.besideChannel(hole):
		o.purpose = "the way of a channel through the ceiling, for " + s.purpose(hole.Drops)
		o.cover, o.after = "the channel that the cable lies in", "No. It stays, out of sight behind the channel."
	case len(ends) == 0:
		o.purpose = s.res.Job.Closet.Name + " (all cables end here)"
		o.cover, o.after = "nothing: the cables come down through it", "No. It stays; the gap around the cables is closed."
	}
	s.list = append(s.list, o)
}

// floor is a hole in a floor, where a channel goes on.
func (s *surface) floor(hole *route.Hole, place *route.HolePlace) {
	h := s.res.Job.House
	s.list = append(s.list, opened{
		kind: openFloor, room: place.Room, at: flat(place.At), size: s.bored(hole),
		where:   strings.Replace(inCeiling(h, place.Room, flat(place.At)), "in the ceiling", "in the floor", 1),
		purpose: "the way of a channel through the floor, for " + s.purpose(hole.Drops),
		cover:   "the channel that the cable lies in", after: "No. It stays, sealed, out of sight behind the channel.",
	})
}

// besideChannel reports whether cable comes to a hole in a channel.
func (s *surface) besideChannel(hole *route.Hole) bool {
	g := s.res.Graph
	for i := range s.res.Routes {
		arcs := s.res.Routes[i].Arcs
		for k, a := range arcs {
			near := arcs[max(0, k-2):min(len(arcs), k+3)]
			if g.Arcs[a].Hole == hole.Place && slices.ContainsFunc(near, func(a int) bool { return g.Arcs[a].Kind == route.RacewayArc }) {
				return true
			}
		}
	}
	return false
}

// ending lists the drops whose cables go through a hole and end there.
func (s *surface) ending(hole *route.Hole, here func(*route.Route) bool) []int {
	var out []int
	for i := range s.res.Routes {
		r := &s.res.Routes[i]
		if slices.Contains(hole.Drops, r.Drop) && s.res.Job.Drops[r.Drop].Kind != plan.WallPlate && here(r) {
			out = append(out, r.Drop)
		}
	}
	return out
}

// outside adds a hole under the roof's edge, through the board there or through
// the wall of a gable.
func (s *surface) outside(hole *route.Hole, place *route.HolePlace) {
	h := s.res.Job.House
	w := &h.Walls[place.Wall]
	gable := place.Kind == route.GableArc
	o := opened{
		kind: openEave, room: -1, level: w.Level, at: flat(place.At), where: underEdge(h, place.Wall, place.Along, gable), size: s.bored(hole),
		purpose: s.purpose(s.ending(hole, func(r *route.Route) bool { return s.res.Job.Drops[r.Drop].Kind == plan.SoffitSpot })),
		cover:   "the device itself", after: "No. It stays; the gap around the cable is sealed.",
	}
	switch {
	case gable:
		o.kind, o.at, o.into = openGable, w.FacePoint(place.Along, w.Out), w.Faces(w.Out)
		o.cover, o.after = "a sleeve that the cable comes out of", "No. It stays, sealed against the weather."
	case s.unclips(place):
		o.where += ", where the vent strip comes off"
		o.after = "No. It stays; the strip is put back on."
	}
	s.list = append(s.list, o)
}

// unclips reports whether what is under the roof's edge opens there without
// being cut.
func (s *surface) unclips(place *route.HolePlace) bool {
	return slices.ContainsFunc(s.res.Job.House.Soffits, func(o plan.SoffitOpening) bool {
		return o.Wall == place.Wall && o.Start <= place.Along && place.Along <= o.End
	})
}

// patch adds an opening that a stud is bored through and that is closed again.
// It is cut on the side that the cables' own opening is on.
func (s *surface) patch(hole *route.Hole, place *route.HolePlace) {
	h := s.res.Job.House
	spot := s.res.Job.Closet.Spot
	for _, i := range hole.Drops {
		if d := &s.res.Job.Drops[i]; d.Spot.Wall == place.Wall {
			spot = d.Spot
		}
	}
	spot.Wall, spot.At, spot.Height = place.Wall, place.Along, place.At.Z-h.Levels[h.Walls[place.Wall].Level].Floor
	w := &h.Walls[spot.Wall]
	s.list = append(s.list, opened{
		kind: openAgain, room: spot.Room, at: w.FacePoint(spot.At, spot.Side), into: w.Faces(spot.Side),
		purpose: "a way through inside the wall, for " + s.purpose(hole.Drops), where: onWall(h, spot),
		size: "as small as the drill allows", cover: "nothing", after: "Yes: filled, sanded and painted by the installer, over two visits.",
	})
}

// board adds an opening in a ceiling behind which a joist is bored, and that is
// closed again.
func (s *surface) board(hole *route.Hole, place *route.HolePlace) {
	s.list = append(s.list, opened{
		kind: openBoard, room: place.Room, at: flat(place.At), where: inCeiling(s.res.Job.House, place.Room, flat(place.At)),
		purpose: "a way through inside the ceiling, for " + s.purpose(hole.Drops),
		size:    "as small as the drill allows", cover: "nothing", after: "Yes: filled, sanded and painted by the installer, over two visits.",
	})
}

// through adds a hole through a wall from face to face, where a channel goes on
// in the next room or the cable comes out of the house.
func (s *surface) through(hole *route.Hole, place *route.HolePlace) {
	h := s.res.Job.House
	w := &h.Walls[place.Wall]
	spot, ok := spotOf(h, place)
	if !ok {
		return
	}
	spot.Height = place.At.Z - h.Levels[w.Level].Floor
	o := opened{
		kind: openThrough, room: spot.Room, at: w.FacePoint(spot.At, spot.Side), into: w.Faces(spot.Side),
		purpose: "a way through the wall, for " + s.purpose(hole.Drops), where: onWall(h, spot), size: s.bored(hole),
		cover: "the channel that the cable lies in", after: "No. It stays, out of sight behind the channel.",
	}
	if w.Exterior {
		o.cover, o.after = "nothing", "No. It stays, sealed against the weather."
	}
	s.list = append(s.list, o)
}

// channels reports whether cable is in sight on a level: in a room, and outside.
func channels(res *route.Result, level int) (inside, outside bool) {
	for i := range res.Bundles {
		b := &res.Bundles[i]
		if levelScope(level).hasBundle(res, b) {
			inside = inside || b.Kind == route.RacewayArc || b.Kind == route.FaceArc
			outside = outside || b.Kind == route.OutsideArc
		}
	}
	return inside, outside
}

// bored says how large a round hole is.
func (s *surface) bored(h *route.Hole) string {
	if h.Bit == 0 {
		return "not settled yet: no drill bit fits"
	}
	size := spaced(s.res.Job.House.Units.Format(h.Bit))
	if h.Count > 1 {
		return fmt.Sprintf("%d round holes side by side, %s across", h.Count, size)
	}
	return "round, " + size + " across"
}

// unseen counts the holes that are bored and open no finished surface.
func unseen(res *route.Result) int {
	n := 0
	for i := range res.Holes {
		switch res.Graph.Holes[res.Holes[i].Place].Kind {
		case route.PlateArc, route.BlockArc, route.SoleArc, route.PassArc:
			n += res.Holes[i].Count
		}
	}
	return n
}

// notPlanned says which drops on some levels have no way, and open nothing for
// that reason.
func notPlanned(res *route.Result, levels []int) string {
	s := &surface{res: res}
	var drops []int
	for i := range res.Routes {
		if r := &res.Routes[i]; r.Blocked != nil && slices.Contains(levels, res.Job.House.LevelOf(&res.Job.Drops[r.Drop])) {
			drops = append(drops, res.Routes[i].Drop)
		}
	}
	if len(drops) == 0 {
		return ""
	}
	return "No way is found yet for " + s.purpose(drops) + ". Nothing is opened for that. If a way is found, there will be a new sheet."
}
