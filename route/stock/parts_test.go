package stock

import (
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/plan/measure"
)

// Loads by sets of bits against loads by trying all counts.
func TestReach(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		const most = 200
		set, want := newReach(most), [most + 64]bool{}
		set[0], want[0] = 1, true
		for range 1 + r.IntN(4) {
			w, n := 1+r.IntN(90), 1+r.IntN(5)
			set.addPieces(w, n)
			for range n {
				for l := len(want) - 1; l >= w; l-- {
					want[l] = want[l] || want[l-w]
				}
			}
		}
		last := -1
		for l := range most {
			if want[l] {
				last = l
			}
			if set.has(l) != want[l] || set.below(l) != last {
				t.Fatalf("has(%d) = %v, want %v; below %d, want %d", l, set.has(l), want[l], set.below(l), last)
			}
		}
	}
}

// The table and the branching agree with trying all fillings, and a bound that
// was cut short is still a bound.
func TestKnapsack(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 2000 {
		var size []measure.Length
		var need []int
		var worth []int64
		for range 1 + r.IntN(5) {
			size = append(size, measure.Length(1+r.IntN(30)))
			need = append(need, r.IntN(3))
			worth = append(worth, int64(r.IntN(40)))
		}
		slices.SortFunc(size, func(a, b measure.Length) int { return int(b - a) })
		room := measure.Length(r.IntN(80))
		want := bestFilling(size, need, worth, room)
		for _, branch := range []bool{false, true} {
			k := newKnapsack(size, need, worth)
			k.take, k.meter = make([]int, len(size)), &meter{1 << 40}
			switch {
			case len(k.short) == 0:
				continue
			case branch:
				k.branch(0, room, 0)
			default:
				k.table(int(room / k.unit))
			}
			filling := int64(0)
			for j, n := range k.best {
				if n > need[j] {
					t.Fatalf("takes %d of %d", n, need[j])
				}
				filling += worth[j] * int64(n)
			}
			if k.value != want || filling != want || k.best != nil && load(size, k.best) > room {
				t.Fatalf("%v %v %v in %v: %d by %v, want %d", size, need, worth, room, k.value, k.best, want)
			}
		}
		if _, bound := newKnapsack(size, need, worth).solve(room, 0, &meter{int64(r.IntN(30))}); bound < want {
			t.Fatalf("%v %v %v in %v: bound %d, but %d can be had", size, need, worth, room, bound, want)
		}
	}
}

func bestFilling(size []measure.Length, need []int, worth []int64, room measure.Length) int64 {
	if len(size) == 0 {
		return 0
	}
	best := int64(0)
	for n := 0; n <= need[0] && size[0]*measure.Length(n) <= room; n++ {
		best = max(best, worth[0]*int64(n)+bestFilling(size[1:], need[1:], worth[1:], room-size[0]*measure.Length(n)))
	}
	return best
}

// No bound is above the fewest new spools of all assignments, and each is
// sometimes above the bound by total length.
func TestBoundsForNewSpools(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	better, best := 0, 0
	for range 3000 {
		fresh := measure.Length(10 + r.IntN(30))
		var stock, pieces []measure.Length
		for range r.IntN(3) {
			stock = append(stock, 1+measure.Length(r.IntN(int(fresh)*5/4)))
		}
		for range 1 + r.IntN(6) {
			pieces = append(pieces, fresh-min(fresh-1, measure.Length(r.IntN(int(fresh)))))
		}
		d, s := newDemand(pieces), newSupply(stock, fresh)
		job := Job{Buy: []Purchase{{"a", fresh}}}
		for _, l := range stock {
			job.Spools = append(job.Spools, Spool{Length: l})
		}
		for _, l := range pieces {
			job.Pieces = append(job.Pieces, Piece{Length: l})
		}
		want := bruteScore(job).NewSpools
		simple, lp := lengthBound(d, s), newMaster(d, s, nil, &meter{1 << 30})
		if !lp.solve() {
			t.Fatalf("no optimum of the linear programme: %v %v %v", pieces, stock, fresh)
		}
		if safe := lp.safeBound(); simple > want || safe > want {
			t.Fatalf("pieces %v, stock %v, new %v: bounds %d and %d, want %d", pieces, stock, fresh, simple, safe, want)
		} else if safe > simple {
			best++
		}
		if simple > roundUpDiv(d.total()-s.stocked(), fresh) {
			better++
		}
		lp.meter.left = int64(r.IntN(200))
		if cut := lp.safeBound(); cut > want {
			t.Fatalf("cut short, the bound is %d, want %d", cut, want)
		}
		if p, v := complete(d, s, want, &meter{1 << 30}); v != yes || p.fresh() > want {
			t.Fatalf("pieces %v don't complete: %v", pieces, v)
		}
		if want > 0 {
			if _, v := complete(d, s, want-1, &meter{1 << 30}); v != no {
				t.Fatalf("pieces %v complete with one spool less: %v", pieces, v)
			}
		}
	}
	if better < 100 || best < 20 {
		t.Errorf("L2 is better than total length %d times, the linear programme better than L2 %d times", better, best)
	}
}

// By hand: three pieces of 6 in spools of 10 need three, though 18 fit two by
// length. A spool of 9 in stock takes one of them.
func TestLengthBound(t *testing.T) {
	d := newDemand([]measure.Length{6, 6, 6})
	if got := lengthBound(d, newSupply(nil, 10)); got != 2 {
		t.Errorf("without short pieces %d, want 2 by length", got)
	}
	d = newDemand([]measure.Length{6, 6, 6, 5})
	if got := lengthBound(d, newSupply(nil, 10)); got != 4 {
		t.Errorf("bound %d, want 4", got)
	}
	if got := lengthBound(d, newSupply([]measure.Length{9}, 10)); got != 3 {
		t.Errorf("bound with stock %d, want 3", got)
	}
}

// The fewest spools for a length, against all subsets.
func TestFewestOpened(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 3000 {
		loads := make([]measure.Length, r.IntN(5))
		for i := range loads {
			loads[i] = measure.Length(r.IntN(12))
		}
		slices.SortFunc(loads, func(a, b measure.Length) int { return int(b - a) })
		spare, length := measure.Length(r.IntN(12)), measure.Length(r.IntN(30)-3)
		all, want := append(slices.Clone(loads), spare), len(loads)+2
		for subset := range 1 << len(all) {
			sum, n := measure.Length(0), 0
			for i, l := range all {
				if subset>>i&1 != 0 {
					sum += l
					n++
				}
			}
			if sum >= length {
				want = min(want, n)
			}
		}
		if got := fewestOpened(length, spare, slices.Values(loads)); got > want || want <= len(loads)+1 && got < want {
			t.Fatalf("%v from %v and %v: %d, want %d", length, loads, spare, got, want)
		}
	}
}

// The best bound of all skeletons is no better than the best plan: a plan with
// few steps never claims more than one with many.
func TestSkeletonsBoundPlans(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for range 1500 {
		var stock, pieces []measure.Length
		for range 1 + r.IntN(3) {
			stock = append(stock, measure.Length(5+r.IntN(30)))
		}
		for range 1 + r.IntN(6) {
			pieces = append(pieces, measure.Length(1+r.IntN(12)))
		}
		d, s := newDemand(pieces), newSupply(stock, 0)
		p := bestFit(d, s, nil)
		if p == nil {
			continue
		}
		rack := newRack(d, s, 0, newPolicy(measure.Length(r.IntN(9)), measure.Length(r.IntN(6))))
		counts, kinds, proved := rack.search(worst, false, &meter{1 << 40})
		best := rack.unrack(counts, kinds, s).leftover(d, s, rack.policy)
		if best.compare(proved) != 0 || best.compare(p.leftover(d, s, rack.policy)) > 0 {
			t.Fatalf("%v from %v: best %+v, bound %+v", pieces, stock, best, proved)
		}
		list, _ := rack.skeletons()
		if list[0].bound.compare(best) > 0 {
			t.Fatalf("%v from %v, %+v: bound %+v, but there is %+v", pieces, stock, rack.policy, list[0].bound, best)
		}
		_, _, early := rack.search(worst, false, &meter{int64(r.IntN(60))})
		if early.compare(best) > 0 {
			t.Fatalf("%v from %v: bound %+v with few steps, but there is %+v", pieces, stock, early, best)
		}
	}
}

// Three cables and two, dealt to spools that hold two and three: no set is
// split, in whatever order spools come.
func TestDealExactFitsFirst(t *testing.T) {
	all := sets([]Piece{
		{Tag: "1", Group: "x", Length: 5},
		{Tag: "2", Group: "x", Length: 5},
		{Tag: "3", Group: "y", Length: 5},
		{Tag: "4", Group: "y", Length: 5},
		{Tag: "5", Group: "y", Length: 5},
		{Tag: "6", Group: "z", Length: 5},
	})
	d := newDemand([]measure.Length{5, 5, 5, 5, 5, 5})
	for _, hold := range [][]int{{2, 3, 1}, {3, 1, 2}, {1, 2, 3}, {4, 2}, {3, 3}, {6}, {5, 1}} {
		var p packing
		for k, n := range hold {
			p = append(p, filled{k, []int{n}})
		}
		if got := splits(deal(p, d, all)); got != 0 {
			t.Errorf("spools that hold %v: %d splits", hold, got)
		}
	}
}

// Sets of 3, 2 and 2 from spools that hold 4 and 3: the 3 must take the exact
// fit, as beside it on the 4 there is no room for 2.
func TestDealLeavesRoom(t *testing.T) {
	var pieces []Piece
	for i, g := range []string{"x", "x", "x", "y", "y", "z", "z"} {
		pieces = append(pieces, Piece{Tag: string(rune('a' + i)), Group: g, Length: 5})
	}
	p := packing{{0, []int{4}}, {1, []int{3}}}
	if got := splits(deal(p, newDemand(lengthsOf(pieces)), sets(pieces))); got != 0 {
		t.Errorf("%d splits", got)
	}
}

// Rounding the linear programme never uses a spool that is not there.
func TestDivesKeepToTheStock(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	found := 0
	for skip := range 60 {
		var stock, pieces []measure.Length
		for range 3 {
			stock = append(stock, measure.Length(40+10*r.IntN(8)))
		}
		for range 40 {
			pieces = append(pieces, measure.Length(11+r.IntN(40)))
		}
		d, s := newDemand(pieces), newSupply(stock, 100)
		p := dive(d, s, nil, skip%4, 0, &meter{1 << 24})
		if p == nil {
			continue
		}
		found++
		need, left := slices.Clone(d.need), slices.Clone(s.have)
		for _, f := range p {
			if f.kind != freshKind {
				left[f.kind]--
			}
			if load(d.size, f.count) > s.length(f.kind) {
				t.Fatalf("%v in %v", f, s)
			}
			for j, n := range f.count {
				need[j] -= n
			}
		}
		if slices.Max(need) != 0 || slices.Min(need) != 0 || slices.Min(left) < 0 {
			t.Fatalf("needs %v, stock %v left", need, left)
		}
	}
	if found < 50 {
		t.Errorf("only %d dives ended in a plan", found)
	}
}

// 2 + 3 + 3 of 9, and one more piece does not go in.
func TestMostByLength(t *testing.T) {
	d := newDemand([]measure.Length{7, 3, 3, 3, 2})
	if got := mostByLength(d, newSupply([]measure.Length{4, 5}, 0)); got != 3 {
		t.Errorf("%d pieces, want 3", got)
	}
}

// What is not proved is not claimed: beyond the first level that is open, the
// bound is as good as a plan can be.
func TestTrustedBound(t *testing.T) {
	s := solver{supply: newSupply(nil, 100), policy: newPolicy(10, 0)}
	full := Score{Uncut: 2, NewSpools: 3, Waste: 4, Longest: 5, Opened: 6, Splits: 7}
	s.score = full
	for _, c := range []struct {
		change func(b *Score)
		want   Score
		level  Level
	}{
		{func(*Score) {}, full, Together},
		{func(b *Score) { b.Splits = 1 }, Score{2, 3, 4, 0, 5, 6, 1}, Remainders},
		{func(b *Score) { b.Opened = 1 }, Score{2, 3, 4, 0, 5, 1, 0}, Wasted},
		{func(b *Score) { b.Waste = 1 }, Score{2, 3, 1, 0, 5, 6, 0}, Bought},
		{func(b *Score) { b.NewSpools = 1 }, Score{2, 1, 0, 0, 10, 0, 0}, Cut},
		{func(b *Score) { b.Uncut = 1 }, Score{1, 0, 0, 0, 10, 0, 0}, Nothing},
	} {
		s.bound = full
		c.change(&s.bound)
		if got := s.trusted(); got != c.want || full.proved(got) != c.level {
			t.Errorf("got %+v, proved %v; want %+v, %v", got, full.proved(got), c.want, c.level)
		}
	}
}
