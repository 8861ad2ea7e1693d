package check

import (
	"errors"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/network"
	"topplate/route/pull"
)

// pull works out from which end a drop's cables pull more easily, and where to
// pull them out on the way. Cables that are pulled together share the pull, so
// that it is worked out for one.
func (c *checker) pull(r *route.Route, d *plan.Drop) {
	path := pullPath(r)
	load := pull.Load{
		Mass:     float64(d.Cable.Mass) / 1e6,
		Friction: float64(c.book.Value(rule.PullFriction)) / 100,
		Feed:     float64(c.book.Value(rule.PullFeed)),
	}
	limits := pull.Limits{
		Tension: float64(d.Cable.MaxPull) / 1000,
		Turn:    pull.Angle(c.book.Value(rule.PullTurns)) * pull.Square,
		Length:  c.book.Length(rule.PullLength),
	}
	best, err := pull.BestPoints(path, load, limits)
	var stuck *pull.StuckError
	switch {
	case errors.As(err, &stuck):
		c.stuck(d, path, stuck)
	case err == nil && len(best.Points) > 0:
		c.pullStops(d, path, &best)
	}
}

// pullPath is a route as straight pieces and square bends, from the closet. A
// hand gets at the cable where it is laid in the attic within reach, not on
// the way of a rod.
func pullPath(r *route.Route) pull.Path {
	var path pull.Path
	last := network.Free
	for i := range r.Legs {
		leg := &r.Legs[i]
		if last != network.Free && leg.Heading != network.Free && last != leg.Heading {
			path = append(path, pull.Bend(pull.Square))
		}
		last = leg.Heading
		laid := leg.InAttic() && leg.Kind != route.RodArc && leg.Zone <= route.Arm
		rise := max(-leg.Length, min(leg.To.Z-leg.From.Z, leg.Length))
		path = append(path, pull.Piece{Length: leg.Length, Rise: rise, Open: laid})
	}
	return path
}

// along is how far a place on a path is from its start.
func along(path pull.Path, p pull.Place) measure.Length {
	l := p.At
	for _, piece := range path[:min(p.Piece, len(path))] {
		l += piece.Length
	}
	return l
}

func (c *checker) stuck(d *plan.Drop, path pull.Path, e *pull.StuckError) {
	from, to := c.text(along(path, e.From)), c.text(along(path, e.To))
	if e.Tension {
		c.add(rule.PullTension, at(d, "about %.0f N on each cable from %s to %s from the panel; %s takes %.0f N",
			e.Found.Tension, from, to, d.Cable.ID, float64(d.Cable.MaxPull)/1000))
	}
	if e.Turn {
		c.add(rule.PullTurnsRule, at(d, "%d square bends from %s to %s from the panel, where no hand gets at the cable; at most %d",
			int(e.Found.Turn/pull.Square), from, to, c.book.Value(rule.PullTurns)))
	}
	if e.Length {
		c.add(rule.PullLengthRule, at(d, "%s in one pull, from %s to %s from the panel; at most %s",
			c.text(e.Found.Length), from, to, c.text(c.book.Length(rule.PullLength))))
	}
}

func (c *checker) pullStops(d *plan.Drop, path pull.Path, best *pull.Plan) {
	var places []string
	for _, p := range best.Points {
		places = append(places, c.text(along(path, p)))
	}
	if best.FromEnd {
		slices.Reverse(places)
	}
	end := "at the panel"
	if best.FromEnd {
		end = "at the drop"
	}
	c.add(rule.PullStops, at(d, "fed in %s, it is pulled out and fed on %s from the panel; at most %.0f N on each cable",
		end, tags(places), hardest(best)))
}

// hardest is the largest tension of a plan, in newtons.
func hardest(p *pull.Plan) float64 {
	most := 0.0
	for _, s := range p.Stretches {
		most = max(most, s.Tension)
	}
	return most
}
