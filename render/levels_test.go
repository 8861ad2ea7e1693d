package render_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/render"
	"topplate/render/sheet"
	"topplate/route"
	plans "topplate/route/compare"
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
			res := solveFile(t, job)
			sheets := render.Sheets(fixed(res))
			checkLevels(t, res, sheets)
			checkOpenings(t, res, sheets)
			checkDetails(t, res)
			checkSketch(t, res)
		})
	}
}

// Plans of a house of several levels are compared level by level: every drop is
// on the sheet.
func TestComparedLevels(t *testing.T) {
	a, b := solveFile(t, storeys[0]), solveFile(t, storeys[1])
	s := render.CompareSheet(plans.Of(whole(t, a), whole(t, b)))
	words := "\n" + strings.Join(checkTexts(t, b, s), "\n") + "\n"
	for i := range a.Job.Drops {
		if tag := a.Job.Drops[i].Tag; !names(words, tag) {
			t.Errorf("the sheet that compares leaves out drop %s", tag)
		}
	}
	w := whole(t, a)
	choices := sheetCalled(t, render.Sheets(w, route.Choice{Result: a}, route.Choice{Result: b}), "choices")
	words = "\n" + strings.Join(checkTexts(t, a, choices), "\n") + "\n"
	for i := range a.Job.Drops {
		if tag := a.Job.Drops[i].Tag; !names(words, tag) {
			t.Errorf("the sheet of choices leaves out drop %s", tag)
		}
	}
}

// What is on one level or in one space is drawn there and nowhere else.
func TestLevelsAreApart(t *testing.T) {
	res := solveFile(t, storeys[0])
	ids := map[string]map[string]bool{}
	for _, s := range render.Sheets(fixed(res)) {
		ids[s.ID] = map[string]bool{}
		for _, g := range s.Groups {
			groupIDs(g, ids[s.ID])
		}
	}
	for id, on := range map[string][]string{
		"drop-D1": {"floor-upper", "joist-bays-between"}, "drop-D3": {"floor-ground", "crawl-space"}, "drop-D7": {"floor-basement", "joist-bays-over-cellar"}, "drop-D4": {"floor-basement", "joist-bays-over-cellar"}, "drop-D5": {"floor-upper", "attic-high"},
		"device-r1": {"floor-ground"}, "device-r2": {"floor-upper"}, "opening-cellar-window": {"floor-basement", "openings-basement"},
		"obstacle-duct": {"attic-high", "attic-high-fixes"}, "obstacle-crawl-duct": {"crawl-space", "crawl-space-fixes"},
		"power-p1": {"attic-high"}, "power-p2": {"crawl-space"}, "masonry": {"floor-basement", "openings-basement"}, "stairs-stairs": {"floor-ground", "openings-ground"},
		"chase-flue": {"floor-ground", "floor-upper", "joist-bays-between", "attic-high"}, "closet": {"floor-ground", "crawl-space", "joist-bays-between"},
	} {
		for sheetID, has := range ids {
			if want := slices.Contains(on, sheetID); has[id] != want {
				t.Errorf("%s on %s: %v, want %v", id, sheetID, has[id], want)
			}
		}
	}
}

func groupIDs(g *sheet.Group, into map[string]bool) {
	into[g.ID] = true
	for _, item := range g.Items {
		if child, ok := item.(*sheet.Group); ok {
			groupIDs(child, into)
		}
	}
}

// All plans of a house lie at the same place on paper, so that sheets can be
// laid over each other; and they come from the lowest up.
func TestLevelsLieOverEachOther(t *testing.T) {
	res := solveFile(t, storeys[0])
	var order []string
	var first *sheet.Sheet
	for _, s := range render.Sheets(fixed(res)) {
		if strings.HasPrefix(s.ID, "openings") {
			continue
		}
		order = append(order, s.ID)
		if first == nil {
			first = s
		}
		if s.View != first.View {
			t.Errorf("%s has another view than %s", s.ID, first.ID)
		}
	}
	want := []string{
		"floor-basement", "joist-bays-over-cellar", "joist-bays-over-cellar-fixes", "crawl-space", "crawl-space-fixes", "floor-ground",
		"joist-bays-between", "attic-low", "attic-low-fixes", "floor-upper", "attic-high", "attic-high-fixes",
	}
	if diff := cmp.Diff(want, order); diff != "" {
		t.Errorf("the sheets are in another order (-want +got):\n%s", diff)
	}
}

func TestSheetsOfRandomLevels(t *testing.T) {
	for seed := range uint64(12) {
		sketch := randomhouse.Generate(seed, randomhouse.Options{Drops: 3 + int(seed%10), Levels: true})
		res := solve(t, "job.toml", sketch.Read)
		sheets := render.Sheets(fixed(res))
		checkLevels(t, res, sheets)
		checkOpenings(t, res, sheets)
		if checkDetails(t, res); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// A large house of several levels is drawn on tiles, level by level.
func TestTilesOfLevels(t *testing.T) {
	sketch := randomhouse.Generate(3, randomhouse.Options{Area: 8, Drops: 10, Levels: true})
	res := solve(t, "job.toml", sketch.Read)
	sheets := render.Sheets(fixed(res))
	checkLevels(t, res, sheets)
	checkDetails(t, res)
	sheetCalled(t, sheets, "floor-ground_1")
	sheetCalled(t, sheets, "floor-ground_2")
}

// Cable between two spaces is on the sheets of both, as far as the hole that it
// goes through; the storey whose wall that is stands cut beside an attic, under
// its name; and cable in a wall is on no sheet of a space that neither its closet
// end nor its drop is on.
func TestCableGoesOnBeyondTheHole(t *testing.T) {
	for _, c := range []struct {
		job, hole string
		sheets    []string
		wall      string // that stands beside the attic of the last sheet
	}{
		{"../samples/split-level/job.toml", "H5", []string{"attic-high-attic", "attic-low-attic"}, "u-parting"},
		{storeys[0], "H6", []string{"joist-bays-between", "attic-low"}, "u-east"},
		{storeys[0], "H8", []string{"joist-bays-over-cellar", "crawl-space"}, ""},
	} {
		res := solveFile(t, c.job)
		sheets := render.Sheets(fixed(res))
		i := slices.IndexFunc(res.Holes, func(h route.Hole) bool { return h.ID == c.hole })
		at := flat(res.Graph.Holes[res.Holes[i].Place].At)
		for _, id := range c.sheets {
			s := sheetCalled(t, sheets, id)
			if d := nearestCable(s, s.View.Point(at)); d > sheet.MM/2 {
				t.Errorf("%s: the cable ends %d µm before hole %s", id, d, c.hole)
			}
		}
		last := sheetCalled(t, sheets, c.sheets[len(c.sheets)-1])
		beside := group(last.Groups, "walls-beside")
		if (beside != nil) != (c.wall != "") {
			t.Errorf("%s: walls of the storey beside: %v, want %q", last.ID, beside != nil, c.wall)
		}
		if c.wall != "" && group(last.Groups, "label-wall-"+c.wall) == nil {
			t.Errorf("%s does not name wall %s", last.ID, c.wall)
		}
	}
	// D3's plate is in the wall at the far end of the wing, and its cables come from
	// the crawl space.
	s := sheetCalled(t, render.Sheets(fixed(solveFile(t, storeys[0]))), "joist-bays-between")
	east := s.View.Point(geom.Point{X: 39 * measure.Foot}).X
	for item := range group(s.Groups, "routes").All() {
		for _, line := range item.Strokes() {
			if slices.ContainsFunc(line, func(p sheet.Point) bool { return p.X >= east }) {
				t.Errorf("%s shows cable in the east wall of the wing", s.ID)
			}
		}
	}
}

func flat(p geom.Point3) geom.Point { return geom.Point{X: p.X, Y: p.Y} }

// nearestCable is how near cable on a sheet comes to a point, along both axes.
func nearestCable(s *sheet.Sheet, p sheet.Point) sheet.Paper {
	best := s.Width
	for item := range group(s.Groups, "routes").All() {
		for _, line := range item.Strokes() {
			for i := 1; i < len(line); i++ {
				b := sheet.Bounds(line[i-1], line[i])
				best = min(best, max(b.Min.X-p.X, p.X-b.Max.X, b.Min.Y-p.Y, p.Y-b.Max.Y, 0))
			}
		}
	}
	return best
}
