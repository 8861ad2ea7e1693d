package tasks

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"topplate/plan"
	"topplate/plan/price"
	"topplate/route"
)

// A lot makes the tasks for some drops that are worked on together.
type lot struct {
	site
	ways      []way // in the order of tags
	stretches []stretch
	shots     []shot
	feeds     []feed
	holes     []hole
	tasks     map[string]*Task
	parts     map[string]map[price.ID]int64 // of tasks, by ID
	spent     map[int]bool                  // arcs whose shared charges are handed out
	// first is true for the lot that sets up and opens the closet's wall.
	first bool
	// bored holds the holes that were bored before; kept those that a later lot
	// goes through too, which are sealed then.
	bored, kept map[int]bool
	// By way: the tasks after which its cables can be laid from the closet's
	// hole, are in the closet, and are at the drop.
	lowered, home, arrived []string
}

// A site is what all lots of a job share.
type site struct {
	res    *route.Result
	job    *plan.Job
	graph  *route.Graph
	holeAt map[int]int // index in Result.Holes, by index in Graph.Holes
	people int
	joists []int64 // centre lines, on the axis across the joists
}

func newSite(res *route.Result) site {
	s := site{res: res, job: res.Job, graph: res.Graph, holeAt: map[int]int{}, people: res.Job.Crew.People}
	for i := range res.Holes {
		s.holeAt[res.Holes[i].Place] = i
	}
	for _, c := range route.JoistCentres(res.Job.House, res.Job.House.Attic) {
		s.joists = append(s.joists, int64(c))
	}
	return s
}

// A shot is one rod shot, for all cables that are drawn with it.
type shot struct {
	id   string
	arc  int
	ways []int
	// closet says at which end of the cables it is.
	closet bool
}

// A feed is one way from the attic into the closet.
type feed struct {
	id   string
	arc  int // the last one before the attic
	ways []int
}

// A hole is one that the cables of a lot go through.
type hole struct {
	h      int // index in Result.Holes
	arc    int
	closet bool  // it is over the closet
	ways   []int // at whose drops it is; all that go through it if closet
	below  bool  // it is bored, and sealed, from the room, not from the attic
	place  string
}

// tasksOf makes the tasks for the ways.
func (l *lot) tasksOf() []*Task {
	l.tasks, l.parts, l.spent = map[string]*Task{}, map[string]map[price.ID]int64{}, map[int]bool{}
	n := len(l.ways)
	l.lowered, l.home, l.arrived = make([]string, n), make([]string, n), make([]string, n)
	l.stretches = stretchesOf(l.ways)
	l.gather()
	l.handOut()
	l.boreHoles()
	l.atCloset()
	l.inTheAttic()
	for k := range l.ways {
		l.atDrop(k)
	}
	l.sealHoles()
	l.cleanUp()
	return l.finished()
}

// finished gives the tasks in order of ID, with their minutes.
func (l *lot) finished() []*Task {
	out := make([]*Task, 0, len(l.tasks))
	for id, t := range l.tasks {
		for term, n := range l.parts[id] {
			t.Parts = append(t.Parts, Part{term, n})
		}
		slices.SortFunc(t.Parts, func(a, b Part) int { return strings.Compare(string(a.Term), string(b.Term)) })
		var sum int64
		for _, p := range t.Parts {
			sum += p.Thousandths
		}
		t.Minutes = int((sum + 999) / 1000)
		slices.Sort(t.Needs)
		t.Needs = slices.Compact(t.Needs)
		for _, d := range t.Drops {
			t.Cables += l.job.Drops[d].Count
		}
		out = append(out, t)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].ID < out[j].ID })
	return out
}

// add keeps a task. Needs that are empty are left out.
func (l *lot) add(t Task) {
	t.Needs = slices.DeleteFunc(t.Needs, func(id string) bool { return id == "" })
	if t.Hands == 0 {
		t.Hands = 1
	}
	l.tasks[t.ID] = &t
}

// pair adds a task for two: at first for one of them, at t.Helper for the
// other. One person alone does it as two tasks, the second with the id that is
// returned, which is the one that others wait for; either has half the
// minutes.
func (l *lot) pair(t Task, alone string, secondWords string) string {
	if l.people == 2 {
		t.Hands = 2
		l.add(t)
		return t.ID
	}
	second := t
	second.ID, second.Kind = alone, Draw
	second.Place, second.Helper, second.Needs = t.Helper, "", []string{t.ID}
	second.Words, second.HelperWords = secondWords, ""
	second.Carry, second.HelperCarry = t.HelperCarry, nil
	t.Helper, t.HelperWords, t.HelperCarry = "", "", nil
	l.halve(t.ID, second.ID)
	l.give(t.ID, makeFast, value(makeFast))
	l.add(t)
	l.add(second)
	return second.ID
}

// halve moves half of a task's minutes to another.
func (l *lot) halve(from, to string) {
	for term, n := range l.parts[from] {
		l.parts[from][term] = n - n/2
		l.give(to, term, n/2)
	}
}

// give adds minutes to a task, which need not be there yet.
func (l *lot) give(id string, term price.ID, thousandths int64) {
	if l.parts[id] == nil {
		l.parts[id] = map[price.ID]int64{}
	}
	l.parts[id][term] += thousandths
}

// record gives a task n times the minutes of a record.
func (l *lot) record(id string, r price.ID, n int) { l.give(id, r, value(r)*int64(n)) }

// gather finds the shots, feeds and holes of the ways.
func (l *lot) gather() {
	for k := range l.ways {
		w := &l.ways[k]
		l.gatherShot(k, w.closetRod, true)
		l.gatherShot(k, w.dropRod, false)
		if !w.atticless {
			l.gatherFeed(k)
		}
		for i, a := range w.route.Arcs {
			if l.graph.Arcs[a].Hole >= 0 {
				l.gatherHole(k, i, a)
			}
		}
	}
	for i := range l.holes {
		l.placeHole(&l.holes[i])
	}
	slices.SortFunc(l.holes, func(a, b hole) int { return a.h - b.h })
}

func (l *lot) gatherShot(k, arc int, closet bool) {
	if arc < 0 {
		return
	}
	i := slices.IndexFunc(l.shots, func(s shot) bool { return s.arc == arc })
	if i < 0 {
		i = len(l.shots)
		l.shots = append(l.shots, shot{id: numbered("shoot", i+1), arc: arc, closet: closet})
	}
	l.shots[i].ways = append(l.shots[i].ways, k)
}

func (l *lot) gatherFeed(k int) {
	arc := -1
	if w := &l.ways[k]; w.from > 0 {
		arc = w.route.Arcs[w.from-1]
		if arc == w.closetRod {
			arc = w.route.Arcs[max(w.from-2, 0)]
		}
	}
	i := slices.IndexFunc(l.feeds, func(f feed) bool { return f.arc == arc })
	if i < 0 {
		i = len(l.feeds)
		l.feeds = append(l.feeds, feed{id: numbered("feed", i+1), arc: arc})
	}
	l.feeds[i].ways = append(l.feeds[i].ways, k)
}

func (l *lot) gatherHole(k, i, arc int) {
	h := l.holeAt[l.graph.Arcs[arc].Hole]
	closet := i < l.ways[k].from && !l.ways[k].atticless
	at := slices.IndexFunc(l.holes, func(o hole) bool { return o.h == h })
	if at < 0 {
		at = len(l.holes)
		l.holes = append(l.holes, hole{h: h, arc: arc})
	}
	o := &l.holes[at]
	o.closet = o.closet || closet
	if !slices.Contains(o.ways, k) {
		o.ways = append(o.ways, k)
	}
}

// placeHole decides from where a hole is bored.
func (l *lot) placeHole(o *hole) {
	p := &l.graph.Holes[l.res.Holes[o.h].Place]
	o.place = l.nearest(o)
	switch p.Kind {
	case route.PlateArc:
		o.below = !p.FromSpace
	case route.BlockArc:
		o.below = !l.blockFromAbove(o)
	case route.GableArc:
		o.below = !p.FromSpace
	default:
		o.below = true
	}
	if !o.below {
		o.place = attic
	}
}

// nearest is the place below a hole: the closet, or that of the highest box
// that it is over.
func (l *lot) nearest(o *hole) string {
	if o.closet {
		return closet
	}
	best := o.ways[0]
	for _, k := range o.ways {
		if l.ways[k].route.Place.Z > l.ways[best].route.Place.Z {
			best = k
		}
	}
	return l.placeOf(l.ways[best].drop)
}

// blockFromAbove reports whether a fire block is bored through the plate over
// it: that plate is bored from above, and the way from the box is no shorter.
func (l *lot) blockFromAbove(o *hole) bool {
	z := l.graph.Holes[l.res.Holes[o.h].Place].At.Z
	for _, k := range o.ways {
		w := &l.ways[k]
		box := w.route.Place.Z
		if o.closet {
			box = l.job.House.Levels[0].Floor + l.job.Closet.Spot.Height
		}
		for i, a := range w.route.Arcs {
			hole := l.graph.Arcs[a].Hole
			if hole < 0 || (i < w.from) != o.closet {
				continue
			}
			if p := &l.graph.Holes[hole]; p.Kind == route.PlateArc {
				return p.FromSpace && p.At.Z-z <= z-box
			}
		}
	}
	return false
}

// dropsOf lists the drops of some ways.
func (l *lot) dropsOf(ways []int) []int {
	var out []int
	for _, k := range ways {
		out = append(out, l.ways[k].d)
	}
	return out
}

// tags names drops as text: "D1, D2 and S1".
func (s *site) tags(drops []int) string {
	var names []string
	for _, d := range drops {
		names = append(names, s.job.Drops[d].Tag)
	}
	return listed(names)
}

func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func numbered(what string, n int) string { return fmt.Sprintf("%s-%02d", what, n) }

func at(kind string, tag string) string { return kind + "-" + tag }
