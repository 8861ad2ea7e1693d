package supply

// A Status says how a value is known.
type Status uint8

// Statuses, surest first.
const (
	// AsQuoted: read where somebody else quotes the document.
	AsQuoted Status = iota
	// Derived: by arithmetic from the document.
	Derived
	// FromMemory: remembered, and not seen in a source.
	FromMemory
)

// A Source says where a value comes from.
type Source struct {
	Document string // with edition and clause, as far as they are known
	QuotedBy string // where it was read, or empty
	Status   Status
}

// String names the source in one line.
func (s Source) String() string {
	switch s.Status {
	case Derived:
		return "derived from " + s.Document
	case FromMemory:
		return s.Document + ", from memory"
	}
	return s.Document + ", as quoted by " + s.QuotedBy
}

// A Constant is a number with its unit and source.
type Constant struct {
	Value  float64
	Unit   string
	Source Source
}
