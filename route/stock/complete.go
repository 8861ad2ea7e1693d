package stock

import (
	"slices"

	"topplate/plan/measure"
)

// A verdict is what a search can say about a question.
type verdict int

const (
	unknown verdict = iota // the steps ran out
	yes
	no
)

// A completer decides whether all pieces fit the spools that are there. It is
// branch and bound over whole spools (bin completion: Korf, "A new algorithm
// for optimal bin packing", AAAI 2002; here for spools of several lengths): the
// longest piece left must come off some kind of spool, together with one of the
// sets of pieces after which no piece fits any more. That loses nothing, as any
// piece that fits could be moved there from its own spool. For the same reason,
// if no two more pieces fit beside the longest, only the longest that fits is
// tried.
type completer struct {
	demand
	kind  []measure.Length
	have  []int
	slack measure.Length // of all spools, what need not be cut
	done  packing
	meter *meter
	cut   bool // whether the steps ran out
}

// complete answers for the spools in stock and new new ones.
func complete(d demand, s supply, fresh int, m *meter) (packing, verdict) {
	c := &completer{
		demand: demand{d.size, slices.Clone(d.need)},
		kind:   append(slices.Clone(s.kind), s.fresh),
		have:   append(slices.Clone(s.have), fresh),
		meter:  m,
	}
	c.slack = load(c.kind, c.have) - d.total()
	switch {
	case c.slack < 0:
		return nil, no
	case c.next():
		for i := range c.done {
			if c.done[i].kind == len(s.kind) {
				c.done[i].kind = freshKind
			}
		}
		return c.done, yes
	case c.cut:
		return nil, unknown
	}
	return nil, no
}

// next cuts the longest piece that is left, and all after it.
func (c *completer) next() bool {
	first := slices.IndexFunc(c.need, positive)
	if first < 0 {
		return true
	}
	if !c.meter.spend(len(c.size) + len(c.kind)) {
		c.cut = true
		return false
	}
	for k, l := range c.kind {
		if c.have[k] == 0 || l < c.size[first] || k > 0 && c.kind[k-1] == l && c.have[k-1] > 0 {
			continue
		}
		f := filled{k, make([]int, len(c.size))}
		c.have[k]--
		c.add(f, first, 1)
		room := l - c.size[first]
		done := false
		if j, only := c.single(room); only {
			if j >= 0 {
				c.add(f, j, 1)
				room -= c.size[j]
			}
			done = c.close(f, room)
			if j >= 0 && !done {
				c.add(f, j, -1)
			}
		} else {
			done = c.fill(f, first, room)
		}
		if done {
			return true
		}
		c.add(f, first, -1)
		c.have[k]++
		if c.cut {
			return false
		}
	}
	return false
}

func (c *completer) add(f filled, j, n int) {
	f.count[j] += n
	c.need[j] -= n
}

// single reports whether at most one more piece fits room, and which is the
// longest; -1 if none does.
func (c *completer) single(room measure.Length) (int, bool) {
	longest, two := -1, measure.Length(0)
	seen := 0
	for j := len(c.size) - 1; j >= 0 && seen < 2; j-- {
		n := min(c.need[j], 2-seen)
		two += c.size[j] * measure.Length(n)
		seen += n
	}
	if seen == 2 && two <= room {
		return -1, false
	}
	for j, l := range c.size {
		if c.need[j] > 0 && l <= room {
			longest = j
			break
		}
	}
	return longest, true
}

// fill adds pieces from size j on to f in all ways that leave no room for
// another, and goes on from each.
func (c *completer) fill(f filled, j int, room measure.Length) bool {
	if !c.meter.spend(len(c.size)) {
		c.cut = true
		return false
	}
	for j < len(c.size) && (c.need[j] == 0 || c.size[j] > room) {
		j++
	}
	if j == len(c.size) {
		return c.maximal(room) && c.close(f, room)
	}
	most := min(c.need[j], int(room/c.size[j]))
	for n := most; n >= 0; n-- {
		c.add(f, j, n)
		if c.fill(f, j+1, room-c.size[j]*measure.Length(n)) {
			return true
		}
		c.add(f, j, -n)
		if c.cut {
			return false
		}
	}
	return false
}

// maximal reports whether no piece that is left fits room.
func (c *completer) maximal(room measure.Length) bool {
	for j := len(c.size) - 1; j >= 0; j-- {
		if c.need[j] > 0 {
			return c.size[j] > room
		}
	}
	return true
}

// close ends a spool with room to spare and goes on with the next.
func (c *completer) close(f filled, room measure.Length) bool {
	if room > c.slack {
		return false
	}
	c.slack -= room
	c.done = append(c.done, filled{f.kind, slices.Clone(f.count)})
	if c.next() {
		return true
	}
	c.done = c.done[:len(c.done)-1]
	c.slack += room
	return false
}
