package plan

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// goodHouse loads a house of testdata/good, which must say nothing.
func goodHouse(t testing.TB, name string) *House {
	t.Helper()
	src, err := os.ReadFile("testdata/good/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	h, list := LoadHouse(name+".toml", src)
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	return h
}

// outlineOf is a rectangle as an outline.
func outlineOf(r geom.Rect) geom.Polygon {
	return geom.Polygon{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}}
}

// A space as it is worked out by hand.
type space struct {
	id           string
	kind         SpaceKind
	below, above string
	outlines     []geom.Rect
	base, top    string // top of a floor
	lift         string
}

func checkSpaces(t *testing.T, h *House, want []space) {
	t.Helper()
	if len(h.Spaces) != len(want) {
		t.Fatalf("%d spaces, want %d", len(h.Spaces), len(want))
	}
	name := func(level int) string {
		if level < 0 {
			return ""
		}
		return h.Levels[level].ID
	}
	for i, s := range h.Spaces {
		w := want[i]
		if s.ID != w.id || s.Kind != w.kind || name(s.Below) != w.below || name(s.Above) != w.above || s.Base != at(t, w.base) {
			t.Errorf("got space %+v, want %+v", s, w)
		}
		if w.top != "" && s.Top() != at(t, w.top) || w.lift != "" && s.Lift != at(t, w.lift) {
			t.Errorf("space %s: top %v, lift %v; want %s, %s", s.ID, s.Top(), s.Lift, w.top, w.lift)
		}
		var outlines []geom.Polygon
		for _, r := range w.outlines {
			outlines = append(outlines, outlineOf(r))
		}
		if diff := cmp.Diff(outlines, s.Outlines); diff != "" || len(s.Holes) != 0 {
			t.Errorf("space %s, holes %v, outlines (-want +got)\n%s", s.ID, s.Holes, diff)
		}
	}
}

// TestSpacesOfLevels works the spaces of a house of two storeys out by hand. The
// studs are 1 in of cladding inside of the taped faces; the masonry has none. The
// ground floor's plates are at 8 ft 5/8 in, and 9-1/4 in of joists and 3/4 in of
// boards end at 8 ft 10-5/8 in. The basement's plates are at -8 ft 6 in + 7 ft
// 7-5/8 in = -10-3/8 in, and 9-1/2 + 3/4 in of floor end at -1/8 in. Over the
// crawl space there are 3/4 + 9-1/4 in to the undersides of the joists. The upper
// plates are at 8 ft 10-5/8 in + 8 ft 5/8 in.
func TestSpacesOfLevels(t *testing.T) {
	h := goodHouse(t, "levels")
	storey := box(t, "1in", "1in", "25ft 11in", "23ft 11in")
	checkSpaces(t, h, []space{
		{"high", AtticSpace, "upper", "", []geom.Rect{storey}, "16ft 11-1/4in", "", "0in"},
		{"low", AtticSpace, "ground", "", []geom.Rect{box(t, "25ft 11in", "1in", "39ft 11in", "23ft 11in")}, "8ft 5/8in", "", "0in"},
		{"between", FloorSpace, "ground", "upper", []geom.Rect{storey}, "8ft 5/8in", "8ft 10-5/8in", ""},
		{"over-cellar", FloorSpace, "basement", "ground", []geom.Rect{box(t, "1in", "1in", "20ft 1in", "23ft 11in")}, "-10-3/8in", "-1/8in", ""},
		{"crawl", CrawlSpace, "", "ground", []geom.Rect{box(t, "20ft 1in", "1in", "39ft 11in", "23ft 11in")}, "-10in", "0in", ""},
	})
	if h.Boundaries != box(t, "0in", "0in", "40ft", "24ft") || h.Attic != h.Spaces[0] || h.Roof != h.Roofs[0] {
		t.Errorf("boundaries %v, attic %s, roof %s", h.Boundaries, h.Attic.ID, h.Roof.ID)
	}
	foundation := wall(t, h, "f-south")
	if !foundation.Masonry || foundation.StudDepth != 8*inch || foundation.Insulated || foundation.Body != box(t, "1in", "1in", "20ft 1in", "9in") || foundation.Frame != foundation.Body {
		t.Errorf("foundation: %+v", foundation)
	}
	p := geom.Point{X: 5 * foot, Y: 5 * foot}
	levels := map[string]int{"ground": 0, "basement": 1, "upper": 2}
	for _, tt := range []struct {
		level       string
		p           geom.Point
		over, under string
	}{
		{"ground", p, "between", "over-cellar"},
		{"ground", geom.Point{X: 30 * foot, Y: 5 * foot}, "low", "crawl"},
		{"basement", p, "over-cellar", ""},
		{"upper", p, "high", "between"},
		{"upper", geom.Point{X: 30 * foot, Y: 5 * foot}, "", ""},
	} {
		name := func(i int) string {
			if i < 0 {
				return ""
			}
			return h.Spaces[i].ID
		}
		if over, under := name(h.SpaceOver(levels[tt.level], tt.p)), name(h.SpaceUnder(levels[tt.level], tt.p)); over != tt.over || under != tt.under {
			t.Errorf("%s at %v: over %q and under %q, want %q and %q", tt.level, tt.p, over, under, tt.over, tt.under)
		}
	}
	if !h.OpenBelow(h.Spaces[3], p) || h.OpenBelow(h.Spaces[2], p) || h.OpenBelow(h.Spaces[0], p) || !h.OpenBelow(h.Spaces[4], p) {
		t.Error("the joists that can be got at from below are others")
	}
	if h.Rooms[h.RoomOn(2, p)].ID != "bed" || h.Rooms[h.RoomOn(0, p)].ID != "kitchen" || h.Marks[0].Space != 2 {
		t.Errorf("rooms on levels, or marks: %+v", h.Marks)
	}
}

// A height of a roof, or under it, by hand.
type roofHeight struct {
	roof string
	x, y string
	want string
}

func checkHeights(t *testing.T, h *House, want []roofHeight) {
	t.Helper()
	for _, w := range want {
		for _, r := range h.Roofs {
			if r.ID != w.roof {
				continue
			}
			if got := r.Surface.Height(geom.Point{X: at(t, w.x), Y: at(t, w.y)}); got != at(t, w.want) {
				t.Errorf("roof %s at %s, %s: %v, want %s", w.roof, w.x, w.y, got, w.want)
			}
		}
	}
}

// The roofs of the two storeys by hand. The upper plates are 286 in apart, so
// the ridge of 6 in 12 is 143/2 in high. The lower roof, 3 in 12, is 168 in by
// 286 in, cut off at the storey at 25 ft 11 in: its ridge is 143/4 in high until
// 143 in from the eave at 39 ft 11 in.
func TestRoofsOfLevels(t *testing.T) {
	h := goodHouse(t, "levels")
	checkHeights(t, h, []roofHeight{
		{"main", "13ft", "12ft", "71-1/2in"},
		{"main", "1in", "12ft", "71-1/2in"}, // a gable
		{"main", "13ft", "1in", "0in"},
		{"main", "13ft", "49in", "24in"},
		{"lean", "26ft", "12ft", "35-3/4in"},
		{"lean", "28ft", "12ft", "35-3/4in"},
		{"lean", "39ft 11in", "12ft", "0in"},
		{"lean", "35ft 11in", "12ft", "12in"},
		{"lean", "27ft", "5ft 1in", "15in"},
		{"lean", "40ft 11in", "12ft", "-3in"}, // at the end of its overhang
	})
	lean := h.Roofs[1]
	if _, ok := lean.Surface.Slope(geom.Point{X: 25 * foot, Y: 12 * foot}); ok || lean.Level != 0 || lean.FirstY != 16*inch {
		t.Errorf("the lower roof goes on into the storey: %+v", lean)
	}
}

// A storey and a half by hand. The plates of the ground floor at 8 ft 5/8 in =
// 96-5/8 in are 286 in apart, so that the ridge of 12 in 12 is 143 in over them.
// The upper plates are at 106-5/8 + 84-5/8 in = 191-1/4 in, 94-5/8 in over those
// of the roof. The underside of a rafter is as high as it is inward of the plate,
// which is 3-1/2 in wide.
func TestStoreyAndAHalf(t *testing.T) {
	h := goodHouse(t, "half_storey")
	checkSpaces(t, h, []space{
		{"ridge", AtticSpace, "half", "", []geom.Rect{box(t, "1in", "5ft 1in", "31ft 11in", "18ft 11in")}, "15ft 11-1/4in", "", "7ft 10-5/8in"},
		{"sides", AtticSpace, "ground", "", []geom.Rect{box(t, "1in", "1in", "31ft 11in", "5ft 1in"), box(t, "1in", "18ft 11in", "31ft 11in", "23ft 11in")}, "8ft 5/8in", "", "0in"},
		{"between", FloorSpace, "ground", "half", []geom.Rect{box(t, "1in", "5ft 1in", "31ft 11in", "18ft 11in")}, "8ft 5/8in", "8ft 10-5/8in", ""},
	})
	if h.Roof.Level != 0 || len(h.Roofs) != 1 || h.OutsideOf.Bounds() != box(t, "0in", "0in", "32ft", "24ft") || h.PlateLine.Bounds() != box(t, "1in", "1in", "31ft 11in", "23ft 11in") {
		t.Errorf("the roof is on level %d, the outline %v", h.Roof.Level, h.OutsideOf)
	}
	checkHeights(t, h, []roofHeight{{"roof", "16ft", "12ft", "143in"}, {"roof", "1in", "12ft", "143in"}, {"roof", "16ft", "5ft 1in", "60in"}})
	for _, tt := range []struct {
		space int
		y     string
		want  string
	}{
		{0, "12ft", "44-7/8in"},    // 143 - 3-1/2 - 94-5/8
		{0, "9ft 1in", "9-7/8in"},  // 108 - 3-1/2 - 94-5/8
		{1, "4ft 1in", "44-1/2in"}, // 48 - 3-1/2
		{1, "23ft", "7-1/2in"},     // 11 - 3-1/2
		{2, "12ft", "9-1/4in"},     // the subfloor
		{1, "1ft 4-1/2in", "12in"}, // 15-1/2 - 3-1/2
	} {
		s, p := h.Spaces[tt.space], geom.Point{X: 16 * foot, Y: at(t, tt.y)}
		if got := h.UnderRafter(s, p); got != at(t, tt.want) {
			t.Errorf("under the rafters in %s at %s: %v, want %s", s.ID, tt.y, got, tt.want)
		}
		// The rafter is 5-1/2 in square to its length: 5.5 * sqrt 2 upright.
		if got := h.UnderSheathing(s, p) - h.UnderRafter(s, p); s.Roof >= 0 && got != 197_565_635 {
			t.Errorf("the rafter is %d nm deep, want 197565635", got)
		}
	}
	// A low wall inside of the roof has no overhang, nor has a wall under the rake
	// of the other storey.
	for _, tt := range []struct {
		wall string
		want int
	}{{"south", 0}, {"west", 0}, {"h-south", -1}, {"h-west", -1}} {
		if got := h.RoofOn(wall(t, h, tt.wall), 3*foot); got != tt.want {
			t.Errorf("on wall %s stands roof %d, want %d", tt.wall, got, tt.want)
		}
	}
}

// An addition by hand. The main roof, 6 in 12, is over 358 in by 286 in, a gable
// on either end; the addition's, 3 in 12, over 144 in by 142 in, cut off at the
// main plates, x = 359 in. Its ridge is 71/4 in high, and its hip end falls from
// 71 in before the eave at 503 in. The areas in the file are along the finished
// faces, an inch off the plates.
func TestAddition(t *testing.T) {
	h := goodHouse(t, "addition")
	checkSpaces(t, h, []space{
		{"big", AtticSpace, "ground", "", []geom.Rect{box(t, "1in", "1in", "359in", "287in")}, "8ft 5/8in", "", "0in"},
		{"small", AtticSpace, "ground", "", []geom.Rect{box(t, "359in", "1in", "503in", "143in")}, "8ft 5/8in", "", "0in"},
	})
	checkHeights(t, h, []roofHeight{
		{"main", "180in", "144in", "71-1/2in"},
		{"main", "359in", "144in", "71-1/2in"},
		{"main", "180in", "41in", "20in"},
		{"main", "180in", "-15in", "-8in"},
		{"add", "400in", "72in", "17-3/4in"},
		{"add", "360in", "72in", "17-3/4in"},
		{"add", "483in", "72in", "5in"},
		{"add", "400in", "21in", "5in"},
		{"add", "400in", "-11in", "-3in"},
	})
	main, add := h.Roofs[0].Surface, h.Roofs[1].Surface
	for _, tt := range []struct {
		x, y      measure.Length
		main, add bool
	}{{370, 60, false, false}, {364, 200, true, false}, {400, 60, false, true}, {350, 60, true, false}} {
		p := geom.Point{X: tt.x * inch, Y: tt.y * inch}
		_, onMain := main.Slope(p)
		_, onAdd := add.Slope(p)
		// The east side of the main roof is flush in part, and has its overhang
		// all along there.
		if onMain != tt.main && tt.x != 370 || onAdd != tt.add && tt.x != 370 {
			t.Errorf("at %v: main %v, addition %v", p, onMain, onAdd)
		}
	}
	south := wall(t, h, "south")
	if h.RoofOn(south, 4*foot) != 0 || h.RoofOn(south, 36*foot) != 1 || h.RoofOn(south, 43*foot) != 1 {
		t.Errorf("roofs on the south wall: %d, %d", h.RoofOn(south, 4*foot), h.RoofOn(south, 36*foot))
	}
}

// Flat roofs over two floors beside each other: 2400 mm of ceiling and 15 mm of
// board, the higher one at 1300 mm.
func TestFlatRoofs(t *testing.T) {
	h := goodHouse(t, "flat")
	checkSpaces(t, h, []space{
		{"deck", FloorSpace, "low", "", []geom.Rect{box(t, "25mm", "25mm", "7975mm", "6975mm")}, "2415mm", "2655mm", "0mm"},
		{"deck-high", FloorSpace, "high", "", []geom.Rect{box(t, "8025mm", "25mm", "13975mm", "6975mm")}, "3715mm", "3949.95mm", "0mm"},
	})
	p := geom.Point{X: 3000 * mm, Y: 3000 * mm}
	if !h.Roof.Flat || h.Roof.Surface != nil || h.Attic.Roof != -1 || h.UnderRafter(h.Attic, p) != 240*mm || h.Attic.Joist != IJoist {
		t.Errorf("flat roof %+v over %+v", h.Roof, h.Attic)
	}
}

// Stairs over one another open the floor between them: those of the example are
// 4 ft by 9 ft between the lines of their walls, less their boards.
func TestStairsOpenTheFloor(t *testing.T) {
	h := houseOf(t, "# WITH wall room\n"+stairs)
	s := h.Spaces[1]
	// The walls are 4-1/2 in thick about their lines, the outer ones 5 in from
	// their faces: from 2-1/4 in past 20 ft to 2-1/4 in short of 24 ft, and from
	// 2-1/4 in past 11 ft to 19 ft 7 in below; above it is a foot narrower.
	want := []geom.Polygon{outlineOf(box(t, "21ft 2-1/4in", "11ft 2-1/4in", "23ft 9-3/4in", "19ft 7in"))}
	if diff := cmp.Diff(want, s.Holes); diff != "" {
		t.Errorf("holes (-want +got)\n%s", diff)
	}
	src := complete(t, "# WITH wall room\n"+stairs+`
[[chase]]
id = "through"
from = ["22ft", "15ft"]
to = ["23ft", "16ft"]
levels = ["ground", "second"]
`, "testdata/base_house.toml")
	if bad, list := LoadHouse("house.toml", []byte(src)); bad != nil || !strings.Contains(print(t, list), "found a chase through room down, which is stairs") {
		t.Errorf("a chase through stairs: %s", print(t, list))
	}
	for _, tt := range []struct {
		x, y int
		want bool
	}{{22, 15, false}, {22, 5, true}, {10, 15, true}, {31, 5, false}} {
		if got := s.Contains(geom.Point{X: measure.Length(tt.x) * foot, Y: measure.Length(tt.y) * foot}); got != tt.want {
			t.Errorf("the floor at %d, %d: %v", tt.x, tt.y, got)
		}
	}
}

const stairs = `
[[level]]
id = "ground"
ceiling = "8ft"

[[level]]
id = "second"
floor = "8ft 10-5/8in"
ceiling = "8ft"

[[wall]]
id = "s-outer"
level = "second"
start = ["0ft", "0ft"]
run = "E 30ft, N 20ft, W 30ft, S 20ft"
names = ["s-south", "s-east", "s-north", "s-west"]
closes = true
face = "right"
exterior = true

[[wall]]
id = "well"
start = ["20ft", "20ft"]
run = "S 9ft, E 4ft, N 9ft"
level = "ground"

[[wall]]
id = "s-well"
start = ["21ft", "20ft"]
run = "S 9ft, E 3ft, N 9ft"
level = "second"

[[room]]
id = "down"
name = "Stairs"
level = "ground"
use = "stairs"
at = ["22ft", "15ft"]

[[room]]
id = "up"
name = "Stairs"
level = "second"
use = "stairs"
at = ["22ft", "15ft"]

[[room]]
id = "loft"
name = "Loft"
level = "second"
at = ["5ft", "5ft"]

[[floor]]
id = "between"
under = "second"
over = "ground"
joists_run = "N"
joist = "sawn"
spacing = "16in"
first = "16in"
size = "2x10"

[[hatch]]
id = "h"
room = "loft"
at = ["5ft", "10ft"]
size = ["22in", "30in"]
`

// Each level is a network of its own: a check on one says nothing of the other,
// and a wrong wall of one is named on it alone.
func TestChecksByLevel(t *testing.T) {
	src, err := os.ReadFile("testdata/good/levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	// Diagonals of 40 ft by 24 ft, 46 ft 7-3/4 in, and of 26 ft by 24 ft, 35 ft
	// 4-5/8 in, to an eighth of an inch; the second is taped 2 ft longer.
	text := string(src) + "\n" + checkText("low", `wall = "south", end = "start"`, `wall = "north", end = "start"`, "46ft 7-3/4in") +
		checkText("high", `wall = "u-south", end = "start"`, `wall = "u-north", end = "start"`, "37ft 4-5/8in")
	h, list := LoadHouse("house.toml", []byte(text))
	if h == nil {
		t.Fatal(print(t, list))
	}
	if len(h.Checks) != 2 || h.Checks[0].ID != "high" || h.Checks[0].Agrees || !h.Checks[1].Agrees {
		t.Errorf("got checks %+v", h.Checks)
	}
	said := print(t, list)
	if strings.Count(said, "warning") != 1 || !strings.Contains(said, "check is 2ft") || strings.Contains(said, "wall south,") {
		t.Errorf("said %s", said)
	}
	for _, l := range newTapedNets(t, text) {
		if len(l.checks) > 1 || len(l.runs) > 2 {
			t.Errorf("a network of %d runs and %d checks", len(l.runs), len(l.checks))
		}
	}
}

// newTapedNets are the networks of all levels of a house.
func newTapedNets(t *testing.T, src string) []*tapedNet {
	t.Helper()
	root, list := source.Parse("house.toml", []byte(src))
	if root == nil {
		t.Fatal(print(t, list))
	}
	l := newHouseLoader("house.toml", list)
	l.header(root)
	l.levels(root)
	l.readRuns(root)
	for _, r := range l.runs {
		l.readStart(r)
	}
	l.setLevels()
	return l.tapedNets(l.readChecks(root))
}

// The main attic is the one under the first roof, wherever it is in the file,
// and names of spaces still mean what they say.
func TestMainAtticIsUnderTheFirstRoof(t *testing.T) {
	src, err := os.ReadFile("testdata/good/addition.toml")
	if err != nil {
		t.Fatal(err)
	}
	attics := strings.SplitAfterN(string(src), "[[attic]]\n", 3)
	small, roofs, _ := strings.Cut(attics[2], "[[roof]]\n")
	big, _, _ := strings.Cut(attics[1], "[[attic]]\n")
	h, list := LoadHouse("house.toml", []byte(attics[0]+small+"[[attic]]\n"+big+"[[roof]]\n"+roofs))
	if h == nil {
		t.Fatal(print(t, list))
	}
	if h.Attic.ID != "big" || h.Spaces[0] != h.Attic || h.Spaces[1].ID != "small" || h.Roof.ID != "main" || h.Hatches[0].Space != 0 || h.Hatches[1].Space != 1 {
		t.Errorf("main attic %s under roof %s, hatches %+v", h.Attic.ID, h.Roof.ID, h.Hatches)
	}
}
