package record

import (
	"bytes"
	"strings"
	"testing"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// desk is a plan with two drops: D1 of two cables through H1, which is to be
// bored, and A1 of one.
func desk() *Plan {
	return &Plan{
		Job: "Desk", Ports: 4, Hours: 3300, CableKinds: []string{"cat6"}, Plugs: []string{"jack-6"},
		UsedPorts: []UsedPort{{Origin{"first.record", 7, 7}, "first-D9.1", 3}},
		Inputs:    []Input{{Path: "job.toml"}, {Path: "house.toml"}},
		Cables: []PlannedCable{
			{ID: "A1.1", Tag: "A1", Only: true, Diameter: inch / 4, Developed: 30 * foot, Straight: 20 * foot, Cut: 42 * foot},
			{ID: "D1.1", Tag: "D1", Diameter: inch / 4, Developed: 47 * foot, Straight: 25 * foot, Cut: 63 * foot, Powered: true},
			{ID: "D1.2", Tag: "D1", Diameter: inch / 4, Developed: 47 * foot, Straight: 25 * foot, Cut: 63 * foot, Powered: true},
		},
		Holes: []PlannedHole{
			{ID: "H1", Bore: Bore{Through: TopPlate, Wall: "east", At: 134 * inch, Diameter: 3 * inch / 4}, Largest: 7 * inch / 4, Cables: []string{"D1.1", "D1.2"}},
			{ID: "H2.1", Bore: Bore{Through: TopPlate, Wall: "middle", At: 60 * inch, Diameter: inch}},
			{ID: "H2.2", Bore: Bore{Through: TopPlate, Wall: "middle", At: 62 * inch, Diameter: inch}},
			{ID: "H3", Bore: Bore{Through: "ceiling", Diameter: inch}, Cables: []string{"A1.1"}},
		},
		Spools: []PlannedSpool{{ID: "S1", Cable: "cat6", Left: 412 * foot, Marked: true, Mark: 412 * foot, Down: true}, {ID: "S2", Cable: "cat6", Left: 500 * foot, Marked: true, Mark: 100 * foot}},
		Walls:  []PlannedWall{{"east", 0, 20 * foot}, {"middle", 0, 20 * foot}},
	}
}

// log makes a record of entries.
func log(e ...Entry) []Entry {
	for i := range e {
		e[i].Number, e[i].Line = i+1, i+1
	}
	return e
}

func cableEntry(id string, c Cable) Entry { return Entry{Kind: CableKind, ID: id, Cable: c} }

func holeEntry(id string, h Hole) Entry { return Entry{Kind: HoleKind, ID: id, Hole: h} }

func spoolEntry(id string, s Spool) Entry { return Entry{Kind: SpoolKind, ID: id, Spool: s} }

// said prints what is found.
func said(t *testing.T, list *diag.List) string {
	t.Helper()
	var b bytes.Buffer
	if err := list.Print(&b, nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var h1 = Hole{Bore: Bore{Through: TopPlate, Wall: "east", At: 134 * inch, Diameter: 3 * inch / 4}, Cables: []string{"D1.1", "D1.2"}}

// with is h1 with changes.
func with(change func(h *Hole)) Hole {
	h := h1
	change(&h)
	return h
}

func TestCheck(t *testing.T) {
	deferred := log(cableEntry("D1.2", Cable{State: Deferred}))
	for _, tt := range []struct {
		name string
		all  []Entry
		add  Entry
		want string // empty if there is nothing to say
	}{
		{"as planned", nil, cableEntry("D1.2", Cable{Length: 61 * foot, Port: 4, Plug: "jack-6", WireMap: Pass, Speed: 2500}), ""},
		{"exactly the way", nil, cableEntry("D1.2", Cable{Length: 47 * foot}), ""},
		{"shorter than the way", nil, cableEntry("D1.2", Cable{Length: 47*foot - 1}), "error: cable D1.2: found 47ft, but its way is 47ft long"},
		{"shorter than straight", nil, cableEntry("D1.2", Cable{Length: 24 * foot}), "error: cable D1.2: found 24ft, but its ends are 25ft from each other"},
		{"anyway", nil, Entry{Kind: CableKind, ID: "D1.2", Anyway: true, Note: "through the closet", Cable: Cable{Length: 24 * foot}}, "warning: cable D1.2: found 24ft"},
		{"anyway without note", nil, Entry{Kind: CableKind, ID: "D1.2", Anyway: true, Cable: Cable{Length: 64 * foot}}, "without a note"},
		{"not in the plan", nil, cableEntry("D1.3", Cable{}), `error: cable D1.3: found "D1.3", which is no cable of the plan; the nearest is D1.`},
		{"second record", deferred, cableEntry("D1.2", Cable{}), "found a second record of it: entry 1 has it already; a correction says so: --replaces 1"},
		{"correction", deferred, Entry{Kind: CableKind, ID: "D1.2", Replaces: 1, Cable: Cable{Length: 50 * foot}}, ""},
		{"correction of nothing", deferred, Entry{Kind: CableKind, ID: "D1.1", Replaces: 1}, "replaces entry 1, but there is no entry about it"},
		{"correction of what was corrected", log(cableEntry("D1.2", Cable{}), Entry{Kind: CableKind, ID: "D1.2", Replaces: 1}), Entry{Kind: CableKind, ID: "D1.2", Replaces: 1}, "the entry that holds is entry 2"},
		{"deferred with a length", nil, cableEntry("D1.2", Cable{State: Deferred, Length: 60 * foot}), "of a cable that is deferred"},
		{"not run with a wire map", nil, cableEntry("D1.2", Cable{State: NotRun, WireMap: Pass}), "of a cable that is not run"},
		{"marks agree", nil, cableEntry("D1.2", Cable{Length: 61 * foot, Marked: true, Marks: [2]measure.Length{351 * foot, 416 * foot}}), ""},
		{"marks disagree", nil, cableEntry("D1.2", Cable{Length: 61 * foot, Marked: true, Marks: [2]measure.Length{351 * foot, 416*foot + 1}}), "but the marks are 65ft apart"},
		{"port beyond the panel", nil, cableEntry("D1.2", Cable{Port: 5}), "found port 5; the panel has 4"},
		{"port taken", log(cableEntry("D1.1", Cable{Port: 2})), cableEntry("D1.2", Cable{Port: 2}), "found port 2, where cable D1.1 is (entry 1)"},
		{"port taken by an earlier job", nil, cableEntry("D1.2", Cable{Port: 3}), "found port 3, where cable first-D9.1 of an earlier job is (first.record, entry 7)"},
		{"fast over a bad wire map", nil, cableEntry("D1.2", Cable{WireMap: Fail, Speed: 1000}), "warning: cable D1.2: found a wire map that fails and a link of 1000 Mb/s"},
		{"slow over a bad wire map", nil, cableEntry("D1.2", Cable{WireMap: Fail, Speed: 100}), ""},
		{"unknown plug", nil, cableEntry("D1.2", Cable{Plug: "jack6"}), "warning: cable D1.2: found \"jack6\""},
		{"deferred, but in a hole", log(holeEntry("H1", h1)), cableEntry("D1.2", Cable{State: Deferred}), "warning: cable D1.2: entry 1 has it in hole H1"},

		{"hole as planned", nil, holeEntry("H1", h1), ""},
		{"hole not in the plan", nil, holeEntry("H9", h1), `found "H9", which is no hole of the plan`},
		{"hole with a deferred cable", deferred, holeEntry("H1", h1), "found cable D1.2 through it, which is deferred (entry 1)"},
		{"hole with a cable twice", nil, holeEntry("H1", with(func(h *Hole) { h.Cables = []string{"D1.1", "D1.1"} })), "through it twice"},
		{"hole with a stranger", nil, holeEntry("H1", with(func(h *Hole) { h.Cables = []string{"D7.1"} })), "which is no cable of the plan"},
		{"hole off its wall", nil, holeEntry("H1", with(func(h *Hole) { h.At = 20 * foot })), "found a hole at 20ft along wall east; want it from 0in to 20ft"},
		{"hole in no wall", nil, holeEntry("H1", with(func(h *Hole) { h.Wall = "esat" })), "which is no wall of the house; the nearest is east"},
		{"hole in another wall", nil, holeEntry("H1", with(func(h *Hole) { h.Wall = "middle" })), "warning: hole H1: found it in wall middle; it was planned in wall east"},
		{"hole too large", nil, holeEntry("H1", with(func(h *Hole) { h.Diameter = 2 * inch })), "warning: hole H1: found a hole of 2in, larger than 1-3/4in"},
		// Nine cables of 1/4 in have 9 × 1/16 = 0.5625 square inches of (3/4)² = 0.5625: just room by area; ten don't.
		{"nine in 3/4in", nil, holeEntry("H1", with(func(h *Hole) { h.There = 7 })), ""},
		{"ten in 3/4in", nil, holeEntry("H1", with(func(h *Hole) { h.There = 8 })), "found 10 cables in a hole of 3/4in"},
		{"hole in a hole", log(holeEntry("H2.1", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 61 * inch, Diameter: inch}})), holeEntry("H2.2", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 62*inch - 1, Diameter: inch}, Cables: []string{"A1.1"}}), "where hole H2.1 is (entry 1)"},
		{"hole beside a hole", log(holeEntry("H2.1", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 61 * inch, Diameter: inch}})), holeEntry("H2.2", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 62 * inch, Diameter: inch}, Cables: []string{"A1.1"}}), ""},
		{"cable in both holes", log(holeEntry("H2.1", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 60 * inch, Diameter: inch}, Cables: []string{"A1.1"}})), holeEntry("H2.2", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 62 * inch, Diameter: inch}, Cables: []string{"A1.1"}}), "which is in hole H2.1 beside it"},
		{"which of two holes", nil, holeEntry("H2.1", Hole{Bore: Bore{Through: TopPlate, Wall: "middle", At: 60 * inch, Diameter: inch}}), "found no cables"},
		{"hole without size", nil, holeEntry("H1", with(func(h *Hole) { h.Diameter = 0 })), "found no size"},

		{"spool", nil, spoolEntry("S1", Spool{Cable: "cat6", Left: 230 * foot}), ""},
		{"spool grows", log(spoolEntry("S1", Spool{Cable: "cat6", Left: 230 * foot})), spoolEntry("S1", Spool{Cable: "cat6", Left: 231 * foot}), "found 231ft left, but there were 230ft before"},
		{"spool grows since the start", nil, spoolEntry("S1", Spool{Cable: "cat6", Left: 413 * foot}), "but there were 412ft before"},
		{"spool corrected", log(spoolEntry("S1", Spool{Cable: "cat6", Left: 230 * foot})), Entry{Kind: SpoolKind, ID: "S1", Replaces: 1, Spool: Spool{Cable: "cat6", Left: 320 * foot}}, ""},
		{"spool of another kind", nil, spoolEntry("S1", Spool{Cable: "cat7", Left: foot}), "found cable \"cat7\""},
		{"spool not in the job", nil, spoolEntry("S9", Spool{Left: foot}), "one that was bought since"},
		{"spool bought", nil, spoolEntry("S9", Spool{Cable: "cat6", Left: 1000 * foot}), ""},
		{"mark the wrong way", nil, spoolEntry("S2", Spool{Cable: "cat6", Left: 400 * foot, Marked: true, Mark: 99 * foot}), "found the mark 99ft after 100ft, the wrong way for marks that count up"},
		{"empty note", nil, Entry{Kind: NoteKind, Note: " "}, "a note without text"},
		{"note of two lines", nil, Entry{Kind: NoteKind, Note: "a\nb"}, "control character"},
	} {
		got := said(t, Check(desk(), tt.all, []Proposal{{Entry: tt.add}}))
		if tt.want == "" && got != "" || !strings.Contains(got, tt.want) || strings.Count(got, "\n") > 1 {
			t.Errorf("%s: got %swant %q", tt.name, got, tt.want)
		}
	}
}

// TestCheckTogether: proposals are checked against each other too.
func TestCheckTogether(t *testing.T) {
	twice := []Proposal{{Entry: cableEntry("D1.1", Cable{}), Pos: diag.Pos{File: "t.csv", Line: 2}}, {Entry: cableEntry("D1.1", Cable{}), Pos: diag.Pos{File: "t.csv", Line: 7}}}
	if got := said(t, Check(desk(), nil, twice)); got != "t.csv:7:0: error: cable D1.1: found a second record of it: row 2 has it already\n" {
		t.Error(got)
	}
}

// TestMarks: the length is what lies between the marks, whichever way they
// count: 412 - 351 = 61 ft; 1234.5 - 1200 = 34.5 m.
func TestMarks(t *testing.T) {
	for text, want := range map[string]measure.Length{
		"412ft,351ft": 61 * foot, "351ft, 412ft": 61 * foot, "1200m,1234.5m": 34_500 * measure.Millimetre, "0ft,61ft": 61 * foot,
	} {
		var c Cable
		if err := c.Set("marks", text, ""); err != nil || c.ByMarks() != want {
			t.Errorf("%s: %v, %v", text, c.ByMarks(), err)
		}
	}
	for _, text := range []string{"412ft", "412ft,412ft", "412,351", "-1ft,2ft", "1ft,2ft,3ft", ","} {
		if err := new(Cable).Set("marks", text, ""); err == nil {
			t.Errorf("%q was read", text)
		}
	}
}

// TestNumbers reads numbers with units in the cell or in the header.
func TestNumbers(t *testing.T) {
	for _, tt := range []struct {
		key, text, unit string
		want            int64
	}{
		{"speed", "2500", "", 2500},
		{"speed", "2.5 Gb/s", "", 2500},
		{"speed", "2.5", "Gbps", 2500},
		{"speed", "100Mbit/s", "gbps", 100},
		{"watts", "11.5", "", 11_500},
		{"watts", "900 mW", "", 900},
		{"watts", "0.0005kW", "", -1},
		{"volts", "48.05V", "", 48_050},
		{"hours", "1.25", "", 1250},
		{"hours", "1.2505", "", -1},
		{"watts", "100.001", "", -1},
		{"watts", "100", "", 100_000},
		{"watts", "-1", "", -1},
		{"watts", "1e3", "", -1},
		{"watts", ".", "", -1},
		{"watts", "99999999999999999999", "", -1},
		{"watts", "9223372036854775807", "", -1},
		{"speed", "1.5", "", -1},
		{"port", "x", "", -1},
	} {
		var c Cable
		err := c.Set(tt.key, tt.text, tt.unit)
		got := map[string]int64{"speed": c.Speed, "watts": c.Watts, "volts": c.Volts, "hours": c.Hours, "port": int64(c.Port)}[tt.key]
		if tt.want < 0 != (err != nil) || err == nil && got != tt.want {
			t.Errorf("%s %q %q: %d, %v", tt.key, tt.text, tt.unit, got, err)
		}
	}
}

// TestTakeMark: of marks that count down, the mark is left; of S2, which has
// 500 ft at mark 100 ft and counts up, 500 - (340 - 100) = 260 ft.
func TestTakeMark(t *testing.T) {
	for _, tt := range []struct {
		id   string
		mark measure.Length
		want measure.Length
	}{{"S1", 230 * foot, 230 * foot}, {"S2", 340 * foot, 260 * foot}} {
		e := Propose(desk(), nil, SpoolKind, tt.id, 0)
		e.Spool.Marked, e.Spool.Mark = true, tt.mark
		if !e.TakeMark(desk(), nil) || e.Spool.Left != tt.want {
			t.Errorf("%s: %v", tt.id, e.Spool.Left)
		}
	}
	e := Propose(desk(), nil, SpoolKind, "S9", 0)
	e.Spool.Marked, e.Spool.Mark = true, foot
	if e.TakeMark(desk(), nil) {
		t.Error("a spool that nothing is known of")
	}
}

// TestPropose: a correction keeps what it doesn't change; a hole begins as it is
// planned, without cables that were not run.
func TestPropose(t *testing.T) {
	all := log(cableEntry("D1.2", Cable{Length: 61 * foot, Port: 2}), cableEntry("D1.1", Cable{State: Deferred}))
	if e := Propose(desk(), all, CableKind, "D1.2", 1); e.Cable.Port != 2 || e.Replaces != 1 {
		t.Errorf("%+v", e)
	}
	if e := Propose(desk(), all, HoleKind, "H1", 0); len(e.Hole.Cables) != 1 || e.Hole.Cables[0] != "D1.2" || e.Hole.At != 134*inch {
		t.Errorf("%+v", e)
	}
	if e := Propose(desk(), nil, CableKind, "A1", 0); e.ID != "A1.1" {
		t.Error(e.ID)
	}
}

func TestChanges(t *testing.T) {
	p := desk()
	all := Entries(p, nil, day, []Proposal{{Entry: cableEntry("A1.1", Cable{})}})
	if len(all) != 2 || len(p.Changes(all)) != 0 {
		t.Fatalf("%d entries, %v", len(all), p.Changes(all))
	}
	p.Inputs = []Input{{"job.toml", [32]byte{1}}, {"other.toml", [32]byte{}}}
	want := "house.toml is no longer a part of the job;job.toml was changed since then;other.toml is new since then"
	if got := strings.Join(p.Changes(all), ";"); got != want {
		t.Error(got)
	}
	if more := Entries(p, all, day, nil); len(more) != 0 {
		t.Error("a record begins twice")
	}
}
