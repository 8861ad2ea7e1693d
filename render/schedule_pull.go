package render

import (
	"fmt"
	"strconv"
	"strings"

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
	l := &listing{id: "order", title: "Pull sheet: order of work", intro: []string{dayWords(t)}}
	bags := bagsOf(t)
	if steps(t) > longOrder {
		gatherSteps(w, l)
	} else {
		listSteps(w, l)
	}
	first := len(l.portions) - len(t.Visits)
	for i := range t.Visits {
		v, p := &t.Visits[i], &l.portions[first+i]
		p.name, p.aside = fmt.Sprintf("%d  %s", v.Number, v.Place.Title), order.Span(v.Arrive, v.Leave)
		switch {
		case t.People > 1 && p.narrow:
			p.aside = fmt.Sprintf("P%d, %s", v.Person, p.aside)
		case t.People > 1:
			p.aside = fmt.Sprintf("person %d, %s", v.Person, p.aside)
		}
		p.carry = carryPacks(v, bags)
	}
	l.portions = packed(l.portions, first, bags)
	if len(t.Deferred) > 0 {
		p := portion{name: "For another day"}
		for _, d := range t.Deferred {
			row := make([]string, len(l.columns))
			for i := range l.columns {
				if l.columns[i].each {
					row[i] = d
				}
			}
			p.rows = append(p.rows, row)
		}
		l.portions = append(l.portions, p)
	}
	return l
}

// packed puts the bags before the visits: to a portion that is there, or to one
// of its own.
func packed(all []portion, first int, bags []bag) []portion {
	if len(bags) == 0 {
		return all
	}
	if first == 0 {
		all = append([]portion{{name: "Bags to pack"}}, all...)
	}
	for i := range bags {
		all[0].carry = append(all[0].carry, parcel{bags[i].name, bags[i].tools})
	}
	return all
}

// listSteps gives each step a row.
func listSteps(w *work.Work, l *listing) {
	l.columns = []column{
		{kind: toTick, width: tickWidth},
		{head: "step", lettering: sheet.LetterTag, whole: true},
		{head: "with", lettering: sheet.LetterTag},
		{head: "what to do", lettering: letterStep, each: true},
		{head: "drops and holes", lettering: sheet.LetterTag},
	}
	for i := range w.Tasks.Visits {
		v := &w.Tasks.Visits[i]
		p := portion{}
		for j := range v.Steps {
			p.rows = append(p.rows, stepRow(w, &v.Steps[j]))
		}
		l.portions = append(l.portions, p)
	}
}

// gatherSteps puts steps that are alike into one row, and tells once what comes
// often. Drops and holes are not named again beside the words.
func gatherSteps(w *work.Work, l *listing) {
	l.columns = []column{{lettering: letterStep, each: true}}
	if w.Tasks.People > 1 {
		l.intro[0] += " P1 and P2 are persons 1 and 2."
	}
	told, visits := report.GatherVisits(w.Job, w.Tasks)
	if len(told) > 0 {
		p := portion{name: "Bags and short words", narrow: true, words: []string{"Steps that come often have only their first words below, and behind each box what stands at … here:"}}
		for _, o := range told {
			p.words = append(p.words, o.Words)
		}
		l.portions = append(l.portions, p)
	}
	for i, gathered := range visits {
		k := w.Tasks.Visits[i].Place.Kind
		p := portion{narrow: true, bright: k != tasks.Attic && k != tasks.Crawl}
		for len(gathered) > 0 {
			n := inLine(gathered)
			number, words, items := gatheredRow(gathered[:n])
			p.rows, p.each, p.numbers = append(p.rows, []string{words}), append(p.each, items), append(p.numbers, number)
			gathered = gathered[n:]
		}
		l.portions = append(l.portions, p)
	}
}

// inLine is how many rows are put into one: single steps that come often, one
// after the other.
func inLine(rows []report.Gathered) int {
	n := 0
	for n < len(rows) && rows[n].Often && len(rows[n].Steps) == 1 {
		n++
	}
	return max(n, 1)
}

// gatheredRow is the row of steps: their numbers, words, and what is ticked in
// it. Of several rows put into one each is a thing to tick.
func gatheredRow(rows []report.Gathered) (number, words string, items []ticks) {
	first, last := rows[0].Steps[0], rows[len(rows)-1]
	number = first.Number
	if end := last.Steps[len(last.Steps)-1].Number; end != first.Number {
		_, end, _ = strings.Cut(end, ".")
		number += "–" + end
	}
	both := func(s *tasks.Step, words string) string {
		if s.Together {
			return "Both: " + words
		}
		return words
	}
	if g := &rows[0]; len(g.Steps) > 1 {
		return number, both(&first, g.Words), once(g.Items)
	}
	for i := range rows {
		g := &rows[i]
		words := g.Words
		if g.Often {
			words = strings.TrimSpace(words + " " + g.Items[0])
		}
		items = append(items, ticks{1, both(&g.Steps[0], words)})
	}
	return number, "", items
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
