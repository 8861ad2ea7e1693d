package geom

import (
	"math/big"
	"slices"
	"testing"

	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func square(west, south, east, north measure.Length) Polygon {
	return Polygon{{west, south}, {east, south}, {east, north}, {west, north}}
}

func TestAreas(t *testing.T) {
	big := AreaOf(square(0, 0, 10, 8))
	tests := []struct {
		name string
		got  Area
		want Area
	}{
		{"united beside", Unite(AreaOf(square(0, 0, 4, 4)), AreaOf(square(4, 0, 6, 4))), AreaOf(square(0, 0, 6, 4))},
		{"intersected", Intersect(big, AreaOf(square(6, 5, 12, 12))), AreaOf(square(6, 5, 10, 8))},
		{"touching", Intersect(big, AreaOf(square(10, 0, 12, 8))), Area{}},
		{"a notch", Subtract(big, AreaOf(square(6, 5, 12, 12))), AreaOf(Polygon{{0, 0}, {10, 0}, {10, 5}, {6, 5}, {6, 8}, {0, 8}})},
		{"a hole", Subtract(big, AreaOf(square(3, 3, 5, 5).Reverse())), Area{[]Polygon{square(0, 0, 10, 8)}, []Polygon{square(3, 3, 5, 5)}}},
		{"cut in two", Subtract(big, AreaOf(square(4, -1, 5, 9))), AreaOf(square(0, 0, 4, 8), square(5, 0, 10, 8))},
		{"filled again", Unite(Subtract(big, AreaOf(square(3, 3, 5, 5))), AreaOf(square(3, 3, 5, 5))), big},
		{
			"an island in a hole", Unite(Subtract(big, AreaOf(square(2, 2, 8, 6))), AreaOf(square(4, 3, 5, 4))),
			Area{[]Polygon{square(0, 0, 10, 8), square(4, 3, 5, 4)}, []Polygon{square(2, 2, 8, 6)}},
		},
		// Two that meet at a corner are apart.
		{"a corner", Unite(AreaOf(square(0, 0, 2, 2)), AreaOf(square(2, 2, 4, 4))), AreaOf(square(0, 0, 2, 2), square(2, 2, 4, 4))},
		{"straight vertices", Unite(AreaOf(Polygon{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {0, 2}})), AreaOf(square(0, 0, 2, 2))},
		{"nothing", Unite(), Area{}},
		{"no width", AreaOfRects(Rect{Point{0, 0}, Point{0, 4}}), Area{}},
		{"outset", AreaOf(Polygon{{0, 0}, {10, 0}, {10, 5}, {6, 5}, {6, 8}, {0, 8}}).Outset(1), AreaOf(Polygon{{-1, -1}, {11, -1}, {11, 6}, {7, 6}, {7, 9}, {-1, 9}})},
		{"outset over a gap", Subtract(big, AreaOf(square(4, -1, 5, 9))).Outset(1), AreaOf(square(-1, -1, 11, 9))},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, tt.got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.name, diff)
		}
		if tt.got.Empty() != (len(tt.want.Outlines) == 0) {
			t.Errorf("%s: Empty() = %v", tt.name, tt.got.Empty())
		}
	}
	far := AreaOf(square(-MaxCoordinate, -MaxCoordinate, MaxCoordinate, MaxCoordinate))
	if diff := cmp.Diff(far, Intersect(far, far)); diff != "" {
		t.Errorf("as large as can be (-want +got)\n%s", diff)
	}
}

// drawArea draws an area of up to three rectangles less up to two, on whole
// coordinates from 0 to side.
func drawArea(t *rapid.T, name string, side int) Area {
	rects := func(most int, name string) []Rect {
		return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Rect {
			at := func(n string) measure.Length { return measure.Length(rapid.IntRange(0, side).Draw(t, n)) }
			return Rect{Point{at("west"), at("south")}, Point{at("east"), at("north")}}.Canon()
		}), 0, most).Draw(t, name)
	}
	return Area{AreaOfRects(rects(3, name)...).Outlines, AreaOfRects(rects(2, name+" less")...).Outlines}
}

// contents are the unit cells of an area, found from its definition at their
// middles: coordinates are doubled so that a middle is a whole number.
func contents(a Area, side int) []bool {
	double := func(ps []Polygon) []Polygon {
		var out []Polygon
		for _, p := range ps {
			var q Polygon
			for _, v := range p {
				q = append(q, Point{2 * v.X, 2 * v.Y})
			}
			out = append(out, q)
		}
		return out
	}
	outlines, holes := double(a.Outlines), double(a.Holes)
	var cells []bool
	for y := range side {
		for x := range side {
			middle := Point{measure.Length(2*x + 1), measure.Length(2*y + 1)}
			within := func(p Polygon) bool { return p.Contains(middle) }
			cells = append(cells, slices.ContainsFunc(outlines, within) && !slices.ContainsFunc(holes, within))
		}
	}
	return cells
}

// The operations against each point's membership, and their results against the
// form that they promise. A set operation is one of points, so this is its
// definition; the form is checked with DoubleArea and IsSimple.
func TestAreasAgainstPoints(t *testing.T) {
	const side = 9
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawArea(t, "a", side), drawArea(t, "b", side)
		inA, inB := contents(a, side), contents(b, side)
		d := measure.Length(rapid.IntRange(0, 3).Draw(t, "outset"))
		for _, op := range []struct {
			name string
			got  Area
			want func(i int) bool
		}{
			{"unite", Unite(a, b), func(i int) bool { return inA[i] || inB[i] }},
			{"intersect", Intersect(a, b), func(i int) bool { return inA[i] && inB[i] }},
			{"subtract", Subtract(a, b), func(i int) bool { return inA[i] && !inB[i] }},
			{"rects", AreaOfRects(a.Rects()...), func(i int) bool { return inA[i] }},
			{"outset", a.Outset(d), func(i int) bool { return near(inA, side, i, int(d)) }},
		} {
			got, sum := contents(op.got, side), 0
			for i := range got {
				if got[i] != op.want(i) {
					t.Fatalf("%s: cell %d is %v in %v", op.name, i, got[i], op.got)
				}
				if got[i] {
					sum++
				}
			}
			if op.name == "rects" || op.name == "outset" {
				continue // may overlap, or reach beyond the cells
			}
			if err := form(op.got, sum); err != "" {
				t.Fatalf("%s: %s: %v", op.name, err, op.got)
			}
		}
		if r := a.Rects(); apart(r) != "" {
			t.Fatalf("%s: %v", apart(r), r)
		}
	})
}

// near reports whether a cell of the area is at most d cells from cell i in
// both axes.
func near(in []bool, side, i, d int) bool {
	for y := max(0, i/side-d); y <= min(side-1, i/side+d); y++ {
		for x := max(0, i%side-d); x <= min(side-1, i%side+d); x++ {
			if in[y*side+x] {
				return true
			}
		}
	}
	return false
}

// form says what is wrong with a result of so many unit cells.
func form(a Area, cells int) string {
	sum := new(big.Int)
	for k, ps := range [2][]Polygon{a.Outlines, a.Holes} {
		if !slices.IsSortedFunc(ps, byFirst) {
			return "not in order"
		}
		for _, p := range ps {
			if !p.IsSimple() || !p.Rectilinear() || !p.IsCCW() || p[0] != slices.MinFunc(p, func(v, w Point) int { return byFirst(Polygon{v}, Polygon{w}) }) {
				return "an outline without the form"
			}
			for i := range p {
				if v, w := p[p.next(i)].Sub(p[i]), p[p.next(p.next(i))].Sub(p[p.next(i)]); (v.X == 0) == (w.X == 0) {
					return "a vertex without a corner"
				}
			}
			if k == 0 {
				sum.Add(sum, p.DoubleArea())
			} else {
				sum.Sub(sum, p.DoubleArea())
			}
		}
	}
	if sum.Cmp(big.NewInt(int64(2*cells))) != 0 {
		return "another area than its cells have"
	}
	return ""
}

func apart(rects []Rect) string {
	for i, r := range rects {
		for _, s := range rects[:i] {
			if both := r.Intersect(s); both.Width() > 0 && both.Height() > 0 {
				return "rectangles overlap"
			}
		}
	}
	return ""
}

func TestAreaContains(t *testing.T) {
	a := Area{[]Polygon{square(0, 0, 10, 8), square(12, 0, 14, 8)}, []Polygon{square(3, 3, 5, 5)}}
	for _, tt := range []struct {
		p    Point
		want bool
	}{{Point{1, 1}, true}, {Point{4, 4}, false}, {Point{3, 4}, true}, {Point{11, 4}, false}, {Point{12, 0}, true}} {
		if got := a.Contains(tt.p); got != tt.want {
			t.Errorf("Contains(%v) = %v", tt.p, got)
		}
	}
}
