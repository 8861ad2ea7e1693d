package render

import (
	"topplate/plan"
	"topplate/render/font"
	"topplate/render/sheet"
)

// hasChase reports whether a chase goes through what is drawn: a level between
// its lowest and its highest, or a space that it passes or opens into.
func (s scope) hasChase(h *plan.House, c *plan.Chase) bool {
	on := func(level int) bool {
		return level >= 0 && h.Levels[c.From].Floor <= h.Levels[level].Floor && h.Levels[level].Floor <= h.Levels[c.To].Floor
	}
	if s.space < 0 {
		return on(s.level)
	}
	space := h.Spaces[s.space]
	return space.Contains(c.Area.Min) && (on(space.Below) || c.Down && space.Above == c.From)
}

// drawChases draws the hollows that go up through the storeys: crossed, as what
// goes on above and below is.
func (d *drawing) drawChases() {
	h := d.res.Job.House
	var g *sheet.Group
	for i := range h.Chases {
		c := &h.Chases[i]
		if !d.scope.hasChase(h, c) {
			continue
		}
		if g == nil {
			g = d.sheet.Group("chases", "chases", "Chases")
		}
		b := d.view.Box(c.Area)
		cg := g.Group(sheet.ID("chase", c.ID), "chase", "Chase "+c.ID)
		cg.Rect(sheet.PenMask, b)
		cg.Polyline(sheet.PenChase, append(b.Corners(), b.Min)...)
		cg.Line(sheet.PenThin, b.Min, b.Max)
		cg.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		words := join2("chase", c.ID)
		if c.Hot {
			words += ", hot"
		}
		d.ask(ask{
			id: "chase-" + c.ID, at: b.Centre(), symbol: b, leader: true, priority: 10,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: words}},
		})
	}
}
