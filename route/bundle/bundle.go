// Package bundle answers how thick a bundle of round cables is.
//
// Diameters come in; the diameter of a circle that encloses them goes out. It
// is never less than what the cables need, so a hole of that size always
// takes them.
package bundle

import (
	"math"

	"topplate/plan/measure"
)

// ratios[n] is the diameter of the smallest known circle around n equal
// circles, in diameters of one: the best known packings, proved best up to 13
// (Graham 1968, Pirl 1969, Melissen 1994, Fodor 1999 to 2003), rounded up in
// the sixth decimal.
var ratios = [...]float64{
	0, 1, 2, 2.154701, 2.414214, 2.701302, 3, 3, 3.304765, 3.613126, 3.813027,
	3.923805, 4.029603, 4.236068, 4.328430, 4.521357, 4.615426, 4.792034, 4.863704, 4.863704, 5.122321,
}

// Diameter is the diameter of a circle that encloses n cables of diameter d.
// Beyond 20 cables it is that of the next full hexagonal arrangement of
// 1+3k(k+1) circles, 2k+1 wide, which always encloses them.
func Diameter(n int, d measure.Length) measure.Length {
	if n <= 0 {
		return 0
	}
	return measure.Length(math.Ceil(ratio(n) * float64(d)))
}

func ratio(n int) float64 {
	if n < len(ratios) {
		return ratios[n]
	}
	k := 1
	for 1+3*k*(k+1) < n {
		k++
	}
	return float64(2*k + 1)
}
