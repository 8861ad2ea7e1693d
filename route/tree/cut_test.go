package tree

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/route/network"
)

// bruteThrough is the least cost over all walks of which those over a half-arc,
// towards the root, have so many cables together, and none go the other way. The
// arc itself costs nothing. If others are asked for, walks take one of these, with so
// many cables at least.
func (s sketch) bruteThrough(cut Cut) int64 {
	var walks [][]walk
	var cables []int64
	for _, t := range s.terms {
		if w := s.walks(t); len(w) > 0 {
			walks, cables = append(walks, w), append(cables, t.Cables)
		}
	}
	best := int64(far)
	used := make([]int, len(s.n.Target))
	away := s.n.Twin[cut.Half]             // walks start at the root
	over := make([]int64, len(cut.Others)) // cables
	together := func() bool {
		took := 0
		for _, q := range over {
			if q > 0 {
				took++
			}
		}
		return len(over) == 0 || took == 1 && slices.Max(over) >= cut.Together
	}
	var choose func(i int, left, cost int64)
	choose = func(i int, left, cost int64) {
		if cost >= best || left < 0 {
			return
		}
		if i == len(walks) {
			if left == 0 && together() {
				best = cost
			}
			return
		}
	next:
		for _, w := range walks[i] {
			c, l := cost+w.own, left
			for _, h := range w.halves {
				if h == cut.Half || s.n.Target[h] == s.root {
					continue next
				}
				if h == away {
					l -= cables[i]
					c -= cables[i] * s.n.PerUnit[h]
				}
			}
			for _, h := range w.halves {
				if used[s.n.ArcOf[h]]++; used[s.n.ArcOf[h]] == 1 && h != away {
					c += s.n.Fixed[h]
				}
				if at := slices.Index(cut.Others, s.n.Twin[h]); at >= 0 {
					over[at] += cables[i]
				}
			}
			choose(i+1, l, c)
			for _, h := range w.halves {
				used[s.n.ArcOf[h]]--
				if at := slices.Index(cut.Others, s.n.Twin[h]); at >= 0 {
					over[at] -= cables[i]
				}
			}
		}
	}
	choose(0, cut.Cables, 0)
	return best
}

func TestThroughAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 3))
	runs, exact, reached := 0, 0, 0
	for run := range 6000 {
		s := tiny(rng, run%10 == 8, run%10 == 9)
		single := run%3 > 0
		var all int64
		for i := range s.terms {
			if single {
				s.terms[i].Cables = 1
			}
			all += s.terms[i].Cables
		}
		cut := Cut{Half: int32(rng.IntN(len(s.n.Target))), Cables: 1 + rng.Int64N(all)}
		want := s.bruteThrough(cut)
		c, err := Through(s.n, s.root, s.terms, cut, Options{})
		got := c.Bound
		if err != nil {
			t.Fatal(err)
		}
		if got > want {
			t.Fatalf("run %d: cut %+v of %v: bound %d, brute force finds %d", run, cut, s.terms, got, want)
		}
		if want == far {
			continue
		}
		reached++
		if tight, err := Through(s.n, s.root, s.terms, cut, Options{Below: got + 1}); err != nil || tight.Bound != got {
			t.Fatalf("run %d: cut %+v of %v: bound %d, %d with a limit, %v", run, cut, s.terms, got, tight.Bound, err)
		}
		if !single {
			continue
		}
		if runs++; got == want {
			exact++
		}
	}
	t.Logf("%d cuts, %d with single cables, of which %d exact", reached, runs, exact)
	if exact < runs/2 {
		t.Errorf("of %d cuts only %d are exact", runs, exact)
	}
}

// Where the other cables keep together at another place to bore, the bound is one for
// plans that do, and above the one for all as a rule where these don't.
func TestThroughOthersAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 2))
	runs, exact, above := 0, 0, 0
	for run := range 3000 {
		s := gatedAt(rng, 0)
		if run%2 == 0 {
			for i := range s.terms {
				s.terms[i].Cables = 1
			}
		}
		var exits []int32
		var all int64
		for _, q := range s.terms {
			all += q.Cables
		}
		for h := range s.n.Target {
			if s.n.Target[h] == s.root {
				exits = append(exits, int32(h))
			}
		}
		cut := Cut{Half: exits[0], Cables: 1 + rng.Int64N(all-1)}
		free, err := Through(s.n, s.root, s.terms, cut, Options{})
		if err != nil {
			t.Fatal(err)
		}
		cut.Others, cut.Together = exits[1:], all-cut.Cables
		want := s.bruteThrough(cut)
		c, err := Through(s.n, s.root, s.terms, cut, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if c.Bound > want || c.Bound < free.Bound {
			t.Fatalf("run %d: bound %d, %d if others part, brute force finds %d", run, c.Bound, free.Bound, want)
		}
		if want == far {
			continue
		}
		if runs++; c.Bound == want {
			exact++
		}
		if c.Bound > free.Bound {
			above++
		}
	}
	t.Logf("%d cuts, of which %d exact and %d above the bound for others that part", runs, exact, above)
	if exact < runs/2 || above < runs/50 {
		t.Errorf("of %d cuts %d are exact, %d above the bound for others that part", runs, exact, above)
	}
}

// gated draws a sketch as houses have it: three places to bore side by side at
// the root, a way along them, and terminals most of which come by one dear arc.
func gated(rng *rand.Rand) sketch { return gatedAt(rng, 10) }

// gatedAt does so at a price of a place to bore.
func gatedAt(rng *rand.Rand, bore int64) sketch {
	s := sketch{root: 0}
	arcs := []network.Arc{
		{From: 1, To: 2, Heading: network.East, Fixed: rng.Int64N(3), PerCable: rng.Int64N(2)},
		{From: 2, To: 3, Heading: network.East, Fixed: rng.Int64N(3), PerCable: rng.Int64N(2)},
		{From: 2, To: 4, Heading: network.North, Fixed: 5 + rng.Int64N(15), PerCable: 1 + rng.Int64N(3)},
	}
	for v := range int32(3) {
		arcs = append(arcs, network.Arc{From: 0, To: 1 + v, Heading: network.North, Fixed: bore, PerCable: rng.Int64N(3)})
	}
	k := 3 + rng.IntN(2)
	bend := make([]int64, 5+k)
	for i := range bend {
		bend[i] = rng.Int64N(2)
	}
	for i := range k {
		at := int32(4)
		if rng.IntN(3) == 0 {
			at = 1 + rng.Int32N(3)
		}
		arcs = append(arcs, network.Arc{From: at, To: int32(5 + i), Heading: network.Up, Fixed: rng.Int64N(3)})
		s.terms = append(s.terms, Terminal{int32(5 + i), 1 + rng.Int64N(2)})
	}
	var err error
	if s.n, err = network.New(len(bend), arcs, bend); err != nil {
		panic(err)
	}
	return s
}

// gateHoles are steps at the places to bore: two cables or three to a hole, and as
// much for every hole as for the first.
func gateHoles(rng *rand.Rand, s sketch) (*Steps, func(a int32, cables int64) int64) {
	perHole, bore := make([]int64, len(s.n.Target)/2), make([]int64, len(s.n.Target)/2)
	takes := 2 + rng.Int64N(2)
	for a := 3; a < 6; a++ {
		perHole[a], bore[a] = takes, 10
	}
	return s.holes(perHole, bore)
}

// A plan whose paths stay together, or else a full place, is what some cheapest
// plan has (see package route): so the least of what these cost is a bound for all
// plans. Brute force tries every plan. The plans that Through comes upon have to
// be plans, and none may be cheaper than the optimum.
func TestFullPlacesAgainstBruteForce(t *testing.T) {
	for _, c := range []struct {
		name               string
		draw               func(rng *rand.Rand) sketch
		steps              func(rng *rand.Rand, s sketch) (*Steps, func(a int32, cables int64) int64)
		runs, exact, found int // at least so many bounds and plans that part
	}{
		{"gates", gated, gateHoles, 2000, 1000, 20},
		{"grid", func(rng *rand.Rand) sketch { return tiny(rng, false, false) }, steppedBy, 400, 0, 0},
		{"free", func(rng *rand.Rand) sketch { return two(tiny(rng, false, true)) }, steppedBy, 200, 0, 0},
		{"rods", func(rng *rand.Rand) sketch { return two(tiny(rng, true, false)) }, steppedBy, 200, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(8, 1))
			exact, plain, apart, found := 0, 0, 0, 0
			for run := range c.runs {
				s := c.draw(rng)
				steps, more := c.steps(rng, s)
				p, err := Solve(s.n, s.root, s.terms, Options{Steps: steps})
				if err != nil {
					t.Fatal(err)
				}
				any, together := s.bruteSteps(steps)
				places := s.fullPlaces(more, steps, p)
				if run%2 == 1 {
					places = s.fullByDrop(more, steps, p)
				}
				opt := Options{}
				if run%3 == 1 {
					opt.Open = s.openFor(t, p.Cost+1)
				}
				bound, best := s.boundParted(t, p, steps, places, opt)
				if bound > any || best < any {
					t.Fatalf("run %d: bound %d, plan %d, brute force finds %d, together %d", run, bound, best, any, together)
				}
				if bound == any {
					exact++
				}
				if p.LowerBound == any {
					plain++
				}
				if any < together {
					if apart++; best == any {
						found++
					}
				}
			}
			say := fmt.Sprintf("of %d bounds %d are the optimum, %d without full places; of %d plans that part %d are found", c.runs, exact, plain, apart, found)
			if exact < c.exact || found < c.found {
				t.Error(say)
			}
			t.Log(say)
		})
	}
}

// two is a sketch with two of its terminals, as brute force takes long where there
// are many walks.
func two(s sketch) sketch {
	s.terms = s.terms[:2]
	return s
}

// boundParted is the bound by full places, and the cost of the best plan known.
func (s sketch) boundParted(t *testing.T, p Plan, steps *Steps, places []fullPlace, opt Options) (bound, best int64) {
	t.Helper()
	bound, best = min(p.Together, p.Cost), p.Cost
	for _, cut := range places {
		c, err := Through(s.n, s.root, s.terms, cut.Cut, opt)
		if err != nil {
			t.Fatal(err)
		}
		bound = min(bound, c.Bound+cut.own)
		for _, paths := range c.Plans {
			plan := Plan{Paths: paths}
			plan.Price(s.n, s.terms, nil)
			plan.LowerBound, plan.Proved = plan.Cost, true
			checkPlan(t, s, plan)
			best = min(best, plan.Cost+steps.of(paths))
		}
	}
	return max(bound, p.LowerBound), best
}

// A fullPlace is a cut and what its arc costs.
type fullPlace struct {
	Cut
	own int64
}

// openFor is what plans may travel that cost less than a limit.
func (s sketch) openFor(t *testing.T, limit int64) *Open {
	t.Helper()
	open, _, err := OpenBelow(s.n, s.root, s.terms, limit, Effort{Both: true}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return open
}

// fullByDrop lists those where one terminal more would pay a step, of sets of whole
// terminals.
func (s sketch) fullByDrop(more func(a int32, cables int64) int64, steps *Steps, p Plan) (out []fullPlace) {
	var q []int64
	for i, path := range p.Paths {
		if len(path.Nodes) > 0 {
			q = append(q, s.terms[i].Cables)
		}
	}
	for h, a := range s.n.ArcOf {
		if !slices.Contains(steps.Arcs, a) {
			continue
		}
		full := map[int64]bool{}
		for set := 1; set < 1<<len(q); set++ {
			n := int64(0)
			for i := range q {
				n += q[i] * int64(set>>i&1)
			}
			for i := range q {
				full[n] = full[n] || set>>i&1 == 0 && more(a, n+q[i]) > more(a, n)
			}
		}
		for n, is := range full {
			if is {
				out = append(out, fullPlace{Cut{Half: int32(h), Cables: n}, s.n.Fixed[h] + n*s.n.PerUnit[h] + more(a, n)})
			}
		}
	}
	return out
}

// fullPlaces lists those where one cable more would pay a step.
func (s sketch) fullPlaces(more func(a int32, cables int64) int64, steps *Steps, p Plan) (out []fullPlace) {
	var all int64
	for i, path := range p.Paths {
		if len(path.Nodes) > 0 {
			all += s.terms[i].Cables
		}
	}
	for h, a := range s.n.ArcOf {
		if !slices.Contains(steps.Arcs, a) {
			continue
		}
		for q := int64(1); q < all; q++ {
			if more(a, q+1) > more(a, q) {
				out = append(out, fullPlace{Cut{Half: int32(h), Cables: q}, s.n.Fixed[h] + q*s.n.PerUnit[h] + more(a, q)})
			}
		}
	}
	return out
}
