package tasks

import (
	"slices"

	"topplate/plan"
	"topplate/route"
	"topplate/route/network"
)

// A way is the route of a drop that is run today, divided by who works on it
// from where: passages, between which cable is laid by hand.
type way struct {
	route *route.Route
	drop  *plan.Drop
	d     int // index in Job.Drops
	// passages are one or more, closet first. There is only one where no hand
	// gets at the cable between the closet and the drop.
	passages []passage
	// items are what brings its cables from the first passage to the last.
	items []item
}

// A passage is a part of a way where no hand gets at the cable: inside a wall,
// through a floor, on a rod. It is fed in at one end and drawn out at the other.
type passage struct {
	from, to int       // half-open range of Route.Arcs
	ends     [2]string // the places at its ends, the closet's side first
	up       bool      // the drop's side is higher
}

// An item is a stretch, or a pass through the passage with that index.
type item struct {
	stretch int // index in lot.stretches, -1 if it is a pass
	pass    int // index in lot.passes, -1 if it is a stretch
	passage int // of a pass: index in way.passages
}

// newWay divides a route at every node at which a hand gets at the cable.
func (s *site) newWay(r *route.Route) way {
	w := way{route: r, drop: &s.job.Drops[r.Drop], d: r.Drop}
	open := 0 // where the passage begins that goes on, -1 if none does
	end := func(i int) {
		if open >= 0 {
			w.passages = append(w.passages, s.passage(&w, open, i))
		}
		open = -1
	}
	for i, a := range r.Arcs {
		byHand := laidByHand(s.graph.Arcs[a].Kind)
		switch {
		case byHand:
			end(i)
		case open < 0:
			open = i
		}
		if !byHand && i+1 < len(r.Arcs) && s.inReach(r.Nodes[i+1]) {
			end(i + 1)
			open = i + 1
			if laidByHand(s.graph.Arcs[r.Arcs[i+1]].Kind) {
				open = -1
			}
		}
	}
	if open < 0 {
		open = len(r.Arcs)
	}
	end(len(r.Arcs))
	return w
}

// passage is the part of a way from one of its nodes to another.
func (s *site) passage(w *way, from, to int) passage {
	p := passage{from: from, to: to, ends: [2]string{closet, s.placeOf(w.drop)}}
	a, b := w.route.Nodes[from], w.route.Nodes[to]
	if from > 0 {
		p.ends[0] = s.placeAt(a, w.route.Arcs[from-1])
	}
	if to < len(w.route.Arcs) {
		p.ends[1] = s.placeAt(b, w.route.Arcs[to])
	}
	p.up = s.graph.Nodes[b].At.Z > s.graph.Nodes[a].At.Z
	return p
}

// inReach reports whether a hand gets at a node of a framing space.
func (s *site) inReach(node int) bool {
	n := &s.graph.Nodes[node]
	return n.Space >= 0 && s.graph.Reaches[n.Space].ZoneOver(flat(n.At)) <= route.Arm
}

// inside reports whether no hand gets at the cable between the closet and the
// drop.
func (w *way) inside() bool { return len(w.passages) == 1 }

// last is the passage to the drop.
func (w *way) last() *passage { return &w.passages[len(w.passages)-1] }

// passageAt is the index of the passage that arc i of a way is in, -1 if it is
// laid by hand.
func (w *way) passageAt(i int) int {
	return slices.IndexFunc(w.passages, func(p passage) bool { return p.from <= i && i < p.to })
}

// closetSide reports whether passage p is the one into the closet, and not to
// the drop as well.
func (w *way) closetSide(p int) bool { return p == 0 && !w.inside() }

// rods are the rod shots in a passage of a way.
func (s *site) rods(w *way, p *passage) []int {
	var out []int
	for _, a := range w.route.Arcs[p.from:p.to] {
		if s.graph.Arcs[a].Kind == route.RodArc {
			out = append(out, a)
		}
	}
	return out
}

// dropRod is the first rod shot on the drop's side, -1 if there is none.
func (s *site) dropRod(w *way) int {
	if rods := s.rods(w, w.last()); len(rods) > 0 {
		return rods[0]
	}
	return -1
}

// laidByHand reports whether cable is laid along an arc of the kind.
func laidByHand(k route.ArcKind) bool {
	switch k {
	case route.AlongArc, route.BesideArc, route.AcrossArc, route.StepArc, route.FaceArc, route.RacewayArc, route.OutsideArc,
		route.InSoffitArc:
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
