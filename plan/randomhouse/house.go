package randomhouse

import (
	"fmt"
	"strings"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

func (w *writer) house() *file {
	f := &file{head: "# A random house.\n"}
	m := w.m
	units := "imperial"
	if m.Metric {
		units = "metric"
	}
	f.add("[house]", str("name", "Random house"), str("units", units), fmt.Sprintf("north = %d", w.north()))
	f.add("[[level]]", str("id", "ground"), length("ceiling", standard(m.Metric).ceiling))
	w.outerRun(f)
	for i := range m.Walls {
		if wall := &m.Walls[i]; !wall.Exterior {
			w.innerRun(f, wall)
		}
	}
	for i := range m.Rooms {
		r := &m.Rooms[i]
		f.add("[[room]]", str("id", r.ID), str("name", "Room "+r.ID), w.point("at", r.At))
	}
	w.openings(f)
	for i := range m.Devices {
		d := &m.Devices[i]
		f.add("[[device]]", str("id", d.ID), str("kind", d.Kind), str("wall", m.Walls[d.Wall].ID),
			length("at", d.At), length("height", d.Height), str("room", m.Rooms[d.Room].ID), str("feed", d.Feed))
	}
	w.attic(f)
	w.roof(f)
	w.inAttic(f)
	w.stack(f)
	return f
}

// north is the bearing of the image's Y: true north keeps to the house. It
// is not random, so that all eight images say something else.
func (w *writer) north() int {
	const bearing = 30 // of Y before the symmetry
	turned := bearing
	if w.sym&1 != 0 {
		turned = -turned
	}
	if w.sym&2 != 0 {
		turned = 180 - turned
	}
	if w.swaps() {
		turned = 270 - turned
	}
	return (turned%360 + 360) % 360
}

// outerRun writes the outer walls as one run, from the image of the outline's
// first corner. In a mirror one walks it clockwise, along the other face.
func (w *writer) outerRun(f *file) {
	m := w.m
	var legs, names []string
	for i := range m.Outline {
		wall := &m.Walls[i]
		legs = append(legs, w.leg(wall))
		names = append(names, fmt.Sprintf("%q", wall.ID))
	}
	f.add("[[wall]]", str("id", "outer"), w.point("start", m.Outline[0]), str("run", strings.Join(legs, ", ")),
		"names = ["+strings.Join(names, ", ")+"]", flag("closes", true), str("face", w.side(true)),
		flag("exterior", true), str("frame", m.Walls[0].Frame))
}

func (w *writer) leg(wall *Wall) string {
	return w.heading(wall.A, wall.B) + " " + wall.Length().String()
}

// innerRun writes a wall between rooms, from where it meets another.
func (w *writer) innerRun(f *file, wall *Wall) {
	blocks := ""
	if len(wall.Blocks) > 0 {
		blocks = fmt.Sprintf("fire_blocks = [%q]", wall.Blocks[0].String())
	}
	f.add("[[wall]]", str("id", wall.ID), w.start(wall), str("run", w.leg(wall)), str("frame", wall.Frame), blocks)
}

// start is where a wall begins: on another wall's line, or a point for every
// other one, so that both ways to write it occur.
func (w *writer) start(wall *Wall) string {
	if strings.ContainsAny(wall.ID[len(wall.ID)-1:], "02468") {
		return w.point("start", wall.A)
	}
	for i := range w.m.Walls {
		other := &w.m.Walls[i]
		if at, ok := other.along(wall.A); ok && other != wall {
			return fmt.Sprintf("start = { wall = %q, at = %q }", other.ID, at.String())
		}
	}
	return w.point("start", wall.A)
}

func (w *writer) openings(f *file) {
	for i := range w.m.Openings {
		o := &w.m.Openings[i]
		wall := &w.m.Walls[o.Wall]
		at, from := o.At, "start"
		if i%2 == 1 {
			at, from = wall.Length()-o.At-o.Width, "end"
		}
		lines := []string{
			str("id", o.ID), str("wall", wall.ID), str("kind", o.Kind), length("at", at), str("from", from),
			length("width", o.Width), length("head", o.Head),
		}
		switch o.Kind {
		case "window":
			lines = append(lines, length("sill", o.Sill))
		case "door":
			hinge := "start"
			if o.HingeEnd {
				hinge = "end"
			}
			lines = append(lines, str("hinge", hinge), str("swing", w.side(o.SwingRight)))
		}
		f.add("[[opening]]", lines...)
	}
}

// across is the image of a coordinate on one axis.
func (w *writer) across(key string, x measure.Length, onX bool) string {
	p := geom.Point{Y: x}
	if onX {
		p = geom.Point{X: x}
	}
	p = w.sym.Apply(p)
	return length(key, p.X+p.Y)
}

func (w *writer) attic(f *file) {
	a := &w.m.Attic
	kind := "sawn"
	if a.Truss {
		kind = "truss"
	}
	decking := ""
	for _, r := range a.Decking {
		from, to := w.corners(r)
		decking = fmt.Sprintf("decking = [ { %s, %s } ]", from, to)
	}
	f.add(w.several("attic"), append(w.onStack(str("id", "attic"), str("level", "ground"), str("roof", "roof")), str("joists_run", w.runs(a.AlongY)), str("joist", kind), length("spacing", a.Spacing),
		w.across("first", a.First, a.AlongY), str("size", a.Size), length("insulation", a.Insulation), decking)...)
}

func (w *writer) roof(f *file) {
	r := &w.m.Roof
	lines := []string{str("kind", "hip"), fmt.Sprintf(`pitch = "%d/12"`, r.Rise), length("overhang", r.Overhang), length("spacing", r.Spacing)}
	if len(r.Gables) > 0 {
		var names []string
		for _, i := range r.Gables {
			names = append(names, fmt.Sprintf("%q", w.m.Walls[i].ID))
		}
		lines[0] = str("kind", "gable") + "\ngables = [" + strings.Join(names, ", ") + "]"
	}
	first := w.sym.Apply(r.First)
	lines = append(lines, length("first_x", first.X), length("first_y", first.Y))
	if r.Truss {
		lines = append(lines, str("heel", "8in"), str("chord", "2x4"))
	} else {
		lines = append(lines, str("rafter", "2x6"))
	}
	f.add(w.several("roof"), append(w.onStack(str("id", "roof"), str("level", "ground")), lines...)...)
}

// inAttic writes the hatch, obstacles, eaves, power and marks.
func (w *writer) inAttic(f *file) {
	m := w.m
	f.add("[[hatch]]", str("id", "hatch"), str("room", m.Rooms[m.Hatch.Room].ID), w.spot("at", m.Hatch.Room, m.Hatch.Centre),
		w.extents("size", m.Hatch.Width, m.Hatch.Height))
	for i := range m.Obstacles {
		o := &m.Obstacles[i]
		from, to := w.corners(o.Area)
		f.add("[[obstacle]]", str("id", o.ID), str("kind", o.Kind), from, to, length("bottom", o.Bottom), length("top", o.Top))
	}
	for _, s := range m.Soffits {
		w.eave(f, "[[soffit]]", s)
	}
	for _, s := range m.Baffles {
		w.eave(f, "[[baffle]]", s)
	}
	for i, run := range m.Power {
		var points []string
		for _, p := range run {
			points = append(points, w.pair(w.sym.Apply(p)))
		}
		f.add("[[power]]", str("id", fmt.Sprintf("run%d", i+1)), "path = ["+strings.Join(points, ", ")+"]")
	}
	for i, p := range m.Marks {
		f.add("[[mark]]", str("id", fmt.Sprintf("m%d", i+1)), str("kind", "vent"), w.point("at", p), str("seen", "both"))
	}
}

func (w *writer) eave(f *file, table string, s Stretch) {
	f.add(table, str("id", s.ID), str("wall", w.m.Walls[s.Wall].ID), length("at", s.At), length("width", s.Width))
}
