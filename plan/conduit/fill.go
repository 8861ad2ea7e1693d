package conduit

import (
	"math/big"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Share is how much of the cross-section of a pipe cables may take up
// together.
type Share struct {
	Cables  int   // this many, in the last row or more
	Percent int64 // of the area inside
	Source  rule.Source
}

var fill = rule.Source{
	Document: nec, Clause: "Chapter 9, Table 1", Printed: "1: 53 %, 2: 31 %, over 2: 40 %",
	AsQuotedBy: "copies of the table on the web", Status: rule.AsQuoted,
}

// Shares is the table of shares by the number of cables.
var Shares = [...]Share{{1, 53, fill}, {2, 31, fill}, {3, 40, fill}}

// ShareOf returns the share that so many cables may take up. Two have the
// least of all: they lie side by side and jam first. It is the first row for
// less than one cable.
func ShareOf(cables int) Share {
	return Shares[min(max(cables, 1), len(Shares))-1]
}

// Fits reports whether cables of these diameters may share a pipe of this
// inside diameter: whether their areas add up to no more than the share for
// their number. No cables fit into anything; an inside diameter of zero or
// less holds no cable. It is exact, and takes time O(n).
func Fits(inside measure.Length, diameters []measure.Length) bool {
	if len(diameters) == 0 {
		return true
	}
	taken := new(big.Int)
	for _, d := range diameters {
		taken.Add(taken, square(d))
	}
	return inside > 0 && taken.Mul(taken, big.NewInt(100)).Cmp(room(inside, len(diameters))) <= 0
}

// Count returns how many cables of one diameter may share a pipe, exactly. It
// does not use the note to the table that lets a fraction of 0.8 or more count
// as one more. It is zero where a length is not above zero, and mostCounted at
// most.
func Count(inside, diameter measure.Length) int {
	if inside <= 0 || diameter <= 0 {
		return 0
	}
	each := square(diameter)
	each.Mul(each, big.NewInt(100))
	for i := len(Shares) - 1; i >= 0; i-- {
		n := new(big.Int).Quo(room(inside, Shares[i].Cables), each)
		if n.Cmp(big.NewInt(int64(Shares[i].Cables))) < 0 {
			continue
		}
		if i < len(Shares)-1 {
			return Shares[i].Cables
		}
		if !n.IsInt64() || n.Int64() > mostCounted {
			return mostCounted
		}
		return int(n.Int64())
	}
	return 0
}

// mostCounted bounds a count: threads in a tunnel are no cables.
const mostCounted = 1_000_000

// room is what so many cables may take up of a pipe, as the square of a
// diameter times 100: π/4 is on both sides of every comparison.
func room(inside measure.Length, cables int) *big.Int {
	r := square(inside)
	return r.Mul(r, big.NewInt(ShareOf(cables).Percent))
}

func square(l measure.Length) *big.Int {
	x := big.NewInt(int64(l))
	return x.Mul(x, x)
}

// Filled is how much of the pipe the cables take up, in per cent, rounded up.
// It is for messages; inside is above zero.
func Filled(inside measure.Length, diameters []measure.Length) int {
	percent := 0.0
	for _, d := range diameters {
		share := float64(d) / float64(inside)
		percent += 100 * share * share
	}
	whole := int(percent)
	if float64(whole) < percent {
		whole++
	}
	return whole
}
