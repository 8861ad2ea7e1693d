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
	z      measure.Length // of its middle, over the house's zero
}

// openingOf finds the opening that a hole in a wall is bored through: of those
// that its cables come from or pass in its bay, the highest under it, from which a bit has the
// shortest way, or, for one in the bottom plate and a block that no opening is
// under, the lowest over it. It is nil for holes elsewhere.
func (f *fixer) openingOf(place int, p *route.HolePlace) *Opening {
	var best *Opening
	for i := range f.res.Routes {
		r := &f.res.Routes[i]
		for k, a := range r.Arcs {
			if f.res.Graph.Arcs[a].Hole != place {
				continue
			}
			for _, o := range f.openingsBeside(r, k) {
				if best == nil || o.before(best, p) {
					best = &o
				}
			}
		}
	}
	if best != nil && best.z >= p.At.Z && p.Kind == route.PlateArc {
		return nil
	}
	return best
}

// before reports whether a bit goes rather in through o than through q: from
// under the place before from over it, and from nearer by.
func (o *Opening) before(q *Opening, p *route.HolePlace) bool {
	if p.Kind != route.StudArc && (o.z < p.At.Z) != (q.z < p.At.Z) {
		return o.z < p.At.Z
	}
	if o.z == q.z {
		return o.Drop < q.Drop
	}
	return (o.z > q.z) == (p.Kind == route.StudArc || o.z < p.At.Z)
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
		out = append(out, f.openingsAt(r.Nodes[n])...)
		if node.Kind != route.BoxNode {
			continue
		}
		if d := f.boxOf(r.Nodes[n]); d >= 0 {
			out = append(out, f.opening(d, &f.job.Drops[d].Spot, node))
			continue
		}
		// The bay may be beside the middle of the opening.
		o := f.opening(-1, &f.job.Closet.Spot, node)
		o.At = f.job.Closet.Spot.At
		out = append(out, o)
	}
	for n := k + 1; n < len(r.Nodes); n++ {
		node := &g.Nodes[r.Nodes[n]]
		if node.Wall != wall {
			break
		}
		out = append(out, f.openingsAt(r.Nodes[n])...)
		if d := f.boxOf(r.Nodes[n]); d >= 0 {
			out = append(out, f.opening(d, &f.job.Drops[d].Spot, node))
		}
	}
	return out
}

// openingsAt are the openings of boxes, cut today, that a node in a bay is beside:
// cables of other drops pass them.
func (f *fixer) openingsAt(node int) []Opening {
	if f.boxes == nil {
		f.findBoxes()
	}
	var out []Opening
	for _, box := range f.boxes[node] {
		if d := f.boxOf(box); !f.job.Drops[d].Later {
			out = append(out, f.opening(d, &f.job.Drops[d].Spot, &f.res.Graph.Nodes[box]))
		}
	}
	return out
}

// findBoxes notes the boxes of drops beside the nodes of their bays.
func (f *fixer) findBoxes() {
	f.boxes = map[int][]int{}
	for i := range f.res.Graph.Arcs {
		a := &f.res.Graph.Arcs[i]
		for _, ends := range [2][2]int{{a.From, a.To}, {a.To, a.From}} {
			if a.Kind == route.SlantArc && f.boxOf(ends[0]) >= 0 {
				f.boxes[ends[1]] = append(f.boxes[ends[1]], ends[0])
			}
		}
	}
}

// boxOf is the drop whose box is at a node, -1 if there is none: the last box on
// its way. Others' cables may come through it.
func (f *fixer) boxOf(node int) int {
	for i := range f.res.Routes {
		r := &f.res.Routes[i]
		if f.job.Drops[r.Drop].Kind != plan.WallPlate {
			continue
		}
		for n := len(r.Nodes) - 1; n >= 0; n-- {
			if f.res.Graph.Nodes[r.Nodes[n]].Kind != route.BoxNode {
				continue
			}
			if r.Nodes[n] == node {
				return r.Drop
			}
			break
		}
	}
	return -1
}

func (f *fixer) opening(drop int, spot *plan.Spot, n *route.Node) Opening {
	return Opening{
		Drop: drop, Wall: spot.Wall, At: f.house.Walls[spot.Wall].Along(flat(n.At)), Height: n.At.Z - f.floor(f.house.Walls[spot.Wall].Level),
		z: n.At.Z, Side: spot.Side, Room: spot.Room,
	}
}

// openingName names an opening: "the box of D1", "the middle of the closet's opening".
func (f *fixer) openingName(o *Opening) string {
	if o.Drop < 0 {
		return "the middle of the closet's opening"
	}
	return "the box of " + f.job.Drops[o.Drop].Tag
}
