package render

import (
	"strconv"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
)

// A columnKind says what is in the cells of a column.
type columnKind uint8

const (
	toRead  columnKind = iota
	toTick             // a box
	toFill             // a line to write on
	toCount            // as many boxes as the cell says
)

// A column is a column of a table. Cells may have several paragraphs, one to a
// line of the string.
type column struct {
	head      string
	lettering sheet.Lettering
	kind      columnKind
	align     sheet.Align // Start or End
	whole     bool        // cells stay on one line if there is room at all
	width     sheet.Paper // given for what is not read, chosen for what is
	each      bool        // where the things to tick of a row about several stand
}

// Sizes of tables. Columns are kept apart by more than the slack of a text's
// box on either side.
const (
	columnGap  = 3 * sheet.MM
	narrowest  = 5 * sheet.MM
	tickWidth  = 4 * sheet.MM
	hanging    = 2500 * sheet.Micrometre // lines after the first, where a cell has paragraphs
	writeWidth = 26 * sheet.MM
	cellPad    = 1200 * sheet.Micrometre
	stepPad    = 900 * sheet.Micrometre // of one of large letters
	densePad   = 600 * sheet.Micrometre // of a list of many rows
)

// indentOf is how far the lines of a cell hang behind the first one of their
// paragraph.
func indentOf(cell string) sheet.Paper {
	if strings.Contains(cell, "\n") {
		return hanging
	}
	return 0
}

// A cellLine is one line of a cell.
type cellLine struct {
	indent sheet.Paper
	words  string
	ticked []boxed // instead of words
	number string  // before what is ticked
}

// brokenCell breaks a cell into lines.
func brokenCell(l sheet.Lettering, cell string, width sheet.Paper) []cellLine {
	var out []cellLine
	hang := indentOf(cell)
	for text := range strings.SplitSeq(cell, "\n") {
		for i, words := range font.Wrap(l, text, width-hang) {
			out = append(out, cellLine{indent: hang * min(sheet.Paper(i), 1), words: words})
		}
	}
	return out
}

// A row is a row of a table, broken into lines.
type row struct {
	columns []column
	lines   [][]cellLine // by column
	marked  bool         // boxes to tick and lines to write on are drawn
	several bool         // boxes to tick are in a cell
	loose   bool         // there is more than one of them
	ruled   bool         // a line below
	counts  []int        // of boxes, by column
	pad     sheet.Paper  // above and below the lines
}

// newRow breaks the cells of a row into lines.
func newRow(columns []column, cells []string) row {
	r := row{columns: columns, lines: make([][]cellLine, len(columns)), counts: make([]int, len(columns)), marked: true, ruled: true, pad: cellPad}
	for i, c := range columns {
		switch c.kind {
		case toRead:
			r.lines[i] = brokenCell(c.lettering, cells[i], c.width)
		case toCount:
			r.counts[i], _ = strconv.Atoi(cells[i])
		}
	}
	return r
}

// headRow is the row of the heads.
func headRow(columns []column) row {
	heads := make([]column, len(columns))
	r := row{lines: make([][]cellLine, len(columns)), pad: cellPad}
	for i, c := range columns {
		c.kind, c.lettering = toRead, letterHead
		heads[i] = c
		r.lines[i] = brokenCell(c.lettering, c.head, c.width)
	}
	r.columns = heads
	return r
}

// capital is the height of the tallest capitals, on whose baseline the first
// line of every cell stands.
func (r *row) capital() sheet.Paper {
	var h sheet.Paper
	for i := range r.columns {
		if c := &r.columns[i]; c.kind == toRead {
			h = max(h, c.lettering.Style().Height)
		}
	}
	return h
}

// below is what a column with n lines takes below the first baseline.
func below(c *column, n int) sheet.Paper {
	if n == 0 {
		return 0
	}
	return sheet.Paper(n-1)*font.LineHeight(c.lettering) + font.Drop(c.lettering)
}

func (r *row) above() sheet.Paper { return r.pad + r.capital() }

func (r *row) height() sheet.Paper {
	var h sheet.Paper
	for i := range r.columns {
		h = max(h, below(&r.columns[i], len(r.lines[i])))
	}
	return r.above() + h + r.pad
}

// strip makes the row a strip.
func (r row) strip() strip {
	return strip{height: r.height(), draw: r.draw, loose: r.loose, split: func(room sheet.Paper) (strip, strip) {
		first, rest := r.split(room)
		return first.strip(), rest.strip()
	}}
}

// split cuts a row between lines: the first part takes as many of each cell as
// fit in the room, one at least.
func (r *row) split(room sheet.Paper) (first, rest row) {
	first, rest = *r, *r
	rest.marked, first.ruled = false, false
	first.lines, rest.lines = nil, nil
	for i, all := range r.lines {
		c := &r.columns[i]
		n := min(1, len(all))
		for n < len(all) && r.above()+below(c, n+1)+r.pad <= room {
			n++
		}
		n = atThing(all, n)
		first.lines = append(first.lines, all[:n])
		rest.lines = append(rest.lines, all[n:])
	}
	return first, rest
}

// atThing is where to split lines so that the rest begins with a thing to tick,
// at n or before it: at n if there is no such place.
func atThing(lines []cellLine, n int) int {
	for k := n; k > 0 && k < len(lines); k-- {
		if t := lines[k].ticked; len(t) > 0 && t[0].boxes > 0 {
			return k
		}
	}
	return n
}

// draw draws the row with its top left corner at a point.
func (r row) draw(g *sheet.Group, at sheet.Point) {
	x, base := at.X, at.Y+r.above()
	for i := range r.columns {
		c := &r.columns[i]
		switch {
		case c.kind == toTick && r.marked && !r.several:
			g.Rect(sheet.PenMedium, tickBox(sheet.Pt(x, base-r.capital()/2), r.capital()))
		case c.kind == toCount && r.marked:
			drawTicked(g, c.lettering, sheet.Pt(x, base), []boxed{{boxes: r.counts[i]}})
		case c.kind == toFill && r.marked:
			g.Line(sheet.PenRule, sheet.Pt(x, base+sheet.MM), sheet.Pt(x+c.width, base+sheet.MM))
		}
		for n, line := range r.lines[i] {
			p := sheet.Pt(x+line.indent, base+sheet.Paper(n)*font.LineHeight(c.lettering))
			if line.number != "" {
				g.Text(sheet.LetterTag, p, sheet.Start, line.number)
			}
			if line.ticked != nil {
				drawTicked(g, c.lettering, p, line.ticked)
				continue
			}
			if c.align == sheet.End {
				p.X = x + c.width
			}
			g.Text(c.lettering, p, c.align, line.words)
		}
		x += c.width + columnGap
	}
	if foot := at.Y + r.height(); r.ruled {
		g.Line(sheet.PenZone, sheet.Pt(at.X, foot), sheet.Pt(x-columnGap, foot))
	}
}

// tickBox is a box to tick with the middle of its left side at a point, beside
// letters with capitals of this height.
func tickBox(at sheet.Point, capital sheet.Paper) sheet.Box {
	size := min(tickWidth, capital*2/3+1700*sheet.Micrometre)
	return sheet.Bx(at.X, at.Y-size/2, size, size)
}
