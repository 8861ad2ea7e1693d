package report

import (
	"io"

	"topplate/plan"
	"topplate/plan/price"
	"topplate/route"
)

// Why writes the explanation of one drop's route: what it adds to the plan,
// term by term, and what other ways would have cost.
func Why(w io.Writer, res *route.Result, e *route.Explanation) error {
	p := &printer{w: w}
	d := &res.Job.Drops[e.Route.Drop]
	p.printf("%s, %s, %d × %s\n\nWhat it adds to the plan\n", d.Tag, d.Kind, d.Count, d.Cable.ID)
	var rows [][]string
	for _, t := range e.Terms {
		term, _ := price.Lookup(t.Term)
		rows = append(rows, []string{term.Title, money(res, t.Amount)})
	}
	rows = append(rows, []string{"total", money(res, e.Total)})
	p.table(rows)
	if len(e.With) > 0 {
		p.printf("  parts of the way are there for")
		for _, i := range e.With {
			p.printf(" %s", res.Job.Drops[i].Tag)
		}
		p.printf(" anyway; by itself the drop would cost %s\n", money(res, e.Route.Alone))
	}
	p.printf("\nThe best other ways\n")
	if res.Job.Weights != plan.EvenWeights {
		p.printf("  The job's weights chose the plan. Prices here are without them, so that another way may cost less.\n")
	}
	for _, a := range e.Dearer {
		if a.More < 0 {
			p.printf("  without %s: %s less\n", a.Without, money(res, -a.More))
			continue
		}
		p.printf("  without %s: %s more\n", a.Without, money(res, a.More))
	}
	if len(e.Dearer) == 0 {
		p.printf("  none is allowed\n")
	}
	p.barred(res, e)
	return p.err
}

// barred lists the ways that a rule keeps out.
func (p *printer) barred(res *route.Result, e *route.Explanation) {
	p.printf("\nKept out by a rule\n")
	for _, a := range e.Barred {
		if a.More < 0 {
			p.printf("  %s less by itself, but:\n", money(res, -a.More))
		} else {
			p.printf("  %s more by itself, and:\n", money(res, a.More))
		}
		for i := range a.Blocks {
			b := &a.Blocks[i]
			p.printf("    %s: %s: %s [%s]\n      would allow it: %s\n", b.Pos, b.Title(), b.Found, b.Rule, b.Change)
		}
	}
	if len(e.Barred) == 0 {
		p.printf("  nothing better\n")
	}
}
