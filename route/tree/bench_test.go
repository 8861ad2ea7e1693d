package tree

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

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

func TestTrial(t *testing.T) {
	for _, k := range []int{4, 8, 12} {
		for seed := range uint64(5) {
			n, root, terms := lattice(90, 90, k, seed)
			start := time.Now()
			p, err := Solve(n, root, terms, Options{})
			fmt.Println(k, seed, p.Cost, p.LowerBound, p.Proved, err, time.Since(start))
		}
	}
}
