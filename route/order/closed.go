package order

import (
	"cmp"
	"container/heap"
	"slices"
)

const (
	nowhere = -1 // not yet at a place of work
	absent  = -2 // there is no second person
)

// A spot is where people stand and what is done. The people are alike, so at
// is in ascending order.
type spot struct {
	done set
	at   [2]int8
}

func (m *model) outset() spot {
	s := spot{at: [2]int8{nowhere, nowhere}}
	if m.people == 1 {
		s.at[1] = absent
	}
	return s
}

// within reports whether t can be done by people at the places of s.
func (m *model) within(t int, s *spot) bool {
	p, h := int8(m.place[t]), int8(m.helper[t])
	if h < 0 {
		return p == s.at[0] || p == s.at[1]
	}
	return p == s.at[0] && h == s.at[1] || p == s.at[1] && h == s.at[0]
}

// closed is s with all done that can be done without a change. One pass is
// enough, because order has needs first.
func (m *model) closed(s spot) spot {
	for _, t := range m.order {
		if !s.done.has(t) && m.within(t, &s) && s.done.hasAll(m.pre[t]) {
			s.done.add(t)
		}
	}
	return s
}

// moved is s with person i at place p, not yet closed.
func (m *model) moved(s spot, i, p int) spot {
	s.at[i] = int8(p)
	if m.people == 2 && s.at[0] > s.at[1] {
		s.at[0], s.at[1] = s.at[1], s.at[0]
	}
	return s
}

// A hop is a closed spot as a search reached it.
type hop struct {
	spot          spot
	changes, walk int
	parent        int
}

type hopEntry struct{ changes, walk, hop int } // of a hop, with what is still to come

type hopQueue []hopEntry

func (q hopQueue) Len() int { return len(q) }
func (q hopQueue) Less(i, j int) bool {
	a, b := q[i], q[j]
	// Of equals the last found first: it tends to be nearest to the end.
	return cmp.Or(cmp.Compare(a.changes, b.changes), cmp.Compare(a.walk, b.walk), cmp.Compare(b.hop, a.hop)) < 0
}
func (q hopQueue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *hopQueue) Push(x any)   { *q = append(*q, x.(hopEntry)) }
func (q *hopQueue) Pop() any {
	old := *q
	last := old[len(old)-1]
	*q = old[:len(old)-1]
	return last
}

// pay counts steps, and returns them.
func (m *model) pay(steps int) int {
	m.steps += steps
	return steps
}

// A tour is a way through closed spots to the end of the job.
type tour struct {
	spots         []spot // the first is where it begins
	changes, walk int
}

// A closedSearch is one run over closed spots.
type closedSearch struct {
	m    *model
	walk bool // minutes walked count, after changes
	hops []hop
	best map[spot][2]int
}

func (m *model) newClosedSearch(from spot, walk bool) *closedSearch {
	c := &closedSearch{m: m, walk: walk && m.people == 1, best: make(map[spot][2]int)}
	from = m.closed(from)
	c.hops = append(c.hops, hop{spot: from, parent: -1})
	c.best[from] = [2]int{}
	return c
}

// tour finds the tour with the fewest changes (and then the least walk) from a
// spot by A*, if limit steps are enough. The second result is a lower bound on
// changes and walk in any case.
func (m *model) tour(from spot, walk bool, limit int) (*tour, [2]int) {
	c := m.newClosedSearch(from, walk)
	var queue hopQueue
	for h := range c.hops {
		c.push(&queue, h)
	}
	for queue.Len() > 0 {
		e := heap.Pop(&queue).(hopEntry)
		h := c.hops[e.hop]
		if h.spot.done.count() == len(m.ids) {
			return c.trace(e.hop), [2]int{e.changes, e.walk}
		}
		if c.best[h.spot] != [2]int{h.changes, h.walk} {
			continue
		}
		if limit -= m.pay(m.hopCost); limit < 0 {
			return nil, [2]int{e.changes, e.walk}
		}
		for _, n := range c.next(e.hop) {
			c.push(&queue, n)
		}
	}
	panic("order: a job without rings can't be finished")
}

func (c *closedSearch) push(q *hopQueue, i int) {
	h := &c.hops[i]
	changes, walk := c.m.atLeast(&h.spot)
	if !c.walk {
		walk = 0
	}
	heap.Push(q, hopEntry{h.changes + changes, h.walk + walk, i})
}

// next adds the hops from hop i that are better than any before to the same
// spot.
func (c *closedSearch) next(i int) []int {
	m := c.m
	s := c.hops[i].spot
	useful, pairs := m.opens(&s)
	var found []int
	for who := range m.people {
		if who == 1 && s.at[0] == s.at[1] {
			break // the people are alike
		}
		for p := range m.names {
			if int(s.at[who]) == p || (useful|pairs)&(1<<p) == 0 {
				continue
			}
			to := m.closed(m.moved(s, who, p))
			if to.done == s.done && pairs&(1<<p) == 0 {
				continue // a move for nothing can as well be made later
			}
			n := hop{spot: to, changes: c.hops[i].changes, walk: c.hops[i].walk, parent: i}
			if s.at[who] != nowhere {
				n.changes++
			}
			if c.walk {
				n.walk += m.travel(s.at[who], p)
			}
			cost := [2]int{n.changes, n.walk}
			if old, ok := c.best[to]; ok && slices.Compare(old[:], cost[:]) <= 0 {
				continue
			}
			c.best[to] = cost
			c.hops = append(c.hops, n)
			found = append(found, len(c.hops)-1)
		}
	}
	return found
}

// opens gives the places of tasks whose needs are done, as bits: of those for
// one pair of hands, and of those for two.
func (m *model) opens(s *spot) (useful, pairs uint64) {
	for _, t := range m.order {
		if s.done.has(t) || !s.done.hasAll(m.pre[t]) {
			continue
		}
		if m.helper[t] < 0 {
			useful |= 1 << m.place[t]
		} else {
			pairs |= 1<<m.place[t] | 1<<m.helper[t]
		}
	}
	return useful, pairs
}

func (c *closedSearch) trace(i int) *tour {
	t := &tour{changes: c.hops[i].changes, walk: c.hops[i].walk}
	for ; i >= 0; i = c.hops[i].parent {
		t.spots = append(t.spots, c.hops[i].spot)
	}
	slices.Reverse(t.spots)
	return t
}

// beamWidth is how many hops a beam keeps. A few dozen lose little in trials
// and keep 300 tasks well under a second.
const beamWidth = 24

// beamTour is a good tour without a proof: hop by hop, the most promising
// spots are followed. Those that are set aside wait for the case that the
// others lead nowhere new; so it ends, since no spot is taken twice.
func (m *model) beamTour(from spot, walk bool) *tour {
	c := m.newClosedSearch(from, walk)
	var aside []rankedHop
	level := []rankedHop{{done: c.hops[0].spot.done.count()}}
	for level[0].done < len(m.ids) {
		var next []rankedHop
		for _, r := range level {
			m.pay(m.hopCost)
			for _, n := range c.next(r.hop) {
				h := &c.hops[n]
				changes, more := m.atLeast(&h.spot)
				next = append(next, rankedHop{h.changes + changes, h.spot.done.count(), h.walk + more, n})
			}
		}
		slices.SortFunc(next, rankedHop.compare)
		if len(next) == 0 {
			next, aside = aside[len(aside)-1:], aside[:len(aside)-1]
		}
		level = next[:min(len(next), beamWidth)]
		aside = append(aside, next[len(level):]...)
	}
	return c.trace(level[0].hop)
}

// A rankedHop is a hop with what it promises.
type rankedHop struct{ changes, done, walk, hop int }

func (a rankedHop) compare(b rankedHop) int {
	return cmp.Or(cmp.Compare(a.changes, b.changes), cmp.Compare(b.done, a.done),
		cmp.Compare(a.walk, b.walk), cmp.Compare(a.hop, b.hop))
}

// changesLeft is how many changes the rest of a job needs, from people at the
// places of s and what they have done: exact while steps last, afterwards a
// lower bound.
func (m *model) changesLeft(s spot) int {
	s = m.closed(s)
	if known, ok := m.left[s]; ok {
		return known
	}
	if m.spent >= m.limit {
		bound, _ := m.atLeast(&s)
		return bound
	}
	before := m.steps
	t, bound := m.tour(s, false, min(m.limit-m.spent, m.limit/20+1))
	m.spent += m.steps - before
	m.left[s] = bound[0]
	if t != nil {
		m.learn(t)
	}
	return bound[0]
}

// learn keeps what an exact tour tells about every spot on it.
func (m *model) learn(t *tour) {
	changes := t.changes
	for i, s := range t.spots {
		m.left[s] = changes
		if i+1 < len(t.spots) && m.isChange(s, t.spots[i+1]) {
			changes--
		}
	}
}

// isChange reports whether the hop from a to b counts: a first arrival makes
// one person fewer stand nowhere.
func (m *model) isChange(a, b spot) bool {
	return idle(a) == idle(b)
}

func idle(s spot) int {
	n := 0
	for _, at := range s.at {
		if at == nowhere {
			n++
		}
	}
	return n
}
