// Package work gathers all that a job's folder tells.
//
// A solved route.Result comes in. Out goes a Work: the result with what its
// sister packages make of it, and all their findings in one list. The package
// decides and reckons nothing itself, reads and writes no file, and draws
// nothing.
package work

import (
	"cmp"
	"slices"

	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/check"
	"topplate/route/cut"
	"topplate/route/estimate"
	"topplate/route/fix"
	"topplate/route/parts"
	"topplate/route/tags"
	"topplate/route/tasks"
)

// A Work is a planned job with everything that has to be known and bought for
// it. Its findings are those of all packages.
type Work struct {
	*route.Result
	Fixes    []fix.Hole // in the order of Holes
	Cuts     *cut.Cuts
	Labels   []tags.Label
	Parts    []parts.Line
	Tasks    *tasks.Work
	Estimate *estimate.Estimate
	Devices  []check.Device
}

// Of works out a solved job. The result itself is not changed. It fails only
// where the order of work does, which no loaded job makes happen.
func Of(res *route.Result) (*Work, error) {
	all := *res
	w := &Work{Result: &all, Fixes: fix.Holes(res), Devices: check.Devices(res)}
	all.Findings = slices.Concat(res.Findings, check.Findings(res))
	add := func(more []route.Finding) { all.Findings = append(all.Findings, more...) }
	var more []route.Finding
	w.Cuts, more = cut.Plan(res)
	add(more)
	w.Labels, more = tags.Labels(res)
	add(more)
	w.Parts, more = parts.List(res, parts.Given{Cuts: w.Cuts, Labels: w.Labels, Prices: res.Job.PartPrices})
	add(more)
	var err error
	if w.Tasks, err = tasks.Order(res); err != nil {
		return nil, err
	}
	add(w.Tasks.Notes)
	w.Estimate, more = estimate.Of(res, w.Parts, hours(w.Tasks))
	add(more)
	slices.SortStableFunc(all.Findings, func(a, b route.Finding) int {
		return cmp.Or(cmp.Compare(a.Severity, b.Severity), route.CompareTags(a.Where, b.Where), cmp.Compare(a.Rule, b.Rule))
	})
	return w, nil
}

// hours are those of the tasks.
func hours(t *tasks.Work) estimate.Hours {
	var h estimate.Hours
	for _, task := range t.Tasks {
		for _, p := range task.Parts {
			h.Add(p.Term, p.Thousandths)
		}
	}
	return h
}

// Rules are the rules of all packages that find something, in the order in
// which they are printed.
var Rules = slices.Concat(rule.Rules, cut.Rules, tags.Rules, parts.Rules, tasks.Rules, estimate.Rules)

// Limits are the numbers of all packages that are known by an id.
var Limits = slices.Concat(rule.Limits, fix.Limits)

// Lookup finds a rule by its id.
func Lookup(id rule.ID) (rule.Rule, bool) {
	i := slices.IndexFunc(Rules, func(r rule.Rule) bool { return r.ID == id })
	if i < 0 {
		return rule.Rule{}, false
	}
	return Rules[i], true
}
