// Package rule holds the limits that a plan must keep to, as data: each with
// an id, a unit, a value, and the published source and edition it was taken
// from.
//
// The user's own limits come in; a Book of limits goes out. What is measured
// against them is measured elsewhere. The records warn and refer to the local
// code and to licensed practice; they never claim compliance.
package rule

import (
	"fmt"

	"topplate/plan/measure"
)

// A Unit says what a limit's value counts.
type Unit uint8

// Units of a limit.
const (
	Nanometres Unit = iota
	Percent
	Degrees
	Count
)

// A Status says how well a value is known.
type Status uint8

// States of knowledge.
const (
	AsQuoted       Status = iota // read in somebody else's quotation of the text
	FromMemory                   // not seen in a source
	Derived                      // by arithmetic from a quoted value
	CommonPractice               // a habit of the trade
)

var statusNames = [...]string{"as quoted by others", "from memory", "derived", "common practice, no source"}

func (s Status) String() string { return statusNames[s] }

// A Source is where a limit comes from.
type Source struct {
	Document string // with its edition
	Clause   string
	Status   Status
}

func (s Source) String() string {
	if s.Status == CommonPractice {
		return s.Status.String()
	}
	return fmt.Sprintf("%s %s (%s)", s.Document, s.Clause, s.Status)
}

// A LimitID names a limit, in the job file too.
type LimitID string

// A Limit is one number that a rule compares with.
type Limit struct {
	ID    LimitID
	Title string
	Unit  Unit
	Value int64 // nanometres for lengths
	// Min and Max bound what a user may set instead.
	Min, Max int64
	Source   Source
	Text     string
}

// Print writes the limit's value for people who use system s.
func (l Limit) Print(s measure.System) string {
	switch l.Unit {
	case Nanometres:
		return s.Format(measure.Length(l.Value))
	case Percent:
		return fmt.Sprintf("%d %%", l.Value)
	case Degrees:
		return fmt.Sprintf("%d°", l.Value)
	default:
		return fmt.Sprint(l.Value)
	}
}

// A Severity says what a finding means for the work.
type Severity uint8

// Severities, worst first.
const (
	Stop Severity = iota
	Caution
	Note
)

var severityNames = [...]string{"stop", "caution", "note"}

func (s Severity) String() string { return severityNames[s] }

// An ID names a rule in findings. Ids are never changed or used again.
type ID string

// A Rule is one thing a plan is held against.
type Rule struct {
	ID       ID
	Title    string
	Severity Severity
	Limits   []LimitID
	Source   Source
	Text     string // why, and what to do
}

// A Book is all limits with a user's own values in place of the defaults.
type Book struct{ value map[LimitID]int64 }

// NewBook makes a book from the defaults and the user's values by id.
func NewBook(own map[string]int64) Book {
	b := Book{value: make(map[LimitID]int64, len(Limits))}
	for _, l := range Limits {
		b.value[l.ID] = l.Value
		if v, ok := own[string(l.ID)]; ok {
			b.value[l.ID] = v
		}
	}
	return b
}

// Length is the value of a limit that is a length.
func (b Book) Length(id LimitID) measure.Length { return measure.Length(b.value[id]) }

// Value is the value of a limit in its unit.
func (b Book) Value(id LimitID) int64 { return b.value[id] }

// LookupLimit returns the limit with this id, with its default value.
func LookupLimit(id LimitID) (Limit, bool) {
	for _, l := range Limits {
		if l.ID == id {
			return l, true
		}
	}
	return Limit{}, false
}

// LimitIDs lists the ids of all limits.
func LimitIDs() []string {
	out := make([]string, len(Limits))
	for i, l := range Limits {
		out[i] = string(l.ID)
	}
	return out
}

// Lookup returns the rule with this id.
func Lookup(id ID) (Rule, bool) {
	for _, r := range Rules {
		if r.ID == id {
			return r, true
		}
	}
	return Rule{}, false
}
