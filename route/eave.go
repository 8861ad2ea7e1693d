package route

import (
	"math"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
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

// soffitHeight is the height of the soffit under point p of an eave: level
// with the underside of the rafter tails at the end of the overhang.
func (b *builder) soffitHeight(w *plan.Wall, along measure.Length) measure.Length {
	out := w.PointAt(along)
	d := w.StudDepth/2 + b.house.Roof.Overhang
	switch w.Faces(w.Out) {
	case plan.East:
		out.X += d
	case plan.West:
		out.X -= d
	case plan.North:
		out.Y += d
	default:
		out.Y -= d
	}
	return b.base + underRafter(b.house, out)
}

// crossing is the angle of so many degrees, for an exact comparison.
func crossing(degrees int64) geom.CosSquared {
	c := math.Cos(float64(degrees) * math.Pi / 180)
	const den = 1 << 40
	return geom.CosSquared{Num: int64(math.Round(c * c * den)), Den: den}
}
