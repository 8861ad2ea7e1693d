package plan

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// print is the list as a user sees it.
func print(t testing.TB, list *diag.List) string {
	t.Helper()
	var b strings.Builder
	if err := list.Print(&b, nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// houseOf loads a fragment of a house, completed from the base.
func houseOf(t testing.TB, fragment string) *House {
	t.Helper()
	h, list := LoadHouse("house.toml", []byte(complete(t, fragment, "testdata/base_house.toml")))
	if h == nil {
		t.Fatalf("not loaded:\n%s", print(t, list))
	}
	return h
}

// at is a length as it is written.
func at(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// box is a rectangle of lengths as they are written: west, south, east, north.
func box(t testing.TB, west, south, east, north string) geom.Rect {
	t.Helper()
	return geom.Rect{
		Min: geom.Point{X: at(t, west), Y: at(t, south)},
		Max: geom.Point{X: at(t, east), Y: at(t, north)},
	}
}

// wall is the wall with an id.
func wall(t testing.TB, h *House, id string) *Wall {
	t.Helper()
	for i := range h.Walls {
		if h.Walls[i].ID == id {
			return &h.Walls[i]
		}
	}
	t.Fatalf("no wall %s", id)
	return nil
}

// TestTwoRooms works a house of two rooms out by hand.
//
// The tape ran along the outside, 30 ft by 20 ft. The outer walls are 1 in of
// cladding, 3-1/2 in of studs and 1/2 in of board, 5 in in all; the wall
// between the rooms is 1/2 + 3-1/2 + 1/2 = 4-1/2 in, 2-1/4 in on each side of
// the line at 14 ft. So the rooms reach from 5 in to 20 ft - 5 in = 19 ft 7 in
// north, which is 19 ft 2 in = 230 in, and east
//
//	bed:    from 5 in to 14 ft - 2-1/4 in = 13 ft 9-3/4 in: 160-3/4 in
//	living: from 14 ft 2-1/4 in to 30 ft - 5 in = 29 ft 7 in: 184-3/4 in
//
// 160.75 in * 230 in = 36 972.5 sq in, and 184.75 in * 230 in = 42 492.5
// sq in; a square inch is 0.000 645 16 m².
func TestTwoRooms(t *testing.T) {
	h := houseOf(t, "")
	rooms := []struct {
		id      string
		bounds  geom.Rect
		corners int
		area    float64
	}{
		{"bed", box(t, "5in", "5in", "13ft 9-3/4in", "19ft 7in"), 4, 36972.5 * 0.00064516},
		{"living", box(t, "14ft 2-1/4in", "5in", "29ft 7in", "19ft 7in"), 4, 42492.5 * 0.00064516},
	}
	for i, want := range rooms {
		got := h.Rooms[i]
		if got.ID != want.id || got.Bounds != want.bounds || len(got.Outline) != want.corners || got.Holes != nil {
			t.Errorf("room %d: got %+v, want %+v", i, got, want)
		}
		if area := got.Outline.SquareMetres(); max(area-want.area, want.area-area) > 1e-9 {
			t.Errorf("room %s: got %.9f m², want %.9f", want.id, area, want.area)
		}
	}
	walls := []struct {
		id          string
		body, frame geom.Rect
		inside      [2]bool
	}{
		// Bodies and frames run to the far face of the corner.
		{"south", box(t, "0in", "0in", "30ft", "5in"), box(t, "1in", "1in", "29ft 11in", "4-1/2in"), [2]bool{true, false}},
		{"east", box(t, "29ft 7in", "0in", "30ft", "20ft"), box(t, "29ft 7-1/2in", "1in", "29ft 11in", "19ft 11in"), [2]bool{true, false}},
		{"north", box(t, "0in", "19ft 7in", "30ft", "20ft"), box(t, "1in", "19ft 7-1/2in", "29ft 11in", "19ft 11in"), [2]bool{true, false}},
		{"west", box(t, "0in", "0in", "5in", "20ft"), box(t, "1in", "1in", "4-1/2in", "19ft 11in"), [2]bool{true, false}},
		// The middle wall ends at the boards of the outer ones, its frame at
		// their studs.
		{"middle", box(t, "13ft 9-3/4in", "5in", "14ft 2-1/4in", "19ft 7in"), box(t, "13ft 10-1/4in", "4-1/2in", "14ft 1-3/4in", "19ft 7-1/2in"), [2]bool{true, true}},
	}
	for _, want := range walls {
		got := wall(t, h, want.id)
		if got.Body != want.body || got.Frame != want.frame || got.RoomAt != want.inside {
			t.Errorf("wall %s: got body %v frame %v rooms %v, want %v", want.id, got.Body, got.Frame, got.RoomAt, want)
		}
	}
	outside := box(t, "0in", "0in", "30ft", "20ft")
	plates := box(t, "1in", "1in", "29ft 11in", "19ft 11in")
	for _, o := range []struct {
		got  geom.Polygon
		want geom.Rect
	}{{h.OutsideOf, outside}, {h.PlateLine, plates}} {
		want := geom.Polygon{o.want.Min, {X: o.want.Max.X, Y: o.want.Min.Y}, o.want.Max, {X: o.want.Min.X, Y: o.want.Max.Y}}
		if diff := cmp.Diff(want, o.got); diff != "" {
			t.Error(diff)
		}
	}
	if h.Boundaries != outside {
		t.Errorf("got boundaries %v, want %v", h.Boundaries, outside)
	}
	// The hatch is 3 ft from the bedroom's east face and 5 ft from its north
	// face, which puts its centre at 10 ft 9-3/4 in, 14 ft 7 in.
	if want := box(t, "9ft 10-3/4in", "13ft 4in", "11ft 8-3/4in", "15ft 10in"); h.Hatches[0].Area != want {
		t.Errorf("hatch: got %v, want %v", h.Hatches[0].Area, want)
	}
	// The ridge of a hip roof of 5 in 12 over plates 19 ft 10 in apart is
	// half of that away from the eave: 119 in * 5/12 = 49-7/12 in.
	if got, want := h.Roof.Surface.RidgeHeight(), (119*inch*5+6)/12; got != want {
		t.Errorf("ridge: got %v, want %v", got, want)
	}
}

func TestGoodFiles(t *testing.T) {
	job, list := LoadJob("testdata/good/job.toml", os.ReadFile)
	if job == nil {
		t.Fatalf("not loaded:\n%s", print(t, list))
	}
	const want = "testdata/good/house.toml:20:7: warning: wall[0].run: the run ends 1in west of its start, 1in in 100ft 1in (1:1201), which is spread over its legs\n"
	if got := print(t, list); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	// The legs along X, 360 in and 361 in, take up the inch in proportion to
	// their length, by the compass rule: the first is 1 in * 360/721 longer,
	// 12 682 385.6 nm.
	h := job.House
	if got, want := wall(t, h, "south").B.X, 360*inch+12_682_386; got != want {
		t.Errorf("the south wall ends at %v, want %v", got, want)
	}
	traverse := Traverse{ID: "outer", Pos: h.Traverses[0].Pos, Closed: true, Perimeter: 100*foot + inch, MisX: -1 * inch, First: "south"}
	if h.Traverses[0] != traverse {
		t.Errorf("got %+v, want %+v", h.Traverses[0], traverse)
	}
}
