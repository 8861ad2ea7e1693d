package stock

import "slices"

// dive rounds the linear programme to a plan: it takes the patterns that are
// used at least once, or else the one that is used most, solves again for the
// pieces that are left, and so on; bestFit tries to end it after every step.
// The pattern that is used skip-th most is taken at the first choice, so that
// several dives end in several plans. It stops early at a plan with at most
// goal new spools. It returns nil if it finds none that cuts every piece.
func dive(d demand, s supply, pool []filled, skip, goal int, m *meter) packing {
	var best packing
	var done packing
	rest, left := d, s
	for m.spend(d.pieces()*(len(done)+len(s.kind)+1) + len(pool)*len(d.size)) {
		if p := bestFit(d, s, done); p != nil && (best == nil || p.fresh() < best.fresh()) {
			best = p
		}
		if n := rest.pieces(); n > 0 && n <= tail && goal >= done.fresh() && (best == nil || best.fresh() > goal) {
			part := m.share(4 * dives)
			if p, v := complete(rest, left, goal-done.fresh(), part); v == yes {
				best = append(p, done...)
			}
			m.giveBack(part)
		}
		if best != nil && best.fresh() <= goal || rest.pieces() == 0 {
			break
		}
		// Where the steps don't suffice for its optimum, a plan that is not yet
		// the best guides the dive nearly as well.
		part := m.share(6)
		lp := newMaster(rest, left, fitting(pool, rest, left), part)
		lp.solve()
		m.giveBack(part)
		pool = append(pool, lp.pool[lp.given:]...)
		step := chosen(lp, &skip)
		if len(step) == 0 {
			break
		}
		for _, f := range step {
			rest = rest.without(f.count)
			left = left.without(f.kind)
		}
		done = append(done, step...)
	}
	return best
}

// without takes pieces away. The lengths stay, also those that are used up, so
// that patterns keep their meaning.
func (d demand) without(count []int) demand {
	need := slices.Clone(d.need)
	for j, n := range count {
		need[j] -= n
	}
	return demand{d.size, need}
}

func (s supply) without(kind int) supply {
	if kind != freshKind {
		s.have = slices.Clone(s.have)
		s.have[kind]--
	}
	return s
}

// fitting is the patterns that ask for no more than is left.
func fitting(pool []filled, d demand, s supply) []filled {
	var fit []filled
	for _, f := range pool {
		if within(f, d, s) {
			fit = append(fit, f)
		}
	}
	return fit
}

func within(f filled, d demand, s supply) bool {
	if f.kind != freshKind && s.have[f.kind] == 0 {
		return false
	}
	for j, n := range f.count {
		if n > d.need[j] {
			return false
		}
	}
	return true
}

// chosen is the next patterns to take: all that are used once or more, as
// often as they are used and still fit; if there are none, the one used most,
// or that at rank *skip, which is then set to 0.
func chosen(lp *master, skip *int) packing {
	var step packing
	rest, left := lp.demand, lp.supply
	take := func(f filled) bool {
		if !within(f, rest, left) {
			return false
		}
		rest, left = rest.without(f.count), left.without(f.kind)
		step = append(step, f)
		return true
	}
	uses := lp.uses()
	var part []int
	for v, x := range uses {
		for n := 1; float64(n) <= x+1e-6; n++ {
			if !take(lp.pool[v]) {
				break
			}
		}
		if x > 1e-6 {
			part = append(part, v)
		}
	}
	if len(step) > 0 || len(part) == 0 {
		return step
	}
	slices.SortStableFunc(part, func(a, b int) int {
		if diff := uses[b] - uses[a]; diff > 1e-9 {
			return 1
		} else if diff < -1e-9 {
			return -1
		}
		return a - b
	})
	take(lp.pool[part[min(*skip, len(part)-1)]])
	*skip = 0
	return step
}
