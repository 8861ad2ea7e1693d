package tree

import "topplate/route/network"

// A shape is what a space is made from: the rules of turning at every node.
type shape struct {
	net     *network.Network
	root    int32
	leaf    []bool // terminals
	relaxed bool
	open    *Open  // what may be travelled; nil if everything may
	noBend  []bool // nodes where a relaxed space has no price of bends
	stepped []bool // arcs with prices in steps, which may hold part of the price per cable; may be nil
}

func newShape(n *network.Network, root int32, terms []Terminal, opt Options, relaxed bool) *shape {
	sh := &shape{net: n, root: root, leaf: make([]bool, n.Nodes()), relaxed: relaxed, open: opt.Open, noBend: make([]bool, n.Nodes())}
	for _, t := range terms {
		sh.leaf[t.Node] = true
	}
	if opt.Steps != nil {
		sh.open = sh.open.single()
		sh.stepped = make([]bool, len(n.Target)/2)
		for _, a := range opt.Steps.Arcs {
			sh.stepped[a] = true
		}
	}
	return sh
}

// relax finds the nodes with mixed arcs, and reports whether anything at all
// is relaxed.
func (sh *shape) relax() (changed bool) {
	n := sh.net
	for v := range sh.noBend {
		if sh.leaf[v] || int32(v) == sh.root {
			continue
		}
		var all, through, both [network.Free + 1]int // arcs by heading; those not to a terminal; and of these, open both ways
		headed, stretches := false, 0
		for h := n.First[v]; h < n.First[v+1]; h++ {
			w, leaf := n.Way[h], sh.leaf[n.Target[h]]
			if !leaf && sh.bothWays(h) {
				both[w]++
				stretches++
			}
			if !sh.opened(h) && !sh.opened(n.Twin[h]) {
				continue
			}
			all[w]++
			headed = headed || w != network.Free
			if !leaf {
				through[w]++
			}
		}
		for w := range network.Free {
			changed = changed || all[w] > 1 && through[w] > 0 && stretches > both[w]
		}
		if free := both[network.Free] > 0; free && headed && n.Bend[v] > 0 {
			sh.noBend[v], changed = true, true
		}
	}
	return changed
}

// turn is network.Turn under the rules of the shape, with the price per cable.
func (sh *shape) turn(in, out int32) (price int64, ok bool) {
	n := sh.net
	if sh.leaf[n.Target[out]] {
		return 0, false
	}
	bends, ok := n.Turn(in, out)
	if !ok {
		return sh.turnBack(in, out)
	}
	if v := n.Target[in]; bends && !sh.noBend[v] {
		price = n.Bend[v]
	}
	return price, true
}

// turnBack is a turn from an arc into another of the same heading, which only a
// relaxed space allows. It costs what two cables save at this node that travel a
// third arc there in opposite ways: the third arc once, and two bends unless it
// is straight on or has no heading. Which one it is is open, so it is the least.
func (sh *shape) turnBack(in, out int32) (price int64, ok bool) {
	n := sh.net
	if !sh.relaxed || n.Twin[in] == out {
		return 0, false
	}
	v := n.Target[in]
	for h := n.First[v]; h < n.First[v+1]; h++ {
		if sh.leaf[n.Target[h]] || n.Way[h] == n.Way[out] || !sh.bothWays(h) {
			continue
		}
		saved := int64(0)
		if sh.stepped == nil || !sh.stepped[n.ArcOf[h]] {
			saved = n.PerUnit[h]
		}
		if n.Way[h] != n.Way[in] && n.Way[h] != network.Free && !sh.noBend[v] {
			saved += 2 * n.Bend[v]
		}
		if !ok || saved < price {
			price, ok = saved, true
		}
	}
	return price, ok
}

// alive marks the half-arcs that a path from a terminal to the root can use.
func (sh *shape) alive(terms []Terminal) []bool {
	n := sh.net
	down, up := make([]bool, len(n.Target)), make([]bool, len(n.Target))
	var queue []int32
	for _, t := range terms {
		for h := n.First[t.Node]; h < n.First[t.Node+1]; h++ {
			if !sh.leaf[n.Target[h]] && sh.opened(h) {
				down[h] = true
				queue = append(queue, h)
			}
		}
	}
	for len(queue) > 0 {
		h := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		if v := n.Target[h]; v != sh.root {
			for out := n.First[v]; out < n.First[v+1]; out++ {
				if _, ok := sh.turn(h, out); ok && !down[out] && sh.opened(out) {
					down[out] = true
					queue = append(queue, out)
				}
			}
		}
	}
	for out := n.First[sh.root]; out < n.First[sh.root+1]; out++ {
		if h := n.Twin[out]; down[h] {
			up[h] = true
			queue = append(queue, h)
		}
	}
	for len(queue) > 0 {
		h := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		for out := n.First[n.Source[h]]; out < n.First[n.Source[h]+1]; out++ {
			in := n.Twin[out]
			if _, ok := sh.turn(in, h); ok && down[in] && !up[in] {
				up[in] = true
				queue = append(queue, in)
			}
		}
	}
	return up
}

// Reached tells which terminals have a way to the root.
func Reached(n *network.Network, root int32, terms []Terminal) []bool {
	return newShape(n, root, terms, Options{}, false).reached(terms)
}

// reached tells which terminals have a way to the root.
func (sh *shape) reached(terms []Terminal) []bool {
	alive, out := sh.alive(terms), make([]bool, len(terms))
	for i, t := range terms {
		for h := sh.net.First[t.Node]; h < sh.net.First[t.Node+1]; h++ {
			out[i] = out[i] || alive[h]
		}
	}
	return out
}

// opened reports whether half-arc h may be travelled.
func (sh *shape) opened(h int32) bool { return sh.open == nil || sh.open.Ways[h] }

// bothWays reports whether half-arc h may be travelled, and its twin by others.
func (sh *shape) bothWays(h int32) bool {
	if sh.open == nil {
		return true
	}
	if sh.open.Both != nil {
		return sh.open.Both[h]
	}
	return sh.open.Ways[h] && sh.open.Ways[sh.net.Twin[h]]
}

// free reports whether no path has a heading but at its terminal.
func (sh *shape) free(alive []bool) bool {
	n := sh.net
	for h := range alive {
		if alive[h] && n.Way[h] != network.Free {
			return false
		}
	}
	return true
}

// only tells for every half-arc which one must follow it, if that one must
// also come after it; -1 if there is a choice.
func (sh *shape) only(alive []bool) []int32 {
	n := sh.net
	after, count, before := make([]int32, len(alive)), make([]int32, len(alive)), make([]int32, len(alive))
	hubs := sh.free(alive)
	for h := range alive {
		after[h] = -1
		if hubs {
			continue
		}
		if v := n.Target[h]; alive[h] && v != sh.root {
			for out := n.First[v]; out < n.First[v+1]; out++ {
				if _, ok := sh.turn(int32(h), out); ok && alive[out] {
					after[h] = out
					count[h]++
					before[out]++
				}
			}
		}
	}
	for h := range alive {
		if g := after[h]; g >= 0 && (count[h] > 1 || before[g] > 1) {
			after[h] = -1
		}
	}
	return after
}
