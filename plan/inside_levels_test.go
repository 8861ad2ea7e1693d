package plan

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
)

// TestInsideLevels holds a house of two levels, both by the inside dimensions of
// their rooms, against coordinates that were added by hand. Walls are as thick as
// in TestInside.
//
// Below, the kitchen is 12ft wide and the living room begins at 12ft 4-1/2in and
// ends at 26ft 4-1/2in; both are 14ft deep. Above, the bedroom is 16ft wide; the
// landing and the bathroom begin at 16ft 4-1/2in and end as far east as the
// living room. The landing is 5ft deep, the bathroom goes on from 5ft 4-1/2in to
// 14ft.
func TestInsideLevels(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	const scan = "\n[[underlay]]\nid = \"scan\"\nlevel = \"upper\"\nfile = \"scan.png\"\ndots = [[0, 0], [300, 0]]\nat = [[\"0ft\", \"0ft\"], [\"26ft\", \"0ft\"]]\n"
	h, list := LoadHouse("house.toml", append(src, scan...))
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	if len(h.Underlays) != 1 || h.Underlays[0].Level != 1 {
		t.Errorf("got underlays %+v", h.Underlays)
	}
	for _, c := range []struct {
		id                       string
		level                    int
		west, south, east, north string
		bearing                  bool
	}{
		{"street", 0, "-5in", "-5in", "26ft 9-1/2in", "0ft", true},
		{"east", 0, "26ft 4-1/2in", "-5in", "26ft 9-1/2in", "14ft 5in", true},
		{"kitchen-living", 0, "12ft", "0ft", "12ft 4-1/2in", "14ft", false},
		{"u-street", 1, "-5in", "-5in", "26ft 9-1/2in", "0ft", true},
		{"upper-north", 1, "-5in", "14ft", "26ft 9-1/2in", "14ft 5in", true},
		{"upper-west", 1, "-5in", "-5in", "0ft", "14ft 5in", true},
		{"u-spine", 1, "16ft", "0ft", "16ft 4-1/2in", "5ft 2-1/4in", true},
		{"u-bath-u-bed", 1, "16ft", "5ft 2-1/4in", "16ft 4-1/2in", "14ft", false},
		{"u-bath-u-hall", 1, "16ft 4-1/2in", "5ft", "26ft 4-1/2in", "5ft 4-1/2in", false},
	} {
		w := wall(t, h, c.id)
		if w == nil {
			continue
		}
		if want := box(t, c.west, c.south, c.east, c.north); w.Body != want || w.Level != c.level || w.Bearing != c.bearing {
			t.Errorf("%s is %v on level %d, %v; want %v", c.id, w.Body, w.Level, w.Bearing, want)
		}
	}
	if len(h.Walls) != 12 || len(h.Rooms) != 5 {
		t.Errorf("got %d walls and %d rooms", len(h.Walls), len(h.Rooms))
	}
	for i := range h.Levels {
		want := box(t, "-5in", "-5in", "26ft 9-1/2in", "14ft 5in")
		if got := h.Levels[i].OutsideOf; len(got) != 4 || got.Bounds() != want {
			t.Errorf("the outer face of level %d is %v, want %v", i, got, want)
		}
	}
	for _, r := range h.Rooms {
		if want := map[string]string{"kitchen": "kitchen", "u-hall": "stairs", "u-bath": "bath"}[r.ID]; r.Use != want || (r.Level == 1) != strings.HasPrefix(r.ID, "u-") {
			t.Errorf("%s is used as %q on level %d", r.ID, r.Use, r.Level)
		}
	}
	// Faced from the bedroom, from zero: 18in. Faced from the kitchen: 4ft.
	if got, want := wall(t, h, "u-spine").Openings[0].Start, at(t, "1ft 6in"); got != want {
		t.Errorf("door1 is at %s, want %s", got, want)
	}
	if got, want := wall(t, h, "kitchen-living").Devices[0].At, at(t, "4ft"); got != want {
		t.Errorf("R1 is at %s, want %s", got, want)
	}
}

// A room may be placed by the faces of a room on another level, and one that names
// no level is then on the level of that room: 16ft of 26ft 4-1/2in from the east is
// 10ft 4-1/2in.
func TestInsideOverAnother(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(src), "at = [\"0ft\", \"0ft\"]\n\n[[inside]]\nid = \"u-hall\"", "at = { room = \"living\", west = \"-12ft 4-1/2in\", north = \"14ft\" }\n\n[[inside]]\nid = \"u-hall\"", 1)
	text = strings.Replace(text, "depth = \"5ft\"\neast_of = \"u-bed\"\nline_of = \"living\"", "depth = \"5ft\"\nat = { room = \"u-bed\", east = \"-4-1/2in\", south = \"0in\" }", 1)
	if strings.Count(text, "at = { room = \"") != 3 {
		t.Fatal("the file is not as it was")
	}
	h, list := LoadHouse("house.toml", []byte(text))
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	again, _ := LoadHouse("house.toml", src)
	if diff := cmp.Diff(describe(again), describe(h)); diff != "" {
		t.Errorf("by points and beside each other (-), over one another (+)\n%s", diff)
	}
}

// Places of a job look at the walls of their level: the bathroom's wall is at 5ft
// 4-1/2in, and its wall to the bedroom begins at 5ft 2-1/4in. The outer wall in the west runs
// south from 14ft; seen from the room, south of it is on the left.
func TestPlacesOnInsideLevels(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	job := func(keys string) string {
		return "house = \"house.toml\"\n[job]\nname = \"Network\"\n[closet]\nname = \"Panel\"\nbetween = [\"kitchen\", \"living\"]\nat = \"2ft left of R1\"\nheight = \"5ft\"\nports = 12\n" +
			"[[drop]]\ntag = \"A1\"\nkind = \"wall plate\"\n" + keys
	}
	for _, tt := range []struct{ keys, want, said string }{
		{"between = [\"u-bed\", \"u-bath\"]\nat = \"4ft left of wall u-bath-u-hall\"\n", "4ft 2-1/4in", ""},
		{"between = [\"u-bed\", \"kitchen\"]\nat = \"4ft\"\n", "", "found rooms u-bed on level upper and kitchen on level ground; want rooms of one level"},
		{"room = \"u-bed\"\nwall = \"upper-west\"\nat = \"4ft left of wall street\"\n", "", "found wall street, which does not meet wall upper-west; the nearest is \"u-street\""},
		{"room = \"u-bed\"\nwall = \"upper-west\"\nat = \"4ft right of wall u-street\"\n", "10ft", ""},
	} {
		j, list := loadBoth(job(tt.keys), string(src))
		said := print(t, list)
		if (j != nil) != (tt.said == "") || !strings.Contains(said, tt.said) {
			t.Errorf("%s: want %q, said\n%s", tt.keys, tt.said, said)
			continue
		}
		if tt.want != "" && j.Drops[0].Spot.At != at(t, tt.want) {
			t.Errorf("%s: got %s, want %s", tt.keys, j.Drops[0].Spot.At, tt.want)
		}
	}
}

// The same rooms on a second level get the same walls there, and those of the
// first are as without it.
func TestInsideLevelsAreAlike(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_house.toml")
	if err != nil {
		t.Fatal(err)
	}
	one, list := LoadHouse("house.toml", src)
	if one == nil {
		t.Fatal(print(t, list))
	}
	// Rooms of the second level, whose ids are those of the first with a letter
	// before them, in its order of the alphabet.
	both := strings.Replace(string(src), "[[inside]]", "[[level]]\nid = \"up\"\nfloor = \"8ft 10-5/8in\"\nceiling = \"8ft\"\n\n[[inside]]", 1)
	for block := range strings.SplitSeq(string(src), "\n\n") {
		if !strings.HasPrefix(block, "[[inside]]") {
			continue
		}
		for _, key := range []string{"id", "east_of", "north_of", "west_of", "south_of", "line_of"} {
			block = strings.ReplaceAll(block, "\n"+key+" = \"", "\n"+key+" = \"z")
		}
		both += "\n" + block + "\nlevel = \"up\"\n"
	}
	both += "\n[[floor]]\nid = \"between\"\nunder = \"up\"\nover = \"" + one.Levels[0].ID + "\"\njoists_run = \"N\"\njoist = \"sawn\"\nspacing = \"16in\"\nfirst = \"16in\"\nsize = \"2x10\"\n"
	both = strings.Replace(both, "room = \"hall\"\nat = { room = \"hall\"", "room = \"zhall\"\nat = { room = \"zhall\"", 1)
	two, list := LoadHouse("house.toml", []byte(both))
	if two == nil {
		t.Fatal(print(t, list))
	}
	checkHouse(t, two)
	if len(two.Walls) != 2*len(one.Walls) {
		t.Fatalf("got %d walls, then %d", len(one.Walls), len(two.Walls))
	}
	bodies := map[geom.Rect]int{}
	for i := range two.Walls {
		bodies[two.Walls[i].Body] += 1 + 10*two.Walls[i].Level
	}
	for i := range one.Walls {
		w := &one.Walls[i]
		if bodies[w.Body] != 12 {
			t.Errorf("%s is not on both levels", w.ID)
		}
		if again := wall(t, two, w.ID); again != nil && (again.Level != 0 || again.Body != w.Body) {
			t.Errorf("%s is %v on level %d, and was %v", w.ID, again.Body, again.Level, w.Body)
		}
	}
}

func TestInsideLevelsTold(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ old, new, want string }{
		{"east_of = \"u-bed\"", "east_of = \"u-bed\"\nlevel = \"ground\"", "found level ground for a room beside room u-bed of level upper; want that level"},
		{"east_of = \"kitchen\"", "at = { room = \"living\", west = \"0ft\", south = \"0ft\" }", "found rooms that are measured from each other in a circle"},
		{"level = \"upper\"\nwidth", "level = \"uper\"\nwidth", `found "uper", which is no level`},
		{"names = { south", "fire_blocks = [\"9ft\"]\nnames = { south", "found a row of blocking at 9ft; want one above the floor and below the top of the plates at 8ft 5/8in"},
		{"upper-south = ", "upper-soth = ", "upper-soth: unknown key"},
		{"between = [\"u-bed\", \"u-hall\"]\nbearing", "between = [\"u-bed\", \"living\"]\nbearing", "found no wall between rooms u-bed and living"},
		{"[[opening]]", "[[wall]]\nid = \"shed\"\nlevel = \"upper\"\nstart = [\"40ft\", \"0ft\"]\nrun = \"E 8ft, N 8ft, W 8ft, S 8ft\"\ncloses = true\nexterior = true\n\n[[opening]]", "found a second closed exterior run on level upper"},
		{"[[opening]]", "[[wall]]\nid = \"stub\"\nlevel = \"ground\"\nstart = { wall = \"u-spine\", at = \"2ft\" }\nrun = \"E 2ft\"\n\n[[opening]]", "found level ground for walls that start on wall u-spine of level upper"},
		{"[[opening]]", "[[wall]]\nid = \"stub\"\nstart = { wall = \"u-spine\", at = \"2ft beyond wall street\" }\nrun = \"E 2ft\"\n\n[[opening]]", "found wall street, which does not meet wall u-spine"},
		{"[[opening]]", "[[wall]]\nid = \"stub\"\nstart = { wall = \"u-spine\", at = \"4ft 8in beyond wall u-street\" }\nrun = \"E 2ft\"\n\n[[opening]]", ""},
	} {
		h, list := LoadHouse("house.toml", []byte(strings.Replace(string(src), tt.old, tt.new, 1)))
		said := print(t, list)
		if (h != nil) != (tt.want == "") || !strings.Contains(said, tt.want) {
			t.Errorf("%q: want %q, said\n%s", tt.new, tt.want, said)
		}
	}
}

// A level of taped walls may be under one of rooms by inside dimensions.
func TestInsideOverTaped(t *testing.T) {
	src, err := os.ReadFile("testdata/inside_levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	from, to := strings.Index(text, "[[inside]]"), strings.Index(text, "[[inside]]\nid = \"u-bed\"")
	text = text[:from] + "[[wall]]\nid = \"taped\"\nstart = [\"-5in\", \"-5in\"]\nrun = \"E 27ft 2-1/2in, N 14ft 10in, W 27ft 2-1/2in, S 14ft 10in\"\ncloses = true\nface = \"right\"\nexterior = true\n\n" +
		"[[room]]\nid = \"living\"\nname = \"Living room\"\nat = [\"5ft\", \"5ft\"]\n\n" + text[to:]
	from, to = strings.Index(text, "[[device]]"), strings.Index(text, "[[floor]]")
	text = strings.Replace(text[:from]+text[to:], "line_of = \"living\"\n", "", 1)
	text = strings.Replace(text, "south = \"street\", ", "", 1)
	h, list := LoadHouse("house.toml", []byte(text))
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	if got, want := h.Levels[0].OutsideOf.Bounds(), h.Levels[1].OutsideOf.Bounds(); got != want {
		t.Errorf("the levels are %v and %v", got, want)
	}
	// What is wrong with the rooms is told, and nothing that follows from it; nor
	// of a wall among them.
	stub := "\n[[wall]]\nid = \"stub\"\nlevel = \"upper\"\nstart = [\"5ft\", \"5ft\"]\nrun = \"E 2ft\"\n"
	for _, more := range []string{"", stub} {
		_, list = LoadHouse("house.toml", []byte(strings.Replace(text, "east_of = \"u-bed\"", "east_of = \"u-bed\"\nshift = \"-3in\"", 1)+more))
		if said := print(t, list); strings.Count(said, "error: ") != 1 || !strings.Contains(said, "outer wall with a step of 3in") {
			t.Errorf("said %s", said)
		}
	}
}
