package render

import (
	"fmt"
	"strconv"

	"topplate/render/sheet"
)

// Sizes of the symbols of openings on paper.
const (
	barLength = 3200 * sheet.Micrometre
	barDepth  = 1400 * sheet.Micrometre
	dotRadius = 600 * sheet.Micrometre
)

// drawOpened draws a symbol for each opening and returns where they lie.
func (d *drawing) drawOpened(list []opened) []sheet.Box {
	g := d.sheet.Group("openings-made", "openings", "Openings in finished surfaces")
	boxes := make([]sheet.Box, len(list))
	for i := range list {
		o := &list[i]
		number := strconv.Itoa(o.number)
		og := g.Group(sheet.ID("place", number), "place", fmt.Sprintf("Opening %s, %s", number, o.where))
		boxes[i] = d.openedBox(o)
		drawOpenedSymbol(og, o.kind, boxes[i])
	}
	return boxes
}

// openedBox is where the symbol of an opening lies: on the face of its wall,
// as wide as it is if that can be seen, or around its point.
func (d *drawing) openedBox(o *opened) sheet.Box {
	at := d.view.Point(o.at)
	if o.kind == openCeiling || o.kind == openFloor || o.kind == openEave || o.kind == openBoard {
		return around(at, barLength/2)
	}
	into := turnOfHeading(o.into)
	half := max(d.view.Length(o.width), barLength) / 2
	return sheet.Bounds(sheet.Polar(at, half, into+sheet.QuarterTurn), sheet.Polar(sheet.Polar(at, half, into-sheet.QuarterTurn), barDepth, into))
}

// drawOpenedSymbol draws what tells the kinds of opening apart: a black bar
// for one that is covered, a hollow bar for one that is closed again, a circle
// with a dot in a ceiling, and a square with a diagonal under the roof's edge.
func drawOpenedSymbol(g *sheet.Group, kind openedAs, b sheet.Box) {
	switch kind {
	case openWall, openGable, openThrough:
		g.Rect(sheet.PenSolid, b)
	case openAgain, openBoard:
		g.Rect(sheet.PenDevice, b)
	case openCeiling, openFloor:
		g.Circle(sheet.PenDevice, b.Centre(), b.Width()/2)
		g.Circle(sheet.PenSolid, b.Centre(), dotRadius)
	case openEave:
		g.Rect(sheet.PenDevice, b)
		g.Line(sheet.PenMedium, b.Min, b.Max)
	}
}

// plainPens are the pens of the plan as a homeowner's legend explains them.
var plainPens = [...]struct {
	pen     sheet.Pen
	meaning string
}{
	{sheet.PenWall, "wall"}, {sheet.PenMasonry, "wall of brick, block, stone or concrete"}, {sheet.PenDoor, "door, with its swing"}, {sheet.PenWindow, "window"}, {sheet.PenAbove, "open doorway"}, {sheet.PenEave, "edge of the roof"}, {sheet.PenCableSurface, "cable in sight: in a channel, or outside"},
}

// openingsLegend explains the symbols and pens that are on the plan.
func (d *drawing) openingsLegend(list []opened) {
	d.heading("What the signs mean")
	if len(list) > 0 {
		d.skip(2 * sheet.MM)
		d.legendRow("the number of an opening, as in the table", func(g *sheet.Group, b sheet.Box) { drawRing(g, b.Centre(), "1") })
		d.skip(2 * sheet.MM)
	}
	for kind, meaning := range [...]string{
		openWall: "opening in a wall, covered afterwards", openAgain: "opening in a wall, closed again", openCeiling: "hole in a ceiling",
		openEave: "hole under the roof's edge, outside", openGable: "", openBoard: "opening in a ceiling, closed again", openThrough: "", openFloor: "hole in a floor",
	} {
		if meaning != "" && hasKind(list, openedAs(kind)) {
			d.legendRow(meaning, func(g *sheet.Group, b sheet.Box) {
				size := sheet.BoxAround(b.Centre(), barLength, barLength)
				if openedAs(kind) == openWall || openedAs(kind) == openAgain {
					size = sheet.BoxAround(b.Centre(), barLength, barDepth)
				}
				drawOpenedSymbol(g, openedAs(kind), size)
			})
		}
	}
	used := map[sheet.Pen]bool{}
	for _, pen := range d.sheet.Pens() {
		used[pen] = true
	}
	for _, p := range plainPens {
		if used[p.pen] {
			d.legendRow(p.meaning, func(g *sheet.Group, b sheet.Box) { drawPlainSample(g, p.pen, b) })
		}
	}
}

// hasKind reports whether a kind of opening is on the list. A hole through a
// wall is drawn as other openings in walls are.
func hasKind(list []opened, kind openedAs) bool {
	for i := range list {
		if k := list[i].kind; k == kind || (k == openGable || k == openThrough) && kind == openWall {
			return true
		}
	}
	return false
}

// drawPlainSample shows a pen of the plan as it is used there.
func drawPlainSample(g *sheet.Group, pen sheet.Pen, b sheet.Box) {
	c := b.Centre()
	switch pen {
	case sheet.PenDoor:
		r := b.Height() - sheet.MM/4
		hinge := sheet.Pt(c.X-r/2, b.Max.Y)
		g.Line(pen, hinge, sheet.Polar(hinge, r, sheet.QuarterTurn))
		g.Add(sheet.Arc{Pen: sheet.PenSwing, Centre: hinge, Radius: r, Start: 0, Sweep: sheet.QuarterTurn})
	case sheet.PenWindow:
		g.Rect(pen, b.Inset(sheet.MM))
		g.Line(pen, sheet.Pt(b.Min.X+sheet.MM, c.Y), sheet.Pt(b.Max.X-sheet.MM, c.Y))
	default:
		drawSample(g, pen, b)
	}
}
