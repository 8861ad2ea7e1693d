package route

import (
	"math"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route/network"
)

// underRafter is the height of the underside of the rafters or top chords
// above the plate at p.
func underRafter(h *plan.House, p geom.Point) measure.Length {
	return h.Roof.Surface.UnderRafter(h.Roof.Framing, p)
}

// underSheathing is the height of the underside of the sheathing between the
// rafters above the plate at p.
func underSheathing(h *plan.House, p geom.Point) measure.Length {
	return h.Roof.Surface.UnderSheathing(h.Roof.Framing, p)
}

// gableOver reports whether wall w stands under a gable, so that no rafters
// come down on it.
func gableOver(h *plan.House, w *plan.Wall) bool {
	s := h.Roof.Surface
	for i := range s.Edges() {
		e := s.Edge(i)
		if !e.Gable || (e.A.X == e.B.X) != w.AlongY() {
			continue
		}
		on := geom.Rect{Min: e.A, Max: e.B}.Canon()
		if longOverlap(w, on) {
			return true
		}
	}
	return false
}

// longOverlap reports whether the edge lies along the wall, not only across
// its end.
func longOverlap(w *plan.Wall, edge geom.Rect) bool {
	both := w.Frame.Intersect(edge)
	return !both.Empty() && max(both.Width(), both.Height()) > w.StudDepth
}

// soffitHeight is the height of the soffit under point p of an eave: level
// with the underside of the rafter tails at the end of the overhang.
func (b *builder) soffitHeight(w *plan.Wall, along measure.Length) measure.Length {
	out := w.PointAt(along)
	d := w.StudDepth/2 + b.house.Roof.Overhang
	switch b.outward(w) {
	case network.East:
		out.X += d
	case network.West:
		out.X -= d
	case network.North:
		out.Y += d
	default:
		out.Y -= d
	}
	return b.base + underRafter(b.house, out)
}

// outward is the heading from wall w away from the house.
func (b *builder) outward(w *plan.Wall) network.Heading {
	mid := w.PointAt(w.Length() / 2)
	step := measure.Length(measure.Foot)
	if w.AlongY() {
		if b.house.PlateLine.Contains(geom.Point{X: mid.X + step, Y: mid.Y}) {
			return network.West
		}
		return network.East
	}
	if b.house.PlateLine.Contains(geom.Point{X: mid.X, Y: mid.Y + step}) {
		return network.South
	}
	return network.North
}

// crossing is the angle of so many degrees, for an exact comparison.
func crossing(degrees int64) geom.CosSquared {
	c := math.Cos(float64(degrees) * math.Pi / 180)
	const den = 1 << 40
	return geom.CosSquared{Num: int64(math.Round(c * c * den)), Den: den}
}
