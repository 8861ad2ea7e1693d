package render_test

import (
	"regexp"
	"strings"
	"testing"

	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/sheet"
	"topplate/route"
)

// checkWallsNamed fails unless every wall that the words of a sheet of a space
// refer to has its name on the drawing, or a letter there that stands for it.
// Sheets with parts of one drawing are taken together.
func checkWallsNamed(t *testing.T, res *route.Result, sheets []*sheet.Sheet) {
	t.Helper()
	all, alone := map[string]string{}, map[string]map[string]bool{}
	var kinds []string
	for _, s := range sheets {
		id := tileNumber.ReplaceAllString(s.ID, "")
		if !regexp.MustCompile(`^(attic|joist-bays|crawl)`).MatchString(id) {
			continue
		}
		if alone[id] == nil {
			alone[id] = map[string]bool{}
			kinds = append(kinds, id)
		}
		for item := range s.All() {
			if text, ok := item.(sheet.Text); ok {
				alone[id][text.Words] = true
				all[id] += " " + text.Words
			}
		}
	}
	for _, id := range kinds {
		_, letters, _ := strings.Cut(all[id], "Letters on the drawing:")
		for i := range res.Job.House.Walls {
			w := regexp.QuoteMeta(res.Job.House.Walls[i].ID)
			if !regexp.MustCompile(`\bwall ` + w + `([ ,;:.]|$)`).MatchString(all[id]) {
				continue
			}
			if !alone[id][res.Job.House.Walls[i].ID] && !regexp.MustCompile(` [a-z]{1,2} `+w+`[;.,]`).MatchString(letters) {
				t.Errorf("sheet %s refers to wall %s and does not show which that is", id, w)
			}
		}
	}
}

// On the smallest paper every wall that is spoken of has its name, and nothing
// is listed as without room: small things have a letter, also where drawings are
// cut into parts. But for the homeowner's plan of a large building, of which the
// smallest paper holds no more than its outline.
func TestEverythingIsNamedOnLetterPaper(t *testing.T) {
	for _, job := range samples(t) {
		res := solve(t, job, onPaper("letter", source.ReadFile))
		sheets := render.Sheets(fixed(res))
		checkWallsNamed(t, res, sheets)
		for _, s := range append(sheets, render.Sketch(res)...) {
			for item := range s.All() {
				if text, ok := item.(sheet.Text); ok && strings.HasPrefix(text.Words, "No room on the drawing for") && !strings.HasPrefix(s.ID, "openings") {
					t.Errorf("sheet %s: %s", s.ID, text.Words)
				}
			}
		}
		if t.Failed() {
			t.Fatal(job)
		}
	}
	for seed := range uint64(6) {
		res := solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{Drops: 2 + int(seed)}).Read)
		if checkWallsNamed(t, res, render.Sheets(fixed(res))); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}
