package fix

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/tape"
)

// A sight is something to tape from in the attic, and how a text calls it.
type sight struct {
	mark tape.Mark
	name string
}

// marksAbove lists what can be taped from: the house's marks that are seen
// from above where a hand gets, the corners of its hatches, and crossings of
// plates that no insulation hides.
func (f *fixer) marksAbove() []sight {
	var out []sight
	for i := range f.house.Marks {
		m := &f.house.Marks[i]
		if !m.Above || f.res.Graph.Reach.ZoneOver(m.At) > route.Arm {
			continue
		}
		s := sight{tape.Mark{ID: m.ID, At: m.At}, m.Kind + " " + m.ID}
		if id, ok := markSizes[m.Kind]; ok {
			s.mark.Size = length(id)
		}
		out = append(out, s)
	}
	out = append(out, f.hatchCorners()...)
	out = append(out, f.plateCrossings()...)
	if len(out) > tape.MaxMarks {
		out = out[:tape.MaxMarks]
	}
	return out
}

func (f *fixer) hatchCorners() []sight {
	var out []sight
	for i := range f.house.Hatches {
		h := &f.house.Hatches[i]
		r, name := h.Area, "the hatch"
		if len(f.house.Hatches) > 1 {
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

// plateCrossings are where the plates of two walls meet, if nothing lies on
// them and a hand gets there.
func (f *fixer) plateCrossings() []sight {
	if f.house.Attic.Insulation > 0 {
		return nil
	}
	var out []sight
	for i := range f.house.Walls {
		for j := range f.house.Walls {
			v, w := &f.house.Walls[i], &f.house.Walls[j]
			if v.AlongY() || !w.AlongY() || v.Body.Intersect(w.Body).Empty() {
				continue
			}
			at := geom.Point{X: w.PointAt(0).X, Y: v.PointAt(0).Y}
			if f.res.Graph.Reach.ZoneNear(at) > route.Arm || f.decked(at) {
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

func (f *fixer) decked(p geom.Point) bool {
	return slices.ContainsFunc(f.house.Attic.Decking, func(r geom.Rect) bool { return r.Contains(p) })
}

// markName is how a text calls a mark.
func (f *fixer) markName(m tape.Mark) string {
	for _, s := range f.marks {
		if s.mark == m {
			return s.name
		}
	}
	return m.ID
}

// inTheWay lists what a tape on the joists' tops can't cross: obstacles that
// stand or lie there, and all that is outside of the plates, for a house with
// an inside corner.
func (f *fixer) inTheWay() []geom.Rect {
	var out []geom.Rect
	for i := range f.house.Obstacles {
		if o := &f.house.Obstacles[i]; o.Bottom <= f.house.Attic.Depth && f.house.Attic.Depth < o.Top {
			out = append(out, o.Area)
		}
	}
	return append(out, outsideOf(f.house.PlateLine)...)
}

// outsideOf covers what is outside of an outline, but in its bounds, with
// rectangles: strips along both axes, so that no line slips along the seam of
// two.
func outsideOf(outline geom.Polygon) []geom.Rect {
	var xs, ys []measure.Length
	for _, p := range outline {
		xs, ys = append(xs, p.X), append(ys, p.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	out := strips(xs, ys, func(x, y measure.Length) bool { return outline.Contains(geom.Point{X: x, Y: y}) })
	for _, r := range strips(ys, xs, func(y, x measure.Length) bool { return outline.Contains(geom.Point{X: x, Y: y}) }) {
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

// request asks how to find a point of the attic.
func (f *fixer) request(want geom.Point) tape.Request {
	a := f.house.Attic
	r := tape.Request{
		Want: want, Obstacles: f.obstacles, Tape: f.tapeOf(),
		Sketch: f.house.SketchError / measure.Length(value(SketchShare)),
		Angle:  float64(value(AngleSetOff)), LeastCut: tape.UsualCut,
		Joists: &tape.Joists{AlongY: a.AlongY, First: a.First, Spacing: a.Spacing, Sigma: length(JoistLayout)},
	}
	for _, s := range f.marks {
		r.Marks = append(r.Marks, s.mark)
	}
	return r
}

// opposite turns a heading round.
func opposite(h plan.Heading) plan.Heading { return h.Turn(plan.Left).Turn(plan.Left) }
