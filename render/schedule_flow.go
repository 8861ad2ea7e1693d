package render

import "topplate/render/sheet"

// A strip is a piece of a page over its whole width. What is below it on the
// page begins at its foot.
type strip struct {
	height sheet.Paper
	draw   func(g *sheet.Group, at sheet.Point) // at is its top left corner
	// split cuts a strip that no page is tall enough for into one that is at
	// most as tall as the room, but has one line at least, and the rest. It is
	// nil for a strip of one line.
	split func(room sheet.Paper) (first, rest strip)
	// loose is a strip that may be split at the foot of any page, as it is about
	// several things.
	loose bool
}

// heightOf adds up strips.
func heightOf(strips []strip) sheet.Paper {
	var sum sheet.Paper
	for i := range strips {
		sum += strips[i].height
	}
	return sum
}

// A run is strips that are about one thing. Its rows go on from page to page;
// what stands over them depends on where they begin.
type run struct {
	list  *listing // whose group it is drawn in, and whose name the page bears
	lead  []strip  // over the first row, below other runs
	fresh []strip  // over the first row, at the top of a page
	again []strip  // over the row that a page goes on with
	rows  []strip
	// narrow is a run of half the width, which stands in two columns with the
	// narrow runs before and after it. Over the columns stands above, where they
	// begin with it, and over at the top of a page.
	narrow      bool
	above, over []strip
}

// An inked strip has its place on a page.
type inked struct {
	strip
	list   *listing
	down   sheet.Paper // from the top of the page's room
	across sheet.Paper // from its left side
}

// A flow fills pages from the top.
type flow struct {
	first, room sheet.Paper // heights of the first page and of the others
	// bound is the height of each page instead, nil for these two.
	bound  func(page int) sheet.Paper
	pages  [][]inked
	down   sheet.Paper
	across sheet.Paper // where the second column begins
	narrow []run       // that wait for their columns
}

// Spaces of the flow. A run that would fit on a page of its own begins a new
// one if what is left of this page is less than a share of it, so that what is
// done in one place is on one page and no paper is lost (common practice, no
// source).
const (
	runGap    = 3 * sheet.MM
	leastRoom = 8 // an eighth of the page
	leastPart = 8 // an eighth of the page for the first part of what is split
	together  = 2 // rows that stay with what is over them
)

// left is what this page still holds.
func (f *flow) left() sheet.Paper {
	switch {
	case f.bound != nil:
		return f.bound(len(f.pages)-1) - f.down
	case len(f.pages) == 1:
		return f.first - f.down
	}
	return f.room - f.down
}

func (f *flow) turn() {
	f.pages = append(f.pages, nil)
	f.down = 0
}

func (f *flow) put(l *listing, strips ...strip) {
	last := &f.pages[len(f.pages)-1]
	for _, s := range strips {
		*last = append(*last, inked{strip: s, list: l, down: f.down})
		f.down += s.height
	}
}

// add puts a run on the pages. A row about one thing is split only where a page
// of its own is too short for it.
func (f *flow) add(r run) {
	if r.narrow {
		f.narrow = append(f.narrow, r)
		return
	}
	f.columns()
	over := r.lead
	switch {
	case len(f.pages) == 0:
		f.turn()
		over = r.fresh
	case f.down == 0:
		over = r.fresh
	case f.turns(&r):
		f.turn()
		over = r.fresh
	default:
		f.down += runGap
	}
	f.put(r.list, over...)
	begun := f.down
	for _, row := range r.rows {
		for row.height > f.left() {
			if f.down > begun && !(row.loose && f.left() >= f.room/leastPart) {
				f.turn()
				f.put(r.list, r.again...)
				begun = f.down
				continue
			}
			if row.split == nil {
				break
			}
			var head strip
			head, row = row.split(f.left())
			f.put(r.list, head)
		}
		f.put(r.list, row)
	}
}

// turns reports whether a run had better begin on the next page.
func (f *flow) turns(r *run) bool {
	left := f.left() - runGap
	if heightOf(r.lead)+firstRows(r, f.room) > left {
		return true
	}
	whole := heightOf(r.rows)
	return left < f.room/leastRoom && whole+heightOf(r.lead) > left && whole+heightOf(r.fresh) <= f.room
}

// firstRows is the height of the rows that stay with what is over them.
func firstRows(r *run, room sheet.Paper) sheet.Paper {
	var need sheet.Paper
	for _, row := range r.rows[:min(together, len(r.rows))] {
		if row.loose {
			row.height = min(row.height, room/leastPart)
		}
		need += row.height
	}
	return need
}
