package rule

import "strings"

// A Status says how a value is known.
type Status uint8

// Statuses, surest first.
const (
	// Confirmed: read in the published document itself.
	Confirmed Status = iota
	// AsQuoted: read where somebody else quotes the document.
	AsQuoted
	// Derived: by arithmetic or by analogy from the document named.
	Derived
	// FromMemory: remembered, and not seen in a source.
	FromMemory
	// CommonPractice: what the trade does, without a document.
	CommonPractice
	// SetByUser: the user's own number.
	SetByUser
)

// A Source says where a value comes from. Document, Edition and Clause are
// empty for common practice and for the user's own number.
type Source struct {
	Document, Edition, Clause string
	// Printed is the value as the document prints it, where that differs
	// from the exact value used here: "50 mm (2 in)".
	Printed string
	// AsQuotedBy is where the quotation was read, if Status is AsQuoted.
	AsQuotedBy string
	Status     Status
}

// String names the source in one line: "International Residential Code 2018,
// R602.6", "NFPA 70 2017, 800.133(A)(2), as quoted by …", "common practice, no
// source".
func (s Source) String() string {
	switch s.Status {
	case CommonPractice:
		return "common practice, no source"
	case SetByUser:
		return "set in the job file"
	}
	text := strings.TrimSpace(s.Document + " " + s.Edition)
	if s.Clause != "" {
		text += ", " + s.Clause
	}
	switch s.Status {
	case AsQuoted:
		text += ", as quoted by " + s.AsQuotedBy
	case Derived:
		text = "derived from " + text
	case FromMemory:
		text += ", from memory"
	}
	return text
}
