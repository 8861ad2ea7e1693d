package route

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route/network"
)

// axes turns the attic so that U runs across the joists and V along them.
type axes struct{ alongY bool }

func (a axes) point(u, v measure.Length) geom.Point {
	if a.alongY {
		return geom.Point{X: u, Y: v}
	}
	return geom.Point{X: v, Y: u}
}

func (a axes) uv(p geom.Point) (u, v measure.Length) {
	if a.alongY {
		return p.X, p.Y
	}
	return p.Y, p.X
}

// headingU is the heading of rising U, headingV that of rising V.
func (a axes) headingU() network.Heading {
	if a.alongY {
		return network.East
	}
	return network.North
}

func (a axes) headingV() network.Heading {
	if a.alongY {
		return network.North
	}
	return network.East
}

// joists is a layout of joists or rafters on one axis. Only those whose centre
// lies within stand are there.
type joists struct {
	first, spacing, width, depth measure.Length
	stand                        span
}

// joistsOf is the layout of a space's joists on the U axis. None stands over
// the plates of the end walls.
func joistsOf(h *plan.House, a *plan.Space) joists {
	ax := axes{a.AlongY}
	box := a.Bounds()
	lo, _ := ax.uv(box.Min)
	hi, _ := ax.uv(box.Max)
	var plate measure.Length
	for i := range h.Walls {
		if w := &h.Walls[i]; w.Exterior && w.Level == max(a.Below, 0) {
			plate = max(plate, w.StudDepth)
		}
	}
	return joists{a.First, a.Spacing, a.Width, a.Depth, span{lo, hi}.inset(plate + a.Width/2)}
}

// bay is the number of the joist bay that holds u: bay n lies between joists
// n and n+1, joist 0 being the one the sketch names.
func (j joists) bay(u measure.Length) int {
	d := u - j.first
	n := d / j.spacing
	if d%j.spacing < 0 {
		n--
	}
	return int(n)
}

// centre is the centre line of joist n.
func (j joists) centre(n int) measure.Length {
	return j.first + measure.Length(n)*j.spacing
}

// clear is the stretch between the faces of the joists beside bay n; where one
// of them is not there, it goes on to where that would stand.
func (j joists) clear(n int) span {
	s := span{j.centre(n), j.centre(n + 1)}
	if j.stand.contains(s.lo) {
		s.lo += j.width / 2
	}
	if j.stand.contains(s.hi) {
		s.hi -= j.width / 2
	}
	return s
}

// onJoist reports whether u lies within a joist, its faces not counted.
func (j joists) onJoist(u measure.Length) bool {
	c := j.clear(j.bay(u))
	return u < c.lo || u > c.hi
}

// halvesCrossed is twice the number of joists between u1 and u2, not below it.
// A joist whose centre is at an end counts half, so that a way over it comes to
// the same in both directions.
func (j joists) halvesCrossed(u1, u2 measure.Length) int {
	n := 0
	for k := j.bay(u1); k <= j.bay(u2); k++ {
		c := j.centre(k)
		switch {
		case c < u1 || !j.stand.contains(c):
		case c == u1 || c == u2:
			n++
		default:
			n += 2
		}
	}
	return n
}

// bodies are the joists that overlap s or stand next to it, as spans on the
// axis.
func (j joists) bodies(s span) []span {
	var out []span
	for n := j.bay(s.lo); n <= j.bay(s.hi)+1; n++ {
		if c := j.centre(n); j.stand.contains(c) {
			out = append(out, around(c, j.width/2))
		}
	}
	return out
}

// JoistCentres lists the centre lines of the joists of a space that are taken
// to be there, rising, on the axis across the joists: none stands over the
// plates of the end walls.
func JoistCentres(h *plan.House, s *plan.Space) []measure.Length {
	j := joistsOf(h, s)
	var out []measure.Length
	for n := j.bay(j.stand.lo); j.centre(n) <= j.stand.hi; n++ {
		if j.stand.contains(j.centre(n)) {
			out = append(out, j.centre(n))
		}
	}
	return out
}
