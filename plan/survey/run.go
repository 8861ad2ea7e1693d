package survey

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"topplate/plan/measure"
)

// MaxLegs bounds a run, so that no sum of lengths overflows. A house has a few
// hundred walls.
const MaxLegs = 10_000

// legsIn and lengthIn are examples in the units of a house.
var (
	legsIn   = [...]string{measure.Imperial: "E 12ft 6in, N 8ft", measure.Metric: "E 3.81m, N 2.4m"}
	lengthIn = [...]string{measure.Imperial: "12ft", measure.Metric: "3.6m"}
)

// A Leg is one straight piece of a run.
type Leg struct {
	Bearing Bearing
	Length  measure.Length // above zero
	Offset  int            // where the leg starts in the text of the run, in bytes
}

// A Fault says what is wrong in the text of a run, and where.
type Fault struct {
	Offset int    // in bytes, 0 <= Offset <= the length of the text
	Msg    string // what was found and an example of what is allowed
	// Angled is true if a direction between the axes seems to be meant, which
	// is not allowed where walls run along them.
	Angled bool
}

// ParseRun reads a run: legs set off by commas, each a bearing and a length as
// measure.Parse reads it.
//
//	E 12ft 6in, N 8ft
//	N 45° E 12ft, S 68°05'35" W 472.68ft, N 7d30' W 3.2m
//
// A bearing is N, E, S or W of the house, or a quadrant bearing: the angle
// from north or south, at most 90°, in whole degrees, minutes and seconds,
// towards east or west. The letter d will do for the degree sign, and primes
// for the quotation marks. Spaces and line ends are free.
//
// What is wrong is told with examples in some units; lengths may be in any.
//
// All faults are returned at once, in the order of the text, at most one for
// each leg; legs is nil if there are any.
func ParseRun(s string, units measure.System) (legs []Leg, faults []Fault) {
	if strings.TrimSpace(s) == "" {
		return nil, []Fault{{Offset: len(s), Msg: "found nothing; write a run such as " + legsIn[units]}}
	}
	if n := strings.Count(s, ",") + 1; n > MaxLegs {
		return nil, []Fault{{Msg: fmt.Sprintf("found %d legs, more than the %d that are read", n, MaxLegs)}}
	}
	start := 0
	for text := range strings.SplitSeq(s, ",") {
		p := &legParser{text: text, units: units}
		leg, fault := p.leg()
		if fault != nil {
			fault.Offset += start
			faults = append(faults, *fault)
		}
		leg.Offset += start
		legs = append(legs, leg)
		start += len(text) + len(",")
	}
	if faults != nil {
		return nil, faults
	}
	return legs, nil
}

// A legParser walks the text of one leg from left to right. Offsets are in
// that text.
type legParser struct {
	text  string
	pos   int
	units measure.System
}

func (p *legParser) rest() string { return p.text[p.pos:] }

func (p *legParser) space() {
	p.pos = len(p.text) - len(strings.TrimLeftFunc(p.rest(), unicode.IsSpace))
}

// accept passes one of the alternatives, if one stands here.
func (p *legParser) accept(alternatives ...string) bool {
	for _, a := range alternatives {
		if strings.HasPrefix(p.rest(), a) {
			p.pos += len(a)
			return true
		}
	}
	return false
}

// run passes the characters that belong and returns them.
func (p *legParser) run(belongs func(rune) bool) string {
	start := p.pos
	p.pos = len(p.text) - len(strings.TrimLeftFunc(p.rest(), belongs))
	return p.text[start:p.pos]
}

func (p *legParser) leg() (Leg, *Fault) {
	p.space()
	leg := Leg{Offset: p.pos}
	var fault *Fault
	if leg.Bearing, fault = p.bearing(); fault != nil {
		return leg, fault
	}
	p.space()
	leg.Length, fault = p.length()
	return leg, fault
}

// bearing reads "E", or "N 45°30' E".
func (p *legParser) bearing() (Bearing, *Fault) {
	at := p.pos
	if p.rest() == "" {
		return 0, p.fault(at, "found no leg before or after a comma; write a run such as %s", legsIn[p.units])
	}
	word := p.run(unicode.IsLetter)
	axis := strings.Index("NESW", word)
	if len(word) != 1 || axis < 0 {
		return 0, p.noBearing(at, word)
	}
	b := Bearing(axis) * East
	if b != North && b != South || !p.atAngle() {
		return b, nil
	}
	angle, fault := p.angle()
	if fault != nil {
		return 0, fault
	}
	p.space()
	at = p.pos
	switch towards := p.run(unicode.IsLetter); towards {
	case "E", "W":
		return fromQuadrant(angle, b == South, towards == "W"), nil
	default:
		return 0, p.fault(at, "found %s where E or W should follow the angle, as in N 45° E %s", p.found(at), lengthIn[p.units])
	}
}

// atAngle reports whether an angle follows, and not yet the length.
func (p *legParser) atAngle() bool {
	ahead := *p
	ahead.space()
	return ahead.run(isDigit) != "" && ahead.accept("°", "d")
}

// angle reads "45°", "45°30'" or "68°05'35"".
func (p *legParser) angle() (Bearing, *Fault) {
	p.space()
	start := p.pos
	total, fault := p.part(Degree, 90)
	if fault != nil {
		return 0, fault
	}
	p.accept("°", "d")
	for _, unit := range [2]struct {
		size  Bearing
		signs [2]string
	}{{minute, [2]string{"'", "′"}}, {1, [2]string{`"`, "″"}}} {
		ahead := *p
		ahead.space()
		at := ahead.pos
		size, fault := ahead.part(unit.size, 59)
		if ahead.pos == at || !ahead.accept(unit.signs[0], unit.signs[1]) {
			continue
		}
		if fault != nil {
			return 0, fault
		}
		*p = ahead
		total += size
	}
	if total > East {
		return 0, p.fault(start, "found an angle of more than 90°; measure it from the nearer of north and south, as in N 45° E %s", lengthIn[p.units])
	}
	return total, nil
}

// part reads one number of an angle, at most most, as so many of unit.
func (p *legParser) part(unit Bearing, most int) (Bearing, *Fault) {
	at := p.pos
	n := 0
	for _, digit := range p.run(isDigit) {
		// Capped, so that a long run of digits stays too large.
		n = min(10*n+int(digit-'0'), most+1)
	}
	if n > most {
		return 0, p.fault(at, `found %s in an angle, more than %d; write an angle such as 45°30'15"`, quote(p.text[at:p.pos]), most)
	}
	return Bearing(n) * unit, nil
}

// length reads the rest of the leg.
func (p *legParser) length() (measure.Length, *Fault) {
	if p.rest() == "" {
		return 0, p.fault(p.pos, "found no length after the bearing; write a run such as %s", legsIn[p.units])
	}
	l, err := p.units.Parse(p.rest())
	var syntax *measure.SyntaxError
	if errors.As(err, &syntax) {
		return 0, p.noLength(syntax)
	}
	if l <= 0 {
		return 0, p.fault(p.pos, "found %s; the length of a leg is above zero: turn the bearing round instead", quote(p.rest()))
	}
	return l, nil
}

// noLength says why the rest of the leg is not a length, and tells a missing
// comma and an angle without its signs from a mistake in the length itself.
func (p *legParser) noLength(e *measure.SyntaxError) *Fault {
	read, after := e.Text[:e.Offset], e.Text[e.Offset:]
	if _, err := measure.Parse(read); err == nil && strings.ContainsAny(after[:1], "NESW") {
		return p.fault(p.pos+e.Offset, "found %s after the length; set legs off by commas, as in %s", quote(after), legsIn[p.units])
	}
	if strings.ContainsAny(e.Text, "EW°") {
		return p.angled(p.pos, "found %s where a length or an angle should start; write an angle in whole degrees, minutes and seconds with their signs, as in N 45°30' E %s", quote(e.Text), lengthIn[p.units])
	}
	return &Fault{Offset: p.pos + e.Offset, Msg: e.Msg}
}

// noBearing says what stands where a bearing should, and what may be meant.
func (p *legParser) noBearing(at int, word string) *Fault {
	meant := map[string]string{
		"N": "N", "E": "E", "S": "S", "W": "W", "NORTH": "N", "EAST": "E", "SOUTH": "S", "WEST": "W",
		"NE": "N 45° E", "SE": "S 45° E", "SW": "S 45° W", "NW": "N 45° W",
	}[strings.ToUpper(word)]
	if strings.Contains(meant, " ") {
		return p.angled(at, "found bearing %s; write %s, as in %s %s", quote(word), meant, meant, lengthIn[p.units])
	}
	if meant != "" {
		return p.fault(at, "found bearing %s; write %s, as in %s %s", quote(word), meant, meant, lengthIn[p.units])
	}
	return p.fault(at, "found %s where a bearing N, E, S or W should start; write a run such as %s", p.found(at), legsIn[p.units])
}

// found quotes what stands at an offset, up to the end of the leg.
func (p *legParser) found(at int) string {
	if at == len(p.text) {
		return "nothing"
	}
	return quote(p.text[at:])
}

func (p *legParser) fault(offset int, format string, args ...any) *Fault {
	return &Fault{Offset: offset, Msg: fmt.Sprintf(format, args...)}
}

func (p *legParser) angled(offset int, format string, args ...any) *Fault {
	f := p.fault(offset, format, args...)
	f.Angled = true
	return f
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// quote quotes s for a message, no more than 40 characters of it, so that a
// message stays a line.
func quote(s string) string { return fmt.Sprintf("%.40q", s) }
