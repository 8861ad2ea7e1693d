package plan

import (
	"strings"
	"testing"

	"topplate/plan/measure"
)

func TestParseOffset(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  offset // the length is read from its text below
		along string
	}{
		{"2ft 3in left of door1", offset{way: leftOf, name: "door1", nameAt: 16}, "2ft 3in"},
		{"2ft 3in left of W4.door1", offset{way: leftOf, name: "W4.door1", nameAt: 16}, "2ft 3in"},
		{`6-1/2" right of wall hall-west`, offset{way: rightOf, kind: "wall", name: "hall-west", nameAt: 21}, "6-1/2in"},
		{" 0in  before\topening  o.1 ", offset{way: before, kind: "opening", name: "o.1", nameAt: 22}, "0in"},
		{"381mm beyond wall", offset{way: beyond, name: "wall", nameAt: 13}, "381mm"}, // a thing called wall
		{"3m beyond device device", offset{way: beyond, kind: "device", name: "device", nameAt: 17}, "3m"},
		{"½in beyond conduit c", offset{way: beyond, kind: "conduit", name: "c", nameAt: 20}, "1/2in"},
	} {
		c.want.length = at(t, c.along)
		got, known, fault := parseOffset(c.text, measure.Imperial)
		if fault != nil || !known || got != c.want {
			t.Errorf("%q is %+v, %v, %+v; want %+v", c.text, got, known, fault, c.want)
		}
	}
	for _, text := range []string{"", "6ft", "6ft 2in", "-3in", "6", "nonsense", "6 left of door1", "2ft 3in, left", "12ft 13in left of x"} {
		if o, known, fault := parseOffset(text, measure.Imperial); known || fault != nil {
			t.Errorf("%q is taken as measured from something: %+v, %+v", text, o, fault)
		}
	}
}

func TestParseOffsetFaults(t *testing.T) {
	for _, c := range []struct {
		text string
		at   int
		part string
	}{
		{"left of door1", 0, "found no length before left of"},
		{"  beyond door1", 2, "found no length before beyond"},
		{"2ft lefft of door1", 4, `found "lefft" after the length; the nearest is "left"`},
		{"2ft from door1", 4, `found "from" after the length; want left of, right of, before or beyond`},
		{"2ft left door1", 9, `found "door1" after left; want of, as in 2ft 3in left of door1`},
		{"2ft left", 8, "found nothing after left; want of"},
		{"2ft before", 10, "found nothing after before; want the opening, device, conduit or wall"},
		{"2ft left of wal hall", 12, `found "wal"; the nearest is "wall"`},
		{"2ft left of door1 please", 18, `found "please" after the name`},
		{"2ft left of wall hall 3in", 22, `found "3in" after the name`},
		{"2ft left of bed/hall", 15, `found "bed/hall"; want the name`},
		{"2ft left of -x", 12, `found "-x"`},
	} {
		_, known, fault := parseOffset(c.text, measure.Imperial)
		if !known || fault == nil || fault.at != c.at || !strings.Contains(fault.msg, c.part) {
			t.Errorf("%q: %v, %+v; want %q at %d", c.text, known, fault, c.part, c.at)
		}
	}
}

func FuzzParseOffset(f *testing.F) {
	for _, s := range []string{"2ft 3in left of door1", "5in beyond wall hall", "left of", "6ft", "2ft → x", "2ft before  conduit c "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		o, known, fault := parseOffset(text, measure.Imperial)
		if fault != nil && (!known || fault.at < 0 || fault.at > len(text) || fault.msg == "") {
			t.Fatalf("%q: fault %+v, known %v", text, fault, known)
		}
		if _, err := measure.Parse(text); err == nil && known {
			t.Fatalf("%q is a length and is taken as %+v", text, o)
		}
		if !known || fault != nil {
			return
		}
		// Written plainly it is the same again, if a tape shows its length.
		words := []string{o.length.String(), o.way.String(), o.kind, o.name}
		again := strings.Join(strings.Fields(strings.Join(words, " ")), " ")
		if l, err := measure.Parse(words[0]); err != nil || l != o.length {
			return
		}
		p, known, fault := parseOffset(again, measure.Imperial)
		p.nameAt = o.nameAt
		if !known || fault != nil || p != o {
			t.Fatalf("%q is %+v, and %q is %+v, %+v", text, o, again, p, fault)
		}
	})
}
