package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A face is a stretch of one side of a wall that bounds a room. Distances are
// along the wall.
type face struct {
	wall     int
	side     Side
	from, to measure.Length
	// first and last are where the straight side of the room ends that the
	// stretch is a part of: the room's inside corners. They may lie on another
	// wall in line with this one.
	first, last measure.Length
}

// corner is the inside corner on the left or on the right of somebody in the
// room who faces the wall. A room on the left of a wall has the wall's end on
// its left.
func (f face) corner(right bool) measure.Length {
	if (f.side == Left) != right {
		return f.last
	}
	return f.first
}

// facesOf finds the faces of walls that bound a room, in the order of the
// room's outline. It takes time O(walls × corners).
func (h *House) facesOf(room int) []face {
	r := &h.Rooms[room]
	faces := h.facesAlong(r.Level, r.Outline, Left)
	for _, hole := range r.Holes {
		faces = append(faces, h.facesAlong(r.Level, hole, Right)...)
	}
	return faces
}

// facesAlong finds the faces of a level's walls along an outline that has the
// room on the given side.
func (h *House) facesAlong(level int, outline geom.Polygon, room Side) []face {
	var faces []face
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		towards := headingOf(a, b).Turn(room)
		for w := range h.Walls {
			for _, side := range [2]Side{Left, Right} {
				if h.Walls[w].Level != level || h.Walls[w].Faces(side) != towards {
					continue
				}
				if f, ok := h.Walls[w].faceOn(a, b, side); ok {
					f.wall = w
					faces = append(faces, f)
				}
			}
		}
	}
	return faces
}

// faceOn is the part of the wall's face on a side that lies on the segment
// ab, which is parallel to it.
func (w *Wall) faceOn(a, b geom.Point, side Side) (face, bool) {
	at := w.FacePoint(0, side)
	if w.AlongY() && at.X != a.X || !w.AlongY() && at.Y != a.Y {
		return face{}, false
	}
	edge := ordered(w.Along(a), w.Along(b))
	whole := ordered(w.Along(w.Body.Min), w.Along(w.Body.Max))
	f := face{side: side, from: max(edge.lo, whole.lo), to: min(edge.hi, whole.hi), first: edge.lo, last: edge.hi}
	return f, f.from < f.to
}

// ordered is the extent between two coordinates.
func ordered(p, q measure.Length) extent { return extent{min(p, q), max(p, q)} }

// headingOf is the direction from a to b, which are on a line along an axis.
func headingOf(a, b geom.Point) Heading {
	switch {
	case b.X > a.X:
		return East
	case b.Y > a.Y:
		return North
	case b.X < a.X:
		return West
	default:
		return South
	}
}

// RoomOn is the index of the room of a level in which p lies, its finished
// faces included, or -1.
func (h *House) RoomOn(level int, p geom.Point) int {
	for i := range h.Rooms {
		if h.Rooms[i].Level == level && h.Rooms[i].contains(p) {
			return i
		}
	}
	return -1
}

// contains reports whether p lies in the room or on its faces.
func (r *Room) contains(p geom.Point) bool {
	if !r.Bounds.Contains(p) || !r.Outline.Contains(p) {
		return false
	}
	for _, hole := range r.Holes {
		if depth, ok := hole.Depth(p); ok && depth > 0 {
			return false
		}
	}
	return true
}

// RoomBeside is the index of the room on a side of a wall at a distance along
// it, or -1.
func (h *House) RoomBeside(w *Wall, along measure.Length, side Side) int {
	return h.RoomOn(w.Level, w.FacePoint(along, side))
}
