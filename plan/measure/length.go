// Package measure holds lengths as exact whole numbers.
//
// A length read from a sketch goes in as people write it ("12ft 6-1/2in",
// "3.81m"), comes out as a Length, and can be written again for people or for
// a file. Nothing here rounds unless it is asked to, and nothing here knows
// what a length is the length of.
package measure

import (
	"math/bits"
	"strconv"
	"strings"
)

// A Length is a distance in whole nanometres. One sixty-fourth of an inch is
// 396 875 nm and one millimetre is 1 000 000 nm, so the graduations of both
// tapes are exact. The largest length is about nine million kilometres.
type Length int64

// Units of length. The inch is exactly 25.4 mm and the foot exactly 0.3048 m
// (NIST Handbook 44, Appendix C, section 4; international yard and pound
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

// String writes l exactly, in a form that Parse reads back to the same value
// (within MaxParsed). A multiple of 1/64 in is written in feet and inches with
// the fraction in lowest terms: "12ft 6-1/2in", "6-1/2in", "0in". Anything
// else is written in millimetres with as many decimals as it needs: "3811mm",
// "0.000001mm". So 127 mm, which both tapes can show, is "5in".
func (l Length) String() string {
	m := l.magnitude()
	text := ""
	if m%uint64(SixtyFourth) == 0 {
		text = plainInches(splitInches(m/uint64(SixtyFourth), 64))
	} else {
		text = decimalMillimetres(m)
	}
	if l < 0 {
		return "-" + text
	}
	return text
}

// Millimetres returns l in millimetres, correctly rounded to a float64 when l
// is within 9000 km.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Metres returns l in metres, correctly rounded to a float64 when l is within
// 9000 km.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

// RoundUp returns the smallest multiple of step that is not below l: a cable
// is cut to the next whole foot, never to the nearest. A step of zero or less
// returns l. The result must fit a Length.
func RoundUp(l, step Length) Length {
	if step <= 0 {
		return l
	}
	over := l % step
	if over > 0 {
		over -= step
	}
	return l - over
}

// magnitude is |l|, also for the most negative Length.
func (l Length) magnitude() uint64 {
	if l < 0 {
		return -uint64(l)
	}
	return uint64(l)
}

// imperial is a length as a tape shows it: feet, inches below 12 and a proper
// fraction num/den of an inch in lowest terms.
type imperial struct{ feet, inches, num, den uint64 }

// splitInches splits a count of 1/perInch inches; perInch is a power of two.
func splitInches(count, perInch uint64) imperial {
	num := count % perInch
	whole := count / perInch
	common := uint64(1) << min(bits.TrailingZeros64(num), bits.TrailingZeros64(perInch))
	return imperial{feet: whole / 12, inches: whole % 12, num: num / common, den: perInch / common}
}

// plainInches writes "12ft 6-1/2in", leaving out what is zero.
func plainInches(v imperial) string {
	inches := ""
	switch {
	case v.num != 0 && v.inches != 0:
		inches = decimal(v.inches) + "-" + decimal(v.num) + "/" + decimal(v.den) + "in"
	case v.num != 0:
		inches = decimal(v.num) + "/" + decimal(v.den) + "in"
	case v.inches != 0 || v.feet == 0:
		inches = decimal(v.inches) + "in"
	}
	if v.feet == 0 {
		return inches
	}
	return strings.TrimSuffix(decimal(v.feet)+"ft "+inches, " ")
}

// decimalMillimetres writes nm nanometres as millimetres without trailing
// zeros.
func decimalMillimetres(nm uint64) string {
	whole, rest := nm/uint64(Millimetre), nm%uint64(Millimetre)
	if rest == 0 {
		return decimal(whole) + "mm"
	}
	digits := strconv.FormatUint(rest+uint64(Millimetre), 10)[1:]
	return decimal(whole) + "." + strings.TrimRight(digits, "0") + "mm"
}

func decimal(n uint64) string { return strconv.FormatUint(n, 10) }
