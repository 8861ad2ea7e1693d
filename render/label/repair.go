package label

import (
	"cmp"
	"slices"

	"topplate/render/sheet"
)

// lead sends out the requests that have no place yet, the more important
// first, and then makes room for those that still have none.
func (l *leading) lead() {
	var waiting []int
	for i := range l.out {
		if !l.out[i].Placed && l.Requests[i].Leader {
			waiting = append(waiting, i)
		}
	}
	slices.SortStableFunc(waiting, func(a, b int) int {
		return cmp.Compare(l.Requests[b].Priority, l.Requests[a].Priority)
	})
	waiting = slices.DeleteFunc(waiting, l.send)
	for _, i := range waiting[:min(len(waiting), maxRepairs)] {
		l.repair(i)
	}
}

// maxRepairs is for how many texts room is made at most: more than that are
// without a place on an overfull sheet only.
const maxRepairs = 40

// makeRoomFor are how many neighbours are taken up to make room, by turns.
var makeRoomFor = []int{1, 2, 4, 8, 16}

// repair takes up the texts nearest to what i labels and places them again
// together with i, in several orders. If not all find a place, everything is
// put back.
func (l *leading) repair(i int) {
	neighbours := l.neighbours(i)
	for _, n := range makeRoomFor {
		n = min(n, len(neighbours))
		saved := make([]Placement, n)
		for k, j := range neighbours[:n] {
			saved[k] = l.take(j)
		}
		if l.rearrange(append([]int{i}, neighbours[:n]...)) {
			return
		}
		for k, j := range neighbours[:n] {
			l.set(j, saved[k])
		}
		if n == len(neighbours) {
			return
		}
	}
}

// rearrange places the requests, which are not placed, if it can place all of
// them. It tries the given order and then from the middle of the crowd
// outwards, since those in the middle have the fewest ways out.
func (l *leading) rearrange(requests []int) bool {
	for range 2 {
		if l.again(requests) {
			return true
		}
		for _, j := range requests {
			if l.out[j].Placed {
				l.take(j)
			}
		}
		l.fromMiddle(requests)
	}
	return false
}

// fromMiddle sorts requests by their distance from the middle of all.
func (l *leading) fromMiddle(requests []int) {
	var points []sheet.Point
	for _, j := range requests {
		points = append(points, l.Requests[j].target())
	}
	middle := sheet.Bounds(points...).Centre()
	slices.SortStableFunc(requests, func(a, b int) int {
		return cmp.Compare(l.distance(a, middle), l.distance(b, middle))
	})
}

// distance is the square of that between what i labels and p.
func (l *leading) distance(i int, p sheet.Point) sheet.Paper {
	d := l.Requests[i].target().Sub(p)
	return d.X*d.X + d.Y*d.Y
}

// again places requests, beside what they label or on leaders, until one finds
// no place.
func (l *leading) again(requests []int) bool {
	for _, j := range requests {
		if !l.settle(j) && !(l.Requests[j].Leader && l.send(j)) {
			return false
		}
	}
	return true
}

// settle places i beside what it labels, if there is room that covers no other
// thing.
func (l *leading) settle(i int) bool {
	for _, c := range l.choices[i] {
		if l.clearOfTexts(c.box) && l.clearOfWays(c.box) && l.foreign(&l.Requests[i], c.box) == 0 {
			l.set(i, c.placement(l.out[i].ID))
			return true
		}
	}
	return false
}

// neighbours lists the requests that are placed, those first whose things are
// nearest to that of i.
func (l *leading) neighbours(i int) []int {
	from := l.Requests[i].target()
	var placed []int
	for j := range l.out {
		if l.out[j].Placed {
			placed = append(placed, j)
		}
	}
	slices.SortStableFunc(placed, func(a, b int) int {
		return cmp.Compare(l.distance(a, from), l.distance(b, from))
	})
	return placed
}
