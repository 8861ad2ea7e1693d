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

// drawChase draws a hollow that goes on above and below, one half of it shaded.
func drawChase(g *sheet.Group, b sheet.Box) {
	g.Rect(sheet.PenMask, b)
	g.Polygon(sheet.PenKey, []sheet.Point{b.Min, b.Max, sheet.Pt(b.Min.X, b.Max.Y)})
	g.Polyline(sheet.PenThick, append(b.Corners(), b.Min)...)
}

// chaseSymbol explains it.
var chaseSymbol = legendSymbol{"chase through this level", func(g *sheet.Group, b sheet.Box) {
	drawChase(g, sheet.BoxAround(b.Centre(), b.Height()*8/10, b.Height()*8/10))
}}

// drawChases draws the hollows that go up through the storeys.
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
		drawChase(cg, b)
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

// chaseSymbols explain the chases of a space.
func (d *drawing) chaseSymbols() []legendSymbol {
	h := d.res.Job.House
	for i := range h.Chases {
		if d.scope.hasChase(h, &h.Chases[i]) {
			return []legendSymbol{chaseSymbol}
		}
	}
	return nil
}
