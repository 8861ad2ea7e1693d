package tree

import (
	"cmp"
	"slices"

	"topplate/route/network"
)

// Detours tell what it costs at least if cables travel a half-arc: a bound that
// is quick to have for many half-arcs, and rough.
type Detours struct {
	*space
	dual   *dual
	bound  int64
	states map[int32]int32 // of a half-arc
	extra  [][]int64       // by member and state: what its path costs more than its floor
}

// NewDetours prepares for the half-arcs of a network. Steps are not counted.
func NewDetours(n *network.Network, root int32, terms []Terminal, opt Options) (*Detours, error) {
	if err := check(n, root, terms); err != nil {
		return nil, err
	}
	s, _ := newSpace(n, root, terms, Options{Open: opt.Open.single()}, true)
	w := &meter{left: opt.Work, stop: opt.Stop}
	if opt.Work <= 0 {
		w.left = DefaultWork
	}
	d := &Detours{space: s, states: map[int32]int32{}}
	for g := range s.exit {
		for _, h := range s.chain[s.chainFirst[g]:s.chainFirst[g+1]] {
			d.states[h] = g
		}
	}
	var member []int32
	for t := range terms {
		if len(s.start[t]) > 0 {
			member = append(member, int32(t))
		}
	}
	d.dual = newDual(s, s.distances(0))
	d.dual.reset(member, s.fixed)
	d.dual.guide = s.guideBy(member, opt.Known)
	d.dual.ascend(manyRounds, w)
	d.bound = d.dual.bound()
	for i := range member {
		d.extra = append(d.extra, d.detours(i, w))
	}
	return d, nil
}

// detours is, by state, what more member i pays than its floor if its path leads
// there.
func (d *Detours) detours(i int, w *meter) []int64 {
	d.dual.load(i)
	to, on := d.dual.coming(i, far, w), d.dual.going(w)
	d.dual.drop(i)
	for g := range to {
		if to[g] == far || on[g] == far {
			to[g] = far
		} else {
			to[g] += on[g]
		}
	}
	return to
}

// coming is, by state, what more member i, in hand, pays to come there than its
// floor less the potential there; far where it can't come, or where every cable
// pays a gap more.
func (d *dual) coming(i int, gap int64, w *meter) []int64 {
	floor := d.floor(i)
	var from []entry
	for _, g := range d.start[d.member[i]] {
		from = append(from, entry{d.pot(g) - floor, g})
	}
	cut := int64(far)
	if gap < far/d.q {
		cut = gap * d.q
	}
	return d.reduced(from, cut, d.turns, func(g int32, t turn) int64 { return d.slackOf(g, t.to, t.price) }, w)
}

// going is, by state, what more the member in hand pays to go on from there than
// the potential.
func (d *dual) going(w *meter) []int64 {
	return d.reduced([]entry{{0, d.exit}}, far, d.before, func(g int32, t turn) int64 { return d.slackOf(t.to, g, t.price) }, w)
}

// slackOf is what the member in hand pays from one state to a next beyond the
// difference of the potentials.
func (d *dual) slackOf(g, to int32, turn int64) int64 {
	return d.share[g] + d.q*(d.unit[g]+turn) + d.pot(to) - d.pot(g)
}

// reduced is the cheapest way to every state from some, if it is cheaper than a
// limit.
func (d *dual) reduced(from []entry, limit int64, next func(int32) []turn, price func(int32, turn) int64, w *meter) []int64 {
	dist := make([]int64, len(d.base))
	for g := range dist {
		dist[g] = far
	}
	var q queue
	lower := func(g int32, x int64) {
		if x < min(dist[g], limit) {
			dist[g] = x
			q.push(x, g)
		}
	}
	for _, e := range from {
		lower(e.item, e.key)
	}
	for q.size > 0 {
		x, g := q.pop()
		if x > dist[g] {
			continue
		}
		w.spend(len(next(g)))
		for _, t := range next(g) {
			lower(t.to, x+price(g, t))
		}
	}
	return dist
}

// Bound is what no plan costs less than in which so many cables travel a
// half-arc towards the root. Every member pays its share of every fixed price in
// proportion to the cables that it has there, so those with the least detours
// count; what nobody has a share of is paid in any case.
func (d *Detours) Bound(half int32, cables int64) int64 {
	g, ok := d.states[half]
	if !ok {
		return far
	}
	order := make([]int, len(d.extra))
	for i := range order {
		order[i] = i
	}
	q := d.dual.cables
	per := func(i int) float64 { return float64(d.extra[i][g]) / float64(q[i]) }
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(per(a), per(b)), cmp.Compare(a, b)) })
	sum := d.bound + d.dual.slack(g)
	for _, i := range order {
		if cables <= 0 || d.extra[i][g] >= far {
			break
		}
		n := min(cables, q[i])
		sum += d.extra[i][g] / q[i] * n
		cables -= n
	}
	if cables > 0 {
		return far
	}
	return d.whole(sum)
}
