package measure

import "fmt"

// MaxParsed bounds what Parse reads in either direction. No house needs more,
// and sums of thousands of such lengths still fit a Length.
const MaxParsed = 100_000 * Metre

const examples = `write a length such as 12ft 6-1/2in, 6-1/2in, 5.5in, 12.5ft, 3.81m, 381cm or 3810mm`

// A wording is what messages give as examples to somebody who uses some units.
type wording struct{ lengths, fractions, units, exact string }

var (
	allWords = wording{
		examples, "fractions go with inches, as in 6-1/2in, and decimals with the rest, as in 12.5ft or 3.81m",
		`the units are ft or ', in or ", m, cm and mm, as in 12ft 6-1/2in or 3.81m`,
		"use a fraction such as 5/16in, or at most 5 decimals of ft or in, 9 of m, 7 of cm, 6 of mm",
	}
	wordsOf = [...]wording{
		Imperial: {
			"write a length such as 12ft 6-1/2in, 6-1/2in, 5.5in or 12.5ft", "fractions go with inches, as in 6-1/2in, and decimals with the rest, as in 12.5ft",
			`the units are ft or ' and in or ", as in 12ft 6-1/2in`, "use a fraction such as 5/16in, or at most 5 decimals of ft or in",
		},
		Metric: {
			"write a length such as 3.81m, 381cm or 3810mm", "write decimals, as in 3.81m",
			"the units are m, cm and mm, as in 3.81m", "use at most 9 decimals of m, 7 of cm, 6 of mm",
		},
	}
)

// A SyntaxError says why a text is not a length.
type SyntaxError struct {
	Text   string // the whole text that was read
	Offset int    // where in Text the fault is, in bytes, 0 <= Offset <= len(Text)
	Msg    string // what was found and an example of what is allowed
}

func (e *SyntaxError) Error() string {
	return "length " + quote(e.Text) + ": " + e.Msg
}

// Parse reads a length as people write it:
//
//	12ft 6-1/2in   12' 6 1/2"   12′-6 1/2″   12ft   12.5ft
//	6-1/2in   6½"   1/2in   5.5in   -2in
//	3.81m   381cm   3810mm
//
// Feet are whole or decimal, and inches may follow whole feet: less than 12 of
// them, whole, decimal, or with a proper fraction of any denominator. A hyphen
// between feet and inches, or before a fraction, joins and never subtracts.
// Only a minus sign in front makes the whole length negative. Spaces are free
// except inside a number.
//
// The value is exact. Parse returns a *SyntaxError for text that is none of
// the above, for a value that is not a whole number of nanometres (1/3in,
// 0.1234567in), and for one beyond MaxParsed.
func Parse(s string) (Length, error) { return parse(s, &allWords) }

// Parse is the function Parse for somebody who uses the units of s: what is wrong
// is told with examples in them. It reads lengths in the other units, too.
func (s System) Parse(text string) (Length, error) { return parse(text, &wordsOf[s]) }

func parse(s string, say *wording) (Length, error) {
	p := &parser{scanner{text: s}, say}
	p.space()
	negative := p.accept("-") || p.accept("−")
	l, err := p.length()
	if err != nil {
		return 0, err
	}
	if negative {
		return -l, nil
	}
	return l, nil
}

// A quantity is one number with its unit, as "6-1/2in".
type quantity struct {
	number
	unit  unit
	value Length
	start int
	text  string
}

type parser struct {
	scanner
	say *wording
}

// length reads feet with or without inches, or one quantity of another unit,
// up to the end of the text.
func (p *parser) length() (Length, error) {
	first, err := p.quantity()
	if err != nil {
		return 0, err
	}
	l := first.value
	if first.unit.size == Foot {
		inches, err := p.inches(first)
		if err != nil {
			return 0, err
		}
		l += inches
	}
	if p.space(); p.rest() != "" {
		return 0, p.errorf(p.pos, "found %s after the length; %s", quote(p.rest()), p.say.lengths)
	}
	if l > MaxParsed {
		return 0, p.tooLong(first)
	}
	return l, nil
}

// inches reads the inches that follow feet, if any do.
func (p *parser) inches(feet quantity) (Length, error) {
	mark := p.pos
	if p.joint(); !p.atNumber() {
		p.pos = mark
		return 0, nil
	}
	q, err := p.quantity()
	switch {
	case err != nil:
		return 0, err
	case q.unit.size != Inch:
		return 0, p.errorf(q.start, "found %s after feet; only inches follow feet, as in 12ft 6-1/2in", quote(q.text))
	case feet.decimal:
		return 0, p.errorf(feet.start, "found decimals in %s and inches after it; write 12ft 6in or 12.5ft", quote(feet.text))
	case q.value >= Foot:
		return 0, p.errorf(q.start, "found %s after feet; inches after feet are less than 12, as in 12ft 6-1/2in", quote(q.text))
	}
	return q.value, nil
}

// quantity reads a number and its unit and works out the exact value.
func (p *parser) quantity() (quantity, error) {
	q := quantity{start: p.pos}
	var err error
	if q.number, err = p.number(); err != nil {
		return q, err
	}
	if q.unit, err = p.unit(q.start); err != nil {
		return q, err
	}
	q.text = p.text[q.start:p.pos]
	if q.fraction && q.unit.size != Inch {
		return q, p.errorf(q.start, "found a fraction in %s; %s", quote(q.text), p.say.fractions)
	}
	if q.whole > uint64(MaxParsed/q.unit.size) {
		return q, p.tooLong(q)
	}
	part, exact := mulDiv(q.num, uint64(q.unit.size), q.den)
	if !exact {
		return q, p.errorf(q.start, "found %s, which is not a whole number of nanometres; %s", quote(q.text), p.say.exact)
	}
	q.value = Length(q.whole)*q.unit.size + Length(part)
	return q, nil
}

func (p *parser) tooLong(q quantity) error {
	return p.errorf(q.start, "found %s, which makes more than %.0f km; %s", quote(q.text), MaxParsed.Metres()/1000, p.say.lengths)
}

func (p *parser) errorf(offset int, format string, args ...any) error {
	return &SyntaxError{Text: p.text, Offset: offset, Msg: fmt.Sprintf(format, args...)}
}

// quote quotes s for a message, no more than 40 characters of it, so that a
// message stays a line.
func quote(s string) string { return fmt.Sprintf("%.40q", s) }
