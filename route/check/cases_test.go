package check

import "topplate/plan/rule"

// A trial is a job that breaks one rule, and one that just does not.
type trial struct {
	rule   rule.ID
	source string // of the value that the two are apart by
	with   []string
	breaks []string
	keeps  []string
	found  string    // what the finding says of it
	also   []rule.ID // rules that can't be kept where this one is broken
}

func limit(text string) []string {
	return []string{"[limits]", "[limits]\n" + text}
}

func instead(old, own string) []string { return []string{old, own} }

func edits(all ...[]string) (out []string) {
	for _, e := range all {
		out = append(out, e...)
	}
	return out
}

// ownCable gives the drop a cable of its own, like another.
func ownCable(like, keys string) []string {
	return []string{job, "[[cable]]\nid = \"own\"\nlike = \"" + like + "\"\n" + keys, `cable = "cat6"`, `cable = "own"`}
}

// ownJack gives it a jack of its own.
func ownJack(keys string) []string {
	return []string{job, "[[connector]]\nid = \"mine\"\nlike = \"jack-6\"\n" + keys, `end = "jack"`, "jack = \"mine\""}
}

func ownPlug(like, keys string) []string {
	return []string{job, "[[connector]]\nid = \"mine\"\nlike = \"" + like + "\"\n" + keys, `end = "jack"`, "plug = \"mine\""}
}

func powerRun(path string) []string {
	return []string{house, "[[power]]\nid = \"p1\"\npath = " + path}
}

// camera is one under the east eave, on cable that nothing is wrong
// with.
func camera(cable, keys string) []string {
	return []string{job, "[[cable]]\nid = \"thin\"\nlike = \"cat6-outdoor\"\n" + cable +
		"\n\n[[drop]]\ntag = \"S1\"\nkind = \"soffit spot\"\nwall = \"east\"\nat = \"8ft\"\nshift = \"16in\"\ncable = \"thin\"\nend = \"jack\"\n" + keys}
}

const thin = "diameter = \"5.9mm\""

// powered gives the drop a device; the switch has plenty.
func powered(keys string) []string {
	return edits(instead(`end = "jack"`, "end = \"jack\"\n"+keys), instead("[rates]", "[switch]\nwatts = 500\n\n[rates]"))
}

// resistor makes the drop's cable a resistor of 1 ohm for each metre, at 20 °C
// everywhere and without cords: so many metres long, in steps of a
// centimetre. Without more than 1 in of sketch error its way is 11 ft 6-1/4 in
// (138-1/4 in, worked out below), 3.53695 m together.
func resistor(loop string) []string {
	return edits(
		ownCable("cat6", "resistance = \"100ohm/100m\""),
		instead("sketch_error = \"1in\"", "sketch_error = \"1in\"\nattic_hot = \"20C\""),
		limit("cord-length = \"0m\""),
		instead("closet = \"10ft\"\noutlet = \"12in\"\ntrim = \"6in\"\npercent = 5\nround = \"1ft\"",
			"closet = \""+loop+"\"\noutlet = \"0in\"\ntrim = \"0in\"\npercent = 0\nround = \"10mm\""),
	)
}

// The way of the drop, by hand. The panel is at 7 ft along the middle wall from
// the face of the south wall, which is at Y = 5 in: Y = 89. The hole over its
// bay is at Y = 92-1/2 and X = 168, in the middle of the plate.
//
//	in the bay, sideways       92-1/2 - 89 =          3-1/2
//	panel 60 to plate 93-5/8 (96 + 5/8 - 3)          33-5/8
//	through the double plate                          3
//	along the joist, 92-1/2 to 89 (5 + 84)            3-1/2
//	up to the joists' tops                            5-1/2
//	over the joists, 168 to 85 (5 + 80)              83
//	down                                              5-1/2
//	through the ceiling board                           5/8
//	                                                138-1/4
//
// With loops of 120 and 12, trims of 12, 1 of the sketch and 5 % it is 297.4,
// cut to 25 ft.
var trials = []trial{
	{
		rule: rule.PowerLong, source: "common practice, no source: 12 in and 10 m, here 83 in",
		with:   powerRun(`[["14ft 2in", "8ft 3in"], ["6ft", "8ft 3in"]]`),
		breaks: limit(`power-near-length = "82-15/16in"`), keeps: limit(`power-near-length = "83in"`), found: "nearer than 1ft beside this power run for 6ft 11in",
	},
	{
		rule: rule.PowerLong, source: "the same, at 12 in of distance: Y = 89 and 101",
		with:   limit(`power-near-length = "0in"`),
		breaks: powerRun(`[["14ft 2in", "8ft 4-15/16in"], ["8ft", "8ft 4-15/16in"]]`), keeps: powerRun(`[["14ft 2in", "8ft 5in"], ["8ft", "8ft 5in"]]`), found: "for 6ft",
	},
	{
		rule: rule.PowerSlanted, source: "common practice, no source: 80°, here 45°",
		with:   edits(powerRun(`[["100in", "72-1/2in"], ["140in", "112-1/2in"]]`), limit("power-crossing-angle = 45")),
		breaks: limit("power-square-angle = 46"), keeps: limit("power-square-angle = 45"), found: "C1 crosses this power run at 45°",
	},
	{
		rule: rule.DeviceInBay, source: "a residential trade guide: on different studs. The bay ends at 99-3/4 in",
		breaks: []string{house, device("8ft 3-3/4in")}, keeps: []string{house, device("8ft 3-13/16in")}, found: "from below along the nearer stud, 7-1/4in from",
	},
	{
		rule: rule.HotMargin, source: "2 in off a flue (from memory) and 1 in of sketch error",
		breaks: []string{house, flue("91-15/16in")}, keeps: []string{house, flue("92in")}, found: "passes 2-15/16in from this flue on paper; it is to be kept 2in off, and the sketch may be 1in out",
	},
	{
		rule: rule.PlateTie, source: "IRC06: a 3-1/2 in plate needs no tie at 1.75 in, and one at 1-7/8 in",
		breaks: []string{job, there("1-7/8in")}, keeps: []string{job, there("1-3/4in")}, found: "1-7/8in wide, of 3-1/2in; more than 50 %",
	},
	{
		rule: rule.JoistBored, source: "IRC11: 2 in at either edge; one cable of 6 mm and 6.35 mm need 12.35 of 113.95 mm",
		with:   instead(`size = "2x6"`+"\n"+`spacing = "16in"`+"\n"+`first`, `depth = "%"`+"\n"+`spacing = "16in"`+"\n"+`first`),
		breaks: instead("%", "113.94mm"), keeps: instead("%", "113.95mm"), found: "would need a hole of 1/2in",
	},
	{
		rule: rule.JoistBored, source: "IRC08: the depth has room for so many holes, here 10 of 12.35 mm",
		with:   edits(limit("joist-bore = 10\njoist-edge = \"0in\""), instead(`size = "2x6"`+"\n"+`spacing = "16in"`+"\n"+`first`, `depth = "%"`+"\n"+`spacing = "16in"`+"\n"+`first`)),
		breaks: instead("%", "123.49mm"), keeps: instead("%", "123.5mm"),
	},
	{
		rule: rule.HatchGuard, source: "NEC07: 6 ft, here 49 in: the hatch begins at X = 217 and the plate's hole is at 168",
		breaks: instead(`guard-strip = "0in"`, `guard-strip = "49-1/16in"`), keeps: instead(`guard-strip = "0in"`, `guard-strip = "49in"`), found: "C1 lies over joists",
	},
	{
		rule: rule.GarageParting, source: "IRC17; a garage that the hole is not beside",
		with: []string{house, "[[wall]]\nid = \"part\"\nstart = { wall = \"south\", at = \"22ft\" }\nrun = \"N 15ft 7in\"\n\n" +
			"[[room]]\nid = \"store\"\nname = \"Store\"\nat = [\"23ft\", \"8ft\"]"},
		breaks: instead(`name = "Study"`, `name = "Old Garage"`), keeps: instead(`name = "Store"`, `name = "Garage"`), found: "Old Garage",
	},
	{
		rule: rule.BendRadius, source: "TIA01: four times, here 6 and 7 times 12.7 mm: (6+1) × 12.7 = 88.9 mm, the depth of a 2x4",
		breaks: ownCable("cat6", "diameter = \"12.7mm\"\nbend = 7"), keeps: ownCable("cat6", "diameter = \"12.7mm\"\nbend = 6"), found: "takes up 4in; the room at the panel, in the depth of the studs, is 3-1/2in",
	},
	{
		rule: rule.PullTension, source: "CAP01: e^(0.5 π/2) = 2.19328 round the bend over the plate: fed in at the ceiling 10 × 2.19328 = 21.9328 N, and from the panel 3-1/2 in aside and 36-5/8 in up with 40 g/m (10 + 0.0174 + 0.3649) × 2.19328 = 22.77 N",
		with:   instead("pull-friction = 0", "pull-friction = 50"),
		breaks: ownCable("cat6", `pull = "21.932N"`), keeps: ownCable("cat6", `pull = "21.933N"`), found: "about 23 N on each cable",
	},
	{
		rule: rule.PullLengthRule, source: "CON07: 30 m, here 40-1/8 in from the panel through the plate",
		breaks: instead(`"100m"`, `"40-1/16in"`), keeps: instead(`"100m"`, `"40-1/8in"`), found: "3ft 4-1/8in in one pull",
	},
	{
		// Pulled down the wall it weighs nothing, so it is fed in at the drop.
		rule: rule.PullStops, source: "CON07; the way has four bends",
		breaks: instead("pull-turns = 12", "pull-turns = 3"), keeps: instead("pull-turns = 12", "pull-turns = 4"), found: "fed in at the drop, it is pulled out and fed on",
	},
	{
		// Of 25 ft, 126 in and 40-1/8 in of the way lie at 20 °C, 133-7/8 in at 60.
		rule: rule.HotChannel, source: "TIA05 and TIA08: 0.4 % to 40 °C, 0.6 % to 60: 1.2 × 3400.425 + 4219.575 = 8300.085 mm; TIA03: 10 m of cords",
		breaks: limit(`channel-length = "18300.084mm"`), keeps: limit(`channel-length = "18300.085mm"`), found: "25ft of cable counts as 27ft 2-3/4in in the attic's 60 °C",
	},
	{
		rule: rule.TenGigabitRule, source: "TSB-155: 55 m, here the 8300.085 mm above",
		breaks: limit(`ten-gigabit-length = "8300.084mm"`), keeps: limit(`ten-gigabit-length = "8300.085mm"`),
	},
	{
		rule: rule.CableHeat, source: "the listing of twisted pair: to 60 °C",
		breaks: instead("sketch_error", "attic_hot = \"60.1C\"\nsketch_error"), keeps: instead("sketch_error", "attic_hot = \"60C\"\nsketch_error"), found: "60.1 °C; it is made for up to 60 °C",
	},
	{
		rule: rule.Sunlight, source: "common practice, no source",
		with: camera(thin+"\nsunlight = %", ""), breaks: instead("%", "false"), keeps: instead("%", "true"),
	},
	{
		rule: rule.LimitedCable, source: "NEC09: less than 6 mm (0.25 in), the smaller number",
		with: camera("diameter = \"%\"", ""), breaks: instead("%", "6mm"), keeps: instead("%", "5.999999mm"), found: "thinner than the larger only",
	},
	{
		rule: rule.Unlisted, source: "NEC08: 50 ft, here 25 ft",
		with:   ownCable("cat6", "jacket = \"outdoor\""),
		breaks: limit(`unlisted-inside = "24ft 11-15/16in"`), keeps: limit(`unlisted-inside = "25ft"`), found: "25ft of own is inside, and never leaves the building",
	},
	{
		rule: rule.AirSpace, source: "NEC 300.22(C)",
		with:   []string{house, thing("duct")},
		breaks: nil, keeps: instead(`cable = "cat6"`, `cable = "cat6-plenum"`), found: "C1 is no plenum cable",
	},
	{
		rule: rule.EntrySeal, source: "common practice, no source",
		breaks: camera(thin, ""), keeps: nil, found: "stays on the building",
	},
	{
		rule: rule.Surge, source: "805.90(A)", with: camera(thin, `exposure = "%"`),
		breaks: instead("%", "aerial"), keeps: instead("%", "none"), found: "hangs in the air",
	},
	{
		rule: rule.Surge, source: "805.90(A)", with: camera(thin, `exposure = "%"`),
		breaks: instead("%", "other building"), keeps: instead("%", "none"), found: "another building",
	},
	{
		rule: rule.ConduitFill, source: "CON05: 3 cables of 0.250 in in ENT 3/4",
		with: []string{house, pipe("ENT", "0.25in")}, breaks: instead("%", "4"), keeps: instead("%", "3"), found: "the 4 cables in it fill 44 % of its 3/4in inside",
	},
	{
		rule: rule.ConduitFill, source: "CON06: 1 cable of 0.340 in in EMT 3/4, two fill 34.1 %",
		with: []string{house, pipe("EMT", "0.34in")}, breaks: instead("%", "2"), keeps: instead("%", "1"), found: "the 2 cables in it fill 35 % of its 13/16in inside; for so many at most 31 %",
	},
	{
		rule: rule.WireGauge, source: "TIA11: 23 AWG in a part for 24-26 AWG fails",
		breaks: ownJack("gauges = [24, 26]"), keeps: ownJack("gauges = [23, 26]"), found: "conductors of 23 AWG; mine takes 24 to 26 AWG",
	},
	{
		rule: rule.WireGauge, source: "a data sheet: a plug for 22 to 24 AWG",
		with: ownJack("gauges = [22, 24]"), breaks: edits(ownCable("cat6", "gauge = 25")), keeps: edits(ownCable("cat6", "gauge = 24")),
	},
	{
		rule: rule.WireStrands, source: "a cabling trade magazine",
		breaks: ownJack("solid = false\nstranded = true"), keeps: ownJack("solid = true\nstranded = true"), found: "solid conductors; mine is for stranded",
	},
	{
		rule: rule.WireStrands, source: "a cabling trade magazine",
		with: ownCable("cat6", "stranded = true"), breaks: ownJack("stranded = false"), keeps: ownJack("stranded = true"), found: "stranded conductors; mine is for solid",
	},
	{
		rule: rule.WireCore, source: "TIA11: a jack for 0.85 to 1.6 mm; data sheets tell plugs apart at 1.1 mm",
		with: ownJack("core = [\"0.85mm\", \"1.1mm\"]"), breaks: ownCable("cat6", "core = \"1.15mm\""), keeps: ownCable("cat6", "core = \"1.1mm\""), found: "1.15 mm over the insulation; mine takes 0.85 to 1.1 mm",
	},
	{
		rule: rule.WireCore, source: "TIA11: a jack from 0.85 mm",
		with: ownJack("core = [\"0.85mm\", \"1.6mm\"]"), breaks: ownCable("cat6", "core = \"0.849mm\""), keeps: ownCable("cat6", "core = \"0.85mm\""),
	},
	{
		// 23 AWG of category 6A in a pass-through plug with a narrow guide.
		rule: rule.PassThrough, source: "common practice, no source; 1.1 mm of a data sheet",
		with:   ownPlug("pass-through-6", "core = [\"0.85mm\", \"1.1mm\"]\njacket = [\"5mm\", \"9mm\"]"),
		breaks: instead(`cable = "cat6"`, `cable = "cat6a"`), keeps: ownCable("cat6a", "core = \"1.1mm\""), found: "1.2 mm over the insulation",
	},
	{
		rule: rule.PlugJacket, source: "TIA11: a plug for 5.5 to 6.5 mm",
		with: ownPlug("plug-6", ""), breaks: ownCable("cat6", "diameter = \"6.51mm\""), keeps: ownCable("cat6", "diameter = \"6.5mm\""), found: "6.51 mm over the jacket; mine takes 5.5 to 6.5 mm",
	},
	{
		rule: rule.PlugJacket, source: "TIA11: a plug for 5.5 to 6.5 mm",
		with: ownPlug("plug-6", ""), breaks: ownCable("cat6", "diameter = \"5.49mm\""), keeps: ownCable("cat6", "diameter = \"5.5mm\""),
	},
	{
		rule: rule.ClassWatts, source: "POE02: class 4 takes 25.5 W",
		with: powered("class = 4\nwatts = %"), breaks: instead("%", "25.501"), keeps: instead("%", "25.5"), found: "class 4 allows 25.5 W",
	},
	{
		rule: rule.ClassWatts, source: "POE02: class 8 takes 71.3 W, the most of all",
		with: edits(powered("watts = %"), limit("bundle-watts = 100")), breaks: instead("%", "71.4"), keeps: instead("%", "71.3"), found: "the highest class allows 71.3 W",
	},
	{
		rule: rule.SwitchVolts, source: "POE03: class 4 has 50 V at the least",
		with:   edits(powered("class = 4"), instead("watts = 500", "watts = 500\nvolts = %")),
		breaks: instead("%", "49.9"), keeps: instead("%", "50"), found: "puts 49.9 V on the cable; class 4 has 50 to 57 V",
	},
	{
		rule: rule.LoopOhms, source: "POE04: 12.5 ohm for class 4; 12.5 m at 1 ohm/m",
		with:   powered("class = 4\nwatts = 5"),
		breaks: resistor("8.973m"), keeps: resistor("8.963m"), found: "12.51 ohm over 41ft 1/2in of cable and cords, warm; class 4 is made for 12.5 ohm; 41ft 1/8in of cable and cords would do",
	},
	{
		// 30 W at 50 V is 0.6 A; 12.5 ohm lose 4.5 W and 7.5 V: 25.5 W at 42.5 V,
		// where all three limits of the class are met at once.
		rule: rule.DeviceVolts, source: "POE02, POE03: 25.5 W, 42.5 V at the device",
		with:   powered("class = 4\nwatts = 25.5"),
		breaks: resistor("8.973m"), keeps: resistor("8.963m"), found: "42.49 V reach the device", also: []rule.ID{rule.LoopOhms, rule.PortWatts},
	},
	{
		// 4 W at 44 V is 1/11 A, and (4 - 3.84) × 121 = 19.36 ohm lose the rest.
		rule: rule.PortWatts, source: "POE01, POE02: class 1 has 4 W for 3.84 W",
		with:   powered("class = 1"),
		breaks: resistor("15.833m"), keeps: resistor("15.823m"), found: "class 1 has 4 W",
	},
	{
		rule: rule.SwitchBudget, source: "POE01: 30 W for class 4, over 12.5 ohm all of it",
		with:   edits(powered("class = 4"), resistor("8.963m")),
		breaks: instead("watts = 500", "watts = 29.999"), keeps: instead("watts = 500", "watts = 30"), found: "1 ports give 30.0 W",
	},
	{
		rule: rule.BundleHeat, source: "725.144 (2020): more than 60 W; class 6 has 60 W, class 7 has 75 W",
		with: powered("count = 2\nclass = %"), breaks: instead("%", "7"), keeps: instead("%", "6"), found: "2 of the 2 cables",
	},
	{
		rule: rule.StudBoreRule, source: "IRC01, here 10 % of 127 mm for a bit of 1/2 in",
		with: edits(limit("stud-bore-bearing = 10"), []string{"[rates]", "[allow]\npatching = true\n\n[rates]"},
			instead("exterior = true\nframe = \"2x4\"", "exterior = true\nframe = \"%\""),
			[]string{job, "[[drop]]\ntag = \"D1\"\nkind = \"wall plate\"\nroom = \"study\"\nwall = \"west\"\nat = \"2ft 8in\"\nheight = \"14in\"\n\n" +
				"[[fixed]]\nid = \"F1\"\ndo = \"avoid\"\nwall = \"west\"\nat = \"12ft 9in\"\nwidth = \"16in\""}),
		breaks: instead("%", "126.9mm"), keeps: instead("%", "127mm"), found: "no bit of the job bores this stud of wall west",
	},
}

func device(along string) string {
	return "[[device]]\nid = \"r1\"\nwall = \"middle\"\nat = \"" + along + "\"\nheight = \"14in\"\nkind = \"receptacle\"\nroom = \"study\"\nfeed = \"down\""
}

// flue stands beside the cable over the joists, which lies at Y = 89.
func flue(south string) string {
	return "[[obstacle]]\nid = \"flue\"\nkind = \"flue\"\nfrom = [\"120in\", \"" + south + "\"]\nto = [\"126in\", \"104in\"]\ntop = \"6ft\""
}

func thing(kind string) string {
	return "[[obstacle]]\nid = \"o1\"\nkind = \"" + kind + "\"\nfrom = [\"2ft\", \"2ft\"]\nto = [\"3ft\", \"3ft\"]\ntop = \"1ft\""
}

// there is a hole in the plate of the middle wall, where nothing goes through.
func there(diameter string) string {
	return "[[fixed]]\nid = \"F1\"\ndo = \"there\"\nwall = \"middle\"\nat = \"10ft 4in\"\ndiameter = \"" + diameter + "\""
}

func pipe(kind, diameter string) string {
	return "[[conduit]]\nid = \"K1\"\nwall = \"east\"\nat = \"8ft\"\nheight = \"12in\"\nroom = \"hall\"\nkind = \"" + kind + "\"\ntrade = \"3/4\"\nholds = [{ diameter = \"" + diameter + "\", count = % }]"
}
