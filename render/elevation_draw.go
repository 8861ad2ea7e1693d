package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// draw draws the wall.
func (e *elevation) draw(d *drawing) {
	e.drawFrame(d)
	e.drawOver(d)
	e.drawUnder(d)
	e.drawOpenings(d)
	e.drawPower(d)
	e.drawConduits(d)
	e.drawCables(d)
	e.drawHoles(d)
	e.drawBoxes(d)
	e.drawRoom(d)
	below, above := e.offsets(d.view)
	y := func(h measure.Length) sheet.Paper { return d.view.Point(geom.Point{Y: h}).Y }
	d.drawOffsets("offsets-of-boxes", below, y(e.lowest()), 1)
	d.drawOffsets("offsets-of-holes", above, y(e.highest()), -1)
	d.drawLevels("levels-left", e.leftLevels(), e.x(d.view, e.first), false, y)
	d.drawLevels("levels-right", e.rightLevels(), e.x(d.view, e.last), true, y)
	d.placeLabels()
}

// box is a rectangle of the wall on paper, cut off where the drawing ends. ok
// is false if nothing of it is left.
func (e *elevation) box(d *drawing, a, b, bottom, top measure.Length) (sheet.Box, bool) {
	lo, hi := max(e.first, min(a, b)), min(e.last, max(a, b))
	r := geom.Rect{Min: geom.Point{X: lo, Y: bottom}, Max: geom.Point{X: hi, Y: top}}
	return d.view.Box(r), lo < hi && bottom < top
}

var memberPens = [...]sheet.Pen{
	plateMember: sheet.PenPlate, studMember: sheet.PenStud, backingMember: sheet.PenStud,
	headerMember: sheet.PenStud, sillMember: sheet.PenPlate, blockMember: sheet.PenBlocking,
}

// drawFrame draws plates, studs, headers, sills and blocks, and breaks the
// wall off where it goes on beyond the drawing.
func (e *elevation) drawFrame(d *drawing) {
	g := d.sheet.Group("framing", "framing", "Frame of the wall")
	if e.wall.Masonry {
		f := e.frame()
		if b, ok := e.box(d, f[0], f[1], 0, e.level().PlateTop); ok {
			g.Rect(sheet.PenMasonry, b)
		}
		return
	}
	for _, m := range framing(d.res.Job.House, e.wall, e.bays) {
		b, ok := e.box(d, e.across(m.from), e.across(m.to), m.bottom, m.top)
		if !ok {
			continue
		}
		g.Rect(memberPens[m.kind], b)
		if m.kind == headerMember || m.kind == backingMember {
			g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		}
	}
	f := e.frame()
	top := e.level().PlateTop
	for _, end := range [2]struct {
		at   measure.Length
		open bool
	}{{e.first, f[0] < e.first}, {e.last, e.last < f[1]}} {
		if end.open {
			breakLine(g, d.view.Point(geom.Point{X: end.at}), d.view.Point(geom.Point{X: end.at, Y: top}))
		}
	}
}

// breakLine draws a thin line with a zigzag, where a drawing leaves off (ISO
// 128-2 type 01.1 with zigzags, from memory). It is upright or level.
func breakLine(g *sheet.Group, a, b sheet.Point) {
	const over, zag = sheet.MM, sheet.MM
	m := sheet.Pt((a.X+b.X)/2, (a.Y+b.Y)/2)
	if a.X == b.X {
		if a.Y > b.Y {
			a, b = b, a
		}
		g.Polyline(sheet.PenThin, sheet.Pt(a.X, a.Y-over), sheet.Pt(m.X, m.Y-2*zag), sheet.Pt(m.X+zag, m.Y-zag),
			sheet.Pt(m.X-zag, m.Y+zag), sheet.Pt(m.X, m.Y+2*zag), sheet.Pt(b.X, b.Y+over))
		return
	}
	if a.X > b.X {
		a, b = b, a
	}
	g.Polyline(sheet.PenThin, sheet.Pt(a.X-over, a.Y), sheet.Pt(m.X-2*zag, m.Y), sheet.Pt(m.X-zag, m.Y-zag),
		sheet.Pt(m.X+zag, m.Y+zag), sheet.Pt(m.X+2*zag, m.Y), sheet.Pt(b.X+over, b.Y))
}

// drawOver draws the ends of joists and rafters over the plate, between which
// a hole must find room.
func (e *elevation) drawOver(d *drawing) {
	h := d.res.Job.House
	top := e.level().PlateTop
	g := d.sheet.Group("over", "over", "Joists and rafters over the plate")
	draw := func(pen sheet.Pen, along []measure.Length, width, depth measure.Length) {
		for _, a := range along {
			u := e.across(a)
			if b, ok := e.box(d, u-width/2, u+width/2, top, top+depth); ok {
				g.Rect(pen, b)
				if pen == sheet.PenThin {
					g.Line(pen, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
				}
			}
		}
	}
	over := e.over()
	for _, f := range over {
		if s := f.space; s.Roof >= 0 && h.Roofs[s.Roof].Level == e.wall.Level {
			r := h.Roofs[s.Roof]
			var on []measure.Length
			for _, a := range crossings(e.wall, rafterCentres(r, e.wall)) {
				if f.from <= a && a <= f.to {
					on = append(on, a)
				}
			}
			draw(sheet.PenThin, on, r.Width, s.Depth)
		}
	}
	for _, f := range over {
		draw(sheet.PenJoist, e.joistsAcross(f), f.space.Width, f.space.Depth)
	}
}

// drawOpenings draws what is open in the wall, with its size.
func (e *elevation) drawOpenings(d *drawing) {
	g := d.sheet.Group("openings", "openings", "Openings")
	for i := range e.wall.Openings {
		o := &e.wall.Openings[i]
		b, ok := e.box(d, e.across(o.Start), e.across(o.End), max(0, o.Sill), o.Head)
		if !ok {
			continue
		}
		pen := sheet.PenDoor
		if o.Kind == plan.Window {
			pen = sheet.PenWindow
		}
		g.Group(sheet.ID("opening", o.ID), "opening", "Opening "+o.ID).Rect(pen, b)
		if u := e.across(o.Start); u < 0 || u > e.width() {
			continue // in the next room
		}
		d.ask(ask{
			id: "opening-" + o.ID, at: b.Centre(), within: b.Inset(sheet.MM / 2), leader: true,
			block: font.Block{
				{Lettering: sheet.LetterSmall, Words: font.Fit(sheet.LetterSmall, o.ID, 40*sheet.MM)},
				{Lettering: sheet.LetterSmall, Words: e.text(o.End-o.Start) + " wide"},
				{Lettering: sheet.LetterSmall, Words: e.text(o.Head-max(0, o.Sill)) + " high"},
			},
		})
	}
}

// drawPower draws the devices and the cables that feed them, along the nearer
// stud of their bay.
func (e *elevation) drawPower(d *drawing) {
	g := d.sheet.Group("power", "power", "Power in the wall")
	one, tall := boxSize(d.res.Job.Book(), 1)
	top := e.level().PlateTop
	for i := range e.wall.Devices {
		dev := &e.wall.Devices[i]
		u := e.across(dev.At)
		if !e.shows(u) {
			continue
		}
		dg := g.Group(sheet.ID("device", dev.ID), "device", dev.Kind+" "+dev.ID)
		b, _ := e.box(d, u-one/2, u+one/2, dev.Height-tall/2, dev.Height+tall/2)
		e.drawFeed(d, dg, dev, b, top)
		if dev.Side != e.side {
			dg.Rect(sheet.PenHidden, b)
		} else {
			dg.Rect(sheet.PenDevice, b)
			drawOutlet(dg, b)
		}
		d.take(b)
	}
}

// drawOutlet draws the sign for power, a circle with two strokes, in a box.
func drawOutlet(g *sheet.Group, b sheet.Box) {
	c := b.Centre()
	r := min(b.Width(), b.Height()) * 3 / 8
	g.Circle(sheet.PenThin, c, r)
	for _, x := range [2]sheet.Paper{-r / 3, r / 3} {
		g.Line(sheet.PenThin, sheet.Pt(c.X+x, c.Y-r/2), sheet.Pt(c.X+x, c.Y+r/2))
	}
}

// besideStud is how far from the stud on paper a cable is drawn that is stapled
// to it.
const besideStud = 900 * sheet.Micrometre

// drawFeed draws the power cable of a device along the stud that the routes
// take it to be on: the nearer one of its bay, or the one it sits on.
func (e *elevation) drawFeed(d *drawing, g *sheet.Group, dev *plan.Device, b sheet.Box, top measure.Length) {
	x := b.Centre().X
	if i := slices.IndexFunc(e.bays, func(bay route.Bay) bool { return bay.Start <= dev.At && dev.At <= bay.End }); i >= 0 {
		x = e.stapled(d, &e.bays[i], dev.At)
	}
	feed := func(edge sheet.Paper, end measure.Length) {
		y := d.view.Point(geom.Point{Y: end}).Y
		from := sheet.Pt(max(b.Min.X, min(x, b.Max.X)), edge)
		bend := sheet.Pt(x, edge+(y-edge)/8)
		if from.X == x {
			bend = from
		}
		g.Polyline(sheet.PenPower, from, bend, sheet.Pt(x, y))
	}
	if dev.Up {
		feed(b.Min.Y, top)
	}
	if dev.Down {
		feed(b.Max.Y, 0)
	}
}

// stapled is where a power cable lies on the nearer stud of its bay.
func (e *elevation) stapled(d *drawing, bay *route.Bay, at measure.Length) sheet.Paper {
	near, far := e.x(d.view, e.across(bay.Start)), e.x(d.view, e.across(bay.End))
	if at-bay.Start > bay.End-at {
		near, far = far, near
	}
	if near < far {
		return near + besideStud
	}
	return near - besideStud
}

// drawConduits draws the pipes in the wall, from their boxes up through the
// plates.
func (e *elevation) drawConduits(d *drawing) {
	var g *sheet.Group
	for i := range d.res.Job.House.Conduits {
		c := &d.res.Job.House.Conduits[i]
		if !e.hasConduit(c) {
			continue
		}
		if g == nil {
			g = d.sheet.Group("conduits", "conduits", "Conduits")
		}
		u := e.across(c.At)
		foot := d.view.Point(geom.Point{X: u, Y: c.Height})
		end := d.view.Point(geom.Point{X: u, Y: e.level().PlateTop})
		end.Y -= 2 * sheet.MM
		if c.Down {
			end = d.view.Point(geom.Point{X: u})
			end.Y += 2 * sheet.MM
		}
		cg := g.Group(sheet.ID("conduit", c.ID), "conduit", "Conduit "+c.ID)
		cg.Line(sheet.PenChase, foot, end)
		one, tall := boxSize(d.res.Job.Book(), 1)
		b, _ := e.box(d, u-one/2, u+one/2, c.Height-tall/2, c.Height+tall/2)
		cg.Rect(sheet.PenHoleThere, b)
		d.ask(ask{
			id: "conduit-" + c.ID, along: []sheet.Point{foot, end}, leader: true, priority: 10,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: font.Fit(sheet.LetterSmall, "conduit "+c.ID, 40*sheet.MM)}},
		})
	}
}

// inWall turns the corners of a bundle into the wall's plane. ok is false if
// one of them is not in the wall.
func (e *elevation) inWall(points []geom.Point3) (out []geom.Point, ok bool) {
	for _, p := range points {
		along := e.wall.Along(flat(p))
		if p.Z < e.level().Floor+e.lowest() || e.wall.PointAt(along) != flat(p) || p.Z > e.level().Floor+e.level().PlateTop || !e.shows(e.across(along)) {
			return nil, false
		}
		out = append(out, geom.Point{X: e.across(along), Y: p.Z - e.level().Floor})
	}
	return out, len(out) > 1
}

// drawCables draws the bundles inside the wall, with their counts.
func (e *elevation) drawCables(d *drawing) {
	g := d.sheet.Group("routes", "routes", "Cables in the wall")
	for i := range d.res.Bundles {
		b := &d.res.Bundles[i]
		if b.Kind == route.RodArc || b.Kind == route.GableArc || b.Kind == route.WallArc || inSight(b.Kind) {
			continue
		}
		points, ok := e.inWall(b.Points)
		if !ok {
			continue
		}
		at := d.view.Points(points)
		id := fmt.Sprintf("bundle-%d", i+1)
		g.Group(id, "bundle", bundleTitle(d.res, b)).Polyline(cablePen(d.res, b, false), at...)
		if b.Cables > 1 && longest(at) >= shortestCounted {
			d.ask(ask{
				id: id, along: at, priority: 5, leader: true,
				block: font.Block{{Lettering: sheet.LetterCableTag, Words: fmt.Sprintf("%d×", b.Cables)}},
			})
		}
	}
}

// drawHoles draws the holes to bore, and those in the plate that are there.
func (e *elevation) drawHoles(d *drawing) {
	g := d.sheet.Group("holes", "holes", "Holes")
	u := d.res.Job.House.Units
	for _, h := range e.holes() {
		at := d.view.Point(geom.Point{X: h.across, Y: h.height})
		hg := g.Group(sheet.ID("hole", h.hole.ID), "hole", fmt.Sprintf("Hole %s through the %s, %s", h.hole.ID, h.kind, bitWords(u, h.hole)))
		drawHoleAt(hg, h.kind, at)
		d.ask(ask{
			id: "hole-" + h.hole.ID, at: at, symbol: around(at, holeRadius), priority: 25, leader: true,
			block: font.Block{{Lettering: sheet.LetterTag, Words: h.hole.ID}, {Lettering: sheet.LetterSmall, Words: bitWords(u, h.hole)}},
		})
	}
	for i := range d.res.Job.Fixed {
		f := &d.res.Job.Fixed[i]
		if f.Do != plan.FixedThere || f.Wall < 0 || &d.res.Job.House.Walls[f.Wall] != e.wall || !e.shows(e.across(f.At)) {
			continue
		}
		plate, words := e.level().PlateTop-measure.Length(e.wall.TopPlates)*route.PlateThickness/2, "top plate"
		if f.Bottom {
			plate, words = route.PlateThickness/2, "bottom plate"
		}
		at := d.view.Point(geom.Point{X: e.across(f.At), Y: plate})
		g.Group(sheet.ID("hole-there", f.ID), "hole", "Hole in the "+words+" that is there, "+f.ID).Circle(sheet.PenHoleThere, at, holeRadius)
		d.ask(ask{
			id: "there-" + f.ID, at: at, symbol: around(at, holeRadius), priority: 15, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: font.Fit(sheet.LetterSmall, f.ID, 40*sheet.MM)}},
		})
	}
}

// bitWords names the bit for a hole, as many times as it is bored.
func bitWords(u measure.System, h *route.Hole) string {
	switch {
	case h.Bit == 0:
		return "no bit fits"
	case h.Count > 1:
		return fmt.Sprintf("%d × %s bit", h.Count, u.FormatSheet(h.Bit))
	}
	return u.FormatSheet(h.Bit) + " bit"
}

// drawBoxes draws the openings for boxes and the panel: a plate with the
// triangle of an outlet, the panel with its diagonals, and dashed what is
// opened from the other side.
func (e *elevation) drawBoxes(d *drawing) {
	g := d.sheet.Group("boxes", "boxes", "Openings for boxes")
	for i, bx := range e.boxes() {
		b, ok := e.box(d, bx.across-bx.width/2, bx.across+bx.width/2, bx.height-bx.tall/2, bx.height+bx.tall/2)
		if !ok {
			continue
		}
		id := fmt.Sprintf("box-%d", i+1)
		bg := g.Group(id, "box", "Opening for "+bx.name)
		block := font.Block{{Lettering: sheet.LetterTag, Words: font.Fit(sheet.LetterTag, bx.name, 50*sheet.MM)}}
		switch {
		case bx.fromOtherSide:
			bg.Rect(sheet.PenHidden, b)
			block = append(block, font.Line{Lettering: sheet.LetterSmall, Words: "from the other side"})
		case bx.drop == nil:
			bg.Rect(sheet.PenDevice, b)
			bg.Line(sheet.PenMedium, b.Min, b.Max)
			bg.Line(sheet.PenMedium, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		default:
			drawPlate(bg, b)
		}
		if bx.blocked {
			block = append(block, font.Line{Lettering: sheet.LetterSmall, Words: "no allowed route"})
		}
		d.take(b)
		d.ask(ask{id: id, at: b.Centre(), symbol: b, priority: 30, leader: true, block: block})
	}
}

// drawPlate draws the opening for a plate with the triangle of an outlet.
func drawPlate(g *sheet.Group, b sheet.Box) {
	g.Rect(sheet.PenDevice, b)
	c, r := b.Centre(), min(b.Width(), b.Height())*3/8
	g.Polygon(sheet.PenSolid, []sheet.Point{{X: c.X - r, Y: c.Y + r}, {X: c.X + r, Y: c.Y + r}, {X: c.X, Y: c.Y - r}})
}

// drawRoom draws the outline of the room: floor, ceiling and corners.
func (e *elevation) drawRoom(d *drawing) {
	g := d.sheet.Group("room", "room", "Floor, ceiling and corners of the room")
	lo, hi := max(e.first, 0), min(e.last, e.width())
	at := func(u, h measure.Length) sheet.Point { return d.view.Point(geom.Point{X: u, Y: h}) }
	c := e.level().Ceiling
	floor := [2]sheet.Point{at(e.first, 0), at(e.last, 0)}
	g.Line(sheet.PenThick, floor[0], floor[1])
	d.take(sheet.Bounds(floor[0], floor[1]).Inset(-sheet.PenThick.Style().Width / 2))
	g.Line(sheet.PenMedium, at(lo, c), at(hi, c))
	for _, u := range [2]measure.Length{0, e.width()} {
		if e.shows(u) {
			g.Line(sheet.PenMedium, at(u, 0), at(u, c))
		}
	}
}
