package tidy

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"topplate/plan/measure"
)

// lengthKeys are the keys that lengths, or arrays of lengths, stand for. A text
// under another key stays as it is, even if it reads like a length: a wall may
// be called 3m.
var lengthKeys = []string{
	"sketch_error", "closing", "floor", "ceiling", "plate_top", "start", "spacing", "board", "cladding", "fire_blocks",
	"frame", "at", "width", "sill", "head", "height", "first", "size", "depth", "insulation", "from", "to", "overhang",
	"rafter", "heel", "chord", "first_x", "first_y", "west", "east", "south", "north", "bottom", "top", "clearance", "clear", "path",
	"length", "error", "thickness", "crawl", "subfloor", "inside", "diameter", "shift", "out", "conductor", "core", "jacket", "left", "mark", "rods", "arm",
	"extension", "reach", "closet", "outlet", "trim", "round",
}

// sameLengths writes all lengths in one way.
func (d *document) sameLengths() {
	for i := range d.sections {
		items := d.sections[i].items
		for k := range items {
			items[k].value = lengthsIn(lastPart(items[k].key), items[k].value)
		}
	}
}

// lengthsIn rewrites the lengths in a value that stands for key.
func lengthsIn(key, value string) string {
	var b strings.Builder
	keys := []string{key} // of each bracket around
	for rest := value; rest != ""; {
		if rest[0] == '#' {
			line, after, found := strings.Cut(rest, "\n")
			b.WriteString(line)
			if rest = after; found {
				b.WriteByte('\n')
			}
			continue
		}
		n := max(1, tokenSize(rest))
		part := rest[:n]
		rest = rest[n:]
		switch now := &keys[len(keys)-1]; {
		case part == "{" || part == "[":
			keys = append(keys, *now)
		case (part == "}" || part == "]") && len(keys) > 1:
			keys = keys[:len(keys)-1]
		case strings.HasPrefix(strings.TrimLeft(rest, " \t"), "=") && part != " " && part != "\t":
			// The end of a key in a table on one line.
			*now = lastWord(value[:len(value)-len(rest)])
		case n > 1 && slices.Contains(lengthKeys, *now):
			part = lengthText(part)
		}
		b.WriteString(part)
	}
	return b.String()
}

// lastWord is the last key part that a text ends with.
func lastWord(text string) string {
	return lastPart(strings.TrimSpace(text[strings.LastIndexAny(text, "{,")+1:]))
}

// lastPart is the last part of a dotted key, without quotes.
func lastPart(key string) string {
	key = key[strings.LastIndexByte(key, '.')+1:]
	return strings.Trim(key, " \t\"'")
}

// lengthText rewrites a text of one line that is a length.
func lengthText(quoted string) string {
	text := strings.Trim(quoted, "'")
	if quoted[0] == '"' {
		var err error
		if text, err = strconv.Unquote(quoted); err != nil {
			return quoted
		}
	}
	l, err := measure.Parse(text)
	if err != nil {
		return quoted
	}
	plain, asMetric := l.String(), strings.Contains(text, "m")
	if asMetric {
		plain = metric(l)
	}
	again, err := measure.Parse(plain)
	if err != nil || again != l || !asMetric && strings.Contains(plain, "m") {
		return quoted // no tape shows it, so that it stays as it was measured
	}
	return `"` + plain + `"`
}

// metric writes a length exactly, in metres from one metre on and in
// millimetres below.
func metric(l measure.Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	unit, name, digits := measure.Metre, "m", 9
	if l < measure.Metre {
		unit, name, digits = measure.Millimetre, "mm", 6
	}
	text := fmt.Sprintf("%s%d.%0*d", sign, l/unit, digits, l%unit)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".") + name
}

// sameText reports whether two texts are the same, or one length.
func sameText(key, a, b string) bool {
	if a == b {
		return true
	}
	l, errA := measure.Parse(a)
	m, errB := measure.Parse(b)
	return errA == nil && errB == nil && l == m && slices.Contains(lengthKeys, key)
}
