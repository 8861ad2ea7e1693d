package roof

import (
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A mark says what runs along one side of a cell.
type mark uint8

const (
	none mark = iota
	eave
	gable
)

// A grid is the plane cut by the lines of all edges of the outline into cells
// that are wholly inside or wholly outside it.
type grid struct {
	xs, ys     []measure.Length // the lines, ascending
	cols, rows int
	inside     []bool // by cell, row by row from the south
	vertical   []mark // by line from the west, then row
	horizontal []mark // by line from the south, then column
}

func newGrid(outline geom.Polygon, gables []bool) *grid {
	g := &grid{}
	for _, p := range outline {
		g.xs = append(g.xs, p.X)
		g.ys = append(g.ys, p.Y)
	}
	g.xs, g.ys = lines(g.xs), lines(g.ys)
	g.cols, g.rows = len(g.xs)-1, len(g.ys)-1
	g.vertical = make([]mark, len(g.xs)*g.rows)
	g.horizontal = make([]mark, len(g.ys)*g.cols)
	for i := range outline {
		m := eave
		if gables[i] {
			m = gable
		}
		g.draw(edge(outline, i), m)
	}
	g.fill()
	return g
}

// edge is the edge i of the outline as a rectangle without width or without
// height.
func edge(outline geom.Polygon, i int) geom.Rect {
	return geom.Rect{Min: outline[i], Max: outline[(i+1)%len(outline)]}.Canon()
}

// lines sorts the coordinates and drops what is double.
func lines(coordinates []measure.Length) []measure.Length {
	slices.Sort(coordinates)
	return slices.Compact(coordinates)
}

// index is the place of a line that is known to be there.
func index(sorted []measure.Length, line measure.Length) int {
	i, _ := slices.BinarySearch(sorted, line)
	return i
}

// draw marks the sides of cells along an edge.
func (g *grid) draw(e geom.Rect, m mark) {
	west, east := index(g.xs, e.Min.X), index(g.xs, e.Max.X)
	south, north := index(g.ys, e.Min.Y), index(g.ys, e.Max.Y)
	for row := south; row < north; row++ {
		g.vertical[west*g.rows+row] = m
	}
	for col := west; col < east; col++ {
		g.horizontal[south*g.cols+col] = m
	}
}

// fill finds the cells inside: along a row, each edge that is crossed leads
// in or out.
func (g *grid) fill() {
	g.inside = make([]bool, g.cols*g.rows)
	for row := range g.rows {
		in := false
		for col := range g.cols {
			in = in != (g.vertical[col*g.rows+row] != none)
			g.inside[row*g.cols+col] = in
		}
	}
}

// column returns the marks along line i from line j to line k.
func (g *grid) column(i, j, k int) []mark { return g.vertical[i*g.rows+j : i*g.rows+k] }

// row returns the marks along line j from line a to line b.
func (g *grid) row(j, a, b int) []mark { return g.horizontal[j*g.cols+a : j*g.cols+b] }

// clear reports whether a row of cells is inside from line a to line b.
func (g *grid) clear(row, a, b int) bool {
	return row >= 0 && row < g.rows && !slices.Contains(g.inside[row*g.cols+a:row*g.cols+b], false)
}

// gabled reports whether there is a gable all along.
func gabled(marks []mark) bool {
	return !slices.ContainsFunc(marks, func(m mark) bool { return m != gable })
}
