package tree

import (
	"cmp"
	"math/bits"
	"slices"
)

// run returns the least cost of a flow and its label, or the limit if there is
// none below. If the work runs out it returns nothing that helps.
//
// A set with the near end in it that is short of cables stands for what is to
// come to a state; it is taken back to the states before. The order is that of
// the cost with the potential of what flows on, which never falls; what can't be
// part of a flow below the limit, by the dual, is left out.
func (p *parting) run(w *meter) (least int64, goal int32) {
	for i, t := range p.member {
		for _, g := range p.start[t] {
			p.put(g, 1<<i, p.supply[i]*p.pot[g], -1, -1)
		}
	}
	p.put(p.sink, p.near(), p.space.fixed[p.sink]+p.short*p.own, -1, -1)
	everyone := p.near()<<1 - 1
	for p.heap.size > 0 {
		key, id := p.heap.pop()
		l := p.labels[id]
		if l.done || key > l.key {
			continue
		}
		if l.state == p.exit && l.set == everyone {
			return p.cost(l.state, l.set, key), id
		}
		p.labels[id].done = true
		steps := p.join(id)
		switch q := p.flow(l.set); {
		case l.state == p.exit:
		case q < 0:
			steps += p.takeBack(id, -q)
		case l.state != p.sink:
			steps += p.moveOn(id, q)
		}
		if !w.spend(2*steps) || len(p.labels) > maxLabels {
			return 0, -1
		}
	}
	return p.limit, -1
}

// flow is how many cables travel on from where a set is, below none while the
// near end is short of them.
func (p *parting) flow(set uint64) int64 {
	var q int64
	if set&p.near() != 0 {
		q, set = -p.short, set&^p.near()
	}
	for ; set != 0; set &= set - 1 {
		q += p.supply[bits.TrailingZeros64(set)]
	}
	return q
}

// cost is what a set has paid, by its key.
func (p *parting) cost(g int32, set uint64, key int64) int64 {
	key -= p.flow(set) * p.pot[g]
	if set&p.near() != 0 {
		key -= p.short * p.pot[p.sink]
	}
	return key
}

// least is what a flow costs at least that has the label in it: what it has
// paid, the floors of the members not in it, and the potentials of the cables
// that flow on, or of those that are to come, which need not go to the root.
// Which cables these are is open where they part, so it takes those that pay
// least or save most.
func (p *parting) least(g int32, set uint64, q, paid int64) int64 {
	in := set &^ p.near()
	least := paid + p.total
	for rest := in; rest != 0; rest &= rest - 1 {
		least -= p.floors[bits.TrailingZeros64(rest)]
	}
	switch {
	case set == in:
		return least + p.potential(g, in, q) - p.short*p.toll
	case q < 0:
		return least - p.most(g, ^set&(p.near()-1), -q, true)
	default:
		return least + p.potential(g, in, q+p.short) - p.most(g, in, p.short, false)
	}
}

// potential is that of a set of q cables.
func (p *parting) potential(g int32, set uint64, q int64) int64 {
	sum := q * p.view.base[g]
	if row := p.view.row[g]; row > 0 {
		lifts := p.view.lifts[int(row)*len(p.member):]
		for ; set != 0; set &= set - 1 {
			sum += lifts[bits.TrailingZeros64(set)]
		}
	}
	return sum
}

// most is the potential of so many cables of a set where it is highest, less,
// for those who are still to come to the state, what that costs. It is far below
// zero if they are too few.
func (p *parting) most(g int32, set uint64, cables int64, come bool) int64 {
	sum := cables * p.view.base[g]
	lifts := p.view.lifts[int(p.view.row[g])*len(p.member):]
	p.order = p.order[:0]
	for ; set != 0; set &= set - 1 {
		i := bits.TrailingZeros64(set)
		p.worth[i] = lifts[i]
		if come {
			if p.coming[i][g] == far {
				continue
			}
			p.worth[i] -= p.coming[i][g]
		}
		p.order = append(p.order, i)
	}
	slices.SortFunc(p.order, func(a, b int) int {
		return cmp.Compare(p.worth[b]*p.supply[a], p.worth[a]*p.supply[b])
	})
	for _, i := range p.order {
		n := min(cables, p.supply[i])
		sum += (p.worth[i]*n + p.supply[i] - 1) / p.supply[i]
		if cables -= n; cables == 0 {
			return sum
		}
	}
	return -far / 2
}

// put makes or improves a label, unless it can't be in a plan that is asked for.
func (p *parting) put(g int32, set uint64, key int64, a, b int32) {
	if p.least(g, set, p.flow(set), p.cost(g, set, key)) < p.limit {
		p.offer(g, set, key, a, b)
	}
}

// join merges a label with those settled at its state, as merge does. Where that
// gives the near end all it is short of, the set is complete.
func (p *parting) join(id int32) (steps int) {
	l := p.labels[id]
	at, q := &p.at[l.state], p.flow(l.set)
	low, here := lowest(l.set), p.mergedHere(&l)
	for i := range at.came {
		steps++
		if m := &at.came[i]; m.set&l.set == 0 && (!here || lowest(m.set) > low) {
			p.joinTwo(&l, m, id, q)
		}
	}
	for i := range at.merged {
		steps++
		if m := &at.merged[i]; !here && m.set&l.set == 0 && lowest(m.set) < low {
			p.joinTwo(&l, m, id, q)
		}
	}
	if here {
		at.merged = append(at.merged, mate{l.set, l.key, id})
	} else {
		at.came = append(at.came, mate{l.set, l.key, id})
	}
	return steps
}

// joinTwo merges a label with one settled at its state.
func (p *parting) joinTwo(l *label, m *mate, id int32, q int64) {
	to := l.state
	if q2 := p.flow(m.set); (q < 0) != (q2 < 0) {
		if q+q2 > 0 {
			return // they part on their way here
		} else if q+q2 == 0 {
			to = p.exit
		}
	}
	p.put(to, l.set|m.set, l.key+m.key, m.id, id)
}

// takeBack takes a set that is short of q cables to the states before its own,
// and lets those settled there part that bring more than that.
func (p *parting) takeBack(id int32, q int64) (steps int) {
	l := p.labels[id]
	for _, t := range p.before(l.state) {
		steps++
		h := t.to
		key := l.key + q*p.pot[l.state] + q*t.price
		p.put(h, l.set, key+p.space.fixed[h]+q*p.unit[h]-q*p.pot[h], id, -1)
		for m := range p.at[h].all() {
			steps++
			if m.set&l.set == 0 {
				if n := p.flow(m.set); n > q {
					steps += p.part(m.id, id, n, q, t.price)
				}
			}
		}
	}
	return steps
}

// moveOn takes a set of q cables over its state to all that may follow, and lets
// it part where some of these are short of fewer.
func (p *parting) moveOn(id int32, q int64) (steps int) {
	l := p.labels[id]
	if p.shut[l.state] && q < p.together {
		return 0
	}
	key := l.key - q*p.pot[l.state] + p.space.fixed[l.state] + q*p.unit[l.state]
	for _, t := range p.turns(l.state) {
		steps++
		if t.to != p.sink || l.set&p.near() == 0 {
			p.put(t.to, l.set, key+q*t.price+q*p.pot[t.to], id, -1)
		}
		if l.set&p.near() != 0 {
			continue
		}
		for m := range p.at[t.to].all() {
			steps++
			if m.set&p.near() != 0 && m.set&l.set == 0 {
				if n := -p.flow(m.set); 0 < n && n < q {
					steps += p.part(id, m.id, q, n, t.price)
				}
			}
		}
	}
	return steps
}

// part takes q cables, of label a, over their state, where n of them turn to
// what is short of them, label b, and the others elsewhere.
func (p *parting) part(a, b int32, q, n, turn int64) (steps int) {
	l, m := p.labels[a], p.labels[b]
	g := l.state
	if p.shut[g] && q < p.together {
		return 0
	}
	key := l.key - q*p.pot[g] + p.space.fixed[g] + q*p.unit[g]
	key += m.key + n*p.pot[m.state] + n*turn
	for _, t := range p.turns(g) {
		steps++
		if t.to != m.state && t.to != p.sink {
			p.put(t.to, l.set|m.set, key+(q-n)*(t.price+p.pot[t.to]), a, -2-b)
		}
	}
	return steps
}
