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
	return h.Roof.Surface.UnderRafter(p)
}

// underSheathing is the height of the underside of the sheathing between the
// rafters above the plate at p.
func underSheathing(h *plan.House, p geom.Point) measure.Length {
	return h.Roof.Surface.UnderSheathing(p)
}

// gableOver reports whether wall w stands under a gable, so that no rafters
// come down on it: just inside its middle the roof rises along the wall.
func gableOver(h *plan.House, w *plan.Wall) bool {
	slope, ok := h.Roof.Surface.Slope(w.PointAt(w.Length() / 2))
	return ok && (slope.Up.Y != 0) == w.AlongY()
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
