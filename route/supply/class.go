package supply

// A Class is what a device asks the switch for when it is plugged in.
type Class struct {
	Number int
	// Type is the type of system that offers the class at the least.
	Type int
	// SwitchWatts is what the switch must give, and DeviceWatts what the device
	// may take at its end.
	SwitchWatts, DeviceWatts float64
	// LeastVolts and MostVolts are at the switch; DeviceVolts is the least that
	// a device must work with.
	LeastVolts, MostVolts, DeviceVolts float64
	// Pairsets is how many carry the power: 1 on two pairs, 2 on four.
	Pairsets int
	// LoopOhms is the largest loop resistance of a pairset that the class is
	// made for.
	LoopOhms float64
	// Where the watts, the volts and the loop resistance come from.
	Watts, Volts, Loop Source
}

// Where the table comes from. The loop resistances also reproduce the device
// watts: SwitchWatts less the loss at LeastVolts.
var (
	classWatts = Source{
		Document: "IEEE Std 802.3bt-2018 (classes 0 to 4: 802.3at-2009)",
		QuotedBy: "a published class table and a switch manual", Status: AsQuoted,
	}
	classVolts = Source{
		Document: "IEEE Std 802.3bt-2018 (types 1 and 2: 802.3at-2009)",
		QuotedBy: "a switch manual", Status: AsQuoted,
	}
	classLoop = Source{
		Document: "IEEE Std 802.3at-2009", QuotedBy: "a note on power loss in cable", Status: AsQuoted,
	}
	classLoop4 = Source{
		Document: "IEEE Std 802.3bt-2018", QuotedBy: "a page of power equations (0.125 ohm per metre and pairset)", Status: AsQuoted,
	}
)

// classes is in the order of their numbers. Class 0 is a device that did not
// say: the switch gives it what class 3 gets.
var classes = []Class{
	{0, 1, 15.4, 12.95, 44, 57, 37, 1, 20, classWatts, classVolts, classLoop},
	{1, 1, 4, 3.84, 44, 57, 37, 1, 20, classWatts, classVolts, classLoop},
	{2, 1, 7, 6.49, 44, 57, 37, 1, 20, classWatts, classVolts, classLoop},
	{3, 1, 15.4, 12.95, 44, 57, 37, 1, 20, classWatts, classVolts, classLoop},
	{4, 2, 30, 25.5, 50, 57, 42.5, 1, 12.5, classWatts, classVolts, classLoop},
	{5, 3, 45, 40, 50, 57, 42.5, 2, 12.5, classWatts, classVolts, classLoop4},
	{6, 3, 60, 51, 50, 57, 42.5, 2, 12.5, classWatts, classVolts, classLoop4},
	{7, 4, 75, 62, 52, 57, 41.1, 2, 12.5, classWatts, classVolts, classLoop4},
	{8, 4, 90, 71.3, 52, 57, 41.1, 2, 12.5, classWatts, classVolts, classLoop4},
}

// Classes lists the classes in the order of their numbers.
func Classes() []Class { return append([]Class(nil), classes...) }

// LookupClass returns the class with this number, 0 to 8.
func LookupClass(number int) (Class, bool) {
	if number < 0 || number >= len(classes) {
		return Class{}, false
	}
	return classes[number], true
}
