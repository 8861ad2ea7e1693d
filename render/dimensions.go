package render

import (
	"cmp"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/dimension"
	"topplate/render/sheet"
)

// Distances of dimension lines from the edge of the roof (ISO 129-1 leaves
// them free; common practice).
const (
	firstChain  = 7 * sheet.MM
	secondChain = 17 * sheet.MM
)

// dimensionWalls draws a chain along the outside of every outer wall, with its
// openings, and the overall size to the south and west.
func (d *drawing) dimensionWalls() {
	h := d.res.Job.House
	eave := d.view.Length(h.Roof.Overhang)
	g := d.sheet.Group("dimensions", "dimensions", "Dimensions")
	for i := range h.Walls {
		w := &h.Walls[i]
		if !w.Exterior {
			continue
		}
		stops := []measure.Length{0, w.Length()}
		for j := range w.Openings {
			stops = append(stops, w.Openings[j].Start, w.Openings[j].End)
		}
		slices.Sort(stops)
		side := plan.Right
		if !h.OutsideOf.Contains(w.FacePoint(w.Length()/2, plan.Left)) || outsideLeft(h, w) {
			side = plan.Left
		}
		var points []geom.Point
		for _, s := range slices.Compact(stops) {
			points = append(points, w.FacePoint(s, side))
		}
		d.chain(g, w.ID, points, turnOfHeading(w.Faces(side)), eave+firstChain)
	}
	b := h.OutsideOf.Bounds()
	d.chain(g, "south-overall", []geom.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}}, -sheet.QuarterTurn, eave+secondChain)
	d.chain(g, "west-overall", []geom.Point{b.Min, {X: b.Min.X, Y: b.Max.Y}}, sheet.HalfTurn, eave+secondChain)
}

// outsideLeft reports whether the left side of an outer wall looks outdoors.
func outsideLeft(h *plan.House, w *plan.Wall) bool {
	p := w.FacePoint(w.Length()/2, plan.Left)
	step := measure.Length(measure.Inch)
	switch w.Faces(plan.Left) {
	case plan.East:
		p.X += step
	case plan.West:
		p.X -= step
	case plan.North:
		p.Y += step
	default:
		p.Y -= step
	}
	return !h.OutsideOf.Contains(p)
}

// chain draws one dimension chain through points of the house that lie in
// line, moved out in the given direction.
func (d *drawing) chain(g *sheet.Group, id string, points []geom.Point, out sheet.Angle, off sheet.Paper) {
	slices.SortFunc(points, func(a, b geom.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(b.Y, a.Y)) })
	at := d.view.Points(points)
	end := sheet.Polar(at[0], off, out)
	c := dimension.Chain{Vertical: out == 0 || out == sheet.HalfTurn, Line: end.Y}
	if c.Vertical {
		c.Line = end.X
	}
	for i, p := range at {
		stop := dimension.Stop{At: p.X, From: p.Y}
		if c.Vertical {
			stop = dimension.Stop{At: p.Y, From: p.X}
		}
		c.Stops = append(c.Stops, stop)
		if i > 0 {
			c.Words = append(c.Words, d.length(geom.Dist(points[i-1], points[i])))
		}
	}
	g.Group(sheet.ID("chain", id), "chain", "").Add(c.Draw().Items...)
}
