package stock

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
)

// A demand is the pieces of one type to be cut, all of them possible, as
// lengths with their number.
type demand struct {
	size []measure.Length // strictly decreasing
	need []int            // at least 1
}

// newDemand counts equal lengths.
func newDemand(lengths []measure.Length) demand {
	sorted := slices.Clone(lengths)
	slices.SortFunc(sorted, func(a, b measure.Length) int { return cmp.Compare(b, a) })
	d := demand{}
	for _, l := range sorted {
		if n := len(d.size); n > 0 && d.size[n-1] == l {
			d.need[n-1]++
		} else {
			d.size = append(d.size, l)
			d.need = append(d.need, 1)
		}
	}
	return d
}

// total is the length of all pieces.
func (d demand) total() measure.Length { return load(d.size, d.need) }

func (d demand) pieces() int {
	n := 0
	for _, k := range d.need {
		n += k
	}
	return n
}

// load is the length of count[j] pieces of each size j.
func load(size []measure.Length, count []int) measure.Length {
	sum := measure.Length(0)
	for j, n := range count {
		sum += size[j] * measure.Length(n)
	}
	return sum
}

// A supply is where pieces can come from: kinds of equal spools in stock, and
// any number of fresh ones.
type supply struct {
	kind  []measure.Length // lengths, strictly increasing
	have  []int            // spools of each kind, at least 1
	fresh measure.Length   // length of a new spool, 0 if none can be bought
}

func newSupply(stock []measure.Length, fresh measure.Length) supply {
	sorted := slices.Sorted(slices.Values(stock))
	s := supply{fresh: fresh}
	for _, l := range sorted {
		if n := len(s.kind); n > 0 && s.kind[n-1] == l {
			s.have[n-1]++
		} else {
			s.kind = append(s.kind, l)
			s.have = append(s.have, 1)
		}
	}
	return s
}

// longest is the longest spool, in stock or new.
func (s supply) longest() measure.Length {
	if n := len(s.kind); n > 0 {
		return max(s.fresh, s.kind[n-1])
	}
	return s.fresh
}

// stocked is the length of all spools in stock.
func (s supply) stocked() measure.Length { return load(s.kind, s.have) }

// freshKind stands for a new spool where a kind is asked for.
const freshKind = -1

// length is that of a kind of spool.
func (s supply) length(kind int) measure.Length {
	if kind == freshKind {
		return s.fresh
	}
	return s.kind[kind]
}

// A filled spool has count[j] pieces of each size j.
type filled struct {
	kind  int
	count []int
}

// A packing says what is cut from every spool that is cut.
type packing []filled

// fresh is the number of new spools in use.
func (p packing) fresh() int {
	n := 0
	for _, f := range p {
		if f.kind == freshKind {
			n++
		}
	}
	return n
}
