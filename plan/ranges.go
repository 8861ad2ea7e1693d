package plan

import "topplate/plan/measure"

// A bound is the range that a length in the files may have, and why. The
// ranges are wide: they catch a slip of the pen, such as feet for inches, and
// keep sums and loops small. All are common practice, without a source.
type bound struct {
	measure.Range
	why string
}

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
	m    = measure.Metre
)

// Ranges of the house.
var (
	coordinates  = bound{measure.Range{Min: -1000 * m, Max: 1000 * m}, "places are measured from a corner of the house or near it"}
	sketchErrors = bound{measure.Range{Min: 0, Max: 300 * mm}, "a worse sketch must be taped again"}
	closings     = bound{measure.Range{Min: 0, Max: 1 * m}, "a run that misses by more has a wrong leg"}
	floors       = bound{measure.Range{Min: -10 * m, Max: 50 * m}, "of a house's floors"}
	ceilings     = bound{measure.Range{Min: 1800 * mm, Max: 6 * m}, "one storey"}
	aboveCeiling = bound{measure.Range{Min: 0, Max: 1 * m}, "the plate is over the ceiling, at the thickness of its board or a dropped ceiling"}
	legLengths   = bound{measure.Range{Min: 1 * inch, Max: 200 * m}, "one straight piece of wall"}
	studDepths   = bound{measure.Range{Min: 38 * mm, Max: 300 * mm}, "across the wall, as the stud measures and not as it is called"}
	onCentre     = bound{measure.Range{Min: 200 * mm, Max: 1300 * mm}, "from centre to centre of the framing"}
	boards       = bound{measure.Range{Min: 0, Max: 100 * mm}, "board on one side of a wall"}
	claddings    = bound{measure.Range{Min: 0, Max: 200 * mm}, "sheathing, cladding or brick outside of the studs"}
	openingSizes = bound{measure.Range{Min: 4 * inch, Max: 10 * m}, "a rough opening"}
	heights      = bound{measure.Range{Min: 0, Max: 6 * m}, "above the floor of one storey"}
	alongWalls   = bound{measure.Range{Min: 0, Max: 200 * m}, "along a wall"}
	members      = bound{measure.Range{Min: 19 * mm, Max: 150 * mm}, "the thickness of one piece of lumber"}
	depths       = bound{measure.Range{Min: 38 * mm, Max: 600 * mm}, "the depth of one member"}
	insulations  = bound{measure.Range{Min: 0, Max: 1200 * mm}, "above the ceiling board"}
	overhangs    = bound{measure.Range{Min: 0, Max: 2 * m}, "from the plate's outer face, level"}
	heels        = bound{measure.Range{Min: 0, Max: 1 * m}, "from the plate up to the top of the truss at its outer face"}
	hatchSizes   = bound{measure.Range{Min: 300 * mm, Max: 3 * m}, "a hatch one can climb through"}
	inAttic      = bound{measure.Range{Min: 0, Max: 15 * m}, "above the ceiling board"}
	clearances   = bound{measure.Range{Min: 0, Max: 1 * m}, "round a hot thing"}
)

// Ranges of the job.
var (
	panelWidths = bound{measure.Range{Min: 2 * inch, Max: 1500 * mm}, "of the opening behind a panel"}
	shifts      = bound{measure.Range{Min: 0, Max: 3 * m}, "how far a place may be moved"}
	soffitOuts  = bound{measure.Range{Min: 0, Max: 2 * m}, "under an overhang"}
	rodLengths  = bound{measure.Range{Min: 500 * mm, Max: 30 * m}, "all rods joined"}
	armReaches  = bound{measure.Range{Min: 200 * mm, Max: 1500 * mm}, "of one arm"}
	extensions  = bound{measure.Range{Min: 0, Max: 3 * m}, "of a bit's shaft"}
	bitSizes    = bound{measure.Range{Min: 3 * mm, Max: 110 * mm}, "the hole that a bit makes"}
	bitReaches  = bound{measure.Range{Min: 1 * inch, Max: 3 * m}, "the depth that a bit gets to"}
	loops       = bound{measure.Range{Min: 0, Max: 30 * m}, "a service loop"}
	trims       = bound{measure.Range{Min: 0, Max: 1 * m}, "what is cut off at one end"}
	roundings   = bound{measure.Range{Min: 1 * mm, Max: 10 * m}, "the step to which lengths are rounded up"}
)

// joinReach is how far the end of a wall may miss the wall that it is meant
// to meet.
var joinReach = bound{measure.Range{Min: 0, Max: 2 * inch}, "a tape sketch is seldom better than an inch at each end"}

// At most so many of anything in a file, so that bad input can't hang the
// program. A large house has a tenth of it.
const (
	mostWalls  = 1000
	mostRooms  = 300
	mostDrops  = 500
	mostOthers = 2000 // of each other kind
)
