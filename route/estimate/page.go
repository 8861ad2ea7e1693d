package estimate

import (
	"fmt"
	"strings"

	"topplate/route"
	"topplate/route/parts"
)

// A Row is one row of the page.
type Row struct {
	Text, Time, Amount string
	Sum                bool // set off from the lines above it
}

// Rows are the page from top to bottom, without the notes.
func (e *Estimate) Rows() []Row {
	var out []Row
	for _, l := range e.Labour {
		out = append(out, Row{Text: l.Text, Time: Duration(l.Minutes), Amount: e.Money(l.Amount)})
	}
	out = append(out, Row{Text: "Work together", Time: Duration(e.Minutes), Amount: e.Money(e.LabourSum), Sum: true})
	for _, l := range e.Material {
		out = append(out, Row{Text: l.Text, Amount: e.Money(l.Amount)})
	}
	return append(out,
		Row{Text: "Material together", Amount: e.Money(e.MaterialSum), Sum: true},
		Row{Text: "Work and material", Amount: e.Money(e.Subtotal), Sum: true},
		Row{Text: fmt.Sprintf("Allowance, %d %%", e.Percent), Amount: e.Money(e.Allowance)},
		Row{Text: "Total", Amount: e.Money(e.Total), Sum: true})
}

// notes says in plain words what the sums rest on.
func (e *Estimate) notes(res *route.Result, lines []parts.Line) {
	job := res.Job
	add := func(format string, args ...any) { e.Notes = append(e.Notes, fmt.Sprintf(format, args...)) }
	add("Work is %s at %s an hour for each person who works.", Duration(e.Minutes), e.Hour)
	add("The allowance of %d %% is for what nobody can see before the work begins.", e.Percent)
	add("Cable is charged by the length that is cut, other parts by the piece.")
	add("Each line is rounded to the minute and to the smallest coin, and the sums are those of the lines.")
	if tags := tagsOf(res, func(r *route.Route) bool { return r.Blocked == nil && job.Drops[r.Drop].Later }); tags != "" {
		add("Left for another day, and not in the sums: %s.", tags)
	}
	if tags := tagsOf(res, func(r *route.Route) bool { return r.Blocked != nil }); tags != "" {
		add("Not possible as planned, and not in the sums: %s.", tags)
	}
	var unpriced []string
	for i := range lines {
		if l := &lines[i]; !l.Priced && l.Need > 0 {
			unpriced = append(unpriced, fmt.Sprintf("%d %s", l.Need, l.ID))
		}
	}
	if len(unpriced) > 0 {
		add("Without a price, and not in the sums: %s.", strings.Join(unpriced, ", "))
	}
	add("Not in the sums: taxes, permits, work on power by a licensed electrician, and devices that are plugged in.")
}

// tagsOf lists the tags of some routes.
func tagsOf(res *route.Result, which func(*route.Route) bool) string {
	var out []string
	for i := range res.Routes {
		if which(&res.Routes[i]) {
			out = append(out, res.Job.Drops[res.Routes[i].Drop].Tag)
		}
	}
	return strings.Join(out, ", ")
}
