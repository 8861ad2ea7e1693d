package check

import (
	"math"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/network"
)

// A corner is a place where cable turns, with the room that it has there on
// the narrower side.
type corner struct {
	room measure.Length
	what string
}

// bends holds the least bend of a drop's cable against its tightest corner,
// as far as the room there is known. A quarter bend of inside radius r takes
// up r and the thickness of the cable on either side.
func (c *checker) bends(r *route.Route, d *plan.Drop) {
	need := d.Cable.Diameter * measure.Length(d.Cable.MinBendDiameters+1)
	corners := c.corners(r, d)
	if len(corners) == 0 {
		return
	}
	tight := corners[0]
	for _, k := range corners[1:] {
		if k.room < tight.room {
			tight = k
		}
	}
	if need <= tight.room {
		return
	}
	c.add(rule.BendRadius, at(d, "%s bends to %d times its %s, so that a quarter bend takes up %s; %s is %s",
		d.Cable.ID, d.Cable.MinBendDiameters, millimetres(d.Cable.Diameter), c.text(need), tight.what, c.text(tight.room)))
}

// corners lists the corners of a route whose room the sketch tells: into a box
// in a wall, over a plate, and between two joists.
func (c *checker) corners(r *route.Route, d *plan.Drop) []corner {
	var out []corner
	wall := func(w int, what string) {
		out = append(out, corner{c.house.Walls[w].StudDepth, what + ", in the depth of the studs,"})
	}
	if !c.job.Closet.Ceiling {
		wall(c.job.Closet.Spot.Wall, "the room at the panel")
	}
	if d.Kind == plan.WallPlate {
		wall(d.Spot.Wall, "the room at the box")
	}
	for i := 1; i < len(r.Legs); i++ {
		a, b := &r.Legs[i-1], &r.Legs[i]
		switch {
		case opens(a.Kind) && level(b.Heading):
			out = append(out, c.overPlate(a))
		case opens(b.Kind) && level(a.Heading):
			out = append(out, c.overPlate(b))
		case betweenJoists(a) && betweenJoists(b) && a.Heading != b.Heading && a.Space >= 0:
			s := c.house.Spaces[a.Space]
			out = append(out, corner{s.Spacing - s.Width, "the room between two joists"})
		}
	}
	return out
}

// opens reports whether cable comes out over a plate, or under a floor, by such a
// leg.
func opens(k route.ArcKind) bool {
	return k == route.PlateArc || k == route.ConduitArc || k == route.SoleArc
}

func level(h network.Heading) bool { return h < network.Up }

// betweenJoists reports whether a leg lies on the ceiling between two joists.
func betweenJoists(l *route.Leg) bool {
	return l.Kind == route.AlongArc || l.Kind == route.BesideArc
}

// overPlate is the corner where a leg comes out of a plate, and the cable turns
// away: under the sheathing, or between the joists of a floor.
func (c *checker) overPlate(l *route.Leg) corner {
	if l.Space < 0 {
		return corner{measure.Length(math.MaxInt64), ""}
	}
	s := c.house.Spaces[l.Space]
	what := "the room under the roof over the plate"
	if s.Roof < 0 {
		what = "the depth of the joists at the plate"
	}
	return corner{max(0, c.house.UnderSheathing(s, flat(l.To))), what}
}
