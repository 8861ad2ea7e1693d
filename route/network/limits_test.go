package network

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
)

func TestFromRefuses(t *testing.T) {
	p := problem{2, []Arc{{From: 0, To: 1, Heading: East, PerCable: MaxPrice}}, []int64{MaxPrice, MaxPrice}}
	s := NewSearch(p.network(t))
	if _, ok := s.To(1); ok {
		t.Error("before any search there is a path")
	}
	for _, c := range []struct {
		source  int32
		cables  int64
		targets []int32
		words   string
	}{
		{0, 1, nil, ""},
		{-1, 1, nil, "no node -1 to search from"},
		{2, 1, nil, "no node 2 to search from, there are 2"},
		{0, 1, []int32{1, 2}, "no node 2 to search for"},
		{0, 0, nil, "no path for 0 cables"},
		{0, -5, nil, "no path for -5 cables"},
		// Both half-arcs, each with a bend, are 2^42 for each cable.
		{0, 1 << 9, nil, "might cost 2251799813685248 units or more"},
		{0, 1<<9 - 1, nil, ""},
		{0, 1 << 21, nil, "might cost"},
		{0, math.MaxInt64, nil, "might cost"},
	} {
		err := s.From(c.source, c.cables, c.targets...)
		got, ok := s.To(1)
		switch {
		case c.words == "" && (err != nil || !ok || got.Cost != c.cables*MaxPrice):
			t.Errorf("%d cables from %d: path %v, %v, error %v", c.cables, c.source, got, ok, err)
		case c.words != "" && (err == nil || !strings.Contains(err.Error(), c.words)):
			t.Errorf("%d cables from %d: error %v, want one that says %q", c.cables, c.source, err, c.words)
		case c.words != "" && ok:
			t.Errorf("%d cables from %d: a failed search has a path", c.cables, c.source)
		}
	}
}

// A staircase bends at every node, more often than a key can count.
func TestSearchManyBends(t *testing.T) {
	const steps = 3*bendMask + 1
	p := problem{nodes: steps + 1, bend: make([]int64, steps+1)}
	for i := range int32(steps) {
		p.arcs = append(p.arcs, Arc{From: i, To: i + 1, Heading: East + 2*Heading(i%2), PerCable: 7})
		p.bend[i] = 3
	}
	got, ok := p.from(t, 0, 2).To(steps)
	if !ok {
		t.Fatal("the end of the stairs is out of reach")
	}
	if want := int64(2 * (7*steps + 3*(steps-1))); got.Cost != want || got.Bends != steps-1 {
		t.Errorf("the stairs cost %d with %d bends, want %d with %d", got.Cost, got.Bends, want, steps-1)
	}
}

// One Search after another finds what fresh ones find.
func TestSearchAgain(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 5))
		p := random(r, 2+r.IntN(12), 1+r.IntN(40), 0, 3)
		if seed%3 == 0 {
			p = p.without()
		}
		used := NewSearch(p.network(t))
		for range 8 {
			source, cables := int32(r.IntN(p.nodes)), 1+r.Int64N(3)
			targets := make([]int32, r.IntN(3))
			for i := range targets {
				targets[i] = int32(r.IntN(p.nodes))
			}
			if err := used.From(source, cables, targets...); err != nil {
				t.Fatal(err)
			}
			fresh := p.from(t, source, cables, targets...)
			for v := range int32(p.nodes) {
				a, aok := used.To(v)
				b, bok := fresh.To(v)
				if aok != bok || !reflect.DeepEqual(a, b) {
					t.Fatalf("seed %d: the path to %d is %v in a used search, %v in a fresh one", seed, v, a, b)
				}
			}
		}
	}
}

func TestSearchAllocatesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 6))
	p := lattice(30, 5, func() int64 { return r.Int64N(100) })
	for name, p := range map[string]problem{"with headings": p, "without headings": p.without()} {
		s := p.from(t, 0, 1)
		if n := testing.AllocsPerRun(10, func() { _ = s.From(0, 1, 400, 899) }); n != 0 {
			t.Errorf("%s: %v allocations a search", name, n)
		}
	}
}
