package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// Outside, cable runs along the walls under the eave, where the job allows it:
// from a soffit spot to another hole in the soffit, or down to a hole through an
// outer wall into the bay behind a box.

// underEave is how far below the soffit, or the ceiling where there is none, cable
// runs along a wall (common practice, no source).
const underEave = 3 * measure.Inch

// outside adds the ways along the outer walls, level by level, and those inside
// soffits that open.
func (b *builder) outside() {
	b.inSoffits()
	if !b.job.Allow.Outside {
		return
	}
	for level := range b.house.Levels {
		if ring := b.house.Levels[level].OutsideOf; len(ring) > 0 {
			b.outsideOf(level, ring)
		}
	}
}

func (b *builder) outsideOf(level int, ring geom.Polygon) {
	r := &rail{z: b.railUnderEave(level), rings: []geom.Polygon{ring}}
	lvl := &b.house.Levels[level]
	b.jambs(r, level, r.z-lvl.Floor)
	for d := range b.job.Drops {
		if drop := &b.job.Drops[d]; drop.Kind == plan.SoffitSpot && b.house.Walls[drop.Eave].Level == level {
			b.fromSoffits(r, drop.Eave)
		}
	}
	for w := range b.house.Walls {
		if wall := &b.house.Walls[w]; wall.Exterior && wall.Level == level {
			b.entries(r, w)
		}
	}
	b.wallEnds(r, level)
	r.eachStretch(func(p, q geom.Point) {
		if _, o := b.openingOn(level, p, q, r.z-lvl.Floor); o != nil {
			return
		}
		l := geom.Dist(p, q)
		w := b.outerWall(level, p, q)
		b.add(Arc{
			Kind: OutsideArc, From: b.station(r, p), To: b.station(r, q), Heading: headingTo(p, q), Length: l, Outer: w, Hole: -1,
			Charges: b.alongOuter(w, l),
		})
	})
}

// wallEnds makes the ends of the outer walls of a level stations, since walls in line
// may be clad differently.
func (b *builder) wallEnds(r *rail, level int) {
	for i := range b.house.Walls {
		w := &b.house.Walls[i]
		if w.Level != level || !w.Exterior {
			continue
		}
		for _, at := range []measure.Length{0, w.Length()} {
			if p := w.FacePoint(at, w.Out); r.has(p) {
				b.station(r, p)
			}
		}
	}
}

// outerWall is the outer wall of a level on whose face the stretch from p to q lies, nil
// if there is none.
func (b *builder) outerWall(level int, p, q geom.Point) *plan.Wall {
	m := mid(geom.Rect{Min: p, Max: q}.Canon())
	for i := range b.house.Walls {
		if w := &b.house.Walls[i]; w.Level == level && w.Exterior && w.AlongY() == (p.X == q.X) && w.Body.Contains(m) {
			return w
		}
	}
	return nil
}

// alongOuter is what cable along the outside of a wall costs.
func (b *builder) alongOuter(w *plan.Wall, l measure.Length) []Charge {
	fix := price.OutsideRun
	if w != nil && w.HardToFix() {
		fix = price.OutsideAnchors
	}
	return append(b.cable(l), b.onceBy(fix, l))
}

// inSoffits adds the ways from hole to hole inside a stretch of soffit that opens
// without cutting: the strip is taken down, and cable laid in the hollow.
func (b *builder) inSoffits() {
	for i := range b.house.Soffits {
		s := &b.house.Soffits[i]
		w := &b.house.Walls[s.Wall]
		var on []int
		for _, n := range b.soffitFaces(s.Wall) {
			if at := w.Along(flat(b.nodes[n].At)); s.Start <= at && at <= s.End {
				on = append(on, n)
			}
		}
		along := func(n int) measure.Length { return w.Along(flat(b.nodes[n].At)) }
		slices.SortFunc(on, func(m, n int) int { return int(sign(along(m) - along(n))) })
		for k := 1; k < len(on); k++ {
			p, q := b.nodes[on[k-1]].At, b.nodes[on[k]].At
			if l := dist(p.X, q.X) + dist(p.Y, q.Y) + dist(p.Z, q.Z); l > 0 {
				b.add(Arc{
					Kind: InSoffitArc, From: on[k-1], To: on[k], Heading: headingTo(flat(p), flat(q)), Length: l, Hole: -1,
					Charges: append(b.cable(l), b.onceBy(price.OutsideRun, l)),
				})
			}
		}
	}
}

// railUnderEave is the height at which cable runs along the outer walls of a
// level.
func (b *builder) railUnderEave(level int) measure.Length {
	lvl := &b.house.Levels[level]
	z := lvl.Floor + lvl.Ceiling
	for w := range b.house.Walls {
		wall := &b.house.Walls[w]
		if wall.Level != level || !wall.Exterior || wall.Gable {
			continue
		}
		at := wall.Length() / 2
		if c := b.over(level, wall.PointAt(at)); c != nil && c.space.Roof >= 0 && c.carries(wall) {
			z = min(z, c.soffitHeight(wall, at))
		}
	}
	return z - underEave
}

// fromSoffits joins the soffit holes along a wall to the rail on it, with a loop
// for the water to drip from. A cable that ends at a camera under its own hole
// never comes here, and hangs in no loop: the camera covers it.
func (b *builder) fromSoffits(r *rail, wall int) {
	w := &b.house.Walls[wall]
	loop := b.book.Length(rule.DripLoop)
	for _, n := range b.soffitFaces(wall) {
		p := b.nodes[n].At
		q := w.FacePoint(w.Along(flat(p)), w.Out)
		if !r.has(q) {
			continue
		}
		l := dist(p.Z, r.z) + geom.Dist(flat(p), q) + loop
		b.add(Arc{
			Kind: OutsideArc, From: n, To: b.station(r, q), Heading: headingTo(flat(p), q), Length: l, Loop: loop, Outer: w, Hole: -1,
			Charges: b.alongOuter(w, l),
		})
	}
}

// soffitFaces are the nodes under the soffit along a wall.
func (b *builder) soffitFaces(wall int) []int {
	var out []int
	for n := range b.nodes {
		if b.nodes[n].Kind == SurfaceNode && b.nodes[n].Wall == wall {
			out = append(out, n)
		}
	}
	return out
}

// entries adds the holes through an outer wall behind the boxes and the panel
// that stand in its bays, with a loop outside for the water to drip from, and
// the way up to the rail.
func (b *builder) entries(r *rail, wall int) {
	w := &b.house.Walls[wall]
	loop := b.book.Length(rule.DripLoop)
	for n := range b.nodes {
		box := b.nodes[n]
		if box.Kind != BoxNode || box.Wall != wall {
			continue
		}
		along := w.Along(flat(box.At))
		p := w.FacePoint(along, w.Out)
		if !r.has(p) || box.At.Z >= r.z || b.inOpening(w, along, box.At.Z, r.z) {
			continue
		}
		out := b.node(RailNode, geom.Point3{X: p.X, Y: p.Y, Z: box.At.Z}, -1, noOwner)
		b.throughWall(wall, along, b.boxWidth(1), n, out)
		l := r.z - box.At.Z + loop
		b.add(Arc{
			Kind: OutsideArc, From: out, To: b.station(r, p), Heading: up, Length: l, Loop: loop, Outer: w, Hole: -1,
			Charges: b.alongOuter(w, l),
		})
	}
}

// inOpening reports whether cable up the outside of a wall would pass a window
// or a door.
func (b *builder) inOpening(w *plan.Wall, along, lo, hi measure.Length) bool {
	floor := b.house.Levels[w.Level].Floor
	return slices.ContainsFunc(w.Openings, func(o plan.Opening) bool {
		return o.Start <= along && along <= o.End && floor+o.Sill < hi && lo < floor+o.Head
	})
}

// DripLoops counts the drip loops of a route: the places where its cables come to a
// hole, or to a device, from outside along the wall.
func (g *Graph) DripLoops(r *Route) int {
	n := 0
	for _, a := range r.Arcs {
		if g.Arcs[a].Loop > 0 {
			n++
		}
	}
	return n
}

// outdoors reports cable that runs outside and is not made for it.
func (c *collector) outdoors(r *Route) {
	d := &c.r.Job.Drops[r.Drop]
	var l measure.Length
	for i := range r.Legs {
		if r.Legs[i].Kind == OutsideArc {
			l += r.Legs[i].Length
		}
	}
	if l == 0 || d.Cable.Sunlight {
		return
	}
	c.add(rule.OutsideCable, Finding{
		Pos: d.Pos, Where: d.Tag,
		Found:  fmt.Sprintf("%s of it runs outside along the wall, and %s is not made for sunlight and weather", c.text(l), d.Cable.ID),
		Change: "a cable for out of doors, or outside = false under [allow]",
	})
}
