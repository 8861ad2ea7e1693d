package fix

import (
	"topplate/plan"
	"topplate/plan/measure"
	"topplate/route"
)

// An Opening is the opening in a wall's face that a bit goes in through: a
// drop's box, or the closet's.
type Opening struct {
	Drop   int // -1 for the closet
	Wall   int
	At     measure.Length // of its middle, along the wall
	Height measure.Length // of its middle, above the floor
	Side   plan.Side
	Room   int
}

// openingOf finds the opening that a hole in a wall is bored through from
// below: of those that its cables come from, the highest under it, from which
// a bit has the shortest way. It is nil for holes elsewhere.
func (f *fixer) openingOf(place int, p *route.HolePlace) *Opening {
	var best *Opening
	for i := range f.res.Routes {
		r := &f.res.Routes[i]
		for k, a := range r.Arcs {
			if f.res.Graph.Arcs[a].Hole != place {
				continue
			}
			for _, o := range f.openingsBeside(r, k) {
				under := f.floor+o.Height < p.At.Z || p.Kind == route.StudArc
				if under && (best == nil || o.Height > best.Height || o.Height == best.Height && o.Drop < best.Drop) {
					best = &o
				}
			}
		}
	}
	return best
}

// openingsBeside are the openings that a route comes to, next before and next
// after its arc k, in the wall that the arc is in.
func (f *fixer) openingsBeside(r *route.Route, k int) []Opening {
	var out []Opening
	g := f.res.Graph
	wall := g.Holes[g.Arcs[r.Arcs[k]].Hole].Wall
	for n := k; n >= 0; n-- {
		node := &g.Nodes[r.Nodes[n]]
		if node.Wall != wall {
			break
		}
		if node.Kind == route.BoxNode {
			// The bay may be beside the middle of the opening.
			o := f.opening(-1, &f.job.Closet.Spot, node)
			o.At = f.job.Closet.Spot.At
			out = append(out, o)
		}
	}
	for n := k + 1; n < len(r.Nodes); n++ {
		node := &g.Nodes[r.Nodes[n]]
		if node.Wall != wall {
			break
		}
		if node.Kind == route.BoxNode {
			out = append(out, f.opening(r.Drop, &f.job.Drops[r.Drop].Spot, node))
		}
	}
	return out
}

func (f *fixer) opening(drop int, spot *plan.Spot, n *route.Node) Opening {
	return Opening{
		Drop: drop, Wall: spot.Wall, At: f.house.Walls[spot.Wall].Along(flat(n.At)), Height: n.At.Z - f.floor,
		Side: spot.Side, Room: spot.Room,
	}
}

// openingName names an opening: "the box of D1", "the middle of the closet's opening".
func (f *fixer) openingName(o *Opening) string {
	if o.Drop < 0 {
		return "the middle of the closet's opening"
	}
	return "the box of " + f.job.Drops[o.Drop].Tag
}
