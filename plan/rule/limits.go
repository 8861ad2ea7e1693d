package rule

import "topplate/plan/measure"

// Ids of the limits.
const (
	PowerParallel  LimitID = "power-parallel"
	PowerCrossing  LimitID = "power-crossing-angle"
	PlateBore      LimitID = "plate-bore"
	PlateEdge      LimitID = "plate-edge"
	PlateShield    LimitID = "plate-shield"
	HoleToMember   LimitID = "hole-to-member"
	HoleOverBundle LimitID = "hole-over-bundle"
	CablesPerGang  LimitID = "cables-per-gang"
	BoxSingle      LimitID = "box-single-width"
	BoxDouble      LimitID = "box-double-width"
	BoxHeight      LimitID = "box-height"
	CeilingBox     LimitID = "ceiling-box"
	HotLight       LimitID = "hot-light"
	HotFlue        LimitID = "hot-flue"
	ReachStand     LimitID = "reach-stand"
	ReachCrawl     LimitID = "reach-crawl"
	ReachArmHeight LimitID = "reach-arm-height"
	RodGap         LimitID = "rod-gap"
	DrillRoom      LimitID = "drill-room"
	HatchShort     LimitID = "hatch-short-side"
	HatchLong      LimitID = "hatch-long-side"
	LinkLength     LimitID = "link-length"
	LeadYear       LimitID = "lead-paint-year"
)

const (
	inch = int64(measure.Inch)
	foot = int64(measure.Foot)
	mm   = int64(measure.Millimetre)
)

var practice = Source{Status: CommonPractice}

// Limits is the table of limits.
var Limits = []Limit{
	{PowerParallel, "Cable beside power", Nanometres, 2 * inch, 0, 2 * foot,
		Source{"NEC (2017)", "800.133(A)(2); 805.133(A)(2) and 725.136(I) in later editions", AsQuoted},
		"Least distance to a power cable that it runs beside. The clause is about power conductors and excepts nonmetallic-sheathed cable; here it is kept everywhere, as good practice against interference."},
	{PowerCrossing, "Angle that still counts as crossing power", Degrees, 60, 45, 90, practice,
		"A cable that meets a power run at a smaller angle is taken to run beside it."},
	{PlateBore, "Largest hole in a plate, of its width", Percent, 50, 10, 60,
		Source{"IRC (2018)", "R602.6.1", AsQuoted},
		"A plate cut by more needs a metal tie across the opening. The clause speaks of piping and ductwork and is used here by analogy."},
	{PlateEdge, "Hole to the edge of a plate", Nanometres, 5 * inch / 8, 0, 2 * inch,
		Source{"IRC (2018)", "R602.6 item 2, for studs, by analogy", AsQuoted},
		"Wood that must be left beside a hole."},
	{PlateShield, "Hole to the edge without a shield plate", Nanometres, 5 * inch / 4, 0, 2 * inch,
		Source{"NEC (2017)", "300.4(A)(1)", AsQuoted},
		"A hole nearer to the face than this wants a steel plate against nails and screws."},
	{HoleToMember, "Hole to a stud, joist or rafter on the plate", Nanometres, inch / 4, 0, 2 * inch, practice,
		"Room for the bit to miss what it can't be seen to hit."},
	{HoleOverBundle, "Hole larger than its bundle by", Nanometres, inch / 4, 0, inch,
		Source{"a published formula page on cable bundles", "bundle + 1/4 in", AsQuoted},
		"So that the cables pull without wedging."},
	{CablesPerGang, "Cables to one gang of a wall plate", Count, 4, 1, 6, practice,
		"Four cables go to one single-gang plate with four ports."},
	{BoxSingle, "Width of a single-gang opening", Nanometres, 9 * inch / 4, inch, 4 * inch,
		Source{"bracket cut-outs", "single gang about 2-1/4 by 3-3/4 in", FromMemory}, "The bracket's own template decides."},
	{BoxDouble, "Width of a double-gang opening", Nanometres, 4 * inch, 2 * inch, 6 * inch,
		Source{"bracket cut-outs", "double gang about 4 by 3-3/4 in", FromMemory}, "The bracket's own template decides."},
	{BoxHeight, "Height of a box opening", Nanometres, 15 * inch / 4, inch, 6 * inch,
		Source{"bracket cut-outs", "single gang about 2-1/4 by 3-3/4 in", FromMemory}, "The bracket's own template decides."},
	{CeilingBox, "Opening of a ceiling box", Nanometres, 4 * inch, inch, 10 * inch, practice,
		"Centred holes for round boxes are about this wide."},
	{HotLight, "Cable to a recessed light", Nanometres, 3 * inch, inch / 2, 2 * foot,
		Source{"NEC (2017)", "410.116(B), for insulation, by analogy", AsQuoted},
		"Applies to a light that is not rated for contact with insulation; the housing's marking decides."},
	{HotFlue, "Cable to a flue or chimney", Nanometres, 2 * inch, inch, 2 * foot,
		Source{"framing clearances to chimneys", "2 in", FromMemory},
		"The flue's own listing may ask for more."},
	{ReachStand, "Clear height to stand", Nanometres, 5 * foot, 3 * foot, 7 * foot, practice,
		"Stooped, between the tops of the joists and the rafters."},
	{ReachCrawl, "Clear height to crawl", Nanometres, 24 * inch, 12 * inch, 4 * foot, practice,
		"R807.1 of the IRC asks for 30 in of headroom over an attic access; people crawl in less."},
	{ReachArmHeight, "Clear height for an arm", Nanometres, 8 * inch, 3 * inch, 2 * foot, practice,
		"Lying down, one arm forward."},
	{RodGap, "Gap for a rod", Nanometres, inch, inch / 4, 6 * inch, practice,
		"Between the sheathing and what lies under it."},
	{DrillRoom, "Room to bore a plate from above", Nanometres, 12 * inch, 4 * inch, 3 * foot, practice,
		"A right-angle drill with a short bit, and a hand."},
	{HatchShort, "Attic access, short side", Nanometres, 22 * inch, 0, 10 * foot,
		Source{"IRC (2018)", "R807.1", AsQuoted}, "Rough opening of an attic access."},
	{HatchLong, "Attic access, long side", Nanometres, 30 * inch, 0, 10 * foot,
		Source{"IRC (2018)", "R807.1", AsQuoted}, "Rough opening of an attic access."},
	{LinkLength, "Cable from panel to outlet", Nanometres, 90_000 * mm, 1000 * mm, 1_000_000 * mm,
		Source{"ANSI/TIA-568.2-D", "permanent link", AsQuoted},
		"Patch cords come on top; heat shortens it."},
	{LeadYear, "Paint may hold lead in houses built before", Count, 1978, 1600, 2100,
		Source{"40 CFR 745", "745.83", AsQuoted}, "Paid work that disturbs more than 6 sq ft a room inside is regulated."},
}
