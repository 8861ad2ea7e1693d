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

// drawCable draws the cable through the cut, as rods where it is shot, and the
// hole with its bit.
func (c *section) drawCable(d *drawing) {
	g := d.sheet.Group("routes", "routes", "Cable and rod shot")
	floor := c.level().Floor
	low := c.bottom()
	for i, l := range c.legsInPlane() {
		p := geom.Point{X: c.inward(flat(l.From)), Y: l.From.Z - floor}
		q := geom.Point{X: c.inward(flat(l.To)), Y: l.To.Z - floor}
		pen := sheet.PenCable
		switch {
		case c.drop.Later:
			pen = sheet.PenCableLater
		case l.Kind == route.RodArc:
			pen = sheet.PenRod
		}
		if c.eave && c.drop.Kind == plan.SoffitSpot {
			p, q = c.straight(p), c.straight(q)
			if l.Kind == route.SoffitArc {
				pen = sheet.PenRod
			}
		}
		points := c.clipped(c.bent(p, q, l.Kind), low)
		if points[0] != points[len(points)-1] && (points[0].X < c.last || points[len(points)-1].X < c.last) {
			g.Group(fmt.Sprintf("leg-%d", i+1), "leg", l.Kind.String()).Polyline(pen, c.lying(d, points)...)
		}
	}
	c.drawDropEnd(d, low)
	if c.hole == nil {
		return
	}
	place := &d.res.Graph.Holes[c.hole.Place]
	at := geom.Point{X: c.inward(flat(place.At)), Y: place.At.Z - floor}
	if place.Kind == route.PlateArc {
		at.Y -= measure.Length(c.wall.TopPlates) * route.PlateThickness / 2
	}
	p := d.view.Point(at)
	hg := d.sheet.Group(sheet.ID("hole", c.hole.ID), "hole", fmt.Sprintf("Hole %s through the %s", c.hole.ID, place.Kind))
	hg.Circle(sheet.PenHole, p, holeRadius)
	hg.Line(sheet.PenThin, sheet.Pt(p.X-holeRadius/2, p.Y), sheet.Pt(p.X+holeRadius/2, p.Y))
	hg.Line(sheet.PenThin, sheet.Pt(p.X, p.Y-holeRadius/2), sheet.Pt(p.X, p.Y+holeRadius/2))
	d.ask(ask{
		id: "hole", at: p, symbol: around(p, holeRadius), priority: 25, leader: true,
		block: font.Block{{Lettering: sheet.LetterTag, Words: c.hole.ID}, {Lettering: sheet.LetterSmall, Words: bitWords(d.res.Job.House.Units, c.hole)}},
	})
}

// straight moves the place over a soffit spot at which the graph has a rod turn
// towards the house to the outer edge of the plate: the rod is pushed from the
// soffit to there, below the sheathing.
func (c *section) straight(p geom.Point) geom.Point {
	if p.X < 0 && p.Y == c.plate() {
		p.X = 0
	}
	return p
}

// lying is where a cable is drawn: not in what it lies on, but on it.
func (c *section) lying(d *drawing, points []geom.Point) []sheet.Point {
	const over = 800 * sheet.Micrometre
	out := d.view.Points(points)
	for i, p := range points {
		if p.Y >= c.plate() && !c.gable() {
			out[i].Y -= over
		}
	}
	return out
}

// bent is the way of a leg. A rod that goes over joists that are cut lies on
// them and comes down to the plate before the first.
func (c *section) bent(p, q geom.Point, kind route.ArcKind) []geom.Point {
	if kind != route.RodArc || p.Y == q.Y {
		return []geom.Point{p, q}
	}
	bend := p.X
	for _, s := range c.joistSpans() {
		for _, x := range s {
			if min(p.X, q.X) < x && x < max(p.X, q.X) && max(x-q.X, q.X-x) < max(bend-q.X, q.X-bend) {
				bend = x
			}
		}
	}
	return []geom.Point{p, {X: bend, Y: p.Y}, q}
}

// clipped leaves out what of a way lies beyond the break lines; such a way is
// level or upright there.
func (c *section) clipped(points []geom.Point, low measure.Length) []geom.Point {
	var out []geom.Point
	for _, p := range points {
		p.X = max(c.first, min(p.X, c.last))
		if p.Y < low {
			p.Y = low
			if n := len(out); n > 0 {
				p.X = out[n-1].X
			}
		}
		out = append(out, p)
	}
	return out
}

// drawDropEnd draws the drop: under the soffit, in the wall, or as an arrow to
// it where the wall is broken off above it.
func (c *section) drawDropEnd(d *drawing, low measure.Length) {
	g := d.sheet.Group("drop", "drop", "Drop "+c.drop.Tag)
	tag := font.Block{{Lettering: sheet.LetterTag, Words: c.drop.Tag}}
	if c.hole == nil {
		tag = append(tag, font.Line{Lettering: sheet.LetterSmall, Words: "no allowed route"})
	}
	half := c.wall.StudDepth / 2
	if c.drop.Kind == plan.SoffitSpot {
		at := c.drop.Point
		if c.hole != nil {
			at = flat(c.route.Place)
		}
		p := d.view.Point(geom.Point{X: c.inward(at), Y: c.soffit()})
		p.Y += symbol + sheet.MM/2
		b := sheet.BoxAround(p, 2*symbol, 2*symbol)
		g.Rect(sheet.PenDevice, b)
		g.Line(sheet.PenMedium, b.Min, b.Max)
		d.ask(ask{id: "drop", at: p, symbol: b, priority: 30, leader: true, block: tag})
		return
	}
	height := c.drop.Spot.Height
	if height-2*measure.Inch > low {
		_, tall := boxSize(d.res.Job.Book(), c.drop.Count)
		b := c.rect(d, g, sheet.PenDevice, half/2, 3*half/2, height-tall/2, height+tall/2)
		d.ask(ask{id: "drop", at: b.Centre(), symbol: b, priority: 30, leader: true, block: tag})
		return
	}
	p := d.view.Point(geom.Point{X: half, Y: low})
	g.Polygon(sheet.PenSolid, []sheet.Point{p.Add(sheet.Pt(-800, 0)), p.Add(sheet.Pt(800, 0)), p.Add(sheet.Pt(0, 2*sheet.MM))})
	tag = append(tag, font.Line{Lettering: sheet.LetterSmall, Words: "box " + d.length(height) + " over the floor"})
	at := p.Add(sheet.Pt(0, sheet.MM))
	d.ask(ask{id: "drop", at: at, symbol: sheet.BoxAround(at, 1600, 2*sheet.MM), priority: 30, leader: true, block: tag})
}
