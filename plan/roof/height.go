package roof

import (
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Height returns the height of the surface at p above the top of the plates.
//
// Past an eave the plane goes on down, and past a gable it goes on as it was
// inside, as far as the overhang reaches. Where the overhangs of two edges
// meet, the higher one counts. The overhang of a gable counts for nothing over
// another part of the outline. Beyond the overhang, where there is no roof,
// the answer is the pitch times the distance to the outline in the maximum
// norm, downward.
//
// It takes time O(number of rectangles): two for an L.
func (r *Roof) Height(p geom.Point) measure.Length { return r.spec.Pitch.rise(2 * r.depth(p)) }

// UnderRafter returns the height of the underside of a rafter, or of the top
// chord of a truss, above the top of the plates. It is negative outside of the
// plate and, with rafters, over it.
func (r *Roof) UnderRafter(p geom.Point) measure.Length {
	return r.spec.Pitch.rise(2*(r.depth(p)-r.seat)) + r.low
}

// UnderSheathing returns the height of the underside of the sheathing between
// two rafters or trusses above the top of the plates. It is the sum of two
// rounded terms.
func (r *Roof) UnderSheathing(p geom.Point) measure.Length { return r.UnderRafter(p) + r.slant }

// RidgeHeight returns the greatest height of the surface within the outline.
func (r *Roof) RidgeHeight() measure.Length {
	var most measure.Length
	for i := range r.blocks {
		most = max(most, r.blocks[i].ridge())
	}
	return r.spec.Pitch.rise(most)
}

// ridge is twice the greatest depth in the block: two planes meet in the
// middle, one alone rises all the way, and without one there is no limit.
func (b *block) ridge() measure.Length {
	across := func(size measure.Length, one, other bool) measure.Length {
		switch {
		case one && other:
			return math.MaxInt64
		case one || other:
			return 2 * size
		}
		return size
	}
	return min(
		across(b.area.Width(), b.open[west], b.open[east]),
		across(b.area.Height(), b.open[south], b.open[north]),
	)
}

// depth is the height at p divided by the pitch.
func (r *Roof) depth(p geom.Point) measure.Length {
	const nothing = math.MinInt64
	depth := measure.Length(nothing)
	for i := range r.blocks {
		if b := &r.blocks[i]; b.area.Contains(p) {
			depth = max(depth, b.depth(p))
		}
	}
	if depth != nothing {
		return depth
	}
	for i := range r.blocks {
		if b := &r.blocks[i]; b.roofed.Contains(p) {
			depth = max(depth, b.depth(p))
		}
	}
	if depth != nothing {
		return depth
	}
	for i := range r.blocks {
		a := &r.blocks[i].area
		depth = max(depth, min(p.X-a.Min.X, a.Max.X-p.X, p.Y-a.Min.Y, a.Max.Y-p.Y))
	}
	return depth
}
