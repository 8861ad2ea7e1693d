package route

import (
	"sync/atomic"

	"topplate/plan"
)

// A Planner plans jobs. The zero Planner searches until it is done or its
// count of steps is, so that the same job gives the same plan on any machine.
type Planner struct {
	// Stop, if not nil, is asked now and then whether to end the search and take
	// the best plan so far, with what is known of its bound; it may be asked by
	// several goroutines at once. Once true it stays so. A plan that was stopped depends on the machine, and its Result says so.
	Stop func() bool
}

// Solve finds the cheapest allowed routes of a job's drops to the closet, all
// together, and everything that follows from the routes. What is paid once is
// counted once where routes share it; Cost says whether the plan is proved
// cheapest.
func Solve(job *plan.Job) (*Result, error) { return Planner{}.Solve(job) }

// Preferred finds the plan that is cheapest once the job's weights are put on
// its prices. What it says of cost is at the job's own prices, and how far
// they are above the cheapest plan at most.
func Preferred(job *plan.Job) (*Result, error) { return Planner{}.Preferred(job) }

// Choices returns up to three plans for a job that really differ, and of which
// none is better than another in every way: the cheapest, the one with the
// fewest openings in finished surfaces, and the one with the least crawling, as
// far as either is worth its price; see surcharges. A single plan is the best
// in all three. The weights of the job have no effect. It takes three times as
// long as Solve.
func Choices(job *plan.Job) ([]Choice, error) { return Planner{}.Choices(job) }

// stopped is Stop, with a note of whether it said so.
func (p Planner) stopped(said *atomic.Bool) func() bool {
	if p.Stop == nil {
		return nil
	}
	return func() bool {
		if !said.Load() && p.Stop() {
			said.Store(true)
		}
		return said.Load()
	}
}
