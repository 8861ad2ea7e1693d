package route

import "testing"

// With every hole counted the bound is never above the plan, most plans of
// random houses are proved cheapest, and on average they are within 1 %.
func TestRandomBounds(t *testing.T) {
	houses, proved := 0, 0
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
		if c.Proved {
			proved++
		}
		gaps += float64(c.Total-c.LowerBound) / float64(c.LowerBound)
	}
	if 10*proved < 7*houses || gaps/float64(houses) > 0.01 {
		t.Errorf("%d of %d plans proved, %.2f %% from the bound on average", proved, houses, 100*gaps/float64(houses))
	}
	t.Logf("%d of %d plans proved, %.2f %% from the bound on average", proved, houses, 100*gaps/float64(houses))
}
