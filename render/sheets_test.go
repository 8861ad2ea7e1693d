package render_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"topplate/plan/rule"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// checkTexts holds a sheet against what every sheet promises: no text overlaps
// another, all of it lies inside the border, the cautions are there. It returns
// the texts.
func checkTexts(t *testing.T, res *route.Result, s *sheet.Sheet) (words []string) {
	t.Helper()
	if err := s.Check(); err != nil {
		t.Error(err)
	}
	var boxes []sheet.Box
	for item := range s.All() {
		text, ok := item.(sheet.Text)
		if !ok || text.Words == "" {
			continue
		}
		box := font.Box(text)
		if !s.Box().Inset(10 * sheet.MM).Contains(box) {
			t.Errorf("%s: %q lies over the border: %v", s.ID, text.Words, box)
		}
		for i, other := range boxes {
			if box.Overlaps(other) {
				t.Errorf("%s: %q overlaps %q", s.ID, text.Words, words[i])
			}
		}
		boxes, words = append(boxes, box), append(words, text.Words)
	}
	flowing := strings.Join(words, " ")
	for _, id := range res.Cautions {
		if rl, _ := rule.Lookup(id); !strings.Contains(flowing, rl.Title) {
			t.Errorf("%s leaves out the caution %q", s.ID, rl.Title)
		}
	}
	return words
}

// checkSheet also wants every drop and hole on a sheet.
func checkSheet(t *testing.T, res *route.Result, s *sheet.Sheet) {
	t.Helper()
	all := strings.Join(checkTexts(t, res, s), "\n")
	if strings.HasPrefix(s.ID, "openings") {
		return // see checkOpenings
	}
	for i := range res.Routes {
		if tag := res.Job.Drops[res.Routes[i].Drop].Tag; !strings.Contains(all, tag) {
			t.Errorf("%s does not show drop %s", s.ID, tag)
		}
	}
	for i := range res.Holes {
		if !strings.Contains(all, res.Holes[i].ID) {
			t.Errorf("%s does not show hole %s", s.ID, res.Holes[i].ID)
		}
	}
}

// sheetCalled is the sheet with an id.
func sheetCalled(t *testing.T, sheets []*sheet.Sheet, id string) *sheet.Sheet {
	t.Helper()
	for _, s := range sheets {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("there is no sheet %s", id)
	return nil
}

func TestSheetsOfSamples(t *testing.T) {
	for _, job := range samples(t) {
		res := solve(t, job, source.ReadFile)
		sheets := render.Sheets(res)
		for _, s := range sheets {
			t.Run(name(job)+"/"+s.ID, func(t *testing.T) { checkSheet(t, res, s) })
		}
		checkOpenings(t, res, sheets)
	}
}

// edited reads the starter with texts replaced.
func edited(t testing.TB, edits ...string) func(string) ([]byte, error) {
	t.Helper()
	return func(path string) ([]byte, error) {
		src, err := os.ReadFile(filepath.Join("../cmd/topplate/starter", filepath.Base(path)))
		text := string(src)
		for i := 0; i < len(edits); i += 2 {
			if !strings.Contains(text, edits[i]) && strings.Contains(path, "job") == strings.Contains(edits[i], "tag") {
				continue
			}
			text = strings.ReplaceAll(text, edits[i], edits[i+1])
		}
		return []byte(text), err
	}
}

// Names are only names: nothing in them becomes markup, and long ones are cut
// where the sheet has no room.
func TestSheetsWithHostileNames(t *testing.T) {
	for _, c := range []string{
		"<script>alert(1)</script>", `a & b "c" 'd'`, "שלום עולם", "🏠 home", strings.Repeat("long ", 39), "]]><x>", "--><svg onload=x>",
	} {
		quoted := fmt.Sprintf("%q", c)
		res := solve(t, "job.toml", edited(t, `"Study"`, quoted, `"First cables"`, quoted, `"Starter house"`, quoted, `"desk"`, quoted))
		files, err := render.Folder(whole(t, res))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if strings.HasSuffix(f.Name, ".svg") && (strings.Contains(string(f.Data), "<script") || strings.Contains(string(f.Data), "<svg onload")) {
				t.Errorf("%s carries markup from the name %q", f.Name, c)
			}
		}
		for _, s := range render.Sheets(res) {
			checkSheet(t, res, s)
		}
		checkOpenings(t, res, render.Sheets(res))
		checkDetails(t, res)
	}
}

// A blocked drop is on the sheets all the same, and said to be blocked.
func TestSheetsShowBlockedDrops(t *testing.T) {
	res := solve(t, "job.toml", edited(t, `rods = "15ft"`, `rods = "2ft"`))
	sheets := render.Sheets(res)
	for _, s := range sheets {
		checkSheet(t, res, s)
	}
	checkOpenings(t, res, sheets)
	checkDetails(t, res)
	var words []string
	for item := range sheetCalled(t, sheets, "floor").All() {
		if text, ok := item.(sheet.Text); ok {
			words = append(words, text.Words)
		}
	}
	if !strings.Contains(strings.Join(words, "\n"), "no allowed route") {
		t.Error("the floor sheet does not say that D3 has no allowed route")
	}
}
