package randomhouse

import (
	"fmt"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/roof"
)

func load(t *testing.T, sk Sketch) *plan.Job {
	t.Helper()
	job, list := plan.LoadJob("job.toml", sk.Read)
	if list.HasErrors() {
		var b strings.Builder
		list.Print(&b, nil)
		t.Fatalf("not loaded:\n%s\n%s\n%s", b.String(), sk.House, sk.Job)
	}
	return job
}

func TestLoads(t *testing.T) {
	for seed := range uint64(300) {
		load(t, Generate(seed, Options{Symmetry: geom.Symmetry(seed % 8)}))
	}
}

// All that may be in a sketch is in some, in some number.
func TestVariety(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(300) {
		m := Generate(seed, Options{}).Model
		h := load(t, Generate(seed, Options{})).House
		seen[fmt.Sprintf("corners %d", len(m.Outline))]++
		seen[fmt.Sprintf("metric %v", m.Metric)]++
		seen[fmt.Sprintf("truss %v", m.Attic.Truss)]++
		seen[fmt.Sprintf("along Y %v", m.Attic.AlongY)]++
		seen[fmt.Sprintf("gables %v", len(m.Roof.Gables) > 0)]++
		seen[fmt.Sprintf("closet in the ceiling %v", m.CeilingCloset)]++
		seen["power"] += len(m.Power)
		seen["marks"] += len(m.Marks)
		seen["soffits"] += len(m.Soffits)
		seen["baffles"] += len(m.Baffles)
		seen["devices"] += len(m.Devices)
		for _, o := range m.Obstacles {
			seen[o.Kind]++
		}
		for _, o := range m.Openings {
			seen[o.Kind]++
		}
		for _, d := range m.Drops {
			seen[d.Kind]++
		}
		for _, run := range m.Power {
			if len(run) == 2 && run[0].X != run[1].X && run[0].Y != run[1].Y {
				seen["diagonal power"]++
			}
		}
		if h.Roof.Framing.Kind == roof.Truss {
			seen["raised heel"]++
		}
	}
	for _, what := range []string{
		"corners 4", "corners 6", "corners 8", "metric true", "metric false", "truss true", "truss false",
		"along Y true", "along Y false", "gables true", "gables false", "closet in the ceiling true", "closet in the ceiling false",
		"power", "diagonal power", "marks", "soffits", "baffles", "devices", "duct", "chimney", "flue", "tank", "light", "unit",
		"door", "passage", "window", "wall plate", "ceiling point", "soffit spot", "raised heel",
	} {
		if seen[what] < 15 {
			t.Errorf("%s: %d in 300 sketches", what, seen[what])
		}
	}
}

func TestReadOfOtherFiles(t *testing.T) {
	if _, err := Generate(1, Options{}).Read("other.toml"); err == nil {
		t.Error("there is a third file")
	}
}

// Storeys under storeys load, without a warning about how they stand, and all
// that may be under a sketch is under some.
func TestLevels(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(200) {
		o := Options{Levels: true, Symmetry: geom.Symmetry(seed % 8)}
		if seed%3 == 0 {
			o.Shuffle = seed + 1
		}
		sk := Generate(seed, o)
		job, list := plan.LoadJob("job.toml", sk.Read)
		var b strings.Builder
		list.Print(&b, nil)
		if job == nil || strings.Contains(b.String(), "nothing can be r") {
			t.Fatalf("seed %d:\n%s\n%s\n%s", seed, b.String(), sk.House, sk.Job)
		}
		s, h := sk.Model.Stack, job.House
		seen["below "+s.Below]++
		seen[fmt.Sprintf("parts %d", len(s.Rest))]++
		spaces := 2 + len(s.Rest)
		if s.Below != "" {
			spaces++
		}
		if len(h.Spaces) != spaces || len(h.Roofs) != 1+len(s.Rest) || h.Attic.ID != "attic" || len(job.Drops) != len(sk.Model.Drops)+len(s.Drops) {
			t.Errorf("seed %d: %d spaces and %d roofs; the main attic is %s", seed, len(h.Spaces), len(h.Roofs), h.Attic.ID)
		}
		plain := Generate(seed, Options{Symmetry: o.Symmetry}).Model
		stacked := sk.Model
		stacked.Stack = nil
		if fmt.Sprint(plain) != fmt.Sprint(stacked) {
			t.Errorf("seed %d: another model with levels", seed)
		}
	}
	for _, what := range []string{"below basement", "below crawl space", "below ", "parts 0", "parts 1", "parts 2"} {
		if seen[what] < 15 {
			t.Errorf("%s: %d in 200 sketches", what, seen[what])
		}
	}
}
