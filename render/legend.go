package render

import (
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route"
)

// legend explains the pens and symbols that the sheet uses, from the same
// table they are drawn from. Where the column has no room for all of them, it
// points to a sheet that does.
func (d *drawing) legend(symbols ...legendSymbol) {
	rows := append(penSymbols(d.sheet.Pens()), symbols...)
	if s := d.scope.space; s >= 0 && d.res.Job.House.Spaces[s].Kind != plan.AtticSpace {
		for i := range rows {
			if rows[i].meaning == sheet.PenWay.Style().Meaning {
				rows[i].meaning = "way from the hatch, under the joists"
			}
		}
	}
	const least = 3400 * sheet.Micrometre
	height := min(legendHeight, (d.foot()-d.next-5*sheet.MM-font.LineHeight(sheet.LetterHeading))/sheet.Paper(max(1, len(rows))))
	if height < least {
		d.sheet.Group(seeLegend, "column", "")
		d.line(sheet.LetterSmall, 0, "Lines and symbols are explained on sheet legend.")
		return
	}
	d.heading("Legend")
	for _, s := range rows {
		s.row(d.text, sheet.Bx(d.side.Min.X+padding, d.next, d.side.Width()-2*padding, height))
		d.next += height
	}
}

// penSymbols are the pens that a legend explains.
func penSymbols(pens []sheet.Pen) []legendSymbol {
	var out []legendSymbol
	for _, pen := range pens {
		if s := pen.Style(); s.Meaning != "" {
			out = append(out, legendSymbol{s.Meaning, func(g *sheet.Group, b sheet.Box) { drawSample(g, pen, b) }})
		}
	}
	return out
}

// drawSample shows a pen as it is used: round for holes and marks, an area if
// it fills, else a line.
func drawSample(g *sheet.Group, pen sheet.Pen, b sheet.Box) {
	c := b.Centre()
	if pen == sheet.PenMasonry {
		b = b.Inset(sheet.MM / 2)
		g.Rect(pen, b)
		g.Hatch(sheet.HatchMasonry, [][]sheet.Point{b.Corners()})
		return
	}
	switch shape := pen.Shape(); shape {
	case sheet.ShapeRing, sheet.ShapeTarget:
		g.Circle(pen, c, holeRadius)
		reach := holeRadius / 2
		if shape == sheet.ShapeTarget {
			reach = 2 * holeRadius
		}
		g.Line(sheet.PenThin, sheet.Pt(c.X-reach, c.Y), sheet.Pt(c.X+reach, c.Y))
		g.Line(sheet.PenThin, sheet.Pt(c.X, max(b.Min.Y, c.Y-reach)), sheet.Pt(c.X, min(b.Max.Y, c.Y+reach)))
	case sheet.ShapeArc:
		drawArc(g, sheet.Pt(c.X, c.Y+6*sheet.MM), c, 6*sheet.MM)
	case sheet.ShapeArea:
		g.Rect(pen, b.Inset(sheet.MM/2))
	default:
		g.Line(pen, sheet.Pt(b.Min.X, c.Y), sheet.Pt(b.Max.X, c.Y))
	}
}

// A legendSymbol is a symbol that a legend explains.
type legendSymbol struct {
	meaning string
	draw    func(g *sheet.Group, b sheet.Box)
}

// Sizes of a row of a legend.
const (
	legendHeight = 4 * sheet.MM
	legendSample = 14 * sheet.MM
)

// legendRow draws one row in the column, if there is room.
func (d *drawing) legendRow(meaning string, draw func(g *sheet.Group, b sheet.Box)) {
	if d.next+legendHeight > d.foot() {
		return
	}
	legendSymbol{meaning, draw}.row(d.text, sheet.Bx(d.side.Min.X+padding, d.next, d.side.Width()-2*padding, legendHeight))
	d.next += legendHeight
}

// row draws a sample in a box, with its meaning beside it.
func (s legendSymbol) row(g *sheet.Group, in sheet.Box) {
	b := sheet.Bx(in.Min.X, in.Min.Y+sheet.MM/2, legendSample, in.Height()-sheet.MM/2)
	s.draw(g, b)
	at := sheet.Pt(b.Max.X+2*sheet.MM, b.Centre().Y)
	g.Add(sheet.Text{
		Lettering: sheet.LetterSmall, At: at, Level: sheet.OnHalf,
		Words: font.Fit(sheet.LetterSmall, s.meaning, in.Max.X-at.X),
	})
}

// hatchSymbols explains the zones.
func hatchSymbols() []legendSymbol {
	out := []legendSymbol{{"room to stand", func(g *sheet.Group, b sheet.Box) { g.Rect(sheet.PenThin, b.Inset(sheet.MM/2)) }}}
	for _, h := range []sheet.Hatch{sheet.HatchCrawl, sheet.HatchReach, sheet.HatchRod} {
		out = append(out, legendSymbol{h.Style().Meaning, func(g *sheet.Group, b sheet.Box) {
			b = b.Inset(sheet.MM / 2)
			g.Rect(sheet.PenThin, b)
			g.Hatch(h, [][]sheet.Point{b.Corners()})
		}})
	}
	return out
}

// dropSymbols explains the symbols of the drops, which share their pens.
func (d *drawing) dropSymbols() []legendSymbol {
	var out []legendSymbol
	if len(d.res.Reused) > 0 {
		out = append(out, legendSymbol{"hole or conduit that is there and used", func(g *sheet.Group, b sheet.Box) {
			g.Rect(sheet.PenHole, around(b.Centre(), holeRadius))
		}})
	}
	if d.boresSoles() {
		out = append(out, soleSymbol)
	}
	return append(append(out, outletSymbols()...), legendSymbol{
		"3×: cables in the bundle; H4: hole 4; D1: drop 1", func(g *sheet.Group, b sheet.Box) {
			g.Text(sheet.LetterCableTag, sheet.Pt(b.Min.X, b.Max.Y-sheet.MM), sheet.Start, "3×")
			g.Text(sheet.LetterSmallTag, sheet.Pt(b.Min.X+8*sheet.MM, b.Max.Y-sheet.MM), sheet.Start, "H4")
		},
	})
}

// soleSymbol explains the hole through a bottom plate.
var soleSymbol = legendSymbol{"hole to drill, through a bottom plate and the floor", func(g *sheet.Group, b sheet.Box) {
	drawHoleAt(g, route.SoleArc, b.Centre())
}}

// boresSoles reports whether a bottom plate is bored in what is drawn.
func (d *drawing) boresSoles() bool {
	return slices.ContainsFunc(d.res.Holes, func(x route.Hole) bool {
		p := &d.res.Graph.Holes[x.Place]
		return p.Kind == route.SoleArc && (d.scope == everywhere || d.scope.hasHole(d.res.Job.House, p))
	})
}

// outletSymbols explains where cables end.
func outletSymbols() []legendSymbol {
	return []legendSymbol{
		{"wall plate (triangle after ANSI Y32.9)", func(g *sheet.Group, b sheet.Box) {
			g.Polygon(sheet.PenSolid, triangle(sheet.Pt(b.Centre().X, b.Max.Y), sheet.QuarterTurn))
		}},
		{"ceiling point", func(g *sheet.Group, b sheet.Box) {
			c, arm := b.Centre(), symbol*6/10
			g.Circle(sheet.PenDevice, c, symbol*8/10)
			g.Line(sheet.PenMedium, sheet.Pt(c.X-arm, c.Y-arm), sheet.Pt(c.X+arm, c.Y+arm))
			g.Line(sheet.PenMedium, sheet.Pt(c.X-arm, c.Y+arm), sheet.Pt(c.X+arm, c.Y-arm))
		}},
		{"spot under the eave", func(g *sheet.Group, b sheet.Box) {
			box := sheet.BoxAround(b.Centre(), 8*symbol/5, 8*symbol/5)
			g.Rect(sheet.PenDevice, box)
			g.Line(sheet.PenMedium, box.Min, box.Max)
		}},
	}
}

// cautions writes the job's cautions: in full if there is room, else the first
// sentence of as many as there is room for and the titles of the others. None
// is left out.
func (p *page) cautions() {
	p.keep = 0
	p.heading("Cautions")
	var full, brief, titles []string
	for _, id := range p.res.Cautions {
		if rl, ok := rule.Lookup(id); ok {
			full = append(full, rl.Title+". "+rl.Text)
			brief = append(brief, rl.Title+". "+firstSentence(rl.Text))
			titles = append(titles, rl.Title+".")
		}
	}
	if p.paragraphs(full) || p.paragraphs(brief) {
		return
	}
	for n := len(brief) - 1; n > 0; n-- {
		rest := "In full in " + p.rest + ": " + strings.Join(titles[n:], " ")
		if p.paragraphs(append(slices.Clone(brief[:n]), rest)) {
			return
		}
	}
	p.paragraph(sheet.LetterSmall, leastCautions(titles, p.rest))
}

// leastCautions is what is printed if there is no room for more; rest is the file
// that has it.
func leastCautions(titles []string, rest string) string {
	return report.Deference + " In full in " + rest + ": " + strings.Join(titles, " ")
}

// keepForCautions keeps the foot of the column free for the least of them.
func (p *page) keepForCautions() {
	var titles []string
	for _, id := range p.res.Cautions {
		if rl, ok := rule.Lookup(id); ok {
			titles = append(titles, rl.Title+".")
		}
	}
	p.keep = p.paragraphHeight(sheet.LetterSmall, leastCautions(titles, p.rest)) + 3*sheet.MM + font.LineHeight(sheet.LetterHeading)
}

// paragraphs writes texts and who has the last word, if there is room for all
// of them.
func (p *page) paragraphs(texts []string) bool {
	texts = append(slices.Clone(texts), report.Deference)
	var need sheet.Paper
	for _, t := range texts {
		need += p.paragraphHeight(sheet.LetterSmall, t)
	}
	if p.next+need > p.foot() {
		return false
	}
	for _, t := range texts {
		p.paragraph(sheet.LetterSmall, t)
	}
	return true
}

// firstSentence is a text up to its first full stop before a space.
func firstSentence(text string) string {
	first, _, ok := strings.Cut(text, ". ")
	if !ok {
		return text
	}
	return first + "."
}

// scaleHeight is the room for the scale bar and the north arrow over the title
// block.
const scaleHeight = 24 * sheet.MM

// scaleBar draws a bar of round length at the foot of the column, with the
// scale's name, and, beside a plan, an arrow to true north.
func (d *drawing) scaleBar(north bool) {
	box := sheet.Box{Min: sheet.Pt(d.side.Min.X, d.side.Max.Y-scaleHeight), Max: d.side.Max}
	d.side.Max.Y = box.Min.Y
	g := d.sheet.Group("scale", "scale", "Scale "+d.view.Scale.Name)
	g.Line(sheet.PenRule, box.Min, sheet.Pt(box.Max.X, box.Min.Y))
	step, names := barSteps(d.res.Job.House.Units, d.view.Scale)
	x, y := box.Min.X+padding+2*sheet.MM, box.Min.Y+12*sheet.MM
	const height = 1500 * sheet.Micrometre
	w := d.view.Length(step)
	for i := range len(names) - 1 {
		pen := sheet.PenDevice
		if i%2 == 0 {
			pen = sheet.PenSolid
		}
		g.Rect(pen, sheet.Bx(x+sheet.Paper(i)*w, y, w, height))
	}
	for i, n := range names {
		g.Text(sheet.LetterSmall, sheet.Pt(x+sheet.Paper(i)*w, y+height+3*sheet.MM), sheet.Middle, n)
	}
	g.Text(sheet.LetterNote, sheet.Pt(x, y-4*sheet.MM), sheet.Start, "Scale "+d.view.Scale.Name)
	if north {
		d.northArrow(sheet.Pt(box.Max.X-13*sheet.MM, box.Min.Y+13*sheet.MM))
	}
}

// northArrow draws an arrow to true north.
func (d *drawing) northArrow(c sheet.Point) {
	turn := sheet.QuarterTurn + sheet.Angle(d.res.Job.House.North)*sheet.Degree
	g := d.sheet.Group("north", "north", "North arrow")
	const r = 5 * sheet.MM
	g.Circle(sheet.PenThin, c, r)
	g.Polygon(sheet.PenSolid, []sheet.Point{
		sheet.Polar(c, 7*sheet.MM, turn), sheet.Polar(c, r, turn+150*sheet.Degree), c, sheet.Polar(c, r, turn-150*sheet.Degree),
	})
	g.Add(sheet.Text{Lettering: sheet.LetterTag, At: sheet.Polar(c, 19*sheet.MM/2, turn), Align: sheet.Middle, Level: sheet.OnHalf, Words: "N"})
}
