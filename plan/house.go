package plan

import (
	"topplate/plan/cladding"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/roof"
)

// A House is a checked sketch of a building. It is never changed after
// loading. Slices keep the order of the file; nothing that is computed from a
// House may depend on that order.
type House struct {
	File   string
	Name   string
	Place  string // town or street, as the title block prints it
	Units  measure.System
	North  int // bearing of house north (Y), degrees clockwise from true north, 0..359
	Built  int // year, 0 if not known
	Closes measure.Length
	// Adjusted is true if least squares over all that was taped, checks too,
	// put the walls where they are, and not the closing of each run by itself.
	Adjusted bool
	// SketchError is how far off a taped dimension may be; it is added to
	// every cut length.
	SketchError measure.Length
	Site        Site
	// AtticHot is how hot the attic gets, in thousandths of a degree Celsius;
	// it is DefaultAtticHot unless AtticHotGiven.
	AtticHot      int64
	AtticHotGiven bool

	Levels    []Level
	Traverses []Traverse
	Checks    []Check // by id
	Walls     []Wall
	Rooms     []Room
	// Spaces are the framing spaces; the first is the main attic, or what is
	// under a flat roof, which Attic points to, and Roof to the roof over it.
	Spaces     []*Space
	Roofs      []*Roof
	Attic      *Space
	Roof       *Roof
	Hatches    []Hatch
	Obstacles  []Obstacle
	Soffits    []SoffitOpening
	Baffles    []Baffle
	PowerRuns  []PowerRun
	Marks      []Mark
	Conduits   []Conduit
	Chases     []Chase
	Underlays  []Underlay
	OutsideOf  geom.Polygon // finished outer face of the closed outer run, counter-clockwise
	PlateLine  geom.Polygon // outer face of the wall plates under the roof, counter-clockwise
	Boundaries geom.Rect    // smallest rectangle around all wall bodies
}

// A Level is one storey. Floor is the height of the finished floor over the
// house's zero, negative below it, Ceiling the height from that floor to the
// finished ceiling, PlateTop from that floor to the top of the top plate.
type Level struct {
	ID       string
	Pos      diag.Pos
	Floor    measure.Length
	Ceiling  measure.Length
	PlateTop measure.Length
	// OutsideOf is the finished outer face of its closed outer run, PlateLine
	// that of the plates, both counter-clockwise.
	OutsideOf, PlateLine geom.Polygon
}

// A Traverse is a run of walls as it was taped, with how well it closed.
type Traverse struct {
	ID        string
	Pos       diag.Pos
	Closed    bool
	Perimeter measure.Length
	// MisX and MisY are how far the taped end missed the start, before it
	// was spread over the legs.
	MisX, MisY measure.Length
	// First is the id of the run's first wall. It starts on the wall with the
	// id On, At so far along it, or at a point of its own if On is empty.
	First, On string
	At        measure.Length
}

// A Side is a side of a wall as seen by somebody who walks along it from its
// start to its end.
type Side uint8

// The sides of a wall.
const (
	Left Side = iota
	Right
)

// Opposite is the other side.
func (s Side) Opposite() Side { return 1 - s }

func (s Side) String() string {
	if s == Left {
		return "left"
	}
	return "right"
}

// A Wall is one straight leg of a run.
type Wall struct {
	ID    string
	Pos   diag.Pos
	Level int
	// A and B are the ends of the taped line after adjustment; the leg runs
	// along one axis of the house. A distance "along the wall" is measured
	// on this line from A.
	A, B geom.Point
	// Taped is the length as it was taped, before adjustment.
	Taped measure.Length
	// Made is true of a wall that nobody taped: it was made round rooms by inside
	// dimensions.
	Made bool
	// Body is the finished wall, Frame its studs and plates without board
	// and cladding. At a corner both run to the far face of the corner.
	Body, Frame geom.Rect

	StudDepth  measure.Length // 3-1/2 in for a 2x4
	Spacing    measure.Length // studs on centre
	StudWidth  measure.Length // thickness along the wall, 1-1/2 in
	TopPlates  int            // 1 or 2 (double)
	Exterior   bool
	Bearing    bool
	Insulated  bool
	FireBlocks []measure.Length // heights of rows of blocking above the floor
	Boards     [2]measure.Length
	// Cladding is what an outer wall is clad with; its ID is empty if that is not known.
	Cladding cladding.Kind
	RoomAt   [2]bool // whether there is a room on that side anywhere along it
	// Out is the side that looks out of the house, of an exterior wall.
	Out Side
	// Gable is true if the roof ends in a gable over the wall, so that no
	// rafters come down on it.
	Gable bool
	// Masonry is true of a wall of brick, block, stone or concrete, in which no
	// cable can be fished. StudDepth is then its thickness without boards.
	Masonry  bool
	Openings []Opening
	Devices  []Device
}

// An OpeningKind says what fills an opening.
type OpeningKind uint8

// What may stand in a wall.
const (
	Door OpeningKind = iota
	Window
	Passage // cased or bare, without a leaf
	GarageDoor
)

// An Opening is a rough opening in a wall from Start to End along it, from
// Sill to Head above the floor.
type Opening struct {
	ID         string
	Pos        diag.Pos
	Kind       OpeningKind
	Start, End measure.Length
	Sill, Head measure.Length
	HingeEnd   bool // the leaf hangs at End instead of Start
	Swing      Side // the side the leaf opens to
}

// A Device is something with power in a wall: a receptacle, a switch.
// Its cable runs along a stud from the box up, down, or both ways, and neither
// way on masonry.
type Device struct {
	ID     string
	Pos    diag.Pos
	Kind   string // receptacle, switch, light, panel
	At     measure.Length
	Height measure.Length
	Side   Side
	Up     bool
	Down   bool
}

// A Room is a space between walls.
type Room struct {
	ID    string
	Pos   diag.Pos
	Level int
	Name  string
	// Use is what the room is, as far as a rule asks: "garage", "closet",
	// "bath", "stairs", or empty.
	Use string
	// Open is true if its ceiling has no board, so that the joists can be got
	// at from the room.
	Open    bool
	At      geom.Point
	Outline geom.Polygon // finished faces
	Holes   []geom.Polygon
	Bounds  geom.Rect
}

// JoistKind says what spans a framing space.
type JoistKind uint8

// Kinds of ceiling joist.
const (
	Sawn JoistKind = iota
	Truss
	IJoist
)

// A Roof is a roof over outer walls. Surface gives its height over their plates
// at every point, Framing what is under it. A flat roof has neither, nor rafters:
// it lies on the joists of the space under it.
type Roof struct {
	ID       string
	Pos      diag.Pos
	Level    int // whose plates it stands on
	Flat     bool
	Outline  geom.Polygon // along the outer faces of the plates, counter-clockwise
	Pitch    roof.Pitch
	Surface  *roof.Roof
	Framing  roof.Framing
	Overhang measure.Length
	// Spacing and the first rafter on either axis: rafters of a face whose
	// eave runs along X stand at FirstX + n*Spacing, of one along Y at
	// FirstY + n*Spacing.
	Spacing        measure.Length
	FirstX, FirstY measure.Length
	Width          measure.Length // thickness of a rafter
}

// A Hatch is an opening in a ceiling, a floor or a low wall through which one
// gets into a space. Room is -1 for one that is reached from outside.
type Hatch struct {
	ID    string
	Pos   diag.Pos
	Space int
	Room  int
	Area  geom.Rect
}

// An Obstacle takes up room in a space. Bottom and Top are heights above the
// space's base, which is the top of the ceiling board. Nothing may be run nearer than Clearance.
type Obstacle struct {
	ID          string
	Pos         diag.Pos
	Kind        string // duct, chimney, flue, tank, light, unit
	Space       int
	Area        geom.Rect
	Bottom, Top measure.Length
	Hot         bool
	Clearance   measure.Length
	// ByRule is true if Clearance is what the rules ask for around this kind
	// of obstacle, and not the file's own.
	ByRule bool
}

// A SoffitOpening is a stretch of soffit along an outer wall that can be
// opened without cutting: a vent strip, a panel that comes down.
type SoffitOpening struct {
	ID         string
	Pos        diag.Pos
	Wall       int
	Start, End measure.Length
}

// A Baffle is a stretch along an outer wall where the rafter bays are closed
// at the eave by a ventilation baffle.
type Baffle struct {
	ID         string
	Pos        diag.Pos
	Wall       int
	Start, End measure.Length
}

// A PowerRun is a power cable in a space.
type PowerRun struct {
	ID    string
	Pos   diag.Pos
	Space int
	Path  []geom.Point
	// Clear is a distance of its own that cable keeps beside it, zero for that of
	// the rules.
	Clear measure.Length
	// Circuits is the number of circuits bundled in the run.
	Circuits int
}

// A Mark is a thing that can be found both from above and from below, or from
// one of them, and from which a tape can be pulled.
type Mark struct {
	ID           string
	Pos          diag.Pos
	Kind         string // light box, vent, corner, pipe, nail
	Space        int
	At           geom.Point
	Above, Below bool
}

// A Conduit is a pipe in a wall. It begins at a box in the wall's face, goes
// straight up inside its stud bay and through the top plates, and ends open in
// the space above them; or, if Down, down through the floor into the space
// below it.
type Conduit struct {
	ID   string
	Pos  diag.Pos
	Wall int
	// At is how far along the wall its middle is, Height how far above the
	// floor it opens into the box, on the Side that faces Room.
	At, Height measure.Length
	Side       Side
	Room       int // -1 if no room is there
	Down       bool
	// Inside is its inside diameter. Kind and Trade are how the trade calls
	// it, empty if the file gives the diameter.
	Inside      measure.Length
	Kind, Trade string
	// Holds are the diameters of the cables that are in it already.
	Holds []measure.Length
}
