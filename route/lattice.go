package route

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// A lattice is the grid of lines on which cable is laid in the attic: at each
// crossing one node between the joists and one at the height of their tops.
type lattice struct {
	reach *Reach
}

// lineStep is the distance between the regular lines along the joists.
const lineStep = 4 * measure.Foot

// lines chooses the lattice's lines: the middle of each joist bay, every
// place a hole may be, the edges of what is in the way plus its clearance,
// marks, corners of trunks, of the outline and of where one can stand and crawl, and a
// regular step. A cheapest squared route
// around the obstacles never needs another line (Hanan's grid).
func (b *builder) lines() (us, vs []measure.Length) {
	add := func(p geom.Point) {
		u, v := b.ax.uv(p)
		us, vs = append(us, u), append(vs, v)
	}
	for i := range b.ports {
		add(b.ports[i].at)
	}
	for _, p := range b.house.PlateLine {
		add(p)
	}
	for i := range b.house.Hatches {
		add(mid(b.house.Hatches[i].Area))
	}
	for i := range b.house.Marks {
		add(b.house.Marks[i].At)
	}
	for _, k := range b.keepOuts {
		add(k.area.Min)
		add(k.area.Max)
	}
	for _, outline := range b.zoneOutlines() {
		for _, p := range outline {
			add(p)
		}
	}
	b.trunkLines(add)
	limit := b.book.Length(rule.PowerParallel)
	for i := range b.house.PowerRuns {
		for _, p := range b.house.PowerRuns[i].Path {
			add(geom.Point{X: p.X - limit, Y: p.Y - limit})
			add(geom.Point{X: p.X + limit, Y: p.Y + limit})
		}
	}
	us, vs = b.regularLines(us, vs)
	return b.inHouse(us, true), b.inHouse(vs, false)
}

// zoneOutlines are the edges of where the roof leaves room to stand, crawl and
// put an arm.
func (b *builder) zoneOutlines() []geom.Polygon {
	var out []geom.Polygon
	for _, id := range []rule.LimitID{rule.ReachStand, rule.ReachCrawl, rule.ReachArmHeight} {
		out = append(out, b.house.Roof.Surface.ClearContour(b.book.Length(id)+b.js.depth)...)
	}
	return out
}

// regularLines adds the middle of every joist bay, and lines along the joists
// at a regular step from the middle of the house.
func (b *builder) regularLines(us, vs []measure.Length) (u, v []measure.Length) {
	box := b.house.PlateLine.Bounds()
	u0, v0 := b.ax.uv(box.Min)
	u1, v1 := b.ax.uv(box.Max)
	for n := b.js.bay(u0); n <= b.js.bay(u1); n++ {
		us = append(us, b.js.clear(n).mid())
	}
	c := span{v0, v1}.mid()
	for d := measure.Length(0); d <= (v1-v0)/2; d += lineStep {
		vs = append(vs, c-d, c+d)
	}
	return us, vs
}

// inHouse sorts lines, drops doubles and what lies outside the plates.
func (b *builder) inHouse(lines []measure.Length, u bool) []measure.Length {
	box := b.house.PlateLine.Bounds()
	u0, v0 := b.ax.uv(box.Min)
	u1, v1 := b.ax.uv(box.Max)
	s := span{v0, v1}
	if u {
		s = span{u0, u1}
	}
	slices.Sort(lines)
	lines = slices.Compact(lines)
	return slices.DeleteFunc(lines, func(x measure.Length) bool { return !s.contains(x) })
}

func mid(r geom.Rect) geom.Point {
	return geom.Point{X: span{r.Min.X, r.Max.X}.mid(), Y: span{r.Min.Y, r.Max.Y}.mid()}
}

// lay adds the nodes and arcs of the lattice.
func (b *builder) lay(r *Reach) {
	b.lat = &lattice{reach: r}
	for j := range r.V {
		for i := range r.U {
			if i+1 < len(r.U) {
				b.layAcross(i, j)
			}
			if j+1 < len(r.V) {
				b.layAlong(i, j)
			}
			b.layStep(i, j)
		}
	}
}

// handZone is the zone an arc between two crossings is worked in: the worse
// of its ends. Only what a hand reaches is part of the lattice.
func (b *builder) handZone(i1, j1, i2, j2 int) (Zone, bool) {
	r := b.lat.reach
	z := max(r.zoneAt(i1, j1), r.zoneAt(i2, j2))
	return z, z <= Arm
}

// layAlong adds the arc from crossing (i, j) to (i, j+1) in the bay beside
// the joist.
func (b *builder) layAlong(i, j int) {
	r := b.lat.reach
	z, ok := b.handZone(i, j, i, j+1)
	if !ok || b.js.onJoist(r.U[i]) {
		return
	}
	p, q := b.ax.point(r.U[i], r.V[j]), b.ax.point(r.U[i], r.V[j+1])
	if b.obstructed(p, q, 0) {
		return
	}
	l := r.V[j+1] - r.V[j]
	b.add(Arc{
		Kind: AlongArc, From: b.low(p), To: b.low(q), Heading: b.ax.headingV(), Length: l, Zone: z, Hole: -1,
		Charges: append(b.cable(l), b.attic(p, q, z)...), Blocks: b.powerBlocks(p, q, b.base),
	})
}

// layAcross adds the arc from crossing (i, j) to (i+1, j) over the joists,
// and the one on the ceiling if no joist lies between.
func (b *builder) layAcross(i, j int) {
	r := b.lat.reach
	z, ok := b.handZone(i, j, i+1, j)
	if !ok {
		return
	}
	u1, u2 := r.U[i], r.U[i+1]
	p, q := b.ax.point(u1, r.V[j]), b.ax.point(u2, r.V[j])
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
	if !b.obstructed(p, q, b.js.depth) {
		arc.Kind, arc.From, arc.To = AcrossArc, b.high(p), b.high(q)
		if joists > 0 {
			c := b.once(price.CrossJoist, int64(joists))
			c.Amount = (c.Amount + 1) / 2
			arc.Charges = append(arc.Charges, c)
		}
		b.add(arc)
	}
}

// layStep adds the arc from the ceiling up to the joists' tops at crossing
// (i, j).
func (b *builder) layStep(i, j int) {
	r := b.lat.reach
	p := b.ax.point(r.U[i], r.V[j])
	if r.zoneAt(i, j) > Arm || b.js.onJoist(r.U[i]) || b.obstructed(p, p, 0) || b.obstructed(p, p, b.js.depth) {
		return
	}
	b.add(b.step(p, r.zoneAt(i, j)))
}

func (b *builder) step(p geom.Point, z Zone) Arc {
	return Arc{
		Kind: StepArc, From: b.low(p), To: b.high(p), Heading: up, Length: b.js.depth, Zone: z, Hole: -1,
		Charges: b.cable(b.js.depth),
	}
}

// attic is what it costs to get from p to q with a bundle, whatever is in it.
func (b *builder) attic(p, q geom.Point, z Zone) []Charge {
	l := geom.Dist(p, q)
	travel := [...]price.ID{Stand: price.Walk, Crawl: price.CrawlTravel, Arm: price.ArmTravel}[z]
	out := []Charge{b.onceBy(travel, l)}
	if b.house.Attic.Insulation > 0 && !b.decked(p, q) {
		out = append(out, b.onceBy(price.Insulation, l))
	}
	return out
}

// decked reports whether one stretch of decking lies under all points.
func (b *builder) decked(points ...geom.Point) bool {
	return slices.ContainsFunc(b.house.Attic.Decking, func(r geom.Rect) bool {
		return !slices.ContainsFunc(points, func(p geom.Point) bool { return !r.Contains(p) })
	})
}
