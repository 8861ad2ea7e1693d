package route

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/rule"
)

// neededOn lists the rules on the way of a drop, and a box where one is needed.
func (g *Graph) neededOn(d int, nodes, arcs []int32, known map[spot]bool) []Block {
	blocks := g.blocksOn(arcs)
	if n := g.unopened(nodes, known); n >= 0 {
		blocks = append(blocks, g.openThere(d, n))
	}
	return blocks
}

// A spot is what a place in a wall is known by on two graphs of one job.
type spot struct {
	kind NodeKind
	at   geom.Point3
	wall int
}

func spotsOf(g *Graph) map[spot]bool {
	out := map[spot]bool{}
	for _, n := range g.Nodes {
		if n.Wall >= 0 {
			out[spot{n.Kind, n.At, n.Wall}] = true
		}
	}
	return out
}

// unopened is the first place of a way, plates before bays, in the bay of a wall
// that only another box would open, and no box is there; -1 if there is none. known
// are the places of the graph that is routed on; those at both ends of the way, in
// the walls of the closet and of the drop, don't count.
func (g *Graph) unopened(way []int32, known map[spot]bool) int {
	way = way[:len(way)-1] // the last stands for the wished place
	wall := func(i int) int { return g.Nodes[way[i]].Wall }
	lo, hi := 0, len(way)
	for first := wall(0); lo < hi && wall(lo) == first; {
		lo++
	}
	for last := wall(hi - 1); lo < hi && wall(hi-1) == last; {
		hi--
	}
	way = way[lo:hi]
	found := -1
	for _, i := range way {
		n := g.Nodes[i]
		if n.Wall < 0 || known[spot{n.Kind, n.At, n.Wall}] {
			continue
		}
		if n.Kind == PlateNode {
			return int(i)
		}
		if found < 0 || n.Kind == BayNode && g.Nodes[found].Kind != BayNode {
			found = int(i)
		}
	}
	return found
}

var compass = [4]string{plan.East: "east", plan.North: "north", plan.West: "west", plan.South: "south"}

// openThere says that the way of a drop goes through a bay into which nothing opens.
func (g *Graph) openThere(d, node int) Block {
	n, h := g.Nodes[node], g.Job.House
	w := &h.Walls[n.Wall]
	where := fmt.Sprintf("wall %s", w.ID)
	if len(h.Levels) > 1 {
		where += " on level " + h.Levels[w.Level].ID
	}
	return Block{
		Rule: rule.NoHiddenWay, Pos: g.Job.Drops[d].Pos, At: n.At,
		Found: fmt.Sprintf("%s: one would go through the bay of %s that is %s from its %s end, into which no box opens",
			noWay, where, h.Units.Format(w.Along(flat(n.At))), compass[w.Heading().Opposite()]),
		Change: fmt.Sprintf("a box in that bay of wall %s", w.ID),
	}
}
