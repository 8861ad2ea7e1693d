package route

import (
	"maps"
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route/tree"
)

// plainSteps are steps in prices that depend on the number of cables alone: what
// so many cost at least, whatever their diameters. If all have one diameter these
// are the true steps.
type plainSteps struct {
	*Graph
	book  rule.Book
	mixes [][][]measure.Length // by number of cables: what they may be
	alike bool                 // all cables have one diameter
	known map[string][]int64   // what so many pay on an arc beyond its prices
}

// newPlainSteps makes those for the drops that have a path. There are none if the
// choices of diameters are too many to look at.
func (g *Graph) newPlainSteps(book rule.Book, paths []tree.Path) *plainSteps {
	count, all := map[measure.Length]int{}, 0
	for d := range paths {
		if len(paths[d].Nodes) > 0 {
			count[g.Job.Drops[d].Cable.Diameter] += g.Job.Drops[d].Count
			all += g.Job.Drops[d].Count
		}
	}
	choices := 1
	for _, n := range count {
		if choices *= n + 1; choices > maxMixes {
			return nil
		}
	}
	s := &plainSteps{Graph: g, book: book, mixes: make([][][]measure.Length, all+1), alike: len(count) == 1, known: map[string][]int64{}}
	list := [][]measure.Length{nil}
	for _, k := range slices.Sorted(maps.Keys(count)) {
		for _, mix := range list[:len(list):len(list)] {
			for n := 1; n <= count[k]; n++ {
				list = append(list, slices.Concat(mix, slices.Repeat([]measure.Length{k}, n)))
			}
		}
	}
	for _, mix := range list {
		s.mixes[len(mix)] = append(s.mixes[len(mix)], mix)
	}
	return s
}

// maxMixes bounds the choices of diameters that are looked at.
const maxMixes = 2000

// on lists what each number of cables pays on arc a beyond its prices.
func (s *plainSteps) on(a int) []int64 {
	key := s.stepPlace(a)
	more, ok := s.known[key]
	if !ok {
		more = make([]int64, len(s.mixes))
		for n := 1; n < len(more); n++ {
			for i, mix := range s.mixes[n] {
				if m := s.moreFor(s.book, a, mix); i == 0 || m < more[n] {
					more[n] = m
				}
			}
		}
		s.known[key] = more
	}
	return more
}

// steps are the same for package tree.
func (s *plainSteps) steps(arcs []int32) *tree.Steps {
	order := tagOrder(s.Job)
	return &tree.Steps{Arcs: arcs, More: func(a int32, terms []int32) int64 {
		n := 0
		for _, t := range terms {
			n += s.Job.Drops[order[t]].Count
		}
		return s.on(int(a))[n]
	}}
}

// full lists the numbers of cables, of so many, of which one more or one fewer
// would pay more on arc a.
func (s *plainSteps) full(a, all int) []int {
	var out []int
	more := s.on(a)
	for n := 1; n <= all; n++ {
		if n < all && more[n+1] > more[n] || n > 1 && more[n-1] > more[n] {
			out = append(out, n)
		}
	}
	return out
}

// A part is a part of the house that only places with steps lead out of. The
// closet is in none.
type part struct {
	cables int     // of the drops in it
	in     []int32 // half-arcs that lead into it
}

// parts are the parts of the house, by node; nil where the closet is.
func (g *Graph) parts(paths []tree.Path) []*part {
	of := make([]*part, len(g.Nodes))
	seen := make([]bool, len(g.Nodes))
	for v := range g.Nodes {
		if seen[v] || g.Nodes[v].Kind == TerminalNode {
			continue
		}
		g.fillPart(v, seen, of)
	}
	for d := range paths {
		if len(paths[d].Nodes) == 0 {
			continue
		}
		t := g.Terminals[d]
		var has []*part
		for h := g.Net.First[t]; h < g.Net.First[t+1]; h++ {
			if p := of[g.Net.Target[h]]; p != nil && !slices.Contains(has, p) {
				p.cables += g.Job.Drops[d].Count
				has = append(has, p)
			}
		}
	}
	return of
}

// fillPart finds the part that a node is in.
func (g *Graph) fillPart(from int, seen []bool, of []*part) {
	p := &part{}
	nodes := []int{from}
	seen[from] = true
	for i := 0; i < len(nodes); i++ {
		v := nodes[i]
		for h := g.Net.First[v]; h < g.Net.First[v+1]; h++ {
			to := int(g.Net.Target[h])
			switch {
			case g.Nodes[to].Kind == TerminalNode:
			case g.stepped(int(g.Net.ArcOf[h])):
				p.in = append(p.in, g.Net.Twin[h])
			case !seen[to]:
				seen[to] = true
				nodes = append(nodes, to)
			}
		}
	}
	if slices.Contains(nodes, g.Root) {
		return
	}
	p.in = slices.DeleteFunc(p.in, func(h int32) bool { return slices.Contains(nodes, int(g.Net.Source[h])) })
	for _, v := range nodes {
		of[v] = p
	}
}

// stepped reports whether the price of an arc may have steps.
func (g *Graph) stepped(a int) bool {
	arc := &g.Arcs[a]
	return arc.Hole >= 0 || arc.Capacity > 0 || arc.Through != nil || arc.Chase != nil
}
