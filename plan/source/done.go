package source

import (
	"fmt"
	"maps"
	"slices"

	"topplate/plan/diag"
)

// Done reports the keys that nobody asked for, here and in all tables that the
// getters returned, so that a slip in a key is never read as its absence. It
// suggests the nearest of the keys that were asked for. It is called once all
// have been.
func (t *Table) Done() {
	known := slices.Sorted(maps.Keys(t.asked))
	for _, key := range t.order {
		e := t.entries[key]
		if !t.array && !t.asked[key] {
			t.doc.diags.Errorf(e.keyPos, t.Path(key), "unknown key %s%s", quote(key), suggest(key, known))
		}
		if e.table != nil && e.table.handed {
			e.table.Done()
		}
	}
}

// suggest says which key may have been meant.
func suggest(key string, known []string) string {
	if near, ok := diag.Nearest(key, known); ok {
		return fmt.Sprintf("; did you mean %q?", near)
	}
	if len(known) == 0 {
		return "; no keys are read here"
	}
	return "; the keys here are " + choices(known)
}
