package render

import (
	"fmt"

	"topplate/render/font"
	"topplate/render/label"
	"topplate/render/sheet"
)

// A drawing is a page with a view of the house on it, and the labels that are
// asked for while things are drawn.
type drawing struct {
	*page
	view sheet.View
	asks []ask
	// taken is where no label may lie, besides what the sheet shows.
	taken []sheet.Box
	// ground lies under everything and may be struck through a label; the
	// zones are hatched last, with gaps for the labels.
	ground, zoneGroup *sheet.Group
	unplaced          []font.Block
	// plain labels have no halo: nothing is struck through them, and it would
	// eat into thick lines.
	plain bool
}

// An ask is a label that wants a place.
type ask struct {
	id       string
	at       sheet.Point
	symbol   sheet.Box     // ink of the thing that is labelled
	along    []sheet.Point // the line that is labelled, instead of a point
	within   sheet.Box     // the area that is labelled, instead of a point
	block    font.Block
	priority int
	leader   bool
	ring     bool // a ring is drawn around the words
}

func (d *drawing) ask(a ask)           { d.asks = append(d.asks, a) }
func (d *drawing) take(b ...sheet.Box) { d.taken = append(d.taken, b...) }

// around is the square box of a round thing.
func around(c sheet.Point, radius sheet.Paper) sheet.Box {
	return sheet.BoxAround(c, 2*radius, 2*radius)
}

// placeLabels finds a place for every label that was asked for, draws them
// with their leaders, and lists those without a place in the column. It
// returns the boxes of the labels.
func (d *drawing) placeLabels() []sheet.Box {
	p := label.Problem{Frame: d.area.Inset(2 * sheet.MM), Boxes: d.taken}
	for _, g := range d.sheet.Groups {
		if g != d.ground && g.ID != "frame" {
			p.Avoid(g)
		}
	}
	for _, a := range d.asks {
		w, h := a.size()
		p.Requests = append(p.Requests, label.Request{
			ID: a.id, Width: w, Height: h, Anchor: a.at, Symbol: a.symbol, Along: a.along, Within: a.within,
			Priority: a.priority, Leader: a.leader, Turn: upright(a.along),
		})
	}
	g := d.sheet.Group("labels", "labels", "Labels")
	var boxes []sheet.Box
	for i, at := range label.Place(&p) {
		a := &d.asks[i]
		if !at.Placed {
			d.unplaced = append(d.unplaced, a.block)
			continue
		}
		boxes = append(boxes, at.Box)
		lg := g.Group(sheet.ID("label", a.id), "label", "")
		if at.Leader != nil {
			lg.Polyline(sheet.PenLeader, a.leaderFrom(at)...)
		}
		if a.ring {
			drawRing(lg, at.Box.Centre(), a.block[0].Words)
			continue
		}
		for _, t := range a.block.In(at.Box, at.Turned, !d.plain) {
			lg.Add(t)
		}
	}
	return boxes
}

// upright reports whether the longest stretch of a line runs up the sheet, so
// that its label may.
func upright(line []sheet.Point) bool {
	var across, up sheet.Paper
	for i := 1; i < len(line); i++ {
		d := line[i].Sub(line[i-1])
		across, up = max(across, d.X, -d.X), max(up, d.Y, -d.Y)
	}
	return up > across
}

// listUnplaced writes the labels that found no place on the drawing.
func (d *drawing) listUnplaced() {
	if len(d.unplaced) == 0 {
		return
	}
	d.heading("No room on the drawing for")
	for _, b := range d.unplaced {
		words := b[0].Words
		for _, l := range b[1:] {
			words = fmt.Sprintf("%s, %s", words, l.Words)
		}
		d.line(sheet.LetterSmall, 0, words)
	}
}
