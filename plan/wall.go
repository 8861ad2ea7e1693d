package plan

import (
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Heading is a direction along an axis of the house, in the order in which
// one turns left.
type Heading uint8

// The four directions.
const (
	East Heading = iota
	North
	West
	South
)

// AlongY reports whether h runs along Y, house north or south.
func (h Heading) AlongY() bool { return h%2 == 1 }

// Rising reports whether coordinates grow along h.
func (h Heading) Rising() bool { return h <= North }

// Opposite is the direction back.
func (h Heading) Opposite() Heading { return (h + 2) % 4 }

// Step is the point so far from p in a direction.
func (h Heading) Step(p geom.Point, by measure.Length) geom.Point {
	switch h {
	case East:
		p.X += by
	case North:
		p.Y += by
	case West:
		p.X -= by
	default:
		p.Y -= by
	}
	return p
}

// Turn is the direction on the given side of somebody who faces h.
func (h Heading) Turn(s Side) Heading {
	if s == Left {
		return (h + 1) % 4
	}
	return (h + 3) % 4
}

// Heading is the direction from the wall's start to its end.
func (w *Wall) Heading() Heading { return headingOf(w.A, w.B) }

// Faces is the direction in which the face on the given side of the wall
// looks, out of the wall.
func (w *Wall) Faces(s Side) Heading { return w.Heading().Turn(s) }

// AlongY reports whether the wall runs along Y.
func (w *Wall) AlongY() bool { return w.A.X == w.B.X }

// here is where the wall is in the file, for a note.
func (w *Wall) here() (pos diag.Pos, format, id string) { return hereOf(w.ID, w.Pos, w.Made) }

// hereOf says of a wall where it was taped, or is made round rooms by inside
// dimensions, of which pos has one.
func hereOf(id string, pos diag.Pos, made bool) (at diag.Pos, format, name string) {
	if made {
		return pos, "%s is made round its rooms here", id
	}
	return pos, "%s is taped here", id
}

// Length is the length of the taped line. The body may be longer, at corners,
// or shorter, where the wall ends at the face of another.
func (w *Wall) Length() measure.Length { return w.Along(w.B) }

// Along is how far along the wall's line p is, square to the line: zero at
// the start, negative before it.
func (w *Wall) Along(p geom.Point) measure.Length {
	switch w.Heading() {
	case East:
		return p.X - w.A.X
	case North:
		return p.Y - w.A.Y
	case West:
		return w.A.X - p.X
	default:
		return w.A.Y - p.Y
	}
}

// PointAt is the point on the centre line of the wall's frame at a distance
// along the wall.
func (w *Wall) PointAt(along measure.Length) geom.Point {
	if !w.Heading().Rising() {
		along = -along
	}
	if w.AlongY() {
		return geom.Point{X: middle(w.Frame.Min.X, w.Frame.Max.X), Y: w.A.Y + along}
	}
	return geom.Point{X: w.A.X + along, Y: middle(w.Frame.Min.Y, w.Frame.Max.Y)}
}

// middle is halfway between lo and hi, rounded down by less than a nanometre.
func middle(lo, hi measure.Length) measure.Length { return lo + (hi-lo)/2 }

// FacePoint is the point on the finished face on the given side at a distance
// along the wall.
func (w *Wall) FacePoint(along measure.Length, s Side) geom.Point {
	p := w.PointAt(along)
	switch w.Faces(s) {
	case East:
		p.X = w.Body.Max.X
	case North:
		p.Y = w.Body.Max.Y
	case West:
		p.X = w.Body.Min.X
	case South:
		p.Y = w.Body.Min.Y
	}
	return p
}
