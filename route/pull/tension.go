package pull

import (
	"math"

	"topplate/plan/measure"
)

// A Pull is the tension along a path, in newtons rounded to the millionth. A
// tension that would exceed MaxTension is given as MaxTension.
type Pull struct {
	// After[i] is the tension at the end of piece i, in the direction of the
	// pull.
	After []float64
	// Most is the largest tension anywhere, and At the piece at whose end it
	// is reached, or -1 for the feed tension at the start.
	Most float64
	At   int
}

// End is the tension at the end that is pulled, or the feed tension of an
// empty path.
func (p Pull) End(l Load) float64 {
	if len(p.After) == 0 {
		return l.Feed
	}
	return p.After[len(p.After)-1]
}

// Tension works out the tension of a pull from the start of the path, where
// the cable is fed, to its end. The error names everything that is wrong with
// the path and the load.
func Tension(p Path, l Load) (Pull, error) {
	if err := check(p, l); err != nil {
		return Pull{}, err
	}
	return l.pull(p), nil
}

func (l Load) pull(p Path) Pull {
	out := Pull{After: make([]float64, len(p)), Most: l.Feed, At: -1}
	t := l.Feed
	for i, piece := range p {
		t = l.over(piece, t)
		out.After[i] = t
		if t > out.Most {
			out.Most, out.At = t, i
		}
	}
	return out
}

// over is the tension at the end of a piece that the cable enters with t. It
// never falls as t grows, and never below Feed. Points depends on both.
func (l Load) over(piece Piece, t float64) float64 {
	return l.along(piece, piece.Length, t)
}

// along is over for so much of a straight piece.
func (l Load) along(piece Piece, length measure.Length, t float64) float64 {
	switch {
	case piece.Turn > 0:
		t *= math.Exp(l.Friction * piece.Turn.radians())
	case length > 0:
		t += l.gain(piece) * (float64(length) / float64(piece.Length))
	}
	return newtons(max(t, l.Feed))
}

// gain is what a whole straight piece adds, in newtons; it may be negative.
func (l Load) gain(piece Piece) float64 {
	length, rise := piece.Length.Metres(), piece.Rise.Metres()
	run := math.Sqrt(max(0, (length-rise)*(length+rise)))
	return l.Mass * gravity * (float64(l.Friction*run) + rise)
}

// newtons rounds to a millionth of a newton, so that the last bits of a machine
// don't show.
func newtons(t float64) float64 {
	return min(math.Round(t*1e6)/1e6, MaxTension)
}

// Ends compares the two ends a cable can be pulled from.
type Ends struct {
	// Forward is the pull from the start of the path to its end, Backward that
	// from its end to its start: Backward.After follows the reversed path.
	Forward, Backward Pull
	// FromEnd is true where pulling at the path's start, fed at its end, needs
	// the smaller largest tension. Where both need the same it is false.
	FromEnd bool
}

// BothEnds works out the pull in both directions. Bends multiply what they
// find, so a cable is best fed at the end that the bends are near.
func BothEnds(p Path, l Load) (Ends, error) {
	if err := check(p, l); err != nil {
		return Ends{}, err
	}
	e := Ends{Forward: l.pull(p), Backward: l.pull(p.Reverse())}
	e.FromEnd = e.Backward.Most < e.Forward.Most
	return e, nil
}
