package tree

import (
	"cmp"
	"slices"

	"topplate/route/network"
)

// sortBy sorts by a key, then by the number itself.
func sortBy(s []int, key func(int) int64) {
	slices.SortFunc(s, func(a, b int) int { return cmp.Or(cmp.Compare(key(a), key(b)), cmp.Compare(a, b)) })
}

// lay turns the states of a path, terminal first, into a path of the network.
func (s *space) lay(states []int32) Path {
	n := s.net
	first := s.chain[s.chainFirst[states[0]]]
	p := Path{Nodes: []int32{n.Source[first]}}
	for _, g := range states {
		for _, h := range s.chain[s.chainFirst[g]:s.chainFirst[g+1]] {
			if k := len(p.Arcs); k > 0 && p.Arcs[k-1] == n.ArcOf[h] {
				p.Nodes, p.Arcs = p.Nodes[:k], p.Arcs[:k-1]
				continue
			}
			p.Nodes, p.Arcs = append(p.Nodes, n.Target[h]), append(p.Arcs, n.ArcOf[h])
		}
	}
	slices.Reverse(p.Nodes)
	slices.Reverse(p.Arcs)
	return p
}

// Price fills in the cost of a plan and the bends of its paths, from its paths
// alone. Steps may be nil. What is said of bounds stays.
func (p *Plan) Price(n *network.Network, terms []Terminal, steps *Steps) {
	p.Cost = steps.of(p.Paths)
	used := make([]bool, len(n.Target)/2)
	for i := range p.Paths {
		path := &p.Paths[i]
		path.Bends = 0
		q, in := terms[i].Cables, int32(-1)
		for j, a := range path.Arcs {
			h := leave(n, path.Nodes[j], a)
			p.Cost += q * n.PerUnit[h]
			if !used[a] {
				used[a] = true
				p.Cost += n.Fixed[h]
			}
			if in >= 0 {
				if bend, ok := n.Turn(in, h); ok && bend {
					path.Bends++
					p.Cost += q * n.Bend[path.Nodes[j]]
				}
			}
			in = h
		}
	}
}

// leave is the half-arc of arc a that leaves node v.
func leave(n *network.Network, v, a int32) int32 {
	for h := n.First[v]; h < n.First[v+1]; h++ {
		if n.ArcOf[h] == a {
			return h
		}
	}
	panic("tree: a path has an arc that does not leave its node")
}

// valid reports whether no path of a plan doubles back.
func (p *Plan) valid(n *network.Network) bool {
	for _, path := range p.Paths {
		in := int32(-1)
		for j, a := range path.Arcs {
			h := leave(n, path.Nodes[j], a)
			if in >= 0 {
				if _, ok := n.Turn(in, h); !ok {
					return false
				}
			}
			in = h
		}
	}
	return true
}
