package sheet

// A LineType is a pattern of dashes, by its number in ISO 128-2.
type LineType uint8

// Line types of ISO 128-2:2020, table 1 (numbers and names as in ISO
// 128-20:1996, from memory).
const (
	Continuous             LineType = 1
	Dashed                 LineType = 2
	DashedSpaced           LineType = 3
	LongDashedDotted       LineType = 4
	LongDashedDoubleDotted LineType = 5
	LongDashedTripleDotted LineType = 6
	Dotted                 LineType = 7
	LongDashedShortDashed  LineType = 8
	LongDashedTwoShort     LineType = 9 // long-dashed double-short-dashed
	DashedDotted           LineType = 10
	DashedDoubleDotted     LineType = 12
)

// Lengths of the elements of a line in halves of its width d: a dot is at
// most 0.5 d, a gap 3 d, a short dash 6 d, a dash 12 d, a long dash 24 d and a
// space 18 d (ISO 128-20:1996, table 3, from memory).
const (
	dot       = 1
	gap       = 6
	shortDash = 12
	dash      = 24
	longDash  = 48
	space     = 36
)

// elements holds the strokes and gaps of each line type by turns.
var elements = map[LineType][]Paper{
	Continuous:             nil,
	Dashed:                 {dash, gap},
	DashedSpaced:           {dash, space},
	LongDashedDotted:       {longDash, gap, dot, gap},
	LongDashedDoubleDotted: {longDash, gap, dot, gap, dot, gap},
	LongDashedTripleDotted: {longDash, gap, dot, gap, dot, gap, dot, gap},
	Dotted:                 {dot, gap},
	LongDashedShortDashed:  {longDash, gap, shortDash, gap},
	LongDashedTwoShort:     {longDash, gap, shortDash, gap, shortDash, gap},
	DashedDotted:           {dash, gap, dot, gap},
	DashedDoubleDotted:     {dash, gap, dot, gap, dot, gap},
}

// Dashes returns the strokes and gaps by turns, for a line of the given width,
// and nil for a continuous line.
func (t LineType) Dashes(width Paper) []Paper {
	var dashes []Paper
	for _, e := range elements[t] {
		dashes = append(dashes, (e*width+1)/2)
	}
	return dashes
}
