package label

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"topplate/render/sheet"
)

const mm = sheet.MM

var page = sheet.Bx(0, 0, 100*mm, 80*mm)

func tag(x, y sheet.Paper) Request {
	return Request{ID: "tag", Width: 10 * mm, Height: 4 * mm, Anchor: sheet.Pt(x, y)}
}

func TestOneLabel(t *testing.T) {
	symbol := tag(50*mm, 40*mm)
	symbol.Symbol = sheet.BoxAround(symbol.Anchor, 4*mm, 4*mm)
	for _, c := range []struct {
		name string
		r    Request
		want sheet.Box
	}{
		{"above its point", tag(50*mm, 40*mm), sheet.Bx(45*mm, 35_400, 10*mm, 4*mm)},
		{"above its symbol", symbol, sheet.Bx(45*mm, 33_400, 10*mm, 4*mm)},
		{"right at the top of the frame", tag(50*mm, 2*mm), sheet.Bx(50_600, 0, 10*mm, 4*mm)},
		{"left in the corner", tag(99*mm, 2*mm), sheet.Bx(88_400, 0, 10*mm, 4*mm)},
		{"below at the corner", tag(0, 0), sheet.Bx(600, 600, 10*mm, 4*mm)},
	} {
		got := Place(&Problem{Frame: page, Requests: []Request{c.r}})
		if !got[0].Placed || got[0].Box != c.want || got[0].Leader != nil {
			t.Errorf("%s: %+v, want the box %v without a leader", c.name, got[0], c.want)
		}
	}
}

// Lines and boxes above and right of the point leave the left.
func TestObstacles(t *testing.T) {
	p := &Problem{
		Frame:    page,
		Boxes:    []sheet.Box{sheet.Bx(56*mm, 40_500, 10*mm, 4*mm)},
		Lines:    []Line{{A: sheet.Pt(0, 37*mm), B: sheet.Pt(100*mm, 37*mm)}},
		Requests: []Request{tag(50*mm, 40*mm)},
	}
	if got := Place(p)[0].Box; got != sheet.Bx(39_400, 38*mm, 10*mm, 4*mm) {
		t.Errorf("stands in %v, want left of the point", got)
	}
	p.Lines[0].Owner = "tag"
	if got := Place(p)[0].Box; got != sheet.Bx(45*mm, 35_400, 10*mm, 4*mm) {
		t.Errorf("stands in %v, want above the point, on its own line", got)
	}
}

func TestSoftLinesAreAvoidedIfPossible(t *testing.T) {
	soft := Line{A: sheet.Pt(0, 37*mm), B: sheet.Pt(100*mm, 37*mm), Soft: true}
	p := &Problem{Frame: page, Lines: []Line{soft}, Requests: []Request{tag(50*mm, 40*mm)}}
	if got := Place(p)[0].Box; got.Struck(soft.A, soft.B) {
		t.Errorf("stands in %v on a soft line, with free places around", got)
	}
	p.Requests[0].Sides = []Side{Above}
	if got := Place(p)[0]; !got.Placed || !got.Box.Struck(soft.A, soft.B) {
		t.Errorf("%+v, want it on the soft line, the only place", got)
	}
}

// A text must not seem to belong to another point.
func TestKeepsAwayFromForeignPoints(t *testing.T) {
	p := &Problem{Frame: page, Requests: []Request{tag(50*mm, 40*mm), tag(50*mm, 35*mm)}}
	got := Place(p)
	if got[0].Box.Inset(-DefaultClear).Has(p.Requests[1].Anchor) {
		t.Errorf("%v covers the point of the other label", got[0].Box)
	}
}

func TestAlong(t *testing.T) {
	for _, c := range []struct {
		name string
		line []sheet.Point
		turn bool
		want sheet.Box
	}{
		{"level", []sheet.Point{{X: 10 * mm, Y: 40 * mm}, {X: 90 * mm, Y: 40 * mm}}, false, sheet.Bx(45*mm, 35_399, 10*mm, 4*mm)},
		{"upright", []sheet.Point{{X: 40 * mm, Y: 10 * mm}, {X: 40 * mm, Y: 70 * mm}}, false, sheet.Bx(29_399, 38*mm, 10*mm, 4*mm)},
		{"longest side", []sheet.Point{{X: 10 * mm, Y: 70 * mm}, {X: 10 * mm, Y: 60 * mm}, {X: 90 * mm, Y: 60 * mm}}, false, sheet.Bx(45*mm, 55_399, 10*mm, 4*mm)},
		{"no length", []sheet.Point{{X: 40 * mm, Y: 40 * mm}, {X: 40 * mm, Y: 40 * mm}}, false, sheet.Bx(35*mm, 35_400, 10*mm, 4*mm)},
	} {
		r := tag(0, 0)
		r.Along, r.Turn = c.line, c.turn
		got := Place(&Problem{Frame: page, Requests: []Request{r}})[0].Box
		if d := got.Min.Sub(c.want.Min); max(d.X, -d.X) > 2 || max(d.Y, -d.Y) > 2 {
			t.Errorf("%s: stands in %v, want %v", c.name, got, c.want)
		}
	}
}

// Beside an oblique line the text is clear of it by what is asked, and by no
// more than a little.
func TestAlongObliqueLine(t *testing.T) {
	a, b := sheet.Pt(10*mm, 70*mm), sheet.Pt(90*mm, 10*mm)
	r := tag(0, 0)
	r.Along = []sheet.Point{a, b}
	got := Place(&Problem{Frame: page, Requests: []Request{r}, Lines: []Line{{A: a, B: b}}})[0]
	if !got.Placed || got.Box.Struck(a, b) {
		t.Fatalf("%+v is struck by its line", got)
	}
	if !got.Box.Inset(-2*DefaultClear).Struck(a, b) {
		t.Errorf("%v is far from its line", got.Box)
	}
}

func TestTurnsWhereThereIsNoRoom(t *testing.T) {
	r := tag(50*mm, 40*mm)
	r.Turn = true
	walls := []Line{{A: sheet.Pt(44*mm, 0), B: sheet.Pt(44*mm, 80*mm)}, {A: sheet.Pt(56*mm, 0), B: sheet.Pt(56*mm, 80*mm)}}
	walls = append(walls, Line{A: sheet.Pt(49*mm, 0), B: sheet.Pt(49*mm, 80*mm)})
	got := Place(&Problem{Frame: page, Requests: []Request{r}, Lines: walls})[0]
	if !got.Placed || !got.Turned || got.Box.Width() != 4*mm || got.Box.Height() != 10*mm {
		t.Errorf("%+v, want it turned between the lines", got)
	}
}

func TestWithinArea(t *testing.T) {
	room := sheet.Bx(20*mm, 20*mm, 30*mm, 20*mm)
	r := Request{Width: 20 * mm, Height: 8 * mm, Anchor: room.Centre(), Within: room}
	got := Place(&Problem{Frame: page, Requests: []Request{r}})[0]
	if want := sheet.BoxAround(room.Centre(), 20*mm, 8*mm); got.Box != want {
		t.Errorf("stands in %v, want the middle %v", got.Box, want)
	}
	door := Line{A: sheet.Pt(20*mm, 30*mm), B: sheet.Pt(50*mm, 30*mm)}
	got = Place(&Problem{Frame: page, Requests: []Request{r}, Lines: []Line{door}})[0]
	if !got.Placed || !room.Contains(got.Box) || got.Box.Struck(door.A, door.B) {
		t.Errorf("%+v, want it in the room and off the line", got)
	}
	r.Width = 31 * mm
	if got := Place(&Problem{Frame: page, Requests: []Request{r}})[0]; got.Placed {
		t.Errorf("%+v, want no place for a text that is wider than the room", got)
	}
}

// Points so close that only a few labels find room beside them: the others are
// led away, every one.
func TestCrowdsAreLedAway(t *testing.T) {
	frame := sheet.Bx(0, 0, 200*mm, 160*mm)
	for _, c := range []struct {
		n, across int
		pitch     sheet.Paper
		led       bool
	}{
		{1, 1, mm, false},
		{4, 4, mm, false}, // one each to the left, above, right and below
		{8, 8, mm, true},
		{12, 4, mm, true},
		{12, 12, 2 * mm, true},
		{16, 4, 3 * mm, true},
		{20, 4, 5 * mm, true},
		{20, 4, 15 * mm, false},
	} {
		p := &Problem{Frame: frame}
		for i := range c.n {
			r := tag(90*mm+sheet.Paper(i%c.across)*c.pitch, 70*mm+sheet.Paper(i/c.across)*c.pitch)
			r.Leader = true
			p.Requests = append(p.Requests, r)
		}
		got := Place(p)
		if placed := placedOf(got); placed != c.n {
			t.Errorf("%d points, %d in a row, %d µm apart: %d labels have a place", c.n, c.across, c.pitch, placed)
		}
		if led := slices.ContainsFunc(got, func(p Placement) bool { return p.Leader != nil }); led != c.led {
			t.Errorf("%d points, %d in a row, %d µm apart: led away %v, want %v", c.n, c.across, c.pitch, led, c.led)
		}
		if fault := check(p, got); fault != "" {
			t.Error(fault)
		}
	}
}

// A leader along the wall that it starts from would not be seen, and each line
// that it crosses is a fault.
func TestLineCost(t *testing.T) {
	anchor := sheet.Pt(50*mm, 40*mm)
	s := newScene(&Problem{Frame: sheet.Bx(0, 0, 64*mm, 64*mm), Lines: []Line{
		{A: sheet.Pt(50*mm, 10*mm), B: sheet.Pt(50*mm, 60*mm)},                // through the anchor
		{A: sheet.Pt(20_500, 35_400), B: sheet.Pt(20_600, 35_800)},            // short, in one cell
		{A: sheet.Pt(30_500, 0), B: sheet.Pt(30_500, 63*mm), Soft: true},      // hatching
		{A: sheet.Pt(10*mm, 20*mm), B: sheet.Pt(20*mm, 20*mm), Owner: "else"}, // far away
	}})
	for _, c := range []struct {
		name string
		from sheet.Point
		low  int
		high int
	}{
		{"along the wall", sheet.Pt(51*mm, 20*mm), costHugging, 100 * costHugging},
		{"across nothing", sheet.Pt(60*mm, 35*mm), 0, 0},
		{"across hatching", sheet.Pt(22*mm, 40*mm), 0, 0},
		{"across the short line", sheet.Pt(20_400, 35_600), costCrossing, costCrossing},
	} {
		if got := s.lineCost(way{c.from, anchor}); got < c.low || got > c.high {
			t.Errorf("%s: cost %d, want %d to %d", c.name, got, c.low, c.high)
		}
	}
}

func TestLeaderEndsAtSymbol(t *testing.T) {
	symbol := sheet.Bx(48*mm, 38*mm, 4*mm, 4*mm)
	for _, c := range []struct{ from, want sheet.Point }{
		{sheet.Pt(50*mm, 10*mm), sheet.Pt(50*mm, 38*mm)},
		{sheet.Pt(90*mm, 40*mm), sheet.Pt(52*mm, 40*mm)},
		{sheet.Pt(60*mm, 50*mm), sheet.Pt(52*mm, 42*mm)},
		{sheet.Pt(30*mm, 50*mm), sheet.Pt(48*mm, 41*mm)},
	} {
		if got := shorten(c.from, sheet.Pt(50*mm, 40*mm), symbol); got != c.want {
			t.Errorf("leader from %v ends at %v, want %v", c.from, got, c.want)
		}
	}
	if got := shorten(sheet.Pt(0, 0), sheet.Pt(9, 9), sheet.Box{}); got != sheet.Pt(9, 9) {
		t.Errorf("leader to a bare point ends at %v", got)
	}
}

func TestPriorityDecides(t *testing.T) {
	low, high := tag(50*mm, 40*mm), tag(50*mm, 40*mm)
	low.Sides, high.Sides, high.Priority = []Side{Above}, []Side{Above}, 3
	for _, requests := range [][]Request{{low, high}, {high, low}} {
		for i, got := range Place(&Problem{Frame: page, Requests: requests}) {
			if want := requests[i].Priority > 0; got.Placed != want {
				t.Errorf("priority %d: placed %v, want %v", requests[i].Priority, got.Placed, want)
			}
		}
	}
}

func TestNothingToPlace(t *testing.T) {
	for name, p := range map[string]*Problem{
		"no size":  {Frame: page, Requests: []Request{{Anchor: sheet.Pt(9, 9), Leader: true}}},
		"no frame": {Requests: []Request{tag(0, 0)}},
		"inverted": {Frame: page.Inset(90 * mm), Requests: []Request{tag(0, 0)}},
		"far away": {Frame: page, Requests: []Request{tag(1000*mm, 1000*mm)}},
		"too wide": {Frame: page, Requests: []Request{{Width: 101 * mm, Height: mm, Leader: true}}},
	} {
		if got := Place(p); got[0].Placed {
			t.Errorf("%s: %+v, want no place", name, got[0])
		}
	}
	if got := Place(&Problem{Frame: page}); len(got) != 0 {
		t.Errorf("%d placements for no requests", len(got))
	}
}

func TestAvoidReadsItems(t *testing.T) {
	g := &sheet.Group{}
	inner := g.Group("", "", "")
	inner.Line(sheet.PenWall, sheet.Pt(0, 0), sheet.Pt(10*mm, 0))
	inner.Rect(sheet.PenSolid, sheet.Bx(0, 0, mm, mm))
	g.Circle(sheet.PenHole, sheet.Pt(5*mm, 5*mm), mm)
	g.Line(sheet.PenZone, sheet.Pt(0, 5*mm), sheet.Pt(9*mm, 5*mm))
	g.Text(sheet.LetterTag, sheet.Pt(0, 9*mm), sheet.Start, "K1")
	g.Text(sheet.LetterTag, sheet.Pt(0, 9*mm), sheet.Start, "")
	g.Add(sheet.Arc{Pen: sheet.PenSwing, Centre: sheet.Pt(0, 0), Radius: mm, Sweep: sheet.QuarterTurn})
	var p Problem
	p.Avoid(g)
	if len(p.Boxes) != 2 || p.Boxes[0] != sheet.Bx(0, 0, mm, mm) {
		t.Errorf("boxes %v, want the black square and one text", p.Boxes)
	}
	soft := 0
	for _, l := range p.Lines {
		if l.Soft {
			soft++
		}
	}
	if soft != 1 || len(p.Lines) < 8 {
		t.Errorf("%d lines, %d of them soft; want the wall, the chords of circle and arc, and one soft", len(p.Lines), soft)
	}
}

func TestSameProblemSamePlaces(t *testing.T) {
	first := Place(cms(400, 7))
	for range 3 {
		if diff := cmp.Diff(first, Place(cms(400, 7))); diff != "" {
			t.Fatalf("places differ (-first +again)\n%s", diff)
		}
	}
}

// Moving one point far from the others changes only what is near it.
func TestSmallEditSmallEffect(t *testing.T) {
	p := cms(150, 3)
	before := Place(p)
	p.Requests[40].Anchor.X += 300
	changed := 0
	for i, now := range Place(p) {
		if now.Box != before[i].Box {
			changed++
		}
	}
	if changed > 10 {
		t.Errorf("%d of 150 labels moved when one point moved by 0.3 mm", changed)
	}
}

// drawProblem makes a page of any density, with every kind of request.
func drawProblem(t *rapid.T) *Problem {
	coordinate := func(name string) sheet.Point {
		return sheet.Pt(
			sheet.Paper(rapid.Int64Range(-5_000, 105_000).Draw(t, name+"X")),
			sheet.Paper(rapid.Int64Range(-5_000, 85_000).Draw(t, name+"Y")))
	}
	p := &Problem{Frame: page, Clear: sheet.Paper(rapid.Int64Range(0, 2000).Draw(t, "clear"))}
	for range rapid.IntRange(0, 6).Draw(t, "boxes") {
		p.Boxes = append(p.Boxes, sheet.Bounds(coordinate("box"), coordinate("box")))
	}
	for range rapid.IntRange(0, 12).Draw(t, "lines") {
		p.Lines = append(p.Lines, Line{A: coordinate("line"), B: coordinate("line"), Soft: rapid.Bool().Draw(t, "soft")})
	}
	for range rapid.IntRange(0, 40).Draw(t, "requests") {
		r := Request{
			Width:  sheet.Paper(rapid.Int64Range(0, 30_000).Draw(t, "width")),
			Height: sheet.Paper(rapid.Int64Range(0, 6_000).Draw(t, "height")),
			Anchor: coordinate("anchor"), Priority: rapid.IntRange(-1, 3).Draw(t, "priority"),
			Turn: rapid.Bool().Draw(t, "turn"), Leader: rapid.Bool().Draw(t, "leader"),
		}
		switch rapid.IntRange(0, 4).Draw(t, "kind") {
		case 0:
			r.Along = []sheet.Point{coordinate("along"), coordinate("along"), coordinate("along")}
		case 1:
			r.Within = sheet.Bounds(coordinate("room"), coordinate("room"))
		case 2:
			r.Symbol = sheet.BoxAround(r.Anchor, 3*mm, 2*mm)
		}
		p.Requests = append(p.Requests, r)
	}
	return p
}

func TestPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		if fault := check(p, Place(p)); fault != "" {
			t.Fatal(fault)
		}
	})
}

func FuzzPromises(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) {
		p := drawProblem(t)
		if fault := check(p, Place(p)); fault != "" {
			t.Fatal(fault)
		}
	}))
}
