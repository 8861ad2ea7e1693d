package route

import (
	"slices"
	"testing"
	"time"

	"topplate/plan/randomhouse"
	"topplate/route/tree"
)

// BenchmarkSamplePlan is the search for the cheapest plan of each sample, once its
// graph is there.
func BenchmarkSamplePlan(b *testing.B) {
	for _, name := range []string{"corner-house", "long-roof", "two-storeys", "split-level", "plaster-house", "masonry-bungalow", "small-office"} {
		b.Run(name, func(b *testing.B) {
			g, err := Build(sample(b, name))
			if err != nil {
				b.Fatal(err)
			}
			var best tree.Plan
			for b.Loop() {
				best = planned(b, g)
			}
			b.ReportMetric(100*float64(best.Cost-best.LowerBound)/float64(best.LowerBound), "%gap")
			b.ReportMetric(float64(len(g.Job.Drops)), "places")
			b.ReportMetric(float64(len(g.Nodes)), "nodes")
			b.ReportMetric(float64(len(g.Arcs)), "arcs")
		})
	}
}

// BenchmarkHousePlan is the same for thirty random houses with so many places, all of
// which can be reached. Besides the mean it tells the median and what nine tenths are
// below, how many are proved, and how many of these in the time that is aimed at.
func BenchmarkHousePlan(b *testing.B) {
	for _, c := range []struct {
		name  string
		drops int
		aim   time.Duration
	}{{"8-places", 8, 50 * time.Millisecond}, {"12-places", 12, time.Second}} {
		b.Run(c.name, func(b *testing.B) {
			houses := housesWith(b, c.drops, 30)
			var took []time.Duration
			var proved, intime int
			for b.Loop() {
				took, proved, intime = nil, 0, 0
				for _, g := range houses {
					start := time.Now()
					best := planned(b, g)
					d := time.Since(start)
					if took = append(took, d); best.Proved {
						if proved++; d < c.aim {
							intime++
						}
					}
				}
			}
			slices.Sort(took)
			b.ReportMetric(took[len(took)/2].Seconds()*1000, "median-ms")
			b.ReportMetric(took[len(took)*9/10].Seconds()*1000, "p90-ms")
			b.ReportMetric(float64(proved), "proved")
			b.ReportMetric(float64(intime), "in-time")
		})
	}
}

// housesWith are graphs of random houses with so many drops that can be reached.
func housesWith(b *testing.B, drops, houses int) (out []*Graph) {
	b.Helper()
	for seed := uint64(0); len(out) < houses; seed++ {
		g, err := Build(randomJob(b, seed, randomhouse.Options{Drops: drops}))
		if err != nil {
			b.Fatal(err)
		}
		if !slices.Contains(tree.Reached(g.Net, int32(g.Root), g.terms()), false) {
			out = append(out, g)
		}
	}
	return out
}

func planned(tb testing.TB, g *Graph) tree.Plan {
	tb.Helper()
	best, err := g.cheapestPlan(g.Job.Book(), g.terms())
	if err != nil {
		tb.Fatal(err)
	}
	return best
}
