package render

import (
	"fmt"
	"strings"

	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route/compare"
)

// Sizes of the tables of the sheet that compares two plans.
const (
	figureNames = 62 * sheet.MM
	termNames   = 76 * sheet.MM
	mostTerms   = 12            // rows of the cost that there is room for
	headingRoom = 18 * sheet.MM // below which no new part is begun in the column
)

// compareTables writes the figures and the terms of the cost beside each other
// at the foot of the drawing area, and returns how far down there is room left.
func (d *drawing) compareTables(diff *compare.Difference) sheet.Paper {
	figures, terms := report.CompareFigures(diff), changedTerms(diff)
	rows := sheet.Paper(max(len(figures), len(terms)))
	line := font.LineHeight(sheet.LetterNote) + sheet.MM/2
	height := rows*line + 6*sheet.MM
	box := d.area
	box.Min.Y = box.Max.Y - height
	g := d.sheet.Group("figures", "figures", "Figures of the plans")
	g.Line(sheet.PenRule, box.Min, sheet.Pt(box.Max.X, box.Min.Y))
	half := box.Width() / 2
	for i, rows := range [][][]string{figures, terms} {
		part := sheet.Bx(box.Min.X+half*sheet.Paper(i), box.Min.Y, half, height)
		compareTable(g, part, [2]sheet.Paper{figureNames, termNames}[i], line, rows)
	}
	return box.Min.Y
}

// changedTerms are the terms of the cost that are not the same, as far as there
// is room, and the total; the rest is told by how many they are.
func changedTerms(diff *compare.Difference) [][]string {
	all := report.CompareTerms(diff)
	rows := [][]string{{"what the cost is made of", "A", "B", "B less A"}}
	same, more := 0, 0
	for i, f := range diff.Terms {
		switch {
		case f.Change() == 0 && diff.OneCurrency():
			same++
		case len(rows) > mostTerms:
			more++
		default:
			rows = append(rows, all[i+1])
		}
	}
	if more > 0 {
		rows = append(rows, []string{fmt.Sprintf("%d more that changed", more)})
	}
	if same > 0 {
		rows = append(rows, []string{fmt.Sprintf("%d more that are the same", same)})
	}
	return append(rows, all[len(diff.Terms)+1:]...)
}

// compareTable writes rows whose first cell is a name, in a column of its own
// width, and whose others are numbers that end in line.
func compareTable(g *sheet.Group, box sheet.Box, names, line sheet.Paper, rows [][]string) {
	width := (box.Width() - names - 2*padding) / 3
	y := box.Min.Y + sheet.MM
	for i, row := range rows {
		l := sheet.LetterNote
		if i == 0 {
			l = sheet.LetterTag
		}
		y += line
		room := names
		if len(row) == 1 {
			room = box.Width() - 2*padding
		}
		x := box.Min.X + padding
		g.Text(l, sheet.Pt(x, y), sheet.Start, font.Fit(l, row[0], room-2*sheet.MM))
		for j, cell := range row[1:] {
			end := x + names + width*sheet.Paper(j+1)
			g.Text(l, sheet.Pt(end, y), sheet.End, font.Fit(l, cell, width-2*sheet.MM))
		}
	}
}

// compareLegend explains the pens and rings of this sheet, as far as they are
// on it.
func (d *drawing) compareLegend(diff *compare.Difference) {
	d.heading("Legend")
	line := func(meaning string, pen sheet.Pen) {
		d.legendRow(meaning, func(g *sheet.Group, b sheet.Box) {
			g.Line(pen, sheet.Pt(b.Min.X, b.Centre().Y), sheet.Pt(b.Max.X, b.Centre().Y))
		})
	}
	line("cable, drop or thing only in A", penOnlyA)
	line("cable, drop or thing only in B", penOnlyB)
	line("cable in both", penBoth)
	line("thing of the house that changed or moved", sheet.PenAbove)
	d.legendRow("hole only in A (with its number in A)", func(g *sheet.Group, b sheet.Box) { drawSample(g, penHoleOnly[0], b) })
	d.legendRow("hole only in B (with its number in B)", func(g *sheet.Group, b sheet.Box) { drawSample(g, penHoleOnly[1], b) })
	d.legendRow("hole in both; with a second ring: changed", func(g *sheet.Group, b sheet.Box) {
		c := b.Centre()
		left, right := sheet.Pt(c.X-3*sheet.MM, c.Y), sheet.Pt(c.X+3*sheet.MM, c.Y)
		g.Circle(sheet.PenThin, left, holeRadius)
		g.Circle(sheet.PenThin, right, 3*holeRadius/2)
		g.Circle(sheet.PenThin, right, holeRadius)
	})
	d.legendRow("ring around a drop that moved or changed", func(g *sheet.Group, b sheet.Box) {
		g.Circle(sheet.PenMedium, b.Centre(), b.Height()/2)
	})
	for _, s := range d.dropSymbols()[:3] {
		d.legendRow(s.meaning, s.draw)
	}
	for _, pen := range []sheet.Pen{sheet.PenWallBelow, sheet.PenEave} {
		line(pen.Style().Meaning, pen)
	}
}

// changes lists what changed, as far as the column has room, and how many lines
// are left out. Which legs are not the same is drawn and not written.
func (d *drawing) changes(diff *compare.Difference) {
	parts := report.Compared(diff)
	if len(parts) == 0 {
		d.heading("What changed")
		if diff.Same() {
			d.paragraph(sheet.LetterSmall, report.NothingChanged)
		}
		return
	}
	left := 0
	room := func(l string) bool {
		return d.next+d.paragraphHeight(sheet.LetterSmall, l)+2*font.LineHeight(sheet.LetterSmall) <= d.foot()
	}
	for _, part := range parts {
		headed := false
		for _, l := range part.Lines {
			switch {
			case strings.HasPrefix(l, report.DetailIndent):
				continue
			case left > 0 || !room(l) || !headed && d.next+headingRoom > d.foot():
				left++
				continue
			case !headed:
				d.heading(part.Title)
				headed = true
			}
			d.paragraph(sheet.LetterSmall, l)
		}
	}
	if left > 0 {
		d.line(sheet.LetterSmall, 0, fmt.Sprintf("left out here: %d, in what topplate compare prints", left))
	}
}
