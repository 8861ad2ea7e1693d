package route

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// cottage is one storey over a basement, or on a slab if it has none, under an
// attic; rest is added to the house.
func cottage(basement bool, rest string) string {
	level := func(id, floor string) string {
		return fmt.Sprintf("[[level]]\nid = %q\nfloor = %q\nceiling = \"8ft\"\nplate_top = \"8ft 1/2in\"\n", id, floor)
	}
	text := "[house]\nname = \"Cottage\"\nunits = \"imperial\"\nsketch_error = \"0in\"\n" + level("ground", "0ft")
	if basement {
		text += level("basement", "-9ft") + storey("basement", false, "open") + `
[[floor]]
id = "lower"
under = "ground"
over = "basement"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
depth = "10-3/4in"
`
	}
	return text + storey("ground", true, "board") + `
[attic]
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
size = "2x6"
[roof]
kind = "gable"
gables = ["ground-w", "ground-e"]
pitch = "12/12"
overhang = "12in"
rafter = "2x6"
[[hatch]]
id = "hatch"
room = "ground-left"
at = ["4ft", "6ft"]
size = ["22in", "30in"]
` + rest
}

const ceilingDrop = `
[[drop]]
tag = "C"
kind = "ceiling point"
at = { room = "ground-right", east = "3ft", south = "4ft" }
shift = "8in"
count = 4
`

// From a basement into the attic a bay is bored at both ends and fished, though
// nothing opens into it.
func TestThroughBay(t *testing.T) {
	res := solved(t, jobIn(t, cottage(true, ""), basementPanel+ceilingDrop))
	want := []ArcKind{SoleArc, FishArc, PlateArc}
	got := kinds(&res.Routes[0])
	if res.Routes[0].Blocked != nil || !slices.ContainsFunc(got, func(k ArcKind) bool { return k == FishArc }) {
		t.Fatalf("the way is %v, %v", got, res.Routes[0].Blocked)
	}
	i := slices.Index(got, SoleArc)
	if i < 0 || i+3 > len(got) || !slices.Equal(got[i:i+3], want) {
		t.Errorf("the way is %v; want %v in it", got, want)
	}
	for _, h := range res.Holes {
		if p := &res.Graph.Holes[h.Place]; p.Kind != CeilingArc && !p.FromSpace {
			t.Errorf("the %s is not bored from its space", p.Kind)
		}
	}
}

// A chase is taken instead, where there is one, and is as full as it may be: 40 %
// of 2in by 1in is 0.8 square inches, and a cable of 6 mm takes 0.0438, which
// makes 18 cables and not 19.
func TestChase(t *testing.T) {
	const chase = `
[[chase]]
id = "stack"
from = ["6ft", "3ft"]
to = ["6ft 2in", "3ft 1in"]
levels = ["basement", "ground"]
rooms = ["basement-left"]
`
	for _, c := range []struct {
		cables int
		chased bool
	}{{18, true}, {19, false}} {
		drop := strings.Replace(ceilingDrop, "count = 4", fmt.Sprintf("count = %d", c.cables), 1) + "cable = \"own\"\n[[cable]]\nid = \"own\"\nlike = \"cat6\"\ndiameter = \"6mm\"\n"
		res := solved(t, jobIn(t, cottage(true, chase), basementPanel+drop))
		chased := slices.Contains(kinds(&res.Routes[0]), ChaseArc)
		if chased != c.chased {
			t.Errorf("%d cables: through the chase %v; the way is %v", c.cables, chased, kinds(&res.Routes[0]))
		}
		told := slices.ContainsFunc(res.Findings, func(f Finding) bool { return f.Rule == rule.ChaseSeal })
		if told != c.chased {
			t.Errorf("%d cables: told to close the chase at the floors: %v", c.cables, told)
		}
	}
}

// A hot chase, with a flue in it, is never used.
func TestHotChase(t *testing.T) {
	const chase = "[[chase]]\nid = \"flue\"\nfrom = [\"6ft\", \"3ft\"]\nto = [\"8ft 2in\", \"5ft\"]\nlevels = [\"basement\", \"ground\"]\nrooms = [\"basement-left\"]\nhot = true\n"
	house := strings.Replace(cottage(true, chase), "to = [\"8ft 2in\", \"5ft\"]", "to = [\"7ft\", \"4ft\"]", 1)
	res := solved(t, jobIn(t, house, basementPanel+ceilingDrop))
	if got := kinds(&res.Routes[0]); slices.Contains(got, ChaseArc) {
		t.Errorf("the way is %v", got)
	}
}

const groundPanel = `
[closet]
name = "Panel"
room = "ground-left"
wall = "ground-w"
at = "4ft"
height = "5ft"
ports = 24
`

// On a masonry wall a plate has a hidden way nowhere. A raceway leads there if the
// job allows one: 4 ft from the box to the ceiling and through it.
func TestRaceway(t *testing.T) {
	house := strings.Replace(cottage(false, ""), "start = { wall = \"ground-s\", at = \"8ft\" }\n", "start = { wall = \"ground-s\", at = \"8ft\" }\nframe = \"masonry\"\nthickness = \"4in\"\n", 1)
	const drop = "[[drop]]\ntag = \"M\"\nkind = \"wall plate\"\nwall = \"ground-m\"\nside = \"left\"\nat = \"4ft\"\nheight = \"4ft\"\n"
	res := solved(t, jobIn(t, house, groundPanel+drop))
	// One stop: what blocks it, and the one change.
	if b := res.Routes[0].Blocked; b == nil || len(b.Blocks) != 1 || !strings.Contains(b.Blocks[0].Found, "masonry") || !strings.Contains(b.Blocks[0].Change, "surface raceway") {
		t.Fatalf("without a raceway: %+v", b)
	}
	res = solved(t, jobIn(t, house, groundPanel+drop+"[allow]\nraceway = true\n"))
	got := kinds(&res.Routes[0])
	if !slices.Contains(got, RacewayArc) {
		t.Fatalf("with a raceway: %v, %+v", got, res.Routes[0].Blocked)
	}
	channel := 0.0
	for _, l := range res.Routes[0].Legs {
		if l.Kind == RacewayArc {
			channel += l.Length.Millimetres()
		}
	}
	if channel < 1219 || channel > 1219+700 { // up to the ceiling, or by the skirting
		t.Errorf("%.0f mm of channel", channel)
	}
}

// With no attic to get into, a raceway goes along the skirting, round the door and
// through the wall.
func TestRacewayAlongTheSkirting(t *testing.T) {
	house := strings.Replace(cottage(false, `
[[opening]]
id = "door"
wall = "ground-m"
kind = "door"
at = "5ft"
width = "3ft"
head = "82in"
`), "insulation", "insulation", 1)
	house = strings.Replace(house, "[roof]\nkind = \"gable\"\ngables = [\"ground-w\", \"ground-e\"]\npitch = \"12/12\"", "[roof]\nkind = \"flat\"", 1)
	i, j := strings.Index(house, "[[hatch]]"), strings.Index(house, "[[opening]]")
	house = house[:i] + house[j:]
	house = strings.Replace(house, "rafter = \"2x6\"\n", "", 1)
	const drop = "[[drop]]\ntag = \"E\"\nkind = \"wall plate\"\nwall = \"ground-e\"\nside = \"left\"\nat = \"10ft\"\n[allow]\nraceway = true\n"
	res := solved(t, jobIn(t, house, groundPanel+drop))
	got := kinds(&res.Routes[0])
	if res.Routes[0].Blocked != nil || !slices.Contains(got, RacewayArc) || !slices.Contains(got, WallArc) {
		t.Fatalf("the way is %v, %+v", got, res.Routes[0].Blocked)
	}
}

// Where the soffit opens along both spots, cable goes inside it, which needs no
// leave.
func TestInsideTheSoffit(t *testing.T) {
	house := cottage(false, "[[baffle]]\nid = \"b\"\nwall = \"ground-s\"\nat = \"9ft\"\nwidth = \"7ft\"\n[[soffit]]\nid = \"strip\"\nwall = \"ground-s\"\nat = \"2ft\"\nwidth = \"13ft\"\n")
	const spot = "[[drop]]\ntag = %q\nkind = \"soffit spot\"\ncable = \"cat6-outdoor\"\nwall = \"ground-s\"\nat = %q\nshift = \"12in\"\n"
	res := solved(t, jobIn(t, house, groundPanel+fmt.Sprintf(spot, "S1", "5ft")+fmt.Sprintf(spot, "S2", "12ft")))
	if r := byTag(res)["S2"]; r.Blocked != nil || !slices.Contains(kinds(r), InSoffitArc) {
		t.Fatalf("S2 behind the baffle: %v, %+v", kinds(r), r.Blocked)
	}
}

// Where a baffle closes the bays over one soffit spot, its cable runs outside
// under the eave to the hole of the other, if the job allows it, and is to be made
// for that.
func TestOutsideRun(t *testing.T) {
	house := cottage(false, "[[baffle]]\nid = \"b\"\nwall = \"ground-s\"\nat = \"9ft\"\nwidth = \"7ft\"\n")
	const drops = `
[[drop]]
tag = "S1"
kind = "soffit spot"
cable = "cat6-outdoor"
wall = "ground-s"
at = "5ft"
shift = "12in"
[[drop]]
tag = "S2"
kind = "soffit spot"
cable = "CABLE"
wall = "ground-s"
at = "12ft"
shift = "12in"
`
	outdoor := strings.Replace(drops, "CABLE", "cat6-outdoor", 1)
	if r := byTag(solved(t, jobIn(t, house, groundPanel+outdoor)))["S2"]; r.Blocked == nil {
		t.Fatalf("S2 behind the baffle has the way %v", kinds(r))
	}
	allowed := "[allow]\noutside = true\n"
	res := solved(t, jobIn(t, house, groundPanel+outdoor+allowed))
	if r := byTag(res)["S2"]; r.Blocked != nil || !slices.Contains(kinds(r), OutsideArc) {
		t.Fatalf("S2, outside allowed: %v, %+v", kinds(r), r.Blocked)
	}
	if slices.ContainsFunc(res.Findings, func(f Finding) bool { return f.Rule == rule.OutsideCable }) {
		t.Error("an outdoor cable is told not to be one")
	}
	res = solved(t, jobIn(t, house, groundPanel+strings.Replace(drops, "CABLE", "cat6", 1)+allowed))
	if !slices.ContainsFunc(res.Findings, func(f Finding) bool { return f.Rule == rule.OutsideCable && f.Where == "S2" }) {
		t.Error("a cable for indoors runs outside, and nothing is said")
	}
}

// The lengths outside by hand, a drip loop of 12 in, and then of 20 in, at every
// place where cable along the wall goes into something. The soffit is 6 ft 9 in over the floor, 12 in over the
// ceiling less 15 of the roof's slope and overhang; cable runs 3 in below it. It hangs
// 12 in out beyond the studs, of which siding takes one; holes are in the middle of
// what is left.
//
// From a panel on the west wall, 46-1/4 in from the corner: from 60 in up to 78, to
// the corner, 144 in along the south wall, and 3 + 5-1/2 in to the camera; loops at the
// wall and at the camera. From one on the wall inside, up and out of the hole of S1:
// 3 + 5-1/2, 78 along the wall, 3 + 5-1/2; loops at the hole and at the
// camera. S1 stands under its own hole then, and has none.
func TestDripLoops(t *testing.T) {
	house := cottage(false, "[[baffle]]\nid = \"b\"\nwall = \"ground-s\"\nat = \"9ft\"\nwidth = \"7ft\"\n")
	const spot = "[[drop]]\ntag = %q\nkind = \"soffit spot\"\ncable = \"cat6-outdoor\"\nwall = \"ground-s\"\nat = %q\nshift = \"12in\"\n"
	drops := fmt.Sprintf(spot, "S1", "5ft 6in") + fmt.Sprintf(spot, "S2", "12ft") + "[allow]\noutside = true\n"
	within := strings.Replace(groundPanel, "wall = \"ground-w\"\n", "wall = \"ground-m\"\nside = \"left\"\n", 1)
	for _, c := range []struct {
		panel string
		bare  float64 // in inches, without loops
	}{{groundPanel, 18 + 46.25 + 144 + 8.5}, {within, 8.5 + 78 + 8.5}} {
		for loop, limits := range map[float64]string{12: "", 20: "[limits]\ndrip-loop = \"20in\"\n"} {
			res := solved(t, jobIn(t, house, c.panel+drops+limits))
			r, outside := byTag(res)["S2"], 0.0
			for _, l := range r.Legs {
				if l.Kind == OutsideArc {
					outside += l.Length.Millimetres() / 25.4
				}
			}
			if want := c.bare + 2*loop; math.Abs(outside-want) > 1e-9 || res.Graph.DripLoops(r) != 2 {
				t.Errorf("loops of %g in: %g in outside, %d loops; want %g, 2: %+v", loop, outside, res.Graph.DripLoops(r), want, r.Legs)
			}
			if n := res.Graph.DripLoops(byTag(res)["S1"]); c.panel == within && n != 0 {
				t.Errorf("S1 has %d drip loops under its own hole", n)
			}
		}
	}
}

// Over a raised heel the soffit may be higher than the plates: the cable then goes
// down from its hole to the attic's floor, and is no worse off for it.
func TestSoffitOverThePlates(t *testing.T) {
	house := strings.Replace(cottage(false, ""), "pitch = \"12/12\"", "pitch = \"3/12\"", 1)
	for _, heel := range []string{"9in", "16in"} {
		raised := strings.Replace(house, "rafter = \"2x6\"", "heel = \""+heel+"\"\nchord = \"2x4\"", 1)
		const drop = "[[drop]]\ntag = \"S\"\nkind = \"soffit spot\"\ncable = \"cat6-outdoor\"\nwall = \"ground-s\"\nat = \"5ft\"\nshift = \"12in\"\n"
		raised = strings.Replace(raised, "run = \"E 16ft, N 12ft, W 16ft, S 12ft\"", "run = \"E 16ft, N 40ft, W 16ft, S 40ft\"", 1)
		raised = strings.Replace(raised, "run = \"N 12ft\"", "run = \"N 40ft\"", 1)
		raised = strings.Replace(raised, "at = [\"4ft\", \"6ft\"]", "at = [\"4ft\", \"20ft\"]", 1)
		if r := solved(t, jobIn(t, raised, groundPanel+drop)).Routes[0]; r.Blocked != nil {
			t.Errorf("heel %s: %+v", heel, r.Blocked.Blocks)
		}
	}
}

// A house without a floor between two storeys earns a warning, and a panel in the
// ceiling there an answer: nothing is known of what is over it.
func TestCeilingPanelUnderNothingKnown(t *testing.T) {
	house := towerHouse()
	i, j := strings.Index(house, "[[floor]]\nid = \"between\""), strings.Index(house, "[attic]")
	const job = `
[closet]
name = "Panel"
room = "ground-left"
ceiling = ["3ft", "3ft"]
height = "5ft"
ports = 12
[[drop]]
tag = "A"
kind = "wall plate"
wall = "ground-m"
side = "left"
at = "4ft"
shift = "8in"
`
	r := solved(t, jobIn(t, house[:i]+house[j:], job)).Routes[0]
	if r.Blocked == nil || !strings.Contains(r.Blocked.Blocks[0].Found, "over the ceiling of the closet") {
		t.Errorf("A is told %+v", r.Blocked)
	}
}

// Under open joists there is no board: cable goes up to the joists, which lie on
// plates that may be higher than the ceiling.
func TestOpenJoistsOverTheCeiling(t *testing.T) {
	const drop = "[[drop]]\ntag = \"C\"\nkind = \"ceiling point\"\nat = { room = \"basement-left\", west = \"8ft\", south = \"3ft\" }\nshift = \"8in\"\n"
	var lengths []measure.Length
	for _, plates := range []string{"7ft", "7ft 2in"} {
		house := strings.Replace(towerHouse(), "ceiling = \"7ft\"\nplate_top = \"7ft\"", "ceiling = \"7ft\"\nplate_top = \""+plates+"\"", 1)
		house = strings.Replace(house, "depth = \"11-1/4in\"", map[string]string{"7ft": "depth = \"11-1/4in\"", "7ft 2in": "depth = \"9-1/4in\""}[plates], 1)
		lengths = append(lengths, solved(t, jobIn(t, house, basementPanel+drop)).Routes[0].Lengths.Developed)
	}
	if d := lengths[1] - lengths[0]; d != 4*measure.Inch {
		t.Errorf("2 in higher joists take %v more cable from the panel and down to the point; want 4in", d)
	}
}

// A brick front and wood elsewhere, by hand, from the panel on the west wall to the
// camera on the south wall, as in TestDripLoops: 18 + 12 + 46-1/4 = 76-1/4 in along wood,
// and 144 + 20-1/2 = 164-1/2 in along brick. With brick on the west wall as well all is
// along brick, and so is the hole.
func TestCladdingOutside(t *testing.T) {
	house := cottage(false, "[[baffle]]\nid = \"b\"\nwall = \"ground-s\"\nat = \"9ft\"\nwidth = \"7ft\"\n")
	const drop = "[[drop]]\ntag = \"S2\"\nkind = \"soffit spot\"\ncable = \"cat6-outdoor\"\nwall = \"ground-s\"\nat = \"12ft\"\nshift = \"12in\"\n[allow]\noutside = true\n"
	const clad = "[[cladding]]\nwall = %q\nkind = %q\n"
	for _, c := range []struct {
		more       string
		wood, hard float64 // in inches
		bore       price.ID
	}{
		{"", 240.75, 0, price.BoreWall},
		{fmt.Sprintf(clad, "ground-s", "vinyl"), 240.75, 0, price.BoreWall},
		{fmt.Sprintf(clad, "ground-s", "brick"), 76.25, 164.5, price.BoreWall},
		{fmt.Sprintf(clad, "ground-s", "brick") + fmt.Sprintf(clad, "ground-w", "stucco"), 0, 240.75, price.BoreMasonry},
	} {
		res := solved(t, jobIn(t, house+c.more, groundPanel+drop))
		var along [2]float64
		hole := price.ID("")
		for _, a := range res.Routes[0].Arcs {
			arc := &res.Graph.Arcs[a]
			if arc.Kind == OutsideArc {
				k := 0
				if slices.ContainsFunc(arc.Charges, func(c Charge) bool { return c.Term == price.OutsideAnchors }) {
					k = 1
				}
				along[k] += arc.Length.Millimetres() / 25.4
			}
			for _, x := range arc.Charges {
				if arc.Kind == WallArc && slices.Contains(price.Bores, x.Term) {
					hole = x.Term
				}
			}
		}
		if math.Abs(along[0]-c.wood) > 1e-9 || math.Abs(along[1]-c.hard) > 1e-9 || hole != c.bore {
			t.Errorf("%q: %g in along wood, %g along brick, a hole at the price of %s; want %+v", c.more, along[0], along[1], hole, c)
		}
	}
}
