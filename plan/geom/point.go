package geom

import "topplate/plan/measure"

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// DistSquared returns the exact square of the distance from a to b.
func DistSquared(a, b Point) SquareLength {
	d := b.Sub(a)
	return Squared(d.X).plus(Squared(d.Y))
}

// Dist returns the distance from a to b, rounded to the nearest nanometre. It
// is exact along an axis, and elsewhere there is never a tie to break.
func Dist(a, b Point) measure.Length {
	d := b.Sub(a)
	switch {
	case d.X == 0:
		return max(d.Y, -d.Y)
	case d.Y == 0:
		return max(d.X, -d.X)
	}
	return DistSquared(a, b).root()
}
