package check

import (
	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
)

// bundleHeat reports the bundle with the most cables on which more power may
// be put than bundles carry without a remark.
func (c *checker) bundleHeat() {
	most := float64(c.book.Value(rule.BundleWatts))
	powered := func(b *route.Bundle) (names []string, cables int) {
		for _, d := range b.Drops {
			drop := &c.job.Drops[d]
			if class, ok := classOf(drop); ok && class.SwitchWatts > most {
				names, cables = append(names, drop.Tag), cables+drop.Count
			}
		}
		return names, cables
	}
	worst, all := 0, 0
	var names []string
	var first *plan.Drop
	for i := range c.res.Bundles {
		b := &c.res.Bundles[i]
		tags, n := powered(b)
		if n > 0 && b.Cables > 1 && (n > worst || n == worst && b.Cables > all) {
			worst, all, names, first = n, b.Cables, tags, c.drop(tags[0])
		}
	}
	if worst > 0 {
		c.add(rule.BundleHeat, at(first, "%d of the %d cables in one bundle (%s) may carry more than %.4g W each", worst, all, tags(names), most))
	}
}

// drop is the drop with this tag.
func (c *checker) drop(tag string) *plan.Drop {
	for i := range c.job.Drops {
		if c.job.Drops[i].Tag == tag {
			return &c.job.Drops[i]
		}
	}
	return nil
}
