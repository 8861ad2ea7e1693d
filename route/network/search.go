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
// Among paths of one cost the one with fewer bends wins, as long as they are
// below 4095. Among those left the one wins that came to the target from the
// lower node, or if that is the same, came to that one from the lower node,
// and so on; where several arcs join two nodes, their order in the network
// decides. A step that costs nothing and does not bend yields to any other,
// and where there are several such, the order of the queue decides. All this
// depends on the network alone, not on the order of arcs in the input.
type Search struct {
	net     *Network
	turns   *turns         // methods; those not used yet are nil
	small   *plain[uint32] // for networks without headings where no path costs 2^32
	large   *plain[uint64] // for those where one might
	by      method         // that the last run was made by
	cables  int64          // that by has its prices for, 0 before the first run
	source  int32          // noSlot if no path is known
	wanted  []bool         // by node: a target not reached yet
	targets int            // how many of them
	touched []int32        // nodes that the method has to forget
	stop    uint64         // once all targets are reached: the key of the last one
	done    uint64         // keys up to it are final
	queue   radix.Heap
}

// A method finds the cheapest ways to all nodes and remembers them. A way into
// a node goes by the number of the half-arc that would lead back, its slot:
// the slots of node v are First[v] up to First[v+1], and slot j is the way that
// comes from node Target[j].
type method interface {
	// price prices half-arcs for so many cables, and says by how much a key
	// rises from one node to the next as a rule.
	price(cables int64) (step uint64)
	// run searches from the source of s. It notes in s.touched all nodes that
	// forget must be called for before the next run.
	run(s *Search)
	forget(touched []int32)
	// best is the least key of a node that was reached, and its slot; cost is
	// that of the key.
	best(v int32) (key uint64, cost int64, slot int32, reached bool)
	// before is the slot one node earlier on the best way into slot j, noSlot
	// if that comes from the source.
	before(j int32) int32
}

// noSlot is the slot of the source, and for a source no node.
const noSlot = -1

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
	return &Search{net: n, source: noSlot, wanted: make([]bool, n.Nodes()), touched: make([]int32, 0, n.Nodes()+1)}
}

// From searches from a node with a bundle of so many cables until all targets
// are reached, or everything if no target is given. For h half-arcs, at most d
// of them at one node, it takes O(h d + h log C) time for costs up to C. The
// first run, and one whose costs need wider numbers than those before, takes
// memory for the network; any other takes none but what the queue grows by.
//
// It fails if a node is not in the network, if there is no cable, or if there
// are so many that a path might cost 2^51 units. Then no path is known.
func (s *Search) From(source int32, cables int64, targets ...int32) error {
	s.reset()
	if err := s.check(source, cables, targets); err != nil {
		return err
	}
	s.prepare(cables)
	s.source = source
	for _, t := range targets {
		if t != source && !s.wanted[t] {
			s.wanted[t] = true
			s.targets++
		}
	}
	if len(targets) > 0 && s.targets == 0 {
		s.stop = 0
	}
	s.by.run(s)
	for _, t := range targets {
		s.wanted[t] = false
	}
	return nil
}

// reset forgets the last run.
func (s *Search) reset() {
	if s.by != nil {
		s.by.forget(s.touched)
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

// prepare chooses the method for so many cables and gives it its prices.
func (s *Search) prepare(cables int64) {
	if s.cables == cables {
		return
	}
	switch n := s.net; {
	case !n.plain:
		s.turns = orNew(s.turns, n, newTurns)
		s.by = s.turns
	case fits32(n, cables):
		s.small = orNew(s.small, n, newPlain[uint32])
		s.by = s.small
	default:
		s.large = orNew(s.large, n, newPlain[uint64])
		s.by = s.large
	}
	s.queue.Fit(s.by.price(cables))
	s.cables = cables
}

// orNew is the method m, made now if it was not used before.
func orNew[M any](m *M, n *Network, make func(*Network) *M) *M {
	if m == nil {
		m = make(n)
	}
	return m
}

// reached takes note that the key of node v is final.
func (s *Search) reached(v int32, key uint64) {
	if s.wanted[v] {
		s.wanted[v] = false
		if s.targets--; s.targets == 0 {
			s.stop = key
		}
	}
}
