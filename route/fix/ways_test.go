package fix

import (
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
// in of masonry.
func TestThroughTheFoundation(t *testing.T) {
	res := levels(t, "room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", "room = \"living\"\nwall = \"south\"\nat = \"8ft\"")
	h := find(t, Holes(res), route.PassArc, "f-east")
	b := h.Bores[0].Bit
	if h.Member != "wall f-east between two spaces" || b.Need != in(64) || b.Way != FromUnder && b.Way != FromCrawl || !strings.Contains(b.Why, "masonry") {
		t.Errorf("%q: %+v", h.Member, b)
	}
	if s := h.Seal; !s.Fire || !s.Air || h.Above.Reached || !strings.Contains(h.Above.Why, "either side") {
		t.Errorf("%+v, %+v", s, h.Above)
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
