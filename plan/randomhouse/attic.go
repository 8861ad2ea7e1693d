package randomhouse

import (
	"fmt"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// attic chooses the joists, the roof, the hatch and what is in the way.
func (g *generator) attic() {
	m := g.Model
	a := &m.Attic
	a.AlongY, a.Truss = g.one(2), g.one(2)
	a.Spacing = g.in(pick(&g.dice, 16, 24))
	a.First = g.between(0, 60)
	a.Size = pick(&g.dice, "2x6", "2x8")
	if a.Truss {
		a.Size = "2x4"
	}
	a.Insulation = g.in(pick(&g.dice, 0, 6, 12))
	g.roof()
	g.hatch()
	g.obstacles()
	g.eaves()
	for range g.IntN(3) {
		m.Power = append(m.Power, g.powerRun())
	}
	for range g.IntN(3) {
		_, p := g.roomAt(g.in(12))
		m.Marks = append(m.Marks, p)
	}
	if g.one(3) {
		p := m.Hatch.Centre
		half := geom.Point{X: g.between(24, 48), Y: g.between(24, 48)}
		a.Decking = append(a.Decking, geom.Rect{Min: p.Sub(half), Max: p.Add(half)})
	}
}

func (g *generator) roof() {
	m := g.Model
	r := &m.Roof
	r.Rise = pick(&g.dice, 5, 6, 8, 10)
	r.Overhang = g.in(pick(&g.dice, 12, 16, 24))
	r.Truss = m.Attic.Truss
	r.Spacing = g.in(pick(&g.dice, 16, 24))
	r.First = geom.Point{X: g.between(0, 60), Y: g.between(0, 60)}
	if g.one(2) {
		return
	}
	// The ends of wings: sides between two corners that turn left, one way.
	alongY := g.one(2)
	for i, a := range m.Outline {
		if b := m.Outline[(i+1)%len(m.Outline)]; (a.X == b.X) == alongY && turnsLeft(m.Outline, i) && turnsLeft(m.Outline, (i+1)%len(m.Outline)) && g.IntN(4) > 0 {
			r.Gables = append(r.Gables, i)
		}
	}
}

// turnsLeft reports whether a counter-clockwise outline turns left at corner i.
func turnsLeft(p geom.Polygon, i int) bool {
	n := len(p)
	in, out := p[i].Sub(p[(i+n-1)%n]), p[(i+1)%n].Sub(p[i])
	return sign(in.X)*sign(out.Y)-sign(in.Y)*sign(out.X) > 0
}

// hatch puts the hatch where the roof is high, the deepest of some places.
func (g *generator) hatch() {
	m := g.Model
	h := &m.Hatch
	h.Width, h.Height = g.between(22, 24), g.between(30, 32)
	if g.one(2) {
		h.Width, h.Height = h.Height, h.Width
	}
	best := measure.Length(-1)
	for range 60 {
		room, p := g.roomAt(g.in(22))
		if d, ok := m.Outline.Depth(p); ok && d > best {
			best, h.Room, h.Centre = d, room, p
		}
	}
}

// area is the hatch's opening.
func (h *Hatch) area() geom.Rect {
	half := geom.Point{X: h.Width / 2, Y: h.Height / 2}
	return geom.Rect{Min: h.Centre.Sub(half), Max: h.Centre.Add(half)}
}

func (g *generator) obstacles() {
	m := g.Model
	for n := range g.IntN(4) {
		o := Obstacle{ID: fmt.Sprintf("x%d", n+1), Kind: pick(&g.dice, "duct", "chimney", "flue", "tank", "light", "unit")}
		size := geom.Point{X: g.between(6, 30), Y: g.between(6, 30)}
		o.Top = g.between(8, 36)
		switch o.Kind {
		case "duct":
			size.X = g.between(40, 120)
			o.Bottom = g.in(pick(&g.dice, 0, 0, 12))
			o.Top += o.Bottom
			if g.one(2) {
				size.X, size.Y = size.Y, size.X
			}
		case "chimney", "flue":
			o.Top = g.in(200)
		}
		o.Area.Min = g.pointIn(m.Outline.Bounds())
		o.Area.Max = o.Area.Min.Add(size)
		mid := geom.Point{X: o.Area.Min.X + size.X/2, Y: o.Area.Min.Y + size.Y/2}
		d, ok := m.Outline.Depth(mid)
		if ok && d > g.in(18) && o.Area.Outset(g.in(12)).Intersect(m.Hatch.area()).Empty() {
			m.Obstacles = append(m.Obstacles, o)
		}
	}
}

func (g *generator) eaves() {
	m := g.Model
	for i := range m.Outline {
		w := &m.Walls[i]
		if width := g.between(24, 80); g.one(5) {
			m.Soffits = append(m.Soffits, Stretch{fmt.Sprintf("s%d", i+1), i, g.within(0, w.Length()-width), width})
		}
		if width := g.between(24, 80); g.one(5) {
			m.Baffles = append(m.Baffles, Stretch{fmt.Sprintf("b%d", i+1), i, g.within(0, w.Length()-width), width})
		}
	}
}

// powerRun is a path between points of the house; two in a row may lie
// anywhere, so that the cable runs at any angle.
func (g *generator) powerRun() []geom.Point {
	_, p := g.roomAt(g.in(6))
	_, q := g.roomAt(g.in(6))
	corner := geom.Point{X: q.X, Y: p.Y}
	if d, ok := g.Model.Outline.Depth(corner); g.one(3) || !ok || d < g.in(6) || corner == p || corner == q {
		return []geom.Point{p, q}
	}
	return []geom.Point{p, corner, q}
}
