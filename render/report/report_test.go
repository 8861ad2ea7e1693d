package report

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/source"
	"topplate/route"
	"topplate/route/work"
)

func sample(t *testing.T, path string) *work.Work {
	t.Helper()
	return worked(t, path, source.ReadFile)
}

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
	return w
}

var jobs = []string{"../../samples/corner-house/job.toml", "../../samples/long-roof/job.toml", "../../cmd/topplate/starter/job.toml"}

// What the JSON says adds up: terms to the total, legs to the developed length,
// its parts to no more than the cut length.
func TestJSONAddsUp(t *testing.T) {
	for _, path := range jobs {
		var b bytes.Buffer
		if err := JSON(&b, sample(t, path)); err != nil {
			t.Fatal(err)
		}
		var got results
		d := json.NewDecoder(&b)
		d.DisallowUnknownFields()
		if err := d.Decode(&got); err != nil {
			t.Fatal(err)
		}
		if got.Schema != Schema {
			t.Errorf("schema %q", got.Schema)
		}
		var terms int64
		for _, v := range got.Cost.Terms {
			terms += v
		}
		if terms != got.Cost.Total || got.Cost.LowerBound > got.Cost.Total {
			t.Errorf("%s: terms %d, cost %+v", path, terms, got.Cost)
		}
		for _, x := range got.Drops {
			checkDrop(t, path, x)
		}
	}
}

func checkDrop(t *testing.T, path string, d drop) {
	t.Helper()
	var legs float64
	for _, l := range d.Legs {
		legs += l.Length
	}
	l := d.Lengths
	if math.Abs(legs-l.Developed) > 1e-6 {
		t.Errorf("%s: %s: legs are %.6f mm together, developed length %.6f", path, d.Tag, legs, l.Developed)
	}
	sum := l.Developed + l.Closet + l.Outlet + l.Trim + l.Sketch + l.Allowance
	if sum > l.Cut+1e-6 || l.Cut-sum > 500 {
		t.Errorf("%s: %s: parts are %.3f mm together, cut length %.3f", path, d.Tag, sum, l.Cut)
	}
	if len(d.Points) < 3 {
		t.Errorf("%s: %s has %d points", path, d.Tag, len(d.Points))
	}
}

// The schedule names every drop, hole and caution, and how good the plan is.
func TestScheduleIsComplete(t *testing.T) {
	for _, path := range jobs {
		res := sample(t, path)
		var b bytes.Buffer
		if err := Schedule(&b, res); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		for i := range res.Holes {
			if !strings.Contains(text, "\n  "+res.Holes[i].ID+" ") {
				t.Errorf("%s: hole %s is not in the schedule", path, res.Holes[i].ID)
			}
		}
		for _, want := range []string{Deference, "cheapest", "Findings", "Cautions"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not in the schedule", path, want)
			}
		}
	}
}

// A full disk is noticed.
func TestReportsHandErrorsOn(t *testing.T) {
	res := sample(t, jobs[2])
	full := errors.New("full")
	for n := range 3 {
		w := &limited{left: n * 200, err: full}
		if err := Schedule(w, res); !errors.Is(err, full) {
			t.Errorf("after %d bytes Schedule returns %v", n*200, err)
		}
		w = &limited{left: n * 20, err: full}
		if err := Findings(w, res); !errors.Is(err, full) {
			t.Errorf("after %d bytes Findings returns %v", n*20, err)
		}
	}
}

type limited struct {
	left int
	err  error
}

func (l *limited) Write(p []byte) (int, error) {
	if l.left -= len(p); l.left < 0 {
		return 0, l.err
	}
	return len(p), nil
}

// What is cautioned by the age of a house is printed with the findings, too: lead
// paint before 1978 (40 CFR 745), knob-and-tube wiring before 1950 (from memory).
func TestCheckPrintsCautions(t *testing.T) {
	for built, want := range map[string][]bool{"1926": {true, true}, "1977": {true, false}, "1996": {false, false}} {
		w := worked(t, jobs[0], func(path string) ([]byte, error) {
			src, err := source.ReadFile(path)
			return regexp.MustCompile(`(?m)^built = \d+`).ReplaceAll(src, []byte("built = "+built)), err
		})
		var b bytes.Buffer
		if err := Check(&b, w); err != nil {
			t.Fatal(err)
		}
		for i, title := range []string{"\n  Paint may hold lead: ", "\n  Knob-and-tube wiring: "} {
			if strings.Contains(b.String(), title) != want[i] {
				t.Errorf("built %s: %q is printed: %v", built, title, !want[i])
			}
		}
		if !strings.Contains(b.String(), Deference) || !strings.Contains(b.String(), "drops routed; ") {
			t.Errorf("built %s:\n%s", built, b.String())
		}
	}
}
