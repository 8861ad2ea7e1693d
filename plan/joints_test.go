package plan

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A sketch is a house to be turned and mirrored.
type sketch struct {
	runs  []sketchRun
	rooms []sketchRoom
}

type sketchRun struct {
	id, start, run, face, more string
}

type sketchRoom struct{ id, at string }

// sketches are houses with every kind of joint.
var sketches = map[string]sketch{
	"two rooms": {
		[]sketchRun{
			{"outer", "0ft 0ft", "E 30ft, N 20ft, W 30ft, S 20ft", "right", "closes = true\nexterior = true\n"},
			{"middle", "14ft 0ft", "N 20ft", "center", ""},
		},
		[]sketchRoom{{"bed", "5ft 10ft"}, {"living", "20ft 10ft"}},
	},
	"el, taped inside the other way round": {
		[]sketchRun{
			{"outer", "0ft 0ft", "N 30ft, E 12ft, S 14ft, E 18ft, S 16ft, W 30ft", "right", "closes = true\nexterior = true\nframe = \"2x6\"\n"},
			{"hall", "0ft 16ft", "E 12ft", "left", ""},
		},
		[]sketchRoom{{"wing", "5ft 25ft"}, {"body", "20ft 10ft"}},
	},
	"island": {
		[]sketchRun{
			{"outer", "0ft 0ft", "E 30ft, N 20ft, W 30ft, S 20ft", "center", "closes = true\nexterior = true\n"},
			{"core", "20ft 8ft", "E 4ft, N 4ft, W 4ft, S 4ft", "center", "closes = true\n"},
		},
		[]sketchRoom{{"living", "5ft 10ft"}, {"core", "22ft 10ft"}},
	},
	// The numbers are worked out in TestJoints.
	"joints": {
		[]sketchRun{
			{"outer", "0ft 0ft", "E 40ft, N 30ft, W 40ft, S 30ft", "left", "closes = true\nexterior = true\n"},
			{"short", "10ft 30ft", "S 12ft", "center", ""},
			{"across", "9ft 17ft 10in", "E 20ft 2in", "left", ""},
			{"long", "28ft 30ft", "S 12ft 3in", "center", ""},
			{"corner", "29ft 2in 17ft 8in", "S 6ft", "center", ""},
			{"inline", "10ft 17ft 8in", "S 4ft 1in", "center", ""},
			{"onward", "10ft 13ft 6in", "S 13ft 4in", "center", ""},
		},
		[]sketchRoom{{"west", "5ft 10ft"}, {"upper", "20ft 25ft"}},
	},
}

// lengths reads two lengths of two words each at most: "9ft 17ft 10in" is 9ft
// and 17ft 10in.
func (s sketch) point(text string) geom.Point {
	words := strings.Fields(text)
	for cut := 1; cut < len(words); cut++ {
		if cut < len(words) && strings.HasSuffix(words[cut], "ft") {
			x, errX := measure.Parse(strings.Join(words[:cut], " "))
			y, errY := measure.Parse(strings.Join(words[cut:], " "))
			if errX == nil && errY == nil {
				return geom.Point{X: x, Y: y}
			}
		}
	}
	panic("no point " + text)
}

// toml writes the sketch as a house file, turned or mirrored.
func (s sketch) toml(sym geom.Symmetry) string {
	var b strings.Builder
	b.WriteString("[house]\nname = \"Sketch\"\nunits = \"imperial\"\n\n[[level]]\nid = \"ground\"\nceiling = \"8ft\"\n")
	place := func(text string) string {
		p := sym.Apply(s.point(text))
		return fmt.Sprintf("[%q, %q]", p.X, p.Y)
	}
	for _, r := range s.runs {
		face := r.face
		if sym.Mirrors() {
			face = map[string]string{"left": "right", "right": "left", "center": "center"}[face]
		}
		fmt.Fprintf(&b, "\n[[wall]]\nid = %q\nstart = %s\nrun = %q\nface = %q\n%s", r.id, place(r.start), turnRun(sym, r.run), face, r.more)
	}
	for _, r := range s.rooms {
		fmt.Fprintf(&b, "\n[[room]]\nid = %q\nname = %q\nat = %s\n", r.id, r.id, place(r.at))
	}
	b.WriteString("\n[attic]\njoists_run = \"N\"\njoist = \"sawn\"\nspacing = \"16in\"\nfirst = \"0in\"\nsize = \"2x6\"\n")
	b.WriteString("\n[roof]\nkind = \"hip\"\npitch = \"5/12\"\noverhang = \"16in\"\nrafter = \"2x6\"\n")
	fmt.Fprintf(&b, "\n[[hatch]]\nid = \"hatch\"\nroom = %q\nat = %s\nsize = [\"24in\", \"24in\"]\n", s.rooms[0].id, place(s.rooms[0].at))
	return b.String()
}

// turnRun turns the bearings of a run.
func turnRun(sym geom.Symmetry, run string) string {
	var legs []string
	for leg := range strings.SplitSeq(run, ", ") {
		word, length, _ := strings.Cut(leg, " ")
		step := map[string]geom.Point{"E": {X: 1}, "N": {Y: 1}, "W": {X: -1}, "S": {Y: -1}}[word]
		turned := headingOf(geom.Point{}, sym.Apply(step))
		legs = append(legs, [...]string{East: "E", North: "N", West: "W", South: "S"}[turned]+" "+length)
	}
	return strings.Join(legs, ", ")
}

// TestSymmetry holds a house against its turned and mirrored images: walls and
// rooms lie where the image of the house has them.
func TestSymmetry(t *testing.T) {
	for name, s := range sketches {
		first, list := LoadHouse("house.toml", []byte(s.toml(0)))
		if first == nil {
			t.Fatalf("%s: %s", name, print(t, list))
		}
		for sym := range geom.Symmetries {
			h, list := LoadHouse("house.toml", []byte(s.toml(sym)))
			if h == nil {
				t.Fatalf("%s, image %d: %s", name, sym, print(t, list))
			}
			checkHouse(t, h)
			for i := range h.Walls {
				got, was := &h.Walls[i], &first.Walls[i]
				if got.Body != sym.Rect(was.Body) || got.Frame != sym.Rect(was.Frame) {
					t.Errorf("%s, image %d, wall %s: got %v %v, want the image of %v %v", name, sym, got.ID, got.Body, got.Frame, was.Body, was.Frame)
				}
				rooms := was.RoomAt
				if sym.Mirrors() {
					rooms[0], rooms[1] = rooms[1], rooms[0]
				}
				if got.RoomAt != rooms {
					t.Errorf("%s, image %d, wall %s: got rooms %v, want %v", name, sym, got.ID, got.RoomAt, rooms)
				}
			}
			for i := range h.Rooms {
				for k, p := range append(h.Rooms[i].Holes, h.Rooms[i].Outline, h.OutsideOf) {
					was := append(first.Rooms[i].Holes, first.Rooms[i].Outline, first.OutsideOf)[k]
					if diff := cmp.Diff(sortedPoints(sym.Polygon(was)), sortedPoints(p)); diff != "" {
						t.Errorf("%s, image %d, room %s: %s", name, sym, h.Rooms[i].ID, diff)
					}
				}
			}
		}
	}
}

func sortedPoints(p geom.Polygon) []geom.Point {
	return slices.SortedFunc(slices.Values(p), func(a, b geom.Point) int {
		if a.X != b.X {
			return int(min(1, max(-1, a.X-b.X)))
		}
		return int(min(1, max(-1, a.Y-b.Y)))
	})
}

// TestJoints works out where walls end that meet in every way. All inner walls
// are 4-1/2 in thick, with a frame of 3-1/2 in. The tape of the outer walls
// ran along their inner faces, which are at 0 and 40 ft, 0 and 30 ft.
//
// across is taped along its left, its north face at 17 ft 10 in, so it is from
// 17 ft 5-1/2 in to 17 ft 10 in north, its frame 1/2 in less on each side.
func TestJoints(t *testing.T) {
	h, list := LoadHouse("house.toml", []byte(sketches["joints"].toml(0)))
	if h == nil {
		t.Fatal(print(t, list))
	}
	for _, want := range []struct {
		id, why     string
		body, frame geom.Rect
	}{
		{
			"short", "a tape that ends 2 in short of across at 18 ft is lengthened to it",
			box(t, "9ft 9-3/4in", "17ft 10in", "10ft 2-1/4in", "30ft"),
			box(t, "9ft 10-1/4in", "17ft 9-1/2in", "10ft 1-3/4in", "30ft 1/2in"),
		},
		{
			"long", "one that ends in across at 17 ft 9 in is trimmed to its near face",
			box(t, "27ft 9-3/4in", "17ft 10in", "28ft 2-1/4in", "30ft"),
			box(t, "27ft 10-1/4in", "17ft 9-1/2in", "28ft 1-3/4in", "30ft 1/2in"),
		},
		{
			"across", "its east end at 29 ft 2 in makes a corner with the wall that starts there and goes to its far face; its west end is free",
			box(t, "9ft", "17ft 5-1/2in", "29ft 4-1/4in", "17ft 10in"),
			box(t, "9ft", "17ft 6in", "29ft 3-3/4in", "17ft 9-1/2in"),
		},
		{
			"corner", "so does the other wall of the corner",
			box(t, "28ft 11-3/4in", "11ft 8in", "29ft 4-1/4in", "17ft 10in"),
			box(t, "29ft 1/4in", "11ft 8in", "29ft 3-3/4in", "17ft 9-1/2in"),
		},
		{
			"inline", "walls in line with a gap of 1 in, from 13 ft 7 in to 13 ft 6 in, meet in its middle",
			box(t, "9ft 9-3/4in", "13ft 6-1/2in", "10ft 2-1/4in", "17ft 5-1/2in"),
			box(t, "9ft 10-1/4in", "13ft 6-1/2in", "10ft 1-3/4in", "17ft 6in"),
		},
		{
			"onward", "and the last one is lengthened to the outer wall from 2 in away",
			box(t, "9ft 9-3/4in", "0in", "10ft 2-1/4in", "13ft 6-1/2in"),
			box(t, "9ft 10-1/4in", "-1/2in", "10ft 1-3/4in", "13ft 6-1/2in"),
		},
	} {
		got := wall(t, h, want.id)
		if got.Body != want.body || got.Frame != want.frame {
			t.Errorf("%s: %s: got %v %v, want %v %v", want.id, want.why, got.Body, got.Frame, want.body, want.frame)
		}
	}
}

// TestJointReach holds the reach of a joint against its limit: 2 in short is
// joined, a nanometre more is not, and likewise past the far face.
func TestJointReach(t *testing.T) {
	// The inner face of the north wall is at 19 ft 7 in, its outer face, where
	// the tape ran, at 20 ft.
	near, far := at(t, "19ft 7in"), at(t, "20ft")
	for _, tt := range []struct {
		end     measure.Length
		want    measure.Length
		crosses bool
	}{
		{end: near - 2*inch, want: near},
		{end: near - 2*inch - 1, want: near - 2*inch - 1},
		{end: near, want: near},
		{end: near + 1, want: near},
		{end: far, want: near},
		{end: far + 2*inch, want: near},
		{end: far + 2*inch + 1, crosses: true},
	} {
		fragment := fmt.Sprintf("# WITH wall\n[[wall]]\nid = \"stub\"\nstart = [\"5ft\", \"15ft\"]\nrun = \"N %s\"\n", tt.end-15*foot)
		h, list := LoadHouse("house.toml", []byte(complete(t, fragment, "testdata/base_house.toml")))
		if h == nil != tt.crosses {
			t.Errorf("a wall to %v: %s", tt.end, print(t, list))
			continue
		}
		if h != nil && wall(t, h, "stub").Body.Max.Y != tt.want {
			t.Errorf("a wall to %v: ends at %v, want %v", tt.end, wall(t, h, "stub").Body.Max.Y, tt.want)
		}
	}
}
