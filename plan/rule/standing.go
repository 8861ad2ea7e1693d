package rule

// Ids of the standing rules.
const (
	LocalCode      ID = "local-code"
	LiveWires      ID = "live-wires"
	FireSeparation ID = "fire-separation"
	Ladder         ID = "ladder"
	AtticHeat      ID = "attic-heat"
	LeadPaint      ID = "lead-paint"
	OldHouse       ID = "old-wiring-and-asbestos"
	KnobAndTube    ID = "knob-and-tube"
)

// standing are the cautions that are printed with every job, or with every
// job in a house of a certain age.
var standing = []Rule{
	{
		ID: LocalCode, Title: "The local code decides", Severity: Caution,
		Source: practice,
		Text: "This is a plan to work from and no finding that anything complies with a code. Codes are adopted and amended locally: " +
			"ask the local authority whether a permit or a licence is needed, and follow its rules where they differ.",
	},
	{
		ID: LiveWires, Title: "Power in walls", Severity: Caution,
		Source: practice,
		Text: "Find wires, pipes and studs before every cut, and take every wire to be live. " +
			"Power work is for a licensed electrician under the local code.",
	},
	{
		ID: FireSeparation, Title: "Walls and ceilings that hold back fire", Severity: Caution,
		Source: Source{
			Document: irc, Edition: "2015", Clause: "R302.5.3, R302.6",
			AsQuotedBy: "a city's record of the code with its commentary", Status: AsQuoted,
		},
		Text: "Between a garage and the house, and between dwellings, an opening in the board must be closed again as the local code asks. " +
			"Ask before cutting: this plan does not know which walls are rated.",
	},
	{
		ID: Ladder, Title: "Ladders and joists", Severity: Caution,
		Source: Source{Document: "29 CFR 1926", Clause: "1926.1053(b)", Printed: "4 to 1, 3 feet (.9 m)", Status: FromMemory},
		Text: "Ladder at 4 to 1, rails 3 ft (0.9 m) above a landing, clear of power lines. " +
			"Step on joists or boards only; a ceiling does not carry anybody.",
	},
	{
		ID: AtticHeat, Title: "Heat in the attic", Severity: Caution,
		Source: Source{
			Document: "a roofing trade leaflet on attic ventilation", Printed: "140 °F (60 °C)",
			Status: Confirmed,
		},
		Text: "An attic in the sun reaches 140 °F (60 °C). Work in the cool hours, drink, never alone without a call arranged; stop when dizzy.",
	},
	{
		ID: LeadPaint, Title: "Paint may hold lead", Severity: Caution, BuiltBefore: LeadYear,
		Limits: []LimitID{LeadYear},
		Source: leadRule,
		Text: "Old house, or of unknown age: treat painted surfaces as lead paint until tested. Paid work that disturbs more than " +
			"6 sq ft (0.56 m²) a room inside, or 20 sq ft (1.9 m²) outside, follows the federal renovation rule.",
	},
	{
		ID: OldHouse, Title: "Old insulation and wiring", Severity: Caution, BuiltBefore: OldHouseYear,
		Limits: []LimitID{OldHouseYear},
		Source: Source{
			Document: "EPA and ATSDR, Current best practices for vermiculite attic insulation", Edition: "2003", Status: Confirmed,
		},
		Text: "Leave vermiculite or suspected asbestos undisturbed and call trained and certified professionals, for cable too. " +
			"Keep clear of knob-and-tube wiring, do not pull against it and do not cover it (NFPA 70, 394.12(5), as quoted by a contractors' association).",
	},
	{
		ID: KnobAndTube, Title: "Knob-and-tube wiring", Severity: Caution, BuiltBefore: KnobAndTubeYear,
		Limits: []LimitID{KnobAndTubeYear},
		Source: Source{
			Document: nec, Clause: "394.12(5), which is about insulation",
			AsQuotedBy: "a contractors' association and an electricians' forum", Status: Derived,
		},
		Text: "Single wires on porcelain, whose insulation crumbles when touched and may be live: look for them before moving in an attic, a crawl space or under open joists. " +
			"Lay no cable on them, bore and pull nowhere near them, and bury none under insulation; have a licensed electrician look first.",
	},
}
