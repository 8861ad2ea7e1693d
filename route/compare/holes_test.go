package compare

import (
	"slices"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/work"
)

// plate is a hole in a plate, so many inches along a wall, with so much room.
func plate(wall int, along, free measure.Length) route.HolePlace {
	return route.HolePlace{Kind: route.PlateArc, Wall: wall, Along: along * measure.Inch, Free: free * measure.Inch, At: geom.Point3{X: along * measure.Inch}}
}

// boring is a plan with these walls and a hole at each place.
func boring(walls []string, places ...route.HolePlace) *work.Work {
	h := &plan.House{}
	for _, id := range walls {
		h.Walls = append(h.Walls, plan.Wall{ID: id})
	}
	res := &route.Result{Job: &plan.Job{House: h}, Graph: &route.Graph{Holes: places}}
	for i := range places {
		res.Holes = append(res.Holes, route.Hole{Place: i})
	}
	return &work.Work{Result: res}
}

// Which holes are the same: by the rules that the package comment states.
func TestHolesAreKnownByTheirPlace(t *testing.T) {
	ceiling := func(x measure.Length) route.HolePlace {
		return route.HolePlace{Kind: route.CeilingArc, Wall: -1, At: geom.Point3{X: x * measure.Inch}}
	}
	block := plate(0, 10, 12)
	block.Kind = route.BlockArc
	v, w := []string{"v", "w"}, []string{"w"}
	for _, c := range []struct {
		name string
		a, b *work.Work
		want [][2]int // index in A and in B of those that are the same
	}{
		{"far off in one long stretch", boring(v, plate(0, 10, 100)), boring(v, plate(0, 40, 100)), [][2]int{{0, 0}}},
		{"as far in another stretch", boring(v, plate(0, 10, 12)), boring(v, plate(0, 40, 12)), nil},
		{"near in another stretch", boring(v, plate(0, 10, 12)), boring(v, plate(0, 34, 12)), [][2]int{{0, 0}}},
		{"the same stretch before the nearer one", boring(v, plate(0, 0, 40)), boring(v, plate(0, 10, 4), plate(0, 15, 40)), [][2]int{{0, 1}}},
		{"the nearest in one stretch", boring(v, plate(0, 0, 40)), boring(v, plate(0, 9, 40), plate(0, 3, 40)), [][2]int{{0, 1}}},
		{"the nearest from the other side", boring(v, plate(0, 40, 40)), boring(v, plate(0, 31, 40), plate(0, 37, 40)), [][2]int{{0, 1}}},
		{"a wall that is gone beside one that stays", boring(v, plate(0, 10, 12)), boring(w, plate(0, 10, 12)), nil},
		{"another order", boring(v, plate(0, 0, 8), plate(0, 40, 8)), boring(v, plate(0, 40, 8), plate(0, 0, 8)), [][2]int{{0, 1}, {1, 0}}},
		{"another wall", boring(v, plate(0, 10, 12)), boring(v, plate(1, 10, 12)), nil},
		{"a wall with a new name", boring([]string{"v"}, plate(0, 10, 12)), boring(w, plate(0, 10, 12)), [][2]int{{0, 0}}},
		{"a wall with another number", boring(v, plate(1, 10, 12)), boring(w, plate(0, 10, 12)), [][2]int{{0, 0}}},
		{"another member", boring(v, plate(0, 10, 12)), boring(v, block), nil},
		{"ceilings, near and far", boring(v, ceiling(0), ceiling(100)), boring(v, ceiling(125), ceiling(20)), [][2]int{{0, 1}}},
		{"a ceiling and a plate", boring(v, ceiling(0)), boring(v, plate(0, 0, 12)), nil},
	} {
		d := &Difference{Plans: [2]*work.Work{c.a, c.b}}
		d.holes()
		var got [][2]int
		for i := range c.a.Holes {
			if h, _ := d.HoleOf(0, i); h.How == Changed {
				got = append(got, h.In)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: the same are %v, want %v", c.name, got, c.want)
		}
	}
}

// A leg is the same if it is of one kind and has both its ends.
func TestLegsOnlyInOneRoute(t *testing.T) {
	p, q, s := geom.Point3{X: 1}, geom.Point3{X: 2}, geom.Point3{X: 3}
	leg := func(k route.ArcKind, from, to geom.Point3) route.Leg { return route.Leg{Kind: k, From: from, To: to} }
	a := &route.Route{Legs: []route.Leg{leg(route.AlongArc, p, s), leg(route.AlongArc, q, s), leg(route.RodArc, p, q), leg(route.AlongArc, p, q)}}
	b := &route.Route{Legs: []route.Leg{leg(route.AlongArc, p, s), leg(route.AlongArc, p, q)}}
	if got, want := legsOnlyIn(a, b), []int{1, 2}; !slices.Equal(got, want) {
		t.Errorf("legs %v, want %v", got, want)
	}
}
