package tree

import (
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/route/network"
)

// A plan that was improved is one, costs no more than before and no less than any
// plan does, and can't be improved again.
func TestImproveAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 5))
	runs, better, parted := 0, 0, 0
	for run := range 800 {
		s := gated(rng)
		steps, _ := gateHoles(rng, s)
		n := s.n
		if run%2 == 1 {
			n = atRandomPrices(t, rng, s.n)
		}
		p, err := Solve(n, s.root, s.terms, Options{})
		if err != nil {
			t.Fatal(err)
		}
		before := Plan{Paths: slices.Clone(p.Paths)}
		before.Price(s.n, s.terms, steps)
		any, together := s.bruteSteps(steps)
		opt := Options{Known: p.Paths, Steps: steps}
		if run%2 == 1 {
			opt.Open = s.openFor(t, s.brute()+1) // without some of the plan, as a rule
		}
		now, err := Improve(s.n, s.root, s.terms, 1+run%3, opt)
		if err != nil {
			t.Fatal(err)
		}
		if opt.Open == nil && now.Cost > before.Cost || now.Cost < any {
			t.Fatalf("run %d: improved from %d to %d, brute force finds %d", run, before.Cost, now.Cost, any)
		}
		plain := Plan{Paths: now.Paths}
		plain.Price(s.n, s.terms, nil)
		plain.LowerBound, plain.Proved = plain.Cost, true
		checkPlan(t, s, plain)
		again, err := Improve(s.n, s.root, s.terms, 1+run%3, Options{Known: now.Paths, Steps: steps})
		if err != nil || again.Cost > now.Cost {
			t.Fatalf("run %d: %d once more, %d before, %v", run, again.Cost, now.Cost, err)
		}
		if runs++; now.Cost < before.Cost {
			better++
		}
		if now.Cost < together {
			parted++
		}
	}
	t.Logf("of %d plans %d are better, %d than any that stays together", runs, better, parted)
	if better < runs/20 || parted == 0 {
		t.Errorf("of %d plans %d are better, %d than any that stays together", runs, better, parted)
	}
}

// atRandomPrices is a network at other prices.
func atRandomPrices(t *testing.T, rng *rand.Rand, n *network.Network) *network.Network {
	t.Helper()
	arcs := make([]network.Arc, len(n.Target)/2)
	for h, a := range n.ArcOf {
		if int32(h) < n.Twin[h] {
			arcs[a] = network.Arc{From: n.Source[h], To: n.Target[h], Heading: n.Way[h], Fixed: rng.Int64N(20), PerCable: rng.Int64N(5)}
		}
	}
	out, err := n.Reprice(arcs)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
