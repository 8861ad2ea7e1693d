package rule

// Ids of the rules.
const (
	PowerParallelRule ID = "beside-power"
	PowerBay          ID = "power-in-bay"
	HoleToMemberRule  ID = "hole-clear-of-framing"
	PlateCapacity     ID = "plate-capacity"
	Shield            ID = "shield-plate"
	BoxFit            ID = "box-fit"
	Window            ID = "opening-over-bay"
	Patching          ID = "no-patching"
	BitReach          ID = "bit-reach"
	RodLength         ID = "rod-length"
	EaveBaffle        ID = "eave-baffle"
	NoHiddenWay       ID = "no-hidden-way"
	HatchSize         ID = "hatch-size"
	LinkLengthRule    ID = "link-length-exceeded"
	SealHoles         ID = "seal-holes"
	LeadPaint         ID = "lead-paint"
	OldHouse          ID = "old-wiring-and-asbestos"
	AtticHeat         ID = "attic-heat"
	Ladder            ID = "ladder"
	LiveWires         ID = "live-wires"
	TrussNever        ID = "truss-never-bored"
	OutdoorEntry      ID = "outdoor-entry"
)

// Rules is the table of rules.
var Rules = []Rule{
	{PowerParallelRule, "Cable too near beside a power run", Stop, []LimitID{PowerParallel, PowerCrossing},
		Source{"NEC (2017)", "800.133(A)(2)", AsQuoted}, "Keep the distance, or cross near 90°."},
	{PowerBay, "Power in the stud bay", Stop, []LimitID{PowerParallel}, practice,
		"The low-voltage plate sits on the far side of the stud space from the receptacle, or in another bay."},
	{HoleToMemberRule, "Framing where the hole would be", Stop, []LimitID{HoleToMember}, practice,
		"Move the place, so that the bit misses studs, joist ends and rafters."},
	{PlateCapacity, "More cable than the plate takes", Caution, []LimitID{PlateBore, PlateEdge, HoleOverBundle},
		Source{"IRC (2018)", "R602.6.1", AsQuoted}, "Bore a second hole beside the first, or use another bay."},
	{Shield, "Steel plate over the hole", Note, []LimitID{PlateShield},
		Source{"NEC (2017)", "300.4(A)(1)", AsQuoted}, "Cover the face of the plate at the hole with a steel plate."},
	{BoxFit, "No room for the box at the wished place", Stop, []LimitID{BoxSingle, BoxDouble, BoxHeight, CeilingBox}, practice,
		"A stud or joist is there. Allow the place to be moved."},
	{Window, "An opening closes the bay", Stop, nil, practice,
		"Over a window or door there is a header; cable can't go up there. Use the next bay."},
	{Patching, "Boring behind finished board", Stop, nil, practice,
		"From bay to bay only where the job allows patching."},
	{BitReach, "No bit reaches", Stop, nil, practice, "Bring a longer flexible bit or an extension."},
	{RodLength, "Rods too short", Stop, nil, practice, "Join more rods, or choose a place nearer to where a hand reaches."},
	{EaveBaffle, "A baffle closes the rafter bay", Stop, nil, practice,
		"Use the next rafter bay, or take the baffle out and put it back."},
	{NoHiddenWay, "No hidden way", Stop, nil, practice, "Surface raceway is the last resort."},
	{HatchSize, "Small hatch", Caution, []LimitID{HatchShort, HatchLong},
		Source{"IRC (2018)", "R807.1", AsQuoted}, "Check that the installer and his tools get through."},
	{LinkLengthRule, "Cable longer than a link may be", Stop, []LimitID{LinkLength},
		Source{"ANSI/TIA-568.2-D", "permanent link", AsQuoted}, "Move the closet or add one nearer."},
	{SealHoles, "Seal every hole in a plate", Note, nil,
		Source{"IRC (2018)", "R302.11 item 4", AsQuoted},
		"Plates close the wall against fire. Re-seal cable holes with an approved material; through a garage separation or a rated wall follow the local code and use a listed firestop."},
	{LeadPaint, "Paint may hold lead", Caution, []LimitID{LeadYear},
		Source{"40 CFR 745", "745.83", AsQuoted},
		"House built before 1978, or of unknown age: treat painted surfaces as lead paint until tested; paid work follows the renovation rule."},
	{OldHouse, "Old insulation and wiring", Caution, nil,
		Source{"EPA/ATSDR (2003), vermiculite attic insulation", "current best practices", AsQuoted},
		"Leave vermiculite or suspected asbestos undisturbed and call trained professionals. Keep clear of knob-and-tube wiring and do not cover it."},
	{AtticHeat, "Heat in the attic", Caution, nil,
		Source{"asphalt roofing trade leaflet on attic ventilation", "140 °F (60 °C)", AsQuoted},
		"Work in the cool hours, drink, never alone without a call arranged; stop when dizzy."},
	{Ladder, "Ladders and joists", Caution, nil,
		Source{"OSHA 29 CFR 1926.1053", "(b)", FromMemory},
		"Ladder at 4 to 1, rails 3 ft above a landing. Step on joists or boards only; a ceiling does not carry anybody."},
	{LiveWires, "Power in walls", Caution, nil, practice,
		"Find wires, pipes and studs before every cut. Power work is for a licensed electrician under the local code."},
	{TrussNever, "Trusses are never bored or cut", Stop, nil,
		Source{"IRC (2018)", "R802.10.4, R502.8.2", AsQuoted},
		"Cables go over bottom chords and between webs; any hole needs a registered design professional."},
	{OutdoorEntry, "Cable that goes outside", Caution, nil,
		Source{"NEC (2020)", "805.90(A)", AsQuoted},
		"Outdoor jacket, drip loop, sealed entry; surge protection where the cable leaves the building's own eaves. Ask the local code."},
}
