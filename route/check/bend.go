package check

import (
	"topplate/plan"
	"topplate/plan/geom"
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
	attic := c.house.Attic
	for i := 1; i < len(r.Legs); i++ {
		a, b := &r.Legs[i-1], &r.Legs[i]
		switch {
		case opens(a.Kind) && level(b.Heading):
			out = append(out, c.overPlate(a.To))
		case opens(b.Kind) && level(a.Heading):
			out = append(out, c.overPlate(b.From))
		case betweenJoists(a) && betweenJoists(b) && a.Heading != b.Heading:
			out = append(out, corner{attic.Spacing - attic.Width, "the room between two joists"})
		}
	}
	return out
}

// opens reports whether cable comes out over a plate by such a leg.
func opens(k route.ArcKind) bool { return k == route.PlateArc || k == route.ConduitArc }

func level(h network.Heading) bool { return h < network.Up }

// betweenJoists reports whether a leg lies on the ceiling between two joists.
func betweenJoists(l *route.Leg) bool {
	return l.Kind == route.AlongArc || l.Kind == route.BesideArc
}

// overPlate is the corner at the top of a hole in a plate: under the
// sheathing.
func (c *checker) overPlate(p geom.Point3) corner {
	return corner{max(0, c.house.Roof.Surface.UnderSheathing(flat(p))), "the room under the roof over the plate"}
}
