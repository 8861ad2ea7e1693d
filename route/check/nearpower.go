package check

import (
	"math"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// nearPower reports, of each power run, the cables that stay near it for long
// and those that cross it aslant.
func (c *checker) nearPower() {
	for i := range c.house.PowerRuns {
		run := &c.house.PowerRuns[i]
		c.longBeside(run)
		c.crossedSlanted(run)
	}
}

func (c *checker) longBeside(run *plan.PowerRun) {
	near, most := c.book.Length(rule.PowerNear), c.book.Length(rule.PowerNearLength)
	var names []string
	longest := measure.Length(0)
	c.routed(func(r *route.Route, d *plan.Drop) {
		if l := c.lengthNear(r, run, near); l > most {
			names, longest = append(names, d.Tag), max(longest, l)
		}
	})
	if len(names) == 0 {
		return
	}
	f := of(run.Pos, run.ID, "%s %s nearer than %s beside this power run for %s; more than %s is remarked on",
		tags(names), verb(names, "is", "are"), c.text(near), c.text(longest), c.text(most))
	f.Change = "the next joist bay, where it costs nothing"
	c.add(rule.PowerLong, f)
}

// lengthNear is how much of a route in a power run's space lies nearer than near to a
// power run that it does not cross.
func (c *checker) lengthNear(r *route.Route, run *plan.PowerRun, near measure.Length) measure.Length {
	cross := angle(c.book.Value(rule.PowerCrossing))
	total := measure.Length(0)
	for i := range r.Legs {
		leg := &r.Legs[i]
		p, q := flat(leg.From), flat(leg.To)
		if !leg.InAttic() || leg.Space != run.Space || p == q {
			continue
		}
		var parts []measure.Range
		for k := 1; k < len(run.Path); k++ {
			a, b := run.Path[k-1], run.Path[k]
			if geom.AngleAtLeast(p, q, a, b, cross) {
				continue
			}
			if s, ok := beside(p, q, a, b, near); ok {
				parts = append(parts, s)
			}
		}
		total += covered(parts)
	}
	return total
}

// beside is the part of the leg from p to q, along an axis, that has the
// segment ab nearer than near at its side, as a stretch on that axis. ok is
// false if there is none.
func beside(p, q, a, b geom.Point, near measure.Length) (s measure.Range, ok bool) {
	if p.X == q.X {
		p, q, a, b = flip(p), flip(q), flip(a), flip(b)
	}
	a.Y, b.Y = a.Y-p.Y, b.Y-p.Y
	if a.Y == b.Y {
		if a.Y >= near || -a.Y >= near {
			return s, false
		}
	} else {
		// Cut ab down to where it is near.
		lo, hi := cutAt(a, b, -near), cutAt(a, b, near)
		lo, hi = min(lo, hi), max(lo, hi)
		lo, hi = max(lo, 0), min(hi, 1)
		if lo >= hi {
			return s, false
		}
		a.X, b.X = between(a.X, b.X, lo), between(a.X, b.X, hi)
	}
	s.Min = max(min(a.X, b.X), min(p.X, q.X))
	s.Max = min(max(a.X, b.X), max(p.X, q.X))
	return s, s.Min < s.Max
}

func flip(p geom.Point) geom.Point { return geom.Point{X: p.Y, Y: p.X} }

// cutAt is the part of the way from a to b at which Y is y.
func cutAt(a, b geom.Point, y measure.Length) float64 {
	return float64(y-a.Y) / float64(b.Y-a.Y)
}

func between(a, b measure.Length, part float64) measure.Length {
	return a + measure.Length(math.Round(float64(b-a)*part))
}

// covered is the length of the union of some stretches.
func covered(parts []measure.Range) measure.Length {
	slices.SortFunc(parts, func(a, b measure.Range) int { return int(a.Min - b.Min) })
	total := measure.Length(0)
	for i, s := range parts {
		if i > 0 {
			s.Min = max(s.Min, parts[i-1].Max)
			parts[i].Max = max(s.Max, parts[i-1].Max)
		}
		total += max(0, s.Max-s.Min)
	}
	return total
}

func (c *checker) crossedSlanted(run *plan.PowerRun) {
	square := angle(c.book.Value(rule.PowerSquare))
	var names []string
	least := 90.0
	c.routed(func(r *route.Route, d *plan.Drop) {
		found := false
		for i := range r.Legs {
			leg := &r.Legs[i]
			p, q := flat(leg.From), flat(leg.To)
			if !leg.InAttic() || leg.Space != run.Space || p == q {
				continue
			}
			for k := 1; k < len(run.Path); k++ {
				a, b := run.Path[k-1], run.Path[k]
				if geom.SegmentsTouch(p, q, a, b) && !geom.AngleAtLeast(p, q, a, b, square) {
					found, least = true, min(least, degreesBetween(p, q, a, b))
				}
			}
		}
		if found {
			names = append(names, d.Tag)
		}
	})
	if len(names) == 0 {
		return
	}
	f := of(run.Pos, run.ID, "%s %s this power run at %.0f°; less than %d° is remarked on",
		tags(names), verb(names, "crosses", "cross"), math.Floor(least), c.book.Value(rule.PowerSquare))
	f.Change = "turn the cable where it crosses"
	c.add(rule.PowerSlanted, f)
}

// degreesBetween is the angle between the lines through pq, along an axis, and
// ab, 0 to 90.
func degreesBetween(p, q, a, b geom.Point) float64 {
	along, across := math.Abs(float64(b.X-a.X)), math.Abs(float64(b.Y-a.Y))
	if p.X == q.X {
		along, across = across, along
	}
	return math.Atan2(across, along) * 180 / math.Pi
}

// angle is the angle of so many whole degrees, 45 to 90, for an exact
// comparison.
func angle(degrees int64) geom.CosSquared {
	const den = 1 << 40
	cos := math.Cos(float64(degrees) * math.Pi / 180)
	return geom.CosSquared{Num: int64(math.Round(cos * cos * den)), Den: den}
}

// devicesInBays reports the devices in stud bays that cables go up.
func (c *checker) devicesInBays() {
	for w := range c.house.Walls {
		for k := range c.res.Graph.Bays[w] {
			bay := &c.res.Graph.Bays[w][k]
			for i := range c.house.Walls[w].Devices {
				if d := &c.house.Walls[w].Devices[i]; bay.Start <= d.At && d.At <= bay.End {
					c.deviceInBay(bay, d)
				}
			}
		}
	}
}

func (c *checker) deviceInBay(bay *route.Bay, dev *plan.Device) {
	var names []string
	apart := bay.End - bay.Start
	c.routed(func(r *route.Route, d *plan.Drop) {
		if l, ok := c.alongBay(r, bay); ok {
			names, apart = append(names, d.Tag), min(apart, max(l-c.feed(bay, dev), c.feed(bay, dev)-l))
		}
	})
	if len(names) == 0 {
		return
	}
	way := "from above"
	switch {
	case dev.Up && dev.Down:
		way = "from above and on downwards"
	case dev.Down:
		way = "from below"
	}
	c.add(rule.DeviceInBay, of(dev.Pos, dev.ID, "the %s is in the stud bay that %s %s through; its cable comes %s along the nearer stud, %s from where the data cable goes up",
		dev.Kind, tags(names), verb(names, "goes", "go"), way, c.text(apart)))
}

// feed is where along the wall the power cable of a device runs: on the nearer
// stud of its bay, as package route has it.
func (c *checker) feed(bay *route.Bay, dev *plan.Device) measure.Length {
	if dev.At-bay.Start <= bay.End-dev.At {
		return bay.Start
	}
	return bay.End
}

// alongBay is where along the wall a route goes up or down in a bay. ok is
// false if it does not.
func (c *checker) alongBay(r *route.Route, bay *route.Bay) (l measure.Length, ok bool) {
	g := c.res.Graph
	for i, a := range r.Arcs {
		n := &g.Nodes[r.Nodes[i]]
		if g.Arcs[a].Kind != route.FishArc || n.Wall != bay.Wall && g.Nodes[r.Nodes[i+1]].Wall != bay.Wall {
			continue
		}
		if l = c.house.Walls[bay.Wall].Along(flat(n.At)); bay.Start <= l && l <= bay.End {
			return l, true
		}
	}
	return 0, false
}
