package rule

// Ids of the standing rules.
const (
	localCode      ID = "local-code"
	powerWork      ID = "power-work"
	fireSeparation ID = "fire-separation"
	atticFooting   ID = "attic-footing"
	atticHeat      ID = "attic-heat"
	ladder         ID = "ladder"
	leadPaint      ID = "lead-paint"
	asbestos       ID = "asbestos"
	knobAndTube    ID = "knob-and-tube"
)

// standing are the cautions that every job prints.
var standing = []Rule{
	{
		ID: localCode, Title: "Local code decides", Severity: Caution, Standing: true,
		Source: commonPractice,
		Text: "This is a plan to work from, not a finding that anything complies with a code. Codes are adopted and amended locally. " +
			"Ask the local authority whether a permit or a licence is needed, and follow its rules where they differ.",
	},
	{
		ID: powerWork, Title: "Power is a licensed electrician's work", Severity: Caution, Standing: true,
		Source: commonPractice,
		Text: "Treat every wire in a wall or attic as live. Before cutting or boring, look and feel behind the board. " +
			"Moving, opening or joining anything on power is for a licensed electrician.",
	},
	{
		ID: fireSeparation, Title: "Walls and ceilings that hold back fire", Severity: Caution, Standing: true,
		Source: Source{
			Document: irc, Edition: "2015", Clause: "R302.5.3, R302.6",
			AsQuotedBy: "a city's record of the code with commentary", Status: AsQuoted,
		},
		Text: "Between a garage and the house, or between dwellings, an opening in the board must be closed again as the local code asks. " +
			"Ask before cutting; this plan does not know which walls are rated.",
	},
	{
		ID: atticFooting, Title: "Step on joists only", Severity: Caution, Standing: true,
		Source: commonPractice,
		Text:   "Ceiling board does not carry a person. Bring a board to kneel on, a lamp, gloves, a mask and eye protection.",
	},
	{
		ID: atticHeat, Title: "Heat in the attic", Severity: Caution, Standing: true,
		Source: Source{
			Document: "paper on attic ventilation", Edition: "of a roofing association", Printed: "140 °F (60 °C)",
			AsQuotedBy: "the association's own page", Status: AsQuoted,
		},
		Text: "An attic in the sun reaches 60 °C. Work early, drink, do not work alone, and come down before you feel unwell.",
	},
	{
		ID: ladder, Title: "Ladders", Severity: Caution, Standing: true,
		Source: Source{Document: "29 CFR 1926", Edition: "", Clause: "1926.1053(b)", Status: FromMemory},
		Text:   "Set a leaning ladder one out for four up, on firm ground, with its rails 3 ft (0.9 m) above the edge you step onto. Keep clear of overhead power lines.",
	},
	{
		ID: leadPaint, Title: "Lead paint, houses built before 1978", Severity: Caution, Standing: true, BuiltBefore: 1978,
		Source: Source{
			Document: "40 CFR 745", Edition: "", Clause: "745.83", Printed: "6 sq ft per room inside, 20 sq ft outside",
			AsQuotedBy: "a trade school's course and an examination site", Status: AsQuoted,
		},
		Text: "Assume old paint holds lead unless it was tested. Paid work that disturbs more than the printed areas falls under the federal rule; " +
			"a box opening is small, and the dust still wants wetting, catching and wiping up.",
	},
	{
		ID: asbestos, Title: "Asbestos, houses built before 1990", Severity: Caution, Standing: true, BuiltBefore: 1990,
		Source: Source{
			Document: "Current best practices for vermiculite attic insulation", Edition: "EPA and ATSDR 2003", Clause: "", Status: Confirmed,
		},
		Text: "Leave vermiculite insulation undisturbed and assume that it holds asbestos; cable in such an attic is for trained and certified people. " +
			"Old texture, tile and duct wrap may hold it too. The year is from memory.",
	},
	{
		ID: knobAndTube, Title: "Knob-and-tube wiring, houses built before 1950", Severity: Caution, Standing: true, BuiltBefore: 1950,
		Source: Source{
			Document: nec, Edition: "2017", Clause: "394.12(5)",
			AsQuotedBy: "an electricians' forum and a contractors' association", Status: AsQuoted,
		},
		Text: "Single wires on porcelain knobs may still be live, and their insulation crumbles. Keep clear, never pull a cable against them, " +
			"and do not cover them with insulation. The year is from memory.",
	},
}
