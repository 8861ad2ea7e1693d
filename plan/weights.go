package plan

import "topplate/plan/source"

// Weights say how much more than its price a kind of work counts when the plan
// is chosen, in thousandths. They never change what a plan is said to cost.
type Weights struct {
	Openings int64 // in finished surfaces
	Crawling int64 // on hands and knees and at arm's length
	Cable    int64 // the cable itself and pulling it
}

// evenWeight leaves a price as it is.
const evenWeight = 1000

// EvenWeights leave every price as it is.
var EvenWeights = Weights{evenWeight, evenWeight, evenWeight}

// Bounds of a weight (common practice, no source): beyond them a price says
// what is meant more plainly.
const (
	leastWeight = 0.1
	mostWeight  = 10
)

// weights reads [weights].
func (l *jobLoader) weights(root *source.Table) {
	w := &l.job.Weights
	t, ok := root.Table("weights", source.Optional)
	if !ok {
		return
	}
	for _, k := range []struct {
		key string
		to  *int64
	}{{"openings", &w.Openings}, {"crawling", &w.Crawling}, {"cable", &w.Cable}} {
		if x, ok := t.Number(k.key, source.Optional, leastWeight, mostWeight); ok {
			*k.to = thousandths(x)
		}
	}
}
