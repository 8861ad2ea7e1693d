package network

import (
	"fmt"
	"math"
	"math/bits"

	"topplate/route/network/radix"
)

// A Search finds cheapest paths on one Network. It keeps its memory from one
// run to the next; it is not safe for concurrent use.
//
// A state of the search is a node and the half-arc a cable arrived there by,
// so that bends can be priced and doubling back ruled out. It goes by the
// number of the half-arc that would lead back, the slot of the cable: the
// slots of node v are First[v] up to First[v+1], and a cable in slot j came
// from node Target[j] and must leave neither by j nor in j's heading.
//
// Among paths of one cost the one with fewer bends wins, as long as they are
// below 4095. Among those left the one wins that came to the target from the
// lower node, or if that is the same, came to that one from the lower node,
// and so on; where several arcs join two nodes, their order in the network
// decides. A step that costs nothing and does not bend yields to any other,
// and where there are several such, the order of the queue decides. All this
// depends on the network alone, not on the order of arcs in the input.
type Search struct {
	net     *Network
	label   []label  // by slot; none if the network is plain
	place   []place  // by node
	price   []uint64 // what a half-arc adds to a key, for so many cables
	cables  int64
	source  int32 // noSlot before the first run
	targets int   // not reached yet
	touched []int32
	stop    uint64 // once all targets are reached: the key of the last one
	done    uint64 // keys up to it are final
	queue   radix.Heap
}

// A label is the best way known into a slot. Its key is the cost and, below,
// the number of bends.
type label struct {
	key  uint64
	pred int32   // slot before it, noSlot if it comes from the source
	back Heading // heading of the slot
}

// A place is what is known of a node.
type place struct {
	bound  uint64 // labels with this key or more are of no use
	first  int32  // slot of the first label that became final, or one of:
	wanted bool   // a target not reached yet
}

const (
	noSlot    = -1 // not known yet, or the source
	untouched = -2 // no label yet
)

const (
	none     = math.MaxUint64
	bendBits = 12
	bendMask = 1<<bendBits - 1
	// maxCost is above the cost of any path, and leaves a bit for what one
	// more step and bend would add.
	maxCost = 1 << (63 - bendBits)
)

// NewSearch makes a search on a network.
func NewSearch(n *Network) *Search {
	s := &Search{net: n, place: make([]place, n.Nodes()), price: make([]uint64, len(n.Target)), source: noSlot}
	for v := range s.place {
		s.place[v] = place{bound: none, first: untouched}
	}
	if !n.plain {
		s.label = make([]label, len(n.Target))
		for j := range s.label {
			s.label[j].back = n.Way[j]
		}
	}
	return s
}

// From searches from a node with a bundle of so many cables until all targets
// are reached, or everything if no target is given. For h half-arcs, at most d
// of them at one node, it takes O(h d + h log C) time for costs up to C, and
// no memory but what the queue grows by.
//
// It fails if a node is not in the network, if there is no cable, or if there
// are so many that a path might cost 2^51 units. Then no path is known.
func (s *Search) From(source int32, cables int64, targets ...int32) error {
	s.reset()
	if err := s.check(source, cables, targets); err != nil {
		return err
	}
	s.setPrice(cables)
	s.source = source
	s.place[source] = place{bound: 0, first: noSlot}
	s.touched = append(s.touched, source)
	for _, t := range targets {
		if p := &s.place[t]; t != source && !p.wanted {
			p.wanted = true
			s.targets++
		}
	}
	if len(targets) > 0 && s.targets == 0 {
		s.stop = 0
	}
	if s.net.plain {
		s.runPlain()
	} else {
		s.run()
	}
	for _, t := range targets {
		s.place[t].wanted = false
	}
	return nil
}

// reset forgets the last run.
func (s *Search) reset() {
	for _, v := range s.touched {
		s.place[v] = place{bound: none, first: untouched}
	}
	s.touched = s.touched[:0]
	s.source, s.targets = noSlot, 0
	s.stop, s.done = none, none-1
	s.queue.Reset()
}

func (s *Search) check(source int32, cables int64, targets []int32) error {
	n := s.net
	if source < 0 || int(source) >= n.Nodes() {
		return fmt.Errorf("network: no node %d to search from, there are %d", source, n.Nodes())
	}
	for _, t := range targets {
		if t < 0 || int(t) >= n.Nodes() {
			return fmt.Errorf("network: no node %d to search for, there are %d", t, n.Nodes())
		}
	}
	if cables < 1 {
		return fmt.Errorf("network: no path for %d cables", cables)
	}
	high, low := bits.Mul64(uint64(cables), uint64(n.mostPerUnit))
	if high > 0 || low >= maxCost || int64(low)+n.mostFixed >= maxCost {
		return fmt.Errorf("network: a path of %d cables might cost %d units or more", cables, int64(maxCost))
	}
	return nil
}

// setPrice prices the half-arcs for so many cables.
func (s *Search) setPrice(cables int64) {
	if s.cables == cables {
		return
	}
	s.cables = cables
	for h, f := range s.net.Fixed {
		s.price[h] = uint64(f+cables*s.net.PerUnit[h]) << bendBits
	}
}

// run makes labels final in the order of their keys. The targets are reached
// when their best keys are known; it goes on to the end of the last one's key,
// so that ties are settled as if there were no targets.
func (s *Search) run() {
	n := s.net
	for h := n.First[s.source]; h < n.First[s.source+1]; h++ {
		s.take(h, noSlot, 0, s.price[h])
	}
	for s.queue.Len() > 0 {
		key, in := s.queue.Pop()
		if key > s.stop {
			s.done = s.stop
			return
		}
		v := n.Source[in]
		p := &s.place[v]
		if key != s.label[in].key || key >= p.bound {
			continue
		}
		switch {
		case p.first == noSlot:
			p.first = in
			s.reached(p, key)
			s.spread(in, v, key)
		case key <= s.bent(s.label[p.first], v):
			s.spread(in, v, key)
		default:
			s.spreadBack(in, p.first, v, key)
		}
	}
}

func (s *Search) reached(p *place, key uint64) {
	if p.wanted {
		p.wanted = false
		if s.targets--; s.targets == 0 {
			s.stop = key
		}
	}
}
