package order

import (
	"cmp"
	"container/heap"
	"slices"
)

// A seeker is one search over moments.
type seeker struct {
	m       *model
	moments []moment
	seen    frontier
}

func (m *model) newSeeker() *seeker {
	return &seeker{m: m, moments: []moment{m.dawn()}, seen: make(frontier)}
}

// A prospect is a moment with what it promises.
type prospect struct {
	promise Score
	depth   int
	moment  int
}

// compare puts what promises most first; of equals that which is nearest to
// the end, then the one found first.
func (a prospect) compare(b prospect) int {
	return cmp.Or(a.promise.Compare(b.promise), cmp.Compare(b.depth, a.depth), cmp.Compare(a.moment, b.moment))
}

type prospects []prospect

func (q prospects) Len() int           { return len(q) }
func (q prospects) Less(i, j int) bool { return q[i].compare(q[j]) < 0 }
func (q prospects) Swap(i, j int)      { q[i], q[j] = q[j], q[i] }
func (q *prospects) Push(x any)        { *q = append(*q, x.(prospect)) }
func (q *prospects) Pop() any {
	old := *q
	last := old[len(old)-1]
	*q = old[:len(old)-1]
	return last
}

// next adds the moments that follow moment i by steps and are worth it.
func (k *seeker) next(i int, steps []step) []prospect {
	m := k.m
	now := k.moments[i]
	var found []prospect
	for _, s := range steps {
		n := m.take(&now, s)
		n.parent = i
		at, free := m.face(&n)
		if !k.seen.admit(at, label{free, n.begun, n.score}) {
			continue
		}
		k.moments = append(k.moments, n)
		found = append(found, prospect{m.promise(&n), n.depth, len(k.moments) - 1})
	}
	return found
}

func (k *seeker) run(i int) *run {
	var steps []step
	for ; k.moments[i].parent >= 0; i = k.moments[i].parent {
		steps = append(steps, k.moments[i].step)
	}
	slices.Reverse(steps)
	return k.m.work(steps)
}

// beam follows the width most promising moments, task by task.
func (m *model) beam(width int) *run {
	k := m.newSeeker()
	level := []prospect{{}}
	for range m.ids {
		var next []prospect
		for _, p := range level {
			steps := m.few(m.ways(&k.moments[p.moment]))
			m.pay(len(steps) * m.taskCost)
			next = append(next, k.next(p.moment, steps)...)
		}
		slices.SortFunc(next, func(a, b prospect) int {
			x, y := &k.moments[a.moment], &k.moments[b.moment]
			return cmp.Or(a.promise.Compare(b.promise), cmp.Compare(x.free[0]+x.free[1], y.free[0]+y.free[1]),
				cmp.Compare(a.moment, b.moment))
		})
		level = next[:min(len(next), width)]
		k.seen = make(frontier) // no face of a later level is one of these
	}
	return k.run(level[0].moment)
}

// few leaves at most three steps for each person and place, those that most
// depends on: earliest limit of what follows, then longest chain. Jobs of a
// house keep all.
func (m *model) few(steps []step) []step {
	const house, each = 64, 3
	if len(m.ids) <= house {
		return steps
	}
	slices.SortStableFunc(steps, func(a, b step) int {
		return cmp.Or(cmp.Compare(m.press[a.task], m.press[b.task]), cmp.Compare(m.tail[b.task], m.tail[a.task]))
	})
	var taken [2][MaxPlaces]int
	return slices.DeleteFunc(steps, func(s step) bool {
		taken[s.who][m.place[s.task]]++
		return taken[s.who][m.place[s.task]] > each
	})
}

// seek finds the best run by A*, unless limit steps are not enough. It returns
// the best of what it found and of known, and a bound.
func (m *model) seek(known *run, limit int) (*run, Score) {
	k := m.newSeeker()
	queue := prospects{{promise: m.promise(&k.moments[0])}}
	for queue.Len() > 0 {
		p := heap.Pop(&queue).(prospect)
		if p.promise.Compare(known.score) >= 0 {
			break
		}
		if p.depth == len(m.ids) {
			return k.run(p.moment), p.promise
		}
		steps := m.ways(&k.moments[p.moment])
		if limit -= m.pay(len(steps) * m.taskCost); limit < 0 {
			return known, p.promise
		}
		for _, n := range k.next(p.moment, steps) {
			if n.promise.Compare(known.score) < 0 {
				heap.Push(&queue, n)
			}
		}
	}
	return known, known.score
}
