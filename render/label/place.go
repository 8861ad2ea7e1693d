package label

import (
	"cmp"
	"slices"

	"topplate/render/sheet"
)

// Place answers the requests, in their order. For n requests on a sheet that
// is not overfull it takes time O(n) and a few microseconds for each; an
// overfull one takes the whole effort of the search more.
func Place(p *Problem) []Placement {
	out := make([]Placement, len(p.Requests))
	for i := range out {
		out[i].ID = p.Requests[i].ID
	}
	if p.Frame.Width() <= 0 || p.Frame.Height() <= 0 {
		return out
	}
	l := newLayout(newScene(p))
	l.greedy()
	if !l.mayLead() {
		l.search(thorough)
	} else {
		l.search(quick)
		l.allowLeaders()
		l.greedy()
		l.search(led)
	}
	l.polish()
	l.greedy() // polish may have made room
	for i, c := range l.at {
		if c != hidden {
			out[i] = l.choices[i][c].placement(out[i].ID)
		}
	}
	return out
}

func (c candidate) placement(id string) Placement {
	p := Placement{ID: id, Placed: true, Box: c.box, Turned: c.turned}
	if c.way != nil {
		p.Leader = []sheet.Point{c.way.from, c.way.to}
	}
	return p
}

// crowd is how many of the nearest neighbours of a text that needs a leader
// may move away on leaders too, to make room for it.
const crowd = 16

// mayLead reports whether a hidden request may move away on a leader.
func (l *layout) mayLead() bool {
	return slices.ContainsFunc(l.hiddenOnes(), func(i int) bool { return l.Requests[i].Leader })
}

// hiddenOnes lists the requests that have no place, with or without
// candidates.
func (l *layout) hiddenOnes() []int {
	var all []int
	for i, c := range l.at {
		if c == hidden {
			all = append(all, i)
		}
	}
	return all
}

// allowLeaders adds places on leaders to the choice of the hidden requests
// that may have them, and of those near them.
func (l *layout) allowLeaders() {
	for _, i := range l.hiddenOnes() {
		if l.Requests[i].Leader {
			for _, j := range l.neighbours(i) {
				l.addLed(j)
			}
		}
	}
}

// neighbours lists i and the requests that may have leaders and whose things
// are the nearest to that of i.
func (l *layout) neighbours(i int) []int {
	from := l.Requests[i].target()
	distance := make([]sheet.Paper, len(l.Requests))
	var all []int
	for j := range l.Requests {
		d := l.Requests[j].target().Sub(from)
		distance[j] = d.X*d.X + d.Y*d.Y
		if l.Requests[j].Leader {
			all = append(all, j)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(distance[a], distance[b]) })
	return all[:min(len(all), crowd+1)]
}

// addLed adds the places on leaders to the choices of i, once.
func (l *layout) addLed(i int) {
	if l.hasLed[i] {
		return
	}
	l.hasLed[i] = true
	before := len(l.choices[i])
	l.choices[i] = append(l.choices[i], l.ledCandidates(&l.Requests[i])...)
	if before == 0 && len(l.choices[i]) > 0 {
		l.hide(i)
	}
}
