package label

// polishPasses bounds the rounds of polish; two or three are usual.
const polishPasses = 10

// polish moves texts to better places while there are any: to one that is
// free, or, for a text on a leader, to one that others make free by moving
// away, if that is better for all of them together.
func (l *layout) polish() {
	for pass := range polishPasses {
		better := false
		for i, now := range l.at {
			if now <= 0 {
				continue
			}
			l.drop(i)
			l.settle(i)
			better = l.at[i] < now || pass < tradePasses && l.trade(i) || better
		}
		if !better {
			return
		}
	}
}

// Bounds of trades: the rounds with trades in them, the better places that are
// tried in one, and the texts that may have to move for one.
const (
	tradePasses = 3
	tradePlaces = 40
	tradeMoves  = 2
)

// trade moves i, if it is on a leader, to the first of its better places for
// which those in the way can move so that the costs of all fall. It reports
// whether there was one.
func (l *layout) trade(i int) bool {
	if l.chosen(i).way == nil {
		return false
	}
	for c := range min(l.at[i], tradePlaces) {
		rivals := l.conflicts(i, &l.choices[i][c], tradeMoves+1)
		if len(rivals) > tradeMoves {
			continue
		}
		if l.exchange(c, append([]int{i}, rivals...)) {
			return true
		}
	}
	return false
}

// exchange gives the first of moved its candidate c and the others the best
// places that are then free. If that costs more than before, or one finds no
// place, everything is put back.
func (l *layout) exchange(c int, moved []int) bool {
	before, cost := make([]int, len(moved)), 0
	for k, j := range moved {
		before[k] = l.at[j]
		cost += l.chosen(j).cost
		l.drop(j)
	}
	l.put(moved[0], c)
	cost -= l.chosen(moved[0]).cost
	for _, j := range moved[1:] {
		if cost <= 0 || !l.settle(j) {
			cost = 0
			break
		}
		cost -= l.chosen(j).cost
	}
	if cost > 0 {
		return true
	}
	for _, j := range moved {
		if l.at[j] != hidden {
			l.drop(j)
		}
	}
	for k, j := range moved {
		l.put(j, before[k])
	}
	return false
}
