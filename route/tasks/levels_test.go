package tasks

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/route"
	"topplate/route/order"
)

// Jobs in a house of three levels with a crawl space and two attics.
const (
	cellar = "testdata/levels"            // from a panel under the open ceiling of the basement
	crawl  = "testdata/levels/crawl.toml" // through the crawl space and the lower attic
	rods   = "testdata/levels/rods.toml"  // inside the closed floor
)

var storeyed = []string{cellar, crawl, rods}

func TestHousesOfSeveralLevelsCanBeDone(t *testing.T) {
	for _, name := range storeyed {
		res := solved(t, name)
		for people := 1; people <= 2; people++ {
			w := ordered(t, name, people)
			replayed(t, fmt.Sprintf("%s, %d", name, people), res, w)
			pricedLike(t, name, res, w)
			if s := w.Saved(); s.Climbs < 0 || s.Changes <= 0 || s.Minutes <= 0 {
				t.Errorf("%s, %d people: nothing is saved: %+v", name, people, s)
			}
		}
	}
}

// Lots of few drops share holes and passages, which are bored once. (Two people
// are taken to begin a lot where the first of them ended the last.)
func TestLotsInHousesOfSeveralLevels(t *testing.T) {
	few := quick
	few.drops = 1
	for _, name := range storeyed {
		replayed(t, name, solved(t, name), crewed(t, solved(t, name), 1, few))
	}
}

// storeyedSeeds are houses of several levels that are solved quickly.
var storeyedSeeds = []uint64{1, 3, 6, 14, 15, 16, 21}

// allowedSeeds are those in which patches, channels and cable outside are
// allowed.
var allowedSeeds = []uint64{1, 3, 6}

// On random houses of several levels everything can be done, with patches and
// without, and comes to the minutes of the price.
func TestRandomHousesOfSeveralLevelsCanBeDone(t *testing.T) {
	seen := map[PlaceKind]int{}
	passes, floors := 0, 0
	kinds := map[route.ArcKind]bool{}
	for _, seed := range storeyedSeeds {
		job, list := plan.LoadJob("job.toml", randomhouse.Generate(seed, randomhouse.Options{Levels: true}).Read)
		if list.HasErrors() {
			t.Fatalf("seed %d does not load", seed)
		}
		for i := range job.Drops {
			job.Drops[i].Later = false
		}
		if slices.Contains(allowedSeeds, seed) {
			job.Allow = plan.Allow{Patching: true, Raceway: true, Outside: true}
		}
		res, err := route.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		for i := range res.Routes {
			for _, l := range res.Routes[i].Legs {
				kinds[l.Kind] = true
			}
		}
		for i := range res.Holes {
			if res.Graph.Holes[res.Holes[i].Place].Kind == route.SoleArc {
				floors++
			}
		}
		for people := 1; people <= 2; people++ {
			name := fmt.Sprintf("seed %d, %d people", seed, people)
			w := crewed(t, res, people, quick)
			replayed(t, name, res, w)
			pricedLike(t, name, res, w)
			for i := range w.Visits {
				seen[w.Visits[i].Place.Kind]++
			}
			for _, x := range w.Tasks {
				if x.Kind == Pass {
					passes++
				}
			}
		}
	}
	for _, k := range []route.ArcKind{route.RacewayArc, route.OutsideArc, route.WallArc, route.RodArc} {
		if !kinds[k] {
			t.Errorf("no cable goes %s", k)
		}
	}
	if seen[Attic] == 0 || seen[Crawl] == 0 || passes == 0 || floors == 0 {
		t.Errorf("visits %v, %d passes, %d holes in floors", seen, passes, floors)
	}
}

// task finds a task by its ID.
func task(t *testing.T, w *Work, id string) *Task {
	t.Helper()
	i := slices.IndexFunc(w.Tasks, func(x *Task) bool { return x.ID == id })
	if i < 0 {
		t.Fatalf("there is no %s", id)
	}
	return w.Tasks[i]
}

// visits lists the places that are visited.
func visits(w *Work) string {
	var out []string
	for i := range w.Visits {
		out = append(out, w.Visits[i].Place.Key)
	}
	return strings.Join(out, ", ")
}

// From the basement: its open ceiling is worked on from the room, which is the
// closet's, on a step ladder. The cable of U1 goes on through two storeys to the
// upper attic; what is fed up can't be lowered.
func TestUpFromTheBasement(t *testing.T) {
	w := ordered(t, cellar, 1)
	for id, place := range map[string]string{
		"bore-H1": closet, "bore-H2": "room kitchen", "bore-H3": "room bed", "bore-H4": "attic high", "lay-01": closet,
		"feed-01": closet, "fish-K1": closet, "draw-K1": "room kitchen", "pass-01": closet, "draw-pass-01": "attic high", "mark-C1": closet,
	} {
		if got := task(t, w, id).Place; got != place {
			t.Errorf("%s is at %s, want %s", id, got, place)
		}
	}
	for _, x := range w.Tasks {
		if x.ID == "open-C1" {
			t.Error("an opening is cut in a ceiling that has no board")
		}
		if strings.Contains(x.Words, "Lower") {
			t.Errorf("%s lowers what goes up: %s", x.ID, x.Words)
		}
	}
	for id, want := range map[string]string{
		"bore-H1": "up through floor and bottom plate", "bore-H3": "from above down through the bottom plate",
		"fish-K1": "up through H1", "pass-01": "up through H1, H2, H3 and H4 to attic high",
	} {
		if got := task(t, w, id).Words; !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q in it", id, got, want)
		}
	}
	carried := map[string]bool{}
	for i := range w.Visits {
		for _, it := range w.Visits[i].Carry {
			carried[w.Visits[i].Place.Key+" "+it.What] = true
		}
	}
	if !carried["closet step ladder"] || !carried["closet cable hooks"] || carried["room kitchen step ladder"] || !carried["attic high cable straps"] {
		t.Errorf("carried: %v", carried)
	}
}

// From the upper attic, whose hatch is in the upper storey, down two storeys to
// the panel in the basement it takes a minute, and one for each storey; from
// outside to the upper storey one and one.
func TestStairsTakeTime(t *testing.T) {
	w := ordered(t, cellar, 1)
	seen := 0
	for i := 1; i < len(w.Visits); i++ {
		a, b := &w.Visits[i-1], &w.Visits[i]
		want := map[string]order.Clock{
			"attic high > closet": 3, "closet > attic high": 6, "room bed > room kitchen": 2, "room study > room bed": 1, "room kitchen > closet": 2,
		}[a.Place.Key+" > "+b.Place.Key]
		if want > 0 {
			seen++
		}
		if got := b.Arrive - a.Leave; want > 0 && got != want {
			t.Errorf("from %s to %s in %d minutes, want %d", a.Place.Key, b.Place.Key, got, want)
		}
	}
	if seen < 4 {
		t.Errorf("the way is %s", visits(w))
	}
	s := newSite(solved(t, cellar))
	for _, c := range []struct {
		floors [2]string
		want   int
	}{
		{[2]string{"0ft", "0ft"}, 0},
		{[2]string{"0ft", "1ft"}, 1}, // a few steps
		{[2]string{"0ft", "4ft 6in"}, 1},
		{[2]string{"0ft", "9ft"}, 1},
		{[2]string{"-8ft 6in", "9ft"}, 2},
		{[2]string{"9ft", "-8ft 6in"}, 2},
	} {
		own, house := s, *s.job.House
		job := *s.job
		house.Levels = nil
		for _, f := range c.floors {
			l, err := measure.Parse(f)
			if err != nil {
				t.Fatal(err)
			}
			house.Levels = append(house.Levels, plan.Level{Floor: l, PlateTop: 8 * measure.Foot})
		}
		job.House, own.job = &house, &job
		if got := own.storeys(0, 1); got != c.want {
			t.Errorf("%v are %d storeys, want %d", c.floors, got, c.want)
		}
	}
}

// The crawl space is a place of its own, with its own gear; it is entered from
// outside. Heat is the attic's alone.
func TestCrawlSpace(t *testing.T) {
	w := ordered(t, crawl, 1)
	if w.Climbs != 3 || strings.Count(visits(w), "crawl space") != 2 || strings.Count(visits(w), "attic low") != 1 {
		t.Errorf("%d climbs: %s", w.Climbs, visits(w))
	}
	for i := range w.Visits {
		v := &w.Visits[i]
		names := fmt.Sprint(v.Carry)
		crawls := v.Place.Kind == Crawl
		for _, gear := range []string{"coveralls", "knee pads"} {
			if strings.Contains(names, gear) != crawls {
				t.Errorf("visit %d to %s carries %s", v.Number, v.Place.Title, names)
			}
		}
		if crawls && v.Place.Title != "Crawl space" || crawls && strings.Contains(names, "water") {
			t.Errorf("%s carries %s", v.Place.Title, names)
		}
	}
	for id, want := range map[string]string{
		"feed-02": "Push a fish tape up through H6 to the closet", "feed-01": "Lower the cables of E1 and P1 through H5 to the closet",
		"bore-H6": "find wall south over the floor", "clean-crawl space": "ground cover",
	} {
		if got := task(t, w, id).Words; !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q in it", id, got, want)
		}
	}
	s := newSite(solved(t, crawl))
	c := clock{places: s.titles, cool: 660, sunset: 1200}
	for _, k := range []struct {
		place, helper  string
		cool, notAfter order.Clock
	}{
		{"attic low", "", 660, 0},
		{"attic high", closet, 660, 0},
		{closet, "attic low", 660, 0},
		{"crawl space", closet, 0, 0},
		{outside, "attic low", 660, 1200},
		{"room living", "", 0, 0},
	} {
		if s.titles[k.place] == nil {
			continue
		}
		if got := c.task(&Task{Place: k.place, Helper: k.helper}); got.PreferBefore != k.cool || got.NotAfter != k.notAfter {
			t.Errorf("at %s with %q: before %s, not after %s", k.place, k.helper, got.PreferBefore, got.NotAfter)
		}
	}
}

// Inside a closed floor rods are pushed in at one hole and caught at the other,
// both from rooms: from where each hole is bored.
func TestRodsInsideAFloor(t *testing.T) {
	one, two := ordered(t, rods, 1), ordered(t, rods, 2)
	if got := task(t, one, "ready-01").Place; got != "room study" {
		t.Errorf("alone, a tape is left at %s", got)
	}
	if got := task(t, one, "shoot-01"); got.Place != closet || got.Hands != 1 || !slices.Equal(got.Needs[len(got.Needs)-1:], []string{"ready-01"}) {
		t.Errorf("alone: %+v", got)
	}
	s := task(t, two, "shoot-01")
	if s.Place != closet || s.Helper != "room study" || s.Hands != 2 || !strings.Contains(s.Words, "inside the floor") {
		t.Errorf("for two: %+v", s)
	}
	if f := task(t, two, "fish-S1"); f.Place != closet || f.Helper != "room study" || strings.Contains(f.Words, "inside the wall") {
		t.Errorf("S1: %+v", f)
	}
	for _, h := range []string{"bore-H1", "bore-H4"} {
		if !slices.Contains(task(t, two, "shoot-01").Needs, h) {
			t.Errorf("the rods do not wait for %s", h)
		}
	}
}

// Places have the names of their spaces where there are several of a kind.
func TestNamesOfPlaces(t *testing.T) {
	var got []string
	for _, p := range placesOf(t, cellar) {
		if p.Kind == Attic || p.Kind == Crawl {
			got = append(got, fmt.Sprintf("%s: %s, from level %d", p.Key, p.Title, p.Level))
		}
	}
	slices.Sort(got)
	want := []string{
		"attic high: Attic high, from level 2", "attic low: Attic low, from level 0", "crawl space: Crawl space, from level 0",
	}
	if !slices.Equal(got, want) {
		t.Errorf("places %q", got)
	}
	if one := placesOf(t, corner)["attic"]; one == nil || one.Title != "Attic" {
		t.Errorf("the only attic is %+v", one)
	}
}

// Every way is divided without gaps, by the definition of a passage: no hand
// gets at the cable in it, and one does between passages.
func TestWaysAreDivided(t *testing.T) {
	for _, name := range append(slices.Clone(storeyed), houses...) {
		s := newSite(solved(t, name))
		for _, w := range s.today() {
			p := w.passages
			if p[0].from != 0 || p[len(p)-1].to != len(w.route.Arcs) {
				t.Errorf("%s, %s: %+v", name, w.drop.Tag, p)
			}
			for i, a := range w.route.Arcs {
				k := s.graph.Arcs[a].Kind
				laid := k == route.AlongArc || k == route.AcrossArc || k == route.BesideArc || k == route.StepArc
				if laid != (w.passageAt(i) < 0) {
					t.Errorf("%s, %s: arc %d, a %s, is in passage %d", name, w.drop.Tag, i, k, w.passageAt(i))
				}
			}
		}
	}
}

func placesOf(t *testing.T, name string) map[string]*Place {
	s := newSite(solved(t, name))
	return s.places()
}
