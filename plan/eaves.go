package plan

import (
	"slices"

	"topplate/plan/measure"
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
	return id, w, e, l.house.eaveFits(t, w, e)
}

// eaveFits reports whether a stretch is beside a wall under an overhang, or past
// its ends by no more than that.
func (h *House) eaveFits(t *source.Table, w int, e extent) bool {
	r, ok := h.underEave(t, w, e)
	return ok && (r == nil || h.besideWall(t, w, e, r))
}

// roofOn is the roof that stands on an exterior wall at a distance along it, or
// past an end of the wall on that end; nil if none does.
func (h *House) roofOn(w *Wall, along measure.Length) *Roof {
	whole := ordered(w.Along(w.Frame.Min), w.Along(w.Frame.Max))
	p := w.PointAt(min(max(along, whole.lo), whole.hi))
	for _, r := range h.Roofs {
		if r.Level == w.Level && r.Outline.Contains(p) {
			return r
		}
	}
	return nil
}

// RoofOn is the index of the roof that stands on an exterior wall at a distance
// along it, past its ends that of the end; -1 if none does.
func (h *House) RoofOn(w *Wall, along measure.Length) int {
	return slices.Index(h.Roofs, h.roofOn(w, along))
}

// underEave finds the roof whose overhang is over a stretch of a wall. It is nil
// while no roof is made.
func (h *House) underEave(t *source.Table, w int, e extent) (*Roof, bool) {
	wall := &h.Walls[w]
	if !wall.Exterior {
		t.Errorf("wall", "found wall %s, which is not exterior; want an outer wall, which has a soffit", wall.ID).
			Note(wall.here())
		return nil, false
	}
	if slices.ContainsFunc(h.Roofs, func(r *Roof) bool { return r.Outline == nil }) {
		return nil, true
	}
	r := h.roofOn(wall, e.lo)
	if r == nil || r != h.roofOn(wall, e.hi) {
		t.Errorf("wall", "found %s along wall %s%s, on which no roof stands all along; want an outer wall under an overhang", h.stretchText(e), wall.ID, h.onLevel(wall.Level)).
			Note(wall.here())
		return nil, false
	}
	if (r.Surface != nil || r.Flat) && r.Overhang == 0 {
		t.Errorf("wall", "found wall %s under a roof without an overhang, which has no soffit", wall.ID).
			Note(r.Pos, "the roof is described here")
		return nil, false
	}
	return r, true
}

// besideWall reports whether a stretch is beside a wall or past its ends by no
// more than the overhang.
func (h *House) besideWall(t *source.Table, w int, e extent, r *Roof) bool {
	wall := &h.Walls[w]
	whole := ordered(wall.Along(wall.Body.Min), wall.Along(wall.Body.Max))
	if whole.lo-r.Overhang <= e.lo && e.hi <= whole.hi+r.Overhang {
		return true
	}
	t.Errorf("at", "found %s along wall %s; want it from %s to %s, with the overhang at its ends", h.stretchText(e), wall.ID,
		h.text(whole.lo-r.Overhang), h.text(whole.hi+r.Overhang)).
		Note(wall.here())
	return false
}
