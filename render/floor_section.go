package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/dimension"
	"topplate/render/font"
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

// draw draws the cut: what is behind it, what is cut, the hole and its cable.
func (c *floorCut) draw(d *drawing) {
	c.drawJoists(d)
	c.drawFloor(d)
	c.drawWalls(d)
	c.drawHole(d)
	c.drawChain(d)
	y := func(h measure.Length) sheet.Paper { return d.view.Point(geom.Point{Y: h}).Y }
	d.drawLevels("levels", c.levels(), d.view.Point(geom.Point{X: floorCutWide}).X, true, y)
	d.placeLabels()
}

// rect draws a rectangle of the cut.
func (c *floorCut) rect(d *drawing, g *sheet.Group, pen sheet.Pen, from, to, bottom, top measure.Length) sheet.Box {
	b := d.view.Box(geom.Rect{Min: geom.Point{X: from, Y: bottom}, Max: geom.Point{X: to, Y: top}})
	if b.Width() > 0 && b.Height() > 0 {
		g.Rect(pen, b)
	}
	return b
}

// drawJoists draws the joist behind the cut, or those that are cut across.
func (c *floorCut) drawJoists(d *drawing) {
	g := d.sheet.Group("joists", "joists", "Joists")
	s := c.space
	if s.AlongY != c.wall.AlongY() {
		b := c.rect(d, g, sheet.PenJoist, c.first, c.last, c.base(), c.joists())
		at := b.Min.X + b.Width()/8
		if c.first > -floorCutWide {
			at = b.Max.X - b.Width()/8
		}
		d.note(g, "joist", sheet.Pt(at, b.Centre().Y), joistWord(s)+" behind")
		return
	}
	zero := flat(c.place.At).X
	if !s.AlongY {
		zero = flat(c.place.At).Y
	}
	first := true
	for _, x := range route.JoistCentres(c.res.Job.House, s) {
		u := x - zero
		if u-s.Width < c.first || c.last < u+s.Width {
			continue
		}
		b := c.rect(d, g, sheet.PenJoist, u-s.Width/2, u+s.Width/2, c.base(), c.joists())
		g.Line(sheet.PenThin, b.Min, b.Max)
		g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		if first {
			d.note(g, "joist", b.Centre(), joistWord(s)+", cut")
		}
		first = false
	}
}

// drawFloor draws the boards on the joists, the ceiling under them or the
// ground, broken off on both sides.
func (c *floorCut) drawFloor(d *drawing) {
	g := d.sheet.Group("floor", "floor", "Floor")
	b := c.rect(d, g, sheet.PenPlate, c.first, c.last, c.joists(), c.top())
	end := sheet.Pt(b.Max.X-b.Width()/10, b.Centre().Y)
	if c.last < floorCutWide {
		end.X = b.Min.X + b.Width()/10
	}
	d.note(g, "boards", end, "floor boards")
	low := c.base()
	if z, ok := c.ceiling(); ok {
		low = z
		half := measure.Length(0)
		if c.under != nil {
			half = c.under.StudDepth / 2
		}
		left := c.rect(d, g, sheet.PenWall, c.first, -half, z, c.base())
		b := c.rect(d, g, sheet.PenWall, half, c.last, z, c.base())
		if left.Width() > b.Width() {
			b = left
		}
		d.note(g, "ceiling", sheet.Pt(b.Max.X-b.Width()/5, b.Max.Y), "ceiling")
	}
	for _, s := range [2]measure.Length{-floorCutWide, floorCutWide} {
		if s != c.first && s != c.last {
			continue
		}
		breakLine(g, d.view.Point(geom.Point{X: s, Y: low}), d.view.Point(geom.Point{X: s, Y: c.top()}))
	}
	if c.space.Kind == plan.CrawlSpace {
		p, q := d.view.Point(geom.Point{X: -floorCutWide, Y: c.lowest()}), d.view.Point(geom.Point{X: floorCutWide, Y: c.lowest()})
		g.Line(sheet.PenThick, p, q)
		d.take(sheet.Bounds(p, q).Inset(-sheet.PenThick.Style().Width / 2))
	}
}

// drawWalls draws the walls above and below the floor, cut.
func (c *floorCut) drawWalls(d *drawing) {
	if c.on != nil {
		g := d.sheet.Group("wall-on", "wall", "Wall "+c.on.ID)
		c.drawWall(d, g, c.on, c.top(), c.highest(), c.highest())
		c.plates(d, g, c.on, c.top(), 1)
		d.note(g, "on", c.beside(d, c.on, c.highest()-floorCutTall/4), "wall "+c.on.ID)
	}
	if c.under != nil {
		g := d.sheet.Group("wall-under", "wall", "Wall "+c.under.ID)
		top := c.base()
		if z, ok := c.ceiling(); ok {
			top = z
		}
		c.drawWall(d, g, c.under, c.lowest(), top, c.lowest())
		if !c.under.Masonry {
			c.plates(d, g, c.under, c.base()-measure.Length(c.under.TopPlates)*route.PlateThickness, c.under.TopPlates)
		}
		d.note(g, "under", c.beside(d, c.under, c.lowest()+floorCutTall/4), "wall "+c.under.ID)
	}
}

// beside is a place in the board on the right of a wall, or at its face.
func (c *floorCut) beside(d *drawing, w *plan.Wall, y measure.Length) sheet.Point {
	return d.view.Point(geom.Point{X: c.middle(w) + w.StudDepth/2, Y: y})
}

// middle is where the middle of a wall is across.
func (c *floorCut) middle(w *plan.Wall) measure.Length {
	f := w.Frame
	if w.AlongY() {
		return f.Min.X + f.Width()/2 - c.place.At.X
	}
	return f.Min.Y + f.Height()/2 - c.place.At.Y
}

// drawWall draws the boards and the faces of the hollow of a wall, broken off at
// one end.
func (c *floorCut) drawWall(d *drawing, g *sheet.Group, w *plan.Wall, bottom, top, broken measure.Length) {
	m, half := c.middle(w), w.StudDepth/2
	body := w.Body
	lo, hi := body.Min.X-c.place.At.X, body.Max.X-c.place.At.X
	if !w.AlongY() {
		lo, hi = body.Min.Y-c.place.At.Y, body.Max.Y-c.place.At.Y
	}
	if w.Masonry {
		b := c.rect(d, g, sheet.PenMasonry, m-half, m+half, bottom, top)
		g.Hatch(sheet.HatchMasonry, [][]sheet.Point{b.Corners()})
	} else {
		for _, s := range [2]measure.Length{m - half, m + half} {
			g.Line(sheet.PenMedium, d.view.Point(geom.Point{X: s, Y: bottom}), d.view.Point(geom.Point{X: s, Y: top}))
		}
	}
	c.rect(d, g, sheet.PenWall, lo, m-half, bottom, top)
	c.rect(d, g, sheet.PenWall, m+half, hi, bottom, top)
	breakLine(g, d.view.Point(geom.Point{X: lo, Y: broken}), d.view.Point(geom.Point{X: hi, Y: broken}))
}

// plates draws n plates from a height up, crossed by their diagonals.
func (c *floorCut) plates(d *drawing, g *sheet.Group, w *plan.Wall, bottom measure.Length, n int) {
	m, half := c.middle(w), w.StudDepth/2
	for i := range n {
		y := bottom + measure.Length(i)*route.PlateThickness
		b := c.rect(d, g, sheet.PenPlate, m-half, m+half, y, y+route.PlateThickness)
		g.Line(sheet.PenThin, b.Min, b.Max)
		g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
	}
}

// drawHole draws the cable through the hole, from the wall into the space, and
// the hole with its bit.
func (c *floorCut) drawHole(d *drawing) {
	at := c.top() + route.PlateThickness/2
	ends := [2]measure.Length{c.base(), c.highest()}
	if c.place.Kind == route.PlateArc {
		at = c.base() - measure.Length(c.wall.TopPlates)*route.PlateThickness/2
		ends = [2]measure.Length{c.lowest(), c.base() + c.space.Depth/3}
	}
	g := d.sheet.Group("routes", "routes", "Cable")
	g.Line(sheet.PenCable, d.view.Point(geom.Point{Y: ends[0]}), d.view.Point(geom.Point{Y: ends[1]}))
	p := d.view.Point(geom.Point{Y: at})
	hg := d.sheet.Group(sheet.ID("hole", c.hole.ID), "hole", fmt.Sprintf("Hole %s through the %s", c.hole.ID, c.place.Kind))
	drawHoleAt(hg, c.place.Kind, p)
	d.ask(ask{
		id: "hole", at: p, symbol: around(p, holeRadius), priority: 25, leader: true,
		block: font.Block{{Lettering: sheet.LetterTag, Words: c.hole.ID}, {Lettering: sheet.LetterSmall, Words: bitWords(d.res.Job.House.Units, c.hole)}},
	})
}

// drawChain dimensions below the cut: from the faces of the hole's wall to the
// hole, and to the next joist on either side where they are cut.
func (c *floorCut) drawChain(d *drawing) {
	m, half := c.middle(c.wall), c.wall.StudDepth/2
	stops := []measure.Length{m - half, 0, m + half}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	low := d.view.Point(geom.Point{Y: c.lowest()}).Y
	ch := dimension.Chain{Line: low + 9*sheet.MM}
	for i, s := range stops {
		ch.Stops = append(ch.Stops, dimension.Stop{At: d.view.Point(geom.Point{X: s}).X, From: low + 2*sheet.MM})
		if i > 0 {
			ch.Words = append(ch.Words, d.length(s-stops[i-1]))
		}
	}
	d.sheet.Group("chain", "dimensions", "From the faces of the wall's frame to the hole").Add(ch.Draw().Items...)
}
