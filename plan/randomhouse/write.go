package randomhouse

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A standards has the sizes that a house file does not say, since they are
// the defaults of its units.
type standards struct {
	stud                     map[string]measure.Length
	board, cladding, ceiling measure.Length
}

func standard(metric bool) standards {
	s := standards{
		stud:  map[string]measure.Length{"2x4": 7 * measure.Inch / 2, "2x6": 11 * measure.Inch / 2},
		board: measure.Inch / 2, cladding: measure.Inch,
		ceiling: 96 * measure.Inch,
	}
	if metric {
		s.board, s.cladding = 25*measure.Millimetre/2, 25*measure.Millimetre
		s.ceiling = 2400 * measure.Millimetre
	}
	return s
}

// A file is tables in their order; the first is what comes before all tables.
type file struct {
	head   string
	tables []string
}

// add appends a table of lines of keys, leaving out empty ones.
func (f *file) add(name string, lines ...string) {
	var b strings.Builder
	b.WriteString(name + "\n")
	for _, l := range lines {
		if l != "" {
			b.WriteString(l + "\n")
		}
	}
	f.tables = append(f.tables, b.String())
}

// text is the whole file, shuffled if a seed is given.
func (f *file) text(shuffle uint64) string {
	if shuffle != 0 {
		rng := rand.New(rand.NewPCG(shuffle, 1))
		first := slices.Clone(f.tables)
		rng.Shuffle(len(f.tables), func(i, j int) { f.tables[i], f.tables[j] = f.tables[j], f.tables[i] })
		keepOrder(f.tables, first)
	}
	return f.head + strings.Join(f.tables, "\n")
}

// keepOrder puts the tables whose first counts back in the order of the file
// before it was shuffled.
func keepOrder(tables, before []string) {
	for _, name := range []string{"[[level]]", "[[roof]]"} {
		next := 0
		for i, t := range tables {
			if !strings.HasPrefix(t, name) {
				continue
			}
			for !strings.HasPrefix(before[next], name) {
				next++
			}
			tables[i] = before[next]
			next++
		}
	}
}

// A writer writes a model under a symmetry. Walls keep their starts, so that
// a distance along a wall is the same in all images; what is left and right,
// along X and along Y, changes.
type writer struct {
	m   *Model
	sym geom.Symmetry
}

func str(key, value string) string { return fmt.Sprintf("%s = %q", key, value) }

func length(key string, l measure.Length) string { return str(key, l.String()) }

func flag(key string, on bool) string {
	if !on {
		return ""
	}
	return key + " = true"
}

// point writes the image of p.
func (w *writer) point(key string, p geom.Point) string { return key + " = " + w.pair(w.sym.Apply(p)) }

func (w *writer) pair(p geom.Point) string {
	return fmt.Sprintf("[%q, %q]", p.X.String(), p.Y.String())
}

// side writes left or right, as they were before the symmetry.
func (w *writer) side(right bool) string {
	if right != w.sym.Mirrors() {
		return "right"
	}
	return "left"
}

// heading is the direction from a to b in the image.
func (w *writer) heading(a, b geom.Point) string {
	switch d := w.sym.Apply(b).Sub(w.sym.Apply(a)); {
	case d.X > 0:
		return "E"
	case d.X < 0:
		return "W"
	case d.Y > 0:
		return "N"
	default:
		return "S"
	}
}

// swaps reports whether X and Y change places.
func (w *writer) swaps() bool { return w.sym&4 != 0 }

// runs is the axis N or E that the image of a line along Y or X runs along.
func (w *writer) runs(alongY bool) string {
	if alongY != w.swaps() {
		return "N"
	}
	return "E"
}

// extents writes a size along X and Y.
func (w *writer) extents(key string, x, y measure.Length) string {
	if w.swaps() {
		x, y = y, x
	}
	return key + " = " + w.pair(geom.Point{X: x, Y: y})
}

// corners writes the two corners of the image of r.
func (w *writer) corners(r geom.Rect) (from, to string) {
	r = w.sym.Rect(r)
	return "from = " + w.pair(r.Min), "to = " + w.pair(r.Max)
}

// fromCorner writes a place on a wall as a room's inhabitant measures it: from
// the inside corner on the left of somebody who faces the wall.
func (w *writer) fromCorner(p Place) []string {
	return []string{
		str("room", w.m.Rooms[p.Room].ID), str("wall", w.m.Walls[p.Wall].ID),
		length("at", w.m.fromLeft(p)), str("from", w.side(false)), length("height", p.Height),
	}
}

// sideAt is the side of the outline of a place's room that the place is on, -1
// if it is on none.
func (m *Model) sideAt(p Place) int {
	r := &m.Rooms[p.Room]
	at := m.Walls[p.Wall].PointAt(p.At)
	for k, a := range r.Outline {
		b := r.Outline[(k+1)%len(r.Outline)]
		if r.Walls[k] == p.Wall && (geom.Rect{Min: a, Max: b}).Canon().Contains(at) {
			return k
		}
	}
	return -1
}

// fromLeft is how far a place is from the left inside corner of its room, in
// the frame before the symmetry. The left corner is where the side of the
// room's outline ends, less the wall there.
func (m *Model) fromLeft(p Place) measure.Length {
	r := &m.Rooms[p.Room]
	next := (m.sideAt(p) + 1) % len(r.Outline)
	beside := m.inside(r.Walls[next])
	if !turnsLeft(r.Outline, next) {
		beside = -beside
	}
	return geom.Dist(m.Walls[p.Wall].PointAt(p.At), r.Outline[next]) - beside
}

// inside is how far the finished face of a wall in a room is from its taped
// line.
func (m *Model) inside(wall int) measure.Length {
	if w := &m.Walls[wall]; w.Exterior {
		return w.Thick
	}
	return m.Walls[wall].Thick / 2
}

// spot writes a place in the ceiling of a room. In a room of four corners it
// is measured from the two faces that are on the west and south before the
// symmetry.
func (w *writer) spot(key string, room int, p geom.Point) string {
	r := &w.m.Rooms[room]
	if len(r.Outline) != 4 {
		return w.point(key, p)
	}
	low := r.Outline.Bounds().Min
	words := [2]string{w.faces(geom.Point{X: -1}), w.faces(geom.Point{Y: -1})}
	var from [2]measure.Length
	for k, a := range r.Outline {
		b := r.Outline[(k+1)%4]
		if a.X == low.X && b.X == low.X {
			from[0] = p.X - low.X - w.m.inside(r.Walls[k])
		}
		if a.Y == low.Y && b.Y == low.Y {
			from[1] = p.Y - low.Y - w.m.inside(r.Walls[k])
		}
	}
	return fmt.Sprintf("%s = { room = %q, %s = %q, %s = %q }", key, r.ID, words[0], from[0].String(), words[1], from[1].String())
}

// faces names the side of a room that is in a direction from its middle.
func (w *writer) faces(d geom.Point) string {
	word := map[string]string{"E": "east", "W": "west", "N": "north", "S": "south"}
	return word[w.heading(geom.Point{}, d)]
}
