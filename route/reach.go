package route

import (
	"container/heap"

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

// Reach is the zone of every crossing of the lattice's lines.
type Reach struct {
	axes axes
	U, V []measure.Length // lines, rising
	zone []Zone           // by V index, then U index
}

func (r *Reach) at(i, j int) int { return j*len(r.U) + i }

// zoneAt is the zone of the crossing of line i of U and line j of V.
func (r *Reach) zoneAt(i, j int) Zone { return r.zone[r.at(i, j)] }

// clearance is how much room there is for a body between the tops of the
// joists and the underside of the rafters or top chords at p.
func clearance(h *plan.House, p geom.Point) measure.Length {
	return underRafter(h, p) - h.Attic.Depth
}

// reachOf finds where one can stand, crawl and put a hand, starting from the
// hatches. A place is crawled to over lattice lines on which the clear height
// is enough and no obstacle is in the way; a hand reaches as far as the arm
// is long, measured along the lines.
func reachOf(job *plan.Job, book rule.Book, ax axes, us, vs []measure.Length) *Reach {
	h := job.House
	r := &Reach{axes: ax, U: us, V: vs, zone: make([]Zone, len(us)*len(vs))}
	room := make([]measure.Length, len(r.zone))
	for j, v := range vs {
		for i, u := range us {
			k, p := r.at(i, j), ax.point(u, v)
			r.zone[k] = NoZone
			if h.PlateLine.Contains(p) {
				r.zone[k] = RodOnly
				room[k] = clearance(h, p)
			}
		}
	}
	w := walker{r: r, room: room, book: book, house: h}
	w.crawlFrom(w.hatchCrossings())
	w.stretchArm(job.Tools.ArmReach)
	return r
}

// A walker spreads reach over the lattice.
type walker struct {
	r     *Reach
	room  []measure.Length
	book  rule.Book
	house *plan.House
}

// hatchCrossings are the crossings inside a hatch's opening.
func (w *walker) hatchCrossings() []int {
	var out []int
	for _, hatch := range w.house.Hatches {
		for j, v := range w.r.V {
			for i, u := range w.r.U {
				if hatch.Area.Contains(w.r.axes.point(u, v)) {
					out = append(out, w.r.at(i, j))
				}
			}
		}
	}
	return out
}

// crawlFrom marks all that can be crawled to from the starts.
func (w *walker) crawlFrom(starts []int) {
	crawl, stand := w.book.Length(rule.ReachCrawl), w.book.Length(rule.ReachStand)
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
		w.neighbours(k, func(n int, _ measure.Length) {
			if w.r.zone[n] == RodOnly && w.passable(k, n, crawl) {
				queue = append(queue, n)
			}
		})
	}
}

// neighbours calls f for each crossing next to k, with its distance.
func (w *walker) neighbours(k int, f func(n int, d measure.Length)) {
	nu := len(w.r.U)
	i, j := k%nu, k/nu
	if i > 0 {
		f(k-1, w.r.U[i]-w.r.U[i-1])
	}
	if i+1 < nu {
		f(k+1, w.r.U[i+1]-w.r.U[i])
	}
	if j > 0 {
		f(k-nu, w.r.V[j]-w.r.V[j-1])
	}
	if j+1 < len(w.r.V) {
		f(k+nu, w.r.V[j+1]-w.r.V[j])
	}
}

func (w *walker) place(k int) geom.Point {
	return w.r.axes.point(w.r.U[k%len(w.r.U)], w.r.V[k/len(w.r.U)])
}

// passable reports whether nothing between two neighbouring crossings takes
// up the height that is needed to get past.
func (w *walker) passable(a, b int, need measure.Length) bool {
	p, q := w.place(a), w.place(b)
	for i := range w.house.Obstacles {
		o := &w.house.Obstacles[i]
		over := min(w.room[a], w.room[b]) + w.house.Attic.Depth - o.Top
		if over < need && geom.SegmentEntersRect(p, q, o.Area) {
			return false
		}
	}
	return true
}

// stretchArm marks what a hand reaches from where one can crawl: Dijkstra's
// algorithm over the lattice, cut off at the length of the arm.
func (w *walker) stretchArm(arm measure.Length) {
	need := w.book.Length(rule.ReachArmHeight)
	dist := make([]measure.Length, len(w.r.zone))
	var q armQueue
	for k, z := range w.r.zone {
		dist[k] = arm + 1
		if z <= Crawl {
			dist[k] = 0
			q = append(q, armItem{0, k})
		}
	}
	heap.Init(&q)
	for q.Len() > 0 {
		it := heap.Pop(&q).(armItem)
		if it.dist > dist[it.k] {
			continue
		}
		w.neighbours(it.k, func(n int, d measure.Length) {
			d += it.dist
			if d < dist[n] && w.r.zone[n] == RodOnly && w.room[n] >= need && w.passable(it.k, n, need) {
				dist[n] = d
				heap.Push(&q, armItem{d, n})
			}
		})
	}
	for k := range dist {
		if w.r.zone[k] == RodOnly && dist[k] <= arm {
			w.r.zone[k] = Arm
		}
	}
}

type armItem struct {
	dist measure.Length
	k    int
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
