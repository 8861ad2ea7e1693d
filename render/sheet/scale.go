package sheet

import "topplate/plan/measure"

// A Scale is a reduction: one length on paper stands for Den of them.
type Scale struct {
	Name string // as printed: "1/4″ = 1′-0″", "1:50"
	Den  int64
}

// imperialScales are the architect's scales, largest first: a fraction of an
// inch to the foot. Common practice; the ratios follow by arithmetic.
var imperialScales = []Scale{
	{"1″ = 1′-0″", 12},
	{"3/4″ = 1′-0″", 16},
	{"1/2″ = 1′-0″", 24},
	{"3/8″ = 1′-0″", 32},
	{"1/4″ = 1′-0″", 48},
	{"3/16″ = 1′-0″", 64},
	{"1/8″ = 1′-0″", 96},
	{"3/32″ = 1′-0″", 128},
	{"1/16″ = 1′-0″", 192},
	{"1/32″ = 1′-0″", 384},
}

// metricScales are recommended reductions of ISO 5455:1979, table in 5.1,
// largest first, and 1:75, which it does not list but which a house on A3 often
// wants (common practice, no source).
var metricScales = []Scale{
	{"1:10", 10},
	{"1:20", 20},
	{"1:50", 50},
	{"1:75", 75},
	{"1:100", 100},
	{"1:200", 200},
	{"1:500", 500},
}

// Scales returns the scales in use with a system of units, largest first.
func Scales(sys measure.System) []Scale {
	if sys == measure.Metric {
		return metricScales
	}
	return imperialScales
}

// Paper returns how long l is on paper, rounded to the nearest micrometre,
// halves away from zero.
func (s Scale) Paper(l measure.Length) Paper {
	return Paper(divRound(int64(l), s.Den*int64(measure.Micrometre)))
}

// Real returns the length that p on paper stands for. It is exact.
func (s Scale) Real(p Paper) measure.Length {
	return measure.Length(p) * measure.Length(s.Den) * measure.Micrometre
}

// FitScale returns the largest scale of the system at which a thing of the
// given real size fits on paper of the given size. If none does, ok is false
// and s is the smallest scale.
func FitScale(sys measure.System, width, height measure.Length, paperWidth, paperHeight Paper) (s Scale, ok bool) {
	for _, s = range Scales(sys) {
		if width <= s.Real(paperWidth) && height <= s.Real(paperHeight) {
			return s, true
		}
	}
	return s, false
}
