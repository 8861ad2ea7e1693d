package render

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/dimension"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// draw draws the cut: first what lies behind it, then what is cut, then what
// is to be done, then the words, and last the insulation with gaps for them.
func (c *section) draw(d *drawing) {
	c.drawRoof(d)
	c.drawJoists(d)
	insulation := d.sheet.Group("insulation", "insulation", "Insulation")
	c.drawWall(d)
	c.drawCeiling(d)
	c.drawEave(d)
	c.drawCable(d)
	c.drawClearings(d)
	c.drawHand(d)
	c.drawChain(d)
	y := func(h measure.Length) sheet.Paper { return d.view.Point(geom.Point{Y: h}).Y }
	d.drawLevels("levels-left", c.leftLevels(), d.view.Point(geom.Point{X: c.first}).X, false, y)
	d.drawLevels("levels-right", c.rightLevels(), d.view.Point(geom.Point{X: c.last}).X, true, y)
	gaps := d.placeLabels()
	for item := range (&sheet.Group{Items: groupItems(d.sheet.Groups)}).All() {
		if t, ok := item.(sheet.Text); ok {
			gaps = append(gaps, font.Box(t).Inset(-sheet.MM/2))
		}
	}
	for _, ring := range c.insulationRings() {
		insulation.Hatch(sheet.HatchInsulation, [][]sheet.Point{d.view.Points(ring)}, gaps...)
	}
}

func groupItems(groups []*sheet.Group) []sheet.Item {
	var out []sheet.Item
	for _, g := range groups {
		out = append(out, g)
	}
	return out
}

// note asks for a word for a thing, on a leader that ends with a dot in it (ISO
// 128-2, from memory).
func (d *drawing) note(g *sheet.Group, id string, at sheet.Point, words ...string) {
	var b font.Block
	for _, w := range words {
		b = append(b, font.Line{Lettering: sheet.LetterSmall, Words: w})
	}
	const dot = 300 * sheet.Micrometre
	g.Circle(sheet.PenSolid, at, dot)
	d.ask(ask{id: id, at: at, symbol: around(at, dot), leader: true, priority: 5, block: b})
}

// rect draws a rectangle of the cut.
func (c *section) rect(d *drawing, g *sheet.Group, pen sheet.Pen, from, to, bottom, top measure.Length) sheet.Box {
	b := d.view.Box(geom.Rect{
		Min: geom.Point{X: min(from, to), Y: bottom}, Max: geom.Point{X: max(from, to), Y: top},
	})
	if b.Width() > 0 && b.Height() > 0 {
		g.Rect(pen, b)
	}
	return b
}

// drawRoof draws the rafter behind the cut, and the sheathing over it as one
// thick line: nobody has measured its thickness.
func (c *section) drawRoof(d *drawing) {
	g := d.sheet.Group("roof", "roof", "Roof")
	from, to := c.roofFrom(), c.last
	lower, upper := profile(from, to, c.underRafter), profile(from, to, c.underSheathing)
	ring := slices.Clone(lower)
	for _, p := range slices.Backward(upper) {
		ring = append(ring, p)
	}
	g.Polygon(sheet.PenMedium, d.view.Points(ring))
	g.Polyline(sheet.PenThick, d.view.Points(upper)...)
	s := from + (to-from)*3/4
	mid := func(s measure.Length) sheet.Point {
		return d.view.Point(geom.Point{X: s, Y: (c.underRafter(s) + c.underSheathing(s)) / 2})
	}
	d.note(g, "rafter", mid(s), rafterWord(c.space))
	s = from + (to-from)*2/5
	words := "sheathing"
	if slope, ok := c.roof.Surface.Slope(c.at(s)); ok && (slope.Up.X == 0) == (c.in.X == 0) {
		words += ", " + pitchWords(d.res.Job.House, c.roof)
	}
	d.note(g, "sheathing", d.view.Point(geom.Point{X: s, Y: c.underSheathing(s)}), words)
}

// pitchWords is the pitch of the roof to a tenth: its rise in 12, or an angle
// where lengths are metric.
func pitchWords(h *plan.House, r *plan.Roof) string {
	ratio := float64(r.Pitch.Rise) / float64(r.Pitch.Run)
	value, unit := 12*ratio, " in 12"
	if h.Units == measure.Metric {
		value, unit = math.Atan(ratio)*180/math.Pi, "°"
	}
	return strings.TrimSuffix(strconv.FormatFloat(value, 'f', 1, 64), ".0") + unit
}

// joistTop is the height of a joist at a place: under a low roof its end is
// cut off along the sheathing.
func (c *section) joistTop(s measure.Length) measure.Length {
	return max(c.plate(), min(c.plate()+c.space.Depth, c.underSheathing(s)))
}

// alongCut reports whether the joists run along the cut.
func (c *section) alongCut() bool { return (c.in.X == 0) == c.space.AlongY }

// joistSpans are the joists that are cut across, from one face to the other.
func (c *section) joistSpans() [][2]measure.Length {
	h := c.res.Job.House
	var out [][2]measure.Length
	for _, x := range route.JoistCentres(h, c.space) {
		p := geom.Point{X: x, Y: c.foot.Y}
		if !c.space.AlongY {
			p = geom.Point{X: c.foot.X, Y: x}
		}
		s := c.inward(p)
		if c.first < s-c.space.Width && s+c.space.Width < c.last {
			out = append(out, [2]measure.Length{s - c.space.Width/2, s + c.space.Width/2})
		}
	}
	slices.SortFunc(out, func(a, b [2]measure.Length) int { return int(a[0] - b[0]) })
	return out
}

// drawJoists draws the joist behind the cut, or those that are cut across.
func (c *section) drawJoists(d *drawing) {
	g := d.sheet.Group("joists", "joists", "Joists")
	plate := c.plate()
	if c.alongCut() {
		from := measure.Length(0)
		if !c.wall.Exterior {
			from = c.first
		}
		ring := append([]geom.Point{{X: from, Y: plate}}, profile(from, c.last, c.joistTop)...)
		g.Polygon(sheet.PenJoist, d.view.Points(append(ring, geom.Point{X: c.last, Y: plate})))
		s := from + (c.last-from)*7/8
		d.note(g, "joist", d.view.Point(geom.Point{X: s, Y: plate + c.space.Depth/2}), joistWord(c.space)+" behind")
		return
	}
	for i, s := range c.joistSpans() {
		top := min(c.joistTop(s[0]), c.joistTop(s[1]))
		b := c.rect(d, g, sheet.PenJoist, s[0], s[1], plate, top)
		g.Line(sheet.PenThin, b.Min, b.Max)
		g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		if i == 0 {
			d.note(g, "joist", b.Centre(), joistWord(c.space)+", cut")
		}
	}
}

// wallTop is where the wall ends: at the plates, or under a gable at the roof.
func (c *section) wallTop() measure.Length {
	if c.wall.Exterior && !c.eave {
		return max(c.plate(), c.underRafter(c.wall.StudDepth/2))
	}
	return c.plate()
}

// boards are how thick what is on the wall is, outside and inside.
func (c *section) boards() (outside, inside measure.Length) {
	side := c.wall.Out
	if !c.wall.Exterior {
		side = plan.Left
		if headingVector(c.wall.Faces(side)) == c.in {
			side = plan.Right
		}
	}
	return c.wall.Boards[side], c.wall.Boards[side.Opposite()]
}

// drawWall draws the wall, cut: boards, the faces of the hollow, and the plates
// crossed by their diagonals.
func (c *section) drawWall(d *drawing) {
	g := d.sheet.Group("wall", "wall", "Wall "+c.wall.ID)
	depth, plate, low := c.wall.StudDepth, c.plate(), c.bottom()
	outside, inside := c.boards()
	outTop := c.level().Ceiling
	if c.wall.Exterior {
		outTop = max(c.wallTop(), plate)
		if c.eave {
			outTop = min(plate, c.soffit())
		}
	}
	c.rect(d, g, sheet.PenWall, -outside, 0, low, outTop)
	c.rect(d, g, sheet.PenWall, depth, depth+inside, low, c.level().Ceiling)
	under := plate - measure.Length(c.wall.TopPlates)*route.PlateThickness
	for _, s := range [2]measure.Length{0, depth} {
		g.Line(sheet.PenMedium, d.view.Point(geom.Point{X: s, Y: low}), d.view.Point(geom.Point{X: s, Y: under}))
		if top := c.wallTop(); top > plate {
			g.Line(sheet.PenMedium, d.view.Point(geom.Point{X: s, Y: plate}), d.view.Point(geom.Point{X: s, Y: top}))
		}
	}
	var b sheet.Box
	for i := range c.wall.TopPlates {
		bottom := under + measure.Length(i)*route.PlateThickness
		b = c.rect(d, g, sheet.PenPlate, 0, depth, bottom, bottom+route.PlateThickness)
		g.Line(sheet.PenThin, b.Min, b.Max)
		g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
	}
	breakLine(g, d.view.Point(geom.Point{X: -outside, Y: low}), d.view.Point(geom.Point{X: depth + inside, Y: low}))
	words := "top plate"
	if c.wall.TopPlates > 1 {
		words = "top plates"
	}
	d.note(g, "plates", sheet.Pt(b.Max.X-b.Width()/8, b.Centre().Y), words)
	d.note(g, "wall", d.view.Point(geom.Point{X: depth + inside/2, Y: low + (under-low)/3}), "wall "+c.wall.ID)
}

// drawCeiling draws the board under the joists.
func (c *section) drawCeiling(d *drawing) {
	g := d.sheet.Group("ceiling", "ceiling", "Ceiling")
	lvl := c.level()
	b := c.rect(d, g, sheet.PenWall, c.wall.StudDepth, c.last, lvl.Ceiling, lvl.PlateTop)
	d.note(g, "ceiling", sheet.Pt(b.Min.X+b.Width()*2/3, b.Max.Y), "ceiling")
	if !c.wall.Exterior {
		c.rect(d, g, sheet.PenWall, c.first, 0, lvl.Ceiling, lvl.PlateTop)
	}
	for _, s := range [2]measure.Length{c.first, c.last} {
		if s == c.last || !c.wall.Exterior {
			top := max(c.underSheathing(s), c.plate())
			breakLine(g, d.view.Point(geom.Point{X: s, Y: lvl.Ceiling}), d.view.Point(geom.Point{X: s, Y: top}))
		}
	}
}

// drawEave draws the soffit and the end of the overhang.
func (c *section) drawEave(d *drawing) {
	if !c.wall.Exterior {
		return
	}
	g := d.sheet.Group("eave", "eave", "Eave")
	outside, _ := c.boards()
	z := c.soffit()
	end := -c.roof.Overhang
	pt := func(s, z measure.Length) sheet.Point { return d.view.Point(geom.Point{X: s, Y: z}) }
	if end < -outside {
		g.Line(sheet.PenThick, pt(end, z), pt(-outside, z))
		words := "soffit"
		switch {
		case c.opens():
			words = "soffit, opens"
		case c.drop.Kind == plan.SoffitSpot && c.eave:
			words = "soffit, to be cut"
		}
		d.note(g, "soffit", pt(end*3/4-outside/4, z), words)
	}
	g.Line(sheet.PenMedium, pt(end, z), pt(end, c.underSheathing(end)))
}

// opens reports whether the soffit opens without cutting there.
func (c *section) opens() bool {
	return slices.ContainsFunc(c.res.Job.House.Soffits, func(s plan.SoffitOpening) bool {
		return &c.res.Job.House.Walls[s.Wall] == c.wall && s.Start <= c.along && c.along <= s.End
	})
}

// insulationRings are the outlines of the insulation: on the ceiling, under the
// roof, and in a wall that is filled.
func (c *section) insulationRings() []geom.Polygon {
	plate := c.plate()
	var out []geom.Polygon
	lay := func(from, to measure.Length) {
		top := func(s measure.Length) measure.Length {
			return max(plate, min(plate+c.space.Insulation, c.underSheathing(s)))
		}
		if from < to && c.space.Insulation > 0 {
			ring := append(geom.Polygon{{X: from, Y: plate}}, profile(from, to, top)...)
			out = append(out, append(ring, geom.Point{X: to, Y: plate}))
		}
	}
	lay(c.wall.StudDepth, c.last)
	if !c.wall.Exterior {
		lay(c.first, 0)
	}
	if c.wall.Insulated {
		under := plate - measure.Length(c.wall.TopPlates)*route.PlateThickness
		r := geom.Rect{Min: geom.Point{Y: c.bottom()}, Max: geom.Point{X: c.wall.StudDepth, Y: under}}
		out = append(out, geom.Polygon{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}})
	}
	return out
}

// drawClearings draws the clear heights.
func (c *section) drawClearings(d *drawing) {
	g := d.sheet.Group("clear-heights", "dimensions", "Clear heights")
	const tick = 800 * sheet.Micrometre
	for i, cl := range c.clearings() {
		a, b := d.view.Point(geom.Point{X: cl.at, Y: cl.bottom}), d.view.Point(geom.Point{X: cl.at, Y: cl.top})
		g.Line(sheet.PenDimension, a, b)
		for _, p := range [2]sheet.Point{a, b} {
			g.Line(sheet.PenTick, sheet.Pt(p.X-tick, p.Y+tick), sheet.Pt(p.X+tick, p.Y-tick))
		}
		d.ask(ask{
			id: fmt.Sprintf("clear-%d", i+1), at: sheet.Pt(a.X, (a.Y+b.Y)/2), symbol: sheet.BoxAround(sheet.Pt(a.X, (a.Y+b.Y)/2), 400, 400),
			priority: 28, leader: true, block: font.Block{{Lettering: sheet.LetterNote, Words: cl.words[0]}, {Lettering: sheet.LetterSmall, Words: cl.words[1]}},
		})
	}
}

// handHeight is the size of the mark for a hand.
const handHeight = 2 * sheet.MM

// handMark is a triangle that stands on a place.
func handMark(p sheet.Point) []sheet.Point {
	return []sheet.Point{p, p.Add(sheet.Pt(-handHeight*2/3, -handHeight)), p.Add(sheet.Pt(handHeight*2/3, -handHeight))}
}

// drawHand marks where the rod is caught, and the nearest place where it could
// be.
func (c *section) drawHand(d *drawing) {
	if !c.shot {
		return
	}
	g := d.sheet.Group("hand", "hand", "Where the rod is caught")
	joists := c.plate()
	if !c.alongCut() {
		joists += c.space.Depth
	}
	mark := func(id string, s measure.Length, words ...string) {
		p := d.view.Point(geom.Point{X: s, Y: joists})
		g.Polygon(sheet.PenSolid, handMark(p))
		var b font.Block
		for _, w := range words {
			b = append(b, font.Line{Lettering: sheet.LetterSmall, Words: w})
		}
		d.ask(ask{id: id, at: p.Sub(sheet.Pt(0, handHeight/2)), symbol: sheet.Bounds(handMark(p)...), priority: 27, leader: true, block: b})
	}
	if c.nearest == c.caught {
		mark("caught", c.caught, "the rod is caught here,", "the nearest place a hand reaches")
		return
	}
	mark("caught", c.caught, "the rod is caught here")
	mark("nearest", c.nearest, "nearest place a hand reaches")
}

// drawChain dimensions across the section below it: the end of the overhang,
// the spot, the plate's outer face, the hole, and where a hand is.
func (c *section) drawChain(d *drawing) {
	stops := []measure.Length{0}
	if c.wall.Exterior {
		stops = append(stops, -c.roof.Overhang)
	}
	if c.hole != nil {
		stops = append(stops, c.inward(flat(d.res.Graph.Holes[c.hole.Place].At)))
	}
	if c.drop.Kind == plan.SoffitSpot && c.hole != nil {
		stops = append(stops, c.inward(flat(c.route.Place)))
	}
	if c.shot {
		stops = append(stops, c.caught, c.nearest)
	}
	d.chainBelow(stops, c.bottom(), "Distances from the plate's outer face")
}

// chainBelow dimensions a cut under its lowest place, through stops across it.
func (d *drawing) chainBelow(stops []measure.Length, lowest measure.Length, title string) {
	slices.Sort(stops)
	stops = slices.Compact(stops)
	low := d.view.Point(geom.Point{Y: lowest}).Y
	ch := dimension.Chain{Line: low + 9*sheet.MM}
	for i, s := range stops {
		ch.Stops = append(ch.Stops, dimension.Stop{At: d.view.Point(geom.Point{X: s}).X, From: low + 2*sheet.MM})
		if i > 0 {
			ch.Words = append(ch.Words, d.length(s-stops[i-1]))
		}
	}
	d.sheet.Group("chain", "dimensions", title).Add(ch.Draw().Items...)
}

var sectionKind = detailKind{
	id: "section", title: "Sections", desc: "Cuts through the wall and the eave at single drops",
	symbols: []legendSymbol{
		{"insulation", func(g *sheet.Group, b sheet.Box) {
			b = b.Inset(sheet.MM / 2)
			g.Rect(sheet.PenThin, b)
			g.Hatch(sheet.HatchInsulation, [][]sheet.Point{b.Corners()})
		}},
		{"place of the hand", func(g *sheet.Group, b sheet.Box) {
			g.Polygon(sheet.PenSolid, handMark(sheet.Pt(b.Centre().X, b.Max.Y-sheet.MM)))
		}},
		{"spot under the eave", func(g *sheet.Group, b sheet.Box) {
			box := sheet.BoxAround(b.Centre(), 8*symbol/5, 8*symbol/5)
			g.Rect(sheet.PenDevice, box)
			g.Line(sheet.PenMedium, box.Min, box.Max)
		}},
	},
}
