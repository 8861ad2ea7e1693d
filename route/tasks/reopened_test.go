package tasks

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/route"
)

// A ceiling that an earlier job opened is not cut again: one looks for the hole
// and takes down what covers it.
func TestCeilingThatIsOpen(t *testing.T) {
	res := solved(t, "../../samples/split-level")
	i := slices.IndexFunc(res.Holes, func(h route.Hole) bool { return res.Graph.Holes[h.Place].Kind == route.CeilingArc })
	p := &res.Graph.Holes[res.Holes[i].Place]
	job := *res.Job
	job.Before.Opened = []plan.Opened{{ID: "first-H9", Through: p.Kind.String(), Wall: -1, Pointed: true, Point: p.At, Diameter: 3 * measure.Inch}}
	again, err := route.Solve(&job)
	if err != nil || len(again.Reused) != 1 {
		t.Fatalf("reused %+v, %v", again.Reused, err)
	}
	var words []string
	order, err := Order(again)
	if err != nil {
		t.Fatal(err)
	}
	for _, task := range order.Tasks {
		words = append(words, task.Words)
	}
	all := strings.Join(words, "\n")
	tag := job.Drops[again.Reused[0].Drops[0]].Tag
	for _, want := range []string{"See that hole first-H9 is in the ceiling at " + tag, "Take down what covers hole first-H9."} {
		if !strings.Contains(all, want) {
			t.Errorf("no task %q in:\n%s", want, all)
		}
	}
	if strings.Contains(all, "Cut the opening of "+tag) {
		t.Errorf("the ceiling at %s is cut again:\n%s", tag, all)
	}
}
