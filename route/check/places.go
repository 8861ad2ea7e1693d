package check

import (
	"slices"

	"topplate/plan"
	"topplate/plan/cable"
	"topplate/plan/conduit"
	"topplate/plan/rule"
	"topplate/route"
)

// cablePlace holds the jacket of a drop's cable against where it lies.
func (c *checker) cablePlace(d *plan.Drop) {
	if d.Kind == plan.SoffitSpot && !d.Cable.Sunlight {
		c.add(rule.Sunlight, at(d, "%s ends out of doors, and its jacket is not made for the sun", d.Cable.ID))
	}
	if d.Cable.Jacket != cable.CMX {
		return
	}
	thick := d.Cable.Diameter
	most, less := c.book.Length(rule.LimitedUse), c.book.Length(rule.LimitedUseMetric)
	switch {
	case thick >= most:
		c.add(rule.LimitedCable, at(d, "%s is marked CMX and %s thick; hidden in a house it is to be thinner than %s", d.Cable.ID, millimetres(thick), millimetres(most)))
	case thick >= less:
		c.addNote(rule.LimitedCable, at(d, "%s is marked CMX and %s thick; of the two numbers printed, %s and %s, it is thinner than the larger only",
			d.Cable.ID, millimetres(thick), millimetres(less), millimetres(most)))
	}
}

// outside says what the hole of a soffit spot needs.
func (c *checker) outside(r *route.Route, d *plan.Drop) {
	if d.Kind != plan.SoffitSpot {
		return
	}
	wall := c.house.Walls[d.Eave].ID
	found := "the cable comes out under the eave at wall %s and stays on the building: the code's clause asks for no protector, a surge device is still good practice"
	if d.Exposure != plan.NotExposed {
		found = "the cable comes out under the eave at wall %s"
	}
	f := at(d, found, wall)
	f.Change = "a sealed hole, which the device covers"
	if r.Blocked == nil && c.res.Graph.DripLoops(r) > 0 {
		f.Change = "a drip loop and a sealed hole"
	}
	c.add(rule.EntrySeal, f)
	switch d.Exposure {
	case plan.Aerial:
		c.add(rule.Surge, at(d, "a part of the cable hangs in the air"))
	case plan.OtherBuilding:
		c.add(rule.Surge, at(d, "the cable goes on to another building"))
	}
}

// airSpaces reminds of hollows that are ducts where the attic has ducts or a
// unit, and of every cable that is not plenum cable.
func (c *checker) airSpaces() {
	moves := func(o plan.Obstacle) bool { return o.Kind == "duct" || o.Kind == "unit" }
	i := slices.IndexFunc(c.house.Obstacles, moves)
	if i < 0 {
		return
	}
	var names []string
	c.routed(func(_ *route.Route, d *plan.Drop) {
		if d.Cable.Jacket != cable.CMP {
			names = append(names, d.Tag)
		}
	})
	if len(names) > 0 {
		o := &c.house.Obstacles[i]
		c.add(rule.AirSpace, of(o.Pos, o.ID, "air is moved through the house, and %s %s no plenum cable: look that no hollow on the way is used as a duct",
			tags(names), verb(names, "is", "are")))
	}
}

// conduits reports the conduits that are too full already, of those that no
// route goes through: package route reports the others.
func (c *checker) conduits() {
	for i := range c.house.Conduits {
		k := &c.house.Conduits[i]
		if c.used(k) || conduit.Fits(k.Inside, k.Holds) {
			continue
		}
		f := of(k.Pos, k.ID, "the %d cables in it fill %d %% of its %s inside; for so many at most %d %%",
			len(k.Holds), conduit.Filled(k.Inside, k.Holds), c.text(k.Inside), conduit.ShareOf(len(k.Holds)).Percent)
		f.Change = "pull nothing more into it"
		c.add(rule.ConduitFill, f)
	}
}

// used reports whether a route goes through a conduit.
func (c *checker) used(k *plan.Conduit) bool {
	return slices.ContainsFunc(c.res.Reused, func(u route.Reuse) bool { return u.Conduit && u.ID == k.ID })
}
