package render

import (
	"fmt"

	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route"
)

// Paper around the roof's edge that dimensions and tags take: more where the
// overall sizes stand.
const (
	roomWide   = 19 * sheet.MM
	roomNarrow = 18 * sheet.MM
)

// newDrawing lays out a page with the house in its drawing area, at the
// largest standard scale that leaves room around it.
func newDrawing(res *route.Result, id, title, desc string, number, of int) *drawing {
	d := &drawing{page: newPage(res, id, title, desc, number, of)}
	into := sheet.Box{
		Min: sheet.Pt(d.area.Min.X+roomWide, d.area.Min.Y+roomNarrow),
		Max: sheet.Pt(d.area.Max.X-roomNarrow, d.area.Max.Y-roomWide),
	}
	bounds := res.Job.House.PlateLine.Bounds().Outset(res.Job.House.Roof.Overhang)
	d.view, _ = sheet.FitView(res.Job.House.Units, bounds, into)
	d.sheet.View = d.view
	return d
}

// floorSheet draws the floor: walls, rooms, openings, devices, drops and, as
// hidden lines, the routes over them.
func floorSheet(res *route.Result, number, of int) *sheet.Sheet {
	h := res.Job.House
	desc := fmt.Sprintf("Floor plan of %s with %d drops, their cable routes, holes and cut lengths.", h.Name, len(res.Routes))
	d := newDrawing(res, "floor", "Floor", desc, number, of)
	d.drawRoof(false)
	drawWalls(d.sheet.Group("house", "house", "House"), h, d.view)
	d.scaleBar(true)
	d.dimensionWalls()
	d.drawDevices()
	d.drawRoutes(false)
	d.drawCloset()
	d.drawHoles()
	d.drawReused()
	d.drawDrops(true)
	d.nameRooms()
	d.placeLabels()
	d.dropTable()
	d.listUnplaced()
	d.legend(append(d.dropSymbols(), legendSymbol{"receptacle, switch or other power device", drawDeviceSample})...)
	d.cautions()
	return d.sheet
}

func drawDeviceSample(g *sheet.Group, b sheet.Box) {
	c := b.Centre()
	const r = 1200 * sheet.Micrometre
	g.Circle(sheet.PenThin, c, r)
	for _, x := range [2]sheet.Paper{-400, 400} {
		g.Line(sheet.PenThin, sheet.Pt(c.X+x, c.Y-r/2), sheet.Pt(c.X+x, c.Y+r))
	}
}

// nameRooms asks for the name and area of each room in its middle.
func (d *drawing) nameRooms() {
	h := d.res.Job.House
	for i := range h.Rooms {
		r := &h.Rooms[i]
		area := r.Outline.SquareMetres()
		for _, hole := range r.Holes {
			area -= hole.SquareMetres()
		}
		d.ask(ask{
			id: "room-" + r.ID, at: d.view.Point(r.At), within: d.view.Box(largestRect(r.Outline)), priority: 15, leader: true,
			block: font.Block{{Lettering: sheet.LetterRoom, Words: r.Name}, {Lettering: sheet.LetterSmall, Words: h.Units.FormatArea(area)}},
		})
	}
}

// dropTable lists the drops with their cut lengths in the column.
func (p *page) dropTable() {
	job := p.res.Job
	p.heading("Drops")
	rows := [][]string{{"tag", "cables", "cable", "route", "cut each", "note"}}
	for i := range p.res.Routes {
		r := &p.res.Routes[i]
		drop := &job.Drops[r.Drop]
		row := []string{drop.Tag, fmt.Sprint(drop.Count), drop.Cable.ID, "–", "–", drop.Note}
		if r.Blocked == nil {
			row[3], row[4] = job.House.Units.Format(r.Lengths.Developed), job.House.Units.Format(r.Lengths.Cut)
		}
		rows = append(rows, row)
	}
	p.table(sheet.LetterSmall, rows)
	for _, t := range p.res.Tails {
		p.line(sheet.LetterSmall, 0, fmt.Sprintf("%s: %d cables, %s to cut", t.Cable, t.Cables, job.House.Units.Format(t.Length)))
	}
}

// atticSheet draws the framing space: joists, roof, reach, obstacles, power,
// routes and holes.
func atticSheet(res *route.Result, number, of int) *sheet.Sheet {
	h := res.Job.House
	desc := fmt.Sprintf("Attic of %s: joists, where one can stand, crawl, reach or only push a rod, and the cable routes with %d holes.", h.Name, len(res.Holes))
	d := newDrawing(res, "attic", "Attic", desc, number, of)
	d.drawJoists()
	d.zoneGroup = d.sheet.Group("zones", "zones", "Reach")
	d.drawDecking()
	drawWallsBelow(d.sheet.Group("house", "house", "House"), h, d.view)
	d.drawRoof(true)
	d.scaleBar(true)
	d.dimensionPlates()
	d.drawObstacles()
	d.drawEaves()
	d.drawPower()
	d.drawHatches()
	d.drawMarks()
	d.drawRoutes(true)
	d.drawCloset()
	d.drawHoles()
	d.drawReused()
	d.drawDrops(true)
	d.nameRooms()
	d.noteJoists()
	gaps := d.placeLabels()
	d.drawZones(gaps)
	d.holeTable()
	d.listUnplaced()
	d.legend(append(hatchSymbols(), d.dropSymbols()...)...)
	d.cautions()
	return d.sheet
}

// noteJoists says how far apart the joists are, and where the first one is.
func (d *drawing) noteJoists() {
	h := d.res.Job.House
	b := h.PlateLine.Bounds()
	lo := b.Min.X
	if !h.Attic.AlongY {
		lo = b.Min.Y
	}
	words := fmt.Sprintf("joists %s o.c.", d.length(h.Attic.Spacing))
	if centres := route.JoistCentres(h); len(centres) > 0 {
		words = fmt.Sprintf("%s, centre of the first %s from the plate's outer face", words, d.length(centres[0]-lo))
	}
	at := d.view.Point(b.Min)
	d.ask(ask{id: "joists", at: at, symbol: around(at, sheet.MM), priority: 10, leader: true, block: font.Block{{Lettering: sheet.LetterNote, Words: words}}})
}

// holeTable lists the holes in the column.
func (p *page) holeTable() {
	u := p.res.Job.House.Units
	p.heading("Holes")
	rows := [][]string{{"hole", "through", "where", "cables", "bit"}}
	for i := range p.res.Holes {
		h := &p.res.Holes[i]
		place := &p.res.Graph.Holes[h.Place]
		bit := u.Format(h.Bit)
		if h.Count > 1 {
			bit = fmt.Sprintf("%d × %s", h.Count, bit)
		}
		rows = append(rows, []string{h.ID, place.Kind.String(), report.HoleWhere(p.res, place), fmt.Sprint(h.Cables), bit})
	}
	p.table(sheet.LetterSmall, rows)
}
