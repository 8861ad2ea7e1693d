package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/roof"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// drawJoists draws every joist between the outer faces of the plates.
func (d *drawing) drawJoists() {
	h, a := d.res.Job.House, d.space()
	g := d.sheet.Group("joists", "joists", fmt.Sprintf("Joists, %s on centre", h.Units.Format(a.Spacing)))
	d.ground = g
	for _, c := range route.JoistCentres(h, a) {
		for _, s := range stretches(a.Edges(), c, a.AlongY) {
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

// space is the framing space that is drawn, or lies over the level that is.
func (d *drawing) space() *plan.Space {
	h := d.res.Job.House
	if d.scope.space >= 0 {
		return h.Spaces[d.scope.space]
	}
	return h.Attic
}

// stretches are the parts of the line at coordinate c, along Y or X, that lie
// in an odd number of rectilinear outlines.
func stretches(outlines []geom.Polygon, c measure.Length, alongY bool) [][2]measure.Length {
	var cuts []measure.Length
	for _, p := range outlines {
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

// roofs are the roofs that belong to what is drawn: the one over an attic, or
// those on a level's plates.
func (d *drawing) roofs() []*plan.Roof {
	h := d.res.Job.House
	var out []*plan.Roof
	for i, r := range h.Roofs {
		if d.scope.space >= 0 && h.Spaces[d.scope.space].Roof == i || d.scope.space < 0 && r.Level == d.scope.level {
			out = append(out, r)
		}
	}
	return out
}

// drawRoof draws the creases and edges of the roof.
func (d *drawing) drawRoof(creases bool) {
	g := d.sheet.Group("roof", "roof", "Roof")
	for _, r := range d.roofs() {
		if r.Surface == nil {
			for _, o := range geom.AreaOf(r.Outline).Outset(r.Overhang).Outlines {
				g.Polygon(sheet.PenEave, d.view.Points(o))
			}
			continue
		}
		for _, l := range r.Surface.Lines() {
			pen := roofPens[l.Kind]
			if creases || pen == sheet.PenEave {
				g.Line(pen, d.view.Point(flat(l.A)), d.view.Point(flat(l.B)))
			}
		}
	}
}

// drawDecking draws the boards one can walk on, as wide as boards are.
func (d *drawing) drawDecking() {
	g := d.sheet.Group("decking", "decking", "Decking")
	const board = 12 * measure.Inch
	for i, r := range d.space().Decking {
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
		if o.Space != d.scope.space {
			continue
		}
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

// drawPower draws the power cables in the space.
func (d *drawing) drawPower() {
	g := d.sheet.Group("power", "power", "Power cables")
	for i := range d.res.Job.House.PowerRuns {
		run := &d.res.Job.House.PowerRuns[i]
		if run.Space != d.scope.space {
			continue
		}
		at := d.view.Points(run.Path)
		g.Group(sheet.ID("power", run.ID), "power", "Power cable "+run.ID).Polyline(sheet.PenPower, at...)
		d.ask(ask{
			id: "power-" + run.ID, along: at, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: join2("power", run.ID)}},
		})
	}
}

// drawMarks draws the things to measure from: a circle quartered by a cross.
func (d *drawing) drawMarks() {
	g := d.sheet.Group("marks", "marks", "Marks to measure from")
	const r = 1500 * sheet.Micrometre
	for i := range d.res.Job.House.Marks {
		m := &d.res.Job.House.Marks[i]
		if m.Space != d.scope.space {
			continue
		}
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
