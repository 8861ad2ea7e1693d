package geom

import (
	"strings"
	"testing"

	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// A drawing is a plan of unit cells, north at the top: # is solid, anything
// else is free. Its south-west corner is the origin.
type drawing []string

func draw(rows string) drawing { return strings.Fields(rows) }

// at is the cell whose south-west corner is (x, y).
func (d drawing) at(x, y int) byte { return d[len(d)-1-y][x] }

// solids are the runs of # in each row, so that many of them share an edge.
func (d drawing) solids() []Rect {
	var solids []Rect
	for y := range d {
		for x := 0; x < len(d[0]); {
			from := x
			for x < len(d[0]) && d.at(x, y) == '#' {
				x++
			}
			if x > from {
				solids = append(solids, cells(from, y, x, y+1))
			}
			x++
		}
	}
	return solids
}

func (d drawing) bounds() Rect { return cells(0, 0, len(d[0]), len(d)) }

// centre finds the cell with the mark. Cells are 2 wide, so its centre is
// whole.
func (d drawing) centre(mark byte) Point {
	for y := range d {
		for x := range d[0] {
			if d.at(x, y) == mark {
				return centre(x, y)
			}
		}
	}
	panic("no such mark")
}

func centre(x, y int) Point { return Point{measure.Length(2*x + 1), measure.Length(2*y + 1)} }

func cells(x0, y0, x1, y1 int) Rect {
	return rect(2*measure.Length(x0), 2*measure.Length(y0), 2*measure.Length(x1), 2*measure.Length(y1))
}

func TestOutline(t *testing.T) {
	tests := []struct {
		name  string
		rows  string
		outer Polygon // in cells
		holes []Polygon
	}{
		{
			"two rooms",
			`#######
			 #a.#..#
			 #..#..#
			 #######`,
			Polygon{{1, 1}, {3, 1}, {3, 3}, {1, 3}},
			nil,
		},
		{
			"two rooms through a door",
			`#######
			 #a.#..#
			 #.....#
			 #######`,
			Polygon{{1, 1}, {6, 1}, {6, 3}, {4, 3}, {4, 2}, {3, 2}, {3, 3}, {1, 3}},
			nil,
		},
		{
			"walls closed by corners only",
			`.####.
			 #a...#
			 #.##.#
			 #....#
			 .####.`,
			Polygon{{1, 1}, {5, 1}, {5, 4}, {1, 4}},
			[]Polygon{{{2, 2}, {4, 2}, {4, 3}, {2, 3}}},
		},
		{
			"chimney in the room, with a flue",
			`#######
			 #a....#
			 #.###.#
			 #.#.#.#
			 #.###.#
			 #.....#
			 #######`,
			Polygon{{1, 1}, {6, 1}, {6, 6}, {1, 6}},
			[]Polygon{{{2, 2}, {5, 2}, {5, 5}, {2, 5}}},
		},
		{
			"two posts that meet at a corner",
			`######
			 #a...#
			 #.#..#
			 #..#.#
			 #....#
			 ######`,
			Polygon{{1, 1}, {5, 1}, {5, 5}, {1, 5}},
			[]Polygon{{{3, 2}, {4, 2}, {4, 3}, {3, 3}}, {{2, 3}, {3, 3}, {3, 4}, {2, 4}}},
		},
		{
			"post that meets the wall at a corner",
			`#####
			 ##.a#
			 #.#.#
			 #...#
			 #####`,
			Polygon{{1, 1}, {4, 1}, {4, 4}, {2, 4}, {2, 3}, {1, 3}},
			[]Polygon{{{2, 2}, {3, 2}, {3, 3}, {2, 3}}},
		},
	}
	for _, tt := range tests {
		d := draw(tt.rows)
		for i := range tt.outer {
			tt.outer[i] = Point{2 * tt.outer[i].X, 2 * tt.outer[i].Y}
		}
		for _, h := range tt.holes {
			for i := range h {
				h[i] = Point{2 * h[i].X, 2 * h[i].Y}
			}
		}
		outer, holes, ok := NewRegion(d.solids(), d.bounds()).Outline(d.centre('a'))
		if !ok {
			t.Errorf("%s: no outline", tt.name)
		}
		if diff := cmp.Diff(tt.outer, outer); diff != "" {
			t.Errorf("%s: outer outline (-want +got)\n%s", tt.name, diff)
		}
		if diff := cmp.Diff(tt.holes, holes); diff != "" {
			t.Errorf("%s: holes (-want +got)\n%s", tt.name, diff)
		}
	}
}

func TestOutlineRefused(t *testing.T) {
	d := draw(`
		........
		########
		#a..#b.#
		#...#..#
		#####.##`)
	r := NewRegion(d.solids(), d.bounds())
	tests := []struct {
		name     string
		at       Point
		free, ok bool
	}{
		{"room", d.centre('a'), true, true},
		{"room with a gap", d.centre('b'), true, false},
		{"in the wall", centre(4, 2), false, false},
		{"on the face of the wall", Point{2, 3}, false, false},
		{"in an inner corner", Point{2, 2}, false, false},
		{"between cells", Point{4, 4}, true, true},
		{"on the south edge of the bounds", Point{11, 0}, false, false},
		{"on the north edge of open bounds", Point{11, 10}, false, false},
		{"on the west edge of the first row", Point{0, 1}, false, false},
		{"on the west edge of open bounds", Point{0, 9}, false, false},
		{"on the east edge of open bounds", Point{16, 9}, false, false},
		{"beyond the bounds", Point{99, 3}, false, false},
	}
	for _, tt := range tests {
		if got := r.Free(tt.at); got != tt.free {
			t.Errorf("%s: Free(%v) = %v", tt.name, tt.at, got)
		}
		outer, holes, ok := r.Outline(tt.at)
		if ok != tt.ok || !ok && (outer != nil || holes != nil) {
			t.Errorf("%s: Outline(%v) = %v, %v, %v", tt.name, tt.at, outer, holes, ok)
		}
	}
	if !r.Reaches(d.centre('a'), centre(3, 1)) || r.Reaches(d.centre('a'), d.centre('b')) ||
		r.Reaches(centre(4, 2), centre(4, 2)) || r.Reaches(d.centre('a'), Point{99, 3}) {
		t.Error("Reaches goes through a wall or does not cross a room")
	}
}

func TestRegionOddInput(t *testing.T) {
	at := Point{5, 5}
	for name, r := range map[string]*Region{
		"no bounds":       NewRegion(nil, Rect{Max: Point{-1, -1}}),
		"flat bounds":     NewRegion(nil, rect(5, 0, 5, 10)),
		"covered":         NewRegion([]Rect{rect(-9, -9, 99, 99)}, rect(0, 0, 10, 10)),
		"the zero Region": {},
	} {
		if r.Free(at) || r.Reaches(at, at) {
			t.Errorf("%s: %v is free", name, at)
		}
	}
	// Solids that are flat, empty or away count for nothing.
	r := NewRegion([]Rect{rect(5, 0, 5, 10), rect(7, 7, 3, 3), rect(20, 20, 30, 30)}, rect(0, 0, 10, 10))
	if _, _, ok := r.Outline(at); ok || !r.Free(at) {
		t.Error("an open field has an outline")
	}
}

// A door less than a nanometre wide does not exist, one of a nanometre does.
func TestOutlineOfWallsThatJustMeet(t *testing.T) {
	ft := measure.Foot
	walls := func(gap measure.Length) []Rect {
		return []Rect{
			rect(0, 0, 10*ft, ft), rect(0, 9*ft, 10*ft, 10*ft),
			rect(0, 0, ft, 10*ft), rect(9*ft, ft, 10*ft, 9*ft-gap),
		}
	}
	for gap, want := range map[measure.Length]bool{0: true, 1: false} {
		outer, _, ok := NewRegion(walls(gap), rect(-ft, -ft, 11*ft, 11*ft)).Outline(Point{5 * ft, 5 * ft})
		if ok != want {
			t.Errorf("gap of %d nm: closed is %v", gap, ok)
		}
		if diff := cmp.Diff(Polygon{{ft, ft}, {9 * ft, ft}, {9 * ft, 9 * ft}, {ft, 9 * ft}}, outer); ok && diff != "" {
			t.Errorf("outline (-want +got)\n%s", diff)
		}
	}
}

// flood marks the cells joined to (x, y) and says whether one of them is on
// the rim: the definition, cell by cell.
func (d drawing) flood(x, y int, seen map[Point]bool) (rim bool) {
	if x < 0 || y < 0 || x >= len(d[0]) || y >= len(d) {
		return true
	}
	if seen[centre(x, y)] || d.at(x, y) == '#' {
		return false
	}
	seen[centre(x, y)] = true
	for _, step := range [4][2]int{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		if d.flood(x+step[0], y+step[1], seen) {
			rim = true
		}
	}
	return rim
}

func TestRegionAgainstFlood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width, height := rapid.IntRange(1, 9).Draw(t, "width"), rapid.IntRange(1, 9).Draw(t, "height")
		row := rapid.StringOfN(rapid.SampledFrom([]rune("#.")), width, width, -1)
		d := drawing(rapid.SliceOfN(row, height, height).Draw(t, "rows"))
		g := Symmetry(rapid.IntRange(0, 7).Draw(t, "symmetry"))
		var solids []Rect
		for _, s := range d.solids() {
			solids = append(solids, g.Rect(s))
		}
		r := NewRegion(solids, g.Rect(d.bounds()))
		for y := range height {
			for x := range width {
				at := g.Apply(centre(x, y))
				if r.Free(at) != (d.at(x, y) != '#') {
					t.Fatalf("Free(%d, %d) = %v", x, y, r.Free(at))
				}
				if d.at(x, y) != '#' {
					checkPart(t, d, r, g, x, y)
				}
			}
		}
	})
}

// checkPart holds the part of the cell (x, y) against the flood.
func checkPart(t *rapid.T, d drawing, r *Region, g Symmetry, x, y int) {
	part := map[Point]bool{}
	rim := d.flood(x, y, part)
	at := g.Apply(centre(x, y))
	outer, holes, ok := r.Outline(at)
	if ok == rim {
		t.Fatalf("cell (%d, %d): ok = %v, but it reaches the rim: %v", x, y, ok, rim)
	}
	for v := range d {
		for u := range d[0] {
			p := g.Apply(centre(u, v))
			if r.Reaches(at, p) != part[centre(u, v)] {
				t.Fatalf("Reaches from (%d, %d) to (%d, %d) = %v", x, y, u, v, r.Reaches(at, p))
			}
			if ok && inOutline(outer, holes, p) != part[centre(u, v)] {
				t.Fatalf("the outline of (%d, %d) is wrong about (%d, %d): %v, %v", x, y, u, v, outer, holes)
			}
		}
	}
	if ok {
		checkOutline(t, outer, at)
		for _, h := range holes {
			checkOutline(t, h, h[0])
		}
	}
}

func inOutline(outer Polygon, holes []Polygon, p Point) bool {
	in := outer.Contains(p)
	for _, h := range holes {
		in = in && !h.Contains(p)
	}
	return in
}

// checkOutline holds an outline against what Outline promises of it, and its
// depth at a point against the nearest of its points.
func checkOutline(t *rapid.T, p Polygon, at Point) {
	if !p.IsSimple() || !p.Rectilinear() || !p.IsCCW() {
		t.Fatalf("%v is not a simple, rectilinear, counter-clockwise outline", p)
	}
	for i, a := range p {
		b, c := p[p.next(i)], p[p.next(p.next(i))]
		if cross(b.Sub(a), c.Sub(b)) == 0 {
			t.Fatalf("%v has no corner at %v", p, b)
		}
		if a.Y < p[0].Y || a.Y == p[0].Y && a.X < p[0].X {
			t.Fatalf("%v does not start in the south-west", p)
		}
	}
	nearest := measure.Length(1 << 40)
	for _, b := range boundary(p) {
		nearest = min(nearest, max(b.X-at.X, at.X-b.X, b.Y-at.Y, at.Y-b.Y))
	}
	if depth, ok := p.Depth(at); !ok || depth != nearest {
		t.Fatalf("%v.Depth(%v) = %d, %v; the nearest boundary point is %d away", p, at, depth, ok, nearest)
	}
}

// walls is a house of n rooms in a row with a wall between any two.
func walls(n int) []Rect {
	ft := measure.Foot
	length := measure.Length(n) * 10 * ft
	solids := []Rect{rect(0, 0, length, ft/2), rect(0, 10*ft, length, 10*ft+ft/2)}
	for i := range measure.Length(n + 1) {
		solids = append(solids, rect(i*10*ft, 0, i*10*ft+ft/2, 10*ft+i*measure.Inch))
	}
	return solids
}

func BenchmarkRegion(b *testing.B) {
	ft := measure.Foot
	solids := walls(100)
	b.ReportAllocs()
	for b.Loop() {
		r := NewRegion(solids, rect(-ft, -ft, 1100*ft, 100*ft))
		if _, _, ok := r.Outline(Point{5 * ft, 5 * ft}); !ok {
			b.Fatal("the first room is open")
		}
	}
}
