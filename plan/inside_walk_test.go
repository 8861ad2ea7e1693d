package plan

import (
	"fmt"
	"strings"
	"testing"

	"topplate/plan/geom"
)

const walkHatch = "\n[[hatch]]\nid = \"hatch\"\nroom = \"living\"\nat = { room = \"living\", west = \"3ft\", south = \"5ft\" }\nsize = [\"22in\", \"30in\"]\n"

// TestInsideWalk holds rooms that somebody walked round against coordinates that
// were added by hand. Inner walls are 4-1/2in thick.
//
// The living room is an L: 20ft wide in the south up to 8ft, from there up to 14ft
// only 12ft wide. The bedroom is in its notch: 4-1/2in east of 12ft and north of
// 8ft, 7ft 7-1/2in by 5ft 7-1/2in, so that the house is a rectangle of 20ft by
// 14ft. The bath is a T in the east, from 20ft 4-1/2in: 6ft wide, with an alcove
// of 2ft in its east wall from 4ft to 10ft.
func TestInsideWalk(t *testing.T) {
	const living = `
[[inside]]
id = "living"
name = "Living room"
walk = "%s"
at = [%s]
`
	const others = `
[[inside]]
id = "bed"
name = "Bedroom"
width = "7ft 7-1/2in"
depth = "5ft 7-1/2in"
east_of = "living"
line = "north"

[[inside]]
id = "bath"
name = "Bathroom"
walk = "N 14ft, E 6ft, S 4ft, E 2ft, S 6ft, W 2ft, S 4ft, W 6ft"
east_of = "living"
use = "bath"
`
	for _, tt := range []struct{ walk, at string }{
		{"E 20ft, N 8ft, W 8ft, N 6ft, W 12ft, S 14ft", `"0ft", "0ft"`},
		// The other way round, from another corner, in pieces.
		{"S 3ft, S 3ft, E 8ft, S 8ft, W 20ft, N 14ft, E 12ft", `"12ft", "14ft"`},
	} {
		h := houseOf(t, "# WITHOUT wall room hatch\n"+fmt.Sprintf(living, tt.walk, tt.at)+others+walkHatch)
		for id, want := range map[string]geom.Rect{
			"south.1":      box(t, "-5in", "-5in", "26ft 9-1/2in", "0ft"),
			"west":         box(t, "-5in", "-5in", "0ft", "14ft 5in"),
			"north.1":      box(t, "-5in", "14ft", "26ft 9-1/2in", "14ft 5in"),
			"east.3":       box(t, "28ft 4-1/2in", "3ft 7in", "28ft 9-1/2in", "10ft 5in"),
			"bed-living.1": box(t, "12ft", "8ft", "12ft 4-1/2in", "14ft"),
			"bed-living.2": box(t, "12ft", "8ft", "20ft", "8ft 4-1/2in"),
			"bath-living":  box(t, "20ft", "0ft", "20ft 4-1/2in", "8ft 2-1/4in"),
			"bath-bed":     box(t, "20ft", "8ft 2-1/4in", "20ft 4-1/2in", "14ft"),
		} {
			if w := wall(t, h, id); w != nil && w.Body != want {
				t.Errorf("%s is %v, want %v", id, w.Body, want)
			}
		}
		for i, want := range []geom.Polygon{
			{{}, {X: 20 * foot}, {X: 20 * foot, Y: 8 * foot}, {X: 12 * foot, Y: 8 * foot}, {X: 12 * foot, Y: 14 * foot}, {Y: 14 * foot}},
			nil,
			{
				{X: 20*foot + thickInside},
				{X: 26*foot + thickInside},
				{X: 26*foot + thickInside, Y: 4 * foot},
				{X: 28*foot + thickInside, Y: 4 * foot},
				{X: 28*foot + thickInside, Y: 10 * foot},
				{X: 26*foot + thickInside, Y: 10 * foot},
				{X: 26*foot + thickInside, Y: 14 * foot},
				{X: 20*foot + thickInside, Y: 14 * foot},
			},
		} {
			if got := h.Rooms[i].Outline; want != nil && fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s is %v, want %v", h.Rooms[i].ID, got, want)
			}
		}
		if got, want := h.Rooms[1].Bounds, box(t, "12ft 4-1/2in", "8ft 4-1/2in", "20ft", "14ft"); got != want {
			t.Errorf("the bedroom is %v, want %v", got, want)
		}
	}
}

// A walk that misses its start by less than closing is spread over its legs, as
// that of a run is: 1in over two legs of 12ft.
func TestInsideWalkMisses(t *testing.T) {
	fragment := "# WITHOUT wall room hatch\n[[inside]]\nid = \"living\"\nname = \"Living room\"\nwalk = \"E 12ft, N 10ft, W 11ft 11in, S 10ft\"\nat = [\"0ft\", \"0ft\"]\n" + walkHatch
	h, list := LoadHouse("house.toml", []byte(complete(t, fragment, "testdata/base_house.toml")))
	if h == nil {
		t.Fatal(print(t, list))
	}
	// 1in of 23ft 11in in proportion to 12ft.
	width := 12*foot - inch*12*12/(23*12+11)
	if got := h.Rooms[0].Bounds; got.Height() != 10*foot || got.Width() < width-2 || got.Width() > width+2 {
		t.Errorf("the room is %v by %v, want %v", got.Width(), got.Height(), width)
	}
	if said := print(t, list); !strings.Contains(said, "house.toml:5:8: warning: inside[0].walk: the walk ends 1in east of its start, 1in in 43ft 11in (1:527), which is spread over its legs") {
		t.Errorf("said %s", said)
	}
}

// However long a walk is, it is told in a moment.
func TestInsideWalkTooLong(t *testing.T) {
	for _, tt := range []struct {
		legs int
		want string
	}{
		{2_500, "house.toml:5:8: error: inside[0].walk: found a walk of 10000 legs; want 4 to 100, round one room"},
		{2_501, "house.toml:5:9: error: inside[0].walk: found 10004 legs, more than the 10000 that are read"},
	} {
		walk := strings.TrimSuffix(strings.Repeat("E 12ft, N 10ft, W 12ft, S 10ft, ", tt.legs), ", ")
		fragment := "# WITHOUT wall room hatch\n[[inside]]\nid = \"living\"\nname = \"Living room\"\nwalk = \"" + walk + "\"\nat = [\"0ft\", \"0ft\"]\n" + walkHatch
		h, list := LoadHouse("house.toml", []byte(complete(t, fragment, "testdata/base_house.toml")))
		if said := print(t, list); h != nil || !strings.Contains(said, tt.want) || strings.Count(said, "error: ") != 1 {
			t.Errorf("%d legs: said %.500s", tt.legs, said)
		}
	}
}
