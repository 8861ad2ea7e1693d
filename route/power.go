package route

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// besidePower is how far cable keeps from a power run that it runs beside.
func (b *cavity) besidePower(run *plan.PowerRun) measure.Length {
	return max(run.Clear, b.book.Length(rule.PowerParallel))
}

// powerBlocks are the rules that forbid cable from p to q in the attic because
// of a power run: beside one nearer than the limit, unless it crosses it at an
// angle that the rule counts as crossing.
func (b *cavity) powerBlocks(p, q geom.Point, z measure.Length) []Block {
	cross := crossing(b.book.Value(rule.PowerCrossing))
	var out []Block
	for i := range b.house.PowerRuns {
		run := &b.house.PowerRuns[i]
		if run.Space != b.index {
			continue
		}
		limit := b.besidePower(run)
		for k := 1; k < len(run.Path); k++ {
			c, d := run.Path[k-1], run.Path[k]
			if !geom.SegmentsCloserThan(p, q, c, d, limit) || geom.AngleAtLeast(p, q, c, d, cross) {
				continue
			}
			out = append(out, Block{
				Rule: rule.PowerParallelRule, Pos: run.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: z},
				Found:  fmt.Sprintf("runs beside power run %s, nearer than %s", run.ID, b.text(limit)),
				Change: fmt.Sprintf("move power run %s (a licensed electrician's work)", run.ID),
				Price:  b.prices.Each(price.ChangeMovePower),
			})
			break
		}
	}
	return out
}

// text prints a length in the units of the house.
func (b *builder) text(l measure.Length) string { return b.house.Units.Format(l) }
