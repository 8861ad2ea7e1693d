package render

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route/cut"
	"topplate/route/tags"
	"topplate/route/work"
)

// Lists longer than this many rows have what is alike in one row (common
// practice, no source): about ten sheets of steps, or three of a table. A list
// of more than longHoles holes has smaller letters.
const (
	longHoles = 30
	longOrder = 200
	longList  = 100
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
const eachGap = 5 * sheet.MM

// eachBox is the size of a box in a line of letters, and eachPitch from one to
// the next.
func eachBox(l sheet.Lettering) sheet.Paper {
	return min(3*sheet.MM, font.LineHeight(l)-sheet.MM/2)
}

func eachPitch(l sheet.Lettering) sheet.Paper { return eachBox(l) + sheet.MM }

// tickEach puts things to tick below the words of the column that takes them,
// instead of the row's own box.
func (r *row) tickEach(things []ticks) {
	r.several = true
	for i := range r.columns {
		if c := &r.columns[i]; c.each {
			r.lines[i] = append(r.lines[i], tickedLines(c, things)...)
		}
	}
}

// A boxed is a thing to tick with its place on a line.
type boxed struct {
	along, room sheet.Paper // of the boxes, and from there to the words
	boxes       int
	words       string
}

// tickedLines breaks things to tick into lines. Words too long for a line go on
// in the next one.
func tickedLines(c *column, things []ticks) []cellLine {
	var out []cellLine
	x := c.width
	for _, t := range things {
		room := eachPitch(c.lettering)*sheet.Paper(t.boxes) + sheet.MM/2
		for i, words := range font.Wrap(c.lettering, glued(t.words), max(c.width-room, narrowest)) {
			need := room + font.Width(c.lettering, words)
			if x+need > c.width || i > 0 {
				out = append(out, cellLine{})
				x = 0
			}
			last := &out[len(out)-1]
			boxes := t.boxes
			if i > 0 {
				boxes = 0
			}
			last.ticked = append(last.ticked, boxed{x, room, boxes, words})
			x += need + eachGap
		}
	}
	return out
}

func drawTicked(g *sheet.Group, l sheet.Lettering, at sheet.Point, line []boxed) {
	size, pitch := eachBox(l), eachPitch(l)
	for _, c := range line {
		x := at.X + c.along
		for k := range c.boxes {
			g.Rect(sheet.PenMedium, sheet.Bx(x+pitch*sheet.Paper(k), at.Y-size+sheet.MM/4, size, size))
		}
		g.Text(l, sheet.Pt(x+c.room, at.Y), sheet.Start, c.words)
	}
}

// labelListing lists the labels of many cables: a row for each drop, with a box
// for each label.
func labelListing(w *work.Work) *listing {
	l := &listing{id: "list-labels", title: "Labels", columns: []column{
		{head: "label", lettering: smallTag},
		{head: "where", lettering: small},
		{head: "in the closet", lettering: small},
		{head: "a box for each, in the order of the cables", lettering: small, each: true},
		{head: "when", lettering: small, whole: true},
	}, intro: []string{"The labels of a drop are in one row: first at the closet's end, then at the drop's."}}
	p := portion{}
	for rest := w.Labels; len(rest) > 0; {
		n := 1
		for n < len(rest) && rest[n].Drop == rest[0].Drop {
			n++
		}
		p.rows, p.each = append(p.rows, labelRow(rest[:n])), append(p.each, labelTicks(rest[:n]))
		rest = rest[n:]
	}
	l.portions = []portion{p}
	return l
}

// labelRow is the row of the labels of a drop.
func labelRow(labels []tags.Label) []string {
	first, last := &labels[0], &labels[len(labels)-1]
	row := []string{first.Text, first.Far, first.Where, "", first.Row()[slices.Index(tags.Columns(), "when")]}
	if first.Cable != last.Cable {
		row[0] += " to " + last.Text
		row[1] = strings.TrimSuffix(row[1], fmt.Sprintf(", %d of %d", first.Cable, last.Cable))
		row[2] += fmt.Sprintf(" to %d", last.Port)
	}
	return row
}

// labelTicks are the boxes of the labels of a drop, by what they are put on.
func labelTicks(labels []tags.Label) []ticks {
	var out []ticks
	for _, k := range []tags.Kind{tags.ClosetEnd, tags.PanelPort, tags.DropEnd, tags.PlatePort} {
		t := ticks{words: k.String()}
		for i := range labels {
			if labels[i].Kind == k {
				t.boxes++
			}
		}
		if t.boxes > 0 {
			out = append(out, t)
		}
	}
	return out
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

// cutListing lists the cuts of many cables: those of a drop that come one after
// the other in one row, with one line for the length that the first has.
func cutListing(w *work.Work, l *listing) {
	u := w.Job.House.Units
	l.columns = []column{
		{head: "piece, running number, mark expected", lettering: note, each: true},
		{head: "planned", lettering: tag, whole: true},
		{head: "stop and check", lettering: note},
		{head: "measured", kind: toFill, width: writeWidth},
	}
	l.portions = nil
	for i := range w.Cuts.Cables {
		c := &w.Cuts.Cables[i]
		for j := range c.Spools {
			s := &c.Spools[j]
			p := portion{name: c.ID + " from spool " + s.ID}
			for rest := s.Cuts; len(rest) > 0; {
				n := 1
				for n < len(rest) && rest[n].Drop == rest[0].Drop && rest[n].Length == rest[0].Length {
					n++
				}
				p.rows = append(p.rows, []string{"", u.Format(rest[0].Length), report.CheckText(s, rest[0].Piece, u), ""})
				p.each = append(p.each, cutTicks(rest[:n], u))
				rest = rest[n:]
			}
			if len(p.rows) > 0 {
				l.portions = append(l.portions, p)
			}
		}
	}
}

func cutTicks(cuts []cut.Cut, u measure.System) []ticks {
	var out []ticks
	for i := range cuts {
		c := &cuts[i]
		words := c.Piece + ", " + u.Format(c.Used)
		if m := c.Mark.String(); m != "" {
			words += ", " + m
		}
		out = append(out, ticks{1, words})
	}
	return out
}
