package render

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route"
)

// Scales at which details still read well (common practice, no source): they
// are drawn smaller only where one would not fit.
const (
	elevationDen = 50
	sectionDen   = 24
	// longestDen is the scale that a wall must fit at on one sheet: 1/4 in to
	// the foot, or a bit above 1:50.
	longestDen = 48
)

// longestWall is how wide a wall may be on a sheet before it is shown in
// parts: what the drawing area holds at the least scale, less what levels take.
func longestWall(area sheet.Box) measure.Length {
	const besides = 90 * sheet.MM
	return sheet.Scale{Den: longestDen}.Real(area.Width() - besides)
}

// Details draws the sheets that show parts of the house at a larger scale: the
// walls that are opened as elevations, and sections where the clear height
// decides. They are numbered on their own.
func Details(res *route.Result) []*sheet.Sheet {
	area := newPageAs(res, "blank", "", "", "").area.Inset(2 * sheet.MM)
	u := res.Job.House.Units
	var walls, cuts []*detail
	for _, e := range elevations(res, longestWall(area)) {
		walls = append(walls, e.detail())
	}
	for _, c := range sections(res) {
		cuts = append(cuts, c.detail())
	}
	for _, c := range floorCuts(res) {
		cuts = append(cuts, c.detail())
	}
	elevationPages := paginate(u, walls, area, elevationDen)
	sectionPages := paginate(u, cuts, area, sectionDen)
	of := len(elevationPages) + len(sectionPages)
	var out []*sheet.Sheet
	for i, p := range elevationPages {
		out = append(out, detailSheet(res, elevationKind, p, i+1, len(out)+1, of))
	}
	for i, p := range sectionPages {
		out = append(out, detailSheet(res, sectionKind, p, i+1, len(out)+1, of))
	}
	return out
}

// A detailKind is what the sheets of one kind of detail have in common.
type detailKind struct {
	id, title, desc string
	symbols         []legendSymbol
}

var elevationKind = detailKind{
	id: "elevation", title: "Wall elevations", desc: "Walls without their board, seen from the rooms",
	symbols: []legendSymbol{
		{"opening for a wall plate (triangle after ANSI Y32.9)", func(g *sheet.Group, b sheet.Box) {
			drawPlate(g, sheet.BoxAround(b.Centre(), 2*sheet.MM, 3*sheet.MM))
		}},
		{"receptacle, switch or other power device", func(g *sheet.Group, b sheet.Box) {
			b = sheet.BoxAround(b.Centre(), 2*sheet.MM, 3*sheet.MM)
			g.Rect(sheet.PenDevice, b)
			drawOutlet(g, b)
		}},
		{"header with what is over it; backing", func(g *sheet.Group, b sheet.Box) {
			b = b.Inset(sheet.MM / 2)
			g.Rect(sheet.PenStud, b)
			g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		}},
		{"rafter on the plate", func(g *sheet.Group, b sheet.Box) {
			b = sheet.BoxAround(b.Centre(), sheet.MM, b.Height())
			g.Rect(sheet.PenThin, b)
			g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		}},
		{"floor; ceiling and corners of the room", func(g *sheet.Group, b sheet.Box) {
			b = b.Inset(sheet.MM / 2)
			g.Polyline(sheet.PenMedium, sheet.Pt(b.Min.X, b.Max.Y), b.Min, sheet.Pt(b.Max.X, b.Min.Y), b.Max)
			g.Line(sheet.PenThick, sheet.Pt(b.Min.X, b.Max.Y), b.Max)
		}},
	},
}

// detailSheet draws one page of details.
func detailSheet(res *route.Result, k detailKind, p detailPage, n, number, of int) *sheet.Sheet {
	var names []string
	for _, t := range p.details {
		names = append(names, t.title)
	}
	id := fmt.Sprintf("%s-%d", k.id, n)
	d := &drawing{page: newPageAs(res, id, k.title, fmt.Sprintf("%s: %s.", k.desc, strings.Join(names, "; ")), fmt.Sprintf("detail %d of %d", number, of)), scope: everywhere}
	d.view.Scale = p.scale
	d.scaleBar(false)
	d.drawDetails(p)
	d.heading("On this sheet")
	for _, t := range p.details {
		t.list(d.page)
	}
	d.listUnplaced()
	symbols := k.symbols
	if k.id == elevationKind.id && d.boresSoles() {
		symbols = append(slices.Clone(symbols), soleSymbol)
	}
	d.legend(symbols...)
	d.cautions()
	return d.sheet
}
