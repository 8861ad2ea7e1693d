package parts

import (
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/route"
)

// outdoors counts what is wanted where cable leaves the house.
func (l *lister) outdoors(w wants, s scope) {
	soffits, gables := l.holesOf(s, route.SoffitArc), l.holesOf(s, route.GableArc)
	l.tubes(w, "weather-sealant", sealOfOutside, soffits+gables, "to the outside")
	w.add(l.of("soffit-bushing"), soffits, counted(soffits, "hole")+" in soffits")
	w.add(l.of("wall-sleeve"), gables, counted(gables, "hole")+" through walls")
	cables := int64(0)
	surges := notes{}
	for _, r := range s.routes {
		d := l.drop(r)
		if d.Kind != plan.SoffitSpot {
			continue
		}
		cables += int64(d.Count)
		l.surge(surges, d)
	}
	w.add(l.of("drip-clip"), cables*dripClips.Value, fmt.Sprintf("%s x %d", counted(cables, "cable"), dripClips.Value))
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
	attic, all := l.trunk(s)
	units := l.job.House.Units
	spacing, spool := measure.Length(strapSpacing.Value), measure.Length(stringOnSpool.Value)
	w.add(l.of("cable-strap"), up(int64(attic), strapSpacing.Value), fmt.Sprintf("%s of bundles within reach in the attic, one every %s", units.Format(attic), units.Format(spacing)))
	w.add(l.of("pull-string"), up(int64(all), stringOnSpool.Value), fmt.Sprintf("%s of ways, each left with a string; %s to a spool", units.Format(all), units.Format(spool)))
	w.add(l.of("tape-roll"), up(cables, cablesToTape.Value), fmt.Sprintf("%s, %d to a roll", counted(cables, "cable"), cablesToTape.Value))
	w.add(l.of("label"), labels, counted(cables, "cable")+", both ends and all ports")
}

// trunk is the length of all ways together, shared parts once: of those in the
// attic that a hand reaches, and of all.
func (l *lister) trunk(s scope) (attic, all measure.Length) {
	seen := map[int]bool{}
	for _, r := range s.routes {
		for _, a := range r.Arcs {
			if seen[a] {
				continue
			}
			seen[a] = true
			arc := &l.res.Graph.Arcs[a]
			all += arc.Length
			switch arc.Kind {
			case route.AlongArc, route.BesideArc, route.AcrossArc:
				attic += arc.Length
			}
		}
	}
	return attic, all
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
