package roof

import (
	"math"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"pgregory.net/rapid"
)

// twoBySix is a 2x6 rafter on a 2x4 plate. Actual sizes are those of American
// Softwood Lumber Standard PS 20: 1.5 x 5.5 in and 1.5 x 3.5 in.
var twoBySix = Framing{Kind: Rafter, Depth: 11 * in / 2, PlateWidth: 7 * in / 2}

const joist = 11 * in / 2 // a 2x6 ceiling joist on the same plate

// framed is a gable roof of the pitch on a house 60 ft by 40 ft, with its eaves
// in the south and the north.
func framed(t *testing.T, rise int, f Framing) *Roof {
	t.Helper()
	return mustNew(t, Spec{
		Outline:  scaled(ft, geom.Polygon{{}, {X: 60}, {X: 60, Y: 40}, {Y: 40}}),
		Gable:    gablesAt(4, 1, 3),
		Pitch:    Pitch{rise, 12},
		Overhang: 16 * in,
		Framing:  f,
	})
}

// at is a point x inward of the outer face of the plate.
func at(x measure.Length) geom.Point { return geom.Point{X: 20 * ft, Y: x} }

// Clear height under a 2x6 rafter with a full-width birdsmouth on a 3-1/2 in
// plate, from the geometry of the birdsmouth: underside m(x - w), sheathing
// d·√(1+m²) higher. The figures were worked out by hand to 0.01 in.
func TestClearHeightWorkedExamples(t *testing.T) {
	tests := []struct {
		name string
		rise int
		x    measure.Length
		get  func(*Roof, geom.Point) measure.Length
		want float64 // in
	}{
		{"rafter", 4, 48 * in, (*Roof).UnderRafter, 14.83},
		{"sheathing", 4, 48 * in, (*Roof).UnderSheathing, 20.63},
		{"rafter", 6, 48 * in, (*Roof).UnderRafter, 22.25},
		{"sheathing", 6, 48 * in, (*Roof).UnderSheathing, 28.40},
		{"sheathing over the middle of the plate", 4, 7 * in / 4, (*Roof).UnderSheathing, 5.21},
		{"sheathing over the middle of the plate", 6, 7 * in / 4, (*Roof).UnderSheathing, 5.27},
		{"tail at a 16 in overhang", 4, -16 * in, (*Roof).UnderRafter, -6.50},
		{"tail at a 16 in overhang", 6, -16 * in, (*Roof).UnderRafter, -9.75},
		{"inner edge of the plate", 8, 7 * in / 2, (*Roof).UnderRafter, 0},
	}
	for _, tt := range tests {
		got := float64(tt.get(framed(t, tt.rise, twoBySix), at(tt.x))) / float64(in)
		if math.Abs(got-tt.want) > 0.005 {
			t.Errorf("%s, %d:12 at %v: %.3f in, want %.2f", tt.name, tt.rise, tt.x, got, tt.want)
		}
	}
	// 14.83 in above the plate are 9.33 in above the joists.
	if got := float64(framed(t, 4, twoBySix).UnderRafter(at(48*in))-joist) / float64(in); math.Abs(got-9.33) > 0.005 {
		t.Errorf("above the joists: %.3f in, want 9.33", got)
	}
}

// 30 in of clear height above 2x6 joists begins 110.0, 74.5 and 56.8 in from
// the outer face of the plate at 4, 6 and 8 in 12.
func TestThirtyInchesOfClearHeight(t *testing.T) {
	for rise, want := range map[int]float64{4: 110.0, 6: 74.5, 8: 56.8} {
		zone := framed(t, rise, twoBySix).ClearContour(30*in + joist)
		if len(zone) != 1 {
			t.Fatalf("%d:12: %d zones", rise, len(zone))
		}
		if got := float64(zone[0].Bounds().Min.Y) / float64(in); math.Abs(got-want) > 0.05 {
			t.Errorf("%d:12: %.2f in, want %.1f", rise, got, want)
		}
	}
}

// A truss with a heel of 4 in and a 2x4 top chord: the top of the chord is at
// heel + m·x, its underside lower by the chord laid to the pitch.
func TestTruss(t *testing.T) {
	truss := framed(t, 5, Framing{Kind: Truss, Depth: 12 * in, Heel: 4 * in})
	tests := []struct{ x, sheathing, chord measure.Length }{
		{0, 4 * in, -9 * in}, // 12 in deep is 13 in at 5:12
		{12 * in, 9 * in, -4 * in},
		{48 * in, 24 * in, 11 * in},
		{-12 * in, -1 * in, -14 * in},
	}
	for _, tt := range tests {
		if got := truss.UnderSheathing(at(tt.x)); got != tt.sheathing {
			t.Errorf("at %v: sheathing %v, want %v", tt.x, got, tt.sheathing)
		}
		if got := truss.UnderRafter(at(tt.x)); got != tt.chord {
			t.Errorf("at %v: chord %v, want %v", tt.x, got, tt.chord)
		}
	}
}

// Whatever the framing, the underside of the sheathing lies the same distance
// from the surface, and the rafter lower by its slant.
func TestUndersidesFollowTheSurface(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		spec.Framing = Framing{
			Kind:       Kind(rapid.IntRange(0, 1).Draw(t, "kind")),
			Depth:      measure.Length(rapid.IntRange(0, 50).Draw(t, "depth")),
			PlateWidth: measure.Length(rapid.IntRange(0, 20).Draw(t, "plate")),
			Heel:       measure.Length(rapid.IntRange(0, 20).Draw(t, "heel")),
		}
		r := mustNew(t, spec)
		p := drawPoint(t, spec)
		want := r.Height(p) + spec.Framing.Heel
		if spec.Framing.Kind == Rafter {
			want = r.Height(p) - spec.Framing.PlateWidth + level.slant(spec.Framing.Depth)
		}
		if got := r.UnderSheathing(p); got != want {
			t.Fatalf("UnderSheathing = %d, want %d", got, want)
		}
		if got := r.UnderSheathing(p) - r.UnderRafter(p); got != level.slant(spec.Framing.Depth) {
			t.Fatalf("the rafter is %d high, want %d", got, level.slant(spec.Framing.Depth))
		}
	})
}

func TestKindNames(t *testing.T) {
	if Rafter.String() != "rafter" || Truss.String() != "truss" {
		t.Errorf("kinds are %v and %v", Rafter, Truss)
	}
}
