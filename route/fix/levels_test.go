package fix

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

const levelsJob = `
house = "levels.toml"

[job]
name = "Cables on three floors"
number = "1"
by = "installer"

[closet]
name = "Kitchen cabinet"
room = "kitchen"
wall = "middle"
at = "9ft"
height = "5ft"
width = "14in"
ports = 12

[[drop]]
tag = "D1"
kind = "wall plate"
room = "pantry"
wall = "split"
at = "4ft"
height = "14in"
cable = "cat6"
shift = "12in"

[[drop]]
tag = "D2"
kind = "wall plate"
room = "bed"
wall = "u-middle"
at = "10ft"
height = "14in"
cable = "cat6"
shift = "12in"

[tools]
rods = "15ft"
arm = "24in"
extension = "54in"
bits = [
  { size = "3/8in", reach = "54in", flexible = true },
  { size = "1/2in", reach = "54in", flexible = true },
  { size = "3/4in", reach = "54in", flexible = true },
  { size = "1in", reach = "54in", flexible = true },
]

[rates]
currency = "USD"
hour = 85
`

// split parts the kitchen of the house in two.
const split = `
[[wall]]
id = "split"
start = { wall = "middle", at = "14ft" }
run = "W 13ft 8in"

[[room]]
id = "pantry"
name = "Pantry"
at = ["5ft", "20ft"]
`

func levels(t testing.TB, edits ...string) *route.Result {
	t.Helper()
	return levelsOf(t, func(src string) string { return src }, edits...)
}

// newFirsts gives every floor and attic another first joist.
func newFirsts(first func() string) func(string) string {
	return func(src string) string {
		parts := strings.Split(src, "first = \"16in\"")
		for i := range parts[1:] {
			parts[i] += "first = \"" + first() + "\""
		}
		return strings.Join(parts, "")
	}
}

// levelsOf is the house of three levels that package plan loads, changed as a
// whole and by pairs of texts.
func levelsOf(t testing.TB, change func(string) string, edits ...string) *route.Result {
	t.Helper()
	read := func(path string) ([]byte, error) {
		src := levelsJob
		if strings.HasSuffix(path, "levels.toml") {
			b, err := os.ReadFile("../../plan/testdata/good/levels.toml")
			if err != nil {
				return nil, err
			}
			src = change(string(b) + split)
		}
		for i := 0; i < len(edits); i += 2 {
			src = strings.Replace(src, edits[i], edits[i+1], 1)
		}
		return []byte(src), nil
	}
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the house does not load")
	}
	return solved(t, job)
}

// overCrawl moves the panel and the desk to where the floor is over the crawl
// space.
var overCrawl = []string{
	"room = \"kitchen\"\nwall = \"middle\"\nat = \"9ft\"", "room = \"living\"\nwall = \"across\"\nat = \"5ft\"",
	"room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", "room = \"living\"\nwall = \"south\"\nat = \"5ft\"",
	"[[room]]\nid = \"pantry\"", "[[wall]]\nid = \"across\"\nstart = { wall = \"east\", at = \"16ft\" }\nrun = \"W 25ft 8in\"\n\n[[room]]\nid = \"back\"\nname = \"Back room\"\nat = [\"30ft\", \"20ft\"]\n\n[[room]]\nid = \"pantry\"",
}

// The cellar by hand, in inches. Its walls are 8 in thick from 1 in, so that its
// faces are at 9, 233 (241 - 8) along X and 9, 279 along Y. The floor over it has
// I-joists of 9-1/2 in every 16 in from 16 in on plates at 91-5/8 in over -102
// in: their undersides are at -10-3/8, and 3/4 in of boards end at -1/8 in.
//
// The wall "middle" stands at X = 168. The bay beside the panel, at 9 ft along it
// from the kitchen's corner, is bored at Y = 60-1/2: 65 in from the east face of
// the cellar, 51-1/2 in from the south one. Joists at 224, 208, 192 and 176 are
// between the east face and the plate, which is 8 in past the last. A bit goes up
// through 3/4 in of boards and 1-1/2 in of plate.
func TestBottomPlateFromTheCellar(t *testing.T) {
	h := find(t, Holes(levels(t)), route.SoleArc, "wall middle")
	if h.Member != "bottom plate of wall middle and the floor under it" || h.At != (geom.Point3{X: in(168 * 8), Y: in(60*8 + 4)}) || h.Tie {
		t.Errorf("%q at %v", h.Member, h.At)
	}
	if b := h.Bores[0]; b.Diameter != in(4) || b.Bit.Way != FromUnder || b.Bit.Need != in(18) || !strings.HasSuffix(b.BitText(measure.Imperial), "needs 2-1/4in, from the room below") {
		t.Errorf("bit %+v", b)
	}
	if a := h.Allowed; a.Largest != in(14) || a.Edge != in(5) || a.Left != in(12) || h.Shield || !slices.Equal(a.Rules, []rule.ID{rule.PlateCapacity}) {
		t.Errorf("allowed %+v", a)
	}
	if s := h.Seal; !s.Fire || !s.Air || s.Garage || s.Weather || !slices.Equal(s.Rules, []rule.ID{rule.SealHoles}) {
		t.Errorf("seal %+v", s)
	}
	// The kitchen is from 5 in to the wall "split", at 4-1/2 in of wall about 168:
	// its south face is at 165-3/4.
	const below = "in Kitchen, facing wall middle: 4ft 7-1/2in from the right corner along the baseboard, in the bottom plate behind it, 2-3/4in left of the middle of the closet's opening"
	if h.Below.Text != below || h.Below.From[0].Length != in(55*8+4) || h.Below.Height != 0 {
		t.Errorf("below %+v", h.Below)
	}
	a := h.Above
	if !a.Reached || a.Zone != route.Stand || a.Clear != in(91*8+5) || a.Hatch != -1 || a.Way != nil || a.Probe != nil {
		t.Errorf("above %+v", a)
	}
	f := a.Faces
	if len(f) != 2 || f[0].Length != in(65*8) || f[0].At != (geom.Point{X: in(233 * 8), Y: in(60*8 + 4)}) || f[1].Length != in(51*8+4) || f[1].At != (geom.Point{X: in(168 * 8), Y: in(9 * 8)}) {
		t.Errorf("faces %+v", f)
	}
	j := a.Joists
	if j == nil || j.Mark.At.X != in(233*8) || j.Joists != 4 || j.Start != in(9*8) || j.Offset != in(8*8) || j.Heading != plan.West {
		t.Errorf("joists %+v", j)
	}
	text := strings.Join(a.Text, "\n")
	for _, want := range []string{
		"in Cellar, under the open joists\nstanding, 7ft 7-5/8in clear under the joists\n5ft 5in from the face of wall f-east and 4ft 3-1/2in from the face of wall f-south, square to it",
		"look for the boards under the bottom plate of wall middle, 3-1/2in wide, which runs north and south",
		"look under the floor before boring",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	if strings.Contains(text, "rim joist") || strings.Contains(text, "attic") {
		t.Error(text)
	}
}

// Its error by hand: each distance has the tape's 1/8 in and a step of 1/16 in,
// the sketch for the face and again for the place, and 3° off square, which is
// d·(3°)²·√3/2: 65 in are 3.9 mm too long, 51-1/2 in 3.1 mm.
func TestErrorFromFacesByHand(t *testing.T) {
	res := levels(t)
	a := find(t, Holes(res), route.SoleArc, "wall middle").Above
	sketch := res.Job.House.SketchError.Millimetres() / 2
	three := 3 * math.Pi / 180
	axis := func(d float64) float64 {
		return math.Sqrt(math.Pow(25.4/8, 2) + math.Pow(25.4/16, 2)/12 + 2*sketch*sketch + math.Pow(d*25.4*three*three*math.Sqrt(3)/2, 2))
	}
	x, y := axis(65), axis(51.5)
	if a.Method != ByFaces || math.Abs(a.AlongError.Millimetres()-1.959964*y) > 0.01 {
		t.Errorf("%v, %v mm along the wall, want %.3f", a.Method, a.AlongError.Millimetres(), 1.959964*y)
	}
	if e := a.Error.Millimetres(); e < 1.95996*x || e > 2.44775*x {
		t.Errorf("error %.2f mm for %.2f and %.2f", e, x, y)
	}
}

// Over the closed floor nothing is found: the plate is bored from the panel,
// 60 in above the floor, 96-5/8 - 60 = 36-5/8 in; the bottom plate upstairs from
// the box at 14 in, and 3/4 in of boards. Each has the other wall in line.
func TestClosedFloor(t *testing.T) {
	res := levels(t)
	up, down := find(t, Holes(res), route.PlateArc, "wall middle"), find(t, Holes(res), route.SoleArc, "u-middle")
	if b := up.Bores[0].Bit; b.Way != FromBox || b.Need != in(36*8+5) || !b.Flexible || b.Index < 0 {
		t.Errorf("up: %+v", b)
	}
	if b := down.Bores[0].Bit; b.Way != FromBox || b.Need != in(14*8+6) || !b.Flexible || b.Index < 0 || !strings.Contains(b.Why, "closed from below") {
		t.Errorf("down: %+v", b)
	}
	for _, tt := range []struct {
		h    *Hole
		wall string
		want []string
	}{
		{up, "u-middle", []string{"not found from above", "wall u-middle stands over it in line: the place is 4ft 7-1/2in from the right corner of its face, in Bedroom", "the floor is 9-1/4in above it"}},
		{down, "middle", []string{"bored down from the box", "wall middle stands under it in line", "there is a wall under it", "look under the floor"}},
	} {
		a := tt.h.Above
		text := strings.Join(a.Text, "\n")
		if a.Reached || a.Fix != nil || a.Zone <= route.Arm || a.InLine < 0 || res.Job.House.Walls[a.InLine].ID != tt.wall || tt.h.Seal.Air {
			t.Errorf("%s: %+v", tt.h.Member, a)
		}
		for _, want := range tt.want {
			if !strings.Contains(text, want) {
				t.Errorf("%q is not in %q", want, text)
			}
		}
	}
	if up.Tie || down.Tie || !strings.Contains(down.Below.Text, "in Bedroom, facing wall u-middle: 10ft 6-1/2in from the left corner along the baseboard") {
		t.Errorf("%s", down.Below.Text)
	}
}

// The crawl space by hand. Its hatch is 30 in square about (456, 144), outside.
// The desk's box is 5 ft from the left corner as one faces the south wall, and
// its bay is bored at X = 408-1/2, in the middle of the outer plate at Y =
// 2-3/4. From the hatch's north-west corner, (441, 159), joists at 432 and 416
// are passed, and 7-1/2 in; it is 156-1/4 in south.
func TestBottomPlateFromTheCrawlSpace(t *testing.T) {
	res := levels(t, overCrawl...)
	h := find(t, Holes(res), route.SoleArc, "wall south")
	if b := h.Bores[0].Bit; b.Way != FromCrawl || b.Need != in(18) || !strings.Contains(b.Why, "only the joists' depth") {
		t.Errorf("bit %+v", b)
	}
	a := h.Above
	if h.At != (geom.Point3{X: in(408*8 + 4), Y: in(22)}) || !a.Reached || a.Zone > route.Arm || a.Clear != in(26*8) || a.Room != -1 || a.Faces != nil {
		t.Errorf("at %v, %+v", h.At, a)
	}
	if j := a.Joists; j == nil || j.Mark.ID != "crawl-door north-west" || j.Joists != 2 || j.Offset != in(7*8+4) || j.Along != in(156*8+2) || j.AlongHeading != plan.South {
		t.Errorf("joists %+v", j)
	}
	if d := a.Fix.Joist.Distance.Exact.Millimetres() / 25.4; math.Abs(d-math.Hypot(32.5, 156.25)) > 1e-6 {
		t.Errorf("%v in from the corner, want %v", d, math.Hypot(32.5, 156.25))
	}
	text := strings.Join(a.Text, "\n")
	for _, want := range []string{
		"in the crawl space, from hatch crawl-door, which is reached from outside: ", "2ft 2in clear under the joists",
		"the rim joist lies below the outer part of the plate, about 1-1/2in of its 3-1/2in: keep to the inner half",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	if !h.Seal.Air || !h.Seal.Fire {
		t.Errorf("seal %+v", h.Seal)
	}
	// A straight bit must go in between the foundation and the boards: 9-1/4 in,
	// less 5 in of drill. Under the inner wall there are 26 in more.
	const bits = "  { size = \"3/8in\", reach = \"54in\", flexible = true },"
	for _, tt := range []struct {
		reach        string
		outer, inner bool
	}{{"4-1/4in", true, true}, {"4-3/8in", false, true}, {"30-1/4in", false, true}, {"30-3/8in", false, false}, {"2-1/8in", false, false}} {
		holes := Holes(levels(t, append([]string{bits, bits + "{ size = \"1/2in\", reach = \"" + tt.reach + "\" },"}, overCrawl...)...))
		for word, want := range map[string]bool{"wall south": tt.outer, "wall across": tt.inner} {
			if b := find(t, holes, route.SoleArc, word).Bores[0].Bit; b.Flexible == want {
				t.Errorf("%s: a straight bit of %s: %+v", word, tt.reach, b)
			}
		}
	}
}

// What the sketch has near a hole through a floor is named: a duct whose edge is
// 12 in off, and nothing in the attic over it.
func TestKnownUnderTheFloor(t *testing.T) {
	duct := func(space, from, to string) []string {
		return []string{"[[mark]]", "[[obstacle]]\nid = \"o1\"\nkind = \"duct\"\nspace = \"" + space + "\"\nfrom = [\"" + from + "\", \"5ft\"]\nto = [\"" + to + "\", \"6ft\"]\ntop = \"9in\"\n\n[[mark]]"}
	}
	power := func(x string) []string {
		return []string{"[[mark]]", "[[power]]\nid = \"o1\"\nspace = \"over-cellar\"\npath = [[\"" + x + "\", \"3ft\"], [\"" + x + "\", \"8ft\"]]\n\n[[mark]]"}
	}
	for _, tt := range []struct {
		edits []string
		want  bool
	}{
		{duct("over-cellar", "179-15/16in", "190in"), true},
		{duct("over-cellar", "180in", "190in"), false},
		{duct("high", "170in", "190in"), false},
		{power("179-15/16in"), true},
		{power("180in"), false},
	} {
		a := find(t, Holes(levels(t, tt.edits...)), route.SoleArc, "wall middle").Above
		if got := strings.Contains(strings.Join(a.Text, "\n"), "in the sketch nearer than 1ft: "); got != tt.want {
			t.Errorf("%q: %q", tt.edits, a.Text)
		}
	}
}

// A garage under the floor, by its use, is sealed off as the local code asks.
func TestGarageUnderTheFloor(t *testing.T) {
	for _, use := range []string{"garage", "closet"} {
		h := find(t, Holes(levels(t, "id = \"cellar\"", "use = \""+use+"\"\nid = \"cellar\"")), route.SoleArc, "wall middle")
		if h.Seal.Garage != (use == "garage") {
			t.Errorf("%s: %+v", use, h.Seal)
		}
	}
}

// On houses with other joists, walls and places all that is said of holes in
// every space is exact to the model.
func TestRandomLevels(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(16) {
		dice := rand.New(rand.NewPCG(seed, 1))
		eighths := func(least, most measure.Length) string {
			return measure.Imperial.Format(in(least + measure.Length(dice.Int64N(int64(most-least)))))
		}
		edits := []string{
			"at = \"14ft\" }\nrun = \"W 13ft 8in\"", "at = \"" + eighths(11*96, 18*96) + "\" }\nrun = \"W 13ft 8in\"",
			"wall = \"u-middle\"\nat = \"10ft\"", "wall = \"u-middle\"\nat = \"" + eighths(3*96, 20*96) + "\"",
			"west = \"2ft\", south = \"3ft\"", "west = \"" + eighths(8, 12*96) + "\", south = \"" + eighths(8, 9*96) + "\"",
			"shift = \"12in\"", "shift = \"20in\"", "shift = \"12in\"", "shift = \"20in\"", "seen = \"both\"", "seen = \"both\"\nspace = \"over-cellar\"",
		}
		desk := "room = \"pantry\"\nwall = \"split\"\nat = \"" + eighths(2*96, 12*96) + "\""
		if seed%2 == 1 {
			edits = append(edits, overCrawl...)
			desk = "room = \"living\"\nwall = \"south\"\nat = \"" + eighths(2*96, 16*96) + "\""
			edits[len(edits)-3] = desk
		} else {
			edits = append(edits, "room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", desk)
		}
		src := newFirsts(func() string { return eighths(8, 128) })
		res := levelsOf(t, src, edits...)
		for _, h := range Holes(res) {
			checkHole(t, fmt.Sprintf("seed %d", seed), res, &h)
			if h.Space >= 0 {
				seen[h.Kind.String()+" "+res.Job.House.Spaces[h.Space].ID]++
			}
			seen[h.Above.Method.String()]++
		}
	}
	for _, what := range []string{"bottom plate over-cellar", "bottom plate crawl", "bottom plate between", "top plate between", ByFaces.String(), ByTapes.String(), ByJoists.String()} {
		if seen[what] < 3 {
			t.Errorf("only %d times %s: %v", seen[what], what, seen)
		}
	}
}
