package render_test

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan/source"
	"topplate/render"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/render/svg"
	plans "topplate/route/compare"
)

// secondJob reads a second job on the corner house, whose duct was found to be
// shorter: a desk less, a printer more, an access point moved.
func secondJob(t testing.TB) func(string) ([]byte, error) {
	edits := []string{
		"Two desks and two cameras", "A printer and two cameras",
		`revision = "A"`, `revision = "B"`,
		`west = "15ft 6in", north = "6ft 6in"`, `west = "12ft 6in", north = "6ft 6in"`,
		"count = 3\nshift", "count = 4\nshift",
		"tag = \"D3\"\nkind = \"wall plate\"\nroom = \"living\"\nwall = \"spine\"\nat = \"5ft 10in\"\nheight = \"4ft 6in\"",
		"tag = \"D4\"\nkind = \"wall plate\"\nroom = \"bed-one\"\nwall = \"north\"\nat = \"3ft\"\nheight = \"14in\"",
		`to = ["29ft 4in", "31ft"]`, `to = ["29ft 4in", "26ft"]`,
		"id = \"bed-one-w\"\nwall = \"north\"\nkind = \"window\"\nat = \"4ft\"", "id = \"bed-one-w\"\nwall = \"north\"\nkind = \"window\"\nat = \"3ft\"",
	}
	return func(path string) ([]byte, error) {
		src, err := source.ReadFile(filepath.Join("../samples/corner-house", filepath.Base(path)))
		return []byte(strings.NewReplacer(edits...).Replace(string(src))), err
	}
}

// comparison compares two jobs.
func comparison(t testing.TB, a, b string, readA, readB func(string) ([]byte, error)) *plans.Difference {
	t.Helper()
	return plans.Of(whole(t, solve(t, a, readA)), whole(t, solve(t, b, readB)))
}

// cornerPair is the sample and the second job, compared once for all tests.
func cornerPair(t testing.TB) *plans.Difference {
	if pair == nil {
		pair = comparison(t, cornerJob, "job.toml", source.ReadFile, secondJob(t))
	}
	return pair
}

var pair *plans.Difference

const (
	cornerJob  = "../samples/corner-house/job.toml"
	starterJob = "../cmd/topplate/starter/job.toml"
)

// The sheet keeps what every sheet promises, shows every drop of both plans, and
// has all lines for what is in one plan only, by a pen of its own.
func TestCompareSheet(t *testing.T) {
	for _, c := range []struct {
		name string
		d    *plans.Difference
	}{
		{"second job", cornerPair(t)},
		{"same", comparison(t, starterJob, starterJob, source.ReadFile, source.ReadFile)},
		{"two houses", plans.Of(whole(t, solveFile(t, starterJob)), cornerPair(t).Plans[0])},
		{"hostile names", comparison(t, starterJob, "job.toml", source.ReadFile, edited(t, `"First cables"`, `"`+strings.Repeat("<b> ", 49)+`"`))},
		{"an old house", comparison(t, "job.toml", starterJob, edited(t, "built = 1996", "built = 1930"), source.ReadFile)},
		{"blocked", comparison(t, starterJob, "job.toml", source.ReadFile, edited(t, `rods = "15ft"`, `rods = "2ft"`))},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := render.CompareSheet(c.d)
			var words []string
			for side := range 2 {
				words = checkTexts(t, c.d.Plans[side].Result, s)
			}
			for _, w := range c.d.Plans {
				for i := range w.Job.Drops {
					if !slices.Contains(words, w.Job.Drops[i].Tag) {
						t.Errorf("drop %s is not shown", w.Job.Drops[i].Tag)
					}
				}
			}
			for _, row := range report.CompareFigures(c.d)[1:] {
				for _, cell := range row {
					if !slices.Contains(words, cell) {
						t.Errorf("the table has no %q", cell)
					}
				}
			}
			checkWays(t, c.d, s)
		})
	}
}

// checkWays counts the lines in the groups of what is in both plans and in one.
func checkWays(t *testing.T, d *plans.Difference, s *sheet.Sheet) {
	t.Helper()
	pens := [2]map[sheet.Pen]bool{{}, {}}
	for side, plan := range []string{"plan-a", "plan-b"} {
		for id, want := range map[string]int{"-ways-both": len(d.Ways.Both), "-ways-only": len(d.Ways.Only[side])} {
			g := groupCalled(s.Groups, plan+id)
			if g == nil {
				t.Fatalf("there is no group %s%s", plan, id)
			}
			if len(g.Items) != want {
				t.Errorf("%s%s has %d lines, want %d", plan, id, len(g.Items), want)
			}
			for _, item := range g.Items {
				if id == "-ways-only" {
					pens[side][item.(sheet.Line).Pen] = true
				}
			}
		}
	}
	for pen := range pens[0] {
		for other := range pens[1] {
			a, b := pen.Style(), other.Style()
			if a.Width == b.Width || a.Type == b.Type || a.Stroke == b.Stroke {
				t.Errorf("pens %s and %s do not differ in weight, dash and colour", a.Name, b.Name)
			}
		}
	}
}

func groupCalled(groups []*sheet.Group, id string) *sheet.Group {
	for _, g := range groups {
		if g.ID == id {
			return g
		}
		var inner []*sheet.Group
		for _, item := range g.Items {
			if child, ok := item.(*sheet.Group); ok {
				inner = append(inner, child)
			}
		}
		if found := groupCalled(inner, id); found != nil {
			return found
		}
	}
	return nil
}

// TestGoldenCompare compares the sheet and the text of one pair with what was
// looked at. UPDATE_GOLDEN=1 rewrites them.
func TestGoldenCompare(t *testing.T) {
	d := cornerPair(t)
	want := map[string]bool{}
	var drawn, text, again bytes.Buffer
	if err := svg.Write(&drawn, render.CompareSheet(d), svg.Options{NoFonts: true}); err != nil {
		t.Fatal(err)
	}
	if err := svg.Write(&again, render.CompareSheet(d), svg.Options{NoFonts: true}); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(drawn.Bytes(), again.Bytes()) {
		t.Error("the sheet is not drawn in the same way twice")
	}
	if err := report.Compare(&text, d); err != nil {
		t.Fatal(err)
	}
	compare(t, "testdata/compare.svg", drawn.Bytes(), want)
	compare(t, "testdata/compare.txt", text.Bytes(), want)
}
