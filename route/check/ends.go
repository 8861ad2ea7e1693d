package check

import (
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// connector holds a drop's cable against the plug or jack on its far end. A
// range that is not known is not held against anything.
func (c *checker) connector(d *plan.Drop) {
	k, w := &d.Connector, &d.Cable
	if k.ID == "" {
		return
	}
	if w.Gauge < k.Thickest || k.Thinnest < w.Gauge {
		c.add(rule.WireGauge, at(d, "%s has conductors of %d AWG; %s takes %d to %d AWG (%s)", w.ID, w.Gauge, k.ID, k.Thickest, k.Thinnest, k.Source))
	}
	if w.Stranded && !k.Stranded {
		c.add(rule.WireStrands, at(d, "%s has stranded conductors; %s is for solid ones", w.ID, k.ID))
	}
	if !w.Stranded && !k.Solid {
		c.add(rule.WireStrands, at(d, "%s has solid conductors; %s is for stranded ones", w.ID, k.ID))
	}
	if connector.Known(k.Core) && !k.Core.Contains(w.Core) {
		id := rule.WireCore
		if k.PassThrough && w.Core > k.Core.Max {
			id = rule.PassThrough
		}
		c.add(id, at(d, "the conductors of %s are %s over the insulation; %s takes %s (%s)", w.ID, millimetres(w.Core), k.ID, span(k.Core), k.Source))
	}
	if connector.Known(k.Jacket) && !k.Jacket.Contains(w.Diameter) {
		c.add(rule.PlugJacket, at(d, "%s is %s over the jacket; %s takes %s (%s)", w.ID, millimetres(w.Diameter), k.ID, span(k.Jacket), k.Source))
	}
}

// millimetres prints what is too small for a tape, in the unit of data sheets:
// with all its digits, so that what is beside a limit does not look as if it were on it.
func millimetres(l measure.Length) string { return trimmed(l) + " mm" }

func span(r measure.Range) string { return trimmed(r.Min) + " to " + trimmed(r.Max) + " mm" }

// trimmed is a length in millimetres with at least one decimal and at most
// the six that a nanometre has.
func trimmed(l measure.Length) string {
	s := strings.TrimRight(fmt.Sprintf("%d.%06d", l/measure.Millimetre, l%measure.Millimetre), "0")
	if strings.HasSuffix(s, ".") {
		s += "0"
	}
	return s
}
