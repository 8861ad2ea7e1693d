package route

import (
	"fmt"
	"slices"
	"testing"

	"topplate/plan/measure"
)

// With every hole counted the bound is never above the plan, three in four
// plans of random houses are proved cheapest, nine in ten among those whose
// bundles stay together, and on average they are within 0.4 % of the bound.
func TestRandomBounds(t *testing.T) {
	houses, proved, together := 0, 0, 0
	var gaps float64
	for seed := range uint64(randomHouses) {
		c := randomResult(t, seed).Cost
		if c.Total == 0 {
			continue
		}
		houses++
		if c.LowerBound > c.Total {
			t.Errorf("seed %d: bound %d above cost %d", seed, c.LowerBound, c.Total)
		}
		if c.LowerBound > c.Together || c.Together > c.Total {
			t.Errorf("seed %d: cost %d, bounds %d and %d", seed, c.Total, c.Together, c.LowerBound)
		}
		if c.Proved {
			proved++
		}
		if c.Together == c.Total {
			together++
		}
		gaps += float64(c.Total-c.LowerBound) / float64(c.LowerBound)
	}
	say := fmt.Sprintf("of %d plans %d are proved, %d among those whose bundles stay together; %.2f %% from the bound on average", houses, proved, together, 100*gaps/float64(houses))
	if 4*proved < 3*houses || 10*together < 9*houses || gaps/float64(houses) > 0.004 {
		t.Error(say)
	}
	t.Log(say)
}

// What a gate is taken to hold at most is no less than what fits, hole by hole,
// whatever the cables: so a gate that is full is full in every plan.
func TestGateHoldsNoLess(t *testing.T) {
	checked := 0
	for seed := range uint64(40) {
		g := randomResult(t, seed).Graph
		book, all := g.Job.Book(), 0
		for i := range g.Job.Drops {
			all += g.Job.Drops[i].Count
		}
		for a := range g.Arcs {
			if g.Arcs[a].Kind != PlateArc {
				continue
			}
			p := &g.Holes[g.Arcs[a].Hole]
			for d := range g.Job.Drops {
				n := 1
				for ; n <= all; n++ {
					f := newFitting(g.Job.Tools.Bits, book, g.largestHole(book, p), slices.Repeat([]measure.Length{g.Job.Drops[d].Cable.Diameter}, n))
					if !f.everythingIn || f.width > p.Free {
						break
					}
				}
				if checked++; n-1 > g.mostHoles(book, a)*g.most(book, a) {
					t.Fatalf("seed %d: %d cables fit, the gate is taken to hold %d", seed, n-1, g.mostHoles(book, a)*g.most(book, a))
				}
			}
		}
	}
	if checked < 100 {
		t.Errorf("only %d places were looked at", checked)
	}
}
