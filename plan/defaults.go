package plan

import "topplate/plan/measure"

// defaults are the values of keys that are left out, in round numbers of the
// units that the house is taped in. They are common practice, without a
// source, except for the dressed sizes of lumber.
type defaults struct {
	sketchError, closing         measure.Length
	ceilingBoard                 measure.Length // and what is between it and the plate
	studDepth, studWidth         measure.Length
	studSpacing, board, cladding measure.Length
	panelWidth, outletHeight     measure.Length
	rods, arm                    measure.Length
	closetLoop, outletLoop, trim measure.Length
	round                        measure.Length
	spool                        measure.Length // of new cable
}

var defaultsOf = [...]defaults{
	measure.Imperial: {
		sketchError: 1 * inch, closing: 6 * inch, ceilingBoard: 5 * inch / 8,
		studDepth: 7 * inch / 2, studWidth: 3 * inch / 2, studSpacing: 16 * inch, board: inch / 2, cladding: 1 * inch,
		panelWidth: 14 * inch, outletHeight: 12 * inch, rods: 15 * foot, arm: 24 * inch,
		closetLoop: 10 * foot, outletLoop: 12 * inch, trim: 6 * inch, round: 1 * foot,
		spool: 1000 * foot,
	},
	measure.Metric: {
		sketchError: 20 * mm, closing: 150 * mm, ceilingBoard: 15 * mm,
		studDepth: 89 * mm, studWidth: 38 * mm, studSpacing: 400 * mm, board: 25 * mm / 2, cladding: 25 * mm,
		panelWidth: 350 * mm, outletHeight: 300 * mm, rods: 4500 * mm, arm: 600 * mm,
		closetLoop: 3000 * mm, outletLoop: 300 * mm, trim: 150 * mm, round: 500 * mm,
		spool: 305 * measure.Metre,
	},
}

// lumber is the dressed depth of dimension lumber by its name (American
// Softwood Lumber Standard PS 20, as quoted by others; 2x3 from memory).
var lumber = []struct {
	name  string
	depth measure.Length
}{
	{"2x3", 5 * inch / 2},
	{"2x4", 7 * inch / 2},
	{"2x6", 11 * inch / 2},
	{"2x8", 29 * inch / 4},
	{"2x10", 37 * inch / 4},
	{"2x12", 45 * inch / 4},
}

// defaultBits are used by a job that names no bits (common practice, no
// source).
var defaultBits = []Bit{
	{Diameter: inch / 2, Reach: 6 * inch},
	{Diameter: 3 * inch / 4, Reach: 6 * inch},
	{Diameter: 1 * inch, Reach: 6 * inch},
	{Diameter: 3 * inch / 4, Reach: 54 * inch, Flexible: true},
}
