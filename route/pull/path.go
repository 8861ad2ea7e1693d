package pull

import (
	"errors"
	"fmt"
	"math"

	"topplate/plan/measure"
)

// An Angle is in seconds of arc.
type Angle int64

// Units of angle.
const (
	Degree Angle = 3600
	// Square is one bend of 90°.
	Square = 90 * Degree
)

// radians is a as a float64.
func (a Angle) radians() float64 { return float64(a) / float64(180*Degree) * math.Pi }

// A Piece is one piece of a path: straight, or a bend.
type Piece struct {
	// Length is that of a straight piece, and zero for a bend.
	Length measure.Length
	// Rise is how much higher the end is than the start, in the direction of
	// the path: -Length <= Rise <= Length.
	Rise measure.Length
	// Turn is the angle of a bend, and zero for a straight piece.
	Turn Angle
	// Open is true for a straight piece where a hand gets at the cable, so
	// that it can be pulled out anywhere along it, its ends included. A hatch
	// is an open piece without length.
	Open bool
}

// Straight is a closed straight piece.
func Straight(length, rise measure.Length) Piece { return Piece{Length: length, Rise: rise} }

// Bend is a bend.
func Bend(turn Angle) Piece { return Piece{Turn: turn} }

// A Path is what the cable is pulled through, from one end to the other.
type Path []Piece

// Reverse returns the path from its other end.
func (p Path) Reverse() Path {
	out := make(Path, len(p))
	for i, piece := range p {
		piece.Rise = -piece.Rise
		out[len(p)-1-i] = piece
	}
	return out
}

// A Load is what is pulled.
type Load struct {
	// Mass is that of everything pulled together, in kilograms per metre.
	Mass float64
	// Friction is the coefficient of friction between the jacket and what it
	// slides on, 0 to MaxFriction.
	Friction float64
	// Feed is the tension the cable goes in with, from the spool and the hand
	// that feeds it, in newtons.
	Feed float64
}

// Bounds of what is taken. They keep every number finite; no house comes near
// them.
const (
	MaxPieces   = 10_000
	MaxPoints   = 10_000
	MaxLength   = 100_000 * measure.Metre
	MaxFriction = 5.0
	MaxMass     = 1000.0
	MaxTension  = 1e9
)

// gravity is the standard acceleration of free fall in m/s² (3rd CGPM, 1901).
const gravity = 9.80665

// check reports everything that is wrong with a pull.
func check(p Path, l Load) error {
	var errs []error
	bad := func(format string, a ...any) { errs = append(errs, fmt.Errorf(format, a...)) }
	if len(p) > MaxPieces {
		bad("found %d pieces, more than %d", len(p), MaxPieces)
	}
	total := measure.Length(0)
	for i, piece := range p {
		total = min(total+max(0, min(piece.Length, MaxLength)), 2*MaxLength)
		switch {
		case piece.Length < 0 || piece.Length > MaxLength:
			bad("piece %d is %v long; want 0 to %v", i+1, piece.Length, MaxLength)
		case piece.Turn < 0 || piece.Turn > 360*Degree:
			bad("piece %d turns by %d seconds of arc; want 0° to 360°", i+1, piece.Turn)
		case piece.Turn > 0 && (piece.Length > 0 || piece.Open):
			bad("piece %d is a bend with a length or an opening; give the straight part as a piece of its own", i+1)
		case piece.Rise > piece.Length || piece.Rise < -piece.Length:
			bad("piece %d rises by %v on a length of %v", i+1, piece.Rise, piece.Length)
		}
	}
	if total > MaxLength {
		bad("the path is longer than %v", MaxLength)
	}
	for _, f := range []struct {
		what        string
		value, most float64
	}{{"the mass", l.Mass, MaxMass}, {"the friction", l.Friction, MaxFriction}, {"the feed tension", l.Feed, MaxTension}} {
		if !(f.value >= 0 && f.value <= f.most) {
			bad("%s is %v; want 0 to %v", f.what, f.value, f.most)
		}
	}
	return errors.Join(errs...)
}
