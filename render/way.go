package render

import (
	"cmp"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/fix"
)

// A piece is a straight piece of a way along an axis: from lo to hi on it, at
// a place on the other.
type piece struct {
	alongY     bool
	at, lo, hi measure.Length
}

func (s piece) point(l measure.Length) geom.Point {
	if s.alongY {
		return geom.Point{X: s.at, Y: l}
	}
	return geom.Point{X: l, Y: s.at}
}

func (s piece) from() geom.Point { return s.point(s.lo) }
func (s piece) to() geom.Point   { return s.point(s.hi) }

// pieceOf is the piece between two points on a line along an axis.
func pieceOf(p, q geom.Point) piece {
	if p.X == q.X {
		return piece{true, p.X, min(p.Y, q.Y), max(p.Y, q.Y)}
	}
	return piece{false, p.Y, min(p.X, q.X), max(p.X, q.X)}
}

// wayTo is what one crawls from the hatch to a hole, and where one kneels: the
// last pieces of a way are those of a hand, from there to the hole. A way has
// no start of its own, so it is followed back from its end.
func wayTo(h *fix.Hole) (way []piece, knee geom.Point) {
	p := flat(h.At)
	for i := len(h.Above.Way) - 1; i >= 0; i-- {
		s := &h.Above.Way[i]
		q := back(p, s)
		if s.Zone == route.Arm && len(way) == 0 {
			p = q
			continue
		}
		if len(way) == 0 {
			knee = p
		}
		way = append(way, pieceOf(q, p))
		p = q
	}
	if len(way) == 0 {
		knee = p
	}
	return way, knee
}

// back is where a step to p comes from.
func back(p geom.Point, s *fix.Step) geom.Point {
	switch s.Heading {
	case plan.East:
		p.X -= s.Length
	case plan.West:
		p.X += s.Length
	case plan.North:
		p.Y -= s.Length
	case plan.South:
		p.Y += s.Length
	}
	return p
}

// joined are pieces without those parts that others have, so that dots are
// not drawn between dots.
func joined(all []piece) []piece {
	slices.SortFunc(all, func(a, b piece) int {
		if a.alongY != b.alongY {
			if a.alongY {
				return 1
			}
			return -1
		}
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi))
	})
	var out []piece
	for _, s := range all {
		if n := len(out) - 1; n >= 0 && out[n].alongY == s.alongY && out[n].at == s.at && s.lo <= out[n].hi {
			out[n].hi = max(out[n].hi, s.hi)
			continue
		}
		out = append(out, s)
	}
	return out
}
