package stock

import (
	"cmp"
	"errors"
	"slices"

	"topplate/plan/measure"
)

// realise lists the pieces of each of n spools.
func (s *solver) realise(chunks []chunk, all []set, n int) [][]Piece {
	cut := make([][]Piece, n)
	taken := make([]int, len(all))
	for _, c := range chunks {
		from := taken[c.set]
		taken[c.set] += c.n
		cut[c.spool] = append(cut[c.spool], all[c.set].pieces[from:from+c.n]...)
	}
	for _, pieces := range cut {
		sequence(pieces)
	}
	return cut
}

// sequence puts the pieces of a spool in the order of cutting: the longest
// first, but the pieces of a group one after another, so that at the end of the
// spool, where earlier errors add up, little is at stake.
func sequence(pieces []Piece) {
	longest := map[string]measure.Length{}
	for _, p := range pieces {
		longest[p.Group] = max(longest[p.Group], p.Length)
	}
	head := func(p Piece) measure.Length {
		if p.Group == "" {
			return p.Length
		}
		return longest[p.Group]
	}
	slices.SortFunc(pieces, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(head(b), head(a)), cmp.Compare(a.Group, b.Group), cmp.Compare(b.Length, a.Length), cmp.Compare(a.Tag, b.Tag))
	})
}

// report makes the plan of the type. cut has the pieces of each spool of p.
func (s *solver) report(p packing, cut [][]Piece) TypePlan {
	t := TypePlan{Type: s.name, Score: s.score, Bound: s.trusted()}
	t.Proved = t.Score.proved(t.Bound)
	used := make([]bool, len(p))
	for _, spool := range s.spools {
		var pieces []Piece
		for i, f := range p {
			if !used[i] && f.kind != freshKind && s.supply.kind[f.kind] == spool.Length {
				used[i], pieces = true, cut[i]
				break
			}
		}
		id := SpoolID{Type: s.name, Tag: spool.Tag}
		t.Spools = append(t.Spools, s.spool(id, spool.Length, spool.Marks, pieces))
	}
	fresh := 0
	for i, f := range p {
		if f.kind == freshKind {
			fresh++
			plan := s.spool(SpoolID{Type: s.name, New: fresh}, s.supply.fresh, nil, cut[i])
			plan.Totals.Bought = s.supply.fresh
			t.Spools = append(t.Spools, plan)
		}
	}
	for _, spool := range t.Spools {
		t.Totals.add(spool.Totals)
	}
	return t
}

// trusted is the bound as far as it means anything: beyond the first level that
// is not proved, a plan may be as good as can be.
func (s *solver) trusted() Score {
	b := s.bound
	switch level := s.score.proved(b); {
	case level < Cut:
		b = Score{Uncut: b.Uncut, Longest: s.policy.lengths(s.supply.longest())}
	case level < Bought:
		b = Score{Uncut: b.Uncut, NewSpools: b.NewSpools, Longest: s.policy.lengths(s.supply.longest())}
	case level < Remainders && !s.setsFirst:
		b.Splits = 0
	}
	return b
}

// spool plans one spool, pieces in the order of cutting.
func (s *solver) spool(id SpoolID, length measure.Length, marks *Marks, pieces []Piece) SpoolPlan {
	plan := SpoolPlan{ID: id, Length: length}
	used := measure.Length(0)
	for _, p := range pieces {
		used += p.Length
		plan.Cuts = append(plan.Cuts, CutStep{Piece: p, Used: used, Mark: reading(marks, used)})
		plan.Totals.Cut += p.Length
		s.excess(&plan.Totals, p.Excess)
	}
	plan.Remainder = length - used
	plan.Keeping = s.policy.keep(len(pieces) > 0, plan.Remainder)
	switch plan.Keeping {
	case Waste:
		plan.Totals.Waste += plan.Remainder
	case Patch:
		plan.Totals.Patch += plan.Remainder
	case Usable:
		plan.Totals.Usable += plan.Remainder
	}
	plan.Mark = reading(marks, used)
	if marks != nil {
		_, err := marks.At(length)
		errors.As(err, &plan.MarkFault)
	}
	plan.Checks = checks(pieces, length, marks)
	return plan
}

// excess counts what is cut off a cable in place.
func (s *solver) excess(t *Totals, l measure.Length) {
	if s.patchCord > 0 && l >= s.patchCord {
		t.Patch += l
	} else {
		t.Waste += l
	}
}

// reading is nil if marks are unknown or would pass 0.
func reading(m *Marks, used measure.Length) *Reading {
	if m == nil {
		return nil
	}
	r, err := m.At(used)
	if err != nil {
		return nil
	}
	return &r
}

// checks says for each set of equal cables on a spool where to stop.
func checks(pieces []Piece, length measure.Length, marks *Marks) []Check {
	var list []Check
	rest := measure.Length(0)
	for _, p := range pieces {
		rest += p.Length
	}
	used := measure.Length(0)
	for i := 0; i < len(pieces); {
		n := i + 1
		for n < len(pieces) && equals(pieces[i], pieces[n]) {
			n++
		}
		c := Check{First: pieces[i].Tag, Before: used}
		for _, p := range pieces[i+1 : n] {
			c.Equal = append(c.Equal, p.Tag)
		}
		all := pieces[i].Length * measure.Length(n-i)
		used, rest = used+all, rest-all
		c.MustRemain, c.StopAfter = rest, length-rest
		c.StopFirst = c.StopFrom(c.Before)
		c.StopFirstMark, c.StopAfterMark = reading(marks, c.StopFirst), reading(marks, c.StopAfter)
		list = append(list, c)
		i = n
	}
	return list
}

// equals reports whether two pieces belong to one set.
func equals(a, b Piece) bool { return a.Group != "" && a.Group == b.Group && a.Length == b.Length }

// pulls says from which spools each group comes.
func pulls(plans []TypePlan) []Pull {
	byGroup := map[string]*Pull{}
	var names []string
	for _, t := range plans {
		for _, s := range t.Spools {
			for _, c := range s.Cuts {
				g := c.Piece.Group
				if g == "" {
					continue
				}
				if byGroup[g] == nil {
					byGroup[g] = &Pull{Group: g}
					names = append(names, g)
				}
				byGroup[g].add(s.ID, c.Piece.Tag)
			}
		}
	}
	slices.Sort(names)
	var out []Pull
	for _, g := range names {
		out = append(out, *byGroup[g])
	}
	return out
}

func (p *Pull) add(id SpoolID, tag string) {
	if n := len(p.Parts); n == 0 || p.Parts[n-1].Spool != id {
		p.Parts = append(p.Parts, PullPart{Spool: id})
	}
	last := &p.Parts[len(p.Parts)-1]
	last.Tags = append(last.Tags, tag)
}
