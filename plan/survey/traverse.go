package survey

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Traverse is where the legs of a run lead.
type Traverse struct {
	// Points are where leg 0 starts, at the origin, and where each leg ends:
	// one more than there are legs. They are as measured, or adjusted if
	// Closes is true, and then the last is the first.
	Points []geom.Point

	// Misclosure is that of the legs as measured. It is zero for a run that is
	// not meant to close.
	Misclosure Misclosure

	// Closes is true for a run that is meant to close and does, within the
	// tolerance.
	Closes bool

	// DirectionsHeld says which rule adjusted the points: every leg keeps its
	// direction, or the compass rule as such.
	DirectionsHeld bool
}

// A Misclosure is by how much a run that should end where it began does not.
type Misclosure struct {
	DX, DY    measure.Length // from the start to the end, east and north
	Linear    measure.Length // the distance between them, to the nanometre
	Perimeter measure.Length // of the run as measured
}

// Ratio is n of the precision 1:n that surveyors quote, perimeter over linear
// misclosure to the nearest whole number. It is 0 if the run closes exactly.
func (m Misclosure) Ratio() int64 {
	if m.Linear == 0 {
		return 0
	}
	whole, rest := m.Perimeter/m.Linear, m.Perimeter%m.Linear
	if rest >= m.Linear-rest {
		whole++
	}
	return int64(whole)
}

// Close follows the legs from the origin. If closing is true they are meant to
// lead back to it, and if they miss by no more than tolerance the misclosure
// is spread over them:
//
// By the compass rule (Bowditch): the latitude and the departure of each leg
// are corrected in proportion to the length of the leg, out of the perimeter.
// This is for legs in any direction, and turns each of them a little.
//
// With directions held, when every leg runs along an axis of the house: walls
// are square, and their directions are known better than their lengths. So the
// misclosure along an axis is spread over the legs of that axis alone, in
// proportion to their length. Each leg becomes a little longer or shorter and
// none turns.
//
// The corrections are whole nanometres, rounded by largest remainder, so that
// the adjusted run closes exactly. tolerance should be well below the shortest
// leg. There are at most MaxLegs legs, each above zero and at most
// measure.MaxParsed long. It takes time O(n log n).
func Close(legs []Leg, closing bool, tolerance measure.Length) Traverse {
	steps := make([]geom.Point, len(legs))
	held := true
	for i, leg := range legs {
		steps[i] = leg.Bearing.vector(leg.Length)
		held = held && leg.Bearing.Axial()
	}
	t := Traverse{Points: chain(steps)}
	if !closing {
		return t
	}
	t.Misclosure = misclosure(legs, t.Points)
	end := t.Points[len(steps)]
	if tolerance < 0 || geom.DistSquared(geom.Point{}, end).Cmp(geom.Squared(tolerance)) > 0 {
		return t
	}
	t.Closes, t.DirectionsHeld = true, held
	if held {
		holdDirections(steps, end)
	} else {
		compassRule(steps, end, legs)
	}
	t.Points = chain(steps)
	return t
}

// chain adds up the steps from the origin.
func chain(steps []geom.Point) []geom.Point {
	points := make([]geom.Point, 1, len(steps)+1)
	for i, step := range steps {
		points = append(points, points[i].Add(step))
	}
	return points
}

func misclosure(legs []Leg, points []geom.Point) Misclosure {
	end := points[len(points)-1]
	m := Misclosure{DX: end.X, DY: end.Y, Linear: geom.Dist(geom.Point{}, end)}
	for _, leg := range legs {
		m.Perimeter += leg.Length
	}
	return m
}
