package estimate

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/rule"
	"topplate/route"
)

// Ids of what is found here.
const (
	NoRate     rule.ID = "hour-without-rate"
	NotCounted rule.ID = "drop-not-in-estimate"
)

// Rules are the rules of this package, for whoever prints all of them.
var Rules = []rule.Rule{
	{
		ID: NoRate, Title: "An hour costs nothing", Severity: rule.Note,
		Source: rule.Source{Status: rule.CommonPractice},
		Text:   "Without a rate the estimate is for material only; its hours are told all the same.",
		Change: "hour under [rates]",
	},
	{
		ID: NotCounted, Title: "Drop that the estimate leaves out", Severity: rule.Note,
		Source: rule.Source{Status: rule.CommonPractice},
		Text:   "A drop without a way has no price. What it is that stops it is a finding of its own.",
		Change: "a way for the drop",
	},
}

func findings(res *route.Result) []route.Finding {
	var out []route.Finding
	if res.Job.Rates.Hour == 0 {
		out = append(out, route.Finding{
			Rule: NoRate, Severity: rule.Note, Pos: diag.Pos{File: res.Job.File}, Where: res.Job.Name,
			Found: "an hour costs nothing: the estimate is for material only", Change: "hour under [rates]",
		})
	}
	for i := range res.Routes {
		if r := &res.Routes[i]; r.Blocked != nil {
			d := &res.Job.Drops[r.Drop]
			out = append(out, route.Finding{
				Rule: NotCounted, Severity: rule.Note, Pos: d.Pos, Where: d.Tag,
				Found: fmt.Sprintf("no way for %s: it is in no sum of the estimate", named(d)), Change: "a way for the drop",
			})
		}
	}
	return out
}

func named(d *plan.Drop) string {
	if d.Note == "" {
		return d.Tag
	}
	return d.Tag + " (" + d.Note + ")"
}
