package route

import (
	"slices"
	"testing"

	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/route/highs"
)

// Where several holes are needed, and bundles may part for that, an integer programme
// of the whole graph finds no cheaper plan. The jobs are random ones, but all cables
// alike, so that a hole takes so many of them.
func TestSeveralHolesAgainstHiGHS(t *testing.T) {
	for _, seed := range []uint64{48, 72, 73} {
		job := randomJob(t, seed, randomhouse.Options{Drops: 5})
		for i := range job.Drops {
			job.Drops[i].Cable, job.Drops[i].Count = job.Drops[0].Cable, 3+i%3
		}
		g, err := Build(job)
		if err != nil {
			t.Fatal(err)
		}
		best := planned(t, g)
		if gates := g.gates(job.Book(), reachedAll(g)); len(gates) == 0 {
			t.Errorf("seed %d: one hole is enough everywhere", seed)
		}
		if want := byHiGHS(t, g, holesPriced(t, g)); best.Cost != want || best.LowerBound > want {
			t.Errorf("seed %d: cost %d, bound %d; HiGHS finds %d", seed, best.Cost, best.LowerBound, want)
		}
	}
}

func reachedAll(g *Graph) []bool { return slices.Repeat([]bool{true}, len(g.Job.Drops)) }

// holesPriced tells what the holes of every arc cost and take, for a job whose cables
// are all alike.
func holesPriced(t *testing.T, g *Graph) []highs.Arc {
	t.Helper()
	all := 0
	for d := range g.Job.Drops {
		all += g.Job.Drops[d].Count
	}
	out := make([]highs.Arc, len(g.Arcs))
	for i := range g.Arcs {
		if !g.stepped(i) {
			continue
		}
		x := &out[i]
		x.Hole = g.Arcs[i].bore()
		for n := 1; n <= all; n++ {
			beyond, crowded := g.beyondFor(g.Job.Book(), i, slices.Repeat([]measure.Length{g.thinnest()}, n))
			if crowded {
				break
			}
			if beyond == 0 {
				x.Takes = n
			}
			if x.Holes = int(beyond) + 1; x.Holes != (n+x.Takes-1)/x.Takes {
				t.Fatalf("arc %d: %d holes for %d cables, %d to a hole", i, x.Holes, n, x.Takes)
			}
		}
		if x.Takes == 0 {
			t.Fatalf("arc %d takes no cable", i)
		}
	}
	return out
}

// byHiGHS is the optimum of a graph, with steps in prices as told; nil stands for none.
func byHiGHS(t *testing.T, g *Graph, steps []highs.Arc) int64 {
	t.Helper()
	problem := highs.Problem{Root: int32(g.Root), Bend: g.Bend, Arcs: make([]highs.Arc, len(g.Arcs))}
	copy(problem.Arcs, steps)
	for i := range g.Arcs {
		a, x := &g.Arcs[i], &problem.Arcs[i]
		x.From, x.To, x.Heading, x.Fixed, x.PerCable = int32(a.From), int32(a.To), a.Heading.String(), a.Fixed(), a.PerCable()
	}
	for _, d := range g.terms() {
		problem.Terminals = append(problem.Terminals, highs.Terminal(d))
	}
	return highs.Optima(t, problem)[0]
}
