package plan

import (
	gocmp "cmp"
	"fmt"
	"math/rand/v2"
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
		if !sameWhenTurned(t, s) {
			t.Errorf("%s: not loaded, or not the same when turned", name)
		}
	}
}

// TestRandomSketches turns and mirrors houses of a few short walls that end
// near one another at random, and shuffles their tables.
func TestRandomSketches(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	loaded := 0
	for n := range 200 {
		s := randomSketch(rng)
		if sameWhenTurned(t, s) {
			loaded++
			h, _ := LoadHouse("house.toml", []byte(s.toml(0)))
			shuffled, list := LoadHouse("house.toml", []byte(shuffleTables(rng, s.toml(0))))
			if shuffled == nil {
				t.Errorf("sketch %d, shuffled: %s", n, print(t, list))
			} else if diff := cmp.Diff(describe(h), describe(shuffled)); diff != "" {
				t.Errorf("sketch %d, shuffled: %s", n, diff)
			}
		}
		if t.Failed() {
			t.Fatal(s.toml(0))
		}
	}
	if loaded < 50 {
		t.Errorf("only %d of the sketches loaded", loaded)
	}
}

// randomSketch is a house with short walls whose ends lie on a lattice of 5 ft,
// or a few inches beside it.
func randomSketch(rng *rand.Rand) sketch {
	faces := []string{"left", "right", "center"}
	s := sketch{
		[]sketchRun{{"outer", "0ft 0ft", "E 20ft, N 20ft, W 20ft, S 20ft", faces[rng.IntN(3)], "closes = true\nexterior = true\n"}},
		[]sketchRoom{{"room", "2ft 6in 1ft 6in"}},
	}
	for i := range 1 + rng.IntN(4) {
		beside := func() string { return fmt.Sprintf("%dft %din", 5*(1+rng.IntN(3)), rng.IntN(4)) }
		run := fmt.Sprintf("%c %dft %din", "ENWS"[rng.IntN(4)], 5*(1+rng.IntN(5)/3)-1, 8+rng.IntN(4))
		if rng.IntN(3) == 0 {
			run += fmt.Sprintf(", %c 5ft %din", "ENWS"[rng.IntN(4)], rng.IntN(6))
		}
		s.runs = append(s.runs, sketchRun{fmt.Sprintf("w%d", i), beside() + " " + beside(), run, faces[rng.IntN(3)], ""})
	}
	return s
}

// sameWhenTurned reports whether a sketch can be loaded, and whatever way it is
// turned and mirrored. It fails the test if walls and rooms do not lie where
// the image of the house has them.
func sameWhenTurned(t *testing.T, s sketch) bool {
	t.Helper()
	first, _ := LoadHouse("house.toml", []byte(s.toml(0)))
	for sym := range geom.Symmetries {
		h, list := LoadHouse("house.toml", []byte(s.toml(sym)))
		if (h == nil) != (first == nil) {
			t.Errorf("image %d: %s", sym, print(t, list))
		}
		if h == nil || first == nil {
			continue
		}
		checkHouse(t, h)
		compareWalls(t, sym, first, h)
		compareRooms(t, sym, first, h)
	}
	return first != nil
}

func compareWalls(t *testing.T, sym geom.Symmetry, first, h *House) {
	t.Helper()
	for i := range h.Walls {
		got, was := &h.Walls[i], &first.Walls[i]
		if got.Body != sym.Rect(was.Body) || got.Frame != sym.Rect(was.Frame) {
			t.Errorf("image %d, wall %s: got %v %v, want the image of %v %v", sym, got.ID, got.Body, got.Frame, was.Body, was.Frame)
		}
		rooms := was.RoomAt
		if sym.Mirrors() {
			rooms[0], rooms[1] = rooms[1], rooms[0]
		}
		if got.RoomAt != rooms {
			t.Errorf("image %d, wall %s: got rooms %v, want %v", sym, got.ID, got.RoomAt, rooms)
		}
	}
}

func compareRooms(t *testing.T, sym geom.Symmetry, first, h *House) {
	t.Helper()
	for i := range h.Rooms {
		outlines := func(h *House) []geom.Polygon {
			all := slices.Clone(h.Rooms[i].Holes)
			for k, p := range all {
				all[k] = sortedPoints(p)
			}
			return append(all, sortedPoints(h.Rooms[i].Outline), sortedPoints(h.OutsideOf), sortedPoints(h.PlateLine))
		}
		want := outlines(first)
		for k, p := range want {
			want[k] = sortedPoints(sym.Polygon(p))
		}
		order := func(a, b geom.Polygon) int { return comparePoints(a[0], b[0]) }
		got := outlines(h)
		slices.SortFunc(got, order)
		slices.SortFunc(want, order)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("image %d, room %s: %s", sym, h.Rooms[i].ID, diff)
		}
	}
}

func comparePoints(a, b geom.Point) int {
	return gocmp.Or(gocmp.Compare(a.X, b.X), gocmp.Compare(a.Y, b.Y))
}

func sortedPoints(p geom.Polygon) geom.Polygon {
	return slices.SortedFunc(slices.Values(p), comparePoints)
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
