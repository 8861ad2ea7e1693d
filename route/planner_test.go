package route

import (
	"os"
	"testing"

	"topplate/plan"
	"topplate/plan/randomhouse"
)

// school is a large single-storey building at random.
func school(t testing.TB, seed uint64, area float64, drops int) *plan.Job {
	t.Helper()
	job, list := plan.LoadJob("job.toml", randomhouse.Generate(seed, randomhouse.Options{Area: area, Drops: drops}).Read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the building does not load")
	}
	return job
}

// A search that is stopped at once still answers: every drop is routed or told
// of, and the bound holds.
func TestStoppedSearchAnswers(t *testing.T) {
	job := school(t, 5, 2, 30)
	whole := solved(t, job)
	asked := 0
	res, err := Planner{Stop: func() bool { asked++; return true }}.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	if asked == 0 || !res.Stopped || whole.Stopped {
		t.Errorf("asked %d times, stopped %v; without a limit %v", asked, res.Stopped, whole.Stopped)
	}
	if res.routed() != whole.routed() {
		t.Errorf("%d drops routed, %d with more time", res.routed(), whole.routed())
	}
	if res.Cost.LowerBound > whole.Cost.Total || whole.Cost.LowerBound > res.Cost.Total || res.Cost.LowerBound <= 0 {
		t.Errorf("stopped: cost %d, bound %d; else cost %d, bound %d", res.Cost.Total, res.Cost.LowerBound, whole.Cost.Total, whole.Cost.LowerBound)
	}
	again, err := Planner{Stop: func() bool { return false }}.Solve(job)
	if err != nil || again.Stopped || again.Cost.Total != whole.Cost.Total {
		t.Errorf("never stopped: cost %d, want %d, %v", again.Cost.Total, whole.Cost.Total, err)
	}
}

// Large jobs: go test -run xxx -bench School ./route
func BenchmarkSchool(b *testing.B) {
	for _, c := range []struct {
		name  string
		area  float64
		drops int
	}{{"100", 12, 100}, {"300", 24, 300}, {"1000", 48, 1000}} {
		b.Run(c.name, func(b *testing.B) {
			job := school(b, 4, c.area, c.drops)
			for range b.N {
				res := solved(b, job)
				b.ReportMetric(100*float64(res.Cost.Total-res.Cost.LowerBound)/float64(res.Cost.LowerBound), "%gap")
				b.ReportMetric(float64(len(res.Graph.Nodes)), "nodes")
				b.ReportMetric(float64(len(res.Graph.Arcs)), "arcs")
				b.ReportMetric(float64(res.routed()), "routed")
			}
		})
	}
}
