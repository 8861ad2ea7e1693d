package render_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/render/svg"
	"topplate/route"
	"topplate/route/work"
)

// samples lists the jobs that every sheet is tested on.
func samples(t testing.TB) []string {
	t.Helper()
	jobs, err := filepath.Glob("../samples/*/job.toml")
	if err != nil || len(jobs) == 0 {
		t.Fatalf("no samples: %v", err)
	}
	slices.Sort(jobs)
	return append(jobs, "../cmd/topplate/starter/job.toml")
}

// name is the folder of a sample.
func name(job string) string { return filepath.Base(filepath.Dir(job)) }

func solve(t testing.TB, path string, read func(string) ([]byte, error)) *route.Result {
	t.Helper()
	job, list := plan.LoadJob(path, read)
	if list.HasErrors() {
		var b bytes.Buffer
		list.Print(&b, nil)
		t.Fatalf("%s does not load:\n%s", path, b.String())
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// solvedFiles keeps the plans of files as they are, which no test changes.
var solvedFiles sync.Map

func solveFile(t testing.TB, path string) *route.Result {
	t.Helper()
	if res, ok := solvedFiles.Load(path); ok {
		return res.(*route.Result)
	}
	res := solve(t, path, source.ReadFile)
	solvedFiles.Store(path, res)
	return res
}

// TestGolden compares the sheets, without their fonts, and the schedule of
// every sample with what was looked at. UPDATE_GOLDEN=1 rewrites them.
func TestGolden(t *testing.T) {
	want := map[string]bool{}
	for _, job := range samples(t) {
		res := solveFile(t, job)
		folder := filepath.Join("..", "testdata", name(job))
		w := whole(t, res)
		for _, s := range everySheet(w) {
			if name(job) == "small-office" && strings.HasPrefix(s.ID, "schedule-") {
				continue // dozens of pages of the same; the text has it all
			}
			var b bytes.Buffer
			if err := svg.Write(&b, s, svg.Options{NoFonts: true}); err != nil {
				t.Fatal(err)
			}
			compare(t, filepath.Join(folder, s.ID+".svg"), b.Bytes(), want)
		}
		var b bytes.Buffer
		if err := report.Schedule(&b, w); err != nil {
			t.Fatal(err)
		}
		compare(t, filepath.Join(folder, "schedule.txt"), b.Bytes(), want)
	}
	stale(t, want, "../testdata/*/*", func(folder string) bool { return folder != "gallery" })
}

func compare(t *testing.T, path string, got []byte, want map[string]bool) {
	t.Helper()
	want[filepath.ToSlash(path)] = true
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	golden, err := os.ReadFile(path)
	if err != nil {
		t.Errorf("%v; make it with UPDATE_GOLDEN=1 and look at it", err)
		return
	}
	if !bytes.Equal(golden, got) {
		t.Errorf("%s differs (-golden +now):\n%.4000s", path, cmp.Diff(string(golden), string(got)))
	}
}

// stale fails for golden files in some folders that no test makes any more.
func stale(t *testing.T, want map[string]bool, pattern string, in func(folder string) bool) {
	t.Helper()
	files, err := filepath.Glob(pattern)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !want[filepath.ToSlash(f)] && in(filepath.Base(filepath.Dir(f))) {
			t.Errorf("%s is stale: no test makes it", f)
		}
	}
}

// inGallery are the sheets that the README shows, or links to, by sample.
var inGallery = map[string][]string{
	"corner-house":  {"openings.svg", "floor.svg", "attic.svg", "attic-fixes.svg", "elevation-1.svg", "section-1.svg", "schedule-1.svg"},
	"long-roof":     {"openings.svg", "floor.svg", "attic.svg", "attic-fixes.svg", "elevation-1.svg", "section-1.svg", "schedule-1.svg"},
	"two-storeys":   {"floor-ground.svg", "joist-bays-ground-joists.svg", "openings-ground.svg"},
	"split-level":   {"crawl-space.svg"},
	"plaster-house": {"attic-side.svg"},
}

// TestGallery keeps the pictures of the README current: they are what draw
// writes, with fonts.
func TestGallery(t *testing.T) {
	want := map[string]bool{}
	for _, job := range samples(t) {
		if len(inGallery[name(job)]) == 0 {
			continue
		}
		files, err := render.Folder(whole(t, solveFile(t, job)), render.Also{})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if slices.Contains(inGallery[name(job)], f.Name) {
				compare(t, filepath.Join("..", "testdata", "gallery", name(job)+"-"+f.Name), f.Data, want)
			}
		}
	}
	stale(t, want, "../testdata/gallery/*", func(string) bool { return true })
}

// The same job gives the same bytes, however often it is drawn.
func TestFolderIsDeterministic(t *testing.T) {
	for _, job := range samples(t) {
		a, err := render.Folder(whole(t, solveFile(t, job)), render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		b, err := render.Folder(whole(t, solve(t, job, source.ReadFile)), render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		for i := range a {
			if a[i].Name != b[i].Name || !bytes.Equal(a[i].Data, b[i].Data) {
				t.Errorf("%s: %s differs from one run to the next", name(job), a[i].Name)
			}
		}
	}
}

// everySheet is all that a folder has without plans to choose from.
func everySheet(w *work.Work) []*sheet.Sheet {
	return slices.Concat(render.Sheets(w), render.Details(w.Result), render.Schedules(w), []*sheet.Sheet{render.Estimate(w)}, render.Sketch(w.Result))
}

// whole works out all that follows from a plan.
func whole(t testing.TB, res *route.Result) *work.Work {
	t.Helper()
	w, err := work.Of(res)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
