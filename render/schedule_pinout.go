package render

import (
	"fmt"

	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// A pinOut is the order of the conductors at a plug or jack: by pin, from 1.
type pinOut struct {
	name string
	pins [8]conductor
}

// A conductor is one of the eight of a cable.
type conductor struct {
	pair    int
	colour  string
	striped bool // white with stripes of the colour
}

// pinOutTable has the two orders of ANSI/TIA-568, as two public tables of
// pin-outs have them.
var pinOutTable = [2]pinOut{
	{"T568A", [8]conductor{
		{3, "green", true},
		{3, "green", false},
		{2, "orange", true},
		{1, "blue", false},
		{1, "blue", true},
		{2, "orange", false},
		{4, "brown", true},
		{4, "brown", false},
	}},
	{"T568B", [8]conductor{
		{2, "orange", true},
		{2, "orange", false},
		{3, "green", true},
		{1, "blue", false},
		{1, "blue", true},
		{3, "green", false},
		{4, "brown", true},
		{4, "brown", false},
	}},
}

// pinNotes say how pins are counted and what goes wrong (the way to hold a
// plug, and a jack from the way a plug goes in). Pairs may be untwisted by 13 mm
// (ANSI/TIA-568.2-D, as a university's wiring guide quotes it).
func pinNotes(u measure.System) []string {
	untwist := "13 mm"
	if u == measure.Imperial {
		untwist = "1/2in"
	}
	return []string{
		"The same order at both ends of every cable. Tick the one that this house has.",
		"Plug: contacts up and away from you, latch below, cable towards you; pin 1 is on the left.",
		"Jack: looking into it with the notch for the latch below, pin 1 is on the left. At the back follow the marks of the jack.",
		"Untwist no more than " + untwist + ". Tell brown from orange and from green by its pair, not by its shade: each solid conductor is twisted with the striped one of its pair.",
	}
}

// pinOuts draws both orders side by side.
func pinOuts(u measure.System, width sheet.Paper) *listing {
	const rowHeight = 6 * sheet.MM
	height := rowHeight*9 + 2*sheet.MM
	return &listing{
		id: "pin-outs", title: "Order of the conductors, by pin", intro: pinNotes(u),
		figure: []strip{{height: height, draw: func(g *sheet.Group, at sheet.Point) {
			for i := range pinOutTable {
				drawPinOut(g, at.Add(sheet.Pt(sheet.Paper(i)*width/2, 0)), &pinOutTable[i], rowHeight)
			}
		}}},
	}
}

// Sizes of a drawn order.
const (
	pinNumber    = 9 * sheet.MM
	pinBar       = 30 * sheet.MM
	pinBarHeight = 4 * sheet.MM
	pinStripes   = 5
)

// drawPinOut draws one order: pin, the conductor as a bar, its name and pair.
func drawPinOut(g *sheet.Group, at sheet.Point, p *pinOut, rowHeight sheet.Paper) {
	g = g.Group(sheet.ID("pins", p.name), "pins", p.name)
	middle := at.Y + rowHeight/2
	g.Rect(sheet.PenMedium, tickBox(sheet.Pt(at.X, middle), sheet.LetterHeading.Style().Height))
	g.Add(sheet.Text{Lettering: sheet.LetterHeading, At: sheet.Pt(at.X+pinNumber, middle), Level: sheet.OnHalf, Words: p.name})
	for i, c := range p.pins {
		middle += rowHeight
		write := func(l sheet.Lettering, x sheet.Paper, words string) sheet.Paper {
			g.Add(sheet.Text{Lettering: l, At: sheet.Pt(x, middle), Level: sheet.OnHalf, Words: words})
			return x + font.Width(l, words)
		}
		write(sheet.LetterHeading, at.X, fmt.Sprint(i+1))
		drawConductor(g, sheet.Bx(at.X+pinNumber, middle-pinBarHeight/2, pinBar, pinBarHeight), c.striped)
		x := write(sheet.LetterTag, at.X+pinNumber+pinBar+2*sheet.MM, c.words())
		write(sheet.LetterNote, x+2*sheet.MM, fmt.Sprintf("pair %d", c.pair))
	}
}

// words name a conductor.
func (c conductor) words() string {
	if c.striped {
		return "white, " + c.colour + " stripes"
	}
	return c.colour
}

// drawConductor draws a bar: filled, or white with slanting stripes.
func drawConductor(g *sheet.Group, b sheet.Box, striped bool) {
	if !striped {
		g.Rect(sheet.PenSolid, b)
		return
	}
	step := b.Width() / pinStripes
	for i := range sheet.Paper(pinStripes) {
		x := b.Min.X + i*step + step/4
		g.Polygon(sheet.PenSolid, []sheet.Point{
			sheet.Pt(x, b.Max.Y), sheet.Pt(x+step/3, b.Max.Y), sheet.Pt(x+step*2/3, b.Min.Y), sheet.Pt(x+step/3, b.Min.Y),
		})
	}
	g.Polyline(sheet.PenMedium, append(b.Corners(), b.Min)...)
}
