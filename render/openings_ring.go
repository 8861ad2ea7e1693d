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
	if a.ring {
		return 2 * ringRadius, 2 * ringRadius
	}
	return a.block.Size()
}

// leaderFrom is the leader of a placed label; that of a ring starts at the
// ring and not at the box around it.
func (a *ask) leaderFrom(at label.Placement) []sheet.Point {
	if !a.ring || len(at.Leader) != 2 {
		return at.Leader
	}
	c, to := at.Box.Centre(), at.Leader[1]
	d := to.Sub(c)
	length := math.Hypot(float64(d.X), float64(d.Y))
	if length <= float64(ringRadius) {
		return at.Leader
	}
	part := func(p sheet.Paper) sheet.Paper {
		return sheet.Paper(math.Round(float64(p) * float64(ringRadius) / length))
	}
	return []sheet.Point{c.Add(sheet.Pt(part(d.X), part(d.Y))), to}
}
