package network

// A turns method searches a network with headings. It remembers a label for
// every slot, so that bends can be priced and doubling back ruled out: a cable
// in a slot must leave neither by that half-arc nor in its heading. A key is
// the cost and, below, the number of bends.
//
// What the search needs of a node, a half-arc or a label lies in one place, so
// that it is in the processor's cache at once.
type turns struct {
	net   *Network
	arcs  []turnArc // by half-arc
	label []label   // by slot
	node  []turnNode
}

type turnArc struct {
	price uint64 // what it adds to a key, and its heading below
	slot  int32  // that it leads to
	to    int32  // the node of that
}

func (a *turnArc) way() Heading { return Heading(a.price & bendMask) }

// A label is the best way known into a slot.
type label struct {
	key  uint64
	pred int32 // slot before it, noSlot if it comes from the source
	node int32 // of the slot
}

// A turnNode is what is known of a node. The label a that spread.go speaks of
// is its best one; of several, the one known first.
type turnNode struct {
	bound uint64  // labels with this key or more are of no use; unbound if any is
	least uint64  // key of a
	bend  uint64  // what a bend adds to a key but for the count
	slot  int32   // of a
	back  Heading // heading of that slot
	state state
}

type state uint8

const (
	untouched state = iota // no label yet
	labelled
	final // the least key is
)

// unbound is above any key, and if it were one, adding to it would not wrap.
const unbound = 1 << 63

func newTurns(n *Network) *turns {
	t := &turns{net: n, arcs: make([]turnArc, len(n.Target)), label: make([]label, len(n.Target)), node: make([]turnNode, n.Nodes())}
	for h := range t.arcs {
		t.arcs[h].slot, t.arcs[h].to = n.Twin[h], n.Target[h]
		t.label[h].node = n.Source[h]
	}
	for v := range t.node {
		t.node[v].bound = unbound
	}
	return t
}

func (t *turns) price(cables int64) uint64 {
	n := t.net
	for v, b := range n.Bend {
		t.node[v].bend = uint64(cables*b) << bendBits
	}
	var rise mean
	for h, f := range n.Fixed {
		cost := f + cables*n.PerUnit[h]
		t.arcs[h].price = uint64(cost)<<bendBits | uint64(n.Way[h])
		rise.add(cost + cables*n.Bend[n.Source[h]])
	}
	return rise.value() << bendBits
}

func (t *turns) forget(touched []int32) {
	for _, v := range touched {
		t.node[v].bound, t.node[v].state = unbound, untouched
	}
}

// run makes labels final in the order of their keys. The targets are reached
// when their best keys are known; it goes on to the end of the last one's key,
// so that ties are settled as if there were no targets.
func (t *turns) run(s *Search) {
	source := &t.node[s.source]
	source.bound, source.state = 0, labelled
	s.touched = append(s.touched, s.source)
	for h := t.net.First[s.source]; h < t.net.First[s.source+1]; h++ {
		a := &t.arcs[h]
		t.take(s, a, noSlot, 0, a.price&^bendMask)
	}
	for s.queue.Len() > 0 {
		key, in := s.queue.Pop()
		if key > s.stop {
			s.done = s.stop
			return
		}
		l := &t.label[in]
		if key != l.key {
			continue // a better way was found since
		}
		v := l.node
		p := &t.node[v]
		if key >= p.bound {
			continue
		}
		if p.state != final {
			p.state = final
			if s.targets > 0 {
				s.reached(v, key)
			}
		}
		if key <= p.bent(p.least, p.back) {
			t.spread(s, in, v, key)
		} else {
			t.spreadBack(s, in, v, key)
		}
	}
}

func (t *turns) best(v int32) (key uint64, cost int64, slot int32, reached bool) {
	if t.node[v].state == untouched {
		return 0, 0, noSlot, false
	}
	key = unbound
	for j := t.net.First[v]; j < t.net.First[v+1]; j++ {
		if k := t.label[j].key; k < key {
			key, slot = k, j
		}
	}
	return key, int64(key >> bendBits), slot, true
}

func (t *turns) before(j int32) int32 { return t.label[j].pred }
