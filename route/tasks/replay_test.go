package tasks

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/route"
	"topplate/route/order"
)

// quick bounds the searches of tests that ask for many orders.
var quick = budget{lot: 3_000, drop: 1_000, drops: 24}

// loaded is a job given by its file, or by the folder of job.toml.
func loaded(t testing.TB, dir string) *plan.Job {
	t.Helper()
	if filepath.Ext(dir) == "" {
		dir = filepath.Join(dir, "job.toml")
	}
	job, list := plan.LoadJob(dir, os.ReadFile)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%s does not load", dir)
	}
	return job
}

const (
	corner  = "../../samples/corner-house"
	long    = "../../samples/long-roof"
	starter = "../../cmd/topplate/starter"
)

var houses = []string{corner, long, starter}

// results keeps what was solved. It is never changed.
var results = map[string]*route.Result{}

func solved(t testing.TB, dir string) *route.Result {
	t.Helper()
	if results[dir] == nil {
		res, err := route.Solve(loaded(t, dir))
		if err != nil {
			t.Fatal(err)
		}
		results[dir] = res
	}
	return results[dir]
}

// changed is a result with a job that differs in what routes do not depend on.
func changed(res *route.Result, f func(job *plan.Job, house *plan.House)) *route.Result {
	own, job, house := *res, *res.Job, *res.Job.House
	job.Drops = slices.Clone(job.Drops)
	job.House, own.Job = &house, &job
	f(&job, &house)
	return &own
}

// crewed is the order of a solved job for so many people.
func crewed(t testing.TB, res *route.Result, people int, b budget) *Work {
	t.Helper()
	w, err := within(changed(res, func(job *plan.Job, _ *plan.House) { job.Crew.People = people }), b)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// orders keeps the orders of what was solved, by house and people.
var orders = map[string]*Work{}

func ordered(t testing.TB, dir string, people int) *Work {
	t.Helper()
	key := fmt.Sprint(dir, people)
	if orders[key] == nil {
		orders[key] = crewed(t, solved(t, dir), people, quick)
	}
	return orders[key]
}

// A replay is the work as it happens, told without the tasks' needs.
type replay struct {
	*testing.T
	res  *route.Result
	w    *Work
	when map[*Task]*Step
}

// replayed checks that a work can be done as it is told.
func replayed(t *testing.T, name string, res *route.Result, w *Work) {
	t.Helper()
	t.Run(name, func(t *testing.T) {
		r := replay{t, res, w, map[*Task]*Step{}}
		r.all()
	})
}

func (r *replay) all() {
	r.people()
	r.once()
	for _, task := range r.w.Tasks {
		r.needs(task)
	}
	for i := range r.res.Routes {
		if rt := &r.res.Routes[i]; rt.Blocked == nil && !r.res.Job.Drops[rt.Drop].Later {
			r.drop(rt)
		}
	}
	r.figures()
}

// people are at one place at a time, and take the time that the records say to
// get there.
func (r *replay) people() {
	last := map[int]*Visit{}
	for i := range r.w.Visits {
		v := &r.w.Visits[i]
		way := map[PlaceKind]order.Clock{Attic: 4, Crawl: 5, Outside: 4, Room: 1, Closet: 1}[v.Place.Kind]
		from := r.w.Start
		if o := last[v.Person]; o != nil {
			from = o.Leave
			way += r.stairs(o.Place, v.Place)
			if o.Place.Key == v.Place.Key && o.Leave.Day() == v.Arrive.Day() {
				r.Errorf("visit %d is where visit %d was", v.Number, o.Number)
			}
		}
		if d := v.Arrive.Day(); r.w.Days > 1 {
			r.onDay(v, order.Clock((d-1)*24*60)+r.w.Start)
			if last[v.Person] != nil && last[v.Person].Leave.Day() < d {
				from = order.Clock((d-1)*24*60) + r.w.Start
			}
		}
		if v.Number != i+1 || v.Arrive < from+way || v.Climb != climbed(v.Place) {
			r.Errorf("visit %d: person %d arrives at %s at %s, and left at %s", v.Number, v.Person, v.Place.Key, v.Arrive, from)
		}
		now := v.Arrive
		for j := range v.Steps {
			s := &v.Steps[j]
			if s.Start < now || s.End != s.Start+order.Clock(s.Task.Minutes) || s.End > v.Leave || s.Number != fmt.Sprintf("%d.%d", i+1, j+1) {
				r.Errorf("step %s from %s to %s, before it is %s", s.Number, s.Start, s.End, now)
			}
			now = s.End
		}
		last[v.Person] = v
	}
}

// onDay checks that a visit is on one working day, which begins then.
func (r *replay) onDay(v *Visit, morning order.Clock) {
	if v.Arrive < morning || v.Leave > morning+order.Clock(r.res.Job.Crew.Day) {
		r.Errorf("visit %d, %s to %s, is not on the day that begins at %s", v.Number, v.Arrive, v.Leave, morning)
	}
}

// climbed reports whether one climbs up or down to get to a place.
func climbed(p *Place) bool { return p.Kind == Attic || p.Kind == Crawl }

// stairs is a minute for each storey between two rooms.
func (r *replay) stairs(a, b *Place) order.Clock {
	if a.Room < 0 || b.Room < 0 {
		return 0
	}
	h := r.res.Job.House
	lo, hi := h.Levels[h.Rooms[a.Room].Level].Floor, h.Levels[h.Rooms[b.Room].Level].Floor
	if lo > hi {
		lo, hi = hi, lo
	}
	n := order.Clock(0)
	for i := range h.Levels {
		if f := h.Levels[i].Floor; lo < f && f <= hi {
			n++
		}
	}
	return n
}

// once checks that each task is done once, by as many hands as it needs, where
// it is to be done.
func (r *replay) once() {
	hands := map[*Task]int{}
	for i := range r.w.Visits {
		v := &r.w.Visits[i]
		for j := range v.Steps {
			s := &v.Steps[j]
			hands[s.Task]++
			want := s.Task.Place
			if s.Helps {
				want = s.Task.Helper
			}
			if v.Place.Key != want || s.Words == "" || s.Together != (s.Task.Hands == 2) {
				r.Errorf("%s at %s, want %s; words %q", s.Task.ID, v.Place.Key, want, s.Words)
			}
			if o := r.when[s.Task]; o != nil && (o.Start != s.Start || o.Helps == s.Helps && s.Task.Helper != s.Task.Place) {
				r.Errorf("%s is done twice", s.Task.ID)
			}
			r.when[s.Task] = s
		}
	}
	setUps := 0
	for _, t := range r.w.Tasks {
		if t.Kind == SetUp {
			setUps++
		}
		if hands[t] != t.Hands {
			r.Errorf("%s has %d hands, needs %d", t.ID, hands[t], t.Hands)
		}
		if t.Hands == 2 && r.w.People == 1 {
			r.Errorf("%s is for two", t.ID)
		}
	}
	if len(r.w.Tasks) > 0 && setUps != 1 {
		r.Errorf("set up %d times", setUps)
	}
}

func (r *replay) needs(t *Task) {
	for _, n := range t.Needs {
		i := slices.IndexFunc(r.w.Tasks, func(o *Task) bool { return o.ID == n })
		if i < 0 || r.when[r.w.Tasks[i]].End > r.when[t].Start {
			r.Errorf("%s begins before %s is over", t.ID, n)
		}
	}
}

// of lists the tasks of some kinds about a drop.
func (r *replay) of(d int, kinds ...Kind) []*Task {
	var out []*Task
	for _, t := range r.w.Tasks {
		if slices.Contains(kinds, t.Kind) && slices.Contains(t.Drops, d) {
			out = append(out, t)
		}
	}
	return out
}

// the is the only task of a kind about a drop.
func (r *replay) the(d int, k Kind) *Task {
	all := r.of(d, k)
	if len(all) != 1 {
		r.Fatalf("%s has %d tasks to %s", r.res.Job.Drops[d].Tag, len(all), k)
	}
	return all[0]
}

// inTurn checks that all tasks of one group are over before any of the next
// begins.
func (r *replay) inTurn(groups ...[]*Task) {
	for i := 1; i < len(groups); i++ {
		for _, a := range groups[i-1] {
			for _, b := range groups[i] {
				if r.when[a].End > r.when[b].Start {
					r.Errorf("%s begins before %s is over", b.ID, a.ID)
				}
			}
		}
	}
}

// drop checks that every cable of a drop is cut, tagged, laid, brought through
// bored holes, terminated at both ends, and tested, in that order, each once.
func (r *replay) drop(rt *route.Route) {
	d := rt.Drop
	g := r.res.Graph
	cut, tag := r.the(d, Cut), r.the(d, Tag)
	end, panel, test, finish := r.the(d, Terminate), r.the(d, Panel), r.the(d, Test), r.the(d, Finish)
	mount := r.the(d, Mount)
	one := func(t *Task) []*Task { return []*Task{t} }
	lay := r.of(d, Lay)
	var home, out []*Task // into the closet, and to the drop
	var on []*Task        // from place to place
	for _, t := range r.of(d, Feed, Pass, Fish, Draw, Shoot) {
		closetEnd := t.Kind == Feed || strings.HasPrefix(t.ID, "draw-closet") || strings.Contains(t.ID, "/draw-closet")
		// Alone, at an eave, cables are tied on to the rods in the attic.
		rods := t.Kind == Shoot && t.Place != outside && !strings.HasPrefix(t.Words, "Take the end of the rods")
		switch {
		case t.Kind == Pass || strings.Contains(t.ID, "draw-pass"):
			on = append(on, t)
		case closetEnd:
			home = append(home, t)
		case !rods:
			out = append(out, t)
		}
	}
	if len(out) == 0 || len(lay) > 0 && len(home) == 0 {
		r.Errorf("nothing brings %s", r.res.Job.Drops[d].Tag)
	}
	r.inTurn(one(cut), one(tag), home, one(panel), one(test), one(finish))
	r.inTurn(one(tag), lay, out, one(mount), one(end), one(test))
	r.inTurn(one(tag), on, out)
	r.inTurn(r.of(d, Mark), r.of(d, Open), out)
	if want := r.res.Job.Drops[d].Count; cut.Cables != want || end.Cables != want || panel.Cables != want || test.Cables != want {
		r.Errorf("%s: not all cables are worked on", r.res.Job.Drops[d].Tag)
	}
	laid := slices.ContainsFunc(rt.Arcs, func(a int) bool {
		k := g.Arcs[a].Kind
		return k == route.AlongArc || k == route.AcrossArc || k == route.BesideArc
	})
	if laid && len(lay) == 0 {
		r.Errorf("%s is not laid", r.res.Job.Drops[d].Tag)
	}
	for _, a := range rt.Arcs {
		if g.Arcs[a].Hole >= 0 {
			r.through(d, slices.IndexFunc(r.res.Holes, func(h route.Hole) bool { return h.Place == g.Arcs[a].Hole }))
		}
	}
}

// through checks that a hole is bored once and before anything is brought
// through it, and closed after.
func (r *replay) through(d, h int) {
	var bore, bring, seal []*Task
	for _, t := range r.w.Tasks {
		if !slices.Contains(t.Holes, h) {
			continue
		}
		switch {
		case t.Bores:
			bore = append(bore, t)
		case t.Kind == Seal || t.Kind == Patch:
			seal = append(seal, t)
		default:
			bring = append(bring, t)
		}
	}
	id := r.res.Holes[h].ID
	if len(bore) != 1 || len(seal) != 1 {
		r.Fatalf("%s is bored %d times and closed %d times", id, len(bore), len(seal))
	}
	r.inTurn(bore, bring, seal)
	mine := slices.ContainsFunc(bring, func(t *Task) bool { return slices.Contains(t.Drops, d) })
	if !mine {
		r.Errorf("nothing brings %s through %s", r.res.Job.Drops[d].Tag, id)
	}
	p := &r.res.Graph.Holes[r.res.Holes[h].Place]
	if plate := p.Kind == route.PlateArc || p.Kind == route.SoleArc; plate && p.FromSpace != r.isIn(bore[0].Place, p.Space) {
		r.Errorf("%s is bored from %s; from the space: %v", id, bore[0].Place, p.FromSpace)
	}
}

// isIn reports whether somebody at a place has a space's joists before him.
func (r *replay) isIn(place string, space int) bool {
	h := r.res.Job.House
	s := h.Spaces[space]
	i := slices.IndexFunc(r.w.Visits, func(v Visit) bool { return v.Place.Key == place })
	p := r.w.Visits[i].Place
	switch {
	case p.Room >= 0:
		return s.Kind == plan.FloorSpace && h.Rooms[p.Room].Open && h.Rooms[p.Room].Level == s.Below
	case s.Kind == plan.AtticSpace:
		return p.Kind == Attic && (p.Key == "attic" || p.Key == "attic "+s.ID)
	default:
		return p.Kind == Crawl && (p.Key == "crawl space" || p.Key == "crawl space "+s.ID)
	}
}

// figures counts climbs and changes anew.
func (r *replay) figures() {
	climbs, changes, end := 0, 0, r.w.Start
	seen, minutes := map[int]string{}, map[int]int{}
	for i := range r.w.Visits {
		v := &r.w.Visits[i]
		if climbed(v.Place) {
			climbs++
		}
		if at := seen[v.Person]; at != "" && at != v.Place.Key {
			changes++
		}
		seen[v.Person] = v.Place.Key
		end = max(end, v.Leave)
		since := int(v.Leave - r.w.Start)
		minutes[since/(24*60)] = max(minutes[since/(24*60)], since%(24*60))
	}
	sum := 0
	for _, n := range minutes {
		sum += n
	}
	f, b := r.w.Figures, r.w.Baseline
	if f.Climbs != climbs || f.Changes != changes || f.Minutes != sum || r.w.End != end {
		r.Errorf("%+v, counted %d climbs, %d changes, end %s", f, climbs, changes, end)
	}
	// Fewest changes come first; with several attics more climbs may buy them.
	if f.Climbs > b.Climbs && len(r.res.Job.House.Spaces) == 1 || f.Changes > b.Changes {
		r.Errorf("%+v is more than drop after drop, %+v", f, b)
	}
}
