package plan

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A way is the direction in which a distance along a wall is measured.
type way uint8

const (
	plainly way = iota // from where the key says by itself: an end, a corner
	leftOf             // as one faces the wall
	rightOf
	before // towards the wall's start
	beyond // towards its end
)

var wayWords = [...]string{"", "left of", "right of", "before", "beyond"}

// firstWords are what a way begins with.
var firstWords = []string{"left", "right", "before", "beyond"}

func (w way) String() string { return wayWords[w] }

// thingKinds are the kinds of things that a distance may be measured from.
var thingKinds = []string{"wall", "opening", "device", "conduit"}

// An offset is a distance along a wall as the file has it: a length, or a
// length and what it is measured from.
type offset struct {
	length measure.Length
	way    way
	kind   string // one of thingKinds, or empty
	name   string
	nameAt int // where the name starts in the text, in bytes
}

// An offsetFault says what is wrong in the text of an offset, and where.
type offsetFault struct {
	at  int // in bytes
	msg string
}

// lengthsIn are two lengths in the units of a house, for examples.
var lengthsIn = [...][2]string{measure.Imperial: {"2ft 3in", "5in"}, measure.Metric: {"690mm", "130mm"}}

// example is how offsets are written.
func (p *offsetParser) example() string {
	return fmt.Sprintf("write it as %s left of door1, %s beyond wall hall", lengthsIn[p.units][0], lengthsIn[p.units][1])
}

// parseOffset reads the text of a distance along a wall:
//
//	6ft 2in
//	2ft 3in left of door1      right of, before, beyond
//	5in right of wall hall     opening, device, conduit
//	5in before south.door1     the wall and what is on it
//
// known is false, without a fault, if the text is not one that is measured from
// something: then it is a length or a mistake in one.
func parseOffset(text string, units measure.System) (o offset, known bool, fault *offsetFault) {
	at, ok := wordsAfter(text)
	if !ok {
		return o, false, nil
	}
	p := &offsetParser{text: text, at: at, units: units}
	if fault := p.way(&o); fault != nil {
		return o, true, fault
	}
	number := strings.TrimSpace(text[:at])
	if number == "" {
		return o, true, &offsetFault{at, fmt.Sprintf("found no length before %s; %s", o.way, p.example())}
	}
	o.length, _ = measure.Parse(number)
	return o, true, p.name(&o)
}

// wordsAfter is where the words begin that follow a length, or that begin the
// text with a way. ok is false for any other text.
func wordsAfter(text string) (at int, ok bool) {
	_, err := measure.Parse(text)
	var syntax *measure.SyntaxError
	if !errors.As(err, &syntax) {
		return 0, false
	}
	p := &offsetParser{text: text}
	if first, at := p.word(); slices.Contains(firstWords, first) {
		return at, true
	}
	read, after := text[:syntax.Offset], text[syntax.Offset:]
	letter, _ := utf8.DecodeRuneInString(after)
	_, err = measure.Parse(read)
	return syntax.Offset, err == nil && unicode.IsLetter(letter)
}

// An offsetParser walks the words behind the length.
type offsetParser struct {
	text  string
	at    int
	units measure.System
}

// word passes the next word and returns it, empty at the end, and where it is.
func (p *offsetParser) word() (word string, at int) {
	rest := strings.TrimLeftFunc(p.text[p.at:], unicode.IsSpace)
	at = len(p.text) - len(rest)
	end := strings.IndexFunc(rest, unicode.IsSpace)
	if end < 0 {
		end = len(rest)
	}
	p.at = at + end
	return rest[:end], at
}

// way reads "left of", "right of", "before" or "beyond".
func (p *offsetParser) way(o *offset) *offsetFault {
	word, at := p.word()
	for w := leftOf; w <= beyond; w++ {
		first, of, _ := strings.Cut(w.String(), " ")
		if word != first {
			continue
		}
		o.way = w
		if of == "" {
			return nil
		}
		if next, nextAt := p.word(); next != of {
			return &offsetFault{nextAt, fmt.Sprintf("found %s after %s; want of, as in %s %s door1", orNothing(next), word, lengthsIn[p.units][0], w)}
		}
		return nil
	}
	want := "want left of, right of, before or beyond"
	if near, ok := diag.Nearest(word, firstWords); ok {
		want = fmt.Sprintf("the nearest is %q", near)
	}
	return &offsetFault{at, fmt.Sprintf("found %.40q after the length; %s", word, want)}
}

// name reads what the length is measured from, up to the end of the text.
func (p *offsetParser) name(o *offset) *offsetFault {
	words, places := [3]string{}, [3]int{}
	for i := range words {
		words[i], places[i] = p.word()
	}
	k := 0
	switch {
	case words[0] == "":
		return &offsetFault{places[0], fmt.Sprintf("found nothing after %s; want the opening, device, conduit or wall that it is measured from", o.way)}
	case words[1] != "" && !slices.Contains(thingKinds, words[0]):
		if near, ok := diag.Nearest(words[0], thingKinds); ok {
			return &offsetFault{places[0], fmt.Sprintf("found %.40q; the nearest is %q", words[0], near)}
		}
		return &offsetFault{places[1], fmt.Sprintf("found %.40q after the name; %s", words[1], p.example())}
	case words[1] != "":
		o.kind, k = words[0], 1
	}
	if k == 1 && words[2] != "" {
		return &offsetFault{places[2], fmt.Sprintf("found %.40q after the name; %s", words[2], p.example())}
	}
	o.name, o.nameAt = words[k], places[k]
	if i := source.NotName(o.name); i >= 0 {
		return &offsetFault{o.nameAt + i, fmt.Sprintf("found %.60q; want the name of an opening, device, conduit or wall", o.name)}
	}
	return nil
}

func orNothing(word string) string {
	if word == "" {
		return "nothing"
	}
	return fmt.Sprintf("%.40q", word)
}

// readOffset reads a distance along a wall under key.
func readOffset(t *source.Table, key string) (offset, bool) {
	if t.Kind(key) == source.KindText {
		text, _ := t.Text(key, source.Required)
		o, known, fault := parseOffset(text, t.Units())
		if fault != nil {
			t.ErrorfAt(key, fault.at, "%s", fault.msg)
			return o, false
		}
		if known {
			return o, offsetFits(t, key, text, o)
		}
	}
	l, ok := length(t, key, source.Required, alongWalls)
	return offset{length: l}, ok
}

// offsetFits reports whether the length of an offset is one that can be along a
// wall, and nothing else says what it is measured from.
func offsetFits(t *source.Table, key, text string, o offset) bool {
	if !alongWalls.Contains(o.length) {
		t.Errorf(key, "found %.40q; want %s: %s", text, alongWalls.text(systemOf(text)), alongWalls.why)
		return false
	}
	if t.Has("from") {
		t.Errorf("from", "found from together with a length %s %s; want one of them", o.way, o.name)
		return false
	}
	return true
}
