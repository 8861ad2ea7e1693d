package route

import (
	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// A NodeKind says what sort of place a node is.
type NodeKind uint8

// Kinds of node, in the order in which nodes at one place are numbered.
const (
	RootNode     NodeKind = iota // the closet: all cables end here
	TerminalNode                 // one drop, before its exact place is chosen
	BoxNode                      // behind an opening in a wall face
	BayNode                      // inside a stud bay
	PlateNode                    // under the top plate, where the hole is bored
	SurfaceNode                  // on the room side of a ceiling or soffit hole
	LowNode                      // in the attic, on the ceiling between two joists
	HighNode                     // in the attic, at the height of the joists' tops
	ChaseNode                    // in a chase
	RailNode                     // on the face of a room's or the house's wall, where cable runs in sight
)

var nodeKindNames = [...]string{"root", "terminal", "box", "bay", "plate", "surface", "between joists", "over joists", "chase", "on the wall"}

func (k NodeKind) String() string { return nodeKindNames[k] }

// A Node is a place a cable can be. Nodes are numbered by height, then from
// south to north and west to east, so that numbers do not depend on the order
// of anything in a file.
type Node struct {
	Kind NodeKind
	At   geom.Point3
	Wall int // wall the node is in, -1 if none
	// Space is the framing space whose lattice the node is on, -1 if none.
	Space int
}

// An ArcKind says what an installer does to get a cable along an arc.
type ArcKind uint8

// Kinds of arc.
const (
	EnterArc    ArcKind = iota // choose a place for the box, cut its opening
	SlantArc                   // sideways inside one stud bay
	FishArc                    // up or down inside one stud bay
	BlockArc                   // through a fire block
	PlateArc                   // through the top plate
	SoleArc                    // through the bottom plate and the floor
	StudArc                    // through a stud, behind a patched opening
	CeilingArc                 // through the ceiling board
	SoffitArc                  // through the soffit
	AlongArc                   // along a joist, in the bay beside it
	BesideArc                  // across, within one joist bay
	StepArc                    // from the ceiling up to the joists' tops
	AcrossArc                  // over the joists
	RodArc                     // one straight rod shot
	GableArc                   // through the wall under a gable
	ConduitArc                 // up a conduit that is there
	RacewayArc                 // in a channel on the surface of a room
	ChaseArc                   // up a chase
	FaceArc                    // on the face of a wall, up to open joists
	JoistArc                   // through a joist over a closed ceiling, behind a patched opening
	WallArc                    // through a wall, from face to face
	PassArc                    // from one space into another beside it
	OutsideArc                 // outside, along a wall
	InSoffitArc                // in the hollow of a soffit that opens
	BackArc                    // out of the back of a wall, into the attic behind it
	FloorArc                   // up through a floor beside a wall, where a channel goes on
)

var arcKindNames = [...]string{
	"to the opening", "in bay, sideways", "in bay", "fire block", "top plate", "bottom plate", "stud", "ceiling", "soffit",
	"along joist", "beside joist", "step up", "over joists", "rod", "gable wall", "conduit", "raceway",
	"chase", "on the wall's face", "joist", "through the wall", "between spaces", "outside", "in the soffit", "out of the back", "floor",
}

func (k ArcKind) String() string { return arcKindNames[k] }

// A Charge is one cost term paid on an arc, in cost units (millionths of the
// currency's unit).
type Charge struct {
	Term     price.ID
	Amount   int64
	PerCable bool
}

// An Arc joins two nodes. The fixed part of its price is paid once for all
// cables that use it, in whichever direction they come.
type Arc struct {
	Kind     ArcKind
	From, To int
	Heading  network.Heading // from From to To
	Length   measure.Length  // of cable
	Loop     measure.Length  // of that, what hangs in a drip loop at a hole from outside, in all
	Zone     Zone            // where a hand has to be to work there
	Charges  []Charge
	Hole     int // index in Graph.Holes of the hole it goes through, -1 if none
	// Capacity is the largest number of cables the arc takes, 0 for no limit.
	Capacity int
	// Space is the framing space that the arc lies in or leads into, -1 if none.
	Space int
	// Through is the conduit that the arc goes through, nil if none.
	Through *plan.Conduit
	// Chase is the chase that the arc goes up in, nil if none.
	Chase *plan.Chase
	// Outer is the outer wall that the arc runs along outside, nil if none.
	Outer *plan.Wall
	// There is the hole that is there already and that it goes through, nil if
	// none.
	There *There
	// Blocks are the rules that forbid the arc; empty in the graph that is
	// routed on.
	Blocks []Block
}

// Fixed is the part of the arc's price that is paid once.
func (a *Arc) Fixed() int64 { return a.sum(false) }

// PerCable is the part of the arc's price that each cable pays.
func (a *Arc) PerCable() int64 { return a.sum(true) }

func (a *Arc) sum(perCable bool) int64 {
	var n int64
	for _, c := range a.Charges {
		if c.PerCable == perCable {
			n += c.Amount
		}
	}
	return n
}

// A Block is one rule that forbids an arc, and what would lift it.
type Block struct {
	Rule   rule.ID
	Pos    diag.Pos // the thing in the sketch that is in the way
	At     geom.Point3
	Found  string // what was measured, with its limit
	Change string // what would allow it
	Price  int64  // of the change, in cost units, paid once
}

// A HolePlace is a place where a hole may be bored.
type HolePlace struct {
	Kind  ArcKind // of the arcs that holes are bored for
	At    geom.Point3
	Wall  int            // -1 for a ceiling
	Along measure.Length // along the wall
	Room  int            // room of a ceiling hole, -1 otherwise
	// Free is the stretch along the wall in which holes may lie, measured
	// between the outermost edges of holes.
	Free measure.Length
	// Depth of the member across the hole's axis: the width of a plate.
	MemberWidth measure.Length
	FromSpace   bool // there is room to bore it from the framing space
	Space       int  // the space it opens into, by index, -1 if none
	// Beyond is the space on the other side of a hole between two, -1 for others.
	Beyond int
	Reach  measure.Length // bit length needed to bore it from below
}

// A Graph is the physical graph of a job: everything that an installer could
// do with a cable in this house.
type Graph struct {
	Job       *plan.Job
	Nodes     []Node
	Arcs      []Arc
	Bend      []int64 // price of one bend of one cable, by node
	Holes     []HolePlace
	Root      int
	Terminals []int // by drop, in the order of Job.Drops; -1 if it has no place at all
	Net       *network.Network
	Reach     *Reach   // of the main attic
	Reaches   []*Reach // by space
	Bays      [][]Bay  // by wall
	Known     []Known  // holes of earlier jobs that are not in plates

	stop    func() bool // whether to end the search early; nil if never
	crowded int64       // price of a place that is fuller than it can be, in cost units

	dead map[int][]Block // by drop: what stops it where no change is known
	shut []Block         // what stops every drop at the closet, if nothing leads into its wall
}
