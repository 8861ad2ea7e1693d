package price

// Ids of the terms.
const (
	Cable ID = "cable"
	Pull  ID = "pull"

	Walk        ID = "walk"
	CrawlTravel ID = "crawl"
	ArmTravel   ID = "arm"
	Insulation  ID = "insulation"
	CrossJoist  ID = "cross-joist"
	LiftBoard   ID = "lift-board"
	Rod         ID = "rod"
	CrossPower  ID = "cross-power"
	BendFree    ID = "bend-free"
	BendAtHole  ID = "bend-hole"

	BoreFromAbove ID = "bore-above"
	BoreFromBelow ID = "bore-below"
	BoreExtra     ID = "bore-extra"
	BoreBlock     ID = "bore-block"
	BoreStud      ID = "bore-stud"
	BoreGable     ID = "bore-gable"

	CutBox     ID = "cut-box"
	CutCeiling ID = "cut-ceiling"
	MountBox   ID = "mount-box"
	OpenSoffit ID = "open-soffit"
	Patch      ID = "patch"
	Shift      ID = "shift"

	Change           ID = "change"
	ChangeLongerRods ID = "change-longer-rods"
	ChangeLongerBit  ID = "change-longer-bit"
	ChangeBaffle     ID = "change-baffle"
	ChangeMovePlate  ID = "change-move-plate"
	ChangePatching   ID = "change-patching"
	ChangeMoveDevice ID = "change-move-device"
	ChangeMovePower  ID = "change-move-power"
	ChangeNewHatch   ID = "change-new-hatch"
	ChangeRaceway    ID = "change-raceway"
)

// Largest values a user may set, in thousandths: ten hours or a hundred
// thousand of the currency's unit at a time, one hour or a thousand of the
// currency's unit per metre.
const (
	mostMinutesEach     = 600_000
	mostMinutesPerMetre = 60_000
	mostMoneyEach       = 100_000_000
	mostMoneyPerMetre   = 1_000_000
)

// Terms is the table of what costs something, in the order it is printed in.
// Minutes are those of a skilled installer in a lived-in house, there and
// back, tools in hand.
var Terms = []Term{
	{Cable, "Cable", Gathered, 0, 0, PerCable, "The cable itself, at the price of its type."},
	{Pull, "Pull cable", MinutesPerMetre, 100, mostMinutesPerMetre, PerCable, "Drawing one cable off the box and along its way."},

	{Walk, "Walk in the attic", MinutesPerMetre, 150, mostMinutesPerMetre, Once, "Getting along with a bundle where one can stand, from joist to joist."},
	{CrawlTravel, "Crawl in the attic", MinutesPerMetre, 500, mostMinutesPerMetre, Once, "Getting along with a bundle on hands and knees."},
	{ArmTravel, "Work at arm's reach", MinutesPerMetre, 1_000, mostMinutesPerMetre, Once, "Laying a bundle, lying down, as far as an arm reaches."},
	{Insulation, "Work through insulation", MinutesPerMetre, 500, mostMinutesPerMetre, Once, "Moving insulation out of the way and putting it back, besides the travel."},
	{CrossJoist, "Cross a joist", MinutesEach, 500, mostMinutesEach, Once, "Laying a bundle over a joist and fastening it there."},
	{LiftBoard, "Lift a board of the decking", MinutesEach, 6_000, mostMinutesEach, Once, "Unscrewing a board of the attic's floor and putting it back."},
	{Rod, "Rod shot", MinutesEach, 8_000, mostMinutesEach, Once, "Joining rods, pushing them home and drawing a bundle back with them."},
	{CrossPower, "Cross a power cable", MinutesEach, 1_000, mostMinutesEach, Once, "Squaring a bundle up to a power cable and holding it off where they cross."},
	{BendFree, "Bend in the open", MinutesEach, 200, mostMinutesEach, PerCable, "Turning one cable where a hand can guide it."},
	{BendAtHole, "Bend at a hole", MinutesEach, 500, mostMinutesEach, PerCable, "Drawing one cable round the edge of a hole without kinking it."},

	{BoreFromAbove, "Bore a plate from above", MinutesEach, 6_000, mostMinutesEach, Once, "Finding the place from marks, clearing it and boring the top plate from the attic."},
	{BoreFromBelow, "Bore a plate from below", MinutesEach, 12_000, mostMinutesEach, Once, "Boring the top plate through the opening of the box with a flexible bit."},
	{BoreExtra, "Bore one more hole", MinutesEach, 3_000, mostMinutesEach, Once, "A second hole beside one that is being bored."},
	{BoreBlock, "Bore a fire block", MinutesEach, 10_000, mostMinutesEach, Once, "Boring a block inside the wall with a long bit, and sealing it again."},
	{BoreStud, "Bore a stud", MinutesEach, 5_000, mostMinutesEach, Once, "Boring a stud through opened board."},
	{BoreGable, "Bore a gable wall", MinutesEach, 12_000, mostMinutesEach, Once, "Boring from the attic through the wall under a gable into the eave."},

	{CutBox, "Cut an opening for a box", MinutesEach, 8_000, mostMinutesEach, Once, "Looking for studs and power, marking and cutting board."},
	{CutCeiling, "Cut a hole in a ceiling", MinutesEach, 8_000, mostMinutesEach, Once, "The same overhead, from a ladder, dust held back."},
	{MountBox, "Mount a box", MinutesEach, 5_000, mostMinutesEach, Once, "Setting the bracket or box and its plate."},
	{OpenSoffit, "Open a soffit", MinutesEach, 15_000, mostMinutesEach, Once, "Taking down a panel or cutting the soffit, from a ladder, and closing it."},
	{Patch, "Patch an opening", MinutesEach, 90_000, mostMinutesEach, Once, "Cutting board out between two bays, setting it back, taping and filling it; not painting."},
	{Shift, "Move off the wished place", MinutesPerMetre, 5_000, mostMinutesPerMetre, Once, "No labour: what it is worth to put a box where it was wished."},

	{Change, "Changes", Gathered, 0, 0, Once, "What would have to be changed before a way is allowed, at the prices below."},
	{ChangeLongerRods, "Longer rods", MoneyEach, 60_000, mostMoneyEach, Once, "Buying or borrowing rods for one shot that is too long."},
	{ChangeLongerBit, "Longer bit", MoneyEach, 60_000, mostMoneyEach, Once, "Buying or borrowing a flexible bit or an extension."},
	{ChangeBaffle, "Take out a baffle", MinutesEach, 20_000, mostMinutesEach, Once, "Taking a ventilation baffle out of a rafter bay and putting it back."},
	{ChangeMovePlate, "Move a place further", MinutesEach, 15_000, mostMinutesEach, Once, "Agreeing with the homeowner on a place further off than the job allows."},
	{ChangePatching, "Allow patching", MinutesEach, 30_000, mostMinutesEach, Once, "Agreeing with the homeowner on an opening that is patched; the patch itself is priced apart."},
	{ChangeMoveDevice, "Move a power device", MoneyEach, 250_000, mostMoneyEach, Once, "A receptacle or switch moved by a licensed electrician."},
	{ChangeMovePower, "Move a power cable", MoneyEach, 300_000, mostMoneyEach, Once, "A power cable in the attic moved by a licensed electrician."},
	{ChangeNewHatch, "New hatch", MoneyEach, 450_000, mostMoneyEach, Once, "A way into a part of the attic that none leads to, framed and trimmed by a carpenter."},
	{ChangeRaceway, "Surface raceway", MoneyPerMetre, 40_000, mostMoneyPerMetre, Once, "Raceway on the surface of rooms, material and labour."},
}
