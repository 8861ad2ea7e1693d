package tasks

import (
	"fmt"

	"topplate/plan"
	"topplate/route"
)

// deferred tells what is not run today.
func (s *site) deferred(today []way) []string {
	var out []string
	running := map[int]bool{}
	for i := range today {
		for _, a := range today[i].route.Arcs {
			running[s.graph.Arcs[a].Hole] = true
		}
	}
	for i := range s.res.Routes {
		r := &s.res.Routes[i]
		d := &s.job.Drops[r.Drop]
		switch {
		case r.Blocked != nil:
			out = append(out, fmt.Sprintf("%s has no route yet: see the findings.", d.Tag))
		case d.Later:
			out = append(out, s.laterText(d, r, running))
		}
	}
	for i := range s.res.Holes {
		h := &s.res.Holes[i]
		if k := s.graph.Holes[h.Place].Kind; (k == route.StudArc || k == route.JoistArc) && running[h.Place] {
			out = append(out, fmt.Sprintf("The patch at %s: sand and paint when it is dry.", h.ID))
		}
	}
	return out
}

// laterText tells of a drop for later what waits with it.
func (s *site) laterText(d *plan.Drop, r *route.Route, running map[int]bool) string {
	var wait, shared []string
	for _, a := range r.Arcs {
		place := s.graph.Arcs[a].Hole
		if place < 0 {
			continue
		}
		id := s.res.Holes[s.holeAt[place]].ID
		if running[place] {
			shared = append(shared, id)
		} else {
			wait = append(wait, id)
		}
	}
	text := fmt.Sprintf("%s (%d × %s) is for another day, with its opening", d.Tag, d.Count, d.Cable.ID)
	if len(wait) > 0 {
		text += " and " + listed(wait)
	}
	if len(shared) > 0 {
		text += fmt.Sprintf("; %s made today with room for it", isAre(shared))
	}
	return text + "."
}

func isAre(names []string) string {
	if len(names) == 1 {
		return names[0] + " is"
	}
	return listed(names) + " are"
}
