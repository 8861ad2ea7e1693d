package report

import (
	"fmt"
	"io"
	"strings"

	"topplate/plan/measure"
	"topplate/route/compare"
	"topplate/route/estimate"
	"topplate/route/work"
)

// CompareSchema names the shape of what CompareJSON writes.
const CompareSchema = "topplate-compare/1"

// Said where the plans are compared.
const (
	NothingChanged = "Nothing changed: the two plans are the same."
	OtherOutlines  = "The outlines of the houses differ. What can be is compared; places count from the zero point of each house."
	otherMoney     = "The plans are in two currencies: money is not compared."
)

// A Part is what changed in one part of the plans, a line for each thing.
type Part struct {
	Title string
	Lines []string
}

// Compared is what changed from plan A to plan B, in words, part by part.
// Parts in which nothing did are left out.
func Compared(d *compare.Difference) []Part {
	var out []Part
	add := func(title string, lines []string) {
		if len(lines) > 0 {
			out = append(out, Part{title, lines})
		}
	}
	add("House", houseLines(d))
	add("What the job asks for", valueLines(d.Job))
	add("Drops", dropLines(d))
	add("Routes", routeLines(d))
	add("Holes", holeLines(d))
	add("Holes and conduits that are there", reuseLines(d))
	return out
}

// Compare writes what changed from plan A to plan B as text, with the figures
// of both.
func Compare(w io.Writer, d *compare.Difference) error {
	p := &printer{w: w}
	p.printf("What changed from A to B\n")
	for side, name := range []string{"A", "B"} {
		w := d.Plans[side]
		p.printf("  %s: %s\n", name, strings.TrimSuffix(w.Job.Name+", "+PlanDetails(w), ", "))
	}
	p.printf("\n")
	if d.Same() {
		p.printf("%s\n\n", NothingChanged)
	}
	for _, part := range Compared(d) {
		p.printf("%s\n", part.Title)
		for _, l := range part.Lines {
			p.printf("  %s\n", l)
		}
		p.printf("\n")
	}
	p.printf("Figures\n")
	p.table(CompareFigures(d))
	p.printf("\nWhat the cost is made of\n")
	p.table(CompareTerms(d))
	for side, name := range []string{"A", "B"} {
		if d.Plans[side].Stops() {
			p.printf("\nPlan %s has findings that stop the work: topplate check tells which.\n", name)
		}
	}
	return p.err
}

// PlanDetails are the number, the revision and the date of a plan's job, and its
// house.
func PlanDetails(w *work.Work) string {
	j := w.Job
	parts := []string{}
	for _, x := range [][2]string{{"number ", j.Number}, {"revision ", j.Revision}, {"", j.Date}, {"", j.House.Name}} {
		if x[1] != "" {
			parts = append(parts, x[0]+x[1])
		}
	}
	return strings.Join(parts, ", ")
}

// DetailIndent starts a line of a Part that goes into the details of the line
// before it.
const DetailIndent = "  "

// units prints lengths that belong to both plans.
func units(d *compare.Difference) measure.System { return d.Plans[1].Job.House.Units }

// valueLines are "what: before → after", one for each.
func valueLines(values []compare.Value) []string {
	var out []string
	for _, v := range values {
		out = append(out, v.What+": "+fromTo(v.Is[0], v.Is[1]))
	}
	return out
}

func fromTo(a, b string) string { return orNone(a) + " → " + orNone(b) }

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

func houseLines(d *compare.Difference) []string {
	var out []string
	if d.Outline {
		out = append(out, OtherOutlines)
	}
	for i := range d.House {
		t := &d.House[i]
		what := strings.TrimSpace(t.Kind + " " + t.ID)
		if t.How != compare.Changed {
			out = append(out, what+" "+t.How.String())
			continue
		}
		var parts []string
		if t.Moved > 0 {
			parts = append(parts, "moved "+units(d).Format(t.Moved))
		}
		out = append(out, what+" "+strings.Join(append(parts, valueLines(t.Values)...), "; "))
	}
	return out
}

func dropLines(d *compare.Difference) []string {
	var out []string
	for i := range d.Drops {
		x := &d.Drops[i]
		switch x.How {
		case compare.Added:
			out = append(out, x.Tag+" added: "+dropText(d, 1, x.In[1]))
			continue
		case compare.Gone:
			out = append(out, x.Tag+" taken out: "+dropText(d, 0, x.In[0]))
			continue
		}
		var parts []string
		if x.Moved > 0 {
			parts = append(parts, "moved "+units(d).Format(x.Moved))
		}
		if x.Wished > 0 && x.Wished != x.Moved {
			parts = append(parts, "wished "+units(d).Format(x.Wished)+" from where it was")
		}
		out = append(out, x.Tag+" "+strings.Join(append(parts, valueLines(x.Values)...), "; "))
	}
	return out
}

// dropText says what a drop is.
func dropText(d *compare.Difference, side, index int) string {
	w := d.Plans[side]
	r := &w.Routes[index]
	x := &w.Job.Drops[r.Drop]
	text := fmt.Sprintf("%s, %d × %s", x.Kind, x.Count, x.Cable.ID)
	if x.Room >= 0 {
		text += ", " + w.Job.House.Rooms[x.Room].Name
	}
	if r.Blocked != nil {
		return text + ", no allowed route"
	}
	return text + ", cut " + w.Job.House.Units.Format(r.Lengths.Cut)
}

func routeLines(d *compare.Difference) []string {
	var out []string
	for i := range d.Routes {
		x := &d.Routes[i]
		text := x.Tag + " the same way, another length"
		if x.Other {
			text = x.Tag + " another way"
		}
		if x.Cut[0] != x.Cut[1] {
			text += fmt.Sprintf(": cut %s", fromTo(d.Plans[0].Job.House.Units.Format(x.Cut[0]), d.Plans[1].Job.House.Units.Format(x.Cut[1])))
		}
		out = append(out, text)
		for side, name := range []string{"A", "B"} {
			if len(x.Only[side]) > 0 {
				out = append(out, fmt.Sprintf(DetailIndent+"only in %s: %s", name, legsText(d, side, x.In[side], x.Only[side])))
			}
		}
	}
	return out
}

func legsText(d *compare.Difference, side, index int, legs []int) string {
	w := d.Plans[side]
	var parts []string
	for _, i := range legs {
		l := &w.Routes[index].Legs[i]
		text := l.Kind.String()
		if way := l.Heading.String(); way != "" {
			text += " " + way
		}
		text += " " + w.Job.House.Units.Format(l.Length)
		if l.Hole >= 0 {
			text += " (" + w.Holes[l.Hole].ID + ")"
		}
		if l.There != "" {
			text += " (" + l.There + ")"
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

func holeLines(d *compare.Difference) []string {
	var out []string
	for i := range d.Holes {
		x := &d.Holes[i]
		switch x.How {
		case compare.Added:
			out = append(out, "added: "+holeText(d, 1, x.In[1])+throughThere(x, "A"))
			continue
		case compare.Gone:
			out = append(out, "saved: "+holeText(d, 0, x.In[0])+throughThere(x, "B"))
			continue
		}
		parts := []string{}
		if x.By > 0 {
			parts = append(parts, "moved "+units(d).Format(x.By))
		}
		if x.Size {
			parts = append(parts, "size: "+fromTo(sizeText(d, 0, x.In[0]), sizeText(d, 1, x.In[1])))
		}
		if x.Cables[0] != x.Cables[1] {
			parts = append(parts, fmt.Sprintf("cables: %d → %d", x.Cables[0], x.Cables[1]))
		}
		out = append(out, "changed: "+holeText(d, 1, x.In[1])+": "+strings.Join(parts, "; "))
	}
	return out
}

func throughThere(h *compare.Hole, other string) string {
	if h.There == "" {
		return ""
	}
	return fmt.Sprintf("; %s goes through %s, which is there", other, h.There)
}

// holeText is a hole with its place and the number it has in its plan.
func holeText(d *compare.Difference, side, i int) string {
	w := d.Plans[side]
	h := &w.Holes[i]
	place := &w.Graph.Holes[h.Place]
	text := place.Kind.String()
	if where := HoleWhere(w.Result, place); where != "" {
		text += ", " + where
	}
	return fmt.Sprintf("%s, %s (%s in %s)", text, sizeText(d, side, i), h.ID, string(rune('A'+side)))
}

func sizeText(d *compare.Difference, side, i int) string {
	w := d.Plans[side]
	var parts []string
	for _, b := range w.Holes[i].Bores {
		size := "no bit"
		if b.Bit > 0 {
			size = w.Job.House.Units.Format(b.Bit)
		}
		parts = append(parts, size)
	}
	return strings.Join(parts, " and ")
}

func reuseLines(d *compare.Difference) []string {
	var out []string
	for i := range d.Reused {
		x := &d.Reused[i]
		out = append(out, fmt.Sprintf("%s, cables through it: %d → %d", x.ID, x.Cables[0], x.Cables[1]))
	}
	return out
}

// CompareFigures are the figures of both plans in rows: what, A, B, and how
// much more it is in B.
func CompareFigures(d *compare.Difference) [][]string {
	rows := [][]string{{"", "A", "B", "B less A"}, figureRow(d, d.Cost)}
	for _, f := range d.Figures {
		rows = append(rows, figureRow(d, f))
	}
	for _, c := range d.Cables {
		rows = append(rows, figureRow(d, compare.Figure{
			What: "cable to cut, " + c.ID, Unit: compare.Length, Is: [2]int64{int64(c.Length[0]), int64(c.Length[1])},
		}), figureRow(d, compare.Figure{
			What: "pieces of " + c.ID, Unit: compare.Number, Is: [2]int64{int64(c.Cables[0]), int64(c.Cables[1])},
		}))
	}
	return rows
}

// CompareTerms are the terms of the cost of both plans in rows, those that are
// the same, too.
func CompareTerms(d *compare.Difference) [][]string {
	rows := [][]string{{"", "A", "B", "B less A"}}
	for _, f := range d.Terms {
		rows = append(rows, figureRow(d, f))
	}
	rows = append(rows, append([]string{"total"}, figureRow(d, d.Cost)[1:]...))
	if !d.OneCurrency() {
		rows = append(rows, []string{otherMoney})
	}
	return rows
}

func figureRow(d *compare.Difference, f compare.Figure) []string {
	row := []string{f.What}
	for side, n := range f.Is {
		row = append(row, figureText(d, side, f.Unit, n))
	}
	if f.Unit == compare.Money && !d.OneCurrency() {
		return append(row, "–")
	}
	n := f.Change()
	switch {
	case n > 0:
		return append(row, "+"+figureText(d, 1, f.Unit, n))
	case n < 0:
		return append(row, "-"+figureText(d, 1, f.Unit, -n))
	}
	return append(row, "same")
}

func figureText(d *compare.Difference, side int, unit compare.Unit, n int64) string {
	switch unit {
	case compare.Money:
		return money(d.Plans[side].Result, n)
	case compare.Length:
		return d.Plans[side].Job.House.Units.Format(measure.Length(n))
	case compare.Minutes:
		return estimate.Duration(n)
	}
	return fmt.Sprint(n)
}
