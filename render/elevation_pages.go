package render

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// A detail is a small drawing that shares a sheet with others.
type detail struct {
	id, title, note string
	// real is what is drawn, in the detail's own plane: X across, Y up.
	real geom.Rect
	// margins is the paper that it takes around that at a scale.
	margins func(s sheet.Scale) margins
	draw    func(d *drawing)
	list    func(p *page)
}

// margins are widths of paper on four sides.
type margins struct{ left, top, right, bottom sheet.Paper }

// detailTitle is the height of the title over a detail.
const detailTitle = 11 * sheet.MM

// size is the paper that the detail takes at a scale.
func (t *detail) size(s sheet.Scale) (width, height sheet.Paper) {
	m := t.margins(s)
	width = m.left + s.Paper(t.real.Width()) + m.right
	height = m.top + s.Paper(t.real.Height()) + m.bottom + detailTitle
	title := font.Width(sheet.LetterHeading, t.title) + 6*sheet.MM
	return max(width, min(title, 120*sheet.MM)), height
}

// A placed detail is one with its part of a sheet.
type placed struct {
	*detail
	box sheet.Box
}

// A detailPage is the details of one sheet, all at one scale.
type detailPage struct {
	scale   sheet.Scale
	details []placed
}

// pack puts details in rows, in their order, on as many pages as they take. ok
// is false if one alone is larger than a page.
func pack(details []*detail, s sheet.Scale, area sheet.Box) (pages []detailPage, ok bool) {
	ok = true
	x, y, row := area.Min.X, area.Min.Y, sheet.Paper(0)
	pages = []detailPage{{scale: s}}
	for _, t := range details {
		w, h := t.size(s)
		ok = ok && w <= area.Width() && h <= area.Height()
		if x > area.Min.X && x+w > area.Max.X {
			x, y, row = area.Min.X, y+row, 0
		}
		if y > area.Min.Y && y+h > area.Max.Y || x > area.Min.X && y+h > area.Max.Y {
			pages = append(pages, detailPage{scale: s})
			x, y, row = area.Min.X, area.Min.Y, 0
		}
		p := &pages[len(pages)-1]
		p.details = append(p.details, placed{t, sheet.Bx(x, y, w, h)})
		x, row = x+w, max(row, h)
	}
	return pages, ok
}

// paginate puts details on the fewest sheets that they fit on at the least
// scale that reads well, and then draws each sheet at the largest scale that
// it has room for.
func paginate(sys measure.System, details []*detail, area sheet.Box, least int64) []detailPage {
	if len(details) == 0 {
		return nil
	}
	var few []detailPage
	for _, s := range sheet.Scales(sys) {
		pages, ok := pack(details, s, area)
		if ok && (few == nil || s.Den <= least && len(pages) < len(few)) {
			few = pages
		}
	}
	if few == nil {
		all := sheet.Scales(sys)
		few, _ = pack(details, all[len(all)-1], area)
	}
	for i := range few {
		few[i] = enlarge(sys, few[i], area)
	}
	return few
}

// enlarge is a page at the largest scale at which it stays one page, its
// details spread over the area.
func enlarge(sys measure.System, p detailPage, area sheet.Box) detailPage {
	var details []*detail
	for _, t := range p.details {
		details = append(details, t.detail)
	}
	for _, s := range sheet.Scales(sys) {
		if pages, ok := pack(details, s, area); ok && len(pages) == 1 {
			p = pages[0]
			break
		}
	}
	spread(p.details, area)
	return p
}

// spread gives the paper that is left to the rows of a page, and the width
// that is left in a row to its details.
func spread(details []placed, area sheet.Box) {
	var rows [][]placed
	for i, t := range details {
		if i == 0 || t.box.Min.Y != details[i-1].box.Min.Y {
			rows = append(rows, nil)
		}
		rows[len(rows)-1] = details[i-len(rows[len(rows)-1]) : i+1]
	}
	var used sheet.Paper
	heights := make([]sheet.Paper, len(rows))
	for i, row := range rows {
		for _, t := range row {
			heights[i] = max(heights[i], t.box.Height())
		}
		used += heights[i]
	}
	more := max(0, area.Height()-used) / sheet.Paper(len(rows))
	y := area.Min.Y
	for i, row := range rows {
		last := row[len(row)-1].box.Max.X
		wider := max(0, area.Max.X-last) / sheet.Paper(len(row))
		x := area.Min.X
		for j := range row {
			b := row[j].box
			row[j].box = sheet.Bx(x, y, b.Width()+wider, heights[i]+more)
			x += b.Width() + wider
		}
		y += heights[i] + more
	}
}

// view lays the detail's plane in the middle of its part of the sheet.
func (t *placed) view(s sheet.Scale) sheet.View {
	m := t.margins(s)
	w, h := s.Paper(t.real.Width()), s.Paper(t.real.Height())
	x := t.box.Min.X + m.left + max(0, t.box.Width()-m.left-m.right-w)/2
	top := t.box.Min.Y + detailTitle + m.top + max(0, t.box.Height()-detailTitle-m.top-m.bottom-h)/2
	return sheet.View{Scale: s, From: t.real.Min, To: sheet.Pt(x, top+h)}
}

// titleAt is where the title starts: over the detail, at the left of what it
// takes.
func (t *placed) titleAt(s sheet.Scale) sheet.Point {
	m, v := t.margins(s), t.view(s)
	top := v.To.Y - s.Paper(t.real.Height()) - m.top - detailTitle
	return sheet.Pt(v.To.X-m.left+3*sheet.MM, top+6*sheet.MM)
}

// drawDetails draws the details of a page, each on a sheet of its own, so that
// its labels are placed in its part of the paper, and takes over what is on it.
func (d *drawing) drawDetails(p detailPage) {
	for i := range p.details {
		t := &p.details[i]
		area := t.box
		area.Min.Y = t.titleAt(p.scale).Y + 5*sheet.MM
		s := &drawing{page: &page{res: d.res, sheet: &sheet.Sheet{}, area: area}, view: t.view(p.scale), plain: true}
		t.draw(s)
		d.unplaced = append(d.unplaced, s.unplaced...)
		g := d.sheet.Group(t.id, "detail", t.title)
		at := t.titleAt(p.scale)
		room := t.box.Max.X - at.X - 2*sheet.MM
		g.Text(sheet.LetterHeading, at, sheet.Start, font.Fit(sheet.LetterHeading, t.title, room))
		g.Text(sheet.LetterSmall, at.Add(sheet.Pt(0, 4500)), sheet.Start, font.Fit(sheet.LetterSmall, t.note, room))
		for _, part := range s.sheet.Groups {
			g.Add(withPrefix(t.id, part))
		}
	}
}
