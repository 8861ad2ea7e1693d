package fix

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/tape"
)

// A JoistCount is the joists from a mark to a place: with joists between,
// Start, (Joists-1) spacings and Offset are the whole way across them; without,
// Offset alone is.
type JoistCount struct {
	Mark   tape.Mark
	Joists int
	// Heading is the way across the joists.
	Heading plan.Heading
	Start   measure.Length // from the mark to the centre of the first joist
	Offset  measure.Length // from the centre of the last joist to the place
	// Along is the way from the mark along the joists, in AlongHeading.
	Along        measure.Length
	AlongHeading plan.Heading
	name         string
}

// joistCount counts from the mark that a count serves best from; where no tape
// can be pulled, from the nearest, nil if there are no marks.
func (s *site) joistCount(at geom.Point, fix *tape.Answer) *JoistCount {
	var m tape.Mark
	switch {
	case fix.Joist != nil:
		m = fix.Joist.Mark
	case fix.Single != nil:
		m = fix.Single.Mark
	case len(s.marks) == 0:
		return nil
	default:
		m = slices.MinFunc(s.marks, func(a, b sight) int {
			return cmp.Compare(geom.Dist(a.mark.At, at), geom.Dist(b.mark.At, at))
		}).mark
	}
	u, v := s.acrossAlong(m.At)
	x, y := s.acrossAlong(at)
	c := &JoistCount{Mark: m, name: s.markName(m), Offset: max(x-u, u-x), Along: max(y-v, v-y)}
	c.Heading, c.AlongHeading = plan.East, plan.North
	if !s.space.AlongY {
		c.Heading, c.AlongHeading = plan.North, plan.East
	}
	if x < u {
		c.Heading = opposite(c.Heading)
	}
	if y < v {
		c.AlongHeading = opposite(c.AlongHeading)
	}
	for _, j := range route.JoistCentres(s.house, s.space) {
		// One right at the mark is not counted, one right at the place is.
		if met := u < j && j <= x || x <= j && j < u; !met {
			continue
		}
		if c.Joists++; c.Joists == 1 || max(j-u, u-j) < c.Start {
			c.Start = max(j-u, u-j)
		}
		c.Offset = min(c.Offset, max(x-j, j-x))
	}
	return c
}

// acrossAlong turns a point so that the first coordinate runs across the
// joists.
func (s *site) acrossAlong(p geom.Point) (across, along measure.Length) {
	if s.space.AlongY {
		return p.X, p.Y
	}
	return p.Y, p.X
}

func (f *fixer) joistText(c *JoistCount) string {
	text := fmt.Sprintf("from %s %s: ", c.name, headingNames[c.Heading])
	switch c.Joists {
	case 0:
		text += fmt.Sprintf("in the same joist bay, %s on", f.text(c.Offset))
	case 1:
		text += fmt.Sprintf("past 1 joist, %s beyond its middle", f.text(c.Offset))
	default:
		text += fmt.Sprintf("past %d joists, %s beyond the middle of the last", c.Joists, f.text(c.Offset))
	}
	return text + fmt.Sprintf(", and %s %s along the joists", f.text(c.Along), headingNames[c.AlongHeading])
}
