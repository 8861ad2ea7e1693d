package stock

import (
	"cmp"
	"iter"
	"slices"

	"topplate/plan/measure"
)

// A place is one spool of a skeleton, in the order of filling.
type place struct {
	kind   int
	ended  bool
	lo, hi int // least and largest load in units
	// Over all places after this one:
	loAfter, hiAfter int
	endsAfter        leftover       // the best that becomes of the ended ones
	fullAfter        measure.Length // length of the ended ones
	otherAfter       measure.Length // most that all but the last can take
}

// A filler searches the skeletons of a rack for the plan with the best
// leftover. It fills one spool after another, first those that are to be
// ended, last the one that is to have the longest remainder. For each it tries
// the loads that pieces still there add up to, the best first, and for each
// load all sets of pieces.
type filler struct {
	*rack
	limit leftover // only plans below it are looked for
	equal bool     // or also one as good, which ends the search
	meter *meter
	cut   bool // whether the steps ran out

	places []place
	last   skeleton
	left   []int     // pieces still there
	counts [][]int   // by place
	loads  []int     // by place
	reach  [][]reach // by place and size: loads from this size on
	best   [][]int   // counts of the best plan
	kinds  []int     // and the kind of each of its spools
	done   bool
}

// search goes through the skeletons. The bound is that of the first skeleton
// that could not be searched to its end, or the limit if none is left.
func (r *rack) search(limit leftover, equal bool, m *meter) (counts [][]int, kinds []int, bound leftover) {
	f := &filler{rack: r, limit: limit, equal: equal, left: slices.Clone(r.need)}
	open := leftover{longest: r.lengths(r.kind[len(r.kind)-1])}
	m.left -= int64(r.work)
	if r.tooLarge() {
		return nil, nil, open
	}
	list, all := r.skeletons()
	known := all
	for _, s := range list {
		if c := s.bound.compare(f.limit); f.done || c > 0 || c == 0 && !equal {
			break
		}
		part := m.share(3)
		f.meter, f.cut = part, false
		f.prepare(s)
		f.fill(0, f.units(), leftover{})
		m.giveBack(part)
		if (f.cut || !r.exact) && known && s.bound.compare(f.limit) < 0 {
			open, known = s.bound, false
		}
	}
	if known || open.compare(f.limit) > 0 {
		open = f.limit
	}
	return f.best, f.kinds, open
}

// units is the length of all pieces in units.
func (r *rack) units() int {
	sum := 0
	for j, w := range r.piece {
		sum += w * r.need[j]
	}
	return sum
}

// prepare lays out the places of a skeleton.
func (f *filler) prepare(s skeleton) {
	f.last, f.places = s, f.places[:0]
	for k, n := range s.ended {
		for range n {
			f.places = append(f.places, place{kind: k, ended: true, lo: max(1, f.keptRoom[k]+1), hi: f.room[k]})
		}
	}
	for k := len(s.ended) - 1; k >= 0; k-- {
		kept := f.have[k] - s.ended[k]
		if k == s.longest {
			kept--
		}
		for range kept {
			f.places = append(f.places, f.keptPlace(k))
		}
	}
	if s.longest >= 0 {
		f.places = append(f.places, f.keptPlace(s.longest))
	}
	f.sumUp()
	for len(f.counts) < len(f.places) {
		f.counts = append(f.counts, make([]int, len(f.size)))
		f.loads = append(f.loads, 0)
		f.reach = append(f.reach, nil)
	}
}

func (f *filler) keptPlace(k int) place {
	return place{kind: k, hi: max(0, f.keptRoom[k])}
}

// sumUp fills in what depends on the places after each.
func (f *filler) sumUp() {
	n := len(f.places)
	for i := n - 2; i >= 0; i-- {
		p, next := &f.places[i], f.places[i+1]
		p.loAfter, p.hiAfter = next.loAfter+next.lo, next.hiAfter+next.hi
		p.endsAfter, p.fullAfter, p.otherAfter = next.endsAfter, next.fullAfter, next.otherAfter
		e := f.ends[next.kind]
		if next.ended {
			p.endsAfter.waste += e.waste
			p.endsAfter.patch += e.patch
			p.endsAfter.opened++
			p.fullAfter += f.kind[next.kind]
		}
		if i+1 < n-1 && next.ended {
			p.otherAfter += f.kind[next.kind]
		} else if i+1 < n-1 {
			p.otherAfter += e.mostKept
		}
	}
}

// fill cuts rest units of pieces from the places i and after it; sofar is what
// has become of the ended ones before.
func (f *filler) fill(i, rest int, sofar leftover) {
	p := f.places[i]
	lo, hi := max(p.lo, rest-p.hiAfter), min(p.hi, rest-p.loAfter)
	if lo > hi {
		return
	}
	if i == len(f.places)-1 {
		copy(f.counts[i], f.left)
		f.finish()
		return
	}
	if !f.spread(i, hi) {
		f.cut = true
		return
	}
	for load := range f.candidates(i, lo, hi) {
		after := sofar
		if p.ended && f.exact {
			after.add(f.policy, true, f.kind[p.kind]-measure.Length(load)*f.unit)
		} else if load > 0 {
			after.opened++
		}
		if c := f.outlook(i, rest-load, after).compare(f.limit); c > 0 || c == 0 && !f.equal {
			continue // a smaller load may leave more on the longest, or open fewer
		}
		f.loads[i] = load
		f.choose(i, 0, load, rest-load, after)
		if f.done || f.cut {
			return
		}
	}
}

// candidates yields the possible loads of place i from lo to hi, the best
// first. Equal places are filled in this order, as their plans differ in names
// only.
func (f *filler) candidates(i, lo, hi int) iter.Seq[int] {
	p, set := f.places[i], f.reach[i][0]
	twin := i > 0 && f.places[i-1].kind == p.kind && f.places[i-1].ended == p.ended
	if p.ended {
		return func(yield func(int) bool) {
			loads := f.endLoads(p.kind, set)
			f.meter.left -= int64(len(loads))
			for _, l := range loads {
				if l < lo || l > hi || twin && f.order(p.kind, l) < f.order(p.kind, f.loads[i-1]) {
					continue
				}
				if !yield(l) {
					return
				}
			}
		}
	}
	if twin {
		hi = min(hi, f.loads[i-1])
	}
	return func(yield func(int) bool) {
		for l := set.below(hi); l >= lo; l = set.below(l - 1) {
			if !yield(l) {
				return
			}
		}
	}
}

// order is a number that increases along endLoads.
func (f *filler) order(kind, load int) int {
	rest := f.kind[kind] - measure.Length(load)*f.unit
	if f.exact && f.keep(true, rest) == Waste {
		return 2*f.room[kind] - load
	}
	return -load
}

// outlook bounds the leftover of all plans in which rest units are left for
// the places after i.
func (f *filler) outlook(i, rest int, sofar leftover) leftover {
	f.meter.left -= int64(len(f.places))
	p, b := f.places[i], f.last.bound
	if !f.exact {
		return b
	}
	waste, patch := sofar.waste+p.endsAfter.waste, sofar.patch+p.endsAfter.patch
	if cmp.Or(cmp.Compare(waste, b.waste), cmp.Compare(patch, b.patch)) > 0 {
		b.waste, b.patch = waste, patch
	}
	length, spare := measure.Length(rest)*f.unit, measure.Length(0)
	if l := f.last.longest; l >= 0 {
		b.longest = min(b.longest, f.lengths(f.kind[l]-max(0, length-p.otherAfter)))
		spare = f.kind[l] - measure.Length(b.longest)*f.usable
	}
	b.opened = sofar.opened + p.endsAfter.opened + fewestOpened(length-p.fullAfter, spare, f.keptAfter(i))
	return b
}

// keptAfter yields the largest loads of the kept places after i but for the
// last, from large to small.
func (f *filler) keptAfter(i int) iter.Seq[measure.Length] {
	return func(yield func(measure.Length) bool) {
		for q := i + 1; q < len(f.places); q++ {
			p := f.places[q]
			if !p.ended && (q < len(f.places)-1 || f.last.longest < 0) && !yield(f.ends[p.kind].mostKept) {
				return
			}
		}
	}
}

// spread works out which loads up to hi the pieces still there add up to, from
// every size on. It reports whether there were steps for it.
func (f *filler) spread(i, hi int) bool {
	n := len(f.size)
	if len(f.reach[i]) != n+1 {
		f.reach[i] = make([]reach, n+1)
	}
	words := hi/64 + 1
	for j := n; j >= 0; j-- {
		if cap(f.reach[i][j]) < words {
			f.reach[i][j] = make(reach, words)
		}
		set := f.reach[i][j][:words]
		f.reach[i][j] = set
		if j == n {
			clear(set)
			set[0] = 1
			continue
		}
		copy(set, f.reach[i][j+1])
		if !f.meter.spend(words + set.addPieces(f.piece[j], f.left[j])) {
			return false
		}
	}
	return true
}

// choose cuts load units at place i from the pieces from size j on, in all
// ways, many of the long ones first, and fills the next place after each.
func (f *filler) choose(i, j, load, rest int, sofar leftover) {
	if !f.meter.spend(1) {
		f.cut = true
		return
	}
	if j == len(f.size) {
		f.fill(i+1, rest, sofar)
		return
	}
	w := f.piece[j]
	for n := min(f.left[j], load/w); n >= 0; n-- {
		if !f.reach[i][j+1].has(load - n*w) {
			continue
		}
		f.counts[i][j] = n
		f.left[j] -= n
		f.choose(i, j+1, load-n*w, rest, sofar)
		f.left[j] += n
		if f.done || f.cut {
			return
		}
	}
}

// finish compares a full plan with the best.
func (f *filler) finish() {
	a := leftover{}
	for i, p := range f.places {
		l := load(f.size, f.counts[i])
		a.add(f.policy, l > 0, f.kind[p.kind]-l)
	}
	c := a.compare(f.limit)
	if c > 0 || c == 0 && !f.equal {
		return
	}
	f.limit = a
	f.best, f.kinds = nil, nil
	for i, p := range f.places {
		f.best = append(f.best, slices.Clone(f.counts[i]))
		f.kinds = append(f.kinds, p.kind)
	}
	f.done = f.equal || a.compare(f.last.bound) <= 0
}
