package order

import (
	"fmt"
	"testing"
)

func BenchmarkSolve(b *testing.B) {
	for _, drops := range []int{4, 12, 60} {
		for _, people := range []int{1, 2} {
			for _, limits := range []bool{false, true} {
				job := houseJob(drops, people, limits)
				b.Run(fmt.Sprintf("tasks=%d/people=%d/limits=%v", len(job.Tasks), people, limits), func(b *testing.B) {
					var r Result
					for b.Loop() {
						var err error
						if r, err = Solve(job); err != nil {
							b.Fatal(err)
						}
					}
					b.ReportMetric(float64(r.Steps), "steps")
					b.Logf("%+v climbs %d, bound %+v, proved %v %v, baseline %+v climbs %d", r.Score, r.Climbs, r.Bound,
						r.Proved, r.ProvedChanges, r.Baseline.Score, r.Baseline.Climbs)
				})
			}
		}
	}
}
