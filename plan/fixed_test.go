package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// TestFixedParts reads every kind of fixed part. The bedroom is 5 in to
// 13 ft 9-3/4 in east; who faces its south wall has west on the right.
func TestFixedParts(t *testing.T) {
	house := complete(t, "", "testdata/base_house.toml")
	for _, tt := range []struct {
		keys string
		want Fixed
	}{
		{"do = \"use\"\nroom = \"bed\"\nwall = \"south\"\nfrom = \"right\"\nat = \"6ft\"", Fixed{Do: UseFixed, At: at(t, "6ft 5in")}},
		{"do = \"use\"\nwall = \"south\"\nat = \"6ft\"", Fixed{Do: UseFixed, At: 6 * foot}},
		{"do = \"avoid\"\nwall = \"south\"\nside = \"left\"\nfrom = \"end\"\nat = \"6ft\"", Fixed{Do: AvoidFixed, At: 24 * foot, Width: 12 * inch}},
		{"do = \"avoid\"\nwall = \"south\"\nat = \"6ft\"\nwidth = \"4in\"", Fixed{Do: AvoidFixed, At: 6 * foot, Width: 4 * inch}},
		{"do = \"there\"\nwall = \"south\"\nat = \"6ft\"\ndiameter = \"1in\"\ncables = 3", Fixed{Do: FixedThere, At: 6 * foot, Diameter: 1 * inch, Cables: 3}},
		{"do = \"there\"\npath = [[\"1ft\", \"2ft\"], [\"9ft\", \"2ft\"]]", Fixed{Do: FixedThere, Wall: -1, Path: []geom.Point{{X: 1 * foot, Y: 2 * foot}, {X: 9 * foot, Y: 2 * foot}}}},
		{"do = \"avoid\"\nfrom = [\"9ft\", \"2ft\"]\nto = [\"1ft\", \"5ft\"]", Fixed{Do: AvoidFixed, Wall: -1, Area: geom.Rect{Min: geom.Point{X: 1 * foot, Y: 2 * foot}, Max: geom.Point{X: 9 * foot, Y: 5 * foot}}}},
	} {
		j := jobOf(t, "[[fixed]]\nid = \"F\"\n"+tt.keys+"\n", house)
		tt.want.ID = "F"
		if diff := cmp.Diff([]Fixed{tt.want}, j.Fixed, cmpopts.IgnoreTypes(diag.Pos{})); diff != "" {
			t.Errorf("%s: %s", tt.keys, diff)
		}
	}
}

// An avoided hole keeps others away up to half its width, and no further.
func TestAvoids(t *testing.T) {
	f := Fixed{Do: AvoidFixed, At: 24 * inch, Width: 12 * inch}
	for _, tt := range []struct {
		off  measure.Length
		want bool
	}{{0, true}, {5 * inch, true}, {-5 * inch, true}, {6 * inch, false}, {-6 * inch, false}} {
		if got := f.Avoids(f.At + tt.off); got != tt.want {
			t.Errorf("%v away: %v", tt.off, got)
		}
	}
	f.Do = UseFixed
	if f.Avoids(f.At) {
		t.Error("a hole that is used keeps itself away")
	}
}

// So many of them that a lattice could not be laid are not read.
func TestTooManyFixed(t *testing.T) {
	path := strings.Repeat("[\"2ft\", \"2ft\"], [\"2ft\", \"4ft\"], ", 26)
	for _, tt := range []struct {
		number int
		keys   string
		want   string
	}{
		{mostFixed + 1, "do = \"avoid\"\nwall = \"west\"\nat = \"4ft\"\n", "found 101 of them; at most 100 are read"},
		{2, "do = \"use\"\npath = [" + path + "]\n", "found 104 points in the trunks so far; at most 100 are read"},
	} {
		var src strings.Builder
		src.WriteString("house = \"house.toml\"\n")
		for i := range tt.number {
			fmt.Fprintf(&src, "[[fixed]]\nid = \"F%d\"\n%s", i, tt.keys)
		}
		_, list := loadBoth(complete(t, src.String(), "testdata/base_job.toml"), complete(t, "", "testdata/base_house.toml"))
		if got := print(t, list); !strings.Contains(got, tt.want) {
			t.Error(got)
		}
	}
}
