package record

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"topplate/plan/diag"
)

// mostRows bounds what is read of a tester's table.
const mostRows = 5000

// columns are the columns that are read; tag and cable name the cable.
var columns = []string{"tag", "cable", "state", "length", "marks", "plug", "port", "wiremap", "speed", "watts", "volts", "hours", "note"}

// ReadTable reads a tester's table, as CSV with a row of headers: separated by
// commas, semicolons or tabs, columns in any order, units in the header, as in
// "length (ft)", or in the cells. A row gives tag D1 and cable 2, or one of
// them with the whole name D1.2. Values that are left out are not known; a cable
// in a table was run unless the table says otherwise.
//
// A row that says what is recorded already is left out, and told. If update is
// set, a row about a cable that is recorded is a correction of its entry, with
// the values that the row gives; otherwise Check reports it. All that is wrong
// is told with the number of its row; the proposals are then not to be used.
func ReadTable(name string, src []byte, p *Plan, all []Entry, update bool) ([]Proposal, *diag.List) {
	t := table{name: name, plan: p, all: all, now: Current(all), update: update, list: &diag.List{}}
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	header, _, _ := bytes.Cut(src, []byte("\n"))
	in := csv.NewReader(bytes.NewReader(src))
	in.FieldsPerRecord = -1
	for _, sep := range []rune{',', ';', '\t'} {
		if n := strings.Count(string(header), string(sep)); n > strings.Count(string(header), string(in.Comma)) {
			in.Comma = sep
		}
	}
	t.commas = in.Comma != ','
	t.read(in)
	return t.out, t.list
}

// A table is a tester's table while it is read.
type table struct {
	name   string
	plan   *Plan
	all    []Entry
	now    []Entry
	update bool
	commas bool // numbers may have a decimal comma
	list   *diag.List

	keys, units []string // by column; an empty key is not read
	out         []Proposal
}

func (t *table) pos(line int) diag.Pos { return diag.Pos{File: t.name, Line: line, Col: 1} }

// read reads all rows.
func (t *table) read(in *csv.Reader) {
	for rows := 0; ; rows++ {
		row, err := in.Read()
		var fault *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			if rows == 0 {
				t.list.Errorf(t.pos(0), "", "found no row; want a row of headers such as tag,cable,length (ft),wiremap")
			}
			return
		case errors.As(err, &fault):
			t.list.Errorf(diag.Pos{File: t.name, Line: fault.Line, Col: fault.Column}, "", "found a row that can't be taken apart: %v; the rows after it are not read", fault.Err)
			return
		case err != nil:
			t.list.Errorf(t.pos(0), "", "%v", err)
			return
		case rows > mostRows:
			t.list.Errorf(t.pos(0), "", "found more than %d rows", mostRows)
			return
		}
		line, _ := in.FieldPos(0)
		if rows == 0 {
			if !t.header(line, row) {
				return
			}
			continue
		}
		if strings.TrimSpace(strings.Join(row, "")) != "" {
			t.row(line, row)
		}
	}
}

// header takes up the columns; without one that names the cable nothing can be
// read.
func (t *table) header(line int, row []string) bool {
	for _, cell := range row {
		key, unit := column(cell)
		switch {
		case !slices.Contains(columns, key):
			if strings.TrimSpace(cell) != "" {
				t.list.Warnf(t.pos(line), "", "found the column %.40q, which is not read; %s", cell, near(key, columns))
			}
			key = ""
		case slices.Contains(t.keys, key):
			t.list.Errorf(t.pos(line), "", "found the column %s twice", key)
		}
		t.keys, t.units = append(t.keys, key), append(t.units, unit)
	}
	if slices.Contains(t.keys, "tag") || slices.Contains(t.keys, "cable") {
		return true
	}
	t.list.Errorf(t.pos(line), "", "found no column that names the cable; want tag and cable in the first row")
	return false
}

// column is the key of a header and the unit after it, as in "length (ft)",
// "Length [m]" or "speed_mbps".
func column(cell string) (key, unit string) {
	words := strings.FieldsFunc(strings.ToLower(cell), func(r rune) bool { return strings.ContainsRune(" _()[]", r) })
	if len(words) == 0 {
		return "", ""
	}
	if len(words) > 1 && words[0]+words[1] == "wiremap" {
		words = append([]string{"wiremap"}, words[2:]...)
	}
	return words[0], strings.Join(words[1:], " ")
}

// row reads one cable.
func (t *table) row(line int, row []string) {
	cells := map[string]string{}
	units := map[string]string{}
	for i, cell := range row {
		if i >= len(t.keys) {
			t.list.Errorf(t.pos(line), "", "found %d cells; the header has %d", len(row), len(t.keys))
			return
		}
		if key := t.keys[i]; key != "" {
			cells[key], units[key] = strings.TrimSpace(cell), t.units[i]
		}
	}
	id := cableID(cells["tag"], cells["cable"])
	if id == "" {
		t.list.Errorf(t.pos(line), "", "found no tag and no cable")
		return
	}
	there, recorded := t.there(id)
	replaces := 0
	if recorded && t.update {
		replaces = there.Number
	}
	e := Propose(t.plan, t.all, CableKind, id, replaces)
	e.Pos = t.pos(line)
	if recorded && !t.update {
		e.Cable, e.Note = there.Cable, there.Note // to see whether the row says anything else
	}
	if !t.values(&e, cells, units) {
		return
	}
	if recorded && e.Cable == there.Cable && e.Note == there.Note {
		t.list.Warnf(e.Pos, "cable "+e.ID, "this is recorded already, as entry %d", there.Number)
		return
	}
	t.out = append(t.out, e)
}

// there is the entry of a cable that holds.
func (t *table) there(id string) (*Entry, bool) {
	if c, ok := t.plan.Cable(id); ok {
		id = c.ID
	}
	return find(t.now, CableKind, id)
}

// values reads the values of a row.
func (t *table) values(e *Proposal, cells, units map[string]string) (ok bool) {
	ok = true
	for _, key := range columns[2:] {
		text, unit := cells[key], units[key]
		switch {
		case text == "":
			continue
		case key == "note":
			e.Note = text
			continue
		case t.commas && key != "plug" && key != "marks":
			text = strings.Replace(text, ",", ".", 1)
		}
		if key == "marks" && cells["length"] == "" {
			e.Cable.Length = 0
		}
		if err := e.Cable.Set(key, text, unit); err != nil {
			t.list.Errorf(e.Pos, "cable "+e.ID, "%s: %v", key, err)
			ok = false
		}
	}
	if e.Cable.Length == 0 && e.Cable.Marked {
		e.Cable.Length = e.Cable.ByMarks()
	}
	return ok
}

// cableID joins the tag of a drop and the number of a cable, either of which
// may be the whole name.
func cableID(tag, cable string) string {
	switch {
	case cable == "":
		return tag
	case tag == "", strings.HasPrefix(cable, tag+"."):
		return cable
	}
	return fmt.Sprintf("%s.%s", tag, cable)
}
