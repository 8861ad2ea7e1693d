package roof

import (
	"fmt"
	"math"
	"math/big"
	"math/bits"

	"topplate/plan/measure"
)

// A Pitch is how steep a roof is: Rise up for Run along the level, 5 for 12.
type Pitch struct{ Rise, Run int }

// Bounds of a Pitch: terms that fit 32 bits, and a roof that is neither a wall
// nor a floor.
const (
	maxTerm  = 1 << 30
	maxSteep = 100
	maxFlat  = 1000
)

// check returns what is wrong with the pitch, if anything.
func (p Pitch) check() string {
	found := fmt.Sprintf("%d in %d", p.Rise, p.Run)
	switch {
	case p.Rise <= 0 || p.Run <= 0 || p.Rise > maxTerm || p.Run > maxTerm:
		return fmt.Sprintf("%s has a number that is not from 1 to %d", found, maxTerm)
	case int64(p.Rise) > maxSteep*int64(p.Run):
		return fmt.Sprintf("%s is steeper than %d in 1", found, maxSteep)
	case int64(p.Run) > maxFlat*int64(p.Rise):
		return fmt.Sprintf("%s is flatter than 1 in %d", found, maxFlat)
	}
	return ""
}

// rise returns how far the pitch rises over d halves of a nanometre, rounded
// half up to a nanometre.
func (p Pitch) rise(halves measure.Length) measure.Length {
	return mulDiv(halves, uint64(p.Rise), 2*uint64(p.Run))
}

// run returns the least whole distance over which the pitch rises, rounded, to
// h or more.
func (p Pitch) run(h measure.Length) measure.Length {
	// rise(2d) >= h exactly when d·Rise/Run >= h - 1/2, so d is the quotient
	// (2h-1)·Run / 2Rise rounded up: what it is rounded half up, or 1 more.
	d := mulDiv(2*h-1, uint64(p.Run), 2*uint64(p.Rise))
	if p.rise(2*d) < h {
		d++
	}
	return d
}

// slant returns the vertical size of a member of the given depth laid to the
// pitch, depth·√(1+m²), rounded to the nearest nanometre.
func (p Pitch) slant(depth measure.Length) measure.Length {
	rise, run := big.NewInt(int64(p.Rise)), big.NewInt(int64(p.Run))
	square := new(big.Int).Mul(rise, rise)
	square.Add(square, new(big.Int).Mul(run, run))
	twice := big.NewInt(2 * int64(depth))
	square.Mul(square, twice.Mul(twice, twice))
	// ⌊√(4N)⌋ loses nothing that the division would keep.
	root := square.Sqrt(square)
	root.Add(root, run)
	return measure.Length(root.Div(root, run.Lsh(run, 1)).Int64())
}

// mulDiv returns a·mul/div rounded half up. Beyond 64 bits it stays at the
// largest length.
func mulDiv(a measure.Length, mul, div uint64) measure.Length {
	m, half := uint64(a), div
	if a < 0 {
		m, half = -m, div-1
	}
	hi, lo := bits.Mul64(2*m, mul)
	lo, carry := bits.Add64(lo, half, 0)
	q := uint64(math.MaxInt64)
	if hi+carry < 2*div {
		q, _ = bits.Div64(hi+carry, lo, 2*div)
		q = min(q, math.MaxInt64)
	}
	if a < 0 {
		return -measure.Length(q)
	}
	return measure.Length(q)
}
