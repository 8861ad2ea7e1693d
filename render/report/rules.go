package report

import (
	"io"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/work"
)

// Rules writes the reference of everything that can be set by id, in Markdown:
// the limits that hold with their sources, the rules, and what the work costs.
func Rules(w io.Writer, book rule.Book, prices price.Table, u measure.System) error {
	p := &printer{w: w}
	p.printf("# Limits\n\nSet your own under [limits] in the job file.\n\n")
	p.printf("| id | what | value | allowed | source | why |\n|---|---|---|---|---|---|\n")
	for i := range work.Limits {
		l := &work.Limits[i]
		if known, ok := rule.LookupLimit(l.ID); ok {
			known = book.Limit(known.ID)
			l = &known
		}
		p.printf("| %s | %s | %s | %s | %s | %s |\n", l.ID, l.Title, l.Print(u), l.Allowed(u), l.Source, l.Text)
	}
	p.printf("\n# Rules\n\n| id | severity | what | source | what to do |\n|---|---|---|---|---|\n")
	for i := range work.Rules {
		r := &work.Rules[i]
		p.printf("| %s | %s | %s | %s | %s |\n", r.ID, r.Severity, r.Title, r.Source, r.Text)
	}
	p.printf("\n%s\n%s\n", prices.Page(), Deference)
	return p.err
}
