package rule

// Ids of the rules. A rule whose name is also a limit's ends in Rule.
const (
	PowerParallelRule ID = "power-parallel"
	PowerBay          ID = "power-bay"
	HotClearance      ID = "hot-clearance"

	PlateBoreRule    ID = "plate-bore"
	PlateShieldRule  ID = "plate-shield"
	HoleToMemberRule ID = "hole-to-member"
	HoleCapacity     ID = "hole-capacity"
	StudBoreRule     ID = "stud-bore"
	TrussNever       ID = "truss-never"

	Window       ID = "window"
	BayWidthRule ID = "bay-width"
	BoxFit       ID = "box-fit"
	Patching     ID = "patching"
	FireBlock    ID = "fire-block"
	SealPlate    ID = "seal-plate"

	Reach       ID = "reach"
	BitReach    ID = "bit-reach"
	RodLength   ID = "rod-length"
	EaveBaffle  ID = "eave-baffle"
	NoHiddenWay ID = "no-hidden-way"
	HatchSize   ID = "hatch-size"

	LinkLengthRule ID = "link-length"
)

// Rules is the table of rules, in the order it is printed in; the standing
// ones come last.
var Rules = append([]Rule{
	{
		ID: PowerParallelRule, Title: "Cable beside power cable", Severity: Stop,
		Limits: []LimitID{PowerParallel, PowerCrossing},
		Source: powerSeparation,
		Text: "Keeps noise out of the cable and hands off live wire. Power in nonmetallic-sheathed or metal-clad cable " +
			"or in a raceway is excepted by the code (wording of the exception from memory), so in most houses the " +
			"distance is good practice and no breach. Keep the distance side by side and cross at right angles.",
		Change: "another bay, or the power cable moved by a licensed electrician",
	},
	{
		ID: PowerBay, Title: "Cable in a stud bay with a power device", Severity: Stop,
		Limits: []LimitID{PowerParallel, BoxSingle, BoxHeight},
		Source: commonPractice,
		Text: "The power cable of a receptacle or switch runs on one stud of its bay. Keep the low-voltage box and cable on " +
			"the far side of the bay, the distance from that cable, or use the next bay; never share a box with power.",
		Change: "another bay, or the device moved by a licensed electrician",
	},
	{
		ID: HotClearance, Title: "Cable near something hot or in the way", Severity: Stop,
		Limits: []LimitID{clearanceLight, clearanceFlue, clearanceChimney, clearanceDuct, clearanceTank, clearanceUnit},
		Source: commonPractice,
		Text:   "Cable jackets are listed for 60 °C and hot surfaces exceed it. A clearance given in the house file comes before these.",
		Change: "a way around it",
	},
	{
		ID: PlateBoreRule, Title: "Hole in a top plate", Severity: Stop,
		Limits: []LimitID{PlateBore, PlateEdge},
		Source: plateHoles,
		Text:   "The top plate ties the wall together. Bore small, in the middle of its width; use two holes rather than a large one.",
		Change: "a second hole, or a metal tie across the cut as the code describes",
	},
	{
		ID: PlateShieldRule, Title: "Hole near the face of a plate or stud", Severity: Caution,
		Limits: []LimitID{PlateShield},
		Source: boredHoles,
		Text:   "A nail or screw through the board may hit the cable. Nail a steel shield plate of at least 1/16 in (1.6 mm) over the spot, or bore smaller.",
		Change: "a shield plate",
	},
	{
		ID: HoleToMemberRule, Title: "Hole at a stud, joist or rafter", Severity: Stop,
		Limits: []LimitID{HoleToMember},
		Source: commonPractice,
		Text:   "What stands on a plate or under it blocks the hole, and a bit that runs into a member splits its end. Bore beside it.",
		Change: "a place further along",
	},
	{
		ID: HoleCapacity, Title: "More cables than a hole takes", Severity: Stop,
		Limits: []LimitID{HoleAllowance, PlateBore, PlateEdge},
		Source: commonPractice,
		Text:   "A bundle must pass without being squeezed. Each hole takes as many cables as leave the allowance round the bundle.",
		Change: "a second hole, or a larger bit within the rules for the member",
	},
	{
		ID: StudBoreRule, Title: "Hole in a stud", Severity: Stop,
		Limits: []LimitID{StudBoreBearing, StudBore, StudEdge},
		Source: studHoles,
		Text:   "Bore in the middle of the stud's width, and not where it is cut or notched already.",
		Change: "a smaller hole",
	},
	{
		ID: TrussNever, Title: "Trusses are never cut, notched or bored", Severity: Caution,
		Source: Source{
			Document: irc, Edition: "2018", Clause: "R502.8.2, R802.7.2, R802.10.4",
			AsQuotedBy: "a state's code notice and an inspector's page", Status: AsQuoted,
		},
		Text: "Every member of a truss carries; one hole can bring it down. Lay cable over members and fasten it with straps. " +
			"The same goes for I-joists, laminated and glued members.",
		Change: "only the truss maker's or an engineer's design",
	},
	{
		ID: Window, Title: "An opening closes the bay", Severity: Stop,
		Source: commonPractice,
		Text:   "Over a window or door stands a header, under a window a sill. No cable goes down that bay and no header is bored.",
		Change: "a bay beside the opening",
	},
	{
		ID: BayWidthRule, Title: "Bay too narrow to work in", Severity: Stop,
		Limits: []LimitID{BayWidth},
		Source: commonPractice,
		Text:   "Beside openings and in corners studs stand close together.",
		Change: "a wider bay",
	},
	{
		ID: BoxFit, Title: "Box does not fit where it was wished", Severity: Stop,
		Limits: []LimitID{BoxSingle, BoxDouble, BoxHeight, CablesPerGang, CeilingBox},
		Source: commonPractice,
		Text:   "A box needs room between studs or joists and beside other boxes.",
		Change: "a shift of the place along the wall",
	},
	{
		ID: Patching, Title: "Board would have to be opened and patched", Severity: Stop,
		Source: commonPractice,
		Text:   "From one stud bay to the next there is no way behind finished board but to open it. The job says whether that is allowed.",
		Change: "the homeowner's leave to patch",
	},
	{
		ID: FireBlock, Title: "Fire block bored", Severity: Caution,
		Source: Source{
			Document: irc, Edition: "2018", Clause: "R302.11 items 1 and 4",
			AsQuotedBy: "a county's list of code defects and a code consultant's column", Status: AsQuoted,
		},
		Text: "A block across a stud bay keeps fire from climbing the wall. Bore it with a long bit through the opening or the " +
			"plate, and seal around the cable again with approved material.",
	},
	{
		ID: SealPlate, Title: "Holes at ceiling level are sealed again", Severity: Caution,
		Source: Source{
			Document: irc, Edition: "2018 and 2024", Clause: "R302.11 item 4",
			AsQuotedBy: "a code consultant's column and a building inspectors' forum", Status: AsQuoted,
		},
		Text: "The top plate is the fire block of the wall. Fill around cable where it passes a plate or a ceiling with approved " +
			"material that resists the passage of flame and smoke. A rated wall needs a listed system instead.",
	},
	{
		ID: Reach, Title: "Place that no hand gets to", Severity: Stop,
		Limits: []LimitID{ReachStand, ReachCrawl, ReachArmHeight},
		Source: commonPractice,
		Text:   "Work in an attic is done where one can stand, crawl, or stretch out an arm, on a way that leads from a hatch.",
		Change: "a rod shot, or a new hatch",
	},
	{
		ID: BitReach, Title: "Bit too short", Severity: Stop,
		Limits: []LimitID{DrillRoom},
		Source: commonPractice,
		Text:   "Where there is no room to bore a plate from above, a flexible bit goes up from the box, and it must come out over the plate. A fire block is reached from the box or from the plate.",
		Change: "a longer flexible bit or an extension",
	},
	{
		ID: RodLength, Title: "Rods too short, or no gap for them", Severity: Stop,
		Limits: []LimitID{RodGap},
		Source: commonPractice,
		Text:   "A rod shot is straight, in one bay, and ends where a hand takes it.",
		Change: "longer rods",
	},
	{
		ID: EaveBaffle, Title: "Baffle closes the eave", Severity: Stop,
		Source: commonPractice,
		Text:   "A ventilation baffle fills the rafter bay over the plate, and air must go on passing there afterwards.",
		Change: "the baffle taken out of one bay and put back",
	},
	{
		ID: NoHiddenWay, Title: "No hidden way", Severity: Stop,
		Source: commonPractice,
		Text:   "No way inside the walls and over the ceilings joins the place to the closet.",
		Change: "a surface raceway",
	},
	{
		ID: HatchSize, Title: "Hatch smaller than the code's", Severity: Caution,
		Limits: []LimitID{HatchWidth, HatchLength},
		Source: atticAccess,
		Text:   "Older hatches are often smaller. Check that the person and the tools pass, both in a hurry.",
	},
	{
		ID: LinkLengthRule, Title: "Link too long", Severity: Caution,
		Limits: []LimitID{LinkLength},
		Source: Source{
			Document: "ANSI/TIA-568.2", Edition: "D", Clause: "permanent link", Printed: "90 m (295 ft)",
			AsQuotedBy: "pages of two cable makers, brands withheld", Status: AsQuoted,
		},
		Text:   "Beyond it the link need not carry its rated speed, in a hot attic sooner.",
		Change: "a switch on the way, or a closet nearer by",
	},
}, standing...)
