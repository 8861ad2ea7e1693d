package roof

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Contour returns the outlines of the part of the roof within the outline
// where Height is at least h. Each is counter-clockwise and is followed by its
// holes, if any, which are clockwise. A part that has no width, such as a
// ridge, is left out.
func (r *Roof) Contour(h measure.Length) []geom.Polygon {
	if h > r.RidgeHeight() {
		return nil
	}
	return r.deeper(r.spec.Pitch.run(max(h, 0)))
}

// ClearContour returns, in the same form, the outlines of the part where
// UnderRafter is at least h.
func (r *Roof) ClearContour(h measure.Length) []geom.Polygon {
	h -= r.low
	if h > r.RidgeHeight() {
		return nil
	}
	return r.deeper(r.spec.Pitch.run(max(h, -r.RidgeHeight())) + r.seat)
}

// deeper returns the outlines of the part within the outline where the depth
// is at least d.
func (r *Roof) deeper(d measure.Length) []geom.Polygon {
	d = max(d, 0)
	parts := make([]geom.Rect, len(r.blocks))
	for i := range r.blocks {
		b := &r.blocks[i]
		parts[i] = b.area.Intersect(b.feet.Inset(d))
	}
	return union(parts)
}

// union returns the outlines of what the rectangles cover, in the order of
// the rectangles, as Contour does. Rectangles less than 2 nm wide are seen only
// where they touch others.
func union(parts []geom.Rect) []geom.Polygon {
	region := geom.NewRegion(uncovered(parts))
	var outlines []geom.Polygon
	var seen []geom.Point
	for _, part := range parts {
		at := geom.Point{X: part.Min.X + part.Width()/2, Y: part.Min.Y + part.Height()/2}
		if !part.ContainsInside(at) || reached(region, at, seen) {
			continue
		}
		seen = append(seen, at)
		outer, holes, ok := region.Outline(at)
		if !ok {
			continue
		}
		outlines = append(outlines, outer)
		for _, hole := range holes {
			outlines = append(outlines, hole.Reverse())
		}
	}
	return outlines
}

func reached(region *geom.Region, at geom.Point, seen []geom.Point) bool {
	for _, p := range seen {
		if region.Reaches(at, p) {
			return true
		}
	}
	return false
}

// uncovered returns rectangles that cover what the parts do not, row by row,
// and bounds a little wider than the parts, so that what is covered is closed
// in on all sides.
func uncovered(parts []geom.Rect) (gaps []geom.Rect, bounds geom.Rect) {
	var xs, ys []measure.Length
	for _, part := range parts {
		if part.Width() > 0 && part.Height() > 0 {
			xs = append(xs, part.Min.X, part.Max.X)
			ys = append(ys, part.Min.Y, part.Max.Y)
		}
	}
	xs, ys = margins(lines(xs)), margins(lines(ys))
	if len(xs) == 0 {
		return nil, geom.Rect{}
	}
	for j := range len(ys) - 1 {
		row := geom.Rect{Min: geom.Point{X: xs[0], Y: ys[j]}, Max: geom.Point{X: xs[0], Y: ys[j+1]}}
		for i := range len(xs) - 1 {
			row.Max.X = xs[i]
			if covered(parts, geom.Rect{Min: geom.Point{X: xs[i], Y: ys[j]}, Max: geom.Point{X: xs[i+1], Y: ys[j+1]}}) {
				gaps = append(gaps, row)
				row.Min.X = xs[i+1]
			}
		}
		row.Max.X = xs[len(xs)-1]
		gaps = append(gaps, row)
	}
	return gaps, geom.Rect{
		Min: geom.Point{X: xs[0], Y: ys[0]},
		Max: geom.Point{X: xs[len(xs)-1], Y: ys[len(ys)-1]},
	}
}

// margins adds a line before the first and after the last.
func margins(sorted []measure.Length) []measure.Length {
	if len(sorted) == 0 {
		return nil
	}
	first, last := sorted[0]-1, sorted[len(sorted)-1]+1
	return append(append([]measure.Length{first}, sorted...), last)
}

func covered(parts []geom.Rect, cell geom.Rect) bool {
	for _, part := range parts {
		if part.Contains(cell.Min) && part.Contains(cell.Max) {
			return true
		}
	}
	return false
}
