package plan

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A ring is a closed run of legs with the building on its inside, in the order
// counter-clockwise.
type ring struct {
	legs  []leg
	outer Side  // the side of every leg that looks out
	order []int // indices of the legs, counter-clockwise from the start of a straight side
}

// newRing puts the legs of a closed run in order. points are the corners of the
// run, without the first repeated.
func newRing(legs []leg, points geom.Polygon) ring {
	r := ring{legs: legs, outer: Right, order: make([]int, len(legs))}
	for i := range r.order {
		r.order[i] = i
	}
	if !points.IsCCW() {
		r.outer = Left
		slices.Reverse(r.order)
	}
	// A run may begin in the middle of a side.
	n := len(legs)
	first := 0
	for first < n-1 && legs[r.order[first]].heading == legs[r.order[(first+n-1)%n]].heading {
		first++
	}
	r.order = append(slices.Clone(r.order[first:]), r.order[:first]...)
	return r
}

// outline is the outer face of a layer of the legs, from where the first leg of
// the order begins.
func (r *ring) outline(layer int) geom.Polygon {
	var p geom.Polygon
	for k := range r.order {
		p = append(p, r.joint(k, layer)...)
	}
	return p
}

// joint is where the outer faces of the leg k of the order and of the one before
// it meet: a corner, both ends of a step where legs in line are not as thick, or
// nothing where they go on in line.
func (r *ring) joint(k, layer int) []geom.Point {
	i, j := r.order[(k+len(r.order)-1)%len(r.order)], r.order[k]
	if r.legs[i].heading != r.legs[j].heading {
		return []geom.Point{r.crossing(i, j, layer)}
	}
	if r.outerFace(i, layer) == r.outerFace(j, layer) {
		return nil
	}
	return []geom.Point{r.end(i, j, layer), r.end(j, i, layer)}
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
