package randomhouse

import (
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
)

func load(t *testing.T, sk Sketch) *plan.Job {
	t.Helper()
	job, list := plan.LoadJob("job.toml", sk.Read)
	if list.HasErrors() {
		var b strings.Builder
		list.Print(&b, nil)
		t.Fatalf("not loaded:\n%s\n%s\n%s", b.String(), sk.House, sk.Job)
	}
	return job
}

func TestLoads(t *testing.T) {
	for seed := range uint64(300) {
		load(t, Generate(seed, Options{Symmetry: geom.Symmetry(seed % 8)}))
	}
}
