package source

import (
	"topplate/plan/diag"
	"topplate/plan/measure"
)

// An Item is an element of an array, with its place.
type Item[T any] struct {
	Value T
	Pos   diag.Pos
}

// Table returns the table that stands for key.
func (t *Table) Table(key string, need Need) (*Table, bool) {
	e, ok := t.get(key, need, "a table ["+t.Path(key)+"]")
	switch {
	case !ok:
		return nil, false
	case e.kind == KindArray && len(e.table.order) > 0 && e.table.entries["0"].kind == KindTable:
		t.refuse(key, "one table: ["+t.Path(key)+"], with single brackets")
		return nil, false
	case e.kind != KindTable:
		t.refuse(key, "a table ["+t.Path(key)+"]")
		return nil, false
	}
	e.table.handed = true
	return e.table, true
}

// Array returns the array that stands for key as a table, whose keys are 0, 1,
// 2 and so on: Keys lists them, and the getters read the elements. It is for
// arrays whose elements are arrays, or take several forms.
func (t *Table) Array(key string, need Need) (*Table, bool) {
	return t.elements(key, need, "an array in [ ]")
}

func (t *Table) elements(key string, need Need, want string) (*Table, bool) {
	e, ok := t.get(key, need, want)
	if !ok {
		return nil, false
	}
	if e.kind != KindArray {
		t.refuse(key, want)
		return nil, false
	}
	e.table.handed = true
	return e.table, true
}

// Tables returns the tables of an array: each [[key]], or each { } of an array
// in line. Elements that are not tables are reported and left out; ok is then
// false.
func (t *Table) Tables(key string, need Need) (tables []*Table, ok bool) {
	array, ok := t.elements(key, need, "one or more tables [["+t.Path(key)+"]], with double brackets")
	if !ok {
		return nil, false
	}
	for _, i := range array.order {
		table, good := array.Table(i, Required)
		if good {
			tables = append(tables, table)
		}
		ok = ok && good
	}
	return tables, ok
}

// Texts returns the texts of an array. Elements that are not texts are reported
// and left out; ok is then false.
func (t *Table) Texts(key string, need Need) ([]Item[string], bool) {
	return items(t, key, need, `an array of texts, such as ["a", "b"]`, func(array *Table, i string) (string, bool) {
		return array.Text(i, Required)
	})
}

// Lengths returns the lengths of an array, each within r. Elements that are not
// such lengths are reported and left out; ok is then false.
func (t *Table) Lengths(key string, need Need, r measure.Range) ([]Item[measure.Length], bool) {
	example := `"` + exampleLength(r, t.doc.units) + `"`
	return items(t, key, need, "an array of lengths, such as ["+example+", "+example+"]", func(array *Table, i string) (measure.Length, bool) {
		return array.Length(i, Required, r)
	})
}

// items reads all elements of an array with one getter.
func items[T any](t *Table, key string, need Need, want string, get func(array *Table, i string) (T, bool)) (values []Item[T], ok bool) {
	array, ok := t.elements(key, need, want)
	if !ok {
		return nil, false
	}
	for _, i := range array.order {
		v, good := get(array, i)
		if good {
			values = append(values, Item[T]{v, array.ValuePos(i)})
		}
		ok = ok && good
	}
	return values, ok
}
