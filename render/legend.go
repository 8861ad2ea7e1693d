package render

import (
	"topplate/plan/rule"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
)

// legend explains the pens and symbols that the sheet uses, from the same
// table they are drawn from.
func (d *drawing) legend(symbols ...legendSymbol) {
	d.heading("Legend")
	const sample = 14 * sheet.MM
	for _, pen := range d.sheet.Pens() {
		if s := pen.Style(); s.Meaning != "" {
			d.legendRow(s.Meaning, func(g *sheet.Group, b sheet.Box) {
				if s.Fill != sheet.NoColour {
					g.Rect(pen, b.Inset(sheet.MM/2))
					return
				}
				g.Line(pen, sheet.Pt(b.Min.X, b.Centre().Y), sheet.Pt(b.Max.X, b.Centre().Y))
			}, sample)
		}
	}
	for _, s := range symbols {
		d.legendRow(s.meaning, s.draw, sample)
	}
}

// A legendSymbol is a symbol that a legend explains.
type legendSymbol struct {
	meaning string
	draw    func(g *sheet.Group, b sheet.Box)
}

// legendRow draws a sample in the column with its meaning beside it.
func (d *drawing) legendRow(meaning string, draw func(g *sheet.Group, b sheet.Box), width sheet.Paper) {
	h := 4400 * sheet.Micrometre
	if d.next+h > d.side.Max.Y-padding {
		return
	}
	b := sheet.Bx(d.side.Min.X+padding, d.next+sheet.MM/2, width, h-sheet.MM/2)
	d.next += h
	draw(d.text, b)
	at := sheet.Pt(b.Max.X+2*sheet.MM, b.Centre().Y)
	d.text.Add(sheet.Text{
		Lettering: sheet.LetterSmall, At: at, Level: sheet.OnHalf,
		Words: font.Fit(sheet.LetterSmall, meaning, d.side.Max.X-padding-at.X),
	})
}

// hatchSymbols explains the zones.
func hatchSymbols() []legendSymbol {
	var out []legendSymbol
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
		{"3×: cables in the bundle; H4: hole 4; D1: drop 1", func(g *sheet.Group, b sheet.Box) {
			g.Text(sheet.LetterCableTag, sheet.Pt(b.Min.X, b.Max.Y-sheet.MM), sheet.Start, "3×")
			g.Text(sheet.LetterSmallTag, sheet.Pt(b.Min.X+8*sheet.MM, b.Max.Y-sheet.MM), sheet.Start, "H4")
		}},
	}
}

// cautions writes the job's cautions.
func (p *page) cautions() {
	p.heading("Cautions")
	for _, id := range p.res.Cautions {
		if rl, ok := rule.Lookup(id); ok {
			p.paragraph(sheet.LetterSmall, rl.Title+". "+rl.Text)
		}
	}
	p.paragraph(sheet.LetterSmall, report.Deference)
}

// scaleHeight is the room for the scale bar and the north arrow over the title
// block.
const scaleHeight = 24 * sheet.MM

// scaleBar draws a bar of round length at the foot of the column, with the
// scale's name, and an arrow to true north beside it.
func (d *drawing) scaleBar() {
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
	d.northArrow(sheet.Pt(box.Max.X-13*sheet.MM, box.Min.Y+13*sheet.MM))
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
	g.Add(sheet.Text{Lettering: sheet.LetterTag, At: sheet.Polar(c, 9*sheet.MM, turn), Align: sheet.Middle, Level: sheet.OnHalf, Words: "N"})
}
