package tags

import (
	"testing"

	"topplate/plan"
)

// The floor of a drop is that of its wall or its room; of one under an eave that of the wall
// below, whatever level the file names first.
func TestFloorOfADrop(t *testing.T) {
	h := &plan.House{
		Levels: []plan.Level{{ID: "basement"}, {ID: "ground"}, {ID: "upper"}},
		Rooms:  []plan.Room{{Level: 0}, {Level: 2}},
		Walls:  []plan.Wall{{Level: 1}, {Level: 2}},
	}
	for _, c := range []struct {
		drop plan.Drop
		want string
	}{
		{plan.Drop{Kind: plan.WallPlate, Spot: plan.Spot{Wall: 1}, Room: 1, Eave: -1}, "upper"},
		{plan.Drop{Kind: plan.CeilingPoint, Room: 0, Eave: -1}, "basement"},
		{plan.Drop{Kind: plan.SoffitSpot, Room: -1, Eave: 1}, "upper"},
		{plan.Drop{Kind: plan.SoffitSpot, Room: -1, Eave: 0}, "ground"},
	} {
		job := &plan.Job{House: h, Drops: []plan.Drop{c.drop}}
		job.Labels.Parts = []plan.LabelPart{{Field: "floor"}}
		if got := (&ports{}).text(job, &Label{}); got != c.want {
			t.Errorf("%s: floor %q, want %q", c.drop.Kind, got, c.want)
		}
	}
}
