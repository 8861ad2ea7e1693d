package route

import (
	"maps"
	"slices"

	"topplate/plan"
	"topplate/plan/price"
	"topplate/route/network"
)

// Terms that make up each criterion, and each weight of a job. A rod shot is
// none of them: it is what crawling is saved by.
var (
	openingTerms = []price.ID{price.CutBox, price.CutCeiling, price.OpenSoffit, price.Patch, price.BoreWall, price.BoreMasonry, price.BoreFloor}
	crawlTerms   = []price.ID{price.CrawlTravel, price.ArmTravel}
	cableTerms   = []price.ID{price.Pull} // and the price of the cable itself
)

// surcharges are what one opening or a metre of crawling less is worth when a
// plan with few of them is looked for, in thousandths of a minute: four hours,
// and a third of an hour for a metre. They are twenty times what crawling and
// more than twice what patching takes, but not beyond all measure: else the
// plan with the least crawling bores a wall from end to end to save a yard
// (common practice, no source).
var surcharges = map[price.Unit]int64{
	price.MinutesEach:     4 * 60_000,
	price.MinutesPerMetre: 20_000,
}

// mostSurcharge keeps surcharges at the highest rates of an hour far below what
// the search takes, in cost units.
const mostSurcharge = network.MaxPrice / 64

// plainHour is the rate of an hour that surcharges are paid at in a job where
// labour costs nothing, in thousandths.
const plainHour = 60_000

// Preferred is the function Preferred with the planner's patience.
func (p Planner) Preferred(job *plan.Job) (*Result, error) {
	base, err := p.Solve(job)
	if err != nil || job.Weights == plan.EvenWeights {
		return base, err
	}
	r, err := p.solveAt(base, weighted(job))
	if err == nil && r.routed() < base.routed() {
		return base, nil // no weight is worth a drop
	}
	return r, err
}

// solveAt solves a copy of the job of base that differs in nothing but prices,
// and prices the answer as base does. Prices change no node, arc or hole of
// the graph, so that the indices hold in both.
func (p Planner) solveAt(base *Result, job *plan.Job) (*Result, error) {
	r, err := p.Solve(job)
	if err != nil {
		return nil, err
	}
	r.Job, r.Graph = base.Job, base.Graph
	r.Stopped = r.Stopped || base.Stopped
	for i := range r.Routes {
		route, own := &r.Routes[i], &base.Routes[i]
		route.Alone = own.Alone
		if route.Blocked != nil && own.Blocked != nil {
			route.Blocked = own.Blocked // at the job's own prices
		}
	}
	r.Cost = costOf(r.Graph, base.Job.Book(), r.Routes)
	r.Cost.LowerBound, r.Cost.Together = base.Cost.LowerBound, base.Cost.Together
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
// same amount, so that they are saved whatever each costs.
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
