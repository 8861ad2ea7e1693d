package route

import (
	"fmt"

	"topplate/route/network"
	"topplate/route/tree"
)

// narrow leaves out of all searches to come what no plan travels that is cheaper
// than the best: by the prices as they are, or with the holes at gates paid
// beforehand.
func (o *outlook) narrow(best *tree.Plan) error {
	if best.Cost == o.openBelow || len(o.Job.Drops) > narrowDrops {
		return nil
	}
	o.openBelow = best.Cost
	if len(o.gates) == 0 {
		return o.leaveOut(o.Net, 0, best)
	}
	for first := range min(len(o.gates), 2) {
		net, paid, err := o.paidBefore(o.gates[first:])
		if err != nil {
			return err
		}
		if err := o.leaveOut(net, paid, best); err != nil || best.LowerBound >= best.Cost {
			return err
		}
	}
	return nil
}

// leaveOut does so on a network where some is paid already. The less is left, the
// finer it looks.
func (o *outlook) leaveOut(net *network.Network, paid int64, best *tree.Plan) error {
	left := len(o.Net.Target)
	if o.open != nil {
		left = o.open.Len()
	}
	for rounds := int64(firstRounds); rounds <= mostRounds; rounds *= 4 {
		opt := tree.Options{Open: o.open, Work: stepWork, Stop: o.stop}
		open, bound, err := tree.OpenBelow(net, int32(o.Root), inOrder(tagOrder(o.Job), o.terms), best.Cost-paid, rounds, opt)
		if err != nil {
			return fmt.Errorf("route: %w", err)
		}
		o.open = open
		best.LowerBound = max(best.LowerBound, min(bound+paid, best.Cost))
		was := left
		if left = open.Len(); best.LowerBound >= best.Cost || 4*left > 3*was {
			return nil
		}
	}
	return nil
}

// narrowDrops is for how many drops at most it looks: with more, bounds are as a
// rule too far from the plan.
const narrowDrops = 24

// firstRounds and mostRounds are how finely it looks.
const (
	firstRounds = 16
	mostRounds  = 1024
)
