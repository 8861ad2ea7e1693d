package tree

import "slices"

// Steps are prices that rise in steps with what goes over an arc: a second
// hole beside the first, a place that is full.
type Steps struct {
	Arcs []int32 // that have such a price
	// More is what arc a costs beyond its fixed price if the cables of these
	// terminals, numbers rising, use it. It is never negative. The plan found is the best of those whose paths stay
	// together only where two sets of terminals pay no less, each with the
	// fixed price, than both at once; the bounds hold in any case.
	More func(a int32, terms []int32) int64
}

// of is what the paths of a plan pay beyond their prices.
func (s *Steps) of(paths []Path) int64 {
	if s == nil {
		return 0
	}
	users := make(map[int32][]int32, len(s.Arcs))
	for _, a := range s.Arcs {
		users[a] = nil
	}
	for i := range paths {
		for _, a := range paths[i].Arcs {
			if u, ok := users[a]; ok && !slices.Contains(u, int32(i)) {
				users[a] = append(u, int32(i))
			}
		}
	}
	var sum int64
	for a, terms := range users {
		if len(terms) > 0 {
			sum += s.More(a, terms)
		}
	}
	return sum
}

// markSteps notes which states have prices in steps, and which arcs these are.
func (s *space) markSteps() {
	s.stepOf = make([]int32, len(s.fixed))
	if s.steps == nil {
		return
	}
	stepped := make([]bool, len(s.net.Target)/2)
	for _, a := range s.steps.Arcs {
		stepped[a] = true
	}
	for g := range s.stepOf {
		var arcs []int32
		for _, h := range s.chain[s.chainFirst[g]:s.chainFirst[g+1]] {
			if a := s.net.ArcOf[h]; stepped[a] {
				arcs = append(arcs, a)
			}
		}
		if len(arcs) > 0 {
			s.stepped = append(s.stepped, arcs)
			s.stepOf[g] = int32(len(s.stepped))
		}
	}
}

// more is what the k-th stepped state costs some terminals beyond its fixed
// price.
func (s *space) more(k int32, terms []int32) int64 {
	if len(terms) == 0 {
		return 0
	}
	var sum int64
	for _, a := range s.stepped[k-1] {
		sum += s.steps.More(a, terms)
	}
	return sum * s.scale
}

// A crowd is who is on each stepped state.
type crowd struct {
	*space
	there [][]int32 // by stepped state, numbers of terminals, rising
}

// newCrowd starts with nobody anywhere. Nobody is ever let in where prices
// have no steps, or while steps are not looked at.
func newCrowd(s *space) *crowd { return &crowd{space: s} }

// open makes the crowd count from now on.
func (c *crowd) open() { c.there = make([][]int32, len(c.stepped)) }

// nobody is a crowd of none that counts if c does.
func (c *crowd) nobody() *crowd {
	n := newCrowd(c.space)
	if c.there != nil {
		n.open()
	}
	return n
}

// counts reports whether state g has steps that count.
func (c *crowd) counts(g int32) bool { return c.there != nil && c.stepOf[g] > 0 }

// added is what more it costs if terminal t comes to state g as well.
func (c *crowd) added(g, t int32) int64 {
	k := c.stepOf[g]
	was := c.there[k-1]
	return c.more(k, with(was, t)) - c.more(k, was)
}

func (c *crowd) enter(g, t int32) {
	k := c.stepOf[g] - 1
	c.there[k] = with(c.there[k], t)
}

func (c *crowd) leave(g, t int32) {
	k := c.stepOf[g] - 1
	at := slices.Index(c.there[k], t)
	c.there[k] = slices.Concat(c.there[k][:at], c.there[k][at+1:])
}

// paid is what all that are there pay beyond the fixed prices.
func (c *crowd) paid() int64 {
	var sum int64
	for k := range c.there {
		sum += c.more(int32(k)+1, c.there[k])
	}
	return sum
}

// with returns the numbers with one more among them.
func with(terms []int32, t int32) []int32 {
	at, _ := slices.BinarySearch(terms, t)
	return slices.Concat(terms[:at], []int32{t}, terms[at:])
}
