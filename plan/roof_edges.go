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

// plateEdges are the outer faces of the frames, counter-clockwise.
func (r *ring) plateEdges(isGable func(leg int) bool) (edges []plateEdge) {
	corners := r.outline(frame)
	for k, side := range r.sides {
		at := corners[k]
		for i, leg := range side {
			to := corners[(k+1)%len(corners)]
			if i+1 < len(side) {
				to = r.between(leg, side[i+1])
			}
			edges = append(edges, plateEdge{at, to, isGable(leg)})
			at = to
		}
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
				if inside(a, b, p) {
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

// inside reports whether p is on the segment ab, off its ends.
func inside(a, b, p geom.Point) bool {
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

// between is the point of the outer face of the frames where two legs in line
// meet.
func (r *ring) between(i, j int) geom.Point {
	p, q := &r.legs[i], &r.legs[j]
	at := measure.Length(0)
	for _, c := range [2]measure.Length{p.taped.lo, p.taped.hi} {
		if c == q.taped.lo || c == q.taped.hi {
			at = c
		}
	}
	if p.heading.AlongY() {
		return geom.Point{X: r.outerFace(i, frame), Y: at}
	}
	return geom.Point{X: at, Y: r.outerFace(i, frame)}
}
