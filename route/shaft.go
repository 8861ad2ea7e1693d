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

const up = network.Up

type bayKey struct{ wall, bay int }

// A shaft is a stud bay that some box opens into, with the places where its
// top plate may be bored.
type shaft struct {
	key     bayKey
	heights []measure.Length // of boxes, above the floor
	holes   []shaftHole
	drops   []int // whose boxes open into it
	stop    Block // why there are no holes, if there are none
}

// A shaftHole is one stretch of plate that may be bored, with its middle.
type shaftHole struct {
	free   span
	along  measure.Length
	at     geom.Point
	blocks []Block
}

// shaftOf returns the shaft of a bay after noting that a box opens into it at
// height h.
func (b *builder) shaftOf(key bayKey, h measure.Length) *shaft {
	s := b.shafts[key]
	if s == nil {
		s = &shaft{key: key}
		s.holes, s.stop = b.plateHoles(key)
		b.shafts[key] = s
		for i := range s.holes {
			b.ports = append(b.ports, port{at: s.holes[i].at})
		}
	}
	if !slices.Contains(s.heights, h) {
		s.heights = append(s.heights, h)
		slices.Sort(s.heights)
	}
	return s
}

// holeSize is the diameter a hole in the plate of wall w is laid out for: the
// largest bit of the user's that the rules for plates allow.
func (b *builder) holeSize(w *plan.Wall) measure.Length {
	most := min(w.StudDepth*measure.Length(b.book.Value(rule.PlateBore))/100,
		w.StudDepth-2*b.book.Length(rule.PlateEdge))
	var best measure.Length
	for _, bit := range b.job.Tools.Bits {
		if bit.Diameter <= most {
			best = max(best, bit.Diameter)
		}
	}
	return best
}

// plateHoles finds where the plate over a bay may be bored: clear of the
// studs, of joists and rafters on the plate, and of power in the bay.
func (b *builder) plateHoles(key bayKey) (holes []shaftHole, stop Block) {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	p := w.PointAt(span{bay.Start, bay.End}.mid())
	stop = Block{Rule: rule.HoleToMemberRule, Pos: w.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: b.base}}
	if bay.Window >= 0 {
		o := &w.Openings[bay.Window]
		stop.Rule, stop.Pos, stop.Found = rule.Window, o.Pos, fmt.Sprintf("%s closes the bay", o.ID)
		return nil, stop
	}
	if width := b.book.Length(rule.BayWidth); bay.End-bay.Start < width {
		stop.Found = fmt.Sprintf("the bay in wall %s is %s wide; %s is needed", w.ID, b.text(bay.End-bay.Start), b.text(width))
		return nil, stop
	}
	half := b.holeSize(w)/2 + b.book.Length(rule.HoleToMember)
	whole := span{bay.Start, bay.End}.inset(half)
	cuts, over := b.onPlate(w, span{bay.Start, bay.End}, half)
	if over {
		stop.Pos, stop.Found = b.house.Attic.Pos, fmt.Sprintf("a joist lies along the plate of wall %s", w.ID)
		return nil, stop
	}
	stop.Found = fmt.Sprintf("studs, joist ends and rafters leave no room for a hole in the plate of wall %s over this bay", w.ID)
	free := spans{whole}.nonEmpty().without(cuts...)
	clear := free.without(b.feeds(w, bay, b.holeSize(w)/2)...)
	for _, s := range clear {
		holes = append(holes, b.shaftHole(w, s, nil))
	}
	if len(holes) == 0 && b.relax {
		for _, s := range free {
			holes = append(holes, b.shaftHole(w, s, b.feedBlocks(w, bay)))
		}
	}
	return holes, stop
}

func (b *builder) shaftHole(w *plan.Wall, s span, blocks []Block) shaftHole {
	along := s.mid()
	return shaftHole{free: s, along: along, at: w.PointAt(along), blocks: blocks}
}

// onPlate returns the joists and rafters that stand on the plate of w over
// the bay, widened by half; over is true if one lies along the whole plate.
func (b *builder) onPlate(w *plan.Wall, bay span, half measure.Length) (cuts []span, over bool) {
	u, _ := b.ax.uv(w.PointAt(bay.lo))
	if w.AlongY() == b.ax.alongY {
		for _, j := range b.js.bodies(span{u, u}) {
			if j.lo-half < u && u < j.hi+half {
				return nil, true
			}
		}
	} else {
		cuts = append(cuts, b.alongWall(w, bay, b.js.bodies, half)...)
	}
	if w.Exterior {
		cuts = append(cuts, b.alongWall(w, bay, b.rafterBodies(w), half)...)
	}
	return cuts, false
}

// alongWall turns members laid out on an axis of the house into spans along
// the wall.
func (b *builder) alongWall(w *plan.Wall, s span, bodies func(span) []span, half measure.Length) []span {
	lo, hi := w.PointAt(s.lo), w.PointAt(s.hi)
	on := func(p geom.Point) measure.Length {
		if w.AlongY() {
			return p.Y
		}
		return p.X
	}
	var out []span
	for _, m := range bodies(ordered(on(lo), on(hi))) {
		a, c := w.Along(pointOn(w, m.lo)), w.Along(pointOn(w, m.hi))
		m := ordered(a, c)
		out = append(out, span{m.lo - half, m.hi + half})
	}
	return out
}

// pointOn is the point of the wall's line at coordinate x of the axis the wall
// runs along.
func pointOn(w *plan.Wall, x measure.Length) geom.Point {
	p := w.PointAt(0)
	if w.AlongY() {
		return geom.Point{X: p.X, Y: x}
	}
	return geom.Point{X: x, Y: p.Y}
}

// rafterBodies lays out the rafters that cross the wall's plate; under a gable
// none do.
func (b *builder) rafterBodies(w *plan.Wall) func(span) []span {
	r := &b.house.Roof
	first := r.FirstX
	if w.AlongY() {
		first = r.FirstY
	}
	layout := joists{first: first, spacing: r.Spacing, width: r.Width, stand: everywhere}
	return func(s span) []span {
		if w.Gable {
			return nil
		}
		return layout.bodies(s)
	}
}

// feed is where the power cable of a device runs: on the nearer stud of its
// bay.
func feed(d *plan.Device, bay *Bay) measure.Length {
	if d.At-bay.Start <= bay.End-d.At {
		return bay.Start
	}
	return bay.End
}

// devices calls f for each device in the bay.
func devices(w *plan.Wall, bay *Bay, f func(d *plan.Device)) {
	for i := range w.Devices {
		if d := &w.Devices[i]; bay.Start <= d.At && d.At <= bay.End {
			f(d)
		}
	}
}

// feeds are the stretches of the bay too near to power that goes up it, for
// something of that half width.
func (b *builder) feeds(w *plan.Wall, bay *Bay, half measure.Length) []span {
	var out []span
	devices(w, bay, func(d *plan.Device) {
		if d.Up {
			out = append(out, around(feed(d, bay), b.book.Length(rule.PowerParallel)+half))
		}
	})
	return out
}

// feedBlocks says which power leaves no room for a hole in the bay's plate.
func (b *builder) feedBlocks(w *plan.Wall, bay *Bay) []Block {
	var out []Block
	devices(w, bay, func(d *plan.Device) {
		if !d.Up {
			return
		}
		p := w.PointAt(d.At)
		out = append(out, Block{
			Rule: rule.PowerBay, Pos: d.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: d.Height},
			Found: fmt.Sprintf("the bay is %s wide and holds the cable of %s %s; %s is to be kept from it",
				b.text(bay.End-bay.Start), d.Kind, d.ID, b.text(b.book.Length(rule.PowerParallel))),
			Change: fmt.Sprintf("move %s %s (a licensed electrician's work)", d.Kind, d.ID),
			Price:  b.prices.Each(price.ChangeMoveDevice),
		})
	})
	return out
}

// raise adds the arcs of every shaft: up the bay from the lowest box, through
// fire blocks, and through the plate into the attic.
func (b *builder) raise() {
	for _, key := range b.sortedShafts() {
		s := b.shafts[key]
		for i := range s.holes {
			b.raiseAt(s, &s.holes[i])
		}
	}
}

func (b *builder) sortedShafts() []bayKey {
	keys := make([]bayKey, 0, len(b.shafts))
	for k := range b.shafts {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, c bayKey) int {
		if a.wall != c.wall {
			return a.wall - c.wall
		}
		return a.bay - c.bay
	})
	return keys
}

// inBay is the node inside the bay under hole h at a height above the floor.
func (b *builder) inBay(key bayKey, h *shaftHole, height measure.Length) int {
	kind := BayNode
	if height == b.bays[key.wall][key.bay].Top {
		kind = PlateNode
	}
	z := b.house.Levels[0].Floor + height
	return b.node(kind, geom.Point3{X: h.at.X, Y: h.at.Y, Z: z}, key.wall, noOwner)
}

func (b *builder) raiseAt(s *shaft, h *shaftHole) {
	w, bay := &b.house.Walls[s.key.wall], &b.bays[s.key.wall][s.key.bay]
	stops := append(slices.Clone(s.heights), bay.Top)
	for _, fb := range w.FireBlocks {
		if t := PlateThickness / 2; s.heights[0] < fb-t && fb+t < bay.Top {
			stops = append(stops, fb-t, fb+t)
		}
	}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	for i := 1; i < len(stops); i++ {
		lo, hi := stops[i-1], stops[i]
		a := Arc{
			Kind: FishArc, From: b.inBay(s.key, h, lo), To: b.inBay(s.key, h, hi), Heading: up,
			Length: hi - lo, Hole: -1, Charges: b.cable(hi - lo),
		}
		for _, fb := range w.FireBlocks {
			if lo <= fb && fb <= hi {
				b.throughFireBlock(&a, s, h, fb)
			}
		}
		b.add(a)
	}
	b.throughPlate(s, h)
}

// throughFireBlock makes arc a one that is bored through the block at height
// fb, with a long bit from the plate above or from a box below.
func (b *builder) throughFireBlock(a *Arc, s *shaft, h *shaftHole, fb measure.Length) {
	bay := &b.bays[s.key.wall][s.key.bay]
	above := bay.Top + b.plates(s) - fb + PlateThickness/2
	below := fb + PlateThickness/2 - s.heights[0]
	a.Kind = BlockArc
	a.Charges = append(a.Charges, b.once(price.BoreBlock, 1))
	a.Hole = b.hole(HolePlace{
		Kind: BlockArc, At: geom.Point3{X: h.at.X, Y: h.at.Y, Z: b.house.Levels[0].Floor + fb}, Wall: s.key.wall,
		Along: h.along, Room: -1, Free: h.free.width(), MemberWidth: b.house.Walls[s.key.wall].StudDepth, Reach: min(above, below),
	})
	a.Blocks = append(a.Blocks, b.bitBlocks(min(above, below), s, h, "the fire block")...)
}

func (b *builder) plates(s *shaft) measure.Length {
	return measure.Length(b.house.Walls[s.key.wall].TopPlates) * PlateThickness
}

// bitReach is how deep the longest flexible bit goes with its extension.
func (b *builder) bitReach() measure.Length {
	var best measure.Length
	for _, bit := range b.job.Tools.Bits {
		if bit.Flexible {
			best = max(best, bit.Reach)
		}
	}
	return best + b.job.Tools.Extension
}

// bitBlocks forbids a hole that no bit reaches.
func (b *builder) bitBlocks(need measure.Length, s *shaft, h *shaftHole, what string) []Block {
	if need <= b.bitReach() {
		return nil
	}
	return []Block{{
		Rule: rule.BitReach, Pos: b.house.Walls[s.key.wall].Pos,
		At:     geom.Point3{X: h.at.X, Y: h.at.Y, Z: b.base},
		Found:  fmt.Sprintf("%s is %s away from where a bit goes in; the longest bit reaches %s", what, b.text(need), b.text(b.bitReach())),
		Change: fmt.Sprintf("bring a flexible bit or extension that reaches %s", b.text(need)),
		Price:  b.prices.Each(price.ChangeLongerBit),
	}}
}

// throughPlate adds the arc through the top plate at h.
func (b *builder) throughPlate(s *shaft, h *shaftHole) {
	w, bay := &b.house.Walls[s.key.wall], &b.bays[s.key.wall][s.key.bay]
	thick := b.plates(s)
	above := b.zoneOf(h.at) <= Arm && clearance(b.house, h.at)+b.js.depth >= b.book.Length(rule.DrillRoom)
	need := bay.Top + thick - s.heights[len(s.heights)-1]
	a := Arc{
		Kind: PlateArc, From: b.inBay(s.key, h, bay.Top), To: b.low(h.at), Heading: up, Length: thick,
		Charges: b.cable(thick), Blocks: slices.Clone(h.blocks),
	}
	a.Hole = b.hole(HolePlace{
		Kind: PlateArc, At: geom.Point3{X: h.at.X, Y: h.at.Y, Z: b.base}, Wall: s.key.wall, Along: h.along, Room: -1,
		Free: h.free.width() + b.holeSize(w), MemberWidth: w.StudDepth, FromAbove: above, Reach: need,
	})
	switch {
	case above:
		a.Charges = append(a.Charges, b.once(price.BoreFromAbove, 1))
		if b.decked(h.at) {
			a.Charges = append(a.Charges, b.once(price.LiftBoard, 1))
		}
	default:
		a.Charges = append(a.Charges, b.once(price.BoreFromBelow, 1))
		a.Blocks = append(a.Blocks, b.bitBlocks(need, s, h, "the top of the plate")...)
	}
	a.Capacity = b.capacity(w, h.free.width()+b.holeSize(w))
	b.add(a)
	if b.zoneOf(h.at) > Arm {
		b.shoot(h.at, b.low(h.at), rodFrom{wall: s.key.wall, along: h.along, drops: s.drops})
	}
}
