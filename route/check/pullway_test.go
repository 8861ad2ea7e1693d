package check

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/route"
)

// wayOf is what the cables of the drop with a tag are pulled through.
func wayOf(t *testing.T, res *route.Result, tag string) *pullWay {
	t.Helper()
	c := &checker{res: res, job: res.Job, house: res.Job.House, book: res.Job.Book()}
	for i := range res.Routes {
		if r := &res.Routes[i]; res.Job.Drops[r.Drop].Tag == tag && r.Blocked == nil {
			return c.pullWay(r)
		}
	}
	t.Fatalf("%s has no route", tag)
	return nil
}

// A hand gets at cable in a chase from its rooms, at half their height: over the
// floor's 10 in of joists and boards, 4 ft up in the bedroom, and 4 ft 5/8 in below
// the attic. From the kitchen it gets into the chase below where the cable comes in.
func TestChaseOpensIntoItsRooms(t *testing.T) {
	const name = "in the chase from Bedroom"
	way := wayOf(t, levels(t, chased(`rooms = ["kitchen", "bed"]`)...), "D2")
	i := slices.Index(way.names, name)
	if i < 1 || !way.path[i].Open || way.path[i-1].Length != 58*measure.Inch || way.path[i+1].Length != 389*measure.Inch/8 {
		t.Errorf("%v, %v", way.path, way.names)
	}
	if way := wayOf(t, levels(t, chased(`rooms = ["kitchen"]`)...), "D2"); slices.Contains(way.names, name) {
		t.Errorf("nobody gets in there: %v", way.names)
	}
}

// A box that a cable passes in its bay is open while the work goes on, if it is cut
// today.
func TestBoxOnTheWay(t *testing.T) {
	low := desk(`at = "2ft 8in"`)
	high := func(keys string) []string {
		e := desk("at = \"2ft 8in\"\n" + keys)
		e[1] = strings.NewReplacer("D1", "D2", "14in", "4ft").Replace(e[1])
		return e
	}
	for keys, want := range map[string]bool{"": true, `when = "later"`: false} {
		res := solved(t, edits(low, high(keys))...)
		if got := slices.Contains(wayOf(t, res, "D1").names, "at the box of D2"); got != want {
			t.Errorf("%q: the box is open: %v", keys, got)
		}
		if way := wayOf(t, res, "D2"); slices.ContainsFunc(way.names, func(s string) bool { return s != "" }) {
			t.Errorf("%q: the upper box is on the way of no other: %v", keys, way.names)
		}
	}
}

// A hand gets at cable on both sides of a way from attic to attic.
func TestPassIsOpenOnBothSides(t *testing.T) {
	job, list := plan.LoadJob("../../samples/split-level/job.toml", source.ReadFile)
	if list.HasErrors() {
		t.Fatal("the sample does not load")
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	way := wayOf(t, res, "M1")
	passes := 0
	for i, p := range way.path {
		if way.kinds[i] != route.PassArc || p.Length == 0 {
			continue
		}
		if passes++; p.Open || !way.path[i-1].Open || !way.path[i+1].Open {
			t.Errorf("%v", way.path)
		}
	}
	if passes == 0 {
		t.Error("no way from attic to attic is used")
	}
}
