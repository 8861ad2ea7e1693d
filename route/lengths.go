package route

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
)

// lengthsOf adds up the length of one cable of drop d along the arcs.
//
// The allowance is a percentage of everything before it, rounded up to the
// nanometre; the cut length is the sum rounded up to the job's step.
func lengthsOf(g *Graph, d int, arcs []int) Lengths {
	s := g.Job.Slack
	l := Lengths{Closet: s.Closet, Outlet: s.Outlet, Trim: 2 * s.Trim, Sketch: g.Job.House.SketchError}
	for _, a := range arcs {
		l.Developed += g.Arcs[a].Length
	}
	sum := l.Developed + l.Closet + l.Outlet + l.Trim + l.Sketch
	l.Allowance = (sum*measure.Length(s.Percent) + 99) / 100
	l.Cut = measure.RoundUp(sum+l.Allowance, s.Round)
	return l
}

// legs joins the arcs of a route that go on in one direction and do the same.
func legs(g *Graph, holes []Hole, r *Route) []Leg {
	index := make(map[int]int, len(holes))
	for i := range holes {
		index[holes[i].Place] = i
	}
	var out []Leg
	for i, a := range r.Arcs {
		arc := &g.Arcs[a]
		leg := Leg{
			Kind: arc.Kind, Heading: g.way(a, r.Nodes[i]), Length: arc.Length, Hole: -1,
			From: g.Nodes[r.Nodes[i]].At, To: g.Nodes[r.Nodes[i+1]].At, Zone: arc.Zone, Space: arc.Space,
		}
		switch {
		case arc.Hole >= 0:
			leg.Hole = index[arc.Hole]
		case arc.There != nil:
			leg.There = arc.There.ID
		}
		if k := len(out) - 1; k >= 0 && leg.Hole < 0 && out[k].Hole < 0 && out[k].There == leg.There && out[k].Kind == leg.Kind && out[k].Heading == leg.Heading && out[k].Space == leg.Space {
			out[k].To = leg.To
			out[k].Length += leg.Length
			out[k].Zone = max(out[k].Zone, leg.Zone)
			continue
		}
		if leg.Length > 0 || leg.Hole >= 0 || leg.There != "" {
			out = append(out, leg)
		}
	}
	return out
}

// bundlesOf joins the arcs that the routes use into stretches that carry the
// same cables.
func bundlesOf(g *Graph, routes []Route) []Bundle {
	users := make(map[int][]int)
	for _, r := range routes {
		for _, a := range r.Arcs {
			users[a] = append(users[a], r.Drop)
		}
	}
	var out []Bundle
	done := make(map[int]bool)
	for _, r := range routes {
		var open *Bundle
		for i, a := range r.Arcs {
			arc := &g.Arcs[a]
			if done[a] || arc.Length == 0 {
				open = nil
				continue
			}
			done[a] = true
			to := g.Nodes[r.Nodes[i+1]].At
			if open != nil && open.Kind == arc.Kind && open.Space == arc.Space && open.Beyond == g.leadsInto(arc) && slices.Equal(open.Drops, users[a]) {
				open.Points = append(open.Points, to)
				continue
			}
			b := Bundle{Kind: arc.Kind, Space: arc.Space, Beyond: g.leadsInto(arc), Drops: users[a]}
			b.Points = append(b.Points, g.Nodes[r.Nodes[i]].At, to)
			for _, d := range b.Drops {
				b.Cables += g.Job.Drops[d].Count
			}
			out = append(out, b)
			open = &out[len(out)-1]
		}
	}
	for i := range out {
		out[i].Points = thin(out[i].Points)
	}
	return out
}

// cutTotals adds up the cut lengths by kind of cable.
func cutTotals(r *Result) []CutTotal {
	byID := map[string]*CutTotal{}
	for _, route := range r.Routes {
		if route.Blocked != nil {
			continue
		}
		d := &r.Job.Drops[route.Drop]
		t := byID[d.Cable.ID]
		if t == nil {
			t = &CutTotal{Cable: d.Cable.ID}
			byID[d.Cable.ID] = t
		}
		t.Cables += d.Count
		t.Length += route.Lengths.Cut * measure.Length(d.Count)
	}
	var out []CutTotal
	for _, t := range byID {
		out = append(out, *t)
	}
	slices.SortFunc(out, func(a, b CutTotal) int { return cmp.Compare(a.Cable, b.Cable) })
	return out
}

// leadsInto is the space that an arc between two spaces leads into besides its own, -1
// for other arcs.
func (g *Graph) leadsInto(a *Arc) int {
	if a.Kind != PassArc {
		return -1
	}
	if s := g.Nodes[a.From].Space; s != a.Space {
		return s
	}
	return g.Nodes[a.To].Space
}
