package route

import (
	"slices"
	"testing"

	"topplate/plan/measure"
)

// lodge is a house of one and a half storeys: rooms under the roof, with side
// attics behind their walls and a small attic over their ceiling. The roof stands
// on the ground floor's plates and rises 16 in 12.
const lodge = `
[house]
name = "Lodge"
units = "imperial"
sketch_error = "0in"
[[level]]
id = "ground"
ceiling = "8ft"
plate_top = "8ft"
[[level]]
id = "upper"
floor = "9ft"
ceiling = "6ft"
plate_top = "6ft"
[[wall]]
id = "ground"
level = "ground"
start = ["0ft", "0ft"]
run = "E 16ft, N 24ft, W 16ft, S 24ft"
names = ["ground-s", "ground-e", "ground-n", "ground-w"]
closes = true
face = "right"
exterior = true
[[wall]]
id = "ground-m"
level = "ground"
start = { wall = "ground-s", at = "8ft" }
run = "N 24ft"
[[wall]]
id = "upper"
level = "upper"
start = ["0ft", "7ft"]
run = "E 16ft, N 10ft, W 16ft, S 10ft"
names = ["upper-s", "upper-e", "upper-n", "upper-w"]
closes = true
face = "right"
exterior = true
[[room]]
id = "left"
level = "ground"
name = "Left"
at = ["3ft", "3ft"]
[[room]]
id = "right"
level = "ground"
name = "Right"
at = ["12ft", "3ft"]
[[room]]
id = "loft"
level = "upper"
name = "Loft"
at = ["3ft", "12ft"]
[[floor]]
id = "between"
under = "upper"
over = "ground"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
depth = "11-1/4in"
[[attic]]
id = "small"
level = "upper"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
size = "2x6"
[[attic]]
id = "side"
level = "ground"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
size = "2x6"
[roof]
level = "ground"
kind = "gable"
gables = ["ground-w", "ground-e"]
pitch = "16/12"
overhang = "12in"
rafter = "2x6"
[[hatch]]
id = "up"
space = "small"
room = "loft"
at = ["6ft", "12ft"]
size = ["22in", "30in"]
[[hatch]]
id = "south-door"
space = "side"
room = "loft"
at = ["4ft", "5ft"]
size = ["22in", "30in"]
[[hatch]]
id = "north-door"
space = "side"
room = "loft"
at = ["4ft", "19ft"]
size = ["22in", "30in"]
`

const lodgePanel = `
[closet]
name = "Panel"
room = "left"
wall = "ground-m"
at = "20ft"
height = "5ft"
ports = 24
`

func TestOutOfTheBackOfAKneeWall(t *testing.T) {
	const drop = "[[drop]]\ntag = \"K\"\nkind = \"wall plate\"\nwall = \"upper-s\"\nside = \"left\"\nat = \"10ft\"\nheight = \"16in\"\nshift = \"8in\"\n"
	res := solved(t, jobIn(t, lodge, lodgePanel+drop))
	r := &res.Routes[0]
	if r.Blocked != nil || !slices.Contains(kinds(r), BackArc) {
		t.Fatalf("the way is %v, %+v", kinds(r), r.Blocked)
	}
	for _, l := range r.Legs {
		if l.Kind == BackArc && res.Job.House.Spaces[l.Space].ID != "side" {
			t.Errorf("it comes out into %s", res.Job.House.Spaces[l.Space].ID)
		}
	}
}

// A ceiling point under the upper floor is reached by rods from the side attic,
// along its joist bay.
func TestFromTheSideAtticIntoTheFloor(t *testing.T) {
	const drop = "[[drop]]\ntag = \"P\"\nkind = \"ceiling point\"\nat = [\"12ft\", \"11ft\"]\nlevel = \"ground\"\nshift = \"8in\"\n"
	res := solved(t, jobIn(t, lodge, lodgePanel+drop))
	r := &res.Routes[0]
	got := kinds(r)
	if r.Blocked != nil || !slices.Contains(got, PassArc) || !slices.Contains(got, RodArc) {
		t.Fatalf("the way is %v, %+v", got, r.Blocked)
	}
	// The bay is bored into under the wall that stands on the floor's edge, in the middle of
	// the joists' depth.
	i := slices.IndexFunc(res.Holes, func(h Hole) bool { return res.Graph.Holes[h.Place].Kind == PassArc })
	if i < 0 {
		t.Fatal("no hole under the wall")
	}
	p := &res.Graph.Holes[res.Holes[i].Place]
	floor := res.Job.House.Spaces[p.Beyond]
	if !p.UnderWall(res.Job.House) || res.Job.House.Walls[p.Wall].ID != "upper-s" || p.At.Z != floor.Base+floor.Depth/2 || res.Job.House.Spaces[p.Space].ID != "side" {
		t.Errorf("%+v", p)
	}
	if slices.ContainsFunc(r.Legs, func(l Leg) bool { return l.Space >= 0 && res.Job.House.Spaces[l.Space].ID == "small" }) {
		t.Errorf("it goes by the small attic: %v", got)
	}
}

// From the small attic rods go down the rafter bays into the side attic. Straight
// down from ceiling to ceiling it is 7 ft, and as far across as the roof falls in
// that, 16 in 12.
func TestDownTheSlope(t *testing.T) {
	const drop = "[[drop]]\ntag = \"U\"\nkind = \"ceiling point\"\nat = [\"12ft\", \"12ft\"]\nlevel = \"upper\"\nshift = \"8in\"\n"
	res := solved(t, jobIn(t, lodge, lodgePanel+drop))
	r := &res.Routes[0]
	i := slices.IndexFunc(r.Legs, func(l Leg) bool { return l.Kind == RodArc })
	if r.Blocked != nil || i < 0 {
		t.Fatalf("the way is %v, %+v", kinds(r), r.Blocked)
	}
	if rod := &r.Legs[i]; max(rod.From.Z, rod.To.Z)-min(rod.From.Z, rod.To.Z) != 7*measure.Foot {
		t.Errorf("the rods go from %v to %v", rod.From, rod.To)
	}
}
