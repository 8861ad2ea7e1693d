package stock

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
)

// A set is equal cables of one group, or one cable that has no equal.
type set struct {
	length measure.Length // of one
	pieces []Piece        // by tag
}

// sets puts equal cables together: by length from long to short, then large
// sets first, then by group and tag. A piece without group is by itself.
func sets(pieces []Piece) []set {
	sorted := slices.Clone(pieces)
	slices.SortFunc(sorted, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(a.Group, b.Group), cmp.Compare(a.Tag, b.Tag))
	})
	var out []set
	for _, p := range sorted {
		if n := len(out); n > 0 && p.Group != "" && out[n-1].length == p.Length && out[n-1].pieces[0].Group == p.Group {
			out[n-1].pieces = append(out[n-1].pieces, p)
		} else {
			out = append(out, set{p.Length, []Piece{p}})
		}
	}
	slices.SortStableFunc(out, func(a, b set) int {
		return cmp.Or(cmp.Compare(b.length, a.length), cmp.Compare(len(b.pieces), len(a.pieces)))
	})
	return out
}

// A chunk is n cables of a set that come off one spool.
type chunk struct {
	set, n int
	spool  int // as a place in the packing
}

// deal gives the cables of sets to the spools of a packing that says only how
// many of each length they hold. A set goes to the spool that holds just as
// many, or else to the one that holds least more, or else most of it to the
// one that holds most.
func deal(p packing, d demand, all []set) []chunk {
	var out []chunk
	hold := make([][]int, len(p))
	for i, f := range p {
		hold[i] = slices.Clone(f.count)
	}
	j := 0
	for s, one := range all {
		for d.size[j] != one.length {
			j++
		}
		for rest := len(one.pieces); rest > 0; {
			at := roomiest(hold, j, rest)
			n := min(rest, hold[at][j])
			out = append(out, chunk{s, n, at})
			hold[at][j] -= n
			rest -= n
		}
	}
	return out
}

// roomiest is the spool that holds the fewest of size j that are at least n,
// or else the most.
func roomiest(hold [][]int, j, n int) int {
	best := -1
	for i, h := range hold {
		switch {
		case h[j] == 0:
		case best < 0, h[j] >= n && (hold[best][j] < n || h[j] < hold[best][j]),
			h[j] < n && h[j] > hold[best][j]:
			best = i
		}
	}
	return best
}

// splits counts the chunks beyond the first of each set.
func splits(chunks []chunk) int {
	seen := map[int]bool{}
	n := 0
	for _, c := range chunks {
		if seen[c.set] {
			n++
		}
		seen[c.set] = true
	}
	return n
}

// leastSplits is how often sets must be split because no spool is long enough
// for all of one.
func leastSplits(all []set, longest measure.Length) int {
	n := 0
	for _, s := range all {
		n += (len(s.pieces)+s.most(longest)-1)/s.most(longest) - 1
	}
	return n
}

// most is how many cables of s come off a spool of length l at most, at least
// 1.
func (s set) most(l measure.Length) int { return max(1, min(len(s.pieces), int(l/s.length))) }

// A weaver keeps sets whole where the leftover does not suffer.
type weaver struct {
	sets   []set
	supply supply
	fresh  int // new spools in use
	policy policy
	goal   leftover // what the plan may not be worse than
	free   bool     // whether only waste and patch remainders of goal matter
	result leftover // of the plan
	exact  bool     // whether result is proved the best for its chunks
	best   bool     // whether result is proved the best of all plans with as few splits
	meter  *meter
}

// weave looks for a plan that is as good as p but splits fewer sets. It tries
// to keep all sets whole, as far as a spool is long enough; if that can't be
// had, it starts from p and makes one after another whole.
func (w *weaver) weave(p packing, d demand) (packing, []chunk) {
	w.result = w.goal
	best := deal(p, d, w.sets)
	least := leastSplits(w.sets, w.supply.longest())
	if splits(best) == least {
		return p, best
	}
	if q, c := w.pack(w.wholes()); q != nil {
		p, best = q, c
		w.best = least == 0 && w.exact
	}
	for s := range w.sets {
		if splits(best) == least || w.meter.empty() {
			break
		}
		items := w.joined(best, s)
		if len(items) == len(best) {
			continue
		}
		if q, c := w.pack(items); q != nil {
			p, best = q, c
		}
	}
	return p, best
}

// wholes is the sets as they are, or in parts that fit the longest spool.
func (w *weaver) wholes() []chunk {
	var items []chunk
	for s, one := range w.sets {
		items = append(items, w.parts(s, one)...)
	}
	return items
}

func (w *weaver) parts(s int, one set) []chunk {
	var items []chunk
	for rest := len(one.pieces); rest > 0; {
		n := min(rest, one.most(w.supply.longest()))
		items = append(items, chunk{set: s, n: n})
		rest -= n
	}
	return items
}

// joined is the chunks of a plan, but set s as whole as can be.
func (w *weaver) joined(chunks []chunk, s int) []chunk {
	var items []chunk
	for _, c := range chunks {
		if c.set != s {
			items = append(items, chunk{set: c.set, n: c.n})
		}
	}
	return append(items, w.parts(s, w.sets[s])...)
}

// pack looks for a plan that cuts every item from one spool and has a leftover
// as good as the goal.
func (w *weaver) pack(items []chunk) (packing, []chunk) {
	lengths := make([]measure.Length, len(items))
	for i, c := range items {
		lengths[i] = w.sets[c.set].length * measure.Length(c.n)
	}
	d := newDemand(lengths)
	r := newRack(d, w.supply, w.fresh, w.policy)
	w.meter.left -= int64(r.work + skeletonWork/16)
	part := w.meter.share(4)
	defer w.meter.giveBack(part)
	limit := w.goal
	if w.free {
		limit.longest, limit.opened = -1, 0
	}
	counts, kinds, bound := r.search(limit, !w.free, part)
	if counts == nil {
		return nil, nil
	}
	p := r.unrack(counts, kinds, w.supply)
	w.result = p.leftover(d, w.supply, w.policy)
	w.exact = w.result == bound
	// Items of one length are alike for the search: take them in order.
	bySize := map[measure.Length][]chunk{}
	for i, c := range items {
		bySize[lengths[i]] = append(bySize[lengths[i]], c)
	}
	var out []chunk
	for i, f := range p {
		for j, n := range f.count {
			for _, c := range bySize[d.size[j]][:n] {
				c.spool = i
				out = append(out, c)
			}
			bySize[d.size[j]] = bySize[d.size[j]][n:]
		}
	}
	return p, merged(out)
}

// merged joins chunks of one set on one spool.
func merged(chunks []chunk) []chunk {
	slices.SortFunc(chunks, func(a, b chunk) int {
		return cmp.Or(cmp.Compare(a.set, b.set), cmp.Compare(a.spool, b.spool))
	})
	var out []chunk
	for _, c := range chunks {
		if n := len(out); n > 0 && out[n-1].set == c.set && out[n-1].spool == c.spool {
			out[n-1].n += c.n
		} else {
			out = append(out, c)
		}
	}
	return out
}
