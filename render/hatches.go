package render

import (
	"topplate/plan"
	"topplate/render/font"
	"topplate/render/sheet"
)

// hasHatch reports whether a way in is in the scope: on a level, what begins in
// its rooms.
func (s scope) hasHatch(h *plan.House, x *plan.Hatch) bool {
	switch {
	case s.space >= 0:
		return x.Space == s.space
	case x.Room >= 0:
		return h.Rooms[x.Room].Level == s.level
	}
	return false
}

// drawHatches draws the ways in: an opening with its diagonals.
func (d *drawing) drawHatches() {
	g := d.sheet.Group("hatches", "hatches", "Attic hatches")
	for i := range d.res.Job.House.Hatches {
		h := &d.res.Job.House.Hatches[i]
		if !d.scope.hasHatch(d.res.Job.House, h) {
			continue
		}
		b := d.view.Box(h.Area)
		g.Rect(sheet.PenDevice, b)
		g.Line(sheet.PenMedium, b.Min, b.Max)
		g.Line(sheet.PenMedium, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		d.ask(ask{
			id: "hatch-" + h.ID, at: b.Centre(), symbol: b, leader: true, priority: 10,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: d.hatchWords(h)}},
		})
	}
}

// hatchWords are what a hatch is called: on a plan of a level, by the space
// that it leads to.
func (d *drawing) hatchWords(x *plan.Hatch) string {
	h := d.res.Job.House
	switch {
	case d.plainHatches:
		return "hatch"
	case d.scope.space < 0 && len(h.Spaces) > 1:
		return "hatch to " + spaceWords(h, x.Space)
	case x.Room < 0:
		return "hatch, from outside"
	}
	return "hatch"
}

// drawWaysOut draws, on the plan of a level of a house with more spaces than
// one attic, the ways into them.
func (d *drawing) drawWaysOut() {
	if len(d.res.Job.House.Spaces) > 1 {
		d.drawHatches()
	}
}
