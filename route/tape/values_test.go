package tape

import (
	"math"
	"strings"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

const mm = measure.Millimetre

// metres is a point given in metres.
func metres(x, y float64) geom.Point {
	return geom.Point{X: measure.Length(math.Round(x * 1e9)), Y: measure.Length(math.Round(y * 1e9))}
}

func length(m float64) measure.Length { return measure.Length(math.Round(m * 1e9)) }

func mark(id string, x, y float64) Mark { return Mark{ID: id, At: metres(x, y)} }

func find(t *testing.T, r Request) *Answer {
	t.Helper()
	a, err := Find(r)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// near reports whether a length is within so many millimetres of a value.
func near(l measure.Length, wantMM, within float64) bool {
	return math.Abs(l.Millimetres()-wantMM) <= within
}

// Pythagorean triangles, and two circles as in analytic geometry: centres
// 14 apart with radii 13 and 15, and 6 apart with radii 5 and 5. SUR01 is
// base 10 with distances 6 and 8.
func TestCrossWorkedExamples(t *testing.T) {
	for _, tt := range []struct {
		base, ra, rb, x, y float64
	}{
		{10, 6, 8, 3.6, 4.8},
		{5, 3, 4, 1.8, 2.4},
		{12, 13, 5, 12, 5},
		{14, 13, 15, 5, 12},
		{6, 5, 5, 3, 4},
	} {
		left, right, ok := Cross(metres(0, 0), metres(tt.base, 0), length(tt.ra), length(tt.rb))
		if !ok || left != metres(tt.x, tt.y) || right != metres(tt.x, -tt.y) {
			t.Errorf("base %v, %v and %v: %v %v %v, want (%v, ±%v)", tt.base, tt.ra, tt.rb, left, right, ok, tt.x, tt.y)
		}
	}
	// Base 10, distances 4 and 5: a gap of 1.0, so no fix.
	for _, no := range [][3]float64{{10, 4, 5}, {1, 8, 2}, {0, 3, 3}, {10, -6, 8}} {
		if l, r, ok := Cross(metres(0, 0), metres(no[0], 0), length(no[1]), length(no[2])); ok {
			t.Errorf("%v meets at %v and %v", no, l, r)
		}
	}
	// The arcs touch at one point; a nanometre less and they don't.
	if l, r, ok := Cross(metres(0, 0), metres(10, 0), length(4), length(6)); !ok || l != r || l != metres(4, 0) {
		t.Errorf("touching arcs: %v %v %v", l, r, ok)
	}
	if _, _, ok := Cross(metres(0, 0), metres(10, 0), length(4), length(6)-1); ok {
		t.Error("arcs a nanometre apart meet")
	}
}

// SUR01 the other way round: the point (3.6, 4.8) from marks at (0, 0) and
// (10, 0) is 6 and 8 away, at a right angle, on the left of the way from the
// first to the second.
func TestFindWorkedExample(t *testing.T) {
	a := find(t, Request{Want: metres(3.6, 4.8), Marks: []Mark{mark("B", 10, 0), mark("A", 0, 0)}, Tape: Tape{Constant: 10 * mm}})
	p := a.Best
	if a.Verdict != TwoTapes || p == nil {
		t.Fatalf("%v, %+v", a.Verdict, p)
	}
	if p.Marks[0].ID != "A" || p.Distance[0].Exact != length(6) || p.Distance[1].Exact != length(8) || p.Side != Left || p.Cut != 90 || p.Offset != length(4.8) {
		t.Errorf("found %+v", p)
	}
	// Right-angled: a circle of the tape's own deviation.
	if p.Error.Major != 10*mm || p.Error.Minor != 10*mm || p.Error.Axis != 0 {
		t.Errorf("error %+v, want 10 mm all round", p.Error)
	}
	if a.RunnerUp != nil || a.Check != nil || a.Joist != nil {
		t.Errorf("with two marks and no joists: %+v", a)
	}
	mirrored := find(t, Request{Want: metres(3.6, -4.8), Marks: []Mark{mark("A", 0, 0), mark("B", 10, 0)}, Tape: Tape{Constant: 10 * mm}})
	if mirrored.Best.Side != Right {
		t.Errorf("below the base the side is %v", mirrored.Best.Side)
	}
}

// SUR02 and its table: with equal deviations s and an angle of cut g the
// semi-axes are s/(√2 sin(g/2)) and s/(√2 cos(g/2)) and the radial error is
// s√2/sin g.
func TestErrorByAngleOfCut(t *testing.T) {
	for _, tt := range []struct{ g, major, minor, radial float64 }{
		{90, 1.000, 1.000, 1.414},
		{60, 1.414, 0.816, 1.633},
		{45, 1.848, 0.765, 2.000},
		{30, 2.732, 0.732, 2.828},
		{20, 4.072, 0.718, 4.135},
		{10, 8.113, 0.710, 8.144},
	} {
		half := tt.g / 2 * math.Pi / 180
		for _, turn := range []float64{0, 0.3, 1.1, 2.9} {
			at := func(angle float64) Mark {
				return mark(string(rune('a'+int(tt.g))), 8*math.Cos(angle+turn), 8*math.Sin(angle+turn))
			}
			a := find(t, Request{Marks: []Mark{at(-half), at(half)}, Tape: Tape{Constant: 1000 * mm}})
			e := a.Best.Error
			if !near(e.Major, tt.major*1000, 0.6) || !near(e.Minor, tt.minor*1000, 0.6) || !near(e.Radial, tt.radial*1000, 0.6) {
				t.Errorf("cut %v turned %v: %+v, want %v %v %v", tt.g, turn, e, tt.major, tt.minor, tt.radial)
			}
			if math.Abs(a.Best.Cut-tt.g) > 0.01 {
				t.Errorf("cut %v, want %v", a.Best.Cut, tt.g)
			}
			// Both tapes pin the point along the bisector, so the ellipse lies
			// square to it.
			want := math.Mod(turn*180/math.Pi+90, 180)
			if tt.g < 90 && math.Abs(math.Remainder(e.Axis-want, 180)) > 0.02 {
				t.Errorf("cut %v turned %v: axis %v, want %v", tt.g, turn, e.Axis, want)
			}
		}
	}
	// Base 10 m and 10 mm: 5.1 and 5.1 give (5, 1.005), 157.27°, 35.9 and
	// 7.2 mm; 9.5 and 9.5 give (5, 8.078), 63.51°, 13.4 and 8.3 mm.
	for _, tt := range []struct{ y, r, g, major, minor float64 }{
		{1.005, 5.1, 157.27, 35.9, 7.2},
		{8.078, 9.5, 63.51, 13.4, 8.3},
	} {
		p := find(t, Request{Want: metres(5, tt.y), Marks: []Mark{mark("A", 0, 0), mark("B", 10, 0)}, Tape: Tape{Constant: 10 * mm}}).Best
		if !near(p.Distance[0].Exact, tt.r*1000, 0.5) || math.Abs(p.Cut-tt.g) > 0.02 || !near(p.Error.Major, tt.major, 0.05) || !near(p.Error.Minor, tt.minor, 0.05) {
			t.Errorf("%+v, want %+v", p, tt)
		}
	}
}

// A published least-squares fix by distances (J. Mahun, Least squares lite,
// chapter H) prints its error both ways: ±0.574 ft north, ±0.519 ft east, and
// semi-axes 0.576 and 0.517 ft with the long one at azimuth 170°04'.
func TestEllipseOfPublishedFix(t *testing.T) {
	ft := func(f float64) float64 { return f * 304_800_000 }
	const azimuth = (170 + 4.0/60) * math.Pi / 180
	u, v := square(ft(0.576)), square(ft(0.517))
	sin, cos := math.Sincos(azimuth)
	c := covariance{xx: u*sin*sin + v*cos*cos, xy: (u - v) * sin * cos, yy: u*cos*cos + v*sin*sin}
	if n := math.Sqrt(c.yy) / ft(1); math.Abs(n-0.574) > 0.0006 {
		t.Fatalf("north %v", n)
	}
	if e := math.Sqrt(c.xx) / ft(1); math.Abs(e-0.519) > 0.0006 {
		t.Fatalf("east %v", e)
	}
	e := c.ellipse()
	if !near(e.Major, 0.576*304.8, 0.001) || !near(e.Minor, 0.517*304.8, 0.001) || math.Abs(e.Axis-(450-170-4.0/60-180)) > 0.01 {
		t.Errorf("found %+v", e)
	}
	if c.along(vector{0, 1}) != c.yy || c.along(vector{1, 0}) != c.xx {
		t.Error("the error along an axis is not the matrix's")
	}
}

// Two published figures for a constant and a proportional part: 3 mm and
// 3 ppm at 100 ft is 0.009847091 ft (a survey magazine's column of November
// 2005), and 3 mm and 2 ppm at 2000 m is 5 mm (the manual of a national survey's
// adjustment program). The sag of a 100 ft tape of 2 lbf under 20 lbf is
// w²L/24P² with w the whole weight: 0.0417 ft (textbook correction).
func TestTapeSigma(t *testing.T) {
	got := Tape{Constant: 3 * mm, PPM: 3}.Sigma(100 * measure.Foot)
	if want := 0.009847091 * 304.8; !near(got, want, 0.0006) {
		t.Errorf("3 mm and 3 ppm at 100 ft: %v mm, want %v", got.Millimetres(), want)
	}
	if got := (Tape{Constant: 3 * mm, PPM: 2}).Sigma(2000 * measure.Metre); got != 5*mm {
		t.Errorf("3 mm and 2 ppm at 2000 m: %v, want 5mm", got)
	}
	sag := 2.0 / 30.48 / 20 // lbf a metre over lbf
	if got := (Tape{Sag: sag}).Sigma(100 * measure.Foot); !near(got, 100*304.8*square(2)/(24*square(20)), 0.01) {
		t.Errorf("sag %v mm", got.Millimetres())
	}
	// A foot of tape can't sag or slope by more than its length.
	if got := (Tape{Sag: 10, Rise: 10 * measure.Metre}).Sigma(measure.Foot); got > 3*measure.Foot/2 {
		t.Errorf("sag and slope of a foot: %v", got)
	}
	if got := (Tape{Step: measure.Graduation}).Sigma(0); !near(got, 25.4/16/math.Sqrt(12), 0.0006) {
		t.Errorf("setting to a sixteenth: %v mm", got.Millimetres())
	}
}

func TestShown(t *testing.T) {
	for _, tt := range []struct {
		step, exact, want measure.Length
	}{
		{mm, 1_499_999, mm},
		{mm, 1_500_000, 2 * mm},
		{measure.Graduation, 10*measure.Foot + measure.Inch/32, 10*measure.Foot + measure.Inch/16},
		{measure.Graduation, 10*measure.Foot + measure.Inch/32 - 1, 10 * measure.Foot},
		{0, 1_234_567, 1_234_567},
	} {
		if got := (Tape{Step: tt.step}).show(tt.exact); got != tt.want {
			t.Errorf("%v to %v is %v, want %v", tt.exact, tt.step, got, tt.want)
		}
	}
}

// Radius of the 95 % circle over the long semi-axis by the ratio of the axes
// (Harter, Circular error probabilities, 1960; from memory, and held against
// trials in TestErrorAgainstTrials).
func TestCircle95(t *testing.T) {
	want := []float64{1.95996, 1.96253, 1.97041, 1.98420, 2.00514, 2.03586, 2.08130, 2.14598, 2.23029, 2.33180, 2.44775}
	for i, w := range want {
		if got := circle95(1, float64(i)/10); math.Abs(got-w) > 2e-5 {
			t.Errorf("ratio 0.%d: %.5f, want %.5f", i, got, w)
		}
	}
	if got := circle95(1, 1e-6); math.Abs(got-line95) > 1e-4 {
		t.Errorf("a line: %v", got)
	}
}

func TestWhereTapesDoNotServe(t *testing.T) {
	joists := &Joists{AlongY: true, First: 0, Spacing: 16 * measure.Inch}
	tape := Tape{Constant: 3 * mm, Step: mm}
	wall := geom.Rect{Min: metres(-1, 1), Max: metres(9, 2)}
	for _, tt := range []struct {
		name    string
		r       Request
		verdict Verdict
	}{
		{"none", Request{}, NoMarks},
		{"one", Request{Marks: []Mark{mark("A", 3, 4)}}, OneMark},
		{"in line between", Request{Want: metres(2, 2), Marks: []Mark{mark("A", 0, 0), mark("B", 5, 5)}}, FlatCut},
		{"in line beyond", Request{Want: metres(7, 7), Marks: []Mark{mark("A", 0, 0), mark("B", 5, 5)}}, FlatCut},
		{"coincident", Request{Want: metres(7, 7), Marks: []Mark{mark("A", 0, 0), mark("B", 0, 0)}}, FlatCut},
		{"at a mark", Request{Want: metres(7, 7), Marks: []Mark{mark("A", 7, 7), mark("B", 0, 3)}}, AtMark},
		{"behind a wall", Request{Want: metres(4, 4), Marks: []Mark{mark("A", 0, 0), mark("B", 8, 0)}, Obstacles: []geom.Rect{wall}}, NoneUsable},
		{"short tape", Request{Want: metres(4, 4), Marks: []Mark{mark("A", 0, 0)}, Tape: Tape{Longest: 5 * measure.Metre}}, NoneUsable},
		{"past a corner", Request{Want: metres(9, 4), Marks: []Mark{mark("A", 9, 0), mark("B", 12, 4)}, Obstacles: []geom.Rect{wall}}, TwoTapes},
	} {
		tt.r.Joists = joists
		if tt.r.Tape.Constant == 0 {
			tt.r.Tape.Constant = tape.Constant
		}
		a := find(t, tt.r)
		if a.Verdict != tt.verdict {
			t.Errorf("%s: %v, want %v", tt.name, a.Verdict, tt.verdict)
		}
		if a.Verdict.String() == "" || tt.verdict != AtMark && (tt.verdict == FlatCut || tt.verdict == OneMark) != (a.Best == nil && a.Single != nil && a.Joist != nil) {
			t.Errorf("%s: %q, single %v, joist %v", tt.name, a.Verdict, a.Single, a.Joist)
		}
	}
	a := find(t, Request{Want: metres(4, 4), Marks: []Mark{mark("A", 0, 0), mark("B", 4, 4), mark("C", 900, 0)}, Obstacles: []geom.Rect{{}, wall}, Tape: Tape{Longest: 100 * measure.Metre}})
	want := []Unused{{mark("A", 0, 0), InTheWay, 1}, {mark("B", 4, 4), Here, -1}, {mark("C", 900, 0), TooFar, -1}}
	if len(a.Unused) != 3 || a.Unused[0] != want[0] || a.Unused[1] != want[1] || a.Unused[2] != want[2] {
		t.Errorf("unused %v", a.Unused)
	}
	for _, u := range a.Unused {
		if u.Why.String() == "" {
			t.Error("a reason without words")
		}
	}
}

// A mark a hair off the line through the others crosses on paper only.
func TestNearlyFlatIsWeak(t *testing.T) {
	r := Request{Want: metres(5, 0.02), Marks: []Mark{mark("A", 0, 0), mark("B", 10, 0)}, Tape: Tape{Constant: 3 * mm}, LeastCut: UsualCut}
	if p := find(t, r).Best; p == nil || !p.Weak || p.Cut < 179 {
		t.Errorf("%+v", p)
	}
	// Without a least cut it is still weak, since the arcs may not meet.
	r.LeastCut = 0
	if p := find(t, r).Best; !p.Weak {
		t.Errorf("%+v", p)
	}
	r.Want = metres(5, 4)
	if p := find(t, r).Best; p.Weak {
		t.Errorf("%+v", p)
	}
	// One nanometre off: the numbers say nothing, and no pair is given or it is weak.
	r.Want = geom.Point{X: 5 * measure.Metre, Y: 1}
	if p := find(t, r).Best; p != nil && !p.Weak {
		t.Errorf("%+v", p)
	}
}

// A mark 300 mm wide takes a quarter of that as its deviation along each axis.
func TestAtAMark(t *testing.T) {
	box, nail := mark("box", 2, 2), mark("nail", 2, 2)
	box.Size = 300 * mm
	a := find(t, Request{Want: metres(2, 2), Marks: []Mark{box, nail}, Sketch: 3 * mm})
	if a.At.ID != "nail" || !near(a.AtError.Major, 3*math.Sqrt2, 0.001) {
		t.Errorf("%v, %+v", a.At, a.AtError)
	}
	a = find(t, Request{Want: metres(2, 2), Marks: []Mark{box}})
	if a.AtError.Major != 75*mm || a.AtError.Minor != 75*mm {
		t.Errorf("%+v", a.AtError)
	}
}

func TestBadRequests(t *testing.T) {
	nan := math.NaN()
	for _, tt := range []struct {
		r    Request
		want string
	}{
		{Request{Sketch: -1}, "error of the sketch"},
		{Request{Tape: Tape{PPM: nan}}, "proportional error"},
		{Request{Tape: Tape{PPM: -1}}, "proportional error"},
		{Request{Tape: Tape{Sag: math.Inf(1)}}, "sag"},
		{Request{Tape: Tape{Constant: -1}}, "constant error"},
		{Request{Tape: Tape{Step: -1}}, "step"},
		{Request{Angle: nan}, "error of an angle"},
		{Request{LeastCut: 91}, "least angle of cut"},
		{Request{Want: geom.Point{X: math.MaxInt64}}, "the point is out of range"},
		{Request{Marks: []Mark{{ID: "A", At: geom.Point{Y: math.MinInt64}}}}, "mark A is out of range"},
		{Request{Marks: []Mark{{ID: "A", Size: -1}}}, "size of mark A"},
		{Request{Marks: make([]Mark, MaxMarks+1)}, "1001 marks"},
		{Request{Joists: &Joists{}}, "spacing of the joists"},
		{Request{Joists: &Joists{Spacing: 1, First: math.MaxInt64}}, "first joist"},
	} {
		if a, err := Find(tt.r); err == nil || !strings.Contains(err.Error(), tt.want) || a != nil {
			t.Errorf("%q: %v %v", tt.want, a, err)
		}
	}
	_, err := Find(Request{Sketch: -1, Angle: nan})
	if err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("two faults: %v", err)
	}
}
