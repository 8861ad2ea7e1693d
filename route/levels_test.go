package route

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
)

// tower is a small house of two storeys over an open basement, one room each,
// with a wall across the middle of both storeys that stand in line. All walls are
// 2x4; joists are 24in on centre.
const tower = `
[house]
name = "Tower"
units = "imperial"
sketch_error = "0in"
[[level]]
id = "basement"
floor = "-8ft"
ceiling = "7ft"
plate_top = "7ft"
[[level]]
id = "ground"
floor = "0ft"
ceiling = "8ft"
plate_top = "8ft 1/2in"
[[level]]
id = "upper"
floor = "9ft"
ceiling = "8ft"
plate_top = "8ft 1/2in"
%s
[[floor]]
id = "lower"
under = "ground"
over = "basement"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
depth = "11-1/4in"
subfloor = "3/4in"
[[floor]]
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
room = "upper-left"
at = ["4ft", "6ft"]
size = ["22in", "30in"]
`

// storey is the walls and rooms of one level of the tower.
func storey(level string, split bool, ceiling string) string {
	out := fmt.Sprintf(`
[[wall]]
id = "%[1]s"
level = "%[1]s"
start = ["0ft", "0ft"]
run = "E 16ft, N 12ft, W 16ft, S 12ft"
names = ["%[1]s-s", "%[1]s-e", "%[1]s-n", "%[1]s-w"]
closes = true
face = "right"
exterior = true
cladding = "1in"
[[room]]
id = "%[1]s-left"
level = "%[1]s"
name = "Left"
at = ["3ft", "3ft"]
ceiling = "%[2]s"
`, level, ceiling)
	if split {
		out += fmt.Sprintf(`
[[wall]]
id = "%[1]s-m"
level = "%[1]s"
start = { wall = "%[1]s-s", at = "8ft" }
run = "N 12ft"
[[room]]
id = "%[1]s-right"
level = "%[1]s"
name = "Right"
at = ["12ft", "3ft"]
`, level)
	}
	return out
}

func towerHouse() string {
	return fmt.Sprintf(tower, storey("basement", false, "open")+storey("ground", true, "board")+storey("upper", true, "board"))
}

func towerJob(t testing.TB, drops string) *plan.Job {
	t.Helper()
	return jobIn(t, towerHouse(), basementPanel+drops)
}

const basementPanel = `
[closet]
name = "Panel"
room = "basement-left"
ceiling = ["3ft", "3ft"]
height = "5ft"
ports = 24
`

// jobIn is a job in a house.
func jobIn(t testing.TB, house, rest string) *plan.Job {
	t.Helper()
	files := map[string]string{"house.toml": house, "job.toml": `house = "house.toml"
[job]
name = "Tower"
` + rest + `
[tools]
rods = "18ft"
arm = "26in"
extension = "36in"
bits = [{ size = "3/4in", reach = "54in", flexible = true }, { size = "1in", reach = "54in", flexible = true }]
[rates]
currency = "USD"
hour = 60
`}
	job, list := plan.LoadJob("job.toml", func(name string) ([]byte, error) {
		if text, ok := files[name]; ok {
			return []byte(text), nil
		}
		return nil, fmt.Errorf("no file %s", name)
	})
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the house or the job does not load")
	}
	return job
}

// towerDrops are one drop on each storey and one in the upper ceiling.
const towerDrops = `
[[drop]]
tag = "A"
kind = "wall plate"
wall = "ground-m"
side = "left"
at = "4ft"
shift = "8in"
[[drop]]
tag = "B"
kind = "wall plate"
wall = "upper-m"
side = "left"
at = "4ft"
shift = "8in"
[[drop]]
tag = "C"
kind = "ceiling point"
at = { room = "upper-right", east = "3ft", south = "4ft" }
shift = "8in"
`

// byTag are the routes of a result by the tags of their drops.
func byTag(res *Result) map[string]*Route {
	out := map[string]*Route{}
	for i := range res.Routes {
		out[res.Job.Drops[res.Routes[i].Drop].Tag] = &res.Routes[i]
	}
	return out
}

// kinds lists the kinds of the legs of a route.
func kinds(r *Route) []ArcKind {
	var out []ArcKind
	for i := range r.Legs {
		if k := r.Legs[i].Kind; len(out) == 0 || out[len(out)-1] != k {
			out = append(out, k)
		}
	}
	return out
}

// Lengths by hand, with square corners: from the panel at (3ft, 3ft), 3ft under
// the ground floor, to each place. The walls of both storeys stand in line at
// x = 8ft, so that all go straight up through both.
func TestTower(t *testing.T) {
	res := solved(t, towerJob(t, towerDrops))
	routes := byTag(res)
	for _, c := range []struct {
		tag, length string // over, along and up
		holes       []ArcKind
	}{
		{"A", "10ft", []ArcKind{SoleArc}},                                          // 5 + 1 + 4
		{"B", "19ft", []ArcKind{SoleArc, PlateArc, SoleArc}},                       // 5 + 1 + 13
		{"C", "32ft", []ArcKind{SoleArc, PlateArc, SoleArc, PlateArc, CeilingArc}}, // 9-7/12 + 1-5/12 + 20 and 1/2in more up and down, and over a joist 5-1/2in and back
	} {
		r := routes[c.tag]
		want, err := measure.Parse(c.length)
		if err != nil {
			t.Fatal(err)
		}
		if r.Lengths.Developed != want {
			t.Errorf("%s: %v; want %v", c.tag, r.Lengths.Developed, want)
		}
		var holes []ArcKind
		for _, l := range r.Legs {
			if l.Hole >= 0 {
				holes = append(holes, l.Kind)
			}
		}
		if !slices.Equal(holes, c.holes) {
			t.Errorf("%s: holes %v; want %v", c.tag, holes, c.holes)
		}
	}
	if n := len(res.Holes); n != 5 {
		t.Errorf("%d holes; the cables share all but one, want 5", n)
	}
}

// From below, standing in the basement, a bottom plate is bored from there; the
// top plate under a closed floor only from the box.
func TestTowerIsBoredFromWhereOneStands(t *testing.T) {
	res := solved(t, towerJob(t, towerDrops))
	for i := range res.Holes {
		p := &res.Graph.Holes[res.Holes[i].Place]
		low := res.Job.House.Spaces[p.Space].ID == "lower"
		attic := res.Job.House.Spaces[p.Space].Kind == plan.AtticSpace
		if p.FromSpace != (low || attic) {
			t.Errorf("%s in %s: from its space %v", p.Kind, res.Job.House.Spaces[p.Space].ID, p.FromSpace)
		}
	}
}

// closedFloor are drops about the floor between the tower's storeys.
const closedFloor = `
[[drop]]
tag = "B"
kind = "wall plate"
wall = "upper-m"
side = "left"
at = "4ft"
shift = "8in"
[[drop]]
tag = "N"
kind = "ceiling point"
at = { room = "ground-left", east = "4in", south = "8ft" }
shift = "2in"
[[drop]]
tag = "X"
kind = "ceiling point"
at = { room = "ground-left", west = "4ft", south = "8ft" }
shift = "2in"
[[drop]]
tag = "G"
kind = "wall plate"
wall = "ground-m"
side = "left"
at = "4ft"
shift = "8in"
`

// In a closed floor cable goes along a joist bay and not across: a ceiling point
// in the bay of the wall's hole is reached, one in another bay is not, unless the
// ceiling may be patched.
func TestClosedFloor(t *testing.T) {
	routes := byTag(solved(t, towerJob(t, closedFloor)))
	if r := routes["N"]; r.Blocked != nil || !slices.Contains(kinds(r), RodArc) {
		t.Errorf("N, in the bay of the holes: %v", r.Blocked)
	}
	x := routes["X"]
	if x.Blocked == nil {
		t.Fatalf("X, two joists away, has the way %v", kinds(x))
	}
	if b := x.Blocked.Blocks[0]; !strings.Contains(b.Found, "closed") || b.Change == "" {
		t.Errorf("X is told %q, and %q as a change", b.Found, b.Change)
	}
	patched := byTag(solved(t, towerJob(t, closedFloor+"\n[allow]\npatching = true\n")))
	if r := patched["X"]; r.Blocked != nil || !slices.Contains(kinds(r), JoistArc) {
		t.Errorf("X, with patching: %v, %v", r.Blocked, kinds(r))
	}
}

// The graphs of houses of several levels, given to an integer programme, have the
// optimum that is found: the cables on all levels together.
func TestLevelsAgainstHiGHS(t *testing.T) {
	const chase = "[[chase]]\nid = \"stack\"\nfrom = [\"6ft\", \"3ft\"]\nto = [\"7ft\", \"4ft\"]\nlevels = [\"basement\", \"ground\"]\n"
	const south = "[[drop]]\ntag = \"S\"\nkind = \"soffit spot\"\ncable = \"cat6-outdoor\"\nwall = \"ground-s\"\nat = \"5ft\"\nshift = \"12in\"\n"
	const knee = "[[drop]]\ntag = \"K\"\nkind = \"wall plate\"\nwall = \"upper-s\"\nside = \"left\"\nat = \"10ft\"\nheight = \"16in\"\nshift = \"8in\"\n"
	const loft = "[[drop]]\ntag = \"U\"\nkind = \"ceiling point\"\nat = [\"12ft\", \"12ft\"]\nlevel = \"upper\"\nshift = \"8in\"\n"
	jobs := map[string]*plan.Job{
		"tower":             towerJob(t, towerDrops),
		"tower, dear bends": towerJob(t, towerDrops+"[prices]\nbend = 3\n"),
		"cottage":           jobIn(t, cottage(true, ""), basementPanel+strings.Replace(ceilingDrop, "count = 4", "count = 1", 1)+south),
		"cottage, chase":    jobIn(t, cottage(true, chase), basementPanel+strings.Replace(ceilingDrop, "count = 4", "count = 2", 1)+south),
		"lodge":             jobIn(t, lodge, lodgePanel+knee+loft),
	}
	for name, job := range jobs {
		res := solved(t, job)
		if want := byHiGHS(t, res.Graph, nil); res.Cost.Total != want || res.Cost.LowerBound > want {
			t.Errorf("%s: cost %d, bound %d; HiGHS finds %d", name, res.Cost.Total, res.Cost.LowerBound, want)
		}
	}
}
