package plan

import (
	"slices"

	"topplate/plan/source"
)

// A wallSide is a wall seen from one of its sides.
type wallSide struct {
	wall int
	side Side
}

// wallsBetween finds the walls that have room a on one side and room b right
// across on the other, and the side of a. It takes time O(walls × corners).
func (h *House) wallsBetween(a, b int) (found []wallSide) {
	others := h.facesOf(b)
	for _, f := range h.facesOf(a) {
		across := slices.ContainsFunc(others, func(g face) bool {
			return g.wall == f.wall && extent{f.from, f.to}.overlap(extent{g.from, g.to}) > 0
		})
		if w := (wallSide{f.wall, f.side}); across && !slices.Contains(found, w) {
			found = append(found, w)
		}
	}
	return found
}

// readBetween reads between = ["bed", "hall"], and finds the one wall between
// these rooms. The side is that of the first room. ok is false also where the
// rooms are not known; h is nil without a house.
func readBetween(t *source.Table, h *House, rooms *names) (w wallSide, room int, ok bool) {
	good := true
	for _, key := range []string{"wall", "room", "side"} {
		if t.Has(key) {
			t.Errorf(key, "found both between and %s; want one of them", key)
			good = false
		}
	}
	array, ok := t.Array("between", source.Required)
	if !ok {
		return w, -1, false
	}
	if n := len(array.Keys()); n != 2 {
		t.Errorf("between", `found %s; want the rooms on the two sides of a wall, such as ["bed", "hall"]`, counted(n, "name"))
		return w, -1, false
	}
	var pair [2]int
	for i, key := range [2]string{"0", "1"} {
		id, okID := array.Name(key, source.Required)
		if okID && h != nil {
			pair[i], okID = rooms.index(array, key, id)
		}
		good = good && okID
	}
	if !good || h == nil {
		return w, -1, false
	}
	if pair[0] == pair[1] {
		t.Errorf("between", "found room %s twice; want the rooms on the two sides of a wall", h.Rooms[pair[0]].ID)
		return w, -1, false
	}
	return h.oneBetween(t, pair[0], pair[1])
}

// oneBetween is the one wall between two rooms.
func (h *House) oneBetween(t *source.Table, a, b int) (wallSide, int, bool) {
	p, q := &h.Rooms[a], &h.Rooms[b]
	if !p.found() || !q.found() {
		return wallSide{}, a, false
	}
	if p.Level != q.Level {
		t.Errorf("between", "found rooms %s%s and %s%s; want rooms of one level, on the two sides of a wall", p.ID, h.onLevel(p.Level), q.ID, h.onLevel(q.Level)).
			Note(p.Pos, "%s is here", p.ID)
		return wallSide{}, a, false
	}
	found := h.wallsBetween(a, b)
	if len(found) == 1 {
		return found[0], a, true
	}
	if len(found) == 0 {
		t.Errorf("between", "found no wall between rooms %s and %s; %s has %s, and %s has %s", p.ID, q.ID, p.ID, h.wallsOf(a), q.ID, h.wallsOf(b)).
			Note(p.Pos, "%s is here", p.ID)
		return wallSide{}, a, false
	}
	var ids []string
	for _, w := range found {
		ids = append(ids, h.Walls[w.wall].ID)
	}
	slices.Sort(ids)
	t.Errorf("between", "found %d walls between rooms %s and %s; want one of them under wall: %s", len(ids), p.ID, q.ID, quoted(slices.Compact(ids)))
	return wallSide{}, a, false
}
