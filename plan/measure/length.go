// Package measure holds lengths as exact whole numbers.
//
// A length read from a sketch goes in as people write it ("12ft 6-1/2in",
// "3.81m"), comes out as a Length, and can be written again for people or for
// a file. Nothing here rounds unless it is asked to.
package measure

// A Length is a distance in whole nanometres. One sixty-fourth of an inch is
// 396 875 nm and one millimetre is 1 000 000 nm, so the graduations of both
// tapes are exact. The largest length is about nine million kilometres.
type Length int64

// Units of length. The inch is exactly 25.4 mm (international yard and pound
// agreement of 1959).
const (
	Nanometre   Length = 1
	Micrometre         = 1000 * Nanometre
	Millimetre         = 1000 * Micrometre
	Centimetre         = 10 * Millimetre
	Metre              = 1000 * Millimetre
	SixtyFourth        = 396_875 * Nanometre
	Inch               = 64 * SixtyFourth
	Foot               = 12 * Inch
)
