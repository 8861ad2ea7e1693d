package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route"
)

// A section is a cut through a wall at the hole of a drop, square to the wall.
// Distances in are counted from the outer face of the wall's plate into the
// house; of an inside wall, from the face that the roof rises away from. Heights
// are counted from the floor.
type section struct {
	res   *route.Result
	route *route.Route
	drop  *plan.Drop
	wall  *plan.Wall
	space *plan.Space // over the wall, under a roof
	roof  *plan.Roof
	hole  *route.Hole    // nil if the drop is blocked
	along measure.Length // along the wall
	foot  geom.Point     // where distances in begin
	in    geom.Point     // of length 1
	// first and last bound what is drawn.
	first, last measure.Length
	// eave is true if the roof comes down on the wall, and not under a gable.
	eave bool
	// caught is where the rod is taken, and nearest the nearest place where a
	// hand could. The plate itself is within reach if shot is false.
	shot            bool
	caught, nearest measure.Length
}

// Sizes of what a section shows; common practice, no source.
const (
	sectionOut   = 6 * measure.Inch  // beyond the overhang
	sectionIn    = 1 * measure.Foot  // beyond where the rod is taken
	sectionDepth = 4 * measure.Foot  // into the house at least
	sectionDown  = 24 * measure.Inch // of the wall, below the plate
	sectionOver  = 3 * measure.Inch  // above the roof
)

// sections lists a section for each drop under an eave, and for the plate with
// the least clear height over it, in the order of the drops' tags.
func sections(res *route.Result) []*section {
	var out []*section
	lowest, least := -1, measure.Length(0)
	for i := range res.Routes {
		r := &res.Routes[i]
		if c, ok := clearOverPlate(res, r); ok && (lowest < 0 || c < least) {
			lowest, least = i, c
		}
	}
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &res.Job.Drops[r.Drop]
		if i != lowest && (d.Kind != plan.SoffitSpot || d.Eave < 0) {
			continue
		}
		if c := newSection(res, r); c != nil {
			out = append(out, c)
		}
	}
	return out
}

// clearOverPlate is the clear height over the joists at the hole in the plate
// that a wall plate's cables come down through.
func clearOverPlate(res *route.Result, r *route.Route) (measure.Length, bool) {
	if res.Job.Drops[r.Drop].Kind != plan.WallPlate {
		return 0, false
	}
	k := holeLeg(res, r)
	if k < 0 {
		return 0, false
	}
	h, p := res.Job.House, &res.Graph.Holes[res.Holes[r.Legs[k].Hole].Place]
	if h.Walls[p.Wall].Level != h.LevelOf(&res.Job.Drops[r.Drop]) {
		return 0, false
	}
	s := h.Spaces[p.Space]
	return h.UnderRafter(s, flat(p.At)) - s.Depth, true
}

// pitched reports whether a space is under a roof that has rafters over it.
func pitched(h *plan.House, space int) bool {
	return space >= 0 && h.Spaces[space].Roof >= 0 && h.Roofs[h.Spaces[space].Roof].Surface != nil
}

// holeLeg is the last leg of a route through a plate, a soffit or the wall under
// a gable that comes from under a roof; -1 if there is none.
func holeLeg(res *route.Result, r *route.Route) int {
	for k := len(r.Legs) - 1; k >= 0; k-- {
		h := r.Legs[k].Hole
		if h < 0 {
			continue
		}
		p := &res.Graph.Holes[res.Holes[h].Place]
		if !pitched(res.Job.House, p.Space) {
			continue
		}
		switch p.Kind {
		case route.PlateArc, route.SoffitArc, route.GableArc:
			return k
		}
	}
	return -1
}

// newSection is nil where no roof comes down on the wall.
func newSection(res *route.Result, r *route.Route) *section {
	h := res.Job.House
	c := &section{res: res, route: r, drop: &res.Job.Drops[r.Drop]}
	k := holeLeg(res, r)
	if k < 0 {
		c.wall = &h.Walls[c.drop.Eave]
		c.along = c.wall.Along(c.drop.Point)
		space := spaceOver(h, c.wall.Level, c.wall.PointAt(c.along))
		if !pitched(h, space) {
			return nil
		}
		c.space = h.Spaces[space]
	} else {
		c.hole = &res.Holes[r.Legs[k].Hole]
		p := &res.Graph.Holes[c.hole.Place]
		c.wall, c.along, c.space = &h.Walls[p.Wall], p.Along, h.Spaces[p.Space]
	}
	c.roof = h.Roofs[c.space.Roof]
	c.eave = c.wall.Exterior && !c.wall.Gable
	c.orient()
	if k >= 0 {
		c.findHand(k)
	}
	c.bound()
	return c
}

// orient finds the way into the house: away from the outer side, or up the
// slope of the roof over an inside wall.
func (c *section) orient() {
	side := c.wall.Out
	at := c.wall.PointAt(c.along)
	if !c.wall.Exterior {
		side = plan.Left
		if s, ok := c.roof.Surface.Slope(at); ok && headingVector(c.wall.Faces(side)) == s.Up {
			side = plan.Right
		}
	}
	out := headingVector(c.wall.Faces(side))
	c.in = geom.Point{X: -out.X, Y: -out.Y}
	half := c.wall.StudDepth / 2
	c.foot = geom.Point{X: at.X + out.X*half, Y: at.Y + out.Y*half}
}

func headingVector(h plan.Heading) geom.Point {
	return [...]geom.Point{plan.East: {X: 1}, plan.North: {Y: 1}, plan.West: {X: -1}, plan.South: {Y: -1}}[h]
}

// inward is how far in a point is.
func (c *section) inward(p geom.Point) measure.Length {
	return (p.X-c.foot.X)*c.in.X + (p.Y-c.foot.Y)*c.in.Y
}

// at is the point of the cut so far in.
func (c *section) at(s measure.Length) geom.Point {
	return geom.Point{X: c.foot.X + s*c.in.X, Y: c.foot.Y + s*c.in.Y}
}

// inPlane reports whether a point is in the cut.
func (c *section) inPlane(p geom.Point) bool { return c.at(c.inward(p)) == p }

// findHand finds where the rod that comes out of hole leg k is taken, and the
// nearest place where it could be.
func (c *section) findHand(k int) {
	if k == 0 || c.route.Legs[k-1].Kind != route.RodArc {
		return
	}
	leg := &c.route.Legs[k-1]
	if !c.inPlane(flat(leg.From)) {
		return
	}
	c.shot = true
	c.caught = c.inward(flat(leg.From))
	c.nearest = c.caught
	g := c.res.Graph
	for i := range g.Arcs {
		a := &g.Arcs[i]
		if a.Kind != route.RodArc || len(a.Blocks) > 0 || g.Nodes[a.From].At != leg.To {
			continue
		}
		q := flat(g.Nodes[a.To].At)
		if s := c.inward(q); c.inPlane(q) && s > 0 == (c.caught > 0) && max(s, -s) < max(c.nearest, -c.nearest) {
			c.nearest = s
		}
	}
}

// bound finds what is drawn: from beyond the overhang to beyond the hand, but
// not past the house.
func (c *section) bound() {
	c.first = -2 * measure.Foot
	if c.wall.Exterior {
		c.first = -c.roof.Overhang - sectionOut
	}
	c.first = min(c.first, c.caught-sectionIn)
	c.last = max(sectionDepth, c.caught+sectionIn)
	alongY := c.in.X == 0
	cut, at := c.foot.Y, c.foot.X
	if alongY {
		cut, at = c.foot.X, c.foot.Y
	}
	sign := c.in.X + c.in.Y
	middle := at + sign*c.wall.StudDepth/2
	for _, s := range stretches(c.space.Edges(), cut, !alongY) {
		if s[0] <= middle && middle <= s[1] {
			ends := [2]measure.Length{sign * (s[0] - at), sign * (s[1] - at)}
			c.last = min(c.last, max(ends[0], ends[1]))
			if !c.wall.Exterior {
				c.first = max(c.first, min(ends[0], ends[1]))
			}
		}
	}
}

func (c *section) level() *plan.Level { return &c.res.Job.House.Levels[c.wall.Level] }

// plate is the height of the top of the plates.
func (c *section) plate() measure.Length { return c.level().PlateTop }

// bottom is where the wall is broken off.
func (c *section) bottom() measure.Length { return max(0, c.plate()-sectionDown) }

// underRafter and underSheathing are heights over the floor.
func (c *section) underRafter(s measure.Length) measure.Length {
	return c.plate() + c.res.Job.House.UnderRafter(c.space, c.at(s))
}

func (c *section) underSheathing(s measure.Length) measure.Length {
	return c.plate() + c.res.Job.House.UnderSheathing(c.space, c.at(s))
}

// roofFrom and roofTo are where the roof over the cut begins and ends.
func (c *section) roofFrom() measure.Length {
	if c.wall.Exterior {
		return -c.roof.Overhang
	}
	return c.first
}

// profile is a height along the cut from one place to another, as a polyline:
// steps are halved until the line is within a millimetre.
func profile(from, to measure.Length, height func(measure.Length) measure.Length) []geom.Point {
	const coarse, fine = 8 * measure.Inch, 2 * measure.Millimetre
	out := []geom.Point{{X: from, Y: height(from)}}
	var add func(a, b geom.Point)
	add = func(a, b geom.Point) {
		m := a.X + (b.X-a.X)/2
		y := height(m)
		if off := y - (a.Y + (b.Y-a.Y)/2); b.X-a.X > fine && max(off, -off) > measure.Millimetre/2 {
			p := geom.Point{X: m, Y: y}
			add(a, p)
			add(p, b)
			return
		}
		out = append(out, b)
	}
	for a := out[0]; a.X < to; {
		x := min(to, a.X+coarse)
		b := geom.Point{X: x, Y: height(x)}
		add(a, b)
		a = b
	}
	return thinned(out)
}

// thinned leaves out points that lie on the line between their neighbours, to
// a few nanometres of rounding.
func thinned(points []geom.Point) []geom.Point {
	out := points[:0:0]
	for i, p := range points {
		if i > 0 && i < len(points)-1 {
			a, b := out[len(out)-1], points[i+1]
			on := a.Y + measure.Length(float64(b.Y-a.Y)*float64(p.X-a.X)/float64(b.X-a.X))
			if off := on - p.Y; max(off, -off) < measure.Micrometre {
				continue
			}
		}
		out = append(out, p)
	}
	return out
}

// soffit is the height of the soffit: level with the lower end of the rafter
// tails, or under a gable with the underside of the rafters over the wall.
func (c *section) soffit() measure.Length {
	if c.eave {
		return c.underRafter(-c.roof.Overhang)
	}
	return c.underRafter(c.wall.StudDepth / 2)
}

// gable reports whether the wall goes up to the roof.
func (c *section) gable() bool { return c.wall.Exterior && !c.eave }

// A clearing is a clear height to be dimensioned: at a place, between two
// heights.
type clearing struct {
	at          measure.Length
	bottom, top measure.Length
	words       [2]string
}

// clearings are the clear heights at the plate, where a rod or a bit passes
// between the rafters, and where a hand works: over the joists and under the
// rafters.
func (c *section) clearings() []clearing {
	half := c.wall.StudDepth / 2
	text := c.res.Job.House.Units.FormatSheet
	var out []clearing
	add := func(at, bottom, top measure.Length, words string) {
		if top > bottom {
			out = append(out, clearing{at, bottom, top, [2]string{text(top - bottom), words}})
		}
	}
	if !c.gable() {
		add(half, c.plate(), c.underSheathing(half), "clear over the plate")
	}
	joists := c.plate() + c.space.Depth
	switch {
	case !c.shot:
		s := half + 6*measure.Inch
		add(s, joists, c.underRafter(s), "clear over the joists")
	case c.nearest == c.caught:
		add(c.caught, joists, c.underRafter(c.caught), "clear over the joists")
	default:
		add(c.nearest, joists, c.underRafter(c.nearest), "clear over the joists")
		add(c.caught, joists, c.underRafter(c.caught), "clear over the joists")
	}
	return out
}

// title names the section.
func (c *section) title() string {
	words := fmt.Sprintf("Section at %s, wall %s", c.drop.Tag, c.wall.ID)
	if h := c.res.Job.House; len(h.Levels) > 1 {
		words += ", " + levelName(h, c.wall.Level)
	}
	return words
}

// detail is the section as a drawing that shares a sheet.
func (c *section) detail() *detail {
	h := c.res.Job.House
	u := h.Units
	top := c.plate() + c.space.Depth
	for _, p := range profile(c.roofFrom(), c.last, c.underSheathing) {
		top = max(top, p.Y)
	}
	note := fmt.Sprintf("square to the wall, %s along it; looking along the wall", u.FormatSheet(c.along))
	return &detail{
		id: sheet.ID("section", c.drop.Tag), title: c.title(), note: note,
		real: geom.Rect{Min: geom.Point{X: c.first, Y: c.bottom()}, Max: geom.Point{X: c.last, Y: top + sectionOver}},
		margins: func(sheet.Scale) margins {
			return margins{
				left: levelWidth(c.leftLevels()) + 4*sheet.MM, right: levelWidth(c.rightLevels()) + 4*sheet.MM,
				top: 4 * sheet.MM, bottom: 24 * sheet.MM,
			}
		},
		draw: c.draw, list: c.list,
	}
}

func (c *section) leftLevels() []level {
	var out []level
	if c.wall.Exterior {
		out = append(out, level{c.soffit(), "soffit"})
	}
	if c.gable() && c.hole != nil {
		out = append(out, level{c.res.Graph.Holes[c.hole.Place].At.Z - c.level().Floor, c.hole.ID})
	}
	return merged(out, c.res.Job.House.Units.FormatSheet)
}

func (c *section) rightLevels() []level {
	h := c.res.Job.House
	return merged([]level{
		{c.level().Ceiling, "ceiling"},
		{c.plate(), "plate, top"},
		{c.plate() + c.space.Depth, joistWord(c.space) + ", top"},
	}, h.Units.FormatSheet)
}

// joistWord and rafterWord name the members of a space as they are built.
func joistWord(s *plan.Space) string {
	if s.Joist == plan.Truss {
		return "bottom chord"
	}
	return "joist"
}

func rafterWord(s *plan.Space) string {
	if s.Joist == plan.Truss {
		return "top chord"
	}
	return "rafter"
}

// list writes the numbers of the section in the column.
func (c *section) list(p *page) {
	u := p.res.Job.House.Units
	p.line(sheet.LetterTag, 0, c.title())
	var rows [][]string
	half := c.wall.StudDepth / 2
	if !c.gable() {
		rows = append(rows, []string{"over the plate, under the sheathing", u.Format(c.underSheathing(half) - c.plate())})
	}
	if c.shot {
		rows = append(rows, []string{"from the plate's outer face to the hand", u.Format(max(c.caught, -c.caught))})
		if c.nearest != c.caught {
			rows = append(rows, []string{"nearest place a hand reaches", u.Format(max(c.nearest, -c.nearest))})
		}
	}
	if c.hole != nil {
		rows = append(rows, []string{"hole " + c.hole.ID + from(p.res, c.hole), bitWords(u, c.hole)})
	} else {
		rows = append(rows, []string{"no allowed route", "see schedule.txt"})
	}
	p.table(sheet.LetterSmall, rows)
	p.next += sheet.MM
}

// legsInPlane are the legs of the route that lie in the cut or in the wall
// below it, from the attic to the drop.
func (c *section) legsInPlane() []route.Leg {
	k := -1
	if c.hole != nil {
		k = holeLeg(c.res, c.route)
	}
	if k < 0 {
		return nil
	}
	first := k
	for first > 0 && c.inPlane(flat(c.route.Legs[first-1].From)) && c.inPlane(flat(c.route.Legs[first-1].To)) {
		first--
	}
	return slices.Clone(c.route.Legs[first:])
}
