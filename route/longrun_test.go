package route

import (
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// With a limit on the length of a link that the cheapest routes of a sample
// break, the search finds routes that keep it wherever there is one: a search
// for the shortest route says where. The drops that kept it keep their cost.
func TestLinkLengthIsAConstraint(t *testing.T) {
	job := sample(t, "corner-house")
	free := solved(t, job)
	rerouted, stopped := 0, 0
	for i := range free.Routes {
		r := &free.Routes[i]
		limited := *job
		limited.Limits = map[string]plan.Override{string(rule.LinkLength): {Value: int64(r.Lengths.Cut - 1)}}
		res := solved(t, &limited)
		got := routeOf(t, res, job.Drops[r.Drop].Tag)
		limit := limited.Book().Length(rule.LinkLength)
		if res.Cost.Total < free.Cost.LowerBound || res.Cost.LowerBound > res.Cost.Total {
			t.Errorf("%s: cost %d with a bound of %d, below the bound %d without a limit", job.Drops[r.Drop].Tag, res.Cost.Total, res.Cost.LowerBound, free.Cost.LowerBound)
		}
		shortest := shortestCut(t, res.Graph, r.Drop)
		if shortest <= limit {
			rerouted++
			if got.Lengths.Cut > limit {
				t.Errorf("%s: %v of cable, limit %v, although %v is possible", job.Drops[r.Drop].Tag, got.Lengths.Cut, limit, shortest)
			}
			continue
		}
		stopped++
		if !res.Stops() {
			t.Errorf("%s: no stop although the shortest route has %v of cable, limit %v", job.Drops[r.Drop].Tag, shortest, limit)
		}
	}
	if rerouted == 0 || stopped == 0 {
		t.Errorf("%d rerouted, %d stopped: the sample tests only one of both", rerouted, stopped)
	}
}

// shortestCut is the cut length of the shortest route of a drop, by Bellman and
// Ford's method over the arcs.
func shortestCut(t *testing.T, g *Graph, d int) measure.Length {
	t.Helper()
	const never = measure.Length(1) << 60
	far := make([]measure.Length, len(g.Nodes))
	via := make([]int, len(g.Nodes))
	for i := range far {
		far[i] = never
	}
	far[g.Root] = 0
	for changed := true; changed; {
		changed = false
		for a := range g.Arcs {
			arc := &g.Arcs[a]
			for _, e := range [2][2]int{{arc.From, arc.To}, {arc.To, arc.From}} {
				if g.Nodes[e[0]].Kind != TerminalNode && far[e[0]]+arc.Length < far[e[1]] {
					far[e[1]], via[e[1]], changed = far[e[0]]+arc.Length, a, true
				}
			}
		}
	}
	var arcs []int
	for v := g.Terminals[d]; v != g.Root; {
		arcs = append(arcs, via[v])
		v = g.Arcs[via[v]].From + g.Arcs[via[v]].To - v
	}
	return lengthsOf(g, d, arcs).Cut
}
