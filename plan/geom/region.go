package geom

import (
	"slices"

	"topplate/plan/measure"
)

// A Region is the plane cut into solid and free parts: walls are solid, and
// what they enclose are rooms. It is never changed once it is made.
//
// The edges of the solids are continued to lines, and the lines cut the bounds
// into cells that are wholly solid or wholly free. Free cells that share an
// edge are joined; cells that only meet at a corner are not, since walls that
// touch at a corner close a room. A part that reaches the edge of the bounds
// is outside.
type Region struct {
	xs, ys  []measure.Length // the lines, ascending
	part    []int32          // by cell, row by row from the south: its part, or solid
	outside []bool           // by part
}

// solid is the part of the cells that are covered.
const solid = -1

// NewRegion cuts bounds by the solids. What sticks out of bounds is left out;
// solids without width or height are nothing, and without bounds of some width
// and height nothing is free. For n solids it takes time and
// memory O(n²): about a millisecond and a megabyte for 100 walls.
func NewRegion(solids []Rect, bounds Rect) *Region {
	if bounds.Width() <= 0 || bounds.Height() <= 0 {
		return &Region{}
	}
	r := &Region{xs: []measure.Length{bounds.Min.X, bounds.Max.X}, ys: []measure.Length{bounds.Min.Y, bounds.Max.Y}}
	inside := make([]Rect, 0, len(solids))
	for _, s := range solids {
		s = s.Intersect(bounds)
		if s.Width() <= 0 || s.Height() <= 0 {
			continue
		}
		inside = append(inside, s)
		r.xs = append(r.xs, s.Min.X, s.Max.X)
		r.ys = append(r.ys, s.Min.Y, s.Max.Y)
	}
	r.xs, r.ys = lines(r.xs), lines(r.ys)
	r.cover(inside)
	r.join()
	return r
}

// lines sorts the coordinates and drops what is double.
func lines(coordinates []measure.Length) []measure.Length {
	slices.Sort(coordinates)
	return slices.Compact(coordinates)
}

// columns and rows are the numbers of cells each way.
func (r *Region) columns() int { return len(r.xs) - 1 }
func (r *Region) rows() int    { return len(r.ys) - 1 }

// cover marks the cells under the solids. Each solid adds one at its corner
// south-west and takes it away past its other corners, so that running sums
// count the solids over a cell without visiting its cells.
func (r *Region) cover(solids []Rect) {
	columns := r.columns() + 1
	change := make([]int32, columns*(r.rows()+1))
	for _, s := range solids {
		x0, x1 := index(r.xs, s.Min.X), index(r.xs, s.Max.X)
		y0, y1 := index(r.ys, s.Min.Y), index(r.ys, s.Max.Y)
		change[y0*columns+x0]++
		change[y0*columns+x1]--
		change[y1*columns+x0]--
		change[y1*columns+x1]++
	}
	r.part = make([]int32, r.columns()*r.rows())
	above := make([]int32, columns) // the sums of the row before
	for y := range r.rows() {
		sum := int32(0)
		for x := range r.columns() {
			sum += change[y*columns+x]
			above[x] += sum
			if above[x] > 0 {
				r.part[y*r.columns()+x] = solid
			}
		}
	}
}

// index is the place of a line that is known to be there.
func index(sorted []measure.Length, line measure.Length) int {
	i, _ := slices.BinarySearch(sorted, line)
	return i
}

// join numbers the parts in the order of their first cell.
func (r *Region) join() {
	const unseen = -2
	for i, p := range r.part {
		if p != solid {
			r.part[i] = unseen
		}
	}
	var stack []int
	for first, p := range r.part {
		if p != unseen {
			continue
		}
		id := int32(len(r.outside))
		r.outside = append(r.outside, false)
		r.part[first] = id
		stack = append(stack[:0], first)
		for len(stack) > 0 {
			cell := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for _, d := range headings {
				neighbour, ok := r.neighbour(cell, d)
				if !ok {
					r.outside[id] = true
				} else if r.part[neighbour] == unseen {
					r.part[neighbour] = id
					stack = append(stack, neighbour)
				}
			}
		}
	}
}

// neighbour is the cell next to cell on the side d, if it is within bounds.
func (r *Region) neighbour(cell int, d heading) (int, bool) {
	x, y := cell%r.columns()+d.dx(), cell/r.columns()+d.dy()
	if x < 0 || x >= r.columns() || y < 0 || y >= r.rows() {
		return 0, false
	}
	return y*r.columns() + x, true
}

// partAt returns the part in which p lies, or solid for a point in or on a
// solid, on the edge of the bounds or beyond it.
func (r *Region) partAt(p Point) int32 {
	if len(r.part) == 0 || p.X <= r.xs[0] || p.X >= r.xs[r.columns()] || p.Y <= r.ys[0] || p.Y >= r.ys[r.rows()] {
		return solid
	}
	x, onX := slices.BinarySearch(r.xs, p.X)
	y, onY := slices.BinarySearch(r.ys, p.Y)
	part := int32(solid)
	// A point on a line touches the cells on both sides. If they are free they
	// are all of one part.
	for row := y - 1; row == y-1 || onY && row == y; row++ {
		for column := x - 1; column == x-1 || onX && column == x; column++ {
			if part = r.part[row*r.columns()+column]; part == solid {
				return solid
			}
		}
	}
	return part
}

// Free reports whether p is within bounds and in no solid nor on its face.
func (r *Region) Free(p Point) bool { return r.partAt(p) != solid }

// Reaches reports whether both points are free and a way leads from one to the
// other that crosses no solid and stays within bounds.
func (r *Region) Reaches(at, other Point) bool {
	part := r.partAt(at)
	return part != solid && part == r.partAt(other)
}
