package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/survey"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// Sketch draws what was sketched and nothing that was decided, with every
// dimension, so that a wrong number is seen at once: the floor as sheet sketch,
// the attic and the roof's edge as sketch-attic, of several levels and spaces
// each on sheets of its own, on tiles where the house
// is too large, and every number in lists on the upright sheets sketch-list-1
// and so on. The sheets are numbered on their own. A number without room on
// the drawings is in the lists all the same.
func Sketch(res *route.Result) []*sheet.Sheet {
	var pages []*drawing
	h := res.Job.House
	for _, level := range byHeight(h) {
		pages = append(pages, sketchPlan(res, level).pages(res)...)
	}
	for space := range h.Spaces {
		pages = append(pages, sketchSpace(res, space).pages(res)...)
	}
	var out []*sheet.Sheet
	for i, p := range pages {
		place := fmt.Sprintf("sketch: %d of %d", i+1, len(pages))
		if p.tile != nil {
			place = fmt.Sprintf("%s: %d of %d", p.sheet.ID, i+1, len(pages))
		}
		p.number(place)
		out = append(out, p.sheet)
	}
	return append(out, clips(res, "sketch-list", "Sketch in numbers", sketchLists(res))...)
}

// sketchPlan shows a level's floor as it was taped.
func sketchPlan(res *route.Result, level int) *planKind {
	h := res.Job.House
	return &planKind{
		id: levelID(h, "sketch", level), title: "Sketch of the floor" + levelTitle(h, level), scope: levelScope(level),
		desc: fmt.Sprintf("The floor of %s%s as it was sketched, with every dimension, to be checked against the house.", h.Name, levelClause(h, level)),
		draw: drawSketch,
		tables: func(d *drawing) {
			d.checkTable()
			d.closingTable()
		},
		symbols: func(*drawing) []legendSymbol { return floorSymbols },
	}
}

func drawSketch(d *drawing) {
	d.drawUnderlays(func(u *plan.Underlay) bool { return u.OnSketch && u.Level == d.scope.level })
	d.drawStairs()
	d.drawWalls()
	d.scaleBar(true)
	d.column((*drawing).sketchNote)
	d.dimensionWalls()
	d.drawDevices()
	d.drawConduits()
	d.drawChases()
	d.drawChecks()
	d.drawZero()
	d.measureWalls()
	d.measureOpenings()
	d.measureDevices()
	d.nameRooms()
	d.measureRooms()
}

// column writes parts of the column before anything else is in it, and keeps
// the key plan of a tile free.
func (d *drawing) column(parts ...func(*drawing)) {
	keep := d.keep
	if d.tile != nil {
		d.keep += keyHeight + 5*sheet.MM + font.LineHeight(sheet.LetterHeading)
	}
	for _, write := range parts {
		write(d)
	}
	d.keep = keep
}

// sketchNote says how to use the sheet.
func (d *drawing) sketchNote() {
	words := "Hold every number against the house. A wall has its length as drawn, and as taped where closing its run changed it; " +
		"an opening, a device or a wall that starts on another its distance from the start of that wall. E and N are east and north of the zero point. " +
		"All numbers, also those without room here, are on " + inLists + "."
	if d.res.Job.House.Units == measure.Metric {
		words += " Lengths in millimetres."
	}
	d.paragraph(sheet.LetterSmall, words)
}

// inLists is where everything is that finds no room on a check sheet.
const inLists = "sheets sketch-list"

// closingTable lists by how much each run of walls missed its start; on a tile,
// of the runs that start there.
func (d *drawing) closingTable() {
	h := d.res.Job.House
	if len(h.Traverses) == 0 {
		return // the walls were made round rooms
	}
	if !d.heading("How the runs of walls close") {
		return // it is in the lists
	}
	rows := [][]string{{"run", "walked", "misses its start by", "or one in"}}
	starts := map[string]geom.Point{}
	for i := range h.Walls {
		starts[h.Walls[i].ID] = h.Walls[i].A
	}
	for i := range h.Traverses {
		t := &h.Traverses[i]
		if levelOfRun(h, t) != d.scope.level || !d.here(starts[t.First]) {
			continue
		}
		rows = append(rows, append([]string{t.ID, d.length(t.Perimeter)}, missed(t, d.length)...))
	}
	d.tableOrIn(inLists, sheet.LetterSmall, rows)
}

// levelOfRun is the level that a run of walls is on.
func levelOfRun(h *plan.House, t *plan.Traverse) int {
	i := slices.IndexFunc(h.Walls, func(w plan.Wall) bool { return w.ID == t.First })
	if i < 0 {
		return 0
	}
	return h.Walls[i].Level
}

// startOf says where a run starts on another wall, and nothing if it starts at a
// point.
func startOf(t *plan.Traverse, length func(measure.Length) string) string {
	if t.On == "" {
		return ""
	}
	return "from " + length(t.At) + " on " + t.On
}

// missed says by how much a run missed its start, and that as a part of what
// was walked.
func missed(t *plan.Traverse, length func(measure.Length) string) []string {
	if !t.Closed {
		return []string{join("open", startOf(t, length)), ""}
	}
	m := survey.Misclosure{DX: t.MisX, DY: t.MisY, Linear: geom.Dist(geom.Point{}, geom.Point{X: t.MisX, Y: t.MisY}), Perimeter: t.Perimeter}
	if m.Linear == 0 {
		return []string{"nothing", ""}
	}
	return []string{length(m.Linear) + " (" + eastNorth(t.MisX, t.MisY, length) + ")", fmt.Sprint(m.Ratio())}
}

// eastNorth writes a step in words.
func eastNorth(x, y measure.Length, length func(measure.Length) string) string {
	east, north := "E ", "N "
	if x < 0 {
		x, east = -x, "W "
	}
	if y < 0 {
		y, north = -y, "S "
	}
	return east + length(x) + ", " + north + length(y)
}

// checkTable lists the lengths that were taped as checks.
func (d *drawing) checkTable() {
	checks := d.res.Job.House.Checks
	if len(checks) == 0 {
		return
	}
	if !d.heading("Checks") {
		return
	}
	rows := [][]string{{"check", "taped", "drawn", "taped is", ""}}
	for i := range checks {
		c := &checks[i]
		rows = append(rows, []string{c.ID, d.length(c.Length), d.length(c.Drawn), longer(c.Length-c.Drawn, d.length), verdict(c)})
	}
	d.tableOrIn(inLists, sheet.LetterSmall, rows)
}

// signed writes a difference with its sign.
func signed(l measure.Length, length func(measure.Length) string) string {
	switch words := length(max(l, -l)); {
	case words == length(0):
		return words
	case l < 0:
		return "−" + words
	default:
		return "+" + words
	}
}

// longer writes by how much something is longer, or shorter.
func longer(l measure.Length, length func(measure.Length) string) string {
	switch words := length(max(l, -l)); {
	case words == length(0):
		return "the same"
	case l < 0:
		return words + " shorter"
	default:
		return words + " longer"
	}
}

// verdict says whether a check holds.
func verdict(c *plan.Check) string {
	if c.Agrees {
		return "agrees"
	}
	return "TAPE AGAIN"
}

// drawZero draws the point that coordinates are from.
func (d *drawing) drawZero() {
	const arm = 2 * sheet.MM
	at := d.view.Point(geom.Point{})
	if !d.area.Inset(arm).Has(at) {
		return
	}
	g := d.sheet.Group("zero", "zero", "Zero point")
	g.Circle(sheet.PenThin, at, arm/2)
	g.Line(sheet.PenThin, sheet.Pt(at.X-arm, at.Y), sheet.Pt(at.X+arm, at.Y))
	g.Line(sheet.PenThin, sheet.Pt(at.X, at.Y-arm), sheet.Pt(at.X, at.Y+arm))
	d.ask(ask{id: "zero", at: at, symbol: around(at, arm), priority: 10, leader: true, block: smallBlock("zero point")})
}

// smallBlock is small text, its first line bold.
func smallBlock(first string, rest ...string) font.Block {
	b := font.Block{{Lettering: sheet.LetterSmallTag, Words: first}}
	for _, words := range rest {
		b = append(b, font.Line{Lettering: sheet.LetterSmall, Words: words})
	}
	return b
}
