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

// flat is a point in plan.
func flat(p geom.Point3) geom.Point { return geom.Point{X: p.X, Y: p.Y} }

// flatten drops heights, and the points that then fall together.
func flatten(points []geom.Point3) []geom.Point {
	var out []geom.Point
	for _, p := range points {
		if q := flat(p); len(out) == 0 || out[len(out)-1] != q {
			out = append(out, q)
		}
	}
	return out
}

// drawRoutes draws every bundle once, and asks for a label with the number of
// its cables where there is more than one.
func (d *drawing) drawRoutes(inAttic bool) {
	g := d.sheet.Group("routes", "routes", "Cable routes")
	res := d.res
	for i := range res.Bundles {
		b := &res.Bundles[i]
		points := flatten(b.Points)
		if len(points) < 2 || !d.scope.hasBundle(res, b) {
			continue
		}
		bg := g.Group(fmt.Sprintf("bundle-%d", i+1), "bundle", bundleTitle(res, b))
		at := d.view.Points(points)
		pen := cablePen(res, b, inAttic)
		if pen == sheet.PenCableHidden && d.underFloor(b) {
			pen = sheet.PenCableBelow
		}
		bg.Polyline(pen, at...)
		if b.Cables > 1 && longest(at) >= shortestCounted {
			d.ask(ask{
				id: fmt.Sprintf("bundle-%d", i+1), along: at, priority: 5, leader: true,
				block: font.Block{{Lettering: sheet.LetterCableTag, Words: fmt.Sprintf("%d×", b.Cables)}},
			})
		}
	}
}

// underFloor reports whether a bundle lies under the floor of the level that is
// drawn.
func (d *drawing) underFloor(b *route.Bundle) bool {
	return d.scope.space < 0 && inFraming(b.Kind) && b.Space >= 0 && d.res.Job.House.Spaces[b.Space].Kind == plan.CrawlSpace
}

// shortestCounted is the shortest stretch of a bundle that gets a label: what
// is shorter can be counted on both sides of it.
const shortestCounted = 12 * sheet.MM

// longest is the length of the longest straight stretch.
func longest(points []sheet.Point) sheet.Paper {
	var best sheet.Paper
	for i := 1; i < len(points); i++ {
		d := points[i].Sub(points[i-1])
		best = max(best, d.X, -d.X, d.Y, -d.Y)
	}
	return best
}

func bundleTitle(res *route.Result, b *route.Bundle) string {
	title := fmt.Sprintf("%s, %s:", counted(b.Cables, "cable", "cables"), b.Kind)
	for _, i := range b.Drops {
		title += " " + res.Job.Drops[i].Tag
	}
	return title
}

// cablePen is how a bundle is drawn: rods apart, dashed where it is inside a
// wall or above what the sheet shows, and lighter if all of it is for later.
func cablePen(res *route.Result, b *route.Bundle, inAttic bool) sheet.Pen {
	later := true
	for _, i := range b.Drops {
		later = later && res.Job.Drops[i].Later
	}
	switch {
	case later:
		return sheet.PenCableLater
	case b.Kind == route.RodArc:
		return sheet.PenRod
	case inSight(b.Kind):
		return sheet.PenCableSurface
	case inAttic && (b.Kind == route.AlongArc || b.Kind == route.BesideArc || b.Kind == route.AcrossArc):
		return sheet.PenCable
	}
	return sheet.PenCableHidden
}

// Sizes of symbols on paper.
const (
	holeRadius = 1100 * sheet.Micrometre
	symbol     = 2200 * sheet.Micrometre
)

// drawHoles draws a numbered circle for every hole that shows in plan.
func (d *drawing) drawHoles() {
	g := d.sheet.Group("holes", "holes", "Holes")
	for i := range d.res.Holes {
		h := &d.res.Holes[i]
		place := &d.res.Graph.Holes[h.Place]
		if !d.scope.hasHole(d.res.Job.House, place) {
			continue
		}
		at := d.view.Point(flat(place.At))
		d.drawHole(g, h.ID, fmt.Sprintf("Hole %s through the %s", h.ID, place.Kind), place.Kind, at)
		d.ask(ask{
			id: "hole-" + h.ID, at: at, symbol: around(at, holeRadius), priority: 20, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmallTag, Words: h.ID}},
		})
	}
}

// drawHole draws the circle of a hole with its cross; of one through a bottom
// plate and the floor, with its lower half filled.
func (d *drawing) drawHole(g *sheet.Group, id, title string, kind route.ArcKind, at sheet.Point) {
	drawHoleAt(g.Group(sheet.ID("hole", id), "hole", title), kind, at)
}

func drawHoleAt(g *sheet.Group, kind route.ArcKind, at sheet.Point) {
	g.Circle(sheet.PenHole, at, holeRadius)
	if kind == route.SoleArc {
		fillHalf(g, at)
		return
	}
	g.Line(sheet.PenThin, sheet.Pt(at.X-holeRadius/2, at.Y), sheet.Pt(at.X+holeRadius/2, at.Y))
	g.Line(sheet.PenThin, sheet.Pt(at.X, at.Y-holeRadius/2), sheet.Pt(at.X, at.Y+holeRadius/2))
}

// fillHalf fills the lower half of a hole.
func fillHalf(g *sheet.Group, at sheet.Point) {
	const steps = 12
	var half []sheet.Point
	for i := range steps + 1 {
		half = append(half, sheet.Polar(at, holeRadius, -sheet.HalfTurn*sheet.Angle(i)/steps))
	}
	g.Polygon(sheet.PenSolid, half)
}

// drawReused draws a square for every hole and conduit that is there and used.
func (d *drawing) drawReused() {
	if len(d.res.Reused) == 0 {
		return
	}
	g := d.sheet.Group("reused", "reused", "Holes and conduits that are there")
	for i := range d.res.Reused {
		u := &d.res.Reused[i]
		if !d.scope.hasReuse(d.res.Job.House, u) {
			continue
		}
		at := d.view.Point(flat(u.At))
		ug := g.Group(sheet.ID("reused", u.ID), "reused", fmt.Sprintf("%s, %s, there already, %s", u.ID, u.What(), counted(u.Cables, "cable", "cables")))
		box := around(at, holeRadius)
		ug.Rect(sheet.PenHole, box)
		d.ask(ask{
			id: "reused-" + u.ID, at: at, symbol: box, priority: 20, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmallTag, Words: u.ID}},
		})
	}
}

// drawDrops draws the symbol of every drop at its place and asks for its tag.
func (d *drawing) drawDrops(lengths bool) {
	g := d.sheet.Group("drops", "drops", "Drops")
	for i := range d.res.Routes {
		r := &d.res.Routes[i]
		if !d.scope.hasDrop(d.res, r) {
			continue
		}
		drop := &d.res.Job.Drops[r.Drop]
		at := d.view.Point(d.dropPlace(r))
		dg := g.Group(sheet.ID("drop", drop.Tag), "drop", fmt.Sprintf("Drop %s, %s", drop.Tag, drop.Kind))
		d.drawDropSymbol(dg, drop, at)
		a := ask{id: "drop-" + drop.Tag, at: at, symbol: around(at, symbol), priority: 30, leader: true, block: dropBlock(d.res, r, lengths)}
		if lengths {
			a.short = dropBlock(d.res, r, false)
		}
		d.ask(a)
	}
}

// dropPlace is where a drop's symbol stands: on the face of the wall that is
// cut open, or at its point.
func (d *drawing) dropPlace(r *route.Route) geom.Point {
	drop := &d.res.Job.Drops[r.Drop]
	if drop.Kind != plan.WallPlate {
		if r.Blocked != nil {
			return drop.Point
		}
		return flat(r.Place)
	}
	w := &d.res.Job.House.Walls[drop.Spot.Wall]
	along := drop.Spot.At
	if r.Blocked == nil {
		along = w.Along(flat(r.Place))
	}
	return w.FacePoint(along, drop.Spot.Side)
}

func dropBlock(res *route.Result, r *route.Route, lengths bool) font.Block {
	drop := &res.Job.Drops[r.Drop]
	b := font.Block{{Lettering: sheet.LetterTag, Words: drop.Tag}}
	switch {
	case r.Blocked != nil:
		b = append(b, font.Line{Lettering: sheet.LetterSmall, Words: "no allowed route"})
	case lengths:
		b = append(b, font.Line{Lettering: sheet.LetterSmall, Words: fmt.Sprintf("%d × %s, cut %s",
			drop.Count, drop.Cable.ID, res.Job.House.Units.Format(r.Lengths.Cut))})
	}
	return b
}

// drawDropSymbol draws a triangle on the wall for a plate (the outlet of ANSI
// Y32.9, from memory), a crossed circle for a ceiling point, and a square with
// a diagonal for a spot outdoors.
func (d *drawing) drawDropSymbol(g *sheet.Group, drop *plan.Drop, at sheet.Point) {
	switch drop.Kind {
	case plan.WallPlate:
		w := &d.res.Job.House.Walls[drop.Spot.Wall]
		g.Polygon(sheet.PenSolid, triangle(at, turnOfHeading(w.Faces(drop.Spot.Side))))
	case plan.CeilingPoint:
		g.Circle(sheet.PenDevice, at, symbol)
		arm := symbol * 7 / 10
		g.Line(sheet.PenMedium, sheet.Pt(at.X-arm, at.Y-arm), sheet.Pt(at.X+arm, at.Y+arm))
		g.Line(sheet.PenMedium, sheet.Pt(at.X-arm, at.Y+arm), sheet.Pt(at.X+arm, at.Y-arm))
	case plan.SoffitSpot:
		b := sheet.BoxAround(at, 2*symbol, 2*symbol)
		g.Rect(sheet.PenDevice, b)
		g.Line(sheet.PenMedium, b.Min, b.Max)
	}
}

// triangle has its base on the wall at p and points into the room.
func triangle(p sheet.Point, into sheet.Angle) []sheet.Point {
	return []sheet.Point{
		sheet.Polar(p, symbol, into+sheet.QuarterTurn),
		sheet.Polar(p, symbol, into-sheet.QuarterTurn),
		sheet.Polar(p, 2*symbol, into),
	}
}

// drawCloset draws the panel on its wall, or under the ceiling hole.
func (d *drawing) drawCloset() {
	if !d.scope.hasCloset(d.res.Job) {
		return
	}
	c := &d.res.Job.Closet
	g := d.sheet.Group("closet", "closet", "Closet "+c.Name)
	at := d.view.Point(c.Point)
	box := sheet.BoxAround(at, 4*symbol, 2*symbol)
	if !c.Ceiling {
		w := &d.res.Job.House.Walls[c.Spot.Wall]
		half := max(d.view.Length(c.Width)/2, symbol)
		face := d.view.Point(w.FacePoint(c.Spot.At, c.Spot.Side))
		into := turnOfHeading(w.Faces(c.Spot.Side))
		a := sheet.Polar(face, half, into+sheet.QuarterTurn)
		b := sheet.Polar(sheet.Polar(face, half, into-sheet.QuarterTurn), 3*sheet.MM/2, into)
		box = sheet.Bounds(a, b)
		at = box.Centre()
	}
	g.Rect(sheet.PenDevice, box)
	g.Line(sheet.PenMedium, box.Min, box.Max)
	g.Line(sheet.PenMedium, sheet.Pt(box.Min.X, box.Max.Y), sheet.Pt(box.Max.X, box.Min.Y))
	name := c.Name
	if name == "" {
		name = "Closet"
	}
	d.ask(ask{
		id: "closet", at: at, symbol: box, priority: 30, leader: true,
		block: font.Block{{Lettering: sheet.LetterTag, Words: name}},
	})
}

// deviceRadius is that of the symbol of a power device.
const deviceRadius = 1200 * sheet.Micrometre

// drawDevices draws the power devices in the walls: a circle with two strokes
// across on the face of the wall.
func (d *drawing) drawDevices() {
	g := d.sheet.Group("devices", "devices", "Power devices in the walls")
	const r = deviceRadius
	h := d.res.Job.House
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != d.scope.level {
			continue
		}
		for j := range w.Devices {
			dev := &w.Devices[j]
			into := turnOfHeading(w.Faces(dev.Side))
			face := d.view.Point(w.FacePoint(dev.At, dev.Side))
			at := sheet.Polar(face, r, into)
			dg := g.Group(sheet.ID("device", dev.ID), "device", dev.Kind+" "+dev.ID)
			dg.Circle(sheet.PenThin, at, r)
			for _, off := range [2]sheet.Paper{-400, 400} {
				p := sheet.Polar(at, off, into+sheet.QuarterTurn)
				dg.Line(sheet.PenThin, sheet.Polar(p, r/2, into), sheet.Polar(p, -r, into))
			}
			d.take(around(at, r))
		}
	}
}

// length prints a length as drawings do.
func (d *drawing) length(l measure.Length) string { return d.res.Job.House.Units.FormatSheet(l) }
