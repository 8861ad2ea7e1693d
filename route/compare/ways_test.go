package compare

import (
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// Random ways on a small grid, against a set of its unit steps.
func TestWaysByUnitSteps(t *testing.T) {
	const side = 6
	dice := rand.New(rand.NewPCG(7, 7))
	type step struct{ from, to geom.Point }
	steps := func(list []Stretch) map[step]int {
		out := map[step]int{}
		for _, s := range list {
			at := s.From
			for at != s.To {
				next := at
				if s.From.X == s.To.X {
					next.Y++
				} else {
					next.X++
				}
				out[step{at, next}]++
				at = next
			}
		}
		return out
	}
	for range 500 {
		var res [2]route.Result
		var want [2]map[step]bool
		for i := range res {
			want[i] = map[step]bool{}
			for range 1 + dice.IntN(3) {
				points := []geom.Point3{{}}
				for range dice.IntN(5) {
					p := points[len(points)-1]
					if to := measure.Length(dice.IntN(side)); dice.IntN(2) == 0 {
						p.X = to
					} else {
						p.Y = to
					}
					points = append(points, p)
				}
				res[i].Routes = append(res[i].Routes, route.Route{Points: points})
				for j := 1; j < len(points); j++ {
					p, q := points[j-1], points[j]
					for x := min(p.X, q.X); x < max(p.X, q.X); x++ {
						want[i][step{geom.Point{X: x, Y: p.Y}, geom.Point{X: x + 1, Y: p.Y}}] = true
					}
					for y := min(p.Y, q.Y); y < max(p.Y, q.Y); y++ {
						want[i][step{geom.Point{X: p.X, Y: y}, geom.Point{X: p.X, Y: y + 1}}] = true
					}
				}
			}
		}
		w := waysOf(&res[0], &res[1])
		both, only := steps(w.Both), [2]map[step]int{steps(w.Only[0]), steps(w.Only[1])}
		for x := range side {
			for y := range side {
				p := geom.Point{X: measure.Length(x), Y: measure.Length(y)}
				for _, s := range []step{{p, p.Add(geom.Point{X: 1})}, {p, p.Add(geom.Point{Y: 1})}} {
					a, b := want[0][s], want[1][s]
					if both[s] != number01(a && b) || only[0][s] != number01(a && !b) || only[1][s] != number01(b && !a) {
						t.Fatalf("step %v: in both %d, in A %d, in B %d times, where A has it: %v, B: %v", s, both[s], only[0][s], only[1][s], a, b)
					}
				}
			}
		}
	}
}

func number01(b bool) int {
	if b {
		return 1
	}
	return 0
}

// A slanted shot is the same from either end, and in plan only if it is not
// straight up.
func TestSlantedWays(t *testing.T) {
	up := func(points ...geom.Point3) *route.Result {
		return &route.Result{Routes: []route.Route{{Points: points}}}
	}
	p, q, high := geom.Point3{X: 3, Y: 1}, geom.Point3{X: 1, Y: 2}, geom.Point3{X: 1, Y: 2, Z: 9}
	w := waysOf(up(p, q, high), up(high, q, p))
	want := []Stretch{{geom.Point{X: 3, Y: 1}, geom.Point{X: 1, Y: 2}}}
	if !slices.Equal(w.Both, want) || len(w.Only[0])+len(w.Only[1]) > 0 {
		t.Errorf("the same shot: %v", w)
	}
	other := geom.Point3{X: 2, Y: 5}
	w = waysOf(up(p, q), up(p, other))
	if len(w.Both) > 0 || !slices.Equal(w.Only[0], want) || len(w.Only[1]) != 1 {
		t.Errorf("two shots: %v", w)
	}
}

// Outlines that start at another corner are the same.
func TestOutlineStartsAnywhere(t *testing.T) {
	p := geom.Polygon{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 3}, {X: 0, Y: 3}}
	for i := range p {
		if got := fromLeast(slices.Concat(p[i:], p[:i])); !slices.Equal(got, p) {
			t.Errorf("from corner %d: %v", i, got)
		}
	}
}
