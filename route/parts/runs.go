package parts

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/route"
)

// outdoors counts what is wanted where cable leaves the house.
func (l *lister) outdoors(w wants, s scope) {
	soffits, gables := l.holesOf(s, route.SoffitArc), l.holesOf(s, route.GableArc)+l.throughOuter(s)
	l.tubes(w, "weather-sealant", sealOfOutside, soffits+gables, "to the outside")
	w.add(l.of("soffit-bushing"), soffits, counted(soffits, "hole")+" in soffits")
	w.add(l.of("wall-sleeve"), gables, counted(gables, "hole")+" through walls")
	loops := int64(0)
	surges := notes{}
	for _, r := range s.routes {
		d := l.drop(r)
		loops += int64(d.Count) * int64(l.res.Graph.DripLoops(r))
		if d.Kind == plan.SoffitSpot {
			l.surge(surges, d)
		}
	}
	w.add(l.of("drip-clip"), loops*dripClips.Value, fmt.Sprintf("%s x %d", counted(loops, "loop"), dripClips.Value))
	surges.into(w)
}

// surge wants protection for cable that lightning or power lines may reach: at
// the house, and for another building there as well.
func (l *lister) surge(ns notes, d *plan.Drop) {
	n := int64(d.Count)
	id := "surge-data"
	switch {
	case d.Cable.Category == "coax":
		id = "surge-coax"
	case !d.Cable.FourPair:
		id = "surge-speaker"
	}
	switch d.Exposure {
	case plan.Aerial:
		ns.add(l.of(id), n, fmt.Sprintf("%s: %d in the air", d.Tag, n))
	case plan.OtherBuilding:
		ns.add(l.of(id), 2*n, fmt.Sprintf("%s: %d to another building x 2 ends", d.Tag, n))
	}
}

// sundries counts what is used up on the way.
func (l *lister) sundries(w wants, s scope) {
	cables, labels := int64(0), int64(0)
	for _, r := range s.routes {
		cables += int64(l.drop(r).Count)
	}
	for i := range l.given.Labels {
		if s.later || !l.given.Labels[i].Later {
			labels++
		}
	}
	t := l.trunk(s)
	units := l.job.House.Units
	spool := measure.Length(stringOnSpool.Value)
	each := func(id string, length measure.Length, h Habit, what string) {
		w.add(l.of(id), up(int64(length), h.Value), fmt.Sprintf("%s of %s, one every %s", units.Format(length), what, units.Format(measure.Length(h.Value))))
	}
	each("cable-strap", t.attic, strapSpacing, "bundles within reach in the attic")
	each("cable-hook", t.under, hookSpacing, "bundles under open joists")
	each("outdoor-clip", t.outside, clipSpacing, "bundles along outer walls")
	each("wall-anchor", t.anchored, clipSpacing, "bundles along brick, stone or stucco")
	each("wall-channel", t.channel, channelLength, "channel on the faces of walls")
	w.add(l.of("pull-string"), up(int64(t.all), stringOnSpool.Value), fmt.Sprintf("%s of ways, each left with a string; %s to a spool", units.Format(t.all), units.Format(spool)))
	w.add(l.of("tape-roll"), up(cables, cablesToTape.Value), fmt.Sprintf("%s, %d to a roll", counted(cables, "cable"), cablesToTape.Value))
	w.add(l.of("label"), labels, counted(cables, "cable")+", both ends and all ports")
}

// A trunk is the length of all ways together, shared parts once: of those that
// a hand reaches, in attics and under the open joists of crawl spaces and of
// rooms, of those outside, of these along walls where clips want anchors, of those on
// the faces of walls, and of all.
type trunk struct{ attic, under, outside, anchored, channel, all measure.Length }

func (l *lister) trunk(s scope) trunk {
	var t trunk
	seen := map[int]bool{}
	for _, r := range s.routes {
		for _, a := range r.Arcs {
			if seen[a] {
				continue
			}
			seen[a] = true
			arc := &l.res.Graph.Arcs[a]
			t.all += arc.Length
			switch arc.Kind {
			case route.AlongArc, route.BesideArc, route.AcrossArc:
				if l.job.House.Spaces[arc.Space].Kind == plan.AtticSpace {
					t.attic += arc.Length
				} else {
					t.under += arc.Length
				}
			case route.OutsideArc, route.InSoffitArc:
				t.outside += arc.Length
				if arc.Outer != nil && arc.Outer.HardToFix() {
					t.anchored += arc.Length
				}
			case route.RacewayArc:
				t.channel += arc.Length
			case route.FaceArc:
				if slices.ContainsFunc(arc.Charges, func(c route.Charge) bool { return c.Term == price.RacewayRun }) {
					t.channel += arc.Length
				}
			}
		}
	}
	return t
}

// cableLines are the spools of each kind of cable that is cut today.
func (l *lister) cableLines() []Line {
	if l.given.Cuts == nil {
		return nil
	}
	var out []Line
	for i := range l.given.Cuts.Cables {
		c := &l.given.Cuts.Cables[i]
		if c.Pieces == 0 {
			continue
		}
		kind, _ := l.job.Cable(c.ID)
		perMetre := kind.PricePerMetre
		units := l.job.House.Units
		p := Part{ID: c.ID, Title: kind.Title, Group: Cable, Unit: "spool", Price: price.ByLength(perMetre, c.Each) / 1000, Priced: true, Source: practice}
		line := Line{Part: p, Need: int64(c.Opened() + c.New), Have: int64(c.Opened()), Buy: int64(c.New)}
		line.pay()
		line.Charge = price.ByLength(perMetre, c.Cut)
		why := []string{fmt.Sprintf("%s, %s to cut", counted(int64(c.Pieces), "cable"), units.Format(c.Cut))}
		if n := c.Opened(); n > 0 {
			why = append(why, counted(int64(n), "spool")+" at hand")
		}
		if c.New > 0 {
			why = append(why, fmt.Sprintf("%d new of %s", c.New, units.Format(c.Each)))
		}
		line.Rule = strings.Join(why, "; ")
		out = append(out, line)
	}
	return out
}
