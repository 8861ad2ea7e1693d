package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
	"topplate/route/fix"
	"topplate/route/tape"
	"topplate/route/work"
)

// fixPlan shows how the holes are found from a space: the way to each, and the
// tapes that cross there. It is a sheet of its own, as the space's is full of
// cables. It is nil where no hole is found from there.
func fixPlan(w *work.Work, space int) *planKind {
	h, s, n := w.Result.Job.House, spaceScope(space), 0
	f := &fixDrawing{}
	for i := range w.Fixes {
		x := &w.Fixes[i]
		y, in := x.In(space)
		if !in && (x.Space >= 0 || !s.hasHole(h, &w.Result.Graph.Holes[w.Result.Holes[x.Index].Place])) {
			continue
		}
		f.fixes = append(f.fixes, y)
		if y.Above.Reached {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	title := "Finding the holes"
	if len(h.Spaces) > 1 {
		title = "Holes to find: " + spaceWords(h, space)
	}
	return &planKind{
		id: spaceID(h, space) + "-fixes", title: title, scope: s,
		desc: fmt.Sprintf("%s of %s: the safe way from the hatch to %d holes, and for each the distances from marks whose arcs cross there.",
			spaceTitle(h, space), h.Name, n),
		draw:    f.draw,
		tables:  f.table,
		symbols: f.symbols,
	}
}

// fixSymbols explains what has no pen of its own.
var fixSymbols = []legendSymbol{
	{"kneel here, on the joists", func(g *sheet.Group, b sheet.Box) { g.Circle(sheet.PenSolid, b.Centre(), kneeRadius) }},
	{"joist that is counted", func(g *sheet.Group, b sheet.Box) {
		c := b.Centre()
		g.Line(sheet.PenCount, sheet.Pt(b.Min.X, c.Y), sheet.Pt(b.Max.X, c.Y))
		drawTick(g, c, false)
	}},
}

// symbols are those that a sheet has.
func (f *fixDrawing) symbols(d *drawing) []legendSymbol {
	var out []legendSymbol
	if slices.ContainsFunc(d.sheet.Groups, func(g *sheet.Group) bool { return g.ID == "knees" && len(g.Items) > 0 }) {
		out = append(out, fixSymbols[0])
	}
	if slices.Contains(d.sheet.Pens(), sheet.PenCount) {
		out = append(out, fixSymbols[1])
	}
	return out
}

// Sizes on paper.
const (
	kneeRadius = 800 * sheet.Micrometre
	cornerMark = 1000 * sheet.Micrometre
	halfTick   = 1200 * sheet.Micrometre
)

// A fixDrawing draws the fixes of a job.
type fixDrawing struct{ fixes []fix.Hole }

func (f *fixDrawing) draw(d *drawing) {
	d.drawJoists()
	d.drawDecking()
	d.drawWallsBelow()
	d.drawRoof(false)
	d.scaleBar(true)
	d.drawObstacles()
	d.drawHatches()
	f.ways(d)
	d.drawMarks()
	f.corners(d)
	g := d.sheet.Group("fixes", "fixes", "Tapes and counts of joists")
	for i := range f.fixes {
		f.tapes(d, g, &f.fixes[i])
	}
	f.holes(d)
	d.nameWalls(f.wallsOf(d))
	d.noteJoists()
}

// A taped is one distance from a mark.
type taped struct {
	mark     tape.Mark
	distance measure.Length
}

// tapesOf are the distances that a hole is found by.
func tapesOf(a *fix.Above) []taped {
	if !a.Reached || a.Fix == nil {
		return nil
	}
	switch a.Method {
	case fix.ByTapes:
		p := a.Fix.Best
		return []taped{{p.Marks[0], p.Distance[0].Shown}, {p.Marks[1], p.Distance[1].Shown}}
	case fix.ByJoists:
		return []taped{{a.Fix.Joist.Mark, a.Fix.Joist.Distance.Shown}}
	case fix.ByBearing:
		return []taped{{a.Fix.Single.Mark, a.Fix.Single.Distance.Shown}}
	}
	return nil
}

// tapes draws the arcs of a hole, and the joists that are counted for it.
func (f *fixDrawing) tapes(d *drawing, g *sheet.Group, h *fix.Hole) {
	at := d.view.Point(flat(h.At))
	hg := g.Group(sheet.ID("fix", h.ID), "fix", fmt.Sprintf("How hole %s is found", h.ID))
	for i, t := range tapesOf(&h.Above) {
		if !d.here(flat(h.At)) {
			break
		}
		arc := drawArc(hg, d.view.Point(t.mark.At), at, d.view.Length(t.distance))
		words, from := d.length(t.distance), "from "+t.mark.ID
		d.ask(ask{
			id: fmt.Sprintf("tape-%s-%d", h.ID, i+1), at: at, along: arc.Strokes()[0], priority: 25, leader: true, level: true,
			block: font.Block{{Lettering: sheet.LetterNote, Words: words}, {Lettering: sheet.LetterSmall, Words: from}},
			short: font.Block{{Lettering: sheet.LetterSmall, Words: words + " " + from}}, of: h.ID,
		})
	}
	if h.Above.Method == fix.ByJoists && h.Above.Joists != nil {
		f.count(d, hg, h)
	}
	if h.Above.Method == fix.ByFaces && d.here(flat(h.At)) {
		f.faces(d, hg, h)
	}
}

// faces draws the distances from two walls' faces to a hole, square to them.
func (f *fixDrawing) faces(d *drawing, g *sheet.Group, h *fix.Hole) {
	at := flat(h.At)
	for i, x := range h.Above.Faces {
		w := &d.res.Job.House.Walls[x.Wall]
		a, b := d.view.Point(x.At), d.view.Point(at)
		g.Line(sheet.PenDimension, a, b)
		drawTick(g, a, a.X == b.X)
		d.ask(ask{
			id: fmt.Sprintf("face-%s-%d", h.ID, i+1), along: []sheet.Point{a, b}, priority: 25, leader: true, at: sheet.Bounds(a, b).Centre(),
			block: font.Block{{Lettering: sheet.LetterNote, Words: d.length(x.Length)}, {Lettering: sheet.LetterSmall, Words: "from wall " + w.ID}},
			short: font.Block{{Lettering: sheet.LetterSmall, Words: d.length(x.Length) + " from " + w.ID}}, of: h.ID,
		})
	}
}

// count draws the line along which joists are counted, square to them from the
// mark to level with the hole, with a tick on each.
func (f *fixDrawing) count(d *drawing, g *sheet.Group, h *fix.Hole) {
	c := h.Above.Joists
	alongY := d.space().AlongY
	from, to := c.Mark.At, flat(h.At)
	if alongY {
		to.Y = from.Y
	} else {
		to.X = from.X
	}
	a, b := d.view.Point(from), d.view.Point(to)
	g.Line(sheet.PenCount, a, b)
	for _, j := range countedJoists(d.res.Job.House, d.space(), from, to) {
		p := from
		if alongY {
			p.X = j
		} else {
			p.Y = j
		}
		drawTick(g, d.view.Point(p), !alongY)
	}
	d.ask(ask{
		id: "count-" + h.ID, at: sheet.Bounds(a, b).Centre(), along: []sheet.Point{a, b}, priority: 25, leader: true,
		block: font.Block{{Lettering: sheet.LetterNote, Words: d.countWords(c)}, {Lettering: sheet.LetterSmall, Words: "from " + c.Mark.ID + " for " + h.ID}},
	})
}

// countedJoists are the centres of the joists on the way from a mark to level
// with a hole. One at the mark is not counted, one at the hole is.
func countedJoists(h *plan.House, s *plan.Space, mark, hole geom.Point) []measure.Length {
	u, x := mark.X, hole.X
	if !s.AlongY {
		u, x = mark.Y, hole.Y
	}
	var out []measure.Length
	for _, j := range route.JoistCentres(h, s) {
		if u < j && j <= x || x <= j && j < u {
			out = append(out, j)
		}
	}
	return out
}

// drawTick marks a joist that is counted.
func drawTick(g *sheet.Group, at sheet.Point, level bool) {
	off := sheet.Pt(0, halfTick)
	if level {
		off = sheet.Pt(halfTick, 0)
	}
	g.Line(sheet.PenTick, at.Sub(off), at.Add(off))
}

// countWords says how many joists are passed, and how far beyond the last.
func (d *drawing) countWords(c *fix.JoistCount) string {
	switch c.Joists {
	case 0:
		return fmt.Sprintf("same bay, %s %s", d.length(c.Offset), headingNames[c.Heading])
	case 1:
		return fmt.Sprintf("1 joist %s + %s", headingNames[c.Heading], d.length(c.Offset))
	}
	return fmt.Sprintf("%d joists %s + %s", c.Joists, headingNames[c.Heading], d.length(c.Offset))
}

var headingNames = [...]string{plan.East: "east", plan.North: "north", plan.West: "west", plan.South: "south"}

// corners draws the marks that are used and that the house does not list: the
// corners of hatches and crossings of plates.
func (f *fixDrawing) corners(d *drawing) {
	known := map[geom.Point]bool{}
	for i := range d.res.Job.House.Marks {
		known[d.res.Job.House.Marks[i].At] = true
	}
	g := d.sheet.Group("corners", "marks", "Corners to measure from")
	for i := range f.fixes {
		a := &f.fixes[i].Above
		marks := tapesOf(a)
		if a.Method == fix.ByJoists && a.Joists != nil {
			marks = append(marks, taped{mark: a.Joists.Mark})
		}
		for _, t := range marks {
			if known[t.mark.At] {
				continue
			}
			known[t.mark.At] = true
			at := d.view.Point(t.mark.At)
			g.Group(sheet.ID("corner", t.mark.ID), "mark", t.mark.ID).Circle(sheet.PenMark, at, cornerMark)
			d.ask(ask{
				id: "corner-" + t.mark.ID, at: at, symbol: around(at, cornerMark), leader: true,
				block: font.Block{{Lettering: sheet.LetterSmall, Words: t.mark.ID}},
			})
		}
	}
}

// holes draws each hole with its number, and says which are not looked for
// from here.
func (f *fixDrawing) holes(d *drawing) {
	g := d.sheet.Group("holes", "holes", "Holes")
	for i := range f.fixes {
		h := &f.fixes[i]
		at := d.view.Point(flat(h.At))
		d.drawHole(g, h.ID, fmt.Sprintf("Hole %s, %s", h.ID, h.Member), h.Kind, at)
		block := font.Block{{Lettering: sheet.LetterTag, Words: h.ID}}
		switch {
		case !h.Above.Reached:
			block = append(block, font.Line{Lettering: sheet.LetterSmall, Words: "not from here"})
		case h.Above.Method == fix.AtMark:
			block = append(block, font.Line{Lettering: sheet.LetterSmall, Words: "at " + h.Above.Fix.At.ID})
		}
		d.ask(ask{id: "hole-" + h.ID, at: at, symbol: around(at, holeRadius), priority: 30, leader: true, block: block})
	}
}

// ways draws what one crawls from the hatches to the holes, each stretch once,
// and where one kneels.
func (f *fixDrawing) ways(d *drawing) {
	g := d.sheet.Group("ways", "ways", "Safe ways from the hatch")
	var knees []geom.Point
	var all []piece
	for i := range f.fixes {
		way, knee := wayTo(&f.fixes[i])
		all = append(all, way...)
		if f.fixes[i].Above.Reached && knee != flat(f.fixes[i].At) && !slices.Contains(knees, knee) {
			knees = append(knees, knee)
		}
	}
	for _, s := range joined(all) {
		g.Line(sheet.PenWay, d.view.Point(s.from()), d.view.Point(s.to()))
	}
	g = d.sheet.Group("knees", "ways", "Where one kneels")
	for _, p := range knees {
		g.Circle(sheet.PenSolid, d.view.Point(p), kneeRadius)
	}
}
