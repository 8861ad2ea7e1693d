package plan

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"topplate/plan/geom"
)

// TestInside holds a house of rooms by inside dimensions against coordinates
// that were added by hand.
//
// Inner walls are a 2x4 (3-1/2in) and two boards of 1/2in: 4-1/2in. Outer walls
// are one board, a 2x4 and 1in of cladding: 5in. The kitchen reaches from zero
// to 12ft east and 10ft north. The hall begins 4-1/2in north of it, at 10ft
// 4-1/2in, and ends at 14ft 4-1/2in. The bedroom begins 4-1/2in east, at 12ft
// 4-1/2in, and ends at 26ft 4-1/2in, as far north as the hall. The study is over
// its east end: from 16ft 4-1/2in to 26ft 4-1/2in east, and from 14ft 9in to
// 22ft 9in north.
func TestInside(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_house.toml")
	if err != nil {
		t.Fatal(err)
	}
	h, list := LoadHouse("house.toml", src)
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	for _, c := range []struct {
		id                       string
		west, south, east, north string
	}{
		{"kitchen", "0ft", "0ft", "12ft", "10ft"},
		{"hall", "0ft", "10ft 4-1/2in", "12ft", "14ft 4-1/2in"},
		{"bed", "12ft 4-1/2in", "0ft", "26ft 4-1/2in", "14ft 4-1/2in"},
		{"study", "16ft 4-1/2in", "14ft 9in", "26ft 4-1/2in", "22ft 9in"},
	} {
		found := false
		for i := range h.Rooms {
			if r := &h.Rooms[i]; r.ID == c.id {
				found = true
				if want := box(t, c.west, c.south, c.east, c.north); r.Bounds != want || len(r.Outline) != 4 {
					t.Errorf("%s is %v, want %v", c.id, r.Outline, want)
				}
			}
		}
		if !found {
			t.Errorf("there is no room %s", c.id)
		}
	}
	for _, c := range []struct {
		id                       string
		west, south, east, north string
		exterior, bearing        bool
	}{
		{"south", "-5in", "-5in", "26ft 9-1/2in", "0ft", true, true},
		{"east", "26ft 4-1/2in", "-5in", "26ft 9-1/2in", "23ft 2in", true, true},
		{"north.2", "15ft 11-1/2in", "22ft 9in", "26ft 9-1/2in", "23ft 2in", true, true},
		{"west.2", "15ft 11-1/2in", "14ft 4-1/2in", "16ft 4-1/2in", "23ft 2in", true, true},
		{"over-hall", "-5in", "14ft 4-1/2in", "16ft 4-1/2in", "14ft 9-1/2in", true, true},
		{"street", "-5in", "-5in", "0ft", "14ft 9-1/2in", true, true},
		{"hall-kitchen", "0ft", "10ft", "12ft", "10ft 4-1/2in", false, false},
		{"spine", "12ft", "0ft", "12ft 4-1/2in", "10ft 2-1/4in", false, true},
		{"bed-hall", "12ft", "10ft 2-1/4in", "12ft 4-1/2in", "14ft 4-1/2in", false, false},
		{"bed-study", "16ft 4-1/2in", "14ft 4-1/2in", "26ft 4-1/2in", "14ft 9in", false, false},
	} {
		w := wall(t, h, c.id)
		if w == nil {
			continue
		}
		if want := box(t, c.west, c.south, c.east, c.north); w.Body != want || w.Exterior != c.exterior || w.Bearing != c.bearing {
			t.Errorf("%s is %v, %v, %v; want %v", c.id, w.Body, w.Exterior, w.Bearing, want)
		}
	}
	// Street runs south from 14ft 4-1/2in: less 2ft and 38in.
	if got, want := wall(t, h, "street").Openings[0].Start, at(t, "9ft 2-1/2in"); got != want {
		t.Errorf("front is at %s, want %s", got, want)
	}
	// Bed-hall runs north from 10ft 2-1/4in; 6in beyond 10ft 4-1/2in.
	if got, want := wall(t, h, "bed-hall").Openings[0].Start, at(t, "8-1/4in"); got != want {
		t.Errorf("door1 is at %s, want %s", got, want)
	}
	if got, want := wall(t, h, "hall-kitchen").Devices[0].At, at(t, "3ft"); got != want {
		t.Errorf("R1 is at %s, want %s", got, want)
	}
	if got, want := h.OutsideOf.Bounds(), box(t, "-5in", "-5in", "26ft 9-1/2in", "23ft 2in"); got != want || len(h.OutsideOf) != 6 {
		t.Errorf("the outer face is %v", h.OutsideOf)
	}
	if len(h.Walls) != 10 || len(h.Traverses) != 0 {
		t.Errorf("got %d walls, and %d runs that nobody walked", len(h.Walls), len(h.Traverses))
	}
}

// Faces that are out of line by less than the tape may be off are drawn straight,
// along the longer of them: the bedroom's, at 1/2in. The wall between is in the
// middle of what is between the faces, from 10ft 1/4in to 10ft 4-3/4in.
func TestInsideNearly(t *testing.T) {
	h := houseOf(t, `# WITHOUT wall room hatch
[[inside]]
id = "bath"
name = "Bathroom"
width = "10ft"
depth = "10ft"
at = ["0ft", "0ft"]

[[inside]]
id = "bed"
name = "Bedroom"
width = "12ft"
depth = "10ft"
at = ["10ft 5in", "1/2in"]

[[hatch]]
id = "hatch"
room = "bed"
at = { room = "bed", east = "3ft", north = "5ft" }
size = ["22in", "30in"]
`)
	if got, want := wall(t, h, "bath-bed").Body, box(t, "10ft 1/4in", "1/2in", "10ft 4-3/4in", "10ft 1/2in"); got != want {
		t.Errorf("the wall between is %v, want %v", got, want)
	}
	for i, want := range []struct{ west, south, east, north string }{
		{"0ft", "1/2in", "10ft 1/4in", "10ft 1/2in"}, {"10ft 4-3/4in", "1/2in", "22ft 5in", "10ft 1/2in"},
	} {
		if got := h.Rooms[i].Bounds; got != box(t, want.west, want.south, want.east, want.north) {
			t.Errorf("%s is %v, want %+v", h.Rooms[i].ID, got, want)
		}
	}
}

// Nothing is said of faces that are out of line by less than messages print: 10ft and
// 4-1/2in are 3162.3mm.
func TestInsideAsGoodAsInLine(t *testing.T) {
	rooms := "# WITHOUT wall room hatch\n[[inside]]\nid = \"living\"\nname = \"Living room\"\nwidth = \"10ft\"\ndepth = \"10ft\"\nat = [\"0ft\", \"0ft\"]\n\n" +
		"[[inside]]\nid = \"bed\"\nname = \"Bedroom\"\nwidth = \"12ft\"\ndepth = \"10ft\"\nat = [\"%s\", \"%s\"]\n" + walkHatch
	for _, tt := range []struct {
		x, y string
		said int
	}{{"3162.35mm", "0.05mm", 0}, {"3163.4mm", "0mm", 1}, {"3162.3mm", "2mm", 2}} {
		h, list := LoadHouse("house.toml", []byte(complete(t, fmt.Sprintf(rooms, tt.x, tt.y), "testdata/base_house.toml")))
		if said := print(t, list); h == nil || strings.Count(said, "warning: ") != tt.said {
			t.Errorf("at %s, %s: said %s", tt.x, tt.y, said)
		}
	}
}

// A check that is within its error agrees, whatever is wrong with another one: the
// house is 26ft 4-1/2in wide inside.
func TestInsideChecks(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_house.toml")
	if err != nil {
		t.Fatal(err)
	}
	h, list := LoadHouse("house.toml", append(src, `
[[check]]
id = "right"
from = { wall = "street", side = "left" }
to = { wall = "east", side = "left" }
length = "26ft 5-1/4in"

[[check]]
id = "wrong"
from = { wall = "street", side = "left" }
to = { wall = "east", side = "left" }
length = "24ft"
`...))
	if h == nil {
		t.Fatal(print(t, list))
	}
	if h.Checks[0].Drawn != 26*foot+9*inch/2 || !h.Checks[0].Agrees || h.Checks[1].Agrees {
		t.Errorf("the checks are %+v", h.Checks)
	}
}

// A closet between two rooms parts them, however narrow it is.
func TestInsideCloset(t *testing.T) {
	h := houseOf(t, `# WITHOUT wall room hatch
[[inside]]
id = "bath"
name = "Bathroom"
width = "10ft"
depth = "10ft"
at = ["0ft", "0ft"]

[[inside]]
id = "linen"
name = "Linen"
width = "18in"
depth = "10ft"
east_of = "bath"

[[inside]]
id = "bed"
name = "Bedroom"
width = "12ft"
depth = "10ft"
east_of = "linen"

[[hatch]]
id = "hatch"
room = "bed"
at = { room = "bed", east = "3ft", north = "5ft" }
size = ["22in", "30in"]
`)
	if len(h.Walls) != 6 {
		t.Errorf("got %d walls, want 4 outer ones and 2", len(h.Walls))
	}
	if got, want := wall(t, h, "bed-linen").Body, box(t, "11ft 10-1/2in", "0ft", "12ft 3in", "10ft"); got != want {
		t.Errorf("the wall between is %v, want %v", got, want)
	}
}

// Where four rooms meet, the walls from west to east go through and the others
// end at them: the first from 10ft to 10ft 4-1/2in north, in two halves that meet
// in the middle of what is between the rooms.
func TestInsideCross(t *testing.T) {
	h := houseOf(t, `# WITHOUT wall room hatch
[[inside]]
id = "sw"
name = "South-west"
width = "10ft"
depth = "10ft"
at = ["0ft", "0ft"]

[[inside]]
id = "se"
name = "South-east"
width = "10ft"
depth = "10ft"
east_of = "sw"

[[inside]]
id = "nw"
name = "North-west"
width = "10ft"
depth = "10ft"
north_of = "sw"

[[inside]]
id = "ne"
name = "North-east"
width = "10ft"
depth = "10ft"
north_of = "se"

[[hatch]]
id = "hatch"
room = "ne"
at = { room = "ne", east = "3ft", north = "5ft" }
size = ["22in", "30in"]
`)
	for id, want := range map[string]geom.Rect{
		"nw-sw": box(t, "0ft", "10ft", "10ft 2-1/4in", "10ft 4-1/2in"),
		"ne-se": box(t, "10ft 2-1/4in", "10ft", "20ft 4-1/2in", "10ft 4-1/2in"),
		"se-sw": box(t, "10ft", "0ft", "10ft 4-1/2in", "10ft"),
		"ne-nw": box(t, "10ft", "10ft 4-1/2in", "10ft 4-1/2in", "20ft 4-1/2in"),
	} {
		if got := wall(t, h, id).Body; got != want {
			t.Errorf("%s is %v, want %v", id, got, want)
		}
	}
}

// A partition of its own make is as thick as it says, and the room behind it is
// as much farther away: a 2x6 of 5-1/2in with boards of 5/8in is 6-3/4in.
func TestInsidePartition(t *testing.T) {
	h := houseOf(t, `# WITHOUT wall room hatch
[inner]
board = "5/8in"
bearing = true

[[partition]]
id = "wet"
between = ["bath", "bed"]
frame = "2x6"

[[inside]]
id = "bath"
name = "Bathroom"
width = "10ft"
depth = "10ft"
at = ["0ft", "0ft"]

[[inside]]
id = "bed"
name = "Bedroom"
width = "12ft"
depth = "10ft"
east_of = "bath"

[[inside]]
id = "hall"
name = "Hall"
width = "22ft 6-3/4in"
depth = "4ft"
north_of = "bath"

[[hatch]]
id = "hatch"
room = "bed"
at = { room = "bed", east = "3ft", north = "5ft" }
size = ["22in", "30in"]
`)
	if w, want := wall(t, h, "wet"), box(t, "10ft", "0ft", "10ft 6-3/4in", "10ft"); w.Body != want || w.StudDepth != 11*inch/2 || !w.Bearing {
		t.Errorf("the wall between is %+v, want %v", w, want)
	}
	// Halfway between the rooms under it, one wall goes on in the other.
	if w, want := wall(t, h, "bath-hall"), box(t, "0ft", "10ft", "10ft 3-3/8in", "10ft 4-3/4in"); w.Body != want || w.StudDepth != 7*inch/2 {
		t.Errorf("the wall of the hall is %+v, want %v", w, want)
	}
}

// Walls that were taped stand among those that were made, and start from them: 3ft
// before the face of the spine at 12ft.
func TestInsideWithWalls(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_house.toml")
	if err != nil {
		t.Fatal(err)
	}
	h, list := LoadHouse("house.toml", []byte(string(src)+`
[[wall]]
id = "nib"
start = { wall = "south", at = "3ft before wall spine" }
run = "N 2ft"

[[check]]
id = "diagonal"
from = { wall = "south", end = "start", side = "left" }
to = { wall = "hall-kitchen", end = "end", side = "right" }
length = "15ft 7-29/64in"
`))
	if h == nil {
		t.Fatal(print(t, list))
	}
	if got, want := wall(t, h, "nib").A, (geom.Point{X: at(t, "9ft")}); got != want {
		t.Errorf("nib starts at %v, want %v", got, want)
	}
	if wall(t, h, "nib").Made || !wall(t, h, "spine").Made {
		t.Error("nib was taped, spine was made")
	}
	// The kitchen's diagonal: the root of 12² and 10² ft.
	if c := h.Checks[0]; !c.Agrees {
		t.Errorf("the check is %+v", c)
	}
}
