package plan

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// TestConduits reads conduits in every form. East is wall 1, and its left is
// the living room, room 1. The diameters in inches are those of NEC Chapter 9,
// Table 4; cat6 is 6.0 mm and cat6a 8.6 mm thick.
func TestConduits(t *testing.T) {
	thousandths := func(n measure.Length) measure.Length { return n * inch / 1000 }
	for _, tt := range []struct {
		keys string
		want Conduit
	}{
		{"at = \"6ft\"\nroom = \"living\"\nkind = \"EMT\"\ntrade = \"3/4\"", Conduit{At: 6 * foot, Kind: "EMT", Trade: "3/4", Inside: thousandths(824)}},
		{"at = \"6ft\"\nside = \"left\"\nkind = \"ENT\"\ntrade = \"1/2\"", Conduit{At: 6 * foot, Kind: "ENT", Trade: "1/2", Inside: thousandths(560)}},
		{"at = \"6ft\"\nfrom = \"end\"\nside = \"left\"\nkind = \"PVC-40\"\ntrade = \"1-1/4\"", Conduit{At: 14 * foot, Kind: "PVC-40", Trade: "1-1/4", Inside: thousandths(1360)}},
		{"at = \"6ft\"\nside = \"left\"\ninside = \"20mm\"", Conduit{At: 6 * foot, Inside: 20 * mm}},
		{
			"at = \"6ft\"\nside = \"left\"\ninside = \"1in\"\nholds = [{cable = \"cat6\", count = 2}, {cable = \"cat6a\"}, {diameter = \"1/4in\"}]",
			Conduit{At: 6 * foot, Inside: 1 * inch, Holds: []measure.Length{6 * mm, 6 * mm, 86 * mm / 10, inch / 4}},
		},
		{"at = \"6ft\"\nside = \"left\"\ninside = \"1in\"\nholds = []", Conduit{At: 6 * foot, Inside: 1 * inch}},
	} {
		src := complete(t, "[[conduit]]\nid = \"C\"\nwall = \"east\"\nheight = \"12in\"\n"+tt.keys+"\n", "testdata/base_house.toml")
		h, list := LoadHouse("house.toml", []byte(src))
		if got := print(t, list); h == nil || got != "" {
			t.Fatalf("%s: %s", tt.keys, got)
		}
		tt.want.ID, tt.want.Wall, tt.want.Room, tt.want.Height = "C", 1, 1, 12*inch
		if diff := cmp.Diff([]Conduit{tt.want}, h.Conduits, cmpopts.IgnoreTypes(diag.Pos{})); diff != "" {
			t.Errorf("%s: %s", tt.keys, diff)
		}
		if h.Conduits[0].Pos.Line != 1 {
			t.Errorf("it is at %v", h.Conduits[0].Pos)
		}
	}
}

// What is near a conduit and not in its way: an opening beside it or under it,
// a device under its box or on the other side, another conduit beside it
// or in another wall.
func TestConduitHasNeighbours(t *testing.T) {
	src := complete(t, `[[opening]]
id = "through"
wall = "middle"
kind = "passage"
at = "5ft"
width = "3ft"
head = "82in"

[[device]]
id = "R1"
wall = "middle"
at = "12ft"
height = "12in"
kind = "receptacle"
side = "left"

[[device]]
id = "R2"
wall = "middle"
at = "12ft"
height = "6ft"
kind = "switch"
side = "right"

[[conduit]]
id = "beside"
wall = "middle"
at = "4ft 11-1/2in"
height = "12in"
room = "bed"
inside = "1in"

[[conduit]]
id = "over"
wall = "middle"
at = "6ft"
height = "82in"
room = "bed"
inside = "1in"

[[conduit]]
id = "above"
wall = "middle"
at = "12ft"
height = "24in"
room = "bed"
inside = "1in"

[[conduit]]
id = "next"
wall = "middle"
at = "12ft 1in"
height = "24in"
room = "bed"
inside = "1in"

[[conduit]]
id = "elsewhere"
wall = "west"
at = "12ft"
height = "24in"
room = "bed"
inside = "1in"
`, "testdata/base_house.toml")
	h, list := LoadHouse("house.toml", []byte(src))
	if got := print(t, list); h == nil || got != "" || len(h.Conduits) != 5 {
		t.Fatal(got)
	}
}
