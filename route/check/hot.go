package check

import (
	"math"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// hot reports the hot things that a cable passes so near that the error of
// the sketch may eat the clearance up.
func (c *checker) hot() {
	for i := range c.house.Obstacles {
		o := &c.house.Obstacles[i]
		if !o.Hot {
			continue
		}
		names, nearest := c.passing(o, o.Clearance+c.house.SketchError)
		if len(names) == 0 {
			continue
		}
		f := of(o.Pos, o.ID, "%s %s %s from this %s on paper; it is to be kept %s off, and the sketch may be %s out",
			tags(names), verb(names, "passes", "pass"), c.text(nearest), o.Kind, c.text(o.Clearance), c.text(c.house.SketchError))
		f.Change = "tape the distance " + c.in(o.Space)
		c.add(rule.HotMargin, f)
	}
}

// passing lists the drops whose cables pass an obstacle nearer than limit, and
// how near the nearest of them comes. Those over or under it by more than its
// clearance pass.
func (c *checker) passing(o *plan.Obstacle, limit measure.Length) (names []string, nearest measure.Length) {
	nearest = limit
	c.routed(func(r *route.Route, d *plan.Drop) {
		found := false
		for i := range r.Legs {
			leg := &r.Legs[i]
			z := leg.From.Z - c.house.Spaces[o.Space].Base
			if !leg.InAttic() || leg.Space != o.Space || z < o.Bottom-o.Clearance || z >= o.Top+o.Clearance {
				continue
			}
			if p, q := flat(leg.From), flat(leg.To); geom.SegmentRectCloserThan(p, q, o.Area, limit) {
				found, nearest = true, min(nearest, distance(p, q, o.Area))
			}
		}
		if found {
			names = append(names, d.Tag)
		}
	})
	return names, nearest
}

// distance is how far a leg along an axis is from a rectangle.
func distance(p, q geom.Point, r geom.Rect) measure.Length {
	dx := max(0, r.Min.X-max(p.X, q.X), min(p.X, q.X)-r.Max.X)
	dy := max(0, r.Min.Y-max(p.Y, q.Y), min(p.Y, q.Y)-r.Max.Y)
	return measure.Length(math.Round(math.Hypot(float64(dx), float64(dy))))
}
