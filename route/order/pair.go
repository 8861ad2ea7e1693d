package order

import (
	"cmp"
	"slices"
)

// A stay is a visit of one person in a plan for two, with the tasks that are
// still to be done in it.
type stay struct {
	place int
	tasks []int
	load  int // minutes
}

// pairRun turns a tour of two people into a run: the tour says who goes where
// after what, the clock decides the rest. Each person stays until the tasks of
// the stay are done; of what can be begun, the earliest is.
func (m *model) pairRun(t *tour) *run {
	stays := m.stays(t)
	at := [2]int8{nowhere, nowhere}
	free := [2]int{m.start, m.start}
	end := make([]int, len(m.ids))
	var done set
	var steps []step
	for len(steps) < len(m.ids) {
		best := m.earliest(stays, at, free, end, &done)
		for _, who := range []int{best.who, best.helper} {
			if who < 0 {
				continue
			}
			now := &stays[who][0]
			at[who] = int8(now.place)
			free[who] = best.start + m.minutes[best.task]
			now.tasks = slices.DeleteFunc(now.tasks, func(o int) bool { return o == best.task })
			for len(stays[who]) > 0 && len(stays[who][0].tasks) == 0 {
				stays[who] = stays[who][1:]
			}
		}
		end[best.task] = best.start + m.minutes[best.task]
		done.add(best.task)
		steps = append(steps, best.step)
	}
	return m.work(steps)
}

// A begin is a step that can be begun.
type begin struct {
	step
	start int
}

func (m *model) earliest(stays [2][]stay, at [2]int8, free [2]int, end []int, done *set) begin {
	best := begin{step: step{task: -1}}
	for who := range 2 {
		if len(stays[who]) == 0 {
			continue
		}
		now := stays[who][0]
		for _, t := range now.tasks {
			if !done.hasAll(m.pre[t]) {
				continue
			}
			b := begin{step{t, who, -1}, free[who] + m.travel(at[who], now.place)}
			if m.helper[t] >= 0 {
				b.helper = 1 - who
				if now.place != m.place[t] || len(stays[b.helper]) == 0 ||
					!slices.Contains(stays[b.helper][0].tasks, t) {
					continue
				}
				b.start = max(b.start, free[b.helper]+m.travel(at[b.helper], m.helper[t]))
			}
			for _, p := range m.pre[t] {
				b.start = max(b.start, end[p])
			}
			since := free[who]
			if b.helper >= 0 {
				since = min(since, free[b.helper])
			}
			b.start = m.onShift(t, b.start, since)
			if best.task < 0 || m.compareBegin(b, best) < 0 {
				best = b
			}
		}
	}
	return best
}

// compareBegin prefers what begins first, then what is due first, then what
// the longest chain hangs on.
func (m *model) compareBegin(a, b begin) int {
	return cmp.Or(cmp.Compare(a.start, b.start), cmp.Compare(m.due[a.task], m.due[b.task]),
		cmp.Compare(m.prefer[a.task], m.prefer[b.task]), cmp.Compare(m.tail[b.task], m.tail[a.task]),
		cmp.Compare(a.task, b.task))
}

// stays hands the tasks of a tour out. Where both people stand at a place, a
// task for one goes to whoever has less to do there.
func (m *model) stays(t *tour) [2][]stay {
	var all [2][]stay
	at := [2]int8{nowhere, nowhere}
	for i, s := range t.spots[1:] {
		who, to := moveBetween(at, s.at)
		at[who] = int8(to)
		all[who] = append(all[who], stay{place: to})
		before := &t.spots[i].done
		for _, task := range m.order {
			if !before.has(task) && s.done.has(task) {
				m.handOut(&all, at, task)
			}
		}
	}
	for who := range all {
		all[who] = slices.DeleteFunc(all[who], func(s stay) bool { return len(s.tasks) == 0 })
	}
	return all
}

// moveBetween finds the person that moves when people at the places of at come
// to stand at those of next, in whatever order, and where to.
func moveBetween(at, next [2]int8) (who, to int) {
	for who := range 2 {
		stays := at[1-who]
		switch stays {
		case next[0]:
			return who, int(next[1])
		case next[1]:
			return who, int(next[0])
		}
	}
	panic("order: two people moved at once")
}

func (m *model) handOut(all *[2][]stay, at [2]int8, task int) {
	give := func(who int) {
		now := &all[who][len(all[who])-1]
		now.tasks = append(now.tasks, task)
		now.load += m.minutes[task]
	}
	p := int8(m.place[task])
	switch {
	case m.helper[task] >= 0:
		give(0)
		give(1)
	case at[0] == p && at[1] == p:
		now := [2]stay{all[0][len(all[0])-1], all[1][len(all[1])-1]}
		if now[0].load <= now[1].load {
			give(0)
		} else {
			give(1)
		}
	case at[0] == p:
		give(0)
	default:
		give(1)
	}
}
