package measure

import (
	"math/bits"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxDigits bounds each part of a number, so that the products stay within
// 128 bits. It is far beyond any tape.
const maxDigits = 15

// A unit is one spelling of a unit of length.
type unit struct {
	sign string
	size Length
}

// units are the spellings that Parse takes.
var units = []unit{
	{"ft", Foot},
	{"'", Foot},
	{"′", Foot},
	{"in", Inch},
	{`"`, Inch},
	{"″", Inch},
	{"m", Metre},
	{"cm", Centimetre},
	{"mm", Millimetre},
}

// misspelt maps what people write for a unit, in lower case, to the spelling
// to suggest.
var misspelt = map[string]string{
	"f": "ft", "foot": "ft", "feet": "ft",
	"‘": "'", "’": "'", "`": "'", "´": "'",
	"ins": "in", "inch": "in", "inches": "in",
	"“": `"`, "”": `"`, "''": `"`, "‘‘": `"`, "’’": `"`, "′′": "″",
	"meter": "m", "meters": "m", "metre": "m", "metres": "m",
	"centimeter": "cm", "centimeters": "cm", "centimetre": "cm", "centimetres": "cm",
	"millimeter": "mm", "millimeters": "mm", "millimetre": "mm", "millimetres": "mm",
}

// vulgar are the fractions that have a sign of their own and that tapes show.
var vulgar = map[rune][2]uint64{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// A number is whole + num/den, with num < den. Decimals have a power of ten as
// den.
type number struct {
	whole, num, den   uint64
	decimal, fraction bool // how num/den was written, if at all
}

// A scanner walks a text from left to right.
type scanner struct {
	text string
	pos  int
}

func (p *scanner) rest() string { return p.text[p.pos:] }

func (p *scanner) accept(prefix string) bool {
	if !strings.HasPrefix(p.rest(), prefix) {
		return false
	}
	p.pos += len(prefix)
	return true
}

func (p *scanner) space() {
	p.pos = len(p.text) - len(strings.TrimLeftFunc(p.rest(), unicode.IsSpace))
}

// joint passes what may stand between feet and inches and between inches and
// their fraction: spaces, and at most one hyphen.
func (p *scanner) joint() {
	p.space()
	p.accept("-")
	p.space()
}

// atNumber reports whether a number starts here.
func (p *scanner) atNumber() bool {
	r, _ := utf8.DecodeRuneInString(p.rest())
	_, isVulgar := vulgar[r]
	return isVulgar || isDigit(r) || r == '.'
}

// digits passes a run of ASCII digits and returns it.
func (p *scanner) digits() string {
	start := p.pos
	for p.pos < len(p.text) && isDigit(rune(p.text[p.pos])) {
		p.pos++
	}
	return p.text[start:p.pos]
}

// word passes and returns what stands where a unit should: a run of letters, a
// doubled quotation mark, or one other character.
func (p *scanner) word() string {
	start := p.pos
	r, size := utf8.DecodeRuneInString(p.rest())
	p.pos += size
	if unicode.IsLetter(r) {
		p.pos = len(p.text) - len(strings.TrimLeftFunc(p.rest(), unicode.IsLetter))
	} else if strings.ContainsRune("'‘’′", r) {
		p.accept(string(r))
	}
	return p.text[start:p.pos]
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// number reads "12", "5.5", ".5", "1/2", "½", "6-1/2", "6 1/2" or "6½".
func (p *parser) number() (number, error) {
	n := number{den: 1}
	start := p.pos
	if !p.atNumber() {
		return n, p.noNumber()
	}
	if p.vulgar(&n) {
		return n, nil
	}
	whole := p.digits()
	if p.accept("/") {
		return n, p.denominator(&n, whole, start)
	}
	var err error
	if n.whole, err = p.integer(whole, start); err != nil {
		return n, err
	}
	if p.accept(".") {
		return n, p.decimals(&n, start)
	}
	mark := p.pos
	p.joint()
	if p.vulgar(&n) {
		return n, nil
	}
	start = p.pos
	if num := p.digits(); num != "" && p.accept("/") {
		return n, p.denominator(&n, num, start)
	}
	p.pos = mark
	return n, nil
}

func (p *parser) noNumber() error {
	if strings.TrimSpace(p.text) == "" {
		return p.errorf(p.pos, "found nothing; %s", p.say.lengths)
	}
	if p.rest() == "" {
		return p.errorf(p.pos, "found no number; %s", p.say.lengths)
	}
	return p.errorf(p.pos, "found %s where a number should start; %s", quote(p.rest()), p.say.lengths)
}

// vulgar reads a fraction with a sign of its own.
func (p *parser) vulgar(n *number) bool {
	r, size := utf8.DecodeRuneInString(p.rest())
	f, ok := vulgar[r]
	if ok {
		p.pos += size
		n.num, n.den, n.fraction = f[0], f[1], true
	}
	return ok
}

// denominator reads what follows the slash of the fraction that starts at
// start.
func (p *parser) denominator(n *number, num string, start int) (err error) {
	n.fraction = true
	if n.num, err = p.integer(num, start); err != nil {
		return err
	}
	at := p.pos
	if n.den, err = p.integer(p.digits(), at); err != nil {
		return err
	}
	found := quote(p.text[start:p.pos])
	switch {
	case p.pos == at:
		return p.errorf(at, "found %s with nothing under the line; write a fraction such as 1/2in", found)
	case n.den == 0:
		return p.errorf(at, "found %s, a fraction over zero; write a fraction such as 1/2in", found)
	case n.num >= n.den:
		return p.errorf(start, "found %s, which is not less than one; write the whole inches first, as in 1-1/2in", found)
	}
	return nil
}

// decimals reads what follows the decimal point of the number that starts at
// start.
func (p *parser) decimals(n *number, start int) (err error) {
	n.decimal = true
	at := p.pos
	text := p.digits()
	if text == "" {
		return p.errorf(at, "found %s with no digit after the point; %s", quote(p.text[start:p.pos]), p.say.lengths)
	}
	if n.num, err = p.integer(text, at); err != nil {
		return err
	}
	for range text {
		n.den *= 10
	}
	return nil
}

// integer is a run of digits as a number; no digits count as zero.
func (p *parser) integer(digits string, at int) (uint64, error) {
	if digits == "" {
		return 0, nil
	}
	if len(digits) > maxDigits {
		return 0, p.errorf(at, "found a number of %d digits, more than the %d that are read; %s", len(digits), maxDigits, p.say.lengths)
	}
	v := uint64(0)
	for _, digit := range []byte(digits) {
		v = 10*v + uint64(digit-'0')
	}
	return v, nil
}

// unit reads the unit of the number that starts at start.
func (p *parser) unit(start int) (unit, error) {
	written := p.text[start:p.pos]
	p.space()
	at := p.pos
	if p.rest() == "" || p.atNumber() || strings.HasPrefix(p.rest(), "-") {
		return unit{}, p.errorf(at, "found no unit after %s; %s", quote(written), p.say.lengths)
	}
	word := p.word()
	for _, u := range units {
		if u.sign == word {
			return u, nil
		}
	}
	if near := nearestUnit(word); near != "" {
		return unit{}, p.errorf(at, "found unit %s; write %s, as in %s", quote(word), near, written+near)
	}
	return unit{}, p.errorf(at, "found unknown unit %s; %s", quote(word), p.say.units)
}

// nearestUnit is the unit that was probably meant by word, or "".
func nearestUnit(word string) string {
	lower := strings.ToLower(word)
	for _, u := range units {
		if u.sign == lower {
			return lower
		}
	}
	return misspelt[lower]
}

// mulDiv returns a*b/c and whether the division is exact. It needs a < c, so
// that the quotient fits.
func mulDiv(a, b, c uint64) (quotient uint64, exact bool) {
	hi, lo := bits.Mul64(a, b)
	quotient, remainder := bits.Div64(hi, lo, c)
	return quotient, remainder == 0
}
