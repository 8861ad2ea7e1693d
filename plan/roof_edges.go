package plan

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A plateEdge is the outer face of a leg's frame, as far as it is on the
// outline.
type plateEdge struct {
	a, b  geom.Point
	gable bool
}

// plateEdges are the outer faces of the frames, counter-clockwise. A step between
// frames that are not as deep is of the leg before it.
func (r *ring) plateEdges(isGable func(leg int) bool) (edges []plateEdge) {
	n := len(r.order)
	for k, leg := range r.order {
		before := r.order[(k+n-1)%n]
		joint := r.joint(k, frame)
		switch len(joint) {
		case 0:
			joint = []geom.Point{r.end(leg, before, frame)}
		case 2:
			edges = append(edges, plateEdge{joint[0], joint[1], isGable(before)})
		}
		at := joint[len(joint)-1]
		if next := r.joint((k+1)%n, frame); len(next) > 0 {
			edges = append(edges, plateEdge{at, next[0], isGable(leg)})
			continue
		}
		edges = append(edges, plateEdge{at, r.end(leg, r.order[(k+1)%n], frame), isGable(leg)})
	}
	return edges
}

// roofEdges is the outline of a roof over the ring, with a vertex wherever a
// gable begins or ends, and which of its edges are gables. Edges that are not
// on the ring are gables, flush: the roof is cut off there.
func (r *ring) roofEdges(roof geom.Polygon, isGable func(leg int) bool) (outline geom.Polygon, gable, flush []bool) {
	plates := r.plateEdges(isGable)
	for k, a := range roof {
		b := roof[(k+1)%len(roof)]
		cuts := []geom.Point{a}
		for _, e := range plates {
			for _, p := range [2]geom.Point{e.a, e.b} {
				if onSegment(a, b, p) {
					cuts = append(cuts, p)
				}
			}
		}
		slices.SortFunc(cuts, func(p, q geom.Point) int { return cmp.Compare(geom.Dist(a, p), geom.Dist(a, q)) })
		cuts = append(slices.Compact(cuts), b)
		for i, p := range cuts[:len(cuts)-1] {
			g, f := edgeOn(plates, p, cuts[i+1])
			if n := len(gable); i == 0 || g != gable[n-1] || f != flush[n-1] {
				outline, gable, flush = append(outline, p), append(gable, g), append(flush, f)
			}
		}
	}
	return outline, gable, flush
}

// onSegment reports whether p is on the segment ab, off its ends.
func onSegment(a, b, p geom.Point) bool {
	return p != a && p != b && geom.SegmentsTouch(a, b, p, p)
}

// edgeOn tells what a stretch from p to q of the outline of a roof is: on a
// plate under a gable, or cut off from all plates.
func edgeOn(plates []plateEdge, p, q geom.Point) (gable, flush bool) {
	for _, e := range plates {
		if geom.SegmentsTouch(e.a, e.b, p, p) && geom.SegmentsTouch(e.a, e.b, q, q) && headingOf(e.a, e.b) == headingOf(p, q) {
			return e.gable, false
		}
	}
	return true, true
}

// end is the point of the outer face of a layer of leg i where leg j goes on in
// line with it.
func (r *ring) end(i, j, layer int) geom.Point {
	p, q := &r.legs[i], &r.legs[j]
	at := measure.Length(0)
	for _, c := range [2]measure.Length{p.taped.lo, p.taped.hi} {
		if c == q.taped.lo || c == q.taped.hi {
			at = c
		}
	}
	if p.heading.AlongY() {
		return geom.Point{X: r.outerFace(i, layer), Y: at}
	}
	return geom.Point{X: at, Y: r.outerFace(i, layer)}
}
