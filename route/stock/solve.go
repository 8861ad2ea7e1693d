package stock

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
)

// Solve plans a job. The error joins an *InputError for every fault of the
// job; with an error there is no plan. A job that asks for the impossible is no
// fault: see Plan.Unplaced and SpoolPlan.MarkFault.
//
// The work is limited by job.Steps for each type of cable. Jobs of a house, up
// to some 60 pieces and 8 spools, are as a rule proved best in every respect
// within a fraction of it.
func Solve(job Job) (*Plan, error) {
	if err := check(&job); err != nil {
		return nil, err
	}
	plan := &Plan{}
	for _, name := range types(job) {
		solver := newSolver(job, name)
		t := solver.solve()
		plan.Types = append(plan.Types, t)
		plan.Unplaced = append(plan.Unplaced, solver.unplaced...)
		plan.Totals.add(t.Totals)
	}
	plan.Pulls = pulls(plan.Types)
	return plan, nil
}

// types lists the types of pieces and spools, sorted.
func types(job Job) []string {
	var names []string
	for _, p := range job.Pieces {
		names = append(names, p.Type)
	}
	for _, s := range job.Spools {
		names = append(names, s.Type)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// A solver plans one type of cable.
type solver struct {
	name   string
	pieces []Piece // longest first
	spools []Spool // shortest first
	supply supply
	policy policy
	// patchCord is the shortest excess that is kept; 0 if none is.
	patchCord measure.Length
	setsFirst bool
	meter     *meter
	unplaced  []Unplaced
	score     Score
	bound     Score
}

func newSolver(job Job, name string) *solver {
	s := &solver{name: name, policy: newPolicy(job.Usable, job.Patch), patchCord: job.Patch, setsFirst: job.SetsFirst, meter: &meter{job.Steps}}
	if job.Steps == 0 {
		s.meter.left = DefaultSteps
	}
	for _, p := range job.Pieces {
		if p.Type == name {
			s.pieces = append(s.pieces, p)
		}
	}
	slices.SortFunc(s.pieces, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(a.Group, b.Group), cmp.Compare(a.Tag, b.Tag))
	})
	var lengths []measure.Length
	for _, sp := range job.Spools {
		if sp.Type == name {
			s.spools = append(s.spools, sp)
			lengths = append(lengths, sp.Length)
		}
	}
	slices.SortFunc(s.spools, func(a, b Spool) int {
		return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Tag, b.Tag))
	})
	fresh := measure.Length(0)
	for _, b := range job.Buy {
		if b.Type == name {
			fresh = b.Length
		}
	}
	s.supply = newSupply(lengths, fresh)
	return s
}

// solve goes through the levels of the package comment.
func (s *solver) solve() TypePlan {
	start := s.leaveOut()
	if len(s.pieces) == 0 {
		s.idle()
		return s.report(nil, nil)
	}
	d := newDemand(lengthsOf(s.pieces))
	p := s.fewest(d, start)
	p = s.leastWaste(d, p)
	w := &weaver{sets: sets(s.pieces), supply: s.supply, fresh: p.fresh(), policy: s.policy, free: s.setsFirst, meter: s.meter}
	w.goal = p.leftover(d, s.supply, s.policy)
	p, chunks := w.weave(p, d)
	s.setLeftover(&s.score, w.result)
	s.score.Splits = splits(chunks)
	s.bound.Splits = leastSplits(w.sets, s.supply.longest())
	if s.setsFirst && w.best && s.wasteProved() {
		s.setLeftover(&s.bound, w.result)
	}
	return s.report(p, s.realise(chunks, w.sets, len(p)))
}

// wasteProved reports whether waste and patch remainders are least.
func (s *solver) wasteProved() bool {
	return s.score.Waste == s.bound.Waste && s.score.Patch == s.bound.Patch
}

// idle scores a type without a piece to cut.
func (s *solver) idle() {
	a := packing(nil).leftover(demand{}, s.supply, s.policy)
	s.setLeftover(&s.score, a)
	s.setLeftover(&s.bound, a)
}

func (s *solver) setLeftover(to *Score, a leftover) {
	to.Waste, to.Patch, to.Longest, to.Opened = a.waste, a.patch, a.longest, a.opened
}

func lengthsOf(pieces []Piece) []measure.Length {
	l := make([]measure.Length, len(pieces))
	for i, p := range pieces {
		l[i] = p.Length
	}
	return l
}

// leaveOut takes out the pieces that are longer than any spool, and then as
// few as can be of those that need a spool in stock until the others fit. It
// returns how these others fit.
func (s *solver) leaveOut() packing {
	longest := s.supply.longest()
	impossible := s.above(longest)
	s.drop(impossible, TooLong)
	bound := s.above(s.supply.fresh) // can't come off a new spool
	if bound == 0 {
		return nil
	}
	part := s.meter.share(3)
	n, upper, p := mostShortest(newDemand(lengthsOf(s.pieces[:bound])), s.supply, part)
	s.meter.giveBack(part)
	s.score.Uncut, s.bound.Uncut = bound-n, bound-upper
	s.drop(bound-n, NoneLeft)
	return p
}

// above is how many pieces are longer than l; these come first.
func (s *solver) above(l measure.Length) int {
	n := 0
	for n < len(s.pieces) && s.pieces[n].Length > l {
		n++
	}
	return n
}

// drop takes out the n longest pieces.
func (s *solver) drop(n int, why Reason) {
	for _, p := range s.pieces[:n] {
		s.unplaced = append(s.unplaced, Unplaced{p, why, s.supply.longest()})
	}
	s.pieces = s.pieces[n:]
}

// fewest finds how many new spools are needed. start has only the first sizes
// of d.
func (s *solver) fewest(d demand, start packing) packing {
	for i := range start {
		start[i].count = append(start[i].count, make([]int, len(d.size)-len(start[i].count))...)
	}
	if s.supply.fresh == 0 {
		return start
	}
	part := s.meter.share(2)
	r := fewest(d, s.supply, start, part)
	s.meter.giveBack(part)
	s.bound.NewSpools = r.lower
	return r.packing
}

// leastWaste looks for the best leftover with as many new spools as p has, and
// again with fewer if one is then not needed.
func (s *solver) leastWaste(d demand, p packing) packing {
	for {
		fresh := p.fresh()
		s.score.NewSpools = fresh
		r := newRack(d, s.supply, fresh, s.policy)
		part := s.meter.share(2)
		counts, kinds, bound := r.search(p.leftover(d, s.supply, s.policy), false, part)
		s.meter.giveBack(part)
		s.setLeftover(&s.bound, bound)
		if counts == nil {
			return p
		}
		p = r.unrack(counts, kinds, s.supply)
		if p.fresh() == fresh {
			return p
		}
	}
}

// unrack gives the spools of a plan back to stock and purchase: those in stock
// are used first.
func (r *rack) unrack(counts [][]int, kinds []int, s supply) packing {
	left := slices.Clone(s.have)
	var p packing
	for i, c := range counts {
		if !slices.ContainsFunc(c, positive) {
			continue
		}
		kind, found := slices.BinarySearch(s.kind, r.kind[kinds[i]])
		if !found || left[kind] == 0 {
			kind = freshKind
		} else {
			left[kind]--
		}
		p = append(p, filled{kind, c})
	}
	return p
}
