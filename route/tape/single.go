package tape

import (
	"math"

	"topplate/plan/measure"
)

// A JoistFix finds the point by counting joists to the line it is on, and
// taping one distance to a place on that line.
type JoistFix struct {
	Mark     Mark
	Count    Count
	Distance Reading
	// Way is +1 where the point lies from the mark towards larger coordinates
	// along the joists, and -1 where it lies towards smaller: the arc crosses
	// the line on both sides.
	Way int
	// Along is from the mark to the point along the joists.
	Along measure.Length
	// Cut is the angle at which the arc crosses the line, in degrees to two
	// decimals: 90 where the tape runs along the joists, which is best, and
	// near 0 where it runs square across them.
	Cut   float64
	Error Ellipse
	// Weak is as for a Pair.
	Weak bool
}

// joist finds the mark from which a count and a distance fix the point best.
// The line is off by the joists' own error, and by that of a short tape from
// the last joist.
func (a *Answer) joist(r *Request, sights []sight) {
	j := r.Joists
	if j == nil {
		return
	}
	line := fixing{vector{0, 1}, square(float64(j.Sigma)) + square(float64(r.Tape.Constant)) + r.Tape.setting()}
	if j.AlongY {
		line.normal = vector{1, 0}
	}
	for i := range sights {
		s := &sights[i]
		along := j.along(r.Want) - j.along(s.mark.At)
		c, ok := meet(line, s.fixing)
		count, err := j.Count(s.mark.At, r.Want)
		if along == 0 || !ok || err != nil {
			continue
		}
		f := &JoistFix{
			Mark: s.mark, Count: count, Distance: s.reading, Way: 1, Along: along,
			Cut:   cut(line, s.fixing),
			Error: c.plus(square(float64(r.Sketch))).ellipse(),
		}
		if along < 0 {
			f.Way, f.Along = -1, -along
		}
		f.Cut = min(f.Cut, hundredths(180-f.Cut))
		f.Weak = r.weak(f.Cut, f.Error, f.Along)
		if a.Joist == nil || f.Error.less(a.Joist.Error) {
			a.Joist = f
		}
	}
}

// A Single finds the point by one distance in a given direction.
type Single struct {
	Mark     Mark
	Distance Reading
	// East and North are the way from the mark to the point along the axes of
	// the house, exact.
	East, North measure.Length
	// Bearing is the direction from the mark, in degrees clockwise from house
	// north, 0 <= Bearing < 360, to two decimals.
	Bearing float64
	// ToJoists is the angle between the tape and the joists, 0 to 90 degrees to
	// two decimals, and Count the joists on the way. Both are zero without
	// joists.
	ToJoists float64
	Count    Count
	Error    Ellipse
}

// single finds the mark from which a distance and a bearing serve best: the
// angle's error grows with the distance.
func (a *Answer) single(r *Request, sights []sight) {
	for i := range sights {
		s := &sights[i]
		u := s.normal
		turned := fixing{vector{-u.y, u.x}, square(r.Angle*math.Pi/180*s.nanometres) + s.mark.variance() + square(float64(r.Sketch))}
		c, ok := meet(s.fixing, turned)
		if !ok {
			continue
		}
		f := &Single{
			Mark: s.mark, Distance: s.reading, East: r.Want.X - s.mark.At.X, North: r.Want.Y - s.mark.At.Y,
			Bearing: hundredths(math.Atan2(u.x, u.y) * 180 / math.Pi),
			Error:   c.plus(square(float64(r.Sketch))).ellipse(),
		}
		if f.Bearing < 0 {
			f.Bearing = hundredths(f.Bearing + 360)
		}
		if f.Bearing >= 360 {
			f.Bearing = 0
		}
		if j := r.Joists; j != nil {
			f.ToJoists = hundredths(math.Atan2(math.Abs(u.x), math.Abs(u.y)) * 180 / math.Pi)
			if !j.AlongY {
				f.ToJoists = hundredths(90 - f.ToJoists)
			}
			f.Count, _ = j.Count(s.mark.At, r.Want)
		}
		if a.Single == nil || f.Error.less(a.Single.Error) {
			a.Single = f
		}
	}
}

// less orders errors: the smaller ellipse, then the smaller radial error.
func (e Ellipse) less(f Ellipse) bool {
	return e.Major < f.Major || e.Major == f.Major && e.Radial < f.Radial
}
