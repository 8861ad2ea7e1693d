package render

import (
	"fmt"
	"strconv"
	"strings"

	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route/order"
	"topplate/route/tasks"
	"topplate/route/work"
)

// pullSheet is the order of work, visit by visit, with a box to tick at each
// step and at each thing to carry.
func pullSheet(w *work.Work) *listing {
	t := w.Tasks
	l := &listing{id: "order", title: "Pull sheet: order of work", intro: []string{dayWords(t)}, columns: []column{
		{kind: toTick, width: tickWidth},
		{head: "step", lettering: sheet.LetterTag, whole: true},
		{head: "with", lettering: sheet.LetterTag},
		{head: "what to do", lettering: letterStep, each: true},
		{head: "drops and holes", lettering: sheet.LetterTag},
	}}
	gather := steps(t) > longOrder
	for i := range t.Visits {
		v := &t.Visits[i]
		p := portion{name: fmt.Sprintf("%d  %s", v.Number, v.Place.Title), aside: order.Span(v.Arrive, v.Leave)}
		if t.People > 1 {
			p.aside = fmt.Sprintf("person %d, %s", v.Person, p.aside)
		}
		for _, item := range v.Carry {
			p.carry = append(p.carry, item.String())
		}
		if gather {
			p.bright = v.Place.Kind != tasks.Attic && v.Place.Kind != tasks.Crawl
			p.gather(w, v.Steps)
		} else {
			for j := range v.Steps {
				p.rows = append(p.rows, stepRow(w, &v.Steps[j]))
			}
		}
		l.portions = append(l.portions, p)
	}
	if len(t.Deferred) > 0 {
		p := portion{name: "For another day"}
		for _, d := range t.Deferred {
			p.rows = append(p.rows, []string{"", "", "", d, ""})
		}
		l.portions = append(l.portions, p)
	}
	return l
}

// dayWords say how the day goes, or why there is nothing to do.
func dayWords(t *tasks.Work) string {
	if len(t.Visits) == 0 {
		return "No drop can be run as the job stands, so there is no work to order. The findings in schedule.txt say what would help."
	}
	span := order.Span(t.Start, t.End)
	if t.Days > 1 {
		span = fmt.Sprintf("%d days, %s", t.Days, span)
	}
	days := fmt.Sprintf("%s. %s into the attic, %d changes of place.", span, times(t.Climbs), t.Changes)
	if t.People > 1 {
		days = fmt.Sprintf("%d people, %s", t.People, days)
	}
	if t.Sunset > 0 {
		days += fmt.Sprintf(" Sunset is at %s.", t.Sunset)
	}
	return days + " Tick what is carried and what is done. Steps are in order: what a step needs is done before it."
}

func times(n int) string {
	switch n {
	case 0:
		return "No way up"
	case 1:
		return "One way up"
	}
	return strconv.Itoa(n) + " ways up"
}

func steps(t *tasks.Work) int {
	n := 0
	for i := range t.Visits {
		n += len(t.Visits[i].Steps)
	}
	return n
}

// gather adds the rows of steps, those that are alike in one with a box for
// each. Drops and holes are not named again beside the words.
func (p *portion) gather(w *work.Work, steps []tasks.Step) {
	for _, g := range report.Gather(steps) {
		row := stepRow(w, &g.Steps[0])
		row[3] = g.Words
		if n := len(g.Steps); n > 1 {
			_, last, _ := strings.Cut(g.Steps[n-1].Number, ".")
			row[1] += " to " + last
		}
		row[4] = ""
		p.rows, p.each = append(p.rows, row), append(p.each, once(g.Items))
	}
}

// stepRow is the row of a step.
func stepRow(w *work.Work, s *tasks.Step) []string {
	with := ""
	if s.Together {
		with = "both"
	}
	var about []string
	for _, d := range s.Task.Drops {
		about = append(about, w.Job.Drops[d].Tag)
	}
	for _, h := range s.Task.Holes {
		about = append(about, w.Holes[h].ID)
	}
	return []string{"", s.Number, with, s.Words, strings.Join(about, " ")}
}

// Sizes of what is carried: a smaller box before each thing.
const (
	carryTick = 2500 * sheet.Micrometre
	carryName = 13 * sheet.MM
	carryGap  = 5 * sheet.MM
)

// A carried is one thing to carry with its place on a line.
type carried struct {
	along sheet.Paper
	words string
	tick  bool
}

// carryStrips are the lines of what is carried.
func carryStrips(items []string, width sheet.Paper) []strip {
	l := sheet.LetterNote
	var lines [][]carried
	x := width
	for _, item := range items {
		for i, words := range font.Wrap(l, glued(item), width-carryName-2*carryTick) {
			need := 2*carryTick + font.Width(l, words)
			if x+need > width || i > 0 {
				lines = append(lines, nil)
				x = carryName
			}
			last := &lines[len(lines)-1]
			*last = append(*last, carried{x, words, i == 0})
			x += need + carryGap
		}
	}
	var out []strip
	for i, line := range lines {
		out = append(out, carryStrip(line, i == 0))
	}
	if len(out) > 0 {
		out = append(out, gapStrip(sheet.MM))
	}
	return out
}

func carryStrip(line []carried, first bool) strip {
	l := sheet.LetterNote
	return strip{height: font.LineHeight(l) + sheet.MM, draw: func(g *sheet.Group, at sheet.Point) {
		base := at.Y + font.LineHeight(l)
		if first {
			g.Text(sheet.LetterTag, sheet.Pt(at.X, base), sheet.Start, "carry")
		}
		for _, c := range line {
			x := at.X + c.along
			if c.tick {
				g.Rect(sheet.PenThin, sheet.Bx(x, base-carryTick, carryTick, carryTick))
			}
			g.Text(l, sheet.Pt(x+carryTick*8/5, base), sheet.Start, c.words)
		}
	}}
}
