package plan

import (
	"slices"
	"strings"

	"topplate/plan/geom"
	"topplate/plan/source"
)

// findWall reads a reference to a wall. What may be a wall of a run that could
// not be read is left alone.
func (l *houseLoader) findWall(t *source.Table, key string, need source.Need) (int, bool) {
	id, ok := t.Name(key, need)
	if !ok {
		return -1, false
	}
	if !slices.Contains(l.wallNames.ids, id) {
		for _, r := range l.runs {
			if r.id == id && len(r.ids) > 1 {
				t.Errorf(key, "found %q, which is a run; want one of its walls %s", id, quoted(r.ids)).Note(r.t.Pos(), "the run is here")
				return -1, false
			}
		}
		if l.badRun {
			return -1, false
		}
		if like := l.madeLike(id); len(like) > 0 {
			t.Errorf(key, "found %q, which is no wall; those round the rooms are called %s here", id, quoted(like))
			return -1, false
		}
	}
	return l.wallNames.index(t, key, id)
}

// madeLike are the walls made round rooms that are called as a name is but for
// the number behind it, "south.1" for "south".
func (l *houseLoader) madeLike(id string) (like []string) {
	word, _, _ := strings.Cut(id, ".")
	for _, r := range l.runs {
		for _, known := range r.ids {
			if is, _, _ := strings.Cut(known, "."); r.derived && is == word {
				like = append(like, known)
			}
		}
	}
	slices.Sort(like)
	return like
}

// checkLengths reports walls of which nothing is left between those at their
// ends.
func (l *houseLoader) checkLengths() bool {
	good := true
	for i := range l.legs {
		g := &l.legs[i]
		if g.along[body].lo < g.along[body].hi && g.along[frame].lo < g.along[frame].hi {
			continue
		}
		good = false
		if r, _ := l.runOf(i); r.derived {
			l.list.Errorf(l.house.Walls[i].Pos, "inside", "found wall %s, made round rooms, of which nothing is left between the walls at its ends: faces of rooms are out of line there by hardly more than a wall is thick; want them in line, or farther apart", l.house.Walls[i].ID)
			continue
		}
		l.list.Errorf(l.house.Walls[i].Pos, "wall", "found wall %s, which has no length left between the walls at its ends", l.house.Walls[i].ID)
	}
	return good
}

func (l *houseLoader) checkSize() bool {
	b := l.house.Boundaries
	size := max(b.Width(), b.Height())
	if mostAcross.Contains(size) {
		return true
	}
	l.list.Errorf(l.runs[0].t.Pos(), "wall", "found walls that lie up to %s apart; want at most %s: %s", l.house.text(size), l.house.text(mostAcross.Max), mostAcross.why)
	return false
}

// checkOverlaps reports walls that cross and walls that lie on one another,
// one for each wall. It takes time O(n²).
func (l *houseLoader) checkOverlaps() bool {
	good := true
	for i := range l.legs {
		for j := range i {
			if l.legs[i].level != l.legs[j].level {
				continue
			}
			what, ok := l.overlap(i, j)
			if ok {
				continue
			}
			good = false
			later, earlier := &l.house.Walls[i], &l.house.Walls[j]
			if l.sayDerived(i, j) {
				break
			}
			l.list.Errorf(later.Pos, "wall", "found wall %s, which %s wall %s", later.ID, what, earlier.ID).
				Note(earlier.here())
			break
		}
	}
	return good
}

// overlap says how the legs i and j are in each other's way. ok is true if
// they are not.
func (l *houseLoader) overlap(i, j int) (what string, ok bool) {
	p, q := &l.legs[i], &l.legs[j]
	if p.heading.AlongY() == q.heading.AlongY() {
		some := joinReach.Max
		if p.heading != q.heading && (p.corner[atEnd] == j || p.corner[atStart] == j) {
			some = 0 // the run doubles back
		}
		if p.across[body].overlap(q.across[body]) > 0 && p.taped.overlap(q.taped) > some {
			return "lies on", false
		}
		return "", true
	}
	for end := range 2 {
		if p.corner[end] == j || p.joined[end] == j || q.corner[end] == i || q.joined[end] == i {
			return "", true
		}
	}
	if p.along[body].overlap(q.across[body]) > 0 && q.along[body].overlap(p.across[body]) > 0 {
		return "crosses in its middle (end one of them at the other, and start a new wall beyond it)", false
	}
	return "", true
}

// meeting calls f for every wall of its level that ends at or crosses the middle of a wall,
// with the stretch that it takes up along it.
func (h *House) meeting(wall int, f func(other int, stretch extent)) {
	w := &h.Walls[wall]
	for i := range h.Walls {
		v := &h.Walls[i]
		if i != wall && v.Level == w.Level && v.AlongY() != w.AlongY() && !v.Body.Intersect(w.Body).Empty() {
			f(i, ordered(w.Along(v.Body.Min), w.Along(v.Body.Max)))
		}
	}
}

// setOutline takes the outer faces of the outer run of a level, if they make an
// outline.
func (l *houseLoader) setOutline(level int) bool {
	o := &l.outers[level]
	points := make(geom.Polygon, len(o.legs))
	for k := range points {
		points[k], _ = o.points(k)
	}
	ring := newRing(l.legs[o.first:o.first+len(o.legs)], points)
	o.ring = &ring
	v := &l.house.Levels[level]
	v.OutsideOf, v.PlateLine = ring.outline(body), ring.outline(frame)
	for _, p := range []geom.Polygon{v.OutsideOf, v.PlateLine} {
		if !p.Rectilinear() || !p.IsSimple() || !p.IsCCW() {
			o.t.Errorf("run", "found outer walls whose faces do not make a simple outline; walk round the house once, without crossing the way or coming back to a corner")
			return false
		}
	}
	return true
}

// cautionOutsiders warns of walls that stand outside of the outer run of their
// level.
func (l *houseLoader) cautionOutsiders() {
	for i := range l.house.Walls {
		w := &l.house.Walls[i]
		if !touchesInside(l.house.levelOf(i).OutsideOf, w.Body) {
			l.list.Warnf(w.Pos, "wall", "wall %s is outside of the outer walls, where nothing can be routed", w.ID)
		}
	}
}
