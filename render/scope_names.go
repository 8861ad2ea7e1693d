package render

import (
	"cmp"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/render/sheet"
)

// byHeight are the levels from the lowest up, and those of one height by id.
func byHeight(h *plan.House) []int {
	out := make([]int, len(h.Levels))
	for i := range out {
		out[i] = i
	}
	slices.SortFunc(out, func(a, b int) int {
		return cmp.Or(cmp.Compare(h.Levels[a].Floor, h.Levels[b].Floor), strings.Compare(h.Levels[a].ID, h.Levels[b].ID))
	})
	return out
}

// levelID names the sheets of a kind about a level: by the kind alone where the
// house has one level.
func levelID(h *plan.House, kind string, level int) string {
	if len(h.Levels) == 1 {
		return kind
	}
	return sheet.ID(kind, h.Levels[level].ID)
}

// levelTitle is a level in a title, nothing where there is one.
func levelTitle(h *plan.House, level int) string {
	if len(h.Levels) == 1 {
		return ""
	}
	return ": " + levelName(h, level)
}

// levelName is a level's id as words.
func levelName(h *plan.House, level int) string {
	return strings.NewReplacer("-", " ", "_", " ").Replace(h.Levels[level].ID)
}

// sortOf is the word that sheets of a space begin with, and its title.
func sortOf(s *plan.Space) (id, title string) {
	switch {
	case s.Kind == plan.AtticSpace:
		return "attic", "Attic"
	case s.Kind == plan.CrawlSpace:
		return "crawl-space", "Crawl space"
	case s.Above < 0:
		return "flat-roof", "Flat roof"
	}
	return "joist-bays", "Floor joists"
}

// spaceID names the sheets of a space: by its kind alone where the house has
// one of that kind.
func spaceID(h *plan.House, space int) string {
	id, _ := sortOf(h.Spaces[space])
	if sameSort(h, space) == 1 || h.Spaces[space].ID == id {
		return id
	}
	return sheet.ID(id, h.Spaces[space].ID)
}

// sameSort is how many spaces of its kind the house has.
func sameSort(h *plan.House, space int) int {
	id, _ := sortOf(h.Spaces[space])
	n := 0
	for _, s := range h.Spaces {
		if other, _ := sortOf(s); other == id {
			n++
		}
	}
	return n
}

// spaceTitle names a space in a title: by what it lies under or over.
func spaceTitle(h *plan.House, space int) string {
	s := h.Spaces[space]
	_, title := sortOf(s)
	switch {
	case len(h.Levels) == 1 && sameSort(h, space) == 1:
		return title
	case s.Above >= 0:
		title += " under " + levelName(h, s.Above)
	default:
		title += " over " + levelName(h, s.Below)
	}
	for i, other := range h.Spaces {
		if i != space && other.Kind == s.Kind && other.Above == s.Above && (s.Above >= 0 || other.Below == s.Below) {
			return title + ", " + s.ID
		}
	}
	return title
}

// spaceWords name a space in a sentence.
func spaceWords(h *plan.House, space int) string {
	t := spaceTitle(h, space)
	return strings.ToLower(t[:1]) + t[1:]
}
