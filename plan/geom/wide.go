package geom

import (
	"cmp"
	"math/big"
	"math/bits"

	"topplate/plan/measure"
)

// A SquareLength is an exact number of square nanometres, zero or more: what
// distances are compared by, since a distance itself is seldom whole.
type SquareLength struct{ hi, lo uint64 }

// Squared returns l².
func Squared(l measure.Length) SquareLength {
	m := magnitude(l)
	hi, lo := bits.Mul64(m, m)
	return SquareLength{hi, lo}
}

// Cmp returns -1, 0 or +1 as s is less than, equal to or greater than t.
func (s SquareLength) Cmp(t SquareLength) int {
	if c := cmp.Compare(s.hi, t.hi); c != 0 {
		return c
	}
	return cmp.Compare(s.lo, t.lo)
}

// plus returns s + t; both are below 2^127.
func (s SquareLength) plus(t SquareLength) SquareLength {
	lo, carry := bits.Add64(s.lo, t.lo, 0)
	hi, _ := bits.Add64(s.hi, t.hi, carry)
	return SquareLength{hi, lo}
}

// root returns √s rounded to the nearest nanometre. The root of a whole number
// never lies halfway between two whole numbers, so there is no tie.
func (s SquareLength) root() measure.Length {
	n := new(big.Int).SetUint64(s.hi)
	n.Lsh(n, 64).Or(n, new(big.Int).SetUint64(s.lo))
	floor := new(big.Int).Sqrt(n)
	root := measure.Length(floor.Int64())
	// √n > floor + 1/2 exactly when n > floor² + floor, n being whole.
	if floor.Mul(floor, floor).Add(floor, big.NewInt(int64(root))).Cmp(n) < 0 {
		root++
	}
	return root
}

// magnitude is |l|.
func magnitude(l measure.Length) uint64 {
	if l < 0 {
		return -uint64(l)
	}
	return uint64(l)
}

// cmpProducts compares a·b with c·d exactly.
func cmpProducts(a, b, c, d measure.Length) int {
	abHi, abLo := mul(a, b)
	cdHi, cdLo := mul(c, d)
	if r := cmp.Compare(abHi, cdHi); r != 0 {
		return r
	}
	return cmp.Compare(abLo, cdLo)
}

// mul returns a·b as a two's complement number of 128 bits.
func mul(a, b measure.Length) (hi int64, lo uint64) {
	h, lo := bits.Mul64(uint64(a), uint64(b))
	// Reading a negative factor as unsigned adds 2^64 times the other one.
	if a < 0 {
		h -= uint64(b)
	}
	if b < 0 {
		h -= uint64(a)
	}
	return int64(h), lo
}

// cross is the sign of u × v: +1 when v turns left (counter-clockwise) from u.
func cross(u, v Point) int { return cmpProducts(u.X, v.Y, u.Y, v.X) }

// dot is the sign of u · v.
func dot(u, v Point) int { return cmpProducts(u.X, v.X, -u.Y, v.Y) }

// bigCross returns u × v.
func bigCross(u, v Point) *big.Int { return bigSum(u.X, v.Y, -u.Y, v.X) }

// bigDot returns u · v.
func bigDot(u, v Point) *big.Int { return bigSum(u.X, v.X, u.Y, v.Y) }

// bigSum returns a·b + c·d.
func bigSum(a, b, c, d measure.Length) *big.Int {
	ab := new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
	cd := new(big.Int).Mul(big.NewInt(int64(c)), big.NewInt(int64(d)))
	return ab.Add(ab, cd)
}
