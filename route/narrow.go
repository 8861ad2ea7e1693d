package route

import (
	"fmt"

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
		return o.leaveOut(&prepayment{net: o.Net, plan: o.known()}, best)
	}
	for _, f := range o.prepaid {
		if f.hopeless(best) {
			continue
		}
		if err := o.leaveOut(f, best); err != nil || best.LowerBound >= best.Cost {
			return err
		}
	}
	return nil
}

// leaveOut does so on a network where some is paid already. The less is left, the
// finer it looks.
func (o *outlook) leaveOut(f *prepayment, best *tree.Plan) error {
	left, todo := len(o.Net.Target), efforts
	if o.open != nil {
		left, todo = o.open.Len(), efforts[1:]
	}
	for _, effort := range todo {
		opt := tree.Options{Open: o.open, Known: f.plan, Work: stepWork, Stop: o.stop}
		open, bound, err := tree.OpenBelow(f.net, int32(o.Root), inOrder(tagOrder(o.Job), o.terms), best.Cost-f.paid, effort, opt)
		if err != nil {
			return fmt.Errorf("route: %w", err)
		}
		o.open = open
		best.LowerBound = max(best.LowerBound, min(bound+f.paid, best.Cost))
		was := left
		if left = open.Len(); best.LowerBound >= best.Cost || effort.Steps > 0 && 4*left > 3*was {
			return nil
		}
	}
	return nil
}

// narrowDrops is for how many drops at most it looks: with more, bounds are as a
// rule too far from the plan.
const narrowDrops = 24

// efforts are how finely it looks.
var efforts = []tree.Effort{{}, {Steps: 20, Both: true}, {Steps: 80, Both: true}}
