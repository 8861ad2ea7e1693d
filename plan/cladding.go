package plan

import (
	"topplate/plan/cladding"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A clad is what one wall of a run has outside of its studs.
type clad struct {
	t     *source.Table // the [[cladding]] that says so, nil if it is as its run
	kind  cladding.Kind
	thick measure.Length
}

// cladOf is what leg k of a run has outside of its studs.
func (r *run) cladOf(k int) clad {
	if c, ok := r.clads[k]; ok {
		return c
	}
	if r.each != nil {
		r = r.each[k]
	}
	return clad{kind: r.cladKind, thick: r.clad}
}

// cladKindOr reads a kind of cladding, that of the run or the house if there is none.
func cladKindOr(t *source.Table, key string, or cladding.Kind) cladding.Kind {
	if !t.Has(key) {
		return or
	}
	id, _ := t.Choice(key, source.Optional, cladding.IDs()...)
	k, _ := cladding.Lookup(id)
	return k
}

// readCladdings reads [[cladding]]: outer walls that are clad otherwise than the run
// that they are legs of.
func (l *houseLoader) readCladdings(root *source.Table) {
	for _, t := range tables(root, "cladding", source.Optional, mostWalls) {
		w, ok := l.findWall(t, "wall", source.Required)
		if !t.Has("kind") && !t.Has("thickness") {
			t.Errorf("kind", "missing; want what the wall is clad with, or a thickness of its own")
		}
		if !ok {
			cladKindOr(t, "kind", cladding.Kind{})
			lengthOr(t, "thickness", claddings, 0)
			continue
		}
		r, k := l.runOf(w)
		c := clad{t: t, kind: cladKindOr(t, "kind", r.cladKind), thick: lengthOr(t, "thickness", claddings, r.clad)}
		switch first := r.clads[k]; {
		case !r.shared.Exterior:
			t.Errorf("wall", "found wall %s, which is not exterior; want an outer wall, which has a cladding", l.wallNames.ids[w]).
				Note(r.idPos[k], "%s is taped here", l.wallNames.ids[w])
		case first.t != nil:
			t.Errorf("wall", "found the cladding of wall %s again", l.wallNames.ids[w]).Note(first.t.Pos(), "it is first here")
		case r.derived && t.Has("thickness"):
			t.Errorf("thickness", "found a thickness of one outer wall of rooms by inside dimensions, which all have one; want cladding in [outer], and none here")
		default:
			if r.clads == nil {
				r.clads = map[int]clad{}
			}
			r.clads[k] = c
		}
	}
}

// HardToFix reports whether clips on the outside of an outer wall want anchors, and
// HardToBore whether a hole through it wants a bit for masonry.
func (w *Wall) HardToFix() bool {
	if w.Cladding.ID == "" {
		return w.Masonry
	}
	return w.Cladding.Hard
}

// HardToBore is described at HardToFix.
func (w *Wall) HardToBore() bool { return w.Masonry || w.Exterior && w.Cladding.Hard }
