package route

import (
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/plan/randomhouse"
	"topplate/route/tree"
)

// No plan costs less than the bound for all, nor than the quick bound for plans with so
// many cables as it has at one of its places. Plans are searched for with holes at
// gates for nothing and a price per cable there that is drawn at random, and improved
// one path at a time at the true prices: bundles part in many of them.
func TestNoPlanBelowTheBound(t *testing.T) {
	plans, places, several := 0, 0, 0
	for _, drops := range []int{8, 12} {
		for _, seed := range []uint64{23, 116, 127, 155, 169, 170, 219, 240, 392} {
			r := boundRun{T: t, seed: seed, drops: drops}
			r.run()
			plans, places, several = plans+r.plans, places+r.places, several+r.several
		}
	}
	t.Logf("%d plans, %d places, of which %d at gates with several holes", plans, places, several)
	if places < 1000 || several < 100 {
		t.Errorf("only %d places, of which %d at gates with several holes", places, several)
	}
}

// A boundRun looks at one random job.
type boundRun struct {
	*testing.T
	seed                   uint64
	drops                  int
	plans, places, several int
}

func (r *boundRun) run() {
	r.Helper()
	g, err := Build(randomJob(r.T, r.seed, randomhouse.Options{Drops: r.drops}))
	if err != nil {
		r.Fatal(err)
	}
	best := planned(r, g)
	o, err := g.newOutlook(g.Job.Book(), g.terms())
	if err != nil {
		r.Fatal(err)
	}
	o.found = best.Paths
	p, err := o.newPartings(&best)
	if err != nil {
		r.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(r.seed, uint64(r.drops)))
	for range 8 {
		found := r.draw(o, rng)
		if r.plans++; found.Cost < best.LowerBound {
			r.Errorf("%d drops, seed %d: a plan for %d, bound %d, the plan for %d", r.drops, r.seed, found.Cost, best.LowerBound, best.Cost)
		}
		r.places += r.checkPlaces(p, found)
	}
}

// draw finds a plan.
func (r *boundRun) draw(o *outlook, rng *rand.Rand) (found tree.Plan) {
	r.Helper()
	arcs := plainArcs(o.Arcs)
	for _, c := range o.gates {
		for _, a := range c.exits {
			b := o.Arcs[a].bore()
			arcs[a].Fixed -= b
			arcs[a].PerCable += rng.Int64N(b / 3)
		}
	}
	net, err := o.Net.Reprice(arcs)
	if err != nil {
		r.Fatal(err)
	}
	p, err := o.solveTree(net, tree.Options{Work: trialWork})
	if err != nil {
		r.Fatal(err)
	}
	found = tree.Plan{Paths: p.Paths, Cost: p.Cost}
	if err := o.improve(p.Paths, 1, &found); err != nil {
		r.Fatal(err)
	}
	return found
}

// checkPlaces holds a plan against the quick bounds for each of its places, and counts
// these.
func (r *boundRun) checkPlaces(p *partings, found tree.Plan) (places int) {
	r.Helper()
	drops := map[int32][]int{} // by half-arc
	for d, path := range found.Paths {
		for j, a := range path.Arcs {
			for h := p.Net.First[path.Nodes[j+1]]; h < p.Net.First[path.Nodes[j+1]+1]; h++ {
				if p.Net.ArcOf[h] == a && p.stepped(int(a)) {
					drops[h] = append(drops[h], d)
				}
			}
		}
	}
	for h, users := range drops {
		a := int(p.Net.ArcOf[h])
		f := full{half: h, more: p.more(p.book, a, users)}
		for _, d := range users {
			f.cables += int64(p.Job.Drops[d].Count)
		}
		if least := p.detours.Bound(h, f.cables) + p.paidWith(f); least > found.Cost {
			r.Errorf("%d drops, seed %d: a plan for %d has %d cables at arc %d, where plans with so many are said to cost %d", r.drops, r.seed, found.Cost, f.cables, a, least)
		}
		if places++; p.gate != nil && f.more > 0 && slices.Contains(p.gate.exits, a) {
			r.several++
		}
	}
	return places
}

// Without tolls no plan is found below a bound that was found with tolls, nor the other
// way round.
func TestTollsKeepTheBound(t *testing.T) {
	tolls := 0
	for _, seed := range []uint64{23, 127, 155, 169, 212, 232, 240} {
		g, err := Build(randomJob(t, seed, randomhouse.Options{Drops: 12}))
		if err != nil {
			t.Fatal(err)
		}
		with, without := withTolls(t, g, true), withTolls(t, g, false)
		if with.LowerBound > without.Cost || without.LowerBound > with.Cost {
			t.Errorf("seed %d: cost %d and bound %d with tolls, %d and %d without", seed, with.Cost, with.LowerBound, without.Cost, without.LowerBound)
		}
		if with.LowerBound != without.LowerBound || with.Cost != without.Cost {
			tolls++
		}
	}
	if tolls == 0 {
		t.Error("tolls change nothing")
	}
}

// withTolls is the cheapest plan found with or without tolls.
func withTolls(t *testing.T, g *Graph, tolls bool) tree.Plan {
	t.Helper()
	o, err := g.newOutlook(g.Job.Book(), g.terms())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range o.prepaid {
		for a := range g.Arcs {
			f.tolled[a] = !tolls
		}
	}
	best, err := o.cheapest()
	if err != nil {
		t.Fatal(err)
	}
	return best
}

// A plan that leaves a drop out is not taken for a cheaper one.
func TestImproveWantsEveryDrop(t *testing.T) {
	g, err := Build(randomJob(t, 23, randomhouse.Options{Drops: 8}))
	if err != nil {
		t.Fatal(err)
	}
	best := planned(t, g)
	o, err := g.newOutlook(g.Job.Book(), g.terms())
	if err != nil {
		t.Fatal(err)
	}
	paths, cost := slices.Clone(best.Paths), best.Cost
	paths[0] = tree.Path{}
	if err := o.improve(paths, 1, &best); err != nil || best.Cost != cost {
		t.Errorf("cost %d, %v; want %d", best.Cost, err, cost)
	}
}
