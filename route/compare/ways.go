package compare

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A Stretch is a straight piece of way in plan, from south or west to north or
// east.
type Stretch struct{ From, To geom.Point }

// Ways are where cable goes in plan, each place once however many cables are
// there and whatever their height.
type Ways struct {
	Both []Stretch
	Only [2][]Stretch // in A alone, in B alone
}

// A line is one along an axis: all points with this X if AlongY, else with this
// Y.
type line struct {
	alongY bool
	at     measure.Length
}

// A span is a stretch of a line.
type span struct{ from, to measure.Length }

// ground is where a plan's cable goes.
type ground struct {
	spans  map[line][]span // apart, in order
	slants map[Stretch]bool
}

// groundOf gathers where the routes of a plan go. What goes straight up has no
// place in plan, and what is not wanted is left out.
func groundOf(res *route.Result, wanted func(*route.Result, geom.Point3, geom.Point3) bool) ground {
	g := ground{map[line][]span{}, map[Stretch]bool{}}
	for i := range res.Routes {
		points := res.Routes[i].Points
		for j := 1; j < len(points); j++ {
			p, q := geom.Point{X: points[j-1].X, Y: points[j-1].Y}, geom.Point{X: points[j].X, Y: points[j].Y}
			switch {
			case p == q || !wanted(res, points[j-1], points[j]):
			case p.X == q.X:
				l := line{true, p.X}
				g.spans[l] = append(g.spans[l], span{min(p.Y, q.Y), max(p.Y, q.Y)})
			case p.Y == q.Y:
				l := line{false, p.Y}
				g.spans[l] = append(g.spans[l], span{min(p.X, q.X), max(p.X, q.X)})
			default:
				if compareFlat(p, q) > 0 {
					p, q = q, p
				}
				g.slants[Stretch{p, q}] = true
			}
		}
	}
	for l := range g.spans {
		g.spans[l] = joined(g.spans[l])
	}
	return g
}

// joined are spans that touch no other, in order.
func joined(spans []span) []span {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var out []span
	for _, s := range spans {
		if n := len(out); n > 0 && s.from <= out[n-1].to {
			out[n-1].to = max(out[n-1].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}

// without is what is left of spans where others are taken away; both are apart
// and in order.
func without(spans, others []span) []span {
	var out []span
	for _, s := range spans {
		for _, o := range others {
			if o.to <= s.from || o.from >= s.to {
				continue
			}
			if o.from > s.from {
				out = append(out, span{s.from, o.from})
			}
			s.from = o.to
		}
		if s.from < s.to {
			out = append(out, s)
		}
	}
	return out
}

// waysOf compares where cable goes in two plans.
func waysOf(a, b *route.Result) Ways {
	return WaysOf(a, b, func(*route.Result, geom.Point3, geom.Point3) bool { return true })
}

// WaysOf compares where cable goes in two plans, as far as the pieces from corner
// to corner of their routes are wanted: those of one level, say.
func WaysOf(a, b *route.Result, wanted func(res *route.Result, from, to geom.Point3) bool) Ways {
	g := [2]ground{groundOf(a, wanted), groundOf(b, wanted)}
	var w Ways
	for side := range 2 {
		mine, other := g[side], g[1-side]
		for l, spans := range mine.spans {
			only := without(spans, other.spans[l])
			w.Only[side] = append(w.Only[side], stretches(l, only)...)
			if side == 0 {
				w.Both = append(w.Both, stretches(l, without(spans, only))...)
			}
		}
		for s := range mine.slants {
			switch {
			case !other.slants[s]:
				w.Only[side] = append(w.Only[side], s)
			case side == 0:
				w.Both = append(w.Both, s)
			}
		}
		slices.SortFunc(w.Only[side], compareStretches)
	}
	slices.SortFunc(w.Both, compareStretches)
	return w
}

func stretches(l line, spans []span) []Stretch {
	var out []Stretch
	for _, s := range spans {
		if l.alongY {
			out = append(out, Stretch{geom.Point{X: l.at, Y: s.from}, geom.Point{X: l.at, Y: s.to}})
		} else {
			out = append(out, Stretch{geom.Point{X: s.from, Y: l.at}, geom.Point{X: s.to, Y: l.at}})
		}
	}
	return out
}

func compareStretches(s, t Stretch) int {
	return cmp.Or(compareFlat(s.From, t.From), compareFlat(s.To, t.To))
}

func compareFlat(p, q geom.Point) int {
	return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X))
}
