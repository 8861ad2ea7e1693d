package pull

import (
	"fmt"
	"strings"

	"topplate/plan/measure"
)

// Limits are what no stretch between pull points may exceed. A zero is no
// limit. A stretch that just reaches a limit is within it.
type Limits struct {
	Tension float64 // newtons
	Turn    Angle   // all bends of the stretch together: 2·Square for two square bends
	Length  measure.Length
}

// A Place is on a piece of a path: At from the start of it, in the direction
// of the path. The end of a piece is given as the start of the next, and the
// end of the path as the start of a piece after the last.
type Place struct {
	Piece int
	At    measure.Length
}

// A Stretch is what is pulled in one go.
type Stretch struct {
	From, To Place
	Tension  float64 // the largest in it, in newtons
	Turn     Angle
	Length   measure.Length
}

// A Plan says where to pull a cable out and feed it on.
type Plan struct {
	// FromEnd is true where the cable is fed at the end of the path. The places
	// are those of the path as given either way, and the stretches in the
	// order in which they are pulled.
	FromEnd   bool
	Points    []Place
	Stretches []Stretch
}

// A StuckError says that no pull points keep a path within the limits.
type StuckError struct {
	// Places between which the stretch exceeds the limits whatever is done:
	// the last that can be reached, and the nearest opening after it.
	From, To Place
	// Found is what that stretch has.
	Found Stretch
	// Tension, Turn and Length tell which limits it exceeds.
	Tension, Turn, Length bool
}

func (e *StuckError) Error() string {
	var over []string
	for _, o := range []struct {
		over bool
		text string
	}{
		{e.Tension, fmt.Sprintf("a tension of %.1f N", e.Found.Tension)},
		{e.Turn, fmt.Sprintf("bends of %.0f° together", float64(e.Found.Turn)/float64(Degree))},
		{e.Length, fmt.Sprintf("a length of %s", e.Found.Length)},
	} {
		if o.over {
			over = append(over, o.text)
		}
	}
	return fmt.Sprintf("between piece %d and piece %d no opening is near enough: the stretch has %s", e.From.Piece+1, e.To.Piece+1, strings.Join(over, " and "))
}

// Points finds the fewest pull points from the start of the path to its end,
// each in an open piece, with which no stretch exceeds the limits. At a pull
// point all of the cable is pulled out and fed on, so that the next stretch
// starts with the feed tension.
//
// It goes as far as the limits allow, to the last open place before they
// don't, and starts again from there. That is the fewest:
//
//   - A stretch within the limits stays within them when its end moves back,
//     since length, turn and largest tension only grow along it.
//   - It stays within them when its start moves on. Length and turn shrink. The
//     tension does too: at the new start the old stretch had at least the feed
//     tension, and whatever more a piece is entered with, it is left with no
//     less.
//   - So by induction the n-th point lies no nearer than the n-th point of any
//     other plan: from its n-1st, which lies no nearer, the other's n-th, if
//     not passed already, can be reached; the last open place in reach is no
//     nearer than that one.
//
// The error is a *StuckError if there is no such plan, or names what is wrong
// with the input, or says that more than MaxPoints would be needed. It takes
// time O(n).
func Points(p Path, l Load, lim Limits) (Plan, error) {
	if err := check(p, l); err != nil {
		return Plan{}, err
	}
	if !(lim.Tension >= 0) || lim.Turn < 0 || lim.Length < 0 {
		return Plan{}, fmt.Errorf("found the limits %v N, %d seconds of arc and %v; want zero or more", lim.Tension, lim.Turn, lim.Length)
	}
	var plan Plan
	from := Place{}
	end := Place{len(p), 0}
	for {
		s, opening := walk(p, l, lim, from)
		if lim.exceeded(s) || opening == from && s.To != end {
			return Plan{}, stuck(p, l, lim, from)
		}
		if s.To == end {
			plan.Stretches = append(plan.Stretches, s)
			return plan, nil
		}
		if len(plan.Points) == MaxPoints {
			return Plan{}, fmt.Errorf("more than %d pull points would be needed", MaxPoints)
		}
		plan.Points = append(plan.Points, opening)
		plan.Stretches = append(plan.Stretches, between(p, l, from, opening))
		from = opening
	}
}

// BestPoints is Points from the better end: the one with fewer points, then
// the one with the smaller largest tension, then the start of the path.
func BestPoints(p Path, l Load, lim Limits) (Plan, error) {
	on, errOn := Points(p, l, lim)
	back, errBack := Points(p.Reverse(), l, lim)
	switch {
	case errOn != nil && errBack != nil:
		return Plan{}, errOn
	case errOn != nil, errBack == nil && back.better(on):
		return back.seenFrom(p), nil
	}
	return on, nil
}

func (a Plan) better(b Plan) bool {
	if len(a.Points) != len(b.Points) {
		return len(a.Points) < len(b.Points)
	}
	return a.most() < b.most()
}

// most is the largest tension of a plan.
func (a Plan) most() float64 {
	most := 0.0
	for _, s := range a.Stretches {
		most = max(most, s.Tension)
	}
	return most
}

// seenFrom gives the places of a plan for the reversed path on p itself.
func (a Plan) seenFrom(p Path) Plan {
	turn := func(at Place) Place {
		if at.Piece == len(p) {
			return Place{}
		}
		i := len(p) - 1 - at.Piece
		return normal(p, Place{i, p[i].Length - at.At})
	}
	out := Plan{FromEnd: true}
	for _, at := range a.Points {
		out.Points = append(out.Points, turn(at))
	}
	for _, s := range a.Stretches {
		s.From, s.To = turn(s.From), turn(s.To)
		out.Stretches = append(out.Stretches, s)
	}
	return out
}

// normal gives the end of a piece as the start of the next.
func normal(p Path, at Place) Place {
	if at.Piece < len(p) && at.At == p[at.Piece].Length {
		return Place{at.Piece + 1, 0}
	}
	return at
}
