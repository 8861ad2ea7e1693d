package report

import (
	"fmt"
	"io"
	"strings"

	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/work"
)

// Findings writes the findings, worst first, and one line that counts them.
func Findings(w io.Writer, res *work.Work) error {
	p := &printer{w: w}
	var count [3]int
	for i := range res.Findings {
		f := &res.Findings[i]
		count[f.Severity]++
		p.printf("%s: %s: %s: %s [%s]\n", f.Pos, f.Severity, f.Where, f.Found, f.Rule)
		if f.Change != "" {
			p.printf("    would help: %s\n", f.Change)
		}
		if rl, ok := work.Lookup(f.Rule); ok && f.Severity != rule.Note {
			p.printf("    %s (%s)\n", rl.Text, rl.Source)
		}
	}
	for i := range res.Routes {
		if r := &res.Routes[i]; r.Blocked != nil {
			p.printf("%s has no allowed route; the cheapest change is worth about %s more work\n",
				res.Job.Drops[r.Drop].Tag, money(res.Result, r.Blocked.Changes))
		}
	}
	p.printf("%d of %d drops routed; %d stop, %d caution, %d note\n",
		routed(res.Result), len(res.Routes), count[rule.Stop], count[rule.Caution], count[rule.Note])
	return p.err
}

// Check writes the findings, and the cautions of the job in a line each: their
// titles and first sentences. Schedule has them whole.
func Check(w io.Writer, res *work.Work) error {
	if err := Findings(w, res); err != nil {
		return err
	}
	p := &printer{w: w}
	p.printf("\nCautions\n")
	for _, id := range res.Cautions {
		rl, _ := rule.Lookup(id)
		first, _, _ := strings.Cut(rl.Text, ". ")
		p.printf("  %s: %s. [%s]\n", rl.Title, strings.TrimSuffix(first, "."), id)
	}
	p.printf("  %s\n", Deference)
	return p.err
}

func routed(res *route.Result) int {
	n := 0
	for i := range res.Routes {
		if res.Routes[i].Blocked == nil {
			n++
		}
	}
	return n
}

// A printer keeps the first error of a writer.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) printf(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, args...)
	}
}

// money prints cost units in the job's currency, to the nearest hundredth.
func money(res *route.Result, units int64) string {
	return amount(units) + " " + res.Job.Rates.Currency
}

// amount is money without its currency.
func amount(units int64) string {
	cents := (units + 5_000) / 10_000
	return fmt.Sprintf("%d.%02d", cents/100, cents%100)
}
