package route

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route/tree"
)

// shorten lays every drop anew whose cable would be longer than a link may be,
// as cheaply as a route of that length can be found, and leaves it where even
// the shortest route is too long. The others stay; the bound of all plans
// holds, as a limit only takes plans away.
func (g *Graph) shorten(book rule.Book, terms []tree.Terminal, steps *tree.Steps, best *tree.Plan) error {
	changed := false
	for _, d := range tagOrder(g.Job) {
		if g.tooLong(book, d, best.Paths[d].Arcs) {
			p, err := g.shorter(book, d, best.Paths)
			if err != nil {
				return err
			}
			if p.Nodes != nil {
				best.Paths[d], changed = p, true
			}
		}
	}
	if changed {
		g.reprice(terms, steps, best)
		best.Together = best.LowerBound
	}
	return nil
}

// tooLong reports whether a cable of drop d is longer than a link may be.
func (g *Graph) tooLong(book rule.Book, d int, path []int32) bool {
	if len(path) == 0 || !g.Job.Drops[d].Cable.FourPair {
		return false
	}
	return g.cut(d, path) > book.Length(rule.LinkLength)
}

func (g *Graph) cut(d int, path []int32) measure.Length {
	arcs := make([]int, len(path))
	for i, a := range path {
		arcs[i] = int(a)
	}
	return lengthsOf(g, d, arcs).Cut
}

// shorter finds a route for drop d that is short enough: the cheapest beside
// the routes of the others, once a price per length is put on every arc that is
// just high enough. It has no nodes if there is none.
func (g *Graph) shorter(book rule.Book, d int, paths []tree.Path) (tree.Path, error) {
	arcs := plainArcs(g.Arcs)
	for o := range paths {
		if o != d {
			for _, a := range paths[o].Arcs {
				arcs[a].Fixed = 0
			}
		}
	}
	at := func(perMetre int64) (tree.Path, error) {
		priced := slices.Clone(arcs)
		for a := range priced {
			priced[a].PerCable += int64(g.Arcs[a].Length/measure.Millimetre) * perMetre / 1000
		}
		_, p, err := g.cheapest(priced, d)
		return tree.Path{Nodes: p.Nodes, Arcs: p.Arcs, Bends: p.Bends}, err
	}
	low, high := int64(0), int64(dearMetre)
	found, err := at(high)
	if err != nil || len(found.Nodes) == 0 || g.tooLong(book, d, found.Arcs) {
		return tree.Path{}, err
	}
	for low+high/closeEnough < high {
		mid := low + (high-low)/2
		p, err := at(mid)
		if err != nil {
			return tree.Path{}, err
		}
		if g.tooLong(book, d, p.Arcs) {
			low = mid
		} else {
			high, found = mid, p
		}
	}
	return found, nil
}

const (
	// dearMetre is a price of a metre beside which every other price is small,
	// in cost units.
	dearMetre = 1_000_000_000
	// closeEnough ends the search for the least price once it is known to so
	// many parts.
	closeEnough = 1000
)
