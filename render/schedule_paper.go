package render

import (
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route"
)

// A clip is an upright sheet for a clipboard: a frame with a slim title block
// at its foot, and room for what is written.
type clip struct {
	res   *route.Result
	sheet *sheet.Sheet
	room  sheet.Box // for what is written
}

// Sizes of the parts of a clip. Its head is what the clip of a board covers
// (common practice, no source).
const (
	clipHead  = 15 * sheet.MM
	slimTitle = 17 * sheet.MM
)

// clipFormat is the paper of a job's lists.
func clipFormat(job *plan.Job) sheet.Format {
	if job.House.Units == measure.Metric {
		return sheet.A4
	}
	return sheet.Letter
}

// clipRoom is the room of a clip on this paper.
func clipRoom(f sheet.Format) sheet.Box {
	return sheet.Box{
		Min: sheet.Pt(marginLeft+padding, clipHead+padding),
		Max: sheet.Pt(f.Width-margin-padding, f.Height-margin-slimTitle-padding),
	}
}

// newClip lays out an empty sheet. name is what its title block calls it, and
// place its place in the set.
func newClip(res *route.Result, id, name, place string) *clip {
	f := clipFormat(res.Job)
	c := &clip{res: res, sheet: sheet.New(id, name, f), room: clipRoom(f)}
	frame := sheet.Box{Min: sheet.Pt(marginLeft, clipHead), Max: sheet.Pt(f.Width-margin, f.Height-margin)}
	c.sheet.Group("frame", "frame", "").Rect(sheet.PenBorder, frame)
	c.titleBlock(sheet.Box{Min: sheet.Pt(frame.Min.X, frame.Max.Y-slimTitle), Max: frame.Max}, name, place)
	return c
}

// titleBlock has what the title blocks of the drawings have, side by side.
func (c *clip) titleBlock(box sheet.Box, name, place string) {
	job := c.res.Job
	g := c.sheet.Group("title-block", "title-block", "Title block")
	g.Line(sheet.PenBorder, box.Min, sheet.Pt(box.Max.X, box.Min.Y))
	const upper, middle, lower = 6 * sheet.MM, 11 * sheet.MM, 15 * sheet.MM
	left := box.Width() / 2
	row := func(down sheet.Paper, l sheet.Lettering, words string) {
		g.Text(l, sheet.Pt(box.Min.X+padding, box.Min.Y+down), sheet.Start, font.Fit(l, words, left-2*padding))
	}
	row(upper, sheet.LetterHeading, name)
	row(middle, sheet.LetterNote, job.Name)
	row(lower, sheet.LetterSmall, join(job.House.Name, job.House.Place))
	x := box.Min.X + left
	g.Line(sheet.PenRule, sheet.Pt(x, box.Min.Y), sheet.Pt(x, box.Max.Y))
	third := (box.Max.X - x) / 3
	cell := func(col, down, width sheet.Paper, name, value string) {
		at := sheet.Pt(x+col+padding, box.Min.Y+down)
		g.Text(sheet.LetterSmall, at, sheet.Start, name)
		w := font.Width(sheet.LetterSmall, name) + sheet.MM
		g.Text(sheet.LetterNote, at.Add(sheet.Pt(w, 0)), sheet.Start, font.Fit(sheet.LetterNote, value, width-w-padding-sheet.MM))
	}
	cell(0, upper, third, "sheet", place)
	cell(third, upper, third, "job", orDash(job.Number))
	cell(2*third, upper, third, "revision", orDash(job.Revision))
	cell(0, 13*sheet.MM, 3*third/2, "date", orDash(job.Date))
	cell(3*third/2, 13*sheet.MM, 3*third/2, "by", orDash(job.By))
}

// cautionStrips are the job's cautions for the foot of a page: the first
// sentence of each if that takes no more than the given height, else their
// titles alone.
func cautionStrips(res *route.Result, width, most sheet.Paper) []strip {
	var brief, titles []string
	for _, id := range res.Cautions {
		if rl, ok := rule.Lookup(id); ok {
			brief = append(brief, rl.Title+". "+firstSentence(rl.Text))
			titles = append(titles, rl.Title+".")
		}
	}
	brief = append(brief, report.Deference+" In full in schedule.txt.")
	out := []strip{ruleStrip(width), wordStrip(sheet.LetterTag, "Cautions")}
	for _, s := range brief {
		out = append(out, paragraphStrips(sheet.LetterSmall, s, width)...)
	}
	if heightOf(out) <= most {
		return out
	}
	return append(out[:2], paragraphStrips(sheet.LetterSmall, leastCautions(titles, scheduleText), width)...)
}

// ruleStrip is a line over the whole width.
func ruleStrip(width sheet.Paper) strip {
	return strip{height: sheet.MM, draw: func(g *sheet.Group, at sheet.Point) {
		g.Line(sheet.PenRule, at, at.Add(sheet.Pt(width, 0)))
	}}
}

// wordStrip is one line of words, which must fit.
func wordStrip(l sheet.Lettering, words string) strip {
	return strip{height: font.LineHeight(l), draw: func(g *sheet.Group, at sheet.Point) {
		g.Text(l, at.Add(sheet.Pt(0, font.LineHeight(l)-font.Drop(l))), sheet.Start, words)
	}}
}

// paragraphStrips are the lines of a text, one strip each.
func paragraphStrips(l sheet.Lettering, words string, width sheet.Paper) []strip {
	var out []strip
	for _, line := range font.Wrap(l, words, width) {
		out = append(out, wordStrip(l, line))
	}
	return out
}

// ink draws strips below each other from a point.
func ink(g *sheet.Group, at sheet.Point, strips []strip) {
	for _, s := range strips {
		s.draw(g, at)
		at.Y += s.height
	}
}

// drawCautions draws them at the foot of the room.
func (c *clip) drawCautions(strips []strip) {
	g := c.sheet.Group("cautions", "cautions", "Cautions")
	ink(g, sheet.Pt(c.room.Min.X, c.room.Max.Y-heightOf(strips)), strips)
}

// describe says what is on the sheet.
func (c *clip) describe(names []string) {
	c.sheet.Title = fmt.Sprintf("%s: %s", c.sheet.Title, strings.Join(names, ", "))
	c.sheet.Desc = fmt.Sprintf("%s of %s.", c.sheet.Title, c.res.Job.Name)
}
