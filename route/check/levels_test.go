package check

import (
	"os"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

const levelsJob = `
house = "levels.toml"

[job]
name = "Cables on three floors"
number = "1"
by = "installer"

[closet]
name = "Cabinet"
room = "kitchen"
wall = "middle"
at = "9ft"
height = "5ft"
width = "14in"
ports = 12

[[drop]]
tag = "D1"
kind = "wall plate"
room = "pantry"
wall = "split"
at = "4ft"
height = "14in"
cable = "cat6"
shift = "12in"

[[drop]]
tag = "D2"
kind = "wall plate"
room = "bed"
wall = "u-middle"
at = "10ft"
height = "14in"
cable = "cat6"
shift = "12in"

[tools]
rods = "15ft"
arm = "24in"
extension = "54in"
bits = [
  { size = "3/8in", reach = "54in", flexible = true },
  { size = "1/2in", reach = "54in", flexible = true },
  { size = "3/4in", reach = "54in", flexible = true },
  { size = "1in", reach = "54in", flexible = true },
]

[rates]
currency = "USD"
hour = 85
`

// split parts the kitchen of the house in two.
const split = `
[[wall]]
id = "split"
start = { wall = "middle", at = "14ft" }
run = "W 13ft 8in"

[[room]]
id = "pantry"
name = "Pantry"
at = ["5ft", "20ft"]
`

// levels is the house of three levels that package plan loads, with the wall
// above and edits made, and what is to be known of the job.
func levels(t testing.TB, edits ...string) *route.Result {
	t.Helper()
	read := func(path string) ([]byte, error) {
		src := levelsJob
		if strings.HasSuffix(path, "levels.toml") {
			b, err := os.ReadFile("../../plan/testdata/good/levels.toml")
			if err != nil {
				return nil, err
			}
			src = string(b) + split
		}
		for i := 0; i < len(edits); i += 2 {
			src = strings.Replace(src, edits[i], edits[i+1], 1)
		}
		return []byte(src), nil
	}
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the house does not load")
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// overCrawl moves the panel and the desk to where the floor is over the crawl
// space.
var overCrawl = []string{
	"room = \"kitchen\"\nwall = \"middle\"\nat = \"9ft\"", "room = \"living\"\nwall = \"across\"\nat = \"5ft\"",
	"room = \"pantry\"\nwall = \"split\"\nat = \"4ft\"", "room = \"back\"\nwall = \"across\"\nat = \"10ft\"",
	"[[room]]\nid = \"pantry\"", "[[wall]]\nid = \"across\"\nstart = { wall = \"east\", at = \"16ft\" }\nrun = \"W 25ft 8in\"\n\n[[room]]\nid = \"back\"\nname = \"Back room\"\nat = [\"30ft\", \"20ft\"]\n\n[[room]]\nid = \"pantry\"",
}

// chased moves the panel to the wall between kitchen and pantry, and has a
// ceiling point two storeys up that only a chase leads to.
func chased(keys string) []string {
	return []string{
		"wall = \"middle\"\nat = \"9ft\"", "wall = \"split\"\nat = \"9ft 7in\"",
		"kind = \"wall plate\"\nroom = \"bed\"\nwall = \"u-middle\"\nat = \"10ft\"\nheight = \"14in\"", "kind = \"ceiling point\"\nat = { room = \"bed\", west = \"8ft\", south = \"12ft\" }",
		"[[room]]\nid = \"pantry\"", "[[chase]]\nid = \"chase\"\nfrom = [\"114in\", \"124in\"]\nto = [\"126in\", \"136in\"]\nlevels = [\"ground\", \"upper\"]\n" + keys + "\n\n[[room]]\nid = \"pantry\"",
	}
}

// floorHatch is a second way into the crawl space, through a floor.
func floorHatch(size string) []string {
	return edits(overCrawl, instead("[[hatch]]", "[[hatch]]\nid = \"trap\"\nspace = \"crawl\"\nroom = \"living\"\nat = [\"30ft\", \"10ft\"]\nsize = "+size+"\n\n[[hatch]]"))
}

// garaged says that the room over the cellar is a garage.
var garaged = []string{"id = \"cellar\"", "use = \"garage\"\nid = \"cellar\""}

// limitOf gives the job a limit of its own.
func limitOf(text string) []string { return instead("[rates]", "[limits]\n"+text+"\n\n[rates]") }

// levelTrials are jobs on the house of three levels, and what is found in them.
var levelTrials = []struct {
	name  string
	edits []string
	rule  rule.ID
	where string
	found string
	keeps []string // a job in which it is not found there
}{
	{"I-joists over the cellar", nil, rule.IJoistBored, "over-cellar", "D1 crosses I-joists", instead(`joist = "i-joist"`, `joist = "sawn"`)},
	{"holes in a floor", nil, rule.FloorOpened, "between", "H2 and H4 open into the floor between levels ground and upper", overCrawl},
	{"holes in the cellar's", nil, rule.FloorOpened, "over-cellar", "H1 and H3 open into the floor between levels basement and ground", overCrawl},
	{"crawl space", overCrawl, rule.CrawlSpace, "crawl", "D1 goes through it, with 2ft 2in under the joists", nil},
	// R408.4, from memory: 18 in by 24 in through a floor.
	{"short side", floorHatch(`["17-15/16in", "24in"]`), rule.CrawlAccess, "trap", "1ft 5-15/16in by 2ft; an access through the floor is at least 1ft 6in by 2ft", floorHatch(`["18in", "24in"]`)},
	{"long side", floorHatch(`["23-15/16in", "18in"]`), rule.CrawlAccess, "trap", "", floorHatch(`["24in", "18in"]`)},
	{"under a garage", garaged, rule.GarageParting, "H1", "the hole goes into the floor over Cellar", nil},
	// CON07: two bends. Up the bay, along the joists of the closed floor, and up
	// through the plate over it: no hand gets there.
	{"bends in a closed floor", limitOf("pull-turns = 1"), rule.PullTurnsRule, "D2", "2 square bends", limitOf("pull-turns = 2")},
	{"chase", chased(`rooms = ["kitchen"]`), rule.ChaseSeal, "chase", "1 cables", nil},
	// 40 % of 12 in by 12 in are 57.6 square inches: 18 cables of 2 in are 56.5, 19
	// are 59.7.
	{"full chase", chased("rooms = [\"kitchen\"]\nholds = [{ diameter = \"2in\", count = 19 }]"), rule.ChaseFillRule, "chase", "more than 40 %", chased("rooms = [\"kitchen\"]\nholds = [{ diameter = \"2in\", count = 18 }]")},
}

func TestLevelsFindings(t *testing.T) {
	all := func(e []string) []route.Finding {
		res := levels(t, e...)
		return append(Findings(res), res.Findings...)
	}
	at := func(findings []route.Finding, id rule.ID, where string) *route.Finding {
		for i := range findings {
			if findings[i].Rule == id && findings[i].Where == where {
				return &findings[i]
			}
		}
		return nil
	}
	for _, tt := range levelTrials {
		t.Run(tt.name, func(t *testing.T) {
			found := all(tt.edits)
			f := at(found, tt.rule, tt.where)
			if f == nil {
				t.Fatalf("not found: %+v", found)
			}
			if !strings.Contains(f.Found, tt.found) || claims.MatchString(f.Found+f.Change) || f.Pos.Line == 0 || f.Change == "" && f.Severity < rule.Note && tt.rule != rule.ChaseSeal {
				t.Errorf("%+v, want %q", f, tt.found)
			}
			if f := at(all(tt.keeps), tt.rule, tt.where); f != nil {
				t.Errorf("found there too: %+v", f)
			}
		})
	}
}

// Only what lies under a roof is as hot as the attic: cable that goes through
// the cellar, the floor between and the crawl space never is. On a hot attic's
// way up the chase, what lies over the ceiling and through it is.
func TestOnlyTheAtticIsHot(t *testing.T) {
	const hot = "units = \"imperial\"\nattic_hot = \"80C\""
	heated := instead("units = \"imperial\"", hot)
	for _, e := range [][]string{nil, overCrawl} {
		if f := find(Findings(levels(t, edits(heated, e)...)), rule.CableHeat); f != nil {
			t.Errorf("%s: %s", f.Where, f.Found)
		}
	}
	res := levels(t, edits(heated, chased(`rooms = ["kitchen"]`))...)
	f := find(Findings(res), rule.CableHeat)
	if f == nil || f.Where != "D2" {
		t.Fatalf("the cable in the attic is not hot: %+v", f)
	}
	// By hand: 3-1/8 in beside the panel, 33-5/8 in up the bay, 3 in of plate, 41-1/8
	// in through the floor to the chase and 106-5/8 in up it are cool, 187-1/2 in
	// together, as are the loop and the trim of the panel; all else is taken to be
	// hot.
	c := &checker{res: res, job: res.Job, house: res.Job.House, book: res.Job.Book()}
	for i := range res.Routes {
		r := &res.Routes[i]
		if d := &res.Job.Drops[r.Drop]; d.Tag == "D2" {
			cool := 375*measure.Inch/2 + res.Job.Slack.Closet + res.Job.Slack.Trim
			if legs := c.legs(r, d); legs[0].Length != cool || legs[1].Length != r.Lengths.Cut-cool {
				t.Errorf("%v cool, want %v", legs[0].Length, cool)
			}
		}
	}
}

// A power run in one space is beside no cable in another: one that lies over
// the route through the cellar in plan, but in the attic.
func TestSpacesApart(t *testing.T) {
	beside := func(space string) []string {
		return instead("[[mark]]", "[[power]]\nid = \"p1\"\nspace = \""+space+"\"\npath = [[\"14ft 10in\", \"5ft\"], [\"14ft 10in\", \"13ft\"]]\n\n[[obstacle]]\nid = \"o1\"\nkind = \"duct\"\nspace = \""+space+
			"\"\nfrom = [\"14ft 5in\", \"8ft\"]\nto = [\"14ft 6in\", \"9ft\"]\ntop = \"9in\"\nhot = true\nclearance = \"4-1/2in\"\n\n[[mark]]")
	}
	for space, want := range map[string]bool{"over-cellar": true, "between": false, "high": false} {
		findings := Findings(levels(t, edits(beside(space), instead("[rates]", "[limits]\npower-near-length = \"1ft\"\n\n[rates]"))...))
		if got := where(findings, rule.PowerLong, "D1"); got != want {
			t.Errorf("power in %s: beside D1 %v", space, got)
		}
		if got := where(findings, rule.HotMargin, "D1"); got != want {
			t.Errorf("duct in %s: beside D1 %v", space, got)
		}
	}
}

// where reports whether a finding of a rule speaks of a drop.
func where(findings []route.Finding, id rule.ID, tag string) bool {
	return slices.ContainsFunc(findings, func(f route.Finding) bool { return f.Rule == id && strings.Contains(f.Found, tag) })
}

// An attic's hatch is no way into the crawl space, however small.
func TestOtherHatches(t *testing.T) {
	small := instead("at = [\"30ft\", \"12ft\"]\nsize = [\"22in\", \"30in\"]", "at = [\"30ft\", \"12ft\"]\nsize = [\"15in\", \"20in\"]")
	if f := find(Findings(levels(t, edits(small, overCrawl)...)), rule.CrawlAccess); f != nil {
		t.Errorf("%+v", f)
	}
}

// Joists of 9-1/2 in with 4-1/2 in kept at either edge take 1/2 in, and one cable
// of 6 mm needs 12.35 mm of these 12.7; with 4-17/32 in they take 11.1 mm. Those
// of 9-1/4 in, in the other floors, take less, but no bundle crosses them.
func TestBundlesBySpace(t *testing.T) {
	for edge, want := range map[string]string{"4-1/2in": "", "4-17/32in": "over-cellar"} {
		var got []string
		for _, f := range Findings(levels(t, `joist = "i-joist"`, `joist = "sawn"`, "[rates]", "[limits]\njoist-edge = \""+edge+"\"\n\n[rates]")) {
			if f.Rule == rule.JoistBored {
				got = append(got, f.Where)
				if !strings.Contains(f.Found, "under the joists") {
					t.Errorf("%s: %q", edge, f.Found)
				}
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %v, want %q", edge, got, want)
		}
	}
}
