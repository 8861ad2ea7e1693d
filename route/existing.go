package route

import (
	"cmp"
	"slices"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Reuse is a hole or conduit that is there already and that routes go
// through: nothing is bored for them.
type Reuse struct {
	ID      string // as the files call it
	Pos     diag.Pos
	Conduit bool
	Wall    int
	Along   measure.Length // along the wall
	At      geom.Point3    // where it comes out, in the attic
	Inside  measure.Length
	Drops   []int
	Cables  int
}

// reuses lists what is there and used, by where it is.
func (r *Result) reuses() []Reuse {
	g := r.Graph
	byArc := map[int]*Reuse{}
	for i := range r.Routes {
		for _, a := range r.Routes[i].Arcs {
			arc := &g.Arcs[a]
			if arc.Through == nil && arc.There == nil {
				continue
			}
			u := byArc[a]
			if u == nil {
				u = g.reuse(arc)
				byArc[a] = u
			}
			u.Drops = append(u.Drops, r.Routes[i].Drop)
			u.Cables += g.Job.Drops[r.Routes[i].Drop].Count
		}
	}
	var out []Reuse
	for _, u := range byArc {
		out = append(out, *u)
	}
	slices.SortFunc(out, func(a, b Reuse) int {
		return cmp.Or(cmp.Compare(b.At.Y, a.At.Y), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.ID, b.ID))
	})
	return out
}

func (g *Graph) reuse(arc *Arc) *Reuse {
	at := g.Nodes[arc.From].At
	if to := g.Nodes[arc.To].At; to.Z > at.Z {
		at = to
	}
	if c := arc.Through; c != nil {
		return &Reuse{ID: c.ID, Pos: c.Pos, Conduit: true, Wall: c.Wall, Along: c.At, Inside: c.Inside, At: at}
	}
	f := arc.There
	return &Reuse{ID: f.ID, Pos: f.Pos, Wall: f.Wall, Along: f.At, Inside: f.Diameter, At: at}
}

// existing is the hole of a job's fixed parts with this id; the graph's own
// copies of them are in another order.
func existing(job *plan.Job, id string) *plan.Fixed {
	i := slices.IndexFunc(job.Fixed, func(f plan.Fixed) bool { return f.ID == id })
	return &job.Fixed[i]
}
