package network

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"
)

// bendUnit is what a bend weighs beside a cost in the oracle; few enough bends
// never add up to one unit of cost.
const bendUnit = 1.0 / 4096

// oracle is the cost of the cheapest path to every node, and bendUnit for each
// bend, by gonum's Dijkstra. The nodes of its graph are the arcs with a way of
// travelling them, built without anything of Network.
func oracle(p problem, source int32, cables int64) []float64 {
	type half struct {
		from, to int32
		way      Heading
		price    float64
	}
	var halves []half
	for _, a := range p.arcs {
		price := float64(a.Fixed + cables*a.PerCable)
		halves = append(halves, half{a.From, a.To, a.Heading, price}, half{a.To, a.From, a.Heading.Reverse(), price})
	}
	g := simple.NewWeightedDirectedGraph(0, math.Inf(1))
	join := func(a, b int, w float64) {
		g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(a), simple.Node(b), w))
	}
	start, end := len(halves), len(halves)+1
	g.AddNode(simple.Node(start))
	for v := range p.nodes {
		g.AddNode(simple.Node(end + v))
	}
	join(start, end+int(source), 0)
	for i, a := range halves {
		if a.from == source {
			join(start, i, a.price)
		}
		join(i, end+int(a.to), 0)
		for j, b := range halves {
			switch bend := a.way != Free && b.way != Free && a.way != b.way; {
			case a.to != b.from, i/2 == j/2, bend && a.way == b.way.Reverse():
			case bend:
				join(i, j, b.price+float64(cables*p.bend[a.to])+bendUnit)
			default:
				join(i, j, b.price)
			}
		}
	}
	tree := path.DijkstraFrom(simple.Node(start), g)
	out := make([]float64, p.nodes)
	for v := range out {
		out[v] = tree.WeightTo(int64(end + v))
	}
	return out
}

// Networks of all sorts: sparse ones where much is out of reach, dense ones,
// and prices so low that paths of equal cost and steps that cost nothing abound.
func TestSearchEqualsGonum(t *testing.T) {
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := random(r, 2+r.IntN(14), 1+r.IntN(40), 0, []int64{0, 1, 3, 50, MaxPrice / 10000}[seed%5])
		if seed%7 == 0 {
			p = p.without()
		}
		cables := 1 + r.Int64N(5)
		source := int32(r.IntN(p.nodes))
		s := p.from(t, source, cables)
		for v, want := range oracle(p, source, cables) {
			got, ok := s.To(int32(v))
			cost, known := s.Cost(int32(v))
			if ok != !math.IsInf(want, 1) || known != ok || cost != got.Cost {
				t.Fatalf("seed %d: node %d reached: %v, %v; gonum's weight is %v", seed, v, ok, known, want)
			}
			if !ok {
				continue
			}
			if weight := float64(got.Cost) + bendUnit*float64(got.Bends); weight != want {
				t.Fatalf("seed %d: node %d costs %d with %d bends, gonum's weight is %v", seed, v, got.Cost, got.Bends, want)
			}
			p.check(t, got, source, int32(v), cables)
		}
	}
}

// The example of Dijkstra's algorithm that most encyclopedias draw: six nodes,
// arcs both ways, from 1 to 5 costs 20 by 1, 3, 6, 5 (from memory).
func TestSearchKnownFigure(t *testing.T) {
	p := problem{nodes: 7, bend: make([]int64, 7)}
	for _, a := range [][3]int{{1, 2, 7}, {1, 3, 9}, {1, 6, 14}, {2, 3, 10}, {2, 4, 15}, {3, 4, 11}, {3, 6, 2}, {4, 5, 6}, {5, 6, 9}} {
		p.arcs = append(p.arcs, Arc{From: int32(a[0]), To: int32(a[1]), Heading: Free, PerCable: int64(a[2])})
	}
	s := p.from(t, 1, 1)
	for v, want := range []int64{0, 0, 7, 9, 20, 20, 11} {
		if cost, ok := s.Cost(int32(v)); cost != want || ok != (v > 0) {
			t.Errorf("node %d costs %d (%v), want %d", v, cost, ok, want)
		}
	}
	if got, _ := s.To(5); !slices.Equal(got.Nodes, []int32{1, 3, 6, 5}) {
		t.Errorf("path to 5 is %v", got.Nodes)
	}
}

// The figure for Dijkstra's algorithm in Cormen, Leiserson, Rivest and Stein:
// s-t 10, s-y 5, t-x 1, t-y 2, y-t 3, y-x 9, y-z 2, x-z 4, z-x 6, z-s 7 gives
// y 5, z 7, t 8, x 9 (arcs from memory). Its arcs lead one way, ours both: the
// answers hold nevertheless if t-y is left out, which would make t 7.
func TestSearchTextbookFigure(t *testing.T) {
	const s, tt, x, y, z = 0, 1, 2, 3, 4
	p := problem{nodes: 5, bend: make([]int64, 5)}
	for _, a := range [][3]int{{s, tt, 10}, {s, y, 5}, {tt, x, 1}, {y, tt, 3}, {y, x, 9}, {y, z, 2}, {x, z, 4}, {z, x, 6}, {z, s, 7}} {
		p.arcs = append(p.arcs, Arc{From: int32(a[0]), To: int32(a[1]), Heading: Free, Fixed: int64(a[2])})
	}
	search := p.from(t, s, 3)
	for v, want := range map[int32]int64{s: 0, y: 5, z: 7, tt: 8, x: 9} {
		if cost, ok := search.Cost(v); !ok || cost != want {
			t.Errorf("node %d costs %d, want %d", v, cost, want)
		}
	}
}

// Across a lattice of equal prices, any path that goes only east and north has
// the least length; with bends at a price, it has one.
func TestSearchLattice(t *testing.T) {
	p := lattice(9, 5, func() int64 { return 10 })
	s := p.from(t, 0, 2)
	got, _ := s.To(80)
	// 16 steps of 10, and one bend of 2 cables.
	if got.Cost != 16*10+2*5 || got.Bends != 1 {
		t.Errorf("across the lattice costs %d with %d bends, want 170 with 1", got.Cost, got.Bends)
	}
	// Coming from the south is coming from the lower node: east first.
	if !slices.Equal(got.Nodes, []int32{0, 1, 2, 3, 4, 5, 6, 7, 8, 17, 26, 35, 44, 53, 62, 71, 80}) {
		t.Errorf("the path is %v, want east first", got.Nodes)
	}
}

// The cheapest way to node 1 is going east, but from there node 3 is west. So
// its path has to come to node 1 another way, however dear.
func TestSearchMustNotDoubleBack(t *testing.T) {
	p := problem{4, []Arc{
		{From: 0, To: 1, Heading: East, Fixed: 1},
		{From: 1, To: 3, Heading: West, Fixed: 1},
		{From: 0, To: 2, Heading: East, Fixed: 50},
		{From: 2, To: 1, Heading: North, Fixed: 50},
	}, []int64{2, 2, 2, 2}}
	got, ok := p.from(t, 0, 1).To(3)
	if !ok || got.Cost != 50+2+50+2+1 || !slices.Equal(got.Nodes, []int32{0, 2, 1, 3}) {
		t.Errorf("path is %v at %d, want 0 2 1 3 at 105", got.Nodes, got.Cost)
	}
}

// A spur without a heading is no place to turn round: it has only one arc.
func TestSearchUsesNoSpurToTurn(t *testing.T) {
	p := problem{4, []Arc{
		{From: 0, To: 1, Heading: East},
		{From: 1, To: 2, Heading: Free},
		{From: 1, To: 3, Heading: West},
	}, make([]int64, 4)}
	if got, ok := p.from(t, 0, 1).To(3); ok {
		t.Errorf("node 3 is reached by %v", got.Nodes)
	}
}

// An arc without a heading is a way round a bend.
func TestSearchFreeArcsNeverBend(t *testing.T) {
	p := problem{4, []Arc{
		{From: 0, To: 1, Heading: East, Fixed: 1},
		{From: 1, To: 3, Heading: North, Fixed: 1},
		{From: 1, To: 2, Heading: Free, Fixed: 3},
		{From: 2, To: 3, Heading: North, Fixed: 3},
	}, []int64{9, 9, 9, 9}}
	got, _ := p.from(t, 0, 1).To(3)
	if got.Cost != 7 || got.Bends != 0 {
		t.Errorf("path %v costs %d with %d bends, want 7 with none", got.Nodes, got.Cost, got.Bends)
	}
}
