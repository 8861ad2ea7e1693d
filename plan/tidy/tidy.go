// Package tidy puts the tables and keys of a house or job file into the order
// of the reference and lines up its comments.
//
// The bytes of a file come in; the bytes of the same file, better to read, go
// out, or what is wrong with its syntax. No value and no comment is changed or
// lost: the result is read again and compared before it is given out. The
// package never reads or writes a file, and never asks what a value means.
//
// # What is put in order
//
//   - Tables come in the order of the reference (the comment of package plan),
//     those of one name in the order of the file. Keys come in the order of the
//     reference. What the reference does not know comes last, in the order of
//     the file.
//   - One blank line is before a table and none between its keys. A key, its
//     equals sign and its value are one space apart, and so are the parts of an
//     array or a table on one line.
//   - Comments at the ends of lines begin in one column in each table.
//
// # Where comments belong
//
// Comments before a table or a key go with it, with the blank lines between
// them; so does a ruled line such as "# ---- Walls ----". A comment at the end
// of a line stays there, with the lines under it that begin in its column.
// Comments right after the last key of a table, with a blank line after them,
// belong to that table. Those at the start of a file that a blank line or a
// ruled line sets off from what follows stay at the start, and those after the
// last table, set off by a blank line, at the end.
package tidy

import (
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// Options say what else is changed.
type Options struct {
	// Lengths writes every length in one way: "12ft 6-1/2in", "3.81m",
	// "45mm". Otherwise lengths stay as they are written.
	Lengths bool
}

const byteOrderMark = "\ufeff"

// Format returns the tidy text of a file that messages call name. The text is
// nil if the file is not TOML, and the list then says where. Formatting twice
// changes nothing more. It takes time O(n log n).
func Format(name string, src []byte, o Options) ([]byte, *diag.List) {
	before, list := source.Parse(name, src)
	if before == nil {
		return nil, list
	}
	text, mark := strings.CutPrefix(string(src), byteOrderMark)
	doc, ok := scan(text)
	if !ok {
		return nil, refuse(list, name)
	}
	remarks := doc.remarks()
	doc.sort()
	if o.Lengths {
		doc.sameLengths()
	}
	out := doc.text()
	if mark {
		out = byteOrderMark + out
	}
	if !same(name, before, remarks, out, o) {
		return nil, refuse(list, name)
	}
	return []byte(out), list
}

// refuse reports a file that can't be tidied without a change to what it says.
func refuse(list *diag.List, name string) *diag.List {
	list.Errorf(diag.Pos{File: name}, "", "this file can't be put in order without a change to what it says; nothing was done")
	return list
}

// same reports whether the text says what the file did, and has its comments.
func same(name string, before *source.Table, remarks []string, out string, o Options) bool {
	after, _ := source.Parse(name, []byte(out))
	if after == nil {
		return false
	}
	equal := func(_, a, b string) bool { return a == b }
	if o.Lengths {
		equal = sameText
	}
	doc, ok := scan(strings.TrimPrefix(out, byteOrderMark))
	return ok && before.Same(after, equal) && slices.Equal(remarks, doc.remarks())
}
