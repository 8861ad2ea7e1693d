package route

import (
	"maps"
	"math"
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route/tree"
)

// mixes are what the cables that share an arc may be: so many of each diameter.
// They are numbered from none of all to all of all.
type mixes struct {
	*Graph
	book   rule.Book
	kinds  []measure.Length
	most   []int // cables of a kind
	stride []int // by how much the number of a mix rises with one more of a kind
	all    int   // number of mixes
	// What they pay is known by place.
	known, leasts map[string][]int64
}

// A fullMix is a mix where one cable more or fewer would pay more.
type fullMix struct {
	cables     int
	one, fewer bool  // one more would, one fewer would
	more       int64 // what the mix pays beyond the prices
}

// newMixes makes those of the drops that have a path. There are none if they are
// too many to look at.
func (g *Graph) newMixes(book rule.Book, paths []tree.Path) *mixes {
	count := map[measure.Length]int{}
	for d := range paths {
		if len(paths[d].Nodes) > 0 {
			count[g.Job.Drops[d].Cable.Diameter] += g.Job.Drops[d].Count
		}
	}
	m := &mixes{Graph: g, book: book, kinds: slices.Sorted(maps.Keys(count)), all: 1, known: map[string][]int64{}, leasts: map[string][]int64{}}
	for _, k := range m.kinds {
		m.most = append(m.most, count[k])
		m.stride = append(m.stride, m.all)
		if m.all *= count[k] + 1; m.all > maxMixes {
			return nil
		}
	}
	return m
}

// maxMixes bounds the mixes that are looked at.
const maxMixes = 2000

// count is how many cables of a kind are in mix i.
func (m *mixes) count(i, kind int) int { return i / m.stride[kind] % (m.most[kind] + 1) }

// size is how many cables are in mix i.
func (m *mixes) size(i int) int {
	n := 0
	for k := range m.kinds {
		n += m.count(i, k)
	}
	return n
}

// cables lists the diameters of mix i.
func (m *mixes) cables(i int) []measure.Length {
	var out []measure.Length
	for k, d := range m.kinds {
		out = append(out, slices.Repeat([]measure.Length{d}, m.count(i, k))...)
	}
	return out
}

// more is what each mix pays on arc a beyond its prices.
func (m *mixes) more(a int) []int64 {
	key := m.stepPlace(a)
	more, ok := m.known[key]
	if !ok {
		more = make([]int64, m.all)
		for i := 1; i < m.all; i++ {
			more[i] = m.moreFor(m.book, a, m.cables(i))
		}
		m.known[key] = more
	}
	return more
}

// least is what each number of cables pays on arc a at least beyond its prices,
// whatever their diameters.
func (m *mixes) least(a int) []int64 {
	key := m.stepPlace(a)
	least, ok := m.leasts[key]
	if !ok {
		least = slices.Repeat([]int64{math.MaxInt64}, m.size(m.all-1)+1)
		for i, more := range m.more(a) {
			n := m.size(i)
			least[n] = min(least[n], more)
		}
		m.leasts[key] = least
	}
	return least
}

// leastSteps are these as steps for package tree.
func (m *mixes) leastSteps(arcs []int32) *tree.Steps {
	order := tagOrder(m.Job)
	return &tree.Steps{Arcs: arcs, More: func(a int32, terms []int32) int64 {
		n := 0
		for _, t := range terms {
			n += m.Job.Drops[order[t]].Count
		}
		return m.least(int(a))[n]
	}}
}

// full lists the mixes that fill arc a.
func (m *mixes) full(a int) []fullMix { return m.filling(m.more(a)) }

// leastFull lists those that fill arc a if as many cables pay the least.
func (m *mixes) leastFull(a int) []fullMix {
	least, more := m.least(a), make([]int64, m.all)
	for i := range more {
		more[i] = least[m.size(i)]
	}
	return m.filling(more)
}

// filling lists the mixes that fill a place where they pay so much.
func (m *mixes) filling(more []int64) []fullMix {
	var out []fullMix
	for i := 1; i < m.all; i++ {
		f := fullMix{cables: m.size(i), more: more[i]}
		for k := range m.kinds {
			n := m.count(i, k)
			f.one = f.one || n < m.most[k] && more[i+m.stride[k]] > more[i]
			f.fewer = f.fewer || n > 0 && more[i-m.stride[k]] > more[i]
		}
		if f.one || f.fewer {
			out = append(out, f)
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
