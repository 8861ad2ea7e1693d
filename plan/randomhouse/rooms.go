package randomhouse

import (
	"fmt"
	"math"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Distances between what is built, in units.
const (
	mostRooms = 300 // that a house file may have; in a building that large they are larger
	minRoom   = 60  // between the walls of a room
	minApart  = 48  // between walls that meet one wall
	endSpace  = 12  // of a wall's ends, where others meet it
)

// outline makes a rectangle, an L or a T in one of its eight positions.
func (g *generator) outline(area float64) geom.Polygon {
	f := math.Sqrt(area)
	size := func(lo, hi int) measure.Length { return g.between(int(float64(lo)*f), int(float64(hi)*f)) }
	w, h := size(320, 520), size(230, 380)
	p := geom.Polygon{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h}, {X: 0, Y: h}}
	// What is left beside a notch is no smaller than half.
	q := g.unit / 4
	x, y := g.within(w/2/q*q, w*2/3/q*q), g.within(h/2/q*q, h*2/3/q*q)
	switch g.IntN(4) {
	case 0:
		p = geom.Polygon{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: y}, {X: x, Y: y}, {X: x, Y: h}, {X: 0, Y: h}}
	case 1:
		third := g.within(w/5/q*q, w/4/q*q)
		p = geom.Polygon{
			{X: 0, Y: 0},
			{X: w, Y: 0},
			{X: w, Y: y},
			{X: w - third, Y: y},
			{X: w - third, Y: h},
			{X: third, Y: h},
			{X: third, Y: y},
			{X: 0, Y: y},
		}
	}
	p = geom.Symmetry(g.IntN(int(geom.Symmetries))).Polygon(p)
	to := p.Bounds().Min
	by := geom.Point{X: g.between(0, 40), Y: g.between(0, 40)}.Sub(to)
	for i := range p {
		p[i] = p[i].Add(by)
	}
	return p
}

// shell makes the outer walls, and one room of all that they enclose.
func (g *generator) shell(area float64) {
	m := g.Model
	m.Outline = g.outline(area)
	frame := pick(&g.dice, "2x4", "2x4", "2x6")
	all := Room{Outline: m.Outline}
	for i, a := range m.Outline {
		w := Wall{ID: fmt.Sprintf("o%d", i+1), A: a, B: m.Outline[(i+1)%len(m.Outline)], Frame: frame, Exterior: true}
		w.Thick = g.thickness(&w)
		m.Walls = append(m.Walls, w)
		all.Walls = append(all.Walls, i)
	}
	m.Rooms = []Room{all}
}

// thickness is that of a finished wall.
func (g *generator) thickness(w *Wall) measure.Length {
	std := standard(g.Model.Metric)
	t := std.stud[w.Frame] + 2*std.board
	if w.Exterior {
		t += std.cladding - std.board
	}
	return t
}

// split divides the largest rooms until there are enough of them.
func (g *generator) split() {
	m := g.Model
	each := 144 * float64(g.IntN(110)+110) // square units
	unit := float64(g.unit) / float64(measure.Metre)
	want := min(int(m.Outline.SquareMetres()/(each*unit*unit))+1, mostRooms)
	done := map[string]bool{}
	for i := range m.Rooms {
		m.Rooms[i].ID = "r1"
	}
	for len(m.Rooms) < max(want, 2) {
		at := g.largest(done)
		if at < 0 {
			return
		}
		if !g.splitRoom(at) {
			done[m.Rooms[at].ID] = true
		}
	}
}

func (g *generator) largest(done map[string]bool) int {
	best, area := -1, 0.0
	for i := range g.Model.Rooms {
		r := &g.Model.Rooms[i]
		if a := r.Outline.SquareMetres(); !done[r.ID] && a > area {
			best, area = i, a
		}
	}
	return best
}

// A chord crosses a room between two of its sides.
type chord struct {
	a, b geom.Point
	i, j int // the sides that a and b are on
}

// splitRoom tries to put a wall through room k.
func (g *generator) splitRoom(k int) bool {
	m := g.Model
	r := m.Rooms[k]
	for range 40 {
		c, ok := g.chord(&r)
		if !ok {
			continue
		}
		w := Wall{ID: fmt.Sprintf("i%d", len(m.Walls)+1), A: c.a, B: c.b, Frame: pick(&g.dice, "2x4", "2x4", "2x4", "2x6")}
		w.Thick = g.thickness(&w)
		if g.one(6) {
			w.Blocks = []measure.Length{g.between(40, 60)}
		}
		for _, side := range [2]int{c.i, c.j} {
			g.meet(r.Walls[side], &w, c)
		}
		m.Walls = append(m.Walls, w)
		n := len(m.Walls) - 1
		p := r.part(c.b, c.j, c.a, c.i, n)
		q := r.part(c.a, c.i, c.b, c.j, n)
		p.ID, q.ID = r.ID, fmt.Sprintf("r%d", len(m.Rooms)+1)
		m.Rooms[k] = p
		m.Rooms = append(m.Rooms, q)
		return true
	}
	return false
}

// meet notes that wall w ends at another.
func (g *generator) meet(other int, w *Wall, c chord) {
	o := &g.Model.Walls[other]
	for _, p := range [2]geom.Point{c.a, c.b} {
		if at, ok := o.along(p); ok {
			o.taken = append(o.taken, stretch{at - w.Thick, at + w.Thick})
		}
	}
}

// along is where on a wall's taped line p lies, if it does.
func (w *Wall) along(p geom.Point) (measure.Length, bool) {
	if (geom.Rect{Min: w.A, Max: w.B}).Canon().Contains(p) {
		return geom.Dist(w.A, p), true
	}
	return 0, false
}

// chord makes a chord through a room, well off its corners and off walls that
// meet its sides from outside.
func (g *generator) chord(r *Room) (chord, bool) {
	alongY := g.one(2)
	flip := func(p geom.Point) geom.Point {
		if alongY {
			return p
		}
		return geom.Point{X: p.Y, Y: p.X}
	}
	b := geom.Rect{Min: flip(r.Outline.Bounds().Min), Max: flip(r.Outline.Bounds().Max)}
	at := g.within(b.Min.X+g.in(minRoom), b.Max.X-g.in(minRoom))
	var ends []chord // crossings, as points on a side
	for i, p := range r.Outline {
		u, v := flip(p), flip(r.Outline[(i+1)%len(r.Outline)])
		if max(u.X-at, at-u.X) < g.in(minRoom) {
			return chord{}, false
		}
		if (u.X < at) != (v.X < at) {
			ends = append(ends, chord{a: flip(geom.Point{X: at, Y: u.Y}), i: i})
		}
	}
	slices.SortFunc(ends, func(c, d chord) int { return int(sign(flip(c.a).Y - flip(d.a).Y)) })
	if len(ends) < 2 {
		return chord{}, false
	}
	k := 2 * g.IntN(len(ends)/2)
	c := chord{a: ends[k].a, i: ends[k].i, b: ends[k+1].a, j: ends[k+1].i}
	if g.one(2) {
		c = chord{a: c.b, i: c.j, b: c.a, j: c.i}
	}
	return c, g.clearOfMeetings(r.Walls[c.i], c.a) && g.clearOfMeetings(r.Walls[c.j], c.b)
}

func (g *generator) clearOfMeetings(wall int, p geom.Point) bool {
	w := &g.Model.Walls[wall]
	at, _ := w.along(p)
	for _, t := range w.taken {
		if mid := (t.lo + t.hi) / 2; max(mid-at, at-mid) < g.in(minApart) {
			return false
		}
	}
	return true
}

// part is the part of a room from point p on side i round to point q on side
// j, and back along wall w.
func (r *Room) part(p geom.Point, i int, q geom.Point, j, w int) Room {
	n := len(r.Outline)
	out := Room{Outline: geom.Polygon{p}, Walls: []int{r.Walls[i]}}
	for k := (i + 1) % n; ; k = (k + 1) % n {
		out.Outline = append(out.Outline, r.Outline[k])
		out.Walls = append(out.Walls, r.Walls[k])
		if k == j {
			break
		}
	}
	out.Outline = append(out.Outline, q)
	out.Walls = append(out.Walls, w)
	return out
}

func sign(l measure.Length) measure.Length {
	switch {
	case l > 0:
		return 1
	case l < 0:
		return -1
	}
	return 0
}
