package randomhouse

import (
	"fmt"
	"slices"

	"topplate/plan/geom"
)

// job chooses the closet and the drops.
func (g *generator) job(drops int) {
	m := g.Model
	g.closet()
	if drops == 0 {
		drops = 3 + g.IntN(6)
	}
	for n := range drops {
		d := Drop{Tag: fmt.Sprintf("T%d", n+1), Cable: "cat6", Count: pick(&g.dice, 1, 1, 2, 2, 3, 4, 6), Later: g.one(8)}
		d.Shift = g.in(pick(&g.dice, 0, 8, 16, 24))
		switch g.IntN(5) {
		case 0:
			g.ceilingPoint(&d)
		case 1:
			g.soffitSpot(&d)
		default:
			g.wallPlate(&d)
		}
		m.Drops = append(m.Drops, d)
	}
	m.Patching = g.one(5)
	m.Rods = g.in(12 * (12 + g.IntN(16)))
}

func (g *generator) closet() {
	m := g.Model
	if !g.one(4) {
		for range 20 {
			if p, ok := g.onWall(g.IntN(len(m.Rooms)), g.in(16)); ok {
				p.Height = g.between(48, 66)
				m.Closet = p
				return
			}
		}
	}
	m.CeilingCloset = true
	m.Closet.Room, m.Closet.Point = g.offHatch()
}

// offHatch is a place in a ceiling beside the hatch and off other drops.
func (g *generator) offHatch() (room int, p geom.Point) {
	m := g.Model
	for range 100 {
		room, p = g.roomAt(g.in(10))
		free := !m.Hatch.area().Outset(g.in(6)).Contains(p) && (!m.CeilingCloset || geom.Dist(m.Closet.Point, p) > g.in(10))
		for i := range m.Drops {
			free = free && (m.Drops[i].Kind != "ceiling point" || geom.Dist(m.Drops[i].Point, p) > g.in(10))
		}
		if free {
			break
		}
	}
	return room, p
}

func (g *generator) ceilingPoint(d *Drop) {
	d.Kind = "ceiling point"
	d.Room, d.Point = g.offHatch()
}

func (g *generator) wallPlate(d *Drop) {
	m := g.Model
	if g.one(12) && g.underWindow(d) {
		return
	}
	for range 20 {
		if p, ok := g.onWall(g.IntN(len(m.Rooms)), g.in(5)); ok {
			d.Kind, d.Place = "wall plate", p
			d.Height = g.between(10, 60)
			return
		}
	}
	g.ceilingPoint(d)
}

// underWindow puts a wall plate under the middle of a window, where a bay has
// no way up, if no other is there.
func (g *generator) underWindow(d *Drop) bool {
	m := g.Model
	o := &m.Openings[g.IntN(len(m.Openings))]
	at := o.At + o.Width/2
	taken := slices.ContainsFunc(m.Drops, func(e Drop) bool { return e.Kind == "wall plate" && e.Wall == o.Wall && e.At == at })
	if o.Kind != "window" || taken {
		return false
	}
	for i := range m.Rooms {
		p := Place{Room: i, Wall: o.Wall, At: at, Height: g.in(12)}
		if m.sideAt(p) >= 0 {
			d.Kind, d.Place = "wall plate", p
			return true
		}
	}
	return false
}

func (g *generator) soffitSpot(d *Drop) {
	m := g.Model
	d.Kind, d.Cable, d.Count = "soffit spot", "cat6-outdoor", 1
	for range 20 {
		d.Wall = g.IntN(len(m.Outline))
		d.At = g.within(0, m.Walls[d.Wall].Length())
		d.Out = g.within(g.in(4), m.Roof.Overhang-g.in(4))
		free := true
		for i := range m.Drops {
			e := &m.Drops[i]
			free = free && (e.Kind != d.Kind || e.Wall != d.Wall || max(e.At-d.At, d.At-e.At) > g.in(40))
		}
		if free {
			return
		}
	}
	d.Kind, d.Cable = "", "cat6"
	g.ceilingPoint(d)
}
