package roof

import (
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"pgregory.net/rapid"
)

// A roof of 3 in 12 over 14 ft by 24 ft, cut off on the west against the wall of
// a storey, by hand. Over the middle of the south side a plane rises from the
// south eave, 3 in to a foot; the ridge is 12 ft from the south and the north
// eave, 3 ft high, and runs from the cut to 12 ft from the east eave.
func TestFlushByHand(t *testing.T) {
	const in = measure.Inch
	r := mustNew(t, Spec{
		Outline:  geom.Polygon{{X: 0, Y: 0}, {X: 14 * ft, Y: 0}, {X: 14 * ft, Y: 24 * ft}, {X: 0, Y: 24 * ft}},
		Flush:    []bool{false, false, false, true},
		Pitch:    Pitch{3, 12},
		Overhang: 1 * ft,
	})
	for _, tt := range []struct {
		x, y, height measure.Length
		roofed       bool
	}{
		{0, 12 * ft, 3 * ft, true},
		{2 * ft, 12 * ft, 3 * ft, true},
		{14 * ft, 12 * ft, 0, true},
		{8 * ft, 12 * ft, 18 * in, true},
		{1 * ft, 4 * ft, 12 * in, true},
		{1 * ft, -1 * ft, -3 * in, true},
		{15 * ft, 12 * ft, -3 * in, true},
		{0, -1 * ft, -3 * in, true},
		// Past the cut there is no roof.
		{-1, 12 * ft, 0, false},
		{-6 * in, 12 * ft, 0, false},
		{-1, -6 * in, 0, false},
	} {
		p := geom.Point{X: tt.x, Y: tt.y}
		if _, ok := r.Slope(p); ok != tt.roofed {
			t.Errorf("a roof over %v: %v", p, ok)
		}
		if got := r.Height(p); tt.roofed && got != tt.height {
			t.Errorf("Height(%v) = %v, want %v", p, got, tt.height)
		}
	}
	rakes := 0
	for _, l := range r.Lines() {
		if l.A.X < 0 || l.B.X < 0 {
			t.Errorf("a line past the cut: %v", l)
		}
		if l.Kind == Rake {
			rakes++
			if l.A.X != 0 || l.B.X != 0 {
				t.Errorf("a rake off the cut: %v", l)
			}
		}
	}
	if rakes != 2 {
		t.Errorf("%d rakes along the cut, want one for each plane", rakes)
	}
}

// Flush edges are gables as far as the outline goes, and the roof past it is a
// part of that with gables.
func TestFlushIsGableWithoutOverhang(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		flush := rapid.SliceOfN(rapid.Bool(), len(spec.Outline), len(spec.Outline)).Draw(t, "flush")
		gable, eaves := make([]bool, len(flush)), 0
		for i := range flush {
			gable[i] = flush[i] || spec.Gable != nil && spec.Gable[i]
			if !gable[i] {
				eaves++
			}
		}
		if eaves == 0 {
			return
		}
		cut := spec
		cut.Flush = flush
		spec.Gable = gable
		r, g := mustNew(t, cut), mustNew(t, spec)
		p := drawPoint(t, spec)
		if spec.Outline.Contains(p) && r.Height(p) != g.Height(p) {
			t.Fatalf("Height(%v) = %v with flush edges, %v with gables", p, r.Height(p), g.Height(p))
		}
		_, some := r.Slope(p)
		if _, all := g.Slope(p); some && !all || spec.Outline.Contains(p) && !some {
			t.Fatalf("a roof over %v: %v with flush edges, %v with gables", p, some, all)
		}
	})
}
