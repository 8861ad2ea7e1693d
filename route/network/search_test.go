package network

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"
)

// random makes a network of up to so many nodes with arcs of all headings.
func random(r *rand.Rand, nodes, arcs int) (*Network, []Arc, []int64) {
	list := make([]Arc, 0, arcs)
	for len(list) < arcs {
		a := Arc{From: int32(r.IntN(nodes)), To: int32(r.IntN(nodes)), Heading: Heading(r.IntN(7)), Fixed: r.Int64N(50), PerCable: r.Int64N(20)}
		if a.From != a.To {
			list = append(list, a)
		}
	}
	bend := make([]int64, nodes)
	for i := range bend {
		bend[i] = r.Int64N(30)
	}
	n, err := New(nodes, list, bend)
	if err != nil {
		panic(err)
	}
	return n, list, bend
}

// oracle is the cost of the cheapest path by gonum's Dijkstra on a graph whose
// nodes are the half-arcs, built from the arcs alone.
func oracle(nodes int, arcs []Arc, bend []int64, source int32, q int64) []float64 {
	g := simple.NewWeightedDirectedGraph(0, math.Inf(1))
	start := int64(2 * len(arcs))
	end := func(node int) int64 { return start + 1 + int64(node) }
	g.AddNode(simple.Node(start))
	for n := range nodes {
		g.AddNode(simple.Node(end(n)))
	}
	type half struct {
		from, to int32
		h        Heading
	}
	halves := make([]half, 2*len(arcs))
	for i, a := range arcs {
		halves[2*i] = half{a.From, a.To, a.Heading}
		halves[2*i+1] = half{a.To, a.From, a.Heading.Reverse()}
	}
	price := func(i int) float64 { return float64(arcs[i/2].Fixed + q*arcs[i/2].PerCable) }
	for i, a := range halves {
		if a.from == source {
			g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(start), simple.Node(int64(i)), price(i)))
		}
		g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(int64(i)), simple.Node(end(int(a.to))), 0))
		for j, b := range halves {
			if a.to != b.from || i/2 == j/2 {
				continue
			}
			w := price(j)
			if a.h != Free && b.h != Free && a.h != b.h {
				if a.h^1 == b.h {
					continue
				}
				w += float64(q * bend[a.to])
			}
			g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(int64(i)), simple.Node(int64(j)), w))
		}
	}
	tree := path.DijkstraFrom(simple.Node(start), g)
	out := make([]float64, nodes)
	for n := range nodes {
		out[n] = tree.WeightTo(end(n))
	}
	return out
}

func TestSearchEqualsGonum(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 1))
		nodes := 2 + r.IntN(14)
		n, arcs, bend := random(r, nodes, 1+r.IntN(40))
		q := 1 + r.Int64N(5)
		s := NewSearch(n)
		s.From(0, q)
		for v, want := range oracle(nodes, arcs, bend, 0, q) {
			p, ok := s.To(int32(v))
			switch {
			case v == 0:
			case ok != !math.IsInf(want, 1):
				t.Fatalf("seed %d: node %d reached: %v, gonum's weight %v", seed, v, ok, want)
			case ok && float64(p.Cost) != want:
				t.Fatalf("seed %d: node %d costs %d, gonum says %v", seed, v, p.Cost, want)
			case ok:
				checkPath(t, n, arcs, bend, p, q)
			}
		}
	}
}

// checkPath prices a path again, arc by arc.
func checkPath(t *testing.T, n *Network, arcs []Arc, bend []int64, p Path, q int64) {
	t.Helper()
	var cost int64
	bends := 0
	var last Heading
	for i, a := range p.Arcs {
		arc := arcs[a]
		h := arc.Heading
		switch {
		case arc.From == p.Nodes[i] && arc.To == p.Nodes[i+1]:
		case arc.To == p.Nodes[i] && arc.From == p.Nodes[i+1]:
			h = h.Reverse()
		default:
			t.Fatalf("arc %d does not join nodes %d and %d", a, p.Nodes[i], p.Nodes[i+1])
		}
		cost += arc.Fixed + q*arc.PerCable
		if i > 0 && h != last && h != Free && last != Free {
			cost += q * bend[p.Nodes[i]]
			bends++
		}
		last = h
	}
	if cost != p.Cost || bends != p.Bends {
		t.Errorf("path costs %d with %d bends, said to cost %d with %d", cost, bends, p.Cost, p.Bends)
	}
}

// Brute force over all walks without a repeated arc.
func TestSearchEqualsBruteForce(t *testing.T) {
	for seed := range uint64(120) {
		r := rand.New(rand.NewPCG(seed, 2))
		n, _, _ := random(r, 5, 1+r.IntN(7))
		q := 1 + r.Int64N(3)
		s := NewSearch(n)
		s.From(0, q)
		for v := int32(1); v < 5; v++ {
			want, bends := brute(n, 0, v, q)
			p, ok := s.To(v)
			if ok != (want < math.MaxInt64) || ok && (p.Cost != want || p.Bends != bends) {
				t.Fatalf("seed %d node %d: got %v %d with %d bends, want %d with %d", seed, v, ok, p.Cost, p.Bends, want, bends)
			}
		}
	}
}

// brute is the least cost of a walk from s to t, and the fewest bends at it.
func brute(n *Network, s, t int32, q int64) (cost int64, bends int) {
	cost = math.MaxInt64
	used := make([]bool, len(n.Target))
	var walk func(in int32, v int32, c int64, b int)
	walk = func(in, v int32, c int64, b int) {
		if v == t && in >= 0 && (c < cost || c == cost && b < bends) {
			cost, bends = c, b
		}
		for out := n.First[v]; out < n.First[v+1]; out++ {
			if used[out] {
				continue
			}
			extra, turn := int64(0), 0
			if in >= 0 {
				bend, ok := n.Turn(in, out)
				if !ok {
					continue
				}
				if bend {
					extra, turn = q*n.Bend[v], 1
				}
			}
			used[out] = true
			walk(out, n.Target[out], c+extra+n.Fixed[out]+q*n.PerUnit[out], b+turn)
			used[out] = false
		}
	}
	walk(-1, s, 0, 0)
	return cost, bends
}

// The figure for Dijkstra's algorithm in Cormen, Leiserson, Rivest and Stein:
// s-t 10, s-y 5, t-x 1, t-y 2, y-t 3, y-x 9, y-z 2, x-z 4, z-x 6, z-s 7 gives
// y 5, z 7, t 8, x 9 (arcs from memory). The arcs here go both ways; taking the
// cheaper of each pair leaves all four answers but t's, which the arc t-y of 2
// makes 7, and x's, 8.
func TestSearchTextbookFigure(t *testing.T) {
	const s, tt, x, y, z = 0, 1, 2, 3, 4
	arc := func(a, b int32, w int64) Arc { return Arc{From: a, To: b, Heading: Free, Fixed: w} }
	n, err := New(5, []Arc{
		arc(s, tt, 10), arc(s, y, 5), arc(tt, x, 1), arc(tt, y, 2), arc(y, x, 9), arc(y, z, 2), arc(x, z, 4), arc(z, s, 7),
	}, make([]int64, 5))
	if err != nil {
		t.Fatal(err)
	}
	search := NewSearch(n)
	search.From(s, 1)
	for v, want := range map[int32]int64{y: 5, z: 7, tt: 7, x: 8} {
		if p, ok := search.To(v); !ok || p.Cost != want {
			t.Errorf("node %d costs %d, want %d", v, p.Cost, want)
		}
	}
}

func TestSearchDoesNotDependOnOrderOfArcs(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 3))
		n := grid(12, func() (int64, int64) { return 1, 1 })
		arcs := slices.Clone(n.arcs)
		r.Shuffle(len(arcs), func(i, j int) { arcs[i], arcs[j] = arcs[j], arcs[i] })
		m, err := New(n.Nodes(), arcs, n.Bend)
		if err != nil {
			t.Fatal(err)
		}
		a, b := NewSearch(n), NewSearch(m)
		a.From(0, 1)
		b.From(0, 1)
		for v := range int32(n.Nodes()) {
			p, _ := a.To(v)
			q, _ := b.To(v)
			if !slices.Equal(p.Nodes, q.Nodes) {
				t.Fatalf("seed %d: path to %d is %v or %v", seed, v, p.Nodes, q.Nodes)
			}
		}
	}
}

func TestSearchStopsAtTargets(t *testing.T) {
	n := grid(20, func() (int64, int64) { return 3, 2 })
	all, some := NewSearch(n), NewSearch(n)
	all.From(0, 2)
	some.From(0, 2, 21, 45)
	for _, v := range []int32{21, 45} {
		p, _ := all.To(v)
		q, ok := some.To(v)
		if !ok || p.Cost != q.Cost || !slices.Equal(p.Nodes, q.Nodes) {
			t.Errorf("stopped early, node %d has %v, want %v", v, q, p)
		}
	}
	if len(some.touched) >= len(all.touched) {
		t.Errorf("stopped early, %d half-arcs were touched, no fewer than %d", len(some.touched), len(all.touched))
	}
}

func TestNewRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		nodes int
		arc   Arc
		bend  []int64
	}{
		"a node that is not there": {2, Arc{From: 0, To: 2}, make([]int64, 2)},
		"a negative node":          {2, Arc{From: -1, To: 1}, make([]int64, 2)},
		"a loop":                   {2, Arc{From: 1, To: 1}, make([]int64, 2)},
		"a negative price":         {2, Arc{From: 0, To: 1, Fixed: -1}, make([]int64, 2)},
		"a price over the bound":   {2, Arc{From: 0, To: 1, PerCable: MaxPrice + 1}, make([]int64, 2)},
		"a heading of its own":     {2, Arc{From: 0, To: 1, Heading: 9}, make([]int64, 2)},
		"too few bend prices":      {2, Arc{From: 0, To: 1}, make([]int64, 1)},
		"a negative bend price":    {2, Arc{From: 0, To: 1}, []int64{0, -3}},
	} {
		if _, err := New(c.nodes, []Arc{c.arc}, c.bend); err == nil {
			t.Errorf("New takes %s", name)
		}
	}
}

// grid is a square lattice of side n with bends of price 5.
func grid(n int, price func() (fixed, perCable int64)) *Network {
	var arcs []Arc
	add := func(a, b int, h Heading) {
		f, c := price()
		arcs = append(arcs, Arc{int32(a), int32(b), h, f, c})
	}
	for y := range n {
		for x := range n {
			if x+1 < n {
				add(y*n+x, y*n+x+1, East)
			}
			if y+1 < n {
				add(y*n+x, (y+1)*n+x, North)
			}
		}
	}
	bend := make([]int64, n*n)
	for i := range bend {
		bend[i] = 5
	}
	net, err := New(n*n, arcs, bend)
	if err != nil {
		panic(err)
	}
	return net
}

// BenchmarkSearch is one search of everything on a lattice of 100,000 nodes,
// with bends, in nanoseconds per half-arc of the network.
func BenchmarkSearch(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	n := grid(316, func() (int64, int64) { return r.Int64N(1000), r.Int64N(100) })
	s := NewSearch(n)
	for b.Loop() {
		s.From(0, 2)
	}
	if _, ok := s.To(int32(n.Nodes() - 1)); !ok {
		b.Fatal("the far corner was not reached")
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(n.Target)), "ns/half-arc")
}

// BenchmarkGonum is gonum's Dijkstra on the same lattice without bends.
func BenchmarkGonum(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	n := grid(316, func() (int64, int64) { return r.Int64N(1000), r.Int64N(100) })
	g := simple.NewWeightedDirectedGraph(0, math.Inf(1))
	for h := range n.Target {
		g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(int64(n.Source[h])), simple.Node(int64(n.Target[h])), float64(n.Fixed[h]+2*n.PerUnit[h])))
	}
	for b.Loop() {
		path.DijkstraFrom(simple.Node(0), g)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(n.Target)), "ns/half-arc")
}
