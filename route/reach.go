package route

import (
	"container/heap"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Zone is how a place in the attic can be worked at, best first.
type Zone uint8

// Zones, from the clear height over the joists and the way in from a hatch.
const (
	Stand   Zone = iota // upright
	Crawl               // on hands and knees
	Arm                 // by hand, from a place where one can crawl
	RodOnly             // by a rod, if at all
	NoZone              // not in the attic
)

var zoneNames = [...]string{"standing", "crawling", "at arm's reach", "by rod", "not in the attic"}

func (z Zone) String() string { return zoneNames[z] }

// Reach is the zone of every crossing of the lattice's lines, and of the ways
// between neighbours.
type Reach struct {
	axes axes
	us   []measure.Length // lines, rising
	vs   []measure.Length
	// Crossings are numbered by V, then U. Those on line j of V are row[j] up to
	// row[j+1]; those on line i of U are column[top[i]:top[i+1]].
	row, top, column []int32
	onU              []int32 // line of U, by crossing
	onV              []int32 // line of V
	zone             []Zone
	east, north      []stretch // from a crossing to the next along its lines of V and of U
}

// A stretch is the way to the next crossing on a line: to is -1 if there is
// none. Its zone is the worst on it.
type stretch struct {
	to   int32
	zone Zone
}

// newReach finds the crossings of lines: where both are laid.
func newReach(ax axes, us, vs []line) *Reach {
	r := &Reach{axes: ax, row: make([]int32, 1, len(vs)+1), top: make([]int32, len(us)+1)}
	for i := range us {
		r.us = append(r.us, us[i].at)
	}
	for j := range vs {
		r.vs = append(r.vs, vs[j].at)
		for _, s := range vs[j].laid {
			first, _ := slices.BinarySearch(r.us, s.lo)
			for i := first; i < len(us) && us[i].at <= s.hi; i++ {
				if us[i].laid.contains(vs[j].at) {
					r.onU, r.onV = append(r.onU, int32(i)), append(r.onV, int32(j))
					r.top[i+1]++
				}
			}
		}
		r.row = append(r.row, int32(len(r.onU)))
	}
	for i := range us {
		r.top[i+1] += r.top[i]
	}
	next := slices.Clone(r.top)
	r.column = make([]int32, len(r.onU))
	for k, i := range r.onU {
		r.column[next[i]] = int32(k)
		next[i]++
	}
	r.zone = make([]Zone, len(r.onU))
	r.east, r.north = make([]stretch, len(r.onU)), make([]stretch, len(r.onU))
	r.link()
	return r
}

// link joins neighbours.
func (r *Reach) link() {
	for k := range r.zone {
		r.east[k], r.north[k] = stretch{-1, NoZone}, stretch{-1, NoZone}
	}
	for j := range r.vs {
		for k := r.row[j] + 1; k < r.row[j+1]; k++ {
			r.east[k-1].to = k
		}
	}
	for i := range r.us {
		for c := r.top[i] + 1; c < r.top[i+1]; c++ {
			r.north[r.column[c-1]].to = r.column[c]
		}
	}
}

func (r *Reach) u(k int32) measure.Length { return r.us[r.onU[k]] }
func (r *Reach) v(k int32) measure.Length { return r.vs[r.onV[k]] }
func (r *Reach) point(k int32) geom.Point { return r.axes.point(r.u(k), r.v(k)) }

// onLineOfV are the crossings on the line of V at v, rising; onLineOfU those
// on the line of U at u.
func (r *Reach) onLineOfV(v measure.Length) []int32 {
	j, ok := slices.BinarySearch(r.vs, v)
	if !ok {
		return nil
	}
	out := make([]int32, 0, r.row[j+1]-r.row[j])
	for k := r.row[j]; k < r.row[j+1]; k++ {
		out = append(out, k)
	}
	return out
}

func (r *Reach) onLineOfU(u measure.Length) []int32 {
	i, ok := slices.BinarySearch(r.us, u)
	if !ok {
		return nil
	}
	return r.column[r.top[i]:r.top[i+1]]
}

// zoneOf is the zone of a crossing given by its point.
func (r *Reach) zoneOf(p geom.Point) Zone {
	u, v := r.axes.uv(p)
	i, okU := slices.BinarySearch(r.us, u)
	j, okV := slices.BinarySearch(r.vs, v)
	if !okU || !okV {
		return NoZone
	}
	k, ok := slices.BinarySearch(r.onU[r.row[j]:r.row[j+1]], int32(i))
	if !ok {
		return NoZone
	}
	return r.zone[r.row[j]+int32(k)]
}

// ZoneOver is how the attic over a hole place, a mark or a crossing of its
// lines can be worked at: NoZone off the lattice and outside of the house.
func (r *Reach) ZoneOver(p geom.Point) Zone { return r.zoneOf(p) }

// Crossings is the number of crossings; they are numbered from 0.
func (r *Reach) Crossings() int { return len(r.zone) }

// Crossing is where crossing k is, and how one can work there.
func (r *Reach) Crossing(k int) (geom.Point, Zone) { return r.point(int32(k)), r.zone[k] }

// Neighbours are the next crossings to k on its lines, first across the joists
// and then along them, -1 for none.
func (r *Reach) Neighbours(k int) (across, along [2]int) {
	across, along = [2]int{-1, int(r.east[k].to)}, [2]int{-1, int(r.north[k].to)}
	if int32(k) > r.row[r.onV[k]] {
		across[0] = k - 1
	}
	i := r.onU[k]
	column := r.column[r.top[i]:r.top[i+1]]
	if c, _ := slices.BinarySearch(column, int32(k)); c > 0 {
		along[0] = int(column[c-1])
	}
	return across, along
}

// ZoneNear is the worst zone of the crossings of the lines around p: NoZone if
// p is outside of the lines.
func (r *Reach) ZoneNear(p geom.Point) Zone {
	u, v := r.axes.uv(p)
	i, _ := slices.BinarySearch(r.us, u)
	j, _ := slices.BinarySearch(r.vs, v)
	if i == 0 || j == 0 || i == len(r.us) || j == len(r.vs) {
		return NoZone
	}
	worst, found := Stand, false
	for _, a := range []int{i - 1, i} {
		for _, b := range []int{j - 1, j} {
			row := r.onU[r.row[b]:r.row[b+1]]
			if k, ok := slices.BinarySearch(row, int32(a)); ok {
				worst, found = max(worst, r.zone[int(r.row[b])+k]), true
			}
		}
	}
	if !found {
		return NoZone
	}
	return worst
}

// reachOf finds where one can stand, crawl and put a hand, starting from the
// hatches. A place is crawled to over lattice lines on which the clear height
// is enough and no obstacle is in the way; a hand reaches as far as the arm
// is long, measured along the lines.
func (b *cavity) reachOf(us, vs []line) *Reach {
	r := newReach(b.ax, us, vs)
	room := make([]measure.Length, len(r.zone))
	for k := range r.zone {
		p := r.point(int32(k))
		r.zone[k] = NoZone
		if b.space.Contains(p) {
			r.zone[k] = RodOnly
			room[k] = b.clearance(p)
		}
	}
	w := walker{r: r, room: room, cavity: b, arm: b.job.Tools.ArmReach}
	w.cutOff()
	w.crawlFrom(w.waysIn())
	w.stretchArm()
	w.waysBetween()
	return r
}

// A walker spreads reach over the lattice.
type walker struct {
	r    *Reach
	room []measure.Length
	*cavity
	arm  measure.Length
	dist []measure.Length // to where one can crawl, more than the arm if it is further
}

// cutOff takes away the ways to a neighbour that lead out of the house. Only
// where lines in between are not laid can there be such.
func (w *walker) cutOff() {
	for k := range w.r.zone {
		for _, s := range [2]*stretch{&w.r.east[k], &w.r.north[k]} {
			if s.to >= 0 && w.skips(int32(k), s.to) && !w.space.Contains(w.between(int32(k), s.to)) {
				s.to = -1
			}
		}
	}
}

// skips reports whether there is a line between two neighbours that is not
// laid there.
func (w *walker) skips(a, b int32) bool {
	return w.r.onU[b]-w.r.onU[a]+w.r.onV[b]-w.r.onV[a] > 1
}

// between is the point in the middle of two neighbours. The outlines of the
// house and of where there is room are lines from end to end, so what holds
// there for the roof holds all the way.
func (w *walker) between(a, b int32) geom.Point {
	return mid(geom.Rect{Min: w.r.point(a), Max: w.r.point(b)})
}

// waysIn are the crossings inside a hatch's opening, and those over rooms whose
// ceiling is open.
func (w *walker) waysIn() []int32 {
	var out []int32
	if w.space.Kind == plan.FloorSpace {
		for k := range int32(len(w.r.zone)) {
			if w.r.zone[k] == RodOnly && w.room[k] > 0 {
				out = append(out, k)
			}
		}
	}
	for _, hatch := range w.house.Hatches {
		for k := range int32(len(w.r.zone)) {
			if hatch.Space == w.index && hatch.Area.Contains(w.r.point(k)) {
				out = append(out, k)
			}
		}
	}
	return out
}

// crawlFrom marks all that can be crawled to from the starts.
func (w *walker) crawlFrom(starts []int32) {
	crawl, stand := w.book.Length(rule.ReachCrawl), w.book.Length(rule.ReachStand)
	near := w.neighbours()
	queue := starts
	for len(queue) > 0 {
		k := queue[0]
		queue = queue[1:]
		if w.r.zone[k] != RodOnly || w.room[k] < crawl {
			continue
		}
		w.r.zone[k] = Crawl
		if w.room[k] >= stand {
			w.r.zone[k] = Stand
		}
		for _, n := range near[k] {
			if n >= 0 && w.r.zone[n] == RodOnly && w.passable(k, n, crawl) {
				queue = append(queue, n)
			}
		}
	}
}

// neighbours lists the crossings next to each, -1 for none: west, east, south
// and north.
func (w *walker) neighbours() [][4]int32 {
	near := make([][4]int32, len(w.r.zone))
	for k := range near {
		near[k] = [4]int32{-1, -1, -1, -1}
	}
	for k := range near {
		if n := w.r.east[k].to; n >= 0 {
			near[k][1], near[n][0] = n, int32(k)
		}
		if n := w.r.north[k].to; n >= 0 {
			near[k][3], near[n][2] = n, int32(k)
		}
	}
	return near
}

// passable reports whether nothing between two neighbouring crossings takes
// up the height that is needed to get past.
func (w *walker) passable(a, b int32, need measure.Length) bool {
	p, q := w.r.point(a), w.r.point(b)
	for i := range w.house.Obstacles {
		o := &w.house.Obstacles[i]
		if o.Space != w.index {
			continue
		}
		if w.roomPast(o, a, b) < need && geom.SegmentEntersRect(p, q, o.Area) {
			return false
		}
	}
	return true
}

// roomPast is the height that an obstacle leaves between two crossings: over it in
// an attic, under it where one works from below the joists.
func (w *walker) roomPast(o *plan.Obstacle, a, b int32) measure.Length {
	room := min(w.room[a], w.room[b])
	if w.space.Kind == plan.AtticSpace {
		return room + w.js.depth - o.Top
	}
	return room + min(0, o.Bottom)
}

// stretchArm marks what a hand reaches from where one can crawl: Dijkstra's
// algorithm over the lattice, cut off at the length of the arm.
func (w *walker) stretchArm() {
	need := w.book.Length(rule.ReachArmHeight)
	dist, near := make([]measure.Length, len(w.r.zone)), w.neighbours()
	var q armQueue
	for k, z := range w.r.zone {
		dist[k] = w.arm + 1
		if z <= Crawl {
			dist[k] = 0
			q = append(q, armItem{0, int32(k)})
		}
	}
	heap.Init(&q)
	for q.Len() > 0 {
		it := heap.Pop(&q).(armItem)
		if it.dist > dist[it.k] {
			continue
		}
		for _, n := range near[it.k] {
			if n < 0 || w.r.zone[n] != RodOnly || w.room[n] < need {
				continue
			}
			d := it.dist + geom.Dist(w.r.point(it.k), w.r.point(n))
			if d < dist[n] && w.passable(it.k, n, need) {
				dist[n] = d
				heap.Push(&q, armItem{d, n})
			}
		}
	}
	for k := range dist {
		if w.r.zone[k] == RodOnly && dist[k] <= w.arm {
			w.r.zone[k] = Arm
		}
	}
	w.dist = dist
}

// waysBetween gives every way to a neighbour its zone: the worse of its ends.
// Where a line in between is not laid, what that would have found is made up
// for.
func (w *walker) waysBetween() {
	for k := range w.r.zone {
		for _, s := range [2]*stretch{&w.r.east[k], &w.r.north[k]} {
			if s.to < 0 {
				continue
			}
			s.zone = max(w.r.zone[k], w.r.zone[s.to])
			if s.zone <= Arm && w.skips(int32(k), s.to) {
				s.zone = max(s.zone, w.zoneBetween(int32(k), s.to))
			}
		}
	}
}

// zoneBetween is the worst zone on the way between two neighbours that a hand
// reaches: by the room under the roof, by what is in the way, and by how far a
// hand reaches in from both ends.
func (w *walker) zoneBetween(a, b int32) Zone {
	crawl, arm := w.book.Length(rule.ReachCrawl), w.book.Length(rule.ReachArmHeight)
	room := w.clearance(w.between(a, b))
	z := Stand
	switch {
	case room < arm || !w.passable(a, b, arm):
		return RodOnly
	case room < crawl || !w.passable(a, b, crawl) || max(w.r.zone[a], w.r.zone[b]) == Arm:
		z = Arm
	case room < w.book.Length(rule.ReachStand):
		z = Crawl
	}
	if z == Arm && w.dist[a]+w.dist[b]+geom.Dist(w.r.point(a), w.r.point(b)) > 2*w.arm && !w.crawlsBeside(a, b) {
		return RodOnly
	}
	return z
}

// crawlsBeside reports whether a hand reaches the whole way between two
// neighbours from beside it: one can crawl there all along, no further off than
// from its ends, and nothing stands between.
func (w *walker) crawlsBeside(a, b int32) bool {
	far := max(w.dist[a], w.dist[b])
	off := geom.Point{X: far}
	if w.r.point(a).X != w.r.point(b).X {
		off = geom.Point{Y: far}
	}
	for _, by := range [2]geom.Point{off, {X: -off.X, Y: -off.Y}} {
		q := w.between(a, b).Add(by)
		strip := geom.Rect{Min: w.r.point(a), Max: w.r.point(b).Add(by)}.Canon()
		if !w.space.Contains(q) || w.clearance(q) < w.book.Length(rule.ReachCrawl) {
			continue
		}
		if !slices.ContainsFunc(w.house.Obstacles, func(o plan.Obstacle) bool { return o.Space == w.index && !o.Area.Intersect(strip).Empty() }) {
			return true
		}
	}
	return false
}

type armItem struct {
	dist measure.Length
	k    int32
}

type armQueue []armItem

func (q armQueue) Len() int { return len(q) }
func (q armQueue) Less(i, j int) bool {
	return q[i].dist < q[j].dist || q[i].dist == q[j].dist && q[i].k < q[j].k
}
func (q armQueue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *armQueue) Push(x any)   { *q = append(*q, x.(armItem)) }
func (q *armQueue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}
