package route

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// solidTower is the tower with walls of masonry on the ground floor and the upper one, as
// thick as those of studs are with their board.
func solidTower() string {
	solid := func(level string) string {
		s := storey(level, true, "board")
		s = strings.Replace(s, "cladding = \"1in\"\n", "frame = \"masonry\"\nthickness = \"5in\"\n", 1)
		return strings.Replace(s, "run = \"N 12ft\"\n", "run = \"N 12ft\"\nframe = \"masonry\"\nthickness = \"4-1/2in\"\n", 1)
	}
	return strings.Replace(towerHouse(), storey("ground", true, "board")+storey("upper", true, "board"), solid("ground")+solid("upper"), 1)
}

const solidPanel = `
[closet]
name = "Panel"
room = "ground-left"
wall = "ground-m"
side = "left"
at = "4ft"
height = "5ft"
ports = 24
[[drop]]
tag = "U"
kind = "wall plate"
wall = "upper-m"
side = "left"
at = "4ft"
height = "3ft"
`

// In a house of masonry no hidden way leads up. A channel does, if the job allows it, by
// hand: 36 in up from the panel to the ceiling at 96, 2 in out from the wall, 1/2 in of
// ceiling, 11-1/2 in through the hollow and the floor to 108, from there 4 in up and 2 in back
// to the skirting's height, and 32 to the box: 88 in. The wall is at 96 in, its face at
// 93-3/4; joists are at 84 and 108, so that 91-3/4 is between them.
func TestChannelFromStoreyToStorey(t *testing.T) {
	house := solidTower()
	if r := solved(t, jobIn(t, house, solidPanel)).Routes[0]; r.Blocked == nil {
		t.Fatalf("without channels: %v", kinds(&r))
	}
	res := solved(t, jobIn(t, house, solidPanel+"[allow]\nraceway = true\n"))
	r := &res.Routes[0]
	if r.Blocked != nil || !slices.Contains(kinds(r), FloorArc) || !slices.Contains(kinds(r), CeilingArc) {
		t.Fatalf("%v, %+v", kinds(r), r.Blocked)
	}
	if l := r.Lengths.Developed.Millimetres() / 25.4; math.Abs(l-88) > 1e-9 {
		t.Errorf("%g in of cable, want 88: %+v", l, r.Legs)
	}
	for i := range res.Holes {
		p := &res.Graph.Holes[res.Holes[i].Place]
		if x, y := p.At.X.Millimetres()/25.4, p.At.Y.Millimetres()/25.4; math.Abs(x-91.75) > 1e-9 || math.Abs(y-48) > 1e-9 {
			t.Errorf("%s through the %s is at %g, %g", res.Holes[i].ID, p.Kind, x, y)
		}
	}
	if len(res.Holes) != 2 {
		t.Errorf("%d holes", len(res.Holes))
	}
}

// Where studs stand in the walls a hidden way leads up, and no channel does.
func TestNoChannelWhereAHiddenWayLeads(t *testing.T) {
	res := solved(t, jobIn(t, towerHouse(), solidPanel+"[allow]\nraceway = true\n"))
	if got := kinds(&res.Routes[0]); slices.Contains(got, RacewayArc) || slices.Contains(got, FloorArc) {
		t.Errorf("the way is %v", got)
	}
}

// A door in the wall of the upper room is not beside a riser: it is moved.
func TestRiserBesideADoor(t *testing.T) {
	door := "[[opening]]\nid = \"d\"\nwall = \"upper-m\"\nkind = \"door\"\nat = \"2ft 2in\"\nwidth = \"32in\"\nhead = \"80in\"\n"
	panel := strings.Replace(solidPanel, "at = \"4ft\"\nheight = \"3ft\"", "at = \"8ft\"\nheight = \"3ft\"", 1)
	res := solved(t, jobIn(t, solidTower()+door, panel+"[allow]\nraceway = true\n"))
	r := &res.Routes[0]
	if r.Blocked != nil {
		t.Fatalf("%+v", r.Blocked)
	}
	for i := range res.Holes {
		p := &res.Graph.Holes[res.Holes[i].Place]
		if y := p.At.Y.Millimetres() / 25.4; p.Kind == FloorArc && y > 26-2 && y < 58+2 {
			t.Errorf("the floor is bored %g in along, in front of the door from 26 to 58", y)
		}
	}
}
