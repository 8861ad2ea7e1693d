package randomhouse

import (
	"math/rand/v2"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// dice make random choices in whole quarters of the house's unit, which is an
// inch, or 25 mm.
type dice struct {
	*rand.Rand
	unit measure.Length
}

// in is so many units.
func (d *dice) in(n int) measure.Length { return measure.Length(n) * d.unit }

// between is a whole number of quarters between lo and hi units.
func (d *dice) between(lo, hi int) measure.Length {
	return d.within(d.in(lo), d.in(hi))
}

// within is a whole number of quarters between two lengths, lo if there is
// none.
func (d *dice) within(lo, hi measure.Length) measure.Length {
	q := d.unit / 4
	from, to := (lo+q-1)/q, hi/q
	if to <= from {
		return lo
	}
	return (from + measure.Length(d.Int64N(int64(to-from+1)))) * q
}

// one reports true once in n.
func (d *dice) one(n int) bool { return d.IntN(n) == 0 }

func pick[T any](d *dice, from ...T) T { return from[d.IntN(len(from))] }

// pointIn is a point of a rectangle.
func (d *dice) pointIn(r geom.Rect) geom.Point {
	return geom.Point{X: d.within(r.Min.X, r.Max.X), Y: d.within(r.Min.Y, r.Max.Y)}
}
