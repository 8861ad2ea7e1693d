package label

import (
	"cmp"
	"slices"

	"topplate/render/sheet"
)

// hidden stands for the candidate of a text that has no place.
const hidden = -1

// A layout is a choice of a candidate, or none, for each text. No two of the
// chosen ones conflict: their boxes keep clear of each other, and their leaders
// of boxes and of other leaders.
type layout struct {
	*scene
	choices [][]candidate // by request
	hasLed  []bool        // by request: choices has the places on leaders
	weight  []int         // of the request; more for a higher priority
	at      []int         // index into choices, or hidden
	texts   *grid         // of the chosen boxes
	ways    *grid         // of the chosen leaders
	out     []int         // requests that are hidden but have candidates
	slot    []int         // index of a request in out
	lost    int           // weight of those in out
	leaders int           // count of the chosen leaders
	rivals  []int         // scratch
}

// maxPriority bounds a priority, so that sums of weights stay small.
const maxPriority = 100

func newLayout(s *scene) *layout {
	n := len(s.Requests)
	l := &layout{
		scene: s, texts: newGrid(s.Frame), ways: newGrid(s.Frame), choices: make([][]candidate, n),
		hasLed: make([]bool, n), weight: make([]int, n), at: make([]int, n), slot: make([]int, n),
	}
	for i := range s.Requests {
		l.choices[i] = s.candidates(&s.Requests[i])
		l.weight[i] = 1 + max(0, min(maxPriority, s.Requests[i].Priority))
		l.at[i] = hidden
		if len(l.choices[i]) > 0 {
			l.hide(i)
		}
	}
	return l
}

// hide counts i among the hidden.
func (l *layout) hide(i int) {
	l.slot[i] = len(l.out)
	l.out = append(l.out, i)
	l.lost += l.weight[i]
}

// put gives i, which is hidden, its candidate c.
func (l *layout) put(i, c int) {
	l.at[i] = c
	chosen := &l.choices[i][c]
	l.texts.add(int32(i), chosen.box)
	if chosen.way != nil {
		l.ways.addLine(int32(i), chosen.way.from, chosen.way.to)
		l.leaders++
	}
	last := l.out[len(l.out)-1]
	l.out[l.slot[i]], l.slot[last] = last, l.slot[i]
	l.out = l.out[:len(l.out)-1]
	l.lost -= l.weight[i]
}

// drop takes the place of i away.
func (l *layout) drop(i int) {
	chosen := l.chosen(i)
	l.texts.remove(int32(i), chosen.box)
	if chosen.way != nil {
		l.ways.remove(int32(i), chosen.way.bounds())
		l.leaders--
	}
	l.at[i] = hidden
	l.hide(i)
}

// chosen is the candidate of i, which has one.
func (l *layout) chosen(i int) *candidate { return &l.choices[i][l.at[i]] }

// conflicts returns the other texts that c, a candidate of i, cannot stand
// together with, each once, and ends when it has found as many as most. The
// slice is valid until the next call.
func (l *layout) conflicts(i int, c *candidate, most int) []int {
	l.rivals = l.rivals[:0]
	l.rival(i, l.texts, c.box.Inset(-l.clear), most, func(other *candidate, near sheet.Box) bool {
		return near.Overlaps(other.box)
	})
	if l.leaders > 0 {
		l.rival(i, l.ways, c.box.Inset(-l.clear/2), most, func(other *candidate, near sheet.Box) bool {
			return near.Struck(other.way.from, other.way.to)
		})
	}
	if c.way == nil {
		return l.rivals
	}
	l.rival(i, l.texts, c.way.bounds().Inset(-l.clear/2), most, func(other *candidate, _ sheet.Box) bool {
		return other.box.Inset(-l.clear/2).Struck(c.way.from, c.way.to)
	})
	l.rival(i, l.ways, c.way.bounds(), most, func(other *candidate, _ sheet.Box) bool {
		return c.way.crosses(*other.way)
	})
	return l.rivals
}

// rival adds to the rivals of i those in a grid near a box for which the
// conflict holds, while there are fewer than most.
func (l *layout) rival(i int, g *grid, near sheet.Box, most int, conflict func(*candidate, sheet.Box) bool) {
	if len(l.rivals) >= most {
		return
	}
	l.found = g.near(near, l.found[:0])
	for _, j := range l.found {
		if j := int(j); j != i && conflict(l.chosen(j), near) && !slices.Contains(l.rivals, j) {
			if l.rivals = append(l.rivals, j); len(l.rivals) == most {
				return
			}
		}
	}
}

// settle gives i, which is hidden, its best candidate that is free, if there
// is one.
func (l *layout) settle(i int) bool {
	for c := range l.choices[i] {
		if len(l.conflicts(i, &l.choices[i][c], 1)) == 0 {
			l.put(i, c)
			return true
		}
	}
	return false
}

// greedy settles the texts by priority, those with the least choice first.
func (l *layout) greedy() {
	order := slices.Clone(l.out)
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(l.weight[b], l.weight[a]), cmp.Compare(len(l.choices[a]), len(l.choices[b])))
	})
	for _, i := range order {
		l.settle(i)
	}
}
