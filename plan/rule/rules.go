package rule

import "slices"

// Ids of the rules that a route is measured by. A rule whose name is also a
// limit's ends in Rule.
const (
	PowerParallelRule ID = "beside-power"
	PowerBay          ID = "power-in-bay"
	HotClearance      ID = "hot-clearance"

	HoleToMemberRule ID = "hole-clear-of-framing"
	PlateCapacity    ID = "plate-capacity"
	Shield           ID = "shield-plate"
	StudBoreRule     ID = "stud-bored"
	TrussNever       ID = "truss-never-bored"
	FireBlock        ID = "fire-block-bored"
	SealHoles        ID = "seal-holes"

	BoxFit      ID = "box-fit"
	Window      ID = "opening-over-bay"
	Patching    ID = "no-patching"
	BitReach    ID = "bit-reach"
	RodLength   ID = "rod-length"
	EaveBaffle  ID = "eave-baffle"
	NoHiddenWay ID = "no-hidden-way"
	FixedPart   ID = "fixed-part"
	HatchSize   ID = "hatch-size"

	LinkLengthRule ID = "link-length-exceeded"
	ConduitFill    ID = "conduit-fill"
	OutdoorEntry   ID = "outdoor-entry"
	ChaseFillRule  ID = "chase-filled"
	ChaseSeal      ID = "chase-sealed"
	OutsideCable   ID = "cable-outside"
)

// Rules is the table of rules, in the order it is printed in.
var Rules = slices.Concat(measured, checked, standing)

// measured are the rules that depend on the routes of a job.
var measured = []Rule{
	{
		ID: PowerParallelRule, Title: "Cable too near beside a power run", Severity: Stop,
		Limits: []LimitID{PowerParallel, PowerCrossing},
		Source: powerSeparation,
		Text: "Keep the distance, or cross near 90°. Power in nonmetallic-sheathed or metal-clad cable or in a raceway is excepted by " +
			"the code (the wording of the exception is from memory), so in most houses the distance is good practice and no breach.",
		Change: "another way, or the power run moved by a licensed electrician",
	},
	{
		ID: PowerBay, Title: "Power in the stud bay", Severity: Stop,
		Limits: []LimitID{PowerParallel},
		Source: practice,
		Text: "The low-voltage plate sits on the far side of the stud space from the receptacle and its cable, or in another bay. " +
			"Never share a box with power.",
		Change: "another bay, or the device moved by a licensed electrician",
	},
	{
		ID: HotClearance, Title: "Cable too near something hot", Severity: Stop,
		Limits: []LimitID{HotLight, HotFlue},
		Source: practice,
		Text:   "Most cable is listed for 60 °C. A clearance given in the house file comes before the limits here.",
		Change: "a way round it",
	},
	{
		ID: HoleToMemberRule, Title: "Framing where the hole would be", Severity: Stop,
		Limits: []LimitID{HoleToMember},
		Source: practice,
		Text:   "Move the place, so that the bit misses studs, joist ends and rafters.",
		Change: "a place further along",
	},
	{
		ID: PlateCapacity, Title: "More cable than the plate takes", Severity: Caution,
		Limits: []LimitID{PlateBore, PlateEdge, HoleOverBundle},
		Source: plateHoles,
		Text:   "The plate ties the wall together: bore small, and in the middle of its width. Bore a second hole beside the first, or use another bay.",
		Change: "a second hole, or a metal tie across the cut as the code describes it",
	},
	{
		ID: Shield, Title: "Steel plate over the hole", Severity: Note,
		Limits: []LimitID{PlateShield},
		Source: boredHoles,
		Text:   "Cover the face of the wood at the hole with a steel plate of at least 1/16 in (1.6 mm), against nails and screws.",
		Change: "a smaller hole",
	},
	{
		ID: StudBoreRule, Title: "Hole too large for the stud", Severity: Stop,
		Limits: []LimitID{StudBoreBearing, StudBore, StudEdge},
		Source: studHoles,
		Text:   "Bore in the middle of the stud's width, never beside a cut or notch.",
		Change: "a smaller hole, or more than one",
	},
	{
		ID: TrussNever, Title: "Trusses are never bored or cut", Severity: Stop,
		Source: Source{
			Document: irc, Clause: "R502.8.2, R802.7.2, R802.10.4",
			AsQuotedBy: "a state's code notice and an inspector's page", Status: AsQuoted,
		},
		Text: "Cables go over bottom chords and between webs, and are fastened without a hole. " +
			"I-joists and laminated or glued members are treated alike.",
		Change: "the design of a registered design professional",
	},
	{
		ID: FireBlock, Title: "Fire block bored", Severity: Caution,
		Source: Source{
			Document: irc, Clause: "R302.11 items 1 and 4",
			AsQuotedBy: "a county's list of code defects and a code consultant's column", Status: AsQuoted,
		},
		Text: "A block across a bay keeps fire from climbing the wall. It is bored with a long bit from the box or the plate, and must be " +
			"sealed round the cable again with an approved material. Open the board where that can't be done unseen.",
		Change: "a bay without a block",
	},
	{
		ID: SealHoles, Title: "Seal every hole in a plate", Severity: Note,
		Source: sealing,
		Text: "Plates close the wall against fire. Re-seal cable holes at floor and ceiling level with an approved material that resists flame and smoke; " +
			"through a garage separation or a rated wall follow the local code and use a listed firestop.",
	},
	{
		ID: BoxFit, Title: "No room for the box at the wished place", Severity: Stop,
		Limits: []LimitID{BoxSingle, BoxDouble, BoxHeight, CablesPerGang, CeilingBox, BayWidth},
		Source: practice,
		Text:   "A stud, a joist or another box is there, or the bay is too narrow. Allow the place to be moved.",
		Change: "a shift of the place",
	},
	{
		ID: Window, Title: "An opening closes the bay", Severity: Stop,
		Source: practice,
		Text:   "Over a window or door there is a header, which is never bored; cable can't go up there. Use the next bay.",
		Change: "a bay beside the opening",
	},
	{
		ID: Patching, Title: "Boring behind finished board", Severity: Stop,
		Source: practice,
		Text:   "From bay to bay only where the job allows patching.",
		Change: "the homeowner's leave to open the board and patch it",
	},
	{
		ID: BitReach, Title: "No bit reaches", Severity: Stop,
		Limits: []LimitID{DrillRoom},
		Source: practice,
		Text:   "Without room over the plate a hole is bored from the box, and the bit must come out at the top. Bring a longer flexible bit or an extension.",
		Change: "a longer flexible bit or an extension",
	},
	{
		ID: RodLength, Title: "Rods too short", Severity: Stop,
		Limits: []LimitID{RodGap},
		Source: practice,
		Text:   "A rod shot is straight, stays in one bay and ends where a hand takes it. Join more rods, or choose a place nearer to where a hand reaches.",
		Change: "longer rods",
	},
	{
		ID: EaveBaffle, Title: "A baffle closes the rafter bay", Severity: Stop,
		Source: practice,
		Text:   "Use the next rafter bay, or take the baffle out and put it back, so that air goes on passing at the eave.",
		Change: "the baffle taken out and put back",
	},
	{
		ID: NoHiddenWay, Title: "No hidden way", Severity: Stop,
		Limits: []LimitID{ReachStand, ReachCrawl, ReachArmHeight, RacewayHeight},
		Source: practice,
		Text:   "No way inside walls and over ceilings, where a hand or a rod gets to from a hatch, joins the place to the closet. Surface raceway is the last resort.",
		Change: "a surface raceway",
	},
	{
		ID: FixedPart, Title: "Kept out by a fixed part of the job", Severity: Stop,
		Source: practice,
		Text:   "The job file pins or avoids a hole, a trunk or an area. What is fixed comes before price.",
		Change: "taking the fixed part out of the job",
	},
	{
		ID: HatchSize, Title: "Small hatch", Severity: Caution,
		Limits: []LimitID{HatchShort, HatchLong},
		Source: atticAccess,
		Text:   "Check that the installer and his tools get through, and out again in a hurry.",
	},
	{
		ID: LinkLengthRule, Title: "Cable longer than a link may be", Severity: Stop,
		Limits: []LimitID{LinkLength},
		Source: permanentLink,
		Text:   "Beyond it a link need not carry its rated speed. Move the closet or add one nearer.",
		Change: "a closet nearer by",
	},
	{
		ID: ConduitFill, Title: "Conduit fuller than the table allows", Severity: Caution,
		Source: Source{
			Document: nec, Clause: "Chapter 9, Table 1", Printed: "1: 53 %, 2: 31 %, over 2: 40 %",
			AsQuotedBy: "copies of the table on the web", Status: AsQuoted,
		},
		Text: "By 800.110(B) the table does not bind communications cable; one reading has it bind Class 2 cable. Fuller than that, " +
			"cable jams and its jacket suffers.",
		Change: "fewer cables in it, or another way beside it",
	},
	{
		ID: OutdoorEntry, Title: "Cable that goes outside", Severity: Caution,
		Limits: []LimitID{DripLoop},
		Source: Source{
			Document: nec, Edition: "2020", Clause: "805.90(A)",
			AsQuotedBy: "an electricians' examination guide", Status: AsQuoted,
		},
		Text: "Outdoor jacket, drip loop, sealed entry; surge protection where the cable leaves the building's own eaves. Ask the local code.",
	},
	{
		ID: ChaseFillRule, Title: "Chase fuller than the limit", Severity: Caution,
		Limits: []LimitID{ChaseFill},
		Source: Source{Document: "ANSI/TIA-569", Clause: "fill of pathways", Printed: "40 %", AsQuotedBy: "a trade forum", Status: AsQuoted},
		Text:   "Cable in a full chase can't be drawn out again, and heats what is beside it.",
		Change: "fewer cables in it, or another way beside it",
	},
	{
		ID: ChaseSeal, Title: "Chase from storey to storey", Severity: Caution,
		Source: Source{
			Document: irc, Edition: "2018", Clause: "R302.11, of concealed spaces from storey to storey", Status: FromMemory,
		},
		Text: "A chase carries fire and smoke from floor to floor. Close it round the cables at every floor with what the local code allows. " +
			"Keep out of one that a flue stands in.",
	},
	{
		ID: OutsideCable, Title: "Cable on the outside that is not made for it", Severity: Stop,
		Source: practice,
		Text:   "Sunlight and water spoil a jacket for indoors within a few years.",
		Change: "a cable for out of doors",
	},
}
