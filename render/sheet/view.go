package sheet

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A View lays a plane of the house on the sheet: the house point From lies at
// To, east is to the right and north is up. For an elevation, X is the
// distance along the wall and Y the height.
type View struct {
	Scale Scale
	From  geom.Point
	To    Point
}

// FitView returns the view of the house rectangle at the largest scale of the
// system that fits in the box, with both middles together. If no scale is
// small enough, ok is false and the smallest is used. real must not be empty.
func FitView(sys measure.System, real geom.Rect, into Box) (v View, ok bool) {
	s, ok := FitScale(sys, real.Width(), real.Height(), into.Width(), into.Height())
	middle := geom.Point{X: real.Min.X + real.Width()/2, Y: real.Min.Y + real.Height()/2}
	return View{Scale: s, From: middle, To: into.Centre()}, ok
}

// Point returns where the house point p lies on the sheet, rounded to the
// micrometre. Points with the same X or Y stay in line.
func (v View) Point(p geom.Point) Point {
	d := p.Sub(v.From)
	return Point{v.To.X + v.Scale.Paper(d.X), v.To.Y - v.Scale.Paper(d.Y)}
}

// Points returns where the house points lie, in the same order.
func (v View) Points(points []geom.Point) []Point {
	out := make([]Point, 0, len(points))
	for _, p := range points {
		out = append(out, v.Point(p))
	}
	return out
}

// Box returns where the house rectangle lies.
func (v View) Box(r geom.Rect) Box {
	a, b := v.Point(r.Min), v.Point(r.Max)
	return Box{Point{a.X, b.Y}, Point{b.X, a.Y}}
}

// Length returns how long l is on the sheet.
func (v View) Length(l measure.Length) Paper { return v.Scale.Paper(l) }
