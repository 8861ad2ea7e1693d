package route

import (
	"fmt"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// rodFrom says where a rod shot begins, besides its point.
type rodFrom struct {
	wall   int            // the wall at the eave, -1 for a ceiling
	along  measure.Length // along that wall
	soffit bool           // pushed in from the soffit, past the eave
	drops  []int          // that need it
}

// A shot is one straight push of the joined rods.
type shot struct {
	from    rodFrom
	start   geom.Point
	node    int
	heading network.Heading
	along   bool // along the joists, so that no joist is crossed
	// rafterBay is true if the shot stays between two rafters of one face;
	// otherwise it passes under them in a joist bay.
	rafterBay bool
}

// furthestRods is how long joined rods are thought of when a change is looked
// for: three sets of them.
const furthestRods = 3

// shoot adds the rod shots that begin at node n over point p: up the rafter
// bay there, and along the joist bay both ways.
func (b *cavity) shoot(p geom.Point, n int, from rodFrom) {
	slope, ok := b.upSlope(p)
	if ok {
		b.shootTowards(shot{from: from, start: p, node: n, heading: slope, along: b.alongJoists(slope), rafterBay: true})
	}
	if from.soffit {
		return
	}
	u, _ := b.ax.uv(p)
	if b.js.onJoist(u) {
		return
	}
	for _, h := range []network.Heading{b.ax.headingV(), b.ax.headingV().Reverse()} {
		if !ok || h != slope {
			b.shootTowards(shot{from: from, start: p, node: n, heading: h, along: true})
		}
	}
}

func (b *cavity) alongJoists(h network.Heading) bool {
	return h == b.ax.headingV() || h == b.ax.headingV().Reverse()
}

// longestRods is how far a rod is thought to be pushed.
func (b *builder) longestRods() measure.Length {
	if b.relax {
		return furthestRods * b.job.Tools.Rods
	}
	return b.job.Tools.Rods
}

// shootTowards adds one arc for every line that the rods reach where a hand
// can take them.
func (b *cavity) shootTowards(s shot) {
	longest := b.longestRods()
	rise := b.base - b.nodes[s.node].At.Z
	for _, q := range b.crossingsFrom(s.start, s.heading) {
		l := geom.Dist(s.start, q)
		if l > longest {
			return
		}
		if b.zoneOf(q) > Arm {
			continue
		}
		if stop, ok := b.shotClear(&s, q); !ok {
			b.deadEnd(s.from.drops, stop)
			return
		}
		a := Arc{Kind: RodArc, From: s.node, To: b.low(q), Heading: s.heading, Length: l + rise, Zone: b.zoneOf(q), Hole: -1}
		if !s.along {
			a.To, a.Length = b.high(q), a.Length+b.lifted()
		}
		a.Charges = append(b.cable(a.Length), b.once(price.Rod, 1), b.onceBy(price.RodPush, a.Length))
		a.Blocks = b.shotBlocks(&s, q, l)
		b.add(a)
	}
}

// crossingsFrom lists the lattice's crossings from p in a direction, nearest
// first.
func (b *cavity) crossingsFrom(p geom.Point, h network.Heading) []geom.Point {
	r := b.lat.reach
	u, v := b.ax.uv(p)
	on := r.onLineOfV(v)
	if b.alongJoists(h) {
		on = r.onLineOfU(u)
	}
	rising := h == network.East || h == network.North
	var out []geom.Point
	for _, k := range on {
		q := r.point(k)
		if q != p && rising == (q.X > p.X || q.Y > p.Y) {
			out = append(out, q)
		}
	}
	if !rising {
		slices.Reverse(out)
	}
	return out
}

// shotClear reports whether nothing that stays where it is stops a rod on its
// way to q, and otherwise what does: it must stay in the roof face it began in,
// inside the outline, off obstacles, and find a gap at the eave and over each
// joist.
func (b *cavity) shotClear(s *shot, q geom.Point) (stop Block, ok bool) {
	gap := b.book.Length(rule.RodGap)
	stop = Block{Rule: rule.RodLength, Pos: b.overhead(), At: b.nodes[s.node].At}
	if k := b.obstacleOn(s.start, q, 0); k != nil {
		stop.Pos, stop.Found = k.pos, k.name+" is in the way of a rod"
		return stop, false
	}
	stop.Found = "the roof is too low for a rod to pass"
	switch {
	case !b.space.Contains(q):
		return stop, false
	case !s.rafterBay:
		return stop, b.underRafter(q) >= gap && b.underRafter(s.start) >= gap
	case b.underSheathing(b.overPlate(s)) < gap:
		return stop, false
	}
	stop.Found = "a rod that stays in one rafter bay meets a hip, a valley or a rafter before a hand can take it"
	if h, ok := b.upSlope(before(q, s.heading)); !ok || h != s.heading || !b.betweenRafters(s) {
		return stop, false
	}
	if s.along {
		u, _ := b.ax.uv(q)
		return stop, !b.js.onJoist(u)
	}
	stop.Found = "a rod finds no gap between a joist and the sheathing over it"
	return stop, b.overJoists(s.start, q, gap)
}

// before is a point a nanometre short of p for something that comes in that
// direction, which tells the roof face it comes up to a ridge or a hip in.
func before(p geom.Point, h network.Heading) geom.Point {
	switch h {
	case network.East:
		p.X--
	case network.West:
		p.X++
	case network.North:
		p.Y--
	default:
		p.Y++
	}
	return p
}

// overPlate is where a shot from the eave is lowest: where it begins, or over
// the plate if it begins in the soffit.
func (b *cavity) overPlate(s *shot) geom.Point {
	if s.from.soffit {
		return b.house.Walls[s.from.wall].PointAt(s.from.along)
	}
	return s.start
}

// deadEnd keeps what stops the drops for good, for the answer where no change
// to it is known.
func (b *builder) deadEnd(drops []int, stop Block) {
	for _, d := range drops {
		b.dead[d] = append(b.dead[d], stop)
	}
}

// overJoists reports whether there is a gap between every joist on the way and
// the sheathing over it.
func (b *cavity) overJoists(p, q geom.Point, gap measure.Length) bool {
	u1, v := b.ax.uv(p)
	u2, _ := b.ax.uv(q)
	for _, j := range b.js.bodies(ordered(u1, u2)) {
		at := j.mid()
		if at <= min(u1, u2) || at >= max(u1, u2) {
			continue
		}
		if b.underSheathing(b.ax.point(at, v))-b.js.depth < gap {
			return false
		}
	}
	return true
}

// betweenRafters reports whether the shot's line lies clear of the rafters of
// its face.
func (b *cavity) betweenRafters(s *shot) bool {
	r := b.roof()
	x, first := s.start.X, r.FirstX
	if s.heading == network.East || s.heading == network.West {
		x, first = s.start.Y, r.FirstY
	}
	layout := joists{first: first, spacing: r.Spacing, width: r.Width, stand: everywhere}
	return !layout.onJoist(x)
}

// shotBlocks are the rules that forbid the shot: rods too short, a baffle in
// the bay, power beside it.
func (b *cavity) shotBlocks(s *shot, q geom.Point, l measure.Length) []Block {
	at := b.nodes[s.node].At
	out := b.powerBlocks(s.start, q, b.base)
	out = append(out, b.tooLongBlock(at, fmt.Sprintf("%s from the eave to where a hand takes the rod", b.text(l)), l)...)
	if pos, id, ok := b.baffleAt(s.from); ok && s.from.soffit {
		out = append(out, Block{
			Rule: rule.EaveBaffle, Pos: pos, At: at,
			Found:  fmt.Sprintf("baffle %s closes the rafter bay at the eave", id),
			Change: fmt.Sprintf("take baffle %s out of this bay and put it back afterwards", id),
			Price:  b.prices.Each(price.ChangeBaffle),
		})
	}
	return out
}

func (b *builder) baffleAt(f rodFrom) (pos diag.Pos, id string, ok bool) {
	for i := range b.house.Baffles {
		bf := &b.house.Baffles[i]
		if bf.Wall == f.wall && bf.Start < f.along && f.along < bf.End {
			return bf.Pos, bf.ID, true
		}
	}
	return diag.Pos{}, "", false
}

// zoneOf is the zone of a crossing given by its point.
func (b *cavity) zoneOf(p geom.Point) Zone { return b.lat.reach.zoneOf(p) }

// upSlope is the direction in which the roof rises over p.
func (b *cavity) upSlope(p geom.Point) (network.Heading, bool) {
	if b.space.Roof < 0 {
		return network.Free, false
	}
	slope, ok := b.roof().Surface.Slope(p)
	if !ok {
		return network.Free, false
	}
	return headingTo(geom.Point{}, slope.Up), true
}

// tooLongBlock forbids a shot that is longer than the joined rods.
func (b *builder) tooLongBlock(at geom.Point3, what string, l measure.Length) []Block {
	if l <= b.job.Tools.Rods {
		return nil
	}
	return []Block{{
		Rule: rule.RodLength, Pos: b.job.Tools.Pos, At: at,
		Found:  fmt.Sprintf("%s; the joined rods are %s", what, b.text(b.job.Tools.Rods)),
		Change: fmt.Sprintf("bring rods that join to %s", b.text(measure.RoundUp(l, measure.Foot))),
		Price:  b.prices.Each(price.ChangeLongerRods),
	}}
}
