package render

import (
	"strconv"

	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// The columns of the table of openings, and the share of its width that each
// takes, in thousandths.
var openingColumns = [...]struct {
	head  string
	share sheet.Paper
}{
	{"No.", 38}, {"Room", 104}, {"What for", 158}, {"Where it is", 262}, {"How large", 140}, {"What is put over it", 138}, {"Is it closed again?", 160},
}

// Measures of that table: the room between cells and over and under the words
// of a row, and the most lines that a cell may take, so that a row always fits
// on a sheet.
const (
	cellGap   = 2 * sheet.MM
	rowRoom   = 1500 * sheet.Micrometre
	mostLines = 6
)

// An openingRow is a row of the table, broken into lines.
type openingRow struct {
	number int
	cells  [][]string // without the number
	first  bool       // of its room
}

// openingRows sets the rows of the table for a width.
func openingRows(list []opened, roomName func(int) string, width sheet.Paper) []openingRow {
	rows := make([]openingRow, 0, len(list))
	for i := range list {
		o := &list[i]
		r := openingRow{number: o.number, first: i == 0 || list[i-1].room != o.room}
		for j, words := range []string{roomName(o.room), o.purpose, o.where, o.size, o.cover, o.after} {
			r.cells = append(r.cells, cellLines(words, width*openingColumns[j+1].share/1000-cellGap))
		}
		rows = append(rows, r)
	}
	return rows
}

// cellLines breaks words for a cell, and cuts them where they are too many.
func cellLines(words string, width sheet.Paper) []string {
	lines := font.Wrap(sheet.LetterNote, words, width)
	if len(lines) > mostLines {
		lines = lines[:mostLines]
		lines[mostLines-1] = font.Fit(sheet.LetterNote, lines[mostLines-1]+" … … …", width)
	}
	return lines
}

// height is that of the row, a ring at least.
func (r *openingRow) height() sheet.Paper {
	most := 1
	for _, c := range r.cells {
		most = max(most, len(c))
	}
	return max(sheet.Paper(most)*font.LineHeight(sheet.LetterNote), 2*ringRadius-rowRoom) + 2*rowRoom
}

// headHeight is that of the table's head.
var headHeight = font.LineHeight(sheet.LetterTag) + 2*rowRoom

func rowsHeight(rows []openingRow) sheet.Paper {
	h := headHeight
	for i := range rows {
		h += rows[i].height()
	}
	return h
}

// fitting is the number of rows that a height takes, under the table's head.
func fitting(rows []openingRow, height sheet.Paper) int {
	for n := range rows {
		if rowsHeight(rows[:n+1]) > height {
			return n
		}
	}
	return len(rows)
}

// drawOpeningRows draws the table from the top of a box down.
func drawOpeningRows(s *sheet.Sheet, rows []openingRow, box sheet.Box) {
	g := s.Group("table", "table", "Table of openings")
	y := box.Min.Y
	g.Line(sheet.PenBorder, sheet.Pt(box.Min.X, y), sheet.Pt(box.Max.X, y))
	x := box.Min.X
	for _, c := range openingColumns {
		w := box.Width() * c.share / 1000
		g.Text(sheet.LetterTag, sheet.Pt(x+cellGap, y+headHeight-rowRoom-sheet.MM/2), sheet.Start, font.Fit(sheet.LetterTag, c.head, w-cellGap))
		x += w
	}
	y += headHeight
	for i := range rows {
		r := &rows[i]
		left := box.Min.X + box.Width()*(openingColumns[0].share+openingColumns[1].share)/1000
		pen := sheet.PenThin
		if r.first || i == 0 {
			left, pen = box.Min.X, sheet.PenMedium
		}
		g.Line(pen, sheet.Pt(left, y), sheet.Pt(box.Max.X, y))
		r.draw(g, sheet.Bx(box.Min.X, y, box.Width(), r.height()), r.first || i == 0)
		y += r.height()
	}
	g.Line(sheet.PenMedium, sheet.Pt(box.Min.X, y), sheet.Pt(box.Max.X, y))
}

// draw draws one row. The room is named where it begins, and at the top of a
// sheet.
func (r *openingRow) draw(table *sheet.Group, box sheet.Box, named bool) {
	number := strconv.Itoa(r.number)
	g := table.Group(sheet.ID("row", number), "row", "Opening "+number)
	x := box.Min.X + box.Width()*openingColumns[0].share/1000
	drawRing(g, sheet.Pt(box.Min.X+cellGap+ringRadius, box.Min.Y+rowRoom/2+ringRadius), number)
	for j, lines := range r.cells {
		l, y := sheet.LetterNote, box.Min.Y+rowRoom-sheet.MM/2
		for _, words := range lines {
			y += font.LineHeight(l)
			if j > 0 || named {
				g.Text(l, sheet.Pt(x+cellGap, y), sheet.Start, words)
			}
		}
		x += box.Width() * openingColumns[j+1].share / 1000
	}
}

// coarsest is the smallest scale at which the plan may share its sheet with the
// whole table: rooms still hold their names (common practice, no source).
func coarsest(u measure.System) int64 {
	if u == measure.Metric {
		return 100
	}
	return 96
}
