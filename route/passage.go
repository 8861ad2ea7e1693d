package route

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

const (
	// passInset is how far from the edge of a space cable is taken through the
	// wall beside it (common practice, no source).
	passInset = 6 * measure.Inch
	// passThick is the thickest wall between two spaces that lie side by side.
	passThick = 18 * measure.Inch
)

// passages adds the ways between spaces that lie side by side, from attic to
// attic and from a basement's ceiling to a crawl space: along every stretch that
// their edges have in common, at the regular step of the lattice.
func (b *builder) passages() {
	for i, c := range b.cavities {
		for _, d := range b.cavities[i+1:] {
			if (c.space.Kind == plan.AtticSpace) == (d.space.Kind == plan.AtticSpace) {
				c.passTo(d)
			}
		}
	}
}

func (b *cavity) passTo(d *cavity) {
	for _, o := range b.space.Edges() {
		for i, p := range o {
			for _, e := range d.space.Edges() {
				for j, q := range e {
					b.passAlong(d, p, o[(i+1)%len(o)], q, e[(j+1)%len(e)])
				}
			}
		}
	}
}

// passAlong adds the ways where the edges from p to q and from r to s lie beside
// each other, with no more than a wall between and their spaces on either side.
func (b *cavity) passAlong(d *cavity, p, q, r, s geom.Point) {
	alongY := p.X == q.X
	if alongY != (r.X == s.X) {
		return
	}
	on := func(x geom.Point) measure.Length { return pointOnLine(x, alongY) }
	across := func(x geom.Point) measure.Length { return pointOnLine(x, !alongY) }
	whole, other := ordered(on(p), on(q)), ordered(on(r), on(s))
	both := span{max(whole.lo, other.lo), min(whole.hi, other.hi)}.inset(passInset)
	if both.lo > both.hi || dist(across(p), across(r)) > passThick {
		return
	}
	for at := both.mid() - (both.width()/2)/lineStep*lineStep; at <= both.hi; at += lineStep {
		e, f := moved(p, alongY, at), moved(r, alongY, at)
		for _, h := range b.sides(alongY) {
			from, to := b.inwards(e, h.Reverse()), d.inwards(f, h)
			if b.space.Contains(from) && d.space.Contains(to) && !b.space.Contains(to) && !d.space.Contains(from) {
				b.passAt(d, from, to, h)
			}
		}
	}
}

// inwards is the point so far into the space from its edge at e, past the wall
// that stands there under the joists of an open ceiling.
func (b *cavity) inwards(e geom.Point, h network.Heading) geom.Point {
	p := stepped(e, h, passInset)
	if b.space.Kind != plan.FloorSpace {
		return p
	}
	for i := range b.house.Walls {
		w := &b.house.Walls[i]
		if w.Level == b.space.Below && w.Body.Contains(p) {
			return stepped(p, h, min(w.Body.Width(), w.Body.Height()))
		}
	}
	return p
}

// sides are the two headings across an edge.
func (b *cavity) sides(alongY bool) []network.Heading {
	if alongY {
		return []network.Heading{network.East, network.West}
	}
	return []network.Heading{network.North, network.South}
}

// passAt adds one way from p in b to q in d, once it is known that a hand gets to
// both and that there is a height at which they face each other.
func (b *cavity) passAt(d *cavity, p, q geom.Point, h network.Heading) {
	b.ports = append(b.ports, port{at: p})
	d.ports = append(d.ports, port{at: q})
	b.later = append(b.later, func() {
		zone := max(b.zoneOf(p), d.zoneOf(q))
		low := max(b.base, d.base)
		room := min(b.base+b.underSheathing(p), d.base+d.underSheathing(q)) - low
		if zone > Arm || room < b.book.Length(rule.RodGap) {
			return
		}
		l := geom.Dist(p, q) + dist(b.base, d.base)
		a := Arc{Kind: PassArc, From: b.low(p), To: d.low(q), Heading: h, Length: l, Zone: zone, Hole: -1}
		a.Charges = append(b.cable(l), b.once(b.throughPass(&a, p, q, low), 1))
		b.add(a)
	})
}

// throughPass gives a way between two spaces the hole through the wall that
// stands there, if the sketch has one, and says what it costs.
func (b *cavity) throughPass(a *Arc, p, q geom.Point, z measure.Length) price.ID {
	m := mid(geom.Rect{Min: p, Max: q}.Canon())
	k := slices.IndexFunc(b.house.Walls, func(w plan.Wall) bool {
		return w.Level == max(b.space.Below, 0) && w.Body.Contains(m)
	})
	bore := price.PassAttic
	if k < 0 {
		return bore
	}
	w := &b.house.Walls[k]
	if w.Masonry {
		bore = price.BoreMasonry
	}
	a.Hole = b.hole(HolePlace{
		Kind: PassArc, At: geom.Point3{X: m.X, Y: m.Y, Z: z}, Wall: k, Along: w.Along(m), Room: -1,
		Free: w.StudDepth, FromSpace: true, Reach: w.Body.Width(),
	})
	return bore
}

func stepped(p geom.Point, h network.Heading, by measure.Length) geom.Point {
	switch h {
	case network.East:
		p.X += by
	case network.West:
		p.X -= by
	case network.North:
		p.Y += by
	default:
		p.Y -= by
	}
	return p
}
