package tree

// solveSpace plans all terminals of a space that can be reached. bound is a
// lower bound of all plans in the space.
func solveSpace(s *space, w *meter) (p Plan, bound int64) {
	p.Paths = make([]Path, len(s.terms))
	var member []int32
	for t := range s.terms {
		if len(s.start[t]) > 0 {
			member = append(member, int32(t))
		}
	}
	if len(member) == 0 {
		return p, 0
	}
	base := s.distances()
	d := newDual(s, base)
	d.reset(member, s.fixed)
	d.ascend(rounds, w)
	r := newRouter(s, base, member, w)
	r.hint = hintOf(d)
	cost := r.best(orders)
	bound = d.bound()
	if cost > bound && len(member) > exactly {
		own := &meter{left: w.left / 2, stop: w.stop}
		before := own.left
		m := newMender(r)
		m.run(4, own)
		m.run(8, own)
		w.spend(int(before - own.left))
		cost = r.cost()
	}
	paths := r.paths
	if cost > bound && len(member) <= maxMembers {
		x := newSearch(s)
		x.reset(d, s.below(cost)-bound)
		goal, least := x.run(w)
		if goal >= 0 {
			paths = x.routes(goal)
		}
		bound += least
	}
	for i, t := range member {
		p.Paths[t] = s.lay(paths[i])
	}
	return p, (bound + s.scale - 1) / s.scale
}

// below is the limit for plans that are cheaper than cost.
func (s *space) below(cost int64) int64 { return cost - s.scale + 1 }

// hintOf makes paths keep to what the dual finds worth its fixed price.
func hintOf(d *dual) []int64 {
	hint := make([]int64, len(d.slack))
	for g, s := range d.slack {
		hint[g] = hintWeight * s
	}
	return hint
}

const (
	exactly    = 12 // members whose exact search needs no mending first
	hintWeight = 4

	rounds = 1024 // of dual ascent
	orders = 8  // of laying paths
)
