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
	passes    []pass
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
	titles map[string]*Place // by key
	joists [][]int64         // centre lines, on the axis across the joists, by space
}

func newSite(res *route.Result) site {
	s := site{res: res, job: res.Job, graph: res.Graph, holeAt: map[int]int{}, people: res.Job.Crew.People}
	for i := range res.Holes {
		s.holeAt[res.Holes[i].Place] = i
	}
	s.joists = make([][]int64, len(res.Job.House.Spaces))
	for i, space := range res.Job.House.Spaces {
		for _, c := range route.JoistCentres(res.Job.House, space) {
			s.joists[i] = append(s.joists[i], int64(c))
		}
	}
	s.titles = s.places()
	return s
}

// A shot is one rod shot, for all cables that are drawn with it.
type shot struct {
	id   string
	arc  int
	ways []int
	at   int // index of its passage on the first of the ways
	// out is true if it draws cables out to a drop outside.
	out bool
}

// A feed is one passage into the closet.
type feed struct {
	id   string
	arc  int // the last one that is no rod shot
	ways []int
}

// tasksOf makes the tasks for the ways.
func (l *lot) tasksOf() []*Task {
	l.tasks, l.parts, l.spent = map[string]*Task{}, map[string]map[price.ID]int64{}, map[int]bool{}
	n := len(l.ways)
	l.lowered, l.home, l.arrived = make([]string, n), make([]string, n), make([]string, n)
	l.divideWays()
	l.gather()
	l.handOut()
	l.boreHoles()
	l.atCloset()
	l.layAndPass()
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
// minutes. At one place it is one task.
func (l *lot) pair(t Task, alone string, secondWords string) string {
	switch {
	case l.people == 2:
		t.Hands = 2
		l.add(t)
		return t.ID
	case t.Helper == t.Place:
		t.Words += " " + secondWords
		t.Carry = append(t.Carry, t.HelperCarry...)
		t.Helper, t.HelperWords, t.HelperCarry = "", "", nil
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
		for p := range w.passages {
			for _, a := range l.rods(w, &w.passages[p]) {
				l.gatherShot(k, p, a)
			}
		}
		if !w.inside() {
			l.gatherFeed(k)
		}
	}
	l.gatherHoles()
}

func (l *lot) gatherShot(k, p, arc int) {
	w := &l.ways[k]
	out := p == len(w.passages)-1 && l.outdoors(w)
	i := slices.IndexFunc(l.shots, func(s shot) bool { return s.arc == arc && s.out == out })
	if i < 0 {
		i = len(l.shots)
		l.shots = append(l.shots, shot{id: numbered("shoot", i+1), arc: arc, at: p, out: out})
	}
	l.shots[i].ways = append(l.shots[i].ways, k)
}

func (l *lot) gatherFeed(k int) {
	w := &l.ways[k]
	arc := -1
	for _, a := range w.route.Arcs[:w.passages[0].to] {
		if arc < 0 || l.graph.Arcs[a].Kind != route.RodArc {
			arc = a
		}
	}
	i := slices.IndexFunc(l.feeds, func(f feed) bool { return f.arc == arc })
	if i < 0 {
		i = len(l.feeds)
		l.feeds = append(l.feeds, feed{id: numbered("feed", i+1), arc: arc})
	}
	l.feeds[i].ways = append(l.feeds[i].ways, k)
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
