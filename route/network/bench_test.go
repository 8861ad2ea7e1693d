package network

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"
)

// A compact serves a Network to gonum: a graph.Graph of its nodes without the
// maps of gonum's own graphs.
type compact struct{ *Network }

type vertex int64

func (v vertex) ID() int64 { return int64(v) }

func (c compact) Node(id int64) graph.Node { return vertex(id) }

func (c compact) From(id int64) graph.Nodes {
	return &vertices{list: c.Target[c.First[id]:c.First[id+1]], at: -1}
}

// Weight is the price for one cable.
func (c compact) Weight(from, to int64) (w float64, ok bool) {
	for h := c.First[from]; h < c.First[from+1]; h++ {
		if int64(c.Target[h]) == to {
			return float64(c.Fixed[h] + c.PerUnit[h]), true
		}
	}
	return 0, false
}

// Edge is not asked for by a search.
func (c compact) Edge(_, _ int64) graph.Edge { return nil }

type vertices struct {
	list []int32
	at   int
}

func (n *vertices) Next() bool       { n.at++; return n.at < len(n.list) }
func (n *vertices) Len() int         { return len(n.list) - n.at - 1 }
func (n *vertices) Reset()           { n.at = -1 }
func (n *vertices) Node() graph.Node { return vertex(n.list[n.at]) }

// own is a network as one of gonum's own graphs.
func own(n *Network) *simple.WeightedDirectedGraph {
	g := simple.NewWeightedDirectedGraph(0, 0)
	for h, u := range n.Target {
		v := n.Source[h]
		w, _ := compact{n}.Weight(int64(v), int64(u))
		g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(v), simple.Node(u), w))
	}
	return g
}

// BenchmarkAgainstGonum searches a lattice of 99,856 nodes and 398,160 arcs
// (each way counts) with prices 1 to 1000 from a corner to everywhere, and
// reports nanoseconds per arc: ours on the network without headings, gonum's
// Dijkstra on the same network as one of its own graphs and as a compact type,
// and how many times faster ours is. Each is the best of some rounds that take
// turns, as a mean tells more of what else the machine does. Ours with headings
// and bends is a dearer problem, which gonum's has no words for.
func BenchmarkAgainstGonum(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	p := lattice(316, 500, func() int64 { return 1 + r.Int64N(1000) })
	plain, turns := NewSearch(p.without().network(b)), NewSearch(p.network(b))
	n := plain.net
	last := int32(p.nodes - 1)
	const rounds = 5 // of each, before the next takes its turn
	simpleGraph := own(n)
	var bySimple, byCompact path.Shortest
	runs := []struct {
		name string
		run  func()
		best time.Duration
	}{
		{"plain", func() { _ = plain.From(0, 1) }, math.MaxInt64},
		{"turns", func() { _ = turns.From(0, 1) }, math.MaxInt64},
		{"compact", func() { byCompact = path.DijkstraFrom(vertex(0), compact{n}) }, math.MaxInt64},
		{"gonum", func() { bySimple = path.DijkstraFrom(simple.Node(0), simpleGraph) }, math.MaxInt64},
	}
	for b.Loop() {
		for i := range runs {
			for range rounds {
				start := time.Now()
				runs[i].run()
				runs[i].best = min(runs[i].best, time.Since(start))
			}
		}
	}
	cost, _ := plain.Cost(last)
	if float64(cost) != bySimple.WeightTo(int64(last)) || float64(cost) != byCompact.WeightTo(int64(last)) {
		b.Fatalf("the far corner costs %d, for gonum %v and %v", cost, bySimple.WeightTo(int64(last)), byCompact.WeightTo(int64(last)))
	}
	for i := range runs {
		b.ReportMetric(float64(runs[i].best)/float64(len(n.Target)), runs[i].name+"-ns/arc")
	}
	b.ReportMetric(float64(runs[3].best)/float64(runs[0].best), "gonum/plain")
	b.ReportMetric(float64(runs[2].best)/float64(runs[0].best), "compact/plain")
	b.ReportMetric(0, "ns/op")
}

func BenchmarkNew(b *testing.B) {
	p := lattice(316, 500, func() int64 { return 7 })
	for b.Loop() {
		p.network(b)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*2*len(p.arcs)), "ns/arc")
}

// BenchmarkSearchHouse is a search for one target on a lattice of the size of
// a house's attic, bends included, that starts in the middle.
func BenchmarkSearchHouse(b *testing.B) {
	r := rand.New(rand.NewPCG(2, 1))
	p := lattice(100, 300, func() int64 { return 1 + r.Int64N(1000) })
	s := p.from(b, 5050, 2)
	for b.Loop() {
		_ = s.From(5050, 2, 9999)
	}
	if _, ok := s.Cost(9999); !ok {
		b.Fatal("the corner was not reached")
	}
}
