package stock

import (
	"iter"
	"slices"

	"topplate/plan/measure"
)

// A rack is a fixed number of spools of several kinds that all pieces are to
// be cut from, in units of length small enough for sets of loads.
type rack struct {
	demand
	policy
	kind []measure.Length // strictly increasing
	have []int
	// In units: the pieces, rounded up, and the spools, rounded down. exact
	// says that no piece was rounded.
	unit  measure.Length
	piece []int
	room  []int
	exact bool
	// keptRoom is the largest load after which a remainder is usable; -1 if the
	// spool is too short for that.
	keptRoom []int
	root     reach // loads from all pieces
	work     int   // steps that went into root
	ends     []end // by kind
}

// tooLarge reports whether sets of loads for every spool and length would not
// fit the memory.
func (r *rack) tooLarge() bool { return (len(r.size)+1)*(r.spools()+1) > maxWords/8 }

// maxWords bounds the memory for sets of loads, in words of 64 bits, and
// maxUnits the units of the longest spool.
const (
	maxWords = 4 << 20
	maxUnits = 1 << 19
)

// newRack joins stock and fresh new spools, kinds of equal length in one.
func newRack(d demand, s supply, fresh int, pol policy) *rack {
	r := &rack{demand: d, policy: pol, kind: slices.Clone(s.kind), have: slices.Clone(s.have)}
	if fresh > 0 {
		at, found := slices.BinarySearch(r.kind, s.fresh)
		if !found {
			r.kind = slices.Insert(r.kind, at, s.fresh)
			r.have = slices.Insert(r.have, at, 0)
		}
		r.have[at] += fresh
	}
	r.measureUnits()
	for k := range r.kind {
		r.ends = append(r.ends, r.bestEnd(k))
	}
	return r
}

// spools is the number of spools.
func (r *rack) spools() int {
	n := 0
	for _, k := range r.have {
		n += k
	}
	return n
}

// measureUnits takes the greatest common divisor of the pieces as unit, or if
// that makes too many units, a multiple of it.
func (r *rack) measureUnits() {
	for _, l := range r.size {
		r.unit = commonUnit(r.unit, l)
	}
	longest := r.kind[len(r.kind)-1]
	words := maxWords / (len(r.size) + 1) / (r.spools() + 1)
	most := measure.Length(max(256, min(maxUnits, 64*words)))
	r.exact = true
	if longest/r.unit > most {
		r.unit *= longest/r.unit/most + 1
		r.exact = false
	}
	for _, l := range r.size {
		r.piece = append(r.piece, int((l+r.unit-1)/r.unit))
	}
	for _, l := range r.kind {
		r.room = append(r.room, int(l/r.unit))
		if l < r.usable {
			r.keptRoom = append(r.keptRoom, -1)
		} else {
			r.keptRoom = append(r.keptRoom, int((l-r.usable)/r.unit))
		}
	}
	r.root = newReach(r.room[len(r.room)-1])
	r.root[0] = 1
	for j, w := range r.piece {
		r.work += r.root.addPieces(w, r.need[j])
	}
}

// An end is the best that can become of a spool that is cut until nothing
// usable is left, looking at this spool alone, and how far one can be cut that
// stays usable.
type end struct {
	possible     bool
	waste, patch measure.Length
	mostKept     measure.Length // largest load of a spool that stays usable, 0 if only none
}

// bestEnd looks at the loads that pieces add up to. If lengths were rounded,
// any load may be possible.
func (r *rack) bestEnd(k int) end {
	if !r.exact {
		return end{possible: true, mostKept: max(0, r.kind[k]-r.usable)}
	}
	e := end{}
	if l := r.root.below(r.keptRoom[k]); l > 0 {
		e.mostKept = measure.Length(l) * r.unit
	}
	for _, l := range r.endLoads(k, r.root) {
		a := leftover{}
		a.add(r.policy, true, r.kind[k]-measure.Length(l)*r.unit)
		return end{true, a.waste, a.patch, e.mostKept}
	}
	return e
}

// endLoads lists the loads of set after which nothing usable is left on a spool
// of kind k, the best first: nothing left, then patch remainders from short to
// long, then waste from little to much.
func (r *rack) endLoads(k int, set reach) []int {
	var loads, waste []int
	for l := set.below(r.room[k]); l > max(0, r.keptRoom[k]); l = set.below(l - 1) {
		rest := r.kind[k] - measure.Length(l)*r.unit
		if r.exact && r.keep(true, rest) == Waste {
			waste = append(waste, l)
		} else {
			loads = append(loads, l)
		}
	}
	return append(loads, waste...)
}

// A skeleton is a choice of what the spools shall be in the end: of each kind,
// so many are ended, that is cut until nothing usable is left, and the others
// kept, that is not cut or still usable. Of the kept ones, one of kind longest
// shall have the longest remainder; -1 if none is kept.
type skeleton struct {
	ended   []int
	longest int
	bound   leftover
}

// skeletonWork is how many kinds of spools are looked at to list choices.
const skeletonWork = 1 << 19

// skeletons lists those that a plan could have, the best bound first, and
// whether these are all. Without the rest, it is those with few ended spools.
func (r *rack) skeletons() (list []skeleton, all bool) {
	ended := make([]int, len(r.kind))
	all = true
	work := 0
	var choose func(k int)
	choose = func(k int) {
		if k < len(r.kind) {
			most := r.have[k]
			if !r.ends[k].possible {
				most = 0
			}
			for n := 0; n <= most && all; n++ {
				ended[k] = n
				choose(k + 1)
			}
			ended[k] = 0
			return
		}
		for l := -1; l < len(r.kind); l++ {
			work += len(r.kind) + 1
			if s, ok := r.skeleton(ended, l); ok {
				list = append(list, s)
			}
		}
		all = work < skeletonWork
	}
	choose(0)
	slices.SortStableFunc(list, func(a, b skeleton) int { return a.bound.compare(b.bound) })
	return list, all
}

// skeleton works out the bound of a choice. ok is false if it can't be.
func (r *rack) skeleton(ended []int, longest int) (s skeleton, ok bool) {
	total := r.total()
	kept, most, least, full := 0, measure.Length(0), measure.Length(0), measure.Length(0)
	room, patchable := measure.Length(0), false
	var b leftover
	for k, n := range ended {
		e := r.ends[k]
		b.waste += e.waste * measure.Length(n)
		b.patch += e.patch * measure.Length(n)
		patchable = patchable || n > 0 && r.patch < r.usable
		stay := r.have[k] - n
		if r.kind[k] > 0 {
			kept += stay
		}
		most += measure.Length(n)*r.kind[k] + measure.Length(stay)*e.mostKept
		full += measure.Length(n) * r.kind[k]
		b.opened += n
		least += measure.Length(n) * max(r.kind[k]-r.usable+1, 1)
		room += measure.Length(stay) * r.kind[k]
	}
	if most < total || least > total || (longest < 0) != (kept == 0) ||
		longest >= 0 && (r.kind[longest] == 0 || r.have[longest] == ended[longest]) {
		return s, false
	}
	all := load(r.kind, r.have) - total
	// What the kept spools can't hold is left on the ended ones.
	if over := all - room - b.waste - b.patch; over > 0 && !patchable {
		b.waste += over
	} else if over > 0 && b.waste == 0 {
		b.patch = max(b.patch, all-room)
	}
	spare := measure.Length(0) // what the longest can give without getting shorter in Score
	if longest >= 0 {
		// The load of the longest is what the others can't take.
		must := max(0, total-(most-r.ends[longest].mostKept))
		b.longest = r.lengths(r.kind[longest] - must)
		spare = r.kind[longest] - measure.Length(b.longest)*r.usable
	}
	b.opened += fewestOpened(total-full, spare, r.keptLoads(ended, longest))
	return skeleton{slices.Clone(ended), longest, b}, true
}

// keptLoads yields the largest loads of the kept spools but for one of kind
// longest, from large to small.
func (r *rack) keptLoads(ended []int, longest int) iter.Seq[measure.Length] {
	return func(yield func(measure.Length) bool) {
		for k := len(r.kind) - 1; k >= 0; k-- {
			n := r.have[k] - ended[k]
			if k == longest {
				n--
			}
			for range n {
				if !yield(r.ends[k].mostKept) {
					return
				}
			}
		}
	}
}

// fewestOpened is how many spools must be cut at least for a length, if one
// can give up to spare and the others up to loads, from large to small.
func fewestOpened(length, spare measure.Length, loads iter.Seq[measure.Length]) int {
	if length <= 0 {
		return 0
	}
	without, with := 0, 1
	for l := range loads {
		if length <= 0 {
			break
		}
		without++
		if length > spare {
			with++
		}
		length -= l
	}
	switch {
	case spare <= 0:
		return without
	case length <= 0:
		return min(without, with)
	}
	return with
}
