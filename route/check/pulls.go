package check

import (
	"errors"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/pull"
)

// pull works out from which end a drop's cables pull more easily, and where to
// pull them out on the way. Cables that are pulled together share the pull, so
// that it is worked out for one.
func (c *checker) pull(r *route.Route, d *plan.Drop) {
	way := c.pullWay(r)
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
	best, err := pull.BestPoints(way.path, load, limits)
	var stuck *pull.StuckError
	switch {
	case errors.As(err, &stuck):
		c.stuck(d, way, stuck)
	case err == nil && len(best.Points) > 0:
		c.pullStops(d, way, &best)
	}
}

// along is how far a place on a path is from its start.
func along(path pull.Path, p pull.Place) measure.Length {
	l := p.At
	for _, piece := range path[:min(p.Piece, len(path))] {
		l += piece.Length
	}
	return l
}

func (c *checker) stuck(d *plan.Drop, way *pullWay, e *pull.StuckError) {
	from, to := c.text(along(way.path, e.From)), c.text(along(way.path, e.To))
	help := way.help(e)
	if e.Tension {
		f := at(d, "about %.0f N on each cable from %s to %s from the panel; %s takes %.0f N",
			e.Found.Tension, from, to, d.Cable.ID, float64(d.Cable.MaxPull)/1000)
		f.Change = help
		c.add(rule.PullTension, f)
	}
	if e.Turn {
		f := at(d, "%d square bends from %s to %s from the panel, where no hand gets at the cable; at most %d",
			int(e.Found.Turn/pull.Square), from, to, c.book.Value(rule.PullTurns))
		f.Change = help
		c.add(rule.PullTurnsRule, f)
	}
	if e.Length {
		f := at(d, "%s in one pull, from %s to %s from the panel; at most %s",
			c.text(e.Found.Length), from, to, c.text(c.book.Length(rule.PullLength)))
		f.Change = help
		c.add(rule.PullLengthRule, f)
	}
}

func (c *checker) pullStops(d *plan.Drop, way *pullWay, best *pull.Plan) {
	var places []string
	for _, p := range best.Points {
		places = append(places, c.text(along(way.path, p))+way.nameAt(p))
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
