package render

import (
	"math"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
)

// A columnKind says what is in the cells of a column.
type columnKind uint8

const (
	toRead columnKind = iota
	toTick            // a box
	toFill            // a line to write on
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
)

// fitColumns chooses the widths of the columns that are read from what is in
// them. If all cells fit on one line, they get that; else the widths make the
// sum of the squares of the cells' heights least, which keeps the tallest cell
// of each row low.
//
// A cell with a text of length W in a column of width w is about W/w lines of
// height h tall. The least sum of (W h / w)² at a given sum of widths has w in
// proportion to the cube root of the column's sum of (W h)², by Lagrange's
// multiplier. No column gets less than its widest word or more than its widest
// cell.
func fitColumns(columns []column, rows [][]string, width sheet.Paper) {
	room := width - columnGap*sheet.Paper(len(columns)-1)
	var read []int
	for i := range columns {
		if columns[i].kind == toRead {
			read = append(read, i)
		} else {
			room -= columns[i].width
		}
	}
	least, most, share := make([]sheet.Paper, len(read)), make([]sheet.Paper, len(read)), make([]float64, len(read))
	for k, i := range read {
		least[k], most[k], share[k] = needs(&columns[i], i, rows, room)
	}
	level := leveled(least, room)
	for k := range least {
		least[k] = min(least[k], level)
		most[k] = max(most[k], least[k])
	}
	for k, w := range shared(least, most, share, room) {
		columns[read[k]].width = w
		room -= w
	}
	widen(columns, max(room, 0))
}

// widen gives what is left over to the columns that are written in, or else to
// those of running text.
func widen(columns []column, over sheet.Paper) {
	var write, text []int
	for i := range columns {
		switch c := &columns[i]; {
		case c.kind == toFill:
			write = append(write, i)
		case c.kind == toRead && !c.whole:
			text = append(text, i)
		}
	}
	if write == nil {
		write = text
	}
	for _, i := range write {
		columns[i].width += over / sheet.Paper(len(write))
	}
}

// needs returns the widest word of a column and its widest line, and the cube
// root of the sum of the squares of its areas.
func needs(c *column, i int, rows [][]string, room sheet.Paper) (least, most sheet.Paper, share float64) {
	for word := range strings.FieldsSeq(c.head) {
		least = max(least, font.Width(letterHead, word))
	}
	most, least = font.Width(letterHead, c.head), min(least, room/3)
	sum := 0.0
	for _, row := range rows {
		area := 0.0
		for text := range strings.SplitSeq(row[i], "\n") {
			w := font.Width(c.lettering, text) + indentOf(row[i])
			most = max(most, w)
			area += float64(w) * float64(font.LineHeight(c.lettering))
			if c.whole {
				least = max(least, min(w, room/2))
				continue
			}
			for word := range strings.SplitSeq(font.Plain(text), " ") {
				least = max(least, min(font.Width(c.lettering, word)+indentOf(row[i]), room/3))
			}
		}
		sum += area * area
	}
	return max(least, narrowest), max(most, narrowest), math.Cbrt(sum)
}

// leveled is the height at which widths must be cut off to fit in the room
// together.
func leveled(widths []sheet.Paper, room sheet.Paper) sheet.Paper {
	return most(room, func(level sheet.Paper) bool {
		var sum sheet.Paper
		for _, w := range widths {
			sum += min(w, level)
		}
		return sum <= room
	})
}

// most is the largest number up to a limit for which a property holds that
// holds for all smaller ones, zero included.
func most(limit sheet.Paper, holds func(sheet.Paper) bool) sheet.Paper {
	lo, hi := sheet.Paper(0), max(limit, 0)
	for lo < hi {
		if mid := (lo + hi + 1) / 2; holds(mid) {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}

// shared divides the room in proportion to the shares, between bounds that fit
// in it.
func shared(least, upper []sheet.Paper, share []float64, room sheet.Paper) []sheet.Paper {
	at := func(k sheet.Paper) (widths []sheet.Paper, sum sheet.Paper) {
		for i := range share {
			w := max(least[i], min(upper[i], sheet.Paper(share[i]*float64(k)/float64(scaleOfShares))))
			widths = append(widths, w)
			sum += w
		}
		return widths, sum
	}
	k := most(scaleOfShares*1000, func(k sheet.Paper) bool {
		_, sum := at(k)
		return sum <= room
	})
	widths, _ := at(k)
	return widths
}

// scaleOfShares is the fineness at which shares are scaled.
const scaleOfShares = 1_000_000

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
	ruled   bool         // a line below
}

// newRow breaks the cells of a row into lines.
func newRow(columns []column, cells []string) row {
	r := row{columns: columns, lines: make([][]cellLine, len(columns)), marked: true, ruled: true}
	for i, c := range columns {
		if c.kind == toRead {
			r.lines[i] = brokenCell(c.lettering, cells[i], c.width)
		}
	}
	return r
}

// headRow is the row of the heads.
func headRow(columns []column) row {
	heads := make([]column, len(columns))
	r := row{lines: make([][]cellLine, len(columns))}
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

func (r *row) above() sheet.Paper { return cellPad + r.capital() }

func (r *row) height() sheet.Paper {
	var h sheet.Paper
	for i := range r.columns {
		h = max(h, below(&r.columns[i], len(r.lines[i])))
	}
	return r.above() + h + cellPad
}

// strip makes the row a strip.
func (r row) strip() strip {
	return strip{height: r.height(), draw: r.draw, loose: r.several, split: func(room sheet.Paper) (strip, strip) {
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
		for n < len(all) && r.above()+below(c, n+1)+cellPad <= room {
			n++
		}
		first.lines = append(first.lines, all[:n])
		rest.lines = append(rest.lines, all[n:])
	}
	return first, rest
}

// draw draws the row with its top left corner at a point.
func (r row) draw(g *sheet.Group, at sheet.Point) {
	x, base := at.X, at.Y+r.above()
	for i := range r.columns {
		c := &r.columns[i]
		switch {
		case c.kind == toTick && r.marked && !r.several:
			g.Rect(sheet.PenMedium, tickBox(sheet.Pt(x, base-r.capital()/2), r.capital()))
		case c.kind == toFill && r.marked:
			g.Line(sheet.PenRule, sheet.Pt(x, base+sheet.MM), sheet.Pt(x+c.width, base+sheet.MM))
		}
		for n, line := range r.lines[i] {
			p := sheet.Pt(x+line.indent, base+sheet.Paper(n)*font.LineHeight(c.lettering))
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
