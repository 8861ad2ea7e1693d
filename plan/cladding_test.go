package plan

import (
	"os"
	"strings"
	"testing"

	"topplate/plan/geom"
)

// cladHouse is the first house of the package's tests, its outer walls clad with
// wood, and whatever more.
func cladHouse(t *testing.T, more string) *House {
	t.Helper()
	src, err := os.ReadFile("testdata/base_house.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(src), "exterior = true", "exterior = true\ncladding_kind = \"wood\"", 1) + more
	h, list := LoadHouse("house.toml", []byte(text))
	if h == nil {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	return h
}

// One wall of brick, 5-1/8 in from the taped outer face to the studs, where the others
// have 1 in: by hand its studs are from Y = 5-1/8 in to 8-5/8, its board goes to 9-1/8,
// and the studs of the walls beside it begin with its own.
func TestCladdingByWall(t *testing.T) {
	h := cladHouse(t, "\n[[cladding]]\nwall = \"south\"\nkind = \"brick\"\nthickness = \"5-1/8in\"\n[[cladding]]\nwall = \"east\"\nkind = \"stucco\"\n")
	for _, want := range []struct {
		id, kind    string
		body, frame geom.Rect
		hard        bool
	}{
		{"south", "brick", box(t, "0in", "0in", "30ft", "9-1/8in"), box(t, "1in", "5-1/8in", "29ft 11in", "8-5/8in"), true},
		{"east", "stucco", box(t, "29ft 7in", "0in", "30ft", "20ft"), box(t, "29ft 7-1/2in", "5-1/8in", "29ft 11in", "19ft 11in"), true},
		{"north", "wood", box(t, "0in", "19ft 7in", "30ft", "20ft"), box(t, "1in", "19ft 7-1/2in", "29ft 11in", "19ft 11in"), false},
		{"west", "wood", box(t, "0in", "0in", "5in", "20ft"), box(t, "1in", "5-1/8in", "4-1/2in", "19ft 11in"), false},
	} {
		w := wall(t, h, want.id)
		if w.Cladding.ID != want.kind || w.Body != want.body || w.Frame != want.frame || w.HardToFix() != want.hard || w.HardToBore() != want.hard {
			t.Errorf("wall %s: clad with %s, body %v, frame %v; want %+v", want.id, w.Cladding.ID, w.Body, w.Frame, want)
		}
	}
	if w := wall(t, h, "middle"); w.Cladding.ID != "" || w.HardToFix() {
		t.Errorf("an inner wall is clad with %q", w.Cladding.ID)
	}
}

// The outer walls of rooms by inside dimensions are as thick as each other, and may be
// clad differently.
func TestCladdingOfRooms(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_house.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(src), "[outer]\n", "[outer]\ncladding_kind = \"vinyl\"\n", 1) + "\n[[cladding]]\nwall = \"south\"\nkind = \"brick\"\n"
	if h, list := LoadHouse("house.toml", []byte(text+"thickness = \"5in\"\n")); h != nil || !strings.Contains(print(t, list), "found a thickness of one outer wall") {
		t.Errorf("a thickness of its own: %s", print(t, list))
	}
	h, list := LoadHouse("house.toml", []byte(text))
	if h == nil {
		t.Fatal(print(t, list))
	}
	for id, want := range map[string]string{"south": "brick", "east": "vinyl"} {
		if w := wall(t, h, id); w.Cladding.ID != want {
			t.Errorf("wall %s is clad with %q, want %q", id, w.Cladding.ID, want)
		}
	}
}
