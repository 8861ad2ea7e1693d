// Package price holds what the steps of a job cost, as a table of terms.
//
// What comes in are the terms a user changed and the rate of an hour. What
// goes out are prices in whole cost units, and the table itself, which the
// reference page and every breakdown of a cost print. Nothing here knows a
// house or a route.
//
// All prices are money, so that a sum can be checked by a person: labour is
// minutes at the user's hourly rate. A cost unit is one millionth of the
// currency's unit. Arithmetic is exact and rounds once, halves up, for each
// term.
package price

import (
	"math/bits"

	"topplate/plan/measure"
)

// An ID names a cost term, in words joined by hyphens; it is the key by which
// a job file changes the term.
type ID string

// CostUnits is the number of cost units in the currency's unit.
const CostUnits = 1_000_000

// A Unit says what the value of a term counts, in thousandths.
type Unit uint8

// Units of a term.
const (
	MinutesEach     Unit = iota // thousandths of a minute each time
	MinutesPerMetre             // thousandths of a minute per metre
	MoneyEach                   // thousandths of the currency's unit each time
	MoneyPerMetre               // thousandths of the currency's unit per metre
	Elsewhere                   // the price comes from elsewhere; the term is a heading for it
)

var unitNames = [...]string{"minutes each", "minutes per metre", "money each", "money per metre", "priced elsewhere"}

func (u Unit) String() string { return unitNames[u] }

// mostValue is the largest value a user may set, by unit: ten hours at a time,
// one hour per metre, a million of the currency's unit at a time, ten thousand
// per metre.
var mostValue = [...]int64{
	MinutesEach: 600_000, MinutesPerMetre: 60_000, MoneyEach: 1_000_000_000, MoneyPerMetre: 10_000_000, Elsewhere: 0,
}

// A Term is one thing that costs something.
type Term struct {
	ID       ID
	Title    string // one line, no full stop
	Unit     Unit
	Value    int64  // thousandths of Unit
	PerCable bool   // paid by every cable; otherwise once for all that share it
	Doc      string // what the term covers
}

// Max is the largest value that a user may set instead, in the unit of Value;
// the smallest is 0.
func (t Term) Max() int64 { return mostValue[t.Unit] }

// Source is what every default rests on: no published figure was found for
// them.
const Source = "common practice, no source"

// Lookup returns the default of the term with this id.
func Lookup(id ID) (Term, bool) {
	for i := range Terms {
		if Terms[i].ID == id {
			return Terms[i], true
		}
	}
	return Term{}, false
}

// IDs lists the terms a job file may change, in the order of Terms.
func IDs() []string {
	var out []string
	for i := range Terms {
		if Terms[i].Unit != Elsewhere {
			out = append(out, string(Terms[i].ID))
		}
	}
	return out
}

// A Table is the terms that hold for one job, and what an hour costs. It is
// never changed once made.
type Table struct {
	terms map[ID]Term
	hour  int64
}

// NewTable returns the default terms with the user's values in their place, by
// term id in thousandths, at hour thousandths of the currency's unit for an
// hour. An id that is no term's has no effect: whoever reads a user's file
// reports it. Values and hour must not be negative.
func NewTable(overrides map[string]int64, hour int64) Table {
	t := Table{terms: make(map[ID]Term, len(Terms)), hour: hour}
	for _, term := range Terms {
		if v, ok := overrides[string(term.ID)]; ok && term.Unit != Elsewhere {
			term.Value = v
		}
		t.terms[term.ID] = term
	}
	return t
}

// term panics if there is no term with this id, or it has no value of its own.
func (t Table) term(id ID) Term {
	term, ok := t.terms[id]
	if !ok || term.Unit == Elsewhere {
		panic("price: no price of " + string(id))
	}
	return term
}

// Each returns the price of a term that is paid by the piece. It panics if the
// term is paid by length.
func (t Table) Each(id ID) int64 {
	switch term := t.term(id); term.Unit {
	case MinutesEach:
		// Thousandths of a minute times thousandths of money per hour is
		// 1/60 of a cost unit.
		return mulDiv(term.Value, t.hour, 1, 60)
	case MoneyEach:
		return mulDiv(term.Value, CostUnits/1000, 1, 1)
	default:
		panic("price: " + string(id) + " is paid by length")
	}
}

// PerMetre returns the price of a term that is paid by length, for a length
// that is not negative. It panics if the term is paid by the piece.
func (t Table) PerMetre(id ID, l measure.Length) int64 {
	switch term := t.term(id); term.Unit {
	case MinutesPerMetre:
		return mulDiv(term.Value, t.hour, int64(l), 60*int64(measure.Metre))
	case MoneyPerMetre:
		return ByLength(term.Value, l)
	default:
		panic("price: " + string(id) + " is paid by the piece")
	}
}

// ByLength returns the price in cost units of a length at a price per metre in
// thousandths of the currency's unit; neither is negative.
func ByLength(perMetre int64, l measure.Length) int64 {
	return mulDiv(perMetre, CostUnits/1000, int64(l), int64(measure.Metre))
}

// prohibitive is what a price is cut off at: seventy thousand million of the
// currency's unit. A hundred of them still add up without overflow.
const prohibitive = 1 << 56

// mulDiv returns a*b*c/d to the nearest whole number, halves up, for numbers
// that are not negative and d > 0, but no more than prohibitive.
func mulDiv(a, b, c, d int64) int64 {
	over, ab := bits.Mul64(uint64(a), uint64(b))
	hi, lo := bits.Mul64(ab, uint64(c))
	lo, carry := bits.Add64(lo, uint64(d)/2, 0)
	hi += carry
	if over != 0 || hi >= uint64(d) {
		return prohibitive
	}
	q, _ := bits.Div64(hi, lo, uint64(d))
	return int64(min(q, prohibitive))
}
