package render

import (
	"math"

	"topplate/render/label"
	"topplate/render/sheet"
)

// ringRadius is that of the ring around the number of an opening: two figures
// of a tag find room in it.
const ringRadius = 3 * sheet.MM

// drawRing draws a number in its ring.
func drawRing(g *sheet.Group, c sheet.Point, number string) {
	g.Circle(sheet.PenDevice, c, ringRadius)
	g.Add(sheet.Text{Lettering: sheet.LetterTag, At: c, Align: sheet.Middle, Level: sheet.OnHalf, Words: number})
}

// size is what the label takes on the paper.
func (a *ask) size() (width, height sheet.Paper) {
	if r := a.radius(); r > 0 {
		return 2 * r, 2 * r
	}
	return a.block.Size()
}

// radius is that of the ring that is drawn around the label, if there is one.
func (a *ask) radius() sheet.Paper {
	switch {
	case a.keyed:
		return keyRadius
	case a.ring:
		return ringRadius
	}
	return 0
}

// leaderFrom is the leader of a placed label; that of a ring starts at the
// ring and not at the box around it.
func (a *ask) leaderFrom(at label.Placement) []sheet.Point {
	r := a.radius()
	if r == 0 || len(at.Leader) != 2 {
		return at.Leader
	}
	c, to := at.Box.Centre(), at.Leader[1]
	d := to.Sub(c)
	length := math.Hypot(float64(d.X), float64(d.Y))
	if length <= float64(r) {
		return at.Leader
	}
	part := func(p sheet.Paper) sheet.Paper {
		return sheet.Paper(math.Round(float64(p) * float64(r) / length))
	}
	return []sheet.Point{c.Add(sheet.Pt(part(d.X), part(d.Y))), to}
}
