package render

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// tread is how deep a step of a stair is drawn, as nobody has taped it (common
// practice, no source).
const tread = 10 * measure.Inch

// drawStairs makes room for the steps of the rooms that are stairs, under
// everything else; drawTreads draws them.
func (d *drawing) drawStairs() {
	h := d.res.Job.House
	for i := range h.Rooms {
		r := &h.Rooms[i]
		if r.Use != "stairs" || r.Level != d.scope.level {
			continue
		}
		if d.ground == nil {
			d.ground = d.sheet.Group("stairs", "stairs", "Stairs")
		}
		d.ground.Group(sheet.ID("stairs", r.ID), "stairs", "Stairs, room "+r.ID)
	}
}

// drawTreads draws the steps once all words are on the sheet, with gaps for
// them: which way the stairs go, and how many steps there are, is not known.
func (d *drawing) drawTreads() {
	if d.ground == nil || d.ground.ID != "stairs" {
		return
	}
	var gaps []sheet.Box
	for item := range d.sheet.All() {
		if t, ok := item.(sheet.Text); ok {
			gaps = append(gaps, font.Box(t).Inset(-sheet.MM/2))
		}
	}
	h := d.res.Job.House
	for i := range h.Rooms {
		r := &h.Rooms[i]
		for _, item := range d.ground.Items {
			if g, ok := item.(*sheet.Group); ok && g.ID == sheet.ID("stairs", r.ID) {
				drawTreads(g, r, d.view, gaps)
			}
		}
	}
	if d.tile != nil {
		d.tile.cutGroup(d.ground)
	}
}

// drawTreads draws the steps of a room across its longer side, outside of gaps.
func drawTreads(g *sheet.Group, r *plan.Room, v sheet.View, gaps []sheet.Box) {
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
			for _, part := range besides(v.Point(p), v.Point(q), gaps) {
				g.Line(sheet.PenStairs, part[0], part[1])
			}
		}
	}
}
