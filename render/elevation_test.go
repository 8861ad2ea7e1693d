package render_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"topplate/render"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// checkStruck fails for every text that a line passes through, leaders and
// hatchings too. Text has no line of its own here but the level line under it.
func checkStruck(t *testing.T, s *sheet.Sheet) {
	t.Helper()
	var texts []sheet.Text
	var strokes [][]sheet.Point
	for item := range s.All() {
		if text, ok := item.(sheet.Text); ok {
			texts = append(texts, text)
		}
		strokes = append(strokes, item.Strokes()...)
	}
	for _, text := range texts {
		box := font.Box(text).Inset(50 * sheet.Micrometre)
		for _, line := range strokes {
			for i := 1; i < len(line); i++ {
				if box.Struck(line[i-1], line[i]) {
					t.Errorf("%s: %q at %v is struck by %v-%v", s.ID, text.Words, box, line[i-1], line[i])
				}
			}
		}
	}
}

// checkDetails holds the details of a job against what every sheet promises,
// and wants each thing where it belongs: every box in an elevation, every hole
// in a wall's frame, every soffit spot in a section.
func checkDetails(t *testing.T, res *route.Result) []*sheet.Sheet {
	t.Helper()
	sheets := render.Details(res)
	words := map[string]string{}
	for _, s := range sheets {
		kind, _, _ := strings.Cut(s.ID, "-")
		words[kind] += "\n" + strings.Join(checkTexts(t, res, s), "\n")
		checkStruck(t, s)
	}
	for i := range res.Job.Drops {
		d := &res.Job.Drops[i]
		kind := map[string]string{"wall plate": "elevation", "soffit spot": "section"}[d.Kind.String()]
		if kind != "" && !strings.Contains(words[kind], d.Tag) {
			t.Errorf("no %s shows drop %s", kind, d.Tag)
		}
	}
	for i := range res.Holes {
		switch k := res.Graph.Holes[res.Holes[i].Place].Kind; k {
		case route.PlateArc, route.BlockArc, route.StudArc, route.SoleArc:
			if !strings.Contains(words["elevation"], res.Holes[i].ID) {
				t.Errorf("no elevation shows hole %s through the %s", res.Holes[i].ID, k)
			}
		case route.SoffitArc, route.GableArc:
			if !strings.Contains(words["section"], res.Holes[i].ID) {
				t.Errorf("no section shows hole %s through the %s", res.Holes[i].ID, k)
			}
		}
	}
	return sheets
}

func TestDetailsOfSamples(t *testing.T) {
	for _, job := range samples(t) {
		t.Run(name(job), func(t *testing.T) { checkDetails(t, solveFile(t, job)) })
	}
}

// wordsOf are the texts of the details of one kind.
func wordsOf(sheets []*sheet.Sheet, kind string) []string {
	var out []string
	for _, s := range sheets {
		if !strings.HasPrefix(s.ID, kind) {
			continue
		}
		for item := range s.All() {
			if text, ok := item.(sheet.Text); ok {
				out = append(out, text.Words)
			}
		}
	}
	return out
}

// wantWords fails for each text that is not on the sheets.
func wantWords(t *testing.T, got []string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("no %q on the sheets; there is %q", w, got)
		}
	}
}

// Numbers on the elevations of the starter, worked out by hand. The house is
// 16 ft from siding to siding; 1 in of siding, studs of 3-1/2 in and board of
// 1/2 in leave 16 ft - 10 in = 15 ft 2 in. On the west wall, which runs south,
// the left-hand corner from the study is 187 in along. Studs stand 1 in + 16 in
// apart, so the bay of the receptacle at 154 in ends at 160-1/4 in, where its
// cable is. The plate of D1 keeps 2 in and half of 2-1/4 in away from that:
// 157-1/8 in along, 29-7/8 in from the corner. Its hole is bored in the middle
// of what is free: from half an inch and a quarter beside the stud at 145-3/4
// in to the rafter at 152 in, less half of it and the same: 148-1/2 in along,
// 38-1/2 in from the corner.
func TestElevationNumbersOfStarter(t *testing.T) {
	res := solveFile(t, "../cmd/topplate/starter/job.toml")
	wantWords(t, wordsOf(render.Details(res), "elevation"),
		"Wall west from Study", "15′-2″", "D1 2′-5 7/8″", "H4 3′-2 1/2″", "3/4″ bit",
		"D1, receptacle 1′-2″", "head 6′-10″", "sill 3′-0″", "ceiling 8′-0″", "plate, top 8′-0 5/8″", "floor 0″",
		"2ft 9in from the left", // the receptacle: 187 - 154 in
		"Wall middle from Hall", "Hall cabinet 7′-0″", "Hall cabinet 5′-0″",
	)
}

// Places come back on the sheet as the job file gives them, from the corner
// that is named there. The panel is 5 ft 6 in from the left, in a room whose
// wall is 7 ft 4-1/2 in: nearer to the right.
func TestElevationGivesPlacesAsTaped(t *testing.T) {
	res := solveFile(t, "../samples/corner-house/job.toml")
	wantWords(t, wordsOf(render.Details(res), "elevation"),
		"D3 5′-10″", "D3 4′-6″", "5ft 10in from the left",
		"D2 2′-0″", "2ft from the right", "D2, receptacle 1′-2″",
		"7′-4 1/2″", "Utility panel 1′-10 1/2″", "Utility panel 5′-0″", "1″ bit, from above",
	)
	res = solveFile(t, "../samples/long-roof/job.toml")
	wantWords(t, wordsOf(render.Details(res), "elevation"), "W1 380", "W1, receptacle 300", "W3 1100", "head 2080")
}

// Numbers on the sections, from the geometry of the roof. Starter: 2x6 rafters
// at 8 in 12 with a birdsmouth of 3-1/2 in: their underside is (d - 3-1/2) · 2/3
// over the plate, the sheathing 5-1/2 · √(1 + 4/9) = 6.610 in higher. Over the
// middle of the plate: 6.610 - 1.167 = 5.44 in. At the end of an overhang of 16
// in the soffit is 19-1/2 · 2/3 = 13 in below the plate at 96-5/8 in. A hand
// needs 8 in over joists of 5-1/2 in: 13-1/2 · 3/2 + 3-1/2 = 23-3/4 in from
// the plate's face.
//
// Long roof: trusses at 22.5° with a heel of 110 mm and a chord of 90 mm. Over
// the middle of a plate of 90 mm: 110 + 45 · tan 22.5° = 128.6 mm. At 1659 mm
// the chord's underside is 110 - 90 / cos 22.5° + 1659 · tan 22.5° = 699.8 mm
// high, 609.8 over the bottom chord.
func TestSectionNumbers(t *testing.T) {
	res := solveFile(t, "../cmd/topplate/starter/job.toml")
	wantWords(t, wordsOf(render.Details(res), "section"),
		"Section at D1, wall west", "Section at D3, wall east", "5 7/16″", "soffit 6′-11 5/8″", "8″", "1′-11 3/4″",
		"7 1/2″", "8 1/2″", // the overhang, halved between siding and edge, and 1 in of siding
		"sheathing, 8 in 12", "clear over the plate", "nearest place a hand reaches", "the rod is caught here",
	)
	res = solveFile(t, "../samples/long-roof/job.toml")
	wantWords(t, wordsOf(render.Details(res), "section"), "129", "1659", "610", "sheathing, 22.5°", "225", "375", "soffit, opens")
}

// Every soffit spot has a section, and so has the plate with the least clear
// height over it; plates further up the roof have none.
func TestSectionsAreWhereTheRoofIsLow(t *testing.T) {
	for job, want := range map[string][]string{
		"../samples/corner-house/job.toml": {"D1", "S1", "S2"},
		"../samples/long-roof/job.toml":    {"S1", "S2", "W1"},
		"../cmd/topplate/starter/job.toml": {"D1", "D3"},
	} {
		var got []string
		for _, w := range wordsOf(render.Details(solveFile(t, job)), "section") {
			if rest, ok := strings.CutPrefix(w, "Section at "); ok {
				tag, _, _ := strings.Cut(rest, ",")
				got = append(got, tag)
			}
		}
		slices.Sort(got)
		if got = slices.Compact(got); !slices.Equal(got, want) {
			t.Errorf("%s: sections at %q, want %q", job, got, want)
		}
	}
}

// A wall of 130 ft is shown in parts around its boxes, whose distances from the
// corner stay true.
func TestElevationOfAVeryLongWall(t *testing.T) {
	res := solve(t, "job.toml", edited(t,
		"E 24ft, N 16ft, W 24ft, S 16ft", "E 130ft, N 16ft, W 130ft, S 16ft",
		"room = \"study\"\nwall = \"west\"\nat = \"2ft 4in\"          # from the left-hand corner, facing the wall",
		"room = \"hall\"\nwall = \"south\"\nat = \"50ft\"\nfrom = \"right\"",
		"tag = \"D3\"", "tag = \"D4\"\nkind = \"wall plate\"\nroom = \"hall\"\nwall = \"south\"\nat = \"10ft\"\nfrom = \"right\"\nshift = \"12in\"\n\n[[drop]]\ntag = \"D3\"",
	))
	sheets := checkDetails(t, res)
	words := strings.Join(wordsOf(sheets, "elevation"), "\n")
	for _, want := range []string{"Wall south from Hall, part 1", "Wall south from Hall, part 2", "D1 50′-0", "D4 10′-0"} {
		if !strings.Contains(words, want) {
			t.Errorf("no %q on the sheets:\n%s", want, words)
		}
	}
}

// Six boxes near each other, a conduit, fire blocks and a hole that is there.
func TestElevationOfACrowdedWall(t *testing.T) {
	var more strings.Builder
	for i, at := range []int{44, 52, 60, 134, 146} {
		fmt.Fprintf(&more, "tag = \"E%d\"\nkind = \"wall plate\"\nroom = \"study\"\nwall = \"west\"\nat = \"%din\"\nheight = \"%din\"\ncable = \"cat6\"\nshift = \"16in\"\n\n[[drop]]\n", i, at, 14+6*i)
	}
	res := solve(t, "job.toml", edited(t, "tag = \"D3\"", more.String()+"tag = \"D3\"",
		"[[mark]]", "[[conduit]]\nid = \"pipe\"\nwall = \"west\"\nat = \"10ft 6in\"\nheight = \"4ft\"\nroom = \"study\"\ninside = \"0.8in\"\n\n[[mark]]",
		"names = [\"south\", \"east\", \"north\", \"west\"]", "names = [\"south\", \"east\", \"north\", \"west\"]\nfire_blocks = [\"4ft\"]",
		"[rates]", "[[fixed]]\nid = \"old\"\ndo = \"there\"\nwall = \"west\"\nat = \"14ft\"\ndiameter = \"1in\"\n\n[rates]"))
	sheets := checkDetails(t, res)
	wantWords(t, wordsOf(sheets, "elevation"), "conduit pipe", "conduit pipe 4′-0″", "fire block 4′-0″", "old")
}
