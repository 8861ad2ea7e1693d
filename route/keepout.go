package route

import (
	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A keepOut is a part of a space that cable stays out of: an obstacle with
// its clearance, or the opening of a hatch.
type keepOut struct {
	area        geom.Rect
	bottom, top measure.Length // above the ceiling board
	pos         diag.Pos
	name        string
	hot         bool
}

func keepOutsOf(h *plan.House, space int) []keepOut {
	var out []keepOut
	for i := range h.Obstacles {
		o := &h.Obstacles[i]
		if o.Space != space {
			continue
		}
		out = append(out, keepOut{
			area: o.Area.Outset(o.Clearance), bottom: o.Bottom - o.Clearance, top: o.Top + o.Clearance,
			pos: o.Pos, name: o.Kind + " " + o.ID, hot: o.Hot,
		})
	}
	for i := range h.Hatches {
		hatch := &h.Hatches[i]
		if hatch.Space != space {
			continue
		}
		out = append(out, keepOut{area: hatch.Area, bottom: everywhere.lo, top: everywhere.hi, pos: hatch.Pos, name: "hatch " + hatch.ID})
	}
	return out
}

// obstructed reports whether the straight line from p to q at height z above
// the ceiling enters what cable keeps out of.
func (b *cavity) obstructed(p, q geom.Point, z measure.Length) bool {
	return b.obstacleOn(p, q, z) != nil
}

// obstacleOn is the first thing that the line from p to q at height z enters,
// nil if there is none. What begins at z is in the way, what ends there is not.
func (b *cavity) obstacleOn(p, q geom.Point, z measure.Length) *keepOut {
	for i := range b.keepOuts {
		k := &b.keepOuts[i]
		if k.bottom <= z && z < k.top && geom.SegmentEntersRect(p, q, k.area) {
			return k
		}
	}
	return nil
}
