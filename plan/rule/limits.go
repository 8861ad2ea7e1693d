package rule

import "topplate/plan/measure"

// Ids of the limits.
const (
	PowerParallel LimitID = "power-parallel"
	PowerCrossing LimitID = "power-crossing"

	PlateBore       LimitID = "plate-bore"
	PlateEdge       LimitID = "plate-edge"
	PlateShield     LimitID = "plate-shield"
	HoleToMember    LimitID = "hole-to-member"
	HoleAllowance   LimitID = "hole-allowance"
	StudBoreBearing LimitID = "stud-bore-bearing"
	StudBore        LimitID = "stud-bore"
	StudEdge        LimitID = "stud-edge"

	BayWidth      LimitID = "bay-width"
	BoxSingle     LimitID = "box-single"
	BoxDouble     LimitID = "box-double"
	BoxHeight     LimitID = "box-height"
	CablesPerGang LimitID = "cables-per-gang"
	CeilingBox    LimitID = "ceiling-box"

	ReachStand     LimitID = "reach-stand"
	ReachCrawl     LimitID = "reach-crawl"
	ReachArmHeight LimitID = "reach-arm-height"
	DrillRoom      LimitID = "drill-room"
	RodGap         LimitID = "rod-gap"
	HatchWidth     LimitID = "hatch-width"
	HatchLength    LimitID = "hatch-length"

	LinkLength LimitID = "link-length"
)

// ClearanceOf returns the limit that an obstacle's clearance defaults to, by
// the kind of obstacle as a house file names it; there may be no such limit.
func ClearanceOf(kind string) LimitID { return LimitID("clearance-" + kind) }

const (
	mm   = int64(measure.Millimetre)
	inch = int64(measure.Inch)
	foot = int64(measure.Foot)
)

// Sources that several limits and rules share.
var (
	commonPractice = Source{Status: CommonPractice}

	studHoles = Source{
		Document: irc, Edition: "2018", Clause: "R602.6 item 2", Status: Confirmed,
	}
	plateHoles = Source{
		Document: irc, Edition: "2018", Clause: "R602.6.1", Status: Confirmed,
	}
	powerSeparation = Source{
		Document: nec, Edition: "2017 to 2023", Clause: "800.133(A)(2), from 2020 805.133(A)(2); 725.136(I) for Class 2",
		Printed: "50 mm (2 in)", AsQuotedBy: "a cabling help desk and a cable maker's answers, brand withheld", Status: AsQuoted,
	}
	boredHoles = Source{
		Document: nec, Edition: "2017 to 2023", Clause: "300.4(A)(1)",
		Printed: "32 mm (1-1/4 in)", AsQuotedBy: "two trade magazines", Status: AsQuoted,
	}
	atticAccess = Source{
		Document: irc, Edition: "2018", Clause: "R807.1",
		AsQuotedBy: "a building inspectors' forum", Status: AsQuoted,
	}
)

const (
	irc = "International Residential Code"
	nec = "NFPA 70"
)

// Limits is the table of limits, in the order it is printed in.
var Limits = []Limit{
	{
		ID: PowerParallel, Title: "Distance kept from power cable", Value: 2 * inch, Min: 0, Max: 2 * foot,
		Source: powerSeparation,
		Text:   "Between the surfaces of a cable and of a power cable that runs beside it.",
	},
	{
		ID: PowerCrossing, Title: "Smallest angle that counts as crossing power", Unit: Degree, Value: 60, Min: 30, Max: 90,
		Source: commonPractice,
		Text:   "The trade crosses power at right angles. A flatter crossing than this is held to the distance for cables side by side.",
	},
	{
		ID: PlateBore, Title: "Largest hole in a top plate, of its width", Unit: Percent, Value: 50, Min: 10, Max: 50,
		Source: plateHoles,
		Text:   "Beyond it the code asks for a metal tie across the cut. The clause is worded for pipes and ducts and is used here by analogy; the limit itself passes.",
	},
	{
		ID: PlateEdge, Title: "Wood left between a hole in a top plate and its edge", Value: 5 * inch / 8, Min: 0, Max: 2 * inch,
		Source: Source{Document: irc, Edition: "2018", Clause: "R602.6 item 2", Status: Derived},
		Text:   "The clause is for studs and is used for plates by analogy.",
	},
	{
		ID: PlateShield, Title: "Wood between a hole and the face of a member, with no shield plate", Value: 5 * inch / 4, Min: 0, Max: 2 * inch,
		Source: boredHoles,
		Text:   "Nearer than this a nail or screw through the board may hit the cable.",
	},
	{
		ID: HoleToMember, Title: "Gap between a hole and a member that stands across it", Value: inch / 4, Min: 0, Max: 2 * inch,
		Source: commonPractice,
		Text:   "From the edge of a hole in a plate to a stud under it, or to a joist or rafter on it, so that a bit does not run into the member.",
	},
	{
		ID: HoleAllowance, Title: "Hole over bundle", Value: inch / 4, Min: 0, Max: inch,
		Source: Source{Document: "bundle-diameter rule", Edition: "of a how-to page", AsQuotedBy: "the page itself, author not named", Status: AsQuoted},
		Text:   "How much wider a hole is than the bundle that is drawn through it.",
	},
	{
		ID: StudBoreBearing, Title: "Largest hole in a stud of an outer or bearing wall, of its width", Unit: Percent, Value: 40, Min: 10, Max: 40,
		Source: studHoles,
		Text:   "Doubled studs may be bored further by the code; that case is not used here.",
	},
	{
		ID: StudBore, Title: "Largest hole in a stud of any other wall, of its width", Unit: Percent, Value: 60, Min: 10, Max: 60,
		Source: studHoles,
		Text:   "For walls that carry nothing but themselves.",
	},
	{
		ID: StudEdge, Title: "Wood left between a hole in a stud and its edge", Value: 5 * inch / 8, Min: 0, Max: 2 * inch,
		Source: studHoles,
		Text:   "Holds whatever the percentage allows.",
	},
	{
		ID: BayWidth, Title: "Smallest clear stud bay that is worked in", Value: 3 * inch, Min: inch, Max: 2 * foot,
		Source: commonPractice,
		Text:   "Between studs. In a narrower gap neither a box nor a tool finds room.",
	},
	{
		ID: BoxSingle, Title: "Width of a single-gang plate", Value: 11 * inch / 4, Min: inch, Max: 6 * inch,
		Source: plateSizes,
		Text:   "Width of wall face kept for a box, its bracket and its cover. The opening is smaller: cut it by the bracket's own template.",
	},
	{
		ID: BoxDouble, Title: "Width of a double-gang plate", Value: 456 * inch / 100, Min: inch, Max: foot,
		Source: plateSizes,
		Text:   "The same for a box of two gangs.",
	},
	{
		ID: BoxHeight, Title: "Height of a plate", Value: 9 * inch / 2, Min: inch, Max: foot,
		Source: plateSizes,
		Text:   "Two boxes whose middles are nearer in height than this are beside each other.",
	},
	{
		ID: CablesPerGang, Title: "Cables to one gang", Unit: Count, Value: 6, Min: 1, Max: 12,
		Source: commonPractice,
		Text:   "More cables than this take a box of two gangs.",
	},
	{
		ID: CeilingBox, Title: "Width of a ceiling box", Value: 4 * inch, Min: inch, Max: foot,
		Source: commonPractice,
		Text:   "Clear width between joists that a box in a ceiling takes.",
	},
	{
		ID: clearanceLight, Title: "Clearance of a recessed light", Value: 3 * inch, Min: 0, Max: 6 * foot,
		Source: Source{
			Document: nec, Edition: "2017 to 2023", Clause: "410.116", Printed: "75 mm (3 in)",
			AsQuotedBy: "an electricians' forum", Status: AsQuoted,
		},
		Text: "The clause keeps insulation that far from a light not marked for contact with it, and is used for cable by analogy.",
	},
	{
		ID: clearanceFlue, Title: "Clearance of a flue", Value: 2 * inch, Min: 0, Max: 6 * foot,
		Source: hotDesign,
		Text:   "The flue's own listing may ask for more.",
	},
	{
		ID: clearanceChimney, Title: "Clearance of a chimney", Value: 2 * inch, Min: 0, Max: 6 * foot,
		Source: hotDesign,
		Text:   "To the masonry.",
	},
	{
		ID: clearanceDuct, Title: "Clearance of a duct", Value: 0, Min: 0, Max: 6 * foot,
		Source: commonPractice,
		Text:   "Cable may lie against a duct, though not in one.",
	},
	{
		ID: clearanceTank, Title: "Clearance of a tank", Value: 0, Min: 0, Max: 6 * foot,
		Source: commonPractice,
		Text:   "Cable may lie against a tank of cold water.",
	},
	{
		ID: clearanceUnit, Title: "Clearance of an air handler", Value: 0, Min: 0, Max: 6 * foot,
		Source: commonPractice,
		Text:   "Its service side is to be kept free; draw the unit as large as that.",
	},
	{
		ID: ReachStand, Title: "Clear height to stand", Value: 5 * foot, Min: 3 * foot, Max: 10 * foot,
		Source: commonPractice,
		Text:   "Over the joists, for somebody who stoops.",
	},
	{
		ID: ReachCrawl, Title: "Clear height to crawl", Value: 30 * inch, Min: foot, Max: 5 * foot,
		Source: Source{
			Document: irc, Edition: "2018", Clause: "R807.1, headroom over an attic access", Status: Derived,
		},
		Text: "Over the joists. The clause asks for this much headroom at an access; here it is used for the whole way.",
	},
	{
		ID: ReachArmHeight, Title: "Clear height for an arm", Value: 8 * inch, Min: 2 * inch, Max: 3 * foot,
		Source: commonPractice,
		Text:   "Over the joists, for a hand with a cable in it to be stretched out.",
	},
	{
		ID: DrillRoom, Title: "Clear height to bore a plate from above", Value: 12 * inch, Min: 4 * inch, Max: 4 * foot,
		Source: commonPractice,
		Text:   "Over the plate, for a right-angle drill and a short bit.",
	},
	{
		ID: RodGap, Title: "Smallest gap that a rod passes", Value: inch, Min: inch / 4, Max: foot,
		Source: commonPractice,
		Text:   "Between framing and the roof, with a cable taped to the rod.",
	},
	{
		ID: HatchWidth, Title: "Width of a hatch", Value: 22 * inch, Min: foot, Max: 4 * foot,
		Source: atticAccess,
		Text:   "The shorter side of the rough opening.",
	},
	{
		ID: HatchLength, Title: "Length of a hatch", Value: 30 * inch, Min: foot, Max: 6 * foot,
		Source: atticAccess,
		Text:   "The longer side of the rough opening.",
	},
	{
		ID: LinkLength, Title: "Longest permanent link", Value: 90_000 * mm, Min: 10_000 * mm, Max: 100_000 * mm,
		Source: Source{
			Document: "ANSI/TIA-568.2", Edition: "D", Clause: "permanent link", Printed: "90 m (295 ft)",
			AsQuotedBy: "pages of two cable makers, brands withheld", Status: AsQuoted,
		},
		Text: "From the closet's jack to the outlet's, service loops included. Patch cords come on top, 10 m in all.",
	},
}

const (
	clearanceLight   LimitID = "clearance-light"
	clearanceFlue    LimitID = "clearance-flue"
	clearanceChimney LimitID = "clearance-chimney"
	clearanceDuct    LimitID = "clearance-duct"
	clearanceTank    LimitID = "clearance-tank"
	clearanceUnit    LimitID = "clearance-unit"
)

var (
	plateSizes = Source{
		Document: "sizes of cover plates", Edition: "of two trade pages", Printed: "2.75 x 4.5 in and 4.56 x 4.5 in",
		AsQuotedBy: "those pages, makers not named", Status: AsQuoted,
	}
	hotDesign = Source{Status: CommonPractice}
)
