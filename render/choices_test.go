package render_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"topplate/plan/source"
	"topplate/render"
	"topplate/route"
)

// threeWays is the starter with a soffit that is cut in five minutes, and one
// that opens 2 ft away: three plans differ there.
func threeWays(t testing.TB) func(string) ([]byte, error) {
	return edited(t,
		"shift = \"16in\"\nnote = \"camera\"", "shift = \"4ft\"\nnote = \"camera\"",
		"[rates]", "[prices]\nopen-soffit = 5\n\n[rates]",
		"[[hatch]]", "[[soffit]]\nid = \"vent\"\nwall = \"east\"\nat = \"10ft\"\nwidth = \"3ft\"\n\n[[hatch]]")
}

// The sheet that compares plans has every drop and every figure once for each
// plan, and keeps what every sheet promises.
func TestChoicesSheet(t *testing.T) {
	for _, c := range []struct {
		name, job string
		read      func(string) ([]byte, error)
		plans     int
	}{
		{"three ways", "job.toml", threeWays(t), 3},
		{"starter", "../cmd/topplate/starter/job.toml", source.ReadFile, 2},
		{"corner house", "../samples/corner-house/job.toml", source.ReadFile, 2},
		{"long roof", "../samples/long-roof/job.toml", source.ReadFile, 2},
		{"hostile names", "job.toml", edited(t, `"Study"`, `"<b>"`, `"First cables"`, `"`+strings.Repeat("long ", 39)+`"`), 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			res := solve(t, c.job, c.read)
			plans, err := route.Choices(res.Job)
			if err != nil {
				t.Fatal(err)
			}
			if len(plans) != c.plans {
				t.Fatalf("%d plans, want %d", len(plans), c.plans)
			}
			sheets := render.Sheets(fixed(res), plans...)
			last := len(sheets) - 1
			checkSet(t, res, sheets[:last])
			words := checkTexts(t, res, sheetCalled(t, sheets[last:], "choices"))
			count := func(want string) (n int) {
				for _, w := range words {
					if w == want {
						n++
					}
				}
				return n
			}
			for i := range res.Job.Drops {
				if tag := res.Job.Drops[i].Tag; count(tag) != len(plans) {
					t.Errorf("drop %s is shown %d times for %d plans", tag, count(tag), len(plans))
				}
			}
			u := res.Job.House.Units
			for i := range plans {
				for _, want := range []string{u.Format(plans[i].Crawled), u.Format(plans[i].Cable)} {
					if count(want) == 0 {
						t.Errorf("plan %d: no %s on the sheet", i, want)
					}
				}
			}
			if want := fmt.Sprintf("%[1]d of %[1]d", len(sheets)); !slices.Contains(words, want) {
				t.Errorf("the sheet is not numbered %s", want)
			}
		})
	}
}

// A job folder has the sheet only if there is something to choose.
func TestFolderWithChoices(t *testing.T) {
	res := solve(t, "job.toml", threeWays(t))
	plans, err := route.Choices(res.Job)
	if err != nil {
		t.Fatal(err)
	}
	for n, want := range map[int]bool{0: false, 1: false, 2: true, 3: true} {
		files, err := render.Folder(whole(t, res), render.Also{Plans: plans[:n]})
		if err != nil {
			t.Fatal(err)
		}
		if got := slices.ContainsFunc(files, func(f render.File) bool { return f.Name == "choices.svg" }); got != want {
			t.Errorf("with %d plans: the sheet is there: %v", n, got)
		}
	}
}
