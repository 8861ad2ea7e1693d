package network

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// A walk is a path by brute force: its slots, the last one first.
type walk struct {
	cost  int64
	bends int
	slots []int32
	tied  bool // another walk has the same cost and as many bends
}

func compareWalks(a, b walk) int {
	return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.bends, b.bends), slices.Compare(a.slots, b.slots))
}

// brute tries all walks from a node that take no half-arc twice, and returns
// the best one to every node.
func brute(n *Network, source int32, cables int64) map[int32]walk {
	best := map[int32]walk{source: {}}
	used := make([]bool, len(n.Target))
	var from func(v, in int32, w walk)
	from = func(v, in int32, w walk) {
		for h := n.First[v]; h < n.First[v+1]; h++ {
			if used[h] {
				continue
			}
			next := walk{w.cost + n.Fixed[h] + cables*n.PerUnit[h], w.bends, slices.Concat([]int32{n.Twin[h]}, w.slots), false}
			if in != noSlot {
				bend, ok := n.Turn(in, h)
				if !ok {
					continue
				}
				if bend {
					next.cost += cables * n.Bend[v]
					next.bends++
				}
			}
			u := n.Target[h]
			old, ok := best[u]
			tied := ok && next.cost == old.cost && next.bends == old.bends
			if !ok || compareWalks(next, old) < 0 {
				old = next
			}
			old.tied = old.tied || tied
			best[u] = old
			used[h] = true
			from(u, h, next)
			used[h] = false
		}
	}
	from(source, noSlot, walk{})
	return best
}

// If every step costs something, the rule for ties says which path it is.
func TestSearchEqualsBruteForce(t *testing.T) {
	ties := 0
	for seed := range uint64(4000) {
		r := rand.New(rand.NewPCG(seed, 2))
		p := random(r, 3+r.IntN(3), 2+r.IntN(5), int64(seed%4), []int64{0, 1, 2, 20}[seed/4%4])
		cables := 1 + r.Int64N(3)
		s := p.from(t, 0, cables)
		best := brute(s.net, 0, cables)
		for v := range int32(p.nodes) {
			want, reached := best[v]
			got, ok := s.To(v)
			if ok != reached || got.Cost != want.cost || got.Bends != want.bends {
				t.Fatalf("seed %d: node %d reached: %v, for %d with %d bends, want %v, %d, %d",
					seed, v, ok, got.Cost, got.Bends, reached, want.cost, want.bends)
			}
			if seed%4 > 0 && !slices.Equal(nodesOf(s.net, v, want.slots), got.Nodes) && ok {
				t.Fatalf("seed %d: the path to %d is %v, want %v", seed, v, got.Nodes, nodesOf(s.net, v, want.slots))
			}
			if want.tied {
				ties++
			}
		}
	}
	if ties < 500 {
		t.Errorf("only %d paths had others of the same cost and bends", ties)
	}
}

func nodesOf(n *Network, v int32, slots []int32) []int32 {
	nodes := []int32{v}
	for _, j := range slots {
		nodes = append(nodes, n.Target[j])
	}
	slices.Reverse(nodes)
	return nodes
}

// drawn is a problem with so low prices that ties abound.
func drawn(t *rapid.T) problem {
	nodes := rapid.IntRange(2, 9).Draw(t, "nodes")
	node := rapid.Int32Range(0, int32(nodes-1))
	price := rapid.Int64Range(0, 2)
	p := problem{nodes: nodes, bend: rapid.SliceOfN(price, nodes, nodes).Draw(t, "bend")}
	for range rapid.IntRange(1, 30).Draw(t, "arcs") {
		a := Arc{node.Draw(t, "from"), node.Draw(t, "to"), Heading(rapid.ByteRange(0, byte(Free)).Draw(t, "heading")), price.Draw(t, "fixed"), price.Draw(t, "percable")}
		if a.From != a.To {
			p.arcs = append(p.arcs, a)
		}
	}
	return p
}

// The answer depends neither on the order of arcs nor on which end comes first.
func TestSearchDoesNotDependOnOrderOfArcs(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := drawn(rt)
		q := problem{p.nodes, rapid.Permutation(p.arcs).Draw(rt, "order"), p.bend}
		for i, a := range q.arcs {
			if rapid.Bool().Draw(rt, "turn") {
				q.arcs[i] = Arc{a.To, a.From, a.Heading.Reverse(), a.Fixed, a.PerCable}
			}
		}
		cables := rapid.Int64Range(1, 3).Draw(rt, "cables")
		a, b := p.from(t, 0, cables), q.from(t, 0, cables)
		for v := range int32(p.nodes) {
			x, _ := a.To(v)
			y, _ := b.To(v)
			if x.Cost != y.Cost || x.Bends != y.Bends || !slices.Equal(x.Nodes, y.Nodes) {
				rt.Fatalf("the path to %d is %v or %v", v, x, y)
			}
			for i := range x.Arcs {
				m, n := p.arcs[x.Arcs[i]], q.arcs[y.Arcs[i]]
				if m != n && m != (Arc{n.To, n.From, n.Heading.Reverse(), n.Fixed, n.PerCable}) {
					rt.Fatalf("step %d to %d is by %v or %v", i, v, m, n)
				}
			}
		}
	})
}

// A search for some targets finds for them what a search of everything finds,
// and claims nothing about nodes it has not come to.
func TestSearchStopsAtTargets(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := drawn(rt)
		targets := rapid.SliceOfN(rapid.Int32Range(0, int32(p.nodes-1)), 1, 4).Draw(rt, "targets")
		for _, p := range []problem{p, p.without()} {
			all, some := p.from(t, 0, 2), p.from(t, 0, 2, targets...)
			for v := range int32(p.nodes) {
				x, found := all.To(v)
				y, ok := some.To(v)
				if !ok && (!found || !slices.Contains(targets, v)) {
					continue
				}
				if ok != found || x.Cost != y.Cost || !slices.Equal(x.Arcs, y.Arcs) {
					rt.Fatalf("for targets %v the path to %d is %v (%v), want %v (%v)", targets, v, y, ok, x, found)
				}
			}
		}
	})
}

func TestSearchStopsEarly(t *testing.T) {
	headed := lattice(40, 5, func() int64 { return 3 })
	for _, p := range []problem{headed, headed.without()} {
		for _, c := range []struct {
			targets []int32
			most    int
		}{{[]int32{0}, 3}, {[]int32{41, 90, 41}, 200}, {nil, p.nodes}} {
			s := p.from(t, 0, 2, c.targets...)
			if len(s.touched) > c.most || c.targets == nil && len(s.touched) < c.most {
				t.Errorf("for targets %v, %d nodes of %d were touched", c.targets, len(s.touched), p.nodes)
			}
		}
	}
}

// On a network without headings, searching by nodes finds the same paths as
// searching by half-arcs, if every step costs something.
func TestPlainEqualsGeneral(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 4))
		p := random(r, 2+r.IntN(12), 1+r.IntN(40), 1, 2).without()
		n := p.network(t)
		n.plain = false
		plain, general := p.from(t, 0, 2), NewSearch(n)
		if err := general.From(0, 2); err != nil {
			t.Fatal(err)
		}
		for v := range int32(p.nodes) {
			x, xok := plain.To(v)
			y, yok := general.To(v)
			if xok != yok || x.Cost != y.Cost || !slices.Equal(x.Arcs, y.Arcs) {
				t.Fatalf("seed %d: the path to %d is %v or %v", seed, v, x, y)
			}
		}
	}
}
