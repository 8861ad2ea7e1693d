package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/route/network"
)

// shootInFloor adds, in a floor that is closed from below and from above, one
// rod shot between every two ports in the same joist bay that the joined rods
// span: what is pushed in at one hole is caught at the other. Where webs are
// open, in a floor of trusses, rods go across them, too.
func (b *cavity) shootInFloor() {
	if b.space.Kind != plan.FloorSpace {
		return
	}
	ports := b.closedPorts()
	ports = append(ports, b.boreJoists(ports)...)
	slices.SortFunc(ports, byPlace)
	ports = slices.Compact(ports)
	for i, p := range ports {
		for _, q := range ports[i+1:] {
			b.shootBetween(p, q)
		}
	}
}

// closedPorts are the places of ports that no hand reaches, in order.
func (b *cavity) closedPorts() []geom.Point {
	var out []geom.Point
	for i := range b.ports {
		if p := b.ports[i].at; b.zoneOf(p) > Arm {
			out = append(out, p)
		}
	}
	slices.SortFunc(out, byPlace)
	return slices.Compact(out)
}

func byPlace(p, q geom.Point) int { return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X)) }

// shootBetween adds the shot from p to q, if there is a straight way between
// two joists, or across the webs of trusses.
func (b *cavity) shootBetween(p, q geom.Point) {
	u, v := b.ax.uv(p)
	s, t := b.ax.uv(q)
	l := dist(u, s) + dist(v, t)
	if l > b.longestRods() || b.js.onJoist(u) || b.js.onJoist(s) {
		return
	}
	sameBay := b.js.bay(u) == b.js.bay(s)
	across := b.space.Joist == plan.Truss && dist(v, t) < b.js.spacing/2
	if !sameBay && !across || !b.clearBetween(p, q) {
		return
	}
	a := Arc{Kind: RodArc, From: b.low(p), To: b.low(q), Heading: b.shotHeading(p, q, sameBay), Length: l, Zone: RodOnly, Hole: -1}
	a.Charges = append(b.cable(l), b.once(price.Rod, 1), b.onceBy(price.RodPush, l))
	a.Blocks = append(b.powerBlocks(p, q, b.base), b.tooLongBlock(b.nodes[a.From].At, fmt.Sprintf("%s from hole to hole in the floor", b.text(l)), l)...)
	b.add(a)
}

func (b *cavity) shotHeading(p, q geom.Point, along bool) network.Heading {
	u, v := b.ax.uv(p)
	s, t := b.ax.uv(q)
	if along && v != t {
		return towards(b.ax.headingV(), t > v)
	}
	if u != s {
		return towards(b.ax.headingU(), s > u)
	}
	return network.Free
}

func towards(h network.Heading, rising bool) network.Heading {
	if rising {
		return h
	}
	return h.Reverse()
}

// clearBetween reports whether nothing stands between p and q and the floor
// goes on all the way.
func (b *cavity) clearBetween(p, q geom.Point) bool {
	if b.obstructed(p, q, 0) {
		return false
	}
	for _, outline := range b.space.Edges() {
		for i, a := range outline {
			if crossesEdge(p, q, a, outline[(i+1)%len(outline)]) {
				return false
			}
		}
	}
	return true
}

// crossesEdge reports whether the way from p to q, along one axis and then the
// other, leaves the space over an edge.
func crossesEdge(p, q, a, c geom.Point) bool {
	box := geom.Rect{Min: p, Max: q}.Canon()
	edge := geom.Rect{Min: a, Max: c}.Canon()
	in := func(lo, hi, x measure.Length) bool { return lo < x && x < hi }
	if a.X == c.X {
		return in(box.Min.X, box.Max.X, a.X) && edge.Min.Y <= box.Max.Y && box.Min.Y <= edge.Max.Y
	}
	return in(box.Min.Y, box.Max.Y, a.Y) && edge.Min.X <= box.Max.X && box.Min.X <= edge.Max.X
}
