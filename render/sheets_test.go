package render_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"topplate/plan/rule"
	"topplate/render"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
	"topplate/route/fix"
	"topplate/route/work"
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

// checkSet holds all sheets against what each promises, and wants every drop
// and hole on one of the floor and one of the attic, and every hole on one of
// those that tell how to find them.
func checkSet(t *testing.T, res *route.Result, sheets []*sheet.Sheet) {
	t.Helper()
	if h := res.Job.House; len(h.Levels) > 1 || len(h.Spaces) > 1 {
		checkLevels(t, res, sheets)
		return
	}
	shown := map[string]string{}
	for _, s := range sheets {
		words := "\n" + strings.Join(checkTexts(t, res, s), "\n") + "\n"
		if !strings.HasPrefix(s.ID, "openings") { // see checkOpenings
			shown[tileNumber.ReplaceAllString(s.ID, "")] += words
		}
	}
	for _, id := range []string{"floor", "attic"} {
		for i := range res.Routes {
			if tag := res.Job.Drops[res.Routes[i].Drop].Tag; !names(shown[id], tag) {
				t.Errorf("no sheet of the %s shows drop %s", id, tag)
			}
		}
	}
	for id, words := range shown {
		for i := range res.Holes {
			if id != "choices" && !names(words, res.Holes[i].ID) {
				t.Errorf("no sheet of the %s shows hole %s", id, res.Holes[i].ID)
			}
		}
	}
}

// names reports whether a tag is a text of its own, or one of those that a
// column lists for want of room.
func names(words, tag string) bool {
	return regexp.MustCompile(`(^|[\n ])` + regexp.QuoteMeta(tag) + `(\.?(\n|$)|[;,:])`).MatchString(words)
}

// tileNumber ends the id of a sheet that shows a part of a drawing.
var tileNumber = regexp.MustCompile(`[-_]\d+$`)

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
		res := solveFile(t, job)
		sheets := render.Sheets(fixed(res))
		t.Run(name(job), func(t *testing.T) { checkSet(t, res, sheets) })
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
		files, err := render.Folder(whole(t, res), render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if strings.HasSuffix(f.Name, ".svg") && (strings.Contains(string(f.Data), "<script") || strings.Contains(string(f.Data), "<svg onload")) {
				t.Errorf("%s carries markup from the name %q", f.Name, c)
			}
		}
		sheets := render.Sheets(fixed(res))
		checkSet(t, res, sheets)
		checkOpenings(t, res, sheets)
		checkDetails(t, res)
	}
}

// A blocked drop is on the sheets all the same, and said to be blocked.
func TestSheetsShowBlockedDrops(t *testing.T) {
	res := solve(t, "job.toml", edited(t, `rods = "15ft"`, `rods = "2ft"`))
	sheets := render.Sheets(fixed(res))
	checkSet(t, res, sheets)
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

// fixed is what of the work the sheets take: the order of tasks, which takes
// much longer, is none of it.
func fixed(res *route.Result) *work.Work {
	return &work.Work{Result: res, Fixes: fix.Holes(res)}
}
