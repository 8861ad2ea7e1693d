package render

import (
	"slices"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
)

// Lists longer than this many rows have what is alike in one row (common
// practice, no source): about ten sheets of steps, or three of a table. A list
// of more than longHoles holes has smaller letters, one of more than longRows
// rows less space between them, and one of more than manyLabels labels a row for
// each drop.
const (
	longHoles  = 30
	longRows   = 8
	longOrder  = 200
	longList   = 100
	manyLabels = 24
)

// ticks are words behind as many boxes to tick.
type ticks struct {
	boxes int
	words string
}

// once is things with a box each.
func once(words []string) []ticks {
	var out []ticks
	for _, w := range words {
		out = append(out, ticks{1, w})
	}
	return out
}

// eachGap is the space between things to tick in a cell.
const eachGap = 3 * sheet.MM

// eachBox is the size of a box in a line of letters, and eachPitch from one to
// the next.
func eachBox(l sheet.Lettering) sheet.Paper {
	return min(3*sheet.MM, font.LineHeight(l)-sheet.MM/2)
}

func eachPitch(l sheet.Lettering) sheet.Paper { return eachBox(l) + sheet.MM }

// tickEach puts things to tick behind the words of the column that takes them,
// instead of the row's own box. All of it flows over the lines of the cell, with
// a number before it if there is one; lines after the first hang behind it.
func (r *row) tickEach(number string, things []ticks) {
	r.several, r.loose = true, len(things) > 1
	for i := range r.columns {
		c := &r.columns[i]
		if !c.each {
			continue
		}
		f := flowing{column: c, alone: len(things) == 1}
		if number != "" {
			f.hang = hanging
			f.begin()
			f.out[0].number = number
			f.x = font.Width(sheet.LetterTag, number) + 2*sheet.MM
		}
		var words []string
		for _, l := range r.lines[i] {
			words = append(words, l.words)
		}
		if all := strings.Join(words, " "); all != "" {
			f.add(ticks{words: all})
		}
		for _, t := range things {
			f.add(t)
		}
		r.lines[i] = f.out
	}
}

// A boxed is a thing to tick with its place on a line.
type boxed struct {
	along, room sheet.Paper // of the boxes, and from there to the words
	boxes       int
	words       string
}

// flowing breaks things into lines, one behind the other.
type flowing struct {
	column *column
	hang   sheet.Paper // of lines after the first
	alone  bool        // there is one thing, whose lines need not stand behind its box
	out    []cellLine
	x      sheet.Paper // how far the last line is filled
}

// begin begins a line.
func (f *flowing) begin() {
	f.x = 0
	if len(f.out) > 0 {
		f.x = f.hang
	}
	f.out = append(f.out, cellLine{})
}

// add puts a thing behind the last one. What fits on one line begins a line if
// this one has no room for it; what is longer begins here, if half of the line
// is left.
func (f *flowing) add(t ticks) {
	l := f.column.lettering
	room := sheet.Paper(0)
	if t.boxes > 0 {
		room = eachPitch(l)*sheet.Paper(t.boxes) + sheet.MM/2
	}
	words := font.Clean(l.Style().Face, glued(t.words))
	behind := room
	if f.alone {
		behind = 0
	}
	whole := max(f.column.width-f.hang-behind, narrowest)
	put := func(words string) {
		last := &f.out[len(f.out)-1]
		last.ticked = append(last.ticked, boxed{f.x, room, t.boxes, words})
		f.x += room + font.Width(l, words) + eachGap
		t.boxes, room = 0, behind
	}
	need := font.Width(l, words)
	if f.alone && (len(f.out) == 0 || f.column.width-f.x-room < min(need, f.column.width/2)) {
		f.begin()
	}
	left := f.column.width - f.x - room
	switch {
	case len(f.out) == 0:
	case need <= left:
		put(words)
		return
	case f.alone || need > whole && left >= f.column.width/2:
		first := font.Wrap(l, words, left)[0]
		put(first)
		words = strings.TrimLeft(strings.TrimPrefix(words, first), " ")
	}
	for _, line := range font.Wrap(l, words, whole) {
		f.begin()
		put(line)
	}
}

func drawTicked(g *sheet.Group, l sheet.Lettering, at sheet.Point, line []boxed) {
	size, pitch := eachBox(l), eachPitch(l)
	for _, c := range line {
		x := at.X + c.along
		for k := range c.boxes {
			g.Rect(sheet.PenMedium, sheet.Bx(x+pitch*sheet.Paper(k), at.Y-size+sheet.MM/4, size, size))
		}
		if c.words != "" {
			g.Text(l, sheet.Pt(x+c.room, at.Y), sheet.Start, c.words)
		}
	}
}

// withTicks are the rows of a portion with what is to be ticked in its column,
// to fit widths to.
func withTicks(columns []column, p *portion) [][]string {
	at := slices.IndexFunc(columns, func(c column) bool { return c.each })
	if at < 0 || len(p.each) == 0 {
		return p.rows
	}
	var out [][]string
	for k, cells := range p.rows {
		row := slices.Clone(cells)
		for _, t := range p.each[k] {
			row[at] += " " + strings.Repeat("MM\u00A0", t.boxes) + glued(t.words)
		}
		out = append(out, row)
	}
	return out
}
