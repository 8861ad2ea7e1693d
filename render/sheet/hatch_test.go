package sheet

import (
	"testing"

	"pgregory.net/rapid"
)

func square(x, y, size Paper) []Point { return Bx(x, y, size, size).Corners() }

// The wall hatching rises at 45° with 1 mm between lines, so a square of 10 mm
// has about 10·√2 of them, and their lengths add up to area/spacing.
func TestHatchCoversTheArea(t *testing.T) {
	lines := HatchLines(HatchMasonry, [][]Point{square(0, 0, 10*MM)})
	if len(lines) < 13 || len(lines) > 15 {
		t.Errorf("%d lines, want 14 or so", len(lines))
	}
	if got := sumX(lines); got < 69*MM || got > 72*MM {
		t.Errorf("lines are %d µm along X, want 100/√2 mm", got)
	}
	for _, l := range lines {
		if d := l[1].Sub(l[0]); d.X <= 0 || d.Y+d.X > 2 || d.Y+d.X < -2 {
			t.Errorf("line %v does not rise at 45°", l)
		}
	}
}

func sumX(lines [][]Point) Paper {
	sum := Paper(0)
	for _, l := range lines {
		sum += max(l[1].X-l[0].X, l[0].X-l[1].X)
	}
	return sum
}

func TestHatchLeavesHolesAndGaps(t *testing.T) {
	outer, hole, gap := square(0, 0, 10*MM), square(2*MM, 2*MM, 3*MM), Bx(6*MM, 6*MM, 2*MM, 3*MM)
	whole := sumX(HatchLines(HatchMasonry, [][]Point{outer}))
	lines := HatchLines(HatchMasonry, [][]Point{outer, hole}, gap)
	for _, l := range lines {
		for _, b := range []Box{Bounds(hole...), gap} {
			if b.Inset(2).Struck(l[0], l[1]) {
				t.Errorf("line %v passes through %v", l, b)
			}
		}
	}
	// Each takes its share of the length, to a line more or less.
	if missing := whole - sumX(lines); missing < 8*MM || missing > 14*MM {
		t.Errorf("hole and gap of 15 mm² leave out %d µm along X, want 15/√2 mm", missing)
	}
}

// Areas that touch are hatched as one: that is why lines are counted from the
// origin.
func TestHatchContinuesAcrossAreas(t *testing.T) {
	left, right := Bx(0, 0, 7*MM, 9*MM).Corners(), Bx(7*MM, 0, 6*MM, 9*MM).Corners()
	both := sumX(HatchLines(HatchMasonry, [][]Point{left})) + sumX(HatchLines(HatchMasonry, [][]Point{right}))
	one := sumX(HatchLines(HatchMasonry, [][]Point{Bx(0, 0, 13*MM, 9*MM).Corners()}))
	if d := both - one; d < -60 || d > 60 {
		t.Errorf("two halves have %d µm of lines, the whole %d", both, one)
	}
}

func TestHatchOfNothing(t *testing.T) {
	for name, rings := range map[string][][]Point{
		"no rings":   nil,
		"empty ring": {{}},
		"a point":    {{Pt(5, 5)}},
		"a line":     {{Pt(0, 0), Pt(9*MM, 4*MM)}},
		"far away":   {square(0, 0, 2*MaxCoordinate)},
	} {
		if got := HatchLines(HatchOut, rings); len(got) != 0 {
			t.Errorf("%s: %d lines", name, len(got))
		}
	}
}

// Every hatching of any triangle stays in it, and in all its lines has the
// length that its area asks for.
func TestHatchOfTriangles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func() Point {
			c := rapid.Int64Range(-100_000, 300_000)
			return Pt(Paper(c.Draw(t, "x")), Paper(c.Draw(t, "y")))
		}
		h := Hatch(rapid.IntRange(0, int(hatchCount)-1).Draw(t, "hatch"))
		triangle := []Point{point(), point(), point()}
		bounds := Bounds(triangle...).Inset(-1)
		for _, l := range HatchLines(h, [][]Point{triangle}) {
			middle := Bounds(l...).Centre()
			if !bounds.Has(l[0]) || !bounds.Has(l[1]) || !inTriangle(triangle, middle) {
				t.Fatalf("line %v leaves the triangle %v", l, triangle)
			}
		}
	})
}

// inTriangle reports whether p lies in the triangle or within rounding of it.
func inTriangle(tri []Point, p Point) bool {
	left, right := false, false
	for i, a := range tri {
		b := tri[(i+1)%3]
		reach := 2 * int64(max(b.X-a.X, a.X-b.X)+max(b.Y-a.Y, a.Y-b.Y)) // twice a micrometre, as an area
		left, right = left || Turn(a, b, p) < -reach, right || Turn(a, b, p) > reach
	}
	return !left || !right
}
