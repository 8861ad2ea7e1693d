package check

import (
	"strings"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
)

// fire reports what opens the separation of a garage, how many holes are to be
// sealed, and which go through a floor between two storeys.
func (c *checker) fire() {
	var sealed []string
	storeys := make([][]string, len(c.house.Spaces))
	for i := range c.res.Holes {
		h := &c.res.Holes[i]
		p := &c.res.Graph.Holes[h.Place]
		if toSeal(p.Kind) {
			sealed = append(sealed, h.ID)
		}
		if c.throughFloor(p) {
			storeys[p.Space] = append(storeys[p.Space], h.ID)
		}
		c.holeOfGarage(h, p)
	}
	for i := range c.res.Reused {
		if u := &c.res.Reused[i]; !u.Conduit && toSeal(u.Kind) {
			sealed = append(sealed, u.ID)
		}
	}
	if len(sealed) > 0 {
		where := "attic"
		if len(c.house.Spaces) > 1 {
			where = "holes"
		}
		c.add(rule.SealHoles, of(c.house.Attic.Pos, where, "to be sealed again round the cable: %s", tags(sealed)))
	}
	for i, names := range storeys {
		if len(names) > 0 {
			s := c.house.Spaces[i]
			c.add(rule.FloorOpened, of(s.Pos, c.spaceName(i), "%s %s into the floor between levels %s and %s",
				tags(names), verb(names, "opens", "open"), c.house.Levels[s.Below].ID, c.house.Levels[s.Above].ID))
		}
	}
	c.boxesInGarage()
}

// toSeal reports whether holes of a kind open a hollow that fire goes up in.
func toSeal(k route.ArcKind) bool {
	switch k {
	case route.PlateArc, route.SoleArc, route.BlockArc, route.CeilingArc, route.PassArc, route.FloorArc:
		return true
	}
	return false
}

// throughFloor reports whether a hole opens into the floor between two storeys,
// from the walls below it or above it.
func (c *checker) throughFloor(p *route.HolePlace) bool {
	if p.Kind != route.PlateArc && p.Kind != route.SoleArc && p.Kind != route.CeilingArc && p.Kind != route.FloorArc || p.Space < 0 {
		return false
	}
	s := c.house.Spaces[p.Space]
	return s.Kind == plan.FloorSpace && s.Above >= 0
}

// holeOfGarage reports a hole in what parts a garage from the house: its ceiling,
// and walls with a room of the house on the other side. An outer wall of the garage
// and its eave part nothing; a box that is cut into its board is found by itself.
func (c *checker) holeOfGarage(h *route.Hole, p *route.HolePlace) {
	if p.Wall < 0 {
		if p.Kind != route.FloorArc && c.garage(p.Room) {
			room := &c.house.Rooms[p.Room]
			c.add(rule.GarageParting, of(room.Pos, h.ID, "the hole opens the ceiling of %s", room.Name))
		}
		return
	}
	w := &c.house.Walls[p.Wall]
	if c.throughFloor(p) {
		s := c.house.Spaces[p.Space]
		if room := c.house.RoomOn(s.Below, flat(p.At)); c.garage(room) {
			c.add(rule.GarageParting, of(w.Pos, h.ID, "the hole goes into the floor over %s", c.house.Rooms[room].Name))
			return
		}
	}
	for _, side := range []plan.Side{plan.Left, plan.Right} {
		room, other := c.house.RoomBeside(w, p.Along, side), c.house.RoomBeside(w, p.Along, side.Opposite())
		if c.garage(room) && other >= 0 && !c.garage(other) {
			c.add(rule.GarageParting, of(w.Pos, h.ID, "the hole is in wall %s, between %s and %s", w.ID, c.house.Rooms[room].Name, c.house.Rooms[other].Name))
			return
		}
	}
}

// boxesInGarage reports boxes and panels that are cut into walls on the side
// of a garage.
func (c *checker) boxesInGarage() {
	if s := &c.job.Closet; !s.Ceiling && c.garage(s.Spot.Room) {
		c.add(rule.GarageParting, of(s.Pos, s.Name, "the panel's opening is cut into wall %s in %s", c.house.Walls[s.Spot.Wall].ID, c.house.Rooms[s.Spot.Room].Name))
	}
	c.routed(func(_ *route.Route, d *plan.Drop) {
		if d.Kind == plan.WallPlate && c.garage(d.Spot.Room) {
			c.add(rule.GarageParting, at(d, "the box is cut into wall %s in %s", c.house.Walls[d.Spot.Wall].ID, c.house.Rooms[d.Spot.Room].Name))
		}
	})
}

// garage reports whether a room is one: its use says so, it is called so, or a
// garage door opens into it. Room -1 is none.
func (c *checker) garage(room int) bool {
	if room < 0 {
		return false
	}
	r := &c.house.Rooms[room]
	if r.Use == "garage" || strings.Contains(strings.ToLower(r.Name+" "+r.ID), "garage") {
		return true
	}
	for i := range c.house.Walls {
		w := &c.house.Walls[i]
		for k := range w.Openings {
			o := &w.Openings[k]
			mid := o.Start + (o.End-o.Start)/2
			if o.Kind == plan.GarageDoor && (c.house.RoomBeside(w, mid, plan.Left) == room || c.house.RoomBeside(w, mid, plan.Right) == room) {
				return true
			}
		}
	}
	return false
}
