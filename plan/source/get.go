package source

import (
	"fmt"
	"math"
	"strconv"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// get returns the entry of key. If it is missing and needed, that is reported
// with what is wanted.
func (t *Table) get(key string, need Need, want string) (*entry, bool) {
	e := t.find(key)
	if e == nil && need == Required {
		t.Errorf(key, "missing; want %s", want)
	}
	return e, e != nil
}

// refuse reports that the value of key is not what is wanted.
func (t *Table) refuse(key, want string) *diag.Diagnostic {
	return t.Errorf(key, "found %s; want %s", t.found(key), want)
}

// found describes the value of key, which is there, for a message.
func (t *Table) found(key string) string {
	e := t.entries[key]
	raw := t.doc.src[e.offset : e.offset+e.length]
	switch e.kind {
	case KindText:
		return quote(e.value.(string))
	case KindInteger, KindFloat:
		return fmt.Sprintf("the number %.40s", raw)
	case KindDate, KindTime:
		return fmt.Sprintf("the date or time %.40s", raw)
	case KindArray:
		return fmt.Sprintf("an array of %d", len(e.table.order))
	case KindTable:
		return "a table"
	default:
		return string(raw)
	}
}

// quote quotes s for a message, no more than 60 characters of it, so that a
// message stays a line.
func quote(s string) string { return fmt.Sprintf("%.60q", s) }

// Speak sets the units in which messages about the file of t speak of lengths:
// at first feet and inches. Values may be in any.
func (t *Table) Speak(units measure.System) { t.doc.units = units }

// Units are those in which messages about the file of t speak of lengths.
func (t *Table) Units() measure.System { return t.doc.units }

// Example chooses one of two examples by the units of messages.
func (t *Table) Example(imperial, metric string) string {
	if t.doc.units == measure.Metric {
		return metric
	}
	return imperial
}

// Length returns a length within r, written in quotes as measure.Parse reads
// it.
func (t *Table) Length(key string, need Need, r measure.Range) (measure.Length, bool) {
	units := t.doc.units
	want := fmt.Sprintf("a length from %s to %s, such as %q", units.Format(r.Min), units.Format(r.Max), exampleLength(r, units))
	e, ok := t.get(key, need, want)
	if !ok {
		return 0, false
	}
	if e.kind == KindInteger || e.kind == KindFloat {
		t.Errorf(key, "found %s; a length needs a unit, such as %s", t.found(key), t.Example(`"12ft 6in" or "8-1/2in"`, `"3.81m" or "3810mm"`))
		return 0, false
	}
	if e.kind != KindText {
		t.refuse(key, want)
		return 0, false
	}
	l, err := units.Parse(e.value.(string))
	if fault, bad := err.(*measure.SyntaxError); bad {
		t.doc.diags.Errorf(t.ValuePosAt(key, fault.Offset), t.Path(key), "%s", fault.Msg)
		return 0, false
	}
	if !r.Contains(l) {
		t.refuse(key, want)
		return 0, false
	}
	return l, true
}

// usual are lengths as one would write them.
var usual = [...][]string{
	measure.Imperial: {"8ft", "1ft 4in", "3-1/2in", "3/4in"},
	measure.Metric:   {"2.4m", "400mm", "90mm", "20mm"},
}

// exampleLength is a length as one would write it that lies within r, if one
// of the usual does.
func exampleLength(r measure.Range, units measure.System) string {
	for _, text := range usual[units] {
		if l, err := measure.Parse(text); err == nil && r.Contains(l) {
			return text
		}
	}
	return units.Format(r.Min)
}

// Int returns a whole number from lo to hi.
func (t *Table) Int(key string, need Need, lo, hi int) (int, bool) {
	want := fmt.Sprintf("a whole number from %d to %d", lo, hi)
	e, ok := t.get(key, need, want)
	if !ok {
		return 0, false
	}
	n, ok := e.value.(int64)
	if !ok || n < int64(lo) || n > int64(hi) {
		t.refuse(key, want)
		return 0, false
	}
	return int(n), true
}

// Number returns a number from lo to hi, with or without decimals.
func (t *Table) Number(key string, need Need, lo, hi float64) (float64, bool) {
	want := fmt.Sprintf("a number from %s to %s", decimal(lo), decimal(hi))
	e, ok := t.get(key, need, want)
	if !ok {
		return 0, false
	}
	x := math.NaN()
	switch v := e.value.(type) {
	case int64:
		x = float64(v)
	case float64:
		x = v
	}
	if inside := lo <= x && x <= hi && !math.IsInf(x, 0); !inside {
		t.refuse(key, want)
		return 0, false
	}
	return x, true
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Bool returns true or false.
func (t *Table) Bool(key string, need Need) (value, ok bool) {
	e, ok := t.get(key, need, "true or false")
	if !ok {
		return false, false
	}
	if value, ok = e.value.(bool); !ok {
		t.refuse(key, "true or false, without quotes")
	}
	return value, ok
}
