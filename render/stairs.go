package render

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
)

// tread is how deep a step of a stair is drawn, as nobody has taped it (common
// practice, no source).
const tread = 10 * measure.Inch

// drawStairs draws steps across the rooms that are stairs, under everything
// else: which way they go, and how many there are, is not known.
func (d *drawing) drawStairs() {
	h := d.res.Job.House
	var g *sheet.Group
	for i := range h.Rooms {
		r := &h.Rooms[i]
		if r.Use != "stairs" || r.Level != d.scope.level {
			continue
		}
		if g == nil {
			g = d.sheet.Group("stairs", "stairs", "Stairs")
			d.ground = g
		}
		drawTreads(g.Group(sheet.ID("stairs", r.ID), "stairs", "Stairs, room "+r.ID), r, d.view)
	}
}

// drawTreads draws the steps of a room across its longer side.
func drawTreads(g *sheet.Group, r *plan.Room, v sheet.View) {
	b := r.Outline.Bounds()
	along := b.Height() > b.Width()
	first, last := b.Min.X, b.Max.X
	if along {
		first, last = b.Min.Y, b.Max.Y
	}
	for c := first + tread; c < last; c += tread {
		for _, s := range stretches(append([]geom.Polygon{r.Outline}, r.Holes...), c, !along) {
			p, q := geom.Point{X: c, Y: s[0]}, geom.Point{X: c, Y: s[1]}
			if along {
				p, q = geom.Point{X: s[0], Y: c}, geom.Point{X: s[1], Y: c}
			}
			g.Line(sheet.PenStairs, v.Point(p), v.Point(q))
		}
	}
}
