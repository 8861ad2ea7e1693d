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
)

// Schedule writes the whole result as text: the drops with their lengths, the
// routes leg by leg, the holes, the cost and the findings.
func Schedule(w io.Writer, res *route.Result) error {
	p := &printer{w: w}
	job := res.Job
	p.printf("%s\n%s, %s\n\n", job.Name, job.House.Name, job.House.Place)
	p.drops(res)
	p.legs(res)
	p.holes(res)
	p.reused(res)
	p.cost(res)
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
		p.printf("  %s: %d cables, %s to cut\n", t.Cable, t.Cables, u.Format(t.Length))
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
			hole := ""
			if l.Hole >= 0 {
				hole = res.Holes[l.Hole].ID
			}
			zone := ""
			if l.InAttic() {
				zone = l.Zone.String()
			}
			rows = append(rows, []string{"  " + l.Kind.String(), l.Heading.String(), u.Format(l.Length), hole, zone})
		}
		p.table(rows)
	}
	p.printf("\n")
}

// holes lists every hole that is bored.
func (p *printer) holes(res *route.Result) {
	u := res.Job.House.Units
	p.printf("Holes\n")
	rows := [][]string{{"hole", "through", "where", "cables", "bundle", "bit", "holes", "largest allowed", "from"}}
	for i := range res.Holes {
		h := &res.Holes[i]
		place := &res.Graph.Holes[h.Place]
		from, largest := "below", "–"
		if place.MemberWidth > 0 {
			largest = u.Format(h.Largest)
		}
		if place.FromAbove {
			from = "the attic"
		}
		rows = append(rows, []string{
			h.ID, place.Kind.String(), HoleWhere(res, place), fmt.Sprint(h.Cables), u.Format(h.Bundle),
			u.Format(h.Bit), fmt.Sprint(h.Count), largest, from,
		})
	}
	p.table(rows)
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
		what := "hole"
		if u.Conduit {
			what = "conduit"
		}
		rows = append(rows, []string{
			u.ID, what, fmt.Sprintf("%s along wall %s", h.Units.Format(u.Along), h.Walls[u.Wall].ID),
			h.Units.Format(u.Inside), fmt.Sprint(u.Cables), tagsOf(res, u.Drops),
		})
	}
	p.table(rows)
	p.printf("\n")
}

func tagsOf(res *route.Result, drops []int) string {
	tags := make([]string, len(drops))
	for i, d := range drops {
		tags[i] = res.Job.Drops[d].Tag
	}
	return strings.Join(tags, " ")
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

// Summary says in a few sentences what the job is and how good its plan.
func Summary(res *route.Result) []string {
	cables := 0
	for i := range res.Job.Drops {
		cables += res.Job.Drops[i].Count
	}
	return []string{
		fmt.Sprintf("%d of %d drops routed, %d cables in all, through %d holes.", routed(res), len(res.Routes), cables, len(res.Holes)),
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
