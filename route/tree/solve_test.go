package tree

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/route/network"
)

// corridor is the cost trap: two terminals, each with a corridor of its own
// at 7 per cable, and one that both can share at a fixed price and 1 per
// cable.
func corridor(t *testing.T, fixed int64) sketch {
	t.Helper()
	// Root 0, shared middle 1, terminals 2 and 3 with their places 4 and 5.
	arcs := []network.Arc{
		{From: 0, To: 1, Heading: network.Free, Fixed: fixed, PerCable: 1},
		{From: 1, To: 4, Heading: network.Free},
		{From: 1, To: 5, Heading: network.Free},
		{From: 0, To: 4, Heading: network.Free, PerCable: 7},
		{From: 0, To: 5, Heading: network.Free, PerCable: 7},
		{From: 4, To: 2, Heading: network.Free},
		{From: 5, To: 3, Heading: network.Free},
	}
	n, err := network.New(6, arcs, make([]int64, 6))
	if err != nil {
		t.Fatal(err)
	}
	return sketch{n, 0, []Terminal{{2, 1}, {3, 1}}}
}

func TestSolveSharesWhereItPays(t *testing.T) {
	// By hand: sharing costs F + 2, apart 14.
	for _, c := range []struct{ fixed, want int64 }{{10, 12}, {11, 13}, {12, 14}, {13, 14}, {100, 14}} {
		s := corridor(t, c.fixed)
		p, err := Solve(s.n, s.root, s.terms, Options{})
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, s, p)
		if p.Cost != c.want || !p.Proved {
			t.Errorf("F = %d: cost %d, proved %v; want %d, proved", c.fixed, p.Cost, p.Proved, c.want)
		}
		shared := cmp.Equal(p.Paths[0].Nodes, []int32{0, 1, 4, 2}) && cmp.Equal(p.Paths[1].Nodes, []int32{0, 1, 5, 3})
		if c.fixed != 12 && shared != (c.fixed < 12) {
			t.Errorf("F = %d: paths %v", c.fixed, p.Paths)
		}
	}
}

func TestSolveBadTerminals(t *testing.T) {
	s := corridor(t, 10)
	for _, c := range []struct {
		name  string
		terms []Terminal
	}{
		{"no such node", []Terminal{{6, 1}}},
		{"negative node", []Terminal{{-1, 1}}},
		{"root", []Terminal{{0, 1}}},
		{"twice", []Terminal{{2, 1}, {2, 1}}},
		{"no cable", []Terminal{{2, 0}}},
		{"more cables than can be counted", []Terminal{{2, 1 << 40}}},
	} {
		if _, err := Solve(s.n, 0, c.terms, Options{}); !errors.Is(err, ErrTerminal) {
			t.Errorf("%s: error %v, want %v", c.name, err, ErrTerminal)
		}
	}
	if _, err := Solve(s.n, 9, s.terms, Options{}); err == nil {
		t.Error("no error for a root that is no node")
	}
	p, err := Solve(s.n, 0, nil, Options{})
	if err != nil || p.Cost != 0 || !p.Proved {
		t.Errorf("no terminals: %+v, %v", p, err)
	}
}

func TestSolveNearOverflow(t *testing.T) {
	arcs := []network.Arc{{From: 0, To: 1, Heading: network.Up, Fixed: network.MaxPrice, PerCable: network.MaxPrice}}
	n, err := network.New(2, arcs, []int64{network.MaxPrice, network.MaxPrice})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Solve(n, 0, []Terminal{{1, 1 << 30}}, Options{}); !errors.Is(err, ErrTooDear) {
		t.Errorf("error %v, want %v", err, ErrTooDear)
	}
	p, err := Solve(n, 0, []Terminal{{1, 1000}}, Options{})
	if want := int64(1001 * network.MaxPrice); err != nil || p.Cost != want || !p.Proved {
		t.Errorf("cost %d, error %v; want %d", p.Cost, err, want)
	}
}

func TestSolvePlansWhatCanBeReached(t *testing.T) {
	s := corridor(t, 10)
	// Without its arc, terminal 3 is alone.
	var arcs []network.Arc
	for h, back := range s.n.Twin {
		if int32(h) < back && s.n.Target[h] != 3 && s.n.Source[h] != 3 {
			arcs = append(arcs, network.Arc{From: s.n.Source[h], To: s.n.Target[h], Heading: s.n.Way[h], Fixed: s.n.Fixed[h], PerCable: s.n.PerUnit[h]})
		}
	}
	n, err := network.New(6, arcs, s.n.Bend)
	if err != nil {
		t.Fatal(err)
	}
	p, err := Solve(n, s.root, s.terms, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Paths[1].Nodes) != 0 || p.Cost != 7 || !p.Proved {
		t.Errorf("plan %+v, want only the first terminal planned, for 7", p)
	}
}

// changed is a network with all prices multiplied and some arcs left out.
func changed(t *testing.T, n *network.Network, factor int64, leaveOut func(arc int32) bool) *network.Network {
	t.Helper()
	var arcs []network.Arc
	for h, back := range n.Twin {
		if int32(h) < back && !leaveOut(n.ArcOf[h]) {
			arcs = append(arcs, network.Arc{From: n.Source[h], To: n.Target[h], Heading: n.Way[h], Fixed: factor * n.Fixed[h], PerCable: factor * n.PerUnit[h]})
		}
	}
	bend := make([]int64, n.Nodes())
	for v := range bend {
		bend[v] = factor * n.Bend[v]
	}
	m, err := network.New(n.Nodes(), arcs, bend)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestSolveProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for seed := range uint64(12) {
		n, root, terms := lattice(14, 14, 2+int(seed%8), seed)
		solve := func(n *network.Network) Plan {
			p, err := Solve(n, root, terms, Options{})
			if err != nil {
				t.Fatal(err)
			}
			checkPlan(t, sketch{n, root, terms}, p)
			return p
		}
		p := solve(n)
		if again := solve(n); !cmp.Equal(p, again) {
			t.Errorf("seed %d: two runs differ: %s", seed, cmp.Diff(p, again))
		}
		if double := solve(changed(t, n, 2, func(int32) bool { return false })); double.Cost != 2*p.Cost {
			t.Errorf("seed %d: twice the prices cost %d, want twice %d", seed, double.Cost, p.Cost)
		}
		used := map[int32]bool{}
		for _, path := range p.Paths {
			for _, a := range path.Arcs {
				used[a] = true
			}
		}
		unused := changed(t, n, 1, func(a int32) bool { return !used[a] && rng.IntN(3) == 0 })
		if q := solve(unused); q.Cost != p.Cost {
			t.Errorf("seed %d: without arcs that were not in use %d, want %d", seed, q.Cost, p.Cost)
		}
		// Leaving arcs in makes nothing dearer.
		victim := p.Paths[0].Arcs[len(p.Paths[0].Arcs)/2]
		if q := solve(changed(t, n, 1, func(a int32) bool { return a == victim })); len(q.Paths[0].Nodes) > 0 && q.Cost < p.Cost {
			t.Errorf("seed %d: without an arc %d, with it %d", seed, q.Cost, p.Cost)
		}
	}
}

func TestSolveWithLittleWork(t *testing.T) {
	n, root, terms := lattice(30, 30, 30, 4)
	best, err := Solve(n, root, terms, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, work := range []int64{1, 1000, 100_000, 3_000_000} {
		p, err := Solve(n, root, terms, Options{Work: work})
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, sketch{n, root, terms}, p)
		if p.LowerBound > best.Cost || p.Cost < best.LowerBound {
			t.Errorf("work %d: cost %d and bound %d against %d and %d", work, p.Cost, p.LowerBound, best.Cost, best.LowerBound)
		}
	}
	asked := 0
	p, err := Solve(n, root, terms, Options{Stop: func() bool { asked++; return true }})
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, sketch{n, root, terms}, p)
	if asked == 0 && !p.Proved {
		t.Error("the search ended without asking whether to stop")
	}
}

func TestSolveMany(t *testing.T) {
	n, root, terms := lattice(40, 40, 80, 9)
	p, err := Solve(n, root, terms, Options{Work: 30_000_000})
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, sketch{n, root, terms}, p)
	if gap := float64(p.Cost-p.LowerBound) / float64(p.LowerBound); gap > 0.03 {
		t.Errorf("%.2f %% above the bound, want 3 %% at most", 100*gap)
	}
}
