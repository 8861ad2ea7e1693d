package fix

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/tape"
)

// A sight is something to tape from in a space, and how a text calls it.
type sight struct {
	mark tape.Mark
	name string
}

// findMarks lists what can be taped from: the house's marks that are seen from
// where one works, where a hand gets; the corners of the space's hatches;
// crossings of plates that no insulation hides; and the corners of rooms with an
// open ceiling.
func (s *site) findMarks() []sight {
	var out []sight
	for i := range s.house.Marks {
		m := &s.house.Marks[i]
		seen := m.Above
		if s.fromBelow() {
			seen = m.Below
		}
		if m.Space != s.index || !seen || s.reach.ZoneOver(m.At) > route.Arm {
			continue
		}
		v := sight{tape.Mark{ID: m.ID, At: m.At}, m.Kind + " " + m.ID}
		if id, ok := markSizes[m.Kind]; ok {
			v.mark.Size = length(id)
		}
		out = append(out, v)
	}
	out = append(out, s.hatchCorners()...)
	out = append(out, s.plateCrossings()...)
	out = append(out, s.roomCorners()...)
	if len(out) > tape.MaxMarks {
		out = out[:tape.MaxMarks]
	}
	return out
}

func (s *site) hatchCorners() []sight {
	var out []sight
	for i := range s.house.Hatches {
		h := &s.house.Hatches[i]
		if h.Space != s.index {
			continue
		}
		r, name := h.Area, "the hatch"
		if len(s.house.Hatches) > 1 {
			name = "hatch " + h.ID
		}
		for _, c := range []struct {
			at   geom.Point
			name string
		}{
			{r.Min, "south-west"},
			{geom.Point{X: r.Max.X, Y: r.Min.Y}, "south-east"},
			{r.Max, "north-east"},
			{geom.Point{X: r.Min.X, Y: r.Max.Y}, "north-west"},
		} {
			out = append(out, sight{
				tape.Mark{ID: h.ID + " " + c.name, At: c.at, Size: length(HatchCorner)},
				fmt.Sprintf("%s corner of %s", c.name, name),
			})
		}
	}
	return out
}

// plateCrossings are where the plates of two walls under an attic meet, if
// nothing lies on them and a hand gets there.
func (s *site) plateCrossings() []sight {
	if s.space.Kind != plan.AtticSpace || s.space.Insulation > 0 {
		return nil
	}
	var out []sight
	for i := range s.house.Walls {
		for j := range s.house.Walls {
			v, w := &s.house.Walls[i], &s.house.Walls[j]
			if v.Level != s.space.Below || w.Level != s.space.Below || v.AlongY() || !w.AlongY() || v.Body.Intersect(w.Body).Empty() {
				continue
			}
			at := geom.Point{X: w.PointAt(0).X, Y: v.PointAt(0).Y}
			if s.reach.ZoneNear(at) > route.Arm || s.decked(at) {
				continue
			}
			out = append(out, sight{
				tape.Mark{ID: v.ID + "/" + w.ID, At: at, Size: min(v.StudDepth, w.StudDepth)},
				fmt.Sprintf("crossing of the plates of walls %s and %s", v.ID, w.ID),
			})
		}
	}
	return out
}

// roomCorners are the corners of the rooms whose ceiling is open, where faces of
// walls meet: they are touched from the room, and stand on the plan.
func (s *site) roomCorners() []sight {
	if s.space.Kind != plan.FloorSpace {
		return nil
	}
	var out []sight
	for i := range s.house.Rooms {
		r := &s.house.Rooms[i]
		if r.Level != s.space.Below || !r.Open {
			continue
		}
		for _, outline := range append([]geom.Polygon{r.Outline}, r.Holes...) {
			for _, p := range outline {
				walls := strings.Join(s.wallsAt(r.Level, p), " and ")
				out = append(out, sight{
					tape.Mark{ID: r.ID + " " + walls, At: p},
					fmt.Sprintf("the corner of walls %s in %s", walls, r.Name),
				})
			}
		}
	}
	return out
}

// wallsAt are the ids of the walls of a level at a point, in order.
func (s *site) wallsAt(level int, p geom.Point) []string {
	var out []string
	for i := range s.house.Walls {
		if w := &s.house.Walls[i]; w.Level == level && w.Body.Contains(p) {
			out = append(out, w.ID)
		}
	}
	slices.Sort(out)
	return out
}

func (s *site) decked(p geom.Point) bool {
	return slices.ContainsFunc(s.space.Decking, func(r geom.Rect) bool { return r.Contains(p) })
}

// markName is how a text calls a mark.
func (s *site) markName(m tape.Mark) string {
	for _, v := range s.marks {
		if v.mark == m {
			return v.name
		}
	}
	return m.ID
}

// inTheWay lists what a tape can't cross on the joists' tops, or, where one
// works from below, under them: obstacles that stand, lie or hang there, the
// walls of a storey below, and all that is outside of the space.
func (s *site) inTheWay() []geom.Rect {
	var out []geom.Rect
	for i := range s.house.Obstacles {
		o := &s.house.Obstacles[i]
		crossed := o.Bottom <= s.space.Depth && s.space.Depth < o.Top
		if s.fromBelow() {
			crossed = o.Bottom < 0 && 0 <= o.Top
		}
		if o.Space == s.index && crossed {
			out = append(out, o.Area)
		}
	}
	if s.space.Kind == plan.FloorSpace {
		for i := range s.house.Walls {
			if w := &s.house.Walls[i]; w.Level == s.space.Below {
				out = append(out, w.Body)
			}
		}
	}
	return append(out, outsideOf(s.space)...)
}

// outsideOf covers what is outside of a space, but in its bounds, with
// rectangles: strips along both axes, so that no line slips along the seam of
// two.
func outsideOf(space *plan.Space) []geom.Rect {
	var xs, ys []measure.Length
	for _, outline := range space.Edges() {
		for _, p := range outline {
			xs, ys = append(xs, p.X), append(ys, p.Y)
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	out := strips(xs, ys, func(x, y measure.Length) bool { return space.Contains(geom.Point{X: x, Y: y}) })
	for _, r := range strips(ys, xs, func(y, x measure.Length) bool { return space.Contains(geom.Point{X: x, Y: y}) }) {
		out = append(out, geom.Rect{Min: geom.Point{X: r.Min.Y, Y: r.Min.X}, Max: geom.Point{X: r.Max.Y, Y: r.Max.X}})
	}
	return out
}

// strips are the stretches along v, for every step of u, that are not in.
func strips(us, vs []measure.Length, in func(u, v measure.Length) bool) []geom.Rect {
	var out []geom.Rect
	for i := 1; i < len(us); i++ {
		open := false
		for j := 1; j < len(vs); j++ {
			if in((us[i-1]+us[i])/2, (vs[j-1]+vs[j])/2) {
				open = false
				continue
			}
			if open {
				out[len(out)-1].Max.Y = vs[j]
				continue
			}
			open = true
			out = append(out, geom.Rect{Min: geom.Point{X: us[i-1], Y: vs[j-1]}, Max: geom.Point{X: us[i], Y: vs[j]}})
		}
	}
	return out
}

// tapeOf is how well a tape is held and read here.
func (f *fixer) tapeOf() tape.Tape {
	t := tape.Tape{Constant: length(TapeReading), Step: measure.Graduation}
	if f.house.Units == measure.Metric {
		t.Step = measure.Millimetre
	}
	return t
}

// request asks how to find a point of the space.
func (s *site) request(want geom.Point) tape.Request {
	a := s.space
	r := tape.Request{
		Want: want, Obstacles: s.obstacles, Tape: s.tapeOf(),
		Sketch: s.house.SketchError / measure.Length(value(SketchShare)),
		Angle:  float64(value(AngleSetOff)), LeastCut: tape.UsualCut,
		Joists: &tape.Joists{AlongY: a.AlongY, First: a.First, Spacing: a.Spacing, Sigma: length(JoistLayout)},
	}
	for _, v := range s.marks {
		r.Marks = append(r.Marks, v.mark)
	}
	return r
}

// opposite turns a heading round.
func opposite(h plan.Heading) plan.Heading { return h.Turn(plan.Left).Turn(plan.Left) }
