package plan

import (
	"topplate/plan/diag"
	"topplate/plan/source"
)

// A Crew is who does the work, and from when.
type Crew struct {
	People int // 1 or 2
	Start  int // minutes after midnight
}

// defaultCrew works where a job names none (common practice, no source).
var defaultCrew = Crew{People: 1, Start: 8 * 60}

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
