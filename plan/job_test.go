package plan

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// jobOf loads a fragment of a job, completed from the base, in a house.
func jobOf(t testing.TB, fragment, house string) *Job {
	t.Helper()
	j, list := loadBoth(complete(t, "house = \"house.toml\"\n"+fragment, "testdata/base_job.toml"), house)
	if j == nil {
		t.Fatalf("not loaded:\n%s", print(t, list))
	}
	return j
}

// TestPlaceFromCorner stands in a room, faces each of its walls, and measures
// from the corner on the left or on the right.
//
// The bedroom reaches from 5 in to 13 ft 9-3/4 in east and from 5 in to
// 19 ft 7 in north. Facing west, south is on the left, and so on round.
func TestPlaceFromCorner(t *testing.T) {
	house := complete(t, "", "testdata/base_house.toml")
	for _, tt := range []struct {
		room, wall, from string
		x, y, along      string
		side             Side
	}{
		{"bed", "west", "left", "5in", "6ft 5in", "13ft 7in", Left},         // 20 ft - 6 ft 5 in from the north end
		{"bed", "west", "right", "5in", "13ft 7in", "6ft 5in", Left},        // 19 ft 7 in - 6 ft
		{"bed", "south", "left", "7ft 9-3/4in", "5in", "7ft 9-3/4in", Left}, // 13 ft 9-3/4 in - 6 ft
		{"bed", "south", "right", "6ft 5in", "5in", "6ft 5in", Left},
		{"bed", "north", "left", "6ft 5in", "19ft 7in", "23ft 7in", Left}, // 30 ft - 6 ft 5 in
		{"bed", "north", "right", "7ft 9-3/4in", "19ft 7in", "22ft 2-1/4in", Left},
		{"bed", "middle", "left", "13ft 9-3/4in", "13ft 7in", "13ft 7in", Left},
		{"bed", "middle", "right", "13ft 9-3/4in", "6ft 5in", "6ft 5in", Left},
		// From the other room the same wall is faced the other way.
		{"living", "middle", "left", "14ft 2-1/4in", "6ft 5in", "6ft 5in", Right},
		{"living", "middle", "right", "14ft 2-1/4in", "13ft 7in", "13ft 7in", Right},
		{"living", "south", "left", "23ft 7in", "5in", "23ft 7in", Left}, // 29 ft 7 in - 6 ft
	} {
		j := jobOf(t, "[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nat = \"6ft\"\nroom = \""+tt.room+"\"\nwall = \""+tt.wall+"\"\nfrom = \""+tt.from+"\"\n", house)
		d := j.Drops[0]
		w := &j.House.Walls[d.Spot.Wall]
		if got, want := w.FacePoint(d.Spot.At, d.Spot.Side), (geom.Point{X: at(t, tt.x), Y: at(t, tt.y)}); got != want {
			t.Errorf("%s from the %s in %s: got %v, want %v", tt.wall, tt.from, tt.room, got, want)
		}
		if d.Spot.At != at(t, tt.along) || d.Spot.Side != tt.side || w.ID != tt.wall || j.House.Rooms[d.Room].ID != tt.room {
			t.Errorf("%s from the %s in %s: got %+v, want %s along, %v", tt.wall, tt.from, tt.room, d, tt.along, tt.side)
		}
	}
}

// TestPlaceAtIsland measures on a wall of a core that stands free in a room.
// Its walls are 4-1/2 in thick about a square from 20 to 24 ft east and 8 to
// 12 ft north.
func TestPlaceAtIsland(t *testing.T) {
	house := sketches["island"].toml(0)
	closet := "[closet]\nname = \"Panel\"\nroom = \"core\"\nceiling = [\"22ft\", \"10ft\"]\nports = 8\n\n"
	for _, tt := range []struct {
		room string
		want geom.Point
		side Side
	}{
		// Facing north from outside, west is on the left: 1 ft from 19 ft 9-3/4 in.
		{"living", geom.Point{X: at(t, "20ft 9-3/4in"), Y: at(t, "7ft 9-3/4in")}, Right},
		// Facing south from inside, east is: 1 ft from 23 ft 9-3/4 in.
		{"core", geom.Point{X: at(t, "22ft 9-3/4in"), Y: at(t, "8ft 2-1/4in")}, Left},
	} {
		j := jobOf(t, closet+"[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nat = \"1ft\"\nwall = \"core.1\"\nroom = \""+tt.room+"\"\n", house)
		s := j.Drops[0].Spot
		if got := j.House.Walls[s.Wall].FacePoint(s.At, s.Side); got != tt.want || s.Side != tt.side {
			t.Errorf("from %s: got %v on the %v, want %v on the %v", tt.room, got, s.Side, tt.want, tt.side)
		}
		// The whole of the core is no part of the living room around it.
		if room := j.House.RoomOn(0, geom.Point{X: 22 * foot, Y: 10 * foot}); j.House.Rooms[room].ID != "core" {
			t.Errorf("the core is in %v", room)
		}
	}
}

// TestPlaceInTwoStretches asks for a wall that a stub divides for the room. The
// wall runs south from 20 ft; the stub is 4-1/2 in thick about 10 ft.
func TestPlaceInTwoStretches(t *testing.T) {
	house := complete(t, "# WITH wall\n[[wall]]\nid = \"stub\"\nstart = [\"0ft\", \"10ft\"]\nrun = \"E 2ft\"\n", "testdata/base_house.toml")
	_, list := loadBoth(complete(t, "house = \"house.toml\"\n", "testdata/base_job.toml"), house)
	want := `job.toml:19:8: error: drop[0].wall: found wall west, which bounds room bed in 2 places; want at from a thing on it, such as "2ft left of wall north", or side = "left" or "right" instead of room, and at along the wall`
	if got := print(t, list); !strings.HasPrefix(got, want) {
		t.Errorf("got %s, want %s", got, want)
	}
	j := jobOf(t, "[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nwall = \"west\"\nside = \"left\"\nat = \"6ft\"\n", house)
	if d := j.Drops[0]; d.Room != 0 || d.Spot.At != 6*foot {
		t.Errorf("got %+v", d)
	}
	// From the room north is on the right. Both stretches can be measured on.
	for from, want := range map[string]string{"2ft right of wall stub": "7ft 9-3/4in", "2ft left of wall stub": "12ft 2-1/4in"} {
		j := jobOf(t, "[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nwall = \"west\"\nroom = \"bed\"\nat = \""+from+"\"\n", house)
		if s := j.Drops[0].Spot; s.Room != 0 || s.Side != Left || s.At != at(t, want) {
			t.Errorf("%s: got %+v, want %s", from, s, want)
		}
	}
	_, list = loadBoth(complete(t, "house = \"house.toml\"\n\n[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nwall = \"stub\"\nroom = \"bed\"\nat = \"1ft left of wall west\"\n", "testdata/base_job.toml"), house)
	if got, want := print(t, list), "found room bed on both sides of wall stub; want side ="; !strings.Contains(got, want) {
		t.Errorf("got %s, want %s", got, want)
	}
	_, list = loadBoth(complete(t, "house = \"house.toml\"\n\n[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nwall = \"west\"\nroom = \"bed\"\nat = \"11ft right of wall stub\"\n", "testdata/base_job.toml"), house)
	if got, want := print(t, list), "which is not in room bed; want it from "; !strings.Contains(got, want) || !strings.Contains(got, " or from ") {
		t.Errorf("got %s, want %s", got, want)
	}
}

// TestInnerCorner measures from the corner of the room where the outer wall is
// taped in two legs in line.
func TestInnerCorner(t *testing.T) {
	house := strings.NewReplacer(
		`"E 30ft, N`, `"E 6ft, E 24ft, N`, `["south"`, `["porch", "south"`, `at = "14ft"`, `at = "8ft"`,
	).Replace(complete(t, "", "testdata/base_house.toml"))
	// Facing south in the bedroom, its corner on the right is at 5 in, on
	// porch; 8 ft from it is 8 ft 5 in, which is 2 ft 5 in along south.
	j := jobOf(t, "[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nroom = \"bed\"\nwall = \"south\"\nfrom = \"right\"\nat = \"8ft\"\n", house)
	if got := j.Drops[0].Spot.At; got != at(t, "2ft 5in") {
		t.Errorf("got %v", got)
	}
	if got, want := len(j.House.PlateLine), 4; got != want {
		t.Errorf("the outline has %d corners, want %d", got, want)
	}
}

// TestSoffitSpot works out places under the overhang: 16 in beyond the plate,
// 15 in beyond the cladding, half of which is 7-1/2 in.
func TestSoffitSpot(t *testing.T) {
	house := complete(t, "", "testdata/base_house.toml")
	for _, tt := range []struct {
		keys string
		want geom.Point
	}{
		{"wall = \"south\"\nat = \"10ft\"", geom.Point{X: 10 * foot, Y: -15 * inch / 2}},
		{"wall = \"south\"\nat = \"10ft\"\nfrom = \"end\"\nout = \"15in\"", geom.Point{X: 20 * foot, Y: -15 * inch}},
		{"wall = \"east\"\nat = \"1ft\"\nout = \"3in\"", geom.Point{X: 30*foot + 3*inch, Y: 1 * foot}},
		{"wall = \"north\"\nat = \"1ft\"\nout = \"3in\"", geom.Point{X: 29 * foot, Y: 20*foot + 3*inch}},
		{"wall = \"west\"\nat = \"1ft\"\nout = \"3in\"", geom.Point{X: -3 * inch, Y: 19 * foot}},
	} {
		d := jobOf(t, "[[drop]]\ntag = \"A\"\nkind = \"soffit spot\"\n"+tt.keys+"\n", house).Drops[0]
		if d.Point != tt.want || d.Room != -1 || d.Eave < 0 {
			t.Errorf("%s: got %+v, want %v", tt.keys, d, tt.want)
		}
	}
}

func TestJobDefaults(t *testing.T) {
	imperial := complete(t, "", "testdata/base_house.toml")
	metric := strings.Replace(imperial, `units = "imperial"`, `units = "metric"`, 1)
	for _, tt := range []struct {
		house string
		tools Tools
		slack Slack
		drop  measure.Length
		width measure.Length
	}{
		{
			imperial,
			Tools{Rods: 15 * foot, ArmReach: 24 * inch, Bits: defaultBits},
			Slack{Closet: 10 * foot, Outlet: 12 * inch, Trim: 6 * inch, Percent: 5, Round: 1 * foot},
			12 * inch, 14 * inch,
		},
		{
			metric,
			Tools{Rods: 4500 * mm, ArmReach: 600 * mm, Bits: defaultBits},
			Slack{Closet: 3000 * mm, Outlet: 300 * mm, Trim: 150 * mm, Percent: 5, Round: 500 * mm},
			300 * mm, 350 * mm,
		},
	} {
		j := jobOf(t, "", tt.house)
		tt.tools.Pos = j.Tools.Pos
		if diff := cmp.Diff(tt.tools, j.Tools); diff != "" {
			t.Error(diff)
		}
		if diff := cmp.Diff(tt.slack, j.Slack); diff != "" {
			t.Error(diff)
		}
		if j.Drops[0].Spot.Height != tt.drop || j.Closet.Width != tt.width || j.Drops[0].Cable.ID != "cat6" || j.Drops[0].Count != 1 {
			t.Errorf("got %+v and %+v", j.Drops[0], j.Closet)
		}
		if len(j.Limits)+len(j.Prices) != 0 || j.Allow.Patching || j.Rates != defaultRates || j.Weights != EvenWeights {
			t.Errorf("got %+v", j)
		}
	}
}

func TestJobTerms(t *testing.T) {
	house := complete(t, "[[obstacle]]\nid = \"flue\"\nkind = \"flue\"\nfrom = [\"8ft\", \"8ft\"]\nto = [\"9ft\", \"9ft\"]\ntop = \"9ft\"\n\n"+
		"[[obstacle]]\nid = \"own\"\nkind = \"flue\"\nfrom = [\"18ft\", \"8ft\"]\nto = [\"19ft\", \"9ft\"]\ntop = \"9ft\"\nclearance = \"5in\"\n", "testdata/base_house.toml")
	j := jobOf(t, "[limits]\nplate-bore = 40\nhot-flue = \"4in\"\n[prices]\nbend = 0.25\n[rates]\ncurrency = \"EUR\"\nhour = 62.5\n[weights]\nopenings = 2.5\ncable = 0.1\n", house)
	for id, want := range map[string]int64{"plate-bore": 40, "hot-flue": int64(4 * inch)} {
		if got := j.Limits[id]; got.Value != want || got.Pos.File != "job.toml" || got.Pos.Line == 0 {
			t.Errorf("%s: got %+v, want %d", id, got, want)
		}
	}
	if got := j.Prices["bend"].Value; got != 250 {
		t.Errorf("bend: got %d thousandths, want 250", got)
	}
	if want := (Rates{Currency: "EUR", Hour: 62_500}); j.Rates != want {
		t.Errorf("got %+v, want %+v", j.Rates, want)
	}
	if want := (Weights{Openings: 2500, Crawling: 1000, Cable: 100}); j.Weights != want {
		t.Errorf("got %+v, want %+v", j.Weights, want)
	}
	// The job's limit goes for what the house file leaves to the rules.
	if got := j.House.Obstacles[0].Clearance; got != 4*inch {
		t.Errorf("got %v round the flue", got)
	}
	if got := j.House.Obstacles[1].Clearance; got != 5*inch {
		t.Errorf("got %v round the flue with its own clearance", got)
	}
}

func TestBothFilesAtOnce(t *testing.T) {
	job := "house = \"house.toml\"\n[job]\nname = \"\"\n"
	house := "[house]\nname = \"\"\n"
	_, list := loadBoth(job, house)
	got := print(t, list)
	for _, want := range []string{
		"job.toml:3:8: error: job.name: found 0 characters",
		"job.toml:1:1: error: closet: missing",
		"job.toml:1:1: error: drop: missing",
		"house.toml:2:8: error: house.name: found 0 characters",
		"house.toml:1:2: error: house.units: missing",
		"house.toml:1:1: error: wall: missing",
		"house.toml:1:1: error: room: missing",
		"house.toml:1:1: error: hatch: found no [[hatch]]",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("not said: %s\n%s", want, got)
		}
	}
}

// TestHousePath points a job at what is not a house, on a disk.
func TestHousePath(t *testing.T) {
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	write := func(name, src string) {
		if err := os.WriteFile(in(name), []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("good.toml", complete(t, "", "testdata/base_house.toml"))
	write("large.toml", "")
	if err := os.Truncate(in("large.toml"), 50<<20); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(in("folder"), 0o700); err != nil {
		t.Fatal(err)
	}
	for from, to := range map[string]string{"a": "b", "b": "a"} {
		if err := os.Symlink(in(to), in(from)); err != nil {
			t.Fatal(err)
		}
	}
	for _, tt := range []struct{ house, want string }{
		{"good.toml", ""},
		{"./folder/../good.toml", ""},
		{in("good.toml"), ""},
		{"folder", "folder\": it is a folder, not a file"},
		{"nothing.toml", "nothing.toml\": there is no such file"},
		{"a", "a\": its links go round in a circle"},
		{"large.toml", "large.toml\": it is larger than"},
		{"", "it is a folder, not a file"},
	} {
		write("job.toml", complete(t, "house = '"+tt.house+"'\n", "testdata/base_job.toml"))
		job, list := LoadJob(in("job.toml"), source.ReadFile)
		got := print(t, list)
		if (job != nil) != (tt.want == "") || !strings.Contains(got, tt.want) {
			t.Errorf("house %q: got %q, want %q", tt.house, got, tt.want)
		}
		if tt.want != "" && !strings.Contains(got, "job.toml:1:9: error: house: cannot read") {
			t.Errorf("house %q: not at its place: %q", tt.house, got)
		}
	}
	if _, list := LoadJob(in("none.toml"), source.ReadFile); !strings.Contains(print(t, list), "there is no such file") {
		t.Errorf("a job that is not there: %s", print(t, list))
	}
}
