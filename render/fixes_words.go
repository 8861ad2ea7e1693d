package render

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route/fix"
)

// table lists the holes in the column: how each is found from here, with the
// error to expect, and from below.
func (f *fixDrawing) table(d *drawing) {
	if d.space().Kind == plan.AtticSpace {
		d.heading("From above and below")
		d.paragraph(sheet.LetterSmall, "Hold the tape level on the joists' tops. 95 tries in 100 are within the distance given after ±.")
		d.paragraph(sheet.LetterSmall, "Kneel on joists or boards only, never on the ceiling between them.")
	} else {
		d.heading("From below and from above")
		d.paragraph(sheet.LetterSmall, "Hold the tape level along the joists' undersides. 95 tries in 100 are within the distance given after ±.")
	}
	var entries []fixEntry
	for i := range f.fixes {
		if h := &f.fixes[i]; d.here(flat(h.At)) {
			entries = append(entries, fixEntry{h.ID, []string{d.aboveWords(h), d.belowWords(h)}})
		}
	}
	for i, e := range entries {
		if !e.write(d.page) {
			d.line(sheet.LetterSmall, 0, fmt.Sprintf("and %d more, in schedule.txt", len(entries)-i))
			return
		}
	}
}

// A fixEntry is a hole in the column, with paragraphs beside its number.
type fixEntry struct {
	id    string
	words []string
}

// write writes an entry if there is room for it and one line more.
func (e *fixEntry) write(p *page) bool {
	const indent = 8 * sheet.MM
	var lines []string
	for _, w := range e.words {
		lines = append(lines, font.Wrap(sheet.LetterSmall, w, p.side.Width()-2*padding-indent)...)
	}
	if p.next+sheet.Paper(len(lines)+1)*font.LineHeight(sheet.LetterSmall) > p.foot() {
		return false
	}
	at := sheet.Pt(p.side.Min.X+padding, p.next+font.LineHeight(sheet.LetterSmall))
	p.text.Text(sheet.LetterSmallTag, at, sheet.Start, font.Fit(sheet.LetterSmallTag, e.id, indent-sheet.MM))
	for _, l := range lines {
		p.line(sheet.LetterSmall, indent, l)
	}
	return true
}

// aboveWords says in a line how a hole is found from the attic.
func (d *drawing) aboveWords(h *fix.Hole) string {
	a := &h.Above
	words := "above"
	if d.space().Kind != plan.AtticSpace {
		words = "under the joists"
	}
	if !a.Reached {
		return words + ": " + a.Why
	}
	if a.Error > 0 {
		words += " ± " + d.length(a.Error)
	}
	words += ": "
	for i, t := range tapesOf(a) {
		if i > 0 {
			words += ", "
		}
		words += fmt.Sprintf("%s from %s", d.length(t.distance), t.mark.ID)
	}
	switch a.Method {
	case fix.AtMark:
		words += "at " + a.Fix.At.ID
	case fix.ByTapes:
		if c := a.Fix.Check; c != nil {
			words += fmt.Sprintf("; check %s from %s", d.length(c.Distance.Shown), c.Mark.ID)
		}
	case fix.ByJoists:
		if a.Joists != nil {
			words += fmt.Sprintf("; %s of %s", d.countWords(a.Joists), a.Joists.Mark.ID)
		}
	case fix.ByBearing:
		words += ", " + d.offsetWords(a.Fix.Single.East, a.Fix.Single.North)
	case fix.ByFaces:
		for i, x := range a.Faces {
			if i > 0 {
				words += ", "
			}
			words += fmt.Sprintf("%s from wall %s", d.length(x.Length), d.res.Job.House.Walls[x.Wall].ID)
		}
	case fix.ByNothing:
		words += "nothing to tape from"
	}
	if a.Height != "" {
		words += "; " + d.heightWords(a.Up)
	}
	return words
}

// heightWords says how high a hole in a wall is over the joists' undersides, or tops.
func (d *drawing) heightWords(up measure.Length) string {
	switch depth := d.space().Depth; {
	case up < 0:
		return d.length(-up) + " below the joists"
	case up < depth:
		return d.length(up) + " over the joists' undersides"
	default:
		return d.length(up-depth) + " over the joists' tops"
	}
}

// offsetWords is a way along both axes.
func (d *drawing) offsetWords(east, north measure.Length) string {
	x, y := plan.East, plan.North
	if east < 0 {
		x, east = plan.West, -east
	}
	if north < 0 {
		y, north = plan.South, -north
	}
	return fmt.Sprintf("%s %s and %s %s", d.length(east), headingNames[x], d.length(north), headingNames[y])
}

// belowWords says in a line how a hole is found from the room, or from outside.
func (d *drawing) belowWords(h *fix.Hole) string {
	b, house := &h.Below, d.res.Job.House
	if len(b.From) == 0 {
		return b.Text
	}
	words := "below, outside: "
	if b.Room >= 0 {
		room := &house.Rooms[b.Room]
		words = fmt.Sprintf("below, in %s: ", room.Name)
		if room.Level == d.space().Above {
			words = fmt.Sprintf("from the room above, %s: ", room.Name)
		}
	}
	for i, t := range b.From {
		if i > 0 {
			words += ", "
		}
		words += fmt.Sprintf("%s from ", d.length(t.Length))
		if t.Of == fix.WallFace {
			words += "wall " + house.Walls[t.Wall].ID
		} else {
			words += fmt.Sprintf("the %s of wall %s", t.Of, house.Walls[t.Wall].ID)
		}
	}
	return words
}
