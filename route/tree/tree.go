package tree

import (
	"errors"
	"fmt"
	"math"
	"math/bits"

	"topplate/route/network"
)

// A Terminal is a place where cables end, and how many. Its node is a leaf
// for everybody else: no other path passes it.
type Terminal struct {
	Node   int32
	Cables int64
}

// Options of Solve.
type Options struct {
	// Steps are prices that rise in steps; nil if there are none.
	Steps *Steps
	// Ahead, if not nil, is by node what a plan pays at least for steps that
	// cables who are together there have not come to.
	Ahead []int64
	// Open, if not nil, is what plans of interest may travel. Terminals without a
	// way there have no path, and count in no bound.
	Open *Open
	// Known, if not nil, is a plan that is known, by terminal. Its bounds are the better
	// the less it costs.
	Known []Path
	// Below, if not 0, tells that plans which cost so much are of no interest:
	// the search ends when it knows that there is none cheaper.
	Below int64
	// Work is the most steps that the search may take, counted in looks at a
	// transition between two arcs, so that the result does not depend on the
	// machine. 0 stands for DefaultWork.
	Work int64
	// Stop, if not nil, is asked now and then whether to end early with the
	// best plan so far. A plan that was stopped depends on the machine.
	Stop func() bool
}

// DefaultWork is some ten seconds on a small machine.
const DefaultWork = 300_000_000

// A Path runs from the root to a terminal.
type Path struct {
	Nodes []int32 // root first
	Arcs  []int32 // one fewer
	Bends int
}

// A Plan is a set of paths, one for each terminal.
type Plan struct {
	Paths []Path // by terminal; no nodes where a terminal can't be reached
	// Cost is what the plan costs: the fixed price of every arc in use once,
	// the prices per cable and of bends for every cable.
	Cost int64
	// LowerBound is what no plan for the terminals that can be reached can be
	// below.
	LowerBound int64
	Proved     bool // LowerBound is Cost
	// Together is what no plan can be below whose paths stay together from
	// where they meet to the root. It is above LowerBound only where prices
	// rise in steps.
	Together int64
}

// Errors of Solve.
var (
	ErrTerminal = errors.New("tree: bad terminal")
	ErrTooDear  = errors.New("tree: prices are too large to be added up")
)

// Solve finds the cheapest plan that joins all terminals to the root. The
// terminals' nodes are distinct and none is the root; each has one cable at
// least. Terminals that can't be reached get an empty path, and the rest is
// planned without them.
//
// For some dozen terminals the plan is as a rule proved cheapest; see the
// package comment for what that rests on. For more terminals, or if the work
// runs out, the plan is the best found.
func Solve(n *network.Network, root int32, terms []Terminal, opt Options) (Plan, error) {
	if err := check(n, root, terms); err != nil {
		return Plan{}, err
	}
	w := &meter{left: opt.Work, stop: opt.Stop}
	if opt.Work <= 0 {
		w.left = DefaultWork
	}
	below := opt.Below
	if below <= 0 {
		below = far
	}
	relaxed, changed := newSpace(n, root, terms, opt, true)
	half := w.left / 2
	if changed {
		w.left -= half
	}
	known := solveSpace(relaxed, opt.Known, below, w)
	plan := Plan{Paths: known.paths}
	plan.Price(n, terms, opt.Steps)
	if changed && !(plan.valid(n) && plan.Cost <= known.together) {
		strict, _ := newSpace(n, root, terms, opt, false)
		w.left += half
		other := Plan{Paths: solveSpace(strict, opt.Known, below, w).paths}
		other.Price(n, terms, opt.Steps)
		if !plan.valid(n) || other.Cost < plan.Cost {
			plan = other
		}
	}
	plan.LowerBound = min(known.bound, plan.Cost)
	plan.Together = known.together
	plan.Proved = plan.LowerBound == plan.Cost
	return plan, nil
}

func check(n *network.Network, root int32, terms []Terminal) error {
	if root < 0 || int(root) >= n.Nodes() {
		return fmt.Errorf("tree: root %d of %d nodes", root, n.Nodes())
	}
	seen := make([]bool, n.Nodes())
	var cables int64
	for i, t := range terms {
		switch {
		case t.Node < 0 || int(t.Node) >= n.Nodes():
			return fmt.Errorf("%w %d: node %d of %d", ErrTerminal, i, t.Node, n.Nodes())
		case t.Node == root:
			return fmt.Errorf("%w %d: node %d is the root", ErrTerminal, i, t.Node)
		case seen[t.Node]:
			return fmt.Errorf("%w %d: node %d has another", ErrTerminal, i, t.Node)
		case t.Cables < 1 || t.Cables > math.MaxInt32:
			return fmt.Errorf("%w %d: %d cables", ErrTerminal, i, t.Cables)
		}
		seen[t.Node] = true
		cables += t.Cables
	}
	return checkSum(n, cables)
}

// checkSum makes sure that no sum of prices overflows.
func checkSum(n *network.Network, cables int64) error {
	if _, ok := sum(n, cables); !ok {
		return ErrTooDear
	}
	return nil
}

// sum is what it would cost if all cables travelled and bent everywhere; ok is
// false if that is more than maxSum.
func sum(n *network.Network, cables int64) (total uint64, ok bool) {
	for h, p := range n.PerUnit {
		hi, lo := bits.Mul64(uint64(cables), uint64(p)+uint64(n.Bend[n.Target[h]]))
		if hi > 0 || lo > maxSum {
			return 0, false
		}
		if total += lo + uint64(n.Fixed[h]); total > maxSum {
			return 0, false
		}
	}
	return total, true
}

const (
	maxSum   = 1 << 60
	maxScale = 256
	fine     = 1 << 16 // a price that can well be divided as it is
)

// scaleOf is by what prices are multiplied, so that a dual can share them out
// in fractions. That matters only where prices are small numbers.
func scaleOf(n *network.Network, terms []Terminal) int64 {
	var cables, most int64
	for _, t := range terms {
		cables += t.Cables
	}
	for h := range n.Fixed {
		most = max(most, n.Fixed[h], n.PerUnit[h])
	}
	total, _ := sum(n, cables)
	scale := int64(1)
	for scale < maxScale && most*scale < fine && total*uint64(2*scale) <= maxSum {
		scale *= 2
	}
	return scale
}

// A meter counts work.
type meter struct {
	left  int64
	stop  func() bool
	asked int64
}

// spend reports whether there is work left after so many steps.
func (m *meter) spend(steps int) bool {
	m.left -= int64(steps)
	if m.asked += int64(steps); m.asked > 1<<20 {
		m.asked = 0
		if m.stop != nil && m.stop() {
			m.left = -1
		}
	}
	return m.left > 0
}
