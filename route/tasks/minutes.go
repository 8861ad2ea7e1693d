package tasks

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/route"
	"topplate/route/network"
)

// handOut gives the minutes of the ways' cost terms to the tasks, those that
// are shared only once.
func (l *lot) handOut() {
	for k := range l.ways {
		w := &l.ways[k]
		n := int64(w.drop.Count)
		for i, a := range w.route.Arcs {
			arc := &l.graph.Arcs[a]
			by := l.carrier(k, i)
			l.bend(k, i, by)
			for _, c := range arc.Charges {
				switch {
				case c.PerCable && c.Term != price.Cable:
					l.give(by, c.Term, n*perLength(l.term(c.Term), arc.Length))
				case !c.PerCable && !l.spent[a]:
					l.once(k, a, c.Term, by)
				}
			}
			l.spent[a] = true
		}
	}
}

// term is the job's own value of a cost term.
func (s *site) term(id price.ID) int64 {
	if own, ok := s.job.Prices[string(id)]; ok {
		return own.Value
	}
	t, _ := price.Lookup(id)
	return t.Value
}

// perLength is thousandths of a minute for a length at so many per metre, to
// the nearest.
func perLength(perMetre int64, l measure.Length) int64 {
	whole, rest := int64(l/measure.Metre), int64(l%measure.Metre)
	return whole*perMetre + (rest*perMetre+int64(measure.Metre)/2)/int64(measure.Metre)
}

// carrier is the task that brings the cables of way k along its arc i.
func (l *lot) carrier(k, i int) string {
	w := &l.ways[k]
	a := w.route.Arcs[i]
	p := w.passageAt(i)
	last := p == len(w.passages)-1
	switch {
	case p < 0:
		return l.stretchOf(a).id
	case last && l.outdoors(w) && l.dropRod(w) >= 0:
		return l.shotOf(k, p, l.dropRod(w)).id
	case l.graph.Arcs[a].Kind == route.RodArc:
		return l.shotOf(k, p, a).id
	case last:
		return at("fish", w.drop.Tag)
	case p == 0:
		j := slices.IndexFunc(l.feeds, func(f feed) bool { return slices.Contains(f.ways, k) })
		return l.feeds[j].id
	}
	return l.passOf(k, p).id
}

// bend gives the minutes of the bend before arc i, if there is one.
func (l *lot) bend(k, i int, by string) {
	r := l.ways[k].route
	if i == 0 {
		return
	}
	in, out := heading(l.graph, r.Arcs[i-1], r.Nodes[i-1]), heading(l.graph, r.Arcs[i], r.Nodes[i])
	if in == out || in == network.Free || out == network.Free {
		return
	}
	term := price.BendFree
	if kind := l.graph.Nodes[r.Nodes[i]].Kind; kind == route.PlateNode || kind == route.SurfaceNode {
		term = price.BendAtHole
	}
	l.give(by, term, int64(l.ways[k].drop.Count)*l.term(term))
}

// once gives the minutes of a term that is paid once on arc a.
func (l *lot) once(k, a int, id price.ID, by string) {
	t, _ := price.Lookup(id)
	arc := &l.graph.Arcs[a]
	n := l.term(id)
	switch {
	case t.Unit == price.MinutesPerMetre && id != price.Shift:
		l.give(by, id, perLength(n, arc.Length))
	case t.Unit != price.MinutesEach:
	case id == price.CrossJoist:
		l.give(by, id, (n*l.halfJoists(arc)+1)/2)
	case id == price.Rod:
		l.give(by, id, n)
	case id == price.LiftBoard && arc.Kind != route.PlateArc:
		l.give(by, id, n)
	default:
		l.divide(k, arc, id, n, by)
	}
}

// divide gives the minutes of a term to the tasks that have a share in it. A
// hole counts as often as it is bored. What was bored before is only sealed.
func (l *lot) divide(k int, arc *route.Arc, id price.ID, n int64, by string) {
	h := -1
	place := arc.Hole
	if place < 0 && slices.Contains(price.Bores, id) {
		place = l.holeBeside(k, arc)
	}
	if place >= 0 {
		h = l.holeAt[place]
		if arc.Hole >= 0 && slices.Contains(price.Bores, id) {
			n *= int64(max(l.res.Holes[h].Count, 1))
		}
	}
	if !slices.ContainsFunc(shares, func(s share) bool { return s.term == id }) {
		l.give(by, id, n)
		return
	}
	for _, s := range shares {
		if s.term != id {
			continue
		}
		part := n * s.thousandths / 1000
		to := ""
		switch {
		case s.kind == later || h >= 0 && l.notNow(h, s.kind):
			continue
		case s.kind == carried:
			to = by
		case h >= 0:
			to = at(s.kind.String(), l.res.Holes[h].ID)
		case arc.From == l.graph.Root || arc.To == l.graph.Root:
			to = closetShare(s.kind)
		case s.kind == Clean:
			to = at("clean", l.placeOf(l.ways[k].drop))
		default:
			to = at(s.kind.String(), l.ways[k].drop.Tag)
		}
		l.give(to, id, part)
	}
}

// holeBeside is the place of the hole before or after an arc of way k, -1 if
// there is none.
func (l *lot) holeBeside(k int, arc *route.Arc) int {
	arcs := l.ways[k].route.Arcs
	i := slices.IndexFunc(arcs, func(a int) bool { return &l.graph.Arcs[a] == arc })
	for _, j := range []int{i - 1, i + 1} {
		if 0 <= j && j < len(arcs) && l.graph.Arcs[arcs[j]].Hole >= 0 {
			return l.graph.Arcs[arcs[j]].Hole
		}
	}
	return -1
}

// notNow reports whether a kind of work on a hole belongs to another lot.
func (l *lot) notNow(h int, k Kind) bool {
	if k == Seal || k == Patch {
		return l.kept[h]
	}
	return l.bored[h]
}

// closetShare is the task at the closet that has a share in its ceiling's
// opening: marking it is part of opening it.
func closetShare(k Kind) string {
	if k == Clean {
		return at("clean", closet)
	}
	return openCloset
}

// halfJoists is twice the number of joists that an arc crosses. A joist whose
// centre is at an end counts half.
func (l *lot) halfJoists(arc *route.Arc) int64 {
	p, q := l.graph.Nodes[arc.From].At, l.graph.Nodes[arc.To].At
	u, v := int64(p.X), int64(q.X)
	if arc.Space < 0 {
		return 0
	}
	if !l.job.House.Spaces[arc.Space].AlongY {
		u, v = int64(p.Y), int64(q.Y)
	}
	if u > v {
		u, v = v, u
	}
	var n int64
	joists := l.joists[arc.Space]
	i, _ := slices.BinarySearchFunc(joists, u, cmp.Compare[int64])
	for ; i < len(joists) && joists[i] <= v; i++ {
		if n += 2; joists[i] == u || joists[i] == v {
			n--
		}
	}
	return n
}
