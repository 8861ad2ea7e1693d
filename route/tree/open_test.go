package tree

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// Brute force looks at every plan that costs less than the limit: if no two of its
// walks travel an arc in opposite ways it may be travelled, and where two do that
// is allowed for.
func TestOpenKeepsEveryPlanBelow(t *testing.T) {
	for _, c := range []struct {
		name       string
		rods, free bool
		runs       int
	}{{"grid", false, false, 2000}, {"rods", true, false, 1300}, {"free", false, true, 1500}} {
		t.Run(c.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(21, 4))
			all, open, oneWay := 0, 0, 0
			for run := range c.runs {
				s := tiny(rng, c.rods, c.free)
				want := s.brute()
				limit := want + rng.Int64N(12)
				opt, effort := Options{}, Effort{Both: true}
				if run%2 == 1 {
					known, err := Solve(s.n, s.root, s.terms, Options{})
					if err != nil {
						t.Fatal(err)
					}
					opt.Known, effort.Steps = known.Paths, 20
				}
				o, bound, err := OpenBelow(s.n, s.root, s.terms, limit, effort, opt)
				if err != nil {
					t.Fatal(err)
				}
				if bound > want && bound > limit || want < limit && bound > want {
					t.Fatalf("run %d: bound %d, limit %d, brute force finds %d", run, bound, limit, want)
				}
				s.eachPlanBelow(limit, func(walks []walk) { s.checkOpen(t, run, o, walks) })
				all, open = all+len(s.n.Target), open+o.Len()
				for h := range o.Ways {
					if o.Ways[h] && o.Ways[s.n.Twin[h]] && !o.Both[h] {
						oneWay++
					}
				}
				p, err := Solve(s.n, s.root, s.terms, Options{Open: o})
				if err != nil {
					t.Fatal(err)
				}
				if want < limit && (p.LowerBound > want || p.Cost < want && s.whole(p)) {
					t.Fatalf("run %d: cost %d, bound %d on what is open; brute force finds %d", run, p.Cost, p.LowerBound, want)
				}
			}
			t.Logf("%d of %d half-arcs stay open, %d of them not both ways", open, all, oneWay)
			if 2*open > all || c.rods && oneWay == 0 {
				t.Errorf("%d of %d half-arcs stay open, %d of them not both ways", open, all, oneWay)
			}
		})
	}
}

// whole reports whether a plan has a path for every terminal that has any.
func (s sketch) whole(p Plan) bool {
	for t, ok := range Reached(s.n, s.root, s.terms) {
		if ok && len(p.Paths[t].Nodes) == 0 {
			return false
		}
	}
	return true
}

// checkOpen checks that walks, from the root, are open to their cables.
func (s sketch) checkOpen(t *testing.T, run int, o *Open, walks []walk) {
	t.Helper()
	for _, w := range walks {
		if slices.ContainsFunc(w.halves, func(h int32) bool { return s.n.Target[h] == s.root }) {
			return // passes the root, which nobody does
		}
	}
	closed, opposite := -1, false
	for i, w := range walks {
		for _, out := range w.halves {
			h := s.n.Twin[out]
			if !o.Ways[h] {
				closed = int(h)
			}
			for j, v := range walks {
				back := slices.Contains(v.halves, h)
				opposite = opposite || back
				if j != i && back && !o.Both[h] {
					t.Fatalf("run %d: a plan travels half-arc %d and back, which is closed", run, h)
				}
			}
		}
	}
	if closed >= 0 && !opposite {
		t.Fatalf("run %d: a plan travels half-arc %d, which is closed", run, closed)
	}
}

// eachPlanBelow calls f with the walks of every plan that costs less than a limit.
func (s sketch) eachPlanBelow(limit int64, f func([]walk)) {
	var walks [][]walk
	for _, t := range s.terms {
		if w := s.walks(t); len(w) > 0 {
			walks = append(walks, w)
		}
	}
	chosen, used := make([]walk, len(walks)), make([]int, len(s.n.Target))
	var choose func(i int, cost int64)
	choose = func(i int, cost int64) {
		if cost >= limit {
			return
		}
		if i == len(walks) {
			f(chosen)
			return
		}
		for _, w := range walks[i] {
			c := cost + w.own
			for _, h := range w.halves {
				if used[s.n.ArcOf[h]]++; used[s.n.ArcOf[h]] == 1 {
					c += s.n.Fixed[h]
				}
			}
			chosen[i] = w
			choose(i+1, c)
			for _, h := range w.halves {
				used[s.n.ArcOf[h]]--
			}
		}
	}
	choose(0, 0)
}

// What is sure to be paid at the root makes a search shorter, and finds the same.
// Every cable pays its share of a hole there, and the step what that leaves.
func TestAheadFindsTheSame(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 7))
	shorter := 0
	for run := range 400 {
		s := gated(rng)
		takes := 2 + rng.Int64N(2)
		var all int64
		for _, term := range s.terms {
			all += term.Cables
		}
		for h, a := range s.n.ArcOf {
			if a >= 3 && a < 6 {
				s.n.Fixed[h] -= 10
				s.n.PerUnit[h] += 10 / takes
			}
		}
		steps := &Steps{Arcs: []int32{3, 4, 5}, More: func(_ int32, terms []int32) int64 {
			var q int64
			for _, t := range terms {
				q += s.terms[t].Cables
			}
			return (q+takes-1)/takes*10 - 10/takes*q
		}}
		ahead := make([]int64, s.n.Nodes())
		for v := 1; v < len(ahead); v++ {
			ahead[v] = (all+takes-1)/takes*10 - (10*all+takes-1)/takes
		}
		plain, err := Solve(s.n, s.root, s.terms, Options{Steps: steps})
		if err != nil {
			t.Fatal(err)
		}
		got, err := Solve(s.n, s.root, s.terms, Options{Steps: steps, Ahead: ahead})
		if err != nil {
			t.Fatal(err)
		}
		if _, together := s.bruteSteps(steps); got.Cost != plain.Cost || got.Together != plain.Together || got.Together > together {
			t.Fatalf("run %d: %d, together %d, with what is ahead %d, %d; brute force finds %d together", run, plain.Cost, plain.Together, got.Cost, got.Together, together)
		}
		if ahead[1] > 0 {
			shorter++
		}
	}
	if shorter < 100 {
		t.Errorf("only %d of 400 have anything ahead", shorter)
	}
}
