package stock

import (
	"fmt"

	"topplate/plan/measure"
)

// Marks are the numbers printed along a jacket, one for each Unit of length.
type Marks struct {
	Start int64          // number at the free end, or the one to count from; 0 to MaxMark
	Unit  measure.Length // what one count stands for, as measure.Foot or measure.Metre; at least 1 mm
	Down  bool           // whether numbers decrease while cable is drawn off
	Wrap  int64          // count at which numbers begin again at 0; 0 if they never do
}

// A Reading is a place on a jacket: Past beyond the mark Number, in the
// direction in which cable is drawn off. 0 <= Past < the unit of the marks.
type Reading struct {
	Number int64
	Past   measure.Length
}

// A BelowZeroError says that numbers which count down would pass 0: there is
// less on the spool than was stated, or the start mark is wrong.
type BelowZeroError struct {
	Start  int64
	Needed measure.Length // length after which the number was asked for
	Covers measure.Length // length from the start mark to the mark 0
}

func (e *BelowZeroError) Error() string {
	return fmt.Sprintf("from mark %d down to 0 there are %v, but %v are needed: check the mark and the length on the spool", e.Start, e.Covers, e.Needed)
}

// At is the reading after a length has been drawn off since the start mark.
// It needs 0 <= used, and marks as a job may have them. It returns a
// *BelowZeroError if numbers count down, don't wrap, and would pass 0.
func (m Marks) At(used measure.Length) (Reading, error) {
	whole := int64(used / m.Unit)
	r := Reading{Number: m.Start + whole, Past: used % m.Unit}
	if m.Down {
		r.Number = m.Start - whole
		if m.Wrap == 0 && (r.Number < 0 || r.Number == 0 && r.Past > 0) {
			return Reading{}, &BelowZeroError{Start: m.Start, Needed: used, Covers: measure.Length(m.Start) * m.Unit}
		}
	}
	if m.Wrap > 0 {
		r.Number = ((r.Number % m.Wrap) + m.Wrap) % m.Wrap
	}
	return r, nil
}
