package tasks

import (
	"slices"

	"topplate/plan"
	"topplate/route"
	"topplate/route/network"
)

// A way is the route of a drop that is run today, divided by who works on it
// from where: arcs before lay are in the closet's wall or ceiling and beyond a
// rod shot there, arcs of lay are laid in the attic, arcs after it are at the
// drop.
type way struct {
	route *route.Route
	drop  *plan.Drop
	d     int // index in Job.Drops
	// lay is the half-open range of arcs that are laid by hand. It is empty and
	// atticless is true where the cable stays inside a wall.
	from, to  int
	atticless bool
	// closetRod and dropRod are arcs that are rod shots, -1 if there is none.
	closetRod, dropRod int
	stretches          []int // that it takes, closet first
}

func newWay(res *route.Result, r *route.Route) way {
	g := res.Graph
	w := way{route: r, drop: &res.Job.Drops[r.Drop], d: r.Drop, closetRod: -1, dropRod: -1}
	first := slices.IndexFunc(r.Arcs, func(a int) bool { return inAttic(g.Arcs[a].Kind) })
	if first < 0 {
		w.atticless, w.from, w.to = true, len(r.Arcs), len(r.Arcs)
		return w
	}
	w.from, w.to = first, len(r.Arcs)
	for w.to > w.from && !inAttic(g.Arcs[r.Arcs[w.to-1]].Kind) {
		w.to--
	}
	for i := first; i < w.to; i++ {
		a := r.Arcs[i]
		if g.Arcs[a].Kind != route.RodArc {
			continue
		}
		if w.atClosetHole(res, i, first) {
			w.closetRod, w.from = a, i+1
		} else {
			w.dropRod, w.to = a, i
		}
	}
	return w
}

// atClosetHole reports whether the rod shot on arc i reaches the closet's hole
// and not the drop's: it comes first in the attic, and after it cables are laid
// by hand or go down a hole that a hand reaches.
func (w *way) atClosetHole(res *route.Result, i, first int) bool {
	if i != first {
		return false
	}
	g := res.Graph
	for _, a := range w.route.Arcs[i+1:] {
		switch k := g.Arcs[a].Kind; {
		case k == route.AlongArc || k == route.BesideArc || k == route.AcrossArc || k == route.RodArc:
			return true
		case g.Arcs[a].Hole >= 0:
			return g.Holes[g.Arcs[a].Hole].FromSpace
		}
	}
	return false
}

// inAttic reports whether an arc of the kind is worked on in the attic.
func inAttic(k route.ArcKind) bool {
	switch k {
	case route.AlongArc, route.BesideArc, route.AcrossArc, route.StepArc, route.RodArc:
		return true
	default:
		return false
	}
}

// heading is that of arc a when it is left from node n.
func heading(g *route.Graph, a, n int) network.Heading {
	if g.Arcs[a].From == n {
		return g.Arcs[a].Heading
	}
	return g.Arcs[a].Heading.Reverse()
}

// A stretch is a way in the attic that the same cables of a lot take.
type stretch struct {
	id    string
	arcs  []int
	ways  []int // indices of the ways that take it
	nodes [2]int
}

// stretchesOf divides what is laid in the attic. A stretch that comes after
// another on some way has the higher number, but where two ways take the same
// two in opposite order.
func stretchesOf(ways []way) []stretch {
	users := map[int][]int{}
	for k := range ways {
		w := &ways[k]
		for _, a := range w.route.Arcs[w.from:w.to] {
			if !slices.Contains(users[a], k) {
				users[a] = append(users[a], k)
			}
		}
	}
	var out []stretch
	of := map[int]int{}
	for k := range ways {
		w := &ways[k]
		open := -1
		for i := w.from; i < w.to; i++ {
			a := w.route.Arcs[i]
			s, known := of[a]
			switch {
			case known:
				open = -1
			case open >= 0 && slices.Equal(out[open].ways, users[a]):
				s = open
			default:
				s = len(out)
				out = append(out, stretch{id: numbered("lay", s+1), ways: users[a], nodes: [2]int{w.route.Nodes[i]}})
				open = s
			}
			if !known {
				of[a] = s
				out[s].arcs = append(out[s].arcs, a)
				out[s].nodes[1] = w.route.Nodes[i+1]
			}
			if !slices.Contains(w.stretches, s) {
				w.stretches = append(w.stretches, s)
			}
		}
	}
	return out
}
