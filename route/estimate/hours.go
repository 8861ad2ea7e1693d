package estimate

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/plan/price"
	"topplate/route"
	"topplate/route/network"
)

// Hours is the work of a job: minutes by cost term, or by whatever else work is
// named by. Terms may be there more than once.
type Hours struct{ Work []Work }

// A Work is a piece of work.
type Work struct {
	Term        price.ID
	Thousandths int64 // of a minute of one person
}

// Add adds work.
func (h *Hours) Add(term price.ID, thousandths int64) {
	if thousandths > 0 {
		h.Work = append(h.Work, Work{term, thousandths})
	}
}

// A Habit is the time of work that no route has a term for.
type Habit struct {
	ID          price.ID
	Title       string
	Thousandths int64 // of a minute each time; common practice, no source
}

// The habits.
var (
	setUp      = Habit{"set-up", "Setting up at the closet", 15_000}
	endJack    = Habit{"end-jack", "One jack, at a plate or the panel", 6_000}
	endPlug    = Habit{"end-plug", "One plug", 5_000}
	endScrews  = Habit{"end-screws", "One end under screws", 4_000}
	tagCable   = Habit{"tag-cable", "Cutting one cable and tagging its ends", 2_500}
	testLink   = Habit{"test-link", "Testing one cable", 3_000}
	cleanPlace = Habit{"clean-room", "Clearing up at one drop", 5_000}
	cleanUp    = Habit{"clean-closet", "Clearing the attic and the closet", 15_000}
)

// Habits lists all habits, in the order in which they are printed.
func Habits() []Habit {
	return []Habit{setUp, endJack, endPlug, endScrews, tagCable, testLink, cleanPlace, cleanUp}
}

// Usual is the work of a job by its cost terms and the habits of this package,
// for the drops that are run today. Whoever plans the tasks one by one has
// better hours.
func Usual(res *route.Result) (Hours, error) {
	h, err := onRoutes(res)
	if err != nil {
		return h, err
	}
	today := todays(res)
	if len(today) == 0 {
		return h, nil
	}
	h.Add(setUp.ID, setUp.Thousandths)
	for _, r := range today {
		d := &res.Job.Drops[r.Drop]
		n := int64(d.Count)
		h.Add(tagCable.ID, n*tagCable.Thousandths)
		for _, end := range []Habit{farEnd(d), nearEnd(d)} {
			h.Add(end.ID, n*end.Thousandths)
		}
		h.Add(testLink.ID, n*testLink.Thousandths)
		h.Add(cleanPlace.ID, cleanPlace.Thousandths)
	}
	h.Add(cleanUp.ID, cleanUp.Thousandths)
	return h, nil
}

// farEnd is what is done at the drop to each cable.
func farEnd(d *plan.Drop) Habit {
	switch {
	case d.Connector.ID == "":
		return endScrews
	case d.Connector.Kind == connector.Plug:
		return endPlug
	}
	return endJack
}

// nearEnd is what is done in the closet to each cable.
func nearEnd(d *plan.Drop) Habit {
	if _, ok := connector.Usual(d.Cable.Category, connector.Jack); ok {
		return endJack
	}
	return endScrews
}

// todays are the routes that are run today.
func todays(res *route.Result) []*route.Route {
	var out []*route.Route
	for i := range res.Routes {
		if r := &res.Routes[i]; r.Blocked == nil && !res.Job.Drops[r.Drop].Later {
			out = append(out, r)
		}
	}
	return out
}

// plainHour is a rate at which a thousandth of a minute costs a thousand cost
// units, so that a price tells minutes exactly.
const plainHour = 60_000

// onRoutes is the work that today's routes are priced by. Minutes are read from
// a graph that differs from the job's in its rate only; so nodes and arcs have
// the same numbers in both.
func onRoutes(res *route.Result) (h Hours, err error) {
	job := *res.Job
	job.Rates.Hour = plainHour
	g, err := route.Build(&job)
	if err != nil {
		return h, fmt.Errorf("estimate: %w", err)
	}
	sums := map[price.ID]int64{}
	seen := map[int]bool{}
	for _, r := range todays(res) {
		n := int64(job.Drops[r.Drop].Count)
		for _, a := range r.Arcs {
			for _, c := range g.Arcs[a].Charges {
				switch {
				case c.PerCable:
					sums[c.Term] += n * c.Amount
				case !seen[a]:
					sums[c.Term] += timesBored(res, g, a, c.Term) * c.Amount
				}
			}
			seen[a] = true
		}
		eachBend(g, r, func(node int) { sums[bendTerm(g.Nodes[node].Kind)] += n * g.Bend[node] })
	}
	for _, t := range price.Terms {
		if isWork(t) {
			h.Add(t.ID, sums[t.ID]/1000)
		}
	}
	return h, nil
}

// isWork reports whether a term is work that is done. Moving a place is only
// priced so that the wished one wins.
func isWork(t price.Term) bool {
	return (t.Unit == price.MinutesEach || t.Unit == price.MinutesPerMetre) && t.ID != price.Shift
}

// timesBored is how often a term of an arc is paid.
func timesBored(res *route.Result, g *route.Graph, arc int, term price.ID) int64 {
	place := g.Arcs[arc].Hole
	if place < 0 || !slices.Contains(price.Bores, term) {
		return 1
	}
	i := slices.IndexFunc(res.Holes, func(h route.Hole) bool { return h.Place == place })
	return int64(max(1, res.Holes[i].Count))
}

// eachBend calls f with every node where a route bends.
func eachBend(g *route.Graph, r *route.Route, f func(node int)) {
	for i := 1; i < len(r.Arcs); i++ {
		in, out := heading(g, r.Arcs[i-1], r.Nodes[i-1]), heading(g, r.Arcs[i], r.Nodes[i])
		if in != out && in != network.Free && out != network.Free {
			f(r.Nodes[i])
		}
	}
}

// heading is the way an arc goes from one of its nodes.
func heading(g *route.Graph, arc, from int) network.Heading {
	if a := &g.Arcs[arc]; a.From != from {
		return a.Heading.Reverse()
	}
	return g.Arcs[arc].Heading
}

func bendTerm(k route.NodeKind) price.ID {
	if k == route.PlateNode || k == route.SurfaceNode {
		return price.BendAtHole
	}
	return price.BendFree
}
