package order

import "fmt"

// A Clock is a time in minutes after the midnight that begins the first day of
// work.
type Clock int

// dayMinutes is how long a day is, with its night.
const dayMinutes = 24 * 60

// Day counts days from 1, the first day of work.
func (c Clock) Day() int { return max(int(c), 0)/dayMinutes + 1 }

// Hours is the time of the day as hh:mm.
func (c Clock) Hours() string {
	if c < 0 {
		return fmt.Sprintf("-%02d:%02d", int(-c)/60, int(-c)%60)
	}
	return fmt.Sprintf("%02d:%02d", int(c)%dayMinutes/60, int(c)%60)
}

// String is the clock as hh:mm, after the first day with the day before it:
// "day 2, 08:41".
func (c Clock) String() string {
	if d := c.Day(); d > 1 {
		return fmt.Sprintf("day %d, %s", d, c.Hours())
	}
	return c.Hours()
}

// Span is from one clock to another: "08:41 to 13:56", "day 2, 08:41 to 13:56".
func Span(from, to Clock) string {
	if from.Day() == to.Day() {
		return from.String() + " to " + to.Hours()
	}
	return from.String() + " to " + to.String()
}

// A Place is where tasks are done.
type Place struct {
	Name   string
	Climb  bool // an arrival here is a climb
	Arrive int  // minutes to get here from any other place, 0 to MaxMinutes
}

// A Way replaces the minutes between two places, in one direction. From may
// also be Job.From.
type Way struct {
	From, To string // From may also be Shift.From
	Minutes  int    // 0 to MaxMinutes
}

// A Task is a piece of work that is done without a break.
type Task struct {
	ID      string
	Place   string
	Needs   []string // IDs of tasks that must be finished before
	Minutes int      // 0 to MaxMinutes, with the hands that it asks for
	Hands   int      // 1 or 2
	// Helper is the place of the second person in a task for two hands, as
	// when one feeds and one pulls. Empty: the same place.
	Helper string
	// NotAfter is the clock at which the task must be finished, as sunset for
	// work outside. 0: no limit. In a job of several days it is a time of every
	// day, and so is PreferBefore.
	NotAfter Clock
	// PreferBefore is the clock at which the task is better finished, as late
	// morning for work in a hot attic. 0: no wish.
	PreferBefore Clock
}

// Limits of what Solve takes.
const (
	MaxTasks   = 1024
	MaxPlaces  = 64
	MaxMinutes = 100_000
	MaxStart   = 10_000_000 // of a job of several days
)

// DefaultSteps is the limit on search steps where Job.Steps is 0. A step is
// one try of what could come next. It keeps a house of 60 tasks within a few
// seconds and the largest job within about a quarter of a minute; moments that
// wait to be tried take up to about 150 MB.
const DefaultSteps = 300_000

// A Shift is the working day of a job of several days. On each day work begins
// at Start and ends within Minutes. No task goes on overnight. In the morning
// people come from From.
type Shift struct {
	Start   Clock // 0 to 23:59
	Minutes int   // 1 to 24 hours
	From    string
}

// A Job is what Solve is given. It is not changed.
type Job struct {
	Tasks  []Task
	Places []Place
	Ways   []Way
	People int    // 1 or 2
	Start  Clock  // 0 to MaxMinutes; with a Shift, from its Start up to MaxStart
	Shift  *Shift // nil: work goes on until all is done
	From   string // a name for where people start, as a van; empty: at their first task
	// AlonePercent is the time that one person needs for a task for two hands,
	// in percent of the task's minutes, 100 to 1000; walking to and fro is in
	// it. Used, and needed, only where there is such a task and one person.
	AlonePercent int
	// Baseline is the order the job would be done in otherwise, as one list of
	// IDs for each drop, drop after drop. A task that needs others has them
	// done first; tasks that are in no list come last. Empty: no comparison.
	Baseline [][]string
	Steps    int // limit on the steps of each search; 0: DefaultSteps
}

// A Score says how good a plan is. Scores compare field by field.
type Score struct {
	Late    int // minutes past NotAfter, summed over tasks
	Changes int // changes of place, summed over people
	Past    int // minutes past PreferBefore, summed over tasks
	Minutes int // from Job.Start to the end of the last task, nights included
}

// Compare is negative where s is better than o, 0 where they are equal.
func (s Score) Compare(o Score) int {
	for _, d := range [...]int{s.Late - o.Late, s.Changes - o.Changes, s.Past - o.Past, s.Minutes - o.Minutes} {
		if d != 0 {
			return d
		}
	}
	return 0
}

// A Work is one task as one person does it.
type Work struct {
	ID         string
	Start, End Clock
	Together   bool // both people are in it; it stands in a visit of each
	Alone      bool // a task for two hands that one person does, in longer time
}

// A Visit is a stay of one person at one place on one day.
type Visit struct {
	Person int // 0 or 1
	Place  string
	Climb  bool
	Arrive Clock // work may begin later, when a prerequisite is waited for
	Leave  Clock // the end of the last task here
	Work   []Work
}

// A Broken is a task that ends after its NotAfter.
type Broken struct {
	ID            string
	NotAfter, End Clock
	Minutes       int // by how much
}

// A Plan is an order of work with its clock times.
type Plan struct {
	Score
	Climbs int
	Visits []Visit  // by arrival, then person
	Broken []Broken // by ID
}

// A Result is the best plan that was found.
type Result struct {
	Plan
	// Proved is set when no order is better than the plan; ProvedChanges when
	// none has less Late, nor as much Late and fewer Changes.
	Proved, ProvedChanges bool
	// Bound is a score that no order can beat. It equals the plan's score
	// where that is proved.
	Bound Score
	// Baseline is the plan for Job.Baseline, nil where there is none.
	Baseline *Plan
	// Steps is how many search steps were taken.
	Steps int
}
