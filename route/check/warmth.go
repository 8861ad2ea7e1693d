package check

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/supply"
)

// indoors reports whether a leg lies in a room, inside a wall or a floor, or in a
// crawl space, and not in the heat of an attic or on the way out of it.
func (c *checker) indoors(l *route.Leg) bool {
	switch l.Kind {
	case route.EnterArc, route.SlantArc, route.FishArc, route.BlockArc, route.PlateArc, route.SoleArc, route.StudArc, route.ConduitArc,
		route.RacewayArc, route.ChaseArc, route.FaceArc, route.WallArc:
		return true
	case route.SoffitArc, route.GableArc, route.OutsideArc:
		return false
	default:
		return l.Space >= 0 && !underRoof(c.house.Spaces[l.Space])
	}
}

// legs are the parts of a drop's cable as it is cut, by their temperature:
// what lies in rooms, walls, floors and crawl spaces, and all else, which is taken
// to be as hot as the attic. Loops and trim are in rooms where their end is; the
// allowances are counted hot, which is on the cautious side, if any of it is.
func (c *checker) legs(r *route.Route, d *plan.Drop) []supply.Leg {
	slack := &c.job.Slack
	cool := slack.Closet + slack.Trim
	if d.Kind == plan.WallPlate {
		cool += slack.Outlet + slack.Trim
	}
	hot := d.Kind == plan.SoffitSpot
	for i := range r.Legs {
		if c.indoors(&r.Legs[i]) {
			cool += r.Legs[i].Length
		} else {
			hot = true
		}
	}
	if !hot {
		cool = r.Lengths.Cut
	}
	wire := supply.Conductor{Ohms: float64(d.Cable.Resistance) / 1e6}
	return []supply.Leg{
		{Length: cool, Temperature: c.room(), Conductor: wire},
		{Length: r.Lengths.Cut - cool, Temperature: supply.Temperature(c.house.AtticHot), Conductor: wire},
	}
}

// room is the temperature in rooms.
func (c *checker) room() supply.Temperature {
	return supply.Temperature(c.book.Value(rule.RoomTemperature)) * supply.Celsius
}

// heat holds a cable against the heat of the attic: what it is made for, and
// how long it then counts.
func (c *checker) heat(r *route.Route, d *plan.Drop) {
	legs := c.legs(r, d)
	if hot := c.house.AtticHot; legs[1].Length > 0 && hot > d.Cable.Hot {
		c.add(rule.CableHeat, at(d, "%s of %s lies where it gets %s; it is made for up to %s",
			c.text(legs[1].Length), d.Cable.ID, celsius(hot), celsius(d.Cable.Hot)))
	}
	if !d.Cable.FourPair {
		return
	}
	channel, err := supply.EquivalentLength(legs, d.Cable.Screened)
	if err != nil {
		return // a cable of 100 km, which the length of a link stops already
	}
	cords := c.book.Length(rule.CordLength)
	if most := c.book.Length(rule.ChannelLength); channel.Equivalent+cords > most {
		c.add(rule.HotChannel, at(d, "%s of cable counts as %s in the attic's %s, and with %s of cords as %s; a channel may be %s",
			c.text(r.Lengths.Cut), c.text(channel.Equivalent), celsius(c.house.AtticHot), c.text(cords), c.text(channel.Equivalent+cords), c.text(most)))
	}
	if most := c.book.Length(rule.TenGigabit); d.Cable.Category == "6" && channel.Equivalent > most {
		c.add(rule.TenGigabitRule, at(d, "category 6 cable that counts as %s in the heat; for 10 Gb/s at most %s",
			c.text(channel.Equivalent), c.text(most)))
	}
}

// celsius prints thousandths of a degree.
func celsius(t int64) string { return fmt.Sprintf("%.4g °C", float64(t)/1000) }

// unlisted holds cable that is not listed for buildings against how far it
// may run inside: from where it comes in, or all of it if it never goes out.
func (c *checker) unlisted(r *route.Route, d *plan.Drop) {
	if d.Cable.Jacket.Listed() {
		return
	}
	inside, whence := r.Lengths.Cut, "and never leaves the building"
	if d.Kind == plan.SoffitSpot {
		inside, whence = c.insideLength(r), "from where it comes in to the panel"
	}
	if most := c.book.Length(rule.UnlistedInside); inside > most {
		c.add(rule.Unlisted, at(d, "%s of %s is inside, %s; cable that is not listed may be %s", c.text(inside), d.Cable.ID, whence, c.text(most)))
	}
}

// insideLength is the cable of a soffit spot from the hole to the outside to
// its end at the panel, loop and trim included.
func (c *checker) insideLength(r *route.Route) measure.Length {
	l := c.job.Slack.Closet + c.job.Slack.Trim
	for i := range r.Legs {
		if k := r.Legs[i].Kind; k == route.SoffitArc || k == route.GableArc {
			break
		}
		l += r.Legs[i].Length
	}
	return l
}
