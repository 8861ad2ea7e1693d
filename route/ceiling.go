package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// A port is a place where cable enters the attic: the lattice has lines
// through it. What joins it to the lattice is added once the reach is known.
type port struct {
	at   geom.Point
	join func()
}

// ceilingPoint adds the places where the hole of ceiling drop d may be: in
// each joist bay the point nearest to the wished one, across the joists.
func (b *builder) ceilingPoint(d int) {
	drop := &b.job.Drops[d]
	level := b.house.Rooms[drop.Room].Level
	c := b.over(level, drop.Point)
	if c == nil {
		b.deadEnd([]int{d}, b.noSpaceOver(drop, level))
		return
	}
	c.betweenJoists(drop.Point, func(p geom.Point, move measure.Length) {
		if move > drop.Shift && !b.relax || b.house.RoomOn(level, p) != drop.Room {
			return
		}
		charges := []Charge{b.once(price.CutCeiling, 1), b.once(price.MountBox, 1), b.onceBy(price.Shift, move)}
		if move <= drop.Shift {
			c.ceilingHole(d, b.terms[d], p, drop.Room, 0, charges, nil)
			return
		}
		c.ceilingHole(noOwner, b.terms[d], p, drop.Room, 0, charges, []Block{{
			Rule: rule.BoxFit, Pos: c.space.Pos, At: geom.Point3{X: drop.Point.X, Y: drop.Point.Y, Z: c.base},
			Found:  c.whyNotOver(drop),
			Change: fmt.Sprintf("move %s by %s across the joists (a shift of that much)", drop.Tag, b.text(move)),
			Price:  b.prices.Each(price.ChangeMovePlate),
		}})
	})
}

// whyNotOver says what keeps a ceiling point from its wished place: a joist, or
// something over the ceiling; or, in a floor that is closed, that no hole leads
// into its joist bay.
func (b *cavity) whyNotOver(drop *plan.Drop) string {
	u, _ := b.ax.uv(drop.Point)
	if s := b.js.clear(b.js.bay(u)).inset(b.book.Length(rule.CeilingBox) / 2); b.space.Kind == plan.FloorSpace && s.contains(u) {
		return fmt.Sprintf("the floor over %s is closed, and nothing leads into the joist bay there", drop.Tag)
	}
	return fmt.Sprintf("a joist is over the place of %s, or something in the attic", drop.Tag)
}

// noSpaceOver says that nothing is known of what is over a ceiling.
func (b *builder) noSpaceOver(drop *plan.Drop, level int) Block {
	return Block{
		Rule: rule.NoHiddenWay, Pos: b.house.Levels[level].Pos, At: b.nodes[b.terms[len(b.terms)-1]].At,
		Found: fmt.Sprintf("the sketch has no attic or floor over the ceiling of %s", drop.Tag),
	}
}

// betweenJoists calls f with the point of each joist bay nearest to p where a
// ceiling box has room, and how far that is across the joists.
func (b *cavity) betweenJoists(p geom.Point, f func(q geom.Point, move measure.Length)) {
	u, v := b.ax.uv(p)
	half := b.book.Length(rule.CeilingBox) / 2
	for n := b.js.bay(u - furthestMove); n <= b.js.bay(u+furthestMove); n++ {
		s := b.js.clear(n).inset(half)
		if at := s.clamp(u); s.lo <= s.hi && dist(at, u) <= furthestMove {
			f(b.ax.point(at, v), dist(at, u))
		}
	}
}

// ceilingHole joins node n of drop d, or of the closet, below a ceiling to the
// attic over p, with so much cable below the ceiling.
func (b *cavity) ceilingHole(d, n int, p geom.Point, room int, l measure.Length, charges []Charge, blocks []Block) {
	lvl := &b.house.Levels[b.space.Below]
	if b.house.OpenBelow(b.space, p) {
		// The joists are in sight: nothing is cut or bored.
		l += b.base - lvl.Floor - lvl.Ceiling // there is no board, and the plates may be higher
		charges = slices.DeleteFunc(charges, func(c Charge) bool { return c.Term == price.CutCeiling })
		b.ports = append(b.ports, port{at: p, join: func() {
			b.add(Arc{Kind: EnterArc, From: n, To: b.low(p), Heading: up, Length: l, Hole: -1, Charges: append(b.cable(l), charges...), Blocks: blocks})
		}})
		return
	}
	face := b.node(SurfaceNode, geom.Point3{X: p.X, Y: p.Y, Z: lvl.Floor + lvl.Ceiling}, -1, noOwner)
	b.add(Arc{Kind: EnterArc, From: n, To: face, Heading: up, Length: l, Hole: -1, Charges: append(b.cable(l), charges...), Blocks: blocks})
	b.ports = append(b.ports, port{at: p, join: func() { b.throughCeiling(d, face, p, room) }})
}

// throughCeiling adds the arc from the ceiling's face into the attic.
func (b *cavity) throughCeiling(d, face int, p geom.Point, room int) {
	var drops []int
	if d != noOwner {
		drops = append(drops, d)
	}
	if k := b.obstacleOn(p, p, 0); k != nil {
		stop := Block{Rule: rule.BoxFit, Pos: k.pos, At: b.nodes[face].At, Found: k.name + " is over the place"}
		if k.hot {
			stop.Rule, stop.Found = rule.HotClearance, k.name+" or the clearance to it is over the place"
		}
		b.deadEnd(drops, stop)
		return
	}
	l := b.base - b.nodes[face].At.Z
	a := Arc{Kind: CeilingArc, From: face, To: b.low(p), Heading: up, Length: l, Charges: b.cable(l)}
	a.Hole = b.hole(HolePlace{
		Kind: CeilingArc, At: b.nodes[face].At, Wall: -1, Room: room, FromSpace: b.zoneOf(p) <= Arm,
		Free: b.js.spacing - b.js.width, Reach: l,
	})
	if b.decked(p) {
		a.Charges = append(a.Charges, b.once(price.LiftBoard, 1))
	}
	b.add(a)
	if b.zoneOf(p) > Arm {
		b.shoot(p, b.low(p), rodFrom{wall: -1, drops: drops})
	}
}

// soffitSpot adds the places where the hole of an outdoor drop may be: in
// each rafter bay the point nearest to the wished one, along the eave.
func (b *builder) soffitSpot(d int) {
	drop := &b.job.Drops[d]
	w := &b.house.Walls[drop.Eave]
	wished := w.Along(drop.Point)
	c := b.over(w.Level, w.PointAt(wished))
	if c == nil || c.space.Roof < 0 {
		b.deadEnd([]int{d}, b.noSpaceOver(drop, w.Level))
		return
	}
	gap := b.eaveGap()
	reach := around(wished, furthestMove)
	cuts := b.alongWall(w, reach, c.rafterBodies(w), gap)
	if w.AlongY() != c.ax.alongY {
		cuts = append(cuts, b.alongWall(w, reach, c.js.bodies, gap)...)
	}
	lanes := (spans{reach}).without(cuts...)
	clear := slices.ContainsFunc(lanes, func(s span) bool { return s.contains(wished) })
	for _, s := range lanes {
		at := s.clamp(wished)
		move := dist(at, wished)
		if move <= drop.Shift || b.relax && move <= furthestMove {
			c.soffitAt(d, moved(drop.Point, w.AlongY(), pointOnLine(w.PointAt(at), w.AlongY())), at, move, clear)
		}
	}
}

func pointOnLine(p geom.Point, alongY bool) measure.Length {
	if alongY {
		return p.Y
	}
	return p.X
}

func moved(p geom.Point, alongY bool, x measure.Length) geom.Point {
	if alongY {
		return geom.Point{X: p.X, Y: x}
	}
	return geom.Point{X: x, Y: p.Y}
}

// eaveGap is from a member to the middle of the largest hole.
func (b *builder) eaveGap() measure.Length {
	return b.book.Length(rule.HoleToMember) + b.largestBit()/2
}

func (b *builder) largestBit() measure.Length {
	var best measure.Length
	for _, bit := range b.job.Tools.Bits {
		best = max(best, bit.Diameter)
	}
	return best
}

// soffitAt adds one candidate place for the soffit hole of drop d; clear says
// that no rafter is over the wished one.
func (b *cavity) soffitAt(d int, p geom.Point, along, move measure.Length, clear bool) {
	drop := &b.job.Drops[d]
	w := &b.house.Walls[drop.Eave]
	z := b.base + b.underRafter(w.PointAt(along))
	if !w.Gable {
		z = b.soffitHeight(w, along)
	}
	face := b.node(SurfaceNode, geom.Point3{X: p.X, Y: p.Y, Z: z}, drop.Eave, noOwner)
	heading := up
	if z > b.base {
		heading = network.Free // over a raised heel the cable goes down from there
	}
	a := Arc{Kind: EnterArc, From: b.terms[d], To: face, Heading: heading, Hole: -1, Charges: []Charge{
		b.once(price.MountBox, 1), b.onceBy(price.Shift, move),
	}}
	if !b.opens(drop.Eave, along) {
		a.Charges = append(a.Charges, b.once(price.OpenSoffit, 1))
	}
	drops := []int{d}
	if move > drop.Shift {
		drops = nil
		bl := b.whyNotInSoffit(drop, clear)
		bl.At = b.nodes[face].At
		bl.Change = fmt.Sprintf("move %s by %s along the eave (a shift of that much)", drop.Tag, b.text(move))
		bl.Price = b.prices.Each(price.ChangeMovePlate)
		a.Blocks = append(a.Blocks, bl)
	}
	b.add(a)
	from := rodFrom{wall: drop.Eave, along: along, soffit: true, drops: drops}
	b.ports = append(b.ports, port{at: p, join: func() { b.throughSoffit(face, p, from) }})
	b.ports = append(b.ports, port{at: w.PointAt(along)})
}

// whyNotInSoffit says what is in the way at the wished place of a soffit spot.
func (b *cavity) whyNotInSoffit(drop *plan.Drop, clear bool) Block {
	wished := b.house.Walls[drop.Eave].Along(drop.Point)
	pos, id, baffled := b.baffleAt(rodFrom{wall: drop.Eave, along: wished})
	switch {
	case !clear && b.house.Walls[drop.Eave].Gable:
		return Block{Rule: rule.HoleToMemberRule, Pos: b.space.Pos, Found: fmt.Sprintf("a joist ends on the plate inside the place of %s", drop.Tag)}
	case !clear:
		return Block{Rule: rule.HoleToMemberRule, Pos: b.roof().Pos, Found: fmt.Sprintf("a rafter tail is over the place of %s", drop.Tag)}
	case baffled:
		return Block{Rule: rule.EaveBaffle, Pos: pos, Found: fmt.Sprintf("baffle %s closes the rafter bay of %s", id, drop.Tag)}
	}
	return Block{Rule: rule.RodLength, Pos: b.roof().Pos, Found: fmt.Sprintf("no rod passes in the rafter bay of %s", drop.Tag)}
}

// opens reports whether the soffit at that place opens without cutting.
func (b *builder) opens(wall int, along measure.Length) bool {
	for i := range b.house.Soffits {
		s := &b.house.Soffits[i]
		if s.Wall == wall && s.Start <= along && along <= s.End {
			return true
		}
	}
	return false
}

// throughSoffit adds the arc through the soffit into the eave and from there
// the rod shots past the plate, or the way through the wall under a gable.
func (b *cavity) throughSoffit(face int, p geom.Point, from rodFrom) {
	wall, along := from.wall, from.along
	w := &b.house.Walls[wall]
	if w.Gable {
		b.throughGable(face, p, from)
		return
	}
	rise, heading := b.base-b.nodes[face].At.Z, up
	if rise < 0 {
		// Over a raised heel the soffit is higher than the plate.
		rise, heading = -rise, heading.Reverse()
	}
	eave := b.low(p)
	b.add(Arc{
		Kind: SoffitArc, From: face, To: eave, Heading: heading, Length: rise, Charges: b.cable(rise),
		Hole: b.hole(HolePlace{
			Kind: SoffitArc, At: b.nodes[face].At, Wall: wall, Along: along, Room: -1,
			Free: b.roof().Spacing - b.roof().Width, Reach: rise,
		}),
	})
	b.shoot(p, eave, from)
}

// throughGable adds the hole through the wall under a gable at the height of
// the rake, and the way down to the attic's floor inside it.
func (b *cavity) throughGable(face int, p geom.Point, from rodFrom) {
	wall, along := from.wall, from.along
	w := &b.house.Walls[wall]
	plate := w.PointAt(along)
	z := b.nodes[face].At.Z
	out := geom.Dist(p, plate)
	if z-b.base < b.eaveGap() {
		b.deadEnd(from.drops, Block{
			Rule: rule.HoleToMemberRule, Pos: b.roof().Pos, At: b.nodes[face].At,
			Found: fmt.Sprintf("the roof comes down on the plate of wall %s there, which leaves no room for a hole under the gable", w.ID),
		})
		return
	}
	inside := b.node(BayNode, geom.Point3{X: plate.X, Y: plate.Y, Z: z}, wall, noOwner)
	bore := price.BoreGable
	if w.HardToBore() {
		bore = price.BoreMasonry
	}
	b.add(Arc{
		Kind: GableArc, From: face, To: inside, Heading: headingTo(p, plate), Length: out,
		Charges: append(b.cable(out), b.once(bore, 1)),
		Hole: b.hole(HolePlace{
			Kind: GableArc, At: geom.Point3{X: plate.X, Y: plate.Y, Z: z}, Wall: wall, Along: along, Room: -1,
			Free: w.StudDepth, FromSpace: b.zoneOf(plate) <= Arm, Reach: w.StudDepth,
		}),
	})
	foot := b.low(plate)
	b.add(Arc{Kind: StepArc, From: foot, To: inside, Heading: up, Length: z - b.base, Zone: b.zoneOf(plate), Hole: -1, Charges: b.cable(z - b.base)})
	if b.zoneOf(plate) > Arm {
		b.shoot(plate, foot, rodFrom{wall: wall, along: along, drops: from.drops})
	}
}
