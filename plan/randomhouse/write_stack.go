package randomhouse

import (
	"fmt"
	"strings"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// The framing under each level of a stack: 2x10 joists and 3/4 in of boards.
const floorDepth = 37*measure.Inch/4 + 3*measure.Inch/4

// fallTo is how much lower the next level is: its ceiling with the board, and
// the floor over it.
func (w *writer) fallTo() measure.Length {
	board := 5 * measure.Inch / 8
	if w.m.Metric {
		board = 15 * measure.Millimetre
	}
	return standard(w.m.Metric).ceiling + board + floorDepth
}

// several names a table that stands several times in a stack.
func (w *writer) several(table string) string {
	if w.m.Stack == nil {
		return "[" + table + "]"
	}
	return "[[" + table + "]]"
}

// onStack are lines that only a stack needs.
func (w *writer) onStack(lines ...string) []string {
	if w.m.Stack == nil {
		return nil
	}
	return lines
}

// stack writes what is under the sketch's level.
func (w *writer) stack(f *file) {
	s := w.m.Stack
	if s == nil {
		return
	}
	ceiling := standard(w.m.Metric).ceiling
	f.add("[[level]]", str("id", "lower"), length("floor", -w.fallTo()), length("ceiling", ceiling))
	w.ring(f, "lower", "lower", s.Lower, str("frame", "2x4"))
	for i := range s.Lower.Walls[len(s.Lower.Outline):] {
		wall := &s.Lower.Walls[len(s.Lower.Outline)+i]
		f.add("[[wall]]", str("id", wall.ID), str("level", "lower"), w.point("start", wall.A), str("run", w.leg(wall)))
	}
	w.storeyRooms(f, "lower", s.Lower, "")
	w.floor(f, "between", "ground", str("over", "lower"))
	for i, r := range s.Rest {
		w.rest(f, fmt.Sprintf("low%d", i+1), r)
	}
	switch s.Below {
	case "basement":
		w.basement(f)
	case "crawl space":
		w.floor(f, "crawl", "lower", str("crawl", "26in"))
		w.hatchAt(f, "crawl-door", "crawl", s.Lower.Rooms[0].At, flag("outside", true))
	}
}

// ring writes the outer walls of a storey.
func (w *writer) ring(f *file, id, level string, s Storey, lines ...string) {
	var legs, names []string
	for i := range s.Outline {
		legs = append(legs, w.leg(&s.Walls[i]))
		names = append(names, fmt.Sprintf("%q", s.Walls[i].ID))
	}
	f.add("[[wall]]", append([]string{
		str("id", id), str("level", level), w.point("start", s.Outline[0]), str("run", strings.Join(legs, ", ")),
		"names = [" + strings.Join(names, ", ") + "]", flag("closes", true), str("face", w.side(true)), flag("exterior", true),
	}, lines...)...)
}

func (w *writer) storeyRooms(f *file, level string, s Storey, ceiling string) {
	for i := range s.Rooms {
		r := &s.Rooms[i]
		f.add("[[room]]", str("id", r.ID), str("name", "Room "+r.ID), str("level", level), w.point("at", r.At), ceiling)
	}
}

// floor writes the joists under a level.
func (w *writer) floor(f *file, id, under, over string) {
	a := &w.m.Attic
	f.add("[[floor]]", str("id", id), str("under", under), over, str("joists_run", w.runs(!a.AlongY)), str("joist", "sawn"), str("spacing", "16in"),
		w.across("first", a.First, !a.AlongY), str("size", "2x10"), str("subfloor", "3/4in"))
}

// rest writes the roof, the attic and the hatch over a part of the lower storey.
func (w *writer) rest(f *file, id string, r geom.Rect) {
	from, to := w.corners(r)
	area := fmt.Sprintf("area = [ { %s, %s } ]", from, to)
	a := &w.m.Attic
	f.add("[[attic]]", str("id", id), str("level", "lower"), str("roof", id), area, str("joists_run", w.runs(a.AlongY)), str("joist", "sawn"),
		str("spacing", "16in"), w.across("first", a.First, a.AlongY), str("size", "2x6"))
	f.add("[[roof]]", str("id", id), str("level", "lower"), area, str("kind", "hip"), str("pitch", "4/12"), str("overhang", "12in"), str("rafter", "2x6"))
	h := hatchIn(r, measure.Inch)
	w.hatchAt(f, id, id, geom.Point{X: h.Min.X + h.Width()/2, Y: h.Min.Y + h.Height()/2}, str("room", w.m.Stack.Lower.Rooms[0].ID))
}

func (w *writer) hatchAt(f *file, id, space string, p geom.Point, more string) {
	f.add("[[hatch]]", str("id", id+"-hatch"), str("space", space), more, w.point("at", p), w.extents("size", 24*measure.Inch, 24*measure.Inch))
}

// basement writes a level of masonry under the lower storey.
func (w *writer) basement(f *file) {
	s := Storey{Outline: w.m.Stack.Lower.Outline}
	for i, wall := range w.m.Stack.Lower.Walls[:len(s.Outline)] {
		wall.ID = fmt.Sprintf("b%d-wall", i+1)
		s.Walls = append(s.Walls, wall)
	}
	s.Rooms = []Room{{ID: "cellar", At: w.m.Stack.Lower.Rooms[0].At}}
	f.add("[[level]]", str("id", "basement"), length("floor", -2*w.fallTo()), length("ceiling", standard(w.m.Metric).ceiling))
	w.ring(f, "foundation", "basement", s, str("frame", "masonry"), str("thickness", "8in"))
	ceiling := ""
	if w.m.Stack.Open {
		ceiling = str("ceiling", "open")
	}
	w.storeyRooms(f, "basement", s, ceiling)
	w.floor(f, "over-basement", "lower", str("over", "basement"))
}

// stackDrops writes the drops of the lower storey.
func (w *writer) stackDrops(f *file) {
	if w.m.Stack == nil {
		return
	}
	for i := range w.m.Stack.Drops {
		d := &w.m.Stack.Drops[i]
		if d.Ceiling {
			f.add("[[drop]]", str("tag", d.Tag), str("kind", "ceiling point"), w.point("at", d.Point), str("level", "lower"))
			continue
		}
		f.add("[[drop]]", str("tag", d.Tag), str("kind", "wall plate"), str("wall", w.m.Stack.Lower.Walls[d.Wall].ID), str("side", w.side(false)),
			length("at", d.At), length("height", d.Height))
	}
}
