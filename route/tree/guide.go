package tree

import "slices"

// A guide tells a dual which members of a plan travel a state, as bits, by state.
// At the optimum no member has a share of a fixed price that only others of the
// plan pay. So an ascent that raises those first who take least from what others
// pay ends higher.
type guide []uint64

// newGuide makes a guide of the paths of members. There is none for more members
// than have a bit.
func newGuide(s *space, paths [][]int32) guide {
	if len(paths) > maxMembers {
		return nil
	}
	out := make(guide, len(s.fixed))
	for i, p := range paths {
		for _, g := range p {
			out[g] |= 1 << i
		}
	}
	return out
}

// guideBy is the guide of a plan for terminals that are members.
func (s *space) guideBy(member []int32, known []Path) guide {
	if known == nil {
		return nil
	}
	return newGuide(s, s.statesOf(member, known))
}

// strays reports whether only others than member i pay for a state.
func (d guide) strays(g int32, i int) bool { return d != nil && d[g] != 0 && d[g]&(1<<i) == 0 }

// statesOf lists the states of paths, terminal first, by member. What the space
// does not have is left out.
func (s *space) statesOf(member []int32, paths []Path) [][]int32 {
	at := make([]int32, len(s.net.Target))
	for g := range s.exit {
		for _, h := range s.chain[s.chainFirst[g]:s.chainFirst[g+1]] {
			at[h] = g + 1
		}
	}
	out := make([][]int32, len(member))
	for i, t := range member {
		p := &paths[t]
		for j := len(p.Arcs) - 1; j >= 0; j-- {
			for h := s.net.First[p.Nodes[j+1]]; h < s.net.First[p.Nodes[j+1]+1]; h++ {
				if g := at[h] - 1; g >= 0 && s.net.ArcOf[h] == p.Arcs[j] && !slices.Contains(out[i], g) {
					out[i] = append(out[i], g)
				}
			}
		}
	}
	return out
}
