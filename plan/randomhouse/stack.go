package randomhouse

import (
	"fmt"
	"math/rand/v2"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Stack is what is under a sketch's level, which then is the upper storey: a
// storey that reaches as far or farther, with roofs of its own over what it
// does, and a basement or a crawl space below.
type Stack struct {
	Lower Storey
	// Rest are the parts of the lower storey that are not under the upper one,
	// along finished faces.
	Rest []geom.Rect
	// Below is "basement", "crawl space" or empty: the storey lies on the ground.
	Below string
	// Open is true if the basement's ceiling has no board.
	Open  bool
	Drops []StackDrop
}

// A Storey has its outer walls first, one for each side of its outline, and one
// or two rooms.
type Storey struct {
	Outline geom.Polygon
	Walls   []Wall
	Rooms   []Room
}

// A StackDrop is on the lower storey: on an outer wall's inside, or in the
// ceiling at Point.
type StackDrop struct {
	Tag        string
	Ceiling    bool
	Wall       int
	At, Height measure.Length
	Point      geom.Point
}

// stack chooses what is under the sketch, by dice of its own: the rest of the
// model stays as it is without.
func (g *generator) stack(seed uint64) {
	own := generator{dice{rand.New(rand.NewPCG(seed, 0x6c6f77)), g.unit}, g.Model}
	s := &Stack{Below: pick(&own.dice, "basement", "crawl space", ""), Open: own.one(2)}
	g.Model.Stack = s
	s.Lower.Outline = g.Model.Outline
	if !own.one(3) {
		b := g.Model.Outline.Bounds()
		if len(g.Model.Outline) == 4 {
			b.Max.X += own.between(120, 200)
		}
		s.Lower.Outline = geom.AreaOfRects(b).Outlines[0]
		for _, p := range geom.Subtract(geom.AreaOfRects(b), geom.AreaOf(g.Model.Outline)).Outlines {
			s.Rest = append(s.Rest, p.Bounds())
		}
	}
	own.lowerWalls(&s.Lower, len(s.Rest) > 0)
	for n := range 2 + own.IntN(3) {
		s.Drops = append(s.Drops, own.stackDrop(n))
	}
}

// lowerWalls makes the walls and rooms of the lower storey, with a wall across a
// rectangle.
func (g *generator) lowerWalls(s *Storey, across bool) {
	for i, a := range s.Outline {
		w := Wall{ID: fmt.Sprintf("lo%d", i+1), A: a, B: s.Outline[(i+1)%len(s.Outline)], Frame: "2x4", Exterior: true}
		w.Thick = g.thickness(&w)
		s.Walls = append(s.Walls, w)
	}
	if !across {
		s.Rooms = []Room{{ID: "l1", Outline: s.Outline, At: g.Model.Rooms[0].At}}
		return
	}
	b := s.Outline.Bounds()
	x := g.within(b.Min.X+b.Width()/3, b.Min.X+b.Width()/2)
	w := Wall{ID: "li1", A: geom.Point{X: x, Y: b.Min.Y}, B: geom.Point{X: x, Y: b.Max.Y}, Frame: "2x4"}
	w.Thick = g.thickness(&w)
	s.Walls = append(s.Walls, w)
	at := b.Min.Add(geom.Point{X: g.in(minRoom / 2), Y: g.in(minRoom / 2)})
	s.Rooms = []Room{
		{ID: "l1", Outline: geom.AreaOfRects(geom.Rect{Min: b.Min, Max: w.B}).Outlines[0], At: at},
		{ID: "l2", Outline: geom.AreaOfRects(geom.Rect{Min: w.A, Max: b.Max}).Outlines[0], At: geom.Point{X: x + g.in(minRoom/2), Y: at.Y}},
	}
}

// stackDrop is a drop on the lower storey, off the wall across it and off
// hatches.
func (g *generator) stackDrop(n int) StackDrop {
	s := g.Model.Stack
	d := StackDrop{Tag: fmt.Sprintf("L%d", n+1), Ceiling: g.one(3), Height: g.between(10, 60)}
	for range 100 {
		d.Wall = g.IntN(len(s.Lower.Outline))
		w := &s.Lower.Walls[d.Wall]
		d.At = g.within(g.in(24), w.Length()-g.in(24))
		d.Point = g.pointIn(s.Lower.Outline.Bounds())
		free := true
		for i := range s.Lower.Walls[len(s.Lower.Outline):] {
			v := &s.Lower.Walls[len(s.Lower.Outline)+i]
			near := geom.Rect{Min: v.A, Max: v.B}.Canon().Outset(g.in(16))
			free = free && !near.Contains(w.PointAt(d.At)) && !near.Contains(d.Point)
		}
		for _, r := range s.Rest {
			free = free && !hatchIn(r, g.unit).Outset(g.in(12)).Contains(d.Point)
		}
		for i := range s.Drops {
			e := &s.Drops[i]
			free = free && geom.Dist(e.Point, d.Point) > g.in(12) && (e.Wall != d.Wall || max(e.At-d.At, d.At-e.At) > g.in(8))
		}
		if depth, ok := s.Lower.Outline.Depth(d.Point); free && ok && depth > g.in(24) {
			break
		}
	}
	return d
}

// hatchIn is a hatch in the middle of a part of the lower storey.
func hatchIn(r geom.Rect, unit measure.Length) geom.Rect {
	mid := geom.Point{X: r.Min.X + r.Width()/2, Y: r.Min.Y + r.Height()/2}
	return geom.Rect{Min: mid, Max: mid}.Outset(12 * unit)
}
