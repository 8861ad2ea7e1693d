package order

import (
	"errors"
	"fmt"
)

// addShift takes over the working day, and finds tasks that no day is long
// enough for.
func (m *model) addShift(job *Job) error {
	if job.Shift == nil {
		return nil
	}
	m.shift, m.morning = job.Shift.Minutes, int(job.Shift.Start)
	var all []error
	for t, id := range m.ids {
		if n := m.fromHome(t) + m.minutes[t]; n > m.shift {
			all = append(all, fmt.Errorf("order: task %q takes %d minutes with the way to it, a working day has %d", id, n, m.shift))
		}
	}
	return errors.Join(all...)
}

// fromHome is how long it takes in the morning until all who are in a task are
// there.
func (m *model) fromHome(t int) int {
	if m.helper[t] >= 0 {
		return max(m.home[m.place[t]], m.home[m.helper[t]])
	}
	return m.home[m.place[t]]
}

// dayOf counts working days from 0.
func (m *model) dayOf(minute int) int { return (minute - m.morning) / dayMinutes }

// ofDay is a minute as one after the midnight that begins its working day.
func (m *model) ofDay(minute int) int {
	if m.shift == 0 {
		return minute
	}
	return minute - m.dayOf(minute)*dayMinutes
}

// onShift is when a task begins that could begin at ready, and whose people are
// free since then at the earliest: on the first day on which it can be ended,
// and ended by its limit on the clock if any day is long enough for that.
func (m *model) onShift(t, ready, since int) int {
	if m.shift == 0 {
		return ready
	}
	first, end := m.fromHome(t), m.morning+m.shift
	if m.morning+first+m.minutes[t] <= m.due[t] {
		end = min(end, m.due[t])
	}
	for day := m.dayOf(ready); ; day++ {
		night := day * dayMinutes
		begin := max(ready, m.morning+night)
		if m.dayOf(since) < day {
			begin = max(begin, m.morning+night+first)
		}
		if begin+m.minutes[t] <= end+night {
			return begin
		}
	}
}

// there is when a person is at a place for a task that begins then: in the
// morning of that day, if the person was free on a day before.
func (m *model) there(arrive, free, begin, place int) int {
	if m.shift == 0 || m.dayOf(free) == m.dayOf(begin) {
		return arrive
	}
	return m.morning + m.dayOf(begin)*dayMinutes + m.home[place]
}
