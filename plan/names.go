package plan

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// names are the ids of one kind of thing, in the order of the file.
type names struct {
	kind  string // as messages call it: wall, room
	place string // where they are declared, for messages
	ids   []string
	pos   []diag.Pos
	made  []bool // of walls: they were made round rooms
}

// add takes up an id and reports one that is taken.
func (n *names) add(t *source.Table, key, id string) {
	if id == "" {
		return
	}
	if i := slices.Index(n.ids, id); i >= 0 {
		t.Errorf(key, "found %q again; want a different id for each %s", id, n.kind).Note(n.pos[i], "it is first used here")
	}
	n.take(id, t.ValuePos(key))
}

// take puts an id, or an empty one for a thing whose id is missing, at the
// end.
func (n *names) take(id string, pos diag.Pos) {
	n.ids, n.pos = append(n.ids, id), append(n.pos, pos)
}

// takeWall takes up the id of a wall.
func (n *names) takeWall(id string, pos diag.Pos, made bool) {
	n.take(id, pos)
	n.made = append(n.made, made)
}

// here is where the wall with an index is in the file, for a note.
func (n *names) here(wall int) (pos diag.Pos, format, id string) {
	return hereOf(n.ids[wall], n.pos[wall], n.made[wall])
}

// find reads a reference under key and returns the index of what it names.
func (n *names) find(t *source.Table, key string, need source.Need) (int, bool) {
	id, ok := t.Name(key, need)
	if !ok {
		return -1, false
	}
	return n.index(t, key, id)
}

// index is the index of an id that was read under key. It reports one that is
// not known, with the nearest that is.
func (n *names) index(t *source.Table, key, id string) (int, bool) {
	if i := slices.Index(n.ids, id); i >= 0 {
		return i, true
	}
	t.Errorf(key, "found %q, which is no %s %s; %s", id, n.kind, n.place, suggest(id, n.kind, n.ids))
	return -1, false
}

// newNames starts the names of one kind of thing in the house.
func (l *houseLoader) newNames(kind string) *names {
	n := &names{kind: kind, place: "in " + l.house.File}
	l.kinds = append(l.kinds, n)
	return n
}

// sharedKinds are kinds of things that findings name side by side, so that one
// id for two of them would confuse.
var sharedKinds = [][]string{{"wall", "opening", "device", "conduit"}, {"hatch", "obstacle", "mark"}}

// cautionShared warns of ids that things of different kinds share.
func (l *houseLoader) cautionShared() {
	for _, group := range sharedKinds {
		first := map[string]int{} // the kind that has an id, by its index
		for i, n := range l.kinds {
			if !slices.Contains(group, n.kind) {
				continue
			}
			for k, id := range n.ids {
				j, taken := first[id]
				if !taken {
					first[id] = i
				} else if j != i {
					l.list.Warnf(n.pos[k], n.kind, "%s %q has the name of a %s, which is hard to tell apart in what is found", n.kind, id, l.kinds[j].kind).
						Note(l.kinds[j].pos[slices.Index(l.kinds[j].ids, id)], "the %s is here", l.kinds[j].kind)
				}
			}
		}
	}
}

// mostSuggested is how many known names a message lists.
const mostSuggested = 8

// suggest says which name may be meant.
func suggest(word, kind string, known []string) string {
	if near, ok := diag.Nearest(word, known); ok {
		return fmt.Sprintf("the nearest is %q", near)
	}
	if len(known) == 0 {
		return fmt.Sprintf("there is no %s at all", kind)
	}
	known = slices.Compact(slices.Sorted(slices.Values(known)))
	if len(known) > mostSuggested {
		return fmt.Sprintf("there are %s and %d more", quoted(known[:mostSuggested]), len(known)-mostSuggested)
	}
	return "known: " + quoted(known)
}

// quoted lists names in quotes.
func quoted(words []string) string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = fmt.Sprintf("%.40q", w)
	}
	return strings.Join(out, ", ")
}
