package tree

import (
	"math/rand/v2"
	"testing"

	"topplate/route/network"
)

// A sketch is a tiny problem at random, on a grid of three by two places with
// two or three terminals.
type sketch struct {
	n     *network.Network
	root  int32
	terms []Terminal
}

// tiny draws a sketch. Rods are arcs of the same heading as a shorter one
// beside them; a free arc has no heading.
func tiny(rng *rand.Rand, rods, free bool) sketch {
	const w, h = 3, 2
	var arcs []network.Arc
	add := func(a, b int, d network.Heading) {
		arcs = append(arcs, network.Arc{From: int32(a), To: int32(b), Heading: d, Fixed: rng.Int64N(12), PerCable: rng.Int64N(6)})
	}
	for y := range h {
		for x := range w {
			if x+1 < w && rng.IntN(6) > 0 {
				add(y*w+x, y*w+x+1, network.East)
			}
			if y+1 < h && rng.IntN(6) > 0 {
				add(y*w+x, y*w+x+w, network.North)
			}
		}
		if rods {
			add(y*w, y*w+2, network.East)
		}
	}
	if free {
		a := rng.IntN(6)
		add(a, (a+1+rng.IntN(5))%6, network.Free)
	}
	s := sketch{root: int32(rng.IntN(6))}
	k := 2 + rng.IntN(2)
	bend := make([]int64, 6+k)
	for i := range bend {
		bend[i] = rng.Int64N(8)
	}
	for i := range k {
		at := (int(s.root) + 1 + rng.IntN(5)) % 6
		add(at, 6+i, network.Up)
		if rng.IntN(2) == 0 {
			add((at+1)%6, 6+i, network.Up)
		}
		s.terms = append(s.terms, Terminal{int32(6 + i), 1 + rng.Int64N(3)})
	}
	n, err := network.New(6+k, arcs, bend)
	if err != nil {
		panic(err)
	}
	s.n = n
	return s
}

// brute is the least cost over all ways of choosing, for every terminal, any
// walk from the root that repeats no half-arc. A terminal without a walk is
// left out.
func (s sketch) brute() int64 {
	var walks [][]walk
	for _, t := range s.terms {
		if w := s.walks(t); len(w) > 0 {
			walks = append(walks, w)
		}
	}
	best := int64(far)
	used := make([]int, len(s.n.Target))
	var choose func(i int, cost int64)
	choose = func(i int, cost int64) {
		if cost >= best {
			return
		}
		if i == len(walks) {
			best = cost
			return
		}
		for _, w := range walks[i] {
			c := cost + w.own
			for _, h := range w.halves {
				if used[s.n.ArcOf[h]]++; used[s.n.ArcOf[h]] == 1 {
					c += s.n.Fixed[h]
				}
			}
			choose(i+1, c)
			for _, h := range w.halves {
				used[s.n.ArcOf[h]]--
			}
		}
	}
	choose(0, 0)
	return best
}

type walk struct {
	halves []int32
	own    int64
}

func (s sketch) walks(t Terminal) (out []walk) {
	n := s.n
	leaf := map[int32]bool{}
	for _, o := range s.terms {
		leaf[o.Node] = true
	}
	on := make([]bool, len(n.Target))
	var path []int32
	var from func(v int32, own int64)
	from = func(v int32, own int64) {
		if v == t.Node {
			out = append(out, walk{append([]int32(nil), path...), own})
			return
		}
		if leaf[v] {
			return
		}
		for h := n.First[v]; h < n.First[v+1]; h++ {
			c := own + t.Cables*n.PerUnit[h]
			if k := len(path); k > 0 {
				bend, ok := n.Turn(path[k-1], h)
				if !ok {
					continue
				}
				if bend {
					c += t.Cables * n.Bend[v]
				}
			}
			if on[h] {
				continue
			}
			on[h] = true
			path = append(path, h)
			from(n.Target[h], c)
			path = path[:len(path)-1]
			on[h] = false
		}
	}
	from(s.root, 0)
	return out
}

func TestSolveAgainstBruteForce(t *testing.T) {
	for _, c := range []struct {
		name       string
		rods, free bool
		runs       int
	}{{"grid", false, false, 400}, {"rods", true, false, 60}, {"free", false, true, 150}} {
		t.Run(c.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(7, 11))
			proved := 0
			for run := range c.runs {
				s := tiny(rng, c.rods, c.free)
				p, err := Solve(s.n, s.root, s.terms, Options{})
				if err != nil {
					t.Fatal(err)
				}
				checkPlan(t, s, p)
				want := s.brute()
				if p.LowerBound > want || p.Cost < want || p.Proved && p.Cost != want {
					t.Fatalf("run %d: cost %d, bound %d, proved %v; brute force finds %d", run, p.Cost, p.LowerBound, p.Proved, want)
				}
				if p.Proved {
					proved++
				}
			}
			t.Logf("%d of %d proved", proved, c.runs)
			if !c.rods && !c.free && proved != c.runs {
				t.Errorf("%d of %d plans proved, want all", proved, c.runs)
			}
		})
	}
}

// checkPlan adds a plan up with code of its own and looks whether its paths
// are what they should be.
func checkPlan(t *testing.T, s sketch, p Plan) {
	t.Helper()
	var sum int64
	used := map[int32]bool{}
	for i, path := range p.Paths {
		if len(path.Nodes) == 0 {
			if len(s.walks(s.terms[i])) > 0 {
				t.Errorf("terminal %d has no path although there is one", i)
			}
			continue
		}
		if path.Nodes[0] != s.root || path.Nodes[len(path.Nodes)-1] != s.terms[i].Node || len(path.Arcs) != len(path.Nodes)-1 {
			t.Fatalf("terminal %d: path %v does not lead from the root to it", i, path.Nodes)
		}
		for _, v := range path.Nodes[1 : len(path.Nodes)-1] {
			for _, o := range s.terms {
				if v == o.Node {
					t.Errorf("terminal %d: path %v passes a terminal", i, path.Nodes)
				}
			}
		}
		last, bends := int32(-1), 0
		for j, a := range path.Arcs {
			h := halfArc(s.n, path.Nodes[j], path.Nodes[j+1], a)
			if h < 0 {
				t.Fatalf("terminal %d: arc %d does not join nodes %d and %d", i, a, path.Nodes[j], path.Nodes[j+1])
			}
			if last >= 0 {
				bend, ok := s.n.Turn(last, h)
				if !ok {
					t.Errorf("terminal %d doubles back at node %d", i, path.Nodes[j])
				}
				if bend {
					bends++
					sum += s.terms[i].Cables * s.n.Bend[path.Nodes[j]]
				}
			}
			sum += s.terms[i].Cables * s.n.PerUnit[h]
			if !used[a] {
				sum += s.n.Fixed[h]
			}
			used[a], last = true, h
		}
		if bends != path.Bends {
			t.Errorf("terminal %d: %d bends, want %d", i, path.Bends, bends)
		}
	}
	if sum != p.Cost || p.LowerBound > p.Cost || p.Proved != (p.LowerBound == p.Cost) {
		t.Errorf("cost %d, bound %d, proved %v; the paths add up to %d", p.Cost, p.LowerBound, p.Proved, sum)
	}
}

func halfArc(n *network.Network, a, b, arc int32) int32 {
	for h := n.First[a]; h < n.First[a+1]; h++ {
		if n.Target[h] == b && n.ArcOf[h] == arc {
			return h
		}
	}
	return -1
}

// In these sketches the optimum uses an arc both ways, and pays its fixed
// price once; the programme pays it twice, so that its plan is dearer. They
// were found by trying many seeds. Without the relaxation that plan would be
// called proved.
func TestSolveClaimsNothingWhereAnArcIsUsedBothWays(t *testing.T) {
	for _, c := range []struct {
		seed       uint64
		rods, free bool
		want       int64
	}{
		{1356, true, false, 148},
		{14132, true, false, 96},
		{18782, true, false, 146},
		{1171, false, true, 91},
		{1588, false, true, 67},
		{270, true, true, 126},
		{375, true, true, 103},
	} {
		s := tiny(rand.New(rand.NewPCG(c.seed, 99)), c.rods, c.free)
		if got := s.brute(); got != c.want {
			t.Errorf("seed %d: brute force finds %d, want %d", c.seed, got, c.want)
		}
		p, err := Solve(s.n, s.root, s.terms, Options{})
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, s, p)
		if p.LowerBound > c.want || p.Cost < c.want || p.Proved && p.Cost > c.want {
			t.Errorf("seed %d: cost %d, bound %d, proved %v; the optimum is %d", c.seed, p.Cost, p.LowerBound, p.Proved, c.want)
		}
	}
}
