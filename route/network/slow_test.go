package network

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

// A slow search is Dijkstra's algorithm as the doc of Search tells it, with
// nothing clever: no label is left out, and the queue is a list that is looked
// through for the least key, of several for the one pushed last.
type slow struct {
	net   *Network
	key   []int64 // by state, -1 for none; cost and, below, bends
	pred  []int32 // by state
	queue []slowEntry
}

type slowEntry struct {
	key   int64
	state int32
}

func newSlow(n *Network, states int) *slow {
	return &slow{net: n, key: slices.Repeat([]int64{-1}, states), pred: make([]int32, states)}
}

func (s *slow) pop() (e slowEntry, ok bool) {
	at := -1
	for i, e := range s.queue {
		if at < 0 || e.key <= s.queue[at].key {
			at = i
		}
	}
	if at < 0 {
		return e, false
	}
	e = s.queue[at]
	s.queue = slices.Delete(s.queue, at, at+1)
	return e, true
}

// offer gives a state a key that follows from one of key from.
func (s *slow) offer(state, pred int32, from, key int64) {
	switch old := s.key[state]; {
	case old < 0 || key < old:
		s.key[state], s.pred[state] = key, pred
		s.queue = append(s.queue, slowEntry{key, state})
	case key == old && key > from && pred < s.pred[state]:
		s.pred[state] = pred
	}
}

func (s *slow) price(h int32, cables int64) int64 {
	return (s.net.Fixed[h] + cables*s.net.PerUnit[h]) << bendBits
}

// slowTurns searches by slots. The states are half-arcs.
func slowTurns(n *Network, source int32, cables int64) func(v int32) (Path, bool) {
	s := newSlow(n, len(n.Target))
	for h := n.First[source]; h < n.First[source+1]; h++ {
		s.offer(n.Twin[h], noSlot, 0, s.price(h, cables))
	}
	for e, ok := s.pop(); ok; e, ok = s.pop() {
		v := n.Source[e.state]
		if e.key != s.key[e.state] || v == source {
			continue
		}
		for h := n.First[v]; h < n.First[v+1]; h++ {
			key := e.key + s.price(h, cables)
			bend, ok := n.Turn(n.Twin[e.state], h)
			if bend {
				key += 1 + cables*n.Bend[v]<<bendBits
			}
			if ok {
				s.offer(n.Twin[h], e.state, e.key, key)
			}
		}
	}
	return func(v int32) (Path, bool) {
		best := int32(noSlot)
		for j := n.First[v]; j < n.First[v+1] && v != source; j++ {
			if s.key[j] >= 0 && (best == noSlot || s.key[j] < s.key[best]) {
				best = j
			}
		}
		if best == noSlot {
			return Path{Nodes: []int32{v}, Arcs: []int32{}}, v == source
		}
		p := s.path(v, best, func(j int32) int32 { return s.pred[j] })
		p.Cost, p.Bends = s.key[best]>>bendBits, int(s.key[best]&bendMask)
		return p, true
	}
}

// slowPlain searches by nodes; the predecessor of one is the half-arc to it.
func slowPlain(n *Network, source int32, cables int64) func(v int32) (Path, bool) {
	s := newSlow(n, n.Nodes())
	s.offer(source, noSlot, 0, 0)
	for e, ok := s.pop(); ok; e, ok = s.pop() {
		if e.key != s.key[e.state] {
			continue
		}
		for h := n.First[e.state]; h < n.First[e.state+1]; h++ {
			s.offer(n.Target[h], h, e.key, e.key+s.price(h, cables))
		}
	}
	slot := func(v int32) int32 {
		if s.pred[v] == noSlot {
			return noSlot
		}
		return n.Twin[s.pred[v]]
	}
	return func(v int32) (Path, bool) {
		if s.key[v] < 0 {
			return Path{}, false
		}
		p := s.path(v, slot(v), func(j int32) int32 { return slot(n.Target[j]) })
		p.Cost = s.key[v] >> bendBits
		return p, true
	}
}

func (s *slow) path(v, slot int32, before func(int32) int32) Path {
	p := Path{Nodes: []int32{v}, Arcs: []int32{}}
	for j := slot; j != noSlot; j = before(j) {
		p.Nodes, p.Arcs = append(p.Nodes, s.net.Target[j]), append(p.Arcs, s.net.ArcOf[j])
	}
	slices.Reverse(p.Nodes)
	slices.Reverse(p.Arcs)
	return p
}

// rough makes a problem on purpose awkward: arcs at random or a lattice, often
// in several parts, many prices zero or alike and others up to most.
func rough(r *rand.Rand, most int64) problem {
	price := func() int64 {
		return []int64{0, min(most, r.Int64N(3)), r.Int64N(most + 1), most}[r.IntN(4)]
	}
	var p problem
	if r.IntN(3) == 0 {
		p = lattice(2+r.IntN(6), price(), price)
		p.arcs = slices.DeleteFunc(p.arcs, func(Arc) bool { return r.IntN(10) == 0 })
	} else {
		nodes := 2 + r.IntN(20)
		p = random(r, nodes, r.IntN(3*nodes), 0, 0)
		for v := range p.bend {
			p.bend[v] = price()
		}
	}
	for i := range p.arcs {
		p.arcs[i].Fixed, p.arcs[i].PerCable = price(), price()
	}
	if r.IntN(3) == 0 {
		return p.without()
	}
	return p
}

// Every path is, arc by arc, the one a slow search finds: among ties as well,
// and where the steps that tie cost nothing.
func TestSearchEqualsSlowSearch(t *testing.T) {
	reached, far := 0, 0
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 7))
		p := rough(r, []int64{0, 1, 4, 100, 1 << 20, 1 << 29, 1 << 33, MaxPrice}[seed%8])
		s := NewSearch(p.network(t))
		for range 3 {
			source, cables := int32(r.IntN(p.nodes)), []int64{1, 2, 3, 40}[r.IntN(4)]
			targets := make([]int32, r.IntN(3))
			for i := range targets {
				targets[i] = int32(r.IntN(p.nodes))
			}
			if s.From(source, cables, targets...) != nil {
				far++
				continue
			}
			want := slowTurns(s.net, source, cables)
			if s.net.plain {
				want = slowPlain(s.net, source, cables)
			}
			for v := range int32(p.nodes) {
				got, ok := s.To(v)
				path, exists := want(v)
				if !ok && (!exists || len(targets) > 0 && !slices.Contains(targets, v)) {
					continue
				}
				if !ok || !exists || !reflect.DeepEqual(got, path) {
					t.Fatalf("seed %d, %d cables from %d to %v: the path to %d is %+v (%v), want %+v (%v)",
						seed, cables, source, targets, v, got, ok, path, exists)
				}
				reached++
			}
		}
	}
	if reached < 50000 || far > 1000 {
		t.Errorf("%d paths compared, and %d searches refused", reached, far)
	}
}

// Costs just below and just above what 32 bits hold, one search after another.
func TestPlainCostsAroundTheLimitOf32Bits(t *testing.T) {
	const nodes = 5
	for _, price := range []int64{1, math.MaxUint32/nodes - 1, math.MaxUint32 / nodes, math.MaxUint32/(nodes-1) + 1, math.MaxUint32 - 1, math.MaxUint32, 1 << 33} {
		p := problem{nodes: nodes, bend: make([]int64, nodes)}
		for v := range int32(nodes - 1) {
			p.arcs = append(p.arcs, Arc{From: v, To: v + 1, Heading: Free, PerCable: price})
		}
		s := NewSearch(p.network(t))
		for _, cables := range []int64{1, 2, 1, 3, 1 << 10, 1} {
			if err := s.From(0, cables); err != nil {
				t.Fatal(err)
			}
			for v := range int64(nodes) {
				if cost, ok := s.Cost(int32(v)); !ok || cost != v*price*cables {
					t.Errorf("%d cables at %d to node %d cost %d (%v)", cables, price, v, cost, ok)
				}
			}
		}
	}
}

// The same lattice at prices a million times higher has the same paths: what
// the queue does with wide keys changes nothing.
func TestSearchScales(t *testing.T) {
	for _, headed := range []bool{true, false} {
		t.Run(fmt.Sprint("headings ", headed), func(t *testing.T) {
			var searches []*Search
			for _, unit := range []int64{1, 1_000_003, 1 << 27} {
				r := rand.New(rand.NewPCG(3, 8))
				p := lattice(40, 5*unit, func() int64 { return r.Int64N(12) * unit })
				if !headed {
					p = p.without()
				}
				searches = append(searches, p.from(t, 820, 2))
			}
			for v := range int32(1600) {
				want, _ := searches[0].To(v)
				for _, s := range searches[1:] {
					if got, _ := s.To(v); !slices.Equal(got.Arcs, want.Arcs) {
						t.Fatalf("the path to %d is %v, at low prices %v", v, got.Nodes, want.Nodes)
					}
				}
			}
		})
	}
}
