package render

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// largestRect is the rectangle of the largest area inside a rectilinear
// outline whose sides lie on lines through its corners: the part of a room
// that its name belongs in. For n corners it takes O(n^5).
func largestRect(p geom.Polygon) geom.Rect {
	xs, ys := cornerLines(p)
	best, area := p.Bounds(), -1.0
	for i, x0 := range xs {
		for _, x1 := range xs[i+1:] {
			for j, y0 := range ys {
				for _, y1 := range ys[j+1:] {
					r := geom.Rect{Min: geom.Point{X: x0, Y: y0}, Max: geom.Point{X: x1, Y: y1}}
					if a := r.Width().Metres() * r.Height().Metres(); a > area && inside(p, r) {
						best, area = r, a
					}
				}
			}
		}
	}
	return best
}

// cornerLines are the coordinates of the corners on each axis. An outline of
// very many corners is taken by its bounds.
func cornerLines(p geom.Polygon) (xs, ys []measure.Length) {
	const most = 24
	if len(p) > most {
		b := p.Bounds()
		return []measure.Length{b.Min.X, b.Max.X}, []measure.Length{b.Min.Y, b.Max.Y}
	}
	for _, q := range p {
		xs, ys = append(xs, q.X), append(ys, q.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	return slices.Compact(xs), slices.Compact(ys)
}

// inside reports whether no side of the outline runs through r and its middle
// is inside.
func inside(p geom.Polygon, r geom.Rect) bool {
	for i, a := range p {
		if geom.SegmentEntersRect(a, p[(i+1)%len(p)], r) {
			return false
		}
	}
	return p.Contains(geom.Point{X: r.Min.X + r.Width()/2, Y: r.Min.Y + r.Height()/2})
}
