package render

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

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
	d.chainBelow(stops, c.lowest(), "From the faces of the wall's frame to the hole")
}
