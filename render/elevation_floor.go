package render

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route"
)

// A framed is the part of a wall, along it, that is under or over a framing
// space.
type framed struct {
	space *plan.Space
	stretch
}

// framedBy are the parts of the wall that lie in spaces of some kind.
func (e *elevation) framedBy(wanted func(*plan.Space) bool) []framed {
	w := e.wall
	at := w.PointAt(0)
	c := at.Y
	if w.AlongY() {
		c = at.X
	}
	var out []framed
	for _, s := range e.res.Job.House.Spaces {
		if !wanted(s) {
			continue
		}
		for _, x := range stretches(s.Edges(), c, w.AlongY()) {
			p, q := geom.Point{X: x[0], Y: c}, geom.Point{X: x[1], Y: c}
			if w.AlongY() {
				p, q = geom.Point{X: c, Y: x[0]}, geom.Point{X: c, Y: x[1]}
			}
			a, b := w.Along(p), w.Along(q)
			f := framed{s, stretch{min(a, b), max(a, b)}}
			u, v := e.across(f.from), e.across(f.to)
			if min(u, v) < e.last && e.first < max(u, v) {
				out = append(out, f)
			}
		}
	}
	return out
}

// over are the spaces over the wall's plates, under those below its floor.
func (e *elevation) over() []framed {
	return e.framedBy(func(s *plan.Space) bool { return s.Below == e.wall.Level })
}

func (e *elevation) under() []framed {
	return e.framedBy(func(s *plan.Space) bool { return s.Above == e.wall.Level })
}

// highest is the height over the wall's floor up to which what is over it is
// drawn, lowest that down to which what is under it is.
func (e *elevation) highest() measure.Length {
	top := e.level().PlateTop
	for _, f := range e.over() {
		top = max(top, e.level().PlateTop+f.space.Depth)
	}
	return top
}

func (e *elevation) lowest() measure.Length {
	var low measure.Length
	for _, f := range e.under() {
		low = min(low, -f.space.Depth-f.space.Subfloor)
	}
	return low
}

// joistsAcross are where the joists of a space cross the wall, along it; none
// if they run as the wall does.
func (e *elevation) joistsAcross(f framed) []measure.Length {
	if e.wall.AlongY() == f.space.AlongY {
		return nil
	}
	var out []measure.Length
	for _, along := range crossings(e.wall, route.JoistCentres(e.res.Job.House, f.space)) {
		if f.from <= along && along <= f.to {
			out = append(out, along)
		}
	}
	return out
}

// drawUnder draws the floor below the wall: its boards, and the ends of the
// joists, or one of them where they run along the wall.
func (e *elevation) drawUnder(d *drawing) {
	under := e.under()
	if len(under) == 0 {
		return
	}
	g := d.sheet.Group("under", "under", "Boards and joists under the floor")
	for _, f := range under {
		s := f.space
		if b, ok := e.box(d, e.across(f.from), e.across(f.to), -s.Subfloor, 0); ok {
			g.Rect(sheet.PenStud, b)
		}
		b, ok := e.box(d, e.across(f.from), e.across(f.to), -s.Subfloor-s.Depth, -s.Subfloor)
		if !ok {
			continue
		}
		if e.wall.AlongY() == s.AlongY {
			g.Rect(sheet.PenJoist, b)
			continue
		}
		g.Line(sheet.PenThin, sheet.Pt(b.Min.X, b.Max.Y), b.Max)
		for _, along := range e.joistsAcross(f) {
			u := e.across(along)
			if b, ok := e.box(d, u-s.Width/2, u+s.Width/2, -s.Subfloor-s.Depth, -s.Subfloor); ok {
				g.Rect(sheet.PenJoist, b)
			}
		}
	}
}
