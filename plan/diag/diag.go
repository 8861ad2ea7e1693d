// Package diag holds what is to be said about the files a user wrote.
//
// Errors and warnings with their places come in, in any order and from any
// stage; text for a terminal goes out, sorted, each thing said once. Nothing
// here stops a program, reads a file, or lets a control character out of a
// user's file through to the terminal.
package diag

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
)

// A Pos is a place in a file. Line and Col count from 1, Col in bytes. Line 0
// means the file as a whole.
type Pos struct {
	File      string
	Line, Col int
}

// String is file:line:col, as editors and compilers write it.
func (p Pos) String() string {
	s := p.File
	if p.Line > 0 {
		s += ":" + strconv.Itoa(p.Line) + ":" + strconv.Itoa(p.Col)
	}
	return s
}

// compare orders places by file, line and column.
func (p Pos) compare(q Pos) int {
	return cmp.Or(cmp.Compare(p.File, q.File), cmp.Compare(p.Line, q.Line), cmp.Compare(p.Col, q.Col))
}

// A Severity says whether work can go on.
type Severity uint8

// The two severities. An Error means there is no result.
const (
	Error Severity = iota
	Warning
)

func (s Severity) String() string {
	if s == Error {
		return "error"
	}
	return "warning"
}

// A Diagnostic is one thing the author of a file should know.
type Diagnostic struct {
	Pos      Pos
	Severity Severity
	Key      string // what it is about, as a dotted path: wall[2].opening[0].at; may be empty
	Msg      string // what was found and what is allowed
	Notes    []Note // other places that matter
}

// A Note is a second place that explains a Diagnostic: "first set here".
type Note struct {
	Pos Pos
	Msg string
}

// Note adds a note to d and returns d, so that calls chain.
func (d *Diagnostic) Note(pos Pos, format string, args ...any) *Diagnostic {
	d.Notes = append(d.Notes, Note{pos, fmt.Sprintf(format, args...)})
	return d
}

// A List gathers diagnostics. The zero List is empty and ready to use.
type List struct{ all []*Diagnostic }

// Errorf adds an error about key at pos.
func (l *List) Errorf(pos Pos, key, format string, args ...any) *Diagnostic {
	return l.add(&Diagnostic{Pos: pos, Severity: Error, Key: key, Msg: fmt.Sprintf(format, args...)})
}

// Warnf adds a warning about key at pos.
func (l *List) Warnf(pos Pos, key, format string, args ...any) *Diagnostic {
	return l.add(&Diagnostic{Pos: pos, Severity: Warning, Key: key, Msg: fmt.Sprintf(format, args...)})
}

func (l *List) add(d *Diagnostic) *Diagnostic {
	l.all = append(l.all, d)
	return d
}

// Append adds the diagnostics that other holds now.
func (l *List) Append(other *List) { l.all = append(l.all, other.all...) }

// HasErrors reports whether there is an error, not only warnings.
func (l *List) HasErrors() bool {
	return slices.ContainsFunc(l.all, func(d *Diagnostic) bool { return d.Severity == Error })
}

// Sorted returns the diagnostics by file, line, column and message. Of those
// that say the same about the same place only the first that was added is
// kept.
func (l *List) Sorted() []*Diagnostic {
	sorted := slices.Clone(l.all)
	slices.SortStableFunc(sorted, compare)
	return slices.CompactFunc(sorted, func(a, b *Diagnostic) bool { return compare(a, b) == 0 })
}

func compare(a, b *Diagnostic) int {
	return cmp.Or(a.Pos.compare(b.Pos), cmp.Compare(a.Msg, b.Msg), cmp.Compare(a.Key, b.Key), cmp.Compare(a.Severity, b.Severity))
}
