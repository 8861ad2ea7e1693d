package render

import (
	"strconv"

	"topplate/plan/measure"
	"topplate/render/sheet"
)

// longestBar is the greatest length of a scale bar on paper.
const longestBar = 66 * sheet.MM

// barParts is the number of parts of a scale bar.
const barParts = 4

// barSteps is the length of one part of a scale bar, the largest round one of
// which four find room, and the names of the parts' ends.
func barSteps(u measure.System, s sheet.Scale) (measure.Length, []string) {
	unit, sign := measure.Foot, "′"
	if u == measure.Metric {
		unit, sign = measure.Metre, " m"
	}
	if barParts*s.Paper(unit) > longestBar {
		return finerSteps(u, s)
	}
	step := measure.Length(1)
	for _, n := range []measure.Length{2, 4, 5, 10, 20, 50} {
		if barParts*s.Paper(n*unit) <= longestBar {
			step = n
		}
	}
	names := []string{"0"}
	for i := 1; i <= barParts; i++ {
		names = append(names, strconv.Itoa(i*int(step))+sign)
	}
	return step * unit, names
}

// finerSteps is one part of a bar at a scale at which four feet or metres are
// too long for it, and the names of the parts' ends.
func finerSteps(u measure.System, s sheet.Scale) (measure.Length, []string) {
	if u != measure.Metric {
		return 6 * measure.Inch, []string{"0", "6″", "1′", "1′-6″", "2′"}
	}
	step := measure.Length(100)
	for _, n := range []measure.Length{250, 500} {
		if barParts*s.Paper(n*measure.Millimetre) <= longestBar {
			step = n
		}
	}
	names := []string{"0"}
	for i := 1; i <= barParts; i++ {
		names = append(names, strconv.Itoa(i*int(step)))
	}
	names[barParts] += " mm"
	return step * measure.Millimetre, names
}
