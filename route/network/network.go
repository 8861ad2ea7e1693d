// Package network holds the routing problem without its house: nodes, arcs
// that cost something, and what a bend costs.
//
// What comes in is a list of arcs between numbered nodes. What goes out is a
// compact form for searching, and exact cheapest paths on it. The package
// knows nothing of walls or attics and never touches files.
//
// Vocabulary. A node is a place a cable can be. An arc joins two nodes and may
// be travelled both ways; its Fixed price is paid once however many cables use
// it and in whichever direction they come, its PerCable price is paid for each
// cable. A bend is paid per cable at a node where the heading of the arc a
// cable leaves by differs from the heading it arrived with. A cable never
// doubles back: it leaves a node neither by the arc it came by, nor by another
// in the opposite heading.
package network

// A Heading is the direction of travel along an arc. Opposite headings differ
// in the lowest bit.
type Heading uint8

// Headings along the axes of the house. Free is the heading of an arc that
// has no direction in space (from a terminal to one of its candidate places):
// entering or leaving by it is never a bend.
const (
	East Heading = iota
	West
	North
	South
	Up
	Down
	Free
)

var headingNames = [...]string{"east", "west", "north", "south", "up", "down", ""}

func (h Heading) String() string { return headingNames[h] }

// Reverse is the heading of the same arc travelled the other way.
func (h Heading) Reverse() Heading {
	if h == Free {
		return Free
	}
	return h ^ 1
}

// An Arc joins nodes From and To; Heading is the heading from From to To.
// Prices are whole cost units, never negative and at most MaxPrice.
type Arc struct {
	From, To int32
	Heading  Heading
	Fixed    int64
	PerCable int64
}

// MaxPrice bounds every price, of an arc or a bend, so that it can be added up
// and multiplied without care; what a whole path may cost is checked by From.
const MaxPrice = 1 << 40
