package render

import (
	"fmt"

	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route"
)

// spacePlan shows a framing space: joists, roof, reach, obstacles, power, routes
// and holes.
func spacePlan(res *route.Result, space int) *planKind {
	h, s, n := res.Job.House, spaceScope(space), 0
	for i := range res.Holes {
		if s.hasHole(h, &res.Graph.Holes[res.Holes[i].Place]) {
			n++
		}
	}
	return &planKind{
		id: spaceID(h, space), title: spaceTitle(h, space), scope: s,
		desc: fmt.Sprintf("%s of %s: joists, where one can stand, crawl, reach or only push a rod, and the cable routes with %d holes.",
			spaceTitle(h, space), h.Name, n),
		draw:   drawSpace,
		behind: (*drawing).drawZones,
		tables: (*drawing).holeTable,
		symbols: func(d *drawing) []legendSymbol {
			return append(append(hatchSymbols(), d.dropSymbols()...), d.chaseSymbols()...)
		},
	}
}

func drawSpace(d *drawing) {
	d.drawJoists()
	d.zoneGroup = d.sheet.Group("zones", "zones", "Reach")
	d.drawDecking()
	d.drawWallsBelow()
	d.drawRoof(true)
	d.scaleBar(true)
	d.dimensionPlates()
	d.drawObstacles()
	d.drawEaves()
	d.drawPower()
	d.drawHatches()
	d.drawMarks()
	d.drawChases()
	d.drawRoutes(true)
	d.drawCloset()
	d.drawHoles()
	d.drawReused()
	d.drawDrops(true)
	d.nameRooms()
	d.nameWalls(d.holeWalls())
	d.noteJoists()
}

// noteJoists says how far apart the joists are, and where the first one is.
func (d *drawing) noteJoists() {
	h, s := d.res.Job.House, d.space()
	b := s.Bounds()
	lo := b.Min.X
	if !s.AlongY {
		lo = b.Min.Y
	}
	words := fmt.Sprintf("joists %s o.c.", d.length(s.Spacing))
	if centres := route.JoistCentres(h, s); len(centres) > 0 {
		words = fmt.Sprintf("%s, centre of the first %s from the plate's outer face", words, d.length(centres[0]-lo))
	}
	at := d.view.Point(b.Min)
	d.ask(ask{id: "joists", at: at, symbol: around(at, sheet.MM), priority: 10, leader: true, block: font.Block{{Lettering: sheet.LetterNote, Words: words}}})
}

// holeTable lists the holes in the column.
func (d *drawing) holeTable() {
	u := d.res.Job.House.Units
	d.heading("Holes")
	rows := [][]string{{"hole", "through", "where", "cables", "bit"}}
	for i := range d.res.Holes {
		h := &d.res.Holes[i]
		place := &d.res.Graph.Holes[h.Place]
		if !d.scope.hasHole(d.res.Job.House, place) || !d.here(flat(place.At)) {
			continue
		}
		bit := u.Format(h.Bit)
		if h.Count > 1 {
			bit = fmt.Sprintf("%d × %s", h.Count, bit)
		}
		rows = append(rows, []string{h.ID, place.Kind.String(), report.HoleWhere(d.res, place), fmt.Sprint(h.Cables), bit})
	}
	d.tableOr("none", rows)
}
