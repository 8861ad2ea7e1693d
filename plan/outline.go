package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A ring is a closed run of legs with the building on its inside,
// counter-clockwise, cut into straight sides.
type ring struct {
	legs  []leg
	outer Side    // the side of every leg that looks out
	sides [][]int // indices of the legs in line, counter-clockwise
}

// newRing cuts a closed run into sides. points are the corners of the run,
// without the first repeated.
func newRing(legs []leg, points geom.Polygon) ring {
	r := ring{legs: legs, outer: Right}
	order := make([]int, len(legs))
	for i := range order {
		order[i] = i
	}
	if !points.IsCCW() {
		r.outer = Left
		slices.Reverse(order)
	}
	for _, i := range order {
		last := len(r.sides) - 1
		if last >= 0 && legs[r.sides[last][0]].heading == legs[i].heading {
			r.sides[last] = append(r.sides[last], i)
		} else {
			r.sides = append(r.sides, []int{i})
		}
	}
	// A run may begin in the middle of a side.
	if last := len(r.sides) - 1; last > 0 && legs[r.sides[0][0]].heading == legs[r.sides[last][0]].heading {
		r.sides[0] = append(r.sides[last], r.sides[0]...)
		r.sides = r.sides[:last]
	}
	return r
}

// outline is the outer face of a layer of the legs: the vertex k is where
// side k begins.
func (r *ring) outline(layer int) geom.Polygon {
	p := make(geom.Polygon, len(r.sides))
	for k, side := range r.sides {
		before := r.sides[(k+len(r.sides)-1)%len(r.sides)]
		p[k] = r.crossing(before[0], side[0], layer)
	}
	return p
}

// crossing is where the outer faces of two legs at right angles meet.
func (r *ring) crossing(i, j, layer int) geom.Point {
	if r.legs[i].heading.AlongY() {
		i, j = j, i
	}
	return geom.Point{X: r.outerFace(j, layer), Y: r.outerFace(i, layer)}
}

// outerFace is the coordinate, on the axis across, of the outer face of leg i.
func (r *ring) outerFace(i, layer int) measure.Length {
	l := &r.legs[i]
	return l.across[layer].end(l.heading.Turn(r.outer).Rising())
}
