package route

import (
	"maps"
	"slices"

	"topplate/plan/measure"
	"topplate/route/network"
	"topplate/route/tree"
)

// tolls makes the bound of a network with holes paid for beforehand better, where
// its cheapest plan asks more of places than they take. Cables pay a toll there,
// and what a full place would bring in is taken off the bound: that is no more than
// plans pay that keep within what it takes (Lagrange's multiplier of that limit;
// Fisher, "The Lagrangian relaxation method for solving integer programming
// problems", Management Science 27, 1981). Others pay for a full place, and the
// toll is never above that.
func (o *outlook) tolls(f *prepayment, best *tree.Plan) error {
	for range mostTolls {
		a, asked := o.mostAsked(f)
		if a < 0 {
			return nil
		}
		if err := o.toll(f, a, asked, best); err != nil {
			return err
		}
	}
	return nil
}

// tollsNow does so where it wasn't done, as there was a plan without full places
// already, and looks again for what no cheaper plan travels.
func (o *outlook) tollsNow(best *tree.Plan) error {
	if o.many() {
		return nil
	}
	for _, f := range o.prepaid {
		if f.hopeless(best) {
			continue
		}
		before := f.bound
		if err := o.tolls(f, best); err != nil {
			return err
		}
		if f.bound > before {
			o.openBelow = 0
		}
	}
	return o.narrow(best)
}

// mostTolls is at how many places at most cables pay one.
const mostTolls = 3

// mostAsked is the arc of which a plan asks most beyond what it takes, and how many
// cables travel it; -1 if there is none, or if it has a toll already.
func (o *outlook) mostAsked(f *prepayment) (arc int, cables int64) {
	asked := map[int]int64{}
	for i, d := range tagOrder(o.Job) {
		for _, a := range f.plan[i].Arcs {
			if o.stepped(int(a)) {
				asked[int(a)] += int64(o.Job.Drops[d].Count)
			}
		}
	}
	arc, most := -1, int64(0)
	for _, a := range slices.Sorted(maps.Keys(asked)) {
		if more := asked[a] - o.takes(a); more > most && !f.tolled[a] {
			arc, most = a, more
		}
	}
	return arc, asked[arc]
}

// takes is how many cables arc a takes at most: of the job's thinnest.
func (o *outlook) takes(a int) int64 {
	if n, ok := o.taken[a]; ok {
		return n
	}
	n := o.cables()
	for n > 0 {
		if _, crowded := o.beyondFor(o.book, a, slices.Repeat([]measure.Length{o.thinnest()}, int(n))); !crowded {
			break
		}
		n--
	}
	o.taken[a] = n
	return n
}

// toll puts a toll on an arc of which the cheapest plan asks more than it takes, the
// one at which that plan costs as much as the cheapest that does not use the arc.
func (o *outlook) toll(f *prepayment, a int, asked int64, best *tree.Plan) error {
	f.tolled[a] = true
	before := *f
	was := f.arcs[a]
	try := func(fixed, perCable, paid int64) error {
		f.arcs[a].Fixed, f.arcs[a].PerCable, f.paid = fixed, perCable, paid
		if err := o.layNet(f); err != nil {
			return err
		}
		return o.solvePrepaid(f, best)
	}
	bound := best.LowerBound
	if err := try(dearer(was.Fixed, o.crowded), was.PerCable, before.paid); err != nil {
		return err
	}
	best.LowerBound = bound // that was one for plans without the arc
	takes := o.takes(a)
	toll := min((f.bound-before.bound)/asked, o.crowded/max(1, o.cables()-takes), network.MaxPrice-was.PerCable)
	if err := try(was.Fixed, was.PerCable+toll, before.paid-toll*takes); err != nil {
		return err
	}
	if f.bound <= before.bound {
		f.arcs[a] = was
		f.paid, f.net, f.plan, f.bound = before.paid, before.net, before.plan, before.bound
	}
	return nil
}

// cables is how many the job has.
func (o *outlook) cables() (n int64) {
	for d := range o.Job.Drops {
		n += int64(o.Job.Drops[d].Count)
	}
	return n
}
