package render

import (
	"strings"

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
	unplaced          []unplaced
	// plain labels have no halo: nothing is struck through them, and it would
	// eat into thick lines.
	plain bool
	// scope is what of the house is drawn, by height.
	scope scope
	// plainHatches are not told apart by where they lead to.
	plainHatches bool
	// tile is the part of the house that is drawn, nil for all of it.
	tile *tile
}

// An ask is a label that wants a place.
type ask struct {
	id       string
	at       sheet.Point   // of a line: where what it belongs to is, or zero
	symbol   sheet.Box     // ink of the thing that is labelled
	along    []sheet.Point // the line that is labelled, instead of a point
	within   sheet.Box     // the area that is labelled, instead of a point
	block    font.Block
	short    font.Block // what is written where there is no room for all blocks
	of       string     // what the words belong to, for where they stand in a list
	priority int
	leader   bool
	level    bool // reads level, also beside a line that runs up the sheet
	ring     bool // a ring is drawn around the words
	// keyed is set where there is no room for the words: key is a letter that
	// stands for them, in a small ring, and the column has both.
	keyed bool
	key   string
}

func (d *drawing) ask(a ask)           { d.asks = append(d.asks, a) }
func (d *drawing) take(b ...sheet.Box) { d.taken = append(d.taken, b...) }

// around is the square box of a round thing.
func around(c sheet.Point, radius sheet.Paper) sheet.Box {
	return sheet.BoxAround(c, 2*radius, 2*radius)
}

// placeLabels finds a place for every label that was asked for, draws them
// with their leaders, and lists those without a place in the column. Where some
// have none, all that have a short form are written so, and then those that
// still have none get a letter each, which needs less room. It returns the boxes
// of the labels.
func (d *drawing) placeLabels() []sheet.Box {
	p := label.Problem{Frame: d.area.Inset(2 * sheet.MM), Boxes: d.taken}
	if d.tile != nil {
		p.Frame = d.tile.window
	}
	for _, g := range d.sheet.Groups {
		if g != d.ground && g.ID != "frame" {
			p.Avoid(g)
		}
	}
	places := d.findPlaces(&p)
	if d.shorten(places) {
		places = d.findPlaces(&p)
	}
	for try := 0; try < keyTries && d.keyLost(places); try++ {
		places = d.findPlaces(&p)
	}
	d.letterKeys(places)
	g := d.sheet.Group("labels", "labels", "Labels")
	var boxes []sheet.Box
	for i, at := range places {
		a := &d.asks[i]
		if !at.Placed {
			d.unplaced = append(d.unplaced, unplaced{a.priority, "", a.name(), a.listed()})
			continue
		}
		boxes = append(boxes, at.Box)
		lg := g.Group(sheet.ID("label", a.id), "label", "")
		if at.Leader != nil {
			lg.Polyline(sheet.PenLeader, a.leaderFrom(at)...)
		}
		switch {
		case a.keyed:
			drawKey(lg, at.Box.Centre(), a.key)
			d.unplaced = append(d.unplaced, unplaced{a.priority, a.key, a.name(), a.listed()})
			continue
		case a.ring:
			drawRing(lg, at.Box.Centre(), a.block[0].Words)
			continue
		}
		for _, t := range a.block.In(at.Box, at.Turned, !d.plain) {
			lg.Add(t)
		}
	}
	return boxes
}

// findPlaces asks for the places of all labels.
func (d *drawing) findPlaces(p *label.Problem) []label.Placement {
	p.Requests = p.Requests[:0]
	for _, a := range d.asks {
		w, h := a.size()
		p.Requests = append(p.Requests, label.Request{
			ID: a.id, Width: w, Height: h, Anchor: a.at, Symbol: a.symbol, Along: a.along, Within: a.within,
			Priority: a.priority, Leader: a.leader, Turn: !a.level && upright(a.along),
		})
	}
	return label.Place(p)
}

// tagPriority is the least of the tags of drops, holes and the closet.
const tagPriority = 20

// shorten reports whether a tag has no place, and there was something to
// shorten.
func (d *drawing) shorten(places []label.Placement) (done bool) {
	missing := false
	for i := range places {
		missing = missing || !places[i].Placed && d.asks[i].priority >= tagPriority
	}
	if !missing {
		return false
	}
	for i := range d.asks {
		if a := &d.asks[i]; a.short != nil {
			a.block, a.short, done = a.short, nil, true
		}
	}
	return done
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

// listed is a label in one line.
func (a *ask) listed() string {
	words := a.of
	for i, l := range a.block {
		switch {
		case i > 0 && strings.HasSuffix(words, " "): // a line that goes on in the next
		case i > 0:
			words += ", "
		case words != "":
			words += ": "
		}
		words += l.Words
	}
	return words
}
