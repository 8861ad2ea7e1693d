package tape

import (
	"cmp"
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Side is where a point lies, seen from the first mark to the second: the
// arcs of two distances cross twice, once on each side.
type Side int8

// Sides.
const (
	Left  Side = +1
	Right Side = -1
)

// String names the side.
func (s Side) String() string {
	if s == Left {
		return "left"
	}
	return "right"
}

// A Pair is a fix by two distances.
type Pair struct {
	// Marks are in the order of their ids.
	Marks    [2]Mark
	Distance [2]Reading
	Side     Side
	// Offset is how far the point is from the line through the marks, rounded
	// to the micrometre. The arcs cross again at twice that.
	Offset measure.Length
	// Cut is the angle between the two tapes at the point, in degrees to two
	// decimals: 90 is best, 0 and 180 fix nothing.
	Cut   float64
	Error Ellipse
	// Weak is true where the cut is flatter than asked for, or the error
	// longer than Offset: the arcs may then not meet.
	Weak bool

	// total is the length to tape, and arcs the error of where the arcs cross
	// on the plan, without that of the point's own place on it.
	total measure.Length
	arcs  covariance
}

// better orders pairs: the smaller semi-axis, then the smaller radial error,
// then the less to tape, then the ids.
func (p *Pair) better(q *Pair) bool {
	if q == nil {
		return true
	}
	return cmp.Or(
		cmp.Compare(p.Error.Major, q.Error.Major), cmp.Compare(p.Error.Radial, q.Error.Radial),
		cmp.Compare(p.total, q.total),
		cmp.Compare(p.Marks[0].ID, q.Marks[0].ID), cmp.Compare(p.Marks[1].ID, q.Marks[1].ID),
	) < 0
}

// pairs finds the best two pairs and the check. What is not needed to compare
// pairs is worked out for those two only.
func (a *Answer) pairs(r *Request, sights []sight) {
	for i := range sights {
		for j := range sights[:i] {
			p := r.pair(&sights[j], &sights[i])
			switch {
			case p == nil:
			case p.better(a.Best):
				a.Best, a.RunnerUp = p, a.Best
			case p.better(a.RunnerUp):
				a.RunnerUp = p
			}
		}
	}
	for _, p := range []*Pair{a.Best, a.RunnerUp} {
		if p != nil {
			p.finish(r)
		}
	}
	if a.Best != nil {
		a.check(r, sights)
	}
}

// pair is the fix by two sights, or nil where they don't cross. That is
// decided exactly: the point lies on the line through the marks.
func (r *Request) pair(s, t *sight) *Pair {
	turn := geom.Polygon{s.mark.At, t.mark.At, r.Want}.DoubleArea()
	c, ok := meet(s.fixing, t.fixing)
	if turn.Sign() == 0 || !ok {
		return nil
	}
	whole := c.plus(square(float64(r.Sketch)))
	major, _ := whole.axes()
	return &Pair{
		Marks:    [2]Mark{s.mark, t.mark},
		Distance: [2]Reading{s.reading, t.reading},
		Side:     Side(turn.Sign()),
		Cut:      cut(s.fixing, t.fixing),
		Error:    Ellipse{Major: micrometres(major), Radial: micrometres(whole.radial())},
		total:    s.reading.Exact + t.reading.Exact,
		arcs:     c,
	}
}

// finish works out the rest of a pair.
func (p *Pair) finish(r *Request) {
	u, _ := direction(p.Marks[0].At, p.Marks[1].At)
	w, d := direction(p.Marks[0].At, r.Want)
	p.Offset = micrometres(math.Abs(u.cross(w)) * d)
	p.Error = p.arcs.plus(square(float64(r.Sketch))).ellipse()
	p.Weak = r.weak(p.Cut, p.Error, p.Offset)
}

// A Check is a distance from a third mark to the point once it is found.
type Check struct {
	Mark     Mark
	Distance Reading
	// Sigma is one standard deviation of what the tape will show beside
	// Distance if nothing went wrong, rounded to the micrometre.
	Sigma measure.Length
	// OtherSide is the distance that shows if the arcs were crossed on the
	// wrong side, rounded to the micrometre.
	OtherSide measure.Length
}

// check picks the mark from which the wrong side shows most clearly, in
// standard deviations; then the one with the smallest deviation.
func (a *Answer) check(r *Request, sights []sight) {
	clearest := -1.0
	wrong := a.Best.mirror(r.Want)
	for i := range sights {
		s := &sights[i]
		if s.mark == a.Best.Marks[0] || s.mark == a.Best.Marks[1] {
			continue
		}
		sigma := math.Sqrt(a.Best.arcs.along(s.normal) + s.variance)
		other := math.Hypot(float64(s.mark.At.X)-wrong[0], float64(s.mark.At.Y)-wrong[1])
		c := &Check{s.mark, s.reading, micrometres(sigma), micrometres(other)}
		clear := 0.0
		if sigma > 0 {
			clear = math.Round(math.Abs(other-s.nanometres)/sigma*1000) / 1000
		}
		if clear > clearest || clear == clearest && c.Sigma < a.Check.Sigma {
			clearest, a.Check = clear, c
		}
	}
}

// mirror is where the arcs cross on the other side, in nanometres.
func (p *Pair) mirror(want geom.Point) [2]float64 {
	u, _ := direction(p.Marks[0].At, p.Marks[1].At)
	dx, dy := float64(want.X-p.Marks[0].At.X), float64(want.Y-p.Marks[0].At.Y)
	off := float64(u.x*dy) - float64(u.y*dx)
	return [2]float64{float64(want.X) + 2*off*u.y, float64(want.Y) - 2*off*u.x}
}
