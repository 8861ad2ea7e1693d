package plan

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/source"
)

// openingKinds are the words for the kinds of opening.
var openingKinds = []string{Door: "door", Window: "window", Passage: "passage", GarageDoor: "garage door"}

func (k OpeningKind) String() string { return openingKinds[k] }

// openings reads [[opening]].
func (l *houseLoader) openings(root *source.Table) {
	ids := l.newNames("opening")
	for _, t := range tables(root, "opening", source.Optional, mostOthers) {
		o := Opening{Pos: t.Pos()}
		o.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", o.ID)
		w, from, okWall := l.onWall(t)
		kind, okKind := t.Choice("kind", source.Required, openingKinds...)
		if okKind {
			o.Kind = OpeningKind(slices.Index(openingKinds, kind))
		}
		l.readLeaf(t, &o, okKind)
		okHeights := l.openingHeights(t, &o, w)
		stretch, ok := l.stretch(t, w, from, openingSizes)
		if !okWall || !ok || !okHeights {
			continue
		}
		o.Start, o.End = stretch.lo, stretch.hi
		if l.openingFits(t, w, &o) {
			wall := &l.house.Walls[w]
			wall.Openings = append(wall.Openings, o)
		}
	}
}

// readLeaf reads how a door hangs. What is known not to be a door has no leaf.
func (l *houseLoader) readLeaf(t *source.Table, o *Opening, known bool) {
	o.HingeEnd = choiceOr(t, "hinge", "start", "end") == "end"
	if choiceOr(t, "swing", "left", "right") == "right" {
		o.Swing = Right
	}
	for _, key := range []string{"hinge", "swing"} {
		if t.Has(key) && known && o.Kind != Door {
			t.Errorf(key, "found a leaf in a %s; only a door hangs on hinges here", o.Kind)
		}
	}
}

// openingHeights reads the sill and the head. The head must be under the top
// plates of wall w, if that is known.
func (l *houseLoader) openingHeights(t *source.Table, o *Opening, w int) bool {
	sill, okSill := length(t, "sill", source.Need(o.Kind == Window), heights)
	head, okHead := length(t, "head", source.Required, heights)
	o.Sill, o.Head = sill, head
	if t.Has("sill") && !okSill || !okHead {
		return false
	}
	if sill >= head {
		t.Errorf("head", "found a head at %s; want it above the sill at %s", exact(t.Units(), head), exact(t.Units(), sill))
		return false
	}
	if w < 0 || !l.placed {
		return true
	}
	wall := &l.house.Walls[w]
	if under := l.house.levelOf(w).PlateTop - measure.Length(wall.TopPlates)*wall.StudWidth; head > under {
		t.Errorf("head", "found a head at %s; want at most %s, the underside of the top plate of wall %s", exact(t.Units(), head), l.house.text(under), wall.ID)
		return false
	}
	return true
}

// openingFits reports whether an opening is in its wall, off other openings
// and off walls that meet it there.
func (l *houseLoader) openingFits(t *source.Table, w int, o *Opening) bool {
	wall, stretch := &l.house.Walls[w], extent{o.Start, o.End}
	if !l.inWall(t, "at", w, stretch) {
		return false
	}
	for i := range wall.Openings {
		if other := &wall.Openings[i]; stretch.overlap(extent{other.Start, other.End}) > 0 {
			t.Errorf("at", "found an opening from %s to %s along wall %s, which overlaps opening %s", l.house.text(o.Start), l.house.text(o.End), wall.ID, other.ID).
				Note(other.Pos, "%s goes from %s to %s", other.ID, l.house.text(other.Start), l.house.text(other.End))
			return false
		}
	}
	return l.clearOfWalls(t, "at", w, stretch, l.house.SketchError)
}

// inWall reports whether a stretch lies between the ends of a wall.
func (l *houseLoader) inWall(t *source.Table, key string, w int, stretch extent) bool {
	clear, wall := l.clearStretch(w), &l.house.Walls[w]
	if clear.lo <= stretch.lo && stretch.hi <= clear.hi {
		return true
	}
	t.Errorf(key, "found %s along wall %s; want it from %s to %s, between the frames at the wall's ends",
		l.house.stretchText(stretch), wall.ID, l.house.text(clear.lo), l.house.text(clear.hi)).
		Note(wall.here())
	return false
}

// stretchText names a stretch along a wall, or a place on it.
func (h *House) stretchText(e extent) string {
	if e.lo == e.hi {
		return "a place at " + h.text(e.lo)
	}
	return "a stretch from " + h.text(e.lo) + " to " + h.text(e.hi)
}

// clearOfWalls reports whether a stretch of a wall is free of the walls that
// meet it, give or take some.
func (l *houseLoader) clearOfWalls(t *source.Table, key string, w int, stretch extent, some measure.Length) bool {
	free := true
	l.house.meeting(w, func(other int, taken extent) {
		if !free || stretch.overlap(taken) <= some && (stretch.lo < stretch.hi || stretch.overlap(taken) < 0) {
			return
		}
		free = false
		v := &l.house.Walls[other]
		t.Errorf(key, "found a place on wall %s where wall %s meets it, from %s to %s along it", l.house.Walls[w].ID, v.ID, l.house.text(taken.lo), l.house.text(taken.hi)).
			Note(v.here())
	})
	return free
}

// clearOfOpenings reports whether a place on a wall is off its openings.
func (h *House) clearOfOpenings(t *source.Table, w int, at, height measure.Length) bool {
	for i := range h.Walls[w].Openings {
		o := &h.Walls[w].Openings[i]
		if o.Start < at && at < o.End && o.Sill < height && height < o.Head {
			t.Errorf("at", "found a place at %s along wall %s and %s above the floor, which is in opening %s", h.text(at), h.Walls[w].ID, h.text(height), o.ID).
				Note(o.Pos, "%s goes from %s to %s along the wall", o.ID, h.text(o.Start), h.text(o.End))
			return false
		}
	}
	return true
}

// stretch reads a stretch along wall w, which is faced from a side or not, from
// the keys at, from and width. ok is false also if the walls are not placed.
func (l *houseLoader) stretch(t *source.Table, w int, from facing, widths bound) (extent, bool) {
	at, okAt := readOffset(t, "at")
	fromEnd := choiceOr(t, "from", "start", "end") == "end"
	width, okWidth := length(t, "width", source.Required, widths)
	if !okAt || !okWidth || w < 0 || !l.placed {
		return extent{}, false
	}
	if at.way != plainly {
		start, ok := l.placeThing(t, at, w, from, width)
		return extent{start, start + width}, ok
	}
	start := at.length
	if fromEnd {
		start = l.house.Walls[w].Length() - start - width
	}
	return extent{start, start + width}, true
}
