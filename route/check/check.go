package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// Findings holds a solved job against the rules, worst first, then in the
// order of the checks. A drop without a route is held against those rules
// only that need none.
func Findings(res *route.Result) []route.Finding {
	c := &checker{res: res, job: res.Job, house: res.Job.House, book: res.Job.Book()}
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &c.job.Drops[r.Drop]
		c.cablePlace(d)
		c.outside(r, d)
		c.connector(d)
		if r.Blocked != nil {
			continue
		}
		c.bends(r, d)
		c.pull(r, d)
		c.heat(r, d)
		c.unlisted(r, d)
	}
	c.power()
	c.nearPower()
	c.devicesInBays()
	c.hot()
	c.bundleHeat()
	c.conduits()
	c.airSpaces()
	c.timber()
	c.crawlSpaces()
	c.fire()
	slices.SortStableFunc(c.out, func(a, b route.Finding) int { return cmp.Compare(a.Severity, b.Severity) })
	return c.out
}

// A checker gathers findings.
type checker struct {
	res   *route.Result
	job   *plan.Job
	house *plan.House
	book  rule.Book
	out   []route.Finding
	boxes map[int][]int // drops whose openings are at a node, nil before they are looked for
}

// add reports that a rule is broken. The way out is the rule's own unless f
// has one.
func (c *checker) add(id rule.ID, f route.Finding) {
	r, _ := rule.Lookup(id)
	f.Rule, f.Severity = id, r.Severity
	if f.Change == "" {
		f.Change = r.Change
	}
	c.out = append(c.out, f)
}

// addNote reports something milder than the rule's severity.
func (c *checker) addNote(id rule.ID, f route.Finding) {
	c.add(id, f)
	c.out[len(c.out)-1].Severity = rule.Note
}

// at begins a finding about a drop.
func at(d *plan.Drop, format string, args ...any) route.Finding {
	return route.Finding{Pos: d.Pos, Where: d.Tag, Found: fmt.Sprintf(format, args...)}
}

// of begins a finding about a thing in the sketch.
func of(pos diag.Pos, id, format string, args ...any) route.Finding {
	return route.Finding{Pos: pos, Where: id, Found: fmt.Sprintf(format, args...)}
}

// text prints a length in the units of the house.
func (c *checker) text(l measure.Length) string { return c.house.Units.Format(l) }

// routed calls f with every drop that has a route, in the order of tags.
func (c *checker) routed(f func(r *route.Route, d *plan.Drop)) {
	for i := range c.res.Routes {
		if r := &c.res.Routes[i]; r.Blocked == nil {
			f(r, &c.job.Drops[r.Drop])
		}
	}
}

// spaceName is how a finding calls a framing space in Where: "attic" where there
// is one only, its id otherwise.
func (c *checker) spaceName(space int) string {
	if s := c.house.Spaces[space]; len(c.house.Spaces) > 1 && s.ID != "" {
		return s.ID
	}
	return "attic"
}

// in is where something lies in a framing space, in words: "in the attic", "in
// the crawl space", "under the joists".
func (c *checker) in(space int) string {
	switch s := c.house.Spaces[space]; s.Kind {
	case plan.CrawlSpace:
		return "in the crawl space"
	case plan.FloorSpace:
		return "at the joists"
	default:
		return "in the attic"
	}
}

// underRoof reports whether a space gets as hot as an attic: what is over it is a
// roof.
func underRoof(s *plan.Space) bool { return s.Kind != plan.CrawlSpace && s.Above < 0 }

// tags joins names as people do: "A1", "A1 and A2", "A1, A2 and A3".
func tags(names []string) string {
	k := len(names) - 1
	if k < 1 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:k], ", ") + " and " + names[k]
}

// verb is the form of a verb for so many names.
func verb(names []string, one, more string) string {
	if len(names) == 1 {
		return one
	}
	return more
}

// flat is a place seen in plan.
func flat(p geom.Point3) geom.Point { return geom.Point{X: p.X, Y: p.Y} }
