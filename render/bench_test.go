package render_test

import (
	"testing"

	"topplate/plan"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/render"
	"topplate/route"
)

// Benchmark times each stage on both samples and on a random house of ten
// times the usual floor area.
func Benchmark(b *testing.B) {
	large := randomhouse.Generate(5, randomhouse.Options{Area: 10, Drops: 10})
	for _, c := range []struct {
		name, path string
		read       func(string) ([]byte, error)
	}{
		{"corner-house", "../samples/corner-house/job.toml", source.ReadFile},
		{"long-roof", "../samples/long-roof/job.toml", source.ReadFile},
		{"ten-times", "job.toml", large.Read},
	} {
		b.Run("load/"+c.name, func(b *testing.B) {
			for b.Loop() {
				if job, _ := plan.LoadJob(c.path, c.read); job == nil {
					b.Fatal("does not load")
				}
			}
		})
		job, _ := plan.LoadJob(c.path, c.read)
		b.Run("build/"+c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := route.Build(job); err != nil {
					b.Fatal(err)
				}
			}
		})
		var res *route.Result
		b.Run("solve/"+c.name, func(b *testing.B) {
			for b.Loop() {
				var err error
				if res, err = route.Solve(job); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(res.Graph.Nodes)), "nodes")
			b.ReportMetric(100*float64(res.Cost.Total-res.Cost.LowerBound)/float64(max(res.Cost.LowerBound, 1)), "%gap")
		})
		b.Run("draw/"+c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := render.Folder(whole(b, res), render.Also{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkDetails times the elevations and sections alone.
func BenchmarkDetails(b *testing.B) {
	for _, path := range []string{"../samples/corner-house/job.toml", "../samples/long-roof/job.toml"} {
		res := solve(b, path, source.ReadFile)
		b.Run(name(path), func(b *testing.B) {
			for b.Loop() {
				render.Details(res)
			}
		})
	}
}

// BenchmarkSheets times the openings, the plans and the fixes alone.
func BenchmarkSheets(b *testing.B) {
	for _, path := range []string{"../samples/corner-house/job.toml", "../samples/long-roof/job.toml", "testdata/long-building/job.toml"} {
		w := fixed(solve(b, path, source.ReadFile))
		b.Run(name(path), func(b *testing.B) {
			for b.Loop() {
				render.Sheets(w)
			}
		})
	}
}
