package order

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func mustSolve(t *testing.T, job Job) Result {
	t.Helper()
	r, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, r.Plan)
	if r.Bound.Compare(r.Score) > 0 || r.Proved != (r.Bound == r.Score) {
		t.Fatalf("bound %+v, score %+v, proved %v", r.Bound, r.Score, r.Proved)
	}
	return r
}

// A day told by hand: two drops from the attic to rooms. Boxes first, then one
// climb for both holes and both pulls, then the ends; drop after drop climbs
// twice.
func TestTwoDrops(t *testing.T) {
	job := Job{
		People: 1, Start: 480, AlonePercent: 150,
		Places: []Place{{Name: "attic", Climb: true, Arrive: 5}, {Name: "rooms", Arrive: 2}},
		Tasks: []Task{
			{ID: "a1 box", Place: "rooms", Minutes: 10, Hands: 1},
			{ID: "a2 pull", Place: "attic", Minutes: 10, Hands: 2, Needs: []string{"a1 box"}},
			{ID: "a3 end", Place: "rooms", Minutes: 10, Hands: 1, Needs: []string{"a2 pull"}},
			{ID: "b1 box", Place: "rooms", Minutes: 10, Hands: 1},
			{ID: "b2 pull", Place: "attic", Minutes: 10, Hands: 2, Needs: []string{"b1 box"}},
			{ID: "b3 end", Place: "rooms", Minutes: 10, Hands: 1, Needs: []string{"b2 pull"}},
		},
		Baseline: [][]string{{"a1 box", "a2 pull", "a3 end"}, {"b1 box", "b2 pull", "b3 end"}},
	}
	r := mustSolve(t, job)
	alone := func(id string, start, end Clock) Work { return Work{ID: id, Start: start, End: end, Alone: true} }
	want := Plan{
		Score:  Score{Changes: 2, Minutes: 77}, // 40 + 2 pulls of 15, 5 up, 2 down
		Climbs: 1,
		Visits: []Visit{
			{0, "rooms", false, 480, 500, []Work{{ID: "a1 box", Start: 480, End: 490}, {ID: "b1 box", Start: 490, End: 500}}},
			{0, "attic", true, 505, 535, []Work{alone("a2 pull", 505, 520), alone("b2 pull", 520, 535)}},
			{0, "rooms", false, 537, 557, []Work{{ID: "a3 end", Start: 537, End: 547}, {ID: "b3 end", Start: 547, End: 557}}},
		},
	}
	if diff := cmp.Diff(want, r.Plan); diff != "" {
		t.Errorf("plan (-want +got):\n%s", diff)
	}
	if b := r.Baseline; b.Changes != 4 || b.Minutes != 84 || b.Climbs != 2 {
		t.Errorf("drop after drop: %+v, %d climbs", b.Score, b.Climbs)
	}
	job.People = 2
	r = mustSolve(t, job)
	// Pulls take both above, so someone goes up and down at least: one does the
	// boxes and the ends, 20 + 5 + 20 + 2 + 20. Going up together and sharing
	// the rooms would be 47 minutes, for 4 changes.
	if r.Score != (Score{Changes: 2, Minutes: 67}) || r.Climbs != 2 || !r.Proved {
		t.Errorf("two people: %+v, %d climbs, proved %v", r.Score, r.Climbs, r.Proved)
	}
	for i := range job.Tasks {
		if job.Tasks[i].Hands == 2 {
			job.Tasks[i].Helper = "rooms" // one feeds below, one pulls above
		}
	}
	r = mustSolve(t, job)
	// One above and one below, nobody moves: two boxes, then two pulls and an
	// end, then the last end.
	if r.Score != (Score{Minutes: 60}) || r.Climbs != 1 || !r.Proved {
		t.Errorf("one above: %+v, %d climbs, proved %v", r.Score, r.Climbs, r.Proved)
	}
}

// Outdoor work before dark outweighs changes, and the attic in the cool
// outweighs minutes.
func TestLimits(t *testing.T) {
	job := Job{
		People: 1, Start: 900,
		Places: []Place{{Name: "attic", Climb: true, Arrive: 1}, {Name: "out", Arrive: 1}},
		Tasks: []Task{
			{ID: "attic 1", Place: "attic", Minutes: 60, Hands: 1},
			{ID: "out 1", Place: "out", Minutes: 30, Hands: 1, NotAfter: 990, Needs: []string{"attic 1"}},
			{ID: "attic 2", Place: "attic", Minutes: 60, Hands: 1},
		},
	}
	r := mustSolve(t, job)
	if r.Score != (Score{Late: 1, Changes: 2, Minutes: 152}) || !r.Proved {
		t.Errorf("%+v, proved %v", r.Score, r.Proved)
	}
	if diff := cmp.Diff([]Broken{{"out 1", 990, 991, 1}}, r.Broken); diff != "" {
		t.Error(diff)
	}
	job.Tasks[1].NotAfter = 1060 // then there is time for both in the attic
	if r := mustSolve(t, job); r.Score != (Score{Changes: 1, Minutes: 151}) {
		t.Errorf("%+v", r.Score)
	}
	job.Tasks[1].Needs, job.Tasks[1].NotAfter = nil, 0
	job.Ways = []Way{{"out", "attic", 9}}
	job.Tasks[0].PreferBefore, job.Tasks[2].PreferBefore = 0, 970
	if r := mustSolve(t, job); r.Score != (Score{Changes: 1, Minutes: 151}) || r.Visits[0].Place != "attic" {
		t.Errorf("%+v", r.Plan)
	}
}

func TestErrors(t *testing.T) {
	task := func(id string, needs ...string) Task {
		return Task{ID: id, Place: "attic", Minutes: 1, Hands: 1, Needs: needs}
	}
	good := Job{People: 1, Places: []Place{{Name: "attic"}}}
	for _, c := range []struct {
		name   string
		change func(*Job)
		want   []string
	}{
		{"ring", func(j *Job) {
			j.Tasks = []Task{task("a", "d"), task("b", "c"), task("c", "d", "e"), task("d", "b"), task("e")}
		}, []string{"in a ring: b, c, d, b"}},
		{"itself", func(j *Job) { j.Tasks = []Task{task("z", "z")} }, []string{"in a ring: z, z"}},
		{"unknown", func(j *Job) { j.Tasks = []Task{task("a", "x"), task("b", "y")} }, []string{
			`task "a" needs "x", which is no task`, `task "b" needs "y", which is no task`,
		}},
		{"twice", func(j *Job) { j.Tasks = []Task{task("a"), task("a")} }, []string{`task "a" is given twice`}},
		{"place", func(j *Job) { j.Tasks = []Task{{ID: "a", Place: "moon", Hands: 1}} }, []string{`no place "moon"`}},
		{"hands", func(j *Job) { j.Tasks = []Task{{ID: "a", Place: "attic", Hands: 3}} }, []string{"hands is 3"}},
		{"helper", func(j *Job) { j.Tasks = []Task{{ID: "a", Place: "attic", Hands: 1, Helper: "attic"}} }, []string{`helper at "attic"`}},
		{"alone", func(j *Job) { j.Tasks = []Task{{ID: "a", Place: "attic", Hands: 2}} }, []string{"alone percent is 0"}},
		{"minutes", func(j *Job) { j.Tasks = []Task{{ID: "a", Place: "attic", Hands: 1, Minutes: -1}} }, []string{"-1 minutes"}},
		{"clock", func(j *Job) { j.Tasks = []Task{{ID: "a", Place: "attic", Hands: 1, NotAfter: -1}} }, []string{"clock limit"}},
		{"people", func(j *Job) { j.People = 3 }, []string{"people is 3"}},
		{"start", func(j *Job) { j.Start = -1 }, []string{"start is minute -1"}},
		{"steps", func(j *Job) { j.Steps = -1 }, []string{"steps is -1"}},
		{"places", func(j *Job) { j.Places = append(j.Places, Place{Name: "attic", Arrive: -1}) }, []string{
			`place "attic" is given twice`, "-1 minutes to arrive",
		}},
		{"ways", func(j *Job) { j.Ways = []Way{{"attic", "moon", 1}, {"x", "attic", -1}, {"x", "attic", 1}} }, []string{
			`to "moon": no such`, `from "x" to "attic": no such`, "-1 minutes", "given twice",
		}},
		{"baseline", func(j *Job) {
			j.Tasks = []Task{task("a")}
			j.Baseline = [][]string{{"a", "q"}, {"a"}}
		}, []string{`"q", which is no task`, `has "a" twice`}},
		{"many", func(j *Job) {
			j.Tasks, j.Places = make([]Task, MaxTasks+1), make([]Place, MaxPlaces+1)
		}, []string{"1025 tasks", "65 places"}},
	} {
		job := good
		job.Places = slices.Clone(good.Places)
		c.change(&job)
		_, err := Solve(job)
		for _, want := range c.want {
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v, want %q", c.name, err, want)
			}
		}
		var ring *CycleError
		if errors.As(err, &ring) != strings.Contains(c.want[0], "ring") {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if r := mustSolve(t, good); !r.Proved || len(r.Visits) != 0 {
		t.Errorf("nothing to do: %+v", r)
	}
	good.People = 2
	if r := mustSolve(t, good); !r.Proved || len(r.Visits) != 0 {
		t.Errorf("nothing to do for two: %+v", r)
	}
}

// With two places doing all that can be done and then changing is optimal from
// one of the two starts (an exchange argument), which is easy to do apart.
func TestTwoPlacesAgainstAlternating(t *testing.T) {
	for seed := range 60 {
		r := rand.New(rand.NewPCG(uint64(seed), 3))
		job := randomJob(r, shape{tasks: 20 + r.IntN(60), places: 2, people: 1})
		want := min(alternate(job, 0), alternate(job, 1))
		if got := mustSolve(t, job); got.Changes != want || !got.Proved {
			t.Fatalf("seed %d: %d changes, proved %v, want %d", seed, got.Changes, got.Proved, want)
		}
	}
}

func alternate(job Job, at int) int {
	done := make(map[string]bool)
	for changes := 0; ; changes++ {
		for _, t := range job.Tasks { // needs come first in these jobs
			ready := t.Place == job.Places[at].Name
			for _, n := range t.Needs {
				ready = ready && done[n]
			}
			if ready {
				done[t.ID] = true
			}
		}
		if len(done) == len(job.Tasks) {
			return changes
		}
		at = 1 - at
	}
}

// Chains through places are words, and the fewest visits spell their shortest
// common supersequence. For all permutations of n letters its length is known:
// 1, 3, 7, 12, 19 (Newey, "Notes on a problem involving permutations as
// subsequences", Stanford CS-TR-73-340, 1973; OEIS A062714).
func TestSupersequences(t *testing.T) {
	words := func(n int) []string {
		var all []string
		var grow func(word string)
		grow = func(word string) {
			if len(word) == n {
				all = append(all, word)
				return
			}
			for c := range n {
				if l := string(rune('a' + c)); !strings.Contains(word, l) {
					grow(word + l)
				}
			}
		}
		grow("")
		return all
	}
	for n, want := range map[int]int{2: 3, 3: 7, 4: 12} {
		job := Job{People: 1}
		for c := range n {
			job.Places = append(job.Places, Place{Name: string(rune('a' + c)), Arrive: 1})
		}
		for _, w := range words(n) {
			for i := range w {
				task := Task{ID: w[:i+1] + " of " + w, Place: w[i : i+1], Hands: 1}
				if i > 0 {
					task.Needs = []string{w[:i] + " of " + w}
				}
				job.Tasks = append(job.Tasks, task)
			}
		}
		if r := mustSolve(t, job); len(r.Visits) != want || !r.Proved {
			t.Errorf("%d letters: %d visits, proved %v, want %d", n, len(r.Visits), r.Proved, want)
		}
	}
}

func TestProperties(t *testing.T) {
	for seed := range 50 {
		r := rand.New(rand.NewPCG(uint64(seed), 11))
		people := 1 + r.IntN(2)
		job := randomJob(r, shape{tasks: 5 + r.IntN(12), places: 1 + r.IntN(6), people: people, ways: seed%3 == 0, limits: seed%4 == 0})
		job.Steps = 8_000
		for _, task := range job.Tasks {
			job.Baseline = append(job.Baseline, []string{task.ID})
		}
		got := mustSolve(t, job)
		checkPlan(t, job, *got.Baseline)
		if got.Baseline.Score.Compare(got.Score) < 0 {
			t.Fatalf("seed %d: worse than the baseline", seed)
		}
		checkShuffled(t, r, job, got)
		checkTightened(t, r, job, got)
	}
}

// The order of the input does not matter.
func checkShuffled(t *testing.T, r *rand.Rand, job Job, want Result) {
	t.Helper()
	job.Tasks, job.Places, job.Ways = slices.Clone(job.Tasks), slices.Clone(job.Places), slices.Clone(job.Ways)
	r.Shuffle(len(job.Tasks), func(i, j int) { job.Tasks[i], job.Tasks[j] = job.Tasks[j], job.Tasks[i] })
	r.Shuffle(len(job.Places), func(i, j int) { job.Places[i], job.Places[j] = job.Places[j], job.Places[i] })
	r.Shuffle(len(job.Ways), func(i, j int) { job.Ways[i], job.Ways[j] = job.Ways[j], job.Ways[i] })
	for i := range job.Tasks {
		job.Tasks[i].Needs = slices.Clone(job.Tasks[i].Needs)
		slices.Reverse(job.Tasks[i].Needs)
	}
	if got := mustSolve(t, job); !reflect.DeepEqual(got, want) {
		t.Fatalf("shuffled (-want +got):\n%s", cmp.Diff(want, got))
	}
}

// One more prerequisite never makes the best plan better.
func checkTightened(t *testing.T, r *rand.Rand, job Job, free Result) {
	t.Helper()
	job.Tasks = slices.Clone(job.Tasks)
	i := 1 + r.IntN(len(job.Tasks)-1)
	job.Tasks[i].Needs = append(slices.Clone(job.Tasks[i].Needs), job.Tasks[r.IntN(i)].ID)
	got := mustSolve(t, job)
	if free.Proved && got.Score.Compare(free.Score) < 0 {
		t.Fatalf("better with one more prerequisite: %+v, was %+v", got.Score, free.Score)
	}
	if free.ProvedChanges && got.Late == free.Late && got.Changes < free.Changes {
		t.Fatalf("fewer changes with one more prerequisite: %d, were %d", got.Changes, free.Changes)
	}
}

// The orders that the searches start from are valid by themselves, whatever
// the searches make of them later.
func TestFirstOrders(t *testing.T) {
	for seed := range 150 {
		r := rand.New(rand.NewPCG(uint64(seed), 13))
		job := randomJob(r, shape{tasks: 30, places: 5, people: 1 + seed%2, limits: seed%3 > 0})
		m, err := newModel(&job)
		if err != nil {
			t.Fatal(err)
		}
		tour := m.beamTour(m.outset(), true)
		if m.people == 2 {
			checkPlan(t, job, m.plan(m.pairRun(tour)))
			continue
		}
		checkPlan(t, job, m.plan(m.aloneRuns(tour)))
		checkPlan(t, job, m.plan(m.arrange(m.urgentFirst())))
		checkPlan(t, job, m.plan(m.visit(m.assign(places(tour), m.urgent()))))
	}
}

func places(t *tour) []int {
	var all []int
	for _, s := range t.spots[1:] {
		all = append(all, int(s.at[0]))
	}
	return all
}

// Out of steps, plans are still valid and bounds still hold.
func TestFewSteps(t *testing.T) {
	for seed := range 80 {
		r := rand.New(rand.NewPCG(uint64(seed), 5))
		job := randomJob(r, shape{tasks: 7, places: 4, people: 1 + seed%2, limits: seed%3 == 0})
		best := mustSolve(t, job)
		job.Steps = 1 + r.IntN(60)
		got := mustSolve(t, job)
		if got.Score.Compare(best.Score) < 0 || got.Bound.Compare(best.Score) > 0 {
			t.Fatalf("seed %d: score %+v bound %+v, best %+v", seed, got.Score, got.Bound, best.Score)
		}
	}
}

// Jobs as they are: a house is proved for one person, and for two in the
// changes; each beats drop after drop by far.
func TestHouse(t *testing.T) {
	for _, c := range []struct {
		drops, people int
		limits        bool
		changes       int
	}{
		// One person: rooms and outside twice, closet at both ends, attic once.
		// With four rooms, outside, closet and attic that is 5 + 1 before, 1
		// above, 5 + 1 after: 13 visits, 12 changes.
		{12, 1, false, 12},
		{12, 1, true, 12},
		{4, 1, false, 10}, // no work outside
		{4, 2, false, 8},
	} {
		r := mustSolve(t, houseJob(c.drops, c.people, c.limits))
		if r.Changes != c.changes || !r.Proved || r.Climbs != 1 || r.Baseline.Climbs < c.drops {
			t.Errorf("%+v: %+v, %d climbs, proved %v; baseline %d climbs", c, r.Score, r.Climbs, r.Proved, r.Baseline.Climbs)
		}
	}
}

func TestClockText(t *testing.T) {
	for c, want := range map[Clock]string{0: "00:00", 605: "10:05", 1440: "day 2, 00:00", 1439: "23:59", 8*1440 + 521: "day 9, 08:41", -61: "-01:01"} {
		if c.String() != want {
			t.Errorf("%d is %s, want %s", int(c), c, want)
		}
	}
}

func FuzzSolve(f *testing.F) {
	f.Add(uint64(1), []byte{3, 1, 2, 200, 7})
	f.Add(uint64(9), []byte{12, 2, 6, 5, 9, 255, 0, 1})
	f.Fuzz(func(t *testing.T, seed uint64, data []byte) {
		if len(data) < 3 {
			return
		}
		r := rand.New(rand.NewPCG(seed, 1))
		job := randomJob(r, shape{
			tasks: int(data[0]) % 40, places: 1 + int(data[1])%9, people: 1 + int(data[2])%2,
			limits: seed%2 == 0, ways: seed%3 == 0,
		})
		job.Steps = 3000
		spoil(&job, data[3:])
		got, err := Solve(job)
		if err != nil {
			return
		}
		checkPlan(t, job, got.Plan)
	})
}

// spoil makes some of a job odd or wrong.
func spoil(job *Job, data []byte) {
	for i := 0; i+1 < len(data) && len(job.Tasks) > 0; i += 2 {
		t := &job.Tasks[int(data[i])%len(job.Tasks)]
		v := int(data[i+1])
		switch data[i] % 7 {
		case 0:
			t.Needs = append(slices.Clone(t.Needs), job.Tasks[v%len(job.Tasks)].ID)
		case 1:
			t.Minutes = v * v * v
		case 2:
			t.NotAfter = Clock(v - 10)
		case 3:
			t.Hands = v % 4
		case 4:
			t.Place = job.Places[v%len(job.Places)].Name
		case 5:
			job.AlonePercent = v * 5
		case 6:
			t.ID = job.Tasks[v%len(job.Tasks)].ID
		}
	}
}
