package fix

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/tape"
)

// in is a length in eighths of an inch.
func in(eighths measure.Length) measure.Length { return eighths * measure.Inch / 8 }

// starter is the starter house with pairs of texts replaced.
func starter(t testing.TB, edits ...string) *route.Result {
	t.Helper()
	read := func(path string) ([]byte, error) {
		src, err := os.ReadFile(filepath.Join("../../cmd/topplate/starter", filepath.Base(path)))
		return []byte(strings.NewReplacer(edits...).Replace(string(src))), err
	}
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the starter does not load")
	}
	return solved(t, job)
}

func solved(t testing.TB, job *plan.Job) *route.Result {
	t.Helper()
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// find is the one hole of a kind whose member has a word.
func find(t testing.TB, holes []Hole, kind route.ArcKind, word string) *Hole {
	t.Helper()
	var out *Hole
	for i := range holes {
		if holes[i].Kind == kind && strings.Contains(holes[i].Member, word) {
			if out != nil {
				t.Fatalf("two holes in %q", word)
			}
			out = &holes[i]
		}
	}
	if out == nil {
		t.Fatalf("no hole of kind %v in %q", kind, word)
	}
	return out
}

// The starter house by hand, in inches. Outer walls are 5 in thick, so the
// rooms begin at 5 in; the wall between them is 4-1/2 in about x = 168.
//
// Its studs stand every 16 in from 4-1/2 in: the bay beside the closet is from
// 69-1/4 to 83-3/4 in, and its middle at 76-1/2 in. That is 71-1/2 in from the
// hall's south face, on the left of who faces west, and 12-1/2 in left of the
// closet's middle, 7 ft from that corner. The plate is two of 1-1/2 in, its top
// on the ceiling's 96 in and 5/8 in of board. Four cables of 6 mm, the two of
// the desk, the one of the access point and the outdoor one, go through a 1 in
// hole, which leaves 1-1/4 in on both sides of 3-1/2 in: no shield plate. Holes
// keep 1/4 in from the studs: 14 in are free, 6-1/2 in on both sides of 1 in.
//
// The roof is 8 in 12 from 1 in (the plate's outer face) with a seat of 3-1/2
// in: over y = 76-1/2 in its rafters are (75-1/2 - 3-1/2)*8/12 = 48 in above
// the plate, 42-1/2 in above joists of 5-1/2 in.
//
// The hatch is 30 in square about (232, 96). From its north-west corner,
// (217, 111), the hole is √(49² + 34.5²) = 59.93 in away, from the south-east,
// (247, 81), √(79² + 4.5²) = 79.13 in.
func TestStarterMiddlePlateByHand(t *testing.T) {
	h := find(t, Holes(starter(t)), route.PlateArc, "middle")
	if h.Member != "double top plate of wall middle" || h.Cables != 4 || len(h.Bores) != 1 || h.Bores[0].Diameter != in(8) || !h.Bores[0].Own {
		t.Errorf("%q, %d cables, %+v", h.Member, h.Cables, h.Bores)
	}
	if want := (geom.Point3{X: in(168 * 8), Y: in(76*8 + 4), Z: in(96*8 + 5)}); h.At != want || h.Bores[0].At != flat(want) {
		t.Errorf("at %v, want %v", h.At, want)
	}
	bit := h.Bores[0].Bit
	if bit.Way != FromAttic || bit.Need != in(24) || bit.Index != 3 || !bit.Flexible || bit.Extended || bit.Reach != in(54*8) {
		t.Errorf("bit %+v", bit)
	}
	a := h.Allowed
	if a.Largest != in(14) || a.Edge != in(5) || a.Left != in(10) || h.Shield || h.Tie ||
		!slices.Equal(a.Rules, []rule.ID{rule.PlateCapacity}) || !slices.Equal(a.Limits, []rule.LimitID{rule.PlateBore, rule.PlateEdge}) {
		t.Errorf("allowed %+v, shield %v, tie %v", a, h.Shield, h.Tie)
	}
	if s := h.Seal; !s.Fire || !s.Air || s.Weather || s.Garage || !slices.Equal(s.Rules, []rule.ID{rule.SealHoles}) {
		t.Errorf("seal %+v", s)
	}
	const below = "in Hall, facing wall middle: 5ft 11-1/2in from the left corner, 8ft 5/8in above the floor, 1ft 1/2in left of the middle of the closet's opening"
	if b := h.Below; b.Text != below || b.From[0].Length != in(71*8+4) || b.From[0].At != (geom.Point{X: in(170*8 + 2), Y: in(40)}) || b.Opening.Drop != -1 {
		t.Errorf("below %+v", b)
	}
	v := h.Above
	if !v.Reached || v.Zone != route.Crawl || v.Clear != in(42*8+4) || v.Method != ByTapes || v.Tolerance != (Tolerance{in(6*8 + 4), in(5)}) || v.Buried != in(64) || v.Probe != nil {
		t.Errorf("above %+v", v)
	}
	p := v.Fix.Best
	if p.Marks[0].ID != "hatch north-west" || p.Marks[1].ID != "hatch south-east" || p.Side != tape.Right ||
		p.Distance[0].Shown != measure.Inch*(59*16+15)/16 || p.Distance[1].Shown != in(79*8+1) {
		t.Errorf("tapes %+v", p)
	}
	if got, want := v.Text[2], "4ft 11-15/16in from north-west corner of the hatch and 6ft 7-1/8in from south-east corner of the hatch, on the right of the way from the first to the second"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// The error of that fix by hand: the tape 1/8 in and a step of 1/16 in, the
// hatch's corner 1/4 of 1 in, the sketch half of its error, each at one
// deviation; the tapes cross at atan(34.5/49) - atan(-4.5/-79)... 31.9°. With
// equal deviations s the ellipse is s/(√2·sin(g/2)) by s/(√2·cos(g/2)), and the
// point's own place adds a circle. 95 % of a normal error lie in a circle of
// between 1.96 and 2.45 of the longer axis.
func TestStarterErrorByHand(t *testing.T) {
	res := starter(t)
	v := find(t, Holes(res), route.PlateArc, "middle").Above
	sketch := res.Job.House.SketchError.Millimetres() / 2
	s := math.Sqrt(math.Pow(25.4/8, 2) + math.Pow(25.4/16, 2)/12 + math.Pow(25.4/4, 2) + sketch*sketch)
	g := math.Atan2(34.5, 49) - math.Atan2(4.5, 79)
	major := math.Hypot(s/math.Sqrt2/math.Sin(g/2), sketch)
	if got := v.Fix.Best.Error.Major.Millimetres(); math.Abs(got-major) > 0.01 {
		t.Errorf("major axis %.3f mm, want %.3f", got, major)
	}
	if e := v.Error.Millimetres(); e < 1.959*major || e > 2.448*major {
		t.Errorf("error %.2f mm for a major axis of %.2f", e, major)
	}
	if v.AlongError > v.Error || v.AlongError.Millimetres() > 1.961*major || v.AlongError <= 0 {
		t.Errorf("error along the wall %v of %v", v.AlongError, v.Error)
	}
}

// The others by hand. The desk's box is 14 in above the floor, so its bit needs
// 96-5/8 - 14 = 82-5/8 in, more than 54 in but less than with an extension of
// 54 in. The eave leaves no room. The access point was wished 6 ft 8 in and
// 7 ft from the study's faces: at (85, 89). From the hall's light at (208-1/4,
// 137) that is 8 joists west, of 208, 192, …, 96, and 11 in on, and 48 in
// south. The camera is 8 ft along the east wall, as far from both outside
// corners; its soffit is level with rafter tails (16 + 3-1/2)*8/12 = 13 in below
// the plate.
func TestStarterOtherHolesByHand(t *testing.T) {
	holes := Holes(starter(t))
	desk := find(t, holes, route.PlateArc, "west")
	b := desk.Bores[0].Bit
	if b.Way != FromBox || b.Need != in(82*8+5) || !b.Extended || b.Reach != in(108*8) || desk.Bores[0].Diameter != in(6) || !strings.Contains(b.Why, "long flexible bit") {
		t.Errorf("desk: %+v", desk.Bores)
	}
	if desk.Above.Reached || !strings.Contains(desk.Above.Why, "bored from below") || desk.Below.From[0].Length != in(38*8+4) || desk.Below.From[0].Of != LeftCorner {
		t.Errorf("desk: %+v, above %+v", desk.Below, desk.Above)
	}
	if got, want := desk.Bores[0].BitText(measure.Imperial), "3/4in flexible bit with the extension, reaches 9ft, needs 6ft 10-5/8in, from the box"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	point := find(t, holes, route.CeilingArc, "Study")
	if got, want := point.Below.Text, "in the ceiling of Study: 6ft 8in from wall west, 7ft from wall south"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	j := point.Above.Joists
	if j.Mark.ID != "hall-light" || j.Joists != 8 || j.Heading != plan.West || j.Start != in(2) || j.Offset != in(88) || j.Along != in(48*8) || j.AlongHeading != plan.South {
		t.Errorf("joists %+v", j)
	}
	if point.Bores[0].Bit.Way != FromRoom || point.Bores[0].Bit.Need != in(5) || !point.Seal.Air || point.Allowed.Edge != 0 {
		t.Errorf("point: %+v", point)
	}
	cam := find(t, holes, route.SoffitArc, "east")
	if got, want := cam.Below.Text, "outside, facing wall east: 8ft from the left corner, 7-1/2in out from its face, 6ft 11-5/8in above the floor"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if cam.Above.Reached || cam.Opens != -1 || !cam.Seal.Weather || cam.Seal.Fire {
		t.Errorf("camera: %+v", cam)
	}
}

// A block at 7 ft in the wall of the closet, whose opening is at 5 ft: from the
// box a bit goes 84 + 3/4 - 60 = 24-3/4 in up to its top, from the attic
// 96-5/8 - 84 + 3/4 = 13-3/8 in down to its underside, which is the shorter. A
// block at 4 ft over the desk's box at 14 in: 48 + 3/4 - 14 = 34-3/4 in, from
// the box only, under the low eave.
func TestFireBlocksByHand(t *testing.T) {
	holes := Holes(starter(t, `run = "N 15ft 7in"`, "fire_blocks = [\"7ft\"]\nrun = \"N 15ft 7in\"", "exterior = true", "exterior = true\nfire_blocks = [\"4ft\"]"))
	middle, west := find(t, holes, route.BlockArc, "middle"), find(t, holes, route.BlockArc, "west")
	if b := middle.Bores[0].Bit; b.Way != FromAttic || b.Need != in(13*8+3) || b.Index < 0 {
		t.Errorf("middle: %+v", b)
	}
	if b := west.Bores[0].Bit; b.Way != FromBox || b.Need != in(34*8+6) || b.Extended || !b.Flexible || !strings.Contains(b.Why, "fire block") {
		t.Errorf("west: %+v", b)
	}
	if s := west.Seal; !s.Fire || s.Air || s.Rules[0] != rule.FireBlock || west.Member != "fire block in wall west" || west.Below.Height != in(48*8) {
		t.Errorf("west: %+v", west)
	}
	// The straight bit does not go round the corner of a box, and is too tall
	// for the room over the plate of the middle wall, 48 in, with 5 in of drill.
	const bits = "  { size = \"3/8in\", reach = \"54in\", flexible = true },"
	for _, tt := range []struct {
		reach    string
		straight bool
	}{{"43in", true}, {"44in", false}, {"3in", true}, {"2-7/8in", false}} {
		holes := Holes(starter(t, bits, bits+"{ size = \"1in\", reach = \""+tt.reach+"\" },"))
		b := find(t, holes, route.PlateArc, "middle").Bores[0].Bit
		if straight := b.Index == 1; straight != tt.straight || b.Flexible == straight {
			t.Errorf("a straight bit of %s: %+v", tt.reach, b)
		}
	}
}

// A plate cut by more than half of its width wants a tie in a bearing wall:
// 2 in of 3-1/2 in does, 1-3/4 in does not, and no wall that carries nothing.
// Both leave less than 1-1/4 in at the edge.
func TestTieAndShield(t *testing.T) {
	for _, tt := range []struct {
		size string
		tie  bool
		left measure.Length
	}{{"2in", true, in(6)}, {"1-3/4in", false, in(7)}} {
		res := starter(t, `{ size = "3/8in",`, "{ size = \""+tt.size+"\",", `  { size = "1/2in", reach = "54in", flexible = true },`, "", `  { size = "3/4in", reach = "54in", flexible = true },`, "",
			`  { size = "1in", reach = "54in", flexible = true },`, "", "[tools]", "[limits]\nplate-bore = 60\n[tools]")
		holes := Holes(res)
		west, middle := find(t, holes, route.PlateArc, "west"), find(t, holes, route.PlateArc, "middle")
		if west.Tie != tt.tie || middle.Tie || !west.Shield || west.Allowed.Left != tt.left || !slices.Contains(west.Allowed.Rules, rule.Shield) {
			t.Errorf("%s: tie %v and %v, %+v", tt.size, west.Tie, middle.Tie, west.Allowed)
		}
	}
}

// Without a bit that makes the hole, the next trade size is named: 12 mm of
// bundle and 1/4 in is 18.35 mm, which 3/4 in takes.
func TestTradeSize(t *testing.T) {
	holes := Holes(starter(t, `  { size = "1/2in", reach = "54in", flexible = true },`, "", `  { size = "3/4in", reach = "54in", flexible = true },`, "",
		`  { size = "1in", reach = "54in", flexible = true },`, "", `extension = "54in"`, `extension = "60in"`))
	h := find(t, holes, route.PlateArc, "west")
	b := h.Bores[0]
	if len(h.Bores) != 1 || b.Own || b.Diameter != in(6) || b.Bit.Index != -1 || b.Bit.Need != in(82*8+5) {
		t.Errorf("%+v", h.Bores)
	}
	if got := b.BitText(measure.Imperial); !strings.Contains(got, "next trade size") {
		t.Error(got)
	}
	for _, s := range []measure.System{measure.Imperial, measure.Metric} {
		if sizes := TradeSizes(s); !slices.IsSorted(sizes) || sizes[0] < 6*measure.Millimetre || sizes[len(sizes)-1] > 80*measure.Millimetre {
			t.Errorf("%v", sizes)
		}
	}
}

// Twenty cables to the desk: eight in the access point's way and back. More
// than seven of 6 mm are too many for 1 in, so two or more holes lie side by
// side, 1/4 in apart, about the middle.
func TestSideBySide(t *testing.T) {
	holes := Holes(starter(t, "count = 2", "count = 12"))
	h := find(t, holes, route.PlateArc, "middle")
	if len(h.Bores) < 2 || h.Cables != 14 {
		t.Fatalf("%d cables in %+v", h.Cables, h.Bores)
	}
	left := -h.Width / 2
	for _, b := range h.Bores {
		if b.Offset-b.Diameter/2 != left || b.At != (geom.Point{X: h.At.X, Y: h.At.Y + b.Offset}) {
			t.Errorf("%+v begins at %v, want %v", b, b.Offset-b.Diameter/2, left)
		}
		left += b.Diameter + in(2)
	}
	if left-in(2) != h.Width-h.Width/2 {
		t.Errorf("they end at %v, %v wide", left-in(2), h.Width)
	}
}

// With no marks at all the place is found from below, with a wire; with one, by
// a distance and joists or an angle.
func TestFewMarks(t *testing.T) {
	f := newFixer(starter(t))
	if ids := len(f.site(0).marks); ids != 5 {
		t.Fatalf("%d marks, want the light and four corners", ids)
	}
	middle := slices.IndexFunc(f.res.Holes, func(h route.Hole) bool {
		p := &f.res.Graph.Holes[h.Place]
		return p.Kind == route.PlateArc && f.house.Walls[p.Wall].ID == "middle"
	})
	all := f.site(0).marks
	f.site(0).marks = nil
	a := f.hole(middle).Above
	if a.Method != ByNothing || a.Fix.Verdict != tape.NoMarks || a.Probe == nil || a.Joists != nil || a.Error != 0 || !strings.Contains(strings.Join(a.Text, "\n"), "stiff wire") {
		t.Errorf("no marks: %+v", a)
	}
	// The light is 40-1/4 in across and 60-1/2 in along: the arc crosses the
	// joists' line at 56°.
	f.site(0).marks = all[:1]
	a = f.hole(middle).Above
	if a.Method != ByJoists || a.Fix.Best != nil || a.Joists == nil || a.Joists.Joists != 3 || a.Joists.Offset != in(64) {
		t.Errorf("one mark: %v, %+v", a.Method, a.Joists)
	}
	// Level with the hole no count serves, but an angle does.
	f.site(0).marks = []sight{{tape.Mark{ID: "A", At: geom.Point{X: in(200 * 8), Y: in(76*8 + 4)}}, "nail A"}}
	a = f.hole(middle).Above
	if a.Method != ByBearing || a.Fix.Joist != nil || a.Joists == nil || !strings.Contains(strings.Join(a.Text, "\n"), "2ft 8in from nail A, 2ft 8in west") {
		t.Errorf("a level mark: %v %q", a.Method, a.Text)
	}
	f.site(0).marks = []sight{{tape.Mark{ID: "A", At: geom.Point{X: in(168 * 8), Y: in(76*8 + 4)}}, "nail A"}}
	if a = f.hole(middle).Above; a.Method != AtMark {
		t.Errorf("at a mark: %v", a.Method)
	}
	// A joist right at the mark is not counted: 176 in is one, 160 in the next.
	f.site(0).marks = []sight{{tape.Mark{ID: "A", At: geom.Point{X: in(176 * 8), Y: in(40 * 8)}}, "nail A"}}
	if j := f.hole(middle).Above.Joists; j.Joists != 0 || j.Offset != in(64) || j.Along != in(36*8+4) {
		t.Errorf("from a joist: %+v", j)
	}
}

// With nothing lying on the plates, their crossings are marks: the middle wall
// meets the south and the north wall, under the low eave, where no hand gets.
func TestBarePlates(t *testing.T) {
	if f := newFixer(starter(t, `insulation = "8in"`, `insulation = "0in"`)); len(f.site(0).marks) != 5 {
		t.Errorf("%d marks, want no crossing under the eaves", len(f.site(0).marks))
	}
	f := newFixer(starter(t, `insulation = "8in"`, `insulation = "0in"`, `[[opening]]
id = "middle-door"`, `[[wall]]
id = "stub"
start = { wall = "middle", at = "9ft" }
run = "W 4ft"

[[opening]]
id = "middle-door"`))
	i := slices.IndexFunc(f.site(0).marks, func(s sight) bool { return s.mark.ID == "stub/middle" })
	if i < 0 || f.site(0).marks[i].mark.At != (geom.Point{X: in(168 * 8), Y: in(108 * 8)}) || f.site(0).marks[i].mark.Size != in(28) {
		t.Errorf("marks %+v", f.site(0).marks)
	}
}

// A hole in the wall of a room with a garage door is sealed as the local code
// asks for the separation of garages.
func TestGarage(t *testing.T) {
	for edit, want := range map[string]bool{`kind = "door"`: true, `kind = "none"`: false} {
		res := starter(t, "id = \"front-door\"\nwall = \"south\"\n"+edit, "id = \"front-door\"\nwall = \"south\"\nkind = \"garage door\"", `hinge = "end"
swing = "left"

[[opening]]
id = "middle-door"`, map[bool]string{
			true: `
[[opening]]
id = "middle-door"`, false: `hinge = "end"
swing = "left"

[[opening]]
id = "middle-door"`,
		}[want])
		holes := Holes(res)
		middle, west := find(t, holes, route.PlateArc, "middle"), find(t, holes, route.PlateArc, "west")
		if middle.Seal.Garage != want || slices.Contains(middle.Seal.Rules, rule.FireSeparation) != want || west.Seal.Garage {
			t.Errorf("%q: %+v and %+v", edit, middle.Seal, west.Seal)
		}
	}
}

// What is only seen from below is no mark from above, nor what lies under the
// low eave, where nobody holds a tape.
func TestMarksAHandGetsTo(t *testing.T) {
	mark := func(at, seen string) string {
		return "[[mark]]\nid = \"extra\"\nkind = \"nail\"\nat = " + at + "\nseen = \"" + seen + "\"\n\n[[mark]]\nid = \"hall-light\""
	}
	for _, tt := range []struct {
		at, seen string
		want     bool
	}{
		{`["12ft", "8ft"]`, "above", true},
		{`["12ft", "8ft"]`, "both", true},
		{`["12ft", "8ft"]`, "below", false},
		{`["1ft", "1ft"]`, "both", false},
	} {
		f := newFixer(starter(t, "[[mark]]\nid = \"hall-light\"", mark(tt.at, tt.seen)))
		if got := slices.ContainsFunc(f.site(0).marks, func(s sight) bool { return s.name == "nail extra" }); got != tt.want {
			t.Errorf("%+v: %v", tt, got)
		}
	}
}

// Of two boxes in one bay a bit goes in through the upper: from 48 in it needs
// 96-5/8 - 48 = 48-5/8 in, which 54 in reach without the extension.
func TestUpperBox(t *testing.T) {
	holes := Holes(starter(t, "[[drop]]\ntag = \"D2\"", `[[drop]]
tag = "D4"
kind = "wall plate"
room = "study"
wall = "west"
at = "2ft 4in"
height = "48in"
cable = "cat6"
shift = "12in"

[[drop]]
tag = "D2"`))
	h := find(t, holes, route.PlateArc, "west")
	if b := h.Bores[0].Bit; len(h.Drops) != 2 || b.Need != in(48*8+5) || b.Extended || b.Index < 0 || !strings.Contains(h.Below.Text, "box of D4") {
		t.Errorf("%v: %+v, %s", h.Drops, b, h.Below.Text)
	}
}

// A tank between the hatch and the middle wall, too high to crawl over: the way
// goes round it, with a turn more, and no tape goes through it.
func TestRoundATank(t *testing.T) {
	tank := geom.Rect{Min: geom.Point{X: in(190 * 8), Y: in(60 * 8)}, Max: geom.Point{X: in(200 * 8), Y: in(120 * 8)}}
	res := starter(t, "[[mark]]\nid = \"hall-light\"", `[[obstacle]]
id = "tank"
kind = "tank"
from = ["190in", "60in"]
to = ["200in", "120in"]
top = "4ft"

[[mark]]
id = "hall-light"`)
	h := find(t, Holes(res), route.PlateArc, "middle")
	p := flat(h.At)
	for i := len(h.Above.Way) - 1; i >= 0; i-- {
		q := stepTo(p, opposite(h.Above.Way[i].Heading), h.Above.Way[i].Length)
		if geom.SegmentEntersRect(p, q, tank) {
			t.Errorf("the way goes through the tank: %q", h.Above.Text[0])
		}
		p = q
	}
	unused := 0
	for _, u := range h.Above.Fix.Unused {
		if u.Why == tape.InTheWay {
			unused++
		}
	}
	// All marks are behind it. The hatch's nearest corner is at (217, 81); joists can still be
	// counted from it: those at 208, 192 and 176 in.
	if j := h.Above.Joists; unused != 5 || h.Above.Method != ByNothing || h.Above.Probe == nil || j == nil || j.Mark.ID != "hatch south-west" || j.Joists != 3 {
		t.Errorf("%d marks behind the tank: %v, %+v", unused, h.Above.Method, j)
	}
}

// In an attic with nothing in it the shortest way to any place needs one turn;
// here no place is further than an arm's reach from what one crawls to.
func TestOneTurn(t *testing.T) {
	res := starter(t)
	f := newFixer(res)
	n := 0
	for k := range res.Graph.Reach.Crossings() {
		p, zone := res.Graph.Reach.Crossing(k)
		if zone > route.Crawl {
			continue
		}
		n++
		_, steps, ok := f.site(0).ways.to(p)
		if !ok || len(steps) > 2 {
			t.Errorf("to %v: %s", p, f.wayText(0, steps))
		}
	}
	if n < 100 {
		t.Errorf("only %d places", n)
	}
}

// An ellipse of 2 by 1 mm that lies along X: 1.96 deviations are 3.92 mm along
// X and 1.96 mm along Y; turned by 30°, √(4·3/4 + 1/4) = 1.803 of them along X.
func TestAlongError(t *testing.T) {
	e := tape.Ellipse{Major: 2 * measure.Millimetre, Minor: measure.Millimetre}
	turned := e
	turned.Axis = 30
	for _, tt := range []struct {
		e      tape.Ellipse
		alongY bool
		want   float64
	}{{e, false, 3.920}, {e, true, 1.960}, {turned, false, 1.96 * math.Sqrt(3.25)}, {turned, true, 1.96 * math.Sqrt(1.75)}} {
		if got := alongError(&tt.e, tt.alongY).Millimetres(); math.Abs(got-tt.want) > 0.002 {
			t.Errorf("%+v: %v mm", tt, got)
		}
	}
}
