package route

import (
	"fmt"
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route/tree"
)

// A gate is a set of places to bore, in top plates as a rule, that all cables of
// some drops pass one of: those next to the closet, or next to drops in one stretch of
// wall. However the cables are shared out over them, they need as many holes
// as if all went through the best one.
type gate struct {
	exits []int // arcs
	drops []int
	least int64 // price of a hole where it is least
	need  int   // holes
	most  int   // cables that go through any one hole there
	full  bool  // the cables are more than all places there take
	// inside are the nodes on the closet's side, by node; nil if that is not known.
	inside []bool
}

// gates lists those where more than one hole is needed.
func (g *Graph) gates(book rule.Book, reached []bool) []gate {
	var out []gate
	exits, inside := g.exits(g.Root)
	c := gate{exits: exits, inside: inside}
	for _, d := range tagOrder(g.Job) {
		if reached[d] && !inside[g.Terminals[d]] {
			c.drops = append(c.drops, d)
		}
	}
	out = append(out, c)
	for _, d := range tagOrder(g.Job) {
		if !reached[d] {
			continue
		}
		if exits, inside := g.exits(g.Terminals[d]); !inside[g.Root] {
			out = join(out, gate{exits: exits, drops: []int{d}})
		}
	}
	var several []gate
	for _, c := range out {
		if g.count(book, &c); c.need > 1 && c.least > 0 {
			several = append(several, c)
		}
	}
	return several
}

// join adds a gate to those there are, and makes one of those that have a
// place in common with it. The first is the closet's: no drop that has its
// places has any other.
func join(all []gate, c gate) []gate {
	var out []gate
	for _, o := range all {
		if !overlap(o.exits, c.exits) {
			out = append(out, o)
			continue
		}
		c.exits = union(o.exits, c.exits)
		c.drops = append(o.drops, c.drops...)
		c.inside = nil // cables from the one pass the other's places as well
	}
	return append(out, c)
}

// count finds how many holes a gate needs. There are none if a cable has
// another way.
func (g *Graph) count(book rule.Book, c *gate) {
	if len(c.drops) == 0 {
		return
	}
	for i, a := range c.exits {
		n, _ := g.beyond(book, a, c.drops)
		if holes := int(n) + 1; i == 0 || holes < c.need {
			c.need = holes
		}
		if b := g.Arcs[a].bore(); i == 0 || b < c.least {
			c.least = b
		}
		c.most = max(c.most, g.most(book, a))
	}
	cables, takes := 0, 0
	for _, d := range c.drops {
		cables += g.Job.Drops[d].Count
	}
	for _, a := range c.exits {
		takes += g.mostHoles(book, a) * g.most(book, a)
	}
	c.full = cables > takes
}

// mostHoles is how many holes of the smallest bit go side by side on arc a.
func (g *Graph) mostHoles(book rule.Book, a int) int {
	small, gap := g.Job.Tools.Bits[0].Diameter, book.Length(rule.HoleToMember)
	for _, bit := range g.Job.Tools.Bits {
		small = min(small, bit.Diameter)
	}
	return int((g.Holes[g.Arcs[a].Hole].Free + gap) / (small + gap))
}

// most is how many cables go through one hole on arc a at most: of the job's
// thinnest.
func (g *Graph) most(book rule.Book, a int) int {
	thin := g.thinnest()
	f := fitting{bits: g.Job.Tools.Bits, over: book.Length(rule.HoleOverBundle), largest: g.largestHole(book, &g.Holes[g.Arcs[a].Hole])}
	all := 0
	for i := range g.Job.Drops {
		all += g.Job.Drops[i].Count
	}
	return max(1, f.take(slices.Repeat([]measure.Length{thin}, all)))
}

// thinnest is the diameter of the job's thinnest cable.
func (g *Graph) thinnest() measure.Length {
	thin := g.Job.Drops[0].Cable.Diameter
	for i := range g.Job.Drops {
		thin = min(thin, g.Job.Drops[i].Cable.Diameter)
	}
	return thin
}

// fewExits is how many exits of a gate are tried one by one.
const fewExits = 8

// oneByOne takes over the cheapest plan that uses one exit of a gate alone, if
// it is cheaper: a search that moves one drop at a time does not find it, as
// nothing is saved before a whole hole is.
func (o *outlook) oneByOne(best *tree.Plan) error {
	for i := range o.gates {
		c := &o.gates[i]
		if len(c.exits) < 2 || len(c.exits) > fewExits {
			continue
		}
		for _, only := range c.exits {
			if err := o.alone(c, only, best); err != nil {
				return err
			}
		}
	}
	return nil
}

// alone takes over the cheapest plan that uses one exit of a gate and no other, if
// it is cheaper.
func (o *outlook) alone(c *gate, only int, best *tree.Plan) error {
	arcs := plainArcs(o.Arcs)
	for _, a := range c.exits {
		if a != only {
			arcs[a].Fixed = dearer(arcs[a].Fixed, best.Cost)
		}
	}
	net, err := o.Net.Reprice(arcs)
	if err != nil {
		return fmt.Errorf("route: %w", err)
	}
	beyond, _ := o.beyond(o.book, only, c.drops)
	p, err := o.solveTree(net, tree.Options{Below: best.Cost - beyond*o.Arcs[only].bore(), Work: 2 * firstWork})
	if err != nil {
		return err
	}
	if p.Cost < best.Cost {
		best.Paths, best.Cost = p.Paths, p.Cost
	}
	return nil
}

// exits are the arcs through plates, walls, ceilings and soffits that can be come
// to from a node without another such hole. Every cable from there takes one of
// them, unless it is to one of the nodes inside. There are none if a cable may get
// to a space otherwise.
func (g *Graph) exits(from int) (out []int, inside []bool) {
	inside = make([]bool, len(g.Nodes))
	inside[from] = true
	queue := []int{from}
	isExit := map[int]bool{}
	for len(queue) > 0 {
		v := queue[0]
		queue = queue[1:]
		for h := g.Net.First[v]; h < g.Net.First[v+1]; h++ {
			a, to := int(g.Net.ArcOf[h]), int(g.Net.Target[h])
			switch kind := g.Nodes[to].Kind; {
			case g.Arcs[a].Hole >= 0 && g.Arcs[a].Kind != StudArc && g.Arcs[a].Kind != BlockArc:
				isExit[a] = true
			case kind == LowNode:
				return nil, inside
			case inside[to]:
			case kind == TerminalNode || kind == RootNode:
				inside[to] = true // nobody passes through
			default:
				inside[to] = true
				queue = append(queue, to)
			}
		}
	}
	for a := range g.Arcs {
		if isExit[a] {
			out = append(out, a)
		}
	}
	return out, inside
}

func overlap(a, b []int) bool {
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i] == b[j]:
			return true
		case a[i] < b[j]:
			i++
		default:
			j++
		}
	}
	return false
}

// union merges two rising lists.
func union(a, b []int) []int {
	var out []int
	for i, j := 0, 0; i < len(a) || j < len(b); {
		switch {
		case j == len(b) || i < len(a) && a[i] < b[j]:
			out = append(out, a[i])
			i++
		case i == len(a) || b[j] < a[i]:
			out = append(out, b[j])
			j++
		default:
			out = append(out, a[i])
			i, j = i+1, j+1
		}
	}
	return out
}
