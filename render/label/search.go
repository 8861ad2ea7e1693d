package label

import "slices"

// An effort bounds a search: the steps for each text that is left out at its
// start, and for all of them. The search ends at once when no text is left out.
type effort struct{ each, all int }

// The efforts. Where a leader is a way out, less is worth doing for a place
// beside the thing; and with places on leaders a step takes longer.
var (
	thorough = effort{1500, 150_000}
	quick    = effort{300, 30_000}
	led      = effort{200, 1500}
)

// tenure is for how many steps a text that was put in cannot be pushed out.
const tenure = 12

// worse is how seldom, one time in so many, a step may leave out more than
// before.
const worse = 60

// search tries to bring the texts in that are left out. Each step
// puts one of them in the place where it pushes out the least weight, and gives
// what it pushed out a free place if there is one. A text that has just been
// put in stays for a while, so that steps do not undo each other (tabu search;
// Glover, ORSA Journal on Computing 1(3), 1989). The best layout seen is kept.
//
// Only texts near one that is left out ever move, so that a small change of the
// sheet has small effects.
func (l *layout) search(e effort) {
	var rnd random
	until := make([]int, len(l.at)) // step until which a text stays
	best, least := slices.Clone(l.at), l.lost
	steps := min(e.all, e.each*len(l.out))
	for step := 1; step <= steps && len(l.out) > 0; step++ {
		i := l.out[rnd.below(len(l.out))]
		c, weight := l.cheapest(i, step, until, &rnd)
		if c == hidden || weight > l.weight[i] && rnd.below(worse) != 0 {
			continue
		}
		pushed := slices.Clone(l.conflicts(i, &l.choices[i][c], len(l.at)))
		for _, j := range pushed {
			l.drop(j)
		}
		l.put(i, c)
		until[i] = step + tenure
		for _, j := range pushed {
			l.settle(j)
		}
		if l.lost < least {
			best, least = slices.Clone(l.at), l.lost
		}
	}
	l.restore(best)
}

// cheapest returns the candidate of i that pushes out the least weight and
// nothing that has to stay, one of them by chance if there are several, and
// that weight.
func (l *layout) cheapest(i, step int, until []int, rnd *random) (best, least int) {
	best, ties := hidden, 0
	for c := range l.choices[i] {
		weight, stuck := 0, false
		for _, j := range l.conflicts(i, &l.choices[i][c], len(l.at)) {
			weight += l.weight[j]
			stuck = stuck || until[j] > step
		}
		switch {
		case stuck || best != hidden && weight > least:
		case weight == 0:
			return c, 0 // the first of these is the best place
		case best == hidden || weight < least:
			best, least, ties = c, weight, 1
		default:
			ties++
			if rnd.below(ties) == 0 {
				best = c
			}
		}
	}
	return best, least
}

// restore goes back to the choices in at.
func (l *layout) restore(at []int) {
	for i := range l.at {
		if l.at[i] != hidden && l.at[i] != at[i] {
			l.drop(i)
		}
	}
	for i, c := range at {
		if c != hidden && l.at[i] == hidden {
			l.put(i, c)
		}
	}
}
