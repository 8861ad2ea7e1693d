package geom

import (
	"testing"

	"topplate/plan/measure"

	"pgregory.net/rapid"
)

// rect is Rect{{x0, y0}, {x1, y1}} for short tables.
func rect(x0, y0, x1, y1 measure.Length) Rect { return Rect{Point{x0, y0}, Point{x1, y1}} }

func TestRectContains(t *testing.T) {
	r := rect(0, 0, 4, 2)
	tests := []struct {
		p              Point
		closed, inside bool
	}{
		{Point{1, 1}, true, true},
		{Point{0, 1}, true, false},
		{Point{4, 2}, true, false},
		{Point{5, 1}, false, false},
		{Point{1, -1}, false, false},
	}
	for _, tt := range tests {
		if got := r.Contains(tt.p); got != tt.closed {
			t.Errorf("%v.Contains(%v) = %v", r, tt.p, got)
		}
		if got := r.ContainsInside(tt.p); got != tt.inside {
			t.Errorf("%v.ContainsInside(%v) = %v", r, tt.p, got)
		}
	}
}

func TestRectIntersect(t *testing.T) {
	r := rect(0, 0, 4, 4)
	tests := []struct {
		s, want Rect
		empty   bool
	}{
		{rect(1, 1, 2, 2), rect(1, 1, 2, 2), false},
		{rect(-3, 2, 9, 9), rect(0, 2, 4, 4), false},
		{rect(4, 0, 8, 4), rect(4, 0, 4, 4), false}, // a common edge
		{rect(4, 4, 8, 8), rect(4, 4, 4, 4), false}, // a common corner
		{rect(5, 0, 8, 4), rect(5, 0, 4, 4), true},
	}
	for _, tt := range tests {
		got := r.Intersect(tt.s)
		if got != tt.want || got.Empty() != tt.empty {
			t.Errorf("%v.Intersect(%v) = %v, empty %v; want %v, empty %v", r, tt.s, got, got.Empty(), tt.want, tt.empty)
		}
		if back := tt.s.Intersect(r); back != got {
			t.Errorf("Intersect is not symmetric: %v and %v", got, back)
		}
	}
}

func TestRectSizes(t *testing.T) {
	r := rect(5, 7, 1, 2).Canon()
	if r != rect(1, 2, 5, 7) || r.Width() != 4 || r.Height() != 5 {
		t.Errorf("Canon: %v is %d by %d, want 4 by 5", r, r.Width(), r.Height())
	}
	if got := r.Outset(3); got != rect(-2, -1, 8, 10) {
		t.Errorf("Outset(3) = %v", got)
	}
	if got := r.Inset(2); got != rect(3, 4, 3, 5) || got.Empty() {
		t.Errorf("Inset(2) = %v", got)
	}
	if got := r.Inset(3); !got.Empty() {
		t.Errorf("Inset(3) = %v, want it empty", got)
	}
	if empty := rect(1, 0, 0, 0); empty.Outset(9) != empty {
		t.Errorf("an empty rectangle grew to %v", empty.Outset(9))
	}
}

func TestRectDistSquared(t *testing.T) {
	r := rect(0, 0, 4, 4)
	for p, want := range map[Point]measure.Length{
		{2, 2}: 0, {4, 4}: 0, {-3, 2}: 3, {2, 9}: 5, {7, 8}: 5, {-5, -12}: 13,
	} {
		if got := r.DistSquared(p); got != Squared(want) {
			t.Errorf("%v.DistSquared(%v) = %v, want %d squared", r, p, got, want)
		}
	}
}

// Containment, intersection and size say the same thing of the eight images of
// a plan.
func TestRectSymmetries(t *testing.T) {
	small := rapid.Map(rapid.Int64Range(-5, 5), func(n int64) measure.Length { return measure.Length(n) })
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) measure.Length { return small.Draw(t, name) }
		r := rect(draw("x0"), draw("y0"), draw("x1"), draw("y1")).Canon()
		s := rect(draw("x2"), draw("y2"), draw("x3"), draw("y3")).Canon()
		p := Point{draw("px"), draw("py")}
		if both := r.Intersect(s); both.Contains(p) != (r.Contains(p) && s.Contains(p)) {
			t.Fatalf("%v and %v meet in %v, which is wrong about %v", r, s, both, p)
		}
		for g := range Symmetries {
			if g.Rect(r).Contains(g.Apply(p)) != r.Contains(p) ||
				g.Rect(r).ContainsInside(g.Apply(p)) != r.ContainsInside(p) ||
				g.Rect(r).DistSquared(g.Apply(p)) != r.DistSquared(p) ||
				g.Rect(r).Intersect(g.Rect(s)).Empty() != r.Intersect(s).Empty() {
				t.Fatalf("symmetry %d changes an answer about %v, %v and %v", g, r, s, p)
			}
		}
	})
}

func TestSymmetry(t *testing.T) {
	seen := map[[2]Point]bool{}
	for g := range Symmetries {
		east, north := g.Apply(Point{1, 0}), g.Apply(Point{0, 1})
		seen[[2]Point{east, north}] = true
		if got, want := g.Mirrors(), cross(east, north) < 0; got != want {
			t.Errorf("symmetry %d: Mirrors() = %v, want %v", g, got, want)
		}
	}
	if len(seen) != 8 {
		t.Errorf("%d different symmetries, want 8", len(seen))
	}
	if empty := rect(1, 0, 0, 0); !Symmetry(5).Rect(empty).Empty() {
		t.Error("the image of an empty rectangle is not empty")
	}
}
