package route

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route/network"
)

// A gap finder says, of drops that nothing but the last resort joins to the closet,
// how far one gets from both and what is in between: on a graph that keeps what is
// forbidden, without the last resort. Its parts are what hangs together.
type gapFinder struct {
	*Graph
	part   []int           // by node, from 0
	nodes  [][]int         // by part
	hidden *network.Search // without the last resort; nil until it is wanted
	told   map[int]told    // by the part of the drop
	known  map[spot]bool   // the places in walls that the graph has that is routed on
}

// A told is what is between a part and that of the closet, and what would join them.
type told struct{ found, change string }

// newGapFinder takes time and space in proportion to the graph.
func newGapFinder(g *Graph, known map[spot]bool) *gapFinder {
	f := &gapFinder{Graph: g, part: make([]int, len(g.Nodes)), told: map[int]told{}, known: known}
	arcs := make([][]int32, len(g.Nodes))
	for i := range g.Arcs {
		if a := &g.Arcs[i]; !a.lastResort() {
			arcs[a.From], arcs[a.To] = append(arcs[a.From], int32(a.To)), append(arcs[a.To], int32(a.From))
		}
	}
	for n := range f.part {
		f.part[n] = -1
	}
	for n := range f.part {
		if f.part[n] >= 0 {
			continue
		}
		part := []int{n}
		f.part[n] = len(f.nodes)
		for i := 0; i < len(part); i++ {
			for _, to := range arcs[part[i]] {
				if f.part[to] < 0 {
					f.part[to] = len(f.nodes)
					part = append(part, int(to))
				}
			}
		}
		slices.Sort(part)
		f.nodes = append(f.nodes, part)
	}
	return f
}

// lastResort reports whether an arc is there only for the answer that nothing else
// is.
func (a *Arc) lastResort() bool { return a.Kind == RacewayArc && len(a.Blocks) > 0 }

// joined reports whether there is a way from a drop to the closet but for what
// changes would lift.
func (f *gapFinder) joined(d int) bool { return f.part[f.Terminals[d]] == f.part[f.Root] }

// without is what a drop's cheapest hidden way would need, which costs more than
// the last resort, or leads through places that are there only for a change.
func (f *gapFinder) without(d int) ([]Block, error) {
	if f.hidden == nil {
		arcs := plainArcs(f.Arcs)
		for i := range f.Arcs {
			if f.Arcs[i].lastResort() {
				arcs[i].Fixed, arcs[i].PerCable = network.MaxPrice, 0
			}
		}
		net, err := network.New(len(f.Nodes), arcs, f.Bend)
		if err != nil {
			return nil, fmt.Errorf("route: %w", err)
		}
		f.hidden = network.NewSearch(net)
	}
	if err := f.hidden.From(int32(f.Root), int64(f.Job.Drops[d].Count), int32(f.Terminals[d])); err != nil {
		return nil, fmt.Errorf("route: %w", err)
	}
	p, ok := f.hidden.To(int32(f.Terminals[d]))
	if !ok || p.Cost >= network.MaxPrice {
		return nil, nil
	}
	return f.neededOn(d, p.Nodes, p.Arcs, f.known), nil
}

// between says what is between a drop and the closet, and what would join them but
// for the last resort.
func (f *gapFinder) between(d int) told {
	from := f.part[f.Terminals[d]]
	if _, known := f.told[from]; !known {
		found, change := f.gap(from, f.part[f.Root])
		f.told[from] = told{found, change}
	}
	return f.told[from]
}

// gap is between for two parts.
func (f *gapFinder) gap(from, to int) (found, change string) {
	mine, its := f.spacesOf(from), f.spacesOf(to)
	switch {
	case mine == nil:
		return "nothing leads from its place into a space over or under it", ""
	case its == nil:
		return "nothing leads from the closet into a space over or under it", "another place for the closet"
	}
	s, t := f.nearestSpaces(mine, its)
	if s == t {
		return f.inOneSpace(s, from, to)
	}
	h := f.Job.House
	levels := levelsBetween(h, s, t)
	if len(levels) == 0 {
		return fmt.Sprintf("no way is known from %s into %s beside it: nothing opens from one into the other", spaceText(h, s), spaceText(h, t)),
			"a chase or a conduit from one to the other"
	}
	way := "down"
	if h.Spaces[s].Base < h.Spaces[t].Base {
		way = "up"
	}
	past := "level " + levels[0]
	change = fmt.Sprintf("a chase or a conduit past %s, or a box on it in a wall whose bay is open up and down", past)
	if len(levels) > 1 {
		past = "levels " + listed(levels)
		change = "a chase or a conduit past " + past
	}
	return fmt.Sprintf("no way is known from %s %s past %s to %s: no chase, conduit or wall that stands over another",
		spaceText(h, s), way, past, spaceText(h, t)), change
}

// listed joins names as people do.
func listed(names []string) string {
	text := names[0]
	for i, n := range names[1:] {
		if i == len(names)-2 {
			text += " and " + n
		} else {
			text += ", " + n
		}
	}
	return text
}

// spacesOf lists the spaces that a part gets to, rising.
func (f *gapFinder) spacesOf(part int) (spaces []int) {
	for _, n := range f.nodes[part] {
		if s := f.Nodes[n].Space; s >= 0 && !slices.Contains(spaces, s) {
			spaces = append(spaces, s)
		}
	}
	slices.Sort(spaces)
	return spaces
}

// nearestSpaces are two spaces, one of each list, between which there are the
// fewest levels, and of those the nearest by height.
func (f *gapFinder) nearestSpaces(from, to []int) (s, t int) {
	h := f.Job.House
	s, t = -1, -1
	least, near := 0, measure.Length(0)
	for _, i := range from {
		for _, j := range to {
			between := len(levelsBetween(h, i, j))
			off := dist(h.Spaces[i].Base, h.Spaces[j].Base)
			if i == j {
				between = -1
			}
			better := cmp.Or(cmp.Compare(between, least), cmp.Compare(off, near))
			if better == 0 && s >= 0 {
				better = cmp.Or(strings.Compare(h.Spaces[i].ID, h.Spaces[s].ID), strings.Compare(h.Spaces[j].ID, h.Spaces[t].ID))
			}
			if s < 0 || better < 0 {
				s, t, least, near = i, j, between, off
			}
		}
	}
	return s, t
}

// levelsBetween names the levels that are over one of two spaces and under the
// other, from the lowest up.
func levelsBetween(h *plan.House, s, t int) (names []string) {
	lo, hi := h.Spaces[s], h.Spaces[t]
	if lo.Base > hi.Base {
		lo, hi = hi, lo
	}
	var between []*plan.Level
	for i := range h.Levels {
		if l := &h.Levels[i]; lo.Base < l.Floor && l.Floor+l.PlateTop <= hi.Base {
			between = append(between, l)
		}
	}
	slices.SortFunc(between, func(a, b *plan.Level) int { return cmp.Or(cmp.Compare(a.Floor, b.Floor), strings.Compare(a.ID, b.ID)) })
	for _, l := range between {
		names = append(names, l.ID)
	}
	return names
}

// inOneSpace says what keeps two parts of one space apart.
func (f *gapFinder) inOneSpace(space, from, to int) (found, change string) {
	p, q := f.nearestIn(space, from, to)
	h, c := f.Job.House, f.Job.House.Spaces[space]
	a, b := overText(h, c, p), overText(h, c, q)
	if a == b {
		a, b = "one place "+a, "another"
	}
	found = fmt.Sprintf("no way is known in %s from %s to %s", spaceText(h, space), a, b)
	if c.Kind != plan.FloorSpace {
		return found + ": no hand and no rod gets from one to the other", "a hatch from which a hand gets there"
	}
	js, ax := joistsOf(h, c), axes{c.AlongY}
	u1, _ := ax.uv(p)
	u2, _ := ax.uv(q)
	if js.bay(u1) != js.bay(u2) {
		found += ": joists lie across, and no hand gets in"
	} else {
		found += ": something is in the joist bay, and no hand gets in"
	}
	return found, "the ceiling opened from one to the other, and closed again"
}

// nearestIn are a place in a space of each of two parts, near to each other: by
// turns the nearest to the one before, from the lowest by number.
func (f *gapFinder) nearestIn(space, from, to int) (p, q geom.Point) {
	q = flat(f.Nodes[f.Root].At)
	for range 2 {
		p = f.nearestTo(q, space, from)
		q = f.nearestTo(p, space, to)
	}
	return p, q
}

// nearestTo is the place of a part in a space that is nearest to a point.
func (f *gapFinder) nearestTo(at geom.Point, space, part int) (best geom.Point) {
	least := measure.Length(-1)
	for _, n := range f.nodes[part] {
		if f.Nodes[n].Space != space {
			continue
		}
		if p := flat(f.Nodes[n].At); least < 0 || geom.Dist(p, at) < least {
			best, least = p, geom.Dist(p, at)
		}
	}
	return best
}

// overText says over which room a place in a space is, or under which.
func overText(h *plan.House, s *plan.Space, p geom.Point) string {
	level, word := s.Below, "over"
	if level < 0 {
		level, word = s.Above, "under"
	}
	if room := h.RoomOn(level, p); room >= 0 {
		return word + " room " + h.Rooms[room].ID
	}
	wall := ""
	for i := range h.Walls {
		if w := &h.Walls[i]; w.Level == level && w.Body.Contains(p) && (wall == "" || w.ID < wall) {
			wall = w.ID
		}
	}
	if wall == "" {
		return word + " the walls"
	}
	return word + " wall " + wall
}

// spaceText is what people call a space, with its id where there are several like
// it.
func spaceText(h *plan.House, space int) string {
	s := h.Spaces[space]
	text := "the " + s.Kind.String()
	if s.Kind == plan.FloorSpace && s.Above >= 0 {
		return fmt.Sprintf("the floor between levels %s and %s", h.Levels[s.Below].ID, h.Levels[s.Above].ID)
	}
	if s.Kind == plan.FloorSpace {
		return fmt.Sprintf("the flat roof over level %s", h.Levels[s.Below].ID)
	}
	for i, o := range h.Spaces {
		if i != space && o.Kind == s.Kind {
			return text + " " + s.ID
		}
	}
	return text
}
