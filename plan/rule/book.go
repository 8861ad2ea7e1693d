package rule

import "topplate/plan/measure"

// A Book is the limits that hold for one job. It is never changed once made.
type Book struct{ limits map[LimitID]Limit }

// NewBook returns the default limits with the user's in their place, by limit
// id, lengths in nanometres. An id that is no limit's has no effect: whoever
// reads a user's file reports it, with LookupLimit and the range in the
// record.
func NewBook(overrides map[string]int64) Book {
	b := Book{limits: make(map[LimitID]Limit, len(Limits))}
	for _, l := range Limits {
		if v, ok := overrides[string(l.ID)]; ok {
			l.Value, l.Source = v, Source{Status: SetByUser}
		}
		b.limits[l.ID] = l
	}
	return b
}

// Limit returns the record that holds, whose Source is SetByUser if the user
// changed its value. It panics if there is no such limit.
func (b Book) Limit(id LimitID) Limit {
	l, ok := b.limits[id]
	if !ok {
		panic("rule: no limit " + string(id))
	}
	return l
}

// Value returns the number that holds, in the limit's unit.
func (b Book) Value(id LimitID) int64 { return b.Limit(id).Value }

// Length returns the length that holds. It panics if the limit is not a
// length.
func (b Book) Length(id LimitID) measure.Length {
	l := b.Limit(id)
	if l.Unit != Nanometres {
		panic("rule: limit " + string(id) + " is not a length")
	}
	return measure.Length(l.Value)
}

// Cautions returns the rules that are printed with every job in a house built
// in that year, in the order of Rules; year 0 is not known.
func (b Book) Cautions(built int) []Rule {
	var out []Rule
	for _, r := range standing {
		if r.BuiltBefore == "" || int64(built) < b.Value(r.BuiltBefore) {
			out = append(out, r)
		}
	}
	return out
}
