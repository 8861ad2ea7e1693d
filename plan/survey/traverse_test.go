package survey

import (
	"math"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func mustParse(t *testing.T, run string) []Leg {
	t.Helper()
	legs, faults := ParseRun(run, measure.Imperial)
	if faults != nil {
		t.Fatal(faults)
	}
	return legs
}

// near reports a value in a unit that is further than tolerance from want.
func near(t *testing.T, what string, got, unit measure.Length, want, tolerance float64) {
	t.Helper()
	if v := float64(got) / float64(unit); math.Abs(v-want) > tolerance {
		t.Errorf("%s = %.4f, want %.4f within %g", what, v, want, tolerance)
	}
}

// The loop of the Open Access Surveying Library, Traverse Computations,
// chapter I, in feet from A at north 500, east 2000. The page rounds
// latitudes and departures to 0.001 ft before it adds them up, hence the
// tolerance of 0.002. The adjusted coordinates are printed in its chapter G.
func TestPublishedLoop(t *testing.T) {
	legs := mustParse(t, `S 68°05'35" W 472.68ft, N 19°46'00" W 216.13ft, N 45°55'20" E 276.52ft, S 54°59'15" E 382.24ft`)
	ft := measure.Foot
	measured := Close(legs, false, 0)
	for i, want := range []struct{ lat, dep float64 }{
		{-176.357, -438.548}, {+203.395, -73.093}, {+192.357, +198.651}, {-219.312, +313.065},
	} {
		step := measured.Points[i+1].Sub(measured.Points[i])
		near(t, "latitude", step.Y, ft, want.lat, 0.001)
		near(t, "departure", step.X, ft, want.dep, 0.001)
	}
	if measured.Closes || measured.Misclosure != (Misclosure{}) {
		t.Errorf("a run that need not close does: %+v", measured)
	}

	loop := Close(legs, true, ft)
	near(t, "misclosure north", loop.Misclosure.DY, ft, 0.083, 0.002)
	near(t, "misclosure east", loop.Misclosure.DX, ft, 0.075, 0.002)
	if want := measure.Length(134_757) * ft / 100; loop.Misclosure.Perimeter != want {
		t.Errorf("perimeter = %v, want %v", loop.Misclosure.Perimeter, want)
	}
	for i, want := range []struct{ north, east float64 }{
		{500, 2000}, {323.614, 1561.426}, {526.996, 1488.321}, {719.336, 1686.956}, {500, 2000},
	} {
		near(t, "north", loop.Points[i].Y+500*ft, ft, want.north, 0.002)
		near(t, "east", loop.Points[i].X+2000*ft, ft, want.east, 0.002)
	}
	if !loop.Closes || loop.DirectionsHeld || loop.Points[4] != (geom.Point{}) {
		t.Errorf("the loop does not close by the compass rule: %+v", loop)
	}
}

// A published Bowditch example (course notes on traverse adjustment) in
// metres: AB 80.40 N76E, BC 46.30 S36E, CD 72.80 S61W, DA 68.00 N38W. The
// notes print a misclosure of 0.285 north where the sum is 0.2836.
func TestPublishedBowditchExample(t *testing.T) {
	legs := mustParse(t, "N 76° E 80.40m, S 36° E 46.30m, S 61° W 72.80m, N 38° W 68.00m")
	m := measure.Metre
	loop := Close(legs, true, m)
	near(t, "misclosure north", loop.Misclosure.DY, m, 0.2836, 0.0002)
	near(t, "misclosure east", loop.Misclosure.DX, m, -0.311, 0.0005)
	near(t, "perimeter", loop.Misclosure.Perimeter, m, 267.5, 0)
	if got := loop.Misclosure.Ratio(); got != 635 {
		t.Errorf("precision 1:%d, want 1:635", got)
	}
	for i, want := range []struct{ lat, dep float64 }{
		{19.365, 78.105}, {-37.507, 27.268}, {-35.371, -63.588}, {53.513, -41.786},
	} {
		step := loop.Points[i+1].Sub(loop.Points[i])
		near(t, "corrected latitude", step.Y, m, want.lat, 0.001)
		near(t, "corrected departure", step.X, m, want.dep, 0.001)
	}
}

// A house of walls along the axes, worked by hand in feet: by the compass rule
// as such, whose corners are turned a little, and with directions held, where
// 0.06 is spread over 79.94 of east-west wall and 0.04 over 51.96.
func TestHouseLoop(t *testing.T) {
	legs := mustParse(t, "E 40ft, N 26ft, W 39.94ft, S 25.96ft")
	ft := measure.Foot
	loop := Close(legs, true, ft/8)
	want := Misclosure{DX: 6 * ft / 100, DY: 4 * ft / 100, Linear: loop.Misclosure.Linear, Perimeter: 1319 * ft / 10}
	if loop.Misclosure != want {
		t.Errorf("misclosure %+v, want %+v", loop.Misclosure, want)
	}
	near(t, "linear misclosure", loop.Misclosure.Linear, ft, 0.0721, 0.00005)
	if got := loop.Misclosure.Ratio(); got != 1829 {
		t.Errorf("precision 1:%d, want 1:1829", got)
	}

	steps := make([]geom.Point, len(legs))
	for i, leg := range legs {
		steps[i] = leg.Bearing.vector(leg.Length)
	}
	compassRule(steps, geom.Point{X: want.DX, Y: want.DY}, legs)
	for i, corner := range []struct{ east, north float64 }{{0, 0}, {39.982, -0.012}, {39.970, 25.980}, {0.012, 25.968}, {0, 0}} {
		near(t, "compass rule, east", chain(steps)[i].X, ft, corner.east, 0.0005)
		near(t, "compass rule, north", chain(steps)[i].Y, ft, corner.north, 0.0005)
	}

	width, height := 39.94+0.06*39.94/79.94, 25.96+0.04*25.96/51.96
	for i, corner := range []struct{ east, north float64 }{{0, 0}, {width, 0}, {width, height}, {0, height}, {0, 0}} {
		near(t, "held, east", loop.Points[i].X, ft, corner.east, 1e-8)
		near(t, "held, north", loop.Points[i].Y, ft, corner.north, 1e-8)
	}
	if !loop.Closes || !loop.DirectionsHeld || !geom.Polygon(loop.Points[:4]).Rectilinear() {
		t.Errorf("the walls are not square: %+v", loop)
	}
}

// "Procedure for LEOC", Land Surveyors United: closures of 0.0784 and 0.0815
// over 3739 ft make 0.1131. It quotes 1:33 000; the quotient is 33 063.
func TestMisclosureRatio(t *testing.T) {
	ft := measure.Foot
	end := geom.Point{X: 784 * ft / 10_000, Y: 815 * ft / 10_000}
	m := misclosure([]Leg{{Length: 3739 * ft}}, []geom.Point{{}, end})
	near(t, "linear misclosure", m.Linear, ft, 0.1131, 0.00005)
	if got := m.Ratio(); got < 33_050 || got > 33_070 {
		t.Errorf("precision 1:%d, want 1:33063", got)
	}
	for _, tt := range []struct {
		linear, perimeter measure.Length
		want              int64
	}{{0, 100, 0}, {3, 10, 3}, {3, 11, 4}, {2, 5, 3}, {7, 0, 0}} {
		if got := (Misclosure{Linear: tt.linear, Perimeter: tt.perimeter}).Ratio(); got != tt.want {
			t.Errorf("%d over %d: 1:%d, want 1:%d", tt.linear, tt.perimeter, got, tt.want)
		}
	}
}

func TestCloseTolerance(t *testing.T) {
	in := measure.Inch
	legs := mustParse(t, "E 10ft, N 8ft, W 9ft 9in, S 8ft 4in") // misses by 3 and 4 in: 5 in
	for tolerance, want := range map[measure.Length]bool{5 * in: true, 5*in - 1: false, 0: false, -9 * in: false} {
		got := Close(legs, true, tolerance)
		if got.Closes != want || got.Misclosure.Linear != 5*in || (got.Points[4] == geom.Point{}) != want {
			t.Errorf("tolerance %v: %+v", tolerance, got)
		}
	}
	exact := Close(mustParse(t, "E 10ft, N 8ft, W 10ft, S 8ft"), true, 0)
	if !exact.Closes || exact.Misclosure.Ratio() != 0 {
		t.Errorf("an exact loop: %+v", exact)
	}
	if none := Close(nil, true, 0); len(none.Points) != 1 || !none.Closes {
		t.Errorf("no legs: %+v", none)
	}
	// Nonsense in, a point out: one leg cannot close.
	back := Close(mustParse(t, "E 1ft"), true, measure.Foot)
	if diff := cmp.Diff([]geom.Point{{}, {}}, back.Points); diff != "" {
		t.Error(diff)
	}
}

func TestShares(t *testing.T) {
	tests := []struct {
		total   measure.Length
		weights []measure.Length
		want    []measure.Length
	}{
		{0, []measure.Length{0, 0}, []measure.Length{0, 0}},
		{10, []measure.Length{1, 1}, []measure.Length{5, 5}},
		{10, []measure.Length{1, 1, 1}, []measure.Length{4, 3, 3}},
		{-10, []measure.Length{1, 1, 1}, []measure.Length{-4, -3, -3}},
		{10, []measure.Length{1, 0, 5}, []measure.Length{2, 0, 8}}, // 1.67, 8.33
		{2, []measure.Length{1, 1, 1, 2}, []measure.Length{1, 0, 0, 1}},
		{measure.MaxParsed, []measure.Length{measure.MaxParsed, measure.MaxParsed}, []measure.Length{measure.MaxParsed / 2, measure.MaxParsed / 2}},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, shares(tt.total, tt.weights)); diff != "" {
			t.Errorf("shares(%d, %v) (-want +got)\n%s", tt.total, tt.weights, diff)
		}
	}
}

// A step has the length of its leg to the nanometre, mirrors with its bearing,
// and is within a nanometre of the published sine of 30 degrees, 1/2.
func TestVector(t *testing.T) {
	if got := dms(30, 0, 0).vector(measure.MaxParsed); got.X != measure.MaxParsed/2 {
		t.Errorf("departure at N 30° E = %d, want %d", got.X, measure.MaxParsed/2)
	}
	rapid.Check(t, func(t *rapid.T) {
		angle := Bearing(rapid.Int32Range(0, int32(East)).Draw(t, "angle"))
		length := measure.Length(rapid.Int64Range(1, int64(measure.MaxParsed)).Draw(t, "length"))
		step := angle.vector(length)
		if d := geom.Dist(geom.Point{}, step) - length; d < -1 || d > 1 {
			t.Fatalf("a leg of %d nm at %v makes a step of %v", length, angle, step)
		}
		for b, want := range map[Bearing]geom.Point{
			fromQuadrant(angle, false, true): {X: -step.X, Y: step.Y},
			fromQuadrant(angle, true, false): {X: step.X, Y: -step.Y},
			fromQuadrant(angle, true, true):  {X: -step.X, Y: -step.Y},
			East - angle:                     {X: step.Y, Y: step.X},
		} {
			if got := b.vector(length); got != want {
				t.Fatalf("%v: %v mirrors %v: %v", b, got, angle, step)
			}
		}
	})
}

// Whatever the legs, an adjusted run closes exactly, no step moves further
// than its share and one nanometre of rounding, and walls stay square.
func TestCloseAdjusts(t *testing.T) {
	leg := func(step int32) *rapid.Generator[Leg] {
		return rapid.Custom(func(t *rapid.T) Leg {
			return Leg{
				Bearing: Bearing(step * rapid.Int32Range(0, int32(fullTurn)/step-1).Draw(t, "bearing")),
				Length:  measure.Length(rapid.Int64Range(1, 50e9).Draw(t, "length")),
			}
		})
	}
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]int32{1, int32(East)}).Draw(t, "step")
		legs := rapid.SliceOfN(leg(step), 1, 12).Draw(t, "legs")
		before, after := Close(legs, false, 0), Close(legs, true, measure.MaxParsed)
		m := after.Misclosure
		if !after.Closes || after.Points[len(legs)] != (geom.Point{}) {
			t.Fatalf("does not close: %+v", after)
		}
		for i, l := range legs {
			was, is := before.Points[i+1].Sub(before.Points[i]), after.Points[i+1].Sub(after.Points[i])
			if after.DirectionsHeld && (was.X == 0 && is.X != 0 || was.Y == 0 && is.Y != 0) {
				t.Fatalf("leg %d was turned: %v to %v", i, was, is)
			}
			if !after.DirectionsHeld {
				share := float64(l.Length) / float64(m.Perimeter)
				if math.Abs(float64(was.X-is.X)-float64(m.DX)*share) > 1.001 || math.Abs(float64(was.Y-is.Y)-float64(m.DY)*share) > 1.001 {
					t.Fatalf("leg %d moved from %v to %v, misclosure %+v", i, was, is, m)
				}
			}
		}
	})
}
