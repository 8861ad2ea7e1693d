package order

// Lower bounds on the changes that are still to come, from chains of tasks
// that need each other. Both hold for any order, so a search that is led by
// them is exact.

// addVisits fills visits for one person: of all chains that begin with task t,
// the most separate stays at place p that one of them asks for. Tasks that
// follow each other in a chain at p are one stay. O(needs x places).
func (m *model) addVisits() {
	n, places := len(m.ids), len(m.names)
	if m.people == 2 {
		m.faults = make([]int16, n*(places+1)*(places+1))
		for i := range m.faults {
			m.faults[i] = -1
		}
		return
	}
	m.visits = make([][]int16, n)
	for i := n - 1; i >= 0; i-- {
		t := m.order[i]
		row := make([]int16, places)
		row[m.place[t]] = 1
		for _, s := range m.succ[t] {
			for p, v := range m.visits[s] {
				if p == m.place[t] && p != m.place[s] {
					v++
				}
				row[p] = max(row[p], v)
			}
		}
		m.visits[t] = row
	}
}

// atLeast is a lower bound on changes from s on, and on the minutes walked for
// them (one person; 0 for two).
func (m *model) atLeast(s *spot) (changes, walk int) {
	if m.people == 2 {
		return m.atLeastTwo(s), 0
	}
	here := int(s.at[0])
	var most [MaxPlaces]int
	for _, t := range m.order {
		if s.done.has(t) || !s.done.hasAll(m.pre[t]) {
			continue
		}
		for p, v := range m.visits[t] {
			stays := int(v)
			if p == here && m.place[t] == here {
				stays-- // this stay goes on
			}
			most[p] = max(most[p], stays)
		}
	}
	farthest := 0
	for p, near := range m.near {
		changes += most[p]
		walk += most[p] * near
		if most[p] > 0 {
			farthest = max(farthest, near)
		}
	}
	if here == nowhere && changes > 0 {
		// The first arrival is no change, and it is from the start.
		changes--
		walk -= farthest
	}
	return changes, walk
}

// atLeastTwo takes the larger of two bounds for two people: places where work
// is left and nobody stands, and the changes that one chain asks for.
func (m *model) atLeastTwo(s *spot) int {
	var open uint64
	faults := 0
	for _, t := range m.order {
		if s.done.has(t) {
			continue
		}
		open |= 1 << m.place[t]
		if m.helper[t] >= 0 {
			open |= 1 << m.helper[t]
		}
		if s.done.hasAll(m.pre[t]) {
			faults = max(faults, m.chainFaults(t, s.at[0], s.at[1]))
		}
	}
	apart := 0
	for p := range m.names {
		if open&(1<<p) != 0 && int(s.at[0]) != p && int(s.at[1]) != p {
			apart++
		}
	}
	for _, at := range s.at {
		if at == nowhere {
			apart--
		}
	}
	return max(apart, faults)
}

// chainFaults is a lower bound on the changes of two people over the worst
// chain that begins with t, when they stand at a and b. A chain asks for its
// places one after the other, which is paging with room for two: each time a
// third place is asked for since the last count, at least one change was made
// (Sleator and Tarjan, "Amortized efficiency of list update and paging rules",
// Communications of the ACM 28(2), 1985: the phases of its lower bound).
func (m *model) chainFaults(t int, a, b int8) int {
	if a > b {
		a, b = b, a
	}
	side := len(m.names) + 1
	memo := &m.faults[(t*side+int(a)+1)*side+int(b)+1]
	if *memo >= 0 {
		return int(*memo)
	}
	a, b, count := ask(a, b, m.place[t])
	if m.helper[t] >= 0 {
		var more int
		a, b, more = ask(a, b, m.helper[t])
		count += more
	}
	most := 0
	for _, s := range m.succ[t] {
		most = max(most, m.chainFaults(s, a, b))
	}
	*memo = int16(count + most)
	return count + most
}

// ask adds place p to the places a and b of a phase; nowhere is room for one.
func ask(a, b int8, p int) (int8, int8, int) {
	x := int8(p)
	switch {
	case a == x || b == x:
		return a, b, 0
	case a == nowhere:
		return x, b, 0
	case b == nowhere:
		return a, x, 0
	}
	return x, nowhere, 1
}
