package source

import "bytes"

// Same reports whether two tables hold the same: the same keys, in any order,
// with values of the same kind that are written alike, but for texts, which
// equal compares by the name of the key they stand for; in an array that is
// the name of the array's key.
func (t *Table) Same(u *Table, equal func(key, a, b string) bool) bool {
	return t.same(u, "", equal)
}

func (t *Table) same(u *Table, of string, equal func(key, a, b string) bool) bool {
	if len(t.entries) != len(u.entries) || t.array != u.array {
		return false
	}
	for key, a := range t.entries {
		b, ok := u.entries[key]
		if !ok || a.kind != b.kind {
			return false
		}
		name := key
		if t.array {
			name = of
		}
		switch {
		case a.table != nil:
			ok = a.table.same(b.table, name, equal)
		case a.kind == KindText:
			ok = equal(name, a.value.(string), b.value.(string))
		default:
			ok = bytes.Equal(t.doc.src[a.offset:a.offset+a.length], u.doc.src[b.offset:b.offset+b.length])
		}
		if !ok {
			return false
		}
	}
	return true
}
