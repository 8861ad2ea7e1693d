package sheet

// A Pen is a row of the table of pens: it says what is drawn, and the table
// says how that looks.
type Pen uint8

// The pens, by what they draw. The zero Pen is for thin outlines that mean
// nothing by themselves.
const (
	PenThin Pen = iota
	PenMedium
	PenThick
	PenSolid
	PenMask

	PenBorder
	PenRule

	PenWall
	PenWallBelow
	PenWallAbove
	PenMasonry
	PenPlate
	PenStud
	PenBlocking
	PenJoist
	PenJoistHidden
	PenRoof
	PenEave
	PenHidden
	PenAbove
	PenDoor
	PenSwing
	PenStairs
	PenWindow
	PenPatch

	PenObstacle
	PenHot
	PenClearance
	PenPower

	PenCable
	PenCableHidden
	PenCableBelow
	PenCableSurface
	PenCableLater
	PenCableLeft
	PenCableThere
	PenRod
	PenChase

	PenHole
	PenHoleThere
	PenDevice
	PenMark

	PenDimension
	PenTick
	PenLeader
	PenTape
	PenCount
	PenWay
	PenCheck
	PenMatch
	PenKey
	PenCentre
	PenHatch
	PenZone

	pens
)

// A Style is how a pen draws.
type Style struct {
	Name    string // a word of ASCII letters and hyphens, unique in the table
	Meaning string // what a legend says; empty if there is nothing to explain
	Width   Paper  // of the line, in the series of ISO 128-2:2020
	Type    LineType
	Stroke  Colour
	Fill    Colour
}

// Style returns the row of p. A Pen that is not in the table draws as PenThin.
func (p Pen) Style() Style {
	if p >= pens {
		p = PenThin
	}
	return styles[p]
}

// Dashes returns the strokes and gaps of the line by turns, nil if it is
// continuous.
func (s Style) Dashes() []Paper { return s.Type.Dashes(s.Width) }

func (p Pen) fault() string {
	if p >= pens {
		return "an item has a pen that is not in the table"
	}
	return ""
}

// Widths of lines (ISO 128-2:2020: each is the last times the square root of
// two).
const (
	w013 = 130 * Micrometre
	w018 = 180 * Micrometre
	w025 = 250 * Micrometre
	w035 = 350 * Micrometre
	w050 = 500 * Micrometre
	w070 = 700 * Micrometre
)

// A Shape is what the thing that a pen draws is known by, whatever its line.
type Shape uint8

// The shapes.
const (
	ShapeLine   Shape = iota
	ShapeArea         // a filled outline
	ShapeRing         // a small circle with a cross in it
	ShapeTarget       // a small circle with a cross that reaches out of it
	ShapeArc          // a short arc through a hole
)

// Shape returns the shape of what p draws.
func (p Pen) Shape() Shape {
	switch {
	case p == PenHole || p == PenHoleThere:
		return ShapeRing
	case p == PenMark:
		return ShapeTarget
	case p == PenTape:
		return ShapeArc
	case p.Style().Fill != NoColour:
		return ShapeArea
	}
	return ShapeLine
}

// styles is the table of pens. Pens that have a Meaning differ in width or
// line type or fill from all others that have one, so that none is told apart
// by colour alone. Two that have the same shape and line type are at least two
// steps of the widths apart, or so far in lightness that it shows in grey.
var styles = [pens]Style{
	PenThin:   {"thin", "", w018, Continuous, Black, NoColour},
	PenMedium: {"medium", "", w035, Continuous, Black, NoColour},
	PenThick:  {"thick", "", w070, Continuous, Black, NoColour},
	PenSolid:  {"solid", "", 0, Continuous, NoColour, Black},
	PenMask:   {"mask", "", 0, Continuous, NoColour, White},

	PenBorder: {"border", "", w070, Continuous, Black, NoColour},
	PenRule:   {"rule", "", w025, Continuous, Black, NoColour},

	PenWall:        {"wall", "wall, cut", w050, Continuous, Black, LightGrey},
	PenWallBelow:   {"wall-below", "wall below", w025, DashedSpaced, DarkGrey, NoColour},
	PenWallAbove:   {"wall-above", "wall above", w025, DashedDotted, DarkGrey, NoColour},
	PenMasonry:     {"masonry", "masonry, cut", w070, Continuous, Black, White},
	PenPlate:       {"plate", "plate", w035, Continuous, Black, MidGrey},
	PenStud:        {"stud", "stud", w025, Continuous, Black, NoColour},
	PenBlocking:    {"blocking", "fire blocking", w025, Continuous, Black, LightGrey},
	PenJoist:       {"joist", "joist", w018, Continuous, Black, White},
	PenJoistHidden: {"joist-hidden", "joist above or below", w018, DashedSpaced, Black, NoColour},
	PenRoof:        {"roof", "ridge, hip or valley", w025, LongDashedDotted, Black, NoColour},
	PenEave:        {"eave", "edge of the roof", w035, LongDashedTwoShort, Black, NoColour},
	PenHidden:      {"hidden", "hidden edge", w025, Dashed, Black, NoColour},
	PenAbove:       {"above", "edge above", w025, LongDashedDoubleDotted, Black, NoColour},
	PenDoor:        {"door", "", w035, Continuous, Black, White},
	PenSwing:       {"swing", "", w018, Continuous, Black, NoColour},
	PenStairs:      {"stairs", "", w013, Continuous, Black, NoColour},
	PenWindow:      {"window", "", w025, Continuous, Black, White},
	PenPatch:       {"patch", "finish to open and close again", w050, Dashed, Black, NoColour},

	PenObstacle:  {"obstacle", "obstacle", w035, LongDashedShortDashed, Black, White},
	PenHot:       {"hot", "hot thing", w035, Dashed, Black, White},
	PenClearance: {"clearance", "clearance to keep", w025, Dotted, Black, NoColour},
	PenPower:     {"power", "power cable", w035, LongDashedTripleDotted, Black, NoColour},

	PenCable:        {"cable", "cable to run", w070, Continuous, Blue, NoColour},
	PenCableHidden:  {"cable-hidden", "cable to run, inside a wall or out of sight", w070, Dashed, Blue, NoColour},
	PenCableBelow:   {"cable-below", "cable to run, under this floor", w070, Dotted, Blue, NoColour},
	PenCableSurface: {"cable-surface", "cable to run, in sight: in a channel, on a face or outside", w070, LongDashedShortDashed, Blue, NoColour},
	PenCableLater:   {"cable-later", "cable for later", w050, DashedDotted, Blue, NoColour},
	PenCableLeft:    {"cable-left", "", w035, Dashed, Blue, NoColour}, // its dashes are short, for short stretches
	PenCableThere:   {"cable-there", "cable that is there", w050, LongDashedShortDashed, DarkGrey, NoColour},
	PenRod:          {"rod", "shot with rods", w050, DashedDoubleDotted, Blue, NoColour},
	PenChase:        {"chase", "chase or conduit", w050, LongDashedDotted, Black, NoColour},

	PenHole:      {"hole", "hole to drill", w050, Continuous, Black, White},
	PenHoleThere: {"hole-there", "hole that is there", w025, Dashed, DarkGrey, White},
	PenDevice:    {"device", "", w035, Continuous, Black, White},
	PenMark:      {"mark", "mark to measure from", w035, Continuous, Black, White},

	PenDimension: {"dimension", "", w018, Continuous, Black, NoColour},
	PenTick:      {"tick", "", w035, Continuous, Black, NoColour},
	PenLeader:    {"leader", "", w018, Continuous, Black, NoColour},
	PenTape:      {"tape", "arc of a tape held at the mark", w035, Continuous, Black, NoColour},
	PenCount:     {"count", "joists to count from a mark", w025, DashedDoubleDotted, Black, NoColour},
	PenWay:       {"way", "safe way from the hatch, on the joists", w050, Dotted, Black, NoColour},
	PenCheck:     {"check", "length taped as a check", w013, Dashed, Black, NoColour},
	PenMatch:     {"match", "match line between sheets", w070, DashedDotted, Black, NoColour},
	PenKey:       {"key", "", w025, Continuous, Black, LightGrey},
	PenCentre:    {"centre", "centre line", w013, LongDashedDotted, Black, NoColour},
	PenHatch:     {"hatch", "", w018, Continuous, Black, NoColour},
	PenZone:      {"zone", "", w013, Continuous, DarkGrey, NoColour},
}
