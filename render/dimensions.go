package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// Distances of dimension lines (ISO 129-1 leaves them free; common practice).
const (
	firstChain  = 9 * sheet.MM
	secondChain = 16 * sheet.MM
	overshoot   = 3 * sheet.MM / 2
	tickHalf    = sheet.MM
	lift        = 600 * sheet.Micrometre // of the text above its line
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
	cg := g.Group(sheet.ID("chain", id), "chain", "")
	at := d.view.Points(points)
	first, last := sheet.Polar(at[0], off, out), sheet.Polar(at[len(at)-1], off, out)
	cg.Line(sheet.PenDimension, first, last)
	for _, p := range at {
		foot, q := sheet.Polar(p, overshoot, out), sheet.Polar(p, off, out)
		cg.Line(sheet.PenDimension, foot, sheet.Polar(p, off+overshoot, out))
		cg.Line(sheet.PenTick, sheet.Pt(q.X-tickHalf, q.Y+tickHalf), sheet.Pt(q.X+tickHalf, q.Y-tickHalf))
	}
	for i := 1; i < len(at); i++ {
		a, b := sheet.Polar(at[i-1], off, out), sheet.Polar(at[i], off, out)
		d.dimensionText(cg, fmt.Sprintf("%s-%d", id, i), d.length(geom.Dist(points[i-1], points[i])), a, b)
	}
}

// dimensionText writes a dimension over the middle of its line if it fits
// there, and asks for a place near it otherwise.
func (d *drawing) dimensionText(g *sheet.Group, id, words string, a, b sheet.Point) {
	mid := sheet.Pt(a.X+(b.X-a.X)/2, a.Y+(b.Y-a.Y)/2)
	t := sheet.Text{Lettering: sheet.LetterDimension, At: sheet.Pt(mid.X, mid.Y-lift), Align: sheet.Middle, Words: words}
	room := max(b.X-a.X, a.X-b.X)
	if a.X == b.X {
		room = max(b.Y-a.Y, a.Y-b.Y)
		t.Turn, t.At = sheet.QuarterTurn, sheet.Pt(mid.X-lift, mid.Y)
	}
	box := font.Box(t)
	if font.Width(t.Lettering, words)+2*tickHalf <= room && !d.isTaken(box) {
		g.Add(t)
		d.take(box)
		return
	}
	d.ask(ask{id: "dimension-" + id, at: mid, symbol: around(mid, lift), leader: true, priority: 10,
		block: font.Block{{Lettering: sheet.LetterSmall, Words: words}}})
}

func (d *drawing) isTaken(b sheet.Box) bool {
	return slices.ContainsFunc(d.taken, b.Overlaps)
}
