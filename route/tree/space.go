package tree

import "topplate/route/network"

// A space is the direction-extended graph of a problem, towards the root.
//
// Its states are chains of half-arcs: to be in state g is to be about to
// travel g. A state that can only be followed by one other, which itself can
// only follow it, is joined with it into one chain. States from which the
// root can't be reached, and states that no terminal can reach, are left out.
// The last state, exit, is the root.
type space struct {
	net   *network.Network
	terms []Terminal
	exit  int32
	scale int64 // all prices are multiples of it

	fixed []int64 // of a state: paid once
	unit  []int64 // paid per cable
	next  []turn  // turns after g are next[first[g]:first[g+1]]
	first []int32
	prev  []turn // turns before g, to is the state before
	back  []int32

	start [][]int32 // by terminal: states a cable may start in; none if the root can't be reached

	steps   *Steps    // nil if no price has steps
	stepOf  []int32   // of a state: 1 + its index in stepped, 0 if it has no steps
	stepped [][]int32 // arcs with steps in a state
	ahead   []int64   // of a state, see Options.Ahead; nil if nowhere

	chain      []int32 // half-arcs of g are chain[chainFirst[g]:chainFirst[g+1]]
	chainFirst []int32
}

// A turn leads to another state, at a price per cable if it is a bend.
type turn struct {
	to    int32
	price int64
}

func (s *space) turns(g int32) []turn  { return s.next[s.first[g]:s.first[g+1]] }
func (s *space) before(g int32) []turn { return s.prev[s.back[g]:s.back[g+1]] }

// newSpace makes the space of a problem. A relaxed space allows, for nothing,
// to turn back from one arc into another of the same heading, and leaves out
// the price of bends at nodes where arcs with a heading and arcs without one
// meet; changed tells whether that makes a difference anywhere.
func newSpace(n *network.Network, root int32, terms []Terminal, opt Options, relaxed bool) (s *space, changed bool) {
	sh := newShape(n, root, terms, opt, relaxed)
	if relaxed {
		changed = sh.relax()
	}
	alive := sh.alive(terms)
	s = &space{net: n, terms: terms, steps: opt.Steps, scale: scaleOf(n, terms)}
	s.fill(sh, alive)
	if changed {
		// Nothing is planned for terminals that would have to turn back.
		for t, ok := range newShape(n, root, terms, opt, false).reached(terms) {
			if !ok {
				s.start[t] = nil
			}
		}
	}
	s.markSteps()
	if opt.Ahead != nil {
		s.ahead = make([]int64, len(s.fixed))
		for g := range s.exit {
			if s.chainFirst[g] == s.chainFirst[g+1] {
				continue
			}
			s.ahead[g] = s.scale * opt.Ahead[n.Source[s.chain[s.chainFirst[g]]]]
		}
	}
	return s, changed
}

// fill numbers the states in the order of half-arcs and lays the turns.
func (s *space) fill(sh *shape, alive []bool) {
	after := sh.only(alive)
	head := append([]bool(nil), alive...)
	for h, g := range after {
		if alive[h] && g >= 0 {
			head[g] = false
		}
	}
	state := make([]int32, len(alive))
	s.chainFirst = append(s.chainFirst, 0)
	for h := range alive {
		if state[h] = -1; head[h] {
			state[h] = int32(len(s.fixed))
			s.addChain(sh, after, int32(h))
		}
	}
	s.first = append(s.first, 0)
	if sh.free(alive) {
		s.turnAtHubs(sh, state)
	} else {
		s.turnAtNodes(sh, state)
	}
	s.addState(0, 0) // exit, with no turns
	s.first = append(s.first, int32(len(s.next)))
	s.turnBack()
	s.start = make([][]int32, len(s.terms))
	for i, t := range s.terms {
		for h := sh.net.First[t.Node]; h < sh.net.First[t.Node+1]; h++ {
			if alive[h] {
				s.start[i] = append(s.start[i], state[h])
			}
		}
	}
}

// turnAtNodes lays the turns from every state to those that may follow.
func (s *space) turnAtNodes(sh *shape, state []int32) {
	n := sh.net
	s.exit = int32(len(s.fixed))
	for g := range s.exit {
		last := s.chain[s.chainFirst[g+1]-1]
		v := n.Target[last]
		if v == sh.root {
			s.next = append(s.next, turn{to: s.exit})
		} else {
			for out := n.First[v]; out < n.First[v+1]; out++ {
				if price, ok := sh.turn(last, out); ok && state[out] >= 0 {
					s.next = append(s.next, turn{state[out], s.scale * price})
				}
			}
		}
		s.first = append(s.first, int32(len(s.next)))
	}
}

// turnAtHubs makes a state of every node, as there is no bend anywhere, and
// so needs far fewer turns. Turning straight back is possible then, but never
// pays; lay takes it out.
func (s *space) turnAtHubs(sh *shape, state []int32) {
	n := sh.net
	halves := int32(len(s.fixed))
	s.exit = halves
	hub := make([]int32, len(n.Bend))
	for v := range hub {
		if !sh.leaf[v] && int32(v) != sh.root {
			hub[v] = s.exit
			s.exit++
		}
	}
	hub[sh.root] = s.exit
	for g := range halves {
		s.next = append(s.next, turn{to: hub[n.Target[s.chain[g]]]})
		s.first = append(s.first, int32(len(s.next)))
	}
	for v := range hub {
		if sh.leaf[v] || int32(v) == sh.root {
			continue
		}
		for out := n.First[v]; out < n.First[v+1]; out++ {
			if state[out] >= 0 {
				s.next = append(s.next, turn{to: state[out]})
			}
		}
		s.addState(0, 0)
		s.first = append(s.first, int32(len(s.next)))
	}
}

// addChain adds the state that starts with half-arc h.
func (s *space) addChain(sh *shape, after []int32, h int32) {
	n := sh.net
	var fixed, unit int64
	for {
		s.chain = append(s.chain, h)
		fixed, unit = fixed+n.Fixed[h], unit+n.PerUnit[h]
		g := after[h]
		if g < 0 {
			break
		}
		price, _ := sh.turn(h, g)
		unit += price
		h = g
	}
	s.addState(fixed, unit)
}

// addState ends a chain.
func (s *space) addState(fixed, unit int64) {
	s.fixed, s.unit = append(s.fixed, s.scale*fixed), append(s.unit, s.scale*unit)
	s.chainFirst = append(s.chainFirst, int32(len(s.chain)))
}

// turnBack lists the turns by where they lead.
func (s *space) turnBack() {
	s.back = make([]int32, len(s.fixed)+1)
	for _, t := range s.next {
		s.back[t.to+1]++
	}
	for g := range s.fixed {
		s.back[g+1] += s.back[g]
	}
	at := append([]int32(nil), s.back...)
	s.prev = make([]turn, len(s.next))
	for g := range s.exit {
		for _, t := range s.turns(g) {
			s.prev[at[t.to]] = turn{g, t.price}
			at[t.to]++
		}
	}
}

// distances is the price per cable from every state to the root: what no cable
// can be below. Fixed prices are shared out over so many cables, or left out for
// none.
func (s *space) distances(cables int64) []int64 {
	dist := make([]int64, len(s.fixed))
	for g := range dist {
		dist[g] = far
	}
	dist[s.exit] = 0
	var q queue
	q.push(0, s.exit)
	for q.size > 0 {
		key, g := q.pop()
		if key > dist[g] {
			continue
		}
		for _, t := range s.before(g) {
			d := key + s.unit[t.to] + t.price
			if cables > 0 {
				d += s.fixed[t.to] / cables
			}
			if d < dist[t.to] {
				dist[t.to] = d
				q.push(d, t.to)
			}
		}
	}
	return dist
}
