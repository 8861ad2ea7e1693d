package rule

// Ids of the limits that a finished plan is checked by.
const (
	PowerNear       LimitID = "power-near"
	PowerNearLength LimitID = "power-near-length"
	PowerSquare     LimitID = "power-square-angle"

	PullFriction LimitID = "pull-friction"
	PullFeed     LimitID = "pull-feed"
	PullTurns    LimitID = "pull-turns"
	PullLength   LimitID = "pull-length"

	ChannelLength   LimitID = "channel-length"
	CordLength      LimitID = "cord-length"
	RoomTemperature LimitID = "room-temperature"
	TenGigabit      LimitID = "ten-gigabit-length"

	LimitedUse       LimitID = "limited-use-diameter"
	LimitedUseMetric LimitID = "limited-use-diameter-metric"
	UnlistedInside   LimitID = "unlisted-inside"

	BundleWatts LimitID = "bundle-watts"

	JoistBore  LimitID = "joist-bore"
	JoistEdge  LimitID = "joist-edge"
	GuardStrip LimitID = "guard-strip"

	CrawlShort LimitID = "crawl-access-short-side"
	CrawlLong  LimitID = "crawl-access-long-side"

	KnobAndTubeYear LimitID = "knob-and-tube-year"
)

// checking are the limits that a finished plan is checked by.
var checking = []Limit{
	{
		ID: PowerNear, Title: "Cable that counts as near power", Value: foot, Min: 0, Max: 10 * foot,
		Source: Source{Document: "distances for residential cabling", Printed: "6 or 12 in", Status: FromMemory},
		Text:   "Beyond the least distance a few inches to a foot are thought to be enough beside one circuit.",
	},
	{
		ID: PowerNearLength, Title: "Length near power without a remark", Value: 10 * metre, Min: 0, Max: 1000 * metre,
		Source: practice,
		Text:   "A short stretch near power does not matter to category cable. A long one is avoided where it costs little.",
	},
	{
		ID: PowerSquare, Title: "Angle that counts as square to power", Unit: Degrees, Value: 80, Min: 45, Max: 90,
		Source: practice,
		Text:   "A crossing at a smaller angle is remarked on. The trade guides say 90°.",
	},
	{
		ID: PullFriction, Title: "Friction of a jacket in timber, in hundredths", Unit: Percent, Value: 50, Min: 0, Max: 100,
		Source: Source{Document: "friction of a plastic jacket on the edge of timber", Printed: "0.5 to 0.6 assumed", Status: FromMemory},
		Text:   "For cable in conduit 0.35, 0.4 and 0.5 are all in use (as quoted by pages on pulling). Nobody knows it to better than a third.",
	},
	{
		ID: PullFeed, Title: "Tension that cable is fed in with", Unit: Newtons, Value: 10, Min: 0, Max: 110,
		Source: practice,
		Text:   "From a spool that turns freely and a hand that helps, for each cable. Every bend multiplies it.",
	},
	{
		ID: PullTurns, Title: "Square bends from one pull point to the next", Unit: Count, Value: 2, Min: 1, Max: 12,
		Source: pullPoints,
		Text:   "180° together. The clause is about conduit, and is used here for holes and hollows by analogy.",
	},
	{
		ID: PullLength, Title: "Cable from one pull point to the next", Value: 30 * metre, Min: metre, Max: 1000 * metre,
		Source: pullPoints,
		Text:   "The clause is about conduit, and is used here for holes and hollows by analogy. The smaller of both printed numbers is taken.",
	},
	{
		ID: ChannelLength, Title: "Cable and cords together", Value: 100 * metre, Min: metre, Max: 1000 * metre,
		Source: Source{
			Document: "ANSI/TIA-568.2-D", Clause: "channel", Printed: "100 m (328 ft)",
			AsQuotedBy: "cable makers' pages, brands withheld", Status: AsQuoted,
		},
		Text: "From the switch to the device, reckoned at 20 °C: a warmer cable counts longer.",
	},
	{
		ID: CordLength, Title: "Cords at both ends together", Value: 10 * metre, Min: 0, Max: 100 * metre,
		Source: Source{
			Document: "ANSI/TIA-568.2-D", Clause: "channel", Printed: "10 m",
			AsQuotedBy: "cable makers' pages, brands withheld", Status: AsQuoted,
		},
		Text: "What is left of a channel for patch cords. Set the length of your own.",
	},
	{
		ID: RoomTemperature, Title: "Temperature in rooms and inside walls", Unit: Celsius, Value: 20, Min: 10, Max: 50,
		Source: heatLoss,
		Text:   "The temperature that lengths and resistances are given for. The attic has its own, attic_hot in the house file.",
	},
	{
		ID: TenGigabit, Title: "Category 6 cable for 10 Gb/s", Value: 55 * metre, Min: metre, Max: 1000 * metre,
		Source: Source{Document: "TIA TSB-155", Printed: "55 m", AsQuotedBy: "two pages on category 6", Status: AsQuoted},
		Text:   "Less where many such cables lie side by side.",
	},
	{
		ID: LimitedUse, Title: "Diameter that limited-use cable stays below", Value: inch / 4, Min: inch / 8, Max: inch,
		Source: limitedUse,
		Text:   "Two numbers are printed, which are not equal. This is the larger: a cable as thick as this is too thick by both.",
	},
	{
		ID: LimitedUseMetric, Title: "Diameter that limited-use cable stays below, the smaller number", Value: 6_000_000, Min: inch / 8, Max: inch,
		Source: limitedUse,
		Text:   "From here to the larger number it depends on who reads the clause: ask the local code.",
	},
	{
		ID: UnlistedInside, Title: "Cable that is not listed, inside a building", Value: 50 * foot, Min: 0, Max: 1000 * foot,
		Source: Source{Document: nec, Clause: "800.48", Printed: "15 m (50 ft)", AsQuotedBy: "an electrical trade magazine", Status: AsQuoted},
		Text:   "From where it comes in to where it ends in an enclosure.",
	},
	{
		ID: BundleWatts, Title: "Power on a cable whose bundle may grow hot", Unit: Watts, Value: 60, Min: 1, Max: 100,
		Source: Source{
			Document: nec, Edition: "2020", Clause: "725.144", Printed: "60 W",
			AsQuotedBy: "a cable maker's page, brand withheld", Status: AsQuoted,
		},
		Text: "What the switch may put in. The table of the clause is for more than this; its numbers were not seen and are not used here.",
	},
	{
		ID: JoistBore, Title: "Depth of a joist, in diameters of its largest hole", Unit: Count, Value: 3, Min: 2, Max: 10,
		Source: joistHoles,
		Text:   "A hole is no larger than the third part of the depth.",
	},
	{
		ID: JoistEdge, Title: "Hole to the edge of a joist", Value: 2 * inch, Min: 0, Max: 6 * inch,
		Source: joistHoles,
		Text:   "And to any other hole or notch. In a shallow joist this decides: 1-1/2 in is left in one of 5-1/2 in.",
	},
	{
		ID: GuardStrip, Title: "Cable over joists to the edge of a hatch", Value: 6 * foot, Min: 0, Max: 20 * foot,
		Source: Source{
			Document: nec, Clause: "320.23(A), which is about armored and nonmetallic-sheathed cable", Printed: "1.8 m (6 ft)",
			AsQuotedBy: "two electricians' forums", Status: Derived,
		},
		Text: "Who climbs out of the hatch kneels there. With permanent stairs the clause asks for strips all over.",
	},
	{
		ID: CrawlShort, Title: "Access to a crawl space through a floor, short side", Value: 18 * inch, Min: 0, Max: 10 * foot,
		Source: underFloorAccess,
		Text:   "Of the opening.",
	},
	{
		ID: CrawlLong, Title: "Access to a crawl space through a floor, long side", Value: 24 * inch, Min: 0, Max: 10 * foot,
		Source: underFloorAccess,
		Text:   "Of the opening.",
	},
	{
		ID: KnobAndTubeYear, Title: "Knob-and-tube wiring is looked out for in houses built before", Unit: Count, Value: 1950, Min: 1600, Max: 2100,
		Source: Source{Document: "years in which knob-and-tube wiring was laid", Status: FromMemory},
		Text:   "Much of it was left in place, live or dead.",
	},
}
