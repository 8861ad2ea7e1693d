package stock

import "topplate/plan/measure"

// dives is how many ways of rounding the linear programme are tried, and
// maxRows for how many lengths and kinds of spools it is used: beyond, its
// inverse outgrows the memory that a plan is worth.
const (
	dives   = 12
	maxRows = 1200
	tail    = 40 // as many pieces at the end of a dive are searched exhaustively
)

// A fewestResult is a plan with as few new spools as were found.
type fewestResult struct {
	packing packing
	lower   int // no plan has fewer new spools
}

func (r fewestResult) proved() bool { return r.packing != nil && r.packing.fresh() == r.lower }

// fewest looks for a packing with the fewest new spools. Each piece must fit a
// spool in stock or a new one. start is a packing of those pieces that are
// longer than a new spool; with it there is always a packing in the result.
func fewest(d demand, s supply, start packing, m *meter) fewestResult {
	r := fewestResult{lower: lengthBound(d, s)}
	r.offer(bestFit(d, s, nil))
	r.offer(bestFit(d, s, start))
	if r.proved() {
		return r
	}
	if len(d.size)+len(s.kind) <= maxRows {
		r.round(d, s, r.packing, m)
	}
	if !r.proved() {
		r.weigh(d, s, m)
	}
	r.exhaust(d, s, m)
	return r
}

// offer keeps p if it is better than what there is.
func (r *fewestResult) offer(p packing) {
	if p != nil && (r.packing == nil || p.fresh() < r.packing.fresh()) {
		r.packing = p
	}
}

// weigh fills each spool as far as it goes, with as many new spools as the
// lower bound says.
func (r *fewestResult) weigh(d demand, s supply, m *meter) {
	part := m.share(4)
	defer m.giveBack(part)
	fill := newRack(d, s, r.lower, newPolicy(0, 0))
	if counts, kinds, _ := fill.search(worst, true, part); counts != nil {
		r.offer(fill.unrack(counts, kinds, s))
	}
}

// round bounds and plans by the linear programme.
func (r *fewestResult) round(d demand, s supply, pool []filled, m *meter) {
	part := m.share(2)
	defer m.giveBack(part)
	half := part.share(2)
	lp := newMaster(d, s, pool, half)
	lp.solve()
	part.giveBack(half)
	lp.meter = part.share(4)
	r.lower = max(r.lower, lp.safeBound())
	part.giveBack(lp.meter)
	for skip := 0; skip < dives && !r.proved() && !part.empty(); skip++ {
		r.offer(dive(d, s, lp.pool, skip, r.lower, part))
	}
}

// exhaust searches for one spool less until there is none less.
func (r *fewestResult) exhaust(d demand, s supply, m *meter) {
	for r.packing != nil && !r.proved() {
		p, v := complete(d, s, r.packing.fresh()-1, m)
		switch v {
		case yes:
			r.packing = p
		case no:
			r.lower = r.packing.fresh()
		default:
			return
		}
	}
}

// fits decides whether all pieces can be cut from the stock alone.
func fits(d demand, s supply, m *meter) (packing, verdict) {
	if d.pieces() == 0 {
		return packing{}, yes
	}
	// One endless spool stands for what can't be bought: a plan that does
	// without it is one from the stock.
	s.fresh = max(d.total(), 1)
	r := fewestResult{lower: lengthBound(d, s)}
	r.offer(bestFit(d, s, nil))
	if r.packing.fresh() > 0 && r.lower == 0 && len(d.size)+len(s.kind) <= maxRows {
		r.round(d, s, r.packing, m)
	}
	switch {
	case r.packing.fresh() == 0:
		return r.packing, yes
	case r.lower > 0:
		return nil, no
	}
	return complete(d, s, 0, m)
}

// shortest is the n shortest pieces of d.
func (d demand) shortest(n int) demand {
	var out demand
	for j := len(d.size) - 1; j >= 0 && n > 0; j-- {
		k := min(n, d.need[j])
		out.size = append([]measure.Length{d.size[j]}, out.size...)
		out.need = append([]int{k}, out.need...)
		n -= k
	}
	return out
}

// mostShortest is how many pieces of d, from the shortest, can be cut from the
// stock alone, with their packing, and how many at most could be. As a plan
// stays a plan when a piece is replaced by a shorter one, no choice of more
// pieces fits than of the shortest, and if n don't fit, n+1 don't.
func mostShortest(d demand, s supply, m *meter) (n, upper int, p packing) {
	s.fresh = 0
	lo, hi := 0, d.pieces()+1 // lo fit by bestFit, hi don't
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		if q := bestFit(d.shortest(mid), s, nil); q != nil {
			lo, p = mid, q
		} else {
			hi = mid
		}
	}
	upper = mostByLength(d, s)
	for lo < upper {
		part := m.share(3)
		q, v := fits(d.shortest(lo+1), s, part)
		m.giveBack(part)
		switch v {
		case yes:
			lo, p = lo+1, q
		case no:
			return lo, lo, p
		default:
			return lo, upper, p
		}
	}
	return lo, upper, p
}

// mostByLength is how many pieces have together no more than the length of the
// stock.
func mostByLength(d demand, s supply) int {
	room, n := s.stocked(), 0
	for j := len(d.size) - 1; j >= 0; j-- {
		k := min(measure.Length(d.need[j]), room/d.size[j])
		n += int(k)
		if room -= k * d.size[j]; k < measure.Length(d.need[j]) {
			break
		}
	}
	return n
}
