package fix

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A corner is where a straight stretch of a wall's face ends.
type corner struct {
	at     geom.Point
	along  measure.Length // along the wall
	inside bool           // another wall stands there; otherwise the face turns away
}

// An onAxis is a rectangle seen along one axis and across it.
type onAxis struct{ lo, hi, near, far measure.Length }

// seen turns a wall's body so that a face in the given direction is at far,
// with far rising out of the wall.
func seen(r geom.Rect, face plan.Heading) onAxis {
	o := onAxis{r.Min.X, r.Max.X, r.Min.Y, r.Max.Y}
	if !face.AlongY() {
		o = onAxis{r.Min.Y, r.Max.Y, r.Min.X, r.Max.X}
	}
	if !face.Rising() {
		o.near, o.far = -o.far, -o.near
	}
	return o
}

// corners are the ends of the straight face that the point at a distance along
// a wall lies on: towards the wall's start and towards its end. Walls in line
// make one face. It takes time O(n²) for n walls.
func (f *fixer) corners(wall int, side plan.Side, along measure.Length) (start, end corner) {
	w := &f.house.Walls[wall]
	p := w.FacePoint(along, side)
	ends := f.faceEnds(w, side, p)
	start, end = ends[0], ends[1]
	if !w.Heading().Rising() {
		start, end = end, start
	}
	start.along, end.along = w.Along(start.at), w.Along(end.at)
	return start, end
}

// faceEnds finds the ends of a face about p, towards falling and towards
// rising coordinates.
func (f *fixer) faceEnds(w *plan.Wall, side plan.Side, p geom.Point) [2]corner {
	face := w.Faces(side)
	x, flush := p.X, seen(w.Body, face).far
	if w.AlongY() {
		x = p.Y
	}
	lo, hi := x, x
	for grown := true; grown; {
		grown = false
		for i := range f.house.Walls {
			o := seen(f.house.Walls[i].Body, face)
			if f.house.Walls[i].Level == w.Level && o.far == flush && o.lo <= hi && o.hi >= lo && (o.lo < lo || o.hi > hi) {
				lo, hi, grown = min(lo, o.lo), max(hi, o.hi), true
			}
		}
	}
	var inside [2]bool
	for i := range f.house.Walls {
		o := seen(f.house.Walls[i].Body, face)
		if f.house.Walls[i].Level != w.Level || o.near > flush || o.far <= flush {
			continue
		}
		if o.hi <= x && o.hi >= lo {
			lo, inside[0] = o.hi, true
		}
		if o.lo >= x && o.lo <= hi {
			hi, inside[1] = o.lo, true
		}
	}
	at := func(x measure.Length) geom.Point {
		if w.AlongY() {
			return geom.Point{X: p.X, Y: x}
		}
		return geom.Point{X: x, Y: p.Y}
	}
	return [2]corner{{at: at(lo), inside: inside[0]}, {at: at(hi), inside: inside[1]}}
}

// A wallFace is a face that is met in a direction.
type wallFace struct {
	wall     int
	at       geom.Point
	distance measure.Length
}

// towards finds the nearest face of a level that is met from p in a direction,
// square to it. ok is false if there is none.
func (f *fixer) towards(level int, p geom.Point, to plan.Heading) (best wallFace, ok bool) {
	// The face looks back at p.
	back := to.Turn(plan.Left).Turn(plan.Left)
	from := seen(geom.Rect{Min: p, Max: p}, back)
	for i := range f.house.Walls {
		o := seen(f.house.Walls[i].Body, back)
		d := from.far - o.far
		if f.house.Walls[i].Level != level || o.lo > from.lo || o.hi < from.lo || d < 0 || ok && d >= best.distance {
			continue
		}
		best, ok = wallFace{wall: i, at: stepTo(p, to, d), distance: d}, true
	}
	return best, ok
}

// stepTo is the point a distance from p in a direction.
func stepTo(p geom.Point, to plan.Heading, d measure.Length) geom.Point {
	if !to.Rising() {
		d = -d
	}
	if to.AlongY() {
		return geom.Point{X: p.X, Y: p.Y + d}
	}
	return geom.Point{X: p.X + d, Y: p.Y}
}
