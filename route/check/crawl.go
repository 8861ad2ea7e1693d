package check

import (
	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// crawlSpaces tells, of every crawl space that somebody works in, what to mind
// there, and which of its ways in through a floor are small.
func (c *checker) crawlSpaces() {
	for i, s := range c.house.Spaces {
		if s.Kind != plan.CrawlSpace {
			continue
		}
		names := c.workedIn(i)
		if len(names) == 0 {
			continue
		}
		c.add(rule.CrawlSpace, of(s.Pos, c.spaceName(i), "%s %s through it, with %s under the joists", tags(names), verb(names, "goes", "go"), c.text(s.Clear)))
		c.crawlHatches(i)
	}
}

// workedIn lists the drops whose cables are laid by hand in a space.
func (c *checker) workedIn(space int) (names []string) {
	c.routed(func(r *route.Route, d *plan.Drop) {
		for i := range r.Legs {
			if l := &r.Legs[i]; l.Space == space && l.InAttic() && l.Zone <= route.Arm {
				names = append(names, d.Tag)
				return
			}
		}
	})
	return names
}

// crawlHatches reports the openings in the floor over a crawl space that are
// smaller than the code's; of one from outside only its plan is known.
func (c *checker) crawlHatches(space int) {
	short, long := c.book.Length(rule.CrawlShort), c.book.Length(rule.CrawlLong)
	for i := range c.house.Hatches {
		h := &c.house.Hatches[i]
		if h.Space != space || h.Room < 0 {
			continue
		}
		var a, b measure.Length = h.Area.Width(), h.Area.Height()
		if a, b = min(a, b), max(a, b); a < short || b < long {
			c.add(rule.CrawlAccess, of(h.Pos, h.ID, "%s by %s; an access through the floor is at least %s by %s", c.text(a), c.text(b), c.text(short), c.text(long)))
		}
	}
}
