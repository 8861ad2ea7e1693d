package fix

import (
	"testing"

	"topplate/plan"
	"topplate/plan/source"
	"topplate/route"
)

// In the plaster house cables from the cellar go on up the bay of W2's box: its
// opening is what the block and the plate over it are bored through, and no board
// is opened.
func TestBoredThroughAnothersBox(t *testing.T) {
	job, list := plan.LoadJob("../../samples/plaster-house/job.toml", source.ReadFile)
	if list.HasErrors() {
		t.Fatal("the sample does not load")
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	holes := Holes(res)
	own := -1 // the wall of W2
	for i := range job.Drops {
		if job.Drops[i].Tag == "W2" {
			own = job.Drops[i].Spot.Wall
		}
	}
	n := 0
	for i := range holes {
		h := &holes[i]
		if h.Wall != own || h.Kind != route.PlateArc && h.Kind != route.BlockArc {
			continue
		}
		n++
		if o := h.Below.Opening; o == nil || job.Drops[o.Drop].Tag != "W2" {
			t.Errorf("%s is bored through %+v: %s", h.ID, o, h.Below.Text)
		}
	}
	if n == 0 {
		t.Error("no cable goes on up that wall")
	}
}
