package plan

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"topplate/plan/source"
)

// A quantity is a kind of value that is written with a unit, other than a
// length. It is kept as a whole number of thousandths of its first unit, or
// what scale says.
type quantity struct {
	what  string // "a temperature"
	units []unit
	lo    string // the least and the most allowed, as one writes them
	hi    string
}

// A unit turns a number into what is kept: number × scale + zero.
type unit struct {
	name  string
	scale float64
	zero  float64
}

// Quantities of the files. The pound-force, the pound and the degree
// Fahrenheit are those of NIST Handbook 44, Appendix C. Like the ranges of
// lengths, their ranges are common practice, without a source.
var (
	// Kept in thousandths of a degree Celsius.
	temperatures = quantity{"a temperature", []unit{{"C", 1000, 0}, {"F", 1000 / 1.8, -32 * 1000 / 1.8}}, "-60C", "150C"}
	atticHeats   = quantity{"a temperature", temperatures.units, "20C", "90C"}
	// Kept in thousandths of a newton.
	forces = quantity{"a force", []unit{{"N", 1000, 0}, {"lbf", 4448.2216152605, 0}}, "10N", "5000N"}
	// Kept in milligrams per metre.
	masses = quantity{"a mass for a length", []unit{{"kg/km", 1000, 0}, {"g/m", 1000, 0}, {"lb/1000ft", 453592.37 / 304.8, 0}}, "1kg/km", "5000kg/km"}
	// Kept in millionths of an ohm per metre.
	resistances = quantity{"a resistance for a length", []unit{{"ohm/100m", 10_000, 0}, {"ohm/km", 1000, 0}, {"ohm/1000ft", 1e6 / 304.8, 0}}, "0.1ohm/100m", "100ohm/100m"}
)

// read reads a quantity that may be left out.
func (q quantity) read(t *source.Table, key string) (int64, bool) {
	switch t.Kind(key) {
	case source.KindNone:
		return 0, false
	case source.KindInteger, source.KindFloat:
		t.Errorf(key, "found a number; %s needs a unit: want %s", q.what, q.want())
		return 0, false
	}
	text, ok := t.Text(key, source.Optional)
	if !ok {
		return 0, false
	}
	v, ok := q.parse(text)
	if !ok || v < q.least() || v > q.most() {
		t.Errorf(key, "found %.40q; want %s", text, q.want())
		return 0, false
	}
	return v, true
}

// want says what is allowed.
func (q quantity) want() string {
	names := make([]string, len(q.units))
	for i, u := range q.units {
		names[i] = u.name
	}
	return fmt.Sprintf("%s from %s to %s, in %s", q.what, q.lo, q.hi, strings.Join(names, ", "))
}

func (q quantity) least() int64 { v, _ := q.parse(q.lo); return v }
func (q quantity) most() int64  { v, _ := q.parse(q.hi); return v }

// parse reads a number and one of the units, with or without a space between
// them, rounded to what is kept.
func (q quantity) parse(text string) (int64, bool) {
	text = strings.TrimSpace(text)
	digits := strings.TrimLeft(text, "-+0123456789.")
	number, name := text[:len(text)-len(digits)], strings.TrimSpace(digits)
	x, err := strconv.ParseFloat(number, 64)
	if err != nil || math.Abs(x) > 1e9 {
		return 0, false
	}
	for _, u := range q.units {
		if u.name == strings.TrimPrefix(name, "°") {
			// The product is rounded before the sum on every machine.
			return int64(math.Round(float64(x*u.scale) + u.zero)), true
		}
	}
	return 0, false
}
