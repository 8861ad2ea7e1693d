package tree

import "slices"

// A branching is the flow that a parting has found, as paths of states to the
// root or to the near end, by member. Where cables part a member has two.
type branching struct {
	*parting
	ways [][][]int32
}

// trace takes a label back to the members in it, whose cables go on from its
// state by any of some ways.
func (b *branching) trace(id int32, on [][]int32) {
	l := b.labels[id]
	switch {
	case l.a < 0 && l.set == b.near():
	case l.a < 0:
		for i := range b.member {
			if l.set == 1<<i {
				b.ways[i] = on
			}
		}
	case l.b <= -2: // some part
		m := -2 - l.b
		b.trace(m, nil)
		g := b.labels[l.a].state
		b.trace(l.a, before(g, append(slices.Clone(on), b.toNear(m))))
	case l.b == -1 && b.flow(l.set) < 0:
		b.trace(l.a, nil)
	case l.b == -1:
		b.trace(l.a, before(b.labels[l.a].state, on))
	default:
		for _, c := range [][2]int32{{l.a, l.b}, {l.b, l.a}} {
			if b.flow(b.labels[c[1]].set) < 0 {
				b.trace(c[0], [][]int32{b.toNear(c[1])})
			} else {
				b.trace(c[0], on)
			}
		}
	}
}

// before puts a state before ways.
func before(g int32, ways [][]int32) [][]int32 {
	out := make([][]int32, len(ways))
	for i, w := range ways {
		out[i] = append([]int32{g}, w...)
	}
	return out
}

// toNear lists the states from that of a label, which is short of cables, to the
// near end.
func (p *parting) toNear(id int32) []int32 {
	var out []int32
	for {
		l := p.labels[id]
		switch {
		case l.a < 0:
			return append(out, l.state)
		case l.b == -1:
			out = append(out, l.state)
			id = l.a
		case p.flow(p.labels[l.a].set) < 0:
			id = l.a
		default:
			id = l.b
		}
	}
}

// plans are those that a flow may stand for: of the members that have two ways,
// some go one way, some the other, but no more cables over the cut than it is to
// have. There are none if the cables that set out anew come back to the near end.
func (p *parting) plans(goal int32) [][]Path {
	b := &branching{p, make([][][]int32, len(p.member))}
	b.trace(goal, [][]int32{nil})
	last := len(p.member) - 1
	if len(b.ways[last]) != 1 || p.overCut(b.ways[last][0]) {
		return nil
	}
	var two []int
	for i := range last {
		if len(b.ways[i]) > 1 {
			two = append(two, i)
		}
	}
	var out [][]Path
	for choice := 0; choice < 1<<min(len(two), mostTwo); choice++ {
		paths, over := make([]Path, len(p.terms)-1), int64(0)
		simple := true
		for i := range last {
			way := b.ways[i][0]
			if at := slices.Index(two, i); at >= 0 {
				way = b.ways[i][min(1, choice>>at&1)]
			}
			if p.overCut(way) {
				over += p.supply[i]
				way = slices.Concat(way, b.ways[last][0])
			}
			paths[p.member[i]] = p.layOver(way)
			simple = simple && paths[p.member[i]].simple()
		}
		if simple && over <= p.short {
			out = append(out, paths)
		}
	}
	return out
}

// mostTwo bounds the members that are tried both ways.
const mostTwo = 8

// overCut reports whether states lead to the near end.
func (p *parting) overCut(way []int32) bool { return len(way) > 0 && way[len(way)-1] == p.sink }

// layOver turns states into a path of the network that was cut.
func (p *parting) layOver(states []int32) Path {
	n, near := p.net, p.cut.near
	first := p.chain[p.chainFirst[states[0]]]
	out := Path{Nodes: []int32{n.Source[first]}}
	for _, g := range states {
		for _, h := range p.chain[p.chainFirst[g]:p.chainFirst[g+1]] {
			k := len(out.Arcs)
			switch from, to := n.Source[h], n.Target[h]; {
			case to == near:
				out.Arcs = append(out.Arcs, p.cut.old[n.ArcOf[h]])
			case from == near:
			case from == near+1:
				out.Nodes = append(out.Nodes, to)
			case k > 0 && out.Arcs[k-1] == p.cut.old[n.ArcOf[h]]:
				out.Nodes, out.Arcs = out.Nodes[:k], out.Arcs[:k-1]
			default:
				out.Nodes, out.Arcs = append(out.Nodes, to), append(out.Arcs, p.cut.old[n.ArcOf[h]])
			}
		}
	}
	slices.Reverse(out.Nodes)
	slices.Reverse(out.Arcs)
	return out
}

// simple reports whether no node comes twice.
func (p *Path) simple() bool {
	seen := map[int32]bool{}
	for _, v := range p.Nodes {
		if seen[v] {
			return false
		}
		seen[v] = true
	}
	return true
}
