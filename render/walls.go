package render

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
)

// drawWalls draws all walls of the level as one filled double line, open where
// there are openings; what of them is masonry is hatched.
func (d *drawing) drawWalls() {
	h := d.res.Job.House
	walls := d.sheet.Group("house", "house", "House").Group("walls", "walls", "Walls")
	walls.Polygon(sheet.PenWall, d.rings(wallRings(h, d.scope.level, func(*plan.Wall) bool { return true }))...)
	masonry := func(w *plan.Wall) bool { return w.Masonry }
	if slices.ContainsFunc(h.Walls, func(w plan.Wall) bool { return w.Masonry && w.Level == d.scope.level }) {
		g := walls.Group("masonry", "masonry", "Masonry")
		rings := d.rings(wallRings(h, d.scope.level, masonry))
		g.Polygon(sheet.PenMasonry, rings...)
		g.Hatch(sheet.HatchMasonry, rings)
	}
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != d.scope.level {
			continue
		}
		for j := range w.Openings {
			drawOpening(walls, w, &w.Openings[j], d.view)
		}
	}
}

// rings are outlines on the sheet.
func (d *drawing) rings(outlines []geom.Polygon) (rings [][]sheet.Point) {
	for _, r := range outlines {
		rings = append(rings, d.view.Points(r))
	}
	return rings
}

// drawWallsBelow draws the outlines of the walls below a space, and of those
// that stand on it.
func (d *drawing) drawWallsBelow() {
	h := d.res.Job.House
	g := d.sheet.Group("house", "house", "House")
	walls := g.Group("walls-below", "walls", "Walls below")
	for i := range h.Walls {
		if part, ok := d.scope.wallPart(h, &h.Walls[i], d.scope.below(h)); ok {
			d.drawWallPart(walls, sheet.PenWallBelow, &h.Walls[i], part)
		}
	}
	d.drawWallsBeside(g)
	if d.scope.above(h) < 0 {
		return
	}
	walls = g.Group("walls-above", "walls-above", "Walls above")
	for i := range h.Walls {
		if part, ok := d.scope.wallPart(h, &h.Walls[i], d.scope.above(h)); ok {
			d.drawWallPart(walls, sheet.PenWallAbove, &h.Walls[i], part)
		}
	}
}

// standsBeside is how far over the joists' undersides of an attic the floor of
// a storey may be whose walls close the attic off beside it.
const standsBeside = 2 * measure.Foot

// besidePart is the part of a wall of a storey that stands beside an attic and
// rises over its joists, false if it is none: the low walls before rooms under a
// roof, or the wall over a lower roof.
func (s scope) besidePart(h *plan.House, w *plan.Wall) (geom.Rect, bool) {
	if s.space < 0 || h.Spaces[s.space].Kind != plan.AtticSpace || w.Level == h.Spaces[s.space].Below || !w.Exterior {
		return geom.Rect{}, false
	}
	a, l := h.Spaces[s.space], &h.Levels[w.Level]
	if l.Floor > a.Base+standsBeside || l.Floor+l.PlateTop <= a.Base+a.Depth {
		return geom.Rect{}, false
	}
	return s.wallPart(h, w, w.Level)
}

// drawWallsBeside draws the walls of a storey that stands beside an attic, cut.
func (d *drawing) drawWallsBeside(g *sheet.Group) {
	h := d.res.Job.House
	var walls *sheet.Group
	for i := range h.Walls {
		part, ok := d.scope.besidePart(h, &h.Walls[i])
		if !ok {
			continue
		}
		if walls == nil {
			walls = g.Group("walls-beside", "walls-beside", "Walls of the storey beside")
		}
		walls.Rect(sheet.PenWall, d.view.Box(part))
	}
}

// drawWallPart draws the outline of a part of a wall, without an end where the
// wall goes on.
func (d *drawing) drawWallPart(g *sheet.Group, pen sheet.Pen, w *plan.Wall, part geom.Rect) {
	b := d.view.Box(part)
	if part == w.Frame {
		g.Rect(pen, b)
		return
	}
	sw, se, nw, ne := sheet.Pt(b.Min.X, b.Max.Y), b.Max, b.Min, sheet.Pt(b.Max.X, b.Min.Y)
	for _, side := range []struct {
		a, b sheet.Point
		cut  bool
	}{
		{sw, se, part.Min.Y != w.Frame.Min.Y},
		{nw, ne, part.Max.Y != w.Frame.Max.Y},
		{sw, nw, part.Min.X != w.Frame.Min.X},
		{se, ne, part.Max.X != w.Frame.Max.X},
	} {
		if !side.cut {
			g.Line(pen, side.a, side.b)
		}
	}
}

// wallRings are the outlines of everything solid on a level in plan: of each
// group of walls that hang together, and of each space that they close in, as
// far as the walls are wanted. Filled by the even-odd rule they are the walls.
func wallRings(h *plan.House, level int, wanted func(*plan.Wall) bool) []geom.Polygon {
	var solids []geom.Rect
	for i := range h.Walls {
		if w := &h.Walls[i]; w.Level != level || !wanted(w) {
			continue
		}
		solids = append(solids, solidParts(&h.Walls[i])...)
	}
	bounds := h.Boundaries.Outset(2 * measure.Metre)
	region := geom.NewRegion(append(solids, rim(bounds)...), bounds)
	outside := geom.Point{X: bounds.Min.X + 3*measure.Metre/2, Y: bounds.Min.Y + 3*measure.Metre/2}
	_, rings, _ := region.Outline(outside)
	seen := []geom.Point{outside}
	for i := range h.Rooms {
		at := h.Rooms[i].At
		if h.Rooms[i].Level != level || known(region, seen, at) {
			continue
		}
		seen = append(seen, at)
		if outer, holes, ok := region.Outline(at); ok {
			rings = append(append(rings, outer), holes...)
		}
	}
	return rings
}

// rim is a solid frame, a metre wide, along the inside of r: it closes in what
// is outdoors.
func rim(r geom.Rect) []geom.Rect {
	west, east, south, north := r, r, r, r
	west.Max.X = r.Min.X + measure.Metre
	east.Min.X = r.Max.X - measure.Metre
	south.Max.Y = r.Min.Y + measure.Metre
	north.Min.Y = r.Max.Y - measure.Metre
	return []geom.Rect{west, east, south, north}
}

func known(region *geom.Region, seen []geom.Point, at geom.Point) bool {
	for _, p := range seen {
		if region.Reaches(p, at) {
			return true
		}
	}
	return false
}

// solidParts are the pieces of a wall between its openings.
func solidParts(w *plan.Wall) []geom.Rect {
	parts := []geom.Rect{w.Body}
	for i := range w.Openings {
		gap := openingRect(w, &w.Openings[i])
		var next []geom.Rect
		for _, p := range parts {
			next = append(next, cutAcross(p, gap, w.AlongY())...)
		}
		parts = next
	}
	return parts
}

// cutAcross is what a gap across a piece of wall leaves of it.
func cutAcross(p, gap geom.Rect, alongY bool) []geom.Rect {
	a, b := p, p
	if alongY {
		a.Max.Y, b.Min.Y = min(p.Max.Y, gap.Min.Y), max(p.Min.Y, gap.Max.Y)
	} else {
		a.Max.X, b.Min.X = min(p.Max.X, gap.Min.X), max(p.Min.X, gap.Max.X)
	}
	var out []geom.Rect
	for _, r := range [2]geom.Rect{a, b} {
		if r.Width() > 0 && r.Height() > 0 {
			out = append(out, r)
		}
	}
	return out
}

// openingRect is the plan of an opening, as deep as the wall.
func openingRect(w *plan.Wall, o *plan.Opening) geom.Rect {
	a, b := w.PointAt(o.Start), w.PointAt(o.End)
	r := geom.Rect{Min: a, Max: b}.Canon()
	if w.AlongY() {
		r.Min.X, r.Max.X = w.Body.Min.X, w.Body.Max.X
	} else {
		r.Min.Y, r.Max.Y = w.Body.Min.Y, w.Body.Max.Y
	}
	return r
}

// drawOpening draws what fills an opening: a leaf with its swing, or panes.
func drawOpening(g *sheet.Group, w *plan.Wall, o *plan.Opening, v sheet.View) {
	og := g.Group(sheet.ID("opening", o.ID), "opening", "Opening "+o.ID)
	switch o.Kind {
	case plan.Door:
		drawLeaf(og, w, o, v)
	case plan.Window, plan.GarageDoor:
		drawPanes(og, w, o, v)
	case plan.Passage:
		r := v.Box(openingRect(w, o))
		og.Rect(sheet.PenAbove, r)
	}
}

// drawPanes draws the sill lines and the pane between them.
func drawPanes(g *sheet.Group, w *plan.Wall, o *plan.Opening, v sheet.View) {
	r := openingRect(w, o)
	g.Rect(sheet.PenWindow, v.Box(r))
	if w.AlongY() {
		x := r.Min.X + r.Width()/2
		g.Line(sheet.PenWindow, v.Point(geom.Point{X: x, Y: r.Min.Y}), v.Point(geom.Point{X: x, Y: r.Max.Y}))
		return
	}
	y := r.Min.Y + r.Height()/2
	g.Line(sheet.PenWindow, v.Point(geom.Point{X: r.Min.X, Y: y}), v.Point(geom.Point{X: r.Max.X, Y: y}))
}

// drawLeaf draws a door's leaf, open at a right angle, and the quarter circle
// of its swing.
func drawLeaf(g *sheet.Group, w *plan.Wall, o *plan.Opening, v sheet.View) {
	hinge, latch := o.Start, o.End
	if o.HingeEnd {
		hinge, latch = o.End, o.Start
	}
	p, q := v.Point(w.FacePoint(hinge, o.Swing)), v.Point(w.FacePoint(latch, o.Swing))
	shut := turnOf(q.Sub(p))
	open := turnOfHeading(w.Faces(o.Swing))
	radius := v.Length(o.End - o.Start)
	g.Line(sheet.PenDoor, p, sheet.Polar(p, radius, open))
	sweep := (open - shut + sheet.FullTurn) % sheet.FullTurn
	if sweep > sheet.HalfTurn {
		sweep -= sheet.FullTurn
	}
	g.Add(sheet.Arc{Pen: sheet.PenSwing, Centre: p, Radius: radius, Start: shut, Sweep: sweep})
}

// turnOf is the direction of a vector along an axis of the sheet.
func turnOf(d sheet.Point) sheet.Angle {
	switch {
	case d.X > 0:
		return 0
	case d.X < 0:
		return sheet.HalfTurn
	case d.Y < 0:
		return sheet.QuarterTurn
	default:
		return -sheet.QuarterTurn
	}
}

func turnOfHeading(h plan.Heading) sheet.Angle {
	switch h {
	case plan.East:
		return 0
	case plan.North:
		return sheet.QuarterTurn
	case plan.West:
		return sheet.HalfTurn
	default:
		return -sheet.QuarterTurn
	}
}
