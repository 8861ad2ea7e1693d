package tape

import (
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Cross returns the two points at distance ra from a and rb from b: the one on
// the left of the way from a to b, and the one on its right. They are the same
// where the arcs only touch.
//
// ok is false if the arcs don't meet, which is decided exactly, if a and b are
// one point, or if something is negative or beyond 1000 km. The points are
// rounded to the nanometre. (Two circles: x = (ra² - rb² + D²)/2D along the
// base, y = ±√(ra² - x²) off it.)
func Cross(a, b geom.Point, ra, rb measure.Length) (left, right geom.Point, ok bool) {
	for _, l := range []measure.Length{a.X, a.Y, b.X, b.Y, ra, rb} {
		if !inRange(l) {
			return left, right, false
		}
	}
	base := geom.DistSquared(a, b)
	if ra < 0 || rb < 0 || a == b ||
		base.Cmp(geom.Squared(ra+rb)) > 0 || base.Cmp(geom.Squared(ra-rb)) < 0 {
		return left, right, false
	}
	u, d := direction(a, b)
	// (ra - rb)(ra + rb) keeps the digits that the difference of the squares
	// would lose.
	x := (float64(ra-rb)*float64(ra+rb)/d + d) / 2
	y := math.Sqrt(max(0, (float64(ra)-x)*(float64(ra)+x)))
	at := func(y float64) geom.Point {
		return geom.Point{
			X: a.X + measure.Length(math.Round(float64(x*u.x)-float64(y*u.y))),
			Y: a.Y + measure.Length(math.Round(float64(x*u.y)+float64(y*u.x))),
		}
	}
	return at(y), at(-y), true
}
