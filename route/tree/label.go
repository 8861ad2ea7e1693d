package tree

import (
	"iter"
	"math/bits"
)

// A label says: the cables of all members in set are together, about to leave
// by state, and cost more by key than the dual has them pay this far.
type label struct {
	state int32
	a, b  int32 // made by merging a and b; or by moving on from a, b is -1; a start has neither
	done  bool
	set   uint64
	key   int64
}

// settled are the labels settled at a state, in the order of their keys.
type settled struct {
	came   []mate // that came from elsewhere, or start here
	merged []mate // of others here
}

// all goes through all of them.
func (s *settled) all() iter.Seq[*mate] {
	return func(yield func(*mate) bool) {
		for _, list := range [2][]mate{s.came, s.merged} {
			for i := range list {
				if !yield(&list[i]) {
					return
				}
			}
		}
	}
}

// A mate is what merge has to know of a settled label.
type mate struct {
	set uint64
	key int64
	id  int32
}

// A search is the exact search for the cheapest plan of the members of a
// dual: the dynamic programme of Erickson, Monma and Veinott, taken in the
// order of cost as in Hougardy, Silvanus and Vygen, "Dijkstra meets Steiner",
// Math. Programming Computation 9, 2017, with the potentials of the dual as
// the bound of what is still to be paid.
type search struct {
	*dual
	limit  int64   // labels with this key or more are of no use
	ahead  []int64 // by state: by how much sooner they are of no use there; nil if nowhere
	labels []label
	table  []uint64 // open addressing over state and set; 32 bits of the hash, and label + 1
	mask   uint64
	at     []settled // by state
	heap   queue
	all    uint64
	k      int
	row    []int32           // by state: row of lifts, 0 if it has none
	lifts  []int64           // [row*k+i]; row 0 is all zero
	lifted []int32           // states with a row
	crowd  *crowd            // those who are there and stay
	extra  map[stepSet]int64 // what sets add to what a stepped state costs
}

func newSearch(s *space, c *crowd) *search {
	x := &search{crowd: c, extra: map[stepSet]int64{}, at: make([]settled, len(s.fixed)), row: make([]int32, len(s.fixed))}
	x.grow(1 << 12)
	return x
}

// reset prepares a search on a dual for plans that cost less than its bound
// and limit.
func (s *search) reset(d *dual, limit int64) {
	for i := range s.labels {
		at := &s.at[s.labels[i].state]
		at.came, at.merged = at.came[:0], at.merged[:0]
	}
	clear(s.table)
	clear(s.extra)
	s.labels = s.labels[:0]
	s.heap.reset()
	for _, g := range s.lifted {
		s.row[g] = 0
	}
	s.lifted = s.lifted[:0]
	s.dual, s.limit, s.k = d, limit, len(d.member)
	s.all = ^uint64(0) >> (64 - s.k)
	s.lifts = append(s.lifts[:0], make([]int64, s.k)...)
	for i, rec := range d.records[:s.k] {
		for _, r := range rec {
			if s.row[r.state] == 0 {
				s.lifted = append(s.lifted, r.state)
				s.row[r.state] = int32(len(s.lifts) / s.k)
				s.lifts = append(s.lifts, make([]int64, s.k)...)
			}
			s.lifts[int(s.row[r.state])*s.k+i] = r.lift
		}
	}
}

// maxLabels keeps the memory of a search below some 400 MB.
const maxLabels = 3_000_000

// maxMembers is how many members a set can hold.
const maxMembers = 64

// run searches until the plan is complete, no label is left below the limit,
// or the work runs out. It returns the label of the plan, -1 if there is
// none, and the least key a plan below the limit can have.
func (s *search) run(w *meter) (goal int32, least int64) {
	for i := range s.k {
		set := uint64(1) << i
		floor := int64(far)
		for _, g := range s.start[s.member[i]] {
			floor = min(floor, s.sum(g, set, s.cables[i]))
		}
		for _, g := range s.start[s.member[i]] {
			s.offer(g, set, s.sum(g, set, s.cables[i])-floor, -1, -1)
		}
	}
	for s.heap.size > 0 {
		key, id := s.heap.pop()
		l := &s.labels[id]
		if l.done || key > l.key {
			continue
		}
		if l.state == s.exit && l.set == s.all {
			return id, key
		}
		l.done = true
		if !w.spend(2*(s.merge(id)+s.move(id))) || len(s.labels) > maxLabels {
			return -1, key
		}
	}
	return -1, s.limit
}

// merge joins a label with all settled ones of its state whose members are
// others. Of many that come to a state it makes one in the order of their lowest
// members only: another joins those that are one already if its own is higher.
func (s *search) merge(id int32) (steps int) {
	l := &s.labels[id]
	g, set, key, at := l.state, l.set, l.key, &s.at[l.state]
	low, most := lowest(set), s.most(l.state)
	if s.mergedHere(l) {
		for i := range at.came {
			m := &at.came[i]
			if key+m.key >= most {
				break
			}
			if steps++; m.set&set == 0 && lowest(m.set) > low {
				s.offer(g, set|m.set, key+m.key, m.id, id)
			}
		}
		at.merged = append(at.merged, mate{set, key, id})
		return steps
	}
	for i := range at.came {
		m := &at.came[i]
		if key+m.key >= most {
			break
		}
		if steps++; m.set&set == 0 {
			s.offer(g, set|m.set, key+m.key, m.id, id)
		}
	}
	for i := range at.merged {
		m := &at.merged[i]
		if key+m.key >= most {
			break
		}
		if steps++; m.set&set == 0 && lowest(m.set) < low {
			s.offer(g, set|m.set, key+m.key, m.id, id)
		}
	}
	at.came = append(at.came, mate{set, key, id})
	return steps
}

// most is the key from which on labels at a state are of no use.
func (s *search) most(g int32) int64 {
	if s.ahead == nil {
		return s.limit
	}
	return s.limit - s.ahead[g]
}

// mergedHere reports whether a label was made of two at its state.
func (s *search) mergedHere(l *label) bool { return l.b >= 0 && s.labels[l.a].state == l.state }

// lowest is the lowest member of a set, as a bit.
func lowest(set uint64) uint64 { return set & -set }

// move takes a label over its state to all that may follow.
func (s *search) move(id int32) (steps int) {
	l := s.labels[id]
	if l.state == s.exit {
		return 1
	}
	q := int64(0)
	for set := l.set; set != 0; set &= set - 1 {
		q += s.cables[bits.TrailingZeros64(set)]
	}
	key := l.key + s.dual.fixed[l.state] + q*s.unit[l.state] - s.sum(l.state, l.set, q)
	if s.crowd.counts(l.state) {
		key += s.more(l.state, l.set)
	}
	turns := s.turns(l.state)
	for _, t := range turns {
		s.offer(t.to, l.set, key+q*t.price+s.sum(t.to, l.set, q), id, -1)
	}
	return len(turns)
}

// A stepSet is a set of members on a state whose price has steps.
type stepSet struct {
	state int32
	set   uint64
}

// more is what the members of a set add, beyond the fixed price, to the price
// of a state that has steps. Few states have, so a map is quick enough.
func (s *search) more(g int32, set uint64) int64 {
	key := stepSet{g, set}
	more, ok := s.extra[key]
	if !ok {
		k := s.crowd.stepOf[g]
		was := s.crowd.there[k-1]
		all := was
		for rest := set; rest != 0; rest &= rest - 1 {
			all = with(all, s.member[bits.TrailingZeros64(rest)])
		}
		more = max(0, s.crowd.more(k, all)-s.crowd.more(k, was))
		s.extra[key] = more
	}
	return more
}

// sum is the potential of a set of q cables.
func (s *search) sum(g int32, set uint64, q int64) int64 {
	sum := q * s.base[g]
	row := s.row[g]
	if row == 0 {
		return sum
	}
	lifts := s.lifts[int(row)*s.k:][:s.k]
	for ; set != 0; set &= set - 1 {
		sum += lifts[bits.TrailingZeros64(set)]
	}
	return sum
}

// offer makes or improves a label.
func (s *search) offer(g int32, set uint64, key int64, a, b int32) {
	if key >= s.most(g) {
		return
	}
	at, mark := s.slot(g, set)
	id := int32(uint32(s.table[at])) - 1
	if id < 0 {
		id = int32(len(s.labels))
		s.labels = append(s.labels, label{state: g, set: set, key: far})
		s.table[at] = mark | uint64(id+1)
		if 2*len(s.labels) > len(s.table) {
			s.grow(2 * len(s.table))
		}
	}
	if l := &s.labels[id]; key < l.key {
		l.key, l.a, l.b = key, a, b
		s.heap.push(key, id)
	}
}

// slot is the place in the table of a state and a set, or the free place
// where it belongs, and the part of the hash that the table keeps. The factors are
// odd numbers with well mixed bits.
func (s *search) slot(g int32, set uint64) (at, mark uint64) {
	h := (uint64(g)*0x9e3779b97f4a7c15 ^ set) * 0xbf58476d1ce4e5b9
	mark = h >> 16 << 32
	for at = h >> 32 & s.mask; ; at = (at + 1) & s.mask {
		e := s.table[at]
		if e == 0 {
			return at, mark
		}
		if e>>32 != mark>>32 {
			continue
		}
		if l := &s.labels[uint32(e)-1]; l.state == g && l.set == set {
			return at, mark
		}
	}
}

func (s *search) grow(size int) {
	s.table, s.mask = make([]uint64, size), uint64(size-1)
	for i := range s.labels {
		l := &s.labels[i]
		at, mark := s.slot(l.state, l.set)
		s.table[at] = mark | uint64(i+1)
	}
}

// routes follows a label back and lists the states of every member's path,
// terminal first.
func (s *search) routes(goal int32) [][]int32 {
	paths := make([][]int32, s.k)
	stack := []int32{goal}
	for len(stack) > 0 {
		id := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		l := &s.labels[id]
		switch {
		case l.b >= 0:
			stack = append(stack, l.a, l.b)
		default:
			if l.state != s.exit {
				for set := l.set; set != 0; set &= set - 1 {
					i := bits.TrailingZeros64(set)
					paths[i] = append(paths[i], l.state)
				}
			}
			if l.a >= 0 {
				stack = append(stack, l.a)
			}
		}
	}
	for _, p := range paths {
		reverse(p)
	}
	return paths
}

func reverse(s []int32) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}
