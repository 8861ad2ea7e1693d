package tape

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// MaxMarks bounds the marks of one request: all pairs of them are tried. A
// house has a few dozen.
const MaxMarks = 1000

// UsualCut is the least angle of cut, in degrees, that a fix is usually
// planned with: 30°, and at most 150° (strength of figure in surveying, from
// memory).
const UsualCut = 30.0

// A Mark is something that can be seen from above and stands on the plan.
type Mark struct {
	ID string
	At geom.Point
	// Place is one standard deviation, along each axis, of where the mark is
	// against its place on the plan, beyond the error of the whole sketch.
	Place measure.Length
	// Size is the width across of what the tape's end may be held to: 4 in for
	// a light box, zero for a corner or a nail.
	Size measure.Length
}

// variance is the square of one standard deviation along any axis of where
// the tape's end is held, in square nanometres. Anywhere on a disc of the
// mark's size is as likely as elsewhere: a quarter of the diameter along each
// axis.
func (m Mark) variance() float64 {
	return square(float64(m.Place)) + square(float64(m.Size)/4)
}

// A Tape says how well a distance can be taped. All its parts are independent
// and add as squares.
type Tape struct {
	// Constant is one standard deviation of holding and reading, whatever the
	// distance.
	Constant measure.Length
	// PPM is one standard deviation in millionths of the distance.
	PPM float64
	// Rise is one standard deviation of how much higher one end is held than
	// the other. The plan distance is then short by rise²/(2·distance).
	Rise measure.Length
	// Sag is the weight of a metre of tape over the pull on it, per metre, for
	// a tape that hangs free; zero for one that lies on the joists. The plan
	// distance is short by distance³·sag²/24 (the sag correction for a
	// parabola). It is not corrected but counted as an error.
	Sag float64
	// Step is the finest mark that is set off: measure.Graduation or a
	// millimetre. Zero sets off the distance exactly.
	Step measure.Length
	// Longest is what the tape reaches, or zero for any distance.
	Longest measure.Length
}

// Sigma is one standard deviation of a plan distance d taped once, rounded to
// the micrometre.
func (t Tape) Sigma(d measure.Length) measure.Length {
	return micrometres(math.Sqrt(t.variance(float64(d))))
}

// variance is Sigma squared for a distance in nanometres.
func (t Tape) variance(d float64) float64 {
	v := square(float64(t.Constant)) + square(t.PPM*1e-6*d) + t.setting()
	if d > 0 && t.Rise > 0 {
		// The mean square of h²/2d for a normal h is 3 rise⁴/4d². A tape can't
		// be off by more than its own length.
		slope := math.Sqrt(3) * square(float64(t.Rise)) / (2 * d)
		v += square(min(slope, d))
	}
	sag := square(t.Sag*d*1e-9) * d / 24
	return v + square(min(sag, d))
}

// setting is the variance of setting off a distance to the nearest step.
func (t Tape) setting() float64 { return square(float64(t.Step)) / 12 }

// show rounds a distance, zero or more, to the nearest step, halves up.
func (t Tape) show(d measure.Length) measure.Length {
	if t.Step <= 0 {
		return d
	}
	down := d % t.Step
	if down < t.Step-down {
		return d - down
	}
	return d - down + t.Step
}

// A Request asks how to find a point.
type Request struct {
	Want  geom.Point
	Marks []Mark
	// Obstacles are what a tape can't cross: ducts, tanks, a chimney. A tape
	// may touch an edge.
	Obstacles []geom.Rect
	Tape      Tape
	// Sketch is one standard deviation, along each axis, of where a place is
	// against the plan: of each mark and of the point.
	Sketch measure.Length
	// Angle is one standard deviation of an angle set off from the joists or
	// from a wall, in degrees.
	Angle float64
	// LeastCut is the angle of cut, in degrees, below which a fix is marked
	// weak, as one that is as much short of 180° is. See UsualCut.
	LeastCut float64
	// Joists is nil where there are none to count.
	Joists *Joists
}

// check reports everything that is wrong with r.
func (r *Request) check() error {
	var errs []error
	bad := func(format string, a ...any) { errs = append(errs, fmt.Errorf(format, a...)) }
	if n := len(r.Marks); n > MaxMarks {
		bad("found %d marks, more than %d", n, MaxMarks)
	}
	within := func(what string, p geom.Point) {
		if !inRange(p.X) || !inRange(p.Y) {
			bad("%s is out of range", what)
		}
	}
	positive := func(what string, l measure.Length) {
		if l < 0 || !inRange(l) {
			bad("%s is %v; want zero or more", what, l)
		}
	}
	within("the point", r.Want)
	for _, m := range r.Marks {
		within("mark "+m.ID, m.At)
		positive("the place error of mark "+m.ID, m.Place)
		positive("the size of mark "+m.ID, m.Size)
	}
	positive("the constant error of the tape", r.Tape.Constant)
	positive("the rise of the tape", r.Tape.Rise)
	positive("the step of the tape", r.Tape.Step)
	positive("the length of the tape", r.Tape.Longest)
	positive("the error of the sketch", r.Sketch)
	for _, f := range []struct {
		what  string
		value float64
		most  float64
	}{
		{"the proportional error of the tape", r.Tape.PPM, 1e6},
		{"the sag of the tape", r.Tape.Sag, 10},
		{"the error of an angle", r.Angle, 90},
		{"the least angle of cut", r.LeastCut, 90},
	} {
		if !(f.value >= 0 && f.value <= f.most) {
			bad("%s is %v; want 0 to %v", f.what, f.value, f.most)
		}
	}
	if j := r.Joists; j != nil {
		positive("the error of the joists", j.Sigma)
		if err := j.check(); err != nil {
			errs = append(errs, err)
		}
	}
	return errors.Join(errs...)
}

// reach is the largest magnitude of a coordinate or error that is taken:
// 1000 km, so that distances stay exact in a float64.
const reach = 1_000_000 * measure.Metre

func inRange(l measure.Length) bool { return -reach <= l && l <= reach }

// sorted returns the marks by id and place, so that nothing follows the order
// in which they were given.
func sorted(marks []Mark) []Mark {
	out := slices.Clone(marks)
	slices.SortStableFunc(out, func(a, b Mark) int {
		return cmp.Or(cmp.Compare(a.ID, b.ID), cmp.Compare(a.At.Y, b.At.Y), cmp.Compare(a.At.X, b.At.X),
			cmp.Compare(a.Place, b.Place), cmp.Compare(a.Size, b.Size))
	})
	return out
}

func square(x float64) float64 { return x * x }

// micrometres rounds nanometres to whole micrometres.
func micrometres(nm float64) measure.Length {
	return measure.Length(math.Round(nm/1000)) * measure.Micrometre
}

// hundredths rounds degrees to two decimals.
func hundredths(degrees float64) float64 { return math.Round(degrees*100) / 100 }
