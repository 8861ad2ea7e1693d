package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/conduit"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// intoConduits joins a box to the conduits that stand in its bay, behind the
// board: cable goes over to their lower ends, and up through them without a
// hole being bored.
func (b *builder) intoConduits(box int, key bayKey, at, height measure.Length) {
	bay := &b.bays[key.wall][key.bay]
	for i := range b.house.Conduits {
		c := &b.house.Conduits[i]
		if c.Wall != key.wall || c.At < bay.Start || c.At > bay.End || c.Height > bay.Top {
			continue
		}
		l := dist(at, c.At) + dist(height, c.Height)
		b.add(Arc{Kind: SlantArc, From: box, To: b.conduitEnd(c, key), Heading: network.Free, Length: l, Hole: -1, Charges: b.cable(l)})
	}
}

// conduitEnd is the node at the lower end of a conduit. The first time it is
// asked for, the conduit becomes a port of the space that it ends in.
func (b *builder) conduitEnd(c *plan.Conduit, key bayKey) int {
	at := b.house.Walls[c.Wall].PointAt(c.At)
	end := b.node(BayNode, geom.Point3{X: at.X, Y: at.Y, Z: b.floorOf(c.Wall) + c.Height}, c.Wall, noOwner)
	if slices.Contains(b.conduits, c) {
		return end
	}
	b.conduits = append(b.conduits, c)
	wall := &b.house.Walls[c.Wall]
	cav := b.over(wall.Level, at)
	l := b.bays[key.wall][key.bay].Top - c.Height + measure.Length(wall.TopPlates)*PlateThickness
	if c.Down {
		if cav = b.under(wall.Level, at); cav != nil {
			l = c.Height + b.floorOf(c.Wall) - cav.base
		}
	}
	if cav == nil {
		return end
	}
	cav.ports = append(cav.ports, port{at: at, join: func() {
		heading := up
		if c.Down {
			heading = up.Reverse()
		}
		cav.add(Arc{
			Kind: ConduitArc, From: end, To: cav.low(at), Heading: heading, Length: l, Hole: -1, Through: c,
			Charges: append(b.cable(l), b.once(price.FishConduit, 1)),
		})
		if cav.zoneOf(at) > Arm {
			cav.shoot(at, cav.low(at), rodFrom{wall: c.Wall, along: c.At})
		}
	}})
	return end
}

// overfull reports whether some drops' cables are more than a conduit takes
// beside those that are in it, by the table of the electrical code.
func (g *Graph) overfull(c *plan.Conduit, drops []int) bool {
	return !conduit.Fits(c.Inside, slices.Concat(c.Holds, diameters(g.Job, drops)))
}

// conduits reports those that are fuller than the table allows.
func (c *collector) conduits() {
	g := c.r.Graph
	users := map[*plan.Conduit][]int{}
	for i := range c.r.Routes {
		for _, a := range c.r.Routes[i].Arcs {
			if t := g.Arcs[a].Through; t != nil {
				users[t] = append(users[t], c.r.Routes[i].Drop)
			}
		}
	}
	for i := range g.Job.House.Conduits {
		t := &g.Job.House.Conduits[i]
		if drops := users[t]; len(drops) > 0 && g.overfull(t, drops) {
			n := len(diameters(g.Job, drops)) + len(t.Holds)
			c.add(rule.ConduitFill, Finding{
				Pos: t.Pos, Where: t.ID,
				Found:  fmt.Sprintf("%d cables in %s inside would fill more than %d %% of it, the share for so many", n, c.text(t.Inside), conduit.ShareOf(n).Percent),
				Change: "take some of the cables another way",
			})
		}
	}
}
