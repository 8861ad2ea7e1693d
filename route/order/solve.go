package order

import (
	"cmp"
	"slices"
)

// Widths of the beam over single tasks, by the size of the job: about the same
// time for a house and for an office.
const (
	beamWork  = 2500 // width times tasks
	beamLeast = 4
	beamMost  = 100
	beamTasks = 400 // beyond, a beam takes too long
)

// Solve finds the best order for job. It fails when the job is not valid: all
// that is wrong is told at once, and for prerequisites in a ring the error
// holds a *CycleError. Time is bounded by job.Steps.
func Solve(job Job) (Result, error) {
	if err := check(&job); err != nil {
		return Result{}, err
	}
	m, err := newModel(&job)
	if err != nil {
		return Result{}, err
	}
	var result Result
	base := m.baseline(&job)
	best, bound := m.solve(base)
	result.Plan = m.plan(best)
	result.Bound = bound
	result.Proved = bound == best.score
	result.ProvedChanges = bound.Late == best.score.Late && bound.Changes == best.score.Changes
	if len(job.Baseline) > 0 {
		plan := m.plan(base)
		result.Baseline = &plan
	}
	result.Steps = m.steps
	return result, nil
}

// solve finds a run no worse than known, and a bound.
func (m *model) solve(known *run) (*run, Score) {
	t, least := m.tour(m.outset(), true, m.limit)
	if t == nil {
		t = m.beamTour(m.outset(), true)
	} else {
		m.learn(t)
	}
	dawn := m.dawn()
	bound := m.promise(&dawn)
	bound.Changes = max(bound.Changes, least[0])
	var best *run
	if m.people == 1 {
		best = better(m.aloneRuns(t), known)
		if len(m.timed) == 0 {
			bound.Minutes = dawn.work + least[1]
		}
	} else {
		best = better(m.pairRun(t), known)
	}
	if m.people == 1 && len(m.timed) == 0 && m.shift == 0 || best.score == bound {
		return best, bound
	}
	if len(m.ids) <= beamTasks {
		best = better(best, m.beam(min(max(beamWork/len(m.ids), beamLeast), beamMost)))
	}
	if best.score == bound || m.shift > 0 {
		return best, bound
	}
	found, lower := m.seek(best, m.limit)
	if lower.Compare(bound) > 0 {
		bound = lower
	}
	return found, bound
}

// baseline is the run for Job.Baseline, or by ID if there is none. With two
// people each task goes to whom it costs the fewest changes, then to whom can
// begin first.
func (m *model) baseline(job *Job) *run {
	index := make(map[string]int)
	for i, id := range m.ids {
		index[id] = i
	}
	var done set
	var steps []step
	var do func(t int)
	do = func(t int) {
		if done.has(t) {
			return
		}
		for _, p := range m.pre[t] {
			do(p)
		}
		done.add(t)
		steps = append(steps, step{t, 0, -1})
	}
	for _, group := range job.Baseline {
		for _, id := range group {
			do(index[id])
		}
	}
	for t := range m.ids {
		do(t)
	}
	return m.work(m.shareOut(steps))
}

// shareOut gives the steps of a run for one to two people.
func (m *model) shareOut(steps []step) []step {
	if m.people == 1 {
		return steps
	}
	now := m.dawn()
	for i := range steps {
		var best moment
		for _, s := range m.choices(steps[i].task) {
			n := m.take(&now, s)
			if best.depth == 0 || cmp.Or(cmp.Compare(n.score.Changes, best.score.Changes),
				cmp.Compare(n.begun, best.begun)) < 0 {
				best = n
			}
		}
		now = best
		steps[i] = best.step
	}
	return steps
}

func (m *model) choices(t int) []step {
	if m.helper[t] >= 0 {
		return []step{{t, 0, 1}, {t, 1, 0}}
	}
	return []step{{t, 0, -1}, {t, 1, -1}}
}

// plan tells a run as visits.
func (m *model) plan(r *run) Plan {
	p := Plan{Score: r.score}
	open := [2]int{-1, -1} // index of each person's visit in p.Visits
	for i, s := range r.steps {
		m.join(&p, &open, s.who, m.place[s.task], r.arrive[i], m.workOf(r, s.task))
		if s.helper >= 0 {
			m.join(&p, &open, s.helper, m.helper[s.task], r.assist[i], m.workOf(r, s.task))
		}
	}
	slices.SortStableFunc(p.Visits, func(a, b Visit) int {
		return cmp.Or(cmp.Compare(a.Arrive, b.Arrive), cmp.Compare(a.Person, b.Person))
	})
	for _, v := range p.Visits {
		if v.Climb {
			p.Climbs++
		}
	}
	for t, id := range m.ids {
		if by := over(m.ofDay(r.end[t]), m.due[t]); by > 0 {
			p.Broken = append(p.Broken, Broken{id, Clock(r.end[t] - by), Clock(r.end[t]), by})
		}
	}
	return p
}

func (m *model) workOf(r *run, t int) Work {
	return Work{m.ids[t], Clock(r.start[t]), Clock(r.end[t]), m.helper[t] >= 0, m.alone[t]}
}

// join adds work to the visit that a person is at, or to a new one.
func (m *model) join(p *Plan, open *[2]int, who, place, arrive int, w Work) {
	if i := open[who]; i < 0 || p.Visits[i].Place != m.names[place] || m.dayOf(int(w.Start)) > m.dayOf(int(p.Visits[i].Leave)) {
		open[who] = len(p.Visits)
		p.Visits = append(p.Visits, Visit{
			Person: who, Place: m.names[place], Climb: m.climb[place], Arrive: Clock(arrive),
		})
	}
	v := &p.Visits[open[who]]
	v.Work = append(v.Work, w)
	v.Leave = w.End
}
