package source

import (
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"topplate/plan/diag"
)

// Limits of what people write for people.
const (
	maxName  = 40  // characters of an id
	maxTitle = 200 // characters of a title
)

// Text returns a text of any content.
func (t *Table) Text(key string, need Need) (string, bool) {
	return t.text(key, need, "text in quotes")
}

// TextOr returns a text of any content, or otherwise if key is not there.
func (t *Table) TextOr(key, otherwise string) string {
	if s, ok := t.Text(key, Optional); ok {
		return s
	}
	return otherwise
}

func (t *Table) text(key string, need Need, want string) (string, bool) {
	e, ok := t.get(key, need, want)
	if !ok {
		return "", false
	}
	s, ok := e.value.(string)
	if !ok {
		t.refuse(key, want)
	}
	return s, ok
}

// Choice returns one of the allowed texts.
func (t *Table) Choice(key string, need Need, allowed ...string) (string, bool) {
	want := choices(allowed)
	s, ok := t.text(key, need, want)
	if !ok {
		return "", false
	}
	for _, a := range allowed {
		if s == a {
			return s, true
		}
	}
	if near, ok := diag.Nearest(s, allowed); ok {
		want += fmt.Sprintf("; did you mean %q?", near)
	}
	t.refuse(key, want)
	return "", false
}

// choices lists words as "a", "b" or "c".
func choices(words []string) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", w)
	}
	return b.String()
}

// Name returns an id: 1 to 40 letters, digits, hyphens, underscores and points,
// of which the first is a letter or a digit. Letters are a to z and A to Z, so
// that an id can be an id in a drawing and part of a file's name.
func (t *Table) Name(key string, need Need) (string, bool) {
	want := fmt.Sprintf("a name of 1 to %d letters, digits, - _ or ., starting with a letter or digit, such as \"north-wall\"", maxName)
	s, ok := t.text(key, need, want)
	if !ok {
		return "", false
	}
	if i := NotName(s); i >= 0 {
		t.doc.diags.Errorf(t.ValuePosAt(key, i), t.Path(key), "found %s; want %s", quote(s), want)
		return "", false
	}
	return s, true
}

// NotName is the offset of the first byte that a name may not have there, or
// -1.
func NotName(s string) int {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9'
		mark := r == '-' || r == '_' || r == '.'
		if !letter && !(mark && i > 0) || i >= maxName {
			return i
		}
	}
	if s == "" {
		return 0
	}
	return -1
}

// Title returns a text for people on one line: 1 to 200 characters, not only
// spaces, and none that controls how others are shown.
func (t *Table) Title(key string, need Need) (string, bool) {
	want := fmt.Sprintf("a text of 1 to %d characters on one line", maxTitle)
	s, ok := t.text(key, need, want)
	switch i := strings.IndexFunc(s, controls); {
	case !ok:
		return "", false
	case i >= 0:
		r, _ := utf8.DecodeRuneInString(s[i:])
		t.doc.diags.Errorf(t.ValuePosAt(key, i), t.Path(key), "found the control character %U; want %s", r, want)
		return "", false
	case strings.TrimSpace(s) == "", utf8.RuneCountInString(s) > maxTitle:
		t.Errorf(key, "found %d characters, %s; want %s", utf8.RuneCountInString(s), quote(s), want)
		return "", false
	}
	return s, true
}

// controls reports whether r is a control character, a separator of lines, a
// mark that changes the direction of writing (Unicode Standard Annex #9), or
// one that XML 1.0 does not allow (section 2.2).
func controls(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) ||
		r == '\u2028' || r == '\u2029' || r == '\ufffe' || r == '\uffff'
}

// Date returns a date as YYYY-MM-DD, written with or without quotes.
func (t *Table) Date(key string, need Need) (string, bool) {
	const want = "a date as YYYY-MM-DD, such as 2026-03-31"
	e, ok := t.get(key, need, want)
	if !ok {
		return "", false
	}
	s, ok := e.value.(string)
	if e.kind == KindDate {
		s, ok = string(t.doc.src[e.offset:e.offset+e.length]), true
	}
	if _, err := time.Parse(time.DateOnly, s); !ok || err != nil {
		t.refuse(key, want)
		return "", false
	}
	return s, true
}
