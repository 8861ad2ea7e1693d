package fix

import (
	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// Ids of the numbers that a place is found and bored with.
const (
	TapeReading rule.LimitID = "tape-reading"
	JoistLayout rule.LimitID = "joist-layout"
	AngleSetOff rule.LimitID = "angle-set-off"
	SketchShare rule.LimitID = "sketch-error-sigmas"
	MarkBox     rule.LimitID = "mark-light-box"
	MarkVent    rule.LimitID = "mark-vent"
	MarkPipe    rule.LimitID = "mark-pipe"
	HatchCorner rule.LimitID = "mark-hatch-corner"
	DrillHead   rule.LimitID = "drill-head"
	LeastTie    rule.LimitID = "plate-tie"
	LookRound   rule.LimitID = "look-round"
)

const inch = int64(measure.Inch)

// Limits are these numbers. None is from a published document but the last.
var Limits = []rule.Limit{
	{
		ID: TapeReading, Title: "Holding and reading a tape", Value: inch / 8, Max: 2 * inch,
		Source: practice, Text: "One standard deviation, along the joists' tops, at either end together.",
	},
	{
		ID: JoistLayout, Title: "A joist against its layout", Value: inch / 4, Max: 2 * inch,
		Source: practice, Text: "One standard deviation of where a joist is.",
	},
	{
		ID: AngleSetOff, Title: "An angle set off in the attic", Unit: rule.Degrees, Value: 3, Max: 30,
		Source: practice, Text: "One standard deviation, with a framing square along a joist.",
	},
	{
		ID: SketchShare, Title: "The error of the sketch, in standard deviations", Unit: rule.Count, Value: 2, Min: 1, Max: 3,
		Source: practice, Text: "A taped length is off by less than the house's sketch_error nineteen times in twenty: two standard deviations.",
	},
	{
		ID: MarkBox, Title: "Width of a light box", Value: 4 * inch, Max: 12 * inch,
		Source: practice, Text: "The tape's end is held somewhere on it.",
	},
	{
		ID: MarkVent, Title: "Width of a vent", Value: 4 * inch, Max: 24 * inch,
		Source: practice, Text: "The tape's end is held somewhere on it.",
	},
	{
		ID: MarkPipe, Title: "Width of a pipe", Value: 2 * inch, Max: 12 * inch,
		Source: practice, Text: "The tape's end is held somewhere on it.",
	},
	{
		ID: HatchCorner, Title: "Corner of a hatch", Value: inch, Max: 6 * inch,
		Source: practice, Text: "The lining and the trim hide the opening that was taped from below.",
	},
	{
		ID: DrillHead, Title: "Right-angle drill over its bit", Value: 5 * inch, Max: 24 * inch,
		Source: practice, Text: "A straight bit needs its own length and this much over a plate.",
	},
	{
		ID: LookRound, Title: "What is named beside a hole through a floor", Value: 12 * inch, Min: inch, Max: 36 * inch,
		Source: practice, Text: "Things of the sketch that are nearer, in plan: a long bit wanders.",
	},
	{
		ID: LeastTie, Title: "A plate cut by more of its width wants a tie", Unit: rule.Percent, Value: 50, Min: 50, Max: 50,
		Source: rule.Source{
			Document: "International Residential Code", Edition: "2018", Clause: "R602.6.1",
			Printed: "more than 50 percent of its width", Status: rule.Confirmed,
		},
		Text: "A galvanized metal tie at least 0.054 in thick and 1-1/2 in wide across the opening, with eight 10d nails on each side, in an outer or bearing wall. " +
			"The clause speaks of piping and ductwork and is used here by analogy.",
	},
}

var practice = rule.Source{Status: rule.CommonPractice}

// value is the number of one of Limits.
func value(id rule.LimitID) int64 {
	for i := range Limits {
		if Limits[i].ID == id {
			return Limits[i].Value
		}
	}
	panic("fix: no limit " + string(id))
}

func length(id rule.LimitID) measure.Length { return measure.Length(value(id)) }

// markSizes are the limits that hold how wide a mark is, by its kind in a house
// file. Others are points.
var markSizes = map[string]rule.LimitID{"light box": MarkBox, "vent": MarkVent, "pipe": MarkPipe}

// TradeSizes are the diameters that bits and hole saws come in, rising, for
// what the job's own bits do not make. Flexible installer's bits are 3/8, 1/2,
// 9/16, 3/4 and 1 in; the others are those of spade bits and hole saws, from
// memory, in either system.
func TradeSizes(s measure.System) []measure.Length {
	if s == measure.Metric {
		out := make([]measure.Length, 0, 20)
		for _, mm := range []measure.Length{6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 30, 32, 35, 38, 44, 51, 57, 64, 76} {
			out = append(out, mm*measure.Millimetre)
		}
		return out
	}
	var out []measure.Length
	for _, sixteenths := range []measure.Length{4, 6, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 28, 32, 34, 36, 40, 48} {
		out = append(out, sixteenths*measure.Inch/16)
	}
	return out
}

// tradeBits are bits of the trade's sizes for the fitting of cables.
func tradeBits(s measure.System) []plan.Bit {
	var out []plan.Bit
	for _, d := range TradeSizes(s) {
		out = append(out, plan.Bit{Diameter: d})
	}
	return out
}
