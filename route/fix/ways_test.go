package fix

import (
	"math"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// Through the outer wall behind the desk's box, 28 in from the study's corner
// and 14 in up, 5 in to the outside; and through the inner one, 4-1/2 in, at the
// height of the channel. The desk's box stays the desk's where the camera's cable
// comes through it.
func TestThroughWholeWalls(t *testing.T) {
	holes := Holes(starter(t, "[tools]", "[allow]\noutside = true\nraceway = true\n\n[tools]", `pitch = "8/12"`, `pitch = "1/12"`))
	west, middle := find(t, holes, route.WallArc, "west"), find(t, holes, route.WallArc, "middle")
	const below = "in Study, facing wall west: 2ft 4in from the left corner, 1ft 2in above the floor, straight behind the box of D1"
	if west.Member != "wall west, from face to face" || west.Below.Text != below || west.Space != -1 || west.Above.Reached || len(west.Above.Text) != 1 {
		t.Errorf("%q, %q, %+v", west.Member, west.Below.Text, west.Above)
	}
	if b := west.Bores[0].Bit; b.Way != FromRoom || b.Need != in(40) || !strings.Contains(b.Why, "falling outwards") {
		t.Errorf("west: %+v", b)
	}
	if b := middle.Bores[0].Bit; b.Way != FromRoom || b.Need != in(36) || strings.Contains(b.Why, "outwards") {
		t.Errorf("middle: %+v", b)
	}
	if s := west.Seal; !s.Weather || !s.Air || s.Fire || !slices.Equal(s.Rules, []rule.ID{rule.OutdoorEntry}) {
		t.Errorf("west: %+v", s)
	}
	if s := middle.Seal; s.Weather || !s.Fire || !slices.Equal(s.Rules, []rule.ID{rule.SealHoles}) {
		t.Errorf("middle: %+v", s)
	}
}

// A 2x10 joist is bored by up to a third of its 9-1/4 in, 3.08 in, and keeps 2
// in (IRC R502.8.1, as in the table of values); 1/2 in in its middle leaves
// 4-3/8. It is 1-1/2 in thick. The kitchen's ceiling is 5 in from the outer face
// of the house, so that the joist at 16 in is 11 in from the wall.
func TestThroughJoists(t *testing.T) {
	holes := Holes(levels(t, "[rates]", "[allow]\npatching = true\n\n[rates]", "wall = \"u-middle\"\nat = \"10ft\"\n", "wall = \"u-west\"\nat = \"10ft\"\n"))
	n := 0
	for i := range holes {
		h := &holes[i]
		if h.Kind != route.JoistArc || h.At.X != in(16*8) {
			continue
		}
		n++
		if h.Member != "joist over the ceiling of Kitchen" || !strings.HasPrefix(h.Below.Text, "in a joist over the ceiling of Kitchen: 11in from wall west, ") {
			t.Errorf("%q: %q", h.Member, h.Below.Text)
		}
		a := h.Allowed
		if a.Largest != 37*measure.Inch/12 || a.Edge != in(16) || a.Left != in(35) || !slices.Equal(a.Rules, []rule.ID{rule.JoistBored}) || h.Shield || h.Tie {
			t.Errorf("allowed %+v", a)
		}
		if b := h.Bores[0].Bit; b.Way != FromBay || b.Need != in(12) {
			t.Errorf("bit %+v", b)
		}
		if h.Above.Reached || h.Above.Fix != nil {
			t.Errorf("above %+v", h.Above)
		}
	}
	if n != 1 {
		t.Errorf("%d holes in the joist", n)
	}
}

// From the cellar into the crawl space a cable goes through the foundation, 8
// in of masonry from X = 19 ft 5 in to 20 ft 1 in, 25 in from the zero of the
// sketch and 16 from the face of f-south, which is at Y = 9 in. The crawl space's
// joists begin 10 in under the ground floor, -10 in; the hole is 3 in below them and
// 89 in over the cellar's floor at -8 ft 6 in. One bores it from the cellar, where
// one stands. From the north-west corner of the crawl space's hatch, (441, 159), it is
// 200 in west and 134 south, past the joists from 432 to 256, and 15 in.
func TestThroughTheFoundation(t *testing.T) {
	res := levels(t, "room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", "room = \"living\"\nwall = \"south\"\nat = \"8ft\"")
	h := find(t, Holes(res), route.PassArc, "f-east")
	b := h.Bores[0].Bit
	if h.Member != "wall f-east between Cellar and the crawl space" || b.Need != in(64) || b.Way != FromUnder || !strings.Contains(b.Why, "masonry") {
		t.Errorf("%q: %+v", h.Member, b)
	}
	if want := (geom.Point3{X: in(237 * 8), Y: in(25 * 8), Z: -in(13 * 8)}); h.At != want || !h.Seal.Fire || !h.Seal.Air {
		t.Errorf("at %v, want %v; %+v", h.At, want, h.Seal)
	}
	if got, want := h.Below.Text, "in Cellar, facing wall f-east: 1ft 4in from the right corner, 7ft 5in above the floor"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if a := h.Above; !a.Reached || a.Method != ByFaces || len(a.Faces) != 1 || a.Faces[0].Length != in(16*8) || a.At != (geom.Point{X: in(233 * 8), Y: in(25 * 8)}) {
		t.Errorf("from the cellar: %+v", a)
	}
	a := h.Far
	if !a.Reached || a.At != (geom.Point{X: in(241 * 8), Y: in(25 * 8)}) || a.Clear != in(26*8) || a.Zone != route.Crawl {
		t.Errorf("from the crawl space: %+v", a)
	}
	if j := a.Joists; j == nil || j.Mark.ID != "crawl-door north-west" || j.Joists != 12 || j.Offset != in(15*8) || j.Along != in(134*8) || j.AlongHeading != plan.South {
		t.Errorf("joists %+v", j)
	}
	if d := a.Fix.Joist.Distance.Exact.Millimetres() / 25.4; math.Abs(d-math.Hypot(200, 134)) > 1e-6 {
		t.Errorf("%v in from the corner, want %v", d, math.Hypot(200, 134))
	}
	for text, want := range map[string][]string{
		strings.Join(h.Above.Text, "\n"): {"on the face of wall f-east", "1ft 4in from the face of wall f-south", "look from the other side"},
		strings.Join(a.Text, "\n"):       {"in the crawl space, from hatch crawl-door", "its middle 3in below the joists' undersides", "before it is bored from Cellar"},
	} {
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%q is not in %q", w, text)
			}
		}
	}
	for i, s := range res.Job.House.Spaces {
		here, found := h.In(i)
		if want := s.ID == "crawl" || s.ID == "over-cellar"; found != want || found && (here.Space != i || here.Above.Space != i || flat(here.At) != here.Above.At) {
			t.Errorf("in %s: %v, %+v", s.ID, found, here.Above)
		}
	}
}

// Under a flat roof no hand gets to a plate: 36-5/8 in from the panel, at 60 in,
// to the top of the plate at 96-5/8 in.
func TestFlatRoof(t *testing.T) {
	res := starter(t, "kind = \"hip\"\npitch = \"8/12\"\noverhang = \"16in\"\nrafter = \"2x6\"", "kind = \"flat\"\noverhang = \"16in\"", `insulation = "8in"`, `insulation = "5in"`,
		"[[hatch]]\nid = \"hatch\"\nroom = \"hall\"\nat = [\"19ft 4in\", \"8ft\"]\nsize = [\"30in\", \"30in\"]\n", "",
		"at = { room = \"study\", west = \"6ft 8in\", south = \"7ft\" }", "at = { room = \"hall\", west = \"2-1/2in\", south = \"3ft\" }")
	h := find(t, Holes(res), route.PlateArc, "middle")
	text := strings.Join(h.Above.Text, "\n")
	if b := h.Bores[0].Bit; b.Way != FromBox || b.Need != in(36*8+5) || h.Above.Reached || h.Above.InLine != -1 || !h.Seal.Air ||
		!strings.Contains(text, "closed between the ceiling and the roof") || !strings.Contains(text, "the roof's deck is 5-1/2in above it") {
		t.Errorf("%+v: %q", b, text)
	}
	c := find(t, Holes(res), route.CeilingArc, "Hall")
	if got, want := c.Below.Text, "in the ceiling of Hall: 2-1/2in from wall middle, 3ft from wall south"; got != want || c.Above.Reached {
		t.Errorf("%q, want %q: %+v", got, want, c.Above)
	}
}

// Marks of other spaces are not taped from, nor what hides a pipe from below.
func TestMarksBySpace(t *testing.T) {
	for _, tt := range []struct {
		space, seen string
		want        bool
	}{{"over-cellar", "both", true}, {"over-cellar", "below", true}, {"over-cellar", "above", false}, {"between", "both", false}, {"high", "both", false}} {
		f := newFixer(levels(t, "south = \"3ft\" }\nseen = \"both\"", "south = \"3ft\" }\nspace = \""+tt.space+"\"\nseen = \""+tt.seen+"\""))
		space := slices.IndexFunc(f.house.Spaces, func(s *plan.Space) bool { return s.ID == "over-cellar" })
		marks := f.site(space).marks
		if got := slices.ContainsFunc(marks, func(s sight) bool { return s.name == "pipe pipe" }); got != tt.want {
			t.Errorf("%+v: %v", tt, got)
		}
		// One at the place of a hole, but in the floor over it, is none either.
		f = newFixer(levels(t, "at = { room = \"kitchen\", west = \"2ft\", south = \"3ft\" }", "at = [\"14ft\", \"5ft 1/2in\"]\nspace = \"between\""))
		if slices.ContainsFunc(f.site(space).marks, func(s sight) bool { return s.name == "pipe pipe" }) {
			t.Errorf("a mark of the floor over the kitchen is taped from in the cellar")
		}
		// Its four corners are touched from the cellar.
		for _, p := range []geom.Point{{X: in(72), Y: in(72)}, {X: in(233 * 8), Y: in(72)}, {X: in(233 * 8), Y: in(279 * 8)}, {X: in(72), Y: in(279 * 8)}} {
			if !slices.ContainsFunc(marks, func(s sight) bool { return s.mark.At == p }) {
				t.Errorf("no mark at %v", p)
			}
		}
	}
}

// A wall across the cellar is in the way of a tape: only what is in the same
// room is taped from.
func TestTapesStayInTheRoom(t *testing.T) {
	res := levels(t, "[[room]]\nid = \"cellar\"", "[[wall]]\nid = \"store-wall\"\nstart = { wall = \"f-south\", at = \"9ft\" }\nrun = \"N 23ft\"\n\n[[room]]\nid = \"store\"\nname = \"Store\"\nlevel = \"basement\"\nceiling = \"open\"\nat = [\"3ft\", \"10ft\"]\n\n[[room]]\nid = \"cellar\"",
		"room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", "room = \"pantry\"\nwall = \"split\"\nat = \"2ft\"")
	h := find(t, Holes(res), route.SoleArc, "wall middle")
	checkHole(t, "two rooms", res, h)
	// Of the eight corners four are behind the wall.
	if n := len(h.Above.Fix.Unused); n != 4 {
		t.Errorf("%d marks are not taped from, want 4", n)
	}
}

// The outer plate over the foundation, at X = 2-3/4, is got at from the cellar
// by reaching in between the joists over its wall: with 9-1/2 in of joists there,
// no tape along their undersides, and the joists counted.
func TestOverTheFoundation(t *testing.T) {
	res := levels(t, "room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", "room = \"kitchen\"\nwall = \"west\"\nat = \"5ft\"")
	h := find(t, Holes(res), route.SoleArc, "wall west")
	checkHole(t, "over the foundation", res, h)
	a := h.Above
	text := strings.Join(a.Text, "\n")
	if h.At.X != in(22) || !a.Reached || a.Room < 0 || res.Job.House.Rooms[a.Room].ID != "cellar" || a.Clear != in(76) || a.Faces != nil || a.Joists == nil {
		t.Errorf("at %v, %+v", h.At, a)
	}
	for _, want := range []string{"in Cellar, reaching in between the joists over its wall", "9-1/2in clear between the joists", "rim joist"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
}
