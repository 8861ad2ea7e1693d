package render_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/record"
	"topplate/render"
	"topplate/render/sheet"
	"topplate/render/svg"
	"topplate/route"
)

// planOf is what a record of a job is held against, as far as it is drawn.
func planOf(res *route.Result) *record.Plan {
	job := res.Job
	p := &record.Plan{Job: job.Name, Units: job.House.Units}
	for _, in := range job.Inputs {
		p.Inputs = append(p.Inputs, record.Input{Path: in.Path, SHA256: in.SHA256})
	}
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &job.Drops[r.Drop]
		for n := range d.Count {
			p.Cables = append(p.Cables, record.PlannedCable{
				ID: fmt.Sprintf("%s.%d", d.Tag, n+1), Tag: d.Tag, Kind: d.Cable.ID, Cut: r.Lengths.Cut, NoRoute: r.Blocked != nil, Powered: d.Watts > 0,
			})
		}
	}
	for i := range res.Holes {
		h := &res.Holes[i]
		place := &res.Graph.Holes[h.Place]
		one := record.PlannedHole{ID: h.ID, Bore: record.Bore{Through: place.Kind.String(), Diameter: h.Bit}}
		if place.Wall >= 0 {
			one.Wall, one.At = job.House.Walls[place.Wall].ID, place.Along
		}
		p.Holes = append(p.Holes, one)
	}
	p.Spools = []record.PlannedSpool{{ID: "B1", Cable: "cat6", Left: 500 * measure.Foot}, {ID: "B2", Cable: "cat6-outdoor", Left: 200 * measure.Foot}}
	return p
}

// entriesOf numbers entries and dates them one day after the other.
func entriesOf(add ...record.Entry) []record.Entry {
	out := append([]record.Entry{{Kind: record.StartKind, Start: record.Start{Name: "First cables"}}}, add...)
	for i := range out {
		out[i].Number = i + 1
		out[i].When = time.Date(2026, 3, 30+i, 8, 0, 0, 0, time.UTC)
	}
	return out
}

func ran(id string, c record.Cable) record.Entry {
	c.State = record.Run
	return record.Entry{Kind: record.CableKind, ID: id, Cable: c}
}

func leftUndone(id string, s record.State) record.Entry {
	return record.Entry{Kind: record.CableKind, ID: id, Cable: record.Cable{State: s}}
}

// drilled is a hole of the plan, moved along its wall.
func drilled(p *record.Plan, id string, off, size measure.Length) record.Entry {
	h, _ := p.Hole(id)
	return record.Entry{Kind: record.HoleKind, ID: id, Hole: record.Hole{Bore: record.Bore{Through: h.Through, Wall: h.Wall, At: h.At + off, Diameter: size}}}
}

// starterBuilt is the starter with D1 run, one of its cables corrected, D2
// deferred, D3 without an entry; one hole as planned, one 2 in off, one that was
// not planned, one without an entry.
func starterBuilt(t testing.TB) *render.AsBuilt {
	t.Helper()
	res := solveFile(t, starterJob)
	p := planOf(res)
	wrong := ran("D1.2", record.Cable{Length: 50 * measure.Foot})
	right := ran("D1.2", record.Cable{Length: 41*measure.Foot + 6*measure.Inch, WireMap: record.Fail})
	right.Replaces = 3
	misread, drilledH4 := drilled(p, "H4", 5*measure.Inch, measure.Inch), drilled(p, "H4", 2*measure.Inch, 3*measure.Inch/4)
	drilledH4.Replaces = 7
	return &render.AsBuilt{Result: res, Plan: p, Entries: entriesOf(
		ran("D1.1", record.Cable{Length: 42 * measure.Foot, WireMap: record.Pass, Speed: 2500, Watts: 11500}),
		wrong, right,
		leftUndone("D2.1", record.Deferred),
		drilled(p, "H3", measure.Inch/4, measure.Inch/2),
		misread, drilledH4,
		record.Entry{Kind: record.HoleKind, ID: "X1", Hole: record.Hole{Bore: record.Bore{Through: "top plate", Wall: "west", At: 15 * measure.Foot, Diameter: measure.Inch / 2}}},
		record.Entry{Kind: record.SpoolKind, ID: "B1", Spool: record.Spool{Cable: "cat6", Left: 370 * measure.Foot}},
		record.Entry{Kind: record.SpoolKind, ID: "B1", Spool: record.Spool{Cable: "cat6", Left: 320 * measure.Foot, Marked: true, Mark: 320 * measure.Foot}},
	)}
}

// TestGoldenAsBuilt compares the sheet with what was looked at.
func TestGoldenAsBuilt(t *testing.T) {
	want := map[string]bool{}
	for _, s := range render.AsBuiltSheets(starterBuilt(t)) {
		var b bytes.Buffer
		if err := svg.Write(&b, s, svg.Options{NoFonts: true}); err != nil {
			t.Fatal(err)
		}
		compare(t, "testdata/"+s.ID+".svg", b.Bytes(), want)
	}
	if !want["testdata/as-built.svg"] {
		t.Errorf("the sheet has another name: %v", want)
	}
}

// The sheet says what the record of starterBuilt says, worked out by hand.
func TestAsBuiltSays(t *testing.T) {
	a := starterBuilt(t)
	s := render.AsBuiltSheets(a)[0]
	words := "\n" + strings.Join(checkTexts(t, a.Result, s), "\n") + "\n"
	for _, want := range []string{
		"From the record, entry 11", "record, entry 11", "2 run", "2×", "2 of 3×", "deferred", "no entry", "2500", "11.5", "pass", "fail", "42ft", "41ft 6in", "320ft",
		"no entry of cables: D3.1", "no entry of spools: B2", "wire map fails, to be mended: D1.2", "1/2in, not planned", "3/4in, +2in",
	} {
		if !strings.Contains(words, "\n"+want+"\n") {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	// A quarter of an inch is not more than a quarter of an inch; an entry that
	// was corrected does not hold.
	for _, not := range []string{"+1/4in", "50ft", "+5in", "370ft"} {
		if strings.Contains(words, not) {
			t.Errorf("the sheet says %q", not)
		}
	}
	if !strings.Contains(strings.ReplaceAll(words, "\n", " "), "Last entry of 2026-04-09.") { // 30 March and 10 days
		t.Error("the sheet does not give the day of the last entry")
	}
}

// pensIn lists the pens of all lines in a group.
func pensIn(g *sheet.Group) (out []sheet.Pen) {
	for _, item := range g.Items {
		switch it := item.(type) {
		case *sheet.Group:
			out = append(out, pensIn(it)...)
		case sheet.Poly:
			out = append(out, it.Pen)
		case sheet.Line:
			out = append(out, it.Pen)
		case sheet.Circle:
			out = append(out, it.Pen)
		}
	}
	return out
}

// Every bundle is solid if one of its cables was run, dashed if there are only
// cables that were left out, and faint without any entry.
func TestAsBuiltPens(t *testing.T) {
	a := starterBuilt(t)
	s := render.AsBuiltSheets(a)[0]
	pen := map[string]sheet.Pen{"D1": sheet.PenCable, "D2": sheet.PenCableLeft, "D3": sheet.PenWallBelow}
	seen := map[sheet.Pen]bool{}
	for i, b := range a.Result.Bundles {
		g := groupCalled(s.Groups, fmt.Sprintf("bundle-%d", i+1))
		if g == nil {
			continue // upright
		}
		var tags []string
		for _, d := range b.Drops {
			tags = append(tags, a.Result.Job.Drops[d].Tag)
		}
		slices.Sort(tags) // the state of D1 is stronger than that of D2, and so on
		seen[pen[tags[0]]] = true
		if got := pensIn(g); len(got) != 1 || got[0] != pen[tags[0]] {
			t.Errorf("bundle %d of %v has pens %v, want %v", i+1, tags, got, pen[tags[0]])
		}
	}
	if len(seen) != len(pen) {
		t.Errorf("not every state is drawn: %v", seen)
	}
}

// A hole is drawn where it was drilled, and a ring where it was planned: on
// paper they are as far apart as the scale says.
func TestAsBuiltHolePlaces(t *testing.T) {
	a := starterBuilt(t)
	s := render.AsBuiltSheets(a)[0]
	centre := func(id string) sheet.Point {
		g := groupCalled(s.Groups, id)
		if g == nil {
			t.Fatalf("there is no %s", id)
		}
		for _, item := range g.Items {
			if c, ok := item.(sheet.Circle); ok {
				return c.Centre
			}
		}
		t.Fatalf("%s has no circle", id)
		return sheet.Point{}
	}
	for id, off := range map[string]measure.Length{"H3": measure.Inch / 4, "H4": 2 * measure.Inch} {
		h, _ := a.Plan.Hole(id)
		w := wallCalled(t, a.Result, h.Wall)
		want := s.View.Point(w.PointAt(h.At + off)).Sub(s.View.Point(w.PointAt(h.At)))
		got := centre("hole-" + id).Sub(centre("planned-" + id))
		if got != want || got == (sheet.Point{}) {
			t.Errorf("%s is %v from its planned place, want %v", id, got, want)
		}
	}
	if got, want := centre("hole-X1"), s.View.Point(wallCalled(t, a.Result, "west").PointAt(15*measure.Foot)); got != want {
		t.Errorf("X1 is at %v, want %v", got, want)
	}
	for i := range a.Plan.Holes {
		id := "hole-" + a.Plan.Holes[i].ID
		g := groupCalled(s.Groups, id)
		if g == nil {
			t.Fatalf("there is no %s", id)
		}
		if faint := slices.Contains(pensIn(g), sheet.PenHoleThere); faint != (i < 2) {
			t.Errorf("%s: faint is %v", id, faint)
		}
	}
}

func wallCalled(t *testing.T, res *route.Result, id string) *plan.Wall {
	t.Helper()
	i := slices.IndexFunc(res.Job.House.Walls, func(w plan.Wall) bool { return w.ID == id })
	if i < 0 {
		t.Fatalf("there is no wall %s", id)
	}
	return &res.Job.House.Walls[i]
}

// One cable that was run makes a bundle solid, and the rest of it is told.
func TestAsBuiltPartOfBundle(t *testing.T) {
	a := starterBuilt(t)
	a.Entries = entriesOf(ran("D1.1", record.Cable{}), leftUndone("D1.2", record.NotRun))
	s := render.AsBuiltSheets(a)[0]
	words := checkTexts(t, a.Result, s)
	for _, want := range []string{"1 run, 1 not run", "1 of 2×", "no length: D1.1", "no wire map: D1.1"} {
		if !slices.Contains(words, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	drawn := pensIn(groupCalled(s.Groups, "ways"))
	if !slices.Contains(drawn, sheet.PenCable) || slices.Contains(drawn, sheet.PenCableLeft) {
		t.Errorf("the bundles have pens %v", drawn)
	}
}

// Whatever a record says, no text lies over another, and nothing is left out:
// nothing done, all done, holes where the house has no place for them.
func TestAsBuiltOfSamples(t *testing.T) {
	for _, job := range append(samples(t), storeys...) {
		res := solveFile(t, job)
		p := planOf(res)
		var all []record.Entry
		for i, c := range p.Cables {
			all = append(all, ran(c.ID, record.Cable{Length: c.Cut - measure.Length(i)*measure.Inch, WireMap: record.Pass, Speed: 10000, Watts: 25500}))
		}
		for _, h := range p.Holes {
			all = append(all, drilled(p, h.ID, -3*measure.Inch, measure.Inch))
		}
		odd := record.Hole{Bore: record.Bore{Through: "top plate", Wall: "gone", At: measure.Foot, Diameter: measure.Inch}}
		far := record.Hole{Bore: record.Bore{Through: "top plate", Wall: res.Job.House.Walls[0].ID, At: 5000 * measure.Foot, Diameter: measure.Inch}}
		strange := []record.Entry{
			ran("D999.1", record.Cable{}), {Kind: record.HoleKind, ID: "H901", Hole: odd}, {Kind: record.HoleKind, ID: "H902", Hole: far},
		}
		note := record.Entry{Kind: record.NoteKind, Note: "started"}
		for what, entries := range map[string][]record.Entry{"a note": {note}, "all": all, "strange": strange} {
			a := &render.AsBuilt{Result: res, Plan: p, Entries: entriesOf(entries...)}
			t.Run(name(job)+" "+what, func(t *testing.T) { checkBuilt(t, a, what) })
		}
	}
}

func checkBuilt(t *testing.T, a *render.AsBuilt, what string) {
	t.Helper()
	var words string
	for _, s := range render.AsBuiltSheets(a) {
		words += strings.Join(checkTexts(t, a.Result, s), "\n") + "\n"
	}
	for i := range a.Result.Job.Drops {
		if tag := a.Result.Job.Drops[i].Tag; !names(words, tag) {
			t.Errorf("no sheet shows drop %s", tag)
		}
	}
	for i := range a.Plan.Holes {
		if id := a.Plan.Holes[i].ID; !names(words, id) {
			t.Errorf("no sheet shows hole %s", id)
		}
	}
	for _, want := range map[string][]string{"strange": {"recorded, and not in this plan: D999.1", "H901, H902"}}[what] {
		if !strings.Contains(strings.ReplaceAll(words, "\n", " "), want) {
			t.Errorf("no sheet says %q", want)
		}
	}
	if !a.Done() {
		t.Error("something was done")
	}
}

// The folder has the sheet, all that is recorded, and a manifest that names the
// record; the same record gives the same bytes.
func TestAsBuiltFolder(t *testing.T) {
	a := starterBuilt(t)
	a.Record = render.EntryOf("job.record", []byte("x"))
	files, err := render.AsBuiltFolder(a)
	if err != nil {
		t.Fatal(err)
	}
	again, err := render.AsBuiltFolder(a)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for i, f := range files {
		list = append(list, f.Name)
		if !bytes.Equal(f.Data, again[i].Data) {
			t.Errorf("%s differs from one run to the next", f.Name)
		}
	}
	if want := []string{"as-built.svg", "as-built.pdf", "as-built.txt", "manifest.json"}; !slices.Equal(list, want) {
		t.Errorf("got %v, want %v", list, want)
	}
	m, err := render.ReadManifest(files[3].Data)
	if err != nil || !slices.Contains(m.Inputs, a.Record) {
		t.Errorf("the manifest does not name the record: %v, %v", m.Inputs, err)
	}
	if text := string(files[2].Data); !strings.Contains(text, "4, for 3") || !strings.Contains(text, "\nCautions\n") {
		t.Errorf("the text lacks something:\n%s", text)
	}
	if (&render.AsBuilt{Entries: a.Entries[:1]}).Done() {
		t.Error("a record of which only the first entry is there says that something was done")
	}
}
