package tree

import (
	"math/bits"
	"slices"

	"topplate/route/network"
)

// Open is what plans of interest may travel of a network, by half-arc.
type Open struct {
	Ways []bool
	// Both tells whether terminals may travel an arc in opposite ways, all cables
	// of each together; nil if they may wherever both are open.
	Both []bool
}

// single is what is open to cables of which each goes its own way.
func (o *Open) single() *Open {
	if o == nil {
		return nil
	}
	return &Open{Ways: o.Ways}
}

// Len is the number of half-arcs that may be travelled.
func (o *Open) Len() int {
	n := 0
	for _, open := range o.Ways {
		if open {
			n++
		}
	}
	return n
}

// OpenBelow finds what a plan may travel that costs less than a limit, steps not
// counted, and what no plan costs less than: that is the limit if there is no such
// plan. What opt leaves out stays out. The bound is the better the more rounds
// there are. A flow whose single cables part may travel no more, as long as no two
// travel an arc in opposite ways.
//
// A cable that travels a state pays its part of its terminal's shares on its way
// there and on, and its plan pays what nobody has a share of on that way: both
// beyond the bound of a dual.
//
// That bound counts the fixed price of an arc for either way of travelling it. A
// plan that travels it both ways pays once, and so maybe less by the lower of the
// shares for either way. For Both so much is allowed for, over all arcs.
func OpenBelow(n *network.Network, root int32, terms []Terminal, limit int64, e Effort, opt Options) (open *Open, bound int64, err error) {
	if err := check(n, root, terms); err != nil {
		return nil, 0, err
	}
	s, _ := newSpace(n, root, terms, opt, true)
	w := &meter{left: opt.Work, stop: opt.Stop}
	if opt.Work <= 0 {
		w.left = DefaultWork
	}
	var member []int32
	for t := range terms {
		if len(s.start[t]) > 0 {
			member = append(member, int32(t))
		}
	}
	if len(member) == 0 {
		all := slices.Repeat([]bool{true}, len(n.Target))
		return &Open{all, all}, 0, nil
	}
	d := newDual(s, s.distances(0))
	d.reset(member, s.fixed)
	d.guide = s.guideBy(member, opt.Known)
	d.ascend(roundsFor(len(member)), w)
	if e.Steps > 0 && opt.Known != nil {
		known := Plan{Paths: slices.Clone(opt.Known)}
		known.Price(n, terms, nil)
		d.tighten(known.Cost*s.scale, e.Steps, w)
	}
	least := d.bound()
	o := newOpener(d, e.Both, s.below(min(limit, far/s.scale)*s.scale)-least)
	if !o.markAll(w) {
		return &Open{make([]bool, len(n.Target)), make([]bool, len(n.Target))}, limit, nil
	}
	return &Open{o.ways(), o.both()}, s.whole(least), nil
}

// An Effort says how good a dual shall be.
type Effort struct {
	Steps int64 // towards the best, if a plan is known
	Both  bool  // tell what may be travelled in opposite ways as well
}

// An opener finds what members travel in plans that cost less than the bound of a
// dual and a gap.
type opener struct {
	*dual
	gap       int64
	tellsBoth bool
	spent     []int64 // by half-arc: shares of its fixed price
	twice     int64   // what plans may pay less that travel arcs both ways
	use       []bool  // by state: a cable may travel it
	own       []lowTwo
}

// A lowTwo is the least that members pay who travel a state, beyond their floors,
// the second least, and who pays the least.
type lowTwo struct {
	least, next int64
	who         int
}

func (t *lowTwo) add(i int, x int64) {
	switch {
	case x < t.least:
		t.least, t.next, t.who = x, t.least, i
	case x < t.next:
		t.next = x
	}
}

// sum is the least of one's amount in t and another's in u.
func (t *lowTwo) sum(u *lowTwo) int64 {
	if t.who != u.who {
		return min(far, t.least+u.least)
	}
	return min(far, t.least+u.next, t.next+u.least)
}

func newOpener(d *dual, both bool, gap int64) *opener {
	o := &opener{dual: d, tellsBoth: both, gap: gap, spent: make([]int64, len(d.net.Target)), use: make([]bool, len(d.base)), own: make([]lowTwo, len(d.base))}
	for g := range o.own {
		o.own[g] = lowTwo{far, far, -1}
	}
	o.divide()
	return o
}

// divide divides the shares of states among their half-arcs as their prices are,
// and works out what plans may pay less that travel every arc both ways.
func (o *opener) divide() {
	n := o.net
	for g := range o.exit {
		f := o.dual.fixed[g]
		for _, h := range o.chain[o.chainFirst[g]:o.chainFirst[g+1]] {
			if f > 0 {
				hi, lo := bits.Mul64(uint64(o.dual.spent[g]), uint64(n.Fixed[h]*o.scale))
				share, rest := bits.Div64(hi, lo, uint64(f))
				if o.spent[h] = int64(share); rest > 0 {
					o.spent[h]++
				}
			}
		}
	}
	for h, back := range n.Twin {
		if int32(h) < back {
			o.twice += min(o.spent[h], o.spent[back])
		}
	}
}

// markAll takes in what members pay to travel states, and reports whether each may
// travel any.
func (o *opener) markAll(w *meter) bool {
	k := len(o.member)
	all, own, work := make([][]int64, k), make([][]int64, k), make([]meter, k)
	hands := make([]*opener, sideWorkers(k))
	for i := range hands {
		hands[i] = &opener{dual: o.dual.another(), tellsBoth: o.tellsBoth, gap: o.gap, twice: o.twice}
	}
	sideBySide(k, func(worker, i int) {
		h := hands[worker]
		h.load(i)
		all[i] = h.through(i, h.q, h.gap, h.slack, &work[i])
		if h.tellsBoth {
			own[i] = h.through(i, 1, h.gap+h.twice, func(int32) int64 { return 0 }, &work[i])
		}
		h.drop(i)
	})
	for i := range k {
		w.spend(int(-work[i].left))
		some := false
		for g, x := range all[i] {
			if x < o.gap {
				o.use[g], some = true, true
			}
		}
		if !some {
			return false
		}
		for g, x := range own[i] {
			o.own[g].add(i, x)
		}
	}
	return true
}

// through is by state what member i, in hand, pays more than its floor if it
// travels there, divided by a number of cables, and for each state so much more.
func (o *opener) through(i int, by, limit int64, more func(int32) int64, w *meter) []int64 {
	floor := o.floor(i)
	var from []entry
	for _, g := range o.start[o.member[i]] {
		from = append(from, entry{(o.pot(g) - floor) / by, g})
	}
	to := o.reduced(from, limit, o.turns, func(g int32, t turn) int64 { return o.slackOf(g, t.to, t.price)/by + more(g) }, w)
	on := o.reduced([]entry{{0, o.exit}}, limit, o.before, func(g int32, t turn) int64 { return o.slackOf(t.to, g, t.price)/by + more(t.to) }, w)
	for g := range to {
		if on[g] == far {
			to[g] = far
		} else if to[g] < far {
			to[g] += on[g]
		}
	}
	return to
}

// ways tells which half-arcs may be travelled.
func (o *opener) ways() []bool {
	out := make([]bool, len(o.net.Target))
	for h, g := range o.states() {
		out[h] = g >= 0 && o.use[g]
	}
	return out
}

// states is by half-arc the state that it is in, or -1.
func (o *opener) states() []int32 {
	at := slices.Repeat([]int32{-1}, len(o.net.Target))
	for g := range o.exit {
		for _, h := range o.chain[o.chainFirst[g]:o.chainFirst[g+1]] {
			at[h] = g
		}
	}
	return at
}

// both tells which arcs may be travelled both ways. The fewer these are the less
// has to be allowed for, and then even fewer may.
func (o *opener) both() []bool {
	if !o.tellsBoth {
		return nil
	}
	at, out := o.states(), make([]bool, len(o.net.Target))
	for {
		var twice int64
		for h, back := range o.net.Twin {
			a, b := at[h], at[back]
			if int32(h) > back || a < 0 || b < 0 {
				continue
			}
			if out[h] = o.own[a].sum(&o.own[b]) < o.gap+o.twice; out[h] {
				twice += min(o.spent[h], o.spent[back])
			}
			out[back] = out[h]
		}
		if twice >= o.twice {
			return out
		}
		o.twice = twice
	}
}
