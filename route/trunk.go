package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// trunkLines gives the lattice lines through the corners of trunks and along
// the edges of what is avoided.
func (b *cavity) trunkLines(add func(geom.Point)) {
	if b.index != 0 {
		return
	}
	for i := range b.fixed {
		f := &b.fixed[i]
		for k, p := range f.Path {
			add(p)
			if k > 0 && f.Do == plan.AvoidFixed {
				r := geom.Rect{Min: f.Path[k-1], Max: p}.Canon().Outset(f.Width / 2)
				add(r.Min)
				add(r.Max)
			}
		}
		if f.Area != (geom.Rect{}) {
			add(f.Area.Min)
			add(f.Area.Max)
		}
	}
}

// fixTrunks applies trunks and avoided areas to an arc in the main attic. Along a
// trunk that is used or there only what each cable costs is paid. That is a
// strong preference and not a command: a way that costs even less is taken.
func (b *cavity) fixTrunks(a *Arc) {
	laid := a.Kind == AlongArc || a.Kind == BesideArc || a.Kind == AcrossArc
	if b.index != 0 || !laid && a.Kind != RodArc {
		return
	}
	p, q := flat(b.nodes[a.From].At), flat(b.nodes[a.To].At)
	for i := range b.fixed {
		f := &b.fixed[i]
		switch {
		case f.Wall >= 0:
		case f.Do == plan.AvoidFixed:
			b.avoidWay(a, f, p, q)
		case laid && alongPath(f.Path, p, q, 1):
			a.Charges = slices.DeleteFunc(slices.Clone(a.Charges), func(c Charge) bool { return !c.PerCable })
		}
	}
}

func flat(p geom.Point3) geom.Point { return geom.Point{X: p.X, Y: p.Y} }

// avoidWay forbids the straight way from p to q if it enters an avoided area
// or runs along an avoided trunk.
func (b *builder) avoidWay(a *Arc, f *plan.Fixed, p, q geom.Point) {
	var found string
	switch {
	case len(f.Path) > 0 && alongPath(f.Path, p, q, f.Width/2):
		found = fmt.Sprintf("fixed part %s keeps cable %s away from a trunk", f.ID, b.text(f.Width/2))
	case geom.SegmentEntersRect(p, q, f.Area):
		found = fmt.Sprintf("fixed part %s keeps cable out of an area", f.ID)
	default:
		return
	}
	bl := b.partBlock(f, found)
	bl.At.X, bl.At.Y = p.X, p.Y
	a.Blocks = append(a.Blocks, bl)
}

// alongPath reports whether the way from p to q runs along a leg of the path
// for some length, less than half beside it.
func alongPath(path []geom.Point, p, q geom.Point, half measure.Length) bool {
	for i := 1; i < len(path); i++ {
		if beside(path[i-1], path[i], p, q, half) {
			return true
		}
	}
	return false
}

func beside(a, c, p, q geom.Point, half measure.Length) bool {
	if a.Y == c.Y {
		a, c, p, q = swapped(a), swapped(c), swapped(p), swapped(q)
	}
	// Now the leg runs along Y.
	return p.X == q.X && dist(p.X, a.X) < half && ordered(p.Y, q.Y).overlaps(ordered(a.Y, c.Y))
}

func swapped(p geom.Point) geom.Point { return geom.Point{X: p.Y, Y: p.X} }
