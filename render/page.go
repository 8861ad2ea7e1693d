package render

import (
	"fmt"

	"topplate/plan"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// A page is a sheet with its border and title block, a drawing area on the
// left, and a column on the right for what is written.
type page struct {
	res   *route.Result
	sheet *sheet.Sheet
	area  sheet.Box   // for the drawing
	side  sheet.Box   // for the column
	next  sheet.Paper // where the column goes on
	keep  sheet.Paper // at the foot of the column, for the cautions
	text  *sheet.Group
	rest  string // the file that has what the column has no room for
	// place is where the title block says which sheet of the set this is.
	place cell
}

// A cell is a value in a title block: the item of a group that it is, and the
// width that it has.
type cell struct {
	group *sheet.Group
	item  int
	width sheet.Paper
}

// number writes the page's place in the set.
func (p *page) number(words string) {
	t := p.place.group.Items[p.place.item].(sheet.Text)
	t.Words = font.Fit(t.Lettering, words, p.place.width)
	p.place.group.Items[p.place.item] = t
}

// Sizes of the page's parts (ISO 5457 asks for a border of 20 mm on the filing
// side and 10 mm elsewhere, from memory).
const (
	marginLeft  = 20 * sheet.MM
	margin      = 10 * sheet.MM
	columnWidth = 96 * sheet.MM
	padding     = 3 * sheet.MM
	titleHeight = 46 * sheet.MM
)

// scheduleText is the file of a job folder that has what sheets have no room for.
const scheduleText = "schedule.txt"

// formats are the sizes of paper that a job names.
var formats = [...]sheet.Format{
	plan.Letter: sheet.Letter, plan.Tabloid: sheet.Tabloid, plan.A4: sheet.A4, plan.A3: sheet.A3,
}

// formatFor is the paper that a job is drawn on.
func formatFor(job *plan.Job) sheet.Format { return formats[job.Paper].Landscape() }

// newPage lays out an empty sheet: number is its place in the set.
func newPage(res *route.Result, id, title, desc string, number, of int) *page {
	return newPageAs(res, id, title, desc, fmt.Sprintf("%d of %d", number, of))
}

// newPageAs lays out an empty sheet with its place in the set in words.
func newPageAs(res *route.Result, id, title, desc, place string) *page {
	return newPageOn(formatFor(res.Job), res, id, title, desc, place)
}

// newPageOn lays out an empty sheet on paper of its own.
func newPageOn(f sheet.Format, res *route.Result, id, title, desc, place string) *page {
	s := sheet.New(id, title, f)
	s.Desc = desc
	frame := sheet.Box{Min: sheet.Pt(marginLeft, margin), Max: sheet.Pt(s.Width-margin, s.Height-margin)}
	p := &page{res: res, sheet: s, rest: scheduleText}
	p.side = sheet.Box{Min: sheet.Pt(frame.Max.X-columnWidth, frame.Min.Y), Max: frame.Max}
	p.area = sheet.Box{Min: frame.Min, Max: sheet.Pt(p.side.Min.X, frame.Max.Y)}
	p.next = p.side.Min.Y + padding
	g := s.Group("frame", "frame", "")
	g.Rect(sheet.PenBorder, frame)
	g.Line(sheet.PenRule, p.side.Min, sheet.Pt(p.side.Min.X, p.side.Max.Y))
	p.text = s.Group("column", "column", "Notes and tables")
	p.titleBlock(title, place)
	p.keepForCautions()
	return p
}

// titleBlock fills the lower end of the column with what ISO 7200 asks of a
// title block: owner, title, number, date, sheet, creator (from memory).
func (p *page) titleBlock(title, place string) {
	job := p.res.Job
	g := p.sheet.Group("title-block", "title-block", "Title block")
	box := sheet.Box{Min: sheet.Pt(p.side.Min.X, p.side.Max.Y-titleHeight), Max: p.side.Max}
	p.side.Max.Y = box.Min.Y
	g.Line(sheet.PenBorder, box.Min, sheet.Pt(box.Max.X, box.Min.Y))
	x, width := box.Min.X+padding, box.Width()-2*padding
	row := func(down sheet.Paper, l sheet.Lettering, words string) {
		g.Text(l, sheet.Pt(x, box.Min.Y+down), sheet.Start, font.Fit(l, words, width))
	}
	large := sheet.LetterTitle
	if font.Width(large, title) > width {
		large = sheet.LetterHeading
	}
	if font.Width(large, title) > width {
		large = sheet.LetterTag
	}
	if font.Width(large, title) > width {
		large = sheet.LetterSmallTag
	}
	row(8*sheet.MM, large, title)
	row(15*sheet.MM, sheet.LetterHeading, job.Name)
	row(21*sheet.MM, sheet.LetterNote, join(job.House.Name, job.House.Place))
	g.Line(sheet.PenRule, sheet.Pt(box.Min.X, box.Min.Y+25*sheet.MM), sheet.Pt(box.Max.X, box.Min.Y+25*sheet.MM))
	half := width / 2
	entry := func(col, down sheet.Paper, name, value string) cell {
		at := sheet.Pt(x+col, box.Min.Y+down)
		g.Text(sheet.LetterSmall, at, sheet.Start, name)
		w := font.Width(sheet.LetterSmall, name) + sheet.MM
		g.Text(sheet.LetterNote, at.Add(sheet.Pt(w, 0)), sheet.Start, font.Fit(sheet.LetterNote, value, half-w-sheet.MM))
		return cell{g, len(g.Items) - 1, half - w - sheet.MM}
	}
	entry(0, 30*sheet.MM, "job", orDash(job.Number))
	p.place = entry(half, 30*sheet.MM, "sheet", place)
	entry(0, 36*sheet.MM, "date", orDash(job.Date))
	entry(half, 36*sheet.MM, "revision", orDash(job.Revision))
	entry(0, 42*sheet.MM, "by", orDash(job.By))
	entry(half, 42*sheet.MM, "print", "at 100 %")
}

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// heading writes a heading in the column, if there is room for it and for what
// it is over, and reports whether there was.
func (p *page) heading(words string) bool {
	const before, after = 2 * sheet.MM, sheet.MM / 2
	if p.next+before+font.LineHeight(sheet.LetterHeading)+after+font.LineHeight(sheet.LetterSmall) > p.foot() {
		return false
	}
	p.next += before
	p.line(sheet.LetterHeading, 0, words)
	p.next += after
	return true
}

// line writes one line in the column, indented, if there is room.
func (p *page) line(l sheet.Lettering, indent sheet.Paper, words string) {
	h := font.LineHeight(l)
	if p.next+h > p.foot() {
		return
	}
	p.next += h
	at := sheet.Pt(p.side.Min.X+padding+indent, p.next)
	p.text.Text(l, at, sheet.Start, font.Fit(l, words, p.side.Width()-2*padding-indent))
}

// paragraph writes words in the column, broken into lines.
func (p *page) paragraph(l sheet.Lettering, words string) {
	for _, s := range font.Wrap(l, words, p.side.Width()-2*padding) {
		p.line(l, 0, s)
	}
	p.skip(sheet.MM / 2)
}

// skip leaves room in the column, as far as there is any.
func (p *page) skip(down sheet.Paper) { p.next = max(p.next, min(p.next+down, p.foot())) }

// paragraphHeight is the height that a paragraph takes.
func (p *page) paragraphHeight(l sheet.Lettering, words string) sheet.Paper {
	lines := font.Wrap(l, words, p.side.Width()-2*padding)
	return sheet.Paper(len(lines))*font.LineHeight(l) + sheet.MM/2
}

// foot is how far down the column may be written now.
func (p *page) foot() sheet.Paper { return p.side.Max.Y - padding - p.keep }

// table writes rows in columns that are as wide as their widest cell. If there
// is no room for all, the last line says how many are left out.
func (p *page) table(l sheet.Lettering, rows [][]string) { p.tableOrIn(p.rest, l, rows) }

// tableOrIn writes a table of which all rows are somewhere else too.
func (p *page) tableOrIn(elsewhere string, l sheet.Lettering, rows [][]string) {
	var widths []sheet.Paper
	for _, r := range rows {
		for i, c := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], font.Width(l, c))
		}
	}
	h := font.LineHeight(l)
	room := int((p.foot() - p.next) / h)
	left := 0
	if room < len(rows) {
		room = max(room-1, 0)
		left = len(rows) - room
		rows = rows[:room]
	}
	for _, r := range rows {
		p.next += h
		x := p.side.Min.X + padding
		for i, c := range r {
			p.text.Text(l, sheet.Pt(x, p.next), sheet.Start, font.Fit(l, c, p.side.Max.X-padding-x))
			x += widths[i] + 2*sheet.MM
		}
	}
	if left > 0 {
		p.line(l, 0, fmt.Sprintf("and %d more, in %s", left, elsewhere))
	}
}
