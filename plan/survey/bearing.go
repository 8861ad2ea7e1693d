// Package survey turns a run of walls, given as bearings and lengths, into
// points.
//
// What comes in is a text such as "E 12ft 6in, N 8ft" or a list of legs. What
// goes out is the legs with their places in the text, the points they lead to
// from an origin, and, for a run that ends where it began, by how much the
// tape missed and the points with that error spread. Points are in the frame
// of the house: X to house east, Y to house north, in nanometres.
//
// More lengths than are needed make a Network: it is adjusted by least squares,
// and every length is tested, so that a wrong one has a name.
//
// The package never reads files and never decides what a wall is.
package survey

import (
	"fmt"
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Bearing is a direction in plan in whole seconds of arc, clockwise from
// house north: 0 <= b < 1 296 000.
type Bearing int32

// One degree, and the bearings along the axes of the house.
const (
	Degree Bearing = 3600
	North  Bearing = 0
	East           = 90 * Degree
	South          = 180 * Degree
	West           = 270 * Degree
)

const (
	minute   = Degree / 60
	fullTurn = 360 * Degree
)

// Axial reports whether b runs along an axis of the house.
func (b Bearing) Axial() bool { return b%East == 0 }

// quadrant splits b as a surveyor writes it: the angle from the north-south
// line, 0 to 90 degrees, and whether it is on the south and on the west side.
func (b Bearing) quadrant() (angle Bearing, south, west bool) {
	west = b > South
	if west {
		b = fullTurn - b
	}
	south = b > East
	if south {
		b = South - b
	}
	return b, south, west
}

// fromQuadrant is the inverse of quadrant.
func fromQuadrant(angle Bearing, south, west bool) Bearing {
	if south {
		angle = South - angle
	}
	if west {
		angle = fullTurn - angle
	}
	return angle % fullTurn
}

// String writes b as ParseRun reads it: "E", or a quadrant bearing,
// "N 45° E", "S 68°05'35" W".
func (b Bearing) String() string {
	if b.Axial() {
		return [4]string{"N", "E", "S", "W"}[b/East]
	}
	angle, south, west := b.quadrant()
	from, to := "N", "E"
	if south {
		from = "S"
	}
	if west {
		to = "W"
	}
	text := fmt.Sprintf("%s %d°", from, angle/Degree)
	if angle%Degree != 0 {
		text += fmt.Sprintf("%02d'", angle%Degree/minute)
	}
	if angle%minute != 0 {
		text += fmt.Sprintf("%02d\"", angle%minute)
	}
	return text + " " + to
}

// vector is the step of a leg: its departure (east) and latitude (north).
// Along an axis it is exact. Elsewhere both are the length times the sine of an
// angle in float64, rounded once to the nanometre. Steps at bearings that mirror
// each other about an axis or a diagonal mirror each other exactly.
func (b Bearing) vector(length measure.Length) geom.Point {
	angle, south, west := b.quadrant()
	step := geom.Point{X: times(length, angle), Y: times(length, East-angle)}
	if west {
		step.X = -step.X
	}
	if south {
		step.Y = -step.Y
	}
	return step
}

// times is length times the sine of angle, 0 to 90 degrees.
func times(length measure.Length, angle Bearing) measure.Length {
	switch angle {
	case 0:
		return 0
	case East:
		return length
	}
	const radians = math.Pi / (180 * float64(Degree))
	return measure.Length(math.Round(float64(length) * math.Sin(float64(angle)*radians)))
}
