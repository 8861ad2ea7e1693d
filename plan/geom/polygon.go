package geom

import (
	"math/big"

	"topplate/plan/measure"
)

// next is the index of the vertex after i.
func (p Polygon) next(i int) int {
	if i+1 == len(p) {
		return 0
	}
	return i + 1
}

// DoubleArea returns twice the signed area in square nanometres by the
// shoelace formula: positive for a counter-clockwise outline, zero for fewer
// than three vertices.
func (p Polygon) DoubleArea() *big.Int {
	sum := new(big.Int)
	for i, a := range p {
		sum.Add(sum, bigCross(a, p[p.next(i)]))
	}
	return sum
}

// SquareMetres returns the area in square metres, never negative, correctly
// rounded to a float64.
func (p Polygon) SquareMetres() float64 {
	double := p.DoubleArea()
	perSquareMetre := new(big.Int).Exp(big.NewInt(int64(measure.Metre)), big.NewInt(2), nil)
	area, _ := new(big.Rat).SetFrac(double.Abs(double), perSquareMetre.Lsh(perSquareMetre, 1)).Float64()
	return area
}

// IsCCW reports whether p runs counter-clockwise, its area on the left.
func (p Polygon) IsCCW() bool { return p.DoubleArea().Sign() > 0 }

// Reverse returns p run the other way round, from the same first vertex.
func (p Polygon) Reverse() Polygon {
	reversed := make(Polygon, len(p))
	for i, a := range p {
		reversed[(len(p)-i)%len(p)] = a
	}
	return reversed
}

// Bounds returns the smallest rectangle that contains p. It is empty for a
// polygon without vertices.
func (p Polygon) Bounds() Rect {
	if len(p) == 0 {
		return Rect{Min: Point{1, 1}}
	}
	bounds := Rect{p[0], p[0]}
	for _, a := range p[1:] {
		bounds.Min = Point{min(bounds.Min.X, a.X), min(bounds.Min.Y, a.Y)}
		bounds.Max = Point{max(bounds.Max.X, a.X), max(bounds.Max.Y, a.Y)}
	}
	return bounds
}

// Rectilinear reports whether p has at least four vertices and every side has
// a length and runs along an axis.
func (p Polygon) Rectilinear() bool {
	for i, a := range p {
		side := p[p.next(i)].Sub(a)
		if (side.X == 0) == (side.Y == 0) {
			return false
		}
	}
	return len(p) >= 4
}

// IsSimple reports whether p has at least three vertices, no side without
// length, no side that doubles back on the one before, and no two sides that
// touch except at the vertex they share. Either direction will do. It takes
// time O(n²).
func (p Polygon) IsSimple() bool {
	for i, a := range p {
		b := p[p.next(i)]
		c := p[p.next(p.next(i))]
		if a == b || cross(b.Sub(a), c.Sub(b)) == 0 && dot(b.Sub(a), c.Sub(b)) < 0 {
			return false
		}
		// The side after next is the first that is no neighbour; the last side
		// is a neighbour of the first.
		for j := i + 2; j < len(p); j++ {
			if p.next(j) != i && SegmentsTouch(a, b, p[j], p[p.next(j)]) {
				return false
			}
		}
	}
	return len(p) >= 3
}

// Contains reports whether q lies in p or on its boundary. p must be simple;
// either direction will do.
func (p Polygon) Contains(q Point) bool {
	inside := false
	for i, a := range p {
		b := p[p.next(i)]
		side := cross(b.Sub(a), q.Sub(a))
		if side == 0 && (Rect{a, b}).Canon().Contains(q) {
			return true
		}
		// A ray to the east crosses the sides that have q strictly on their
		// west; counting one end of each side counts a vertex once.
		if (a.Y > q.Y) != (b.Y > q.Y) && (b.Y > a.Y) == (side > 0) {
			inside = !inside
		}
	}
	return inside
}

// Depth returns how far q lies inside p in the Chebyshev metric: the largest d
// for which the square of side 2d about q, its sides along the axes, stays
// within p. It is zero on the boundary, and ok is false outside. p must be
// simple and rectilinear. Over such an outline the height of a hip roof of one
// pitch is the pitch times the depth.
func (p Polygon) Depth(q Point) (depth measure.Length, ok bool) {
	if !p.Contains(q) {
		return 0, false
	}
	for i, a := range p {
		side := Rect{a, p[p.next(i)]}.Canon()
		dx := max(side.Min.X-q.X, q.X-side.Max.X)
		dy := max(side.Min.Y-q.Y, q.Y-side.Max.Y)
		if d := max(dx, dy); i == 0 || d < depth {
			depth = d
		}
	}
	return depth, true
}
