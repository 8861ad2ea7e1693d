package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/roof"
	"topplate/plan/rule"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// drawJoists draws every joist between the outer faces of the plates.
func (d *drawing) drawJoists() {
	h := d.res.Job.House
	a := h.Attic
	g := d.sheet.Group("joists", "joists", fmt.Sprintf("Joists, %s on centre", h.Units.Format(a.Spacing)))
	d.ground = g
	for _, c := range route.JoistCentres(h, h.Attic) {
		for _, s := range stretches(h.PlateLine, c, a.AlongY) {
			r := geom.Rect{Min: geom.Point{X: c - a.Width/2, Y: s[0]}, Max: geom.Point{X: c + a.Width/2, Y: s[1]}}
			if !a.AlongY {
				r = geom.Rect{Min: geom.Point{X: s[0], Y: c - a.Width/2}, Max: geom.Point{X: s[1], Y: c + a.Width/2}}
			}
			d.drawJoist(g, d.view.Box(r))
		}
	}
}

// thinnest is the width on paper below which a joist is one line.
const thinnest = 600 * sheet.Micrometre

func (d *drawing) drawJoist(g *sheet.Group, b sheet.Box) {
	switch c := b.Centre(); {
	case min(b.Width(), b.Height()) >= thinnest:
		g.Rect(sheet.PenJoist, b)
	case b.Width() < b.Height():
		g.Line(sheet.PenJoist, sheet.Pt(c.X, b.Min.Y), sheet.Pt(c.X, b.Max.Y))
	default:
		g.Line(sheet.PenJoist, sheet.Pt(b.Min.X, c.Y), sheet.Pt(b.Max.X, c.Y))
	}
}

// stretches are the parts of the line at coordinate c, along Y or X, that lie
// in a rectilinear outline.
func stretches(p geom.Polygon, c measure.Length, alongY bool) [][2]measure.Length {
	var cuts []measure.Length
	for i, a := range p {
		b := p[(i+1)%len(p)]
		u1, u2, v := a.Y, b.Y, a.X
		if alongY {
			u1, u2, v = a.X, b.X, a.Y
		}
		if (u1 <= c) != (u2 <= c) {
			cuts = append(cuts, v)
		}
	}
	slices.Sort(cuts)
	var out [][2]measure.Length
	for i := 1; i < len(cuts); i += 2 {
		out = append(out, [2]measure.Length{cuts[i-1], cuts[i]})
	}
	return out
}

var roofPens = [...]sheet.Pen{
	roof.Ridge: sheet.PenRoof, roof.Hip: sheet.PenRoof, roof.Valley: sheet.PenRoof,
	roof.Eave: sheet.PenEave, roof.Rake: sheet.PenEave,
}

// drawRoof draws the creases and edges of the roof.
func (d *drawing) drawRoof(creases bool) {
	g := d.sheet.Group("roof", "roof", "Roof")
	for _, l := range d.res.Job.House.Roof.Surface.Lines() {
		pen := roofPens[l.Kind]
		if creases || pen == sheet.PenEave {
			g.Line(pen, d.view.Point(flat(l.A)), d.view.Point(flat(l.B)))
		}
	}
}

// zones are the outlines of where one can stand, crawl and reach by hand, from
// the clear height over the joists.
func (d *drawing) zones() (stand, crawl, arm []geom.Polygon) {
	job := d.res.Job
	book := job.Book()
	s, depth := job.House.Roof.Surface, job.House.Attic.Depth
	crawlAt := book.Length(rule.ReachCrawl)
	p := job.House.Roof.Pitch
	rise := job.Tools.ArmReach * measure.Length(p.Rise) / measure.Length(p.Run)
	armAt := max(book.Length(rule.ReachArmHeight), crawlAt-rise)
	return s.ClearContour(book.Length(rule.ReachStand) + depth), s.ClearContour(crawlAt + depth), s.ClearContour(armAt + depth)
}

// drawZones hatches what is worked at in each way, denser where it is worse,
// and leaves gaps for the labels.
func (d *drawing) drawZones(gaps []sheet.Box) {
	stand, crawl, arm := d.zones()
	g := d.zoneGroup
	ring := func(sets ...[]geom.Polygon) [][]sheet.Point {
		var out [][]sheet.Point
		for _, set := range sets {
			for _, p := range set {
				out = append(out, d.view.Points(p))
			}
		}
		return out
	}
	g.Hatch(sheet.HatchCrawl, ring(crawl, stand), gaps...)
	g.Hatch(sheet.HatchReach, ring(arm, crawl), gaps...)
	g.Hatch(sheet.HatchRod, ring([]geom.Polygon{d.res.Job.House.PlateLine}, arm), gaps...)
	for _, set := range [][]geom.Polygon{stand, crawl, arm} {
		for _, r := range ring(set) {
			g.Polygon(sheet.PenThin, r)
		}
	}
	if d.tile != nil {
		d.tile.cutGroup(g)
	}
}

// drawDecking draws the boards one can walk on, as wide as boards are.
func (d *drawing) drawDecking() {
	g := d.sheet.Group("decking", "decking", "Decking")
	const board = 12 * measure.Inch
	for i, r := range d.res.Job.House.Attic.Decking {
		b := d.view.Box(r)
		g.Rect(sheet.PenMedium, b)
		for y := b.Min.Y + d.view.Length(board); y < b.Max.Y; y += d.view.Length(board) {
			g.Line(sheet.PenThin, sheet.Pt(b.Min.X, y), sheet.Pt(b.Max.X, y))
		}
		d.ask(ask{
			id: fmt.Sprintf("decking-%d", i+1), at: b.Centre(), symbol: b, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: "decking"}},
		})
	}
}

// drawObstacles draws what is in the way, hatched, with its clearance.
func (d *drawing) drawObstacles() {
	g := d.sheet.Group("obstacles", "obstacles", "Obstacles")
	for i := range d.res.Job.House.Obstacles {
		o := &d.res.Job.House.Obstacles[i]
		b := d.view.Box(o.Area)
		pen := sheet.PenObstacle
		if o.Hot {
			pen = sheet.PenHot
		}
		og := g.Group(sheet.ID("obstacle", o.ID), "obstacle", o.Kind+" "+o.ID)
		og.Rect(pen, b)
		og.Hatch(sheet.HatchObstacle, [][]sheet.Point{b.Corners()})
		if o.Clearance > 0 {
			og.Rect(sheet.PenClearance, d.view.Box(o.Area.Outset(o.Clearance)))
		}
		d.ask(ask{
			id: "obstacle-" + o.ID, at: b.Centre(), symbol: b, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: join2(o.Kind, o.ID)}},
		})
	}
}

// join2 avoids saying a thing twice when its id is its kind.
func join2(kind, id string) string {
	if kind == id {
		return kind
	}
	return kind + " " + id
}

// drawPower draws the power cables in the attic.
func (d *drawing) drawPower() {
	g := d.sheet.Group("power", "power", "Power cables")
	for i := range d.res.Job.House.PowerRuns {
		run := &d.res.Job.House.PowerRuns[i]
		at := d.view.Points(run.Path)
		g.Group(sheet.ID("power", run.ID), "power", "Power cable "+run.ID).Polyline(sheet.PenPower, at...)
		d.ask(ask{
			id: "power-" + run.ID, along: at, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: join2("power", run.ID)}},
		})
	}
}

// drawHatches draws the ways up: an opening with its diagonals.
func (d *drawing) drawHatches() {
	g := d.sheet.Group("hatches", "hatches", "Attic hatches")
	for i := range d.res.Job.House.Hatches {
		h := &d.res.Job.House.Hatches[i]
		b := d.view.Box(h.Area)
		g.Rect(sheet.PenDevice, b)
		g.Line(sheet.PenMedium, b.Min, b.Max)
		g.Line(sheet.PenMedium, sheet.Pt(b.Min.X, b.Max.Y), sheet.Pt(b.Max.X, b.Min.Y))
		d.ask(ask{
			id: "hatch-" + h.ID, at: b.Centre(), symbol: b, leader: true, priority: 10,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: "hatch"}},
		})
	}
}

// drawMarks draws the things to measure from: a circle quartered by a cross.
func (d *drawing) drawMarks() {
	g := d.sheet.Group("marks", "marks", "Marks to measure from")
	const r = 1500 * sheet.Micrometre
	for i := range d.res.Job.House.Marks {
		m := &d.res.Job.House.Marks[i]
		at := d.view.Point(m.At)
		mg := g.Group(sheet.ID("mark", m.ID), "mark", m.Kind+" "+m.ID)
		mg.Circle(sheet.PenMark, at, r)
		mg.Line(sheet.PenThin, sheet.Pt(at.X-2*r, at.Y), sheet.Pt(at.X+2*r, at.Y))
		mg.Line(sheet.PenThin, sheet.Pt(at.X, at.Y-2*r), sheet.Pt(at.X, at.Y+2*r))
		d.ask(ask{
			id: "mark-" + m.ID, at: at, symbol: around(at, 2*r), leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: m.ID}},
		})
	}
}

// drawEaves draws where the soffit opens and where baffles close the rafter
// bays.
func (d *drawing) drawEaves() {
	h := d.res.Job.House
	g := d.sheet.Group("eaves", "eaves", "Soffit openings and eave baffles")
	strip := func(kind, id string, w *plan.Wall, from, to measure.Length, out sheet.Paper, pen sheet.Pen) {
		side := w.Out
		dir := turnOfHeading(w.Faces(side))
		a, b := d.view.Point(w.FacePoint(from, side)), d.view.Point(w.FacePoint(to, side))
		box := sheet.Bounds(sheet.Polar(a, out, dir), sheet.Polar(b, out+1500*sheet.Micrometre, dir))
		g.Rect(pen, box)
		d.ask(ask{
			id: kind + "-" + id, at: box.Centre(), symbol: box, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: join2(kind, id)}},
		})
	}
	for i := range h.Soffits {
		s := &h.Soffits[i]
		strip("soffit opening", s.ID, &h.Walls[s.Wall], s.Start, s.End, d.view.Length(h.Roof.Overhang)/2, sheet.PenMedium)
	}
	for i := range h.Baffles {
		s := &h.Baffles[i]
		strip("baffle", s.ID, &h.Walls[s.Wall], s.Start, s.End, 300, sheet.PenSolid)
	}
}
