package plan

import (
	"crypto/sha256"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"topplate/plan/cable"
	"topplate/plan/diag"
	"topplate/plan/record"
)

// earlierJob is the text of a job that was done; only its hash matters.
const earlierJob = "an earlier job"

// recordOf is the text of a record of earlierJob in a house, with these entries
// after its first.
func recordOf(t *testing.T, house string, entries ...record.Entry) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "job.record")
	_, err := record.Add(path, func([]record.Entry) ([]record.Entry, error) {
		start := record.Entry{Kind: record.StartKind, Start: record.Start{Inputs: []record.Input{
			{Path: "job.toml", SHA256: sha256.Sum256([]byte(earlierJob))}, {Path: "house.toml", SHA256: sha256.Sum256([]byte(house))},
		}}}
		all := append([]record.Entry{start}, entries...)
		for i := range all {
			all[i].When = time.Date(2026, 3, 31, 0, 0, 0, 0, time.UTC)
		}
		return all, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// loadAfter loads a job with these keys, after first/job.toml and
// second/job.toml with their records; an empty one is not there.
func loadAfter(t *testing.T, keys, house, first, second string) (*Job, string) {
	t.Helper()
	texts := map[string]string{"next/house.toml": house, "first/job.toml": earlierJob, "second/job.toml": earlierJob}
	texts["next/job.toml"] = complete(t, "house = \"house.toml\"\n"+keys, "testdata/base_job.toml")
	for path, src := range map[string]string{"first/job.record": first, "second/job.record": second} {
		if src != "" {
			texts[path] = src
		}
	}
	j, list := LoadJob("next/job.toml", files(texts))
	return j, print(t, list)
}

const both = "after = [\"../first/job.toml\", \"../second/job.toml\"]\n"

func plateHole(id, wall, at string, cables ...string) record.Entry {
	e := record.Entry{Kind: record.HoleKind, ID: id, Hole: record.Hole{Bore: record.Bore{Through: record.TopPlate, Wall: wall, Diameter: 1 * inch}, Cables: cables}}
	if err := e.Hole.Set("at", at); err != nil {
		panic(err)
	}
	return e
}

func leftOn(id, kind, left string) record.Entry {
	e := record.Entry{Kind: record.SpoolKind, ID: id, Spool: record.Spool{Cable: kind}}
	if err := e.Spool.Set("left", left); err != nil {
		panic(err)
	}
	return e
}

// TestAfter starts a job after two others: holes, spools and ports come from
// their records, the second one wins, and all say where they are from.
func TestAfter(t *testing.T) {
	house := complete(t, "", "testdata/base_house.toml")
	first := recordOf(t, house, plateHole("H1", "south", "6ft", "D1.1", "D1.2"), plateHole("H2", "west", "4ft"), leftOn("S1", "cat6", "230ft"),
		record.Entry{Kind: record.CableKind, ID: "D1.1", Cable: record.Cable{Port: 1}})
	second := recordOf(t, house, plateHole("H1", "south", "6ft 1/4in", "E1.1"), leftOn("S1", "cat6", "90ft"))
	j, said := loadAfter(t, both, house, first, second)
	if j == nil || said != "" {
		t.Fatal(said)
	}
	cat6, _ := cable.Lookup("cat6")
	south, west := 0, 3
	wantFixed := []Fixed{
		{ID: "first-H2", Pos: diag.Pos{File: "first/job.record", Line: 3, Col: 1}, Do: FixedThere, Wall: west, At: 4 * foot, Diameter: 1 * inch},
		{ID: "first-H1", Pos: diag.Pos{File: "second/job.record", Line: 2, Col: 1}, Do: FixedThere, Wall: south, At: 6*foot + inch/4, Diameter: 1 * inch, Cables: 1},
	}
	wantSpools := []Spool{{ID: "S1", Pos: diag.Pos{File: "second/job.record", Line: 3, Col: 1}, Cable: cat6, Left: 90 * foot}}
	wantBefore := Before{
		Jobs:   []EarlierJob{{Name: "first", Record: "first/job.record", Entries: 5}, {Name: "second", Record: "second/job.record", Entries: 3}},
		Holes:  []LeftOver{{"first-H2", diag.Pos{File: "first/job.record", Line: 3, Col: 1}, 3}, {"first-H1", diag.Pos{File: "second/job.record", Line: 2, Col: 1}, 2}},
		Spools: []LeftOver{{"S1", diag.Pos{File: "second/job.record", Line: 3, Col: 1}, 3}},
		Ports:  []UsedPort{{"first-D1.1", 1, diag.Pos{File: "first/job.record", Line: 5, Col: 1}, 5}},
	}
	if diff := cmp.Diff(wantFixed, j.Fixed) + cmp.Diff(wantSpools, j.Spools) + cmp.Diff(wantBefore, j.Before, cmpopts.IgnoreFields(EarlierJob{}, "Pos")); diff != "" {
		t.Error(diff)
	}
	if len(j.Inputs) != 4 || j.Inputs[3] != (Input{"../second/job.record", sha256.Sum256([]byte(second))}) {
		t.Errorf("inputs: %v", j.Inputs)
	}
}

// TestAfterTold: what is wrong with earlier jobs, and what their records
// contradict, is told at its place.
func TestAfterTold(t *testing.T) {
	house := complete(t, "", "testdata/base_house.toml")
	plain := recordOf(t, house, plateHole("H1", "south", "6ft"))
	many := recordOf(t, house, func() (out []record.Entry) {
		for _, id := range strings.Fields("A.1 A.2 A.3 A.4") {
			out = append(out, record.Entry{Kind: record.CableKind, ID: id})
		}
		return out
	}()...)
	for _, tt := range []struct {
		name, keys, first string
		ok                bool
		want              string
	}{
		{"plain", "after = [\"../first/job.toml\"]\n", plain, true, ""},
		{"not a list", "after = \"../first/job.toml\"\n", plain, false, "next/job.toml:2:9: error: after: found"},
		{"no such job", "after = [\"../third/job.toml\"]\n", plain, false, "error: after[0]: cannot read \"third/job.toml\""},
		{"no record", "after = [\"../second/job.toml\"]\n", plain, false, "error: after[0]: cannot read \"second/job.record\": there is no such file; want the record of what was done"},
		{"itself", "after = [\"job.toml\"]\n", plain, false, "found this job itself"},
		{"twice", "after = [\"../first/job.toml\", \"../first/job.toml\"]\n", plain, false, "error: after[1]: found \"../first/job.toml\" again"},
		{"empty record", "after = [\"../first/job.toml\"]\n", "\n", true, "warning: after[0]: first/job.record has no entry"},
		{"torn record", "after = [\"../first/job.toml\"]\n", plain + "3 2026-03", true, "first/job.record:3:1: warning: the last entry was torn"},
		{"no such wall", "after = [\"../first/job.toml\"]\n", recordOf(t, house, plateHole("H1", "suoth", "6ft")), false, `first/job.record:2:1: error: hole first-H1: found wall "suoth", which is no wall in next/house.toml; the nearest is "south"`},
		{"off the wall", "after = [\"../first/job.toml\"]\n", recordOf(t, house, plateHole("H1", "south", "31ft")), false, "error: hole first-H1: found a hole at 31ft along wall south; want it from"},
		{"house changed", "after = [\"../first/job.toml\"]\n", recordOf(t, "another house", plateHole("H1", "south", "6ft")), true, "warning: after[0]: the house was changed after that job was recorded"},
		{"own hole", "after = [\"../first/job.toml\"]\n[[fixed]]\nid = \"F\"\ndo = \"there\"\nwall = \"south\"\nat = \"6ft 1/2in\"\ndiameter = \"1in\"\n", plain, true, "fixed part F stands for the hole first-H1 that an earlier job left: this file wins"},
		{"own spool", "after = [\"../first/job.toml\"]\n[[spool]]\nid = \"S1\"\ncable = \"cat6\"\nleft = \"412ft\"\n", recordOf(t, house, leftOn("S1", "cat6", "230ft")), true, "there are 412ft on spool S1 here, and an earlier job left 230ft: this file wins"},
		{"strange cable", "after = [\"../first/job.toml\"]\n", recordOf(t, house, leftOn("S1", "mine", "230ft")), true, "warning: spool S1: found cable \"mine\", which this job doesn't know"},
		{"too few ports", "after = [\"../first/job.toml\"]\n[closet]\nname = \"P\"\nroom = \"living\"\nwall = \"middle\"\nat = \"2ft\"\nheight = \"5ft\"\nports = 4\n", many, true, "warning: after: there are 4 ports for 5 cables, 4 of them from earlier jobs"},
	} {
		j, said := loadAfter(t, tt.keys, house, tt.first, "")
		if (j != nil) != tt.ok || !strings.Contains(said, tt.want) || tt.want == "" && said != "" {
			t.Errorf("%s: job %v, got %swant %s", tt.name, j != nil, said, tt.want)
		}
		if j != nil && strings.HasPrefix(tt.name, "own") && len(j.Fixed)+len(j.Spools) != 1 {
			t.Errorf("%s: both are taken", tt.name)
		}
	}
	texts := map[string]string{
		"next/house.toml": house, "first/job.toml": "changed", "first/job.record": plain,
		"next/job.toml": complete(t, "house = \"house.toml\"\nafter = [\"../first/job.toml\"]\n", "testdata/base_job.toml"),
	}
	if _, list := LoadJob("next/job.toml", files(texts)); !strings.Contains(print(t, list), "job.toml was changed after its record was begun") {
		t.Error(print(t, list))
	}
}

// TestEarlierName: the file's name, or that of its folder.
func TestEarlierName(t *testing.T) {
	for path, want := range map[string]string{
		"jobs/first/job.toml": "first", "jobs/kitchen.toml": "kitchen", "jobs/old one/job.toml": "after3", "../job.toml": "after3", "a/taken/job.toml": "after3",
	} {
		if got := earlierName(path, 2, []record.Earlier{{Name: "taken"}}); got != want {
			t.Errorf("%s: %s, want %s", path, got, want)
		}
	}
}
