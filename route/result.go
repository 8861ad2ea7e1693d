package route

import (
	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// A Result is everything that was decided for a job.
type Result struct {
	Job      *plan.Job
	Graph    *Graph
	Routes   []Route // in the order of their tags
	Holes    []Hole
	Reused   []Reuse // by place, as holes are
	Bundles  []Bundle
	Cost     Cost
	Findings []Finding  // worst first, then by place in the files
	Cautions []rule.ID  // what is printed on every sheet of this job
	Tails    []CutTotal // cut lengths by kind of cable
	Stopped  bool       // the search was ended early, so that another plan may be found elsewhere
}

// A Route is the way of one drop's cables from the closet to the drop.
type Route struct {
	Drop    int // index in Job.Drops
	Nodes   []int
	Arcs    []int
	Points  []geom.Point3 // corners only, closet first
	Legs    []Leg         // closet first
	Bends   int
	Lengths Lengths
	// Place is where the box, ceiling hole or soffit hole comes, Moved how far
	// that is from where it was wished.
	Place geom.Point3
	Moved measure.Length
	// Alone is the price of the route if it shared nothing, in cost units.
	Alone int64
	// Blocked says why there is no route; the route is then empty.
	Blocked *Blocked
}

// A Leg is a stretch of a route of one kind and heading.
type Leg struct {
	Kind     ArcKind
	Heading  network.Heading
	From, To geom.Point3
	Length   measure.Length
	Hole     int    // index in Result.Holes, -1 if it goes through none of them
	There    string // id of the hole that is there and that it goes through, empty if none
	Zone     Zone   // in a space: the worst along it
	Space    int    // the space it lies in or leads into, -1 if none
}

// InAttic reports whether the leg is worked on from the attic.
func (l *Leg) InAttic() bool {
	return l.Kind == AlongArc || l.Kind == BesideArc || l.Kind == AcrossArc || l.Kind == RodArc
}

// Lengths are the parts of a cable's cut length.
type Lengths struct {
	Developed measure.Length // along the route, square corners
	Closet    measure.Length // service loop at the closet
	Outlet    measure.Length // service loop at the drop
	Trim      measure.Length // for re-termination, both ends together
	Sketch    measure.Length // for the error of the sketch
	Allowance measure.Length // per cent of all above
	Cut       measure.Length // the sum, rounded up
}

// A Blocked is the answer where no allowed route exists: the rules in the way
// on the route that the cheapest change would allow.
type Blocked struct {
	Blocks []Block
	// Price of the changes and of the route together, in cost units.
	Changes, Route int64
	Points         []geom.Point3

	by []latticePoint // where it turns, if nothing stops it
}

// A Bundle is a stretch with the same cables all along.
type Bundle struct {
	Kind   ArcKind
	Space  int // the space it lies in or leads into, -1 if none
	Beyond int // the other space that it leads into, between two of them, else -1
	Points []geom.Point3
	Drops  []int
	Cables int
}

// A TermSum is what one cost term comes to over all routes, shared parts
// counted once.
type TermSum struct {
	Term   price.ID
	Amount int64
}

// A Cost is the price of all routes together, in cost units: millionths of
// the currency's unit.
type Cost struct {
	Total      int64
	LowerBound int64 // no plan costs less
	// Together is what no plan costs less than whose bundles stay together from
	// where cables meet to the closet.
	Together int64
	Proved   bool // Total equals LowerBound
	Terms    []TermSum
}

// A Finding is one thing to know before the work begins.
type Finding struct {
	Rule     rule.ID
	Severity rule.Severity
	Pos      diag.Pos
	Where    string // tag of the drop or id of the hole or thing
	Found    string
	Change   string // what would put it right, empty if nothing is wanted
}

// A CutTotal is how much of one kind of cable is cut.
type CutTotal struct {
	Cable  string
	Cables int
	Length measure.Length
}

// Stops reports whether a finding forbids the work as planned.
func (r *Result) Stops() bool {
	for i := range r.Findings {
		if r.Findings[i].Severity == rule.Stop {
			return true
		}
	}
	return false
}
