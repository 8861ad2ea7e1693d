package sheet

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestID(t *testing.T) {
	for _, c := range []struct{ kind, name, want string }{
		{"hole", "K1", "hole-K1"},
		{"hole", "K-1", "hole-K-1"},
		{"hole", "K 1", "hole-K_20_1"},
		{"drop", "café", "drop-caf_C3__A9_"},
		{"drop", "a_20_b", "drop-a_5F_20_5F_b"},
		{"drop", "", "drop-"},
		{"room", `"><script>`, "room-_22__3E__3C_script_3E_"},
	} {
		if got := ID(c.kind, c.name); got != c.want {
			t.Errorf("ID(%q, %q) is %q, want %q", c.kind, c.name, got, c.want)
		}
	}
}

func TestIDsAreValidAndDiffer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.String().Draw(t, "a"), rapid.String().Draw(t, "b")
		if !validID(ID("x", a)) {
			t.Fatalf("%q is not an id", ID("x", a))
		}
		if (a == b) != (ID("x", a) == ID("x", b)) {
			t.Fatalf("%q and %q have the ids %q and %q", a, b, ID("x", a), ID("x", b))
		}
	})
}

func TestAllVisitsNestedItemsInOrder(t *testing.T) {
	s := New("s", "S", A4)
	a := s.Group("a", "", "")
	a.Line(PenWall, Pt(1, 0), Pt(1, 1))
	inner := a.Group("b", "", "")
	inner.Line(PenDoor, Pt(2, 0), Pt(2, 1))
	a.Line(PenWall, Pt(3, 0), Pt(3, 1))
	s.Group("c", "", "").Text(LetterTag, Pt(4, 0), Start, "x")
	var xs []Paper
	for item := range s.All() {
		switch item := item.(type) {
		case Line:
			xs = append(xs, item.A.X)
		case Text:
			xs = append(xs, item.At.X)
		}
	}
	if !slices.Equal(xs, []Paper{1, 2, 3, 4}) {
		t.Errorf("visited %v, want 1 to 4", xs)
	}
	for range s.All() {
		break // a loop may end early, in a nested group too
	}
	if got := s.Pens(); !slices.Equal(got, []Pen{PenWall, PenDoor}) {
		t.Errorf("pens %v, want wall and door", got)
	}
	if got := s.Letterings(); !slices.Equal(got, []Lettering{LetterTag}) {
		t.Errorf("letterings %v, want tag", got)
	}
	if got := len(a.Strokes()); got != 3 {
		t.Errorf("group has %d strokes, want 3", got)
	}
}

func TestStrokes(t *testing.T) {
	ring := []Point{Pt(0, 0), Pt(9, 0), Pt(9, 9)}
	for _, c := range []struct {
		name string
		item Item
		want [][]Point
	}{
		{"line", Line{A: Pt(1, 2), B: Pt(3, 4)}, [][]Point{{Pt(1, 2), Pt(3, 4)}}},
		{"open", Poly{Rings: [][]Point{ring}}, [][]Point{ring}},
		{"closed", Poly{Rings: [][]Point{ring, {}}, Closed: true}, [][]Point{{Pt(0, 0), Pt(9, 0), Pt(9, 9), Pt(0, 0)}, nil}},
		{"text", Text{Words: "x"}, nil},
		{"small arc", Arc{Radius: 10, Sweep: QuarterTurn}, [][]Point{{Pt(10, 0), Pt(0, -10)}}},
		{"pie", Arc{Radius: 10, Sweep: QuarterTurn, Pie: true}, [][]Point{{Pt(10, 0), Pt(0, -10), Pt(0, 0), Pt(10, 0)}}},
	} {
		if got := c.item.Strokes(); !slices.EqualFunc(got, c.want, slices.Equal) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// The chords of an arc stay within the sagitta of it.
func TestArcChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Arc{
			Centre: Pt(1000, 2000),
			Radius: Paper(rapid.Int64Range(1, 300_000).Draw(t, "radius")),
			Start:  Angle(rapid.Int32().Draw(t, "start")),
			Sweep:  Angle(rapid.Int32().Draw(t, "sweep")),
		}
		points := a.Strokes()[0]
		first, last := a.Ends()
		if points[0] != first || points[len(points)-1] != last {
			t.Fatalf("chords go from %v to %v, the arc from %v to %v", points[0], points[len(points)-1], first, last)
		}
		for i, p := range points[1:] {
			middle := Pt((p.X+points[i].X)/2, (p.Y+points[i].Y)/2).Sub(a.Centre)
			least := max(0, int64(a.Radius-sagitta-2))
			if d := int64(middle.X)*int64(middle.X) + int64(middle.Y)*int64(middle.Y); d < least*least {
				t.Fatalf("chord %v %v is more than %d µm inside the arc", points[i], p, sagitta)
			}
		}
	})
}

func TestArcEnds(t *testing.T) {
	a := Arc{Centre: Pt(0, 0), Radius: 1000, Start: 30 * Degree, Sweep: -120 * Degree}
	first, last := a.Ends()
	if first != Pt(866, -500) || a.Middle() != Pt(866, 500) || last != Pt(0, 1000) {
		t.Errorf("arc goes %v, %v, %v", first, a.Middle(), last)
	}
	if a.Full() || !(Arc{Sweep: FullTurn}).Full() || !(Arc{Sweep: -2 * FullTurn}).Full() {
		t.Error("only a sweep of a turn or more is full")
	}
}

func TestBaseline(t *testing.T) {
	at := Pt(100*MM, 50*MM)
	for _, c := range []struct {
		level Level
		turn  Angle
		want  Point
	}{
		{OnBaseline, 30 * Degree, at},
		{OnHalf, 0, Pt(100*MM, 51_250)},
		{OnTop, 0, Pt(100*MM, 52_500)},
		{OnHalf, QuarterTurn, Pt(101_250, 50*MM)},
		{OnTop, -QuarterTurn, Pt(97_500, 50*MM)},
		{OnTop, HalfTurn, Pt(100*MM, 47_500)},
	} {
		if got := (Text{Lettering: LetterTag, At: at, Level: c.level, Turn: c.turn}).Baseline(); got != c.want {
			t.Errorf("level %d, turned %d°: baseline at %v, want %v", c.level, c.turn/Degree, got, c.want)
		}
	}
}

func TestCheckAcceptsAFullSheet(t *testing.T) {
	s := New("floor-1", "Floor", Letter.Landscape())
	g := s.Group(ID("wall", "W 1"), "wall", "Wall")
	g.Rect(PenWall, Bx(0, 0, MM, MM))
	g.Circle(PenHole, Pt(0, 0), 0)
	g.Polyline(PenCable)
	g.Hatch(HatchMasonry, [][]Point{square(0, 0, 9*MM)})
	g.Text(LetterNote, Pt(0, 0), Middle, "\x00")
	g.Group("", "", "").Clip = square(0, 0, MM)
	if err := s.Check(); err != nil {
		t.Error(err)
	}
}

func TestCheckNamesEveryFault(t *testing.T) {
	s := New("1bad", "", Format{"none", 0, MM})
	g := s.Group("twice", "", "")
	s.Group("twice", "", "")
	s.Group("a b", "", "")
	s.Group("1bad-title-x", "", "")
	s.Groups = append(s.Groups, nil)
	g.Add(nil, Line{Pen: pens}, Line{B: Pt(MaxCoordinate+1, 0)}, Circle{Radius: -1}, Arc{Radius: MaxCoordinate + 1},
		Text{Lettering: letteringCount}, Text{Align: End + 1}, Poly{Rings: [][]Point{{Pt(0, -MaxCoordinate-1)}}},
		&Group{Clip: []Point{Pt(MaxCoordinate+1, 0)}})
	err := s.Check()
	if err == nil {
		t.Fatal("no fault is found")
	}
	text := err.Error()
	for _, want := range []string{
		`"1bad" has no size`, `"1bad" cannot be an id`, `"twice" is used twice`, `"a b" cannot be an id`,
		`"1bad-title-x" is reserved`, "a group is nil", "an item is nil", "pen that is not in the table",
		"ten metres off", "radius is negative", "lettering that is not", "alignment or level",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no fault says %q in\n%s", want, text)
		}
	}
}
