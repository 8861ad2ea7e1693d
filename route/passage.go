package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

const (
	// passInset is how far from the edge of a space cable is taken through the
	// wall beside it (common practice, no source).
	passInset = 6 * measure.Inch
	// passThick is the thickest wall between two spaces that lie side by side.
	passThick = 18 * measure.Inch
	// underJoists is how far below the joists a masonry wall between two spaces, or
	// one that stands higher than they do, is bored: clear of the sill and in the
	// wall's own stuff (common practice, no source).
	underJoists = 3 * measure.Inch
)

// passages adds the ways between spaces that lie side by side: from attic to
// attic, from a basement's ceiling to a crawl space, and from the attic beside an
// upper storey into the floor under it.
func (b *builder) passages() {
	for i, c := range b.cavities {
		for _, d := range b.cavities[i+1:] {
			for _, pair := range [2][2]*cavity{{c, d}, {d, c}} {
				c, d := pair[0], pair[1]
				switch attic := c.space.Kind == plan.AtticSpace; {
				case attic && d.space.Kind == plan.FloorSpace:
					c.passTo(d, c.intoBays)
				case attic != (d.space.Kind == plan.AtticSpace):
				case c.index > d.index:
				case attic && c.space.Roof == d.space.Roof && c.base != d.base:
					c.passTo(d, c.downTheSlope)
				default:
					c.passTo(d, c.throughTheWall)
				}
			}
		}
	}
}

// A facing is a stretch that the edges of two spaces have in common: edge and far
// are where they lie across it, both the stretch along it, h the heading across
// from the first space to the second.
type facing struct {
	alongY    bool
	edge, far measure.Length
	both      span
	h         plan.Heading
}

// at is the point of the first space's edge at a place along it, and that of the
// second's.
func (f *facing) at(x measure.Length) (p, q geom.Point) {
	if f.alongY {
		return geom.Point{X: f.edge, Y: x}, geom.Point{X: f.far, Y: x}
	}
	return geom.Point{X: x, Y: f.edge}, geom.Point{X: x, Y: f.far}
}

// steps calls f at the regular step of the lattice along a facing.
func (f *facing) steps(do func(x measure.Length)) {
	for x := f.both.mid() - (f.both.width()/2)/lineStep*lineStep; x <= f.both.hi; x += lineStep {
		do(x)
	}
}

// passTo finds where the edges of two spaces face each other, and calls add there.
func (b *cavity) passTo(d *cavity, add func(d *cavity, f *facing)) {
	for _, o := range b.space.Edges() {
		for i, p := range o {
			for _, e := range d.space.Edges() {
				for j, q := range e {
					for _, f := range facings(p, o[(i+1)%len(o)], q, e[(j+1)%len(e)]) {
						add(d, &f)
					}
				}
			}
		}
	}
}

// facings are the two ways in which the edges from p to q and from r to s may face
// each other: which is right depends on the sides that their spaces lie on.
func facings(p, q, r, s geom.Point) []facing {
	alongY := p.X == q.X
	if alongY != (r.X == s.X) {
		return nil
	}
	on := func(x geom.Point) measure.Length { return pointOnLine(x, alongY) }
	across := func(x geom.Point) measure.Length { return pointOnLine(x, !alongY) }
	whole, other := ordered(on(p), on(q)), ordered(on(r), on(s))
	f := facing{alongY: alongY, edge: across(p), far: across(r), both: span{max(whole.lo, other.lo), min(whole.hi, other.hi)}.inset(passInset)}
	if f.both.lo > f.both.hi {
		return nil
	}
	back := f
	f.h, back.h = plan.North, plan.South
	if alongY {
		f.h, back.h = plan.East, plan.West
	}
	return []facing{f, back}
}

// throughTheWall adds the ways where no more than a wall is between two spaces.
func (b *cavity) throughTheWall(d *cavity, f *facing) {
	if dist(f.edge, f.far) > passThick {
		return
	}
	f.steps(func(x measure.Length) {
		p, q := f.at(x)
		if from, to := b.inwards(p, f.h.Opposite()), d.inwards(q, f.h); b.onItsSide(d, from, to) {
			b.passAt(d, from, to)
		}
	})
}

// onItsSide reports whether two points are each in its own space and not in the
// other's.
func (b *cavity) onItsSide(d *cavity, p, q geom.Point) bool {
	return b.space.Contains(p) && d.space.Contains(q) && !b.space.Contains(q) && !d.space.Contains(p)
}

// intoBays adds the ways from an attic into the joist bays of a closed floor beside
// it, where the bays run across the edge: those that some port opens into, and
// others at the regular step, through which rods go to the attic on the other side.
func (b *cavity) intoBays(d *cavity, f *facing) {
	if f.alongY == d.ax.alongY || dist(f.edge, f.far) > passThick {
		return
	}
	var at []measure.Length
	for i := range d.ports {
		at = append(at, d.u(d.ports[i].at))
	}
	f.steps(func(x measure.Length) { at = append(at, d.js.clear(d.js.bay(x)).mid()) })
	slices.Sort(at)
	for _, u := range slices.Compact(at) {
		p, q := f.at(u)
		from, to := f.h.Opposite().Step(p, passInset), f.h.Step(q, passInset)
		if f.both.lo <= u && u <= f.both.hi && b.onItsSide(d, from, to) {
			b.intoBay(d, from, to)
		}
	}
}

func (b *cavity) intoBay(d *cavity, p, q geom.Point) {
	b.ports = append(b.ports, port{at: p})
	d.ports = append(d.ports, port{at: q, join: func() {
		if b.zoneOf(p) > Arm || d.js.onJoist(d.u(q)) {
			return
		}
		l := geom.Dist(p, q) + dist(b.base, d.base)
		b.add(Arc{
			Kind: PassArc, From: b.low(p), To: d.low(q), Heading: headingTo(p, q), Length: l, Zone: b.zoneOf(p), Hole: b.underKneeWall(d, p, q),
			Charges: append(b.cable(l), b.once(price.PassAttic, 1)),
		})
	}})
}

// underKneeWall is the hole through the blocking under the wall that stands on the edge of
// a closed floor, in the middle of the joists' depth; -1 if the sketch has no wall there.
func (b *cavity) underKneeWall(d *cavity, p, q geom.Point) int {
	m := mid(geom.Rect{Min: p, Max: q}.Canon())
	k := slices.IndexFunc(b.house.Walls, func(w plan.Wall) bool {
		return w.Level == d.space.Above && w.AlongY() == (p.Y == q.Y) && w.Body.Contains(m)
	})
	if k < 0 {
		return -1
	}
	return b.hole(HolePlace{
		Kind: PassArc, Beyond: d.index, At: geom.Point3{X: m.X, Y: m.Y, Z: d.base + d.js.depth/2}, Wall: k, Along: b.house.Walls[k].Along(m), Room: -1,
		Free: d.js.spacing - d.js.width, FromSpace: true, Reach: d.js.width,
	})
}

func (b *cavity) u(p geom.Point) measure.Length {
	u, _ := b.ax.uv(p)
	return u
}

// downTheSlope adds, between two attics at different heights under one roof, the
// rod shots down the rafter bays behind a sloped ceiling.
func (b *cavity) downTheSlope(d *cavity, f *facing) {
	if dist(f.edge, f.far) > b.longestRods() {
		return
	}
	f.steps(func(x measure.Length) {
		x = b.clearOfRafters(x, f.alongY)
		p, q := f.at(x)
		from, to := f.h.Opposite().Step(p, passInset), f.h.Step(q, passInset)
		if x < f.both.lo || x > f.both.hi || !b.onItsSide(d, from, to) {
			return
		}
		if slope, ok := b.upSlope(mid(geom.Rect{Min: from, Max: to}.Canon())); !ok || slope != headingTo(from, to) && slope != headingTo(to, from) {
			return
		}
		b.shootDown(d, from, to)
	})
}

// clearOfRafters is the middle of the rafter bay over x of the axis that rafters
// are laid out on.
func (b *cavity) clearOfRafters(x measure.Length, alongY bool) measure.Length {
	r := b.roof()
	first := r.FirstX
	if alongY {
		first = r.FirstY
	}
	j := joists{first: first, spacing: r.Spacing, width: r.Width, stand: everywhere}
	return j.clear(j.bay(x)).mid()
}

func (b *cavity) shootDown(d *cavity, p, q geom.Point) {
	b.ports = append(b.ports, port{at: p})
	d.ports = append(d.ports, port{at: q})
	b.later = append(b.later, func() {
		if b.zoneOf(p) > Arm || d.zoneOf(q) > Arm {
			return
		}
		l := geom.Dist(p, q) + dist(b.base, d.base)
		a := Arc{Kind: RodArc, From: b.low(p), To: d.low(q), Heading: headingTo(p, q), Length: l, Zone: RodOnly, Hole: -1}
		a.Charges = append(b.cable(l), b.once(price.Rod, 1), b.onceBy(price.RodPush, l))
		a.Blocks = b.tooLongBlock(b.nodes[a.From].At, fmt.Sprintf("%s down the slope of the roof", b.text(l)), l)
		b.add(a)
	})
}

// inwards is the point so far into the space from its edge at e, past the wall
// that stands there under the joists of an open ceiling.
func (b *cavity) inwards(e geom.Point, h plan.Heading) geom.Point {
	p := h.Step(e, passInset)
	if b.space.Kind != plan.FloorSpace {
		return p
	}
	for i := range b.house.Walls {
		w := &b.house.Walls[i]
		if w.Level == b.space.Below && w.Body.Contains(p) {
			return h.Step(p, min(w.Body.Width(), w.Body.Height()))
		}
	}
	return p
}

// passAt adds one way from p in b to q in d, once it is known that a hand gets to
// both and that there is a height at which they face each other.
func (b *cavity) passAt(d *cavity, p, q geom.Point) {
	b.ports = append(b.ports, port{at: p})
	d.ports = append(d.ports, port{at: q})
	b.later = append(b.later, func() {
		zone := max(b.zoneOf(p), d.zoneOf(q))
		low := max(b.base, d.base)
		room := min(b.base+b.underSheathing(p), d.base+d.underSheathing(q)) - low
		if zone > Arm || room < b.book.Length(rule.RodGap) {
			return
		}
		a := Arc{Kind: PassArc, From: b.low(p), To: d.low(q), Heading: headingTo(p, q), Length: geom.Dist(p, q) + dist(b.base, d.base), Zone: zone, Hole: -1}
		bore := b.throughPass(d, &a, p, q, room)
		a.Charges = append(b.cable(a.Length), b.once(bore, 1))
		b.add(a)
	})
}

// throughPass gives a way between two spaces the hole through the wall that
// stands there, if the sketch has one, and says what it costs. There is so much
// height over the higher of their floors: the hole is in the middle of the joists'
// depth over the plates there, or below the joists where that is masonry.
func (b *cavity) throughPass(d *cavity, a *Arc, p, q geom.Point, room measure.Length) price.ID {
	m := mid(geom.Rect{Min: p, Max: q}.Canon())
	k := slices.IndexFunc(b.house.Walls, func(w plan.Wall) bool {
		return w.Level == max(b.space.Below, 0) && w.Body.Contains(m)
	})
	bore := price.PassAttic
	if k < 0 {
		return bore
	}
	w, z := &b.house.Walls[k], max(b.base, d.base)
	higher := b
	if d.base > b.base {
		higher = d
	}
	switch {
	case !w.Masonry || b.space.Kind == plan.AtticSpace:
		z += min(room, higher.js.depth) / 2
	default:
		z -= underJoists
	}
	if w.Masonry {
		bore = price.BoreMasonry
	}
	a.Length = geom.Dist(p, q) + dist(b.base, z) + dist(z, d.base)
	here, beyond := b.boredFrom(d, p, q)
	a.Hole = here.hole(HolePlace{
		Kind: PassArc, Beyond: beyond.index, At: geom.Point3{X: m.X, Y: m.Y, Z: z}, Wall: k, Along: w.Along(m), Room: -1,
		Free: w.StudDepth, FromSpace: true, Reach: min(w.Body.Width(), w.Body.Height()),
	})
	return bore
}

// boredFrom is the one of two spaces that a hole between them is bored from: where
// a body has the more room. The other is beyond it.
func (b *cavity) boredFrom(d *cavity, p, q geom.Point) (here, beyond *cavity) {
	z, y := b.zoneOf(p), d.zoneOf(q)
	if y < z || y == z && d.clearance(q) > b.clearance(p) {
		return d, b
	}
	return b, d
}
