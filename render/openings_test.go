package render_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/render"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// openingsSheets are those of the sheets that show the openings.
func openingsSheets(sheets []*sheet.Sheet) []*sheet.Sheet {
	return slices.DeleteFunc(slices.Clone(sheets), func(s *sheet.Sheet) bool { return !strings.HasPrefix(s.ID, "openings") })
}

// textsOf are the words in an item, in the order of drawing.
func textsOf(items ...sheet.Item) (words []string) {
	for _, item := range items {
		switch item := item.(type) {
		case sheet.Text:
			words = append(words, item.Words)
		case *sheet.Group:
			words = append(words, textsOf(item.Items...)...)
		}
	}
	return words
}

// groupsLike collects the groups whose ids start with a prefix, by what is left
// of the id.
func groupsLike(t *testing.T, sheets []*sheet.Sheet, prefix string) map[string]*sheet.Group {
	t.Helper()
	found := map[string]*sheet.Group{}
	var walk func(g *sheet.Group)
	walk = func(g *sheet.Group) {
		if rest, ok := strings.CutPrefix(g.ID, prefix); ok {
			if found[rest] != nil {
				t.Errorf("%s is there twice", g.ID)
			}
			found[rest] = g
		}
		for _, item := range g.Items {
			if child, ok := item.(*sheet.Group); ok {
				walk(child)
			}
		}
	}
	for _, s := range sheets {
		for _, g := range s.Groups {
			walk(g)
		}
	}
	return found
}

// expectedOpenings counts the openings in finished surfaces from the routes
// alone: boxes by their places, holes by their kinds, and the panel.
func expectedOpenings(res *route.Result) int {
	boxes, n := map[string]bool{}, 0
	routed := false
	for i := range res.Routes {
		r := &res.Routes[i]
		if r.Blocked != nil {
			continue
		}
		routed = true
		if res.Job.Drops[r.Drop].Kind == plan.WallPlate {
			boxes[fmt.Sprint(r.Place)] = true
		}
	}
	for i := range res.Holes {
		switch res.Graph.Holes[res.Holes[i].Place].Kind {
		case route.CeilingArc, route.SoffitArc, route.GableArc, route.StudArc, route.JoistArc, route.WallArc:
			n++
		}
	}
	if routed && !res.Job.Closet.Ceiling {
		n++
	}
	return n + len(boxes)
}

// checkOpenings holds the openings sheets against what they promise: every
// opening has its number on the plan and its row in the table, once; every drop
// is named; only the last sheet has a place to sign; and no line strikes a
// text.
func checkOpenings(t *testing.T, res *route.Result, all []*sheet.Sheet) {
	t.Helper()
	sheets := openingsSheets(all)
	want := expectedOpenings(res)
	rows, places, labels := groupsLike(t, sheets, "row-"), groupsLike(t, sheets, "place-"), groupsLike(t, sheets, "label-place-")
	for n := 1; n <= want; n++ {
		number := strconv.Itoa(n)
		if rows[number] == nil || places[number] == nil {
			t.Errorf("opening %s of %d is not on the plan and in the table", number, want)
			continue
		}
		if labels[number] == nil || !slices.Equal(textsOf(labels[number]), []string{number}) {
			t.Errorf("opening %s has no number on the plan", number)
		}
	}
	if len(rows) != want || len(places) != want {
		t.Errorf("%d rows and %d places for %d openings", len(rows), len(places), want)
	}
	var words []string
	for i, s := range sheets {
		words = append(words, checkTexts(t, res, s)...)
		if signed := groupsLike(t, sheets[i:i+1], "sign"); (len(signed) > 0) != (i == len(sheets)-1) {
			t.Errorf("%s: a place to sign: %v", s.ID, len(signed) > 0)
		}
		checkNotStruck(t, s)
	}
	flowing := strings.Join(words, " ")
	for i := range res.Job.Drops {
		if tag := res.Job.Drops[i].Tag; !strings.Contains(flowing, tag) {
			t.Errorf("drop %s is not named", tag)
		}
	}
}

// checkNotStruck fails where a line of the sheet runs through a text.
func checkNotStruck(t *testing.T, s *sheet.Sheet) {
	t.Helper()
	for item := range s.All() {
		text, ok := item.(sheet.Text)
		if !ok {
			continue
		}
		box := font.Box(text)
		for line := range s.All() {
			for _, stroke := range line.Strokes() {
				for i := 1; i < len(stroke); i++ {
					if box.Struck(stroke[i-1], stroke[i]) {
						t.Errorf("%s: %q at %v is struck from %v to %v", s.ID, text.Words, box, stroke[i-1], stroke[i])
						return
					}
				}
			}
		}
	}
}

// row is the row of the table that names something, its cells joined.
func row(t *testing.T, sheets []*sheet.Sheet, naming string) string {
	t.Helper()
	for _, g := range groupsLike(t, openingsSheets(sheets), "row-") {
		if words := strings.Join(textsOf(g), " "); strings.Contains(words, naming) {
			return words
		}
	}
	t.Fatalf("no row names %s", naming)
	return ""
}

// A stud that is bored through behind the board: the starter with the plate over
// the desk avoided. The opening is beside the desk's, a stud away, and closed
// again by the terms of the price list's patch.
func TestOpeningThatIsClosedAgain(t *testing.T) {
	res := solve(t, "job.toml", edited(t, "[rates]", `[allow]
patching = true

[[fixed]]
id = "F"
do = "avoid"
wall = "west"
at = "13ft"
width = "24in"

[rates]`))
	sheets := render.Sheets(fixed(res))
	checkOpenings(t, res, sheets)
	got := row(t, sheets, "a way through inside the wall, for D1: desk")
	for _, w := range []string{"on the west wall, ", "14 in above the floor", "Yes: filled, sanded and painted by the installer, over two visits."} {
		if !strings.Contains(got, w) {
			t.Errorf("%q\nwants %q", got, w)
		}
	}
	if term, _ := price.Lookup(price.Patch); term.Doc != "Cut, fill, sand and paint, over two visits." {
		t.Errorf("the price of a patch covers %q: say the same on the sheet", term.Doc)
	}
	words := strings.Join(textsOf(groupsLike(t, sheets, "sign")[""]), " ")
	if !strings.Contains(words, "Matching paint") {
		t.Error("nothing is said of paint where it is signed")
	}
}

// The number of an opening stands in the room of the opening, and out of doors
// if that is. The rows name their room where it begins.
func TestNumbersStandInTheirRooms(t *testing.T) {
	for _, job := range samples(t) {
		res := solveFile(t, job)
		sheets := openingsSheets(render.Sheets(fixed(res)))
		rows := groupsLike(t, openingsSheets(render.Sheets(fixed(res))), "row-")
		room := ""
		var elsewhere []string
		for n := 1; n <= len(rows); n++ {
			number := strconv.Itoa(n)
			if second := textsOf(rows[number])[1]; slices.ContainsFunc(res.Job.House.Rooms, func(r plan.Room) bool { return strings.HasPrefix(r.Name, second) }) || second == "Outside" {
				room = second
			}
			var at sheet.Point
			var s *sheet.Sheet
			for _, o := range sheets {
				g := groupsLike(t, []*sheet.Sheet{o}, "label-place-")[number]
				if g == nil {
					continue
				}
				s = o
				for item := range g.All() {
					if c, ok := item.(sheet.Circle); ok {
						at = c.Centre
					}
				}
			}
			if s == nil {
				t.Errorf("%s: number %s is on no sheet", name(job), number)
				continue
			}
			in := "Outside"
			for i := range res.Job.House.Rooms {
				r := &res.Job.House.Rooms[i]
				if len(res.Job.House.Levels) > 1 && s.ID != "openings-"+res.Job.House.Levels[r.Level].ID {
					continue
				}
				var outline geom.Polygon
				for _, p := range s.View.Points(r.Outline) {
					outline = append(outline, geom.Point{X: measure.Length(p.X), Y: measure.Length(p.Y)})
				}
				if outline.Contains(geom.Point{X: measure.Length(at.X), Y: measure.Length(at.Y)}) {
					in = r.Name
				}
			}
			if !strings.HasPrefix(in, room) {
				elsewhere = append(elsewhere, fmt.Sprintf("number %s of %s stands in %s", number, room, in))
			}
		}
		// A number that finds no place in its room has a leader to it: one in the
		// samples, in a room full of a rack and a riser.
		if len(elsewhere) > 1 || len(elsewhere) == 1 && name(job) != "small-office" {
			t.Errorf("%s: %s", name(job), elsewhere)
		}
	}
}

// What the rows say of the samples, from the files of the samples and a pencil:
// where the tape put a place, plus how far a note of the job says it was moved;
// cut-outs of 2-1/4 by 3-3/4 in are those of bracket-makers, from memory.
func TestOpeningsOfSamples(t *testing.T) {
	sheets := map[string][]*sheet.Sheet{}
	for _, c := range []struct {
		job, naming string
		want        []string
	}{
		// D1: wished 1 ft 10 in from the left corner, moved 5-1/8 in to it.
		{"../samples/corner-house/job.toml", "D1: ", []string{
			"Study", "study desk", "on the east wall, 17 in from the left corner, 14 in above the floor", "2-1/4 in wide, 3-3/4 in high", "a wall plate with 3 ports", "No. It stays",
		}},
		// D2: 2 ft from the right corner, and the window of 4 ft stands 40 in from it.
		{"../samples/corner-house/job.toml", "D2: ", []string{"Bedroom 2", "on the north wall, 16 in right of the window", "a wall plate with 2 ports"}},
		// C1: 6 ft 6 in from the north wall.
		{"../samples/corner-house/job.toml", "C1: ", []string{"in the ceiling, ", "6 ft 6 in from the north wall", "round, 3/4 in across", "the device itself"}},
		{"../samples/corner-house/job.toml", "S1: ", []string{"Outside", "porch camera", "under the roof's edge on the south side", "the gap around the cable is sealed"}},
		// S2: under the strip that unclips.
		{"../samples/corner-house/job.toml", "S2: ", []string{"under the roof's edge on the west side", "where the vent strip comes off", "the strip is put back on"}},
		// The panel: 5 ft 6 in from the left corner of a room 7 ft 4-1/2 in wide.
		{"../samples/corner-house/job.toml", "Utility panel", []string{"on the north wall, 22-1/2 in from the right corner, 5 ft above the floor", "up to 14 in wide", "the panel that the cables go to"}},
		{"../samples/long-roof/job.toml", "Laundry rack", []string{"in the ceiling, 85 cm from the west wall and 40 cm from the north wall", "2 round holes side by side, 25 mm across"}},
		{"../samples/long-roof/job.toml", "W2: ", []string{"30 cm above the floor", "57 mm wide, 95 mm high", "a wall plate with 1 port"}},
		// S2: through the brick of the gable, 2.6 m from the north-west corner.
		{"../samples/long-roof/job.toml", "S2: ", []string{"high in the west wall, under the roof's edge, 2.60 m from the left corner", "round, 16 mm across", "a sleeve", "sealed against the weather"}},
		// Facing the west wall from inside, its south end is at the left: 2 ft 4 in and 1-7/8 in.
		{"../cmd/topplate/starter/job.toml", "D1: ", []string{"on the west wall, 30 in from the left corner, 14 in above the floor", "a wall plate with 2 ports"}},
		{"../cmd/topplate/starter/job.toml", "D2: ", []string{"Study", "in the ceiling, 6 ft 8 in from the west wall and 7 ft from the south wall"}},
	} {
		if sheets[c.job] == nil {
			sheets[c.job] = render.Sheets(fixed(solveFile(t, c.job)))
		}
		got := row(t, sheets[c.job], c.naming)
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s, %s: %q\nwants %q", name(c.job), c.naming, got, w)
			}
		}
	}
}

// The same starter, changed: other ends, names by the compass, two at one
// place, later, more than one gang, old paint.
func TestOpeningsOfChangedStarter(t *testing.T) {
	for _, c := range []struct {
		name   string
		edits  []string
		naming string
		want   []string
	}{
		{"the compass names the walls", []string{"north = 0 ", "north = 90 "}, "D1: ", []string{"on the north wall, "}},
		{"eight winds", []string{"north = 0 ", "north = 30 "}, "D1: ", []string{"on the north-west wall, "}},
		{"cables that come out", []string{"note = \"desk\"", "note = \"desk\"\nend = \"plug\""}, "D1: ", []string{"a wall plate that 2 cables come out of"}},
		{"without a note", []string{"note = \"desk\"", ""}, "D1: ", []string{"D1: wall plate"}},
		{"for later", []string{"note = \"desk\"", "note = \"desk\"\nwhen = \"later\""}, "D1 (later): ", []string{"D1 (later): desk"}},
		// Five cables take two gangs: 4 in.
		{"two gangs", []string{"cable = \"cat6\"\ncount = 2", "cable = \"cat6\"\ncount = 5"}, "D1: ", []string{"4 in wide, 3-3/4 in high", "a wall plate with 5 ports"}},
		// The window's south edge is 6 ft from the house's corner, the room's
		// corner 5 in, half an inch of board and 4-1/2 in of wall and cladding.
		{"beside the window", []string{"at = \"2ft 4in\"", "at = \"4ft 6in\""}, "D1: ", []string{" left of the window, "}},
	} {
		t.Run(c.name, func(t *testing.T) {
			res := solve(t, "job.toml", edited(t, c.edits...))
			sheets := render.Sheets(fixed(res))
			got := row(t, sheets, c.naming)
			for _, w := range c.want {
				if !strings.Contains(got, w) {
					t.Errorf("%q\nwants %q", got, w)
				}
			}
			checkOpenings(t, res, sheets)
		})
	}
}

// A homeowner need not know the trade: none of its words is on the sheets. The
// titles of the cautions are the job's own and stand apart.
func TestOpeningsInPlainWords(t *testing.T) {
	for _, job := range samples(t) {
		res := solveFile(t, job)
		for _, s := range openingsSheets(render.Sheets(fixed(res))) {
			for _, w := range checkTexts(t, res, s) {
				if strings.HasPrefix(w, res.Job.House.Name) || w == res.Job.Name {
					continue // the user's own words
				}
				for _, word := range strings.FieldsFunc(strings.ToLower(w), func(r rune) bool { return !strings.ContainsRune("abcdefghijklmnopqrstuvwxyz", r) }) {
					if slices.Contains([]string{"drop", "drops", "soffit", "fascia", "stud", "studs", "bay", "bays", "bit", "bits", "gang", "bundle", "fish", "trunk", "eave", "eaves"}, word) {
						t.Errorf("%s, %s: %q says %q", name(job), s.ID, w, word)
					}
				}
			}
		}
	}
}
