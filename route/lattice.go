package route

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/price"
)

// A lattice is the grid of lines on which cable is laid in the attic: at each
// crossing one node between the joists and one at the height of their tops.
type lattice struct {
	reach *Reach
}

// lay adds the nodes and arcs of the lattice.
func (b *cavity) lay(r *Reach) {
	b.lat = &lattice{reach: r}
	for k := range int32(len(r.zone)) {
		if r.east[k].to >= 0 {
			b.layAcross(k, r.east[k])
		}
		if r.north[k].to >= 0 {
			b.layAlong(k, r.north[k])
		}
		b.layStep(k)
	}
}

// layAlong adds the arc from crossing k along its line of U in the bay beside
// the joist. Only what a hand reaches is part of the lattice.
func (b *cavity) layAlong(k int32, way stretch) {
	r := b.lat.reach
	p, q, z := r.point(k), r.point(way.to), way.zone
	if z > Arm || b.js.onJoist(r.u(k)) || b.obstructed(p, q, 0) {
		return
	}
	l := geom.Dist(p, q)
	b.add(Arc{
		Kind: AlongArc, From: b.low(p), To: b.low(q), Heading: b.ax.headingV(), Length: l, Zone: z, Hole: -1,
		Charges: append(b.cable(l), b.attic(p, q, z)...), Blocks: b.powerBlocks(p, q, b.base),
	})
}

// layAcross adds the arc from crossing k along its line of V over the joists,
// and the one on the ceiling if no joist lies between.
func (b *cavity) layAcross(k int32, way stretch) {
	r := b.lat.reach
	if way.zone > Arm {
		return
	}
	p, q, z := r.point(k), r.point(way.to), way.zone
	u1, u2 := r.u(k), r.u(way.to)
	arc := Arc{Heading: b.ax.headingU(), Length: u2 - u1, Zone: z, Hole: -1, Blocks: b.powerBlocks(p, q, b.base)}
	arc.Charges = append(b.cable(arc.Length), b.attic(p, q, z)...)
	joists := b.js.halvesCrossed(u1, u2)
	same := joists == 0 && !b.js.onJoist(u1) && !b.js.onJoist(u2)
	if same && !b.obstructed(p, q, 0) {
		low := arc
		low.Kind, low.From, low.To = BesideArc, b.low(p), b.low(q)
		low.Charges = slices.Clone(arc.Charges)
		b.add(low)
	}
	if !b.obstructed(p, q, b.acrossAt()) && !b.wallBetween(p, q) {
		arc.Kind, arc.From, arc.To = AcrossArc, b.high(p), b.high(q)
		if joists > 0 {
			c := b.once(price.CrossJoist, int64(joists))
			c.Amount = (c.Amount + 1) / 2
			arc.Charges = append(arc.Charges, c)
		}
		b.add(arc)
	}
}

// wallBetween reports whether a wall of the rooms below stands in the way of
// cable under the joists.
func (b *cavity) wallBetween(p, q geom.Point) bool {
	if b.space.Kind != plan.FloorSpace {
		return false
	}
	for i := range b.house.Walls {
		if w := &b.house.Walls[i]; w.Level == b.space.Below && geom.SegmentEntersRect(p, q, w.Body) {
			return true
		}
	}
	return false
}

// layStep adds the arc from the ceiling up to the joists' tops at crossing k.
func (b *cavity) layStep(k int32) {
	r := b.lat.reach
	p := r.point(k)
	if r.zone[k] > Arm || b.js.onJoist(r.u(k)) || b.obstructed(p, p, 0) || b.obstructed(p, p, b.acrossAt()) {
		return
	}
	b.add(b.step(p, r.zone[k]))
}

func (b *cavity) step(p geom.Point, z Zone) Arc {
	return Arc{
		Kind: StepArc, From: b.low(p), To: b.high(p), Heading: up, Length: b.lifted(), Zone: z, Hole: -1,
		Charges: b.cable(b.lifted()),
	}
}

// attic is what it costs to get from p to q with a bundle, whatever is in it.
func (b *cavity) attic(p, q geom.Point, z Zone) []Charge {
	l := geom.Dist(p, q)
	travel := [...]price.ID{Stand: price.Walk, Crawl: price.CrawlTravel, Arm: price.ArmTravel}[z]
	out := []Charge{b.onceBy(travel, l)}
	if b.space.Insulation > 0 && !b.decked(p, q) {
		out = append(out, b.onceBy(price.Insulation, l))
	}
	return out
}

// decked reports whether one stretch of decking lies under all points.
func (b *cavity) decked(points ...geom.Point) bool {
	return slices.ContainsFunc(b.space.Decking, func(r geom.Rect) bool {
		return !slices.ContainsFunc(points, func(p geom.Point) bool { return !r.Contains(p) })
	})
}
