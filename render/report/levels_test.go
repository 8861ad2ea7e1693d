package report_test

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/render/report"
	"topplate/route"
	"topplate/route/work"
)

// storeyed is a job in a house of three levels.
func storeyed(t *testing.T, file string) *work.Work {
	t.Helper()
	job, list := plan.LoadJob("../../route/tasks/testdata/levels/"+file, os.ReadFile)
	if list.HasErrors() {
		t.Fatal(list.Sorted())
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	w, err := work.Of(res)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Legs, holes and places are told with the level and the space that they are in.
func TestLevelsAndSpacesAreTold(t *testing.T) {
	for file, wants := range map[string][]string{
		"job.toml": {
			"in the floor over basement", "in the floor over ground", "in attic high", "level ground, opens in the floor over basement",
			"ways into attics and crawl spaces", "Kitchen, ground, ", "Bedroom, upper, ",
		},
		"crawl.toml": {"in the crawl space", "in attic low"},
	} {
		var b bytes.Buffer
		if err := report.Schedule(&b, storeyed(t, file)); err != nil {
			t.Fatal(err)
		}
		for _, want := range wants {
			if !strings.Contains(b.String(), want) {
				t.Errorf("%s: no %q in the schedule", file, want)
			}
		}
	}
}

// Tables of a house of one level have no column for levels.
func TestColumnsForLevels(t *testing.T) {
	for _, tab := range report.Tables(storeyed(t, "job.toml")) {
		want := slices.Contains([]string{"drops", "holes", "order", "carry"}, tab.ID)
		if got := slices.Contains(tab.Head, "level"); got != want {
			t.Errorf("%s: %v", tab.ID, tab.Head)
		}
		for i, row := range tab.Rows {
			if len(row) != len(tab.Head) {
				t.Errorf("%s: row %d has %d cells under %d heads", tab.ID, i, len(row), len(tab.Head))
			}
		}
	}
}

func TestLevelsInResults(t *testing.T) {
	var b bytes.Buffer
	if err := report.JSON(&b, storeyed(t, "job.toml")); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Drops []struct {
			Tag, Level string
			Legs       []struct{ Space string }
		}
		Holes []struct{ ID, Level, Space string }
		Order struct {
			Visits []struct{ Place, Level string }
		}
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	var told []string
	for _, d := range got.Drops {
		told = append(told, d.Tag+" "+d.Level)
	}
	for _, h := range got.Holes {
		told = append(told, h.ID+" "+h.Level+" "+h.Space)
	}
	want := "B1 upper, C1 basement, K1 ground, U1 upper, H1 ground over-cellar, H2 ground between, H3 upper between, H4 upper high, H5 upper high"
	if s := strings.Join(told, ", "); s != want {
		t.Errorf("told %q, want %q", s, want)
	}
	if l := got.Drops[0].Legs[1].Space; l != "over-cellar" {
		t.Errorf("the second leg of B1 is in %q", l)
	}
	for _, v := range got.Order.Visits {
		if (v.Level == "") != strings.HasPrefix(v.Place, "Attic") {
			t.Errorf("%s is on level %q", v.Place, v.Level)
		}
	}
}
