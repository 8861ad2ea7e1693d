package rule

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
// empty for common practice and for the user's own number; Edition is empty
// also where the quotation does not tell it.
type Source struct {
	Document, Edition, Clause string
	// Printed is the value as the document prints it: "50 mm (2 in)". Where
	// it rounds one system to the other, the limit's Value shows which was
	// taken.
	Printed string
	// AsQuotedBy is where a quotation of the document was read, if the
	// document itself was not.
	AsQuotedBy string
	Status     Status
}

// String names the source in one line: "International Residential Code 2018,
// R602.6.1", "derived from …", "…, as quoted by …", "…, from memory", "common
// practice, no source".
func (s Source) String() string {
	switch s.Status {
	case CommonPractice:
		return "common practice, no source"
	case SetByUser:
		return "set for this job"
	}
	text := s.Document
	if s.Edition != "" {
		text += " " + s.Edition
	}
	if s.Clause != "" {
		text += ", " + s.Clause
	}
	if s.AsQuotedBy != "" {
		text += ", as quoted by " + s.AsQuotedBy
	}
	switch s.Status {
	case Derived:
		text = "derived from " + text
	case FromMemory:
		text += ", from memory"
	}
	return text
}
