package stock

import (
	"cmp"
	"math"
	"slices"

	"topplate/plan/measure"
)

// tableCells is up to which size a knapsack is solved by a table.
const tableCells = 4_000_000

// A knapsack is the question which pieces of one spool are worth most, where
// piece j has a worth and at most need[j] of it are taken.
type knapsack struct {
	size  []measure.Length
	need  []int
	worth []int64 // at least 0
	unit  measure.Length
	count int   // of all pieces that are worth something
	order []int // these, the best per length first
	short []int // these, the shortest first
	most  []int // by place in short: the most worth up to there, as a place
	take  []int
	best  []int
	value int64 // of best; only more than the value it starts with is looked for
	// missed is the largest bound among the branches that were not searched.
	missed int64
	meter  *meter
	// patience is after how many branches any filling that was found will do.
	patience int
}

// newKnapsack sorts the pieces.
func newKnapsack(size []measure.Length, need []int, worth []int64) *knapsack {
	k := &knapsack{size: size, need: need, worth: worth, patience: math.MaxInt}
	for j := len(size) - 1; j >= 0; j-- {
		if worth[j] > 0 && need[j] > 0 {
			k.short = append(k.short, j)
			k.count += need[j]
			k.unit = commonUnit(k.unit, size[j])
		}
	}
	k.most = make([]int, len(k.short))
	for i, j := range k.short {
		k.most[i] = i
		if i > 0 && worth[k.short[k.most[i-1]]] >= worth[j] {
			k.most[i] = k.most[i-1]
		}
	}
	k.order = slices.Clone(k.short)
	slices.SortStableFunc(k.order, func(a, b int) int {
		return cmp.Compare(float64(worth[b])/float64(size[b]), float64(worth[a])/float64(size[a]))
	})
	return k
}

// commonUnit is the greatest common divisor; that of 0 and b is b.
func commonUnit(a, b measure.Length) measure.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// solve looks for a filling of room that is worth more than floor. It returns
// the best one found, nil if there is none, and a bound that no filling
// exceeds, at least floor.
func (k *knapsack) solve(room measure.Length, floor int64, m *meter) (best []int, bound int64) {
	k.take, k.best = make([]int, len(k.size)), nil
	k.value, k.missed, k.meter = floor, 0, m
	if len(k.short) == 0 {
		return nil, floor
	}
	if cells := int64(room/k.unit+1) * 2; cells <= tableCells/int64(k.count) && m.left > cells {
		k.table(int(room / k.unit))
	} else {
		k.branch(0, room, 0)
	}
	return k.best, max(k.value, k.missed)
}

// table is dynamic programming over lengths up to room units, one piece after
// another. O(room * pieces).
func (k *knapsack) table(room int) {
	k.meter.left -= int64(room) * int64(k.count)
	best := make([]int64, room+1)
	took := make([]bool, 0, (room+1)*k.count)
	for _, j := range k.short {
		w := int(k.size[j] / k.unit)
		for range k.need[j] {
			row := took[len(took) : len(took)+room+1]
			took = took[:len(took)+room+1]
			clear(row)
			for c := room; c >= w; c-- {
				if v := best[c-w] + k.worth[j]; v > best[c] {
					best[c], row[c] = v, true
				}
			}
		}
	}
	if best[room] <= k.value {
		return
	}
	k.value, k.best = best[room], k.take
	at, c := k.count, room
	for i := len(k.short) - 1; i >= 0; i-- {
		j := k.short[i]
		for range k.need[j] {
			at--
			if took[at*(room+1)+c] {
				k.best[j]++
				c -= int(k.size[j] / k.unit)
			}
		}
	}
}

// branch is branch and bound over pieces by worth per length (Horowitz and
// Sahni, "Computing partitions with applications to the knapsack problem", J.
// ACM 21, 1974). It decides on the pieces from order[i] on, as many as will go
// first; where one piece more is all that fits, it is looked up.
func (k *knapsack) branch(i int, room measure.Length, value int64) {
	if value > k.value {
		k.value, k.best = value, slices.Clone(k.take)
	}
	bound := value + k.relaxed(i, room)
	if bound <= k.value {
		return
	}
	if k.patience--; !k.meter.spend(4) || k.patience < 0 && k.best != nil {
		k.missed = max(k.missed, bound)
		return
	}
	if room < 2*k.size[k.short[0]] {
		k.last(room, value)
		return
	}
	for i < len(k.order) && k.size[k.order[i]] > room {
		k.meter.left--
		i++
	}
	if i == len(k.order) {
		return
	}
	j := k.order[i]
	for n := min(k.need[j], int(room/k.size[j])); n >= 0; n-- {
		k.take[j] = n
		k.branch(i+1, room-k.size[j]*measure.Length(n), value+k.worth[j]*int64(n))
	}
	k.take[j] = 0
}

// last adds the one piece that is worth most. It may be one that was decided
// on before: that gives a filling too.
func (k *knapsack) last(room measure.Length, value int64) {
	n, _ := slices.BinarySearchFunc(k.short, room+1, func(j int, l measure.Length) int { return cmp.Compare(k.size[j], l) })
	if n == 0 {
		return
	}
	best := k.short[k.most[n-1]]
	if k.take[best] == k.need[best] { // used up: look through the others
		k.meter.left -= int64(n)
		best = -1
		for _, j := range k.short[:n] {
			if k.take[j] < k.need[j] && (best < 0 || k.worth[j] > k.worth[best]) {
				best = j
			}
		}
	}
	if best >= 0 && value+k.worth[best] > k.value {
		k.value, k.best = value+k.worth[best], slices.Clone(k.take)
		k.best[best]++
	}
}

// relaxed is the worth of filling room when a piece may be cut short, rounded
// up. The last part is worked out in floating point and then raised, so that
// it is never too small.
func (k *knapsack) relaxed(i int, room measure.Length) int64 {
	sum := int64(0)
	for ; i < len(k.order); i++ {
		k.meter.left--
		j := k.order[i]
		n := min(int64(k.need[j]), int64(room/k.size[j]))
		sum += n * k.worth[j]
		room -= k.size[j] * measure.Length(n)
		if n < int64(k.need[j]) {
			part := float64(room) / float64(k.size[j]) * float64(k.worth[j])
			return sum + int64(math.Ceil(part*(1+1e-12))) + 1
		}
	}
	return sum
}
