package network

import (
	"cmp"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
)

func TestHalfArcs(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := random(r, 2+r.IntN(9), r.IntN(60), 0, 2)
		n := p.network(t)
		if n.Nodes() != p.nodes || len(n.Target) != 2*len(p.arcs) {
			t.Fatalf("%d nodes and %d half-arcs, want %d and %d", n.Nodes(), len(n.Target), p.nodes, 2*len(p.arcs))
		}
		seen := make([]int, len(p.arcs))
		for v := range int32(p.nodes) {
			for h := n.First[v]; h < n.First[v+1]; h++ {
				seen[n.ArcOf[h]]++
				checkHalfArc(t, n, p.arcs[n.ArcOf[h]], v, h)
			}
		}
		for i, c := range seen {
			if c != 2 {
				t.Errorf("seed %d: arc %d has %d half-arcs", seed, i, c)
			}
		}
	}
}

func checkHalfArc(t *testing.T, n *Network, a Arc, v, h int32) {
	t.Helper()
	want := Arc{v, n.Target[h], n.Way[h], n.Fixed[h], n.PerUnit[h]}
	turned := Arc{want.To, v, want.Heading.Reverse(), want.Fixed, want.PerCable}
	if a != want && a != turned {
		t.Errorf("half-arc %d is %v, its arc %v", h, want, a)
	}
	w := n.Twin[h]
	if w == h || n.Twin[w] != h || n.ArcOf[w] != n.ArcOf[h] || n.Source[h] != v || n.Source[w] != want.To {
		t.Errorf("half-arcs %d and %d are no twins", h, w)
	}
	if g := h - 1; g >= n.First[v] && cmp.Or(
		cmp.Compare(n.Target[g], n.Target[h]), cmp.Compare(n.Way[g], n.Way[h]), cmp.Compare(n.Fixed[g], n.Fixed[h]),
		cmp.Compare(n.PerUnit[g], n.PerUnit[h]), cmp.Compare(n.ArcOf[g], n.ArcOf[h])) >= 0 {
		t.Errorf("half-arcs %d and %d of node %d are out of order", g, h, v)
	}
}

func TestTurn(t *testing.T) {
	// Node 0 is a crossing with an arm in every heading, and two free arcs.
	var arcs []Arc
	for h := East; h <= Free; h++ {
		arcs = append(arcs, Arc{From: 0, To: int32(h) + 1, Heading: h})
	}
	arcs = append(arcs, Arc{From: 0, To: int32(Free) + 2, Heading: Free})
	n := problem{len(arcs) + 1, arcs, make([]int64, len(arcs)+1)}.network(t)
	for i := range arcs {
		for j := range arcs {
			// In by arm i, so away from its end, and out by arm j.
			in, out := arcs[i].Heading.Reverse(), arcs[j].Heading
			bend, ok := n.Turn(n.Twin[i], int32(j))
			wantOK := i != j
			wantBend := wantOK && in != Free && out != Free && in != out
			if bend != wantBend || ok != wantOK {
				t.Errorf("from %q to %q: bend %v, allowed %v, want %v, %v", in, out, bend, ok, wantBend, wantOK)
			}
		}
	}
}

// Two arcs of opposite headings do not make a way to double back.
func TestTurnOpposite(t *testing.T) {
	n := problem{3, []Arc{{From: 0, To: 1, Heading: Up}, {From: 1, To: 2, Heading: Down}}, make([]int64, 3)}.network(t)
	if _, ok := n.Turn(n.Twin[n.First[1]], n.First[1]+1); ok {
		t.Error("a cable that came up may leave down")
	}
}

func TestNewRefuses(t *testing.T) {
	good := Arc{From: 0, To: 1}
	for _, c := range []struct {
		name  string
		nodes int
		arc   Arc
		bend  []int64
		words string
	}{
		{"nothing wrong", 2, good, []int64{0, MaxPrice}, ""},
		{"a node that is not there", 2, Arc{From: 0, To: 2}, make([]int64, 2), "arc 0: joins nodes 0 and 2 of 2"},
		{"a negative node", 2, Arc{From: -1, To: 1}, make([]int64, 2), "nodes -1 and 1"},
		{"a loop", 2, Arc{From: 1, To: 1}, make([]int64, 2), "node 1 to itself"},
		{"a negative price", 2, Arc{From: 0, To: 1, Fixed: -1}, make([]int64, 2), "prices -1 and 0"},
		{"a price over the limit", 2, Arc{From: 0, To: 1, PerCable: MaxPrice + 1}, make([]int64, 2), "not between"},
		{"a heading of its own", 2, Arc{From: 0, To: 1, Heading: Free + 1}, make([]int64, 2), "no heading 7"},
		{"too few bend prices", 2, good, make([]int64, 1), "1 bend prices for 2 nodes"},
		{"a negative bend price", 2, good, []int64{0, -3}, "bend price -3 of node 1"},
		{"a bend price over the limit", 2, good, []int64{MaxPrice + 1, 0}, "of node 0"},
		{"fewer than no nodes", -1, good, nil, "0 bend prices for -1 nodes"},
	} {
		_, err := New(c.nodes, []Arc{c.arc}, c.bend)
		switch {
		case c.words == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.words != "" && (err == nil || !strings.Contains(err.Error(), c.words)):
			t.Errorf("%s: error %v, want one that says %q", c.name, err, c.words)
		}
	}
}

// At other prices half-arcs keep their numbers, also those of parallel arcs, which
// New would number by their prices.
func TestReprice(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 2))
		p := random(r, 2+r.IntN(9), r.IntN(60), 0, 2)
		n := p.network(t)
		arcs := slices.Clone(p.arcs)
		for i := range arcs {
			arcs[i].Fixed, arcs[i].PerCable = r.Int64N(50), r.Int64N(50)
		}
		now, err := n.Reprice(arcs)
		if err != nil {
			t.Fatal(err)
		}
		for h, a := range n.ArcOf {
			if now.Source[h] != n.Source[h] || now.Target[h] != n.Target[h] || now.ArcOf[h] != a || now.Way[h] != n.Way[h] {
				t.Fatalf("seed %d: half-arc %d is another", seed, h)
			}
			if now.Fixed[h] != arcs[a].Fixed || now.PerUnit[h] != arcs[a].PerCable {
				t.Fatalf("seed %d: half-arc %d has prices %d and %d, its arc is %+v", seed, h, now.Fixed[h], now.PerUnit[h], arcs[a])
			}
		}
		again, err := now.Reprice(p.arcs)
		if err != nil || !reflect.DeepEqual(again, n) {
			t.Fatalf("seed %d: not the same at the old prices, %v", seed, err)
		}
	}
}

func TestRepriceRefuses(t *testing.T) {
	arcs := []Arc{{From: 0, To: 1, Heading: East}, {From: 1, To: 2, Heading: East}}
	n, err := New(3, arcs, make([]int64, 3))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := n.Reprice(arcs[:1]); err == nil || !strings.Contains(err.Error(), "prices of 1 arcs for 2") {
		t.Errorf("one arc of two: %v", err)
	}
	arcs[1].Fixed = -1
	if _, err := n.Reprice(arcs); err == nil || !strings.Contains(err.Error(), "arc 1: prices -1 and 0") {
		t.Errorf("a price below nothing: %v", err)
	}
}
