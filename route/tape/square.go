package tape

import (
	"math"

	"topplate/plan/measure"
)

// Square is the expected error of the point where it is found by two distances
// from faces of walls, each taped square to its face: x from one along Y, y from
// one along X. Both faces and the point are off by r.Sketch. A tape that is off
// square by an angle of one standard deviation r.Angle, a, reads longer, by
// d·a²/2 for a small one, of which the root mean square is d·a²·√3/2.
func (r *Request) Square(x, y measure.Length) Ellipse {
	return covariance{xx: r.toFace(x), yy: r.toFace(y)}.plus(square(float64(r.Sketch))).ellipse()
}

func (r *Request) toFace(d measure.Length) float64 {
	slant := float64(d) * square(r.Angle*math.Pi/180) * math.Sqrt(3) / 2
	return r.Tape.variance(float64(d)) + square(slant) + square(float64(r.Sketch))
}
