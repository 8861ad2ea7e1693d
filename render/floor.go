package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// Paper around the roof's edge that dimensions and tags take: more where the
// overall sizes stand.
const (
	roomWide   = 19 * sheet.MM
	roomNarrow = 18 * sheet.MM
)

// A planKind is a drawing of the whole house from above, on one sheet or on
// tiles.
type planKind struct {
	id, title, desc string
	scope           scope
	// draw draws everything and asks for labels; behind, which may be nil, draws
	// what leaves gaps for them.
	draw   func(d *drawing)
	behind func(d *drawing, labels []sheet.Box)
	// tables writes what is said in the column before the legend.
	tables  func(d *drawing)
	symbols func(d *drawing) []legendSymbol
	// legend, if it is not nil, writes a legend of its own before the tables, for
	// pens that mean something else here.
	legend func(d *drawing)
	// rest is the file that has what the column has no room for.
	rest string
}

// pages draws a plan at the largest standard scale that it fits on one sheet
// with; where that is too small to be read, on tiles at the least scale.
func (k *planKind) pages(res *route.Result) []*drawing {
	d := &drawing{page: newPageAs(res, k.id, k.title, k.desc, ""), scope: k.scope}
	ok := true
	d.view, ok = sheet.FitView(res.Job.House.Units, extent(res), planArea(d.area))
	if ok && d.view.Scale.Den <= leastScale(res.Job.House.Units).Den {
		k.finish(d, nil)
		return []*drawing{d}
	}
	all := tiles(res, d.area)
	out := make([]*drawing, 0, len(all))
	for i := range all {
		t := &all[i]
		title, desc := k.title, k.desc
		if len(all) > 1 {
			title = fmt.Sprintf("%s, part %d of %d", k.title, t.number, len(all))
			desc = fmt.Sprintf("%s Part %d of %d; match lines name the sheets that go on.", k.desc, t.number, len(all))
		}
		d := &drawing{page: newPageAs(res, partID(res.Job.House, k.id, t.number), title, desc, ""), tile: t, scope: k.scope}
		d.view = t.view(d.area, leastScale(res.Job.House.Units))
		k.finish(d, all)
		out = append(out, d)
	}
	return out
}

// partID names the sheet of one tile. The names of levels and spaces may end in
// a number of their own.
func partID(h *plan.House, id string, number int) string {
	if len(h.Levels) == 1 && len(h.Spaces) == 1 {
		return fmt.Sprintf("%s-%d", id, number)
	}
	return fmt.Sprintf("%s_%d", id, number)
}

// whole draws a plan on one sheet, as large as it must be, for other drawing
// programs, which have no edge of the paper.
func (k *planKind) whole(res *route.Result) *sheet.Sheet {
	all, s := extent(res), leastScale(res.Job.House.Units)
	f := sheet.Format{
		Width:  s.Paper(all.Width()) + 2*roomWide + marginLeft + margin + columnWidth,
		Height: s.Paper(all.Height()) + 2*roomWide + 2*margin,
	}
	f.Height = max(f.Height, formatFor(res.Job).Height)
	d := &drawing{page: newPageOn(f, res, k.id, k.title, k.desc, ""), scope: k.scope}
	area := planArea(d.area)
	d.view = sheet.View{Scale: s, From: geom.Point{X: (all.Min.X + all.Max.X) / 2, Y: (all.Min.Y + all.Max.Y) / 2}, To: area.Centre()}
	k.finish(d, nil)
	return d.sheet
}

// planArea is what of a drawing area the house itself may take.
func planArea(area sheet.Box) sheet.Box {
	return sheet.Box{
		Min: sheet.Pt(area.Min.X+roomWide, area.Min.Y+roomNarrow),
		Max: sheet.Pt(area.Max.X-roomNarrow, area.Max.Y-roomWide),
	}
}

// finish draws a plan in its view.
func (k *planKind) finish(d *drawing, all []tile) {
	d.sheet.View = d.view
	k.draw(d)
	d.cut()
	d.drawMatchLines(k.id)
	labels := d.placeLabels()
	d.drawTreads()
	if k.behind != nil {
		k.behind(d, labels)
	}
	if len(all) > 1 {
		d.keyPlan(all)
	}
	d.listUnplaced()
	if k.rest != "" {
		d.rest = k.rest
	}
	if k.legend != nil {
		k.legend(d)
		k.tables(d)
	} else {
		k.tables(d)
		d.legend(k.symbols(d)...)
	}
	d.cautions()
}

// floorPlan shows a level's floor: walls, rooms, openings, devices, drops and,
// as hidden lines, the routes over them.
func floorPlan(res *route.Result, level int) *planKind {
	h, s, n := res.Job.House, levelScope(level), 0
	for i := range res.Routes {
		if s.hasDrop(res, &res.Routes[i]) {
			n++
		}
	}
	return &planKind{
		id: levelID(h, "floor", level), title: "Floor" + levelTitle(h, level), scope: s,
		desc:    fmt.Sprintf("Floor plan of %s%s with %d drops, their cable routes, holes and cut lengths.", h.Name, levelClause(h, level), n),
		draw:    drawFloor,
		tables:  (*drawing).dropTable,
		symbols: func(d *drawing) []legendSymbol { return append(d.dropSymbols(), d.floorSymbols()...) },
	}
}

// levelClause says which level something is about, in a sentence.
func levelClause(h *plan.House, level int) string {
	if len(h.Levels) == 1 {
		return ""
	}
	return ", level " + levelName(h, level) + ","
}

// floorSymbols are those of a floor plan alone, as far as the house has them.
func (d *drawing) floorSymbols() []legendSymbol {
	h, out, all := d.res.Job.House, floorSymbols, d.scope == everywhere
	if len(h.Spaces) > 1 && slices.ContainsFunc(h.Hatches, func(x plan.Hatch) bool { return all || d.scope.hasHatch(h, &x) }) {
		out = append(slices.Clone(out), hatchSymbol)
	}
	if slices.ContainsFunc(h.Chases, func(c plan.Chase) bool { return all || d.scope.hasChase(h, &c) }) {
		out = append(slices.Clone(out), chaseSymbol)
	}
	if slices.ContainsFunc(h.Rooms, func(r plan.Room) bool { return r.Use == "stairs" && (all || r.Level == d.scope.level) }) {
		out = append(slices.Clone(out), stairSymbol)
	}
	return out
}

// floorSymbols are those of every floor plan.
var floorSymbols = []legendSymbol{{"receptacle, switch or other power device", drawDeviceSample}}

var hatchSymbol = legendSymbol{"hatch, way into a space", func(g *sheet.Group, b sheet.Box) {
	box := sheet.BoxAround(b.Centre(), b.Height(), b.Height())
	g.Rect(sheet.PenDevice, box)
	g.Line(sheet.PenMedium, box.Min, box.Max)
	g.Line(sheet.PenMedium, sheet.Pt(box.Min.X, box.Max.Y), sheet.Pt(box.Max.X, box.Min.Y))
}}

var stairSymbol = legendSymbol{"stairs, steps as many as there is room for", func(g *sheet.Group, b sheet.Box) {
	for x := b.Min.X + sheet.MM; x < b.Max.X; x += 2 * sheet.MM {
		g.Line(sheet.PenStairs, sheet.Pt(x, b.Min.Y), sheet.Pt(x, b.Max.Y))
	}
}}

func drawFloor(d *drawing) {
	d.drawUnderlays(func(u *plan.Underlay) bool { return u.OnFloor && u.Level == d.scope.level })
	d.drawStairs()
	d.drawRoof(false)
	d.drawWalls()
	d.scaleBar(true)
	d.dimensionWalls()
	d.drawDevices()
	d.drawWaysOut()
	d.drawChases()
	d.drawRoutes(false)
	d.drawCloset()
	d.drawHoles()
	d.drawReused()
	d.drawDrops(true)
	d.nameRooms()
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
		part, ok := d.scope.roomPart(h, r)
		if !ok {
			continue
		}
		block := font.Block{{Lettering: sheet.LetterRoom, Words: r.Name}, {Lettering: sheet.LetterSmall, Words: h.Units.FormatArea(roomArea(r))}}
		if r.Open && d.scope.space < 0 {
			block = append(block, font.Line{Lettering: sheet.LetterSmall, Words: "open ceiling"})
		}
		in, at := largestRect(part), r.At
		if !in.Contains(at) && d.scope.space >= 0 && !part.Contains(at) {
			at = geom.Point{X: in.Min.X + in.Width()/2, Y: in.Min.Y + in.Height()/2}
		}
		d.ask(ask{id: "room-" + r.ID, at: d.view.Point(at), within: d.view.Box(in), priority: 15, leader: true, block: block})
	}
}

// roomArea is the floor of a room in square metres.
func roomArea(r *plan.Room) float64 {
	area := r.Outline.SquareMetres()
	for _, hole := range r.Holes {
		area -= hole.SquareMetres()
	}
	return area
}

// dropTable lists the drops with their cut lengths in the column.
func (d *drawing) dropTable() {
	job := d.res.Job
	d.heading("Drops")
	rows := [][]string{{"tag", "cables", "cable", "route", "cut each", "note"}}
	for i := range d.res.Routes {
		r := &d.res.Routes[i]
		if !d.scope.hasDrop(d.res, r) || !d.here(d.dropPlace(r)) {
			continue
		}
		drop := &job.Drops[r.Drop]
		row := []string{drop.Tag, fmt.Sprint(drop.Count), drop.Cable.ID, "none allowed", "–", drop.Note}
		if r.Blocked == nil {
			row[3], row[4] = job.House.Units.Format(r.Lengths.Developed), job.House.Units.Format(r.Lengths.Cut)
		}
		rows = append(rows, row)
	}
	d.tableOr("none", rows)
	onAll := ""
	if len(job.House.Levels) > 1 {
		onAll = "on all levels, "
	}
	for _, t := range d.res.Tails {
		d.line(sheet.LetterSmall, 0, fmt.Sprintf("%s%s: %s, %s to cut", onAll, t.Cable, counted(t.Cables, "cable", "cables"), job.House.Units.Format(t.Length)))
	}
}

// tableOr writes a table, or a word where it has only a heading.
func (p *page) tableOr(none string, rows [][]string) {
	if len(rows) == 1 {
		rows = [][]string{{none}}
	}
	p.table(sheet.LetterSmall, rows)
}
