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
	firstChain  = 5 * sheet.MM
	secondChain = 14 * sheet.MM
	// overStaggered is how far beyond a chain whose texts are staggered the line of
	// the overall size is, so that its text stands clear.
	overStaggered = 5 * sheet.MM
	// longestExtension is how far from its chain an extension line begins at
	// most, so that those of deep corners don't cross.
	longestExtension = 11 * sheet.MM
)

// dimensionWalls draws a chain on each side of the house, through the corners
// and openings of all outer walls that look that way, and the overall size to
// the south and west.
func (d *drawing) dimensionWalls() {
	eave := d.view.Length(d.overhangs())
	g := d.sheet.Group("dimensions", "dimensions", "Dimensions")
	b := d.outside()
	var taken [4]sheet.Box
	for look, name := range [...]string{plan.East: "east", plan.North: "north", plan.West: "west", plan.South: "south"} {
		look := plan.Heading(look)
		taken[look] = d.chain(g, name, d.outerPoints(look, true), d.outerPoints(look, false), look, d.edgeOf(look)+away(look)*(eave+firstChain))
	}
	overall := []geom.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, {X: b.Min.X, Y: b.Max.Y}}
	// Where a chain is the overall size already, it is said once.
	whole := func(look plan.Heading) bool { return len(d.stops(d.outerPoints(look, true), look, 0)) <= 2 }
	if !whole(plan.South) {
		line := d.edgeOf(plan.South) + eave + secondChain
		if out := taken[plan.South].Max.Y + overStaggered; out <= d.area.Max.Y {
			line = max(line, out)
		}
		d.chain(g, "south-overall", overall, overall, plan.South, line)
	}
	if !whole(plan.West) {
		line := d.edgeOf(plan.West) - eave - secondChain
		if out := taken[plan.West].Min.X - overStaggered; out >= d.area.Min.X {
			line = min(line, out)
		}
		d.chain(g, "west-overall", overall, overall, plan.West, line)
	}
}

// outside is the smallest rectangle around the outer walls that belong to what
// is drawn: of the level, or under an attic's roof, or around the space, with
// the walls beside it.
func (d *drawing) outside() geom.Rect {
	h := d.res.Job.House
	level := d.scope.level
	if level < 0 {
		s := d.space()
		b := s.Bounds()
		if s.Roof >= 0 {
			r := h.Roofs[s.Roof]
			b, level = r.Outline.Bounds(), r.Level
		}
		if level < 0 || !slices.Equal(h.Roofs[s.Roof].Outline, h.Levels[level].PlateLine) {
			return d.withWalls(b)
		}
	}
	if len(h.Levels[level].OutsideOf) == 0 {
		return levelBounds(h, level)
	}
	return h.Levels[level].OutsideOf.Bounds()
}

// withWalls is a rectangle with the parts of walls that the plan of a space
// shows.
func (d *drawing) withWalls(b geom.Rect) geom.Rect {
	h := d.res.Job.House
	for i := range h.Walls {
		for _, level := range [2]int{d.scope.below(h), d.scope.above(h)} {
			if part, ok := d.scope.wallPart(h, &h.Walls[i], level); ok {
				b = unionOf(b, part)
			}
		}
	}
	return b
}

// dimensionPlates draws a chain to the south and west of a space through the
// corners of the wall plates' outer faces, from which joists are laid out.
func (d *drawing) dimensionPlates() {
	eave := d.view.Length(d.overhangs())
	g := d.sheet.Group("dimensions", "dimensions", "Dimensions")
	corners := slices.Concat(d.space().Edges()...)
	d.chain(g, "south", corners, corners, plan.South, d.edgeOf(plan.South)+eave+firstChain)
	d.chain(g, "west", corners, corners, plan.West, d.edgeOf(plan.West)-eave-firstChain)
}

// outerPoints are the ends, and the openings if they are wanted, of the outer
// walls that look in one direction, on their outer faces.
func (d *drawing) outerPoints(look plan.Heading, openings bool) []geom.Point {
	h := d.res.Job.House
	var out []geom.Point
	for i := range h.Walls {
		w := &h.Walls[i]
		side := w.Out
		if w.Level != d.scope.level || !w.Exterior || w.Faces(side) != look {
			continue
		}
		out = append(out, w.FacePoint(0, side), w.FacePoint(w.Length(), side))
		for j := range w.Openings {
			if !openings {
				break
			}
			out = append(out, w.FacePoint(w.Openings[j].Start, side), w.FacePoint(w.Openings[j].End, side))
		}
	}
	return out
}

// edgeOf is where the house ends on the sheet in one direction.
func (d *drawing) edgeOf(look plan.Heading) sheet.Paper {
	b := d.view.Box(d.outside())
	switch look {
	case plan.East:
		return b.Max.X
	case plan.West:
		return b.Min.X
	case plan.North:
		return b.Min.Y
	default:
		return b.Max.Y
	}
}

// away is 1 if coordinates on the sheet grow in that direction, else -1.
func away(look plan.Heading) sheet.Paper {
	if look == plan.East || look == plan.South {
		return 1
	}
	return -1
}

// chain draws one dimension chain through points of the house, on a line
// across the direction they are seen from. Where its texts would leave the
// drawing area, it is drawn through fewer points: those that are ends, or
// only the two outermost. It returns what it takes up.
func (d *drawing) chain(g *sheet.Group, id string, points, ends []geom.Point, look plan.Heading, line sheet.Paper) sheet.Box {
	all := d.stops(points, look, line)
	few := d.stops(ends, look, line)
	drawn := d.drawChain(all, look, line)
	if d.tile != nil {
		// What is not on this tile is on others.
		g.Group(sheet.ID("chain", id), "chain", "").Add(drawn.Items...)
		return drawn.Bounds
	}
	if !d.area.Inset(2 * sheet.MM).Contains(drawn.Bounds) {
		drawn = d.drawChain(few, look, line)
	}
	if !d.area.Inset(2*sheet.MM).Contains(drawn.Bounds) && len(few) > 2 {
		drawn = d.drawChain([]chainStop{few[0], few[len(few)-1]}, look, line)
	}
	g.Group(sheet.ID("chain", id), "chain", "").Add(drawn.Items...)
	return drawn.Bounds
}

// drawChain draws a chain through stops.
func (d *drawing) drawChain(stops []chainStop, look plan.Heading, line sheet.Paper) dimension.Drawing {
	c := dimension.Chain{Vertical: !look.AlongY(), Line: line}
	for i, s := range stops {
		c.Stops = append(c.Stops, s.Stop)
		if i > 0 {
			l := s.real - stops[i-1].real
			c.Words = append(c.Words, d.length(max(l, -l)))
		}
	}
	return c.Draw()
}

// stops are where a chain through points is divided, in order. Of points on
// one extension line the one nearest to the chain is where it begins.
func (d *drawing) stops(points []geom.Point, look plan.Heading, line sheet.Paper) []chainStop {
	var stops []chainStop
	for _, p := range points {
		at := d.view.Point(p)
		s := chainStop{dimension.Stop{At: at.X, From: at.Y}, p.X}
		if !look.AlongY() {
			s = chainStop{dimension.Stop{At: at.Y, From: at.X}, p.Y}
		}
		stops = append(stops, s)
	}
	slices.SortFunc(stops, func(a, b chainStop) int { return cmp.Or(cmp.Compare(a.At, b.At), cmpFrom(a, b, look)) })
	for i := range stops {
		stops[i].From = max(line-longestExtension, min(stops[i].From, line+longestExtension))
	}
	return slices.CompactFunc(stops, func(a, b chainStop) bool { return a.At == b.At })
}

// A chainStop is a stop with its real coordinate along the chain.
type chainStop struct {
	dimension.Stop
	real measure.Length
}

// cmpFrom puts the stop that is farther out first.
func cmpFrom(a, b chainStop, look plan.Heading) int {
	return cmp.Compare(away(look)*b.From, away(look)*a.From)
}
