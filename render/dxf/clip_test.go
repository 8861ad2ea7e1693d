package dxf

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"topplate/render/sheet"
)

// Points of a line that lie well inside a triangle, by the signs of three
// areas, are on a stretch that is kept, and points well outside are on none.
func TestCutAgainstTriangle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func() sheet.Point {
			c := rapid.Int64Range(-50_000, 50_000)
			return sheet.Pt(sheet.Paper(c.Draw(t, "x")), sheet.Paper(c.Draw(t, "y")))
		}
		triangle := []sheet.Point{point(), point(), point()}
		a, b := point(), point()
		kept := cut([]sheet.Point{a, b}, triangle)
		for i := range 50 {
			p := along(a, b, (float64(i)+0.5)/50)
			deep := depth(p, triangle)
			on := false
			for _, run := range kept {
				on = on || near(run[0], run[1], p)
			}
			if deep > 20 && !on || deep < -20 && on {
				t.Fatalf("%v lies %.0f µm inside of %v, kept: %v", p, deep, triangle, on)
			}
		}
	})
}

// depth is how far p lies inside a triangle, in micrometres, negative outside.
func depth(p sheet.Point, triangle []sheet.Point) float64 {
	least := math.Inf(1)
	way := float64(sheet.Turn(triangle[0], triangle[1], triangle[2]))
	for i, a := range triangle {
		b := triangle[(i+1)%3]
		side := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		least = min(least, math.Copysign(1, way)*float64(sheet.Turn(a, b, p))/max(side, 1))
	}
	return least
}

// near reports whether p lies between a and b, to a few micrometres.
func near(a, b, p sheet.Point) bool {
	to := func(q sheet.Point) float64 { return math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y)) }
	return to(a)+to(b) < math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))+4
}

// An outline that is bent inward keeps a line in two stretches; a polyline
// stays in one piece where it is not cut.
func TestCutKeepsRunsTogether(t *testing.T) {
	u := []sheet.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 20, Y: 10}, {X: 20, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 20}, {X: 0, Y: 20}}
	if got := cut([]sheet.Point{{X: -5, Y: 5}, {X: 35, Y: 5}}, u); len(got) != 2 || got[0][1] != sheet.Pt(10, 5) || got[1][0] != sheet.Pt(20, 5) {
		t.Errorf("%v, want 0 to 10 and 20 to 30", got)
	}
	if got := cut([]sheet.Point{{X: 5, Y: 5}, {X: 5, Y: 15}, {X: 25, Y: 15}, {X: 25, Y: 30}}, u); len(got) != 1 || len(got[0]) != 4 || got[0][3] != sheet.Pt(25, 20) {
		t.Errorf("%v, want one run of four points", got)
	}
}
