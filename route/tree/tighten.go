package tree

import (
	"math/bits"
	"slices"
)

// A tightener makes a dual better by a subgradient method (Held, Wolfe and Crowder,
// "Validation of subgradient optimization", Math. Programming 6, 1974): every
// member takes its cheapest way with the shares it has; where some take a state
// and others don't, shares move to those who do. Steps are of Polyak's length,
// longer at first, and go where the last ones went in part, as in Camerini,
// Fratta and Maffioli, "On improving relaxation methods by modified gradient
// techniques", Math. Programming Study 3, 1975. How long and how much is tried out.
//
// A step takes as long as a quick ascent, but twenty end much closer to the best
// dual than any ascent does.
type tightener struct {
	*dual
	shares [][]int64 // by member and state
	best   [][]int64 // of the best dual so far
	bound  int64     // of that

	users  []uint64 // by state: members who take it
	used   []int32  // states that some take
	place  []int32  // by state: 1 + its place in moving, 0 if it has none
	moving []int32  // states whose shares move
	way    []int64  // by place and member: how much they took it of late, of wayParts

	walkers []walker // one for every worker
	ways    [][]int32
	costs   []int64
	sorted  []int64
}

// A walker finds a member's cheapest way.
type walker struct {
	queue queue
	from  []int64 // by state: what the way there costs; far if not come to
	pred  []int32 // by state: the one before
	reach []int32 // states come to
	work  int     // done
}

// tighten makes so many steps towards a dual as good as a plan that costs so much
// in the space, which travels the states of the guide.
func (d *dual) tighten(cost, steps int64, w *meter) {
	k, n := len(d.member), len(d.base)
	if k < 2 || k > maxMembers || d.bound() >= cost {
		return
	}
	t := &tightener{
		dual: d, bound: d.bound(), users: make([]uint64, n), place: make([]int32, n),
		walkers: make([]walker, sideWorkers(k)), ways: make([][]int32, k), costs: make([]int64, k), sorted: make([]int64, k),
	}
	for i := range t.walkers {
		t.walkers[i] = walker{from: slices.Repeat([]int64{far}, n), pred: make([]int32, n)}
	}
	for i := range k {
		t.shares = append(t.shares, make([]int64, n))
		for _, r := range d.records[i] {
			t.shares[i][r.state] = r.share
		}
		t.best = append(t.best, slices.Clone(t.shares[i]))
	}
	t.giveRest()
	t.run(cost, steps, w)
	t.settle(w)
}

// run makes the steps. Where some in a row gain nothing the next are half as long.
func (t *tightener) run(cost, steps int64, w *meter) {
	length, idle := int64(firstLength), 0
	for range steps {
		if w.left <= 0 {
			return
		}
		bound := t.walkAll(w)
		if bound > t.bound {
			t.bound, idle = bound, 0
			for i := range t.shares {
				copy(t.best[i], t.shares[i])
			}
		} else if idle++; idle > patience {
			length, idle = length/2, 0
		}
		if bound >= cost || length == 0 {
			return
		}
		t.move((cost-bound)/lengthParts*length + 1)
	}
}

// A length counts in lengthParts, firstLength is that of the first step, and
// patience how many in a row may gain nothing. A way counts in wayParts, of which
// the last one is a part of wayNew in wayAll.
const (
	lengthParts = 64
	firstLength = 8 * lengthParts
	patience    = 5
	wayParts    = 1024
	wayNew      = 3
	wayAll      = 8
)

// giveRest gives what nobody has a share of to those whose path it is on, and to all
// if there are none.
func (t *tightener) giveRest() {
	for g := range t.exit {
		rest := t.slack(g)
		if rest <= 0 {
			continue
		}
		who := ^uint64(0) >> (64 - len(t.member))
		if t.guide != nil && t.guide[g] != 0 {
			who = t.guide[g]
		}
		for each := rest / int64(bits.OnesCount64(who)); who != 0; who &= who - 1 {
			t.shares[bits.TrailingZeros64(who)][g] += each
		}
	}
}

// walkAll finds every member's cheapest way, and what they cost together.
func (t *tightener) walkAll(w *meter) int64 {
	for _, g := range t.used {
		t.users[g] = 0
	}
	t.used = t.used[:0]
	sideBySide(len(t.member), func(worker, i int) {
		x := &t.walkers[worker]
		t.costs[i], t.ways[i] = x.walk(t.dual, i, t.shares[i]), t.ways[i][:0]
		for g := x.pred[t.exit]; g >= 0; g = x.pred[g] {
			t.ways[i] = append(t.ways[i], g)
		}
	})
	sum := int64(0)
	for i, way := range t.ways {
		sum += t.costs[i]
		for _, g := range way {
			if t.users[g] == 0 {
				t.used = append(t.used, g)
			}
			t.users[g] |= 1 << i
		}
	}
	t.account(w)
	return sum
}

// account takes the work of all walkers into account.
func (t *tightener) account(w *meter) {
	for i := range t.walkers {
		w.spend(t.walkers[i].work)
		t.walkers[i].work = 0
	}
}

// walk finds the cheapest way of member i with shares of its own.
func (x *walker) walk(d *dual, i int, own []int64) int64 {
	q := d.cables[i]
	x.queue.reset()
	for _, g := range x.reach {
		x.from[g] = far
	}
	x.reach = x.reach[:0]
	offer := func(g, pred int32, cost int64) {
		if cost < x.from[g] {
			if x.from[g] == far {
				x.reach = append(x.reach, g)
			}
			x.from[g], x.pred[g] = cost, pred
			x.queue.push(cost+q*d.base[g], g)
		}
	}
	for _, g := range d.start[d.member[i]] {
		offer(g, -1, 0)
	}
	for x.queue.size > 0 {
		key, g := x.queue.pop()
		cost := key - q*d.base[g]
		if cost > x.from[g] {
			continue
		}
		if g == d.exit {
			break
		}
		turns := d.turns(g)
		x.work += len(turns)
		cost += q*d.unit[g] + own[g]
		for _, n := range turns {
			offer(n.to, g, cost+q*n.price)
		}
	}
	return x.from[d.exit]
}

// move moves shares to those who take states, so that all would gain so much if
// their ways stayed the same.
func (t *tightener) move(gain int64) {
	k := len(t.member)
	for _, g := range t.used {
		if t.place[g] == 0 && t.dual.fixed[g] > 0 {
			t.moving = append(t.moving, g)
			t.place[g] = int32(len(t.moving))
			t.way = append(t.way, make([]int64, k)...)
		}
	}
	norm := int64(0)
	for j, g := range t.moving {
		way, sum := t.way[j*k:][:k], int64(0)
		for i := range way {
			now := wayParts * int64(t.users[g]>>i&1)
			way[i] += (now - way[i]) * wayNew / wayAll
			sum += way[i]
		}
		for _, x := range way {
			off := x - sum/int64(k)
			norm += off * off / wayParts
		}
	}
	if norm == 0 {
		return
	}
	for j, g := range t.moving {
		for i, x := range t.way[j*k:][:k] {
			if gain < maxGain {
				t.shares[i][g] += gain * x / norm
			} else {
				t.shares[i][g] += gain / norm * x
			}
		}
		t.project(g)
	}
}

// maxGain is so much that it can be multiplied.
const maxGain = far / (2 * wayParts)

// project takes from all what they have too much of a state, the same from each,
// but from none more than it has.
func (t *tightener) project(g int32) {
	for i := range t.shares {
		t.sorted[i] = t.shares[i][g]
	}
	slices.Sort(t.sorted)
	off, over := int64(0), -t.dual.fixed[g]
	for n := int64(1); n <= int64(len(t.sorted)); n++ {
		y := t.sorted[len(t.sorted)-int(n)]
		if over += y; y*n > over {
			off = max(off, (over+n-1)/n)
		}
	}
	for i := range t.shares {
		t.shares[i][g] = max(0, t.shares[i][g]-off)
	}
}

// settle takes the best shares over into the dual, as far as they are needed for
// what the members pay.
func (t *tightener) settle(w *meter) {
	d, x := t.dual, &t.walkers[0]
	clear(d.spent)
	for i := range d.member {
		own, floor := t.best[i], x.walk(d, i, t.best[i])
		d.records[i] = d.records[i][:0]
		d.load(i)
		for _, g := range x.reach {
			if lift := floor - x.from[g] - d.q*d.base[g]; lift > 0 {
				d.lift[g], d.known[g] = lift, true
				d.records[i] = append(d.records[i], record{state: g})
			}
		}
		for _, r := range d.records[i] {
			d.share[r.state] = min(own[r.state], d.need(r.state))
			d.spent[r.state] += d.share[r.state]
		}
		d.drop(i)
	}
	t.account(w)
}
