package compare

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route/work"
)

// A How says what became of a thing from A to B.
type How uint8

// What became of things.
const (
	Changed How = iota // there in both, not in the same way
	Added              // only in B
	Gone               // only in A
)

var howNames = [...]string{"changed", "added", "gone"}

func (h How) String() string { return howNames[h] }

// howOf tells from the indices in A and in B, -1 where it is not.
func howOf(in [2]int) How {
	switch {
	case in[0] < 0:
		return Added
	case in[1] < 0:
		return Gone
	}
	return Changed
}

// A Value is a property that is not the same, in words; empty where there is
// none.
type Value struct {
	What string
	Is   [2]string
}

// A Difference is what changed from plan A to plan B.
type Difference struct {
	Plans [2]*work.Work
	// Outline is true if the outlines of the houses are not the same.
	Outline bool
	House   []Thing // things of the house that are not the same, by kind and id
	Job     []Value // what the jobs ask for, besides drops
	Drops   []Drop  // those that are not the same, by tag
	Routes  []Route // of drops that are in both, by tag
	Holes   []Hole  // those that are not the same, from north to south as in A, then B
	Reused  []Reuse // holes and conduits that are there, by id
	Cables  []Cable // by kind, all
	Figures []Figure
	Cost    Figure
	Terms   []Figure // of the cost; their changes add up to that of Cost
	Ways    Ways
	// bored tells of every hole of a plan what became of it.
	bored [2][]Hole
}

// Same reports whether nothing changed at all.
func (d *Difference) Same() bool {
	still := func(f Figure) bool { return f.Change() == 0 }
	return !d.Outline && len(d.House)+len(d.Job)+len(d.Drops)+len(d.Routes)+len(d.Holes)+len(d.Reused) == 0 &&
		d.OneCurrency() && still(d.Cost) && !slices.ContainsFunc(d.Terms, func(f Figure) bool { return !still(f) }) &&
		!slices.ContainsFunc(d.Figures, func(f Figure) bool { return !still(f) }) &&
		!slices.ContainsFunc(d.Cables, Cable.changed) && len(d.Ways.Only[0])+len(d.Ways.Only[1]) == 0
}

// OneCurrency reports whether money of the two plans can be compared.
func (d *Difference) OneCurrency() bool {
	return d.Plans[0].Job.Rates.Currency == d.Plans[1].Job.Rates.Currency
}

// Of compares plan a with plan b. Neither is changed. It takes time in
// proportion to the things of both, and to the product of their holes.
func Of(a, b *work.Work) *Difference {
	d := &Difference{Plans: [2]*work.Work{a, b}}
	d.houses()
	d.jobs()
	d.drops()
	d.routes()
	d.holes()
	d.reuses()
	d.figures()
	d.Ways = waysOf(a.Result, b.Result)
	return d
}

// A property is one that is compared: raw decides, text is told.
type property struct {
	what string
	raw  any // comparable
	text string
}

// differing lists the properties that two things have not in common. Both are
// described by the same function, so that they have the same properties in the
// same order.
func differing(a, b []property) []Value {
	var out []Value
	for i := range a {
		if a[i].raw != b[i].raw {
			out = append(out, Value{a[i].what, [2]string{a[i].text, b[i].text}})
		}
	}
	return out
}

// pairs matches two lists by key: the indices in both, -1 where there is none,
// in the order of keys that less gives. Keys are unique in each list.
func pairs[K comparable](a, b []K, order func(a, b K) int) [][2]int {
	at := map[K][2]int{}
	for side, list := range [2][]K{a, b} {
		for i, key := range list {
			in, ok := at[key]
			if !ok {
				in = [2]int{-1, -1}
			}
			in[side] = i
			at[key] = in
		}
	}
	keys := make([]K, 0, len(at))
	for key := range at {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, order)
	out := make([][2]int, len(keys))
	for i, key := range keys {
		out[i] = at[key]
	}
	return out
}

// apart is the distance between two places, along a straight line, to the
// nanometre.
func apart(a, b geom.Point3) measure.Length {
	level := geom.Dist(geom.Point{X: a.X, Y: a.Y}, geom.Point{X: b.X, Y: b.Y})
	return geom.Dist(geom.Point{}, geom.Point{X: level, Y: b.Z - a.Z})
}

// comparePoints orders places from north to south, then from west to east, then
// upward, as holes are numbered.
func comparePoints(p, q geom.Point3) int {
	return cmp.Or(cmp.Compare(q.Y, p.Y), cmp.Compare(p.X, q.X), cmp.Compare(p.Z, q.Z))
}
