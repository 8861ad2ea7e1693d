package randomhouse

import (
	"fmt"
	"math/rand/v2"
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
		rng.Shuffle(len(f.tables), func(i, j int) { f.tables[i], f.tables[j] = f.tables[j], f.tables[i] })
	}
	return f.head + strings.Join(f.tables, "\n")
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

// fromLeft is how far a place is from the left inside corner of its room, in
// the frame before the symmetry. The left corner is where the side of the
// room's outline ends, less the wall there.
func (m *Model) fromLeft(p Place) measure.Length {
	r := &m.Rooms[p.Room]
	n := len(r.Outline)
	for k, wall := range r.Walls {
		a, b := r.Outline[k], r.Outline[(k+1)%n]
		at := m.Walls[wall].PointAt(p.At)
		if wall != p.Wall || !(geom.Rect{Min: a, Max: b}).Canon().Contains(at) {
			continue
		}
		next := (k + 1) % n
		beside := m.Walls[r.Walls[next]].Thick
		if !m.Walls[r.Walls[next]].Exterior {
			beside /= 2
		}
		in, out := b.Sub(a), r.Outline[(next+1)%n].Sub(b)
		if sign(in.X)*sign(out.Y)-sign(in.Y)*sign(out.X) < 0 {
			beside = -beside
		}
		return geom.Dist(at, b) - beside
	}
	return 0
}
