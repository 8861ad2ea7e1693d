package plan

import "testing"

// The house of base_house.toml has its inner wall's faces 13ft 9-3/4in and 14ft
// 2-1/4in along south: 14ft less and plus half of 3-1/2in and two boards of
// 1/2in. The rest is added by hand. South runs east, so that the room is on its
// left, where left is towards its end.
func TestOffsetPlaces(t *testing.T) {
	h := houseOf(t, `
[[device]]                           # of another, of an opening, of an opening, of a wall
id = "r2"
wall = "south"
at = "1ft right of r1"
height = "12in"
kind = "receptacle"
room = "living"

[[device]]
id = "r1"
wall = "south"
at = "6in left of w2"
height = "12in"
kind = "receptacle"
side = "left"

[[device]]
id = "m1"
between = ["bed", "living"]          # middle, from bed, which is on its left
at = "4ft left of wall south"
height = "12in"
kind = "switch"

[[device]]
id = "m2"
between = ["living", "bed"]
at = "4ft right of m1"               # from living, which faces west, right is north: the end
height = "12in"
kind = "switch"

[[opening]]
id = "w2"
wall = "south"
kind = "window"
at = "2ft beyond south.door1"
width = "3ft"
sill = "3ft"
head = "82in"

[[opening]]
id = "door1"
wall = "south"
kind = "door"
at = "8in beyond middle"
width = "3ft"
head = "82in"

[[opening]]
id = "door2"
between = ["bed", "living"]
kind = "door"
at = "1ft 6in right of wall north"   # from bed, on the left: right is before
width = "32in"
head = "82in"

[[opening]]
id = "last"
wall = "south"
kind = "window"
at = "1ft"
from = "end"
width = "3ft"
sill = "3ft"
head = "82in"

[[conduit]]
id = "C1"
wall = "south"
at = "1ft before last"
height = "12in"
room = "living"
inside = "0.8in"

[[soffit]]                           # right of a window from out of doors is towards the end
id = "vent"
wall = "south"
at = "1in right of door1"
width = "2ft"

[[baffle]]
id = "baffle"
wall = "south"
at = "0in before opening door1"
width = "2ft"

[[wall]]
id = "outer"
start = ["0ft", "0ft"]
run = "E 30ft, N 20ft, W 30ft, S 20ft"
names = ["south", "east", "north", "west"]
closes = true
face = "right"
exterior = true

[[wall]]
id = "stub"                          # its middle is 3in beyond that window
start = { wall = "south", at = "3in beyond w2" }
run = "N 3ft"

[[wall]]
id = "middle"
start = { wall = "south", at = "14ft" }
run = "N 20ft"
`)
	south, middle := wall(t, h, "south"), wall(t, h, "middle")
	for _, o := range south.Openings {
		want := map[string]string{"door1": "14ft 10-1/4in", "w2": "19ft 10-1/4in", "last": "26ft"}[o.ID]
		if o.Start != at(t, want) {
			t.Errorf("%s is at %s, want %s", o.ID, o.Start, want)
		}
	}
	for _, d := range append(south.Devices, middle.Devices...) {
		// South is 4-1/2in of wall and cladding 1in, less one board: 5in thick.
		want := map[string]string{"r1": "23ft 4-1/4in", "r2": "22ft 4-1/4in", "m1": "4ft 5in", "m2": "8ft 5in"}[d.ID]
		if d.At != at(t, want) {
			t.Errorf("%s is at %s, want %s", d.ID, d.At, want)
		}
		if right := d.ID == "m2"; (d.Side == Right) != right {
			t.Errorf("%s is on the %s", d.ID, d.Side)
		}
	}
	// North's inner face is 20ft less 5in along middle; then 1ft 6in and 32in.
	if got, want := middle.Openings[0].Start, at(t, "15ft 5in"); got != want {
		t.Errorf("door2 is at %s, want %s", got, want)
	}
	if got, want := h.Conduits[0].At, at(t, "25ft"); got != want {
		t.Errorf("C1 is at %s, want %s", got, want)
	}
	if got, want := h.Soffits[0].Start, at(t, "17ft 11-1/4in"); got != want {
		t.Errorf("vent is at %s, want %s", got, want)
	}
	if got, want := h.Baffles[0].End, at(t, "14ft 10-1/4in"); got != want {
		t.Errorf("baffle ends at %s, want %s", got, want)
	}
	if got, want := wall(t, h, "stub").A.X, at(t, "23ft 1-1/4in"); got != want {
		t.Errorf("stub is at %s, want %s", got, want)
	}
}

// A run that starts from the face of another, which starts from an opening that
// is measured from the end of its wall; and checks see it there, too.
func TestOffsetStartFromWall(t *testing.T) {
	h := houseOf(t, `
[[wall]]
id = "second"                        # 1ft 2-1/4in from the face at 13ft 9-3/4in
start = { wall = "south", at = "1ft 2-1/4in before wall middle" }
run = "N 20ft"

[[wall]]
id = "outer"
start = ["0ft", "0ft"]
run = "E 30ft, N 20ft, W 30ft, S 20ft"
names = ["south", "east", "north", "west"]
closes = true
face = "right"
exterior = true

[[wall]]
id = "middle"                        # 30ft less 3ft, 12ft, 1ft
start = { wall = "south", at = "1ft before window" }
run = "N 20ft"

[[opening]]
id = "window"
wall = "south"
kind = "window"
at = "12ft"
from = "end"
width = "3ft"
sill = "3ft"
head = "82in"

[[check]]
id = "width"
from = { wall = "middle" }
to = { wall = "second" }
length = "1ft 4-1/2in"
`)
	if got, want := wall(t, h, "middle").A.X, at(t, "14ft"); got != want {
		t.Errorf("middle is at %s, want %s", got, want)
	}
	if got, want := wall(t, h, "second").A.X, at(t, "12ft 7-1/2in"); got != want {
		t.Errorf("second is at %s, want %s", got, want)
	}
	if c := h.Checks[0]; !c.Agrees || c.Drawn != at(t, "1ft 4-1/2in") {
		t.Errorf("the check is %+v", c)
	}
}

// Drops and the closet of a job. The wall between the rooms runs north, with the
// bedroom on its left.
func TestJobOffsets(t *testing.T) {
	house := complete(t, `
[[opening]]
id = "front"
wall = "south"
kind = "door"
at = "5ft"
width = "3ft"
head = "82in"

[[device]]
id = "R1"
wall = "middle"
at = "4ft"
height = "12in"
kind = "receptacle"
side = "left"
`, "testdata/base_house.toml")
	j := jobOf(t, `
[closet]
name = "Panel"
between = ["living", "bed"]
at = "2ft right of R1"
height = "5ft"
ports = 48

[[drop]]
tag = "A"
kind = "wall plate"
between = ["bed", "living"]
at = "1ft"
from = "right"                # from the south, 5in in

[[drop]]
tag = "B"
kind = "wall plate"
room = "bed"
wall = "middle"
at = "1ft left of middle.R1"

[[drop]]
tag = "C"
kind = "wall plate"
wall = "middle"
side = "right"
at = "1ft left of device R1"

[[drop]]
tag = "D"
kind = "soffit spot"
wall = "south"
at = "1ft right of front"     # from out of doors

[[drop]]
tag = "E"
kind = "wall plate"
room = "bed"
wall = "south"
at = "1ft right of front"

[[fixed]]
id = "F1"
do = "use"
wall = "middle"
at = "3ft beyond R1"

[[fixed]]
id = "F2"
do = "avoid"
room = "living"
wall = "middle"
at = "3ft left of R1"
`, house)
	if s := j.Closet.Spot; s.At != at(t, "6ft") || s.Side != Right || j.House.Rooms[j.Closet.Room].ID != "living" {
		t.Errorf("the closet is at %+v", j.Closet)
	}
	for i, want := range []string{"1ft 5in", "5ft", "3ft", "9ft", "4ft"} {
		d := &j.Drops[i]
		got := d.Spot.At
		if d.Kind == SoffitSpot {
			got = d.Point.X
		}
		if got != at(t, want) {
			t.Errorf("%s is at %s, want %s", d.Tag, got, want)
		}
	}
	for i, want := range []string{"7ft", "1ft"} {
		if f := j.Fixed[i]; f.At != at(t, want) {
			t.Errorf("%s is at %s, want %s", f.ID, f.At, want)
		}
	}
}
