package plan

import (
	"os"
	"strings"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/record"
)

const levelsJob = `house = "house.toml"

[job]
name = "Network"

[closet]
name = "Panel"
room = "living"
wall = "middle"
at = "2ft"
height = "5ft"
ports = 48
`

// jobOnLevels loads a job with more tables in the house of two storeys.
func jobOnLevels(t testing.TB, tables string) (*Job, string) {
	t.Helper()
	house, err := os.ReadFile("testdata/good/levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, list := loadBoth(levelsJob+tables, string(house))
	return j, print(t, list)
}

// A drop with the keys in lines.
func dropOf(tag, kind string, lines ...string) string {
	return "\n[[drop]]\ntag = \"" + tag + "\"\nkind = \"" + kind + "\"\n" + strings.Join(lines, "\n") + "\n"
}

// Places on levels. Points of the file are as they are; a soffit spot is out of
// the finished face of its wall.
func TestDropsOnLevels(t *testing.T) {
	tables := dropOf("T1", "ceiling point", `at = ["5ft", "10ft"]`, `level = "upper"`) +
		dropOf("T2", "ceiling point", `at = ["5ft", "10ft"]`, `level = "ground"`) +
		dropOf("T3", "ceiling point", `at = { room = "cellar", west = "2ft", south = "3ft" }`) +
		dropOf("T4", "ceiling point", `at = ["30ft", "10ft"]`) + // one room is there
		dropOf("T5", "wall plate", `room = "bed"`, `wall = "u-west"`, `at = "6ft"`) +
		dropOf("T6", "soffit spot", `wall = "u-south"`, `at = "10ft"`, `out = "6in"`) +
		dropOf("T7", "soffit spot", `wall = "south"`, `at = "30ft"`, `out = "6in"`) +
		"\n[[fixed]]\nid = \"F1\"\ndo = \"avoid\"\nspace = \"low\"\nfrom = [\"30ft\", \"3ft\"]\nto = [\"32ft\", \"5ft\"]\n" +
		"\n[[fixed]]\nid = \"F2\"\ndo = \"use\"\nspace = \"crawl\"\npath = [[\"30ft\", \"3ft\"], [\"30ft\", \"8ft\"]]\n"
	j, said := jobOnLevels(t, tables)
	if j == nil || said != "" {
		t.Fatal(said)
	}
	checkJob(t, j)
	h := j.House
	for i, want := range []struct {
		room string
		at   geom.Point
	}{
		{"bed", geom.Point{X: 5 * foot, Y: 10 * foot}},
		{"kitchen", geom.Point{X: 5 * foot, Y: 10 * foot}},
		{"cellar", geom.Point{X: 9*inch + 2*foot, Y: 9*inch + 3*foot}}, // of 8 in of masonry from 1 in on
		{"living", geom.Point{X: 30 * foot, Y: 10 * foot}},
		{"bed", geom.Point{}},
		{"", geom.Point{X: 10 * foot, Y: -6 * inch}},
		{"", geom.Point{X: 30 * foot, Y: -6 * inch}},
	} {
		d := &j.Drops[i]
		if d.Point != want.at || want.room == "" != (d.Room < 0) || want.room != "" && h.Rooms[d.Room].ID != want.room {
			t.Errorf("drop %s: %+v", d.Tag, d)
		}
	}
	if h.Spaces[j.Fixed[0].Space].ID != "low" || h.Spaces[j.Fixed[1].Space].ID != "crawl" {
		t.Errorf("fixed parts: %+v", j.Fixed)
	}
}

func TestDropsOnLevelsTold(t *testing.T) {
	for _, tt := range []struct{ tables, want string }{
		{dropOf("T1", "ceiling point", `at = ["5ft", "10ft"]`), "which is in room kitchen on level ground and in room cellar on level basement and in room bed on level upper; want level to say on which"},
		{dropOf("T1", "ceiling point", `at = ["30ft", "10ft"]`, `level = "upper"`), "which is in no room on level upper; want a point of a ceiling"},
		{dropOf("T1", "ceiling point", `at = ["5ft", "10ft"]`, `level = "uper"`), `found "uper", which is no level in house.toml; the nearest is "upper"`},
		{dropOf("T1", "ceiling point", `at = { room = "bed", west = "2ft", south = "3ft" }`, `level = "ground"`), "found level ground with a place in room bed, which is on level upper"},
		{dropOf("T1", "ceiling point", `at = ["16ft", "16ft"]`, `level = "upper"`), ""},
		// The hatch is in the upper ceiling.
		{dropOf("T1", "ceiling point", `at = ["9ft 10in", "15ft 7in"]`, `level = "upper"`), "which is in hatch hatch"},
		{dropOf("T1", "ceiling point", `at = ["9ft 10in", "15ft 7in"]`, `level = "ground"`), ""},
		{dropOf("T1", "soffit spot", `wall = "f-south"`, `at = "5ft"`), "found a place at 5ft along wall f-south on level basement, on which no roof stands all along"},
		{dropOf("T1", "soffit spot", `wall = "south"`, `at = "5ft"`), "found a place at 5ft along wall south on level ground, on which no roof stands all along"},
		{dropOf("T1", "soffit spot", `wall = "south"`, `at = "30ft"`, `out = "12in"`), "at most 11in, the end of the overhang"},
		{dropOf("T1", "soffit spot", `wall = "u-south"`, `at = "5ft"`, `out = "15in"`), ""},
		{dropOf("T1", "wall plate", `room = "cellar"`, `wall = "f-west"`, `at = "6ft"`), ""},
		{dropOf("T1", "wall plate", `room = "kitchen"`, `wall = "u-west"`, `at = "6ft"`), "found wall u-west, which does not bound room kitchen"},
		{dropOf("T1", "wall plate", `room = "kitchen"`, `wall = "west"`, `at = "6ft"`, `height = "8ft 1in"`), "want at most the ceiling at 8ft"},
		{dropOf("T1", "wall plate", `room = "kitchen"`, `wall = "west"`, `at = "6ft"`, `level = "ground"`), "unknown key"},
		{dropOf("T1", "ceiling point", `at = ["30ft", "10ft"]`) + "\n[[fixed]]\nid = \"F1\"\ndo = \"avoid\"\nspace = \"low\"\nfrom = [\"3ft\", \"3ft\"]\nto = [\"5ft\", \"5ft\"]\n", "which is not in the attic low"},
		{dropOf("T1", "ceiling point", `at = ["30ft", "10ft"]`) + "\n[[fixed]]\nid = \"F1\"\ndo = \"use\"\nspace = \"lo\"\npath = [[\"3ft\", \"3ft\"], [\"5ft\", \"3ft\"]]\n", `found "lo", which is no space in house.toml; the nearest is "low"`},
		{dropOf("T1", "ceiling point", `at = ["30ft", "10ft"]`) + "\n[[fixed]]\nid = \"F1\"\ndo = \"use\"\nwall = \"f-west\"\nat = \"5ft\"\n", "found a hole in masonry wall f-west"},
	} {
		j, said := jobOnLevels(t, tt.tables)
		if (j != nil) != (tt.want == "") || !strings.Contains(said, tt.want) {
			t.Errorf("%s: want %q, said\n%s", tt.tables, tt.want, said)
		}
	}
}

// A conduit on every level, up and down: its height is held against the ceiling
// of its level, and it must end in a space.
func TestConduitsOfLevels(t *testing.T) {
	src, err := os.ReadFile("testdata/good/levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	conduit := func(wall, more string) string {
		return "\n[[conduit]]\nid = \"c" + wall + "\"\nwall = \"" + wall + "\"\nat = \"6ft\"\nside = \"left\"\ninside = \"1in\"\n" + more + "\n"
	}
	for _, tt := range []struct {
		tables, want string
	}{
		{conduit("middle", "height = \"1ft\"") + conduit("u-middle", "height = \"1ft\""), ""},
		{conduit("middle", "height = \"1ft\"\ndown = true") + conduit("u-middle", "height = \"1ft\"\ndown = true") + conduit("east", "height = \"1ft\"\ndown = true"), ""},
		{conduit("u-middle", "height = \"8ft 1in\""), "found 8ft 1in, which is above the ceiling at 8ft"},
		// Up from over a door, and down from under a window, is clear of them.
		{"\n[[opening]]\nid = \"w\"\nwall = \"u-middle\"\nkind = \"window\"\nat = \"5ft\"\nwidth = \"3ft\"\nsill = \"3ft\"\nhead = \"6ft\"\n" + conduit("u-middle", "height = \"1ft\"\ndown = true"), ""},
		{"\n[[opening]]\nid = \"w\"\nwall = \"u-middle\"\nkind = \"window\"\nat = \"5ft\"\nwidth = \"3ft\"\nsill = \"3ft\"\nhead = \"6ft\"\n" + conduit("u-middle", "height = \"7ft\"\ndown = true"), "above the floor down, which goes through opening w"},
		{"\n[[opening]]\nid = \"w\"\nwall = \"u-middle\"\nkind = \"window\"\nat = \"5ft\"\nwidth = \"3ft\"\nsill = \"3ft\"\nhead = \"6ft\"\n" + conduit("u-middle", "height = \"1ft\""), "above the floor up, which goes through opening w"},
		{strings.ReplaceAll(conduit("middle", "height = \"1ft\""), "cmiddle", "c1") + conduit("middle", "height = \"2ft\"\ndown = true"), "where conduit c1 is"},
		{strings.ReplaceAll(conduit("middle", "height = \"3ft\""), "cmiddle", "c1") + conduit("middle", "height = \"2ft\"\ndown = true"), ""},
	} {
		h, list := LoadHouse("house.toml", []byte(string(src)+tt.tables))
		if said := print(t, list); (h != nil) != (tt.want == "") || !strings.Contains(said, tt.want) {
			t.Errorf("%s: want %q, said\n%s", tt.tables, tt.want, said)
		}
		if h != nil {
			checkHouse(t, h)
		}
	}
}

// Holes in bottom plates: the wall middle stands on a floor, and a way through it is
// from 12 ft to 15 ft.
func TestFixedInBottomPlates(t *testing.T) {
	const door = "\n[[opening]]\nid = \"door\"\nwall = \"middle\"\nkind = \"passage\"\nat = \"12ft\"\nwidth = \"3ft\"\nhead = \"6ft 8in\"\n"
	house, err := os.ReadFile("testdata/good/levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	fixed := func(wall, at, keys string) string {
		return "\n[[fixed]]\nid = \"F\"\nwall = \"" + wall + "\"\nplate = \"bottom\"\nat = \"" + at + "\"\n" + keys
	}
	for _, tt := range []struct{ name, keys, want string }{
		{"pin", fixed("middle", "6ft", "do = \"use\"\n"), ""},
		{"there", fixed("middle", "6ft", "do = \"there\"\ndiameter = \"1in\"\n"), ""},
		{"avoid", fixed("middle", "6ft", "do = \"avoid\"\n"), ""},
		{"two plates of one wall", fixed("middle", "6ft", "do = \"avoid\"\n") + "[[fixed]]\nid = \"G\"\ndo = \"use\"\nwall = \"middle\"\nat = \"6ft\"\n", ""},
		{"pinned and avoided", fixed("middle", "6ft", "do = \"avoid\"\n") + "[[fixed]]\nid = \"G\"\nplate = \"bottom\"\ndo = \"use\"\nwall = \"middle\"\nat = \"6ft\"\n", "this hole and that of F contradict each other"},
		{"at a door", fixed("middle", "13ft", "do = \"use\"\n"), "job.toml:17:9: error: fixed[0].plate: found a hole in the bottom plate of wall middle at 13ft along it, where door goes down to the floor; want a place beside it"},
		{"on the ground", fixed("f-south", "6ft", "do = \"use\"\n"), "found a hole in masonry wall f-south; want a framed wall, which has plates"},
	} {
		j, list := loadBoth(levelsJob+tt.keys+dropOf("T", "wall plate", `room = "bed"`, `wall = "u-west"`, `at = "6ft"`), string(house)+door)
		said := print(t, list)
		if !strings.Contains(said, tt.want) || tt.want == "" && said != "" {
			t.Errorf("%s: %s", tt.name, said)
		}
		if tt.want == "" && (j == nil || !j.Fixed[0].Bottom || len(j.Fixed) > 1 && j.Fixed[1].Bottom) {
			t.Errorf("%s: %+v", tt.name, j)
		}
	}
}

// A recorded hole in a bottom plate is taken over as one; its own part of the job
// stands for it in the same plate alone. Where nothing is under the wall any more
// that is told at the entry.
func TestAfterBottomPlates(t *testing.T) {
	levels, err := os.ReadFile("testdata/good/levels.toml")
	if err != nil {
		t.Fatal(err)
	}
	sole := plateHole("H1", "middle", "6ft", "D1.1")
	sole.Hole.Through = record.BottomPlate
	for _, tt := range []struct {
		name, house, keys string
		holes             int
		want              string
	}{
		{"taken over", string(levels), "", 2, ""},
		{"another plate", string(levels), "[[fixed]]\nid = \"F\"\ndo = \"there\"\nwall = \"middle\"\nat = \"6ft\"\ndiameter = \"1in\"\n", 2, "stands for the hole first-H2 that an earlier job left"},
		{"same plate", string(levels), "[[fixed]]\nid = \"F\"\ndo = \"there\"\nplate = \"bottom\"\nwall = \"middle\"\nat = \"6ft\"\ndiameter = \"1in\"\n", 2, "stands for the hole first-H1 that an earlier job left"},
		{"on a slab", complete(t, "", "testdata/base_house.toml"), "", 0, "first/job.record:2:1: error: hole first-H1: found a hole in the bottom plate of wall middle at 6ft along it, where the sketch has no floor or crawl space under level"},
	} {
		texts := map[string]string{
			"next/house.toml": tt.house, "first/job.toml": earlierJob,
			"first/job.record": recordOf(t, tt.house, sole, plateHole("H2", "middle", "6ft")),
			"next/job.toml":    "after = [\"../first/job.toml\"]\n" + levelsJob + tt.keys + dropOf("T", "ceiling point", `at = ["12ft", "10ft"]`, `level = "ground"`),
		}
		j, list := LoadJob("next/job.toml", files(texts))
		said := print(t, list)
		if !strings.Contains(said, tt.want) || tt.want == "" && said != "" {
			t.Errorf("%s: %s", tt.name, said)
		}
		if j == nil != (tt.holes == 0) {
			t.Errorf("%s: job %v", tt.name, j)
			continue
		}
		if j != nil && (len(j.Fixed) != tt.holes || tt.keys == "" && (!j.Fixed[0].Bottom || j.Fixed[0].Cables != 1 || j.Fixed[1].Bottom)) {
			t.Errorf("%s: %+v", tt.name, j.Fixed)
		}
	}
}
