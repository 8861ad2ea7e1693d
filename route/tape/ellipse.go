package tape

import (
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// An Ellipse is the expected error of a place. Lengths are rounded to the
// micrometre.
type Ellipse struct {
	// Major and Minor are the semi-axes at one standard deviation.
	Major, Minor measure.Length
	// Radial is √(Major² + Minor²): the root mean square of the distance
	// between the place wanted and the place found, one sigma radial. Between
	// 63 % and 68 % of tries are nearer.
	Radial measure.Length
	// Within95 is the radius of the circle that 95 % of tries fall into if all
	// errors are normal; more do where a mark's size is most of the error.
	Within95 measure.Length
	// Axis is the direction of Major in degrees counter-clockwise from house
	// east, 0 <= Axis < 180, to two decimals. It is zero for a circle.
	Axis float64
}

// A covariance is the symmetric matrix of a place's error, in square
// nanometres.
type covariance struct{ xx, xy, yy float64 }

// plus adds an error that is the same along every axis.
func (c covariance) plus(variance float64) covariance {
	return covariance{c.xx + variance, c.xy, c.yy + variance}
}

// along is the variance of the error in the direction of a unit vector.
func (c covariance) along(u vector) float64 {
	return float64(c.xx*u.x*u.x) + float64(2*c.xy*u.x*u.y) + float64(c.yy*u.y*u.y)
}

// axes finds the semi-axes, the roots of the characteristic polynomial, in
// nanometres.
func (c covariance) axes() (major, minor float64) {
	half, diff := (c.xx+c.yy)/2, (c.xx-c.yy)/2
	spread := math.Hypot(diff, c.xy)
	return math.Sqrt(half + spread), math.Sqrt(max(0, half-spread))
}

// radial is the root of the trace, in nanometres.
func (c covariance) radial() float64 { return math.Sqrt(c.xx + c.yy) }

func (c covariance) ellipse() Ellipse {
	major, minor := c.axes()
	e := Ellipse{
		Major: micrometres(major), Minor: micrometres(minor),
		Radial:   micrometres(c.radial()),
		Within95: micrometres(circle95(major, minor)),
	}
	if e.Major != e.Minor {
		e.Axis = hundredths(math.Atan2(c.xy, (c.xx-c.yy)/2) / 2 * 180 / math.Pi)
		if e.Axis < 0 {
			e.Axis += 180
		}
		if e.Axis >= 180 {
			e.Axis = 0
		}
	}
	return e
}

// Quantiles of 95 % for an error along a line and for one that is the same in
// all directions: Φ⁻¹(0.975) and √(-2 ln 0.05).
const (
	line95   = 1.959963984540054
	circular = 2.4477468306808166
)

// circle95 is the radius of the circle about the centre that holds 95 % of a
// normal error with standard deviations a >= b along its axes.
//
// The probability for a radius R is the integral over x of the density along
// the long axis times the probability of the chord across; with x = R sin t
// the integrand is smooth, and Simpson's rule with 64 steps is good to a
// millionth. It grows with R, so the radius is found by halving an interval.
func circle95(a, b float64) float64 {
	if a <= 0 {
		return 0
	}
	ratio := b / a
	low, high := line95, circular
	for range 30 {
		mid := (low + high) / 2
		if inCircle(mid, ratio) < 0.95 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2 * a
}

// inCircle is the probability that a normal error with deviations 1 and ratio
// along its axes is at most radius.
func inCircle(radius, ratio float64) float64 {
	if ratio == 0 {
		return math.Erf(radius / math.Sqrt2)
	}
	const steps = 64
	sum := 0.0
	for i := 0; i <= steps; i++ {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / steps)
		f := math.Exp(-square(radius*sin)/2) * math.Erf(radius*cos/(ratio*math.Sqrt2)) * radius * cos
		switch {
		case i == 0 || i == steps:
			sum += f
		case i%2 == 1:
			sum += 4 * f
		default:
			sum += 2 * f
		}
	}
	return sum * (math.Pi / 2 / steps) / 3 * math.Sqrt(2/math.Pi)
}

// A vector is a direction of length one in plan.
type vector struct{ x, y float64 }

// direction is the direction from a to b and their distance in nanometres;
// a != b.
func direction(a, b geom.Point) (vector, float64) {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	d := math.Hypot(dx, dy)
	return vector{dx / d, dy / d}, d
}

// cross is the sine of the angle from u to v.
func (u vector) cross(v vector) float64 { return float64(u.x*v.y) - float64(u.y*v.x) }

func (u vector) dot(v vector) float64 { return float64(u.x*v.x) + float64(u.y*v.y) }

// A fixing is a line of position: the place is known in the direction of
// normal, with a variance in square nanometres.
type fixing struct {
	normal   vector
	variance float64
}

// meet propagates the errors of two fixings to the place where they cross. ok
// is false if they are too nearly parallel for numbers to say anything.
func meet(f, g fixing) (c covariance, ok bool) {
	sin := f.normal.cross(g.normal)
	u, v, s := f.normal, g.normal, 1/(sin*sin)
	c = covariance{
		xx: (float64(f.variance*v.y*v.y) + float64(g.variance*u.y*u.y)) * s,
		xy: -(float64(f.variance*v.x*v.y) + float64(g.variance*u.x*u.y)) * s,
		yy: (float64(f.variance*v.x*v.x) + float64(g.variance*u.x*u.x)) * s,
	}
	return c, sin != 0 && c.xx+c.yy < square(float64(reach))
}

// cut is the angle at which two fixings cross, in degrees to two decimals.
func cut(f, g fixing) float64 {
	return hundredths(math.Atan2(math.Abs(f.normal.cross(g.normal)), f.normal.dot(g.normal)) * 180 / math.Pi)
}
