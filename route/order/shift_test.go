package order

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

// shifted is a random job that takes several days of four hours.
func shifted(r *rand.Rand, seed int) Job {
	people := 1 + r.IntN(2)
	job := randomJob(r, shape{tasks: 20 + r.IntN(15), places: 2 + r.IntN(4), people: people, ways: seed%3 == 0})
	for i := range job.Tasks {
		job.Tasks[i].Minutes += r.IntN(60)
	}
	job.Steps = 4_000
	job.Shift = &Shift{Start: 480, Minutes: 240, From: "home"}
	return job
}

// On each day work begins after the start with the way there, and no task is
// over the end; people do one thing at a time, after what it needs.
func TestShifts(t *testing.T) {
	for seed := range 40 {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		job := shifted(r, seed)
		// Half of the places are in the open, where work ends at ten.
		for i := range job.Tasks {
			if x := &job.Tasks[i]; x.Place == "p1" && x.Helper == "" && x.Minutes < 60 {
				x.NotAfter = 600
			}
		}
		got, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		arrive := map[string]int{}
		for _, p := range job.Places {
			arrive[p.Name] = p.Arrive
		}
		if got.Minutes < 24*60 || got.Late != 0 || len(got.Broken) > 0 {
			t.Fatalf("seed %d: %+v, broken %v", seed, got.Score, got.Broken)
		}
		end, seen := map[string]Clock{}, map[string]int{}
		last := map[int]Visit{}
		for _, v := range got.Visits {
			day := Clock((v.Arrive.Day() - 1) * 24 * 60)
			if v.Leave > day+480+240 || v.Arrive < day+480 {
				t.Fatalf("seed %d: visit %+v is not on one day", seed, v)
			}
			if o, ok := last[v.Person]; ok && o.Leave.Day() < v.Arrive.Day() && v.Arrive < day+480+Clock(arrive[v.Place]) {
				t.Fatalf("seed %d: at %s at %s in the morning", seed, v.Place, v.Arrive)
			} else if ok && (o.Leave > v.Arrive || o.Place == v.Place && o.Leave.Day() == v.Arrive.Day()) {
				t.Fatalf("seed %d: %+v after %+v", seed, v, o)
			}
			last[v.Person] = v
			now := v.Arrive
			for _, w := range v.Work {
				if w.Start < now || w.End > v.Leave {
					t.Fatalf("seed %d: %+v in %+v", seed, w, v)
				}
				now, end[w.ID] = w.End, w.End
				seen[w.ID]++
			}
		}
		for _, x := range job.Tasks {
			i := slices.IndexFunc(got.Visits, func(v Visit) bool {
				return slices.ContainsFunc(v.Work, func(w Work) bool { return w.ID == x.ID })
			})
			if i < 0 || seen[x.ID] > x.Hands {
				t.Fatalf("seed %d: %s is done %d times", seed, x.ID, seen[x.ID])
			}
			for _, w := range got.Visits[i].Work {
				for _, n := range x.Needs {
					if w.ID == x.ID && end[n] > w.Start {
						t.Fatalf("seed %d: %s before %s", seed, x.ID, n)
					}
				}
				if day := Clock((w.End.Day() - 1) * 24 * 60); w.ID == x.ID && x.NotAfter > 0 && w.End-day > x.NotAfter {
					t.Fatalf("seed %d: %s ends at %s", seed, x.ID, w.End)
				}
			}
		}
		slices.Reverse(job.Tasks)
		slices.Reverse(job.Places)
		if again, err := Solve(job); err != nil || !reflect.DeepEqual(again, got) {
			t.Fatalf("seed %d: another order of the input gives %+v, %v", seed, again, err)
		}
	}
}

// By hand: three hours in the attic and two in a room, in days of four hours of
// which the way to the attic takes ten minutes.
func TestTwoShifts(t *testing.T) {
	job := Job{
		People: 1, Start: 480, From: "van", Shift: &Shift{Start: 480, Minutes: 240, From: "van"},
		Places: []Place{{"attic", true, 10}, {"room", false, 1}},
		Tasks: []Task{
			{ID: "a", Place: "attic", Minutes: 180, Hands: 1},
			{ID: "b", Place: "attic", Minutes: 60, Hands: 1, Needs: []string{"a"}},
			{ID: "c", Place: "room", Minutes: 60, Hands: 1, Needs: []string{"b"}},
		},
	}
	got, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	want := []Visit{
		{Place: "attic", Climb: true, Arrive: 490, Leave: 670, Work: []Work{{ID: "a", Start: 490, End: 670}}},
		{Place: "attic", Climb: true, Arrive: 1930, Leave: 1990, Work: []Work{{ID: "b", Start: 1930, End: 1990}}},
		{Place: "room", Arrive: 1991, Leave: 2051, Work: []Work{{ID: "c", Start: 1991, End: 2051}}},
	}
	if !slices.EqualFunc(got.Visits, want, func(a, b Visit) bool {
		return a.Place == b.Place && a.Climb == b.Climb && a.Arrive == b.Arrive && a.Leave == b.Leave && slices.Equal(a.Work, b.Work)
	}) || got.Changes != 1 || got.Climbs != 2 {
		t.Errorf("%+v", got.Plan)
	}
	job.Tasks[0].Minutes = 231
	if _, err := Solve(job); err == nil {
		t.Error("231 minutes and the way fit into 240")
	}
	job.Shift.Minutes = 0
	if _, err := Solve(job); err == nil {
		t.Error("a day has no minutes")
	}
}
