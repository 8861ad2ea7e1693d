package plan

import (
	"fmt"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// A Crew is who does the work, from when, and how long on a day.
type Crew struct {
	People int // 1 or 2
	Start  int // minutes after midnight
	// Day is how many minutes a day of work has where a job takes several, the
	// first arrival and the way between places in it, breaks not.
	Day int
	// OneDay is up to how many minutes a job is still done on one day: as Day,
	// unless nothing is said about it.
	OneDay int
}

// defaultCrew works where a job names none (common practice, no source): eight
// hours a day, but a job that can be ended in twelve is ended, since a second
// day costs another way there and another setting up.
var defaultCrew = Crew{People: 1, Start: 8 * 60, Day: 8 * 60, OneDay: 12 * 60}

// dayWords say how long a day is: "8 h, or up to 12 h where that ends the job".
func (c Crew) dayWords() string {
	words := hourWords(c.Day)
	if c.OneDay > c.Day {
		words += ", or up to " + hourWords(c.OneDay) + " where that ends the job"
	}
	return words
}

func hourWords(minutes int) string {
	if rest := minutes % 60; rest > 0 {
		return fmt.Sprintf("%d h %d min", minutes/60, rest)
	}
	return fmt.Sprintf("%d h", minutes/60)
}

// workingDays are lengths of a day of work, kept in minutes (common practice,
// no source).
var workingDays = quantity{"the length of a day of work", []unit{{"h", 60, 0}, {"min", 1, 0}}, "2h", "16h"}

// A Switch feeds the devices that are powered over their cables.
type Switch struct {
	Pos diag.Pos
	// Watts is the budget for all of its ports together, in thousandths of a
	// watt, zero if it is not known.
	Watts int64
	// Volts is what it puts on a cable, in thousandths of a volt, zero if it
	// is not known.
	Volts int64
}

// Bounds of a switch. IEEE 802.3 has 44 V to 57 V at the feeding end, as quoted
// by others; a budget above 5 kW is no switch's (common practice, no source).
const (
	leastVolts = 44
	mostVolts  = 57
	mostBudget = 5000
)

// crew reads [crew].
func (l *jobLoader) crew(root *source.Table) {
	c := &l.job.Crew
	if t, ok := root.Table("crew", source.Optional); ok {
		c.People = intOr(t, "people", 1, 2, c.People)
		c.Start = clockTime(t, "start", c.Start)
		if day, ok := workingDays.read(t, "day"); ok {
			c.Day, c.OneDay = int(day), int(day)
		}
	}
}

// feed reads [switch].
func (l *jobLoader) feed(root *source.Table) {
	t, ok := root.Table("switch", source.Optional)
	if !ok {
		return
	}
	s := &l.job.Switch
	s.Pos = t.Pos()
	if w, ok := t.Number("watts", source.Optional, 1, mostBudget); ok {
		s.Watts = thousandths(w)
	}
	if v, ok := t.Number("volts", source.Optional, leastVolts, mostVolts); ok {
		s.Volts = thousandths(v)
	}
}
