package record

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// Bounds of what is read, to catch slips of the pen and the unit.
var (
	// longest is common practice, without a source: no spool holds more.
	longest = rule.Limit{
		ID: "record-length", Title: "Longest cable or spool that is recorded", Unit: rule.Nanometres, Value: int64(20_000 * measure.Foot),
		Source: rule.Source{Status: rule.CommonPractice}, Text: "What is on one spool.",
	}
	// furthest mark: likewise.
	furthest = rule.Limit{
		ID: "record-mark", Title: "Largest mark on a jacket", Unit: rule.Nanometres, Value: int64(300_000 * measure.Foot),
		Source: rule.Source{Status: rule.CommonPractice}, Text: "Printed along the jacket from the maker's zero.",
	}
	// MarksOff is how far apart the measured length and the marks may be: a
	// mark is printed every 2 ft, so that reading both ends is off by 4 ft at
	// most.
	MarksOff = rule.Limit{
		ID: "record-marks", Title: "Measured length against the marks on the jacket", Unit: rule.Nanometres, Value: int64(4 * measure.Foot),
		Source: rule.Source{Status: rule.CommonPractice}, Text: "Between the length that was measured and that between the marks.",
	}
	widest = rule.Limit{
		ID: "record-hole", Title: "Widest hole that is recorded", Unit: rule.Nanometres, Value: int64(5 * measure.Inch),
		Source: rule.Source{Status: rule.CommonPractice}, Text: "The hole that a bit or a hole saw makes.",
	}
)

// Largest numbers that are read, in the unit of the field; common practice,
// no source. IEEE 802.3 has links up to 40 Gb/s on copper, 60 V at the feeding
// end and 90 W (from memory).
const (
	mostSpeed = 40_000
	mostWatts = 100_000
	mostVolts = 60_000
	mostHours = 1_000_000
	mostPort  = 1000
	mostThere = 24_000
)

// length reads a length from least to most.
func length(text string, least measure.Length, most rule.Limit) (measure.Length, error) {
	l, err := measure.Parse(text)
	if err != nil {
		return 0, err
	}
	if l < least || int64(l) > most.Value {
		return 0, fmt.Errorf("found %s; want %s to %s", l, least, measure.Length(most.Value))
	}
	return l, nil
}

// thousandths reads a number that is not negative in thousandths, with an
// optional unit from units, whose values are what one of it is in thousandths.
// The unit may stand in the text or be given.
func thousandths(text, given string, most int64, units map[string]int64) (int64, error) {
	number := strings.TrimRight(text, letters+"/ ")
	unit := strings.TrimSpace(text[len(number):])
	if unit == "" {
		unit = given
	}
	per, ok := units[strings.ToLower(unit)]
	if !ok {
		return 0, fmt.Errorf("found the unit %.20q; want %s", unit, listed(units))
	}
	whole, part, _ := strings.Cut(number, ".")
	digits := strings.TrimRight(part, "0")
	n, err := strconv.ParseInt(whole+digits, 10, 64)
	if err != nil || whole == "" || strings.ContainsAny(whole+part, "+-") || len(digits) > 6 {
		return 0, fmt.Errorf("found %.40q; want a number such as 11.5", text)
	}
	scale := int64(1)
	for range digits {
		scale *= 10
	}
	if n > most*scale/per+1 || n*per%scale != 0 || n*per/scale > most {
		return 0, fmt.Errorf("found %.40q; want at most %s, to the thousandth", text, decimal(most))
	}
	return n * per / scale, nil
}

const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

// listed are the units that are known.
func listed(units map[string]int64) string {
	var out []string
	for u := range units {
		if u != "" {
			out = append(out, u)
		}
	}
	slices.Sort(out)
	return strings.Join(out, ", ")
}

// decimal writes thousandths.
func decimal(n int64) string {
	s := strconv.FormatInt(n/1000, 10)
	if n%1000 != 0 {
		s += "." + strings.TrimRight(fmt.Sprintf("%03d", n%1000), "0")
	}
	return s
}

// Units of what is measured, in thousandths of what is kept. No unit is the
// last in each comment.
var (
	speedUnits = map[string]int64{"": 1000, "mb/s": 1000, "mbit/s": 1000, "mbps": 1000, "gb/s": 1e6, "gbit/s": 1e6, "gbps": 1e6} // Mb/s
	wattUnits  = map[string]int64{"": 1000, "w": 1000, "watts": 1000, "mw": 1}                                                   // W
	voltUnits  = map[string]int64{"": 1000, "v": 1000, "volts": 1000, "mv": 1}                                                   // V
	hourUnits  = map[string]int64{"": 1000, "h": 1000, "hours": 1000}                                                            // h
)

// word is which of the names a text is, in any case.
func word(text string, names []string, more map[string]int) (int, error) {
	lower := strings.ToLower(strings.TrimSpace(text))
	if i := slices.Index(names, lower); i >= 0 {
		return i, nil
	}
	if i, ok := more[lower]; ok {
		return i, nil
	}
	return 0, fmt.Errorf("found %.40q; want %s", text, strings.Join(names, ", "))
}

// otherStates and otherResults are further words for the same.
var (
	otherStates  = map[string]int{"notrun": int(NotRun), "not-run": int(NotRun)}
	otherResults = map[string]int{"-": int(Untested), "ok": int(Pass), "passed": int(Pass), "failed": int(Fail)}
)

// whole reads a whole number from 0.
func whole(text string, most int) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > most {
		return 0, fmt.Errorf("found %.40q; want a whole number from 0 to %d", text, most)
	}
	return n, nil
}

// Set reads one value of a cable: state, length, marks, plug, port, wiremap,
// speed, watts, volts or hours. An empty text takes the value away. The unit is
// for a number without one, and may be empty: Mb/s, W, V and hours then; a
// length always needs one.
func (c *Cable) Set(key, text, unit string) (err error) {
	text = strings.TrimSpace(text)
	if text == "" && c.clear(key) {
		return nil
	}
	switch key {
	case "state":
		var i int
		i, err = word(text, stateNames, otherStates)
		c.State = State(i)
	case "length":
		c.Length, err = length(withUnit(text, unit), 1, longest)
	case "marks":
		err = c.setMarks(text)
	case "plug":
		c.Plug = text
	case "port":
		c.Port, err = whole(text, mostPort)
	case "wiremap":
		var i int
		i, err = word(text, wireMapNames, otherResults)
		c.WireMap = WireMap(i)
	case "speed":
		c.Speed, err = thousandths(text, unit, mostSpeed*1000, speedUnits)
		if err == nil && c.Speed%1000 != 0 {
			err = fmt.Errorf("found %.40q; want whole Mb/s", text)
		}
		c.Speed /= 1000
	case "watts":
		c.Watts, err = thousandths(text, unit, mostWatts, wattUnits)
	case "volts":
		c.Volts, err = thousandths(text, unit, mostVolts, voltUnits)
	case "hours":
		c.Hours, err = thousandths(text, unit, mostHours, hourUnits)
	default:
		err = fmt.Errorf("a cable has no %s", key)
	}
	return err
}

// clear takes a value away; a state can't be.
func (c *Cable) clear(key string) bool {
	switch key {
	case "length":
		c.Length = 0
	case "marks":
		c.Marked, c.Marks = false, [2]measure.Length{}
	case "plug":
		c.Plug = ""
	case "port":
		c.Port = 0
	case "wiremap":
		c.WireMap = Untested
	case "speed":
		c.Speed = 0
	case "watts":
		c.Watts = 0
	case "volts":
		c.Volts = 0
	case "hours":
		c.Hours = 0
	default:
		return false
	}
	return true
}

// withUnit is a length with the unit that its column has, if it has none.
func withUnit(text, unit string) string {
	if strings.ContainsAny(text, letters+"'\"′″") {
		return text
	}
	return text + unit
}

// setMarks reads the marks at both ends, set off by a comma.
func (c *Cable) setMarks(text string) error {
	c.Marked, c.Marks = false, [2]measure.Length{}
	a, b, ok := strings.Cut(text, ",")
	if !ok {
		return fmt.Errorf("found %.40q; want the marks at both ends, such as 412ft,351ft", text)
	}
	var err error
	for i, s := range []string{a, b} {
		if c.Marks[i], err = length(s, 0, furthest); err != nil {
			return err
		}
	}
	if c.Marks[0] == c.Marks[1] {
		return fmt.Errorf("found the mark %s twice; want the marks at both ends", c.Marks[0])
	}
	c.Marked = true
	return nil
}

// setPoint reads a place in the house's frame, its numbers set off by commas.
func (b *Bore) setPoint(text string) error {
	b.Pointed, b.Point = false, [3]measure.Length{}
	parts := strings.Split(text, ",")
	if len(parts) != len(b.Point) {
		return fmt.Errorf("found %.60q; want a place such as 12ft,4ft,-8ft", text)
	}
	for i, s := range parts {
		var err error
		if b.Point[i], err = length(s, -measure.Length(furthest.Value), furthest); err != nil {
			return err
		}
	}
	b.Pointed = true
	return nil
}

// Set reads one value of a hole: through, wall, at, point, diameter, cables or there.
func (h *Hole) Set(key, text string) (err error) {
	switch key {
	case "through":
		h.Through = text
	case "wall":
		h.Wall = text
	case "at":
		h.At, err = length(text, 0, longest)
	case "point":
		err = h.setPoint(text)
	case "diameter":
		h.Diameter, err = length(text, measure.Inch/8, widest)
	case "cables":
		h.Cables = nil
		for id := range strings.SplitSeq(text, ",") {
			if id = strings.TrimSpace(id); id != "" {
				h.Cables = append(h.Cables, id)
			}
		}
	case "there":
		h.There, err = whole(text, mostThere)
	default:
		err = fmt.Errorf("a hole has no %s", key)
	}
	return err
}

// Set reads one value of a spool: cable, left, mark or counts.
func (s *Spool) Set(key, text string) (err error) {
	switch key {
	case "cable":
		s.Cable = text
	case "left":
		s.Left, err = length(text, 0, longest)
	case "mark":
		s.Mark, err = length(text, 0, furthest)
		s.Marked = err == nil
	case "counts":
		var i int
		i, err = word(text, []string{"up", "down"}, nil)
		s.Down = i == 1
	default:
		err = fmt.Errorf("a spool has no %s", key)
	}
	return err
}
