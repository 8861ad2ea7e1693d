package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// chases adds the ways up and down every chase: it opens into each floor that
// it passes, into the space over its highest level and, if it goes down, the
// one under its lowest, and a hand gets into it from its rooms. Where the
// panel is within an arm's reach of it in such a room, its cables start there.
func (b *builder) chases() {
	for i := range b.house.Chases {
		if c := &b.house.Chases[i]; !c.Hot {
			b.chase(c)
		}
	}
}

func (b *builder) chase(c *plan.Chase) {
	at := mid(c.Area)
	stops := b.chaseEnds(c, at)
	p := b.nodes[b.root].At
	l := dist(p.X, at.X) + dist(p.Y, at.Y)
	if slices.Contains(c.Rooms, b.job.Closet.Room) && l <= b.job.Tools.ArmReach {
		n := b.chaseNode(at, p.Z)
		b.add(Arc{Kind: EnterArc, From: b.root, To: n, Heading: headingTo(flat(p), at), Length: l, Hole: -1, Charges: b.cable(l)})
		stops = append(stops, p.Z)
	}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	for i := 1; i < len(stops); i++ {
		lo, hi := stops[i-1], stops[i]
		b.add(Arc{
			Kind: ChaseArc, From: b.chaseNode(at, lo), To: b.chaseNode(at, hi), Heading: up, Length: hi - lo, Hole: -1, Chase: c,
			Charges: append(b.cable(hi-lo), b.once(price.FishChase, 1)),
		})
	}
}

func (b *builder) chaseNode(at geom.Point, z measure.Length) int {
	return b.node(ChaseNode, geom.Point3{X: at.X, Y: at.Y, Z: z}, -1, noOwner)
}

// chaseEnds makes the chase a port of every space that it opens into, and lists
// the heights of these.
func (b *builder) chaseEnds(c *plan.Chase, at geom.Point) []measure.Length {
	var out []measure.Length
	open := func(cav *cavity) {
		if cav == nil || slices.Contains(out, cav.base) {
			return
		}
		n := b.chaseNode(at, cav.base)
		cav.ports = append(cav.ports, port{at: at, join: func() {
			cav.add(Arc{Kind: EnterArc, From: n, To: cav.low(at), Heading: network.Free, Hole: -1})
			if cav.zoneOf(at) > Arm {
				cav.shoot(at, cav.low(at), rodFrom{wall: -1})
			}
		}})
		out = append(out, cav.base)
	}
	if c.Down {
		open(b.under(c.From, at))
	}
	for _, level := range b.levelsUp() {
		if f := b.house.Levels[level].Floor; b.house.Levels[c.From].Floor <= f && f <= b.house.Levels[c.To].Floor {
			open(b.over(level, at))
		}
	}
	return out
}

// levelsUp lists the levels from the lowest up.
func (b *builder) levelsUp() []int {
	out := make([]int, len(b.house.Levels))
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(i, j int) int { return cmp.Compare(b.house.Levels[i].Floor, b.house.Levels[j].Floor) })
	return out
}

// throughWhat says what a chase goes through.
func throughWhat(c *plan.Chase) string {
	if c.From == c.To && !c.Down {
		return "and through the ceiling over it"
	}
	return "from storey to storey"
}

// overfilled reports whether cables of some diameters, with those that are in a chase
// already, take more of its section than the rules leave them.
func overfilled(book rule.Book, c *plan.Chase, cables []measure.Length) bool {
	// In square micrometres a section stays below 2^63 up to a thousand thick
	// cables in a chase of many metres.
	var filled int64
	for _, d := range slices.Concat(c.Holds, cables) {
		um := int64(d / measure.Micrometre)
		filled += um * um / circleDen * circleNum
	}
	w, h := int64(c.Area.Width()/measure.Micrometre), int64(c.Area.Height()/measure.Micrometre)
	return filled > w/100*h*book.Value(rule.ChaseFill)
}

// The area of a circle is so much of the square of its diameter: π/4, by 355/113.
const (
	circleNum = 355
	circleDen = 4 * 113
)

// chases reports those that are fuller than the limit, and that every floor a
// chase passes is closed again.
func (c *collector) chases() {
	g := c.r.Graph
	users := map[*plan.Chase][]int{}
	for i := range c.r.Routes {
		for _, a := range c.r.Routes[i].Arcs {
			if t := g.Arcs[a].Chase; t != nil && !slices.Contains(users[t], c.r.Routes[i].Drop) {
				users[t] = append(users[t], c.r.Routes[i].Drop)
			}
		}
	}
	for i := range g.Job.House.Chases {
		t := &g.Job.House.Chases[i]
		drops := users[t]
		if len(drops) == 0 {
			continue
		}
		n := len(diameters(g.Job, drops))
		c.add(rule.ChaseSeal, Finding{Pos: t.Pos, Where: t.ID, Found: fmt.Sprintf("%d cables go through it %s", n, throughWhat(t))})
		if overfilled(c.book, t, diameters(g.Job, drops)) {
			c.add(rule.ChaseFillRule, Finding{
				Pos: t.Pos, Where: t.ID,
				Found:  fmt.Sprintf("%d cables and the %d in it would take more than %d %% of its section", n, len(t.Holds), c.book.Value(rule.ChaseFill)),
				Change: "take some of the cables another way",
			})
		}
	}
}
