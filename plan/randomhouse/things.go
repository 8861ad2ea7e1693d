package randomhouse

import (
	"fmt"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// take finds a free stretch of a wall between two places on it, keeps others
// off it by a margin, and returns its start.
func (g *generator) take(wall int, lo, hi, width, margin measure.Length) (measure.Length, bool) {
	w := &g.Model.Walls[wall]
	lo, hi = lo+g.in(endSpace), hi-g.in(endSpace)-width
	for range 30 {
		if hi < lo {
			break
		}
		at := g.within(lo, hi)
		s := stretch{at - margin, at + width + margin}
		free := true
		for _, t := range w.taken {
			free = free && (s.hi <= t.lo || t.hi <= s.lo)
		}
		if free {
			w.taken = append(w.taken, s)
			return at, true
		}
	}
	return 0, false
}

// openings puts a door into every wall between rooms, one into an outer wall,
// and windows.
func (g *generator) openings() {
	m := g.Model
	front := g.IntN(len(m.Outline))
	for i := range m.Walls {
		w := &m.Walls[i]
		if !w.Exterior || i == front {
			width := g.between(28, 34)
			if at, ok := g.take(i, 0, w.Length(), width, g.in(3)); ok {
				m.Openings = append(m.Openings, Opening{
					ID: fmt.Sprintf("d%d", i+1), Wall: i, Kind: pick(&g.dice, "door", "door", "passage"), At: at, Width: width,
					Head: g.between(80, 84), HingeEnd: g.one(2), SwingRight: g.one(2),
				})
			}
		}
	}
	for i := range m.Outline {
		for n := 0; n < 2+int(m.Walls[i].Length()/g.in(200)); n++ {
			width := g.between(24, 72)
			if at, ok := g.take(i, 0, m.Walls[i].Length(), width, g.in(3)); ok && g.one(2) {
				m.Openings = append(m.Openings, Opening{
					ID: fmt.Sprintf("v%d-%d", i+1, n+1), Wall: i, Kind: "window", At: at, Width: width,
					Sill: g.between(24, 44), Head: g.between(80, 84),
				})
			}
		}
	}
}

// onWall is a free place on a wall of a room, for a thing of some width.
func (g *generator) onWall(room int, width measure.Length) (Place, bool) {
	r := &g.Model.Rooms[room]
	for range 20 {
		k := g.IntN(len(r.Walls))
		w := &g.Model.Walls[r.Walls[k]]
		p, _ := w.along(r.Outline[k])
		q, _ := w.along(r.Outline[(k+1)%len(r.Outline)])
		if at, ok := g.take(r.Walls[k], min(p, q), max(p, q), width, 0); ok {
			// Whole quarters, so that the middle is one too.
			return Place{Room: room, Wall: r.Walls[k], At: at + width/2}, true
		}
	}
	return Place{}, false
}

// devices puts power into walls.
func (g *generator) devices() {
	m := g.Model
	for i := range m.Rooms {
		for n := range g.IntN(4) {
			p, ok := g.onWall(i, g.in(4))
			if !ok {
				continue
			}
			d := Device{ID: fmt.Sprintf("p%d-%d", i+1, n+1), Place: p, Kind: "receptacle", Feed: pick(&g.dice, "up", "down", "both")}
			d.Height = g.between(10, 20)
			if g.one(3) {
				d.Kind, d.Height = "switch", g.between(44, 50)
			}
			m.Devices = append(m.Devices, d)
		}
	}
}

// roomAt is a room and a point in it, off its walls by a margin.
func (g *generator) roomAt(margin measure.Length) (room int, p geom.Point) {
	m := g.Model
	for range 100 {
		room = g.IntN(len(m.Rooms))
		p = g.pointIn(m.Rooms[room].Outline.Bounds())
		if d, ok := m.Rooms[room].Outline.Depth(p); ok && d >= margin {
			return room, p
		}
	}
	return room, m.Rooms[room].At
}

// inside finds a point inside each room: off a corner that turns left.
func (g *generator) inside() {
	for i := range g.Model.Rooms {
		r := &g.Model.Rooms[i]
		n := len(r.Outline)
		for k, p := range r.Outline {
			in, out := p.Sub(r.Outline[(k+n-1)%n]), r.Outline[(k+1)%n].Sub(p)
			if turnsLeft(r.Outline, k) {
				by := geom.Point{X: sign(out.X) - sign(in.X), Y: sign(out.Y) - sign(in.Y)}
				r.At = p.Add(geom.Point{X: by.X * g.in(minRoom/2), Y: by.Y * g.in(minRoom/2)})
				break
			}
		}
	}
}
