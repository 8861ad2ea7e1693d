package tasks

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/plan/measure"
)

// toolsToCut are carried for an opening in board.
var toolsToCut = tools("board saw", "safety glasses", "drop cloth", "vacuum")

func tools(names ...string) []Item {
	var out []Item
	for _, n := range names {
		out = append(out, Item{What: n})
	}
	return out
}

// spools are the kinds of cable of a lot.
func (l *lot) spools() []Item {
	var out []Item
	for k := range l.ways {
		it := Item{What: "spool of " + l.ways[k].drop.Cable.ID}
		if !slices.Contains(out, it) {
			out = append(out, it)
		}
	}
	return out
}

// coil is the cables of a way as they are carried.
func (l *lot) coil(k int) Item {
	w := &l.ways[k]
	return Item{fmt.Sprintf("coil of %s for %s, %s", w.drop.Cable.ID, w.drop.Tag, l.text(w.route.Lengths.Cut)), w.drop.Count}
}

// wear is what goes along to a place whatever is done there (common practice,
// no source).
var wear = map[PlaceKind][]string{
	Attic:   {"head lamp", "dust mask", "gloves", "knee board", "water"},
	Outside: {"ladder"},
	Crawl:   {"coveralls", "knee pads", "head lamp", "gloves", "dust mask"},
}

// load adds up what the steps of a visit need: tools once, the rest by number.
func load(v *Visit, together bool) []Item {
	var all []Item
	for i := range v.Steps {
		s := &v.Steps[i]
		if s.Helps {
			all = append(all, s.Task.HelperCarry...)
		} else {
			all = append(all, s.Task.Carry...)
		}
	}
	all = append(all, tools(wear[v.Place.Kind]...)...)
	if together {
		all = append(all, tools("telephone or radio")...)
	}
	var out []Item
	for _, it := range all {
		if i := slices.IndexFunc(out, func(o Item) bool { return o.What == it.What }); i >= 0 {
			out[i].Count += it.Count
		} else {
			out = append(out, it)
		}
	}
	slices.SortFunc(out, func(a, b Item) int {
		return cmp.Or(cmp.Compare(min(a.Count, 1), min(b.Count, 1)), strings.Compare(a.What, b.What))
	})
	return out
}

// String is an item as it is printed.
func (it Item) String() string {
	if it.Count == 0 {
		return it.What
	}
	return fmt.Sprintf("%d × %s", it.Count, it.What)
}

// the is so many of what is known: the cable, the 3 cables.
func the(n int, what string) string {
	if n == 1 {
		return "the " + what
	}
	return fmt.Sprintf("the %d %ss", n, what)
}

func (s *site) text(l measure.Length) string { return s.job.House.Units.Format(l) }
