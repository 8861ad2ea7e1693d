package label

import "topplate/render/sheet"

// A grid finds what is near a box. It divides the frame into square cells, each
// with the numbers of the things that touch it; what lies outside belongs to
// the nearest cell.
type grid struct {
	origin sheet.Point
	cell   sheet.Paper
	nx, ny int
	cells  [][]int32
}

// cellsAcross is how many cells the longer side of the frame has: on a sheet
// of A3 each is about as wide as a short text.
const cellsAcross = 64

func newGrid(frame sheet.Box) *grid {
	g := &grid{origin: frame.Min, cell: max(frame.Width(), frame.Height())/cellsAcross + 1}
	g.nx, g.ny = int(frame.Width()/g.cell)+1, int(frame.Height()/g.cell)+1
	g.cells = make([][]int32, g.nx*g.ny)
	return g
}

func (g *grid) column(x sheet.Paper) int {
	return max(0, min(g.nx-1, int((x-g.origin.X)/g.cell)))
}

func (g *grid) row(y sheet.Paper) int {
	return max(0, min(g.ny-1, int((y-g.origin.Y)/g.cell)))
}

// each calls visit with the cells that b touches.
func (g *grid) each(b sheet.Box, visit func(cell int)) {
	x0, x1 := g.column(b.Min.X), g.column(b.Max.X)
	for y := g.row(b.Min.Y); y <= g.row(b.Max.Y); y++ {
		for x := x0; x <= x1; x++ {
			visit(y*g.nx + x)
		}
	}
}

func (g *grid) add(id int32, b sheet.Box) {
	g.each(b, func(c int) { g.cells[c] = append(g.cells[c], id) })
}

// addLine adds a segment to the cells that it passes, not to all that its
// bounds touch: a long oblique line would be in most of them.
func (g *grid) addLine(id int32, a, b sheet.Point) {
	g.each(sheet.Bounds(a, b), func(c int) {
		x, y := c%g.nx, c/g.nx
		if x == 0 || y == 0 || x == g.nx-1 || y == g.ny-1 || g.box(x, y).Struck(a, b) {
			g.cells[c] = append(g.cells[c], id)
		}
	})
}

// box is the cell in column x and row y, with a margin so that a line on its
// edge strikes it.
func (g *grid) box(x, y int) sheet.Box {
	at := g.origin.Add(sheet.Pt(sheet.Paper(x)*g.cell, sheet.Paper(y)*g.cell))
	return sheet.Bx(at.X, at.Y, g.cell, g.cell).Inset(-1)
}

func (g *grid) remove(id int32, b sheet.Box) {
	g.each(b, func(c int) {
		list := g.cells[c]
		for i, other := range list {
			if other == id {
				list[i] = list[len(list)-1]
				g.cells[c] = list[:len(list)-1]
				return
			}
		}
	})
}

// near appends to found the numbers of the things in the cells that b touches,
// some of them more than once.
func (g *grid) near(b sheet.Box, found []int32) []int32 {
	x0, x1 := g.column(b.Min.X), g.column(b.Max.X)
	for y := g.row(b.Min.Y); y <= g.row(b.Max.Y); y++ {
		for x := x0; x <= x1; x++ {
			found = append(found, g.cells[y*g.nx+x]...)
		}
	}
	return found
}
