package dxf

import (
	"slices"

	"topplate/render/font"
	"topplate/render/sheet"
)

// The colours of the sheets by their number in the format: 7 is black on a
// white ground and white on a black one.
const (
	indexBlack     = 7
	indexBlue      = 5
	indexDarkGrey  = 8
	indexLightGrey = 9
)

func colourIndex(c sheet.Colour) int {
	switch c {
	case sheet.Blue, sheet.DeepBlue:
		return indexBlue
	case sheet.DarkGrey:
		return indexDarkGrey
	case sheet.LightGrey, sheet.MidGrey:
		return indexLightGrey
	}
	return indexBlack
}

// group writes what is in a group, on its layer or that of the group around
// it, cut by its clip and by those around it.
func (d *drawing) group(g *sheet.Group, layer string, clips [][]sheet.Point) {
	if g.Class != "" {
		if slices.Contains(d.Omit, g.Class) {
			return
		}
		layer = d.layers.name(g.Class)
	}
	if len(g.Clip) > 0 {
		clips = append(slices.Clip(clips), g.Clip)
	}
	e := entities{drawing: d, layer: layer, clips: clips}
	for _, item := range g.Items {
		e.item(item)
	}
}

// entities writes the items of a group.
type entities struct {
	*drawing
	layer string
	clips [][]sheet.Point
}

func (e *entities) item(item sheet.Item) {
	switch item := item.(type) {
	case *sheet.Group:
		e.group(item, e.layer, e.clips)
	case sheet.Line:
		e.lines(item.Pen, item.Strokes(), false)
	case sheet.Poly:
		e.poly(item)
	case sheet.Circle:
		e.circle(item)
	case sheet.Arc:
		e.arc(item)
	case sheet.Text:
		e.text(item)
	}
}

// visible reports whether a pen draws anything: white alone only hides.
func visible(p sheet.Pen) bool {
	s := p.Style()
	return s.Stroke != sheet.NoColour || filled(p)
}

// filled reports whether a pen draws by its fill alone.
func filled(p sheet.Pen) bool {
	s := p.Style()
	return s.Stroke == sheet.NoColour && s.Fill != sheet.NoColour && s.Fill != sheet.White
}

// begin writes the start of an entity.
func (e *entities) begin(kind string, p sheet.Pen) {
	s := p.Style()
	c := s.Stroke
	if c == sheet.NoColour {
		c = s.Fill
	}
	e.layers.use(e.layer)
	e.out.add(0, kind)
	e.out.add(8, e.layer)
	if len(s.Dashes()) > 0 {
		e.pens = append(e.pens, p)
		e.out.add(6, lineTypeName(p))
	}
	e.out.whole(62, colourIndex(c))
}

// reach widens the bounds of the drawing.
func (e *entities) reach(points ...sheet.Point) {
	for _, p := range points {
		if !e.drawn {
			e.bounds, e.drawn = sheet.Box{Min: p, Max: p}, true
		}
		e.bounds = e.bounds.Union(sheet.Box{Min: p, Max: p})
	}
}

func (e *entities) poly(p sheet.Poly) {
	if p.Closed && filled(p.Pen) && len(p.Rings) == 1 && len(e.clips) == 0 && convex(p.Rings[0]) {
		e.solid(p.Pen, p.Rings[0])
		return
	}
	if len(e.clips) > 0 {
		e.lines(p.Pen, p.Strokes(), false)
		return
	}
	e.lines(p.Pen, p.Rings, p.Closed)
}

// lines writes polylines, cut by the clips; closed ones must not be cut.
func (e *entities) lines(pen sheet.Pen, lines [][]sheet.Point, closed bool) {
	if !visible(pen) {
		return
	}
	for _, outline := range e.clips {
		var inside [][]sheet.Point
		for _, line := range lines {
			inside = append(inside, cut(line, outline)...)
		}
		lines = inside
	}
	for _, line := range lines {
		switch line = slices.Compact(slices.Clone(line)); {
		case len(line) < 2:
		case len(line) == 2:
			e.line(pen, line[0], line[1])
		default:
			e.polyline(pen, line, closed)
		}
	}
}

func (e *entities) line(pen sheet.Pen, a, b sheet.Point) {
	e.reach(a, b)
	e.begin("LINE", pen)
	e.point(e.out, 0, a)
	e.point(e.out, 1, b)
}

// Flags of a polyline.
const (
	flagClosed = 1
	flagDashed = 128 // the dashes go on around corners
)

func (e *entities) polyline(pen sheet.Pen, points []sheet.Point, closed bool) {
	flags := 0
	if closed {
		flags |= flagClosed
	}
	if len(pen.Style().Dashes()) > 0 {
		flags |= flagDashed
	}
	e.reach(points...)
	e.beginPolyline(pen, flags, 0)
	for _, p := range points {
		e.vertex(p, "")
	}
	e.endPolyline()
}

// beginPolyline writes the start of a polyline of a width on paper.
func (e *entities) beginPolyline(pen sheet.Pen, flags int, width sheet.Paper) {
	e.begin("POLYLINE", pen)
	e.out.whole(66, 1) // vertices follow
	e.out.add(10, "0.0")
	e.out.add(20, "0.0")
	e.out.add(30, "0.0")
	e.out.whole(70, flags)
	if width > 0 {
		e.out.add(40, e.length(width))
		e.out.add(41, e.length(width))
	}
}

// vertex writes a point of a polyline. The bulge, if there is one, is the
// tangent of a quarter of the angle of the arc to the next vertex.
func (e *entities) vertex(p sheet.Point, bulge string) {
	e.out.add(0, "VERTEX")
	e.out.add(8, e.layer)
	e.point(e.out, 0, p)
	if bulge != "" {
		e.out.add(42, bulge)
	}
}

func (e *entities) endPolyline() {
	e.out.add(0, "SEQEND")
	e.out.add(8, e.layer)
}

// convex reports whether a ring has three corners, or four that all turn the
// same way.
func convex(ring []sheet.Point) bool {
	if len(ring) != 3 && len(ring) != 4 {
		return false
	}
	right, left := 0, 0
	for i := range ring {
		turn := sheet.Turn(ring[i], ring[(i+1)%len(ring)], ring[(i+2)%len(ring)])
		if turn > 0 {
			right++
		} else if turn < 0 {
			left++
		}
	}
	return right == len(ring) || left == len(ring)
}

// solid writes a filled area with three or four corners. The format takes the
// last two crosswise, and repeats the last of three.
func (e *entities) solid(pen sheet.Pen, ring []sheet.Point) {
	e.reach(ring...)
	e.begin("SOLID", pen)
	for n, i := range []int{0, 1, len(ring) - 1, 2} {
		e.point(e.out, n, ring[i])
	}
}

func (e *entities) circle(c sheet.Circle) {
	switch {
	case !visible(c.Pen) || c.Radius == 0:
	case len(e.clips) > 0:
		e.lines(c.Pen, c.Strokes(), false)
	case filled(c.Pen):
		e.disc(c)
	default:
		e.reachAround(c.Centre, c.Radius)
		e.begin("CIRCLE", c.Pen)
		e.point(e.out, 0, c.Centre)
		e.out.add(40, e.length(c.Radius))
	}
}

func (e *entities) reachAround(c sheet.Point, r sheet.Paper) {
	e.reach(c.Add(sheet.Pt(r, r)), c.Sub(sheet.Pt(r, r)))
}

// disc writes a filled circle: a closed polyline of two half circles, half as
// large and as wide as its radius.
func (e *entities) disc(c sheet.Circle) {
	const halfCircle = "1.0"
	e.reachAround(c.Centre, c.Radius)
	e.beginPolyline(c.Pen, flagClosed, c.Radius)
	off := sheet.Pt(c.Radius/2, 0)
	e.vertex(c.Centre.Sub(off), halfCircle)
	e.vertex(c.Centre.Add(off), halfCircle)
	e.endPolyline()
}

func (e *entities) arc(a sheet.Arc) {
	switch {
	case !visible(a.Pen) || a.Radius == 0 || a.Sweep == 0:
		return
	case len(e.clips) > 0:
		e.lines(a.Pen, a.Strokes(), false)
		return
	case a.Full():
		e.circle(sheet.Circle{Pen: a.Pen, Centre: a.Centre, Radius: a.Radius})
		return
	}
	from, to := a.Start, a.Start%sheet.FullTurn+a.Sweep
	if a.Sweep < 0 {
		from, to = to, from
	}
	e.reach(a.Strokes()[0]...)
	e.begin("ARC", a.Pen)
	e.point(e.out, 0, a.Centre)
	e.out.add(40, e.length(a.Radius))
	e.out.add(50, degrees(from))
	e.out.add(51, degrees(to))
	if a.Pie {
		first, last := a.Ends()
		e.lines(a.Pen, [][]sheet.Point{{last, a.Centre, first}}, false)
	}
}

// Values of the horizontal alignment of a text.
var alignments = [...]int{sheet.Start: 0, sheet.Middle: 1, sheet.End: 2}

func (e *entities) text(t sheet.Text) {
	words := escape(t.Words)
	at := t.Baseline()
	if words == "" || slices.ContainsFunc(e.clips, func(c []sheet.Point) bool { return !inside(at, c) }) {
		return
	}
	width := font.Width(t.Lettering, t.Words)
	back := [...]sheet.Paper{sheet.Start: 0, sheet.Middle: width / 2, sheet.End: width}[t.Align]
	first := sheet.Polar(at, -back, t.Turn)
	e.reach(first, at)
	e.layers.use(e.layer)
	e.out.add(0, "TEXT")
	e.out.add(8, e.layer)
	e.out.whole(62, colourIndex(t.Lettering.Style().Colour))
	e.point(e.out, 0, first)
	e.out.add(40, e.length(t.Lettering.Style().Height))
	e.out.add(1, words)
	e.out.add(50, degrees(t.Turn))
	e.out.add(7, textStyle)
	if t.Align != sheet.Start {
		e.out.whole(72, alignments[t.Align])
		e.point(e.out, 1, at)
	}
}
