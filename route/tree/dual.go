package tree

// A dual is a feasible solution of the dual of the flow formulation, found by
// dual ascent (Wong, "A dual ascent approach for Steiner tree problems on a
// directed graph", Math. Programming 28, 1984; Balakrishnan, Magnanti and
// Wong, "A dual-ascent procedure for large-scale uncapacitated network
// design", Operations Research 37, 1989).
//
// The cables of every member are priced on their own: on state g they pay the
// price per cable and a share of the fixed price. The shares of all members
// together are never more than the fixed price, so what the members pay on
// their cheapest paths is together a lower bound for every plan. The
// potential of a state is a lower bound for what a member pays from there to
// the root: its cables times base, and a lift. It is consistent, and so the
// basis of pruning the exact search as well.
type dual struct {
	*space
	base    []int64 // price per cable to the root, fixed prices left out
	member  []int32 // terminals that take part
	cables  []int64 // by member
	fixed   []int64 // of a state, as the dual sees it
	spent   []int64 // of a state: sum of the shares
	records [][]record
	settled int64 // what members pay that were let go
	guide   guide // what a plan travels; nil if none is known

	// The member in hand.
	q     int64
	lift  []int64 // by state
	share []int64
	known []bool // by state: has a record

	dist  []int64 // by state, slack in the prices; far if not seen
	queue queue
	seen  []int32 // states with a distance
	done  []int32 // states settled
	// From the fixed prices, by the last raise; and of that, where only others pay.
	taken, strayed int64
}

// A record is what a member has at a state where that is not zero.
type record struct {
	state       int32
	lift, share int64
}

// newDual makes a dual without any shares.
func newDual(s *space, base []int64) *dual {
	d := &dual{space: s, base: base, spent: make([]int64, len(base)), lift: make([]int64, len(base)), share: make([]int64, len(base)), known: make([]bool, len(base)), dist: make([]int64, len(base))}
	for g := range d.dist {
		d.dist[g] = far
	}
	return d
}

// reset sets the members and the fixed prices, and takes back all shares.
func (d *dual) reset(member []int32, fixed []int64) {
	for i := range d.member {
		for _, r := range d.records[i] {
			d.spent[r.state] = 0
		}
	}
	d.fixed, d.settled = fixed, 0
	d.take(member)
}

// letGo forgets what the members have where, which takes most of a dual's
// memory. What they pay stays in the bound, and the shares that they have.
func (d *dual) letGo() {
	d.settled = d.bound()
	d.take(nil)
}

// empty takes back all shares of members that were let go.
func (d *dual) empty(fixed []int64) {
	clear(d.spent)
	d.fixed, d.settled = fixed, 0
	d.take(nil)
}

// take sets the members, who have no shares.
func (d *dual) take(member []int32) {
	d.member, d.cables = member, d.cables[:0]
	for _, t := range member {
		d.cables = append(d.cables, d.terms[t].Cables)
	}
	for len(d.records) < len(member) {
		d.records = append(d.records, nil)
	}
	for i := range member {
		d.records[i] = d.records[i][:0]
	}
}

// load takes member i in hand, drop puts it down.
func (d *dual) load(i int) {
	d.q = d.cables[i]
	for _, r := range d.records[i] {
		d.lift[r.state], d.share[r.state], d.known[r.state] = r.lift, r.share, true
	}
}

func (d *dual) drop(i int) {
	rec := d.records[i]
	for j := range rec {
		r := &rec[j]
		r.lift, r.share = d.lift[r.state], d.share[r.state]
		d.lift[r.state], d.share[r.state], d.known[r.state] = 0, 0, false
	}
}

// another is the same dual, to be looked at side by side.
func (d *dual) another() *dual {
	o, n := *d, len(d.base)
	o.lift, o.share, o.known = make([]int64, n), make([]int64, n), make([]bool, n)
	o.dist, o.queue, o.seen, o.done = nil, queue{}, nil, nil
	return &o
}

// pot is the potential of a state for the member in hand.
func (d *dual) pot(g int32) int64 { return d.q*d.base[g] + d.lift[g] }

// slack is what is left of the fixed price of a state.
func (d *dual) slack(g int32) int64 { return d.fixed[g] - d.spent[g] }

// floor is what the member in hand, i, pays at least.
func (d *dual) floor(i int) int64 {
	best := int64(far)
	for _, g := range d.start[d.member[i]] {
		best = min(best, d.pot(g))
	}
	return best
}

// bound is a lower bound of all plans for the members.
func (d *dual) bound() int64 {
	sum := d.settled
	for i := range d.member {
		d.load(i)
		sum += d.floor(i)
		d.drop(i)
	}
	return sum
}

// raise lifts what member i pays by step, or as far as the fixed prices not
// yet shared out allow. It uses those near the terminal first, because those
// near the root serve more members. It reports whether the whole step was
// made.
//
// The search goes outward from the terminal with the whole slack in the
// prices. A state at distance x can have potential goal - x: that differs
// between neighbours by no more than the prices with their slack. Where this
// is below the potential already there, nothing changes.
func (d *dual) raise(i int, step int64, w *meter) (whole bool) {
	d.load(i)
	goal, whole := d.explore(i, d.floor(i)+step, w)
	for _, g := range d.done {
		d.lift[g] = max(d.lift[g], goal-d.dist[g]-d.q*d.base[g])
		if !d.known[g] {
			d.known[g] = true
			d.records[i] = append(d.records[i], record{state: g})
		}
	}
	d.taken, d.strayed = 0, 0
	for _, g := range d.done {
		more := d.need(g) - d.share[g]
		d.spent[g] += more
		d.share[g] += more
		d.taken += more
		if d.guide.strays(g, i) {
			d.strayed += more
		}
	}
	for _, g := range d.seen {
		d.dist[g] = far
	}
	d.drop(i)
	return whole
}

// explore searches outward from the terminal of member i, in hand, for states
// that have to be lifted if the member is to pay goal. If the root is reached
// before, goal is less and the step is not whole.
func (d *dual) explore(i int, goal int64, w *meter) (int64, bool) {
	d.queue.reset()
	d.seen, d.done = d.seen[:0], d.done[:0]
	for _, g := range d.start[d.member[i]] {
		d.offer(g, 0)
	}
	for d.queue.size > 0 {
		key, g := d.queue.pop()
		if key >= goal {
			break
		}
		x := key - d.pot(g)
		if x > d.dist[g] {
			continue
		}
		if g == d.exit || !w.spend(len(d.turns(g))) {
			return key, false
		}
		d.done = append(d.done, g)
		x += d.q*d.unit[g] + d.share[g] + d.slack(g)
		for _, t := range d.turns(g) {
			d.offer(t.to, x+d.q*t.price)
		}
	}
	return goal, true
}

func (d *dual) offer(g int32, x int64) {
	if x < d.dist[g] {
		if d.dist[g] == far {
			d.seen = append(d.seen, g)
		}
		d.dist[g] = x
		d.queue.push(x+d.pot(g), g)
	}
}

// need is the least share of the fixed price of g that the potentials of the
// member in hand call for.
func (d *dual) need(g int32) int64 {
	p := d.pot(g) - d.q*d.unit[g]
	need := int64(0)
	for _, t := range d.turns(g) {
		need = max(need, p-d.pot(t.to)-d.q*t.price)
	}
	return need
}

// ascend raises one member after the other by a step, always the one whose
// last step strayed least and then took least from the fixed prices, until none
// can be raised any more. A step is the most that the member that is farthest from
// the root could be raised alone, divided by rounds.
func (d *dual) ascend(rounds int64, w *meter) {
	if len(d.member) > 0 {
		d.climb(max(1, d.room(d.farthest(), w)/rounds), w)
	}
}

// climb is ascend in steps of a given size.
func (d *dual) climb(step int64, w *meter) {
	type last struct{ strayed, taken int64 }
	by := make([]last, len(d.member)) // far if the member can't be raised
	for w.left > 0 {
		i := 0
		for j := range by {
			if by[j].strayed < by[i].strayed || by[j].strayed == by[i].strayed && by[j].taken < by[i].taken {
				i = j
			}
		}
		if by[i].strayed == far {
			return
		}
		if by[i].strayed = far; d.raise(i, step, w) {
			by[i] = last{d.strayed, d.taken}
		}
	}
}

// farthest is the member that has the dearest way to the root.
func (d *dual) farthest() int {
	at, most := 0, int64(-1)
	for i := range d.member {
		d.load(i)
		if f := d.floor(i) / d.q; f > most {
			at, most = i, f
		}
		d.drop(i)
	}
	return at
}

// room is by how much member i could be raised now.
func (d *dual) room(i int, w *meter) int64 {
	d.load(i)
	goal, _ := d.explore(i, far, w)
	for _, g := range d.seen {
		d.dist[g] = far
	}
	room := goal - d.floor(i)
	d.drop(i)
	return room
}
