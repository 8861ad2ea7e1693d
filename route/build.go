package route

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/route/network"
)

// Build makes the physical graph of a job from the geometry of its house
// alone. It takes time in proportion to the lattice: the product of the
// numbers of lines on both axes, or for a large building the number of places
// that its lines are laid about, and its floor area.
//
// Channels in sight are the last resort: where a job allows them they are in the
// graph for the drops alone that no hidden way leads to.
func Build(job *plan.Job) (*Graph, error) { return buildBy(job, nil) }

// buildBy makes the graph of a job with lattice lines through some crossings
// besides.
func buildBy(job *plan.Job, by []latticePoint) (*Graph, error) {
	g, err := buildFor(job, false, allDrops(job), nil, by)
	if err != nil || !job.Allow.Raceway {
		return g, err
	}
	var unreached []int
	search := network.NewSearch(g.Net)
	if err := search.From(int32(g.Root), 1); err != nil {
		return nil, fmt.Errorf("route: %w", err)
	}
	for d := range job.Drops {
		if _, ok := search.To(int32(g.Terminals[d])); !ok && job.Drops[d].Kind == plan.WallPlate {
			unreached = append(unreached, d)
		}
	}
	if len(unreached) == 0 {
		return g, nil
	}
	return buildFor(job, false, allDrops(job), unreached, by)
}

// build also keeps, if relax is true, what a rule forbids but a change would
// allow.
func build(job *plan.Job, relax bool) (*Graph, error) {
	return buildFor(job, relax, allDrops(job), nil, nil)
}

func allDrops(job *plan.Job) []int {
	all := make([]int, len(job.Drops))
	for d := range all {
		all[d] = d
	}
	return all
}

// A latticePoint is a place in a space that lattice lines go through.
type latticePoint struct {
	space int
	at    geom.Point
}

// buildFor makes the graph of a job with places for some of its drops only, with
// channels in sight to some of these, and with lattice lines through some crossings
// besides.
func buildFor(job *plan.Job, relax bool, drops, inSight []int, by []latticePoint) (*Graph, error) {
	b := newBuilder(job, relax)
	b.by = by
	b.closet()
	b.chases()
	for _, c := range b.cavities {
		c.trunks = len(c.ports)
	}
	for d := range job.Drops {
		b.terminal(d)
	}
	for _, d := range drops {
		b.place(d)
	}
	b.throughBays()
	b.passages()
	b.throughPartings()
	b.raceways(inSight)
	b.outside()
	for _, c := range b.cavities {
		c.layLattice()
	}
	b.raise()
	for _, c := range b.cavities {
		c.joinPorts()
	}
	for _, f := range b.later {
		f()
	}
	for _, d := range drops {
		b.racewayAsChange(d, job.Drops[d].Pos)
	}
	return b.finish()
}

// terminal adds the node that stands for drop d before its exact place is
// chosen.
func (b *builder) terminal(d int) {
	drop := &b.job.Drops[d]
	lvl := &b.house.Levels[b.house.LevelOf(drop)]
	p, z := drop.Point, lvl.Floor+lvl.Ceiling
	if drop.Kind == plan.WallPlate {
		p, z = b.house.Walls[drop.Spot.Wall].PointAt(drop.Spot.At), lvl.Floor+drop.Spot.Height
	}
	b.terms = append(b.terms, b.node(TerminalNode, geom.Point3{X: p.X, Y: p.Y, Z: z}, -1, d))
}

// place adds the places where drop d may be.
func (b *builder) place(d int) {
	switch b.job.Drops[d].Kind {
	case plan.WallPlate:
		b.wallPlate(d)
	case plan.CeilingPoint:
		b.ceilingPoint(d)
	case plan.SoffitSpot:
		b.soffitSpot(d)
	}
}
