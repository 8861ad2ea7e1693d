package label

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"topplate/render/sheet"
)

func TestMeet(t *testing.T) {
	for _, c := range []struct {
		name       string
		a, b, c, d sheet.Point
		want       bool
	}{
		{"cross", sheet.Pt(0, 0), sheet.Pt(4, 4), sheet.Pt(0, 4), sheet.Pt(4, 0), true},
		{"end on the other", sheet.Pt(0, 0), sheet.Pt(4, 0), sheet.Pt(2, 0), sheet.Pt(2, 5), true},
		{"common end", sheet.Pt(0, 0), sheet.Pt(4, 0), sheet.Pt(4, 0), sheet.Pt(9, 9), true},
		{"apart", sheet.Pt(0, 0), sheet.Pt(4, 0), sheet.Pt(2, 1), sheet.Pt(2, 5), false},
		{"in line, apart", sheet.Pt(0, 0), sheet.Pt(4, 4), sheet.Pt(5, 5), sheet.Pt(9, 9), false},
		{"in line, overlapping", sheet.Pt(0, 0), sheet.Pt(6, 6), sheet.Pt(5, 5), sheet.Pt(9, 9), true},
		{"parallel", sheet.Pt(0, 0), sheet.Pt(4, 4), sheet.Pt(1, 0), sheet.Pt(5, 4), false},
	} {
		if got := meet(c.a, c.b, c.c, c.d); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// The grid must find whatever touches, wherever it lies.
func TestGridFindsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func() sheet.Point {
			c := rapid.Int64Range(-30_000, 130_000)
			return sheet.Pt(sheet.Paper(c.Draw(t, "x")), sheet.Paper(c.Draw(t, "y")))
		}
		g := newGrid(page)
		a, b, query := point(), point(), sheet.Bounds(point(), point())
		g.addLine(1, a, b)
		box := sheet.Bounds(point(), point())
		g.add(2, box)
		found := map[int32]bool{}
		for _, id := range g.near(query, nil) {
			found[id] = true
		}
		if query.Struck(a, b) && !found[1] {
			t.Fatalf("line %v %v is not found in %v", a, b, query)
		}
		if query.Overlaps(box) && !found[2] {
			t.Fatalf("box %v is not found in %v", box, query)
		}
		g.remove(2, box)
		for _, id := range g.near(page.Inset(-40*mm), nil) {
			if id == 2 {
				t.Fatal("a box that was removed is still found")
			}
		}
	})
}

// The first numbers of SplitMix64 for seed 1234567, as the reference code by
// Vigna prints them.
func TestRandom(t *testing.T) {
	r := random(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423} {
		if got := r.next(); got != want {
			t.Errorf("number %d is %d, want %d", i, got, want)
		}
	}
	for range 100 {
		if n := r.below(7); n < 0 || n > 6 {
			t.Fatalf("%d is not below 7", n)
		}
	}
}

// Struck must agree with an exact clip of the segment against the box.
func TestStruckAgainstClipping(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Int64Range(-6, 6)
		point := func() sheet.Point { return sheet.Pt(sheet.Paper(c.Draw(t, "x")), sheet.Paper(c.Draw(t, "y"))) }
		a, b, box := point(), point(), sheet.Bounds(point(), point())
		if got, want := box.Struck(a, b), clips(a, b, box); got != want {
			t.Fatalf("%v struck by %v %v: %v, want %v", box, a, b, got, want)
		}
	})
}

// clips finds the interval of the parameter for which the segment is strictly
// inside the box, in exact fractions (Liang and Barsky, 1984).
func clips(a, b sheet.Point, box sheet.Box) bool {
	lo, hi := big.NewRat(0, 1), big.NewRat(1, 1)
	open := true
	limit := func(from, way, low, high sheet.Paper) {
		if way == 0 {
			open = open && low < from && from < high
			return
		}
		enter, leave := big.NewRat(int64(low-from), int64(way)), big.NewRat(int64(high-from), int64(way))
		if way < 0 {
			enter, leave = leave, enter
		}
		if enter.Cmp(lo) > 0 {
			lo = enter
		}
		if leave.Cmp(hi) < 0 {
			hi = leave
		}
		open = open && enter.Cmp(leave) < 0 && leave.Sign() > 0 && enter.Cmp(big.NewRat(1, 1)) < 0
	}
	limit(a.X, b.X-a.X, box.Min.X, box.Max.X)
	limit(a.Y, b.Y-a.Y, box.Min.Y, box.Max.Y)
	return open && (lo.Cmp(hi) < 0 || a == b)
}
