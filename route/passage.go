package route

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// passInset is how far from the wall between two attics cable is taken through
// it from either side (common practice, no source).
const passInset = 6 * measure.Inch

// passages adds the ways from attic to attic, where they lie side by side: along
// every edge that they share, at the regular step of the lattice.
func (b *builder) passages() {
	for i, c := range b.cavities {
		for _, d := range b.cavities[i+1:] {
			if c.space.Kind == plan.AtticSpace && d.space.Kind == plan.AtticSpace {
				c.passTo(d)
			}
		}
	}
}

func (b *cavity) passTo(d *cavity) {
	for _, o := range b.space.Outlines {
		for i, p := range o {
			for _, e := range d.space.Outlines {
				for j, q := range e {
					b.passAlong(d, p, o[(i+1)%len(o)], q, e[(j+1)%len(e)])
				}
			}
		}
	}
}

// passAlong adds the ways where the edges from p to q and from r to s lie on
// each other. Outlines run counter-clockwise, so that each has its attic on its
// left and the two go opposite ways.
func (b *cavity) passAlong(d *cavity, p, q, r, s geom.Point) {
	alongY := p.X == q.X
	if alongY != (r.X == s.X) || headingTo(p, q) != headingTo(s, r) {
		return
	}
	if alongY && p.X != r.X || !alongY && p.Y != r.Y {
		return
	}
	on := func(x geom.Point) measure.Length { return pointOnLine(x, alongY) }
	whole, other := ordered(on(p), on(q)), ordered(on(r), on(s))
	both := span{max(whole.lo, other.lo), min(whole.hi, other.hi)}.inset(passInset)
	if both.lo > both.hi {
		return
	}
	inward := leftOf(headingTo(p, q))
	for at := both.mid() - (both.width()/2)/lineStep*lineStep; at <= both.hi; at += lineStep {
		b.passAt(d, moved(p, alongY, at), inward)
	}
}

// passAt adds one way through the edge at e into d; inward is the direction into
// b from there.
func (b *cavity) passAt(d *cavity, e geom.Point, inward network.Heading) {
	p, q := stepped(e, inward, passInset), stepped(e, inward.Reverse(), passInset)
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
		a := Arc{Kind: PassArc, From: b.low(p), To: d.low(q), Heading: inward.Reverse(), Length: l, Zone: zone, Hole: -1}
		a.Charges = append(b.cable(l), b.once(price.PassAttic, 1))
		b.add(a)
	})
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

// leftOf is the heading on the left of one along an axis of the house.
func leftOf(h network.Heading) network.Heading {
	return map[network.Heading]network.Heading{
		network.East: network.North, network.North: network.West, network.West: network.South, network.South: network.East,
	}[h]
}
