package render_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/sheet"
	"topplate/route"
)

// checkSketch holds the check sheets against what they promise: no text
// overlaps another, nothing that was decided is drawn, and everything that was
// sketched is in the lists. It returns the texts by sheet, those of tiles and of
// the lists also together.
func checkSketch(t *testing.T, res *route.Result) map[string]string {
	t.Helper()
	decided := []sheet.Pen{
		sheet.PenCable, sheet.PenCableHidden, sheet.PenCableLater, sheet.PenCableThere, sheet.PenRod, sheet.PenHole, sheet.PenPatch, sheet.PenTape, sheet.PenWay,
	}
	bare := *res
	bare.Cautions = nil
	shown := map[string]string{}
	for _, s := range render.Sketch(res) {
		of, id := res, s.ID
		if strings.HasPrefix(id, "sketch-list") {
			id = "list"
			if s.ID != "sketch-list-1" {
				of = &bare
			}
		}
		words := "\n" + strings.ReplaceAll(strings.Join(checkTexts(t, of, s), "\n"), "\u00a0", " ") + "\n"
		shown[id] += words
		if all := tileNumber.ReplaceAllString(id, ""); all != id {
			shown[all] += words
		}
		for _, pen := range s.Pens() {
			if slices.Contains(decided, pen) {
				t.Errorf("%s has a %s, which was not sketched", s.ID, pen.Style().Name)
			}
		}
	}
	for _, id := range sketched(res.Job.House) {
		if !names(shown["list"], id) {
			t.Errorf("the lists leave out %s", id)
		}
	}
	return shown
}

// sketched are the ids of everything that was sketched.
func sketched(h *plan.House) (out []string) {
	for i := range h.Traverses {
		out = append(out, h.Traverses[i].ID)
	}
	for i := range h.Walls {
		w := &h.Walls[i]
		out = append(out, w.ID)
		for j := range w.Openings {
			out = append(out, w.Openings[j].ID)
		}
		for j := range w.Devices {
			out = append(out, w.Devices[j].ID)
		}
	}
	for i := range h.Checks {
		out = append(out, h.Checks[i].ID)
	}
	for i := range h.Rooms {
		out = append(out, h.Rooms[i].ID)
	}
	for i := range h.Conduits {
		out = append(out, h.Conduits[i].ID)
	}
	return append(out, overhead(h)...)
}

// overhead are the ids of what was sketched in the attic and under the eaves.
func overhead(h *plan.House) (out []string) {
	for i := range h.Hatches {
		out = append(out, h.Hatches[i].ID)
	}
	for i := range h.Obstacles {
		out = append(out, h.Obstacles[i].ID)
	}
	for i := range h.Soffits {
		out = append(out, h.Soffits[i].ID)
	}
	for i := range h.Baffles {
		out = append(out, h.Baffles[i].ID)
	}
	for i := range h.Marks {
		out = append(out, h.Marks[i].ID)
	}
	for i := range h.Chases {
		out = append(out, h.Chases[i].ID)
	}
	for i := range h.PowerRuns {
		out = append(out, h.PowerRuns[i].ID)
	}
	return out
}

// The samples have room for every label, on the smallest paper and the largest: what is not beside its
// thing is named in the column.
func TestSketchOnPapers(t *testing.T) {
	for _, paper := range []string{"letter", "a3"} {
		for _, job := range samples(t) {
			res := solve(t, job, onPaper(paper, source.ReadFile))
			shown := checkSketch(t, res)
			floor, attic := shown["sketch"], shown["sketch-attic"]
			h := res.Job.House
			if len(h.Levels) > 1 {
				for id, words := range shown {
					if id != "list" {
						floor, attic = floor+words, attic+words
					}
				}
			}
			for i := range h.Walls {
				if w := &h.Walls[i]; !names(floor, w.ID) {
					t.Errorf("%s on %s leaves out wall %s", job, paper, w.ID)
				}
			}
			for _, id := range overhead(h) {
				if !names(attic, id) {
					t.Errorf("%s on %s leaves out %s in the attic", job, paper, id)
				}
			}
		}
	}
}

func TestSketchOfExtremes(t *testing.T) {
	for _, c := range []struct {
		name, job string
		read      func(string) ([]byte, error)
		tiles     bool
	}{
		{"300 m", "testdata/long-building/job.toml", source.ReadFile, true},
		{"hut of 1.6 m", "testdata/hut/job.toml", source.ReadFile, false},
		{"ten times on letter", "job.toml", onPaper("letter", randomhouse.Generate(3, randomhouse.Options{Area: 10, Drops: 3}).Read), true},
	} {
		t.Run(c.name, func(t *testing.T) {
			shown := checkSketch(t, solve(t, c.job, c.read))
			if tiled := shown["sketch-1"] != "" && shown["sketch-attic-1"] != ""; tiled != c.tiles {
				t.Errorf("on tiles is %v, want %v", tiled, c.tiles)
			}
		})
	}
}

// missing reports the texts that are not on a sheet.
func missing(t *testing.T, shown string, want ...string) {
	t.Helper()
	for _, words := range want {
		if !strings.Contains(shown, "\n"+words+"\n") {
			t.Errorf("found no %q", words)
		}
	}
}

// finishes makes the outer walls of the starter 5 in thick and the middle one
// 4-1/2 in: studs of 3-1/2 in with the boards below.
const finishes = "face = \"right\"\nboard = \"1/2in\"\ncladding = \"1in\""

// By hand: the study reaches from 5 in to 14 ft less 2-1/4 in, which is 13 ft
// 4-3/4 in, and from 5 in to 16 ft less 5 in, which is 15 ft 2 in; 160.75 by
// 182 in are 203.2 sq ft. The hall reaches from 14 ft 2-1/4 in to 23 ft 7 in.
// The light is 3 ft 2 in east of the hall's west face at 14 ft 2-1/4 in and
// 11 ft north of 5 in. Texts of the lists are as the file may have them.
func TestSketchNumbers(t *testing.T) {
	shown := checkSketch(t, solve(t, "job.toml", edited(t, `face = "right"`, finishes)))
	missing(
		t, shown["sketch"], "Study", "13′-4 3/4″ × 15′-2″", "203 sq ft", "9′-4 3/4″ × 15′-2″",
		"front-door", "at 18′-0″, 3′-2″ wide", "head 6′-10″", "study-window", "at 6′-0″, 4′-0″ wide", "sill 3′-0″, head 6′-10″",
		"r1", "at 12′-10″, 1′-2″ up", "south", "24′-0″", "middle", "15′-7″", "starts at 14′-0″", "80′-0″", "nothing", "open, from 14′-0″ on south",
	)
	missing(
		t, shown["sketch-attic"], "hatch", "2′-6″ × 2′-6″", "hall-light", "E 17′-4 1/4″, N 11′-5″",
		"power p1", "E 17′-4″, N 11′-0″", "E 4′-0″, N 11′-0″", "8 in 12", "1′-4″",
	)
	missing(t, shown["list"], "13ft 4-3/4in × 15ft 2in", "203 sq ft", "E 17ft 4in, N 11ft; E 4ft, N 11ft", "start, opens left", "12ft 10in", "3ft 2in")
}

// By hand: the walls walked west are 1/2 in longer than those walked east, so
// the run ends 1/2 in west of its start. With the directions held the two walls
// share it by their lengths, which are nearly the same: both get 24 ft 1/4 in.
// 80 ft 1/2 in are 1921 times 1/2 in.
func TestSketchTellsTapedFromDrawn(t *testing.T) {
	shown := checkSketch(t, solve(t, "job.toml", edited(t, "E 24ft, N 16ft, W 24ft, S 16ft", "E 24ft, N 16ft, W 24ft 1/2in, S 16ft")))
	missing(t, shown["sketch"], "24′-0 1/4″", "taped 24′-0″", "taped 24′-0 1/2″", "1/2″ (W 1/2″, N 0″)", "1921")
	missing(t, shown["list"], "+1/4in", "−1/4in", "24ft 1/4in", "24ft 1/2in", "1921")
	if strings.Contains(shown["sketch"], "taped 16′") {
		t.Error("east and west were taped as they are drawn, and are said not to be")
	}
}

// By hand: the diagonal of 24 ft by 16 ft is the root of 832 sq ft, 28.8444 ft
// or 346.13 in; from the west wall's line to the middle one are 14 ft. The
// square check is drawn in the middle of the west wall, 8 ft up.
func TestSketchDrawsChecks(t *testing.T) {
	checks := `[[check]]
id = "diagonal"
from = { wall = "south", end = "start" }
to = { wall = "north", end = "start" }
length = "28ft 10in"

[[check]]
id = "study-width"
from = { wall = "west" }
to = { wall = "middle" }
length = "14ft 1/2in"

[attic]
`
	res := solve(t, "job.toml", edited(t, "[attic]\n", checks))
	shown := checkSketch(t, res)
	missing(
		t, shown["sketch"], "check diagonal", "taped 28′-10″, drawn 28′-10 1/8″", "taped is 1/8″ shorter",
		"check study-width", "taped 14′-0 1/2″, drawn 14′-0″", "taped is 1/2″ longer", "agrees",
	)
	missing(t, shown["list"], "28ft 10-1/8in", "1/8in shorter", "1/2in longer", "agrees")
	s := sheetCalled(t, render.Sketch(res), "sketch")
	var lines []sheet.Line
	for item := range s.All() {
		if l, ok := item.(sheet.Line); ok && l.Pen == sheet.PenCheck && l.A.X != l.B.X {
			lines = append(lines, l)
		}
	}
	if !slices.ContainsFunc(lines, func(l sheet.Line) bool { return l.A.Y == l.B.Y }) {
		t.Errorf("the check between parallel walls is not drawn square to them: %v", lines)
	}
}

// A check that the walls don't bear out is told on the drawing.
func TestSketchTellsDoubt(t *testing.T) {
	bad := "[[check]]\nid = \"diagonal\"\nfrom = { wall = \"south\", end = \"start\" }\nto = { wall = \"north\", end = \"start\" }\nlength = \"30ft\"\n\n[attic]\n"
	shown := checkSketch(t, solve(t, "job.toml", edited(t, "[attic]\n", bad)))
	missing(t, shown["sketch"], "taped is 1′-1 7/8″ longer: TAPE AGAIN", "TAPE AGAIN")
}

// Conduits are on the floor with place and size.
func TestSketchOfConduits(t *testing.T) {
	conduit := "[[conduit]]\nid = \"riser\"\nwall = \"middle\"\nat = \"9ft\"\nheight = \"15in\"\nside = \"left\"\ninside = \"3/4in\"\n\n[attic]\n"
	shown := checkSketch(t, solve(t, "job.toml", edited(t, "[attic]\n", conduit)))
	missing(t, shown["sketch"], "riser", "at 9′-0″, 1′-3″ up", "3/4″ inside")
}

// BenchmarkSketch times the check sheets alone.
func BenchmarkSketch(b *testing.B) {
	for _, path := range []string{"../samples/corner-house/job.toml", "../samples/long-roof/job.toml", "testdata/long-building/job.toml"} {
		res := solve(b, path, source.ReadFile)
		b.Run(name(path), func(b *testing.B) {
			for b.Loop() {
				render.Sketch(res)
			}
		})
	}
}

// Where more runs start on a tile than its column has lines, the table says
// that the rest is in the lists, and the key plan and the cautions have their
// place all the same.
func TestSketchOfManyRuns(t *testing.T) {
	const runs = 60
	res := solve(t, "testdata/long-building/job.toml", func(path string) ([]byte, error) {
		src, err := source.ReadFile(path)
		if strings.HasSuffix(path, "house.toml") {
			for i := range runs {
				src = fmt.Appendf(src, "\n[[wall]]\nid = \"stub-%d\"\nstart = { wall = \"o0\", at = \"%dmm\" }\nrun = \"N 1500mm\"\n", i, 2000+300*i)
			}
		}
		return src, err
	})
	shown := checkSketch(t, res)
	if !strings.Contains(shown["sketch-1"], " more, in sheets sketch-list\n") {
		t.Error("the table of the first tile doesn't say that it goes on")
	}
}
