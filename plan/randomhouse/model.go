package randomhouse

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Options say what to make.
type Options struct {
	// Area is how many times the floor area of an ordinary house there is;
	// zero is one. The number of rooms grows with it.
	Area float64
	// Drops is the number of drops; zero is three to eight, at random.
	Drops int
	// Symmetry is applied to the whole sketch when it is written. The model
	// is the same for all eight.
	Symmetry geom.Symmetry
	// Levels puts a storey under that of the model, and a basement, a crawl space
	// or nothing under it: Model.Stack. The rest of the model is the same without.
	Levels bool
	// Shuffle, if not zero, seeds another order of the tables in both files.
	Shuffle uint64
}

// A Model is a house and a job before they are written: all random choices,
// in the frame before the symmetry. Every coordinate is a whole quarter of an
// inch, or of 25 mm in a metric house.
type Model struct {
	Metric bool
	// Outline is the finished outer face, counter-clockwise.
	Outline geom.Polygon
	// Walls are the sides of the outline, in its order, and then the walls
	// between rooms.
	Walls     []Wall
	Rooms     []Room
	Openings  []Opening
	Devices   []Device
	Attic     Attic
	Roof      Roof
	Hatch     Hatch
	Obstacles []Obstacle
	Soffits   []Stretch
	Baffles   []Stretch
	Power     [][]geom.Point
	Marks     []geom.Point

	Closet Place
	// CeilingCloset is true if the closet's cables come through its ceiling
	// at Closet.At.
	CeilingCloset bool
	Drops         []Drop
	Patching      bool
	Rods          measure.Length
	Stack         *Stack // nil without Options.Levels
}

// A Wall runs from A to B on its taped line: the finished outer face of an
// outer wall, with the house on its left, the middle of any other.
type Wall struct {
	ID       string
	A, B     geom.Point
	Frame    string // 2x4 or 2x6
	Thick    measure.Length
	Exterior bool
	Blocks   []measure.Length // heights of fire blocks

	taken []stretch // what is in the wall or meets it
}

// A stretch is a part of a wall, along it.
type stretch struct{ lo, hi measure.Length }

// A Room is what the taped lines of its walls enclose, counter-clockwise;
// Walls[i] is the wall on the side that begins at corner i. At is inside.
type Room struct {
	ID      string
	Outline geom.Polygon
	Walls   []int
	At      geom.Point
}

// An Opening is in a wall, its near edge at At from the wall's start.
type Opening struct {
	ID         string
	Wall       int
	Kind       string
	At, Width  measure.Length
	Sill, Head measure.Length
	HingeEnd   bool
	SwingRight bool
}

// A Place is on the side of a wall that bounds a room: At is the distance
// along the wall from its start. For a place in a ceiling, Point is where.
type Place struct {
	Room, Wall int
	At         measure.Length
	Height     measure.Length
	Point      geom.Point
}

// A Device is power in a wall.
type Device struct {
	ID string
	Place
	Kind, Feed string
}

// An Attic tells how the joists lie; First is a coordinate across them.
type Attic struct {
	AlongY     bool
	Truss      bool
	Spacing    measure.Length
	First      measure.Length
	Size       string
	Insulation measure.Length
	Decking    []geom.Rect
}

// A Roof is a hip, or has gables over some outer walls.
type Roof struct {
	Gables   []int
	Rise     int // in 12
	Overhang measure.Length
	Truss    bool
	// First is a point with a rafter's centre on either axis.
	First   geom.Point
	Spacing measure.Length
}

// A Hatch is in the ceiling of a room.
type Hatch struct {
	Room          int
	Centre        geom.Point
	Width, Height measure.Length
}

// An Obstacle is a thing in the attic.
type Obstacle struct {
	ID, Kind    string
	Area        geom.Rect
	Bottom, Top measure.Length
}

// A Stretch is beside an outer wall.
type Stretch struct {
	ID        string
	Wall      int
	At, Width measure.Length
}

// A Drop is one place to cable. A soffit spot is beside outer wall Place.Wall,
// Out from its face.
type Drop struct {
	Tag  string
	Kind string
	Place
	Out   measure.Length
	Count int
	Shift measure.Length
	Cable string
	Later bool
}

// Length is how long a wall's taped line is.
func (w *Wall) Length() measure.Length { return geom.Dist(w.A, w.B) }

// PointAt is the point of a wall's taped line at a distance from its start.
func (w *Wall) PointAt(along measure.Length) geom.Point {
	switch {
	case w.B.X > w.A.X:
		return geom.Point{X: w.A.X + along, Y: w.A.Y}
	case w.B.X < w.A.X:
		return geom.Point{X: w.A.X - along, Y: w.A.Y}
	case w.B.Y > w.A.Y:
		return geom.Point{X: w.A.X, Y: w.A.Y + along}
	default:
		return geom.Point{X: w.A.X, Y: w.A.Y - along}
	}
}
