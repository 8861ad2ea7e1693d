package rule

import (
	"strconv"

	"topplate/plan/measure"
)

// A LimitID names a limit; it is the key by which a job file changes it.
type LimitID string

// A Unit says what the value of a limit counts.
type Unit uint8

// Units.
const (
	Nanometres Unit = iota
	Percent
	Degrees
	Count
	Newtons
	Watts
	Celsius
)

// A Limit is one number with its unit and where it comes from.
type Limit struct {
	ID    LimitID
	Title string // one line, no full stop
	Unit  Unit
	Value int64
	// Min and Max bound the value that a user may set instead.
	Min, Max int64
	Source   Source
	Text     string // what is measured, and why
}

// Print writes the value as the user reads it: a length in the user's system
// with the other in brackets, "2in (51 mm)", "50 %", "60°", "6", "10 N", "60 W", "20 °C".
func (l Limit) Print(s measure.System) string { return format(l.Unit, l.Value, s) }

// Allowed writes the range a user's value must lie in: "0in (0 mm) to 2ft
// (610 mm)", "10 % to 60 %".
func (l Limit) Allowed(s measure.System) string {
	return format(l.Unit, l.Min, s) + " to " + format(l.Unit, l.Max, s)
}

func format(u Unit, v int64, s measure.System) string {
	n := strconv.FormatInt(v, 10)
	switch u {
	case Nanometres:
		other := measure.Imperial
		if s == measure.Imperial {
			other = measure.Metric
		}
		return s.Format(measure.Length(v)) + " (" + other.Format(measure.Length(v)) + ")"
	case Percent:
		return n + " %"
	case Degrees:
		return n + "°"
	case Newtons:
		return n + " N"
	case Watts:
		return n + " W"
	case Celsius:
		return n + " °C"
	default:
		return n
	}
}

// LookupLimit returns the default of the limit with this id.
func LookupLimit(id LimitID) (Limit, bool) {
	for i := range Limits {
		if Limits[i].ID == id {
			return Limits[i], true
		}
	}
	return Limit{}, false
}

// LimitIDs lists the limits a job file may change, in the order of Limits.
func LimitIDs() []string {
	out := make([]string, len(Limits))
	for i := range Limits {
		out[i] = string(Limits[i].ID)
	}
	return out
}
