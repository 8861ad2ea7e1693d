package route

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
)

// Where rooms lie over each other, channels in sight go on from storey to storey: up a
// wall to the ceiling, through ceiling and floor between the joists, and on in the room
// above beside its wall. The two walls stand in line.

// riserJog is how far the faces of two walls over each other may be out of line, so that
// one hole is behind the channels on both (common practice, no source).
const riserJog = 3 * measure.Inch

// A riserSearch looks for the places of risers.
type riserSearch struct {
	*builder
	rails []*rail
	rooms [2]int       // the lower and the upper one
	spots []geom.Point // on the faces of walls, of boxes and of the panel
}

// risers joins the rails of rooms that lie over each other, near the spots of some drops
// and of the panel and near corners.
func (b *builder) risers(rails []*rail, drops []int) {
	s := &riserSearch{builder: b, rails: rails}
	spot := func(s *plan.Spot) geom.Point { return b.house.Walls[s.Wall].FacePoint(s.At, s.Side) }
	for _, d := range drops {
		s.spots = append(s.spots, spot(&b.job.Drops[d].Spot))
	}
	if !b.job.Closet.Ceiling {
		s.spots = append(s.spots, spot(&b.job.Closet.Spot))
	}
	for i := range b.house.Rooms {
		for j := range b.house.Rooms {
			if b.house.Levels[b.house.Rooms[i].Level].Floor >= b.house.Levels[b.house.Rooms[j].Level].Floor {
				continue
			}
			s.rooms = [2]int{i, j}
			for _, p := range rails[i].rings {
				for _, q := range rails[j].rings {
					s.between(p, q)
				}
			}
		}
	}
}

// between adds those along the edges of two rooms that are in line.
func (s *riserSearch) between(p, q geom.Polygon) {
	for i, a := range p {
		for j, c := range q {
			for _, f := range facings(a, p[(i+1)%len(p)], c, q[(j+1)%len(q)]) {
				if dist(f.edge, f.far) <= riserJog {
					s.along(&f)
				}
			}
		}
	}
}

// along adds those on a stretch that the edges of two rooms have in common: one nearest to
// each spot on it, and one nearest to each of its ends.
func (s *riserSearch) along(f *facing) {
	wished := []measure.Length{f.both.lo, f.both.hi}
	for _, p := range s.spots {
		if across := pointOnLine(p, !f.alongY); across == f.edge || across == f.far {
			wished = append(wished, f.both.clamp(pointOnLine(p, f.alongY)))
		}
	}
	// In front of both faces: of the one that is further into the rooms.
	across := max(f.edge, f.far) + offTheFace
	if !f.h.Rising() {
		across = min(f.edge, f.far) - offTheFace
	}
	for _, x := range wished {
		s.nearest(f, across, x)
	}
}

// nearest adds the riser that is nearest to x on a stretch, if there is one near it.
func (s *riserSearch) nearest(f *facing, across, x measure.Length) {
	for off := measure.Length(0); off <= riserMove; off += riserStep {
		for _, x := range []measure.Length{x - off, x + off} {
			at := geom.Point{X: x, Y: across}
			if f.alongY {
				at = geom.Point{X: across, Y: x}
			}
			if f.both.contains(x) && s.riserFits(s.rooms, at) {
				p, q := f.at(x)
				s.riser(s.rails, s.rooms, at, p, q)
				return
			}
		}
	}
}

// A riser is moved by steps where a joist, a door or a window is in the way, and so far at
// most.
const (
	riserStep = measure.Inch
	riserMove = 4 * measure.Foot
)

// riserFits reports whether a hole at p is in both rooms, in the one floor between them
// and between its joists, and no opening is beside it.
func (b *builder) riserFits(rooms [2]int, p geom.Point) bool {
	lower, upper := &b.house.Rooms[rooms[0]], &b.house.Rooms[rooms[1]]
	c := b.over(lower.Level, p)
	if c == nil || c.space.Kind != plan.FloorSpace || c.space.Above != upper.Level ||
		b.house.RoomOn(lower.Level, p) != rooms[0] || b.house.RoomOn(upper.Level, p) != rooms[1] {
		return false
	}
	u := c.u(p)
	if !c.js.clear(c.js.bay(u)).inset(b.eaveGap()).contains(u) || c.obstacleOn(p, p, 0) != nil {
		return false
	}
	return !b.besideOpening(lower.Level, p) && !b.besideOpening(upper.Level, p)
}

// besideOpening reports whether p is in front of a door or a window of a level.
func (b *builder) besideOpening(level int, p geom.Point) bool {
	near := geom.Rect{
		Min: geom.Point{X: p.X - riserJog - offTheFace, Y: p.Y - riserJog - offTheFace},
		Max: geom.Point{X: p.X + riserJog + offTheFace, Y: p.Y + riserJog + offTheFace},
	}
	for i := range b.house.Walls {
		w := &b.house.Walls[i]
		if w.Level != level || w.Body.Intersect(near).Empty() {
			continue
		}
		at := w.Along(p)
		for _, o := range w.Openings {
			if o.Start-offTheFace <= at && at <= o.End+offTheFace {
				return true
			}
		}
	}
	return false
}

// riser adds the way from the rail of the lower room at p on its wall, up and through
// ceiling and floor at a place, to the rail of the upper room at q.
func (b *builder) riser(rails []*rail, rooms [2]int, at, p, q geom.Point) {
	lower := &b.house.Levels[b.house.Rooms[rooms[0]].Level]
	c := b.over(b.house.Rooms[rooms[0]].Level, at)
	r, s := rails[rooms[0]], rails[rooms[1]]
	top := b.node(RailNode, geom.Point3{X: p.X, Y: p.Y, Z: lower.Floor + lower.Ceiling}, -1, noOwner)
	l := lower.Floor + lower.Ceiling - r.z
	b.add(Arc{
		Kind: RacewayArc, From: b.station(r, p), To: top, Heading: up, Length: l, Hole: -1,
		Charges: append(b.cable(l), b.onceBy(price.RacewayRun, l)),
	})
	out := squarely(p, at)
	c.ceilingHole(noOwner, top, at, rooms[0], out, []Charge{b.once(price.BoreWall, 1), b.onceBy(price.RacewayRun, out)}, nil)
	floor := b.node(SurfaceNode, geom.Point3{X: at.X, Y: at.Y, Z: c.space.Top()}, -1, noOwner)
	l = dist(s.z, c.space.Top()) + squarely(q, at)
	b.add(Arc{
		Kind: RacewayArc, From: floor, To: b.station(s, q), Heading: up, Length: l, Hole: -1,
		Charges: append(b.cable(l), b.onceBy(price.RacewayRun, l)),
	})
	c.ports = append(c.ports, port{at: at, join: func() { c.throughFloor(floor, at, rooms[1]) }})
}

// throughFloor adds the hole from a floor's hollow up into the room over it.
func (b *cavity) throughFloor(floor int, p geom.Point, room int) {
	l := b.space.Top() - b.base
	b.add(Arc{
		Kind: FloorArc, From: b.low(p), To: floor, Heading: up, Length: l, Charges: append(b.cable(l), b.once(price.BoreFloor, 1)),
		Hole: b.hole(HolePlace{
			Kind: FloorArc, At: b.nodes[floor].At, Wall: -1, Room: room,
			Free: b.js.spacing - b.js.width, Reach: b.space.Subfloor,
		}),
	})
}
