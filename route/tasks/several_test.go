package tasks

import (
	"fmt"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/route"
)

// inDays is the order of work of a house in short days.
func inDays(t *testing.T, res *route.Result, people, day int) (*route.Result, *Work) {
	t.Helper()
	own := changed(res, func(job *plan.Job, _ *plan.House) {
		job.Crew.People, job.Crew.Day, job.Crew.OneDay = people, day, day
	})
	w, err := within(own, quick)
	if err != nil {
		t.Fatal(err)
	}
	return own, w
}

// A job of several days is done like one of a day, on each day within its
// hours, outside before its sunset.
func TestSeveralDays(t *testing.T) {
	for _, dir := range []string{corner, long} {
		for people := 1; people <= 2; people++ {
			for _, day := range []int{240, 300, 480} {
				own, w := inDays(t, solved(t, dir), people, day)
				replayed(t, fmt.Sprintf("%s by %d in days of %d", dir, people, day), own, w)
				one, err := within(changed(own, func(job *plan.Job, _ *plan.House) { job.Crew.OneDay = 24 * 60 }), quick)
				if err != nil {
					t.Fatal(err)
				}
				if least := (one.Minutes + day - 1) / day; w.Days < least || w.Days > least+1 || w.Late > 0 {
					t.Errorf("%s: %d minutes are spread over %d days of %d, %d late", dir, one.Minutes, w.Days, day, w.Late)
				}
				for i := range w.Visits {
					if v := &w.Visits[i]; v.Place.Key == outside && w.Sunset > 0 && int(v.Leave)%dayMinutes > int(w.Sunset) {
						t.Errorf("%s: outside until %s", dir, v.Leave)
					}
				}
				notes := noted(w, LongDay)
				if w.Days > 1 && (len(notes) != 1 || !strings.Contains(notes[0].Found, fmt.Sprintf("ends at day %d, ", w.Days))) {
					t.Errorf("%s: %+v", dir, notes)
				}
			}
		}
	}
}

// A job that fits in a day is not changed by days.
func TestOneDayStaysOne(t *testing.T) {
	_, w := inDays(t, solved(t, corner), 1, 24*60)
	same := crewed(t, solved(t, corner), 1, quick)
	if w.Days != 1 || w.Figures != same.Figures || visits(w) != visits(same) {
		t.Errorf("%+v, was %+v", w.Figures, same.Figures)
	}
}

// A task that is longer than a day is done in parts, each on a day of its own;
// what needs it waits for the last.
func TestTaskLongerThanADay(t *testing.T) {
	own := changed(solved(t, corner), func(job *plan.Job, _ *plan.House) {
		job.Crew.Day, job.Crew.OneDay = 15, 15
	})
	w, err := within(own, quick)
	if err != nil {
		t.Fatal(err)
	}
	minutes, parts, over := map[*Task]int{}, 0, map[*Task]bool{}
	for i := range w.Visits {
		v := &w.Visits[i]
		if v.Leave-v.Arrive > 15 {
			t.Errorf("visit %d lasts from %s to %s", v.Number, v.Arrive, v.Leave)
		}
		for j := range v.Steps {
			s := &v.Steps[j]
			minutes[s.Task] += int(s.End - s.Start)
			more := strings.Contains(s.Words, "next day")
			if more {
				parts++
			}
			if over[s.Task] {
				t.Errorf("step %s of %s comes after its last part", s.Number, s.Task.ID)
			}
			over[s.Task] = !more
		}
	}
	for _, x := range w.Tasks {
		if minutes[x] != x.Minutes {
			t.Errorf("%s takes %d minutes, and %d in parts", x.ID, x.Minutes, minutes[x])
		}
	}
	if parts == 0 {
		t.Error("no task is longer than 15 minutes")
	}
}
