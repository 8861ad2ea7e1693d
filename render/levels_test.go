package render_test

import (
	"path/filepath"
	"strings"
	"testing"

	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/sheet"
	"topplate/route"
)

// storeys are jobs in a house of three levels with a crawl space.
var storeys = []string{"testdata/two-storeys/job.toml", "testdata/two-storeys/job-cellar.toml"}

// checkLevels holds the plans of a house of several levels against what they
// promise: no text overlaps another, every drop is on one floor plan or more,
// and every hole on one floor plan and on one of a space.
func checkLevels(t *testing.T, res *route.Result, sheets []*sheet.Sheet) {
	t.Helper()
	ids := map[string]bool{}
	shown := map[string]string{}
	for _, s := range sheets {
		if ids[s.ID] {
			t.Errorf("two sheets are called %s", s.ID)
		}
		ids[s.ID] = true
		words := "\n" + strings.Join(checkTexts(t, res, s), "\n") + "\n"
		kind := "space"
		switch {
		case strings.HasPrefix(s.ID, "floor"):
			kind = "floor"
		case strings.HasPrefix(s.ID, "openings"):
			kind = "openings"
		case strings.Contains(s.ID, "-fixes"):
			kind = "fixes"
		}
		shown[kind] += words
		if !names(words, s.Title) {
			t.Errorf("%s has no room for its title %q", s.ID, s.Title)
		}
	}
	for i := range res.Routes {
		if tag := res.Job.Drops[res.Routes[i].Drop].Tag; !names(shown["floor"], tag) {
			t.Errorf("no floor plan shows drop %s", tag)
		}
	}
	for i := range res.Holes {
		for _, kind := range []string{"floor", "space"} {
			if id := res.Holes[i].ID; !names(shown[kind], id) {
				t.Errorf("no %s plan shows hole %s through the %s", kind, id, res.Graph.Holes[res.Holes[i].Place].Kind)
			}
		}
	}
}

func TestSheetsOfLevels(t *testing.T) {
	for _, job := range storeys {
		t.Run(filepath.Base(job), func(t *testing.T) {
			res := solve(t, job, source.ReadFile)
			checkLevels(t, res, render.Sheets(fixed(res)))
			checkDetails(t, res)
			checkSketch(t, res)
		})
	}
}

func TestSheetsOfRandomLevels(t *testing.T) {
	for seed := range uint64(12) {
		sketch := randomhouse.Generate(seed, randomhouse.Options{Drops: 3 + int(seed%10), Levels: true})
		res := solve(t, "job.toml", sketch.Read)
		checkLevels(t, res, render.Sheets(fixed(res)))
		if checkDetails(t, res); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}
