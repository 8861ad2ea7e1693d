package tasks

import (
	"fmt"
	"slices"
	"strings"

	"topplate/route"
	"topplate/route/order"
)

// A budget bounds the search (see package order).
type budget struct {
	lot, drop int // steps for each lot, and for each drop of the baseline
	drops     int // most drops in a lot, which has about 15 tasks for each
}

var usual = budget{lot: 60_000, drop: 5_000, drops: 24}

// Order finds the order of work of a solved job, from its crew, date and
// place. Drops for later and drops without a route are deferred. It fails only
// where package order finds fault with the tasks, which no loaded job makes
// happen. Time is bounded by the steps of the search, for each lot.
func Order(res *route.Result) (*Work, error) { return within(res, usual) }

func within(res *route.Result, b budget) (*Work, error) {
	s := newSite(res)
	today := s.today()
	w := &Work{People: s.people, Days: 1, Start: order.Clock(s.job.Crew.Start), End: order.Clock(s.job.Crew.Start)}
	w.Deferred = s.deferred(today)
	if len(today) == 0 {
		return w, nil
	}
	clock := s.clock(today, w)
	parts := s.lotsOf(today, b.drops)
	day, err := s.work(parts, clock, b.lot)
	if err == nil && int(day.end-clock.start) > s.job.Crew.OneDay {
		s.spread(&clock, w, int(day.end-clock.start))
		day, err = s.work(parts, clock, b.lot)
	}
	if err != nil {
		return nil, err
	}
	w.Lots, w.Tasks, w.Visits, w.Figures = len(parts), day.tasks, s.visits(day), day.figures(w.Start)
	w.End, w.Days = day.end, day.end.Day()
	w.Proved, w.ProvedChanges = day.proved, day.provedChanges
	slow, err := s.work(s.lotsOf(today, 1), clock, b.drop)
	if err != nil {
		return nil, err
	}
	w.Baseline = slow.figures(w.Start)
	s.noteBroken(w, day)
	s.noteLongDay(w)
	return w, nil
}

// today lists the ways of the drops that are run, in the order of tags.
func (s *site) today() []way {
	var out []way
	for i := range s.res.Routes {
		if r := &s.res.Routes[i]; r.Blocked == nil && !s.job.Drops[r.Drop].Later {
			out = append(out, s.newWay(r))
		}
	}
	return out
}

// visits are the stays as they are printed.
func (s *site) visits(d *day) []Visit {
	var out []Visit
	for i := range d.stays {
		o := &d.stays[i]
		v := Visit{
			Number: i + 1, Person: o.Person + 1, Place: s.titles[o.Place], Climb: o.Climb, Arrive: o.Arrive, Leave: o.Leave,
		}
		together := false
		for j, work := range o.Work {
			t := o.tasks[j]
			step := Step{
				Number: fmt.Sprintf("%d.%d", v.Number, j+1), Task: t, Words: t.Words, Start: work.Start, End: work.End,
				Together: work.Together, Helps: work.Together && o.Place != t.Place,
			}
			if step.Helps {
				step.Words = t.HelperWords
			}
			step.Words += partWords(work.ID)
			together = together || work.Together
			v.Steps = append(v.Steps, step)
		}
		v.Carry = load(&v, together)
		out = append(out, v)
	}
	slices.SortFunc(d.tasks, func(a, b *Task) int { return strings.Compare(a.ID, b.ID) })
	return out
}
