package order

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// A CycleError names tasks that need each other in a ring, each needing the
// next and the last the first. The first has the smallest ID.
type CycleError struct{ IDs []string }

func (e *CycleError) Error() string {
	return fmt.Sprintf("order: these tasks need each other in a ring: %s, %s", strings.Join(e.IDs, ", "), e.IDs[0])
}

// check gives everything that is wrong with job, except rings.
func check(job *Job) error {
	var all []error
	say := func(format string, args ...any) { all = append(all, fmt.Errorf("order: "+format, args...)) }
	if job.People != 1 && job.People != 2 {
		say("people is %d, allowed are 1 and 2", job.People)
	}
	checkStart(job, say)
	if job.Steps < 0 {
		say("steps is %d, it can't be negative", job.Steps)
	}
	if len(job.Tasks) > MaxTasks {
		say("%d tasks, at most %d are planned at once", len(job.Tasks), MaxTasks)
	}
	places := checkPlaces(job, say)
	checkTasks(job, places, say)
	checkBaseline(job, say)
	return errors.Join(all...)
}

func checkStart(job *Job, say func(string, ...any)) {
	s := job.Shift
	if s == nil {
		if job.Start < 0 || job.Start > MaxMinutes {
			say("start is minute %d, allowed are 0 to %d", int(job.Start), MaxMinutes)
		}
		return
	}
	if s.Start < 0 || s.Start >= dayMinutes {
		say("the shift starts at minute %d, allowed are 0 to %d", int(s.Start), dayMinutes-1)
	}
	if s.Minutes < 1 || s.Minutes > dayMinutes {
		say("the shift is %d minutes long, allowed are 1 to %d", s.Minutes, dayMinutes)
	}
	if job.Start < s.Start || job.Start > MaxStart {
		say("start is minute %d, allowed are %d to %d", int(job.Start), int(s.Start), MaxStart)
	}
}

func checkPlaces(job *Job, say func(string, ...any)) map[string]bool {
	known := make(map[string]bool)
	if len(job.Places) > MaxPlaces {
		say("%d places, at most %d are allowed", len(job.Places), MaxPlaces)
	}
	for _, p := range job.Places {
		if known[p.Name] {
			say("place %q is given twice", p.Name)
		}
		known[p.Name] = true
		if p.Arrive < 0 || p.Arrive > MaxMinutes {
			say("place %q: %d minutes to arrive, allowed are 0 to %d", p.Name, p.Arrive, MaxMinutes)
		}
	}
	seen := make(map[[2]string]bool)
	for _, w := range job.Ways {
		if !known[w.To] || !known[w.From] && w.From != job.From && (job.Shift == nil || w.From != job.Shift.From) {
			say("way from %q to %q: no such place", w.From, w.To)
		}
		if seen[[2]string{w.From, w.To}] {
			say("way from %q to %q is given twice", w.From, w.To)
		}
		seen[[2]string{w.From, w.To}] = true
		if w.Minutes < 0 || w.Minutes > MaxMinutes {
			say("way from %q to %q: %d minutes, allowed are 0 to %d", w.From, w.To, w.Minutes, MaxMinutes)
		}
	}
	return known
}

func checkTasks(job *Job, places map[string]bool, say func(string, ...any)) {
	known := make(map[string]bool)
	for _, t := range job.Tasks {
		if known[t.ID] {
			say("task %q is given twice", t.ID)
		}
		known[t.ID] = true
	}
	for _, t := range job.Tasks {
		if !places[t.Place] {
			say("task %q: no place %q", t.ID, t.Place)
		}
		if t.Helper != "" && (t.Hands != 2 || !places[t.Helper]) {
			say("task %q: helper at %q, which takes two hands and a known place", t.ID, t.Helper)
		}
		if t.Hands != 1 && t.Hands != 2 {
			say("task %q: hands is %d, allowed are 1 and 2", t.ID, t.Hands)
		}
		if t.Minutes < 0 || t.Minutes > MaxMinutes {
			say("task %q: %d minutes, allowed are 0 to %d", t.ID, t.Minutes, MaxMinutes)
		}
		if t.NotAfter < 0 || t.PreferBefore < 0 {
			say("task %q: a clock limit can't be negative", t.ID)
		}
		if t.Hands == 2 && job.People == 1 && (job.AlonePercent < 100 || job.AlonePercent > 1000) {
			say("task %q is for two hands and there is one person: alone percent is %d, allowed are 100 to 1000",
				t.ID, job.AlonePercent)
		}
		for _, n := range t.Needs {
			if !known[n] {
				say("task %q needs %q, which is no task", t.ID, n)
			}
		}
	}
}

func checkBaseline(job *Job, say func(string, ...any)) {
	known, seen := make(map[string]bool), make(map[string]bool)
	for _, t := range job.Tasks {
		known[t.ID] = true
	}
	for _, group := range job.Baseline {
		for _, id := range group {
			switch {
			case !known[id]:
				say("the baseline has %q, which is no task", id)
			case seen[id]:
				say("the baseline has %q twice", id)
			}
			seen[id] = true
		}
	}
}

// ring finds tasks that need each other, given those that no order reaches.
// Every one of them needs another of them, so following needs must come back.
func (m *model) ring(stuck []int) *CycleError {
	at := stuck[0]
	var path []int
	for !slices.Contains(path, at) {
		path = append(path, at)
		for _, p := range m.pre[at] {
			if slices.Contains(stuck, p) {
				at = p
				break
			}
		}
	}
	path = path[slices.Index(path, at):]
	first := slices.Index(path, slices.Min(path))
	var ids []string
	for i := range path {
		ids = append(ids, m.ids[path[(first+i)%len(path)]])
	}
	return &CycleError{ids}
}
