package route

import (
	"fmt"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/randomhouse"
)

// storeys is a house of three storeys of two rooms each, whose middle walls run east
// and stand 10 ft, 8 ft and 12 ft north of the south wall: none over another.
// Joists run north, so that rods go from one wall to another in a floor, and nothing
// is open from below. The closet is in the middle wall below, the drop in that of
// the top.
const storeys = `
[house]
name = "Storeys"
units = "imperial"
[[level]]
id = "ground"
ceiling = "8ft"
[[level]]
id = "first"
floor = "9ft"
ceiling = "8ft"
[[level]]
id = "second"
floor = "18ft"
ceiling = "8ft"
[[inside]]
id = "g-south"
name = "South"
width = "20ft"
depth = "10ft"
at = ["0ft", "0ft"]
[[inside]]
id = "g-north"
name = "North"
width = "20ft"
depth = "9ft 7-1/2in"
north_of = "g-south"
[[inside]]
id = "f-south"
name = "South"
level = "first"
width = "20ft"
depth = "8ft"
at = ["0ft", "0ft"]
[[inside]]
id = "f-north"
name = "North"
width = "20ft"
depth = "11ft 7-1/2in"
north_of = "f-south"
[[inside]]
id = "s-south"
name = "South"
level = "second"
width = "20ft"
depth = "12ft"
at = ["0ft", "0ft"]
[[inside]]
id = "s-north"
name = "North"
width = "20ft"
depth = "7ft 7-1/2in"
north_of = "s-south"
[[floor]]
id = "f1"
under = "first"
over = "ground"
joists_run = "N"
joist = "i-joist"
spacing = "24in"
first = "12in"
depth = "10-5/8in"
[[floor]]
id = "f2"
under = "second"
over = "first"
joists_run = "N"
joist = "i-joist"
spacing = "24in"
first = "12in"
depth = "10-5/8in"
[attic]
level = "second"
joists_run = "N"
joist = "sawn"
spacing = "24in"
first = "12in"
size = "2x6"
[roof]
kind = "hip"
pitch = "6/12"
overhang = "12in"
rafter = "2x6"
[[hatch]]
id = "hatch"
room = "s-south"
at = { room = "s-south", west = "8ft", south = "6ft" }
size = ["22in", "30in"]
`

const storeysJob = `
house = "house.toml"
[job]
name = "Up"
[closet]
name = "Panel"
ports = 12
between = ["g-south", "g-north"]
at = "8ft"
height = "5ft"
[[drop]]
tag = "T1"
kind = "wall plate"
between = ["s-south", "s-north"]
at = "8ft"
height = "12in"
shift = "6in"
[tools]
bits = [{ size = "3/4in", reach = "8ft", flexible = true }]
`

// inStoreys solves a job in a house with more in both, and with other words for
// some.
func inStoreys(t *testing.T, house, job string, edits ...[2]string) *Result {
	t.Helper()
	texts := map[string]string{"house.toml": storeys + house, "job.toml": storeysJob + job}
	for _, e := range edits {
		for name, text := range texts {
			texts[name] = strings.ReplaceAll(text, e[0], e[1])
		}
	}
	j, list := plan.LoadJob("job.toml", func(path string) ([]byte, error) {
		if s, ok := texts[path]; ok {
			return []byte(s), nil
		}
		return nil, fmt.Errorf("no %s", path)
	})
	if j == nil {
		var b strings.Builder
		list.Print(&b, nil)
		t.Fatal(b.String())
	}
	return solved(t, j)
}

// A drop two floors up says which level nothing leads past, and each change that it
// names lifts what it says.
func TestGapPastALevel(t *testing.T) {
	const (
		found = "no hidden way to the closet: no way is known from the floor between levels first and second down past level first" +
			" to the floor between levels ground and first: no chase, conduit or wall that stands over another"
		change = "a chase or a conduit past level first, or a box on it in a wall whose bay is open up and down, or a surface raceway"
	)
	b := routeOf(t, inStoreys(t, "", ""), "T1").Blocked
	if b == nil || len(b.Blocks) != 1 || b.Blocks[0].Found != found || !strings.HasPrefix(b.Blocks[0].Change, change) {
		t.Fatalf("got %+v", b)
	}
	box := "[[drop]]\ntag = \"T2\"\nkind = \"wall plate\"\nbetween = [\"f-south\", \"f-north\"]\nat = \"8ft\"\nheight = \"12in\"\nshift = \"6in\"\n"
	if b := routeOf(t, inStoreys(t, "", box), "T1").Blocked; b != nil {
		t.Errorf("with a box on the first floor: %+v", b)
	}
	chase := "[[chase]]\nid = \"shaft\"\nfrom = [\"7ft\", \"2ft\"]\nto = [\"8ft\", \"3ft\"]\nlevels = [\"first\"]\ndown = true\n"
	if b := routeOf(t, inStoreys(t, chase, ""), "T1").Blocked; b != nil {
		t.Errorf("with a chase past the first floor: %+v", b)
	}
}

// In a closed floor of I-joists, which nobody bores, a ceiling point in another
// joist bay says up to where the ways from both ends get. With the ceiling open it
// has one.
func TestGapInAClosedFloor(t *testing.T) {
	const (
		found  = "no hidden way to the closet: no way is known in the floor between levels ground and first from over room g-north to over wall g-north-g-south: joists lie across, and no hand gets in"
		change = "the ceiling opened from one to the other, and closed again, or a surface raceway"
	)
	lamp := "[[drop]]\ntag = \"T2\"\nkind = \"ceiling point\"\nat = { room = \"g-north\", west = \"16ft\", south = \"4ft\" }\nshift = \"3in\"\n"
	b := routeOf(t, inStoreys(t, "", lamp), "T2").Blocked
	if b == nil || len(b.Blocks) != 1 || b.Blocks[0].Found != found || !strings.HasPrefix(b.Blocks[0].Change, change) {
		t.Fatalf("got %+v", b)
	}
	open := [2]string{"id = \"g-north\"", "id = \"g-north\"\nceiling = \"open\""}
	if b := routeOf(t, inStoreys(t, "", lamp, open), "T2").Blocked; b != nil {
		t.Errorf("with the ceiling open: %+v", b)
	}
}

// Where the only way is through a bay that another place of a drop would open, no
// rule is in the way; the answer is a box there, and with it the way is found.
func TestGapThroughABay(t *testing.T) {
	const (
		found  = "no hidden way to the closet: one would go through the bay of wall s-north-s-south on level second that is 10ft 9-3/4in from its west end, into which no box opens"
		change = "a box in that bay of wall s-north-s-south"
	)
	plate := func(tag, level, at string) string {
		return fmt.Sprintf("[[drop]]\ntag = %q\nkind = \"wall plate\"\nbetween = [\"%s-south\", \"%s-north\"]\nat = %q\nheight = \"12in\"\nshift = \"6in\"\n", tag, level, level, at)
	}
	far := [2]string{"between = [\"s-south\", \"s-north\"]\nat = \"8ft\"", "between = [\"s-south\", \"s-north\"]\nat = \"19ft 6in\""}
	job := plate("T2", "f", "6ft") + "[allow]\npatching = true\n"
	b := routeOf(t, inStoreys(t, "", job, far), "T1").Blocked
	if b == nil || len(b.Blocks) != 1 || b.Blocks[0].Found != found || b.Blocks[0].Change != change {
		t.Fatalf("got %+v", b)
	}
	if b := routeOf(t, inStoreys(t, "", plate("T3", "s", "10ft 9in")+job, far), "T1").Blocked; b != nil {
		t.Errorf("with a box there: %+v", b)
	}
}

// A rod that just reaches, or a way along a line that another graph of the same
// house has, is found on a second look: a drop that nothing stops has a route.
func TestNothingIsMissedByTheLattice(t *testing.T) {
	again := 0
	for seed := uint64(130); seed < 180; seed++ {
		job := randomJob(t, seed, randomhouse.Options{})
		first, _, err := Planner{}.routed(job, nil)
		if err != nil {
			t.Fatal(err)
		}
		if len(first.missed()) == 0 {
			continue
		}
		res := randomResult(t, seed)
		if res.routed() < first.routed() {
			t.Errorf("seed %d: %d drops routed, %d before the second look", seed, res.routed(), first.routed())
		}
		if res.routed() > first.routed() {
			again++
		}
		if len(res.missed()) > 0 {
			t.Logf("seed %d: ways through places of other drops", seed)
		}
	}
	if again < 2 {
		t.Errorf("only %d houses have more routes on a second look", again)
	}
}
