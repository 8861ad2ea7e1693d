package report

import (
	"io"
	"strconv"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/work"
)

// plainHour is the rate that the prices are printed with when there is no job:
// thousandths of a currency's unit.
const plainHour = 60_000

// Rules writes the reference of everything that can be set by id, in Markdown:
// the limits that hold with their sources, the rules, and what the work costs.
// With a job it is that job's, and what the user set is marked with the file
// and line; the job may be nil.
func Rules(w io.Writer, job *plan.Job) error {
	book, prices, u := rule.NewBook(nil), price.NewTable(nil, plainHour), measure.Imperial
	var origins map[string][]diag.Pos
	if job != nil {
		book, prices, u, origins = job.Book(), job.PriceTable(), job.House.Units, job.Origins
	}
	p := &printer{w: w}
	p.printf("# Limits\n\nSet your own under [limits] in the job file, or in a file that it includes.\n\n")
	p.printf("| id | what | value | allowed | source | why |\n|---|---|---|---|---|---|\n")
	for i := range work.Limits {
		l := &work.Limits[i]
		if known, ok := rule.LookupLimit(l.ID); ok {
			known = book.Limit(known.ID)
			l = &known
		}
		source := l.Source.String()
		if own := setAt(origins, "limits."+string(l.ID)); own != "" {
			source = own
		}
		p.printf("| %s | %s | %s | %s | %s | %s |\n", l.ID, l.Title, l.Print(u), l.Allowed(u), source, l.Text)
	}
	p.printf("\n# Rules\n\n| id | severity | what | source | what to do |\n|---|---|---|---|---|\n")
	for i := range work.Rules {
		r := &work.Rules[i]
		p.printf("| %s | %s | %s | %s | %s |\n", r.ID, r.Severity, r.Title, r.Source, r.Text)
	}
	own := func(id price.ID) string { return setAt(origins, "prices."+string(id)) }
	p.printf("\n%s\n%s\n", prices.Page(own), Deference)
	return p.err
}

// setAt says where the value of a setting is that the user gave, if he did.
func setAt(origins map[string][]diag.Pos, path string) string {
	from := origins[path]
	if len(from) == 0 {
		return ""
	}
	return cell("set in " + fileLine(from[len(from)-1]))
}

func fileLine(p diag.Pos) string { return p.File + ":" + strconv.Itoa(p.Line) }
