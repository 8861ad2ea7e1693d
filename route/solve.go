package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// Solve finds, for every drop of a job, the cheapest allowed route to the
// closet, and everything that follows from the routes. Each route is the
// exact optimum for its drop; where routes share arcs, what is paid once is
// counted once.
func Solve(job *plan.Job) (*Result, error) {
	g, err := Build(job)
	if err != nil {
		return nil, err
	}
	r := &Result{Job: job, Graph: g}
	if err := r.routeAll(); err != nil {
		return nil, err
	}
	book := rule.NewBook(values(job.Limits))
	r.Holes = holesOf(g, book, r.Routes)
	for i := range r.Routes {
		r.Routes[i].Legs = legs(g, r.Holes, &r.Routes[i])
	}
	r.Bundles = bundlesOf(g, r.Routes)
	r.Cost = costOf(g, r.Routes)
	r.Tails = cutTotals(r)
	r.Findings = r.findings(book)
	r.Cautions = cautions(job, book)
	return r, nil
}

// routeAll searches once for each number of cables that occurs: prices are
// the same both ways, so one search from the closet serves all drops with it.
func (r *Result) routeAll() error {
	job := r.Job
	order := tagOrder(job)
	search := network.NewSearch(r.Graph.Net)
	paths := make([]network.Path, len(job.Drops))
	found := make([]bool, len(job.Drops))
	for _, q := range counts(job) {
		search.From(int32(r.Graph.Root), int64(q))
		for d := range job.Drops {
			if job.Drops[d].Count == q {
				paths[d], found[d] = search.To(int32(r.Graph.Terminals[d]))
			}
		}
	}
	var relaxed *Graph
	for _, d := range order {
		if found[d] {
			r.Routes = append(r.Routes, r.Graph.route(d, paths[d]))
			continue
		}
		if relaxed == nil {
			var err error
			if relaxed, err = build(job, true); err != nil {
				return err
			}
		}
		r.Routes = append(r.Routes, Route{Drop: d, Blocked: relaxed.whyBlocked(d)})
	}
	return nil
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
	slices.SortFunc(order, func(a, b int) int { return compareTags(job.Drops[a].Tag, job.Drops[b].Tag) })
	return order
}

// route turns a path on the network into the route of drop d.
func (g *Graph) route(d int, p network.Path) Route {
	r := Route{Drop: d, Bends: p.Bends, Alone: p.Cost}
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
	r.Points = corners(g, r.Nodes)
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

// whyBlocked finds the cheapest changes that would give drop d a route, on
// the graph that keeps what is forbidden.
func (g *Graph) whyBlocked(d int) *Blocked {
	search := network.NewSearch(g.Net)
	search.From(int32(g.Root), int64(g.Job.Drops[d].Count), int32(g.Terminals[d]))
	p, ok := search.To(int32(g.Terminals[d]))
	if !ok {
		return &Blocked{Blocks: []Block{{Rule: rule.NoHiddenWay, Pos: g.Job.Drops[d].Pos, Found: "no way to the closet"}}}
	}
	b := &Blocked{Route: p.Cost}
	seen := map[string]bool{}
	if last := p.Arcs[len(p.Arcs)-1]; g.Arcs[last].Kind == RacewayArc {
		for _, bl := range g.dead[d] {
			if !seen[bl.Found] {
				seen[bl.Found] = true
				b.Blocks = append(b.Blocks, bl)
			}
		}
	}
	for _, a := range p.Arcs {
		for _, bl := range g.Arcs[a].Blocks {
			b.Route -= bl.Price
			if key := string(bl.Rule) + bl.Change; !seen[key] {
				seen[key] = true
				b.Blocks = append(b.Blocks, bl)
				b.Changes += bl.Price
			}
		}
	}
	nodes := make([]int, len(p.Nodes))
	for i, n := range p.Nodes {
		nodes[i] = int(n)
	}
	b.Points = corners(g, nodes)
	return b
}

// costOf adds up what the routes pay, shared parts once.
func costOf(g *Graph, routes []Route) Cost {
	sums := map[price.ID]int64{}
	used := map[int]bool{}
	for _, r := range routes {
		q := int64(g.Job.Drops[r.Drop].Count)
		for _, a := range r.Arcs {
			for _, c := range g.Arcs[a].Charges {
				switch {
				case c.PerCable:
					sums[c.Term] += q * c.Amount
				case !used[a]:
					sums[c.Term] += c.Amount
				}
			}
			used[a] = true
		}
		g.eachBend(r, func(n int) { sums[bendTerm(g.Nodes[n].Kind)] += q * g.Bend[n] })
	}
	var c Cost
	for _, t := range price.Terms {
		if s := sums[t.ID]; s != 0 {
			c.Terms = append(c.Terms, TermSum{t.ID, s})
			c.Total += s
		}
	}
	c.LowerBound = boundOf(g, routes)
	c.Proved = c.LowerBound == c.Total
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

// boundOf is a bound that no plan for the same drops can be below: the dearest
// single route, or what all cables pay one by one if everything that can be
// shared were free, whichever is more.
func boundOf(g *Graph, routes []Route) int64 {
	var dearest int64
	for _, r := range routes {
		dearest = max(dearest, r.Alone)
	}
	return max(dearest, unsharedBound(g, routes))
}

// unsharedBound adds up the cheapest path of every drop on the network whose
// shared prices are all zero.
func unsharedBound(g *Graph, routes []Route) int64 {
	arcs := plainArcs(g.Arcs)
	for i := range arcs {
		arcs[i].Fixed = 0
	}
	net, err := network.New(len(g.Nodes), arcs, g.Bend)
	if err != nil {
		panic(fmt.Sprintf("route: a network that was valid is not without its fixed prices: %v", err))
	}
	search := network.NewSearch(net)
	search.From(int32(g.Root), 1)
	var sum int64
	for _, r := range routes {
		if r.Blocked != nil {
			continue
		}
		if p, ok := search.To(int32(g.Terminals[r.Drop])); ok {
			sum += p.Cost * int64(g.Job.Drops[r.Drop].Count)
		}
	}
	return sum
}
