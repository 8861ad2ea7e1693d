package order

import (
	"cmp"
	"slices"
)

// Orders for one person from a sequence of places. The tours of the closed
// search do all that can be done at a place. Where clock limits press, the same
// sequence of places is used better: what is urgent as early as can be, and
// what nobody waits for as late as can be.

// urgent marks tasks with a clock limit and all that they need.
func (m *model) urgent() set {
	var s set
	for _, t := range m.timed {
		s.add(t)
		for _, a := range m.above[t] {
			s.add(a)
		}
	}
	return s
}

// aloneRuns gives candidates for one person: the given tour, the best tours
// that begin at each place, and one that does what is urgent first. Without
// clock limits only the given one is needed.
func (m *model) aloneRuns(best *tour) *run {
	found := m.arrange(best.spots)
	if len(m.timed) == 0 {
		return found
	}
	for p := range m.names {
		from := m.moved(m.outset(), 0, p)
		if from = m.closed(from); from.done.count() == 0 {
			continue
		}
		if t, _ := m.tour(from, true, m.limit/20+1); t != nil {
			found = better(found, m.arrange(t.spots))
		}
	}
	return better(found, m.arrange(m.urgentFirst()))
}

// urgentFirst goes through the places that the urgent tasks ask for before it
// takes up the rest.
func (m *model) urgentFirst() []spot {
	urgent := m.urgent()
	only := m.outset()
	for t := range m.ids {
		if !urgent.has(t) {
			only.done.add(t)
		}
	}
	first, _ := m.tour(only, true, m.limit/20+1)
	if first == nil {
		first = m.beamTour(only, true)
	}
	// The same places once more, now with everything that can be done there.
	spots := first.spots
	at := m.outset()
	for i, s := range spots {
		at.at = s.at
		at = m.closed(at)
		spots[i] = at
	}
	rest, _ := m.tour(at, true, m.limit/20+1)
	if rest == nil {
		rest = m.beamTour(at, true)
	}
	return append(spots, rest.spots...)
}

// arrange works through the places of spots: with every task at its first
// possible visit, or, where that misses a clock limit and the other is better,
// with only the urgent ones early.
func (m *model) arrange(spots []spot) *run {
	var places []int
	for _, s := range spots {
		p := int(s.at[0])
		if p != nowhere && (len(places) == 0 || places[len(places)-1] != p) {
			places = append(places, p)
		}
	}
	var all set
	for t := range m.ids {
		all.add(t)
	}
	early := m.visit(m.assign(places, all))
	if early.score.Late == 0 && early.score.Past == 0 {
		return early
	}
	return better(early, m.visit(m.assign(places, m.urgent())))
}

// visit works through the visits that tasks are assigned to.
func (m *model) visit(assigned []int) *run {
	tasks := slices.Clone(m.order)
	slices.SortStableFunc(tasks, func(a, b int) int { return cmp.Compare(assigned[a], assigned[b]) })
	var steps []step
	for len(tasks) > 0 {
		n := 1
		for n < len(tasks) && assigned[tasks[n]] == assigned[tasks[0]] {
			n++
		}
		for _, t := range m.byLimit(tasks[:n]) {
			steps = append(steps, step{t, 0, -1})
		}
		tasks = tasks[n:]
	}
	return m.work(steps)
}

// assign gives each task one of the visits to places: those of early the first
// that is possible, the others the last. The needs of early tasks are early.
func (m *model) assign(places []int, early set) []int {
	visit := make([]int, len(m.ids))
	for _, t := range m.order {
		if !early.has(t) {
			continue
		}
		v := 0
		for _, p := range m.pre[t] {
			v = max(v, visit[p])
		}
		for places[v] != m.place[t] {
			v++
		}
		visit[t] = v
	}
	for _, t := range slices.Backward(m.order) {
		if early.has(t) {
			continue
		}
		v := len(places) - 1
		for _, s := range m.succ[t] {
			v = min(v, visit[s])
		}
		for places[v] != m.place[t] {
			v--
		}
		visit[t] = v
	}
	return visit
}

// byLimit orders the tasks of one visit: earliest clock limit first, with what
// it needs; then by ID.
func (m *model) byLimit(tasks []int) []int {
	type limits struct{ due, prefer int }
	press := make(map[int]limits)
	for _, t := range slices.Backward(tasks) {
		l := limits{m.due[t], m.prefer[t]}
		for _, s := range m.succ[t] {
			if after, ok := press[s]; ok {
				l.due = min(l.due, earlier(after.due, m.minutes[s]))
				l.prefer = min(l.prefer, earlier(after.prefer, m.minutes[s]))
			}
		}
		press[t] = l
	}
	var sorted []int
	for len(sorted) < len(tasks) {
		next := -1
		for _, t := range tasks {
			if slices.Contains(sorted, t) || slices.ContainsFunc(m.pre[t], func(p int) bool {
				return slices.Contains(tasks, p) && !slices.Contains(sorted, p)
			}) {
				continue
			}
			if next < 0 || cmp.Or(cmp.Compare(press[t].due, press[next].due),
				cmp.Compare(press[t].prefer, press[next].prefer), cmp.Compare(t, next)) < 0 {
				next = t
			}
		}
		sorted = append(sorted, next)
	}
	return sorted
}

func earlier(limit, minutes int) int {
	if limit == never {
		return never
	}
	return limit - minutes
}
