package tree

import (
	"slices"

	"topplate/route/network"
)

// Improve changes a plan, one path and then so many paths at a time, as long as that
// makes it cheaper, steps counted. The paths are those of opt.Known; terminals
// that have none keep none. It may find plans whose bundles part, which Solve does
// not look for.
func Improve(n *network.Network, root int32, terms []Terminal, paths int, opt Options) (Plan, error) {
	if err := check(n, root, terms); err != nil {
		return Plan{}, err
	}
	s, _ := newSpace(n, root, terms, opt, false)
	w := &meter{left: opt.Work, stop: opt.Stop}
	if opt.Work <= 0 {
		w.left = DefaultWork
	}
	plan := Plan{Paths: append([]Path(nil), opt.Known...)}
	var member []int32
	for t := range terms {
		if len(s.start[t]) > 0 && len(plan.Paths[t].Nodes) > 0 {
			member = append(member, int32(t))
		}
	}
	r := newRouter(s, s.distances(0), member, w)
	if s.steps != nil {
		r.crowd.open()
	}
	r.set(s.statesOf(member, plan.Paths))
	for i, t := range member {
		if own := r.paths[i]; len(own) == 0 || !slices.Equal(s.lay(own).Arcs, plan.Paths[t].Arcs) {
			r.take(i) // it is not all open
			r.lay(i)
		}
	}
	r.improve()
	if paths > 1 {
		newMender(r).run(paths, w)
	}
	for i, t := range member {
		plan.Paths[t] = s.lay(r.paths[i])
	}
	plan.Price(n, terms, opt.Steps)
	return plan, nil
}
