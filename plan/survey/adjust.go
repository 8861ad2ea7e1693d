package survey

import (
	"cmp"
	"math/bits"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// compassRule corrects the steps, which miss by end, in proportion to the
// lengths of the legs.
func compassRule(steps []geom.Point, end geom.Point, legs []Leg) {
	lengths := make([]measure.Length, len(legs))
	for i, leg := range legs {
		lengths[i] = leg.Length
	}
	spread(steps, end, lengths, lengths)
}

// holdDirections corrects steps that each run along an axis, and miss by end,
// without turning any: a step along one axis has no weight in the other.
func holdDirections(steps []geom.Point, end geom.Point) {
	alongX := make([]measure.Length, len(steps))
	alongY := make([]measure.Length, len(steps))
	for i, step := range steps {
		alongX[i], alongY[i] = max(step.X, -step.X), max(step.Y, -step.Y)
	}
	spread(steps, end, alongX, alongY)
}

// spread takes end off the steps, in shares by weight.
func spread(steps []geom.Point, end geom.Point, weightsX, weightsY []measure.Length) {
	x, y := shares(end.X, weightsX), shares(end.Y, weightsY)
	for i := range steps {
		steps[i] = steps[i].Sub(geom.Point{X: x[i], Y: y[i]})
	}
}

// shares divides total in proportion to the weights, which are not negative,
// into whole numbers that add up to it: each share is rounded towards zero,
// and what is left goes by ones to the largest remainders, the earlier first
// among equals. There is some weight unless total is zero.
func shares(total measure.Length, weights []measure.Length) []measure.Length {
	parts := make([]measure.Length, len(weights))
	if total == 0 {
		return parts
	}
	amount, sign := uint64(max(total, -total)), measure.Length(1)
	if total < 0 {
		sign = -1
	}
	sum := uint64(0)
	for _, w := range weights {
		sum += uint64(w)
	}
	left := amount
	remainders := make([]uint64, len(weights))
	order := make([]int, len(weights))
	for i, w := range weights {
		hi, lo := bits.Mul64(amount, uint64(w))
		quotient, remainder := bits.Div64(hi, lo, sum)
		parts[i], remainders[i], order[i] = sign*measure.Length(quotient), remainder, i
		left -= quotient
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(remainders[j], remainders[i]) })
	for _, i := range order[:left] {
		parts[i] += sign
	}
	return parts
}
