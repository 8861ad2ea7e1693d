package label

import (
	"cmp"
	"slices"

	"topplate/render/sheet"
)

// hidden stands for the candidate of a text that has no place.
const hidden = -1

// A layout is a choice of a candidate, or none, for each text. No two of the
// chosen boxes come closer than clear.
type layout struct {
	*scene
	choices [][]candidate // by request
	weight  []int         // of the request; more for a higher priority
	at      []int         // index into choices, or hidden
	placed  *grid         // of the chosen boxes
	out     []int         // requests that are hidden but have candidates
	slot    []int         // index of a request in out
	rivals  []int         // scratch
	lost    int           // weight of those in out
}

// maxPriority bounds a priority, so that sums of weights stay small.
const maxPriority = 100

func newLayout(s *scene) *layout {
	n := len(s.Requests)
	l := &layout{
		scene: s, placed: newGrid(s.Frame),
		choices: make([][]candidate, n), weight: make([]int, n), at: make([]int, n), slot: make([]int, n),
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
	l.placed.add(int32(i), l.choices[i][c].box)
	last := l.out[len(l.out)-1]
	l.out[l.slot[i]], l.slot[last] = last, l.slot[i]
	l.out = l.out[:len(l.out)-1]
	l.lost -= l.weight[i]
}

// drop takes the place of i away.
func (l *layout) drop(i int) {
	l.placed.remove(int32(i), l.choices[i][l.at[i]].box)
	l.at[i] = hidden
	l.hide(i)
}

// box is the chosen box of i, which has one.
func (l *layout) box(i int) sheet.Box { return l.choices[i][l.at[i]].box }

// conflicts returns the other texts whose boxes are too close to b, each once.
// The slice is valid until the next call.
func (l *layout) conflicts(i int, b sheet.Box) []int {
	wide := b.Inset(-l.clear)
	l.found = l.placed.near(wide, l.found[:0])
	l.rivals = l.rivals[:0]
	for _, j := range l.found {
		if int(j) != i && wide.Overlaps(l.box(int(j))) && !slices.Contains(l.rivals, int(j)) {
			l.rivals = append(l.rivals, int(j))
		}
	}
	return l.rivals
}

// settle gives i, which is hidden, its best candidate that is free, if there
// is one.
func (l *layout) settle(i int) bool {
	for c := range l.choices[i] {
		if len(l.conflicts(i, l.choices[i][c].box)) == 0 {
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

// polishPasses bounds the rounds of polish; two or three are usual.
const polishPasses = 10

// polish moves each text to a better place while there is one that is free.
func (l *layout) polish() {
	for range polishPasses {
		better := false
		for i, now := range l.at {
			if now <= 0 {
				continue
			}
			l.drop(i)
			l.settle(i)
			better = better || l.at[i] < now
		}
		if !better {
			return
		}
	}
}
