package route

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// holeSize is the diameter a hole in the plate of wall w is laid out for: the
// largest bit of the user's that the rules for plates allow.
func (b *builder) holeSize(w *plan.Wall) measure.Length {
	most := min(w.StudDepth*measure.Length(b.book.Value(rule.PlateBore))/100,
		w.StudDepth-2*b.book.Length(rule.PlateEdge))
	var best measure.Length
	for _, bit := range b.job.Tools.Bits {
		if bit.Diameter <= most {
			best = max(best, bit.Diameter)
		}
	}
	return best
}

// plateHoles finds where the plate over a bay may be bored.
func (b *builder) plateHoles(key bayKey) (holes []shaftHole, stop Block) {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	free, clear, stop := b.stretches(key, false)
	for _, s := range clear {
		holes = append(holes, b.shaftHole(key, false, s, nil))
	}
	if len(holes) == 0 && b.relax {
		for _, s := range free {
			holes = append(holes, b.shaftHole(key, false, s, b.feedBlocks(w, bay, false)))
		}
	}
	return holes, stop
}

// stretches finds where the middle of a hole in a plate of a bay may be: free of
// the studs and the framing beyond the plate and off the holes that are there, and
// clear of power in the bay, too. If there are none stop says why.
func (b *builder) stretches(key bayKey, bottom bool) (free, clear spans, stop Block) {
	if bottom {
		free, clear, stop = b.soleStretches(key)
	} else {
		free, clear, stop = b.topStretches(key)
	}
	if there := b.besideHoles(key.wall, bottom); len(free) > 0 && len(there) > 0 {
		free, clear = free.without(there...), clear.without(there...)
		stop.Found += "; there are holes in it already"
	}
	return free, clear, stop
}

// besideHoles are the stretches of a wall in which the middle of no hole may be,
// since it would run into one that is there.
func (b *builder) besideHoles(wall int, bottom bool) (out []span) {
	half := b.holeSize(&b.house.Walls[wall])/2 + b.book.Length(rule.HoleToMember)
	for _, f := range b.holesFixed(wall, bottom, plan.FixedThere) {
		out = append(out, around(f.At, f.Diameter/2+half))
	}
	return out
}

// topStretches are those of the plate over a bay: joists and rafters stand on it.
func (b *builder) topStretches(key bayKey) (free, clear spans, stop Block) {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	p := w.PointAt(span{bay.Start, bay.End}.mid())
	stop = Block{Rule: rule.HoleToMemberRule, Pos: w.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: b.plateTop(key.wall)}}
	if bay.Window >= 0 {
		o := &w.Openings[bay.Window]
		stop.Rule, stop.Pos, stop.Found = rule.Window, o.Pos, fmt.Sprintf("%s closes the bay", o.ID)
		return nil, nil, stop
	}
	c := b.overBay(key)
	if c == nil {
		stop.Rule, stop.Found = rule.NoHiddenWay, fmt.Sprintf("the sketch has no attic or floor over wall %s there", w.ID)
		return nil, nil, stop
	}
	if b.narrow(bay) {
		stop.Found = b.narrowText(w, bay)
		return nil, nil, stop
	}
	half := b.holeSize(w)/2 + b.book.Length(rule.HoleToMember)
	whole := span{bay.Start, bay.End}.inset(half)
	cuts, over := c.onPlate(w, span{bay.Start, bay.End}, half)
	if over {
		stop.Pos, stop.Found = c.space.Pos, fmt.Sprintf("a joist lies along the plate of wall %s", w.ID)
		return nil, nil, stop
	}
	stop.Found = fmt.Sprintf("studs, joist ends and rafters leave no room for a hole in the plate of wall %s over this bay", w.ID)
	free = spans{whole}.nonEmpty().without(cuts...)
	return free, free.without(b.feeds(w, bay, false, b.holeSize(w)/2)...), stop
}

// narrow reports whether a bay is too narrow for cable.
func (b *builder) narrow(bay *Bay) bool { return bay.End-bay.Start < b.book.Length(rule.BayWidth) }

func (b *builder) narrowText(w *plan.Wall, bay *Bay) string {
	return fmt.Sprintf("the bay in wall %s is %s wide; %s is needed", w.ID, b.text(bay.End-bay.Start), b.text(b.book.Length(rule.BayWidth)))
}

// shaftHole is a place in a plate of a bay, in the middle of a stretch.
func (b *builder) shaftHole(key bayKey, bottom bool, s span, blocks []Block) shaftHole {
	along := s.mid()
	return shaftHole{
		cavity: b.beyondPlate(key, bottom), sole: bottom, free: s, along: along,
		at: b.house.Walls[key.wall].PointAt(along), blocks: blocks,
	}
}

// beyondPlate is the cavity over a bay, or the one under it, nil if there is none.
func (b *builder) beyondPlate(key bayKey, bottom bool) *cavity {
	if bottom {
		return b.underBay(key)
	}
	return b.overBay(key)
}

// plateTop is the height of the top of a wall's plates.
func (b *builder) plateTop(wall int) measure.Length {
	return b.floorOf(wall) + b.house.Levels[b.house.Walls[wall].Level].PlateTop
}

// overBay is the cavity over a bay, nil if there is none.
func (b *builder) overBay(key bayKey) *cavity {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	return b.over(w.Level, w.PointAt(span{bay.Start, bay.End}.mid()))
}

// onPlate returns the joists and rafters that stand on the plate of w over
// the bay, widened by half; over is true if one lies along the whole plate.
func (b *cavity) onPlate(w *plan.Wall, bay span, half measure.Length) (cuts []span, over bool) {
	u, _ := b.ax.uv(w.PointAt(bay.lo))
	if w.AlongY() == b.ax.alongY {
		for _, j := range b.js.bodies(span{u, u}) {
			if j.lo-half < u && u < j.hi+half {
				return nil, true
			}
		}
	} else {
		cuts = append(cuts, b.alongWall(w, bay, b.js.bodies, half)...)
	}
	if w.Exterior && b.carries(w) {
		cuts = append(cuts, b.alongWall(w, bay, b.rafterBodies(w), half)...)
	}
	return cuts, false
}

// carries reports whether the rafters over the cavity stand on a wall.
func (b *cavity) carries(w *plan.Wall) bool {
	return b.space.Roof >= 0 && b.roof().Level == w.Level
}

// alongWall turns members laid out on an axis of the house into spans along
// the wall.
func (b *builder) alongWall(w *plan.Wall, s span, bodies func(span) []span, half measure.Length) []span {
	lo, hi := w.PointAt(s.lo), w.PointAt(s.hi)
	on := func(p geom.Point) measure.Length {
		if w.AlongY() {
			return p.Y
		}
		return p.X
	}
	var out []span
	for _, m := range bodies(ordered(on(lo), on(hi))) {
		a, c := w.Along(pointOn(w, m.lo)), w.Along(pointOn(w, m.hi))
		m := ordered(a, c)
		out = append(out, span{m.lo - half, m.hi + half})
	}
	return out
}

// pointOn is the point of the wall's line at coordinate x of the axis the wall
// runs along.
func pointOn(w *plan.Wall, x measure.Length) geom.Point {
	p := w.PointAt(0)
	if w.AlongY() {
		return geom.Point{X: p.X, Y: x}
	}
	return geom.Point{X: x, Y: p.Y}
}

// rafterBodies lays out the rafters that cross the wall's plate; under a gable
// none do.
func (b *cavity) rafterBodies(w *plan.Wall) func(span) []span {
	r := b.roof()
	first := r.FirstX
	if w.AlongY() {
		first = r.FirstY
	}
	layout := joists{first: first, spacing: r.Spacing, width: r.Width, stand: everywhere}
	return func(s span) []span {
		if w.Gable {
			return nil
		}
		return layout.bodies(s)
	}
}
