package render

import (
	"fmt"
	"regexp"
	"slices"

	"topplate/render/sheet"
	"topplate/route"
	"topplate/route/work"
)

// What the lists are lettered with. Steps are read at arm's length, held in a
// glove under a head lamp: 3.5 mm capitals have small letters 2.6 mm tall, 0.21°
// at 0.7 m. Reading is fluent from about 0.2° (Legge and Bigelow, Journal of
// Vision 11(5), 2011, from memory).
const (
	letterHead = sheet.LetterSmallTag
	letterStep = sheet.LetterRoom
)

// A listing is a part of the schedule with a heading of its own.
type listing struct {
	id, title string
	intro     []string // under the heading
	columns   []column
	portions  []portion
	figure    []strip // instead of a table
}

// A portion is rows of a listing, under a band if it has a name.
type portion struct {
	name, aside string
	carry       []parcel // items to tick, over the rows
	words       []string // paragraphs over the rows
	rows        [][]string
	// each has the things to tick in a row that is about several, nil for a row
	// with a box of its own. It is empty if no row is.
	each [][]ticks
	// numbers stand before what is ticked, if there are any.
	numbers []string
	// asides are under the rows in small letters, if there are any.
	asides []string
	// narrow is half the width of the page, bright where there is light to read
	// by: letters are smaller there in a long list.
	narrow, bright bool
}

// Schedules draws the lists of a job on upright sheets for a clipboard: the
// order of work, then the drops, holes, cuts, spools, parts, labels, the power
// at the devices and how the conductors are ordered. A list goes on over as
// many sheets as it needs. The sheets are named schedule-1, schedule-2 and so
// on, and numbered on their own. It takes time in proportion to the text.
func Schedules(w *work.Work) []*sheet.Sheet {
	width := clipRoom(clipFormat(w.Job)).Width()
	return clips(w.Result, "schedule", "Schedule", listings(w, width))
}

// clips lets lists flow over upright sheets, with the cautions at the foot of
// the first. The sheets are named and numbered on their own.
func clips(res *route.Result, id, name string, lists []*listing) []*sheet.Sheet {
	room := clipRoom(clipFormat(res.Job))
	width := room.Width()
	cautions := cautionStrips(res, width, room.Height()/4)
	f := flow{first: room.Height() - heightOf(cautions), room: room.Height(), across: halfWidth(width) + gutter}
	for _, l := range lists {
		for _, r := range l.runs(width) {
			f.add(r)
		}
	}
	f.columns()
	var out []*sheet.Sheet
	for i, strips := range f.pages {
		c := newClip(res, fmt.Sprintf("%s-%d", id, i+1), name, fmt.Sprintf("%d of %d", i+1, len(f.pages)))
		c.drawStrips(strips)
		if i == 0 {
			c.drawCautions(cautions)
		}
		out = append(out, c.sheet)
	}
	return out
}

// listings are the lists of a job that have something in them.
func listings(w *work.Work, width sheet.Paper) []*listing {
	out := []*listing{pullSheet(w)}
	for _, l := range tableListings(w) {
		if len(l.portions) > 0 || len(l.intro) > 0 {
			out = append(out, l)
		}
	}
	return append(out, pinOuts(w.Job.House.Units, width))
}

// drawStrips draws the strips of a page, those of a listing in a group.
func (c *clip) drawStrips(strips []inked) {
	var g *sheet.Group
	var last *listing
	var names []string
	for _, s := range strips {
		if s.list != last {
			last = s.list
			g = c.sheet.Group(last.id, "list", last.title)
			names = append(names, last.title)
		}
		s.draw(g, c.room.Min.Add(sheet.Pt(s.across, s.down)))
	}
	c.describe(names)
}

// runs breaks a listing into what flows over pages.
func (l *listing) runs(width sheet.Paper) []run {
	heading := l.heading(l.title)
	for _, words := range l.intro {
		heading = append(heading, paragraphStrips(sheet.LetterNote, glued(words), width)...)
	}
	heading = append(heading, gapStrip(sheet.MM))
	if l.columns == nil {
		return []run{{list: l, lead: heading, fresh: heading, again: l.heading(l.title + ", continued"), rows: l.figure}}
	}
	columns, portions := l.prepared(width, false)
	slim, _ := l.prepared(halfWidth(width), true)
	var head []strip
	if slices.ContainsFunc(portions, func(p portion) bool { return !p.narrow }) {
		head = []strip{headRow(columns).strip(), ruleStrip(width)}
	}
	again := l.heading(l.title + ", continued")
	onward := append(again[:len(again):len(again)], head...)
	var out []run
	for i := range portions {
		p := &portions[i]
		r := run{list: l, fresh: onward[:len(onward):len(onward)], again: onward[:len(onward):len(onward)], narrow: p.narrow}
		room, fitted := width, columns
		switch {
		case p.narrow:
			room, fitted = halfWidth(width), slim
			r.over, r.fresh, r.again = again, nil, nil
			if i == 0 {
				r.above = heading
			}
		case i == 0:
			r.lead = append(heading, head...)
			r.fresh = r.lead[:len(r.lead):len(r.lead)]
		}
		r.add(p, fitted, room, l.pad())
		out = append(out, r)
	}
	if out == nil {
		out = []run{{list: l, lead: heading, fresh: heading}}
	}
	return out
}

// lettered are the columns as they are lettered in a portion.
func (p *portion) lettered(columns []column) []column {
	if !p.bright {
		return columns
	}
	out := slices.Clone(columns)
	for i := range out {
		if out[i].each {
			out[i].lettering = sheet.LetterNote
		}
	}
	return out
}

// prepared returns the columns that have something in them, with their widths,
// and the portions with the cells of these columns. The widths are those of the
// narrow portions, or of the others.
func (l *listing) prepared(width sheet.Paper, narrow bool) ([]column, []portion) {
	var keep []int
	for i := range l.columns {
		if l.columns[i].kind != toRead || l.columns[i].each || l.filled(i) {
			keep = append(keep, i)
		}
	}
	columns := make([]column, len(keep))
	for k, i := range keep {
		columns[k] = l.columns[i]
	}
	portions := make([]portion, len(l.portions))
	var all [][]string
	for n, p := range l.portions {
		portions[n] = portion{name: p.name, words: p.words, aside: p.aside, carry: p.carry, each: p.each, numbers: p.numbers, asides: p.asides, narrow: p.narrow, bright: p.bright}
		for _, cells := range p.rows {
			kept := make([]string, len(keep))
			for k, i := range keep {
				kept[k] = glued(cells[i])
			}
			portions[n].rows = append(portions[n].rows, kept)
		}
		if p.narrow == narrow {
			all = append(all, withTicks(columns, &portions[n])...)
		}
	}
	fitColumns(columns, all, width)
	return columns, portions
}

// pad is what is left above and below the rows: less in a list of many.
func (l *listing) pad() sheet.Paper {
	n := 0
	for i := range l.portions {
		n += len(l.portions[i].rows)
	}
	switch {
	case n <= longRows:
		return cellPad
	case slices.ContainsFunc(l.columns, func(c column) bool { return c.lettering == letterStep && c.kind == toRead }) && !l.gathered():
		return stepPad
	}
	return densePad
}

// gathered reports whether rows are about several things.
func (l *listing) gathered() bool {
	return slices.ContainsFunc(l.portions, func(p portion) bool { return p.each != nil })
}

// filled reports whether any cell of a column has something in it.
func (l *listing) filled(i int) bool {
	for _, p := range l.portions {
		for _, cells := range p.rows {
			if cells[i] != "" {
				return true
			}
		}
	}
	return false
}

func (l *listing) heading(words string) []strip {
	return []strip{wordStrip(sheet.LetterHeading, words), gapStrip(sheet.MM)}
}

// unbroken is a number with its unit or sign, or feet with their inches: a line
// must not end in the middle of it.
var unbroken = regexp.MustCompile(`(\d) ((?:m|mm|ml|V|W|ohm|h|min)\b|[×%])|(\dft) (\d)`)

// glued puts no-break spaces inside measures.
func glued(s string) string { return unbroken.ReplaceAllString(s, "$1$3\u00A0$2$4") }
