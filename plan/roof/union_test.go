package roof

import (
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestContourByHand(t *testing.T) {
	tests := []struct {
		name    string
		outline geom.Polygon
		gables  []int
		h       measure.Length
		want    []geom.Polygon
	}{
		{"hip", box, nil, 5, []geom.Polygon{{{X: 5, Y: 5}, {X: 35, Y: 5}, {X: 35, Y: 19}, {X: 5, Y: 19}}}},
		{"gable", box, []int{1, 3}, 5, []geom.Polygon{{{X: 0, Y: 5}, {X: 40, Y: 5}, {X: 40, Y: 19}, {X: 0, Y: 19}}}},
		{"at the plate", ell, nil, 0, []geom.Polygon{ell}},
		{"below the plate", ell, nil, -3, []geom.Polygon{ell}},
		{"L", ell, nil, 1, []geom.Polygon{{{X: 1, Y: 1}, {X: 9, Y: 1}, {X: 9, Y: 3}, {X: 3, Y: 3}, {X: 3, Y: 9}, {X: 1, Y: 9}}}},
		{"ridge", ell, nil, 2, nil},
		{"above the ridge", ell, nil, 3, nil},
		{"T, above its stem", tee, nil, 4, []geom.Polygon{{{X: 4, Y: 4}, {X: 26, Y: 4}, {X: 26, Y: 6}, {X: 4, Y: 6}}}},
		{"wide stem, above its bar", wideTee, nil, 5, []geom.Polygon{{{X: 13, Y: 5}, {X: 17, Y: 5}, {X: 17, Y: 19}, {X: 13, Y: 19}}}},
		{"front gable", frontGable, []int{1}, 4, []geom.Polygon{{
			{X: 18, Y: 0}, {X: 22, Y: 0}, {X: 22, Y: 4}, {X: 36, Y: 4}, {X: 36, Y: 20}, {X: 4, Y: 20}, {X: 4, Y: 4}, {X: 18, Y: 4},
		}}},
		// The cross gable's own peak is apart from the ridge behind.
		{
			"two parts",
			geom.Polygon{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 2}, {X: 14, Y: 2}, {X: 14, Y: 0}, {X: 24, Y: 0}, {X: 24, Y: 8}, {X: 0, Y: 8}},
			nil, 3,
			[]geom.Polygon{
				{{X: 3, Y: 3}, {X: 7, Y: 3}, {X: 7, Y: 5}, {X: 3, Y: 5}},
				{{X: 17, Y: 3}, {X: 21, Y: 3}, {X: 21, Y: 5}, {X: 17, Y: 5}},
			},
		},
	}
	for _, tt := range tests {
		r := mustNew(t, Spec{Outline: tt.outline, Gable: gablesAt(len(tt.outline), tt.gables...), Pitch: level, Overhang: 2})
		if diff := cmp.Diff(tt.want, r.Contour(tt.h)); diff != "" {
			t.Errorf("%s at %d (-want +got)\n%s", tt.name, tt.h, diff)
		}
	}
}

// Off its own lines, a contour has the points where the roof is high enough
// and no others.
func TestContoursAgreeWithHeights(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		spec.Pitch = drawPitch(t)
		spec.Framing = Framing{Kind: Kind(rapid.IntRange(0, 1).Draw(t, "kind")), Depth: 3, PlateWidth: 5, Heel: 4}
		r := mustNew(t, spec)
		h := measure.Length(rapid.Int64Range(-5, int64(r.RidgeHeight())+5).Draw(t, "h"))
		for _, zone := range []struct {
			outlines []geom.Polygon
			height   func(geom.Point) measure.Length
		}{
			{r.Contour(h), r.Height},
			{r.ClearContour(h), r.UnderRafter},
		} {
			for range 10 {
				p := drawPoint(t, spec)
				enough := func(p geom.Point) bool { return spec.Outline.Contains(p) && zone.height(p) >= h }
				if onEdge(p, enough) {
					continue
				}
				if got := covers(zone.outlines, p); got != enough(p) {
					t.Fatalf("%v: is %v within %v, which is at %d? %v", zone.outlines, p, h, zone.height(p), got)
				}
			}
		}
	})
}

// onEdge reports whether the answer is another one next to p.
func onEdge(p geom.Point, answer func(geom.Point) bool) bool {
	for _, d := range [4]geom.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		if answer(p.Add(d)) != answer(p) {
			return true
		}
	}
	return false
}

// covers reports whether the outlines cover p by the even-odd rule.
func covers(outlines []geom.Polygon, p geom.Point) (in bool) {
	for _, outline := range outlines {
		in = in != outline.Contains(p)
	}
	return in
}

func TestContoursAreOutlines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		r := mustNew(t, spec)
		h := measure.Length(rapid.Int64Range(0, int64(r.RidgeHeight())).Draw(t, "h"))
		for _, outline := range r.Contour(h) {
			if !outline.Rectilinear() || !outline.IsSimple() {
				t.Fatalf("Contour(%d) has %v", h, outline)
			}
		}
	})
}

func TestUnionWithHole(t *testing.T) {
	ring := []geom.Rect{
		{Max: geom.Point{X: 9, Y: 2}},
		{Min: geom.Point{Y: 7}, Max: geom.Point{X: 9, Y: 9}},
		{Max: geom.Point{X: 2, Y: 9}},
		{Min: geom.Point{X: 7}, Max: geom.Point{X: 9, Y: 9}},
	}
	want := []geom.Polygon{
		{{X: 0, Y: 0}, {X: 9, Y: 0}, {X: 9, Y: 9}, {X: 0, Y: 9}},
		{{X: 2, Y: 2}, {X: 2, Y: 7}, {X: 7, Y: 7}, {X: 7, Y: 2}},
	}
	if diff := cmp.Diff(want, union(ring)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if got := union(nil); got != nil {
		t.Errorf("nothing makes %v", got)
	}
}

func BenchmarkContour(b *testing.B) {
	r := benchmarkRoof(b)
	for b.Loop() {
		if len(r.ClearContour(1*ft)) != 1 {
			b.Fatal("no zone")
		}
	}
}
