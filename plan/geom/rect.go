package geom

import "topplate/plan/measure"

// Canon returns r with Min and Max exchanged in each axis where they are the
// wrong way round: the rectangle with any two opposite corners is
// Rect{p, q}.Canon().
func (r Rect) Canon() Rect {
	return Rect{
		Min: Point{min(r.Min.X, r.Max.X), min(r.Min.Y, r.Max.Y)},
		Max: Point{max(r.Min.X, r.Max.X), max(r.Min.Y, r.Max.Y)},
	}
}

// Empty reports whether r has no points. A rectangle without width or height
// still has some.
func (r Rect) Empty() bool { return r.Min.X > r.Max.X || r.Min.Y > r.Max.Y }

// Width is the size of r along X, negative if r is empty in that axis.
func (r Rect) Width() measure.Length { return r.Max.X - r.Min.X }

// Height is the size of r along Y, negative if r is empty in that axis.
func (r Rect) Height() measure.Length { return r.Max.Y - r.Min.Y }

// Contains reports whether p lies in r or on its edge.
func (r Rect) Contains(p Point) bool {
	return r.Min.X <= p.X && p.X <= r.Max.X && r.Min.Y <= p.Y && p.Y <= r.Max.Y
}

// ContainsInside reports whether p lies in r and not on its edge.
func (r Rect) ContainsInside(p Point) bool {
	return r.Min.X < p.X && p.X < r.Max.X && r.Min.Y < p.Y && p.Y < r.Max.Y
}

// Intersect returns the points common to r and s. It is empty if there are
// none, and has no width or height if the two only touch.
func (r Rect) Intersect(s Rect) Rect {
	return Rect{
		Min: Point{max(r.Min.X, s.Min.X), max(r.Min.Y, s.Min.Y)},
		Max: Point{min(r.Max.X, s.Max.X), min(r.Max.Y, s.Max.Y)},
	}
}

// Outset returns r with each side moved outward by d, or inward if d is
// negative. An empty r stays as it is.
func (r Rect) Outset(d measure.Length) Rect {
	if r.Empty() {
		return r
	}
	return Rect{Min: Point{r.Min.X - d, r.Min.Y - d}, Max: Point{r.Max.X + d, r.Max.Y + d}}
}

// Inset returns r with each side moved inward by d. It is empty if the sides
// pass each other.
func (r Rect) Inset(d measure.Length) Rect { return r.Outset(-d) }

// DistSquared returns the exact square of the distance from p to the nearest
// point of r, zero if r contains p. r must not be empty.
func (r Rect) DistSquared(p Point) SquareLength {
	nearest := Point{min(max(p.X, r.Min.X), r.Max.X), min(max(p.Y, r.Min.Y), r.Max.Y)}
	return DistSquared(p, nearest)
}

// corners are the corners of r, counter-clockwise from Min.
func (r Rect) corners() [4]Point {
	return [4]Point{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}}
}
