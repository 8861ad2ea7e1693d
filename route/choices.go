package route

import (
	"maps"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
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

// Terms that make up each criterion, and each weight of a job. A rod shot is
// none of them: it is what crawling is saved by.
var (
	openingTerms = []price.ID{price.CutBox, price.CutCeiling, price.OpenSoffit, price.Patch}
	crawlTerms   = []price.ID{price.CrawlTravel, price.ArmTravel}
	cableTerms   = []price.ID{price.Pull} // and the price of the cable itself
)

// surcharges are what one opening or a metre of crawling less is worth when a
// plan with few of them is looked for, in thousandths of a minute: a hundred
// hours, and ten for a metre. Nothing that an installer does instead takes
// longer (common practice, no source).
var surcharges = map[price.Unit]int64{
	price.MinutesEach:     100 * 60_000,
	price.MinutesPerMetre: 10 * 60_000,
}

// mostSurcharge keeps surcharges at the highest rates of an hour far below what
// the search takes, in cost units.
const mostSurcharge = network.MaxPrice / 64

// plainHour is the rate of an hour that surcharges are paid at in a job where
// labour costs nothing, in thousandths.
const plainHour = 60_000

// Choices returns up to three plans for a job that really differ, and of which
// none is better than another in every way: the cheapest, the one with the
// fewest openings in finished surfaces, and the one with the least crawling. A
// single plan is the best in all three, as far as the search can tell. The
// weights of the job have no effect.
// It takes three times as long as Solve.
func Choices(job *plan.Job) ([]Choice, error) {
	base, err := Solve(job)
	if err != nil {
		return nil, err
	}
	plans := []Choice{{Result: base, Figures: FiguresOf(base)}}
	for _, terms := range [][]price.ID{openingTerms, crawlTerms} {
		r, err := solveAt(base, surcharged(job, terms))
		if err != nil {
			return nil, err
		}
		plans = append(plans, Choice{Result: r, Figures: FiguresOf(r)})
	}
	return named(different(undominated(plans))), nil
}

// Preferred finds the plan that is cheapest once the job's weights are put on
// its prices. What it says of cost is at the job's own prices, and how far
// they are above the cheapest plan at most.
func Preferred(job *plan.Job) (*Result, error) {
	base, err := Solve(job)
	if err != nil || job.Weights == plan.EvenWeights {
		return base, err
	}
	return solveAt(base, weighted(job))
}

// solveAt solves a copy of the job of base that differs in nothing but prices,
// and prices the answer as base does. Prices change no node, arc or hole of
// the graph, so that the indices hold in both.
func solveAt(base *Result, job *plan.Job) (*Result, error) {
	r, err := Solve(job)
	if err != nil {
		return nil, err
	}
	r.Job, r.Graph = base.Job, base.Graph
	for i := range r.Routes {
		r.Routes[i].Alone, r.Routes[i].Blocked = base.Routes[i].Alone, base.Routes[i].Blocked
	}
	r.Cost = costOf(r.Graph, rule.NewBook(values(base.Job.Limits)), r.Routes)
	r.Cost.LowerBound = base.Cost.LowerBound
	r.Cost.Proved = r.Cost.Total == r.Cost.LowerBound
	return r, nil
}

// reprice returns a copy of a job in which the values of some terms, in
// thousandths of their units, are changed by f.
func reprice(job *plan.Job, terms []price.ID, f func(term price.Term, value int64) int64) *plan.Job {
	out := *job
	out.Prices = maps.Clone(job.Prices)
	for _, id := range terms {
		term, _ := price.Lookup(id)
		o, ok := job.Prices[string(id)]
		if !ok {
			o.Value = term.Value
		}
		o.Value = f(term, o.Value)
		out.Prices[string(id)] = o
	}
	return &out
}

// surcharged makes every opening, or every metre of crawling, dearer by the
// same amount, so that the plan with the fewest is found whatever each costs.
func surcharged(job *plan.Job, terms []price.ID) *plan.Job {
	if job.Rates.Hour == 0 {
		job = reprice(job, labour(), func(price.Term, int64) int64 { return 0 })
		job.Rates.Hour = plainHour
	}
	most := mostSurcharge * 60 / job.Rates.Hour
	return reprice(job, terms, func(term price.Term, value int64) int64 {
		return value + min(surcharges[term.Unit], most)
	})
}

// labour lists the terms that are paid by the hour.
func labour() []price.ID {
	var out []price.ID
	for _, t := range price.Terms {
		if t.Unit == price.MinutesEach || t.Unit == price.MinutesPerMetre {
			out = append(out, t.ID)
		}
	}
	return out
}

// weighted puts the weights of a job on its prices; none gets higher than a
// user may set it.
func weighted(job *plan.Job) *plan.Job {
	by := func(w int64) func(price.Term, int64) int64 {
		return func(term price.Term, value int64) int64 { return min((value*w+500)/1000, term.Max()) }
	}
	w := job.Weights
	out := reprice(job, openingTerms, by(w.Openings))
	out = reprice(out, crawlTerms, by(w.Crawling))
	out = reprice(out, cableTerms, by(w.Cable))
	out.Drops = slices.Clone(job.Drops)
	for i := range out.Drops {
		c := &out.Drops[i].Cable
		c.PricePerMetre = (c.PricePerMetre*w.Cable + 500) / 1000
	}
	return out
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
		if k := r.Graph.Holes[r.Holes[i].Place].Kind; k != CeilingArc && k != SoffitArc {
			f.Bored += r.Holes[i].Count
		}
	}
	for _, t := range r.Tails {
		f.Cable += t.Length
	}
	return f
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
