package geom

// A heading is a direction along the lines of a Region, in the order in which
// one turns left.
type heading uint8

const (
	east heading = iota
	north
	west
	south
)

var headings = [4]heading{east, north, west, south}

func (d heading) dx() int        { return [4]int{1, 0, -1, 0}[d] }
func (d heading) dy() int        { return [4]int{0, 1, 0, -1}[d] }
func (d heading) left() heading  { return (d + 1) % 4 }
func (d heading) right() heading { return (d + 3) % 4 }

// Outline returns the boundary of the free part in which the point lies: its
// outer outline and one outline for each island of what is not the part, such
// as a chimney or a ring of walls with a room of its own. All of them are
// simple, rectilinear and counter-clockwise, have a corner at every vertex and
// start at the westernmost of their southernmost vertices; the islands are in
// the order of these. Outlines may meet at a vertex, never along a side.
//
// ok is false if the point is not free (see Free), or if its part is outside:
// the walls around it leave a gap.
func (r *Region) Outline(at Point) (outer Polygon, holes []Polygon, ok bool) {
	part := r.partAt(at)
	if part == solid || r.outside[part] {
		return nil, nil, false
	}
	outer, holes = r.trace(part)
	return outer, holes, true
}

// trace returns the outlines of a part that is not outside, as Outline does.
func (r *Region) trace(part int32) (outer Polygon, holes []Polygon) {
	t := r.tracer(part)
	for i := range t.leaving {
		for _, d := range headings {
			if t.leaving[i]&(1<<d) == 0 {
				continue
			}
			loop := t.loop(i, d)
			// The first corner from the south-west is on the outer outline.
			if outer == nil {
				outer = loop
				continue
			}
			// The part is on the left, so an island was run clockwise.
			holes = append(holes, loop.Reverse())
		}
	}
	return outer, holes
}

// A tracer holds the sides of the boundary of a part that are still to be
// walked, directed so that the part is on their left.
type tracer struct {
	r       *Region
	leaving []uint8 // by crossing of the lines: bit d is set if a side leaves with heading d
}

func (r *Region) tracer(part int32) *tracer {
	t := &tracer{r: r, leaving: make([]uint8, len(r.xs)*len(r.ys))}
	for cell, p := range r.part {
		if p != part {
			continue
		}
		// The side that heads d is on the cell's right as one looks along d.
		corner := cell/r.columns()*len(r.xs) + cell%r.columns()
		for _, d := range headings {
			if neighbour, ok := r.neighbour(cell, d.right()); !ok || r.part[neighbour] != part {
				t.leaving[corner] |= 1 << d
			}
			corner = t.ahead(corner, d)
		}
	}
	return t
}

// ahead is the crossing that follows along d.
func (t *tracer) ahead(crossing int, d heading) int {
	return crossing + d.dx() + d.dy()*len(t.r.xs)
}

// loop walks the sides from start until it is back, and returns the corners.
// start is the first crossing of the loop in the order of rows, which is
// always a corner.
//
// Where two cells of the part meet only at a corner, four sides meet. Turning
// right there keeps what lies between them apart, which is an island on one
// side and the rest on the other, since the two cells are joined elsewhere. So
// no loop passes a crossing twice.
func (t *tracer) loop(start int, d heading) Polygon {
	corners := Polygon{t.point(start)}
	for at := start; ; {
		t.leaving[at] &^= 1 << d
		if at = t.ahead(at, d); at == start {
			return corners
		}
		if next := t.turn(at, d); next != d {
			corners = append(corners, t.point(at))
			d = next
		}
	}
}

// turn is the heading of the side to follow: right before straight on before
// left.
func (t *tracer) turn(at int, came heading) heading {
	for _, d := range [2]heading{came.right(), came} {
		if t.leaving[at]&(1<<d) != 0 {
			return d
		}
	}
	return came.left()
}

func (t *tracer) point(crossing int) Point {
	return Point{t.r.xs[crossing%len(t.r.xs)], t.r.ys[crossing/len(t.r.xs)]}
}
