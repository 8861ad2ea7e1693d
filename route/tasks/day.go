package tasks

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"topplate/route"
	"topplate/route/order"
)

// lotsOf divides ways into lots of about equal size, none of more than most,
// those of one place together; one each if most is 1, in the order of tags.
func (s *site) lotsOf(today []way, most int) [][]way {
	ways := slices.Clone(today)
	n := (len(ways) + most - 1) / most
	if most > 1 && n > 1 {
		slices.SortStableFunc(ways, func(a, b way) int { return strings.Compare(s.placeOf(a.drop), s.placeOf(b.drop)) })
	}
	var out [][]way
	for i := range n {
		part := slices.Clone(ways[i*len(ways)/n : (i+1)*len(ways)/n])
		slices.SortStableFunc(part, func(a, b way) int { return s.rank(a.d) - s.rank(b.d) })
		out = append(out, part)
	}
	return out
}

// rank is the place of a drop in the order of tags.
func (s *site) rank(d int) int {
	return slices.IndexFunc(s.res.Routes, func(r route.Route) bool { return r.Drop == d })
}

// A stay is a visit of package order with its tasks.
type stay struct {
	order.Visit
	tasks []*Task
}

// A day is lots worked one after the other, over several days if clock.shift is
// set.
type day struct {
	stays                 []stay
	tasks                 []*Task
	broken                []order.Broken
	end                   order.Clock
	shift                 *order.Shift
	proved, provedChanges bool
}

// work orders each lot and puts them one after the other.
func (s *site) work(parts [][]way, c clock, steps int) (*day, error) {
	d := &day{end: c.start, shift: c.shift, proved: true, provedChanges: true}
	bored := map[int]bool{}
	for i, part := range parts {
		l := lot{site: *s, ways: slices.Clone(part), first: i == 0, bored: bored, kept: s.usedBy(parts[i+1:])}
		for k := range l.ways {
			l.ways[k].items = nil
		}
		list := l.tasksOf()
		if len(parts) > 1 {
			rename(list, fmt.Sprintf("%d/", i+1))
		}
		res, err := order.Solve(s.orderJob(list, c, d, steps))
		if err != nil {
			return nil, fmt.Errorf("tasks: %w", err)
		}
		d.append(&res, list)
		for _, o := range l.holes {
			bored[o.h] = true
		}
	}
	slices.SortStableFunc(d.stays, func(a, b stay) int {
		return cmp.Or(cmp.Compare(a.Arrive, b.Arrive), cmp.Compare(a.Person, b.Person))
	})
	return d, nil
}

// rename puts a lot's number before the IDs of its tasks.
func rename(list []*Task, prefix string) {
	for _, t := range list {
		t.ID = prefix + t.ID
		for i := range t.Needs {
			t.Needs[i] = prefix + t.Needs[i]
		}
	}
}

// usedBy are the holes that some lots go through.
func (s *site) usedBy(parts [][]way) map[int]bool {
	out := map[int]bool{}
	for _, part := range parts {
		for i := range part {
			for _, a := range part[i].route.Arcs {
				if hole := s.graph.Arcs[a].Hole; hole >= 0 {
					out[s.holeAt[hole]] = true
				}
			}
		}
	}
	return out
}

// van is where people come from.
const van = "van"

// orderJob is a lot as package order takes it, from where the lot before it
// ended.
func (s *site) orderJob(list []*Task, c clock, before *day, steps int) order.Job {
	job := order.Job{People: s.people, Start: before.end, Shift: c.shift, From: van, AlonePercent: 100, Steps: steps}
	used := map[string]bool{}
	for _, t := range list {
		used[t.Place] = true
		used[t.Helper] = true
		job.Tasks = append(job.Tasks, c.parts(t)...)
	}
	for _, key := range slices.Sorted(maps.Keys(s.titles)) {
		if p := s.titles[key]; used[key] {
			climb := p.Kind == Attic || p.Kind == Crawl
			job.Places = append(job.Places, order.Place{Name: key, Climb: climb, Arrive: arrival(p)})
		}
	}
	for i := len(before.stays) - 1; i >= 0; i-- {
		if v := &before.stays[i]; v.Person == 0 {
			job.From = v.Place
			break
		}
	}
	job.Ways = s.stairsBetween(&job)
	return job
}

// append adds the plan of a lot. A visit that goes on where the person's last
// one ended is one with it.
func (d *day) append(res *order.Result, list []*Task) {
	index := map[string]*Task{}
	for _, t := range list {
		index[t.ID] = t
	}
	d.tasks = append(d.tasks, list...)
	d.broken = append(d.broken, res.Broken...)
	d.proved = d.proved && res.Proved
	d.provedChanges = d.provedChanges && res.ProvedChanges
	d.end += order.Clock(res.Minutes)
	last := [2]int{-1, -1}
	for i := range d.stays {
		last[d.stays[i].Person] = i
	}
	for _, v := range res.Visits {
		var tasks []*Task
		for _, w := range v.Work {
			tasks = append(tasks, index[whole(w.ID)])
		}
		if i := last[v.Person]; i >= 0 && d.stays[i].Place == v.Place && d.stays[i].Leave.Day() == v.Arrive.Day() {
			o := &d.stays[i]
			o.Work, o.tasks, o.Leave = append(o.Work, v.Work...), append(o.tasks, tasks...), v.Leave
		} else {
			d.stays = append(d.stays, stay{v, tasks})
		}
		last[v.Person] = -1 // only the first visit of a lot goes on
		if i := len(d.stays) - 1; d.stays[i].Person == v.Person {
			last[v.Person] = i
		}
	}
}

// minutes are those from the start of each day to the end of its last task.
func (d *day) minutes(start order.Clock) int {
	if d.shift == nil {
		return int(d.end - start)
	}
	ends := map[int]order.Clock{}
	for i := range d.stays {
		leave := d.stays[i].Leave
		day := int(leave-start) / dayMinutes
		ends[day] = max(ends[day], leave-start-order.Clock(day*dayMinutes))
	}
	sum := 0
	for _, end := range ends {
		sum += int(end)
	}
	return sum
}

// figures are what a day comes to.
func (d *day) figures(start order.Clock) Figures {
	f := Figures{Minutes: d.minutes(start)}
	seen := [2]string{}
	for i := range d.stays {
		v := &d.stays[i]
		if v.Climb {
			f.Climbs++
		}
		if at := seen[v.Person]; at != "" && at != v.Place {
			f.Changes++
		}
		seen[v.Person] = v.Place
	}
	for _, b := range d.broken {
		f.Late += b.Minutes
	}
	return f
}
