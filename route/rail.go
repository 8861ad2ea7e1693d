package route

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A rail is a line on the faces of walls, round a room or round the house, along
// which cable runs in sight. Its stations are the places where cable comes or
// goes.
type rail struct {
	z        measure.Length
	rings    []geom.Polygon
	stations []geom.Point
}

// station is the node of the rail at a point of one of its rings.
func (b *builder) station(r *rail, p geom.Point) int {
	if !slices.Contains(r.stations, p) {
		r.stations = append(r.stations, p)
	}
	return b.node(RailNode, geom.Point3{X: p.X, Y: p.Y, Z: r.z}, -1, noOwner)
}

// eachStretch calls f for every two stations that follow each other on an edge of the
// rail, corners being stations.
func (r *rail) eachStretch(f func(p, q geom.Point)) {
	for _, ring := range r.rings {
		for i, a := range ring {
			c := ring[(i+1)%len(ring)]
			on := []geom.Point{a, c}
			for _, s := range r.stations {
				if s != a && s != c && onEdge(s, a, c) {
					on = append(on, s)
				}
			}
			slices.SortFunc(on, func(p, q geom.Point) int { return int(sign(geom.Dist(a, p) - geom.Dist(a, q))) })
			for k := 1; k < len(on); k++ {
				f(on[k-1], on[k])
			}
		}
	}
}

// onEdge reports whether p is on the edge from a to c, which runs along an axis.
func onEdge(p, a, c geom.Point) bool {
	box := geom.Rect{Min: a, Max: c}.Canon()
	return box.Contains(p)
}

// openingOn is the opening of the walls of a level that the stretch of a face
// from p to q lies in at height z over the floor, nil if none. Both ends of an
// opening are stations.
func (b *builder) openingOn(level int, p, q geom.Point, z measure.Length) (w *plan.Wall, o *plan.Opening) {
	m := mid(geom.Rect{Min: p, Max: q}.Canon())
	for i := range b.house.Walls {
		w := &b.house.Walls[i]
		if w.Level != level || !w.Body.Contains(m) || w.AlongY() != (p.X == q.X) {
			continue
		}
		at := w.Along(m)
		for k := range w.Openings {
			if o := &w.Openings[k]; o.Start <= at && at <= o.End && o.Sill <= z && z <= o.Head {
				return w, o
			}
		}
	}
	return nil, nil
}

// jambs makes both ends of every opening beside a rail stations of it.
func (b *builder) jambs(r *rail, level int, z measure.Length) {
	for i := range b.house.Walls {
		w := &b.house.Walls[i]
		if w.Level != level {
			continue
		}
		for k := range w.Openings {
			o := &w.Openings[k]
			if o.Sill > z || o.Head < z {
				continue
			}
			for _, at := range []measure.Length{o.Start, o.End} {
				for _, side := range []plan.Side{plan.Left, plan.Right} {
					if p := w.FacePoint(at, side); r.has(p) {
						b.station(r, p)
					}
				}
			}
		}
	}
}

// has reports whether p is on a ring of the rail.
func (r *rail) has(p geom.Point) bool {
	for _, ring := range r.rings {
		for i, a := range ring {
			if onEdge(p, a, ring[(i+1)%len(ring)]) {
				return true
			}
		}
	}
	return false
}
