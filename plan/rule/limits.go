package rule

import (
	"slices"

	"topplate/plan/measure"
)

// Ids of the limits.
const (
	PowerParallel LimitID = "power-parallel"
	PowerCrossing LimitID = "power-crossing-angle"
	HotLight      LimitID = "hot-light"
	HotFlue       LimitID = "hot-flue"

	PlateBore       LimitID = "plate-bore"
	PlateEdge       LimitID = "plate-edge"
	PlateShield     LimitID = "plate-shield"
	StudBoreBearing LimitID = "stud-bore-bearing"
	StudBore        LimitID = "stud-bore"
	StudEdge        LimitID = "stud-edge"
	HoleToMember    LimitID = "hole-to-member"
	HoleOverBundle  LimitID = "hole-over-bundle"

	BayWidth      LimitID = "bay-width"
	CablesPerGang LimitID = "cables-per-gang"
	BoxSingle     LimitID = "box-single-width"
	BoxDouble     LimitID = "box-double-width"
	BoxHeight     LimitID = "box-height"
	CeilingBox    LimitID = "ceiling-box"

	ReachStand     LimitID = "reach-stand"
	ReachCrawl     LimitID = "reach-crawl"
	ReachArmHeight LimitID = "reach-arm-height"
	RodGap         LimitID = "rod-gap"
	DrillRoom      LimitID = "drill-room"
	HatchShort     LimitID = "hatch-short-side"
	HatchLong      LimitID = "hatch-long-side"

	LinkLength    LimitID = "link-length"
	ChaseFill     LimitID = "chase-fill"
	RacewayHeight LimitID = "raceway-height"
	DripLoop      LimitID = "drip-loop"
	LeadYear      LimitID = "lead-paint-year"
	OldHouseYear  LimitID = "old-house-year"
)

const (
	inch  = int64(measure.Inch)
	foot  = int64(measure.Foot)
	metre = int64(measure.Metre)
)

// ClearanceOf returns the limit that the clearance of an obstacle defaults to,
// by the kind of obstacle as a house file names it. Other kinds have none: cable
// may lie against a duct, a tank or an air handler.
func ClearanceOf(kind string) (id LimitID, ok bool) {
	switch kind {
	case "light":
		return HotLight, true
	case "flue", "chimney":
		return HotFlue, true
	default:
		return "", false
	}
}

// Limits is the table of limits, in the order it is printed in.
var Limits = slices.Concat(laying, checking)

// laying are the limits that routes are laid by.
var laying = []Limit{
	{
		ID: PowerParallel, Title: "Cable beside power", Value: 2 * inch, Min: 0, Max: 2 * foot,
		Source: powerSeparation,
		Text: "Least distance to a power cable that it runs beside. The clause is about power conductors and excepts those in " +
			"nonmetallic-sheathed cable; here the distance is kept everywhere, as good practice against interference.",
	},
	{
		ID: PowerCrossing, Title: "Angle that still counts as crossing power", Unit: Degrees, Value: 60, Min: 45, Max: 90,
		Source: practice,
		Text:   "The trade crosses power at right angles. A cable that meets a power run at a smaller angle than this is taken to run beside it.",
	},
	{
		ID: HotLight, Title: "Cable to a recessed light", Value: 3 * inch, Min: inch / 2, Max: 2 * foot,
		Source: Source{Document: nec, Clause: "410.116(B), which is about insulation", Printed: "3 in", AsQuotedBy: "an electricians' forum", Status: Derived},
		Text:   "For a light that is not rated for contact with insulation, and for one whose rating is not known. The marking on the housing decides.",
	},
	{
		ID: HotFlue, Title: "Cable to a flue or chimney", Value: 2 * inch, Min: inch, Max: 2 * foot,
		Source: Source{Document: "framing clearance to chimneys and vents", Status: FromMemory},
		Text:   "The flue's own listing may ask for more.",
	},
	{
		ID: PlateBore, Title: "Largest hole in a plate, of its width", Unit: Percent, Value: 50, Min: 10, Max: 60,
		Source: plateHoles,
		Text: "A plate of an outer or bearing wall that is cut by more needs a metal tie across the opening. The clause speaks of " +
			"piping and ductwork and is used here for cable and for every wall, by analogy. The limit itself passes.",
	},
	{
		ID: PlateEdge, Title: "Hole to the edge of a plate", Value: 5 * inch / 8, Min: 0, Max: 2 * inch,
		Source: Source{Document: irc, Edition: "2018", Clause: "R602.6 item 2, which is about studs", Printed: "5/8 in (16 mm)", Status: Derived},
		Text:   "Wood that must be left beside a hole.",
	},
	{
		ID: PlateShield, Title: "Hole to the edge without a shield plate", Value: 5 * inch / 4, Min: 0, Max: 2 * inch,
		Source: boredHoles,
		Text:   "A hole nearer to the face of the wood than this wants a steel plate against nails and screws.",
	},
	{
		ID: StudBoreBearing, Title: "Largest hole in a stud of an outer or bearing wall, of its width", Unit: Percent, Value: 40, Min: 10, Max: 60,
		Source: studHoles,
		Text:   "The clause allows 60 % where such a stud is doubled, and no more than two doubled studs in a row are bored.",
	},
	{
		ID: StudBore, Title: "Largest hole in a stud of any other wall, of its width", Unit: Percent, Value: 60, Min: 10, Max: 60,
		Source: studHoles,
		Text:   "For walls that carry only themselves.",
	},
	{
		ID: StudEdge, Title: "Hole to the edge of a stud", Value: 5 * inch / 8, Min: 0, Max: 2 * inch,
		Source: Source{Document: irc, Edition: "2018", Clause: "R602.6 item 2", Printed: "5/8 in (16 mm)", Status: Confirmed},
		Text:   "Wood that must be left beside a hole, whatever share of the width the hole may take.",
	},
	{
		ID: HoleToMember, Title: "Hole to a stud, joist or rafter on the plate", Value: inch / 4, Min: 0, Max: 2 * inch,
		Source: practice,
		Text:   "Room for the bit to miss what it can't be seen to hit.",
	},
	{
		ID: HoleOverBundle, Title: "Hole larger than its bundle by", Value: inch / 4, Min: 0, Max: inch,
		Source: Source{Document: "a how-to page on the diameter of cable bundles", Printed: "1/4 in", Status: Confirmed},
		Text:   "So that the cables pull without wedging.",
	},
	{
		ID: BayWidth, Title: "Smallest bay that is worked in", Value: 3 * inch, Min: inch, Max: 2 * foot,
		Source: practice,
		Text:   "Clear, between two studs. In a narrower gap neither a box nor a hand tool finds room.",
	},
	{
		ID: CablesPerGang, Title: "Cables to one gang of a wall plate", Unit: Count, Value: 4, Min: 1, Max: 6,
		Source: practice,
		Text:   "Four cables go to one single-gang plate with four ports.",
	},
	{
		ID: BoxSingle, Title: "Width of a single-gang opening", Value: 9 * inch / 4, Min: inch, Max: 4 * inch,
		Source: Source{Document: "bracket cut-outs", Clause: "single gang about 2-1/4 by 3-3/4 in", Status: FromMemory},
		Text:   "The bracket's own template decides.",
	},
	{
		ID: BoxDouble, Title: "Width of a double-gang opening", Value: 4 * inch, Min: 2 * inch, Max: 6 * inch,
		Source: Source{Document: "bracket cut-outs", Clause: "double gang about 4 by 3-3/4 in", Status: FromMemory},
		Text:   "The bracket's own template decides.",
	},
	{
		ID: BoxHeight, Title: "Height of a box opening", Value: 15 * inch / 4, Min: inch, Max: 6 * inch,
		Source: Source{Document: "bracket cut-outs", Clause: "single gang about 2-1/4 by 3-3/4 in", Status: FromMemory},
		Text:   "The bracket's own template decides.",
	},
	{
		ID: CeilingBox, Title: "Opening of a ceiling box", Value: 4 * inch, Min: inch, Max: 10 * inch,
		Source: practice,
		Text:   "Holes for round boxes are about this wide.",
	},
	{
		ID: ReachStand, Title: "Clear height to stand", Value: 5 * foot, Min: 3 * foot, Max: 7 * foot,
		Source: practice,
		Text:   "Stooped, between the tops of the joists and the rafters.",
	},
	{
		ID: ReachCrawl, Title: "Clear height to crawl", Value: 24 * inch, Min: 12 * inch, Max: 4 * foot,
		Source: practice,
		Text: "Between the tops of the joists and the rafters. R807.1 of the International Residential Code asks for 30 in of " +
			"headroom over an attic access; people crawl in less.",
	},
	{
		ID: ReachArmHeight, Title: "Clear height for an arm", Value: 8 * inch, Min: 3 * inch, Max: 2 * foot,
		Source: practice,
		Text:   "Lying down, one arm forward.",
	},
	{
		ID: RodGap, Title: "Gap for a rod", Value: inch, Min: inch / 4, Max: 6 * inch,
		Source: practice,
		Text:   "Between the sheathing and what lies under it, with a cable taped to the rod.",
	},
	{
		ID: DrillRoom, Title: "Room to bore a plate from above", Value: 12 * inch, Min: 4 * inch, Max: 3 * foot,
		Source: practice,
		Text:   "A right-angle drill with a short bit, and a hand.",
	},
	{
		ID: HatchShort, Title: "Attic access, short side", Value: 22 * inch, Min: 0, Max: 10 * foot,
		Source: atticAccess,
		Text:   "Of the rough opening.",
	},
	{
		ID: HatchLong, Title: "Attic access, long side", Value: 30 * inch, Min: 0, Max: 10 * foot,
		Source: atticAccess,
		Text:   "Of the rough opening.",
	},
	{
		ID: LinkLength, Title: "Cable from panel to outlet", Value: 90 * metre, Min: metre, Max: 1000 * metre,
		Source: permanentLink,
		Text:   "For four-pair cable, service loops included. Patch cords come on top; heat shortens it.",
	},
	{
		ID: ChaseFill, Title: "Section of a chase that cables may fill", Unit: Percent, Value: 40, Min: 5, Max: 80,
		Source: Source{Document: "ANSI/TIA-569", Clause: "fill of pathways", Printed: "40 %", AsQuotedBy: "a trade forum", Status: AsQuoted},
		Text:   "So that what is there can be drawn out again, and more goes in later.",
	},
	{
		ID: RacewayHeight, Title: "Height of a channel along the foot of a wall", Value: 4 * inch, Min: 0, Max: 4 * foot,
		Source: practice,
		Text:   "Over the skirting board.",
	},
	{
		ID: DripLoop, Title: "Cable in the loop where it enters from outside", Value: 12 * inch, Min: 0, Max: 4 * foot,
		Source: practice,
		Text: "Water runs down to the lowest point of the loop and drips off instead of following the cable in. One hangs wherever cable along a wall goes " +
			"into a hole or a device, but none where a device stands under its own hole and covers it.",
	},
	{
		ID: LeadYear, Title: "Paint may hold lead in houses built before", Unit: Count, Value: 1978, Min: 1600, Max: 2100,
		Source: leadRule,
		Text:   "The federal rule is for housing built before that year.",
	},
	{
		ID: OldHouseYear, Title: "Asbestos and old wiring are looked out for in houses built before", Unit: Count, Value: 1990, Min: 1600, Max: 2100,
		Source: Source{Document: "years in which vermiculite insulation was still sold", Status: FromMemory},
		Text:   "Knob-and-tube wiring is older by forty years, but was often left in place.",
	},
}
