package sheet

// A Paper is a length on paper, in whole micrometres.
type Paper int64

// Units of length on paper. The inch is exactly 25.4 mm.
const (
	Micrometre Paper = 1
	MM               = 1000 * Micrometre
	Inch             = 25_400 * Micrometre
)

// MaxCoordinate bounds the magnitude of a coordinate that can be drawn: ten
// metres, several times the largest paper.
const MaxCoordinate = 10_000 * MM

// A Point is a place on the sheet.
type Point struct{ X, Y Paper }

// Pt is short for Point{x, y}.
func Pt(x, y Paper) Point { return Point{x, y} }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// onPaper reports whether p can be drawn.
func (p Point) onPaper() bool {
	return max(p.X, -p.X) <= MaxCoordinate && max(p.Y, -p.Y) <= MaxCoordinate
}

// A Box is the closed rectangle from Min, its top left corner, to Max. It is
// empty when Min exceeds Max in either axis.
type Box struct{ Min, Max Point }

// Bx returns the box with its top left corner at x, y and the given size.
func Bx(x, y, width, height Paper) Box {
	return Box{Point{x, y}, Point{x + width, y + height}}
}

// BoxAround returns the box of the given size with its middle at c, moved up
// and left by half a micrometre where a size is odd.
func BoxAround(c Point, width, height Paper) Box {
	return Bx(c.X-(width+1)/2, c.Y-(height+1)/2, width, height)
}

// Bounds returns the smallest box that has all the points in it, and the zero
// Box if there are none.
func Bounds(points ...Point) Box {
	if len(points) == 0 {
		return Box{}
	}
	b := Box{points[0], points[0]}
	for _, p := range points[1:] {
		b = b.Union(Box{p, p})
	}
	return b
}

// Width is the size of b along X.
func (b Box) Width() Paper { return b.Max.X - b.Min.X }

// Height is the size of b along Y.
func (b Box) Height() Paper { return b.Max.Y - b.Min.Y }

// Centre is the middle of b, rounded towards its top left.
func (b Box) Centre() Point {
	return Point{b.Min.X + b.Width()/2, b.Min.Y + b.Height()/2}
}

// Overlaps reports whether b and c share more than an edge or a corner.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// Contains reports whether c lies wholly in b; its edge may touch.
func (b Box) Contains(c Box) bool {
	return b.Min.X <= c.Min.X && c.Max.X <= b.Max.X && b.Min.Y <= c.Min.Y && c.Max.Y <= b.Max.Y
}

// Has reports whether p lies in b or on its edge.
func (b Box) Has(p Point) bool { return b.Contains(Box{p, p}) }

// Inset returns b with each side moved inward by d, or outward if d is
// negative.
func (b Box) Inset(d Paper) Box {
	return Box{Point{b.Min.X + d, b.Min.Y + d}, Point{b.Max.X - d, b.Max.Y - d}}
}

// Union returns the smallest box that has b and c in it.
func (b Box) Union(c Box) Box {
	return Box{
		Point{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)},
		Point{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)},
	}
}

// Corners returns the corners of b clockwise as seen, from the top left.
func (b Box) Corners() []Point {
	return []Point{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}}
}

// Struck reports whether the segment from p to q has a point inside b, off its
// edge. It is exact for coordinates up to MaxCoordinate.
func (b Box) Struck(p, q Point) bool {
	if b.Width() <= 0 || b.Height() <= 0 || max(p.X, q.X) <= b.Min.X || min(p.X, q.X) >= b.Max.X ||
		max(p.Y, q.Y) <= b.Min.Y || min(p.Y, q.Y) >= b.Max.Y {
		return false
	}
	if p.X == q.X || p.Y == q.Y {
		return true
	}
	left, right := false, false
	for _, c := range [...]Point{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}} {
		side := Turn(p, q, c)
		left, right = left || side < 0, right || side > 0
	}
	return left && right
}

// Turn returns twice the signed area of the triangle pqr: positive if r lies
// to the right of the way from p to q as seen on the sheet, zero if the three
// are in line. It is exact for coordinates up to MaxCoordinate.
func Turn(p, q, r Point) int64 {
	return int64(q.X-p.X)*int64(r.Y-p.Y) - int64(q.Y-p.Y)*int64(r.X-p.X)
}

// divRound is n/d rounded to the nearest whole number, halves away from zero.
// d is positive, and n + d/2 fits an int64.
func divRound(n, d int64) int64 {
	if n < 0 {
		return -((-n + d/2) / d)
	}
	return (n + d/2) / d
}
