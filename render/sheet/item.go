package sheet

import "math"

// An Item is one thing to draw: Line, Poly, Circle, Arc, Text, Picture or *Group.
type Item interface {
	// Strokes returns what the pen draws as polylines, arcs taken as chords. A
	// closed outline ends with its first point. A Text has none, and a Group
	// has those of its items.
	Strokes() [][]Point
	// fault says why the item cannot be drawn, or "".
	fault() string
}

// A Line is the straight line from A to B.
type Line struct {
	Pen  Pen
	A, B Point
}

// A Poly is one or more polylines, drawn and filled as one. If Closed, each
// ring is joined from its last point to its first, and the pen's fill covers
// the points that lie inside an odd number of rings: a ring in a ring is a
// hole. An open Poly is not filled.
type Poly struct {
	Pen    Pen
	Rings  [][]Point
	Closed bool
}

// A Circle is a full circle, with the pen's fill.
type Circle struct {
	Pen    Pen
	Centre Point
	Radius Paper
}

// An Arc is the part of a circle that starts in the direction Start and goes
// on by Sweep, counter-clockwise if that is positive. A Sweep of a full turn
// or more is a full circle. If Pie, the ends of a lesser one are joined to the
// centre, and the pen's fill is used. Otherwise nothing is filled.
type Arc struct {
	Pen          Pen
	Centre       Point
	Radius       Paper
	Start, Sweep Angle
	Pie          bool
}

// Ends returns the first and the last point of the arc.
func (a Arc) Ends() (first, last Point) {
	return Polar(a.Centre, a.Radius, a.Start), Polar(a.Centre, a.Radius, a.Start.turn()+a.clamped())
}

// Middle returns the point half way along the arc.
func (a Arc) Middle() Point {
	return Polar(a.Centre, a.Radius, a.Start.turn()+a.clamped()/2)
}

// Full reports whether the arc is a full circle.
func (a Arc) Full() bool { return a.Sweep >= FullTurn || a.Sweep <= -FullTurn }

// clamped is the sweep, at most a full turn either way.
func (a Arc) clamped() Angle { return max(-FullTurn, min(FullTurn, a.Sweep)) }

// Strokes implements Item.
func (l Line) Strokes() [][]Point { return [][]Point{{l.A, l.B}} }

// Strokes implements Item.
func (p Poly) Strokes() [][]Point {
	if !p.Closed {
		return p.Rings
	}
	rings := make([][]Point, 0, len(p.Rings))
	for _, ring := range p.Rings {
		rings = append(rings, closeRing(ring))
	}
	return rings
}

// closeRing returns a copy of the ring that ends where it starts.
func closeRing(ring []Point) []Point {
	if len(ring) == 0 {
		return nil
	}
	return append(append(make([]Point, 0, len(ring)+1), ring...), ring[0])
}

// Strokes implements Item.
func (c Circle) Strokes() [][]Point {
	return Arc{Centre: c.Centre, Radius: c.Radius, Sweep: FullTurn}.Strokes()
}

// sagitta is the largest distance of an arc from the chords of its Strokes.
const sagitta = 50 * Micrometre

// Strokes implements Item.
func (a Arc) Strokes() [][]Point {
	sweep := a.clamped()
	n := a.chords(sweep)
	arc := make([]Point, 0, n+3)
	for i := range n + 1 {
		arc = append(arc, Polar(a.Centre, a.Radius, a.Start.turn()+Angle(int(sweep)*i/n)))
	}
	if a.Pie {
		arc = append(arc, a.Centre, arc[0])
	}
	return [][]Point{arc}
}

// chords is the number of chords that stay within sagitta of the arc: the
// sagitta of a chord that spans the angle t is r(1 - cos(t/2)), at most rt²/8.
// It is between 1 and 360.
func (a Arc) chords(sweep Angle) int {
	turns := math.Abs(float64(sweep)) / float64(FullTurn)
	step := math.Sqrt(8 * float64(sagitta) / max(1, float64(a.Radius)))
	return max(1, min(360, int(math.Ceil(2*math.Pi*turns/step))))
}

func (l Line) fault() string {
	return firstFault(l.Pen.fault(), pointFault(l.A), pointFault(l.B))
}

func (p Poly) fault() string {
	for _, ring := range p.Rings {
		for _, q := range ring {
			if f := pointFault(q); f != "" {
				return f
			}
		}
	}
	return p.Pen.fault()
}

func (c Circle) fault() string {
	return firstFault(c.Pen.fault(), pointFault(c.Centre), radiusFault(c.Radius))
}

func (a Arc) fault() string {
	return firstFault(a.Pen.fault(), pointFault(a.Centre), radiusFault(a.Radius))
}

func pointFault(p Point) string {
	if !p.onPaper() {
		return "a point is more than ten metres off the sheet"
	}
	return ""
}

func radiusFault(r Paper) string {
	if r < 0 || r > MaxCoordinate {
		return "a radius is negative or more than ten metres"
	}
	return ""
}

func firstFault(faults ...string) string {
	for _, f := range faults {
		if f != "" {
			return f
		}
	}
	return ""
}
