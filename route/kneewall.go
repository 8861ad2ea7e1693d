package route

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
)

// behindTheWall is how far behind a wall cable that comes out of its back lies
// (common practice, no source).
const behindTheWall = 2 * measure.Inch

// outOfTheBack joins a box to the attic behind its wall, where there is one: a
// knee wall, or the wall of an upper storey beside a lower roof. It has no board
// there, or is bored through from that side.
func (b *builder) outOfTheBack(box int, wall int, along, height measure.Length, side plan.Side) {
	w := &b.house.Walls[wall]
	q := inFront(w, along, side.Opposite(), behindTheWall)
	z := b.floorOf(wall) + height
	for _, c := range b.cavities {
		if c.space.Kind != plan.AtticSpace || !c.space.Contains(q) || z < c.base || z >= c.base+c.underRafter(q) {
			continue
		}
		l := geom.Dist(flat(b.nodes[box].At), q) + z - c.base
		c.ports = append(c.ports, port{at: q, join: func() {
			if c.zoneOf(q) > Arm {
				return
			}
			c.add(Arc{
				Kind: BackArc, From: box, To: c.low(q), Heading: headingTo(flat(b.nodes[box].At), q), Length: l, Zone: c.zoneOf(q), Hole: -1,
				Charges: append(b.cable(l), b.once(price.OutOfBack, 1)),
			})
		}})
	}
}
