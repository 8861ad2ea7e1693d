package tree

import "slices"

// A planner plans the terminals of a space that can be reached.
type planner struct {
	*space
	base   []int64
	member []int32
	work   *meter

	dual  *dual // the best so far
	trial *dual
	bound int64 // no plan that is searched for costs less
	cost  int64 // of the plan of the router
	limit int64 // plans that cost so much are of no interest
	guide guide
	fine  int64 // rounds of an ascent with a guide
	*router
}

// An answer is what is known of the plans in a space.
type answer struct {
	paths []Path // by terminal, of the best plan
	bound int64  // no plan costs less, steps left out
	// together is what no plan costs less than whose paths stay together once
	// they have met.
	together int64
}

// solveSpace plans all terminals of a space that can be reached.
func solveSpace(s *space, known []Path, limit int64, w *meter) answer {
	out := answer{paths: make([]Path, len(s.terms))}
	p := &planner{space: s, work: w, limit: far}
	if limit < far/s.scale {
		p.limit = limit * s.scale
	}
	for t := range s.terms {
		if len(s.start[t]) > 0 {
			p.member = append(p.member, int32(t))
		}
	}
	if len(p.member) == 0 {
		return out
	}
	p.start()
	p.guide = s.guideBy(p.member, known)
	if s.steps != nil {
		// The dual knows nothing of steps, and so is a bound for all plans.
		p.ascend(p.fine)
		out.bound = p.whole(p.bound)
		p.crowd.open()
	}
	p.run()
	if out.together = p.whole(p.bound); s.steps == nil {
		out.bound = out.together
	}
	for i, t := range p.member {
		out.paths[t] = s.lay(p.paths[i])
	}
	return out
}

// whole is a bound in prices of the network, where every plan's are whole.
func (s *space) whole(bound int64) int64 { return (bound + s.scale - 1) / s.scale }

// below is the limit for plans that are cheaper than cost.
func (s *space) below(cost int64) int64 { return cost - s.scale + 1 }

// proved reports whether there is nothing left to search for.
func (p *planner) proved() bool { return p.bound >= p.below(min(p.cost, p.limit)) }

// start prepares for the first run.
func (p *planner) start() {
	p.base, p.fine = p.distances(0), roundsFor(len(p.member))
	p.dual, p.trial = newDual(p.space, p.base), newDual(p.space, p.base)
	p.router = newRouter(p.space, p.base, p.member, p.work)
	p.cost = far
}

// run takes finer and finer duals: each gives a bound, a hint where to lay
// paths, and a chance for the exact search. Where that is not enough it mends
// the plan, and gives the exact search what work is left.
func (p *planner) run() {
	all, rounds, trial, orders := p.work.left, int64(manyRounds), int64(trialWork), manyOrders
	if len(p.member) <= fewMembers {
		rounds, trial, orders = fewRounds, fewWork, fewOrders
	}
	if p.guide != nil {
		rounds = p.fine
	}
	p.ascend(rounds)
	p.build(orders)
	for rounds = p.fine; !p.proved(); rounds *= 4 {
		before := p.work.left
		p.guide = newGuide(p.space, p.paths)
		if len(p.member) > maxMembers {
			p.ascend(rounds)
		} else {
			p.tighten(rounds/p.fine - 1)
		}
		last := rounds >= lastRounds || (before-p.work.left)*ascentShare > p.work.left
		if last || len(p.member) > fewMembers {
			p.build(orders)
		}
		if p.proved() || p.exact(4*(all-p.work.left)+trial) || p.work.left <= 0 {
			return
		}
		if last {
			break
		}
	}
	p.mend()
	if !p.proved() {
		p.exact(p.work.left)
	}
}

const (
	fewRounds   = 16
	manyRounds  = 64
	lastRounds  = 1024
	fewMembers  = 12 // so few that the first dual is as a rule good enough
	fewWork     = 2_000_000
	tightSteps  = 10
	trialWork   = 1_000_000
	ascentShare = 10 // of the work left that one ascent may take
	ascentGroup = 128
	fewOrders   = 2
	manyOrders  = 8
	smallGroup  = 4
	largeGroup  = 16
	mendStarts  = 20
	hintWeight  = 4
)

// roundsFor is how many rounds an ascent with a guide takes for so many members. For a
// few more rounds take longer than they save.
func roundsFor(members int) int64 {
	if members < fewMembers {
		return manyRounds
	}
	return 4 * manyRounds
}

// ascend makes a dual in so many rounds and keeps it if it is better.
func (p *planner) ascend(rounds int64) {
	if len(p.member) <= maxMembers {
		p.trial.reset(p.member, p.fixed)
		p.trial.guide = p.guide
		p.trial.ascend(rounds, p.work)
	} else {
		p.ascendInGroups(rounds)
	}
	p.keep()
}

// tighten makes a dual as good as many times some steps make it.
func (p *planner) tighten(times int64) {
	p.trial.reset(p.member, p.fixed)
	p.trial.guide = p.guide
	p.trial.ascend(p.fine, p.work)
	if times > 0 {
		p.trial.tighten(min(p.cost, p.limit), times*tightSteps, p.work)
	}
	p.keep()
}

// keep keeps the dual that was tried if it is better.
func (p *planner) keep() {
	if b := p.trial.bound(); b > p.bound || p.dual.fixed == nil {
		p.bound = max(b, p.bound)
		p.dual, p.trial = p.trial, p.dual
	}
}

// ascendInGroups makes the dual of one group of members after the other, of
// what the groups before left of the fixed prices. That is a little weaker than
// all at once, but only one group's records are in memory at a time.
func (p *planner) ascendInGroups(rounds int64) {
	p.trial.empty(p.fixed)
	for group := range slices.Chunk(p.member, ascentGroup) {
		p.trial.take(group)
		p.trial.ascend(rounds, p.work)
		p.trial.letGo()
	}
	p.dual.records, p.trial.records = p.trial.records, p.dual.records // the one list is enough
}

// build lays paths on the hint of the dual and keeps the plan if it is
// cheaper.
func (p *planner) build(orders int) {
	p.cost = p.best(orders, p.hints(), p.cost)
}

// hints makes paths keep to states that the dual finds worth their fixed
// price.
func (p *planner) hints() []int64 {
	hint := make([]int64, len(p.fixed))
	for g := range hint {
		hint[g] = hintWeight * p.dual.slack(int32(g))
	}
	return hint
}

// mend improves the plan with half the work that is left, or all of it if
// there will be no exact search. When mending helps no more, it starts again
// from plans laid in other orders, and keeps the best.
func (p *planner) mend() {
	own := &meter{left: p.work.left / 2, stop: p.work.stop}
	if len(p.member) > maxMembers {
		own.left = p.work.left
	}
	before := own.left
	m := newMender(p.router)
	p.router.work = own
	for start := range mendStarts {
		kept := append([][]int32(nil), p.paths...)
		if start > 0 {
			p.layInOrder(start+1, p.hints())
		}
		for size := smallGroup; size <= largeGroup && own.left > 0; size *= 2 {
			m.run(size, own)
		}
		if c := p.router.cost(); c < p.cost || start == 0 {
			p.cost = c
		} else {
			p.set(kept)
		}
		if own.left <= 0 || p.proved() {
			break
		}
	}
	p.router.work = p.work
	p.work.spend(int(before - own.left))
}

// exact searches for a cheaper plan with so much work, and reports whether
// the question is settled.
func (p *planner) exact(work int64) bool {
	if len(p.member) > maxMembers {
		return false
	}
	own := &meter{left: min(work, p.work.left), stop: p.work.stop}
	before := own.left
	x := newSearch(p.space, p.crowd.nobody())
	base := p.dual.bound()
	x.reset(p.dual, p.below(min(p.cost, p.limit))-base)
	if p.crowd.there != nil {
		x.ahead = p.space.ahead
	}
	goal, least := x.run(own)
	p.work.spend(int(before - own.left))
	p.bound = max(p.bound, base+least)
	if goal >= 0 {
		kept := append([][]int32(nil), p.paths...)
		p.router.set(x.routes(goal))
		if c := p.router.cost(); c < p.cost {
			p.cost = c
		} else {
			p.router.set(kept) // sets pass full places apart; see mender.price
		}
	}
	return p.proved()
}
