package tasks

import (
	"fmt"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/price"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/route"
)

func TestSamplesCanBeDone(t *testing.T) {
	for _, name := range houses {
		res := solved(t, name)
		one, two := ordered(t, name, 1), ordered(t, name, 2)
		replayed(t, name+", one", res, one)
		replayed(t, name+", two", res, two)
		if two.Minutes > one.Minutes {
			t.Errorf("%s: two people take %d minutes, one %d", name, two.Minutes, one.Minutes)
		}
		if !one.ProvedChanges || !two.ProvedChanges {
			t.Errorf("%s: the changes are not proved: %v, %v", name, one.ProvedChanges, two.ProvedChanges)
		}
		if s := one.Saved(); s.Climbs <= 0 || s.Changes <= 0 || s.Minutes <= 0 {
			t.Errorf("%s: nothing is saved: %+v", name, s)
		}
	}
}

// The minutes of the cost terms are those that the plan is priced by.
func TestMinutesAreThoseOfThePrice(t *testing.T) {
	for _, name := range houses {
		for people := 1; people <= 2; people++ {
			pricedLike(t, name, solved(t, name), ordered(t, name, people))
		}
	}
	for _, seed := range randomSeeds {
		res := changed(randomResult(t, seed), func(job *plan.Job, _ *plan.House) {
			for i := range job.Drops {
				job.Drops[i].Later = false
			}
		})
		pricedLike(t, fmt.Sprintf("seed %d", seed), res, crewed(t, res, 1, quick))
	}
}

// Where boards lie over all of the attic, one is lifted at each hole.
func TestBoardsAreLifted(t *testing.T) {
	read := func(name string) ([]byte, error) {
		text, err := os.ReadFile(name)
		return []byte(strings.Replace(string(text), "[attic]\n", "[attic]\ndecking = [{ from = [\"0ft\", \"0ft\"], to = [\"60ft\", \"60ft\"] }]\n", 1)), err
	}
	job, list := plan.LoadJob(starter+"/job.toml", read)
	if list.HasErrors() {
		t.Fatal(list.Sorted())
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(res.Cost.Terms, func(s route.TermSum) bool { return s.Term == price.LiftBoard }) {
		t.Fatal("no board is lifted")
	}
	pricedLike(t, "boards", res, crewed(t, res, 1, quick))
}

// pricedLike compares the minutes of a work in which nothing is for later with
// the plan's price.
func pricedLike(t *testing.T, name string, res *route.Result, w *Work) {
	t.Helper()
	sum := map[price.ID]int64{}
	for _, task := range w.Tasks {
		for _, p := range task.Parts {
			sum[p.Term] += p.Thousandths
		}
	}
	for _, term := range res.Cost.Terms {
		switch term.Term {
		case price.Cable, price.Shift, price.ChangeCrowded, price.RacewayRun:
			continue
		case price.Patch:
			term.Amount /= 2 // the other half is for another day
		}
		// An amount is millionths of money; an hour costs thousandths.
		want := float64(term.Amount) * 60 / float64(res.Job.Rates.Hour)
		if got := float64(sum[term.Term]); got < want-60 || got > want+60 {
			t.Errorf("%s: %s is %.0f thousandths of a minute, priced %.0f", name, term.Term, got, want)
		}
	}
}

// The starter by hand. A person alone must have been in the study (S: mark,
// cut, bore, leave a tape), outside (O: open, push rods in) and at the closet
// (C: open, cut) before the only long stay in the attic (A). Then the bundle is
// drawn in at C before anything is tested in S and O, H3 is sealed in A after C,
// and devices are patched in at C after S and O: nine visits, as in
// C S O A C S O A C. Minutes are from the tables: see each line.
func TestStarterByHand(t *testing.T) {
	w := crewed(t, solved(t, starter), 1, usual)
	if w.Climbs != 2 || w.Changes != 8 || !w.Proved {
		t.Errorf("%d climbs, %d changes, proved %v; by hand 2 and 8", w.Climbs, w.Changes, w.Proved)
	}
	want := map[string]int{
		"mark-D1":          3,  // 30 % of 10, cut-box-opening
		"open-D1":          6,  // 60 %
		"open-D2":          6,  // of cut-ceiling-hole
		"bore-H3":          5,  // 62.5 % of 8, bore-plate-from-attic
		"bore-H4":          13, // 70 % of 18, bore-plate-from-box, is 12.6
		"cut-D1":           3,  // two cables at 1.5
		"tag-D1":           2,  // at 1
		"end-D1":           12, // two jacks at 6
		"end-D2":           5,  // one plug
		"panel-D1":         10, // two ports at 5
		"test-D1":          6,  // two links at 3
		"mount-D1":         4,  // half of 8, mount-box
		"finish-D3":        4,
		"open-D3":          12, // 60 % of 20, open-soffit
		"close-D3":         8,
		"power-D2":         4,
		"seal-H3":          1, // 12.5 % of 8
		"seal-H4":          2, // 10 % of 18 is 1.8
		"clean-outside":    5,
		"clean-closet":     10,
		"clean-room study": 7, // 5, and 10 % of 10 for each opening
	}
	walk, work := 0, 0
	for i := range w.Visits {
		walk += map[PlaceKind]int{Attic: 4, Outside: 4, Room: 1, Closet: 1}[w.Visits[i].Place.Kind]
	}
	for _, task := range w.Tasks {
		work += task.Minutes
		if m, ok := want[task.ID]; ok && m != task.Minutes {
			t.Errorf("%s takes %d minutes, by hand %d", task.ID, task.Minutes, m)
		}
		delete(want, task.ID)
	}
	if len(want) > 0 {
		t.Errorf("there is no %v", want)
	}
	if walk != 2*4+2*4+2*1+3*1 || w.Minutes != walk+work {
		t.Errorf("%d minutes of work and %d of walking, together %d", work, walk, w.Minutes)
	}
}

// randomSeeds are houses with closets at low eaves, fire blocks, patched studs,
// and cable that stays in a wall, besides plain ones, that are solved quickly.
var randomSeeds = []uint64{1, 3, 15, 20, 24, 45, 46, 49, 50, 96, 113, 128}

var randoms = map[uint64]*route.Result{}

func randomResult(t *testing.T, seed uint64) *route.Result {
	t.Helper()
	if randoms[seed] != nil {
		return randoms[seed]
	}
	job, list := plan.LoadJob("job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("seed %d does not load", seed)
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	randoms[seed] = res
	return res
}

func TestRandomHousesCanBeDone(t *testing.T) {
	seen := map[Kind]int{}
	for _, seed := range randomSeeds {
		res := randomResult(t, seed)
		one, two := crewed(t, res, 1, quick), crewed(t, res, 2, quick)
		name := fmt.Sprintf("seed %d", seed)
		replayed(t, name, res, one)
		replayed(t, name+", two", res, two)
		if two.Minutes > one.Minutes {
			t.Errorf("%s: two people take %d minutes, one %d", name, two.Minutes, one.Minutes)
		}
		if one.Minutes > one.Baseline.Minutes {
			t.Errorf("%s: %d minutes, drop after drop %d", name, one.Minutes, one.Baseline.Minutes)
		}
		for _, task := range one.Tasks {
			seen[task.Kind]++
		}
	}
	for k := SetUp; k <= Clean; k++ {
		// In a house of one level all cables are laid in one attic.
		if seen[k] == 0 && k != Pass {
			t.Errorf("no house has a task to %s", k)
		}
	}
}

// A job that is too large for one search is worked in lots. Holes are bored in
// the first that needs them and sealed in the last.
func TestLotsOfDrops(t *testing.T) {
	res := solved(t, corner)
	few := quick
	few.drops = 2
	for people := 1; people <= 2; people++ {
		w := crewed(t, res, people, few)
		if w.Lots < 2 {
			t.Fatalf("%d lots", w.Lots)
		}
		replayed(t, "lots", res, w)
		// What is laid is walked again for each lot; what is bored is not.
		bored := *res
		bored.Cost.Terms = slices.DeleteFunc(slices.Clone(res.Cost.Terms), func(s route.TermSum) bool {
			return !strings.HasPrefix(string(s.Term), "bore-") && s.Term != price.CutBox && s.Term != price.MountBox
		})
		pricedLike(t, "lots", &bored, w)
	}
}

func TestSameOrderTwice(t *testing.T) {
	a := ordered(t, corner, 1)
	b := crewed(t, solved(t, corner), 1, quick)
	if !reflect.DeepEqual(a, b) {
		t.Error("two orders of one job differ")
	}
}

// The order of tables in the files decides nothing.
func TestOrderOfTheFileDoesNotMatter(t *testing.T) {
	told := func(shuffle uint64) string {
		job, _ := plan.LoadJob("job.toml", randomhouse.Generate(15, randomhouse.Options{Shuffle: shuffle}).Read)
		res, err := route.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		w := crewed(t, res, 1, quick)
		text := fmt.Sprint(w.Figures, w.Baseline, w.Deferred)
		for i := range w.Visits {
			text += fmt.Sprintln(w.Visits[i].Place.Key, w.Visits[i].Carry)
			for _, s := range w.Visits[i].Steps {
				text += fmt.Sprintln(s.Number, s.Start, s.Words)
			}
		}
		return text
	}
	a, b := told(0), told(7)
	if a != b {
		t.Errorf("in the order of the file\n%s\nshuffled\n%s", a, b)
	}
}

// Drops for later are not run, but share the holes as planned.
func TestDropsForLater(t *testing.T) {
	res := changed(solved(t, corner), func(job *plan.Job, _ *plan.House) {
		for i := range job.Drops {
			job.Drops[i].Later = job.Drops[i].Tag == "D1" || job.Drops[i].Tag == "D3"
		}
	})
	job := res.Job
	w := crewed(t, res, 1, quick)
	replayed(t, "later", res, w)
	for _, task := range w.Tasks {
		for _, d := range task.Drops {
			if job.Drops[d].Later {
				t.Errorf("%s is about %s", task.ID, job.Drops[d].Tag)
			}
		}
		if task.Bores && task.Holes[0] == 2 && !strings.Contains(task.Words, "one 1in hole") {
			t.Errorf("H3 is not bored as planned: %s", task.Words)
		}
	}
	want := []string{
		"D1 (3 × cat6) is for another day, with its opening and H5; H4 is made today with room for it.",
		"D3 (1 × cat6) is for another day, with its opening and H6; H3 is made today with room for it.",
	}
	if !slices.Equal(w.Deferred, want) {
		t.Errorf("deferred: %q", w.Deferred)
	}
}

func TestNothingToday(t *testing.T) {
	w, err := Order(changed(solved(t, starter), func(job *plan.Job, _ *plan.House) {
		for i := range job.Drops {
			job.Drops[i].Later = true
		}
	}))
	if err != nil || len(w.Visits) != 0 || len(w.Deferred) != 3 || w.Minutes != 0 {
		t.Errorf("%v, %d visits, %q", err, len(w.Visits), w.Deferred)
	}
}

// A job at a place and on a date: outdoor work is over by sunset. By hand for
// 2025-10-06 at 39.5 north, 98.25 west, clock 5 hours behind UTC, with the sun's
// declination of -5.2 degrees and 11.9 minutes that it is early (an almanac's
// table, from memory): noon is 12:00 + 4 x (98.25 - 75) - 12 = 13:21; the sun
// sets at cos H = (cos 90.833 - sin 39.5 sin -5.2) / (cos 39.5 cos -5.2) = 0.056,
// H = 86.8 degrees or 347 minutes later, at 19:08.
func TestOutdoorsBeforeSunset(t *testing.T) {
	res := changed(solved(t, corner), func(_ *plan.Job, house *plan.House) {
		house.Site = plan.Site{Known: true, Latitude: 39.5, Longitude: -98.25, UTCOffset: -300}
	})
	job := res.Job
	w := crewed(t, res, 1, quick)
	if w.Sunset < 19*60+6 || w.Sunset > 19*60+10 {
		t.Errorf("sunset at %s", w.Sunset)
	}
	if len(noted(w, AfterSunset))+len(noted(w, DateWithoutPlace)) > 0 || w.Late != 0 {
		t.Errorf("notes: %+v", w.Notes)
	}
	for i := range w.Visits {
		if v := &w.Visits[i]; v.Place.Key == outside && v.Leave > w.Sunset {
			t.Errorf("outside until %s", v.Leave)
		}
	}
	late := crewed(t, changed(res, func(job *plan.Job, _ *plan.House) { job.Crew.Start = 15 * 60 }), 1, quick)
	notes := noted(late, AfterSunset)
	if late.Late == 0 || len(notes) == 0 {
		t.Fatalf("work from 15:00 is over by sunset: %+v", late.Figures)
	}
	for _, n := range notes {
		i := slices.IndexFunc(job.Drops, func(d plan.Drop) bool { return d.Tag == n.Where })
		if job.Drops[i].Kind != plan.SoffitSpot || n.Pos != job.Drops[i].Pos || n.Severity != rule.Caution || n.Change == "" {
			t.Errorf("note %+v", n)
		}
	}
}

func noted(w *Work, id rule.ID) []route.Finding {
	return slices.DeleteFunc(slices.Clone(w.Notes), func(f route.Finding) bool { return f.Rule != id })
}

func TestNotesOfTheDay(t *testing.T) {
	nowhere := changed(solved(t, corner), func(_ *plan.Job, house *plan.House) { house.Site = plan.Site{} })
	if n := noted(crewed(t, nowhere, 1, quick), DateWithoutPlace); len(n) != 1 || !strings.HasSuffix(n[0].Pos.File, "house.toml") {
		t.Errorf("a date without a place: %+v", n)
	}
	if n := noted(ordered(t, corner, 1), LongDay); len(n) != 1 {
		t.Errorf("eleven hours: %+v", n)
	}
	if n := noted(ordered(t, starter, 1), DateWithoutPlace); len(n) != 0 {
		t.Errorf("no date: %+v", n)
	}
	polar := changed(solved(t, corner), func(job *plan.Job, house *plan.House) {
		house.Site = plan.Site{Known: true, Latitude: 75, Longitude: 20, UTCOffset: 60}
		job.Date = "2025-12-21"
	})
	if n := noted(crewed(t, polar, 1, quick), AfterSunset); len(n) == 0 || !strings.Contains(n[0].Found, "does not rise") {
		t.Errorf("polar night: %+v", n)
	}
}

// With a date the attic is done as early as the fewest changes allow.
func TestAtticInTheCool(t *testing.T) {
	res := solved(t, long)
	past := func(w *Work) (n int) {
		for i := range w.Visits {
			for _, s := range w.Visits[i].Steps {
				if w.Visits[i].Place.Kind == Attic {
					n += max(0, int(s.End)-11*60)
				}
			}
		}
		return n
	}
	dated := ordered(t, long, 1)
	undated := crewed(t, changed(res, func(job *plan.Job, _ *plan.House) { job.Date = "" }), 1, quick)
	if dated.Changes > undated.Changes || past(dated) >= past(undated) {
		t.Errorf("with a date %d changes, %d minutes in the heat; without %d and %d", dated.Changes, past(dated), undated.Changes, past(undated))
	}
}

// What is carried is what the steps use: a jack or plug and a panel jack for
// each cable, a coil for each, two tags, once over all visits.
func TestCarried(t *testing.T) {
	for _, people := range []int{1, 2} {
		w := ordered(t, corner, people)
		sum := map[string]int{}
		for i := range w.Visits {
			v := &w.Visits[i]
			names := map[string]bool{}
			for _, it := range v.Carry {
				if names[it.What] {
					t.Errorf("visit %d carries %s twice", v.Number, it.What)
				}
				names[it.What] = true
				what, _, _ := strings.Cut(it.What, " of ")
				sum[what] += it.Count
			}
			if v.Place.Kind == Attic && !names["head lamp"] || v.Place.Key == outside && !names["ladder"] {
				t.Errorf("visit %d carries %v", v.Number, v.Carry)
			}
		}
		// 3 + 2 + 1 cables end in jacks, 2 + 2 + 1 + 1 in plugs.
		for what, n := range map[string]int{
			"jack-6": 6, "plug-6": 6, "panel jack": 12, "coil": 12, "tags for cable ends": 24, "plate": 3, "device": 4,
			"box bracket": 3, "ceiling box": 2, "outdoor box": 2, "patch cord": 6,
		} {
			if sum[what] != n {
				t.Errorf("%d people carry %d × %s, want %d", people, sum[what], what, n)
			}
		}
	}
}

func TestRecords(t *testing.T) {
	sums := map[price.ID]int64{}
	for _, s := range shares {
		if _, ok := price.Lookup(s.term); !ok {
			t.Errorf("no term %s", s.term)
		}
		sums[s.term] += s.thousandths
	}
	for term, n := range sums {
		if n != 1000 {
			t.Errorf("the shares of %s come to %d", term, n)
		}
	}
	ids := map[price.ID]bool{}
	for _, r := range Records {
		if _, term := price.Lookup(r.ID); ids[r.ID] || term || r.Value <= 0 || r.Title == "" {
			t.Errorf("record %+v", r)
		}
		ids[r.ID] = true
	}
	if Source.String() != "common practice, no source" {
		t.Errorf("records rest on %s", Source)
	}
	for _, r := range Rules {
		if _, ok := rule.Lookup(r.ID); ok || r.Text == "" {
			t.Errorf("rule %+v", r)
		}
	}
}
