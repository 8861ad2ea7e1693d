package route

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// offTheFace is how far in front of a wall cable goes up its face to open joists
// (common practice, no source).
const offTheFace = 2 * measure.Inch

// upTheFace joins a node on the face of a wall to the open joists over it: cable
// goes up on the face of the wall. A closet's board needs nothing for it, for a
// plate a channel is mounted.
func (b *builder) upTheFace(node int, s *plan.Spot, d int, charges []Charge) {
	w := &b.house.Walls[s.Wall]
	if s.Room < 0 || !b.house.Rooms[s.Room].Open {
		return
	}
	p := inFront(w, s.At, s.Side, offTheFace)
	c := b.over(w.Level, p)
	if c == nil {
		return
	}
	height := c.base - b.nodes[node].At.Z
	c.betweenJoists(p, func(q geom.Point, _ measure.Length) {
		if b.house.RoomOn(w.Level, q) != s.Room {
			return
		}
		l := height + squarely(flat(b.nodes[node].At), q)
		all := append(b.cable(l), charges...)
		if d != noOwner {
			all = append(all, b.onceBy(price.RacewayRun, height))
		}
		c.ports = append(c.ports, port{at: q, join: func() {
			c.add(Arc{Kind: FaceArc, From: node, To: c.low(q), Heading: up, Length: l, Hole: -1, Charges: all})
		}})
	})
}

// squarely is the way from p to q with a square corner, which is never short.
func squarely(p, q geom.Point) measure.Length { return dist(p.X, q.X) + dist(p.Y, q.Y) }

// inFront is the point so far in front of a wall's face.
func inFront(w *plan.Wall, along measure.Length, side plan.Side, off measure.Length) geom.Point {
	return w.Faces(side).Step(w.FacePoint(along, side), off)
}

// onMasonry adds the place of drop d on a wall without a hollow: a box on its
// face, with cable up to open joists. Where there are none only a raceway leads
// there.
func (b *builder) onMasonry(d int) {
	s := &b.job.Drops[d].Spot
	if s.Room >= 0 && b.house.Rooms[s.Room].Open {
		b.upTheFace(b.onTheFace(d), s, d, nil)
		return
	}
	if !b.job.Allow.Raceway {
		w := &b.house.Walls[s.Wall]
		b.deadEnd([]int{d}, Block{
			Rule: rule.NoHiddenWay, Pos: w.Pos, At: b.nodes[b.terms[d]].At,
			Found: fmt.Sprintf("wall %s is masonry, in which nothing can be fished", w.ID),
		})
	}
}

// onTheFace adds a surface box of drop d at its wished place, where the wall has
// no hollow: with cable up its face to open joists.
func (b *builder) onTheFace(d int) int {
	drop := &b.job.Drops[d]
	p := b.house.Walls[drop.Spot.Wall].FacePoint(drop.Spot.At, drop.Spot.Side)
	before := len(b.nodes)
	box := b.node(BoxNode, geom.Point3{X: p.X, Y: p.Y, Z: b.floorOf(drop.Spot.Wall) + drop.Spot.Height}, drop.Spot.Wall, d)
	if len(b.nodes) > before {
		b.add(Arc{Kind: EnterArc, From: b.terms[d], To: box, Heading: network.Free, Hole: -1, Charges: []Charge{b.once(price.MountBox, 1)}})
	}
	return box
}
