package roof

import (
	"fmt"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"pgregory.net/rapid"
)

// unit is the grid of random outlines. Halves of it, which hips and ridges
// need, have centres of their own.
const unit = 12

// level is a pitch that shows depths as heights.
var level = Pitch{1, 1}

func mustNew(t interface{ Fatalf(string, ...any) }, spec Spec) *Roof {
	if h, ok := t.(testing.TB); ok {
		h.Helper()
	}
	r, err := New(spec)
	if err != nil {
		t.Fatalf("New(%+v): %v", spec, err)
	}
	return r
}

// randomSpec draws an outline on the grid, with vertices on straight walls,
// gables, and an overhang.
func randomSpec(t *rapid.T) Spec {
	coordinate := rapid.Custom(func(t *rapid.T) measure.Length {
		return unit * measure.Length(rapid.IntRange(0, 8).Draw(t, "c"))
	})
	corner := rapid.Custom(func(t *rapid.T) geom.Point {
		return geom.Point{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")}
	})
	size := rapid.Custom(func(t *rapid.T) geom.Point {
		return geom.Point{
			X: unit * measure.Length(rapid.IntRange(1, 6).Draw(t, "w")),
			Y: unit * measure.Length(rapid.IntRange(1, 6).Draw(t, "h")),
		}
	})
	var parts []geom.Rect
	for range rapid.IntRange(1, 6).Draw(t, "parts") {
		at := corner.Draw(t, "at")
		parts = append(parts, geom.Rect{Min: at, Max: at.Add(size.Draw(t, "size"))})
	}
	outline := union(parts)[0]
	if split := rapid.IntRange(-6, len(outline)-1).Draw(t, "split"); split >= 0 {
		outline = splitEdge(outline, split)
	}
	if rapid.Bool().Draw(t, "clockwise") {
		outline = outline.Reverse()
	}
	gables := rapid.SliceOfN(rapid.Bool(), len(outline), len(outline)).Draw(t, "gables")
	if !slices.Contains(gables, false) {
		gables[rapid.IntRange(0, len(outline)-1).Draw(t, "eave")] = false
	}
	return Spec{
		Outline:  outline,
		Gable:    gables,
		Pitch:    level,
		Overhang: unit / 2 * measure.Length(rapid.IntRange(0, 3).Draw(t, "overhang")),
	}
}

// splitEdge puts a vertex on an edge, one unit from its start, if there is room.
func splitEdge(outline geom.Polygon, i int) geom.Polygon {
	a, b := outline[i], outline[(i+1)%len(outline)]
	d := b.Sub(a)
	length := max(d.X, -d.X, d.Y, -d.Y)
	if length == unit {
		return outline
	}
	return slices.Insert(slices.Clone(outline), i+1, geom.Point{X: a.X + d.X/length*unit, Y: a.Y + d.Y/length*unit})
}

// An inscribed is a rectangle of whole units within an outline, and which of
// its sides lie wholly on gables.
type inscribed struct {
	area    geom.Rect
	open    [4]bool
	maximal bool
}

// An oracle has the definition of the surface, by listing every rectangle.
type oracle struct {
	all      []inscribed
	overhang measure.Length
}

func newOracle(spec Spec) *oracle {
	o := &oracle{overhang: spec.Overhang}
	bounds := spec.Outline.Bounds()
	fits := func(r geom.Rect) bool {
		for x := r.Min.X + unit/2; x < r.Max.X; x += unit {
			for y := r.Min.Y + unit/2; y < r.Max.Y; y += unit {
				if !spec.Outline.Contains(geom.Point{X: x, Y: y}) {
					return false
				}
			}
		}
		return true
	}
	cell := map[geom.Rect]bool{}
	for r := range rects(bounds) {
		if fits(r) {
			cell[r] = true
			o.all = append(o.all, inscribed{area: r})
		}
	}
	for i := range o.all {
		r := &o.all[i]
		for _, s := range sides {
			r.open[s] = spec.gabledAlong(s.edgeOf(r.area))
		}
		r.maximal = true
		for _, d := range [4]geom.Point{{X: unit}, {Y: unit}} {
			west, east := r.area, r.area
			west.Min, east.Max = west.Min.Sub(d), east.Max.Add(d)
			r.maximal = r.maximal && !cell[west] && !cell[east]
		}
	}
	return o
}

// rects yields every rectangle of whole units within bounds.
func rects(bounds geom.Rect) func(func(geom.Rect) bool) {
	return func(yield func(geom.Rect) bool) {
		for a := bounds.Min.X; a < bounds.Max.X; a += unit {
			for b := a + unit; b <= bounds.Max.X; b += unit {
				for c := bounds.Min.Y; c < bounds.Max.Y; c += unit {
					for d := c + unit; d <= bounds.Max.Y; d += unit {
						if !yield(geom.Rect{Min: geom.Point{X: a, Y: c}, Max: geom.Point{X: b, Y: d}}) {
							return
						}
					}
				}
			}
		}
	}
}

// edgeOf is a side as a rectangle without width or without height.
func (s side) edgeOf(r geom.Rect) geom.Rect {
	switch s {
	case west:
		r.Max.X = r.Min.X
	case east:
		r.Min.X = r.Max.X
	case south:
		r.Max.Y = r.Min.Y
	case north:
		r.Min.Y = r.Max.Y
	}
	return r
}

// gabledAlong reports whether the middle of every unit of a side lies on a
// gable.
func (s *Spec) gabledAlong(line geom.Rect) bool {
	middle := geom.Point{X: line.Min.X, Y: line.Min.Y}
	step := geom.Point{Y: unit}
	if line.Width() > 0 {
		step = geom.Point{X: unit}
	}
	middle = middle.Add(geom.Point{X: step.X / 2, Y: step.Y / 2})
	for ; line.Contains(middle); middle = middle.Add(step) {
		on := false
		for i := range s.Outline {
			on = on || s.Gable != nil && s.Gable[i] && edge(s.Outline, i).Contains(middle)
		}
		if !on {
			return false
		}
	}
	return true
}

// A surfacePlane is a plane with the height it has somewhere.
type surfacePlane struct {
	plane
	height measure.Length
}

// planesOf returns the least distances of a rectangle at p.
func (r *inscribed) planesOf(p geom.Point) (lowest surfacePlane) {
	lowest.height = away
	for _, s := range sides {
		if d := s.distance(r.area, p); !r.open[s] && d < lowest.height {
			lowest = surfacePlane{plane{s, s.of(r.area)}, d}
		}
	}
	return lowest
}

// at returns the surface at p over the rectangles whose area, set out by the
// margin, contains p; ok is false if there are none. The plane is right where
// only one is the surface.
func (o *oracle) at(p geom.Point, margin measure.Length, counts func(*inscribed) bool) (highest surfacePlane, ok bool) {
	for i := range o.all {
		r := &o.all[i]
		if !counts(r) || !r.area.Outset(margin).Contains(p) {
			continue
		}
		if found := r.planesOf(p); !ok || found.height > highest.height {
			highest, ok = found, true
		}
	}
	return highest, ok
}

func every(*inscribed) bool { return true }

func maximal(r *inscribed) bool { return r.maximal }

func (l Line) String() string {
	return fmt.Sprintf("%v (%d,%d,%d)-(%d,%d,%d)", l.Kind, l.A.X, l.A.Y, l.A.Z, l.B.X, l.B.Y, l.B.Z)
}

// drawPoint draws a point of the plan, some units around the outline included.
func drawPoint(t *rapid.T, spec Spec) geom.Point {
	around := spec.Outline.Bounds().Outset(2 * unit)
	return geom.Point{
		X: measure.Length(rapid.Int64Range(int64(around.Min.X), int64(around.Max.X)).Draw(t, "x")),
		Y: measure.Length(rapid.Int64Range(int64(around.Min.Y), int64(around.Max.Y)).Draw(t, "y")),
	}
}
