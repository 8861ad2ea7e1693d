package plan

import (
	"crypto/sha256"

	"topplate/plan/cable"
	"topplate/plan/connector"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Job is one checked piece of work on a House. It is never changed after
// loading.
type Job struct {
	File     string
	House    *House
	Name     string
	Number   string
	Revision string
	By       string
	Date     string // YYYY-MM-DD, empty if none

	Closet Closet
	Drops  []Drop
	// OwnCables and OwnConnectors are the kinds that the job describes. Drops
	// and spools have theirs already looked up.
	OwnCables     []OwnCable
	OwnConnectors []OwnConnector
	Spools        []Spool
	Buy           Purchase
	Crew          Crew
	Switch        Switch
	Labels        Labels
	Have          []Stock // sorted by part
	// Allowance is what is added to an estimate, in per cent.
	Allowance int
	// Paper is what the sheets are drawn on.
	Paper Paper

	Tools Tools
	Allow Allow
	Rates Rates
	Slack Slack
	// Fixed is what was decided before the rest is planned.
	Fixed []Fixed
	// Before is what earlier jobs left; their holes are in Fixed, their spools
	// in Spools.
	Before Before
	// Weights are what the plan is chosen by, besides its prices.
	Weights Weights
	// Limits holds the rule limits the user changed, by limit id.
	Limits map[string]Override
	// PartPrices holds the user's own prices of parts, by id of part, in
	// thousandths of the currency's unit. Their names are not checked here.
	PartPrices map[string]Override
	// Inputs are the files that the job was read from: the job's own, the
	// house, those it includes, the records of earlier jobs.
	Inputs []Input
	// Origins holds where each setting was read, by its path ("slack.trim",
	// "cable.cat6-sun"), in the order of reading: the last one holds. What is
	// built in has none.
	Origins map[string][]diag.Pos
	// Prices holds the cost terms the user changed, by term id.
	Prices map[string]Override
}

// An Input is a file that was read.
type Input struct {
	Path   string // as the job calls it; the job's own without its folder
	SHA256 [sha256.Size]byte
}

// An Override is a number from the job file, or from one that it includes, that replaces a default, in the
// unit of the record it replaces: nanometres for a length.
type Override struct {
	Pos   diag.Pos
	Value int64
}

// A Spot is a place on a wall: At along it, Height above the floor to the
// centre of the box, on the Side that is cut open.
type Spot struct {
	Wall   int
	At     measure.Length
	Height measure.Length
	Side   Side
	Room   int
}

// A Closet is where all cables end.
type Closet struct {
	Pos  diag.Pos
	Name string
	Room int
	Spot Spot
	// Ceiling is true if the cables come down through the closet's ceiling
	// at Point instead of inside the wall at Spot.
	Ceiling bool
	Point   geom.Point
	Ports   int
	Panel   string // what labels call its panel
	// Width is the width of the opening behind the panel: any stud bay that
	// it overlaps may be used.
	Width measure.Length
}

// A DropKind is one of the three kinds of place a drop ends at.
type DropKind uint8

// Kinds of drop.
const (
	WallPlate DropKind = iota
	CeilingPoint
	SoffitSpot
)

var dropKindNames = [...]string{"wall plate", "ceiling point", "soffit spot"}

func (k DropKind) String() string { return dropKindNames[k] }

// A Drop is one or more equal cables to one place.
type Drop struct {
	Tag   string
	Pos   diag.Pos
	Kind  DropKind
	Cable cable.Type
	Count int
	Note  string
	Later bool // planned and drawn, but not run today

	// Class is the class of IEEE 802.3 that the device at each cable powers
	// up in, 0 to 8, or NoClass. Watts is what it takes at most, in thousandths
	// of a watt, zero if that is not known.
	Class int
	Watts int64
	// End is what is put on the far end of each cable, and Connector which:
	// it has no ID for cable that ends under screws.
	End       connector.Kind
	Connector connector.Type
	// Exposure of a soffit spot, out of doors.
	Exposure Exposure

	Spot  Spot       // wall plate
	Point geom.Point // ceiling point, soffit spot: in plan
	Room  int        // room of a wall plate or ceiling point, -1 outside
	Eave  int        // wall under the soffit of a soffit spot, -1 otherwise
	// Shift is how far along the wall (a ceiling point: across the joists)
	// the place may be moved from where it was wished.
	Shift measure.Length
}

// LevelOf is the level that a drop is on: that of its wall, of the wall under its
// eave, or of its room.
func (h *House) LevelOf(d *Drop) int {
	switch d.Kind {
	case WallPlate:
		return h.Walls[d.Spot.Wall].Level
	case SoffitSpot:
		return h.Walls[d.Eave].Level
	default:
		return h.Rooms[d.Room].Level
	}
}

// Tools are what the installer has with him.
type Tools struct {
	Pos       diag.Pos       // of the table, or of the job file without one
	Rods      measure.Length // joined length
	Bits      []Bit
	Extension measure.Length // longest shaft extension, 0 if none
	ArmReach  measure.Length
}

// A Bit is a drill bit: the hole it makes and how deep it reaches.
type Bit struct {
	Pos      diag.Pos
	Diameter measure.Length
	Reach    measure.Length
	Flexible bool
}

// Allow says what the homeowner allows.
type Allow struct {
	// Patching allows boring from bay to bay behind finished board, with an
	// opening that is closed again.
	Patching bool
	// Raceway allows channels on the faces of rooms, Outside cable along the
	// outer walls.
	Raceway, Outside bool
}

// Rates turn minutes into money. Hour is in cost units (see route) per hour.
type Rates struct {
	Currency string
	Hour     int64 // thousandths of the currency's unit per hour
}

// Slack is what is added to the developed length of a cable.
type Slack struct {
	Closet, Outlet measure.Length // service loops
	Trim           measure.Length // for re-termination, each end
	Percent        int            // allowance for waste, per cent
	Round          measure.Length // cut lengths are rounded up to a multiple
}
