package route

import (
	"fmt"

	"topplate/route/network"
	"topplate/route/tree"
)

// A prepayment is the network with holes at some gates for nothing, what these cost at
// least, and the cheapest plan there. A bound for all plans is: what is paid, and
// what that plan costs there.
type prepayment struct {
	arcs []network.Arc
	paid int64
	net  *network.Network
	plan []tree.Path // in the order of tags; nil if it was not looked for
	// bound is what no plan costs less than, as far as is known.
	bound  int64
	tolled map[int]bool // arcs that were looked at for a toll
}

// prepay pays for the holes at gates beforehand: the least price of these holes,
// and the price of a full place at every gate that does not take its cables. With
// all gates the bound may be weak, as a second place is free as well; so the
// closet's is left out once, but for many drops.
func (o *outlook) prepay() error {
	ways := min(len(o.gates), 2)
	if o.many() {
		ways = min(ways, 1)
	}
	for first := range ways {
		f := &prepayment{arcs: plainArcs(o.Arcs), tolled: map[int]bool{}}
		for _, c := range o.gates[first:] {
			for _, a := range c.exits {
				f.arcs[a].Fixed -= c.least
			}
			f.paid += int64(c.need) * c.least
			if c.full {
				f.paid += o.crowded
			}
		}
		if err := o.layNet(f); err != nil {
			return err
		}
		o.prepaid = append(o.prepaid, f)
	}
	return nil
}

// layNet makes the network of a prepayment, after its prices have changed.
func (g *Graph) layNet(f *prepayment) (err error) {
	if f.net, err = g.Net.Reprice(f.arcs); err != nil {
		return fmt.Errorf("route: %w", err)
	}
	return nil
}

// mendBound mends the bound of the best plan by the holes at gates, and
// takes over a cheaper plan that it comes upon.
func (o *outlook) mendBound(best *tree.Plan) error {
	for _, f := range o.prepaid {
		if best.Paths != nil && best.LowerBound >= best.Cost {
			return nil
		}
		if err := o.solvePrepaid(f, best); err != nil {
			return err
		}
		if !o.many() && o.overfull(best) {
			if err := o.tolls(f, best); err != nil {
				return err
			}
		}
	}
	return nil
}

// overfull reports whether a plan has a place that is fuller than it can be.
func (o *outlook) overfull(p *tree.Plan) bool { return len(o.crowdedIn(p.Paths)) > 0 }

// hopeless reports whether a prepayment is so far from the best plan that it says
// nothing which another doesn't.
func (f *prepayment) hopeless(best *tree.Plan) bool {
	return f.bound < 2*best.LowerBound-best.Cost
}

// solvePrepaid finds the cheapest plan of a prepayment, and takes over what it can be
// improved to.
func (o *outlook) solvePrepaid(f *prepayment, best *tree.Plan) error {
	below := int64(0)
	if best.Paths != nil {
		below = best.Cost - f.paid
	}
	p, err := o.solveTree(f.net, tree.Options{Below: below, Work: o.share(work)})
	if err != nil {
		return err
	}
	f.plan, f.bound = inOrder(tagOrder(o.Job), p.Paths), p.LowerBound+f.paid
	if p.Cost < best.Cost || best.Paths == nil {
		best.Paths, best.Cost = p.Paths, p.Cost
	}
	best.LowerBound = max(best.LowerBound, min(f.bound, best.Cost))
	return o.improve(p.Paths, 1, best)
}

// improve takes over what a plan can be improved to, if that is cheaper. A plan that
// leaves a drop out, as it has no way that is open, is none.
func (o *outlook) improve(paths []tree.Path, together int, best *tree.Plan) error {
	for d := range paths {
		if o.reached[d] && len(paths[d].Nodes) == 0 {
			return nil
		}
	}
	order := tagOrder(o.Job)
	p, err := tree.Improve(o.Net, int32(o.Root), inOrder(order, o.terms), together, tree.Options{Known: inOrder(order, paths), Open: o.open, Steps: o.steps, Work: trialWork, Stop: o.stop})
	if err != nil {
		return fmt.Errorf("route: %w", err)
	}
	if p.Cost < best.Cost {
		best.Cost, best.Paths = p.Cost, make([]tree.Path, len(order))
		for i, d := range order {
			best.Paths[d] = p.Paths[i]
		}
	}
	return nil
}
