package tree

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"topplate/route/network"
)

// lattice is a grid of w by h places with the prices of a house: F 0..4 per
// step, 12 % barriers of 100..400, c 8..15 per cable, bends at 3.
func lattice(w, h, terminals int, seed uint64) (*network.Network, int32, []Terminal) {
	rng := rand.New(rand.NewPCG(seed, 1))
	var arcs []network.Arc
	add := func(a, b int, d network.Heading) {
		f := rng.Int64N(5)
		if rng.IntN(100) < 12 {
			f = 100 + rng.Int64N(301)
		}
		arcs = append(arcs, network.Arc{From: int32(a), To: int32(b), Heading: d, Fixed: f, PerCable: 8 + rng.Int64N(8)})
	}
	for y := range h {
		for x := range w {
			if x+1 < w {
				add(y*w+x, y*w+x+1, network.East)
			}
			if y+1 < h {
				add(y*w+x, y*w+x+w, network.North)
			}
		}
	}
	nodes := w * h
	bend := make([]int64, nodes+terminals)
	for i := range bend {
		bend[i] = 3
	}
	places := rng.Perm(nodes)
	var terms []Terminal
	for i := range terminals {
		arcs = append(arcs, network.Arc{From: int32(places[i+1]), To: int32(nodes + i), Heading: network.Up, Fixed: rng.Int64N(50)})
		terms = append(terms, Terminal{int32(nodes + i), 1 + rng.Int64N(3)})
	}
	n, err := network.New(nodes+terminals, arcs, bend)
	if err != nil {
		panic(err)
	}
	return n, int32(places[0]), terms
}

func BenchmarkSolve(b *testing.B) {
	for _, c := range []struct{ side, terminals, seeds int }{
		{90, 4, 3}, {90, 8, 5}, {90, 12, 5}, {100, 100, 1}, {170, 300, 1}, {300, 1000, 1},
	} {
		for seed := range uint64(c.seeds) {
			b.Run(fmt.Sprintf("%d-nodes/%d-places/%d", c.side*c.side, c.terminals, seed), func(b *testing.B) {
				n, root, terms := lattice(c.side, c.side, c.terminals, seed)
				var p Plan
				for b.Loop() {
					var err error
					if p, err = Solve(n, root, terms, Options{}); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(100*float64(p.Cost-p.LowerBound)/float64(p.LowerBound), "%gap")
			})
		}
	}
}
