package order

import (
	"math"
	"slices"
	"strings"
)

// never is the clock limit of a task that has none.
const never = math.MaxInt32

// A model is a checked job with numbers for names. Tasks are numbered by ID
// and places by name, so that nothing depends on the order of the input.
type model struct {
	people, start int
	steps, limit  int // search steps taken, and allowed in each search
	spent         int // steps of changesLeft
	// What one try of a task by the clock counts for, in steps, and one
	// closed spot: more in large jobs, where each takes longer.
	taskCost, hopCost int

	// Of tasks.
	ids     []string
	place   []int
	helper  []int // place of the second person; -1 if one pair of hands does
	minutes []int // by the clock, longer when alone
	alone   []bool
	due     []int // NotAfter, or never
	prefer  []int // PreferBefore, or never
	pre     [][]int
	succ    [][]int
	order   []int   // every task after its needs, smallest ID first
	tail    []int   // minutes of the longest chain that begins with the task
	press   []int   // clock by which the task must be over for all limits that hang on it, or never
	timed   []int   // tasks with a clock limit
	above   [][]int // of a timed task: all that it needs, directly or not

	// Of places.
	names []string
	climb []bool
	first []int   // minutes to arrive from the start
	home  []int   // minutes to arrive in the morning of a later day
	move  [][]int // minutes from place to place
	near  []int   // least minutes to arrive from another place

	// shift is the minutes of a working day, 0 if work goes on until all is
	// done; morning is when it begins, in minutes after midnight.
	shift, morning int

	visits [][]int16    // by task and place: see chainVisits
	faults []int16      // memo of chainFaults
	left   map[spot]int // memo of changesLeft
}

// newModel needs a job that check passes. It fails for rings only.
func newModel(job *Job) (*model, error) {
	m := &model{people: job.People, start: int(job.Start), limit: job.Steps, left: make(map[spot]int)}
	if m.limit == 0 {
		m.limit = DefaultSteps
	}
	size := len(job.Tasks) / 64
	m.taskCost, m.hopCost = 1+size*size, 10*(1+size)
	m.addPlaces(job)
	m.addTasks(job)
	if err := m.addShift(job); err != nil {
		return nil, err
	}
	if err := m.sort(); err != nil {
		return nil, err
	}
	m.addChains()
	return m, nil
}

func (m *model) addPlaces(job *Job) {
	places := slices.Clone(job.Places)
	slices.SortFunc(places, func(a, b Place) int { return strings.Compare(a.Name, b.Name) })
	index := make(map[string]int)
	for i, p := range places {
		index[p.Name] = i
		m.names = append(m.names, p.Name)
		m.climb = append(m.climb, p.Climb)
	}
	for range places {
		row := make([]int, len(places))
		for to, p := range places {
			row[to] = p.Arrive
		}
		m.move = append(m.move, row)
	}
	m.first, m.home = make([]int, len(places)), make([]int, len(places))
	for to, p := range places {
		m.home[to] = p.Arrive
	}
	if job.From != "" {
		for to, p := range places {
			m.first[to] = p.Arrive
		}
	}
	if from, ok := index[job.From]; ok {
		m.first[from] = 0
	}
	for _, w := range job.Ways {
		if from, ok := index[w.From]; ok {
			m.move[from][index[w.To]] = w.Minutes
		}
		if w.From == job.From && w.From != w.To {
			m.first[index[w.To]] = w.Minutes
		}
		if job.Shift != nil && w.From == job.Shift.From {
			m.home[index[w.To]] = w.Minutes
		}
	}
	m.near = make([]int, len(places))
	for to := range places {
		m.near[to] = MaxMinutes
		for from := range places {
			if from != to {
				m.near[to] = min(m.near[to], m.move[from][to])
			}
		}
	}
}

func (m *model) addTasks(job *Job) {
	tasks := slices.Clone(job.Tasks)
	slices.SortFunc(tasks, func(a, b Task) int { return strings.Compare(a.ID, b.ID) })
	index := make(map[string]int)
	for i, t := range tasks {
		index[t.ID] = i
	}
	m.pre, m.succ = make([][]int, len(tasks)), make([][]int, len(tasks))
	for i, t := range tasks {
		place, helper, minutes := m.placeOf(t.Place), -1, t.Minutes
		alone := t.Hands == 2 && m.people == 1
		switch {
		case alone:
			minutes = (t.Minutes*job.AlonePercent + 99) / 100
		case t.Hands == 2 && t.Helper != "":
			helper = m.placeOf(t.Helper)
		case t.Hands == 2:
			helper = place
		}
		m.ids = append(m.ids, t.ID)
		m.place = append(m.place, place)
		m.helper = append(m.helper, helper)
		m.minutes = append(m.minutes, minutes)
		m.alone = append(m.alone, alone)
		m.due = append(m.due, orNever(t.NotAfter))
		m.prefer = append(m.prefer, orNever(t.PreferBefore))
		for _, n := range t.Needs {
			m.pre[i] = append(m.pre[i], index[n])
		}
		slices.Sort(m.pre[i])
		m.pre[i] = slices.Compact(m.pre[i])
		for _, p := range m.pre[i] {
			m.succ[p] = append(m.succ[p], i)
		}
	}
}

func (m *model) placeOf(name string) int {
	i, _ := slices.BinarySearch(m.names, name)
	return i
}

func orNever(c Clock) int {
	if c == 0 {
		return never
	}
	return int(c)
}

// sort fills order, or fails with a ring.
func (m *model) sort() error {
	var done set
	for len(m.order) < len(m.ids) {
		next := -1
		for t := range m.ids {
			if !done.has(t) && done.hasAll(m.pre[t]) {
				next = t
				break
			}
		}
		if next < 0 {
			var stuck []int
			for t := range m.ids {
				if !done.has(t) {
					stuck = append(stuck, t)
				}
			}
			return m.ring(stuck)
		}
		done.add(next)
		m.order = append(m.order, next)
	}
	return nil
}

// addChains fills what follows from the prerequisites.
func (m *model) addChains() {
	n := len(m.ids)
	m.tail, m.press = make([]int, n), make([]int, n)
	for i := n - 1; i >= 0; i-- {
		t := m.order[i]
		m.press[t] = min(m.due[t], m.prefer[t])
		for _, s := range m.succ[t] {
			m.tail[t] = max(m.tail[t], m.tail[s])
			m.press[t] = min(m.press[t], earlier(m.press[s], m.minutes[s]))
		}
		m.tail[t] += m.minutes[t]
	}
	m.above = make([][]int, n)
	for t := range n {
		if m.due[t] == never && m.prefer[t] == never {
			continue
		}
		m.timed = append(m.timed, t)
		var seen set
		for todo := slices.Clone(m.pre[t]); len(todo) > 0; {
			p := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			if !seen.has(p) {
				seen.add(p)
				m.above[t] = append(m.above[t], p)
				todo = append(todo, m.pre[p]...)
			}
		}
		slices.Sort(m.above[t])
	}
	m.addVisits()
}

// travel is how long a person takes from one place to another.
func (m *model) travel(from int8, to int) int {
	switch {
	case from == nowhere:
		return m.first[to]
	case int(from) == to:
		return 0
	}
	return m.move[from][to]
}
