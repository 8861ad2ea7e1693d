package tidy

import (
	"regexp"
	"slices"
	"strings"
)

// A document is a file as sections of lines.
type document struct {
	newline  string
	heading  []string // comments at the start that belong to no table
	sections []section
	foot     []string // comments at the end that belong to no table
}

// A section is a table with its header, or the keys before all tables.
type section struct {
	lead  []string // comments before the header; "" is a blank line
	name  string   // dotted, as it is written
	head  entry    // the header and its comment; no text before all tables
	items []entry
	tail  []string // comments after the last key
}

// An entry is a key with its value, or a header.
type entry struct {
	lead       []string // comments before a key
	key, value string   // of a key; the value as it is written
	header     string   // of a header
	note       []string // the comment at the end of the line, and lines under it
}

// A scanner cuts the text of a file that is TOML into a document. It knows only
// so much of TOML as it needs to find where values and comments end.
type scanner struct {
	text    string
	at      int
	doc     document
	pending []string // comments and blank lines since the last entry
	column  int      // in which the last entry's comment begins, 0 if it has none
	last    *entry
}

// ruled matches a line that sets off a part of a file.
var ruled = regexp.MustCompile(`^#+\s*[-=~*#_]{3,}`)

// scan cuts a file into a document. ok is false if it can't make sense of it.
func scan(text string) (doc *document, ok bool) {
	s := &scanner{text: text}
	s.doc.newline = "\n"
	if i := strings.IndexByte(text, '\n'); i > 0 && text[i-1] == '\r' {
		s.doc.newline = "\r\n"
	}
	s.doc.sections = []section{{}}
	for s.at < len(text) {
		start := s.at
		s.space()
		switch c := s.peek(); {
		case c == 0 || c == '\n' || c == '\r':
			s.pending = append(s.pending, "")
			ok = s.endOfLine(nil, start)
		case c == '#':
			ok = s.comment(start)
		case c == '[':
			ok = s.header(start)
		default:
			ok = s.key(start)
		}
		if !ok {
			return nil, false
		}
	}
	s.finish()
	return &s.doc, true
}

// peek is the next byte, 0 at the end.
func (s *scanner) peek() byte {
	if s.at < len(s.text) {
		return s.text[s.at]
	}
	return 0
}

func (s *scanner) space() {
	for c := s.peek(); c == ' ' || c == '\t'; c = s.peek() {
		s.at++
	}
}

// line passes the rest of a line, with its end, and returns it without.
func (s *scanner) line() string {
	rest, _, found := strings.Cut(s.text[s.at:], "\n")
	s.at += len(rest)
	if found {
		s.at++
	}
	return strings.TrimRight(rest, " \t\r")
}

// comment reads a line that is a comment.
func (s *scanner) comment(start int) bool {
	column := width(s.text[start:s.at])
	text := s.line()
	if s.last != nil && column > 0 && column == s.column && len(s.pending) == 0 {
		s.last.note = append(s.last.note, text)
		return true
	}
	s.pending = append(s.pending, text)
	return true
}

// endOfLine reads what may follow an entry on its line, which starts at start.
func (s *scanner) endOfLine(e *entry, start int) bool {
	s.space()
	s.last, s.column = nil, 0
	if s.peek() == '#' && e != nil {
		s.last = e
		s.column = width(s.text[start:s.at])
		e.note = []string{s.line()}
		return true
	}
	return s.line() == ""
}

// section is the section that is being read.
func (s *scanner) section() *section { return &s.doc.sections[len(s.doc.sections)-1] }

// header reads [name] or [[name]].
func (s *scanner) header(start int) bool {
	open := "["
	if strings.HasPrefix(s.text[s.at:], "[[") {
		open = "[["
	}
	s.at += len(open)
	from := s.at
	for c := s.peek(); c != ']'; c = s.peek() {
		if c == 0 || c == '\n' {
			return false
		}
		if !s.token() {
			return false
		}
	}
	name := strings.TrimSpace(s.text[from:s.at])
	shut := strings.Repeat("]", len(open))
	if !strings.HasPrefix(s.text[s.at:], shut) {
		return false
	}
	s.at += len(shut)
	lead := s.split()
	s.doc.sections = append(s.doc.sections, section{lead: lead, name: name})
	e := &s.section().head
	e.header = open + name + shut
	return s.endOfLine(e, start)
}

// key reads a key and its value.
func (s *scanner) key(start int) bool {
	from := s.at
	for c := s.peek(); c != '='; c = s.peek() {
		if c == 0 || c == '\n' || !s.token() {
			return false
		}
	}
	key := strings.TrimSpace(s.text[from:s.at])
	s.at++
	s.space()
	from = s.at
	if !s.value() {
		return false
	}
	value := strings.TrimRight(s.text[from:s.at], " \t\r")
	if key == "" || value == "" {
		return false
	}
	if strings.Contains(value, "\n") {
		start = from + strings.LastIndexByte(value, '\n') + 1
	}
	own := s.section()
	own.items = append(own.items, entry{lead: s.before(), key: key, value: value})
	return s.endOfLine(&own.items[len(own.items)-1], start)
}

// value passes a value: up to the end of the line or to a comment that is in
// no bracket.
func (s *scanner) value() bool {
	for depth := 0; s.at < len(s.text); {
		switch c := s.peek(); {
		case (c == '\n' || c == '#') && depth == 0:
			return true
		case c == '#':
			s.line()
			continue
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			depth--
		}
		if !s.token() {
			return false
		}
	}
	return true
}

// token passes a string, or one byte of anything else.
func (s *scanner) token() bool {
	n := tokenSize(s.text[s.at:])
	s.at += n
	return n > 0
}

// tokenSize is the size of the string that text starts with, or 1 for
// anything else. It is 0 for a string without an end.
func tokenSize(text string) int {
	for _, quote := range []string{`"""`, `'''`, `"`, `'`} {
		if !strings.HasPrefix(text, quote) {
			continue
		}
		at := len(quote)
		for !strings.HasPrefix(text[at:], quote) {
			if at < len(text) && text[at] == '\\' && quote[0] == '"' {
				at++
			}
			if at++; at >= len(text) {
				return 0
			}
		}
		at += len(quote)
		for n := 0; n < 2 && len(quote) == 3 && at < len(text) && text[at] == quote[0]; n++ {
			at++ // quotes may be the last of the text
		}
		return at
	}
	return 1
}

// before takes the comments before a key. At the start of a file those that
// are set off from the key are its heading.
func (s *scanner) before() []string {
	pending := s.take()
	if s.first() {
		if i := lastBlank(pending); i >= 0 {
			s.doc.heading, pending = blocks(pending[:i]), pending[i:]
		}
	}
	return slices.DeleteFunc(pending, func(line string) bool { return line == "" })
}

// first reports whether nothing but comments was read so far.
func (s *scanner) first() bool {
	return len(s.doc.sections) == 1 && len(s.section().items) == 0
}

// split takes the comments before a header, and gives those that do not belong
// to it to the heading or to the section before.
func (s *scanner) split() []string {
	pending := s.take()
	if s.first() {
		own := lastBlank(pending) + 1
		if i := slices.IndexFunc(pending, ruled.MatchString); i >= 0 {
			own = min(own, i)
		}
		s.doc.heading = blocks(pending[:own])
		return trimmed(pending[own:])
	}
	if !slices.Contains(pending, "") {
		return pending
	}
	tail := tailSize(pending)
	s.section().tail = pending[:tail]
	return trimmed(pending[tail:])
}

// tailSize is how many of the lines after the last key belong to its table:
// those before a blank or a ruled line.
func tailSize(pending []string) int {
	i := slices.IndexFunc(pending, func(line string) bool { return line == "" || ruled.MatchString(line) })
	switch {
	case i < 0:
		return len(pending)
	case pending[i] != "":
		return 0 // the lines right before a rule go with it
	}
	return i
}

// finish gives the comments at the end of a file to the last table or to the
// foot.
func (s *scanner) finish() {
	pending := s.take()
	if s.first() {
		s.doc.heading = blocks(pending)
		return
	}
	tail := tailSize(pending)
	s.section().tail = pending[:tail]
	s.doc.foot = blocks(pending[tail:])
}

func (s *scanner) take() []string {
	pending := s.pending
	s.pending = nil
	return pending
}

func lastBlank(lines []string) int {
	for i := len(lines) - 1; i >= 0; i-- {
		if lines[i] == "" {
			return i
		}
	}
	return -1
}

// trimmed leaves out blank lines at the start and all but one where several
// follow each other. One at the end stays.
func trimmed(lines []string) []string {
	lines = slices.CompactFunc(slices.Clone(lines), func(a, b string) bool { return a == "" && b == "" })
	if len(lines) > 0 && lines[0] == "" {
		lines = lines[1:]
	}
	return lines
}

// blocks is trimmed lines without blank lines at the end.
func blocks(lines []string) []string {
	lines = trimmed(lines)
	if n := len(lines); n > 0 && lines[n-1] == "" {
		lines = lines[:n-1]
	}
	return lines
}

// remarks lists all comments outside of values, sorted.
func (d *document) remarks() []string {
	var all []string
	add := func(lines []string) {
		for _, line := range lines {
			if line != "" {
				all = append(all, line)
			}
		}
	}
	add(d.heading)
	add(d.foot)
	for i := range d.sections {
		s := &d.sections[i]
		add(s.lead)
		add(s.head.note)
		add(s.tail)
		for k := range s.items {
			add(s.items[k].lead)
			add(s.items[k].note)
		}
	}
	slices.Sort(all)
	return all
}
