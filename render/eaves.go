package render

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// roofOn is the roof that comes down on a wall at a place along it, else the
// main roof.
func roofOn(h *plan.House, w *plan.Wall, along measure.Length) *plan.Roof {
	if i := h.RoofOn(w, along); i >= 0 {
		return h.Roofs[i]
	}
	return h.Roof
}

// overhangs is the widest overhang of the roofs that belong to what is drawn.
func (d *drawing) overhangs() measure.Length {
	var widest measure.Length
	for _, r := range d.roofs() {
		widest = max(widest, r.Overhang)
	}
	return widest
}

// roofBounds is what a house takes in plan on all levels, its eaves counted.
func roofBounds(h *plan.House) geom.Rect {
	var all geom.Rect
	for i, r := range h.Roofs {
		b := r.Outline.Bounds().Outset(r.Overhang)
		if i == 0 {
			all = b
		}
		all = unionOf(all, b)
	}
	if len(h.Levels) > 1 {
		for i := range h.Levels {
			if l := &h.Levels[i]; len(l.OutsideOf) > 0 {
				all = unionOf(all, l.OutsideOf.Bounds())
			}
		}
	}
	return all
}

func unionOf(a, b geom.Rect) geom.Rect {
	return geom.Rect{
		Min: geom.Point{X: min(a.Min.X, b.Min.X), Y: min(a.Min.Y, b.Min.Y)},
		Max: geom.Point{X: max(a.Max.X, b.Max.X), Y: max(a.Max.Y, b.Max.Y)},
	}
}

// drawEaves draws where the soffit opens and where baffles close the rafter
// bays, under the roof over the space.
func (d *drawing) drawEaves() {
	h, s := d.res.Job.House, d.space()
	if s.Roof < 0 {
		return
	}
	g := d.sheet.Group("eaves", "eaves", "Soffit openings and eave baffles")
	strip := func(kind, id string, w *plan.Wall, from, to measure.Length, out sheet.Paper, pen sheet.Pen) {
		if roofOn(h, w, from) != h.Roofs[s.Roof] {
			return
		}
		side := w.Out
		dir := turnOfHeading(w.Faces(side))
		a, b := d.view.Point(w.FacePoint(from, side)), d.view.Point(w.FacePoint(to, side))
		box := sheet.Bounds(sheet.Polar(a, out, dir), sheet.Polar(b, out+1500*sheet.Micrometre, dir))
		g.Rect(pen, box)
		d.ask(ask{
			id: kind + "-" + id, at: box.Centre(), symbol: box, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: join2(kind, id)}},
		})
	}
	for i := range h.Soffits {
		o := &h.Soffits[i]
		w := &h.Walls[o.Wall]
		strip("soffit opening", o.ID, w, o.Start, o.End, d.view.Length(roofOn(h, w, o.Start).Overhang)/2, sheet.PenMedium)
	}
	for i := range h.Baffles {
		o := &h.Baffles[i]
		strip("baffle", o.ID, &h.Walls[o.Wall], o.Start, o.End, 300, sheet.PenSolid)
	}
}
