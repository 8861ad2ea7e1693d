package plan

import (
	"fmt"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A Fixed is what the user decided about a hole or a trunk before the rest is
// planned. It is a hole if Wall is not -1, otherwise a trunk if it has a Path,
// otherwise an area.
type Fixed struct {
	ID  string
	Pos diag.Pos
	Do  FixedDo

	// Wall and At say where the hole through a wall's top plate is, or through
	// its bottom plate if Bottom.
	Wall   int
	At     measure.Length
	Bottom bool
	// Space is where a Path or an Area is.
	Space int
	// Path is where a trunk is laid in a space; its legs run along the axes.
	Path []geom.Point
	// Area is a part of a space that is avoided.
	Area geom.Rect
	// Width is how wide a stretch is kept free, half of it on either side, of
	// an avoided hole (along the wall) or trunk.
	Width measure.Length
	// Diameter of a hole that is there, and the number of Cables in it.
	Diameter measure.Length
	Cables   int
}

// A FixedDo says what is to be done with a fixed part.
type FixedDo uint8

// What can be done with a fixed part.
const (
	UseFixed   FixedDo = iota // plan with it, and with no other of its kind in its wall
	AvoidFixed                // plan without it
	FixedThere                // it exists, and costs nothing to make
)

var fixedDoNames = [...]string{"use", "avoid", "there"}

func (d FixedDo) String() string { return fixedDoNames[d] }

// keptFree is the width that is kept free of an avoided hole or trunk unless
// the job says otherwise: 6 in on either side (common practice, no source).
const keptFree = 12 * inch

// fixedWidths is the range of that width.
var fixedWidths = between(1*inch, 10*foot, "what is kept free about a hole or a trunk")

// Bounds of the fixed parts: every corner of a trunk gives the attic's lattice
// two lines more.
const (
	mostFixed   = 100
	mostCorners = 100 // of all trunks
)

// fixed reads [[fixed]].
func (l *jobLoader) fixed(root *source.Table) {
	ids := names{kind: "fixed part"}
	corners := 0
	for _, t := range tables(root, "fixed", source.Optional, mostFixed) {
		f := Fixed{Pos: t.Pos(), Wall: -1}
		f.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", f.ID)
		do, ok := t.Choice("do", source.Required, fixedDoNames[:]...)
		if !ok {
			askAllKeys(t)
			continue
		}
		f.Do = FixedDo(slices.Index(fixedDoNames[:], do))
		if l.fixedPart(t, &f) {
			if corners += len(f.Path); corners > mostCorners {
				t.Errorf("path", "found %d points in the trunks so far; at most %d are read", corners, mostCorners)
			}
			l.cautionFixed(t, &f)
			l.job.Fixed = append(l.job.Fixed, f)
		}
	}
}

// askAllKeys keeps a table's keys from being called unknown where nothing can
// be said about them.
func askAllKeys(t *source.Table) {
	for _, key := range t.Keys() {
		t.Has(key)
	}
}

// fixedPart reads where a fixed part is, and what else its kind has. ok is
// false also without a house.
func (l *jobLoader) fixedPart(t *source.Table, f *Fixed) (ok bool) {
	kinds := 0
	for _, key := range []string{"wall", "path", "to"} {
		if t.Has(key) {
			kinds++
		}
	}
	switch {
	case kinds != 1:
		t.Errorf("wall", "found %d of wall, path and to; want one of them: wall for a hole, path for a trunk, from and to for an area to avoid", kinds)
		askAllKeys(t)
		return false
	case t.Has("wall"):
		ok = l.fixedHole(t, f)
	case t.Has("path"):
		ok = l.trunk(t, f)
	default:
		ok = l.fixedArea(t, f)
	}
	width := f.Do == AvoidFixed && !t.Has("to")
	if width {
		f.Width = lengthOr(t, "width", fixedWidths, keptFree)
	}
	only(t, "width", width, `do = "avoid" and a wall or a path`)
	only(t, "plate", t.Has("wall"), "a wall")
	there := f.Do == FixedThere && t.Has("wall")
	only(t, "diameter", there, `do = "there" and a wall`)
	only(t, "cables", there, `do = "there" and a wall`)
	return ok && l.house != nil
}

// only reports a key that a fixed part of this kind does not have.
func only(t *source.Table, key string, allowed bool, where string) {
	if !allowed && t.Has(key) {
		t.Errorf(key, "found %s; want it only with %s", key, where)
	}
}

// fixedHole reads the place of a hole on a wall. A plate has no sides, so that
// side may be left out where no room is given.
func (l *jobLoader) fixedHole(t *source.Table, f *Fixed) bool {
	w, okWall := l.find(t, "wall", &l.wallNames)
	at, okAt := readOffset(t, "at")
	only(t, "space", false, "a path or an area")
	ok := okWall && okAt
	if ok && l.house.Walls[w].Masonry {
		t.Errorf("wall", "found a hole in masonry wall %s; want a framed wall, which has plates", l.house.Walls[w].ID)
		ok = false
	}
	if f.Do == FixedThere {
		var okSize bool
		f.Diameter, okSize = length(t, "diameter", source.Required, bitSizes)
		f.Cables = intOr(t, "cables", 0, mostDrops*mostCables, 0)
		ok = ok && okSize
	}
	s := Spot{Wall: w}
	if t.Has("room") {
		only(t, "side", false, "a place along the wall, without room")
		ok = l.placeFromCorner(t, &s, -1, at, ok)
	} else {
		side, faced := t.Choice("side", source.Optional, "left", "right")
		fromEnd := choiceOr(t, "from", "start", "end") == "end"
		if ok && at.way != plainly {
			at.length, ok = l.things.place(at, w, facing{sideOf(side), faced}, 0, sayAt(t, "at"))
		}
		ok = ok && l.alongPlate(t, &s, at.length, fromEnd)
	}
	f.Wall, f.At = s.Wall, s.At
	f.Bottom = choiceOr(t, "plate", "top", "bottom") == "bottom"
	if !ok || !f.Bottom {
		return ok
	}
	why := l.noSole(f)
	if why != "" {
		t.Errorf("plate", "found a hole in the bottom plate of wall %s at %s along it, where %s", l.house.Walls[f.Wall].ID, l.house.text(f.At), why)
	}
	return why == ""
}

// noSole says why there is no bottom plate over a hollow at the place of a hole,
// nothing if there is one.
func (l *jobLoader) noSole(f *Fixed) string {
	w := &l.house.Walls[f.Wall]
	for i := range w.Openings {
		if o := &w.Openings[i]; o.Sill <= 0 && o.Start <= f.At && f.At <= o.End {
			return fmt.Sprintf("%s goes down to the floor; want a place beside it", o.ID)
		}
	}
	if l.house.SpaceUnder(w.Level, w.PointAt(f.At)) < 0 {
		return fmt.Sprintf("the sketch has no floor or crawl space under level %s; want a wall over one", l.house.Levels[w.Level].ID)
	}
	return ""
}

// alongPlate places s along the plate of its wall.
func (l *jobLoader) alongPlate(t *source.Table, s *Spot, at measure.Length, fromEnd bool) bool {
	w := &l.house.Walls[s.Wall]
	s.At = at
	if fromEnd {
		s.At = w.Length() - at
	}
	whole := ordered(w.Along(w.Body.Min), w.Along(w.Body.Max))
	if whole.lo < s.At && s.At < whole.hi {
		return true
	}
	t.Errorf("at", "found a hole at %s along wall %s; want it from %s to %s", l.house.text(s.At), w.ID, l.house.text(whole.lo), l.house.text(whole.hi)).
		Note(w.here())
	return false
}

// trunk reads a path in the attic.
func (l *jobLoader) trunk(t *source.Table, f *Fixed) bool {
	okSpace := l.fixedSpace(t, f)
	path, ok := t.Array("path", source.Required)
	if !ok {
		return false
	}
	keys := path.Keys()
	if n := len(keys); n < 2 || n > mostCorners {
		t.Errorf("path", "found %s; want 2 to %d", counted(n, "point"), mostCorners)
		askAllKeys(path)
		return false
	}
	for i, key := range keys {
		p, okPoint := pair(path, key, coordinates)
		ok = ok && okPoint
		if ok && l.house != nil {
			ok = l.corner(path, key, f, p)
		}
		if !ok {
			// What follows can't be measured from here.
			for _, rest := range keys[i+1:] {
				pair(path, rest, coordinates)
			}
			return false
		}
		f.Path = append(f.Path, p)
	}
	return okSpace
}

// fixedSpace reads the space that a trunk or an area is in, the main attic if it
// is left out.
func (l *jobLoader) fixedSpace(t *source.Table, f *Fixed) bool {
	if !t.Has("space") {
		return true
	}
	space, ok := l.find(t, "space", &l.spaceNames)
	f.Space = max(0, space)
	return ok
}

// corner reports whether p goes on from a trunk along an axis and is in its
// space.
func (l *jobLoader) corner(path *source.Table, key string, f *Fixed, p geom.Point) bool {
	s, before := l.house.Spaces[f.Space], f.Path
	if !l.house.within(s, p) {
		path.Errorf(key, "found the point %s, which is %s", l.house.pointText(p), l.house.outsideText(s))
		return false
	}
	if len(before) == 0 {
		return true
	}
	if q := before[len(before)-1]; (p.X == q.X) == (p.Y == q.Y) {
		path.Errorf(key, "found a leg from %s to %s; want one with a length, along X or along Y", l.house.pointText(q), l.house.pointText(p))
		return false
	}
	return true
}

// fixedArea reads a part of the attic that is avoided.
func (l *jobLoader) fixedArea(t *source.Table, f *Fixed) bool {
	okSpace := l.fixedSpace(t, f)
	area, ok := rect(t)
	f.Area = area
	if f.Do != AvoidFixed {
		t.Errorf("do", `found an area with do = %q; want do = "avoid", or a wall or a path`, f.Do)
		return false
	}
	if ok && l.house != nil && !l.house.touches(l.house.Spaces[f.Space], area) {
		t.Errorf("from", "found an area from %s to %s, which is %s", l.house.pointText(area.Min), l.house.pointText(area.Max), l.house.outsideText(l.house.Spaces[f.Space]))
		return false
	}
	return ok && okSpace
}

// cautionFixed warns of a hole that nothing can use, or that another fixed
// part of those before keeps away.
func (l *jobLoader) cautionFixed(t *source.Table, f *Fixed) {
	if f.Wall < 0 {
		return
	}
	if f.Do != AvoidFixed && !l.served(f.Wall) {
		t.Warnf("wall", "neither the closet nor a wall plate is on wall %s, so nothing goes through this hole", l.house.Walls[f.Wall].ID)
	}
	for i := range l.job.Fixed {
		g := &l.job.Fixed[i]
		if g.Wall == f.Wall && g.Bottom == f.Bottom && g.Do != f.Do && (f.Avoids(g.At) || g.Avoids(f.At)) {
			t.Warnf("at", "this hole and that of %s contradict each other: avoiding goes first", g.ID).Note(g.Pos, "%s is here", g.ID)
		}
	}
}

// served reports whether the closet or a wall plate is on a wall, or its bays may
// be gone through from a space under its floor.
func (l *jobLoader) served(wall int) bool {
	w := &l.house.Walls[wall]
	over := func(s *Space) bool { return s.Above == w.Level }
	if !w.Exterior && !w.Insulated && slices.ContainsFunc(l.house.Spaces, over) {
		return true
	}
	plate := func(d Drop) bool { return d.Kind == WallPlate && d.Spot.Wall == wall }
	return !l.job.Closet.Ceiling && l.job.Closet.Spot.Wall == wall || slices.ContainsFunc(l.job.Drops, plate)
}

// Avoids reports whether f keeps holes away from a place along its wall.
func (f *Fixed) Avoids(at measure.Length) bool {
	return f.Do == AvoidFixed && f.Wall >= 0 && 2*max(at-f.At, f.At-at) < f.Width
}
