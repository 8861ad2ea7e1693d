package roof

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A side is one of the four sides of a rectangle, and the plane that rises
// from it: away from that side.
type side uint8

const (
	west side = iota
	east
	south
	north
)

var sides = [4]side{west, east, south, north}

// of returns the coordinate of the line of a rectangle's side.
func (s side) of(r geom.Rect) measure.Length {
	return [4]measure.Length{r.Min.X, r.Max.X, r.Min.Y, r.Max.Y}[s]
}

// up is the direction in which the plane rises.
func (s side) up() geom.Point {
	return [4]geom.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}}[s]
}

// away stands for a side that is no limit; coordinates are far below it, and
// the difference of the two still fits.
const away measure.Length = 1 << 60

// A block is a rectangle inscribed in the outline with the roof that it would
// have alone. open tells the sides that lie wholly on gable edges and have no
// plane. feet is the rectangle with these sides moved away.
type block struct {
	area, feet geom.Rect
	roofed     geom.Rect // area with the overhang
	open       [4]bool
}

// roofed is the area with the overhang past those of its sides that are not
// flush.
func (r *Roof) roofed(area geom.Rect) geom.Rect {
	out := area.Outset(r.spec.Overhang)
	for _, s := range sides {
		if !r.flush(area, s) {
			continue
		}
		switch s {
		case west:
			out.Min.X = area.Min.X
		case east:
			out.Max.X = area.Max.X
		case south:
			out.Min.Y = area.Min.Y
		case north:
			out.Max.Y = area.Max.Y
		}
	}
	return out
}

// flush reports whether all of the outline along a side is flush, and some is.
func (r *Roof) flush(area geom.Rect, s side) bool {
	some := false
	for i := range r.spec.Outline {
		if s.carries(area, edge(r.spec.Outline, i)) {
			if !r.spec.Flush[i] {
				return false
			}
			some = true
		}
	}
	return some
}

// depth is the least distance from p to a side that has a plane, negative for
// a point beyond one.
func (b *block) depth(p geom.Point) measure.Length {
	return min(p.X-b.feet.Min.X, b.feet.Max.X-p.X, p.Y-b.feet.Min.Y, b.feet.Max.Y-p.Y)
}

// blocks returns the blocks that matter: those that lie in no greater one
// with at least the same sides open. The order is by south side, north side
// and west side.
//
// For each pair of lines that may be south and north side, and for each choice
// of which of the two is to be open, the rectangles are as wide as can be. A
// side that is wholly on the outline stays where it is however a rectangle
// grows, so a rectangle lies in a greater one that is at least as good only if
// it can grow by one cell towards one side and stay as good.
func (g *grid) blocks() []block {
	var all []block
	clear := make([]bool, g.cols)
	for j := range g.rows {
		for col := range clear {
			clear[col] = true
		}
		for k := j + 1; k <= g.rows; k++ {
			any := false
			for col := range clear {
				clear[col] = clear[col] && g.inside[(k-1)*g.cols+col]
				any = any || clear[col]
			}
			if !any {
				break
			}
			all = append(all, g.between(j, k, clear)...)
		}
	}
	return all
}

// between returns the blocks from line j to line k. clear tells the columns
// that are inside all the way.
func (g *grid) between(j, k int, clear []bool) []block {
	var found []block
	for choice := range 4 {
		wanted := func(col int) bool {
			return clear[col] &&
				(choice&1 == 0 || g.horizontal[j*g.cols+col] == gable) &&
				(choice&2 == 0 || g.horizontal[k*g.cols+col] == gable)
		}
		for a := 0; a < g.cols; a++ {
			b := a
			for b < g.cols && wanted(b) {
				b++
			}
			if a == b {
				continue
			}
			if block := g.block(a, b, j, k); !contains(found, block) && !g.grows(block.open, a, b, j, k) {
				found = append(found, block)
			}
			a = b
		}
	}
	return found
}

func contains(blocks []block, b block) bool {
	for i := range blocks {
		if blocks[i].area == b.area {
			return true
		}
	}
	return false
}

// block is the block between four lines.
func (g *grid) block(a, b, j, k int) block {
	area := geom.Rect{Min: geom.Point{X: g.xs[a], Y: g.ys[j]}, Max: geom.Point{X: g.xs[b], Y: g.ys[k]}}
	made := block{area: area, feet: area, open: [4]bool{
		west:  gabled(g.column(a, j, k)),
		east:  gabled(g.column(b, j, k)),
		south: gabled(g.row(j, a, b)),
		north: gabled(g.row(k, a, b)),
	}}
	if made.open[west] {
		made.feet.Min.X = -away
	}
	if made.open[east] {
		made.feet.Max.X = away
	}
	if made.open[south] {
		made.feet.Min.Y = -away
	}
	if made.open[north] {
		made.feet.Max.Y = away
	}
	return made
}

// grows reports whether the block can take in another row of cells in the
// south or in the north without closing an open side.
func (g *grid) grows(open [4]bool, a, b, j, k int) bool {
	into := func(row int) bool {
		return g.clear(row, a, b) &&
			(!open[west] || gabled(g.column(a, row, row+1))) &&
			(!open[east] || gabled(g.column(b, row, row+1)))
	}
	return into(j-1) || into(k)
}
