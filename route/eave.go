package route

import (
	"math"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// underRafter is the height of the underside of the rafters or top chords
// above the plate at p, or what closes a floor from above.
func (b *cavity) underRafter(p geom.Point) measure.Length { return b.house.UnderRafter(b.space, p) }

// underSheathing is the height of the underside of the sheathing between the
// rafters above the plate at p.
func (b *cavity) underSheathing(p geom.Point) measure.Length {
	return b.house.UnderSheathing(b.space, p)
}

// roof is the roof over an attic.
func (b *cavity) roof() *plan.Roof { return b.house.Roofs[b.space.Roof] }

// overhead is where what closes the space from above is described.
func (b *cavity) overhead() diag.Pos {
	if b.space.Roof < 0 {
		return b.space.Pos
	}
	return b.roof().Pos
}

// soffitHeight is the height of the soffit under point p of an eave: level
// with the underside of the rafter tails at the end of the overhang.
func (b *cavity) soffitHeight(w *plan.Wall, along measure.Length) measure.Length {
	out := w.Faces(w.Out).Step(w.PointAt(along), w.StudDepth/2+b.roof().Overhang)
	return b.base + b.underRafter(out)
}

// crossing is the angle of so many degrees, for an exact comparison.
func crossing(degrees int64) geom.CosSquared {
	c := math.Cos(float64(degrees) * math.Pi / 180)
	const den = 1 << 40
	return geom.CosSquared{Num: int64(math.Round(c * c * den)), Den: den}
}
