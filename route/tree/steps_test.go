package tree

import (
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/route/network"
)

// stepped gives some arcs of a sketch a price in steps, as holes have: so many
// cables to a hole, and for each hole beyond the first a price of its own.
func stepped(rng *rand.Rand, s sketch) *Steps {
	steps, _ := steppedBy(rng, s)
	return steps
}

// steppedBy tells as well what so many cables pay on an arc.
func steppedBy(rng *rand.Rand, s sketch) (steps *Steps, more func(a int32, cables int64) int64) {
	perHole := make([]int64, len(s.n.Target)/2)
	bore := make([]int64, len(perHole))
	for a := range perHole {
		if rng.IntN(2) == 0 {
			perHole[a], bore[a] = 1+rng.Int64N(4), rng.Int64N(s.fixedOf(int32(a))+1)
		}
	}
	return s.holes(perHole, bore)
}

// holes are steps where so many cables go to a hole; none where that is 0.
func (s sketch) holes(perHole, bore []int64) (steps *Steps, more func(a int32, cables int64) int64) {
	more = func(a int32, cables int64) int64 { return ((cables+perHole[a]-1)/perHole[a] - 1) * bore[a] }
	steps = &Steps{More: func(a int32, terms []int32) int64 {
		var cables int64
		for i, t := range terms {
			if i > 0 && terms[i-1] >= t {
				panic("numbers of terminals do not rise")
			}
			cables += s.terms[t].Cables
		}
		return more(a, cables)
	}}
	for a, n := range perHole {
		if n > 0 {
			steps.Arcs = append(steps.Arcs, int32(a))
		}
	}
	return steps, more
}

func (s sketch) fixedOf(a int32) int64 {
	for h := range s.n.ArcOf {
		if s.n.ArcOf[h] == a {
			return s.n.Fixed[h]
		}
	}
	return 0
}

// bruteSteps is the least cost over all plans, and over those whose paths stay
// together from where they meet to the root.
func (s sketch) bruteSteps(steps *Steps) (any, together int64) {
	var walks [][]walk
	var number []int32
	for i, t := range s.terms {
		if w := s.walks(t); len(w) > 0 {
			walks, number = append(walks, w), append(number, int32(i))
		}
	}
	any, together = far, far
	chosen := make([]walk, len(walks))
	var choose func(i int)
	choose = func(i int) {
		if i < len(walks) {
			for _, chosen[i] = range walks[i] {
				choose(i + 1)
			}
			return
		}
		users := map[int32][]int32{}
		var cost int64
		for j, w := range chosen {
			cost += w.own
			for _, h := range w.halves {
				a := s.n.ArcOf[h]
				if len(users[a]) == 0 {
					cost += s.n.Fixed[h]
				}
				if !slices.Contains(users[a], number[j]) {
					users[a] = append(users[a], number[j])
				}
			}
		}
		for _, a := range steps.Arcs {
			if len(users[a]) > 0 {
				cost += steps.More(a, users[a])
			}
		}
		any = min(any, cost)
		if cost < together && parted(chosen) == 0 {
			together = cost
		}
	}
	choose(0)
	return any, together
}

// parted counts the pairs of walks that share a half-arc but not all before it.
func parted(walks []walk) int {
	n := 0
	for i := range walks {
		for j := range i {
			a, b := walks[i].halves, walks[j].halves
			same := 0
			for same < min(len(a), len(b)) && a[same] == b[same] {
				same++
			}
			for _, h := range a[same:] {
				if slices.Contains(b[same:], h) {
					n++
					break
				}
			}
		}
	}
	return n
}

func TestSolveWithStepsAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	const runs = 300
	proved, best, apart := 0, 0, 0
	for run := range runs {
		s := tiny(rng, false, false)
		steps := stepped(rng, s)
		p, err := Solve(s.n, s.root, s.terms, Options{Steps: steps})
		if err != nil {
			t.Fatal(err)
		}
		any, together := s.bruteSteps(steps)
		if p.LowerBound > any || p.Cost < any || p.Cost > together || p.Together > together || p.Proved && p.Cost != any {
			t.Fatalf("run %d: cost %d, bounds %d and %d, proved %v; brute force finds %d, together %d", run, p.Cost, p.LowerBound, p.Together, p.Proved, any, together)
		}
		if p.Proved {
			proved++
		}
		if p.Cost == any {
			best++
		}
		if any < together {
			apart++
		}
	}
	t.Logf("of %d plans %d are the cheapest, %d proved so; in %d cables that part and meet again would be cheaper", runs, best, proved, apart)
	if best < runs || proved < runs/3 {
		t.Errorf("of %d plans only %d are the cheapest and %d proved so", runs, best, proved)
	}
}

// A plan that is not cheaper than asked for need not be searched for, but what
// is said of the bound must hold.
func TestSolveBelow(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 5))
	for run := range 200 {
		s := tiny(rng, false, false)
		want := s.brute()
		for _, below := range []int64{want - 3, want, want + 1, want + 20} {
			if below <= 0 {
				continue
			}
			p, err := Solve(s.n, s.root, s.terms, Options{Below: below})
			if err != nil {
				t.Fatal(err)
			}
			if p.LowerBound > want || want < below && p.Cost != want || want >= below && p.LowerBound < min(below, want) {
				t.Fatalf("run %d, below %d: cost %d, bound %d, want %d", run, below, p.Cost, p.LowerBound, want)
			}
		}
	}
}

func TestStepsDecideWhereCablesGo(t *testing.T) {
	// The trap of corridor with a shared corridor at 10: 12 for both in it, 14
	// apart. If the second cable there costs 3 more, apart is cheaper.
	s := corridor(t, 10)
	for _, c := range []struct{ more, want int64 }{{0, 12}, {1, 13}, {3, 14}} {
		steps := &Steps{Arcs: []int32{0}, More: func(_ int32, terms []int32) int64 { return int64(len(terms)-1) * c.more }}
		p, err := Solve(s.n, s.root, s.terms, Options{Steps: steps})
		if err != nil || p.Cost != c.want || p.Together != c.want {
			t.Errorf("a second cable for %d more: cost %d, together %d, %v; want %d", c.more, p.Cost, p.Together, err, c.want)
		}
	}
}

// Each of two places takes half of all cables; one more there costs a fortune.
// Sets of cables that each fit, but pass one place apart, must not be
// taken for a cheaper plan.
func TestSolveKeepsFullPlacesFull(t *testing.T) {
	for _, places := range []int{20, 100} { // with and without the exact search
		// Root 0, the two places' near and far sides, one node where all meet.
		arcs := []network.Arc{
			{From: 0, To: 1, Heading: network.Free, Fixed: 1},
			{From: 1, To: 3, Heading: network.Free, Fixed: 5},
			{From: 0, To: 2, Heading: network.Free, Fixed: 1},
			{From: 2, To: 3, Heading: network.Free, Fixed: 5, PerCable: 9},
		}
		var terms []Terminal
		for i := range places {
			n := int32(4 + i)
			arcs = append(arcs, network.Arc{From: 3, To: n, Heading: network.Free, Fixed: 3, PerCable: int64(i % 7)})
			terms = append(terms, Terminal{n, 1})
		}
		net, err := network.New(4+places, arcs, make([]int64, 4+places))
		if err != nil {
			t.Fatal(err)
		}
		steps := &Steps{Arcs: []int32{0, 2}, More: func(_ int32, terms []int32) int64 {
			if len(terms) > places/2 {
				return 1_000_000
			}
			return 0
		}}
		p, err := Solve(net, 0, terms, Options{Steps: steps, Work: 10_000_000})
		if err != nil {
			t.Fatal(err)
		}
		if want := int64(places/2*9 + 12 + 3*places); p.Cost < want || p.Cost > want+int64(7*places) {
			t.Errorf("%d places: the plan costs %d, with half through each place it is %d and what single cables cost", places, p.Cost, want)
		}
	}
}
