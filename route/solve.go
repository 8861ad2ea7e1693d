package route

import (
	"fmt"
	"slices"
	"sync/atomic"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
	"topplate/route/tree"
)

// Solve is the function Solve with the planner's patience.
func (p Planner) Solve(job *plan.Job) (*Result, error) {
	r, best, err := p.routed(job, nil)
	if err != nil {
		return nil, err
	}
	// A drop that nothing stops was missed by the lattice: it gets lines where a
	// denser one has a way.
	if by := r.missed(); len(by) > 0 {
		if r, best, err = p.routed(job, by); err != nil {
			return nil, err
		}
	}
	r.follow(job.Book(), best)
	return r, nil
}

// routed plans the routes of a job on its graph with lines through some crossings
// besides.
func (p Planner) routed(job *plan.Job, by []latticePoint) (*Result, tree.Plan, error) {
	g, err := buildBy(job, by)
	if err != nil {
		return nil, tree.Plan{}, err
	}
	r := &Result{Job: job, Graph: g}
	var stopped atomic.Bool
	g.stop = p.stopped(&stopped)
	best, err := r.routeAll(job.Book())
	r.Stopped = stopped.Load()
	return r, best, err
}

// missed lists where ways turn that nothing stops, of drops without a route.
func (r *Result) missed() (by []latticePoint) {
	for i := range r.Routes {
		if b := r.Routes[i].Blocked; b != nil {
			by = append(by, b.by...)
		}
	}
	return by
}

// follow works out what follows from the routes.
func (r *Result) follow(book rule.Book, best tree.Plan) {
	g := r.Graph
	r.Holes = holesOf(g, book, r.Routes)
	for i := range r.Routes {
		r.Routes[i].Legs = legs(g, r.Holes, &r.Routes[i])
	}
	r.Bundles = bundlesOf(g, r.Routes)
	r.Reused = r.reuses()
	r.Cost = costOf(g, book, r.Routes)
	r.Cost.LowerBound, r.Cost.Together = best.LowerBound, best.Together
	r.Cost.Proved = best.LowerBound == r.Cost.Total
	r.Tails = cutTotals(r)
	r.Findings = r.findings(book)
	r.Cautions = cautions(r.Job, book)
}

// terms are the drops as terminals, in the order of the job.
func (g *Graph) terms() []tree.Terminal {
	out := make([]tree.Terminal, len(g.Job.Drops))
	for d := range g.Job.Drops {
		out[d] = tree.Terminal{Node: int32(g.Terminals[d]), Cables: int64(g.Job.Drops[d].Count)}
	}
	return out
}

// routeAll finds the cheapest plan for all drops that have a way to the
// closet, and says of the others what blocks them. It returns the
// plan.
func (r *Result) routeAll(book rule.Book) (tree.Plan, error) {
	g := r.Graph
	terms := g.terms()
	best, err := g.cheapestPlan(book, terms)
	if err != nil {
		return best, err
	}
	alone, err := g.aloneAll()
	if err != nil {
		return best, err
	}
	why, err := r.whyBlocked(best.Paths)
	if err != nil {
		return best, err
	}
	for _, d := range tagOrder(r.Job) {
		if why[d] != nil {
			r.Routes = append(r.Routes, Route{Drop: d, Blocked: why[d]})
			continue
		}
		route := g.route(d, best.Paths[d])
		route.Alone = alone[d]
		r.Routes = append(r.Routes, route)
	}
	return best, nil
}

// work bounds the search for the cheapest plan, in steps of package tree, so
// that the answer does not depend on the machine: a few seconds on a small
// one.
const work = 300_000_000

// aloneAll is the price of the cheapest path of every drop by itself. Prices
// are the same both ways, so one search from the closet serves all drops with
// one number of cables.
func (g *Graph) aloneAll() ([]int64, error) {
	out := make([]int64, len(g.Job.Drops))
	search := network.NewSearch(g.Net)
	for _, q := range counts(g.Job) {
		if err := search.From(int32(g.Root), int64(q)); err != nil {
			return nil, fmt.Errorf("route: %w", err)
		}
		for d := range g.Job.Drops {
			if g.Job.Drops[d].Count != q {
				continue
			}
			if p, ok := search.To(int32(g.Terminals[d])); ok {
				out[d] = p.Cost
			}
		}
	}
	return out, nil
}

// counts lists the numbers of cables per drop that occur, rising.
func counts(job *plan.Job) []int {
	var out []int
	for i := range job.Drops {
		out = append(out, job.Drops[i].Count)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// tagOrder lists the drops by tag, numbers in tags by their value.
func tagOrder(job *plan.Job) []int {
	order := make([]int, len(job.Drops))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return CompareTags(job.Drops[a].Tag, job.Drops[b].Tag) })
	return order
}

// route turns a path on the network into the route of drop d.
func (g *Graph) route(d int, p tree.Path) Route {
	r := Route{Drop: d, Bends: p.Bends}
	for _, n := range p.Nodes {
		r.Nodes = append(r.Nodes, int(n))
	}
	for _, a := range p.Arcs {
		r.Arcs = append(r.Arcs, int(a))
	}
	place := g.Nodes[r.Nodes[len(r.Nodes)-2]].At
	wished := g.Nodes[r.Nodes[len(r.Nodes)-1]].At
	r.Place = place
	r.Moved = max(dist(place.X, wished.X), dist(place.Y, wished.Y))
	if s := &g.Job.Drops[d].Spot; s.Wall >= 0 {
		r.Moved = dist(g.Job.House.Walls[s.Wall].Along(flat(place)), s.At) // and not from the face to the middle
	}
	r.Points = corners(g, r.Nodes[:len(r.Nodes)-1]) // the last node stands for the wished place
	r.Lengths = lengthsOf(g, d, r.Arcs)
	return r
}

// corners lists the corners of a path.
func corners(g *Graph, nodes []int) []geom.Point3 {
	points := make([]geom.Point3, len(nodes))
	for i, n := range nodes {
		points[i] = g.Nodes[n].At
	}
	return thin(points)
}

// thin leaves out points in the middle of straight stretches, and doubles.
func thin(points []geom.Point3) []geom.Point3 {
	var out []geom.Point3
	for _, p := range points {
		if k := len(out); k > 0 && out[k-1] == p {
			continue
		}
		if k := len(out); k > 1 && straight(out[k-2], out[k-1], p) {
			out[k-1] = p
			continue
		}
		out = append(out, p)
	}
	return out
}

// straight reports whether b lies between a and c on a line along an axis.
func straight(a, b, c geom.Point3) bool {
	same := 0
	for _, s := range [3][3]measure.Length{{a.X, b.X, c.X}, {a.Y, b.Y, c.Y}, {a.Z, b.Z, c.Z}} {
		if s[0] == s[1] && s[1] == s[2] {
			same++
		}
	}
	return same == 2 && (b.X-a.X)*sign(c.X-b.X) >= 0 && (b.Y-a.Y)*sign(c.Y-b.Y) >= 0 && (b.Z-a.Z)*sign(c.Z-b.Z) >= 0
}

func sign(l measure.Length) measure.Length {
	switch {
	case l > 0:
		return 1
	case l < 0:
		return -1
	}
	return 0
}

// costOf adds up what the routes pay, shared parts once.
func costOf(g *Graph, book rule.Book, routes []Route) Cost {
	sums := map[price.ID]int64{}
	used := map[int][]int{}
	for _, r := range routes {
		q := int64(g.Job.Drops[r.Drop].Count)
		for _, a := range r.Arcs {
			for _, c := range g.Arcs[a].Charges {
				switch {
				case c.PerCable:
					sums[c.Term] += q * c.Amount
				case used[a] == nil:
					sums[c.Term] += c.Amount
				}
			}
			used[a] = append(used[a], r.Drop)
		}
		g.eachBend(r, func(n int) { sums[bendTerm(g.Nodes[n].Kind)] += q * g.Bend[n] })
	}
	for a, drops := range used {
		more, crowded := g.beyond(book, a, drops)
		for _, c := range g.Arcs[a].Charges {
			if slices.Contains(price.Bores, c.Term) && !c.PerCable {
				sums[c.Term] += more * c.Amount
			}
		}
		if crowded {
			sums[price.ChangeCrowded] += g.crowded
		}
	}
	var c Cost
	for _, t := range price.Terms {
		if s := sums[t.ID]; s != 0 {
			c.Terms = append(c.Terms, TermSum{t.ID, s})
			c.Total += s
		}
	}
	return c
}

func bendTerm(k NodeKind) price.ID {
	if k == PlateNode || k == SurfaceNode {
		return price.BendAtHole
	}
	return price.BendFree
}

// eachBend calls f with every node of a route where a bend is paid.
func (g *Graph) eachBend(r Route, f func(n int)) {
	for i := 1; i < len(r.Arcs); i++ {
		in, out := g.way(r.Arcs[i-1], r.Nodes[i-1]), g.way(r.Arcs[i], r.Nodes[i])
		if in != out && in != network.Free && out != network.Free {
			f(r.Nodes[i])
		}
	}
}

// way is the heading of arc a when it is left from node from.
func (g *Graph) way(a, from int) network.Heading {
	if g.Arcs[a].From == from {
		return g.Arcs[a].Heading
	}
	return g.Arcs[a].Heading.Reverse()
}
