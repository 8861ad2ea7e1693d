package plan

import "topplate/plan/measure"

// A bound is the range that a length in the files may have, and why. The
// ranges are wide: they catch a slip of the pen, such as feet for inches, and
// keep sums and loops small. All are common practice, without a source, in
// round inches and feet.
type bound struct {
	measure.Range
	why string
}

// text writes the range in the units that a length was written in.
func (b bound) text(s measure.System) string { return s.Format(b.Min) + " to " + s.Format(b.Max) }

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

func between(lo, hi measure.Length, why string) bound {
	return bound{measure.Range{Min: lo, Max: hi}, why}
}

// Ranges of the house.
var (
	coordinates   = between(-3000*foot, 3000*foot, "places are measured from a corner of the house or near it")
	sketchErrors  = between(0, 12*inch, "a worse sketch must be taped again")
	closings      = between(0, 3*foot, "a run that misses by more has a wrong leg")
	floors        = between(-30*foot, 150*foot, "the floors of a house")
	ceilings      = between(70*inch, 20*foot, "one storey")
	aboveCeiling  = between(0, 3*foot, "the plate is over the ceiling, at the thickness of its board or a dropped ceiling")
	legLengths    = between(1*inch, 600*foot, "one straight piece of wall")
	studDepths    = between(3*inch/2, 12*inch, "across the wall, as the stud measures and not as it is called")
	masonryDepths = between(2*inch, 30*inch, "brick, block, stone or concrete")
	onCentre      = between(8*inch, 50*inch, "from centre to centre of the framing")
	boards        = between(0, 4*inch, "board on one side of a wall")
	claddings     = between(0, 8*inch, "sheathing, cladding or brick outside of the studs")
	checkLengths  = between(1*inch, 1000*foot, "a length between two places in the house")
	checkErrors   = between(0, 12*inch, "a worse check tells nothing")
	insideSizes   = between(1*foot, 200*foot, "a room from face to face")
	insideShifts  = between(-200*foot, 200*foot, "how far a face is out of line with another")
	openingSizes  = between(4*inch, 32*foot, "a rough opening")
	heights       = between(0, 20*foot, "above the floor of one storey")
	boxHeights    = between(2*inch, 20*foot, "the centre of a box above the floor")
	alongWalls    = between(0, 600*foot, "along a wall")
	members       = between(3*inch/4, 6*inch, "the thickness of one piece of lumber")
	depths        = between(3*inch/2, 24*inch, "the depth of one member")
	subfloors     = between(0, 4*inch, "the boards on the joists, and what is laid on them")
	crawls        = between(6*inch, 15*foot, "from the ground to the joists")
	insulations   = between(0, 48*inch, "above the ceiling board")
	overhangs     = between(0, 6*foot, "from the plate's outer face, level")
	heels         = between(0, 3*foot, "from the plate up to the top of the truss at its outer face")
	hatchSizes    = between(12*inch, 10*foot, "a hatch one can climb through")
	inAttic       = between(0, 50*foot, "above the ceiling board")
	inCrawl       = between(-15*foot, 50*foot, "above the undersides of the joists, negative under them")
	clearances    = between(0, 3*foot, "round a hot thing")
	conduitBores  = between(inch/4, 6*inch, "the inside of a pipe in a wall")
	jackets       = between(inch/16, 2*inch, "a cable, over its jacket")
	cores         = between(inch/100, inch/2, "one conductor of a cable")
	mostAcross    = between(0, 1000*foot, "a house, whose attic is cut into a lattice")
)

// Ranges of the job.
var (
	panelWidths = between(2*inch, 5*foot, "the opening behind a panel")
	shifts      = between(0, 10*foot, "how far a place may be moved")
	soffitOuts  = between(0, 6*foot, "under an overhang")
	rodLengths  = between(1*foot, 100*foot, "all rods joined")
	armReaches  = between(6*inch, 5*foot, "the reach of one arm")
	extensions  = between(0, 10*foot, "the extensions of a bit's shaft")
	bitSizes    = between(inch/8, 5*inch, "the hole that a bit makes")
	bitReaches  = between(1*inch, 10*foot, "the depth that a bit gets to")
	loops       = between(0, 100*foot, "a service loop")
	trims       = between(0, 3*foot, "what is cut off at one end")
	roundings   = between(inch/64, 30*foot, "the step to which lengths are rounded up")
)

// joinReach is how far the end of a wall may miss the wall that it is meant
// to meet.
var joinReach = between(0, 2*inch, "a tape sketch is seldom better than an inch at each end")

// At most so many of anything in a file, so that bad input can't hang the
// program. A large house has a tenth of it.
const (
	mostWalls = 1000
	mostRooms = 300
	// Legs of the walk round a room, and corners of all rooms together.
	mostWalkLegs    = 100
	mostRoomCorners = 2000
	mostDrops       = 2000
	mostChecks      = 200
	mostOthers      = 2000 // of each other kind
)
