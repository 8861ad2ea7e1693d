package roof

import (
	order "cmp"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
)

// The rectangles that matter, no more.
func TestBlocks(t *testing.T) {
	rect := func(x1, y1, x2, y2 measure.Length) geom.Rect {
		return geom.Rect{Min: geom.Point{X: x1, Y: y1}, Max: geom.Point{X: x2, Y: y2}}
	}
	tests := []struct {
		name    string
		outline geom.Polygon
		gables  []int
		want    []geom.Rect
	}{
		{"box", box, nil, []geom.Rect{rect(0, 0, 40, 24)}},
		{"gable", box, []int{1, 3}, []geom.Rect{rect(0, 0, 40, 24)}},
		{"L", ell, nil, []geom.Rect{rect(0, 0, 10, 4), rect(0, 0, 4, 10)}},
		{"L, gabled", ell, []int{1, 4}, []geom.Rect{rect(0, 0, 10, 4), rect(0, 0, 4, 10)}},
		{"L, bar gabled at both ends", splitEll, []int{1, 4, 6}, []geom.Rect{rect(0, 0, 10, 4), rect(0, 0, 4, 10)}},
		{"T", tee, nil, []geom.Rect{rect(0, 0, 30, 10), rect(12, 0, 20, 24)}},
		// The body, and the strip behind the gable.
		{"front gable", frontGable, []int{1}, []geom.Rect{rect(0, 0, 40, 24), rect(14, 0, 26, 24)}},
		// The wing alone, for its east wall, besides the two bodies.
		{"gable on an inside corner", ell, []int{3}, []geom.Rect{rect(0, 0, 10, 4), rect(0, 0, 4, 10), rect(0, 4, 4, 10)}},
	}
	for _, tt := range tests {
		for g := range geom.Symmetries {
			var want []geom.Rect
			for _, area := range tt.want {
				want = append(want, g.Rect(area))
			}
			spec := moved(Spec{Outline: tt.outline, Gable: gablesAt(len(tt.outline), tt.gables...), Pitch: level}, g)
			var got []geom.Rect
			for _, b := range mustNew(t, spec).blocks {
				got = append(got, b.area)
			}
			if diff := cmp.Diff(sorted(want), sorted(got)); diff != "" {
				t.Errorf("%s, symmetry %d (-want +got)\n%s", tt.name, g, diff)
			}
		}
	}
}

func sorted(areas []geom.Rect) []geom.Rect {
	slices.SortFunc(areas, func(a, b geom.Rect) int {
		return order.Or(
			order.Compare(a.Min.X, b.Min.X), order.Compare(a.Min.Y, b.Min.Y),
			order.Compare(a.Max.X, b.Max.X), order.Compare(a.Max.Y, b.Max.Y),
		)
	})
	return areas
}
