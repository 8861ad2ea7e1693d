package route

import (
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
)

// A Criterion is a figure by which one plan can be better than another.
type Criterion uint8

// Criteria of a choice between plans.
const (
	Cheapest Criterion = iota
	FewestOpenings
	LeastCrawling
)

var criterionNames = [...]string{"cheapest", "fewest openings", "least crawling"}

func (c Criterion) String() string { return criterionNames[c] }

// Figures are what plans are compared by. The first three decide whether a
// plan is worth choosing at all.
type Figures struct {
	Cost int64 // in cost units, at the job's own prices
	// Openings in finished surfaces: for boxes, in ceilings, in soffits that
	// do not open by themselves, and those that are patched again.
	Openings int
	// Crawled is how far a bundle is laid on hands and knees or at arm's
	// length, shared stretches once. What a rod passes is not crawled.
	Crawled measure.Length
	Bored   int            // holes in plates, fire blocks, studs and gable walls
	Cable   measure.Length // all cables as they are cut
}

// A Choice is one plan of several for a job.
type Choice struct {
	Best []Criterion // what no other of the plans is better at
	Figures
	Result *Result
}

// Choices is the function Choices with the planner's patience.
func (p Planner) Choices(job *plan.Job) ([]Choice, error) {
	base, err := p.Solve(job)
	if err != nil {
		return nil, err
	}
	plans := []Choice{{Result: base, Figures: FiguresOf(base)}}
	for _, terms := range [][]price.ID{openingTerms, crawlTerms} {
		r, err := p.solveAt(base, surcharged(job, terms))
		if err != nil {
			return nil, err
		}
		plans = append(plans, Choice{Result: r, Figures: FiguresOf(r)})
	}
	return named(different(undominated(complete(plans)))), nil
}

// FiguresOf adds up the figures of a plan.
func FiguresOf(r *Result) Figures {
	f := Figures{Cost: r.Cost.Total}
	used := map[int]bool{}
	for _, route := range r.Routes {
		for _, a := range route.Arcs {
			if used[a] {
				continue
			}
			used[a] = true
			for _, c := range r.Graph.Arcs[a].Charges {
				switch {
				case slices.Contains(openingTerms, c.Term):
					f.Openings++
				case slices.Contains(crawlTerms, c.Term):
					f.Crawled += r.Graph.Arcs[a].Length
				}
			}
		}
	}
	for i := range r.Holes {
		if k := r.Graph.Holes[r.Holes[i].Place].Kind; k != CeilingArc && k != SoffitArc && k != FloorArc {
			f.Bored += r.Holes[i].Count
		}
	}
	for _, t := range r.Tails {
		f.Cable += t.Length
	}
	return f
}

// routed counts the drops that have a route.
func (r *Result) routed() int {
	n := 0
	for i := range r.Routes {
		if r.Routes[i].Blocked == nil {
			n++
		}
	}
	return n
}

// complete drops the plans that leave out a drop which another serves: they
// are cheap for the wrong reason.
func complete(plans []Choice) []Choice {
	most := 0
	for i := range plans {
		most = max(most, plans[i].Result.routed())
	}
	return slices.DeleteFunc(plans, func(c Choice) bool { return c.Result.routed() < most })
}

// by is what a criterion compares; less is better.
func (f *Figures) by(c Criterion) int64 {
	return [...]int64{Cheapest: f.Cost, FewestOpenings: int64(f.Openings), LeastCrawling: int64(f.Crawled)}[c]
}

// noWorse reports whether f is at least as good as o by every criterion.
func (f *Figures) noWorse(o *Figures) bool {
	return f.Cost <= o.Cost && f.Openings <= o.Openings && f.Crawled <= o.Crawled
}

// undominated drops every plan that another is better than, or an earlier one
// as good as, in every way.
func undominated(plans []Choice) []Choice {
	var out []Choice
	for i := range plans {
		worse := false
		for j := range plans {
			p, q := &plans[i].Figures, &plans[j].Figures
			worse = worse || j != i && q.noWorse(p) && (j < i || !p.noWorse(q))
		}
		if !worse {
			out = append(out, plans[i])
		}
	}
	return out
}

// alike is the difference of two figures, in per cent, up to which an
// installer would not choose between them (common practice, no source).
const alike = 2

// different drops the plans that bore the same holes as an earlier one and
// have nearly its figures.
func different(plans []Choice) []Choice {
	var out []Choice
	for i := range plans {
		same := slices.ContainsFunc(out, func(o Choice) bool { return o.resembles(&plans[i]) })
		if !same {
			out = append(out, plans[i])
		}
	}
	return out
}

func (c *Choice) resembles(o *Choice) bool {
	near := func(a, b int64) bool { return max(a-b, b-a)*100 <= alike*max(a, b) }
	return slices.EqualFunc(c.Result.Holes, o.Result.Holes, func(a, b Hole) bool { return a.Place == b.Place && a.Count == b.Count }) &&
		c.Openings == o.Openings && near(c.Cost, o.Cost) && near(int64(c.Crawled), int64(o.Crawled)) && near(int64(c.Cable), int64(o.Cable))
}

// named says of each plan what no other is better at. What several plans have
// all in common is no reason to choose one.
func named(plans []Choice) []Choice {
	for c := Cheapest; c <= LeastCrawling; c++ {
		best, worst := plans[0].by(c), plans[0].by(c)
		for i := range plans {
			best, worst = min(best, plans[i].by(c)), max(worst, plans[i].by(c))
		}
		for i := range plans {
			if plans[i].by(c) == best && (best < worst || len(plans) == 1) {
				plans[i].Best = append(plans[i].Best, c)
			}
		}
	}
	return plans
}
