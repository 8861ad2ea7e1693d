package route

import (
	"cmp"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// A There is a hole that is there already.
type There struct {
	ID  string // as the files call it
	Pos diag.Pos
	HolePlace
	Diameter measure.Length
	Cables   int // in it already
}

// A Reuse is a hole or conduit that is there already and that routes go
// through: nothing is bored for them.
type Reuse struct {
	ID      string // as the files call it
	Pos     diag.Pos
	Conduit bool
	// HolePlace is where a hole is. Of one in a plate At is where it comes out; a
	// conduit has that, its Wall, Along and Space alone.
	HolePlace
	Inside measure.Length
	Before int // cables that are in a hole already
	Drops  []int
	Cables int
}

// What says what kind of thing it is: "conduit", "hole, top plate".
func (u *Reuse) What() string {
	if u.Conduit {
		return "conduit"
	}
	return "hole, " + u.Kind.String()
}

// reuses lists what is there and used, by where it is.
func (r *Result) reuses() []Reuse {
	g := r.Graph
	byID := map[string]*Reuse{}
	for i := range r.Routes {
		for _, a := range r.Routes[i].Arcs {
			arc := &g.Arcs[a]
			id := arc.id()
			if id == "" {
				continue
			}
			u := byID[id]
			if u == nil {
				u = g.reuse(arc)
				byID[id] = u
			}
			u.Drops = append(u.Drops, r.Routes[i].Drop)
			u.Cables += g.Job.Drops[r.Routes[i].Drop].Count
		}
	}
	var out []Reuse
	for _, u := range byID {
		out = append(out, *u)
	}
	slices.SortFunc(out, func(a, b Reuse) int {
		return cmp.Or(cmp.Compare(b.At.Y, a.At.Y), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.ID, b.ID))
	})
	return out
}

func (g *Graph) reuse(arc *Arc) *Reuse {
	if t := arc.There; t != nil {
		return &Reuse{ID: t.ID, Pos: t.Pos, HolePlace: t.HolePlace, Inside: t.Diameter, Before: t.Cables}
	}
	at := g.Nodes[arc.From].At
	if to := &g.Nodes[arc.To]; to.Kind == LowNode {
		at = to.At
	}
	c := arc.Through
	return &Reuse{ID: c.ID, Pos: c.Pos, Conduit: true, HolePlace: HolePlace{Wall: c.Wall, Along: c.At, At: at, Room: -1, Space: arc.Space}, Inside: c.Inside}
}

// id tells what is there and the arc goes through, empty if nothing is.
func (a *Arc) id() string {
	switch {
	case a.There != nil:
		return a.There.ID
	case a.Through != nil:
		return "conduit " + a.Through.ID
	}
	return ""
}
