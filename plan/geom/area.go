package geom

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
)

// An Area is the part of the plane that lies in some of its Outlines and in
// none of its Holes. Both are simple and rectilinear, in any direction and
// order; they may overlap. Its edge belongs to it.
type Area struct{ Outlines, Holes []Polygon }

// AreaOf is the area of outlines without holes.
func AreaOf(outlines ...Polygon) Area { return Area{Outlines: outlines} }

// AreaOfRects is what rectangles cover. Those without width or height cover
// nothing.
func AreaOfRects(rects ...Rect) Area {
	var a Area
	for _, r := range rects {
		if r.Width() > 0 && r.Height() > 0 {
			c := r.corners()
			a.Outlines = append(a.Outlines, c[:])
		}
	}
	return a
}

// Unite returns what is in any of the areas.
//
// It, Intersect and Subtract answer exactly and in one form: outlines and holes
// counter-clockwise, with a corner at every vertex, from the westernmost of
// their southernmost vertices and in the order of these. Outlines are apart,
// and touch at vertices at most; what has no width is left out. For n vertices
// they take memory and time O(n²), and time for each polygon as its bounds have
// cells of the lines through all vertices.
func Unite(areas ...Area) Area {
	return combine(areas, func(in []bool) bool { return slices.Contains(in, true) })
}

// Intersect returns what is in all of the areas.
func Intersect(areas ...Area) Area {
	return combine(areas, func(in []bool) bool { return !slices.Contains(in, false) })
}

// Subtract returns what is in a and in none of the others.
func Subtract(a Area, others ...Area) Area {
	return combine(append([]Area{a}, others...), func(in []bool) bool { return in[0] && !slices.Contains(in[1:], true) })
}

// Empty reports whether nothing with a width is in the area.
func (a Area) Empty() bool { return len(Unite(a).Outlines) == 0 }

// Contains reports whether p lies in the area or on its edge. The edge of a
// hole is no edge where the hole is under no outline.
func (a Area) Contains(p Point) bool {
	if !slices.ContainsFunc(a.Outlines, func(o Polygon) bool { return o.Contains(p) }) {
		return false
	}
	return !slices.ContainsFunc(a.Holes, func(o Polygon) bool {
		depth, ok := o.Depth(p)
		return ok && depth > 0
	})
}

// Rects cuts the area into rectangles that do not overlap, by the lines of all
// its edges along X, from south to north and then from west to east.
func (a Area) Rects() []Rect {
	g := newSheet([]Area{a})
	in := g.cover(a)
	var out []Rect
	columns := len(g.xs) - 1
	for y := range len(g.ys) - 1 {
		for x := 0; x < columns; x++ {
			from := x
			for x < columns && in[y*columns+x] {
				x++
			}
			if from < x {
				out = append(out, Rect{Point{g.xs[from], g.ys[y]}, Point{g.xs[x], g.ys[y+1]}})
			}
		}
	}
	return out
}

// Outset returns the area with all that is nearer to it than d in the maximum
// norm: every side is moved outward by d. d is not negative.
func (a Area) Outset(d measure.Length) Area {
	rects := a.Rects()
	for i := range rects {
		rects[i] = rects[i].Outset(d)
	}
	return Unite(AreaOfRects(rects...))
}

// combine returns the part of the plane that keep wants, by whether it is in
// each of the areas.
func combine(areas []Area, keep func(in []bool) bool) Area {
	g := newSheet(areas)
	if len(g.xs) == 0 {
		return Area{}
	}
	covers := make([][]bool, len(areas))
	for i, a := range areas {
		covers[i] = g.cover(a)
	}
	r := &Region{xs: g.xs, ys: g.ys, part: make([]int32, (len(g.xs)-1)*(len(g.ys)-1))}
	in := make([]bool, len(areas))
	for cell := range r.part {
		for i := range areas {
			in[i] = covers[i][cell]
		}
		if !keep(in) {
			r.part[cell] = solid
		}
	}
	r.join()
	var out Area
	for part := range r.outside {
		outer, holes := r.trace(int32(part))
		out.Outlines = append(out.Outlines, outer)
		out.Holes = append(out.Holes, holes...)
	}
	slices.SortFunc(out.Outlines, byFirst)
	slices.SortFunc(out.Holes, byFirst)
	return out
}

// byFirst orders outlines by their first vertex, from south to north and then
// from west to east.
func byFirst(p, q Polygon) int {
	return cmp.Or(cmp.Compare(p[0].Y, q[0].Y), cmp.Compare(p[0].X, q[0].X))
}

// A sheet is the plane cut by the lines of all edges into cells, with a margin
// of a nanometre round them.
type sheet struct{ xs, ys []measure.Length }

func newSheet(areas []Area) sheet {
	var g sheet
	for _, a := range areas {
		for _, p := range slices.Concat(a.Outlines, a.Holes) {
			for _, v := range p {
				g.xs, g.ys = append(g.xs, v.X), append(g.ys, v.Y)
			}
		}
	}
	if len(g.xs) == 0 {
		return sheet{}
	}
	g.xs, g.ys = margins(lines(g.xs)), margins(lines(g.ys))
	return g
}

// margins adds a line before the first and after the last.
func margins(sorted []measure.Length) []measure.Length {
	return slices.Concat([]measure.Length{sorted[0] - 1}, sorted, []measure.Length{sorted[len(sorted)-1] + 1})
}

// cover tells for each cell, row by row from the south, whether it is in the
// area.
func (g sheet) cover(a Area) []bool {
	in := make([]bool, max(0, len(g.xs)-1)*max(0, len(g.ys)-1))
	for _, p := range a.Outlines {
		g.fill(p, in, true)
	}
	for _, p := range a.Holes {
		g.fill(p, in, false)
	}
	return in
}

// fill sets the cells inside of a polygon: along a row, each side that is
// crossed leads in or out. It visits the cells of the polygon's bounds.
func (g sheet) fill(p Polygon, in []bool, to bool) {
	b := p.Bounds()
	west, east := index(g.xs, b.Min.X), index(g.xs, b.Max.X)
	south, north := index(g.ys, b.Min.Y), index(g.ys, b.Max.Y)
	columns := east - west
	crossed := make([]bool, columns*(north-south))
	for i, v := range p {
		side := Rect{v, p[p.next(i)]}.Canon()
		if side.Width() != 0 || side.Min.X == b.Max.X {
			continue
		}
		x := index(g.xs, side.Min.X) - west
		for y := index(g.ys, side.Min.Y) - south; y < index(g.ys, side.Max.Y)-south; y++ {
			crossed[y*columns+x] = !crossed[y*columns+x]
		}
	}
	for y := range north - south {
		inside := false
		row := in[(south+y)*(len(g.xs)-1)+west:]
		for x := range columns {
			if inside = inside != crossed[y*columns+x]; inside {
				row[x] = to
			}
		}
	}
}
