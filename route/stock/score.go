package stock

import (
	"cmp"
	"math"
	"slices"

	"topplate/plan/measure"
)

// A leftover is the part of a Score that depends on what is left on each spool.
type leftover struct {
	waste, patch measure.Length
	longest      int64 // in whole usable lengths
	opened       int
}

// worst is above every leftover.
var worst = leftover{waste: math.MaxInt64}

func (a leftover) compare(b leftover) int {
	return cmp.Or(cmp.Compare(a.waste, b.waste), cmp.Compare(a.patch, b.patch),
		cmp.Compare(b.longest, a.longest), cmp.Compare(a.opened, b.opened))
}

// A policy says from which length on a remainder is worth what.
type policy struct{ usable, patch measure.Length }

func newPolicy(usable, patch measure.Length) policy {
	usable = max(usable, 1) // an empty spool is never a remainder
	if patch <= 0 || patch > usable {
		patch = usable
	}
	return policy{usable, patch}
}

// lengths is how many usable lengths there are in l. Remainders are compared by
// this, as nobody parts equal cables to have an inch more left.
func (p policy) lengths(l measure.Length) int64 { return int64(l / p.usable) }

// keep is what becomes of a remainder.
func (p policy) keep(cut bool, rest measure.Length) Keeping {
	switch {
	case rest == 0:
		return Empty
	case !cut || rest >= p.usable:
		return Usable
	case rest >= p.patch:
		return Patch
	}
	return Waste
}

// add counts one spool.
func (a *leftover) add(p policy, cut bool, rest measure.Length) {
	if cut {
		a.opened++
	}
	switch p.keep(cut, rest) {
	case Waste:
		a.waste += rest
	case Patch:
		a.patch += rest
	case Usable:
		a.longest = max(a.longest, p.lengths(rest))
	}
}

// leftover counts all spools: those in the packing, and those in stock that it
// does not use.
func (p packing) leftover(d demand, s supply, pol policy) leftover {
	var a leftover
	idle := slices.Clone(s.have)
	for _, f := range p {
		a.add(pol, true, s.length(f.kind)-load(d.size, f.count))
		if f.kind != freshKind {
			idle[f.kind]--
		}
	}
	for k, n := range idle {
		for range n {
			a.add(pol, false, s.kind[k])
		}
	}
	return a
}
