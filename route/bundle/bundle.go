// Package bundle answers how thick a bundle of round cables is.
//
// Diameters come in; the diameter of a circle that encloses them goes out. It
// is never less than what the cables need, so a hole of that size always
// takes them. Nothing here knows of bits, of the room a bundle wants to be
// pulled, or of rules.
package bundle

import (
	"math"
	"slices"

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
// Beyond 20 cables it is the smallest circle about n points of the densest
// arrangement, with its middle on a cable, between two or between three: not
// the best there is, but one that always encloses them. It takes time
// O(n log n).
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
	// In a hexagonal arrangement with rows along (1, 0) and (1/2, √3/2), the
	// point i, j is √(i² + ij + j²) away from the origin; in sixths, to stay
	// whole, with the origin on a cable, halfway to the next, or amid three.
	best := math.Inf(1)
	for _, middle := range [...][2]int{{0, 0}, {3, 0}, {2, 2}} {
		best = min(best, 1+2*math.Sqrt(float64(nearest(n, middle)))/6)
	}
	return math.Ceil(best*1e6) / 1e6
}

// nearest is the square of the distance, in sixths of a diameter, to the
// furthest of the n cables of the arrangement that are nearest to a middle.
func nearest(n int, middle [2]int) int {
	// So many rows on each side hold more than enough.
	rows := int(math.Sqrt(float64(n))) + 2
	var out []int
	for i := -rows; i <= rows; i++ {
		for j := -rows; j <= rows; j++ {
			u, v := 6*i-middle[0], 6*j-middle[1]
			out = append(out, u*u+u*v+v*v)
		}
	}
	slices.Sort(out)
	return out[n-1]
}
