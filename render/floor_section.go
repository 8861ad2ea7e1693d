package render

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route"
)

// A floorCut is a cut through a floor, or the floor over a crawl space, at a hole
// in a plate: square to the hole's wall, through what stands on the floor and
// what is under it. Distances across are counted from the middle of the wall,
// heights from the floor of the hole's level.
type floorCut struct {
	res   *route.Result
	hole  *route.Hole
	place *route.HolePlace
	wall  *plan.Wall
	space *plan.Space
	// on and under are the walls above and below the floor there, of which one
	// is the hole's; nil where there is none.
	on, under *plan.Wall
	// first and last bound the floor: at an outer wall it ends at its face.
	first, last measure.Length
}

// Sizes of what a cut through a floor shows; common practice, no source.
const (
	floorCutWide = 20 * measure.Inch // on either side of the wall
	floorCutTall = 12 * measure.Inch // of the walls above and below
)

// floorCuts lists a cut for each wall that is bored through into a floor or a
// crawl space, at the first of its holes.
func floorCuts(res *route.Result) []*floorCut {
	h := res.Job.House
	type key struct {
		wall, space int
		kind        route.ArcKind
	}
	var out []*floorCut
	seen := map[key]bool{}
	for i := range res.Holes {
		p := &res.Graph.Holes[res.Holes[i].Place]
		k := key{p.Wall, p.Space, p.Kind}
		if p.Kind != route.SoleArc && p.Kind != route.PlateArc || p.Wall < 0 || p.Space < 0 || seen[k] {
			continue
		}
		if s := h.Spaces[p.Space]; s.Above < 0 {
			continue // under a roof
		}
		seen[k] = true
		out = append(out, newFloorCut(res, &res.Holes[i], p))
	}
	return out
}

func newFloorCut(res *route.Result, hole *route.Hole, p *route.HolePlace) *floorCut {
	h := res.Job.House
	c := &floorCut{res: res, hole: hole, place: p, wall: &h.Walls[p.Wall], space: h.Spaces[p.Space]}
	c.on, c.under = c.wallOn(c.space.Above), c.wallOn(c.space.Below)
	c.first, c.last = -floorCutWide, floorCutWide
	at, zero := p.At.Y, p.At.X
	if !c.wall.AlongY() {
		at, zero = p.At.X, p.At.Y
	}
	for _, s := range stretches(c.space.Edges(), at, !c.wall.AlongY()) {
		if s[0] <= zero && zero <= s[1] {
			c.first, c.last = max(c.first, s[0]-zero), min(c.last, s[1]-zero)
		}
	}
	return c
}

// wallOn is the wall of a level that the cut goes square through: the hole's, or
// one that runs the same way and has the hole over or under it.
func (c *floorCut) wallOn(level int) *plan.Wall {
	if c.wall.Level == level {
		return c.wall
	}
	h := c.res.Job.House
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level == level && w.AlongY() == c.wall.AlongY() && w.Body.Contains(flat(c.place.At)) {
			return w
		}
	}
	return nil
}

func (c *floorCut) level() *plan.Level { return &c.res.Job.House.Levels[c.wall.Level] }

// height is that of something in the house over the floor of the hole's level.
func (c *floorCut) height(z measure.Length) measure.Length { return z - c.level().Floor }

// top, joists and base are the heights of the floor that is cut, of the joists'
// tops and of their undersides.
func (c *floorCut) top() measure.Length    { return c.height(c.space.Top()) }
func (c *floorCut) joists() measure.Length { return c.top() - c.space.Subfloor }
func (c *floorCut) base() measure.Length   { return c.height(c.space.Base) }

// ceiling is the height of the ceiling under the joists; ok is false where
// there is no board.
func (c *floorCut) ceiling() (z measure.Length, ok bool) {
	h, s := c.res.Job.House, c.space
	if s.Below < 0 {
		return 0, false
	}
	for _, side := range [2]measure.Length{-1, 1} {
		if r := h.RoomOn(s.Below, c.at(side*floorCutWide*3/4)); r >= 0 && h.Rooms[r].Open {
			return 0, false
		}
	}
	l := &h.Levels[s.Below]
	return c.height(l.Floor + l.Ceiling), true
}

// lowest is how far down the cut is drawn: to the ground under a crawl space.
func (c *floorCut) lowest() measure.Length {
	if c.space.Kind == plan.CrawlSpace {
		return c.base() - c.space.Clear
	}
	return c.base() - floorCutTall
}

func (c *floorCut) highest() measure.Length { return c.top() + floorCutTall }

// at is the point of the cut so far across from the wall's middle.
func (c *floorCut) at(s measure.Length) geom.Point {
	p := flat(c.place.At)
	if c.wall.AlongY() {
		return geom.Point{X: p.X + s, Y: p.Y}
	}
	return geom.Point{X: p.X, Y: p.Y + s}
}

// title names the cut.
func (c *floorCut) title() string {
	return fmt.Sprintf("Section at %s, wall %s, %s", c.hole.ID, c.wall.ID, levelName(c.res.Job.House, c.wall.Level))
}

// detail is the cut as a drawing that shares a sheet.
func (c *floorCut) detail() *detail {
	u := c.res.Job.House.Units
	look := "north"
	if !c.wall.AlongY() {
		look = "west"
	}
	return &detail{
		id: sheet.ID("floor-section", c.hole.ID), title: c.title(),
		note: fmt.Sprintf("square to the wall, %s along it; looking to house %s", u.FormatSheet(c.place.Along), look),
		real: geom.Rect{Min: geom.Point{X: -floorCutWide, Y: c.lowest()}, Max: geom.Point{X: floorCutWide, Y: c.highest()}},
		margins: func(sheet.Scale) margins {
			return margins{left: 16 * sheet.MM, right: levelWidth(c.levels()) + 4*sheet.MM, top: 4 * sheet.MM, bottom: 18 * sheet.MM}
		},
		draw: c.draw, list: c.list,
	}
}

// levels are the heights beside the cut.
func (c *floorCut) levels() []level {
	out := []level{{c.top(), "floor"}, {c.joists(), "joist, top"}, {c.base(), "joist, underside"}}
	if z, ok := c.ceiling(); ok {
		out = append(out, level{z, "ceiling"})
	}
	if c.space.Kind == plan.CrawlSpace {
		out = append(out, level{c.lowest(), "ground"})
	}
	return merged(out, c.res.Job.House.Units.FormatSheet)
}

// list writes the numbers of the cut in the column.
func (c *floorCut) list(p *page) {
	u := p.res.Job.House.Units
	p.line(sheet.LetterTag, 0, c.title())
	wood := measure.Length(c.wall.TopPlates) * route.PlateThickness
	words := "plates"
	if c.place.Kind == route.SoleArc {
		wood, words = route.PlateThickness+c.space.Subfloor, "bottom plate and floor boards"
	}
	rows := [][]string{
		{"hole " + c.hole.ID + from(p.res, c.hole), bitWords(u, c.hole)},
		{"through wood: " + words, u.Format(wood)},
	}
	if c.space.Kind == plan.CrawlSpace {
		rows = append(rows, []string{"from the ground to the joists", u.Format(c.space.Clear)})
	}
	p.table(sheet.LetterSmall, rows)
	p.next += sheet.MM
}
