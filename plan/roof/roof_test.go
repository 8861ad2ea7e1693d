package roof

import (
	"errors"
	"math"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
)

func TestNewNamesAllThatIsWrong(t *testing.T) {
	good := func() Spec { return Spec{Outline: slices.Clone(box), Pitch: Pitch{5, 12}} }
	tests := []struct {
		name   string
		change func(*Spec)
		want   []string
	}{
		{"nothing", func(*Spec) {}, nil},
		{"clockwise", func(s *Spec) { s.Outline = s.Outline.Reverse() }, nil},
		{"no outline", func(s *Spec) { s.Outline = nil }, []string{"outline"}},
		{"aslant", func(s *Spec) { s.Outline[2].X++ }, []string{"outline"}},
		{"crossing", func(s *Spec) {
			s.Outline = geom.Polygon{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 4}, {X: 2, Y: 4}, {X: 2, Y: -2}, {X: 0, Y: -2}}
		}, []string{"outline"}},
		{"far away", func(s *Spec) { s.Outline = scaled(maxLength/39, s.Outline) }, []string{"outline"}},
		{"too many corners", func(s *Spec) { s.Outline = comb(maxCorners + 4) }, []string{"outline"}},
		{"the most corners", func(s *Spec) { s.Outline = comb(maxCorners) }, nil},
		{"gables of another outline", func(s *Spec) { s.Gable = make([]bool, 3) }, []string{"gable"}},
		{"all gables", func(s *Spec) { s.Gable = []bool{true, true, true, true} }, []string{"gable"}},
		{"cuts of another outline", func(s *Spec) { s.Flush = make([]bool, 3) }, []string{"flush"}},
		{"all gables or cuts", func(s *Spec) { s.Gable, s.Flush = []bool{true, true, false, false}, []bool{false, true, true, true} }, []string{"gable"}},
		{"flat", func(s *Spec) { s.Pitch.Rise = 0 }, []string{"pitch"}},
		{"falling", func(s *Spec) { s.Pitch.Run = -12 }, []string{"pitch"}},
		{"a wall", func(s *Spec) { s.Pitch = Pitch{101, 1} }, []string{"pitch"}},
		{"a floor", func(s *Spec) { s.Pitch = Pitch{1, 1001} }, []string{"pitch"}},
		{"long terms", func(s *Spec) { s.Pitch = Pitch{maxTerm + 1, maxTerm + 1} }, []string{"pitch"}},
		{"many things", func(s *Spec) {
			*s = Spec{Overhang: -1, Framing: Framing{Depth: -1, PlateWidth: maxLength + 1, Heel: -1}}
		}, []string{"outline", "pitch", "overhang", "depth", "plate width", "heel"}},
	}
	for _, tt := range tests {
		spec := good()
		tt.change(&spec)
		r, err := New(spec)
		if (r == nil) != (tt.want != nil) {
			t.Errorf("%s: roof %v, error %v", tt.name, r, err)
		}
		if diff := cmp.Diff(tt.want, fields(err)); diff != "" {
			t.Errorf("%s: fields (-want +got)\n%s", tt.name, diff)
		}
	}
}

// fields are the fields that an error of New names.
func fields(err error) (names []string) {
	all, _ := err.(interface{ Unwrap() []error })
	if all == nil {
		return nil
	}
	for _, e := range all.Unwrap() {
		var wrong *SpecError
		if errors.As(e, &wrong) && wrong.Reason != "" && wrong.Error() != "" {
			names = append(names, wrong.Field)
		}
	}
	return names
}

// comb is an outline of n corners, n divisible by 4, every tooth of another
// length.
func comb(n int) geom.Polygon {
	width := measure.Length(n/4*2 - 1)
	p := geom.Polygon{{X: width * ft}, {X: width * ft, Y: 40 * ft}}
	for x := width; x > 1; x -= 2 {
		deep := (x*7%13 + 5) * ft
		p = append(p, geom.Point{X: (x - 1) * ft, Y: 40 * ft}, geom.Point{X: (x - 1) * ft, Y: deep},
			geom.Point{X: (x - 2) * ft, Y: deep}, geom.Point{X: (x - 2) * ft, Y: 40 * ft})
	}
	return append(p, geom.Point{Y: 40 * ft}, geom.Point{})
}

// A Roof does not change when its Spec does.
func TestNewCopies(t *testing.T) {
	spec := Spec{Outline: scaled(ft, ell), Gable: gablesAt(6, 1), Pitch: Pitch{1, 1}}
	r := mustNew(t, spec)
	p := geom.Point{X: 9 * ft, Y: 1 * ft}
	before, _ := r.Slope(p)
	spec.Outline[1].X, spec.Gable[1] = 0, false
	if after, _ := r.Slope(p); after != before || r.Height(p) != 1*ft {
		t.Errorf("Slope = %v, was %v; Height = %v", after, before, r.Height(p))
	}
}

// The largest numbers that a Spec may have, and points past all of them.
func TestLargestRoof(t *testing.T) {
	r := mustNew(t, Spec{
		Outline:  scaled(maxLength, geom.Polygon{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}}),
		Gable:    gablesAt(4, 1, 2, 3),
		Pitch:    Pitch{100, 1},
		Overhang: maxLength,
		Framing:  Framing{Depth: maxLength, PlateWidth: maxLength},
	})
	if got := r.RidgeHeight(); got != 200*maxLength {
		t.Errorf("RidgeHeight() = %d", got)
	}
	if got := r.Height(geom.Point{Y: -2 * maxLength}); got != -100*maxLength {
		t.Errorf("the eave is at %d", got)
	}
	far := geom.Point{X: geom.MaxCoordinate, Y: -geom.MaxCoordinate}
	if got := r.Height(far); got >= 0 {
		t.Errorf("Height(%v) = %d", far, got)
	}
	if len(r.Lines()) != 4 || len(r.Contour(50*maxLength)) != 1 || r.Contour(math.MaxInt64) != nil || r.ClearContour(math.MinInt64/2) == nil {
		t.Error("lines or contours are missing")
	}
}

// The worst outline still takes well under a second for all that is drawn.
func BenchmarkLargestOutline(b *testing.B) {
	spec := Spec{Outline: comb(maxCorners), Pitch: Pitch{5, 12}, Overhang: 1 * ft}
	for b.Loop() {
		r := mustNew(b, spec)
		if len(r.Lines()) == 0 || len(r.Contour(1*in)) == 0 {
			b.Fatal("nothing to draw")
		}
	}
}
