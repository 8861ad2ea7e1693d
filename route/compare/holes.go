package compare

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/work"
)

// A Hole is one that is only bored in one of the plans, elsewhere, or with
// another size or number of cables.
type Hole struct {
	How How
	In  [2]int // index in Result.Holes, -1 where it is not bored
	// By is how far it moved: along its wall and up if it is in one.
	By measure.Length
	// Size is true if other bits are used, or another number of them.
	Size   bool
	Cables [2]int
	// There is the id of the hole or conduit that is there and that the other
	// plan goes through in its place, if it is bored in one plan only.
	There string
}

// A Reuse is a hole or conduit that is there and that the plans use differently.
type Reuse struct {
	ID     string
	How    How
	In     [2]int // index in Result.Reused, -1 where it is not used
	Cables [2]int
}

// Near is how far apart two holes may be that are taken for one that moved,
// where they are not in one free stretch: the widest common spacing of framing
// (24 in; common practice, no source).
const Near = 24 * measure.Inch

// A match is a pair of holes that may be the same.
type match struct {
	in      [2]int
	nearest bool // not in one free stretch
	by      measure.Length
	at      [2]geom.Point3 // sorted, so that they do not tell A from B
}

// holes matches the holes of the two plans, the surest pairs first.
func (d *Difference) holes() {
	a, b := d.Plans[0], d.Plans[1]
	var all []match
	for i := range a.Holes {
		for j := range b.Holes {
			if m, ok := matchOf(a, b, i, j); ok {
				all = append(all, m)
			}
		}
	}
	slices.SortStableFunc(all, func(m, n match) int {
		return cmp.Or(compareBools(m.nearest, n.nearest), cmp.Compare(m.by, n.by), comparePoints(m.at[0], n.at[0]), comparePoints(m.at[1], n.at[1]))
	})
	taken := [2][]bool{make([]bool, len(a.Holes)), make([]bool, len(b.Holes))}
	for side, p := range d.Plans {
		d.bored[side] = make([]Hole, len(p.Holes))
	}
	for _, m := range all {
		if taken[0][m.in[0]] || taken[1][m.in[1]] {
			continue
		}
		h, k := &a.Holes[m.in[0]], &b.Holes[m.in[1]]
		x := Hole{In: m.in, By: m.by, Size: !slices.Equal(sizes(h), sizes(k)), Cables: [2]int{h.Cables, k.Cables}}
		for side, i := range m.in {
			taken[side][i] = true
			d.bored[side][i] = x
		}
	}
	for side, p := range d.Plans {
		for i := range p.Holes {
			if !taken[side][i] {
				d.bored[side][i] = alone(p, d.Plans[1-side], side, i)
			}
			if x := d.bored[side][i]; x.differs() && (side == 0 || x.How == Added) {
				d.Holes = append(d.Holes, x)
			}
		}
	}
}

// differs reports whether anything of the hole is not the same.
func (h *Hole) differs() bool {
	return h.How != Changed || h.By != 0 || h.Size || h.Cables[0] != h.Cables[1]
}

// HoleOf tells what became of hole i of a plan, and whether it is not the same
// in the other.
func (d *Difference) HoleOf(side, i int) (Hole, bool) {
	h := d.bored[side][i]
	return h, h.differs()
}

// alone is a hole that only one plan bores.
func alone(w, other *work.Work, side, i int) Hole {
	x := Hole{In: [2]int{-1, -1}}
	x.In[side], x.Cables[side] = i, w.Holes[i].Cables
	x.How = howOf(x.In)
	place := &w.Graph.Holes[w.Holes[i].Place]
	for j := range other.Reused {
		u := &other.Reused[j]
		if place.Wall >= 0 && u.Wall >= 0 && place.Kind == u.Kind && wallOf(w, place.Wall) == wallOf(other, u.Wall) && far(u.Along, place.Along) <= place.Free/2 {
			x.There = u.ID
			break
		}
	}
	return x
}

// sizes are the diameters of the bores of a hole, in order.
func sizes(h *route.Hole) []measure.Length {
	var out []measure.Length
	for _, b := range h.Bores {
		out = append(out, b.Bit)
	}
	slices.Sort(out)
	return out
}

// matchOf reports whether hole i of a can be hole j of b, and how far off it is.
func matchOf(a, b *work.Work, i, j int) (m match, ok bool) {
	p, q := &a.Graph.Holes[a.Holes[i].Place], &b.Graph.Holes[b.Holes[j].Place]
	if p.Kind != q.Kind {
		return m, false
	}
	m = match{in: [2]int{i, j}, nearest: true, by: apart(p.At, q.At), at: [2]geom.Point3{p.At, q.At}}
	if comparePoints(p.At, q.At) > 0 {
		m.at = [2]geom.Point3{q.At, p.At}
	}
	if p.Wall < 0 || q.Wall < 0 {
		return m, p.Wall < 0 && q.Wall < 0 && m.by <= Near
	}
	v, w := wallOf(a, p.Wall), wallOf(b, q.Wall)
	if v != w {
		// Only a wall that has got another name can be the same.
		return m, !hasWall(a, w) && !hasWall(b, v) && m.by <= Near
	}
	along := far(p.Along, q.Along)
	m.by = geom.Dist(geom.Point{X: along}, geom.Point{Y: q.At.Z - p.At.Z})
	m.nearest = along > min(p.Free, q.Free)/2
	return m, m.by <= Near || !m.nearest
}

func wallOf(w *work.Work, i int) string { return w.Job.House.Walls[i].ID }

func hasWall(w *work.Work, id string) bool {
	for i := range w.Job.House.Walls {
		if wallOf(w, i) == id {
			return true
		}
	}
	return false
}

func far(a, b measure.Length) measure.Length { return max(a-b, b-a) }

func compareBools(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// reuses compares what is there and used.
func (d *Difference) reuses() {
	var ids [2][]string
	for side, p := range d.Plans {
		for i := range p.Reused {
			ids[side] = append(ids[side], p.Reused[i].ID)
		}
	}
	for _, in := range pairs(ids[0], ids[1], compareTags) {
		x := Reuse{How: howOf(in), In: in}
		for side, i := range in {
			if i >= 0 {
				x.ID, x.Cables[side] = d.Plans[side].Reused[i].ID, d.Plans[side].Reused[i].Cables
			}
		}
		if x.Cables[0] != x.Cables[1] || x.How != Changed {
			d.Reused = append(d.Reused, x)
		}
	}
}
