package geom

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// An L of 6 by 5 with the notch in the north-east.
var ell = Polygon{{0, 0}, {6, 0}, {6, 2}, {3, 2}, {3, 5}, {0, 5}}

func TestDoubleArea(t *testing.T) {
	tests := []struct {
		name string
		p    Polygon
		want int64
	}{
		{"none", nil, 0},
		{"two vertices", Polygon{{0, 0}, {5, 5}}, 0},
		{"square", Polygon{{0, 0}, {1, 0}, {1, 1}, {0, 1}}, 2},
		{"clockwise square", Polygon{{0, 0}, {0, 1}, {1, 1}, {1, 0}}, -2},
		{"L", ell, 42},
		// Common textbook triangle of area 7, from memory.
		{"triangle", Polygon{{2, 4}, {3, -8}, {1, 2}}, -14},
		// Rosetta Code, task "Shoelace formula for polygonal area": 30, the
		// answer from memory.
		{"pentagon", Polygon{{3, 4}, {5, 11}, {12, 8}, {9, 5}, {5, 6}}, -60},
	}
	for _, tt := range tests {
		if got := tt.p.DoubleArea(); got.Cmp(big.NewInt(tt.want)) != 0 {
			t.Errorf("%s: DoubleArea() = %v, want %d", tt.name, got, tt.want)
		}
		if got := tt.p.IsCCW(); got != (tt.want > 0) {
			t.Errorf("%s: IsCCW() = %v", tt.name, got)
		}
	}
}

// Areas by coordinates from the Open Access Surveying Library, Traverse
// Computations, chapter G. Example 1 is the adjusted loop of the earlier
// chapters, in feet north and east; its cross products add up to 3,384,174.1
// and 3,590,045.6 sq ft, carried to 0.1. The parcel with corners A, C, F and E
// is problem 2: 250,550 sq ft, plus or minus 20.
func TestAreaOfPublishedTraverses(t *testing.T) {
	const sqFoot = 0.09290304 // m², NIST Handbook 44, Appendix C
	tests := []struct {
		name            string
		northEast       [][2]measure.Length // in 0.001 ft
		sqFeet, surplus float64
	}{
		{
			"example 1",
			[][2]measure.Length{{500_000, 2_000_000}, {323_614, 1_561_426}, {526_996, 1_488_321}, {719_336, 1_686_956}},
			(3_590_045.6 - 3_384_174.1) / 2, 0.2,
		},
		{
			"problem 2",
			[][2]measure.Length{{600_000, 1_000_000}, {254_542, 1_209_288}, {97_543, 566_876}, {470_303, 397_969}},
			250_550, 20,
		},
	}
	for _, tt := range tests {
		var p Polygon
		for _, c := range tt.northEast {
			p = append(p, Point{X: c[1] * measure.Foot / 1000, Y: c[0] * measure.Foot / 1000})
		}
		if got := p.SquareMetres() / sqFoot; math.Abs(got-tt.sqFeet) > tt.surplus {
			t.Errorf("%s: %.2f sq ft, want %.2f", tt.name, got, tt.sqFeet)
		}
	}
}

func TestSquareMetres(t *testing.T) {
	ft := measure.Foot
	room := Polygon{{0, 0}, {12 * ft, 0}, {12 * ft, 10 * ft}, {0, 10 * ft}}
	// 120 sq ft of 0.09290304 m².
	if got := room.SquareMetres(); got != 11.1483648 {
		t.Errorf("12ft by 10ft: %v m², want 11.1483648", got)
	}
	if got := room.Reverse().SquareMetres(); got != 11.1483648 {
		t.Errorf("clockwise: %v m², want 11.1483648", got)
	}
	if got := (Polygon{{0, 0}, {1, 0}, {0, 1}}).SquareMetres(); got != 0.5e-18 {
		t.Errorf("half a square nanometre: %v m²", got)
	}
}

func TestReverseAndBounds(t *testing.T) {
	want := Polygon{{0, 0}, {0, 5}, {3, 5}, {3, 2}, {6, 2}, {6, 0}}
	if diff := cmp.Diff(want, ell.Reverse()); diff != "" {
		t.Errorf("Reverse (-want +got)\n%s", diff)
	}
	if got := ell.Bounds(); got != rect(0, 0, 6, 5) {
		t.Errorf("Bounds() = %v", got)
	}
	if len(Polygon{}.Reverse()) != 0 || !(Polygon{}).Bounds().Empty() {
		t.Error("a polygon without vertices has bounds")
	}
}

func TestRectilinearAndSimple(t *testing.T) {
	tests := []struct {
		name                string
		p                   Polygon
		rectilinear, simple bool
	}{
		{"L", ell, true, true},
		{"vertex on a straight side", Polygon{{0, 0}, {2, 0}, {4, 0}, {4, 4}, {0, 4}}, true, true},
		{"triangle", Polygon{{0, 0}, {4, 0}, {0, 4}}, false, true},
		{"none", nil, false, false},
		{"two vertices", Polygon{{0, 0}, {4, 0}}, false, false},
		{"three on a line", Polygon{{0, 0}, {4, 0}, {2, 0}}, false, false},
		{"repeated first vertex", Polygon{{0, 0}, {4, 0}, {4, 4}, {0, 4}, {0, 0}}, false, false},
		{"bow tie", Polygon{{0, 0}, {4, 4}, {4, 0}, {0, 4}}, false, false},
		{"rectilinear crossing", Polygon{{0, 0}, {4, 0}, {4, 4}, {2, 4}, {2, -2}, {0, -2}}, true, false},
		{"spike", Polygon{{0, 0}, {4, 0}, {4, 4}, {4, 2}, {0, 2}}, true, false},
		{"vertex touches a side", Polygon{{0, 0}, {6, 0}, {6, 4}, {3, 0}, {0, 4}}, false, false},
		{"vertex touches a vertex", Polygon{{0, 0}, {2, 2}, {4, 0}, {4, 4}, {2, 2}, {0, 4}}, false, false},
		{"sides on one another", Polygon{{0, 0}, {4, 0}, {4, 2}, {1, 2}, {1, 0}, {0, 0}}, false, false},
	}
	for _, tt := range tests {
		for g := range Symmetries {
			p := g.Polygon(tt.p)
			if got := p.Rectilinear(); got != tt.rectilinear {
				t.Errorf("%s, symmetry %d: Rectilinear() = %v", tt.name, g, got)
			}
			if got := p.IsSimple(); got != tt.simple {
				t.Errorf("%s, symmetry %d: IsSimple() = %v", tt.name, g, got)
			}
			if p.Reverse().IsSimple() != tt.simple {
				t.Errorf("%s, symmetry %d: the direction matters", tt.name, g)
			}
		}
	}
}

// IsSimple against the definition, with exact distances between the sides.
func TestIsSimpleAgainstDistances(t *testing.T) {
	vertex := rapid.Custom(func(t *rapid.T) Point {
		return Point{measure.Length(rapid.IntRange(0, 4).Draw(t, "x")), measure.Length(rapid.IntRange(0, 4).Draw(t, "y"))}
	})
	definition := func(p Polygon) bool {
		for i := range p {
			a, b, c := p[i], p[(i+1)%len(p)], p[(i+2)%len(p)]
			if a == b || distSquared(c, c, a, b).Sign() == 0 || distSquared(a, a, b, c).Sign() == 0 {
				return false
			}
			for j := i + 2; j < len(p); j++ {
				if (j+1)%len(p) != i && distSquared(a, b, p[j], p[(j+1)%len(p)]).Sign() == 0 {
					return false
				}
			}
		}
		return true
	}
	rapid.Check(t, func(t *rapid.T) {
		p := Polygon(rapid.SliceOfN(vertex, 3, 6).Draw(t, "p"))
		if got, want := p.IsSimple(), definition(p); got != want {
			t.Fatalf("%v.IsSimple() = %v, want %v", p, got, want)
		}
	})
}

func TestPolygonContains(t *testing.T) {
	diamond := Polygon{{0, -4}, {4, 0}, {0, 4}, {-4, 0}}
	tests := []struct {
		name string
		p    Polygon
		q    Point
		want bool
	}{
		{"in the L", ell, Point{1, 4}, true},
		{"in its notch", ell, Point{4, 3}, false},
		{"at its inner corner", ell, Point{3, 2}, true},
		{"on a side", ell, Point{5, 2}, true},
		{"level with a side, outside", ell, Point{7, 2}, false},
		{"level with a side, west of it", ell, Point{-1, 2}, false},
		{"level with a vertex, inside", diamond, Point{0, 0}, true},
		{"level with a vertex, outside", diamond, Point{-5, 0}, false},
		{"level with the top", diamond, Point{-1, 4}, false},
		{"on a diagonal side", diamond, Point{1, 3}, true},
		{"a step off a diagonal side", diamond, Point{2, 3}, false},
		{"no polygon", nil, Point{0, 0}, false},
	}
	for _, tt := range tests {
		for g := range Symmetries {
			if got := g.Polygon(tt.p).Contains(g.Apply(tt.q)); got != tt.want {
				t.Errorf("%s, symmetry %d: Contains = %v", tt.name, g, got)
			}
			if got := g.Polygon(tt.p).Reverse().Contains(g.Apply(tt.q)); got != tt.want {
				t.Errorf("%s, symmetry %d, clockwise: Contains = %v", tt.name, g, got)
			}
		}
	}
}

func TestDepth(t *testing.T) {
	tests := []struct {
		name string
		p    Polygon
		q    Point
		want measure.Length
		ok   bool
	}{
		{"ridge of a square", Polygon{{0, 0}, {8, 0}, {8, 8}, {0, 8}}, Point{4, 4}, 4, true},
		{"beside the ridge", Polygon{{0, 0}, {8, 0}, {8, 8}, {0, 8}}, Point{4, 1}, 1, true},
		// The nearest boundary is the inner corner: 1 west and 2 south of it.
		{"valley", Polygon{{0, 0}, {20, 0}, {20, 8}, {10, 8}, {10, 20}, {0, 20}}, Point{9, 6}, 2, true},
		{"on the boundary", ell, Point{3, 4}, 0, true},
		{"outside", ell, Point{4, 3}, 0, false},
		{"no polygon", nil, Point{4, 3}, 0, false},
	}
	for _, tt := range tests {
		for g := range Symmetries {
			got, ok := g.Polygon(tt.p).Depth(g.Apply(tt.q))
			if got != tt.want || ok != tt.ok {
				t.Errorf("%s, symmetry %d: Depth = %d, %v; want %d, %v", tt.name, g, got, ok, tt.want, tt.ok)
			}
		}
	}
}

// boundary lists the points with whole coordinates on the sides of p.
func boundary(p Polygon) []Point {
	var all []Point
	for i, a := range p {
		side := Rect{a, p[(i+1)%len(p)]}.Canon()
		for x := side.Min.X; x <= side.Max.X; x++ {
			for y := side.Min.Y; y <= side.Max.Y; y++ {
				all = append(all, Point{x, y})
			}
		}
	}
	return slices.Compact(all)
}

func BenchmarkIsSimple(b *testing.B) {
	// A comb of 100 teeth: 402 sides.
	comb := Polygon{{0, 0}, {400, 0}}
	for x := measure.Length(400); x > 0; x -= 4 {
		comb = append(comb, Point{x, 9}, Point{x - 2, 9}, Point{x - 2, 5}, Point{x - 4, 5})
	}
	for b.Loop() {
		if len(comb) != 402 || !comb.IsSimple() {
			b.Fatal("the comb is broken")
		}
	}
}
