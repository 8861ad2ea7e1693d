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

// outOfTheBack joins a box to the space behind its wall, where there is one: the
// attic behind a knee wall or beside an upper storey, the crawl space beside a
// lower level. The wall has no board there, or is bored through from that side.
func (b *builder) outOfTheBack(box int, wall int, along, height measure.Length, side plan.Side) {
	w := &b.house.Walls[wall]
	q := inFront(w, along, side.Opposite(), behindTheWall)
	z := b.floorOf(wall) + height
	for _, c := range b.cavities {
		if !c.space.Contains(q) || !c.facing(q, z) {
			continue
		}
		l := squarely(flat(b.nodes[box].At), q) + dist(z, c.base)
		bore := price.OutOfBack
		if w.Masonry {
			bore = price.BoreMasonry
		}
		c.ports = append(c.ports, port{at: q, join: func() {
			if c.zoneOf(q) > Arm {
				return
			}
			c.add(Arc{
				Kind: BackArc, From: box, To: c.low(q), Heading: headingTo(flat(b.nodes[box].At), q), Length: l, Zone: c.zoneOf(q), Hole: -1,
				Charges: append(b.cable(l), b.once(bore, 1)),
			})
		}})
	}
}

// facing reports whether the hollow of an attic or a crawl space is at height z
// over p.
func (b *cavity) facing(p geom.Point, z measure.Length) bool {
	switch b.space.Kind {
	case plan.AtticSpace:
		return b.base <= z && z < b.base+b.underRafter(p)
	case plan.CrawlSpace:
		return b.base-b.space.Clear < z && z < b.base+b.space.Depth
	}
	return false
}

// throughPartings adds the ways from rooms whose ceiling is open into a crawl space
// beside them, through the wall that parts the two: down its face from the joists,
// and through it.
func (b *builder) throughPartings() {
	for _, c := range b.cavities {
		if c.space.Kind != plan.CrawlSpace {
			continue
		}
		for wall := range b.house.Walls {
			for _, side := range []plan.Side{plan.Left, plan.Right} {
				b.throughParting(c, wall, side)
			}
		}
	}
}

// throughParting adds those through one wall, from the room on a side of it.
func (b *builder) throughParting(c *cavity, wall int, side plan.Side) {
	w := &b.house.Walls[wall]
	for at := lineStep / 2; at < w.Length(); at += lineStep / 2 {
		p, q := inFront(w, at, side, behindTheWall), inFront(w, at, side.Opposite(), behindTheWall)
		room := b.house.RoomOn(w.Level, p)
		from := b.over(w.Level, p)
		if room < 0 || !b.house.Rooms[room].Open || from == nil || !c.space.Contains(q) || b.inOpening(w, at, c.base, from.base) {
			continue
		}
		lvl := &b.house.Levels[w.Level]
		z := c.base - min(underJoists, c.space.Clear/2)
		if lvl.Floor >= z || z >= lvl.Floor+lvl.Ceiling {
			continue
		}
		b.throughPartingAt(from, c, geom.Point3{X: w.PointAt(at).X, Y: w.PointAt(at).Y, Z: z}, wall, p, q)
	}
}

func (b *builder) throughPartingAt(from, c *cavity, on geom.Point3, wall int, p, q geom.Point) {
	w := &b.house.Walls[wall]
	from.ports = append(from.ports, port{at: p})
	c.ports = append(c.ports, port{at: q})
	b.later = append(b.later, func() {
		if from.zoneOf(p) > Arm || c.zoneOf(q) > Arm {
			return
		}
		l := geom.Dist(p, q) + dist(from.base, on.Z) + dist(on.Z, c.base)
		here, beyond := from.boredFrom(c, p, q)
		bore := price.BoreWall
		if w.Masonry {
			bore = price.BoreMasonry
		}
		c.add(Arc{
			Kind: PassArc, From: from.low(p), To: c.low(q), Heading: headingTo(p, q), Length: l, Zone: c.zoneOf(q),
			Charges: append(b.cable(l), b.once(bore, 1)),
			Hole: here.hole(HolePlace{
				Kind: PassArc, Beyond: beyond.index, At: on, Wall: wall, Along: w.Along(flat(on)), Room: -1,
				Free: w.StudDepth, FromSpace: true, Reach: geom.Dist(p, q),
			}),
		})
	})
}
