package render

import (
	"cmp"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A scope is what of a house a plan shows: a level, or a framing space with the
// walls below and above it. Both are indices of the house, one of them is -1.
// A house of one level has all of its job on either.
type scope struct{ level, space int }

// everywhere is the scope of what is about all of a house.
var everywhere = scope{-1, -1}

func levelScope(level int) scope { return scope{level, -1} }
func spaceScope(space int) scope { return scope{-1, space} }

// below and above are the levels whose walls are under and over a space, -1 for
// none. A level is below itself: it is seen from over its ceiling.
func (s scope) below(h *plan.House) int {
	if s.space < 0 {
		return s.level
	}
	return h.Spaces[s.space].Below
}

func (s scope) above(h *plan.House) int {
	if s.space < 0 {
		return -1
	}
	return h.Spaces[s.space].Above
}

// levelOfSpace is the level whose plan shows what is in a space: the one whose
// ceiling it is on, or over a crawl space the one whose floor it carries.
func levelOfSpace(h *plan.House, space int) int {
	if s := h.Spaces[space]; s.Below >= 0 {
		return s.Below
	}
	return h.Spaces[space].Above
}

// levelOfHole is the level that a hole is made on.
func levelOfHole(h *plan.House, p *route.HolePlace) int {
	switch {
	case p.Wall >= 0:
		return h.Walls[p.Wall].Level
	case p.Room >= 0:
		return h.Rooms[p.Room].Level
	}
	return levelOfSpace(h, max(0, p.Space))
}

// spaceOver is the space on the ceiling of a level over a point: where none is
// over the point itself, any on that ceiling; -1 if there is none.
func spaceOver(h *plan.House, level int, p geom.Point) int {
	if s := h.SpaceOver(level, p); s >= 0 {
		return s
	}
	return slices.IndexFunc(h.Spaces, func(s *plan.Space) bool { return s.Below == level })
}

// spaceOfHole is the space that a hole opens into; for one inside a wall, the
// space over that wall.
func spaceOfHole(h *plan.House, p *route.HolePlace) int {
	if p.Wall >= 0 && (p.Space < 0 || p.Kind == route.BlockArc || p.Kind == route.StudArc) {
		return spaceOver(h, h.Walls[p.Wall].Level, flat(p.At))
	}
	return p.Space
}

// hasHole reports whether a hole is in the scope.
func (s scope) hasHole(h *plan.House, p *route.HolePlace) bool {
	if s.space < 0 {
		return levelOfHole(h, p) == s.level
	}
	return spaceOfHole(h, p) == s.space || p.Beyond == s.space
}

// levelAt is the level that a point is on: the one between whose floor and
// plates it is, of those beside each other the one whose walls are around it,
// else the nearest in height.
func levelAt(h *plan.House, p geom.Point3) int {
	best, far := 0, measure.Length(-1)
	for i := range h.Levels {
		l := &h.Levels[i]
		off := max(0, l.Floor-p.Z, p.Z-l.Floor-l.PlateTop)
		if !l.OutsideOf.Contains(flat(p)) {
			off += measure.Metre
		}
		if far < 0 || off < far {
			best, far = i, off
		}
	}
	return best
}

// inFraming reports whether cable on an arc of a kind lies in a framing space,
// and not in a wall or a room.
func inFraming(k route.ArcKind) bool {
	switch k {
	case route.EnterArc, route.SlantArc, route.FishArc, route.BlockArc, route.StudArc, route.ConduitArc, route.ChaseArc,
		route.RacewayArc, route.FaceArc, route.WallArc, route.OutsideArc, route.InSoffitArc:
		return false
	}
	return true
}

// inSight reports whether cable on an arc of a kind is on a surface.
func inSight(k route.ArcKind) bool {
	return k == route.RacewayArc || k == route.FaceArc || k == route.OutsideArc
}

// hasBundle reports whether a bundle is in the scope: on a level, what is in
// its walls and over its ceiling, or under its floor over a crawl space. Cable from
// one space into another is in both.
func (s scope) hasBundle(res *route.Result, b *route.Bundle) bool {
	h := res.Job.House
	space := -1
	level := levelAt(h, b.Points[0])
	switch {
	case inFraming(b.Kind) && b.Space >= 0:
		space, level = b.Space, levelOfSpace(h, b.Space)
	default:
		space = s.spaceOfWall(res, b, level)
	}
	if s.space < 0 {
		return level == s.level
	}
	return space == s.space || b.Beyond == s.space
}

// spaceOfWall is the space on whose plan cable in a wall of a level is drawn: the
// one over it, or one that the closet, if the bundle is beside it, or a drop of the
// bundle is on the plan of.
func (s scope) spaceOfWall(res *route.Result, b *route.Bundle, level int) int {
	h := res.Job.House
	over := spaceOver(h, level, flat(b.Points[0]))
	if s.space < 0 || len(h.Levels) == 1 || level != s.below(h) && level != s.above(h) {
		return over
	}
	atCloset := func(p geom.Point3) bool { return geom.Dist(flat(p), placeOfCloset(res.Job)) <= besideSpace }
	if s.hasCloset(res.Job) && slices.ContainsFunc(b.Points, atCloset) || slices.ContainsFunc(res.Routes, func(r route.Route) bool {
		return slices.Contains(b.Drops, r.Drop) && s.hasDrop(res, &r)
	}) {
		return s.space
	}
	return -1
}

// hasDrop reports whether a drop is in the scope: on a space, one below it, and
// one above or below whose cables come to it from there.
func (s scope) hasDrop(res *route.Result, r *route.Route) bool {
	h := res.Job.House
	d := &res.Job.Drops[r.Drop]
	level := h.LevelOf(d)
	if s.space < 0 {
		return level == s.level
	}
	at := d.Point
	switch {
	case d.Kind == plan.WallPlate:
		at = h.Walls[d.Spot.Wall].PointAt(d.Spot.At)
	case d.Eave >= 0:
		w := &h.Walls[d.Eave]
		at = w.PointAt(w.Along(d.Point))
	}
	if last := lastSpace(res, r); last >= 0 {
		return last == s.space && (level == s.below(h) || level == s.above(h))
	}
	return level == s.below(h) && spaceOver(h, level, at) == s.space
}

// lastSpace is the space from which a route comes to its drop, -1 if it goes
// through none.
func lastSpace(res *route.Result, r *route.Route) int {
	for _, a := range slices.Backward(r.Arcs) {
		if arc := &res.Graph.Arcs[a]; inFraming(arc.Kind) {
			return arc.Space
		}
	}
	return -1
}

// levelOfCloset is the level that the closet is on, placeOfCloset where it is
// in plan.
func levelOfCloset(job *plan.Job) int {
	if job.Closet.Ceiling {
		return job.House.Rooms[job.Closet.Room].Level
	}
	return job.House.Walls[job.Closet.Spot.Wall].Level
}

func placeOfCloset(job *plan.Job) geom.Point {
	c := &job.Closet
	if c.Ceiling {
		return c.Point
	}
	return job.House.Walls[c.Spot.Wall].PointAt(c.Spot.At)
}

// hasCloset reports whether the closet is in the scope.
func (s scope) hasCloset(job *plan.Job) bool {
	h, level := job.House, levelOfCloset(job)
	if s.space < 0 {
		return level == s.level
	}
	p := placeOfCloset(job)
	return level == s.below(h) && spaceOver(h, level, p) == s.space || level == s.above(h) && h.SpaceUnder(level, p) == s.space
}

// hasReuse reports whether a hole or a conduit that is there is in the scope.
func (s scope) hasReuse(h *plan.House, u *route.Reuse) bool {
	return s.hasHole(h, &u.HolePlace)
}

// areaOf is a space in plan.
func areaOf(s *plan.Space) geom.Area { return geom.Area{Outlines: s.Outlines, Holes: s.Holes} }

// besideSpace is how far around a space walls are shown, and around the closet the
// cable in walls on its way there.
const besideSpace = 2 * measure.Foot

// wallPart is the part of a wall of a level that a plan shows from above or
// from below, false if it shows none: of a space, what is near it.
func (s scope) wallPart(h *plan.House, w *plan.Wall, level int) (geom.Rect, bool) {
	if w.Level != level {
		return geom.Rect{}, false
	}
	if s.space < 0 {
		return w.Frame, true
	}
	r := h.Spaces[s.space].Bounds().Outset(besideSpace).Intersect(w.Frame)
	return r, r.Width() > 0 && r.Height() > 0
}

// roomsLevel is the level whose rooms a plan names.
func (s scope) roomsLevel(h *plan.House) int {
	if s.space < 0 {
		return s.level
	}
	return levelOfSpace(h, s.space)
}

// namedFrom is into how many parts a room may be cut that is named where one of
// them is in a space.
const namedFrom = 4

// roomPart is the part of a room in which a plan may name it, false if the room
// is not on it.
func (s scope) roomPart(h *plan.House, r *plan.Room) (geom.Polygon, bool) {
	if r.Level != s.roomsLevel(h) {
		return nil, false
	}
	if s.space < 0 || len(h.Levels) == 1 {
		return r.Outline, true
	}
	in := geom.Intersect(geom.AreaOf(r.Outline), areaOf(h.Spaces[s.space]))
	if len(in.Outlines) == 0 {
		return nil, false
	}
	part := slices.MaxFunc(in.Outlines, func(a, b geom.Polygon) int { return cmp.Compare(a.SquareMetres(), b.SquareMetres()) })
	return part, namedFrom*part.SquareMetres() >= r.Outline.SquareMetres()
}

// passed reports whether the installer comes to a level: something of the job
// is on it, a cable goes through its walls, or a way into a space that cable
// lies in begins there.
func passed(res *route.Result, level int) bool {
	h, s := res.Job.House, levelScope(level)
	if s.hasCloset(res.Job) {
		return true
	}
	for i := range res.Routes {
		if s.hasDrop(res, &res.Routes[i]) {
			return true
		}
	}
	for i := range res.Holes {
		if s.hasHole(h, &res.Graph.Holes[res.Holes[i].Place]) {
			return true
		}
	}
	for i := range h.Hatches {
		x := &h.Hatches[i]
		if x.Room >= 0 && h.Rooms[x.Room].Level == level && used(res, x.Space) {
			return true
		}
	}
	return slices.ContainsFunc(res.Bundles, func(b route.Bundle) bool { return s.hasBundle(res, &b) })
}

// used reports whether a cable or a hole is in a space.
func used(res *route.Result, space int) bool {
	h, s := res.Job.House, spaceScope(space)
	return slices.ContainsFunc(res.Bundles, func(b route.Bundle) bool { return inFraming(b.Kind) && b.Space == space }) ||
		slices.ContainsFunc(res.Holes, func(x route.Hole) bool { return s.hasHole(h, &res.Graph.Holes[x.Place]) })
}

// spacesInUse are the spaces that have a sheet: those in use, and of a house of
// one level and one space that one in any case.
func spacesInUse(res *route.Result) []int {
	h := res.Job.House
	var out []int
	for i := range h.Spaces {
		if used(res, i) || len(h.Levels) == 1 && len(h.Spaces) == 1 {
			out = append(out, i)
		}
	}
	return out
}
