package fix

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
)

// stacked is a house of two storeys of masonry, a room on each, the panel under a box.
func stacked(t *testing.T) *route.Result {
	t.Helper()
	house := "[house]\nname = \"Stacked\"\nunits = \"imperial\"\n"
	for _, l := range [][2]string{{"ground", "0ft"}, {"upper", "9ft"}} {
		house += fmt.Sprintf(`[[level]]
id = %[1]q
floor = %[2]q
ceiling = "8ft"
plate_top = "8ft 1/2in"
[[wall]]
id = "%[1]s"
level = %[1]q
start = ["0ft", "0ft"]
run = "E 16ft, N 12ft, W 16ft, S 12ft"
names = ["%[1]s-s", "%[1]s-e", "%[1]s-n", "%[1]s-w"]
closes = true
face = "right"
exterior = true
frame = "masonry"
thickness = "5in"
[[room]]
id = "%[1]s-room"
level = %[1]q
name = "Room %[1]s"
at = ["3ft", "3ft"]
`, l[0], l[1])
	}
	house += `[[floor]]
id = "between"
under = "upper"
over = "ground"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
depth = "10-3/4in"
subfloor = "3/4in"
[attic]
level = "upper"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
size = "2x6"
[roof]
level = "upper"
kind = "gable"
gables = ["upper-w", "upper-e"]
pitch = "12/12"
overhang = "12in"
rafter = "2x6"
[[hatch]]
id = "hatch"
room = "upper-room"
at = ["4ft", "6ft"]
size = ["22in", "30in"]
`
	job := `house = "house.toml"
[job]
name = "Up"
[closet]
name = "Panel"
room = "ground-room"
wall = "ground-e"
at = "4ft"
height = "5ft"
ports = 24
[[drop]]
tag = "U"
kind = "wall plate"
room = "upper-room"
wall = "upper-e"
at = "4ft"
height = "3ft"
[allow]
raceway = true
[tools]
rods = "18ft"
arm = "26in"
bits = [{ size = "3/4in", reach = "6in" }]
[rates]
currency = "USD"
hour = 60
`
	loaded, list := plan.LoadJob("job.toml", func(path string) ([]byte, error) {
		if strings.HasSuffix(path, "house.toml") {
			return []byte(house), nil
		}
		return []byte(job), nil
	})
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("it does not load")
	}
	return solved(t, loaded)
}

// The way of a channel through a floor, by hand: 2 in from the face of the east wall, which
// is 5 in thick, and 4 ft from its left corner, which is the face of the north wall; 3/4 in of
// boards. It goes from storey to storey, so that it is sealed against fire, and the authority
// is asked.
func TestThroughTheFloorInAChannel(t *testing.T) {
	h := find(t, Holes(stacked(t)), route.FloorArc, "Room upper")
	if got, want := h.Below.Text, "in the floor of Room upper: 2in from wall upper-e, 4ft from wall upper-n"; got != want || h.Member != "floor of Room upper" {
		t.Errorf("%s: %q, want %q", h.Member, got, want)
	}
	if b := h.Bores[0].Bit; b.Way != FromRoom || b.Need != in(6) || b.Index != 0 {
		t.Errorf("bit %+v", b)
	}
	if !h.Seal.Fire || h.Seal.Garage || !slices.Contains(h.Seal.Rules, rule.FloorOpened) {
		t.Errorf("seal %+v", h.Seal)
	}
	if h.Above.Reached || !strings.Contains(h.Above.Why, "bored down from the room over it") {
		t.Errorf("above: %+v", h.Above)
	}
}
