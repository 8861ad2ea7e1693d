package plan

import (
	"slices"

	"topplate/plan/source"
)

// studSizes are the names of lumber that walls are framed of.
var studSizes = []string{"2x3", "2x4", "2x6", "2x8"}

// masonry is the frame of a wall of brick, block, stone or concrete.
const masonry = "masonry"

// readFrame reads what the walls of a run are made of, once it is known whether
// they are exterior.
func (l *houseLoader) readFrame(r *run) {
	t, w := r.t, &r.shared
	w.Bearing = boolOr(t, "bearing", w.Exterior)
	w.TopPlates, w.StudWidth = 2, l.std.studWidth
	board, clad := l.std.board, l.std.cladding
	if l.isMasonry(t) {
		l.readMasonry(t, w)
		board, clad = 0, 0
	} else {
		l.readStuds(r)
	}
	w.Insulated = boolOr(t, "insulated", w.Exterior && !w.Masonry)
	r.board = lengthOr(t, "board", boards, board)
	r.clad = lengthOr(t, "cladding", claddings, clad)
	r.cladKind = cladKindOr(t, "cladding_kind", r.cladKind)
	for _, key := range []string{"cladding", "cladding_kind"} {
		switch {
		case !t.Has(key) || w.Exterior:
		case r.derived:
			t.Errorf(key, "found %s on walls between rooms; want board alone", key)
		default:
			t.Errorf(key, "found %s on a wall that is not exterior; want exterior = true, or board alone", key)
		}
	}
}

// isMasonry reports whether a run is of masonry.
func (l *houseLoader) isMasonry(t *source.Table) bool {
	if t.Kind("frame") != source.KindText {
		return false
	}
	s, _ := t.Text("frame", source.Optional)
	return s == masonry
}

// readStuds reads the studs and plates of a framed wall.
func (l *houseLoader) readStuds(r *run) {
	t, w := r.t, &r.shared
	w.StudDepth = l.std.studDepth
	if d, ok := lumberDepth(t, "frame", source.Optional, append(slices.Clone(studSizes), masonry), studDepths); ok {
		w.StudDepth = d
	}
	if t.Has("thickness") {
		t.Errorf("thickness", `found the thickness of a framed wall, which follows from its studs and boards; want frame = "masonry", or no thickness`)
	}
	w.Spacing = lengthOr(t, "spacing", onCentre, l.std.studSpacing)
	if choiceOr(t, "top_plate", "double", "single") == "single" {
		w.TopPlates = 1
	}
	r.blocks, _ = t.Lengths("fire_blocks", source.Optional, heights.Range)
	for _, item := range r.blocks {
		w.FireBlocks = append(w.FireBlocks, item.Value)
	}
	slices.Sort(w.FireBlocks)
	w.FireBlocks = slices.Compact(w.FireBlocks)
}

// readMasonry reads a wall without studs. It ends in one plate, the sill.
func (l *houseLoader) readMasonry(t *source.Table, w *Wall) {
	w.Masonry, w.TopPlates, w.Spacing = true, 1, l.std.studSpacing
	w.StudDepth = 8 * inch // until it is known
	if d, ok := length(t, "thickness", source.Required, masonryDepths); ok {
		w.StudDepth = d
	}
	for _, key := range []string{"spacing", "top_plate", "fire_blocks"} {
		if t.Has(key) {
			t.Errorf(key, "found %s of a masonry wall, which has no studs; want another frame, or no %s", key, key)
		}
	}
}

// checkBlocks reports rows of fire blocking that are not in their wall, which is
// on a level.
func (l *houseLoader) checkBlocks(r *run, level int) {
	top := l.house.Levels[level].PlateTop
	for _, item := range r.blocks {
		if item.Value <= 0 || item.Value >= top {
			l.list.Errorf(item.Pos, r.t.Path("fire_blocks"), "found a row of blocking at %s; want one above the floor and below the top of the plates at %s",
				exact(r.t.Units(), item.Value), exact(r.t.Units(), top))
		}
	}
}
