package rule

// Ids of the rules that a finished plan is checked by.
const (
	PowerLong    ID = "long-beside-power"
	PowerSlanted ID = "power-crossed-slanted"
	DeviceInBay  ID = "device-in-bay"
	HotMargin    ID = "hot-margin"

	PlateTie      ID = "plate-tie"
	JoistBored    ID = "joist-never-bored"
	IJoistBored   ID = "i-joist-never-bored"
	HatchGuard    ID = "guard-strips"
	GarageParting ID = "garage-separation"
	FloorOpened   ID = "floor-between-storeys"

	CrawlSpace  ID = "crawl-space"
	CrawlAccess ID = "crawl-access"

	BendRadius     ID = "bend-radius"
	PullTension    ID = "pull-tension"
	PullTurnsRule  ID = "pull-bends"
	PullLengthRule ID = "pull-too-long"
	PullStops      ID = "pull-points"

	HotChannel     ID = "hot-channel"
	TenGigabitRule ID = "ten-gigabit"
	CableHeat      ID = "cable-too-hot"

	Sunlight     ID = "cable-in-the-sun"
	LimitedCable ID = "limited-use-cable"
	Unlisted     ID = "unlisted-cable"
	AirSpace     ID = "air-space"
	EntrySeal    ID = "entry-seal"
	Surge        ID = "surge-protection"

	WireGauge   ID = "wire-gauge"
	WireStrands ID = "wire-strands"
	WireCore    ID = "wire-insulation"
	PassThrough ID = "pass-through-insulation"
	PlugJacket  ID = "plug-jacket"

	ClassWatts   ID = "class-watts"
	SwitchVolts  ID = "switch-volts"
	DeviceVolts  ID = "device-volts"
	LoopOhms     ID = "loop-resistance"
	PortWatts    ID = "port-watts"
	SwitchBudget ID = "switch-budget"
	BundleHeat   ID = "bundle-heat"
)

// checked are the rules that are held against routes once they are found.
// Nothing is planned otherwise because of them.
var checked = []Rule{
	{
		ID: PowerLong, Title: "Long stretch near power", Severity: Note,
		Limits: []LimitID{PowerNear, PowerNearLength, PowerCrossing},
		Source: practice,
		Text:   "The least distance is kept. Lay the cable on the far side of the joist bay, or in the next one, where that costs nothing.",
	},
	{
		ID: PowerSlanted, Title: "Power crossed aslant", Severity: Note,
		Limits: []LimitID{PowerSquare},
		Source: Source{Document: "a residential trade guide", Printed: "cross at 90°", Status: Confirmed},
		Text:   "Turn the last foot of the cable on either side so that it crosses near 90°, and fasten neither cable to the other.",
	},
	{
		ID: DeviceInBay, Title: "Cable shares a bay with a power device", Severity: Caution,
		Source: Source{Document: "a residential trade guide", Printed: "boxes on different studs", Status: Confirmed},
		Text: "Keep to the stud away from the device and its cable, and find that cable before boring. A separate box, never a shared one. " +
			"Power is for a licensed electrician.",
		Change: "another bay",
	},
	{
		ID: HotMargin, Title: "Clearance to something hot hangs on the sketch", Severity: Note,
		Limits: []LimitID{HotLight, HotFlue},
		Source: practice,
		Text:   "The planned distance is nearer to the clearance than the sketch can be trusted: tape it in the attic, and fasten the cable so that it can't slide over.",
	},
	{
		ID: PlateTie, Title: "Plate cut by more than half", Severity: Caution,
		Limits: []LimitID{PlateBore},
		Source: plateHoles,
		Text: "In an outer or bearing wall the clause asks for a metal tie across the cut: at least 0.054 in (1.37 mm) by 1-1/2 in (38 mm), 6 in (152 mm) past it, " +
			"eight 10d nails on each side. It speaks of piping and ductwork and is used here for every hole that is there, by analogy.",
		Change: "a metal tie across the cut as the local code describes it",
	},
	{
		ID: JoistBored, Title: "Joists are not to be bored for this bundle", Severity: Note,
		Limits: []LimitID{JoistBore, JoistEdge, HoleOverBundle},
		Source: joistHoles,
		Text: "The plan lays cable over or under joists, and bores one only where a ceiling is opened for it. Notches, by the same clause: to a sixth of the depth, none in the middle third of the span. " +
			"Trusses, I-joists and laminated or glued members are never bored or notched.",
		Change: "more than one small hole, or none",
	},
	{
		ID: IJoistBored, Title: "I-joists are not to be bored or cut", Severity: Caution,
		Source: Source{
			Document: irc, Clause: "R502.8.2",
			AsQuotedBy: "a state's code notice and an inspector's page", Status: AsQuoted,
		},
		Text: "The plan bores none. A hole in a web only as the joist's own maker allows, where it lies in the span and by its table; knock-outs in the web are made for it. " +
			"The flanges, at the top and the bottom, are never cut, notched or bored. Fasten cable to the side of a flange or to a board laid across.",
		Change: "the maker's table for holes, or the design of a registered design professional",
	},
	{
		ID: HatchGuard, Title: "Cable over joists beside the hatch", Severity: Note,
		Limits: []LimitID{GuardStrip},
		Source: Source{
			Document: nec, Clause: "320.23(A), which is about armored and nonmetallic-sheathed cable", Printed: "1.8 m (6 ft)",
			AsQuotedBy: "two electricians' forums", Status: Derived,
		},
		Text: "Put a strip of wood as high as the cable on either side of it, or a board over it. For data cable that is good practice.",
	},
	{
		ID: GarageParting, Title: "Separation of a garage opened", Severity: Caution,
		Source: Source{
			Document: irc, Edition: "2015", Clause: "R302.5.3 and R302.11 item 4",
			AsQuotedBy: "a city's record of the code with its commentary", Status: AsQuoted,
		},
		Text: "What parts a garage from the house holds back fire. Fill round the cable with an approved material that resists flame and smoke, board included; " +
			"where the wall is rated, with a listed firestop. Ask the local authority before cutting.",
		Change: "a way round the garage",
	},
	{
		ID: FloorOpened, Title: "Floor between storeys opened", Severity: Caution,
		Source: Source{
			Document: irc, Clause: "R302.11 items 1 and 4",
			AsQuotedBy: "a county's list of code defects and a code consultant's column", Status: AsQuoted,
		},
		Text: "Plates, floor and ceiling board keep fire and smoke from going from one storey to the next. Fill round the cable at each of them with an approved material that resists flame and smoke. " +
			"Between two dwellings the floor is rated: ask the local authority first, and use a listed firestop.",
		Change: "a way that stays on one storey",
	},
	{
		ID: CrawlSpace, Title: "Work in a crawl space", Severity: Caution,
		Source: practice,
		Text: "Look and smell first: no entry with a smell of gas or sewage, standing water, or wires that hang or lie bare; power off in wet ground by a licensed electrician. " +
			"Air it, wear a mask, gloves, knees and a light; droppings, nests, snakes and spiders mean to go out again and call a pest controller. " +
			"Know the way out, keep it free, and never go in without somebody outside. Leave ground cover, insulation and vents as they were; the wrap of old ducts and pipes may hold asbestos.",
		Change: "a way that needs no crawl space",
	},
	{
		ID: CrawlAccess, Title: "Way into the crawl space is small", Severity: Note,
		Limits: []LimitID{CrawlShort, CrawlLong},
		Source: underFloorAccess,
		Text:   "Of the opening in the floor. People and tools must get out again as they got in.",
		Change: "a larger opening, by a carpenter",
	},
	{
		ID: BendRadius, Title: "No room for the cable's bend", Severity: Caution,
		Source: bending,
		Text:   "The least inside radius is the cable's own, in diameters. A quarter bend needs that and the cable's thickness. A tighter bend harms the pairs for good.",
		Change: "a thinner cable, or one that bends tighter",
	},
	{
		ID: PullTension, Title: "Pull too hard for the cable", Severity: Caution,
		Limits: []LimitID{PullFriction, PullFeed},
		Source: bending,
		Text: "T2 = T1·e^(friction × angle) round each bend: an estimate, good to a third. What a cable may be pulled with is its own. " +
			"Pull from the other end, help it round the bend, or use a lubricant made for cable.",
		Change: "a pull point between the bends",
	},
	{
		ID: PullTurnsRule, Title: "Too many bends to pull round", Severity: Caution,
		Limits: []LimitID{PullTurns},
		Source: pullPoints,
		Text:   "Between two places where a hand gets at the cable. Somebody at the bend who feeds the cable on makes up for it.",
		Change: "a pull point between the bends",
	},
	{
		ID: PullLengthRule, Title: "Too long a pull", Severity: Caution,
		Limits: []LimitID{PullLength},
		Source: pullPoints,
		Text:   "Between two places where a hand gets at the cable.",
		Change: "a pull point on the way",
	},
	{
		ID: PullStops, Title: "Places to pull the cable out and feed it on", Severity: Note,
		Limits: []LimitID{PullTurns, PullLength, PullFriction, PullFeed},
		Source: pullPoints,
		Text:   "At each of them all of the cable is drawn out in a loose heap, and fed on from there. Make no loop smaller than the cable's bend.",
	},
	{
		ID: HotChannel, Title: "Hot cable counts longer than a channel may be", Severity: Caution,
		Limits: []LimitID{ChannelLength, CordLength, RoomTemperature},
		Source: heatLoss,
		Text:   "On the hottest days the link may fall back to a lower speed. Screened cable loses less.",
		Change: "a way out of the attic, shorter cords, screened cable, or a closet nearer by",
	},
	{
		ID: TenGigabitRule, Title: "Too long for 10 Gb/s on this category", Severity: Note,
		Limits: []LimitID{TenGigabit, RoomTemperature},
		Source: Source{Document: "TIA TSB-155", Printed: "55 m", AsQuotedBy: "two pages on category 6", Status: AsQuoted},
		Text:   "1 Gb/s is not touched by it.",
		Change: "category 6A",
	},
	{
		ID: CableHeat, Title: "Place hotter than the cable is made for", Severity: Caution,
		Source: Source{
			Document: "the listing of twisted pair", Printed: "-40 to +60 °C",
			AsQuotedBy: "a trade magazine", Status: AsQuoted,
		},
		Text:   "The range is the cable's own. Power over the cable heats it further.",
		Change: "cable for a higher temperature, or a way out of the attic",
	},
	{
		ID: Sunlight, Title: "Jacket not made for the sun", Severity: Caution,
		Source: practice,
		Text:   "Out of doors an indoor jacket grows brittle and lets water in, under an eave too.",
		Change: "cable with an outdoor jacket",
	},
	{
		ID: LimitedCable, Title: "Limited-use cable too thick to hide in a house", Severity: Caution,
		Limits: []LimitID{LimitedUse, LimitedUseMetric},
		Source: limitedUse,
		Text: "Cable marked CMX may be laid in one- and two-family dwellings if it is thinner than this, and in any raceway. " +
			"The number is from a list of 1987: ask the local code.",
		Change: "thinner CMX cable, one marked CM or CMR besides, or a raceway",
	},
	{
		ID: Unlisted, Title: "Cable that is not listed runs far inside", Severity: Caution,
		Limits: []LimitID{UnlistedInside},
		Source: Source{Document: nec, Clause: "800.48", Printed: "15 m (50 ft)", AsQuotedBy: "an electrical trade magazine", Status: AsQuoted},
		Text:   "Outside-plant cable burns. It ends in an enclosure near where it comes in, and a listed cable goes on from there.",
		Change: "listed cable, or a change of cable where it comes in",
	},
	{
		ID: AirSpace, Title: "Spaces that air is moved through", Severity: Note,
		Source: Source{Document: nec, Clause: "300.22(C)", AsQuotedBy: "a cabling trade magazine", Status: AsQuoted},
		Text: "The sketch doesn't tell whether a hollow is used as a duct. Where one is, the code asks for plenum cable (CMP) or a metal raceway. " +
			"Never run cable inside a duct.",
	},
	{
		ID: EntrySeal, Title: "Hole to the outside", Severity: Note,
		Source: practice,
		Text: "Bore it rising inwards where it goes through a wall, hang a drip loop lower than the hole where it runs on along the wall, and seal round the cable against water, insects and air. " +
			"Keep it clear of the vent strip's air.",
	},
	{
		ID: Surge, Title: "Cable that lightning or power lines may reach", Severity: Caution,
		Source: Source{
			Document: nec, Edition: "2020", Clause: "805.90(A)",
			AsQuotedBy: "an electricians' examination guide", Status: AsQuoted,
		},
		Text: "A primary protector with its ground where the cable comes in. A note to the clause thinks a buried run of up to 140 ft (42 m) between buildings, " +
			"with a bonded metal shield or conduit all along, less exposed; its wording is disputed. Ask the local code, and a licensed electrician about the ground.",
		Change: "a surge protector where the cable comes in, or fibre between the buildings",
	},
	{
		ID: WireGauge, Title: "Conductor does not suit the plug or jack", Severity: Caution,
		Source: partSheets,
		Text:   "By its gauge. A contact made for thinner wire does not close over a thick one, and the other way round does not hold it.",
		Change: "a part that takes this gauge",
	},
	{
		ID: WireStrands, Title: "Contacts are not for this kind of conductor", Severity: Caution,
		Source: Source{Document: "a cabling trade magazine, on modular plugs", Status: Confirmed},
		Text:   "Contacts for stranded wire pierce it, those for solid wire straddle it. The wrong ones open, or come and go.",
		Change: "a part for this kind of conductor",
	},
	{
		ID: WireCore, Title: "Insulated conductor does not suit the plug or jack", Severity: Caution,
		Source: partSheets,
		Text:   "By its diameter over the insulation. Eight thick ones do not lie side by side in a narrow guide; thin ones are not held.",
		Change: "a part that takes this diameter",
	},
	{
		ID: PassThrough, Title: "Conductors too thick for the pass-through plug", Severity: Caution,
		Source: practice,
		Text: "The wire map may be right and the device have power but no data: the conductors are squeezed in, the pairs untwisted too far, and the cut ends bare. " +
			"Category 6A of 23 AWG does not work in every such plug. Try one plug on a cut of the cable, with the device, before buying the rest.",
		Change: "a plug for thicker insulation, with its conductors in two rows",
	},
	{
		ID: PlugJacket, Title: "Jacket does not suit the plug", Severity: Caution,
		Source: partSheets,
		Text:   "The plug's strain relief grips the jacket. One too thick does not go in, one too thin is not held.",
		Change: "a plug for this jacket, or a jack and a cord",
	},
	{
		ID: ClassWatts, Title: "Device takes more than its class", Severity: Caution,
		Source: powerOnData,
		Text:   "The switch may turn the port off. Read both numbers on the device.",
		Change: "a device and a port of a higher class",
	},
	{
		ID: SwitchVolts, Title: "Voltage of the switch is not the class's", Severity: Caution,
		Source: powerOnData,
		Text:   "A port of the class has a voltage in this range. What reaches the device is not worked out for another.",
		Change: "a switch with ports of the class",
	},
	{
		ID: DeviceVolts, Title: "Too little voltage at the device", Severity: Stop,
		Limits: []LimitID{CordLength, RoomTemperature},
		Source: powerOnData,
		Text:   "Worked out over the warm cable and its cords; what contacts add is left out.",
		Change: "thicker conductors, a shorter way, a switch nearer by, or a supply at the device",
	},
	{
		ID: LoopOhms, Title: "Loop resistance beyond the class", Severity: Caution,
		Limits: []LimitID{CordLength, RoomTemperature},
		Source: Source{Document: "IEEE Std 802.3", Clause: "loop of a pairset", Printed: "20 ohm, 12.5 ohm", Status: FromMemory},
		Text:   "The class is made for a loop of at most this. The device's watts follow from it.",
		Change: "thicker conductors, a shorter way, or a switch nearer by",
	},
	{
		ID: PortWatts, Title: "Port gives more than it must", Severity: Caution,
		Limits: []LimitID{CordLength, RoomTemperature},
		Source: powerOnData,
		Text:   "With what the cable turns into heat the port passes what it must give for the class, and the switch may turn it off.",
		Change: "thicker conductors, a shorter way, or a device that takes less",
	},
	{
		ID: SwitchBudget, Title: "Power of the switch", Severity: Caution,
		Source: powerOnData,
		Text:   "All ports together, those for later too. Many switches keep for each port all that its class may take, whatever the device takes.",
		Change: "a switch with more power, or fewer devices on it",
	},
	{
		ID: BundleHeat, Title: "Powered cables in one bundle", Severity: Caution,
		Limits: []LimitID{BundleWatts},
		Source: Source{
			Document: nec, Edition: "2020", Clause: "725.144", Printed: "60 W",
			AsQuotedBy: "a cable maker's page, brand withheld", Status: AsQuoted,
		},
		Text: "Cables with so much power on them heat each other, and the clause has a table for them, for air of 30 °C. " +
			"Lay them apart in the attic, not under insulation, and ask a licensed electrician for the table.",
		Change: "smaller bundles, laid apart",
	},
}
