// Package dimension draws chains of dimensions: a line beside a drawing, ticks
// where it is divided, extension lines from the drawing, and a text for each
// part.
//
// In go places along an axis and words, out come items of a sheet and the boxes
// of the texts. The way of drawing follows ISO 129-1: oblique strokes for
// ticks, texts above their line and readable from the bottom or the right. A
// text that is wider than its part stands further out, on a leader; no two
// texts of a chain overlap, and none is struck by a line of the chain. The
// package never measures anything: the words are the caller's.
package dimension

import (
	"topplate/render/font"
	"topplate/render/sheet"
)

// A Stop is where a chain is divided. At is the place along the chain: X if it
// is horizontal, Y if it is vertical. From is the place across it where the
// drawing ends that the extension line comes from.
type Stop struct{ At, From sheet.Paper }

// A Chain is a row of dimensions.
type Chain struct {
	Vertical bool
	Line     sheet.Paper // Y of the dimension line, or X if vertical
	Stops    []Stop      // by increasing At
	// Words[i] is the text between Stops[i] and Stops[i+1]. An empty one, or
	// one that is not there, leaves its part without a text.
	Words []string
}

// A Drawing is a chain as it is drawn.
type Drawing struct {
	Items  []sheet.Item
	Texts  []sheet.Box // the boxes of the texts
	Bounds sheet.Box   // of everything
}

// Measures of a chain. The overshoot of extension lines is eight times their
// width (ISO 129-1, from memory); the others are common practice, no source.
const (
	overshoot = 1500 * sheet.Micrometre // of an extension line beyond the dimension line
	offset    = 1000 * sheet.Micrometre // between the drawing and an extension line
	tick      = 1000 * sheet.Micrometre // of an oblique stroke, each way along both axes
	clear     = 300 * sheet.Micrometre  // around the box of a text
)

// Draw returns the chain as it is drawn. A chain of fewer than two stops draws
// nothing. Texts that do not fit take O(n log n) for n of them.
func (c Chain) Draw() Drawing {
	d := &drafter{chain: c, outward: c.outward()}
	if len(c.Stops) < 2 {
		return Drawing{}
	}
	d.line(sheet.PenDimension, c.Stops[0].At, c.Line, c.Stops[len(c.Stops)-1].At, c.Line)
	for _, s := range c.Stops {
		d.extension(s)
		d.line(sheet.PenTick, s.At-tick, c.Line+tick, s.At+tick, c.Line-tick)
	}
	var narrow []note
	for _, n := range c.notes() {
		if n.fits {
			d.text(n.words, n.at, c.Line-clear-font.Drop(lettering))
		} else {
			narrow = append(narrow, n)
		}
	}
	d.raise(narrow)
	return d.drawing()
}

const lettering = sheet.LetterDimension

// outward is the way across the chain that leads away from the drawing: 1 if
// it is that of growing coordinates, else -1.
func (c Chain) outward() sheet.Paper {
	away := sheet.Paper(0)
	for _, s := range c.Stops {
		away += c.Line - s.From
	}
	if away > 0 {
		return 1
	}
	return -1
}

// A note is a text with the middle of its part.
type note struct {
	words string
	at    sheet.Paper
	width sheet.Paper
	fits  bool
}

func (c Chain) notes() []note {
	var notes []note
	for i, words := range c.Words[:min(len(c.Words), len(c.Stops)-1)] {
		width, _ := font.BoxSize(lettering, words)
		if width == 0 {
			continue
		}
		from, to := c.Stops[i].At, c.Stops[i+1].At
		notes = append(notes, note{words, (from + to) / 2, width, width+2*tick <= to-from})
	}
	return notes
}

// A drafter draws a chain in coordinates along and across it.
type drafter struct {
	chain   Chain
	outward sheet.Paper
	items   []sheet.Item
	texts   []sheet.Box
}

func (d *drafter) point(along, across sheet.Paper) sheet.Point {
	if d.chain.Vertical {
		return sheet.Pt(across, along)
	}
	return sheet.Pt(along, across)
}

func (d *drafter) line(p sheet.Pen, along1, across1, along2, across2 sheet.Paper) {
	d.items = append(d.items, sheet.Line{Pen: p, A: d.point(along1, across1), B: d.point(along2, across2)})
}

// extension draws the extension line of s. If the chain is too near for one,
// only the overshoot is left.
func (d *drafter) extension(s Stop) {
	from, to := s.From+d.outward*offset, d.chain.Line+d.outward*overshoot
	if (d.chain.Line-from)*d.outward < 0 {
		from = d.chain.Line
	}
	d.line(sheet.PenDimension, s.At, from, s.At, to)
}

// text writes words with their middle at along. Above the line is the way of
// smaller coordinates in both kinds of chain, since the texts of a vertical
// one read upwards.
func (d *drafter) text(words string, along, baseline sheet.Paper) {
	t := sheet.Text{Lettering: lettering, At: d.point(along, baseline), Align: sheet.Middle, Words: words}
	if d.chain.Vertical {
		t.Turn = sheet.QuarterTurn
	}
	d.items = append(d.items, t)
	d.texts = append(d.texts, font.Box(t))
}

func (d *drafter) drawing() Drawing {
	var points []sheet.Point
	for _, item := range d.items {
		for _, s := range item.Strokes() {
			points = append(points, s...)
		}
	}
	bounds := sheet.Bounds(points...)
	for _, b := range d.texts {
		bounds = bounds.Union(b)
	}
	return Drawing{d.items, d.texts, bounds}
}
