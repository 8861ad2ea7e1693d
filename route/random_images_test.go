package route

import (
	"fmt"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/randomhouse"
)

// imagedHouses is how many houses are routed a second time for one property.
const imagedHouses = randomHouses / 2

// costs lists what a result comes to, drop by drop.
func costs(res *Result) []string {
	var out []string
	for i := range res.Routes {
		r := &res.Routes[i]
		line := fmt.Sprintf("%s: %d", res.Job.Drops[r.Drop].Tag, r.Alone)
		if r.Blocked != nil {
			line = fmt.Sprintf("%s: blocked, %d changes and %d", res.Job.Drops[r.Drop].Tag, r.Blocked.Changes, r.Blocked.Route)
		}
		out = append(out, line)
	}
	return out
}

// A house costs what its mirror image costs, and what it costs turned. Totals
// are compared where both plans are proved to be cheapest: which plan is found
// within the work allowed may depend on the order of the arcs.
func TestRandomCostsUnderSymmetries(t *testing.T) {
	proved := 0
	for seed := range uint64(imagedHouses) {
		first := randomResult(t, seed)
		sym := 1 + geom.Symmetry(seed)%(geom.Symmetries-1)
		res := solved(t, randomJob(t, seed, randomhouse.Options{Symmetry: sym}))
		want, got := costs(first), costs(res)
		for i := range want {
			if want[i] != got[i] {
				t.Errorf("seed %d: %s; under symmetry %d %s", seed, want[i], sym, got[i])
			}
		}
		if first.Cost.Proved && res.Cost.Proved {
			proved++
			if first.Cost.Total != res.Cost.Total {
				t.Errorf("seed %d: total %d, under symmetry %d %d", seed, first.Cost.Total, sym, res.Cost.Total)
			}
		}
		if res.Cost.LowerBound > first.Cost.Total || first.Cost.LowerBound > res.Cost.Total {
			t.Errorf("seed %d: bounds %d and %d, totals %d and %d", seed, first.Cost.LowerBound, res.Cost.LowerBound, first.Cost.Total, res.Cost.Total)
		}
	}
	if proved < imagedHouses/2 {
		t.Errorf("only %d of %d plans are proved", proved, imagedHouses)
	}
}

// outcome lists what a user sees of the routes: costs, cut lengths, holes and
// their places.
func outcome(res *Result) []string {
	out := append(costs(res), fmt.Sprint(res.Cost))
	for i := range res.Routes {
		r := &res.Routes[i]
		out = append(out, fmt.Sprint(r.Lengths, r.Points, r.Place, r.Moved))
	}
	for _, h := range res.Holes {
		out = append(out, fmt.Sprint(h.ID, res.Graph.Holes[h.Place].At, h.Cables, h.Bit, h.Count, h.Shield))
	}
	for _, b := range res.Bundles {
		out = append(out, fmt.Sprint(b.Kind, b.Points, b.Cables))
	}
	return out
}

// The order of tables in the files changes nothing.
func TestRandomOrderOfTables(t *testing.T) {
	for seed := range uint64(imagedHouses) {
		want := outcome(randomResult(t, seed))
		got := outcome(solved(t, randomJob(t, seed, randomhouse.Options{Shuffle: seed + 1})))
		for i := range want {
			if i >= len(got) || want[i] != got[i] {
				t.Errorf("seed %d: %s; shuffled %s", seed, want[i], got[i])
				break
			}
		}
		if len(want) != len(got) {
			t.Errorf("seed %d: %d outcomes, shuffled %d", seed, len(want), len(got))
		}
	}
}
