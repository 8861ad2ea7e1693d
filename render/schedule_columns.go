package render

import "topplate/render/sheet"

// Columns of narrow runs: the space between them, and the fineness at which
// the last two are made equally tall.
const (
	gutter      = 6 * sheet.MM
	balanceStep = 2 * sheet.MM
)

// halfWidth is the width of a narrow run on a page of a width.
func halfWidth(width sheet.Paper) sheet.Paper { return (width - gutter) / 2 }

// columns puts the narrow runs that wait on the pages: down the left column,
// then down the right one, and on the last page in two of about the same
// height.
func (f *flow) columns() {
	runs := f.narrow
	f.narrow = nil
	if len(runs) == 0 {
		return
	}
	above, over := runs[0].above, runs[0].over
	f.roomFor(heightOf(above) + heightOf(runs[0].lead) + firstRows(&runs[0], f.room))
	if f.down > 0 && len(above) == 0 {
		f.down += runGap
	}
	if f.down == 0 && len(above) == 0 {
		above = over
	}
	f.put(runs[0].list, above...)
	begun, first := f.down, f.left()
	filled := balanced(runs, func(page int) sheet.Paper {
		if page < 2 {
			return first
		}
		return f.room - heightOf(over)
	}, f.room)
	for c, column := range filled {
		if c > 0 && c%2 == 0 {
			f.turn()
			f.put(runs[0].list, over...)
			begun = f.down
		}
		last := &f.pages[len(f.pages)-1]
		for _, s := range column {
			s.down += begun
			s.across = f.across * sheet.Paper(c%2)
			*last = append(*last, s)
			f.down = max(f.down, s.down+s.height)
		}
	}
}

// roomFor turns to a new page unless this one has room for something.
func (f *flow) roomFor(height sheet.Paper) {
	if len(f.pages) == 0 || f.down > 0 && height+runGap > f.left() {
		f.turn()
	}
}

// balanced fills columns with runs, the last two no taller than they must be.
func balanced(runs []run, bound func(page int) sheet.Paper, room sheet.Paper) [][]inked {
	fill := func(bound func(page int) sheet.Paper) [][]inked {
		f := flow{room: room, bound: bound}
		for _, r := range runs {
			r.narrow = false
			f.add(r)
		}
		return f.pages
	}
	out := fill(bound)
	last := (len(out) - 1) / 2 * 2
	least := tallest(runs)
	var sum sheet.Paper
	for _, column := range out[last:] {
		end := column[len(column)-1]
		sum += end.down + end.height
	}
	for h := max(sum/2, least); h < bound(last); h += balanceStep {
		tried := fill(func(page int) sheet.Paper {
			if page < last {
				return bound(page)
			}
			return h
		})
		if len(tried) <= last+2 && within(tried[last:], h) {
			return tried
		}
	}
	return out
}

// within reports whether columns are no taller than a height.
func within(columns [][]inked, height sheet.Paper) bool {
	for _, c := range columns {
		if end := c[len(c)-1]; end.down+end.height > height {
			return false
		}
	}
	return true
}

// tallest is the height of the tallest row that is about one thing, with what
// is over it: a column must be as tall if it is not to be split.
func tallest(runs []run) sheet.Paper {
	var most sheet.Paper
	for i := range runs {
		over := max(heightOf(runs[i].fresh), heightOf(runs[i].again), heightOf(runs[i].lead))
		for _, row := range runs[i].rows {
			if !row.loose {
				most = max(most, over+row.height)
			}
		}
	}
	return most
}
