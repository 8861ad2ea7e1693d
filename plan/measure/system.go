package measure

import (
	"fmt"
	"strconv"
)

// A System is the system of units that a person reads. It chooses how lengths
// are written, never how they are kept.
type System uint8

// The two systems.
const (
	Imperial System = iota
	Metric
)

// Graduation is the finest mark of a builder's tape: Imperial text is rounded
// to it. Metric text is rounded to the millimetre.
const Graduation = Inch / 16

// sqMetresPerSqFoot is exact (NIST Handbook 44, Appendix C, section 4).
const sqMetresPerSqFoot = 0.09290304

// Format writes l for running text and tables, rounded to the nearest mark of
// the tape, halves away from zero. Imperial is "12ft 6-1/2in", "6-1/2in",
// "0in" to 1/16 in. Metric is millimetres below one metre, "381 mm", and
// metres to the millimetre from there on, "3.810 m". Parse reads both.
func (s System) Format(l Length) string {
	if s == Imperial {
		n := roundTo(l, Graduation)
		return minus(l, n) + plainInches(splitInches(n, 16))
	}
	n := roundTo(l, Millimetre)
	if n < 1000 {
		return minus(l, n) + decimal(n) + " mm"
	}
	return fmt.Sprintf("%s%d.%03d m", minus(l, n), n/1000, n%1000)
}

// FormatSheet writes l as dimensions are lettered on a drawing, with the same
// rounding as Format. Imperial joins feet and inches with a hyphen, leaves out
// feet that are zero and keeps inches that are: 12′-6 1/2″, 12′-0″, 6 1/2″.
// Metric is whole millimetres without a unit, 3810: the sheet names the unit
// once.
func (s System) FormatSheet(l Length) string {
	if s == Metric {
		n := roundTo(l, Millimetre)
		return minus(l, n) + decimal(n)
	}
	n := roundTo(l, Graduation)
	v := splitInches(n, 16)
	text := minus(l, n)
	if v.feet != 0 {
		text += decimal(v.feet) + "′-"
	}
	switch {
	case v.num == 0:
		text += decimal(v.inches)
	case v.inches == 0 && v.feet == 0:
		text += decimal(v.num) + "/" + decimal(v.den)
	default:
		text += fmt.Sprintf("%d %d/%d", v.inches, v.num, v.den)
	}
	return text + "″"
}

// FormatArea writes an area given in square metres: whole square feet
// ("142 sq ft") or square metres to one decimal ("13.2 m²").
func (s System) FormatArea(squareMetres float64) string {
	if s == Metric {
		return strconv.FormatFloat(squareMetres, 'f', 1, 64) + " m²"
	}
	return strconv.FormatFloat(squareMetres/sqMetresPerSqFoot, 'f', 0, 64) + " sq ft"
}

// roundTo is |l| in units, rounded to nearest, halves up.
func roundTo(l, unit Length) uint64 {
	return (l.magnitude() + uint64(unit)/2) / uint64(unit)
}

// minus is the sign to print for l when it is rounded to n units: there is no
// negative zero.
func minus(l Length, n uint64) string {
	if l < 0 && n != 0 {
		return "-"
	}
	return ""
}
