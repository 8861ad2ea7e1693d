package record

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/measure"
)

// TestExisting counts by hand what two jobs left. Job a bored H1 with D1.1 to
// D1.3, one of which was not run: 2 cables. Job b pulled B1.1 through it beside
// those 2, and made it wider: 3. Spool
// S1 went from 412 ft to 230 ft in a and to 90 ft in b; S2 is empty.
func TestExisting(t *testing.T) {
	a := log(
		Entry{Kind: StartKind},
		holeEntry("H1", Hole{Bore: Bore{Through: TopPlate, Wall: "east", At: 134 * inch, Diameter: 3 * inch / 4}, Cables: []string{"D1.1", "D1.2", "D1.3"}}),
		holeEntry("H2", Hole{Bore: Bore{Through: TopPlate, Wall: "west", At: 10 * inch, Diameter: inch}, Cables: []string{"D1.1"}}),
		holeEntry("H3", Hole{Bore: Bore{Through: "ceiling", Diameter: inch}}),
		cableEntry("D1.1", Cable{Port: 1}),
		cableEntry("D1.2", Cable{State: Deferred}),
		cableEntry("D1.3", Cable{}),
		spoolEntry("S1", Spool{Cable: "cat6", Left: 300 * foot}),
		spoolEntry("S1", Spool{Cable: "cat6", Left: 230 * foot}),
		spoolEntry("S2", Spool{Cable: "cat6"}),
		Entry{Kind: HoleKind, ID: "H2", Replaces: 3, Hole: Hole{Bore: Bore{Through: TopPlate, Wall: "west", At: 12 * inch, Diameter: inch}, Cables: []string{"D1.1"}}},
	)
	b := log(
		holeEntry("a-H1", Hole{Bore: Bore{Through: TopPlate, Wall: "east", At: 134*inch + inch/4, Diameter: inch}, Cables: []string{"B1.1"}, There: 2}),
		cableEntry("B1.1", Cable{Port: 2}),
		spoolEntry("S1", Spool{Cable: "cat6", Left: 90 * foot}),
	)
	got := Existing([]Earlier{{"a", "a.record", a}, {"b", "b.record", b}})
	want := Left{
		Holes: []LeftHole{
			{Origin{"a.record", 4, 4}, "a-H3", Bore{Through: "ceiling", Diameter: inch}, 0},
			{Origin{"a.record", 11, 11}, "a-H2", Bore{Through: TopPlate, Wall: "west", At: 12 * inch, Diameter: inch}, 1},
			{Origin{"b.record", 1, 1}, "a-H1", Bore{Through: TopPlate, Wall: "east", At: 134*inch + inch/4, Diameter: inch}, 3},
		},
		Spools: []LeftSpool{{Origin{"b.record", 3, 3}, "S1", Spool{Cable: "cat6", Left: 90 * foot}}},
		Ports:  []UsedPort{{Origin{"a.record", 5, 5}, "a-D1.1", 1}, {Origin{"a.record", 7, 7}, "a-D1.3", 0}, {Origin{"b.record", 2, 2}, "b-B1.1", 2}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestShow holds every number of a small record against sums by hand: measured
// 61 + 40 = 101 ft where 63 + 42 = 105 ft were planned, 1.5 + 0.75 = 2.25 hours
// of 3.3; the hole is 2 in south of its place.
func TestShow(t *testing.T) {
	all := log(
		Entry{Kind: StartKind, When: day},
		cableEntry("D1.1", Cable{Length: 61 * foot, WireMap: Fail, Hours: 1500}),
		cableEntry("D1.2", Cable{State: Deferred}),
		cableEntry("A1.1", Cable{Length: 50 * foot}),
		Entry{Kind: CableKind, ID: "A1.1", Replaces: 4, Cable: Cable{Length: 40 * foot, WireMap: Pass, Hours: 750}},
		holeEntry("H1", Hole{Bore: Bore{Through: TopPlate, Wall: "east", At: 132 * inch, Diameter: inch}, Cables: []string{"D1.1", "D1.2"}}),
		spoolEntry("S1", Spool{Cable: "cat6", Left: 230 * foot, Marked: true, Mark: 230 * foot, Down: true}),
		Entry{Kind: NoteKind, When: day, Note: "door sticks", By: "A. Fitter"},
	)
	var b strings.Builder
	if err := Show(&b, desk(), all); err != nil {
		t.Fatal(err)
	}
	want := `Record of Desk
begun 2026-03-31, 8 entries

Cables
  cable  state     planned  measured  difference  on the end  port  wire map  Mb/s  W  V  hours  entry     note
  A1.1   run       42ft     40ft      -2ft        –           –     pass      –     –  –  0.75   5, for 4
  D1.1   run       63ft     61ft      -2ft        –           –     fail      –     –  –  1.5    2
  D1.2   deferred  63ft     –         –           –           –     –         –     –  –  –      3

2 of 3 cables run; 101ft measured where 105ft were planned to cut (-4ft)
2.25 hours recorded; the plan counts 3.3

Holes
  hole  through    planned                   as drilled            difference  size planned  size  cables  entry  note
  H1    top plate  11ft 2in along wall east  11ft along wall east  -2in        3/4in         1in   1       6

Spools
  spool  cable  at the start  left   mark   entry  note
  S1     cat6   412ft         230ft  230ft  7

Notes
  note         by         when
  door sticks  A. Fitter  2026-03-31 14:40

Missing
  what                                of
  wire map fails, to be mended        D1.1
  no power measured at the device     D1.1
  no record of the hole               H2.1, H2.2, H3
  not told what is left on the spool  S2
`
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Error(diff)
	}
}

// TestNothingMissing: a record with everything says so; and an empty one that
// nothing is recorded yet.
func TestNothingMissing(t *testing.T) {
	p := &Plan{Cables: []PlannedCable{{ID: "A1.1", Cut: measure.Foot}}}
	var b strings.Builder
	if err := Show(&b, p, log(cableEntry("A1.1", Cable{Length: foot, WireMap: Pass}))); err != nil || !strings.Contains(b.String(), "Nothing is missing.") {
		t.Error(b.String())
	}
	b.Reset()
	if err := Show(&b, p, nil); err != nil || !strings.Contains(b.String(), "nothing is recorded yet") {
		t.Error(b.String())
	}
}

// TestOverlaps: of two records of one hole the last one holds. What they go through,
// the wall and the place in it tell holes apart, and the height where both have it.
func TestOverlaps(t *testing.T) {
	sole := Bore{Through: BottomPlate, Wall: "west", At: 10 * inch, Diameter: inch}
	stud := Bore{Through: "stud", Wall: "west", At: 10 * inch, Diameter: inch, Pointed: true, Point: [3]measure.Length{0, 0, 12 * inch}}
	joist := Bore{Through: "joist", Diameter: inch, Pointed: true, Point: [3]measure.Length{10 * inch, 20 * inch, 96 * inch}}
	with := func(b Bore, f func(b *Bore)) Bore { f(&b); return b }
	for name, tt := range map[string]struct {
		a, b Bore
		want bool
	}{
		"itself":             {sole, sole, true},
		"another plate":      {sole, with(sole, func(b *Bore) { b.Through = TopPlate }), false},
		"another wall":       {sole, with(sole, func(b *Bore) { b.Wall = "east" }), false},
		"beside it":          {sole, with(sole, func(b *Bore) { b.At += inch }), false},
		"in it":              {sole, with(sole, func(b *Bore) { b.At += inch - 1 }), true},
		"over it":            {stud, with(stud, func(b *Bore) { b.Point[2] += inch }), false},
		"height not known":   {stud, with(stud, func(b *Bore) { b.Pointed, b.Point = false, [3]measure.Length{} }), true},
		"one joist":          {joist, joist, true},
		"along that joist":   {joist, with(joist, func(b *Bore) { b.Point[1] -= inch }), false},
		"where is not known": {with(joist, func(b *Bore) { b.Pointed = false }), joist, false},
	} {
		if got := tt.a.overlaps(&tt.b); got != tt.want || tt.b.overlaps(&tt.a) != tt.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
