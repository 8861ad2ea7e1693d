package fix

import (
	"container/heap"
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// A Step is a straight piece of a way in an attic or a crawl space.
type Step struct {
	Heading plan.Heading
	Length  measure.Length
	// Zone is the worst on it: route.Arm for the last piece, which only a hand
	// goes.
	Zone route.Zone
}

// ways are the shortest ways from the hatches to everywhere that one can crawl,
// along the space's lines, with the fewest turns among the shortest. A state is
// a crossing and the axis on which one came to it.
type ways struct {
	s    *site
	cost []int64
	from []int
}

// pending is a state to go on from.
type pending struct {
	cost  int64
	state int
}

type pendings []pending

func (q pendings) Len() int { return len(q) }
func (q pendings) Less(i, j int) bool {
	return q[i].cost < q[j].cost || q[i].cost == q[j].cost && q[i].state < q[j].state
}
func (q pendings) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *pendings) Push(x any)   { *q = append(*q, x.(pending)) }
func (q *pendings) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}

// turnShare makes one nanometre count for more than all turns of a way.
const turnShare = 1 << 12

// waysFromHatches is Dijkstra's algorithm over the crossings where one can
// stand or crawl.
func (s *site) waysFromHatches() *ways {
	r := s.reach
	w := &ways{s: s}
	n := 2 * r.Crossings()
	w.cost, w.from = make([]int64, n), make([]int, n)
	var q pendings
	for k := range w.cost {
		w.cost[k], w.from[k] = -1, -1
		if p := w.at(k); w.crawls(p) && s.hatchAt(p) >= 0 {
			w.cost[k] = 0
			q = append(q, pending{0, k})
		}
	}
	heap.Init(&q)
	for q.Len() > 0 {
		it := heap.Pop(&q).(pending)
		if it.cost > w.cost[it.state] {
			continue
		}
		w.next(it.state, func(s int, d int64) {
			if c := it.cost + d; w.cost[s] < 0 || c < w.cost[s] {
				w.cost[s], w.from[s] = c, it.state
				heap.Push(&q, pending{c, s})
			}
		})
	}
	return w
}

func (w *ways) at(state int) geom.Point {
	p, _ := w.s.reach.Crossing(state / 2)
	return p
}

func (w *ways) crawls(p geom.Point) bool { return w.s.reach.ZoneOver(p) <= route.Crawl }

// next calls back with the states after one, and what they cost more.
func (w *ways) next(state int, f func(s int, cost int64)) {
	r := w.s.reach
	p := w.at(state)
	across, along := r.Neighbours(state / 2)
	for axis, to := range [2][2]int{across, along} {
		for _, k := range to {
			if k < 0 {
				continue
			}
			q, zone := r.Crossing(k)
			if zone > route.Crawl || !w.s.passable(p, q) {
				continue
			}
			cost := int64(geom.Dist(p, q)) * turnShare
			if axis != state%2 && w.from[state] >= 0 {
				cost++
			}
			if w.s.overSomething(p, q) {
				cost += overPrice
			}
			f(2*k+axis, cost)
		}
	}
}

// overPrice is more than any way costs by its length: nobody is sent over a duct
// or a tank where there is a way round it.
const overPrice = 1 << 52

// overSomething reports whether one would climb over an obstacle from p to q,
// or, under joists, creep under it.
func (s *site) overSomething(p, q geom.Point) bool {
	for i := range s.house.Obstacles {
		o := &s.house.Obstacles[i]
		if o.Space == s.index && !s.abovePerson(o) && geom.SegmentEntersRect(p, q, o.Area) {
			return true
		}
	}
	return false
}

// abovePerson reports whether an obstacle lies between joists that one is under.
func (s *site) abovePerson(o *plan.Obstacle) bool { return s.fromBelow() && o.Bottom >= 0 }

// passable reports whether nothing between two crossings takes up the height
// that one crawls in, over it or, under joists, below it.
func (s *site) passable(p, q geom.Point) bool {
	for i := range s.house.Obstacles {
		o := &s.house.Obstacles[i]
		if o.Space != s.index || s.abovePerson(o) || !geom.SegmentEntersRect(p, q, o.Area) {
			continue
		}
		room := min(s.under(p), s.under(q)) - o.Top
		if s.fromBelow() {
			room = s.space.Clear + o.Bottom
		}
		if room < s.book.Length(rule.ReachCrawl) {
			return false
		}
	}
	return true
}

// hatchAt is the space's hatch whose opening p is in, -1 if there is none.
func (s *site) hatchAt(p geom.Point) int {
	for i := range s.house.Hatches {
		if s.house.Hatches[i].Space == s.index && s.house.Hatches[i].Area.Contains(p) {
			return i
		}
	}
	return -1
}

// to is the way to where a hand gets to p, with the hatch that it begins at.
// The last piece may be at arm's length. ok is false if there is none.
func (w *ways) to(p geom.Point) (hatch int, steps []Step, ok bool) {
	best, least := -1, int64(0)
	for s := range w.cost {
		if w.cost[s] < 0 {
			continue
		}
		q := w.at(s)
		arm := max(q.X-p.X, p.X-q.X) + max(q.Y-p.Y, p.Y-q.Y)
		if arm > w.s.job.Tools.ArmReach {
			continue
		}
		// Crawling near comes before reaching far.
		if c := w.cost[s] + 2*int64(arm)*turnShare; best < 0 || c < least {
			best, least = s, c
		}
	}
	if best < 0 {
		return -1, nil, false
	}
	points := []geom.Point{w.at(best)}
	for s := best; w.from[s] >= 0; s = w.from[s] {
		points = append(points, w.at(w.from[s]))
	}
	hatch = w.s.hatchAt(points[len(points)-1])
	for k := len(points) - 1; k > 0; k-- {
		steps = w.s.join(steps, points[k], points[k-1])
	}
	return hatch, append(steps, w.s.armSteps(points[0], p)...), true
}

// join adds the piece from p to q to the steps.
func (s *site) join(steps []Step, p, q geom.Point) []Step {
	on := Step{Heading: headingTo(p, q), Length: geom.Dist(p, q), Zone: max(s.reach.ZoneOver(p), s.reach.ZoneOver(q))}
	if k := len(steps) - 1; k >= 0 && steps[k].Heading == on.Heading {
		steps[k].Length += on.Length
		steps[k].Zone = max(steps[k].Zone, on.Zone)
		return steps
	}
	return append(steps, on)
}

// armSteps is what a hand reaches on from p to q.
func (f *fixer) armSteps(p, q geom.Point) []Step {
	var out []Step
	corner := geom.Point{X: q.X, Y: p.Y}
	for _, leg := range [2][2]geom.Point{{p, corner}, {corner, q}} {
		if leg[0] != leg[1] {
			out = append(out, Step{Heading: headingTo(leg[0], leg[1]), Length: geom.Dist(leg[0], leg[1]), Zone: route.Arm})
		}
	}
	return out
}

// headingTo is the direction from p to another point on a line along an axis.
func headingTo(p, q geom.Point) plan.Heading {
	switch {
	case q.X > p.X:
		return plan.East
	case q.X < p.X:
		return plan.West
	case q.Y > p.Y:
		return plan.North
	}
	return plan.South
}

var headingNames = [...]string{plan.East: "east", plan.North: "north", plan.West: "west", plan.South: "south"}

// wayText puts a way in words.
func (f *fixer) wayText(hatch int, steps []Step) string {
	from := "from the hatch"
	if hatch >= 0 && len(f.house.Hatches) > 1 {
		from = "from hatch " + f.house.Hatches[hatch].ID
	}
	if hatch >= 0 && f.house.Hatches[hatch].Room < 0 {
		from += ", which is reached from outside"
	}
	if len(steps) == 0 {
		return from + ": beside it"
	}
	parts := make([]string, len(steps))
	for i, s := range steps {
		parts[i] = fmt.Sprintf("%s %s", f.text(s.Length), headingNames[s.Heading])
		if i == len(steps)-1 || steps[i+1].Zone != s.Zone {
			parts[i] += " " + s.Zone.String()
		}
	}
	return from + ": " + strings.Join(parts, ", ")
}
