package network

import (
	"math"
	"testing"
)

// decode reads a problem from bytes: the number of nodes, then four bytes for
// an arc. Any bytes are a problem, if not one that New takes.
func decode(data []byte) problem {
	if len(data) == 0 {
		return problem{}
	}
	p := problem{nodes: int(data[0] % 12)}
	p.bend = make([]int64, p.nodes)
	for v := range p.bend {
		p.bend[v] = int64(data[0]/12) * int64(v%3)
	}
	for d := data[1:]; len(d) >= 4 && len(p.arcs) < 60; d = d[4:] {
		p.arcs = append(p.arcs, Arc{int32(d[0] % 13), int32(d[1]%13) - 1, Heading(d[2] % 8), int64(d[2] / 8), int64(d[3]%16) - 1})
	}
	return p
}

// FuzzSearch holds the costs against Bellman and Ford's way of finding them:
// lower any label that can be lowered until none can.
func FuzzSearch(f *testing.F) {
	f.Add([]byte{5, 0, 2, 0, 3, 1, 3, 2, 3, 2, 4, 9, 1, 0, 4, 48, 2})
	f.Add([]byte{40, 0, 2, 6, 3, 1, 3, 14, 3, 2, 4, 9, 1, 0, 4, 54, 2, 3, 1, 6, 1})
	f.Fuzz(func(t *testing.T, data []byte) {
		p := decode(data)
		n, err := New(p.nodes, p.arcs, p.bend)
		if err != nil || p.nodes == 0 {
			return
		}
		s := NewSearch(n)
		const cables = 2
		if err := s.From(0, cables); err != nil {
			t.Fatal(err)
		}
		for v, want := range lowered(n, 0, cables) {
			got, ok := s.To(int32(v))
			if ok != (want < math.MaxInt64) || ok && got.Cost != want {
				t.Errorf("node %d costs %d (%v), want %d", v, got.Cost, ok, want)
			}
			if ok {
				p.check(t, got, 0, int32(v), cables)
			}
		}
	})
}

func lowered(n *Network, source int32, cables int64) []int64 {
	node, half := make([]int64, n.Nodes()), make([]int64, len(n.Target))
	for _, list := range [][]int64{node, half} {
		for i := range list {
			list[i] = math.MaxInt64
		}
	}
	node[source] = 0
	for changed := true; changed; {
		changed = false
		for out := range half {
			best := int64(math.MaxInt64)
			if n.Source[out] == source {
				best = 0
			}
			for in := range half {
				bend, ok := n.Turn(int32(in), int32(out))
				if n.Target[in] != n.Source[out] || half[in] == math.MaxInt64 || !ok {
					continue
				}
				c := half[in]
				if bend {
					c += cables * n.Bend[n.Target[in]]
				}
				best = min(best, c)
			}
			if best == math.MaxInt64 {
				continue
			}
			if c := best + n.Fixed[out] + cables*n.PerUnit[out]; c < half[out] {
				half[out], changed = c, true
				node[n.Target[out]] = min(node[n.Target[out]], c)
			}
		}
	}
	return node
}
