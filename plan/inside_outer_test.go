package plan

import (
	"os"
	"strings"
	"testing"

	"topplate/plan/geom"
)

const outersRooms = `# WITHOUT wall room hatch
[[inside]]
id = "garage"
name = "Garage"
width = "20ft"
depth = "20ft"
at = ["0ft", "0ft"]
use = "garage"

[[inside]]
id = "living"
name = "Living room"
width = "16ft"
depth = "20ft"
east_of = "garage"
`

// TestInsideOuters holds outer walls of several makes against coordinates that
// were added by hand. Outer walls are 1/2in of board, 3-1/2in of studs and 1in of
// cladding outside of the inner faces: 5in; those in the west, of 2x6, 7in; with
// 4-1/2in of brick in front of the garage 8-1/2in. That ends in the middle of the
// wall to the living room: 20ft and 2-1/4in.
func TestInsideOuters(t *testing.T) {
	h := houseOf(t, outersRooms+`
[[outer]]
bearing = false

[[outer]]
side = "west"
frame = "2x6"
insulated = false

[[outer]]
side = "south"
room = "garage"
cladding = "4-1/2in"
bearing = true
`+strings.Replace(walkHatch, `{ room = "living", west`, `{ room = "living", east`, 1))
	for _, c := range []struct {
		id                 string
		body, frame        geom.Rect
		bearing, insulated bool
	}{
		{"south.1", box(t, "-7in", "-8-1/2in", "20ft 2-1/4in", "0ft"), box(t, "-6in", "-4in", "20ft 2-1/4in", "-1/2in"), true, true},
		{"south.2", box(t, "20ft 2-1/4in", "-5in", "36ft 9-1/2in", "0ft"), box(t, "20ft 2-1/4in", "-4in", "36ft 8-1/2in", "-1/2in"), false, true},
		{"west", box(t, "-7in", "-8-1/2in", "0ft", "20ft 5in"), box(t, "-6in", "-4in", "-1/2in", "20ft 4in"), false, false},
		{"north", box(t, "-7in", "20ft", "36ft 9-1/2in", "20ft 5in"), box(t, "-6in", "20ft 1/2in", "36ft 8-1/2in", "20ft 4in"), false, true},
		{"garage-living", box(t, "20ft", "0ft", "20ft 4-1/2in", "20ft"), box(t, "20ft 1/2in", "-1/2in", "20ft 4in", "20ft 1/2in"), false, false},
	} {
		w := wall(t, h, c.id)
		if w == nil {
			continue
		}
		if w.Body != c.body || w.Bearing != c.bearing || w.Insulated != c.insulated {
			t.Errorf("%s is %v, bearing %v, insulated %v; want %v, %v, %v", c.id, w.Body, w.Bearing, w.Insulated, c.body, c.bearing, c.insulated)
		}
		if w.Exterior && w.Frame != c.frame {
			t.Errorf("the frame of %s is %v, want %v", c.id, w.Frame, c.frame)
		}
	}
	// What is said of an outer wall points at the room along most of it.
	for id, room := range map[string]int{"north": 0, "east": 1, "south.2": 1} {
		if w := wall(t, h, id); w != nil && w.Pos != h.Rooms[room].Pos {
			t.Errorf("%s is made at %v, room %d is at %v", id, w.Pos, room, h.Rooms[room].Pos)
		}
	}
	// The face of the brick is out of that of the cladding, the plates are in line.
	if len(h.OutsideOf) != 6 || len(h.PlateLine) != 4 || h.PlateLine.Bounds() != box(t, "-6in", "-4in", "36ft 8-1/2in", "20ft 4in") {
		t.Errorf("the outer face is %v, that of the plates %v", h.OutsideOf, h.PlateLine)
	}
	if !geom.AreaOf(h.OutsideOf).Contains(geom.Point{X: 20*foot + 9*inch/4, Y: -17 * inch / 2}) {
		t.Errorf("the outer face %v has no step", h.OutsideOf)
	}
}

// Where frames are not as deep their plates are out of line, too, and a roof
// follows them.
func TestInsideOutersOfTwoDepths(t *testing.T) {
	h := houseOf(t, outersRooms+`
[[outer]]
room = "garage"
frame = "masonry"
thickness = "8in"
`+strings.Replace(walkHatch, `{ room = "living", west`, `{ room = "living", east`, 1))
	for id, want := range map[string]geom.Rect{
		"south.1": box(t, "-8in", "-8in", "20ft 2-1/4in", "0ft"),
		"south.2": box(t, "20ft 2-1/4in", "-5in", "36ft 9-1/2in", "0ft"),
		"north.1": box(t, "-8in", "20ft", "20ft 2-1/4in", "20ft 8in"),
		"west":    box(t, "-8in", "-8in", "0ft", "20ft 8in"),
	} {
		if w := wall(t, h, id); w != nil && (w.Body != want || w.Masonry != strings.Contains("south.1 north.1 west", id) || w.Insulated == w.Masonry) {
			t.Errorf("%s is %v, masonry %v, insulated %v; want %v", id, w.Body, w.Masonry, w.Insulated, want)
		}
	}
	// The step between the plates is an eave: 1/2in from it the roof is as high as 1/2in
	// from the plate in the west.
	step, west := geom.Point{X: 20*foot + 9*inch/4 - inch/2, Y: -5 * inch}, geom.Point{X: -15 * inch / 2, Y: 10 * foot}
	if got, want := h.Roof.Surface.Height(step), h.Roof.Surface.Height(west); got != want {
		t.Errorf("the roof is %v high by the step, want %v", got, want)
	}
	if len(h.PlateLine) != 8 || len(h.Roof.Outline) != 8 {
		t.Errorf("the plates are %v, the roof %v", h.PlateLine, h.Roof.Outline)
	}
}

// A level of its own make, and a side of all others: the upper storey of 2x6
// without brick in front.
func TestInsideOutersByLevel(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	h, list := LoadHouse("house.toml", []byte(strings.Replace(string(src), "[outer]\n", `[[outer]]
side = "south"
cladding = "4-1/2in"

[[outer]]
level = "upper"
frame = "2x6"

[[outer]]
level = "upper"
side = "east"
board = "5/8in"

[[outer]]
`, 1)))
	if h == nil {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	for id, want := range map[string]struct{ depth, board, clad string }{
		"street":      {"3-1/2in", "1/2in", "4-1/2in"},
		"north":       {"3-1/2in", "1/2in", "1in"},
		"u-street":    {"5-1/2in", "1/2in", "1in"},
		"upper-east":  {"5-1/2in", "5/8in", "1in"},
		"upper-north": {"5-1/2in", "1/2in", "1in"},
	} {
		w := wall(t, h, id)
		if w != nil && (w.StudDepth != at(t, want.depth) || w.Boards[w.Out.Opposite()] != at(t, want.board) || w.Boards[w.Out] != at(t, want.clad)) {
			t.Errorf("%s is %v deep with %v, want %+v", id, w.StudDepth, w.Boards, want)
		}
	}
}
