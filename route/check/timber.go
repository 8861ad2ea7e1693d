package check

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/bundle"
)

// timber reports holes that the job says are there and are too large, studs
// that no bit of the job may bore, bundles that no joist may be bored for, and
// cable over joists beside a hatch.
func (c *checker) timber() {
	c.platesCut()
	c.studsBored()
	for i, s := range c.house.Spaces {
		switch s.Joist {
		case plan.Sawn:
			c.joists(i)
		case plan.IJoist:
			c.iJoists(i)
		}
	}
	c.guards()
}

func (c *checker) platesCut() {
	share := measure.Length(c.book.Value(rule.PlateBore))
	for i := range c.job.Fixed {
		f := &c.job.Fixed[i]
		if f.Do != plan.FixedThere || f.Wall < 0 || f.Bottom {
			continue
		}
		w := &c.house.Walls[f.Wall]
		if 100*f.Diameter > share*w.StudDepth {
			c.add(rule.PlateTie, of(f.Pos, f.ID, "the hole that is there in the plate of wall %s is %s wide, of %s; more than %d %% is remarked on",
				w.ID, c.text(f.Diameter), c.text(w.StudDepth), share))
		}
	}
}

func (c *checker) studsBored() {
	for i := range c.res.Holes {
		h := &c.res.Holes[i]
		p := &c.res.Graph.Holes[h.Place]
		if p.Kind != route.StudArc || h.Bit > 0 {
			continue
		}
		w := &c.house.Walls[p.Wall]
		c.add(rule.StudBoreRule, of(w.Pos, h.ID, "no bit of the job bores this stud of wall %s for its cable: a hole may be %s", w.ID, c.text(h.Largest)))
	}
}

// joists reports the thickest bundle that crosses the joists of a space, if
// boring them for it would be too much.
func (c *checker) joists(space int) {
	a := c.house.Spaces[space]
	depth, edge := a.Depth, c.book.Length(rule.JoistEdge)
	largest := max(0, min(depth/measure.Length(c.book.Value(rule.JoistBore)), depth-2*edge))
	var thickest measure.Length
	for i := range c.res.Bundles {
		if b := &c.res.Bundles[i]; b.Kind == route.AcrossArc && b.Space == space {
			thickest = max(thickest, bundle.Diameter(b.Cables, c.thickest(b.Drops)))
		}
	}
	if need := thickest + c.book.Length(rule.HoleOverBundle); thickest > 0 && need > largest {
		over := "over"
		if a.Kind != plan.AtticSpace {
			over = "under"
		}
		c.add(rule.JoistBored, of(a.Pos, c.spaceName(space), "the thickest bundle "+over+" the joists would need a hole of %s; one of %s in depth takes %s, in the middle", c.text(need), c.text(depth), c.text(largest)))
	}
}

// iJoists reminds, of a space with I-joists that cable crosses or is fished
// across, that none of them is bored.
func (c *checker) iJoists(space int) {
	var names []string
	c.routed(func(r *route.Route, d *plan.Drop) {
		if slices.ContainsFunc(r.Legs, func(l route.Leg) bool { return l.Space == space && l.Kind == route.AcrossArc }) {
			names = append(names, d.Tag)
		}
	})
	if len(names) > 0 {
		a := c.house.Spaces[space]
		c.add(rule.IJoistBored, of(a.Pos, c.spaceName(space), "%s %s I-joists, below their lower flanges", tags(names), verb(names, "crosses", "cross")))
	}
}

func (c *checker) thickest(drops []int) measure.Length {
	var most measure.Length
	for _, d := range drops {
		most = max(most, c.job.Drops[d].Cable.Diameter)
	}
	return most
}

func (c *checker) guards() {
	limit := c.book.Length(rule.GuardStrip)
	for i := range c.house.Hatches {
		h := &c.house.Hatches[i]
		if c.house.Spaces[h.Space].Kind != plan.AtticSpace {
			continue
		}
		var names []string
		c.routed(func(r *route.Route, d *plan.Drop) {
			for k := range r.Legs {
				leg := &r.Legs[k]
				if leg.Kind == route.AcrossArc && leg.Space == h.Space && geom.SegmentRectCloserThan(flat(leg.From), flat(leg.To), h.Area, limit) {
					names = append(names, d.Tag)
					return
				}
			}
		})
		if len(names) > 0 {
			f := of(h.Pos, h.ID, "%s %s over joists nearer than %s to this hatch", tags(names), verb(names, "lies", "lie"), c.text(limit))
			f.Change = "strips or a board"
			c.add(rule.HatchGuard, f)
		}
	}
}
