package tape

import (
	"fmt"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Joists are parallel members at one spacing.
type Joists struct {
	// AlongY is true for joists that run house north, false for house east.
	AlongY bool
	// First is where the centre of any one joist is on the axis across them,
	// Spacing from one centre to the next.
	First, Spacing measure.Length
	// Sigma is one standard deviation of where a joist is against that layout.
	Sigma measure.Length
}

func (j Joists) check() error {
	if j.Spacing <= 0 || !inRange(j.Spacing) {
		return fmt.Errorf("the spacing of the joists is %v; want more than zero", j.Spacing)
	}
	if !inRange(j.First) {
		return fmt.Errorf("the first joist is out of range")
	}
	return nil
}

// across is the coordinate of p on the axis across the joists.
func (j Joists) across(p geom.Point) measure.Length {
	if j.AlongY {
		return p.X
	}
	return p.Y
}

// along is the coordinate of p on the axis along the joists.
func (j Joists) along(p geom.Point) measure.Length {
	if j.AlongY {
		return p.Y
	}
	return p.X
}

// A Count says how many joists lie between a mark and a point.
//
// With joists between, Start + (Joists-1)·spacing + Offset is the whole
// distance across; without, Offset alone is.
type Count struct {
	// Joists is the number of centre lines that are met on the way from the
	// mark to the point. A joist right at the mark is not counted, one right
	// at the point is.
	Joists int64
	// Way is +1 where the count goes towards larger coordinates (house east
	// for joists that run north, house north for joists that run east), -1
	// where it goes back, and 0 where mark and point are level with each other.
	Way int
	// Start is from the mark to the centre of the first joist that is counted,
	// zero without one.
	Start measure.Length
	// Offset is from the centre of the last joist that is counted to the
	// point, less than the spacing; without one, from the mark to the point.
	Offset measure.Length
}

// Count counts the joists from a mark to a point. It takes constant time and
// is exact. It returns an error for a spacing that is not above zero and for
// coordinates beyond 1000 km.
func (j Joists) Count(mark, point geom.Point) (Count, error) {
	if err := j.check(); err != nil {
		return Count{}, err
	}
	from, to, first := j.across(mark), j.across(point), j.First
	if !inRange(from) || !inRange(to) {
		return Count{}, fmt.Errorf("a point is out of range")
	}
	c := Count{Way: 1}
	switch {
	case from == to:
		return Count{}, nil
	case from > to:
		// Counting back is counting on in the mirror.
		from, to, first, c.Way = -from, -to, -first, -1
	}
	bay, in := divide(from-first, j.Spacing)
	last, over := divide(to-first, j.Spacing)
	c.Joists = last - bay
	if c.Joists == 0 {
		c.Offset = to - from
		return c, nil
	}
	c.Start, c.Offset = j.Spacing-in, over
	return c, nil
}

// divide is the quotient of a by b, b > 0, rounded down, and the rest, which
// is never negative.
func divide(a, b measure.Length) (quotient int64, rest measure.Length) {
	quotient, rest = int64(a/b), a%b
	if rest < 0 {
		return quotient - 1, rest + b
	}
	return quotient, rest
}
