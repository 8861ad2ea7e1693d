package route

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/rule"
	"topplate/route/network"
	"topplate/route/tree"
)

// whyBlocked finds, for drops without a path, the cheapest changes that would
// give them one. They are found on the graph that keeps what is forbidden, by
// one search from the closet for all drops with one number of cables. In a job
// of many drops that graph has places for those without a path only: the
// others would make it several times as large, and the way of one drop does not
// lead through the places of another but where board is patched.
func (r *Result) whyBlocked(paths []tree.Path) ([]*Blocked, error) {
	out := make([]*Blocked, len(paths))
	targets := map[int][]int{} // drops by number of cables
	var blocked []int
	for d := range paths {
		if len(paths[d].Nodes) == 0 {
			blocked = append(blocked, d)
			q := r.Job.Drops[d].Count
			targets[q] = append(targets[q], d)
		}
	}
	if len(blocked) == 0 {
		return out, nil
	}
	g, err := r.Graph.relaxed(blocked)
	if err != nil {
		return nil, err
	}
	known := spotsOf(r.Graph)
	search := network.NewSearch(g.Net)
	for _, q := range slices.Sorted(maps.Keys(targets)) {
		var ends []int32
		for _, d := range targets[q] {
			ends = append(ends, int32(g.Terminals[d]))
		}
		if err := search.From(int32(g.Root), int64(q), ends...); err != nil {
			return nil, fmt.Errorf("route: %w", err)
		}
		for _, d := range targets[q] {
			out[d] = g.changesFor(search, d, known)
		}
	}
	return out, g.sayGaps(out, known)
}

// relaxed is the graph that keeps what is forbidden, with places for some drops
// at least.
func (g *Graph) relaxed(drops []int) (*Graph, error) {
	if g.many() {
		return buildFor(g.Job, true, drops, nil, nil)
	}
	return build(g.Job, true)
}

// changesFor is what stops drop d and what would lift it, by its cheapest path
// on a graph that keeps what is forbidden. known are the places of the graph that is
// routed on.
func (g *Graph) changesFor(search *network.Search, d int, known map[spot]bool) *Blocked {
	p, ok := search.To(int32(g.Terminals[d]))
	if !ok {
		return &Blocked{Blocks: []Block{{Rule: rule.NoHiddenWay, Pos: g.Job.Drops[d].Pos, Found: "no way to the closet"}}}
	}
	b := &Blocked{Route: p.Cost, Blocks: g.neededOn(d, p.Nodes, p.Arcs, known)}
	for _, a := range p.Arcs {
		for _, bl := range g.Arcs[a].Blocks {
			b.Route -= bl.Price
		}
	}
	for _, bl := range b.Blocks {
		b.Changes += bl.Price
	}
	if len(b.Blocks) == 0 {
		b.Blocks = []Block{{Rule: rule.NoHiddenWay, Pos: g.Job.Drops[d].Pos, At: g.Nodes[g.Terminals[d]].At, Found: noWay, Change: "another place for " + g.Job.Drops[d].Tag}}
		b.by = g.turnsOf(p)
		return b
	}
	if g.Arcs[p.Arcs[len(p.Arcs)-1]].lastResort() {
		b.Blocks = []Block{g.lastResort(d, b.Blocks[len(b.Blocks)-1])}
	}
	nodes := make([]int, len(p.Nodes))
	for i, n := range p.Nodes {
		nodes[i] = int(n)
	}
	b.Points = corners(g, nodes)
	return b
}

// turnsOf lists where a way turns in a space, and where rods begin and end.
func (g *Graph) turnsOf(p network.Path) (out []latticePoint) {
	for i := 1; i < len(p.Arcs); i++ {
		n, in, on := g.Nodes[p.Nodes[i]], int(p.Arcs[i-1]), int(p.Arcs[i])
		rod := g.Arcs[in].Kind == RodArc || g.Arcs[on].Kind == RodArc
		if n.Space >= 0 && n.Wall < 0 && (rod || g.way(in, int(p.Nodes[i-1])) != g.way(on, int(p.Nodes[i]))) {
			out = append(out, latticePoint{n.Space, flat(n.At)})
		}
	}
	return out
}

// lastResort is what stops drop d nearest to where it was wished, with the raceway
// that is the only change: or another place, where the job allows raceways and
// none leads there.
func (g *Graph) lastResort(d int, raceway Block) Block {
	bl, wished := raceway, g.Nodes[g.Terminals[d]].At
	if dead := g.dead[d]; len(dead) > 0 {
		bl = slices.MinFunc(dead, func(p, q Block) int {
			return cmp.Compare(geom.Dist(flat(p.At), flat(wished)), geom.Dist(flat(q.At), flat(wished)))
		})
		bl.Change, bl.Price = cmp.Or(bl.Change, raceway.Change), raceway.Price
	}
	if len(g.shut) > 0 {
		bl = g.shut[0]
		bl.Found = "nothing leads into the wall of the closet: " + bl.Found
		bl.Change, bl.Price = "another place for the closet", raceway.Price
		if !g.Job.Allow.Raceway {
			bl.Change += ", or " + raceway.Change
		}
		return bl
	}
	if g.Job.Allow.Raceway && bl.Change == raceway.Change {
		bl.Change = "another place for " + g.Job.Drops[d].Tag
	}
	return bl
}

// sayGaps says of each drop that only the last resort joins to the closet what is
// in between, unless something else was found to stop it. known are the places of the
// graph that is routed on.
func (g *Graph) sayGaps(why []*Blocked, known map[spot]bool) error {
	var f *gapFinder
	for d, b := range why {
		if b == nil || len(b.Blocks) != 1 || b.Blocks[0].Found != noWay {
			continue
		}
		if f == nil {
			f = newGapFinder(g, known)
		}
		only := b.Blocks[0]
		if f.joined(d) {
			blocks, err := f.without(d)
			if err != nil {
				return err
			}
			if len(blocks) > 0 {
				b.Blocks = blocks
				last := &b.Blocks[len(b.Blocks)-1]
				last.Change += ", or " + only.Change
			}
			continue
		}
		gap, bl := f.between(d), &b.Blocks[0]
		bl.Found += ": " + gap.found
		if gap.change != "" {
			bl.Change = gap.change + ", or " + bl.Change
		}
	}
	return nil
}

// noWay is what is found where nothing else is.
const noWay = "no hidden way to the closet"
