package record

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"topplate/plan/diag"
)

// mostFile is how large a record may get: some 15 000 entries, and what
// source.ReadFile reads.
const mostFile = 4 << 20

// Path is where the record of a job is: beside its file, as job.record beside
// job.toml.
func Path(job string) string {
	return strings.TrimSuffix(job, filepath.Ext(job)) + ".record"
}

// Read reads a record; name is what messages call it. It returns all entries
// that are whole, in their order, and warnings of all that is not: a line that
// was torn while it was written is left out, and one that is missing or was
// changed is told as damage. Read never fails.
func Read(name string, src []byte) ([]Entry, *diag.List) {
	r := reader{name: name, list: &diag.List{}}
	for n := 1; len(src) > 0; n++ {
		line, rest, ended := bytes.Cut(src, []byte("\n"))
		src = rest
		if len(line) > 0 {
			r.line(n, string(line), !ended)
		}
	}
	r.tellTorn()
	return r.entries, r.list
}

// A reader gathers entries.
type reader struct {
	name    string
	list    *diag.List
	entries []Entry
	torn    []diag.Pos // of lines that are not whole, since the last entry
	why     []error
}

func (r *reader) last() int {
	if len(r.entries) == 0 {
		return 0
	}
	return r.entries[len(r.entries)-1].Number
}

// line takes up one line, which may be the last and without an end.
func (r *reader) line(n int, text string, open bool) {
	at := diag.Pos{File: r.name, Line: n, Col: 1}
	e, err := parseLine(text)
	switch {
	case err != nil && open:
		r.list.Warnf(at, "", "the last entry was torn while it was written; it is left out, and stays in the file")
	case err != nil:
		r.torn, r.why = append(r.torn, at), append(r.why, err)
	case e.Number <= r.last():
		r.list.Warnf(at, "", "damage: found entry %d after entry %d, so that this line was copied or put here; it is left out", e.Number, r.last())
	default:
		r.next(at, e)
	}
}

// next takes up an entry that is whole. If its number follows the last, torn
// lines between were never acknowledged; otherwise something is lost.
func (r *reader) next(at diag.Pos, e Entry) {
	if missing := e.Number - r.last() - 1; missing > 0 {
		r.list.Warnf(at, "", "damage: %s before entry %d missing or unreadable; look for an older copy of this file", entries(r.last()+1, e.Number-1), e.Number)
	}
	r.tellTorn()
	e.Line = at.Line
	r.entries = append(r.entries, e)
}

// entries names entries by their numbers.
func entries(from, to int) string {
	if from == to {
		return fmt.Sprintf("entry %d is", from)
	}
	return fmt.Sprintf("entries %d to %d are", from, to)
}

// tellTorn tells of lines that can't be read.
func (r *reader) tellTorn() {
	for i, at := range r.torn {
		r.list.Warnf(at, "", "this line can't be read: %v; it is left out", r.why[i])
	}
	r.torn, r.why = nil, nil
}
