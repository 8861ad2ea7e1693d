package plan

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// checkedRooms is a house of rooms by inside dimensions: a bedroom of 12 ft by
// 16 ft, as its width is written, a hall of 6 ft by 16 ft to the east of it, and a
// bathroom to the north whose walk, from its south-west corner, goes round an
// L: 9 ft east, 12 ft north, 5 ft west, 4 ft north, 4 ft west and 16 ft south. Its
// walls are 4-1/2 in between rooms and 5 in outside.
func checkedRooms(width, leg string) string {
	return `# WITHOUT wall room hatch
[[inside]]
id = "bed"
name = "Bedroom"
width = "` + width + `"
depth = "16ft"
at = ["0ft", "0ft"]

[[inside]]
id = "hall"
name = "Hall"
width = "6ft"
depth = "16ft"
east_of = "bed"

[[inside]]
id = "bath"
name = "Bathroom"
walk = "E 9ft, N ` + leg + `, W 5ft, N 4ft, W 4ft, S 16ft"
north_of = "bed"

[[hatch]]
id = "hatch"
room = "bed"
at = { room = "bed", east = "3ft", north = "5ft" }
size = ["22in", "30in"]

`
}

// TestDrawnCorners holds lengths between corners of rooms against right triangles
// of 3, 4 and 5, and sums by hand.
func TestDrawnCorners(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{`room = "bed", corner = "northwest"`, `room = "bed", corner = "southeast"`, "20ft"}, // 12 and 16
		{`room = "bed", corner = "southwest"`, `room = "bed", corner = "northeast"`, "20ft"},
		{`room = "bed", corner = "northwest"`, `room = "bed", corner = "northeast"`, "12ft"},
		{`room = "bath", corner = 1`, `room = "bath", corner = 3`, "15ft"}, // 9 and 12
		{`room = "bath", corner = "southwest"`, `room = "bath", corner = "northeast"`, "15ft"},
		{`room = "bath", corner = "northwest"`, `room = "bath", corner = 5`, "4ft"},
		{`room = "bath", corner = 6`, `room = "bath", corner = "southeast"`, "18ft 4-5/16in"}, // 9 and 16: the root of 337 ft
		{`room = "bed", corner = "northwest"`, `room = "bath", corner = "northwest"`, "16ft 4-1/2in"},
		{`room = "bed", corner = "southwest"`, `room = "hall", corner = "southeast"`, "18ft 4-1/2in"},
		// And to walls, of which the outer ones are 5 in thick.
		{`room = "bed", corner = "southwest"`, `wall = "south", end = "end", side = "left"`, "18ft 4-1/2in"},
		{`room = "bed", corner = "southeast"`, `wall = "south", at = "4ft"`, "8ft"},
		{`wall = "west"`, `wall = "bed-hall", side = "left"`, "12ft"},
		{`wall = "west", side = "left"`, `wall = "bed-hall", side = "right"`, "12ft 4-1/2in"},
		{`wall = "west", side = "right"`, `wall = "east.3", side = "right"`, "19ft 2-1/2in"},
	} {
		h := houseOf(t, checkedRooms("12ft", "12ft")+checkText("c", c.from, c.to, c.want))
		if k := h.Checks[0]; max(k.Drawn-at(t, c.want), at(t, c.want)-k.Drawn) > inch/32 || !k.Agrees {
			t.Errorf("from %s to %s: got %v, want %s", c.from, c.to, k.Drawn, c.want)
		}
	}
	// It is where the corners are.
	h := houseOf(t, checkedRooms("12ft", "12ft")+checkText("c", `room = "bed", corner = "northwest"`, `room = "bed", corner = "southeast"`, "20ft"))
	if b, k := box(t, "0ft", "0ft", "12ft", "16ft"), h.Checks[0]; k.A.X != b.Min.X || k.A.Y != b.Max.Y || k.B.X != b.Max.X || k.B.Y != b.Min.Y {
		t.Errorf("the check is from %v to %v", k.A, k.B)
	}
}

// TestDoubtfulSides makes one measurement of a house wrong and holds what is named
// against it.
func TestDoubtfulSides(t *testing.T) {
	diagonal := checkText("diagonal", `room = "bed", corner = "northwest"`, `room = "bed", corner = "southeast"`, "20ft")
	other := checkText("other", `room = "bed", corner = "southwest"`, `room = "bed", corner = "northeast"`, "20ft")
	across := checkText("across", `wall = "west", side = "left"`, `wall = "east.3", side = "left"`, "18ft 4-1/2in")
	for _, c := range []struct {
		name, width, leg, checks string
		want                     []string
		not                      string
	}{
		{"all right", "12ft", "12ft", diagonal + other + across, nil, "check"},
		{
			// One diagonal can't tell which of three is wrong.
			"diagonal alone", "12ft", "12ft", strings.Replace(diagonal, "20ft", "21ft", 1),
			[]string{
				"check[0].length: the check is 1ft longer than the walls make it, 20ft", "one of 3 measurements that cannot be told apart: the width of room bed, taped as 12ft",
				"the depth of room bed, taped as 16ft", "check diagonal, taped as 21ft; the rest makes it 20ft",
			},
			"wall bed",
		},
		{
			"width", "13ft", "12ft", diagonal + other + across,
			[]string{"most doubtful is the width of room bed, taped as 13ft; the rest makes it 12ft", "tape it again"},
			"cannot be told apart",
		},
		{
			"diagonal", "12ft", "12ft", strings.Replace(diagonal, "20ft", "21ft", 1) + other + across,
			[]string{"most doubtful is check diagonal, taped as 21ft; the rest makes it 20ft"},
			"the width of room",
		},
		{
			// The walk ends 5 in off, within what it may; a side of it was checked.
			"leg", "12ft", "12ft 5in", checkText("side", `room = "bath", corner = 2`, `room = "bath", corner = 3`, "12ft"),
			[]string{"most doubtful is leg 2 of the walk round room bath, taped as 12ft 5in; the rest makes it 12ft"},
			"wall bath",
		},
	} {
		_, list := LoadHouse("house.toml", []byte(complete(t, checkedRooms(c.width, c.leg)+c.checks, "testdata/base_house.toml")))
		said := print(t, list)
		rest := said
		for _, part := range c.want {
			_, after, ok := strings.Cut(rest, part)
			if !ok {
				t.Errorf("%s: not said: %q in\n%s", c.name, part, said)
			}
			rest = after
		}
		if strings.Contains(said, c.not) {
			t.Errorf("%s: said %q:\n%s", c.name, c.not, said)
		}
	}
}

// Checks between corners of random rooms come out as the corners are, by
// Pythagoras; one that is 6 ft off is told, with itself among what is doubtful.
func TestChecksOfRandomRooms(t *testing.T) {
	base := complete(t, "# WITHOUT wall room hatch\n", "testdata/base_house.toml") +
		"\n[[hatch]]\nid = \"hatch\"\nroom = \"r0\"\nat = { room = \"r0\", west = \"18in\", south = \"18in\" }\nsize = [\"22in\", \"30in\"]\n\n"
	loaded := 0
	for seed := range uint64(60) {
		rng := rand.New(rand.NewPCG(seed, 11))
		rooms := cut(rng, geom.Rect{Max: geom.Point{X: 40 * foot, Y: 30 * foot}}, 1+rng.IntN(4))
		tables, ok := insideTables(rng, rooms)
		if !ok {
			continue
		}
		i, j := rng.IntN(len(rooms)), rng.IntN(len(rooms))
		p, q := rooms[i].Min, rooms[j].Max
		check := func(length measure.Length) string {
			return checkText("c", fmt.Sprintf("room = \"r%d\", corner = \"southwest\"", i), fmt.Sprintf("room = \"r%d\", corner = \"northeast\"", j), measure.RoundUp(length, measure.Millimetre).String())
		}
		src := base + strings.Join(tables, "\n") + "\n"
		want := geom.Dist(p, q)
		h, list := LoadHouse("house.toml", []byte(src+check(want)))
		if h == nil {
			continue // faces nearly in line
		}
		loaded++
		if c := h.Checks[0]; print(t, list) != "" || c.Drawn != want || c.A != p || c.B != q {
			t.Fatalf("seed %d: %+v, want %v from %v to %v\n%s", seed, c, want, p, q, print(t, list))
		}
		_, list = LoadHouse("house.toml", []byte(src+check(want+6*foot)))
		if said := print(t, list); !strings.Contains(said, "check c, taped as") || !strings.Contains(said, "longer than the walls make it") {
			t.Fatalf("seed %d: said %s", seed, said)
		}
	}
	if loaded < 30 {
		t.Errorf("only %d houses", loaded)
	}
}

// Places in two levels make no check, and a room in line with one of another level
// is in the network of its own.
func TestCornersOfLevels(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ from, to, length, want string }{
		{`room = "u-hall", corner = "southwest"`, `room = "u-hall", corner = "southeast"`, "10ft", ""},
		{`room = "u-bed", corner = "southwest"`, `room = "u-hall", corner = "southeast"`, "26ft 4-1/2in", ""},
		{`room = "kitchen", corner = "southwest"`, `room = "u-hall", corner = "southeast"`, "10ft", "found a check from room kitchen on level ground to room u-hall on level upper; want two places on one level"},
		{`wall = "street", end = "start"`, `room = "u-hall", corner = "southeast"`, "10ft", "found a check from wall street on level ground to room u-hall on level upper"},
	} {
		h, list := LoadHouse("house.toml", []byte(string(src)+"\n"+checkText("c", c.from, c.to, c.length)))
		said := print(t, list)
		if c.want == "" && (h == nil || said != "" || h.Checks[0].Drawn != at(t, c.length)) || !strings.Contains(said, c.want) {
			t.Errorf("from %s to %s: want %q, said %s", c.from, c.to, c.want, said)
		}
	}
}
