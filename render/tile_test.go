package render_test

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/font"
	"topplate/render/sheet"
)

// ownPaper is the key of a sample that says what it is drawn on.
var ownPaper = regexp.MustCompile(`(?m)^paper = .*$`)

// onPaper reads a job with its sheets on some paper.
func onPaper(paper string, read func(string) ([]byte, error)) func(string) ([]byte, error) {
	return func(path string) ([]byte, error) {
		src, err := read(path)
		if strings.HasPrefix(filepath.Base(path), "job") {
			text := string(src)
			if ownPaper.MatchString(text) {
				text = ownPaper.ReplaceAllString(text, "paper = \""+paper+"\"")
			} else {
				text += "\n[sheets]\npaper = \"" + paper + "\"\n"
			}
			src = []byte(text)
		}
		return src, err
	}
}

// Sheets have the size of the paper: ASME Y14.1 for A and B, ISO 216 for A4
// and A3, lying on the long side.
func TestSheetsOnAllPapers(t *testing.T) {
	sizes := map[string][2]float64{"letter": {11 * 25.4, 8.5 * 25.4}, "tabloid": {17 * 25.4, 11 * 25.4}, "a4": {297, 210}, "a3": {420, 297}}
	for paper, size := range sizes {
		for _, job := range samples(t) {
			res := solve(t, job, onPaper(paper, source.ReadFile))
			w := fixed(res)
			sheets := render.Sheets(w)
			checkSet(t, res, sheets)
			checkTiles(t, res.Job.House, sheets)
			checkArcs(t, w, sheets)
			for _, s := range append(sheets, render.Details(res)...) {
				if s.Width != sheet.Paper(size[0]*1000+.5) || s.Height != sheet.Paper(size[1]*1000+.5) {
					t.Errorf("%s on %s is %d by %d µm", s.ID, paper, s.Width, s.Height)
				}
			}
			if t.Failed() {
				t.Fatalf("%s on %s", job, paper)
			}
		}
	}
}

// Large houses and small, many drops and hardly any: all sheets keep what they
// promise, and large ones come in tiles.
func TestSheetsOfExtremes(t *testing.T) {
	for _, c := range []struct {
		name, job string
		read      func(string) ([]byte, error)
		tiles     int
	}{
		// At 1:100 the 3.1 m of paper that it takes with its roof are more than
		// twelve widths of A3's drawing area less its margins, 252 mm.
		{"300 m", "testdata/long-building/job.toml", source.ReadFile, 12},
		{"hut of 1.6 m", "testdata/hut/job.toml", source.ReadFile, 0},
		{"60 drops in a room", "testdata/one-room/job.toml", source.ReadFile, 0},
		{"60 drops on letter", "testdata/one-room/job.toml", onPaper("letter", source.ReadFile), 2},
		{"ten times on letter", "job.toml", onPaper("letter", randomhouse.Generate(3, randomhouse.Options{Area: 10, Drops: 12}).Read), 4},
		{"corners on a4", "job.toml", onPaper("a4", randomhouse.Generate(7, randomhouse.Options{Area: 3, Drops: 9}).Read), 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			res := solve(t, c.job, c.read)
			w := fixed(res)
			sheets := render.Sheets(w)
			checkSet(t, res, sheets)
			checkArcs(t, w, sheets)
			if n := checkTiles(t, res.Job.House, sheets)["floor"]; n < c.tiles || c.tiles == 0 && n > 0 {
				t.Errorf("the floor is on %d tiles, want %d", n, c.tiles)
			}
		})
	}
}

// checkTiles holds tiles against the house, from what is drawn: each is at a
// scale that can be read, every corner of the house is in the window of one,
// every match line is where the sheet that it names has one as well, and no
// line of a drafter's own runs through a text. It returns how many tiles each
// drawing has.
func checkTiles(t *testing.T, h *plan.House, sheets []*sheet.Sheet) map[string]int {
	t.Helper()
	least := map[measure.System]int64{measure.Imperial: 96, measure.Metric: 100}[h.Units]
	kinds := map[string][]*sheet.Sheet{}
	for _, s := range sheets {
		if !strings.HasPrefix(s.ID, "floor") && !strings.HasPrefix(s.ID, "attic") {
			continue
		}
		if s.View.Scale.Den > least {
			t.Errorf("%s is at %s", s.ID, s.View.Scale.Name)
		}
		checkUnstruck(t, s)
		if tileNumber.MatchString(s.ID) {
			kind := tileNumber.ReplaceAllString(s.ID, "")
			kinds[kind] = append(kinds[kind], s)
		}
	}
	count := map[string]int{}
	for kind, tiles := range kinds {
		count[kind] = len(tiles)
		corners := slices.Concat(h.PlateLine, h.OutsideOf)
		for _, p := range corners {
			if !slices.ContainsFunc(tiles, func(s *sheet.Sheet) bool {
				return sheet.Bounds(group(s.Groups, "house").Clip...).Has(s.View.Point(p))
			}) {
				t.Errorf("no tile of the %s has the corner %v", kind, p)
			}
		}
		checkMatchLines(t, tiles)
		checkLabelsOnce(t, tiles)
	}
	return count
}

// checkLabelsOnce wants labels in the window of their tile, and those of drops
// and holes on one tile only.
func checkLabelsOnce(t *testing.T, tiles []*sheet.Sheet) {
	t.Helper()
	seen := map[string]string{}
	for _, s := range tiles {
		window := sheet.Bounds(group(s.Groups, "house").Clip...)
		for _, item := range group(s.Groups, "labels").Items {
			g := item.(*sheet.Group)
			for inner := range g.All() {
				if text, ok := inner.(sheet.Text); ok && !window.Inset(-sheet.MM/10).Contains(font.Box(text)) {
					t.Errorf("%s: %q leaves the window", s.ID, text.Words)
				}
			}
			if !strings.HasPrefix(g.ID, "label-drop") && !strings.HasPrefix(g.ID, "label-hole") {
				continue
			}
			if other := seen[g.ID]; other != "" {
				t.Errorf("%s is on %s and on %s", g.ID, other, s.ID)
			}
			seen[g.ID] = s.ID
		}
	}
}

// checkMatchLines compares each match line with those of the sheet that is
// named at it.
func checkMatchLines(t *testing.T, tiles []*sheet.Sheet) {
	t.Helper()
	at := map[string][]geom.Point{} // by the sheet that has them and the one that is named
	for _, s := range tiles {
		g := group(s.Groups, "match")
		var lines []sheet.Line
		for _, item := range g.Items {
			switch item := item.(type) {
			case sheet.Line:
				lines = append(lines, item)
			case sheet.Text:
				// A match line is broken at texts: its parts come before its name.
				a, back := lines[0].A, s.View.Scale
				p := geom.Point{X: s.View.From.X + back.Real(a.X-s.View.To.X)}
				if a.X != lines[0].B.X {
					p = geom.Point{Y: s.View.From.Y - back.Real(a.Y-s.View.To.Y)}
				}
				key := s.ID + " " + strings.TrimPrefix(item.Words, "match line, see sheet ")
				at[key], lines = append(at[key], p), nil
			}
		}
	}
	if len(at) == 0 && len(tiles) > 1 {
		t.Errorf("%s and others have no match lines", tiles[0].ID)
	}
	const rounding = measure.Millimetre / 2
	for key, points := range at {
		from, to, _ := strings.Cut(key, " ")
		other := at[to+" "+from]
		if len(points) != 1 || len(other) != 1 {
			t.Errorf("%d match lines from %s to %s, %d back", len(points), from, to, len(other))
			continue
		}
		if d := points[0].Sub(other[0]); max(d.X, -d.X) > rounding || max(d.Y, -d.Y) > rounding {
			t.Errorf("the match line of %s to %s is %v away from that back", from, to, d)
		}
	}
}

// checkUnstruck fails where a match line, an arc, a count or a way runs through
// the middle of a text.
func checkUnstruck(t *testing.T, s *sheet.Sheet) {
	t.Helper()
	var texts []sheet.Text
	for item := range s.All() {
		if text, ok := item.(sheet.Text); ok {
			texts = append(texts, text)
		}
	}
	for item := range s.All() {
		pen := sheet.PenThin
		switch item := item.(type) {
		case sheet.Line:
			pen = item.Pen
		case sheet.Arc:
			pen = item.Pen
		}
		if !slices.Contains([]sheet.Pen{sheet.PenMatch, sheet.PenTape, sheet.PenCount, sheet.PenWay}, pen) {
			continue
		}
		for _, line := range item.Strokes() {
			for i := 1; i < len(line); i++ {
				for _, text := range texts {
					if font.Box(text).Inset(50).Struck(line[i-1], line[i]) {
						t.Errorf("%s: a %s strikes %q", s.ID, pen.Style().Name, text.Words)
					}
				}
			}
		}
	}
}

// A folder of a house on tiles has its drawings whole for other programs, and a
// legend where the columns have none.
func TestFolderOfTiles(t *testing.T) {
	res := solve(t, "../samples/corner-house/job.toml", onPaper("letter", source.ReadFile))
	files, err := render.Folder(whole(t, res), render.Also{Sketch: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"floor-1.svg", "floor-2.svg", "attic-1.svg", "attic-fixes-2.svg", "legend.svg", "floor.dxf", "attic.dxf"} {
		if !slices.ContainsFunc(files, func(f render.File) bool { return f.Name == name }) {
			t.Errorf("the folder has no %s", name)
		}
	}
	plain := strings.ReplaceAll(string(content(t, files, "floor.dxf")), "\r\n", "\n")
	for i := range res.Job.Drops {
		if !strings.Contains(plain, "\n"+res.Job.Drops[i].Tag+"\n") {
			t.Errorf("floor.dxf has no drop %s", res.Job.Drops[i].Tag)
		}
	}
}
