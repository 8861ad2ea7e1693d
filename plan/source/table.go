package source

import (
	"slices"
	"strconv"
	"strings"

	"topplate/plan/diag"
)

// A Kind says what stands for a key.
type Kind uint8

// The kinds of value. KindTime is a time of day or a date with one.
const (
	KindNone Kind = iota // the key is not there
	KindText
	KindInteger
	KindFloat
	KindBoolean
	KindDate
	KindTime
	KindArray // of values, and also a table that is written several times as [[name]]
	KindTable
)

// A Table is a TOML table, or an array as Array returns it. It remembers which
// keys were asked for.
type Table struct {
	doc     *document
	path    string // dotted, empty for the whole file
	pos     diag.Pos
	array   bool // the keys are 0, 1, 2 ...
	depth   int  // of tables and arrays around it
	order   []string
	entries map[string]*entry
	asked   map[string]bool
	handed  bool // the caller has it, and so Done looks into it
}

// An entry is a key with its value.
type entry struct {
	keyPos, pos diag.Pos
	kind        Kind
	offset      int    // of the value in the document
	length      int    // of a scalar in the document, in bytes
	value       any    // string, int64, float64 or bool, by kind; nil for others
	table       *Table // of KindTable and KindArray
}

// Pos is the place of the table: its name in its header, its opening brace, or
// the start of the file.
func (t *Table) Pos() diag.Pos { return t.pos }

// Has reports whether key is there. It counts as asking.
func (t *Table) Has(key string) bool { return t.find(key) != nil }

// Kind tells what stands for key, for a key that takes several forms. It
// counts as asking.
func (t *Table) Kind(key string) Kind {
	if e := t.find(key); e != nil {
		return e.kind
	}
	return KindNone
}

// Keys returns the keys in the order of the file, for a table whose keys are
// the user's own. It does not count as asking.
func (t *Table) Keys() []string { return slices.Clone(t.order) }

// Path is the dotted path of key in the file, as diagnostics print it, such as
// wall[2].height. The path of "" is that of the table.
func (t *Table) Path(key string) string {
	switch {
	case key == "":
		return t.path
	case t.array:
		return t.path + "[" + key + "]"
	case !isBare(key):
		key = strconv.Quote(key)
	}
	if t.path == "" {
		return key
	}
	return t.path + "." + key
}

// isBare reports whether TOML needs no quotes around key.
func isBare(key string) bool {
	return key != "" && strings.Trim(key, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") == ""
}

// KeyPos is where key is written, or the table's place if it is not there.
func (t *Table) KeyPos(key string) diag.Pos {
	if e, ok := t.entries[key]; ok {
		return e.keyPos
	}
	return t.pos
}

// ValuePos is where the value of key starts, or the table's place if it is not
// there.
func (t *Table) ValuePos(key string) diag.Pos {
	if e, ok := t.entries[key]; ok {
		return e.pos
	}
	return t.pos
}

// ValuePosAt is the place of a byte of the text that stands for key, past
// quotes and escapes. If there is no text it is ValuePos.
func (t *Table) ValuePosAt(key string, byteOffset int) diag.Pos {
	e, ok := t.entries[key]
	if !ok || e.kind != KindText {
		return t.ValuePos(key)
	}
	raw := t.doc.src[e.offset : e.offset+e.length]
	return t.doc.pos(e.offset + rawOffset(raw, byteOffset))
}

// Errorf adds an error about the value of key, or about the table if there is
// none.
func (t *Table) Errorf(key, format string, args ...any) *diag.Diagnostic {
	return t.doc.diags.Errorf(t.ValuePos(key), t.Path(key), format, args...)
}

// ErrorfAt adds an error about a byte of the text that stands for key.
func (t *Table) ErrorfAt(key string, byteOffset int, format string, args ...any) *diag.Diagnostic {
	return t.doc.diags.Errorf(t.ValuePosAt(key, byteOffset), t.Path(key), format, args...)
}

// Warnf adds a warning about the value of key, or about the table if there is
// none.
func (t *Table) Warnf(key, format string, args ...any) *diag.Diagnostic {
	return t.doc.diags.Warnf(t.ValuePos(key), t.Path(key), format, args...)
}

// find returns the entry of key, or nil, and remembers that it was asked for.
func (t *Table) find(key string) *entry {
	if t.asked == nil {
		t.asked = map[string]bool{}
	}
	t.asked[key] = true
	return t.entries[key]
}
