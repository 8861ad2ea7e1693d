package tree

// A dual is a feasible solution of the dual of the flow formulation, found by
// dual ascent (Wong, "A dual ascent approach for Steiner tree problems on a
// directed graph", Math. Programming 28, 1984; Balakrishnan, Magnanti and
// Wong, "A dual-ascent procedure for large-scale uncapacitated network
// design", Operations Research 37, 1989).
//
// The cables of every member k are priced on their own: on state g they pay
// the price per cable and a share of the fixed price. The shares of all
// members together are never more than the fixed price, so what the members
// pay on their cheapest paths is together a lower bound for every plan. pot
// holds, for every state and member, a potential: a lower bound for what
// member k pays from there to the root. It is consistent, and so the basis of
// pruning the exact search as well.
type dual struct {
	*space
	member []int32 // terminals that take part
	cables []int64 // by member
	k      int     // number of members
	pot    []int64 // [g*k+i]
	share  []int64 // [g*k+i]
	slack  []int64 // of g: fixed price not yet shared out

	dist  []int64 // full distance of the current search
	queue queue
	seen  []int32 // states with a distance
	done  []int32 // states settled
}

func newDual(s *space, base []int64, member []int32) *dual {
	k := len(member)
	d := &dual{space: s, member: member, k: k, cables: make([]int64, k), pot: make([]int64, len(base)*k), share: make([]int64, len(base)*k)}
	for i, t := range member {
		d.cables[i] = s.terms[t].Cables
	}
	for g, b := range base {
		for i := range k {
			d.pot[g*k+i] = b * d.cables[i]
		}
	}
	d.slack = append(d.slack, s.fixed...)
	d.dist = make([]int64, len(base))
	for g := range d.dist {
		d.dist[g] = far
	}
	return d
}

// at is what member i pays at least.
func (d *dual) at(i int) int64 {
	best := int64(far)
	for _, g := range d.start[d.member[i]] {
		best = min(best, d.pot[int(g)*d.k+i])
	}
	return best
}

// bound is a lower bound of all plans for the members.
func (d *dual) bound() int64 {
	var sum int64
	for i := range d.k {
		sum += d.at(i)
	}
	return sum
}

// raise lifts what member i pays up to goal, or as far as the fixed prices
// not yet shared out allow. It uses those near the terminal first, because
// those near the root serve more members. It reports whether goal was reached.
//
// The search goes outward from the terminal with the whole slack in the
// prices. A state at distance x can have potential goal - x: that differs
// between neighbours by no more than the prices with their slack. Where this
// is below the potential already there, nothing changes.
func (d *dual) raise(i int, goal int64, w *meter) bool {
	d.queue.reset()
	d.seen, d.done = d.seen[:0], d.done[:0]
	reached := true
	for _, g := range d.start[d.member[i]] {
		d.offer(i, g, 0)
	}
	for d.queue.size > 0 {
		key, g := d.queue.pop()
		if key >= goal {
			break
		}
		x := key - d.pot[int(g)*d.k+i]
		if x > d.dist[g] {
			continue
		}
		if g == d.exit {
			goal, reached = x, false
			break
		}
		d.done = append(d.done, g)
		d.spread(i, g, x+d.share[int(g)*d.k+i]+d.slack[g])
		if !w.spend(len(d.turns(g))) {
			goal, reached = key, false
			break
		}
	}
	d.lift(i, goal)
	return reached
}

func (d *dual) spread(i int, g int32, x int64) {
	q := d.cables[i]
	x += q * d.unit[g]
	bend := q * d.bend[g]
	for _, t := range d.turns(g) {
		d.offer(i, t.to, x+int64(t.bend)*bend)
	}
}

func (d *dual) offer(i int, g int32, x int64) {
	if x < d.dist[g] {
		if d.dist[g] == far {
			d.seen = append(d.seen, g)
		}
		d.dist[g] = x
		d.queue.push(x+d.pot[int(g)*d.k+i], g)
	}
}

// lift sets the new potentials and shares, and forgets the distances.
func (d *dual) lift(i int, goal int64) {
	k := d.k
	for _, g := range d.done {
		if p := goal - d.dist[g]; p > d.pot[int(g)*k+i] {
			d.pot[int(g)*k+i] = p
		}
	}
	for _, g := range d.done {
		need := d.need(i, g)
		at := int(g)*k + i
		d.slack[g] += d.share[at] - need
		d.share[at] = need
	}
	for _, g := range d.seen {
		d.dist[g] = far
	}
}

// need is the least share of the fixed price of g that the potentials of
// member i call for.
func (d *dual) need(i int, g int32) int64 {
	q, k := d.cables[i], d.k
	p := d.pot[int(g)*k+i] - q*d.unit[g]
	bend := q * d.bend[g]
	need := int64(0)
	for _, t := range d.turns(g) {
		need = max(need, p-d.pot[int(t.to)*k+i]-int64(t.bend)*bend)
	}
	return need
}

// ascend raises all members in turn, in so many rounds of equal steps, until
// none can be raised any more.
func (d *dual) ascend(rounds int, w *meter) {
	step := int64(1)
	for i := range d.k {
		step = max(step, (d.reach(i)-d.at(i))/int64(rounds))
	}
	active := make([]bool, d.k)
	left := d.k
	for i := range active {
		active[i] = true
	}
	for left > 0 && w.left > 0 {
		for i := range d.k {
			if active[i] && !d.raise(i, d.at(i)+step, w) {
				active[i] = false
				left--
			}
		}
	}
}

// reach is what member i would pay if it had all slack to itself.
func (d *dual) reach(i int) int64 {
	d.queue.reset()
	d.seen = d.seen[:0]
	for _, g := range d.start[d.member[i]] {
		d.offer(i, g, 0)
	}
	best := int64(0)
	for d.queue.size > 0 {
		key, g := d.queue.pop()
		x := key - d.pot[int(g)*d.k+i]
		if g == d.exit {
			best = x
			break
		}
		if x == d.dist[g] {
			d.spread(i, g, x+d.share[int(g)*d.k+i]+d.slack[g])
		}
	}
	for _, g := range d.seen {
		d.dist[g] = far
	}
	return best
}
