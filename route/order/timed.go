package order

import (
	"cmp"
	"slices"
)

// A moment is a state of the search over single tasks by the clock: tasks are
// taken in the order in which they begin, so that all but the last of each
// person are over when the next one begins.
type moment struct {
	spot   spot   // people in the order of who they are
	last   [2]int // the last task of each person, or -1
	free   [2]int // when that is over
	begun  int    // when the task taken last began
	work   int    // minutes of hands that are left
	score  Score
	parent int
	step   step
	depth  int
}

func (m *model) dawn() moment {
	now := moment{spot: m.outset(), last: [2]int{-1, -1}, free: [2]int{m.start, m.start}, begun: m.start, parent: -1}
	for t := range m.ids {
		now.work += m.hands(t) * m.minutes[t]
	}
	return now
}

func (m *model) hands(t int) int {
	if m.helper[t] >= 0 {
		return 2
	}
	return 1
}

// take is now with one step more.
func (m *model) take(now *moment, s step) moment {
	next := *now
	next.step = s
	next.depth++
	begin := max(now.begun, m.reach(now, s.who, m.place[s.task]))
	if s.helper >= 0 {
		begin = max(begin, m.reach(now, s.helper, m.helper[s.task]))
	}
	for who := range m.people {
		if now.last[who] >= 0 && slices.Contains(m.pre[s.task], now.last[who]) {
			begin = max(begin, now.free[who])
		}
	}
	since := now.free[s.who]
	if s.helper >= 0 {
		since = min(since, now.free[s.helper])
	}
	begin = m.onShift(s.task, begin, since)
	end := begin + m.minutes[s.task]
	m.settle(&next, s.who, m.place[s.task], s.task, end)
	if s.helper >= 0 {
		m.settle(&next, s.helper, m.helper[s.task], s.task, end)
	}
	next.begun = begin
	next.work -= m.hands(s.task) * m.minutes[s.task]
	next.spot.done.add(s.task)
	next.score.Late += over(m.ofDay(end), m.due[s.task])
	next.score.Past += over(m.ofDay(end), m.prefer[s.task])
	next.score.Minutes = max(next.score.Minutes, end-m.start)
	return next
}

// reach is when a person can be at a place.
func (m *model) reach(now *moment, who, place int) int {
	return now.free[who] + m.travel(now.spot.at[who], place)
}

func (m *model) settle(next *moment, who, place, task, end int) {
	if at := next.spot.at[who]; at != nowhere && int(at) != place {
		next.score.Changes++
	}
	next.spot.at[who] = int8(place)
	next.last[who], next.free[who] = task, end
}

// ways gives every step that can come next, by ID. Where it makes no
// difference which of two people does it, the first does.
func (m *model) ways(now *moment) []step {
	alike := m.people == 2 && now.spot.at[0] == now.spot.at[1] && now.free[0] == now.free[1] &&
		now.last[0] == now.last[1]
	var all []step
	for t := range m.ids {
		if now.spot.done.has(t) || !now.spot.done.hasAll(m.pre[t]) {
			continue
		}
		switch {
		case m.helper[t] >= 0:
			all = append(all, step{t, 0, 1})
			if !alike && m.helper[t] != m.place[t] {
				all = append(all, step{t, 1, 0})
			}
		default:
			all = append(all, step{t, 0, -1})
			if m.people == 2 && !alike {
				all = append(all, step{t, 1, -1})
			}
		}
	}
	return all
}

// promise is a score that no way on from now can beat.
func (m *model) promise(now *moment) Score {
	s := now.score
	s.Changes += m.changesLeft(sorted(now.spot))
	if now.depth == len(m.ids) {
		return s
	}
	for _, t := range m.timed {
		// On a later day a task can be in time again.
		if m.shift == 0 && !now.spot.done.has(t) {
			end := m.soonest(now, t)
			s.Late += over(end, m.due[t])
			s.Past += over(end, m.prefer[t])
		}
	}
	end := m.shared(now, now.work)
	if m.people == 1 {
		_, walk := m.atLeast(&now.spot)
		end += walk
	}
	for t := range m.ids {
		if !now.spot.done.has(t) && now.spot.done.hasAll(m.pre[t]) {
			end = max(end, m.arrival(now, t)+m.tail[t])
		}
	}
	s.Minutes = max(s.Minutes, end-m.start)
	return s
}

func sorted(s spot) spot {
	if s.at[1] != absent && s.at[0] > s.at[1] {
		s.at[0], s.at[1] = s.at[1], s.at[0]
	}
	return s
}

// shared is the earliest end of work minutes of hands.
func (m *model) shared(now *moment, work int) int {
	first, second := now.free[0], now.free[1]
	if m.people == 1 {
		return first + work
	}
	if first > second {
		first, second = second, first
	}
	if first+work <= second {
		return first + work
	}
	return (first + second + work + 1) / 2
}

// arrival is a clock time before which t can't begin.
func (m *model) arrival(now *moment, t int) int {
	begin := never
	for who := range m.people {
		at := now.spot.at[who]
		way := 0
		if at == nowhere || int(at) != m.place[t] {
			// Someone may come by way of another place.
			way = m.near[m.place[t]]
			if at == nowhere {
				way = min(way, m.first[m.place[t]])
			}
		}
		begin = min(begin, now.free[who]+way)
	}
	return max(begin, now.begun)
}

// soonest is a clock time before which t can't end: after the work that it
// still needs and, for one person, the walks to where that is.
func (m *model) soonest(now *moment, t int) int {
	work := m.hands(t) * m.minutes[t]
	places := uint64(1) << m.place[t]
	for _, a := range m.above[t] {
		if !now.spot.done.has(a) {
			work += m.hands(a) * m.minutes[a]
			places |= 1 << m.place[a]
		}
	}
	end := m.shared(now, work)
	if m.people == 1 {
		end += m.walks(now, places)
	}
	return max(end, m.arrival(now, t)+m.minutes[t])
}

// walks is the least that one person walks to be at all of places.
func (m *model) walks(now *moment, places uint64) int {
	total, most := 0, 0
	for p, near := range m.near {
		if places&(1<<p) != 0 && int(now.spot.at[0]) != p {
			total += near
			most = max(most, near)
		}
	}
	if now.spot.at[0] == nowhere {
		total -= most
	}
	return total
}

// A face is what of a moment decides what can follow, but for its times.
type face struct {
	spot spot
	last [2]int
}

// face gives that of now, with the people in a fixed order, and their times in
// the same order. A last task matters only while something waits for it.
func (m *model) face(now *moment) (face, [2]int) {
	f, free := face{now.spot, now.last}, now.free
	for who, t := range f.last {
		if t < 0 {
			continue
		}
		waits := false
		for _, s := range m.succ[t] {
			waits = waits || m.people == 2 && !now.spot.done.has(s) && free[who] > now.begun
		}
		if !waits {
			f.last[who] = -1
		}
	}
	if m.people == 2 && cmp.Or(cmp.Compare(f.spot.at[0], f.spot.at[1]), cmp.Compare(f.last[0], f.last[1]),
		cmp.Compare(free[0], free[1])) > 0 {
		f.spot.at[0], f.spot.at[1] = f.spot.at[1], f.spot.at[0]
		f.last[0], f.last[1] = f.last[1], f.last[0]
		free[0], free[1] = free[1], free[0]
	}
	return f, free
}

// A label is how good and how late a moment of some face is.
type label struct {
	free  [2]int
	begun int
	score Score
}

// covers reports whether whatever follows b can as well follow a: a is
// nowhere later, and its score so far is no worse. Past the score's first
// difference nothing counts, because what is added is no more for a than
// for b; so comparing field by field is enough.
func (a label) covers(b label) bool {
	return a.free[0] <= b.free[0] && a.free[1] <= b.free[1] && a.begun <= b.begun && a.score.Compare(b.score) <= 0
}

// A frontier keeps for each face the labels that no other covers.
type frontier map[face][]label

// admit reports whether l is new, and keeps it.
func (f frontier) admit(at face, l label) bool {
	kept := f[at]
	for _, o := range kept {
		if o.covers(l) {
			return false
		}
	}
	kept = slices.DeleteFunc(kept, l.covers)
	f[at] = append(kept, l)
	return true
}
