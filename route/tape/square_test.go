package tape

import (
	"math"
	"math/rand/v2"
	"testing"

	"topplate/plan/measure"
)

// Two distances from faces, tried many times: the faces and the place are off by
// the sketch, the tape by its own error, and by an angle off square, which makes
// it read too long. What is found is as far off as the ellipse says.
func TestSquareByTrials(t *testing.T) {
	const tries = 200_000
	r := &Request{
		Sketch: 6 * measure.Millimetre, Angle: 3,
		Tape: Tape{Constant: 3 * measure.Millimetre, Step: measure.Millimetre},
	}
	x, y := 2*measure.Metre, 5*measure.Metre
	e := r.Square(x, y)
	dice := rand.New(rand.NewPCG(7, 7))
	off := func(d measure.Length) float64 {
		mm := d.Millimetres()
		taped := mm / math.Cos(dice.NormFloat64()*3*math.Pi/180)
		reading := math.Round(taped + dice.NormFloat64()*3)
		return reading - mm + 6*dice.NormFloat64() + 6*dice.NormFloat64()
	}
	var xx, yy float64
	within := 0
	for range tries {
		a, b := off(x), off(y)
		xx, yy = xx+a*a, yy+b*b
		if math.Hypot(a, b) <= e.Within95.Millimetres() {
			within++
		}
	}
	// Y, the longer way, is off more.
	minor, major := math.Sqrt(xx/tries), math.Sqrt(yy/tries)
	if math.Abs(major/e.Major.Millimetres()-1) > 0.02 || math.Abs(minor/e.Minor.Millimetres()-1) > 0.02 || e.Axis != 90 {
		t.Errorf("%.3f by %.3f mm, want %v by %v, axis %v", major, minor, e.Major, e.Minor, e.Axis)
	}
	if share := float64(within) / tries; share < 0.94 || share > 0.965 {
		t.Errorf("%.4f of tries are within %v", share, e.Within95)
	}
	// Along one axis without a sketch to doubt and an angle to set off it is the
	// tape's own error alone.
	plain := &Request{Tape: r.Tape}
	if got, want := plain.Square(x, y), r.Tape.Sigma(x); got.Major != want || got.Minor != want || got.Axis != 0 {
		t.Errorf("%+v, want a circle of %v", got, want)
	}
}
