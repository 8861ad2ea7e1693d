package source

import "time"

// fill puts the decoded values of a table or an array into its entries. Where
// the two libraries understand a document differently it says so, rather than
// choose.
func (t *Table) fill(decoded any) {
	for i, key := range t.order {
		e := t.entries[key]
		v := child(decoded, key, i)
		switch {
		case !kindHolds(e.kind, v), e.table != nil && size(v) != len(e.table.order):
			t.Errorf(key, "two readers of TOML understand this differently; write it another way")
		case e.table != nil:
			e.table.fill(v)
		default:
			e.value = v
		}
	}
}

// child is the value of key in a decoded table, or element i of an array.
func child(decoded any, key string, i int) any {
	switch v := decoded.(type) {
	case map[string]any:
		return v[key]
	case []any:
		return v[i]
	case []map[string]any:
		return v[i]
	}
	return nil
}

// size is the number of keys of a decoded table or of elements of an array.
func size(decoded any) int {
	switch v := decoded.(type) {
	case map[string]any:
		return len(v)
	case []any:
		return len(v)
	case []map[string]any:
		return len(v)
	}
	return 0
}

// kindHolds reports whether a decoded value is of the kind that its text shows.
func kindHolds(kind Kind, decoded any) bool {
	switch decoded.(type) {
	case string:
		return kind == KindText
	case int64:
		return kind == KindInteger
	case float64:
		return kind == KindFloat
	case bool:
		return kind == KindBoolean
	case time.Time:
		return kind == KindDate || kind == KindTime
	case map[string]any:
		return kind == KindTable
	case []any, []map[string]any:
		return kind == KindArray
	}
	return false
}
