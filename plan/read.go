package plan

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// anyLength is the range of all lengths that can be written.
var anyLength = measure.Range{Min: -measure.MaxParsed, Max: measure.MaxParsed}

// length reads a length within b.
func length(t *source.Table, key string, need source.Need, b bound) (measure.Length, bool) {
	if t.Kind(key) == source.KindNone {
		return t.Length(key, need, b.Range)
	}
	v, ok := t.Length(key, need, anyLength)
	if ok && !b.Contains(v) {
		text, _ := t.Text(key, need)
		t.Errorf(key, "found %.40q; want %s: %s", text, b.text(systemOf(text)), b.why)
		return 0, false
	}
	return v, ok
}

// systemOf is the system of units that a length was written in.
func systemOf(text string) measure.System {
	if strings.Contains(text, "m") {
		return measure.Metric
	}
	return measure.Imperial
}

// lengthOr reads a length within b, or gives otherwise if there is none.
func lengthOr(t *source.Table, key string, b bound, otherwise measure.Length) measure.Length {
	if v, ok := length(t, key, source.Optional, b); ok {
		return v
	}
	return otherwise
}

// choiceOr reads one of the allowed texts, the first of which stands for a key
// that is left out.
func choiceOr(t *source.Table, key string, allowed ...string) string {
	if s, ok := t.Choice(key, source.Optional, allowed...); ok {
		return s
	}
	return allowed[0]
}

// boolOr reads true or false, or gives otherwise if the key is left out.
func boolOr(t *source.Table, key string, otherwise bool) bool {
	if v, ok := t.Bool(key, source.Optional); ok {
		return v
	}
	return otherwise
}

// intOr reads a whole number, or gives otherwise if the key is left out.
func intOr(t *source.Table, key string, lo, hi, otherwise int) int {
	if v, ok := t.Int(key, source.Optional, lo, hi); ok {
		return v
	}
	return otherwise
}

// titleOr reads a text for people, or gives an empty one.
func titleOr(t *source.Table, key string) string {
	s, _ := t.Title(key, source.Optional)
	return s
}

// pair reads two lengths within b, such as [x, y].
func pair(t *source.Table, key string, b bound) (geom.Point, bool) {
	want := "two lengths, along X and along Y, such as " + t.Example(`["12ft", "8ft 6in"]`, `["3.6m", "2.59m"]`)
	if t.Kind(key) == source.KindNone {
		t.Errorf(key, "missing; want %s", want)
		return geom.Point{}, false
	}
	array, ok := t.Array(key, source.Required)
	if !ok {
		return geom.Point{}, false
	}
	if n := len(array.Keys()); n != 2 {
		t.Errorf(key, "found %s; want %s", counted(n, "value"), want)
		return geom.Point{}, false
	}
	x, okX := length(array, "0", source.Required, b)
	y, okY := length(array, "1", source.Required, b)
	return geom.Point{X: x, Y: y}, okX && okY
}

// rect reads a rectangle from two opposite corners under the keys from and to.
func rect(t *source.Table) (geom.Rect, bool) {
	p, okP := pair(t, "from", coordinates)
	q, okQ := pair(t, "to", coordinates)
	if !okP || !okQ {
		return geom.Rect{}, false
	}
	r := geom.Rect{Min: p, Max: q}.Canon()
	if r.Width() == 0 || r.Height() == 0 {
		t.Errorf("to", "found a rectangle of %s by %s; want two opposite corners", exact(t.Units(), r.Width()), exact(t.Units(), r.Height()))
		return geom.Rect{}, false
	}
	return r, true
}

// tables reads the tables [[key]], at least one if they are needed. Of more
// than most it reads none.
func tables(t *source.Table, key string, need source.Need, most int) []*source.Table {
	if t.Kind(key) == source.KindArray {
		array, _ := t.Array(key, need)
		switch n := len(array.Keys()); {
		case n > most:
			t.Errorf(key, "found %d of them; at most %d are read", n, most)
			return nil
		case n == 0 && need == source.Required:
			t.Errorf(key, "found none; want at least one [[%s]]", key)
		}
	}
	found, _ := t.Tables(key, need)
	return found
}

// lumberDepth reads the depth of a framing member: the name of a size, or a
// length.
func lumberDepth(t *source.Table, key string, need source.Need, sizes []string, b bound) (measure.Length, bool) {
	want := fmt.Sprintf("one of %s, or a length from %s: %s", quoted(sizes), b.text(t.Units()), b.why)
	if t.Kind(key) == source.KindNone {
		if need == source.Required {
			t.Errorf(key, "missing; want %s", want)
		}
		return 0, false
	}
	s, ok := t.Text(key, need)
	if !ok {
		return 0, false
	}
	for _, l := range lumber {
		if l.name == s && slices.Contains(sizes, s) {
			return l.depth, true
		}
	}
	v, err := measure.Parse(s)
	if err != nil || !b.Contains(v) {
		t.Errorf(key, "found %.40q; want %s", s, want)
		return 0, false
	}
	return v, true
}

// exact writes a length that somebody wrote in some units, without rounding it.
// What is no 64th of an inch is in millimetres whatever the units.
func exact(units measure.System, l measure.Length) string {
	s := units.Format(l)
	if back, err := measure.Parse(s); err == nil && back == l {
		return s
	}
	if units == measure.Metric {
		return strconv.FormatFloat(l.Millimetres(), 'f', -1, 64) + " mm"
	}
	return l.String()
}

// text writes a length in the units of the house.
func (h *House) text(l measure.Length) string { return h.Units.Format(l) }

// offText writes how far apart two points are along the axes, such as "1in
// west and 3in north".
func (h *House) offText(dx, dy measure.Length) string {
	var parts []string
	for _, p := range [2]struct {
		d           measure.Length
		plus, minus string
	}{{dx, "east", "west"}, {dy, "north", "south"}} {
		switch {
		case p.d > 0:
			parts = append(parts, h.text(p.d)+" "+p.plus)
		case p.d < 0:
			parts = append(parts, h.text(-p.d)+" "+p.minus)
		}
	}
	return strings.Join(parts, " and ")
}

// pointText writes a point for a message.
func (h *House) pointText(p geom.Point) string {
	return fmt.Sprintf("(%s, %s)", h.text(p.X), h.text(p.Y))
}
