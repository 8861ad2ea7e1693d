package plan

import (
	"os"
	"strings"
	"testing"

	"topplate/plan/diag"
)

// print is the list as a user sees it.
func print(t testing.TB, list *diag.List) string {
	t.Helper()
	var b strings.Builder
	if err := list.Print(&b, nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGood(t *testing.T) {
	job, list := LoadJob("testdata/good/job.toml", os.ReadFile)
	t.Log(print(t, list))
	if job == nil {
		t.Fatal("no job")
	}
	for _, w := range job.House.Walls {
		t.Logf("%+v", w)
	}
	for _, w := range job.House.Rooms {
		t.Logf("%+v", w)
	}
	t.Logf("%+v", job.House.OutsideOf)
	t.Logf("%+v", job.House.PlateLine)
	t.Logf("%+v", job.House.Roof)
	t.Logf("%+v", job.Drops)
	t.Logf("%+v", job.Closet)
}
