package label

// Place answers the requests, in their order. For n requests on a sheet that
// is not overfull it takes time O(n) and a few microseconds for each; an
// overfull one takes up to maxSteps steps of search more.
func Place(p *Problem) []Placement {
	out := make([]Placement, len(p.Requests))
	for i := range out {
		out[i].ID = p.Requests[i].ID
	}
	if p.Frame.Width() <= 0 || p.Frame.Height() <= 0 {
		return out
	}
	s := newScene(p)
	l := newLayout(s)
	l.greedy()
	l.search()
	l.polish()
	l.greedy() // polish may have made room
	for i, c := range l.at {
		if c != hidden {
			out[i] = l.choices[i][c].placement(out[i].ID)
		}
	}
	newLeading(l, out).lead()
	return out
}

func (c candidate) placement(id string) Placement {
	return Placement{ID: id, Placed: true, Box: c.box, Turned: c.turned}
}
