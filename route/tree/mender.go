package tree

// A mender improves a plan: it takes up the paths of a few members that are
// close together and lays them anew, all at once and exactly, while the paths
// of all others stay. That covers what moves of single paths, trunks and
// junctions can do among these members.
type mender struct {
	*router
	dual   *dual
	search *search
	near   []int32 // by state: 1 + last seed whose path has it
	hops   []int32 // queue of nodes
	seen   []int32 // by node: 1 + last seed that reached it
	at     []int32 // by node: member + 1
}

func newMender(r *router) *mender {
	m := &mender{router: r, dual: newDual(r.space, r.base), search: newSearch(r.space, r.crowd), near: make([]int32, len(r.base))}
	m.seen, m.at = make([]int32, len(r.net.Bend)), make([]int32, len(r.net.Bend))
	for i, t := range r.member {
		m.at[r.terms[t].Node] = int32(i) + 1
	}
	return m
}

// run mends around every member in turn, with groups of so many members, until
// no way of choosing groups changes anything or the work is done.
func (m *mender) run(size int, w *meter) {
	size = min(size, len(m.member))
	idle := 0
	for round := 0; idle < 3; round++ {
		idle++
		for i := range m.member {
			if w.left <= 0 {
				return
			}
			if m.mend(m.group(round, i, size), w) {
				idle = 0
			}
		}
		if size == len(m.member) {
			return
		}
	}
}

// group chooses members to go with member i: those that share most of its
// path, those nearest, or a mixture of those near, a different one each round.
func (m *mender) group(round, i, size int) []int {
	switch round % 3 {
	case 0:
		return m.sharing(i, size)
	case 1:
		return m.around(i, size)
	}
	group := m.around(i, min(3*size, len(m.member)))
	mix := uint64(round)<<32 | uint64(i)
	for j := range size {
		mix = mix*6364136223846793005 + 1442695040888963407
		o := j + int(mix>>33%uint64(len(group)-j))
		group[j], group[o] = group[o], group[j]
	}
	return group[:size]
}

// mend lays the paths of a group anew and reports whether that is cheaper.
func (m *mender) mend(group []int, w *meter) bool {
	terms, old := make([]int32, len(group)), make([][]int32, len(group))
	was := int64(0)
	for j, i := range group {
		terms[j], old[j] = m.member[i], m.paths[i]
		was += m.take(i)
	}
	own := &meter{left: min(w.left, int64(len(group))*mendWork), stop: w.stop}
	granted := own.left
	m.dual.reset(terms, m.open)
	m.dual.ascend(mendRounds, own)
	paths, better := old, false
	if limit := m.below(was) - m.dual.bound(); limit > 0 {
		m.search.reset(m.dual, limit)
		if goal, _ := m.search.run(own); goal >= 0 {
			found := m.search.routes(goal)
			if better = m.price(group, found) < was; better {
				paths = found
			}
		}
	}
	w.spend(int(granted - own.left))
	for j, i := range group {
		m.put(i, paths[j])
	}
	return better
}

// price is what the paths of a group that is taken up would add to the plan.
// The search knows that only where steps are such that sets which pass a place
// apart pay no less than together; a place that is full is none.
func (m *mender) price(group []int, paths [][]int32) int64 {
	for j, i := range group {
		m.put(i, paths[j])
	}
	sum := int64(0)
	for _, i := range group {
		sum += m.take(i)
	}
	return sum
}

const (
	mendWork   = 100_000 // for each member of a group
	mendRounds = 4
)

// sharing lists member i and those that share most of its path.
func (m *mender) sharing(i, size int) []int {
	for _, g := range m.paths[i] {
		m.near[g] = int32(i) + 1
	}
	shared := make([]int64, len(m.member))
	group := make([]int, len(m.member))
	for j := range group {
		group[j] = j
		for _, g := range m.paths[j] {
			if m.near[g] == int32(i)+1 {
				shared[j]--
			}
		}
	}
	shared[i] = -far
	sortBy(group, func(j int) int64 { return shared[j] })
	for _, g := range m.paths[i] {
		m.near[g] = 0
	}
	return group[:size]
}

// around lists member i and those the fewest nodes away from it.
func (m *mender) around(i, size int) []int {
	n := m.net
	from := m.terms[m.member[i]].Node
	group := make([]int, 0, size)
	clear(m.seen)
	m.hops = append(m.hops[:0], from)
	m.seen[from] = 1
	for len(m.hops) > 0 && len(group) < size {
		v := m.hops[0]
		m.hops = m.hops[1:]
		if j := m.at[v]; j > 0 {
			group = append(group, int(j)-1)
		}
		for h := n.First[v]; h < n.First[v+1]; h++ {
			if to := n.Target[h]; m.seen[to] == 0 {
				m.seen[to] = 1
				m.hops = append(m.hops, to)
			}
		}
	}
	return group
}
