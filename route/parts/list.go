package parts

import (
	"cmp"
	"slices"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/cut"
	"topplate/route/tags"
)

// A Line is one part of the list.
type Line struct {
	Part
	Need int64 // today
	// Have are at hand; Buy is what is missing: the larger of Need - Have and 0.
	Have, Buy int64
	// Later is how many more the drops for later will need.
	Later int64
	Rule  string // the count in words, with its numbers
	// Charge is the price of all that is needed, Spend of what is to be bought,
	// in cost units: millionths of the currency's unit. They are zero of a part
	// without a price. Charge is zero of a tool.
	Charge, Spend int64
}

// A Given is what the list needs besides the routes.
type Given struct {
	Cuts   *cut.Cuts    // nil leaves cable out
	Labels []tags.Label // nil leaves labels out
	// Prices, by id of part in thousandths of the currency's unit, replace
	// those of the catalogue.
	Prices map[string]plan.Override
}

// List lists what the job needs: by group, then by id.
func List(res *route.Result, given Given) ([]Line, []route.Finding) {
	l := newLister(res, given)
	today, all := l.count(false), l.count(true)
	var lines []Line
	for id, w := range all {
		line := Line{Part: l.part(w.part), Later: w.n}
		if t, ok := today[id]; ok {
			line.Need, line.Rule = t.n, t.why
			line.Later = max(0, w.n-t.n)
		} else {
			line.Rule = "for later: " + w.why
		}
		line.Have = l.have[id]
		line.Buy = max(0, line.Need-line.Have)
		line.pay()
		lines = append(lines, line)
	}
	lines = append(lines, l.cableLines()...)
	slices.SortFunc(lines, func(a, b Line) int { return cmp.Or(cmp.Compare(a.Group, b.Group), cmp.Compare(a.ID, b.ID)) })
	return lines, l.findings(lines)
}

// pay works out what a line costs. A thousandth is a thousand cost units.
func (l *Line) pay() {
	if !l.Priced {
		return
	}
	l.Spend = l.Buy * l.Price * 1000
	if l.Group != Bits {
		l.Charge = l.Need * l.Price * 1000
	}
}

// A lister counts the parts of one job.
type lister struct {
	res   *route.Result
	job   *plan.Job
	book  rule.Book
	given Given
	known map[string]Part
	have  map[string]int64
}

func newLister(res *route.Result, given Given) *lister {
	l := &lister{res: res, job: res.Job, book: res.Job.Book(), given: given, known: map[string]Part{}, have: map[string]int64{}}
	for _, p := range Catalogue(l.job) {
		l.known[p.ID] = p
	}
	for _, h := range l.job.Have {
		l.have[h.Part] = int64(h.Count)
	}
	return l
}

// part is a part with what the catalogue and the user's prices say of it.
func (l *lister) part(p Part) Part {
	if known, ok := l.known[p.ID]; ok {
		p = known
	}
	if own, ok := l.given.Prices[p.ID]; ok {
		p.Price, p.Priced, p.Source = own.Value, true, rule.Source{Status: rule.SetByUser}
	}
	return p
}

// A wanted is how many of a part are needed, and why.
type wanted struct {
	part Part
	n    int64
	why  string
}

// wants are the parts that are counted, by id.
type wants map[string]wanted

// add counts n of a part, for a reason that tells all of them. It is called
// once for each part.
func (w wants) add(p Part, n int64, why string) {
	if n > 0 {
		w[p.ID] = wanted{p, n, why}
	}
}

// of is a part of the catalogue that is there by its id.
func (l *lister) of(id string) Part { return l.known[id] }

// count counts the parts of the drops that are run today, or of all.
func (l *lister) count(later bool) wants {
	w := wants{}
	s := l.scope(later)
	l.places(w, s)
	l.ends(w, s)
	l.sealing(w, s)
	l.outdoors(w, s)
	l.sundries(w, s)
	l.bits(w, s)
	l.masonryBits(w, s)
	return w
}

// A scope is what is counted: the routes, the holes that are bored for one of
// them, and how many that are there they go through, which are sealed again.
type scope struct {
	routes          []*route.Route
	holes           []*route.Hole
	reused, inBoard int64 // in plates, blocks and conduits; in ceilings and walls
	later           bool
}

func (l *lister) scope(later bool) scope {
	s := scope{later: later}
	for i := range l.res.Routes {
		r := &l.res.Routes[i]
		if r.Blocked == nil && (later || !l.job.Drops[r.Drop].Later) {
			s.routes = append(s.routes, r)
		}
	}
	counts := func(d int) bool { return later || !l.job.Drops[d].Later }
	for i := range l.res.Holes {
		if h := &l.res.Holes[i]; slices.ContainsFunc(h.Drops, counts) {
			s.holes = append(s.holes, h)
		}
	}
	for i := range l.res.Reused {
		u := &l.res.Reused[i]
		switch used := slices.ContainsFunc(u.Drops, counts); {
		case !used:
		case u.Conduit || u.Kind == route.PlateArc || u.Kind == route.SoleArc || u.Kind == route.BlockArc:
			s.reused++
		case u.Kind == route.CeilingArc || u.Kind == route.WallArc || u.Kind == route.PassArc:
			s.inBoard++
		}
	}
	return s
}

// drop is the drop of a route.
func (l *lister) drop(r *route.Route) *plan.Drop { return &l.job.Drops[r.Drop] }
