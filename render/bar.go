package render

import "topplate/plan/measure"

// barSteps is the step of a scale bar and the names of its ends.
func barSteps(u measure.System) (measure.Length, []string) {
	if u == measure.Metric {
		return measure.Metre, []string{"0", "1", "2", "3", "4 m"}
	}
	return 4 * measure.Foot, []string{"0", "4′", "8′", "12′", "16′"}
}
