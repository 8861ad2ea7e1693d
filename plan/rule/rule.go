// Package rule holds what a route is held against: rules, their limits and
// where each number comes from, all as data.
//
// Nothing comes in but the limits a user changed. What goes out are records
// that the router, the checker, the sheets and the reference page read, so
// that a number is written once. Nothing here measures a house or a route.
//
// A Limit is one number with its unit and its source. A Rule says what follows
// from one or more limits: whether a route that breaks it is refused or only
// remarked on, why the rule exists, and what would allow what it forbids. A
// Book is the limits that hold for one job: the defaults and what the user
// changed.
//
// Nearly every published value here was read as somebody else's quotation of a
// text that is sold, and codes are adopted and amended locally. A Source says
// how each value is known. To satisfy a rule here is not to comply with a
// code: the authority and the licensed trades on the spot decide.
package rule

// An ID names a rule, in words joined by hyphens. Ids are never given to
// another rule.
type ID string

// A Severity says what a broken rule does to a route.
type Severity uint8

// Severities, gravest first.
const (
	// Stop: no route is proposed that breaks the rule.
	Stop Severity = iota
	// Caution: the route stands, and the person who works must know.
	Caution
	// Note: something to do or to know, without danger in it.
	Note
)

var severityNames = [...]string{"stop", "caution", "note"}

func (s Severity) String() string { return severityNames[s] }

// A Rule is one thing that a job is held against.
type Rule struct {
	ID       ID
	Title    string // one line, no full stop
	Severity Severity
	// Limits are the numbers the rule is measured with, if it has any.
	Limits []LimitID
	Source Source
	Text   string // why the rule exists and how to satisfy it
	Change string // what would allow what the rule forbids; empty if nothing does
	// BuiltBefore names the limit that holds a year, if the rule is only for
	// houses built before it or in a year that is not known.
	BuiltBefore LimitID
}

// Lookup returns the rule with this id.
func Lookup(id ID) (Rule, bool) {
	for i := range Rules {
		if Rules[i].ID == id {
			return Rules[i], true
		}
	}
	return Rule{}, false
}
