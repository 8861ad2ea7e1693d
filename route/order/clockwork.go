package order

// A step is a task with the people that do it: the one at its place, and the
// one at the helper's place or -1.
type step struct{ task, who, helper int }

// A run is a list of steps worked through by the clock.
type run struct {
	steps      []step
	start, end []int // by task, minutes after midnight
	arrive     []int // by step: when the person at the task's place is there
	assist     []int // by step: when the helper is there
	score      Score
}

// work gives clock times to steps, in which each task stands after its needs:
// everything begins as soon as its people are there and its needs are done.
func (m *model) work(steps []step) *run {
	r := &run{
		steps: steps,
		start: make([]int, len(m.ids)), end: make([]int, len(m.ids)),
		arrive: make([]int, len(steps)), assist: make([]int, len(steps)),
	}
	at := [2]int8{nowhere, nowhere}
	free := [2]int{m.start, m.start}
	last := m.start
	goTo := func(who, place int) int {
		if at[who] != nowhere && int(at[who]) != place {
			r.score.Changes++
		}
		there := free[who] + m.travel(at[who], place)
		at[who] = int8(place)
		return there
	}
	for i, s := range steps {
		r.arrive[i] = goTo(s.who, m.place[s.task])
		begin, since := r.arrive[i], free[s.who]
		if s.helper >= 0 {
			r.assist[i] = goTo(s.helper, m.helper[s.task])
			begin, since = max(begin, r.assist[i]), min(since, free[s.helper])
		}
		for _, p := range m.pre[s.task] {
			begin = max(begin, r.end[p])
		}
		begin = m.onShift(s.task, begin, since)
		r.arrive[i] = m.there(r.arrive[i], free[s.who], begin, m.place[s.task])
		if s.helper >= 0 {
			r.assist[i] = m.there(r.assist[i], free[s.helper], begin, m.helper[s.task])
		}
		end := begin + m.minutes[s.task]
		r.start[s.task], r.end[s.task] = begin, end
		free[s.who] = end
		if s.helper >= 0 {
			free[s.helper] = end
		}
		last = max(last, end)
		r.score.Late += over(m.ofDay(end), m.due[s.task])
		r.score.Past += over(m.ofDay(end), m.prefer[s.task])
	}
	r.score.Minutes = last - m.start
	return r
}

// over is how much end is after limit.
func over(end, limit int) int { return max(0, end-limit) }

// better is the better of two runs, the first where they are equal; either may
// be nil.
func better(a, b *run) *run {
	if a == nil || b != nil && b.score.Compare(a.score) < 0 {
		return b
	}
	return a
}
