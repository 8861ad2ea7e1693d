package tidy

import (
	"strings"
	"unicode/utf8"
)

// Where comments at the ends of lines begin: some spaces after the longest
// line that has one. Lines that are longer than the limit do not push the
// others.
const (
	noteGap  = 2
	pushMost = 44
	tabStop  = 8
)

// width is the columns that a line takes up.
func width(line string) int {
	n := 0
	for part := range strings.SplitAfterSeq(line, "\t") {
		text, tab := strings.CutSuffix(part, "\t")
		if n += utf8.RuneCountInString(text); tab {
			n += tabStop - n%tabStop
		}
	}
	return n
}

// text prints a document.
func (d *document) text() string {
	var p printer
	p.newline = d.newline
	p.block(d.heading)
	for i := range d.sections {
		p.section(&d.sections[i])
	}
	p.block(d.foot)
	return p.out.String()
}

type printer struct {
	out     strings.Builder
	newline string
}

func (p *printer) line(parts ...string) {
	for _, part := range parts {
		p.out.WriteString(part)
	}
	p.out.WriteString(p.newline)
}

func (p *printer) lines(lines []string) {
	for _, line := range lines {
		p.line(line)
	}
}

// gap is a blank line, but for at the start.
func (p *printer) gap() {
	if p.out.Len() > 0 {
		p.line()
	}
}

// block prints comments that belong to no table.
func (p *printer) block(lines []string) {
	if len(lines) > 0 {
		p.gap()
		p.lines(lines)
	}
}

func (p *printer) section(s *section) {
	if s.head.header == "" && len(s.items) == 0 {
		return
	}
	p.gap()
	p.lines(s.lead)
	column := s.column()
	if s.head.header != "" {
		p.entry(&s.head, column)
	}
	for i := range s.items {
		p.lines(s.items[i].lead)
		p.entry(&s.items[i], column)
	}
	p.lines(s.tail)
}

// code is what an entry is without its comment.
func (e *entry) code() string {
	if e.header != "" {
		return e.header
	}
	return e.key + " = " + spaced(e.value)
}

// column is where the comments of a section begin.
func (s *section) column() int {
	longest := 0
	for _, e := range append([]entry{s.head}, s.items...) {
		if len(e.note) == 0 {
			continue
		}
		code := e.code()
		if n := width(code); n <= pushMost && !strings.Contains(code, "\n") {
			longest = max(longest, n)
		}
	}
	return longest + noteGap
}

// entry prints a line with its comment, and the lines under that.
func (p *printer) entry(e *entry, column int) {
	code := e.code()
	if len(e.note) == 0 {
		p.line(code)
		return
	}
	last := width(code[strings.LastIndexByte(code, '\n')+1:])
	if strings.Contains(code, "\n") || last > column-noteGap {
		column = last + noteGap
	}
	p.line(code, strings.Repeat(" ", column-last), e.note[0])
	for _, more := range e.note[1:] {
		p.line(strings.Repeat(" ", column), more)
	}
}

// spaced writes an array or a table on one line with one space between its
// parts. Other values, and those of several lines, stay as they are.
func spaced(value string) string {
	if strings.Contains(value, "\n") || value[0] != '[' && value[0] != '{' {
		return value
	}
	var b []byte
	words, gap := false, false // the last part was a word, and a space came after it
	for rest := value; rest != ""; {
		n := max(1, tokenSize(rest))
		part := rest[:n]
		rest = rest[n:]
		switch part {
		case " ", "\t":
			gap = true
			continue
		case ",", "=", "{", "[", "]", "}":
			b, words = punctuate(b, part), false
		default:
			if words && gap {
				b = append(b, ' ')
			}
			b, words = append(b, part...), true
		}
		gap = false
	}
	return string(b)
}

// punctuate adds a mark with the spaces that belong to it.
func punctuate(b []byte, mark string) []byte {
	switch mark {
	case ",":
		return append(b, ", "...)
	case "=":
		return append(b, " = "...)
	case "{":
		return append(b, "{ "...)
	case "[":
		return append(b, '[')
	}
	for len(b) > 0 && b[len(b)-1] == ' ' {
		b = b[:len(b)-1]
	}
	if mark == "}" && b[len(b)-1] != '{' {
		b = append(b, ' ')
	}
	return append(b, mark...)
}
