package plan

import (
	"topplate/plan/source"
)

// eaves reads [[soffit]] and [[baffle]].
func (l *houseLoader) eaves(root *source.Table) {
	ids := l.newNames("soffit")
	for _, t := range tables(root, "soffit", source.Optional, mostOthers) {
		id, w, e, ok := l.eave(t, ids)
		if ok {
			l.house.Soffits = append(l.house.Soffits, SoffitOpening{ID: id, Pos: t.Pos(), Wall: w, Start: e.lo, End: e.hi})
		}
	}
	ids = l.newNames("baffle")
	for _, t := range tables(root, "baffle", source.Optional, mostOthers) {
		id, w, e, ok := l.eave(t, ids)
		if ok {
			l.house.Baffles = append(l.house.Baffles, Baffle{ID: id, Pos: t.Pos(), Wall: w, Start: e.lo, End: e.hi})
		}
	}
}

// eave reads a stretch of the eave along an outer wall.
func (l *houseLoader) eave(t *source.Table, ids *names) (id string, w int, e extent, ok bool) {
	id, _ = t.Name("id", source.Required)
	ids.add(t, "id", id)
	w, okWall := l.findWall(t, "wall", source.Required)
	from := facing{}
	if okWall && l.placed {
		// A soffit is faced from out of doors.
		from = facing{l.house.Walls[w].Out, l.house.Walls[w].Exterior}
	}
	e, okStretch := l.stretch(t, w, from, alongWalls)
	if !okWall || !okStretch {
		return id, w, e, false
	}
	return id, w, e, l.house.underEave(t, w) && l.house.besideWall(t, w, e)
}

// underEave reports whether a wall is an outer wall with an overhang over it.
func (h *House) underEave(t *source.Table, w int) bool {
	wall := &h.Walls[w]
	if !wall.Exterior {
		t.Errorf("wall", "found wall %s, which is not exterior; want an outer wall, which has a soffit", wall.ID).
			Note(wall.Pos, "%s is taped here", wall.ID)
		return false
	}
	if h.Roof.Surface != nil && h.Roof.Overhang == 0 {
		t.Errorf("wall", "found wall %s under a roof without an overhang, which has no soffit", wall.ID).
			Note(h.Roof.Pos, "the roof is described here")
		return false
	}
	return true
}

// besideWall reports whether a stretch is beside a wall or past its ends by no
// more than the overhang.
func (h *House) besideWall(t *source.Table, w int, e extent) bool {
	wall := &h.Walls[w]
	whole := ordered(wall.Along(wall.Body.Min), wall.Along(wall.Body.Max))
	if whole.lo-h.Roof.Overhang <= e.lo && e.hi <= whole.hi+h.Roof.Overhang {
		return true
	}
	t.Errorf("at", "found %s along wall %s; want it from %s to %s, with the overhang at its ends", h.stretchText(e), wall.ID,
		h.text(whole.lo-h.Roof.Overhang), h.text(whole.hi+h.Roof.Overhang)).
		Note(wall.Pos, "%s is taped here", wall.ID)
	return false
}
