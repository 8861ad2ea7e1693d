package measure

// A Range is the closed interval of the lengths from Min to Max.
type Range struct{ Min, Max Length }

// Contains reports whether Min <= l <= Max.
func (r Range) Contains(l Length) bool { return r.Min <= l && l <= r.Max }

// String names the range as an error message does: "4in to 2ft".
func (r Range) String() string { return r.Min.String() + " to " + r.Max.String() }
