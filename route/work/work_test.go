package work_test

import (
	"os"
	"testing"

	"topplate/plan"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/route"
	"topplate/route/work"
)

func worked(t *testing.T, path string, read plan.FileReader) *work.Work {
	t.Helper()
	job, list := plan.LoadJob(path, read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%s does not load", path)
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	w, err := work.Of(res)
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Findings) < len(res.Findings) || len(w.Fixes) != len(res.Holes) {
		t.Errorf("%s: %d findings of %d, %d fixes of %d holes", path, len(w.Findings), len(res.Findings), len(w.Fixes), len(res.Holes))
	}
	return w
}

// Every rule has one record, every finding of the samples and of random houses
// names one, and the severity is the record's or route's own for a drop that is
// blocked or moved.
func TestFindingsNameTheirRules(t *testing.T) {
	seen := map[string]bool{}
	for i := range work.Rules {
		if id := string(work.Rules[i].ID); seen[id] {
			t.Errorf("rule %s has two records", id)
		} else {
			seen[id] = true
		}
	}
	var all []*work.Work
	for _, path := range []string{"../../samples/corner-house/job.toml", "../../samples/long-roof/job.toml", "../../cmd/topplate/starter/job.toml"} {
		all = append(all, worked(t, path, source.ReadFile))
	}
	for seed := range uint64(12) {
		all = append(all, worked(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read))
	}
	for _, w := range all {
		for i := range w.Findings {
			f := &w.Findings[i]
			if _, ok := work.Lookup(f.Rule); !ok || f.Found == "" || f.Pos.File == "" {
				t.Errorf("%s: finding %+v has no rule, text or place", w.Job.Name, *f)
			}
			if i > 0 && w.Findings[i-1].Severity > f.Severity {
				t.Errorf("%s: finding %s comes after one that matters less", w.Job.Name, f.Rule)
			}
		}
	}
}

// The hours of the estimate are those of the tasks: to the minute that each
// line is rounded by.
func TestEstimateHasTheHoursOfTheTasks(t *testing.T) {
	for _, path := range []string{"../../samples/corner-house/job.toml", "../../samples/long-roof/job.toml"} {
		w := worked(t, path, source.ReadFile)
		var sum int64
		for _, task := range w.Tasks.Tasks {
			for _, p := range task.Parts {
				sum += p.Thousandths
			}
		}
		if diff := w.Estimate.Minutes - sum/1000; diff > int64(len(w.Estimate.Labour)) || -diff > int64(len(w.Estimate.Labour)) {
			t.Errorf("%s: %d minutes in the estimate, %d.%03d of tasks", path, w.Estimate.Minutes, sum/1000, sum%1000)
		}
	}
}
