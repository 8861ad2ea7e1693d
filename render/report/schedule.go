package report

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/estimate"
	"topplate/route/order"
	"topplate/route/work"
)

// Schedule writes the whole job as text: the drops with their lengths, the
// routes leg by leg, how holes are made and found, cuts, parts, the order of
// work, power, labels, the estimate, what the plan was chosen by, the findings
// and the cautions.
func Schedule(w io.Writer, res *work.Work) error {
	p := &printer{w: w}
	job := res.Job
	p.printf("%s\n%s, %s\n\n", job.Name, job.House.Name, job.House.Place)
	p.drops(res.Result)
	p.legs(res.Result)
	p.holes(res)
	p.reused(res.Result)
	p.cuts(res)
	p.section(partTable(res))
	p.order(res)
	p.section(powerTable(res))
	p.section(labelTable(res))
	p.estimate(res)
	p.cost(res.Result)
	p.printf("Findings\n")
	if p.err == nil {
		p.err = Findings(w, res)
	}
	p.printf("\nCautions\n")
	for _, id := range res.Cautions {
		rl, _ := rule.Lookup(id)
		p.printf("  %s. %s\n", rl.Title, rl.Text)
	}
	p.printf("  %s\n", Deference)
	return p.err
}

// section prints a table under its title, if there is anything in it.
func (p *printer) section(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	p.printf("%s\n", t.Title)
	p.table(append([][]string{t.Head}, t.Rows...))
	p.printf("\n")
}

// Deference is printed with every set of cautions.
const Deference = "This plan does not show compliance with any code. Local codes and licensed practice come first."

// table writes rows of cells in columns.
func (p *printer) table(rows [][]string) {
	if p.err != nil {
		return
	}
	t := tabwriter.NewWriter(p.w, 0, 0, 2, ' ', 0)
	for _, r := range rows {
		fmt.Fprintf(t, "  %s\n", strings.TrimRight(strings.Join(r, "\t"), "\t"))
	}
	p.err = t.Flush()
}

// drops lists every drop with the parts of its cut length.
func (p *printer) drops(res *route.Result) {
	job, u := res.Job, res.Job.House.Units
	p.printf("Drops\n")
	rows := [][]string{{"tag", "kind", "cables", "cable", "route", "closet", "outlet", "trim", "sketch", "allowance", "cut each", "bends"}}
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &job.Drops[r.Drop]
		if r.Blocked != nil {
			rows = append(rows, []string{d.Tag, d.Kind.String(), fmt.Sprint(d.Count), d.Cable.ID, "no allowed route"})
			continue
		}
		l := r.Lengths
		row := []string{d.Tag, d.Kind.String(), fmt.Sprint(d.Count), d.Cable.ID}
		for _, x := range []measure.Length{l.Developed, l.Closet, l.Outlet, l.Trim, l.Sketch, l.Allowance, l.Cut} {
			row = append(row, u.Format(x))
		}
		rows = append(rows, append(row, fmt.Sprint(r.Bends)))
	}
	p.table(rows)
	for _, t := range res.Tails {
		p.printf("  %s: %s, %s to cut\n", t.Cable, counted(t.Cables, "cable"), u.Format(t.Length))
	}
	p.printf("\n")
}

// legs lists every route leg by leg, from the closet out.
func (p *printer) legs(res *route.Result) {
	u := res.Job.House.Units
	p.printf("Routes, from the closet\n")
	for i := range res.Routes {
		r := &res.Routes[i]
		if r.Blocked != nil {
			continue
		}
		p.printf("  %s\n", res.Job.Drops[r.Drop].Tag)
		var rows [][]string
		for _, l := range r.Legs {
			hole := l.There
			if l.Hole >= 0 {
				hole = res.Holes[l.Hole].ID
			}
			zone := ""
			if l.InAttic() {
				zone = l.Zone.String()
			}
			row := []string{"  " + l.Kind.String(), l.Heading.String(), u.Format(l.Length), hole, zone}
			if several(res.Job.House) {
				row = append(row, InSpace(res.Job.House, l.Space))
			}
			rows = append(rows, row)
		}
		p.table(rows)
	}
	p.printf("\n")
}

// holes tells how every hole is made, and how it is found from below and from
// above.
func (p *printer) holes(res *work.Work) {
	u := res.Job.House.Units
	p.printf("Holes\n")
	for i := range res.Fixes {
		h := &res.Fixes[i]
		place := &res.Graph.Holes[res.Holes[h.Index].Place]
		p.printf("  %s  %s, %s: %s (%s), bundle %s\n", h.ID, h.Member, HoleIn(res.Result, place), counted(h.Cables, "cable"), tagsOf(res.Result, h.Drops), u.Format(h.Bundle))
		p.printf("      bore: %s\n", boresText(h, u))
		if t := allowedText(h, u); t != "" {
			p.printf("      largest allowed: %s\n", t)
		}
		if t := platesText(h); t != "" {
			p.printf("      wants: %s\n", t)
		}
		if t := sealText(h); t != "" {
			p.printf("      seal against: %s\n", t)
		}
		p.printf("      from below: %s\n", h.Below.Text)
		for j, line := range h.FoundText() {
			if j == 0 {
				line = "from above: " + line
			}
			p.printf("      %s\n", line)
		}
	}
	p.printf("\n")
}

// cuts tells how the cables come off their spools.
func (p *printer) cuts(res *work.Work) {
	p.section(spoolTable(res))
	p.section(cutTable(res))
}

// order is the order of work, visit by visit.
func (p *printer) order(res *work.Work) {
	t := res.Tasks
	up := "ways up"
	if several(res.Job.House) {
		up = "ways into attics and crawl spaces"
	}
	days := ""
	if t.Days > 1 {
		days = fmt.Sprintf("%d days, ", t.Days)
	}
	p.printf("Order of work: %d %s, %d changes of place, %s%s; drop after drop it would be %d %s, %d changes and %s more\n",
		t.Climbs, up, t.Changes, days, order.Span(t.Start, t.End), t.Baseline.Climbs, up, t.Baseline.Changes, estimate.Duration(int64(t.Saved().Minutes)))
	for i := range t.Visits {
		v := &t.Visits[i]
		if t.Days > 1 && (i == 0 || v.Arrive.Day() > t.Visits[i-1].Arrive.Day()) {
			p.printf("  Day %d\n", v.Arrive.Day())
		}
		who := ""
		if t.People > 1 {
			who = fmt.Sprintf(", person %d", v.Person)
		}
		if l := placeLevel(res.Job.House, v.Place); l != "" {
			who = ", " + l + who
		}
		p.printf("  %d  %s%s, %s\n", v.Number, v.Place.Title, who, order.Span(v.Arrive, v.Leave))
		if len(v.Carry) > 0 {
			p.printf("      carry: %s\n", carryText(v))
		}
		for j := range v.Steps {
			p.printf("      %s  %s\n", v.Steps[j].Number, v.Steps[j].Words)
		}
	}
	for _, d := range t.Deferred {
		p.printf("  for another day: %s\n", d)
	}
	p.printf("\n")
}

// estimate is the page for the homeowner.
func (p *printer) estimate(res *work.Work) {
	p.section(estimateTable(res))
	for _, n := range res.Estimate.Notes {
		p.printf("  %s\n", n)
	}
	p.printf("\n")
}

// reused lists the holes and conduits that are there and used.
func (p *printer) reused(res *route.Result) {
	if len(res.Reused) == 0 {
		return
	}
	h := res.Job.House
	p.printf("Holes and conduits that are there and used\n")
	rows := [][]string{{"which", "what", "where", "inside", "cables", "drops"}}
	for i := range res.Reused {
		u := &res.Reused[i]
		rows = append(rows, []string{
			u.ID, u.What(), HoleIn(res, &u.HolePlace),
			h.Units.Format(u.Inside), fmt.Sprint(u.Cables), tagsOf(res, u.Drops),
		})
	}
	p.table(rows)
	p.printf("\n")
}

// counted is a number of things in words.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

func tagsOf(res *route.Result, drops []int) string {
	return strings.Join(tagList(res, drops), " ")
}

func tagList(res *route.Result, drops []int) []string {
	tags := make([]string, len(drops))
	for i, d := range drops {
		tags[i] = res.Job.Drops[d].Tag
	}
	return tags
}

// HoleWhere says where a hole is, from the start of its wall or in its room.
func HoleWhere(res *route.Result, place *route.HolePlace) string {
	h := res.Job.House
	if place.Wall >= 0 {
		return fmt.Sprintf("%s along wall %s", h.Units.Format(place.Along), h.Walls[place.Wall].ID)
	}
	if place.Room >= 0 {
		return h.Rooms[place.Room].Name
	}
	return ""
}

// HoleIn is HoleWhere, with the level and the space that it opens into in a
// house of several.
func HoleIn(res *route.Result, place *route.HolePlace) string {
	h := res.Job.House
	text := HoleWhere(res, place)
	if !several(h) {
		return text
	}
	if l := levelID(h, holeLevel(res, place)); l != "" {
		text += ", level " + l
	}
	if s := InSpace(h, place.Space); s != "" {
		text += ", opens " + s
	}
	return text
}

// Summary says in a few sentences what the job is and how good its plan.
func Summary(res *route.Result) []string {
	cables := 0
	for i := range res.Job.Drops {
		cables += res.Job.Drops[i].Count
	}
	return []string{
		fmt.Sprintf("%d of %d drops routed, %s in all, through %s.", routed(res), len(res.Routes), counted(cables, "cable"), counted(len(res.Holes), "hole")),
		fmt.Sprintf("The plan is worth %s of work and cable; %s.", money(res, res.Cost.Total), proof(res)),
	}
}

// proof says how good the plan is.
func proof(res *route.Result) string {
	c := res.Cost
	if c.Proved {
		return "proved cheapest: no plan for these drops in this house, at these prices and rules, costs less"
	}
	if c.LowerBound <= 0 {
		return "no bound is known"
	}
	say := fmt.Sprintf("within %.1f %% of the cheapest: no plan costs less than %s", 100*float64(c.Total-c.LowerBound)/float64(c.LowerBound), money(res, c.LowerBound))
	if res.Stopped {
		return say + "; the search was ended early, and may find a cheaper plan in more time"
	}
	if c.Together == c.Total {
		say = "proved cheapest of the plans whose bundles stay together once cables have met; " + say
	}
	return say
}

// cost lists what the routes cost by term.
func (p *printer) cost(res *route.Result) {
	p.printf("Cost\n")
	var rows [][]string
	for _, t := range res.Cost.Terms {
		term, _ := price.Lookup(t.Term)
		rows = append(rows, []string{term.Title, money(res, t.Amount)})
	}
	rows = append(rows, []string{"total", money(res, res.Cost.Total)})
	p.table(rows)
	p.printf("  %s\n\n", proof(res))
}
