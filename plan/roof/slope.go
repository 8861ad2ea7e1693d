package roof

import (
	"cmp"
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Slope is one plane of the surface. Two points lie on the same plane if Up
// and Foot are equal.
type Slope struct {
	// Up is the level direction, of length 1, in which the plane rises. Rafters
	// run along it, square to the edge below.
	Up geom.Point
	// Foot is where the plane is level with the top of the plates: an X if Up
	// is along X, else a Y.
	Foot measure.Length
	// Edge is the edge of the outline from which the plane rises: an eave, or a
	// gable if the plane comes down on no eave, which only happens beside an
	// inside corner. It is -1 for a plane that comes down on no edge at all, as
	// those of a small cross gable do; they end in a valley.
	Edge int
}

// Slope returns the plane that is the surface at p. ok is false beyond the
// overhang.
//
// Where planes meet, an edge that p lies square across from comes before one
// that p lies past the end of (by how far past), then the longer edge, then
// the edge that comes first in the outline; planes without an edge come last.
// So the answer turns along with a house, and with edges of unequal length it
// is mirrored too.
func (r *Roof) Slope(p geom.Point) (slope Slope, ok bool) {
	highest := r.highest(p)
	if meet(highest) {
		if slope, ok = r.first(highest, p, func(b *block, s side) bool { return r.near(b, s, p) }); ok {
			return slope, true
		}
	}
	return r.first(highest, p, func(*block, side) bool { return true })
}

// first returns the plane that comes before the others at p, of those that count.
func (r *Roof) first(highest []tie, p geom.Point, counts func(*block, side) bool) (slope Slope, ok bool) {
	var best candidate
	for _, h := range highest {
		for _, s := range sides {
			if !h.lowest[s] || !counts(h.block, s) {
				continue
			}
			if c := r.candidate(h.block, s, p); !ok || c.before(best) {
				best, ok = c, true
			}
		}
	}
	return best.Slope, ok
}

// A tie is a block whose roof is the surface at a point, and the sides whose
// planes are its roof there.
type tie struct {
	*block
	lowest [4]bool
}

// highest returns the blocks whose roofs are the surface at p, none beyond
// the overhang.
func (r *Roof) highest(p geom.Point) []tie {
	depth := r.depth(p)
	var found []tie
	for i := range r.blocks {
		b := &r.blocks[i]
		if b.depth(p) != depth || !b.roofed.Contains(p) {
			continue
		}
		t := tie{block: b}
		for _, s := range sides {
			t.lowest[s] = !b.open[s] && s.distance(b.area, p) == depth
		}
		found = append(found, t)
	}
	return found
}

// distance is how far p lies inward of a side.
func (s side) distance(area geom.Rect, p geom.Point) measure.Length {
	switch s {
	case west:
		return p.X - area.Min.X
	case east:
		return area.Max.X - p.X
	case south:
		return p.Y - area.Min.Y
	default:
		return area.Max.Y - p.Y
	}
}

// meet reports whether several planes meet at a point.
func meet(highest []tie) bool {
	var first *tie
	var side side
	for i := range highest {
		h := &highest[i]
		for _, s := range sides {
			switch {
			case !h.lowest[s]:
			case first == nil:
				first, side = h, s
			case s != side || s.of(h.area) != side.of(first.area):
				return true
			}
		}
	}
	return false
}

// near reports whether a plane is the surface on some side of a point where it
// meets others, and does not only touch it there. Planes meet along the axes and
// halfway between them, so that there is one on each of eight sides.
func (r *Roof) near(b *block, s side, p geom.Point) bool {
	for g := range geom.Symmetries {
		for _, h := range r.highest(p.Add(g.Apply(geom.Point{X: 2, Y: 1}))) {
			if h.block == b && h.lowest[s] {
				return true
			}
		}
	}
	return false
}

// A candidate is a plane with what decides which of several is named.
type candidate struct {
	Slope
	past   measure.Length // how far the point lies past the end of the edge
	length measure.Length // of the edge
}

func (c candidate) before(d candidate) bool {
	return cmp.Or(
		cmp.Compare(c.past, d.past),
		cmp.Compare(d.length, c.length),
		cmp.Compare(c.Edge, d.Edge),
	) < 0
}

// candidate finds the edge of the outline under a side of a block: an eave if
// there is one.
func (r *Roof) candidate(b *block, s side, p geom.Point) candidate {
	virtual := candidate{
		Slope: Slope{Up: s.up(), Foot: s.of(b.area), Edge: -1},
		past:  math.MaxInt64,
	}
	best, bestGable := virtual, true
	for i := range r.spec.Outline {
		e := edge(r.spec.Outline, i)
		if !s.carries(b.area, e) || r.spec.Gable[i] && !bestGable {
			continue
		}
		c := virtual
		c.Edge = i
		c.past, c.length = s.past(e, p)
		if !r.spec.Gable[i] && bestGable || c.before(best) {
			best, bestGable = c, r.spec.Gable[i]
		}
	}
	return best
}

// carries reports whether the edge lies along the side, for some length.
func (s side) carries(area, e geom.Rect) bool {
	if s == west || s == east {
		return e.Min.X == e.Max.X && e.Min.X == s.of(area) && e.Min.Y < area.Max.Y && e.Max.Y > area.Min.Y
	}
	return e.Min.Y == e.Max.Y && e.Min.Y == s.of(area) && e.Min.X < area.Max.X && e.Max.X > area.Min.X
}

// past returns how far p lies past an end of the edge, and how long it is.
func (s side) past(e geom.Rect, p geom.Point) (past, length measure.Length) {
	if s == west || s == east {
		return max(e.Min.Y-p.Y, p.Y-e.Max.Y, 0), e.Height()
	}
	return max(e.Min.X-p.X, p.X-e.Max.X, 0), e.Width()
}
