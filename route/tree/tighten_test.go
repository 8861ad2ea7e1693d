package tree

import (
	"math/rand/v2"
	"testing"
)

// A dual that was tightened is still one: no member has a share of what nobody pays,
// shares are never more than prices, what members pay is no more than their
// cheapest way with their shares, and the bound is not above the optimum. It is better
// than the dual before.
func TestTightenAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 9))
	runs, better, tight := 0, 0, 0
	for run := range 1500 {
		s := tiny(rng, run%3 == 1, run%3 == 2)
		want := s.brute()
		p, err := Solve(s.n, s.root, s.terms, Options{})
		if err != nil {
			t.Fatal(err)
		}
		d, w := dualOf(s, p.Paths)
		if len(d.member) < 2 || p.Cost != want {
			continue
		}
		if run%2 == 0 {
			d.ascend(1, w)
		}
		was := d.bound()
		d.tighten(want*d.scale, 40, w)
		now := d.bound()
		if now < was || now > want*d.scale {
			t.Fatalf("run %d: bound %d, %d before, optimum %d", run, now, was, want*d.scale)
		}
		checkDual(t, run, d)
		if runs++; now > was {
			better++
		}
		if d.whole(now) == want {
			tight++
		}
	}
	t.Logf("of %d duals %d are better, %d bounds are the optimum", runs, better, tight)
	if better < runs/50 || tight < runs*4/5 {
		t.Errorf("of %d duals %d are better, %d bounds are the optimum", runs, better, tight)
	}
}

// dualOf is a dual without shares on the space of a sketch, which a plan guides.
func dualOf(s sketch, plan []Path) (*dual, *meter) {
	sp, _ := newSpace(s.n, s.root, s.terms, Options{}, true)
	var member []int32
	for i := range s.terms {
		if len(sp.start[i]) > 0 {
			member = append(member, int32(i))
		}
	}
	d := newDual(sp, sp.distances(0))
	d.reset(member, sp.fixed)
	d.guide = sp.guideBy(member, plan)
	return d, &meter{left: DefaultWork}
}

func checkDual(t *testing.T, run int, d *dual) {
	t.Helper()
	sum := make([]int64, len(d.base))
	for i := range d.member {
		d.load(i)
		for g := range d.exit {
			if sum[g] += d.share[g]; d.share[g] < 0 {
				t.Fatalf("run %d: member %d has a share of %d in state %d", run, i, d.share[g], g)
			}
			for _, n := range d.turns(g) {
				if d.slackOf(g, n.to, n.price) < 0 {
					t.Fatalf("run %d: the potential of member %d falls by more than it pays from state %d to %d", run, i, g, n.to)
				}
			}
		}
		d.drop(i)
	}
	for g, x := range sum {
		if x > d.fixed[g] || x != d.spent[g] {
			t.Fatalf("run %d: shares of state %d are %d, its price %d", run, g, x, d.fixed[g])
		}
	}
}
