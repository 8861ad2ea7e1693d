package tasks

import (
	"fmt"
	"strings"

	"topplate/route/order"
)

const dayMinutes = 24 * 60

// spread makes clock that of a job of several days, which would take so many
// minutes at a stretch. The sunset of all days is the earliest of them: each
// day of a job follows the one before.
func (s *site) spread(c *clock, w *Work, minutes int) {
	c.shift = &order.Shift{Start: c.start % dayMinutes, Minutes: s.job.Crew.Day, From: van}
	c.most = s.longestWay()
	date, ok := s.date()
	if !ok || c.sunset == 0 {
		return
	}
	// A day loses what no task fits in, so there may be more of them.
	for range 2 * minutes / s.job.Crew.Day {
		date = date.AddDate(0, 0, 1)
		if d, err := s.daylight(date); err == nil && d.Sets {
			c.sunset = min(c.sunset, order.Clock(max(d.Sunset.Minute(), 1)))
		}
	}
	w.Sunset = c.sunset
}

// longestWay is the longest way in the morning to a place.
func (s *site) longestWay() int {
	most := 0
	for _, p := range s.titles {
		most = max(most, arrival(p)+s.storeys(s.street(), p.Level)*int(value(stairs)/1000))
	}
	return most
}

// partMark stands between the ID of a task and the number of a part of it. No
// tag has it.
const partMark = "\n"

// parts are a task as package order takes it: one, or for a task that is longer
// than a day of work several, one after the other. The last has its ID.
func (c clock) parts(t *Task) []order.Task {
	one := c.task(t)
	if c.shift == nil || one.Minutes <= c.shift.Minutes-c.most {
		return []order.Task{one}
	}
	room := c.shift.Minutes - c.most
	n := (one.Minutes + room - 1) / room
	var out []order.Task
	for i := range n {
		part := one
		part.Minutes = min(room, one.Minutes-i*room)
		if i < n-1 {
			part.ID = fmt.Sprintf("%s%s%d", one.ID, partMark, i+1)
		}
		if i > 0 {
			part.Needs = []string{out[i-1].ID}
		}
		out = append(out, part)
	}
	return out
}

// whole is the ID of the task of a part.
func whole(id string) string {
	before, _, _ := strings.Cut(id, partMark)
	return before
}

// partWords say that a task goes on the next day.
func partWords(id string) string {
	if whole(id) == id {
		return ""
	}
	return " To be gone on with the next day."
}
