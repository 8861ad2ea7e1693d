package order

import (
	"fmt"
	"math/rand/v2"
)

// A shape is what a random job is made from.
type shape struct {
	tasks, places, people int
	limits                bool // clock limits
	ways                  bool // uneven walks
}

// randomJob makes a job whose prerequisites have no ring.
func randomJob(r *rand.Rand, s shape) Job {
	job := Job{People: s.people, Start: 480, AlonePercent: 150}
	for p := range s.places {
		job.Places = append(job.Places, Place{Name: fmt.Sprintf("p%d", p), Climb: p == 0, Arrive: r.IntN(8)})
	}
	if s.ways {
		job.From = "van"
		for a := range s.places {
			for b := range s.places {
				if a != b && r.IntN(2) == 0 {
					job.Ways = append(job.Ways, Way{fmt.Sprintf("p%d", a), fmt.Sprintf("p%d", b), r.IntN(15)})
				}
			}
		}
		job.Ways = append(job.Ways, Way{"van", "p0", r.IntN(20)})
	}
	for i := range s.tasks {
		t := Task{ID: fmt.Sprintf("t%02d", i), Place: fmt.Sprintf("p%d", r.IntN(s.places)), Minutes: r.IntN(30), Hands: 1}
		if r.IntN(5) == 0 {
			t.Hands = 2
			if r.IntN(2) == 0 {
				t.Helper = fmt.Sprintf("p%d", r.IntN(s.places))
			}
		}
		for range r.IntN(3) {
			if i > 0 {
				t.Needs = append(t.Needs, fmt.Sprintf("t%02d", r.IntN(i)))
			}
		}
		if s.limits && r.IntN(3) == 0 {
			t.NotAfter = Clock(480 + r.IntN(20*s.tasks))
		}
		if s.limits && r.IntN(3) == 0 {
			t.PreferBefore = Clock(480 + r.IntN(20*s.tasks))
		}
		job.Tasks = append(job.Tasks, t)
	}
	return job
}

// houseJob is made as real jobs are: a trunk hole that all drops need, then for
// each drop a box, a hole in the attic, a drop, a pull for two, two ends.
func houseJob(drops int, people int, limits bool) Job {
	job := Job{People: people, Start: 480, AlonePercent: 160, From: "van", Places: []Place{
		{Name: "attic", Climb: true, Arrive: 6},
		{Name: "closet", Arrive: 1},
		{Name: "outside", Arrive: 4},
		{Name: "bedroom", Arrive: 1},
		{Name: "kitchen", Arrive: 1},
		{Name: "living", Arrive: 1},
		{Name: "office", Arrive: 1},
	}}
	rooms := []string{"bedroom", "kitchen", "living", "office"}
	add := func(id, place string, minutes, hands int, needs ...string) *Task {
		job.Tasks = append(job.Tasks, Task{ID: id, Place: place, Minutes: minutes, Hands: hands, Needs: needs})
		return &job.Tasks[len(job.Tasks)-1]
	}
	add("trunk-open", "closet", 20, 1)
	add("trunk-hole", "attic", 15, 1, "trunk-open")
	for d := range drops {
		room := rooms[d%len(rooms)]
		if d%5 == 4 {
			room = "outside"
		}
		n := fmt.Sprintf("d%02d-", d)
		group := []string{n + "box", n + "bore", n + "pull", n + "end", n + "test"}
		box := add(n+"box", room, 10, 1)
		bore := add(n+"bore", "attic", 8, 1, n+"box")
		add(n+"pull", "attic", 10, 2, n+"bore", "trunk-hole").Helper = "closet"
		end := add(n+"end", room, 10, 1, n+"pull")
		add(n+"test", "closet", 5, 1, n+"end")
		if limits {
			bore.PreferBefore = 660
			if room == "outside" {
				box.NotAfter, end.NotAfter = 1010, 1010
			}
		}
		job.Baseline = append(job.Baseline, group)
	}
	return job
}
