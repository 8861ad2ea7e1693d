package price

// Ids of the terms.
const (
	Walk              ID = "walk"
	CrawlTravel       ID = "crawl"
	ArmTravel         ID = "arm-reach"
	Insulation        ID = "through-insulation"
	CrossJoist        ID = "cross-joist"
	Pull              ID = "pull-cable"
	Cable             ID = "cable"
	BendFree          ID = "bend"
	BendAtHole        ID = "bend-at-hole"
	BoreFromAbove     ID = "bore-plate-from-attic"
	BoreFromBelow     ID = "bore-plate-from-box"
	BoreSoleFromSpace ID = "bore-sole-from-below"
	BoreSoleFromBox   ID = "bore-sole-from-box"
	BoreBlock         ID = "bore-fire-block"
	BoreStud          ID = "bore-stud"
	BoreGable         ID = "bore-gable-wall"
	LiftBoard         ID = "lift-board"
	Rod               ID = "rod-shot"
	RodPush           ID = "rod-push"
	FishConduit       ID = "fish-conduit"
	FishBay           ID = "fish-bay"
	OutOfBack         ID = "out-of-back"
	FishChase         ID = "fish-chase"
	BoreJoist         ID = "bore-joist"
	BoreWall          ID = "bore-wall"
	BoreMasonry       ID = "bore-masonry"
	BoreFloor         ID = "bore-floor"
	PassAttic         ID = "pass-between-attics"
	RacewayRun        ID = "raceway"
	RacewayDoor       ID = "raceway-round-door"
	OutsideRun        ID = "outside-run"
	OutsideAnchors    ID = "outside-anchors"
	OpenSoffit        ID = "open-soffit"
	CutBox            ID = "cut-box-opening"
	CutCeiling        ID = "cut-ceiling-hole"
	MountBox          ID = "mount-box"
	Patch             ID = "patch-board"
	Shift             ID = "move-place"

	Change           ID = "change"
	ChangeMovePlate  ID = "change-move-plate"
	ChangeMoveDevice ID = "change-move-device"
	ChangeMovePower  ID = "change-move-power"
	ChangeLongerBit  ID = "change-longer-bit"
	ChangeLongerRods ID = "change-longer-rods"
	ChangeBaffle     ID = "change-baffle"
	ChangePatching   ID = "change-patching"
	ChangeRaceway    ID = "change-raceway"
	ChangeCrowded    ID = "change-crowded"
)

// Bores are the terms that are paid once for each hole bored side by side.
var Bores = []ID{BoreFromAbove, BoreFromBelow, BoreSoleFromSpace, BoreSoleFromBox, BoreBlock, BoreStud, BoreGable, BoreJoist, BoreWall, BoreMasonry, BoreFloor}

// Terms is the whole table, in the order in which it is printed. Minutes are
// those of a skilled installer in a house that is lived in.
var Terms = []Term{
	{Walk, "Getting about where one can stand", MinutesPerMetre, 300, false, "Laying a bundle while walking on the joists or on decking."},
	{CrawlTravel, "Getting about on hands and knees", MinutesPerMetre, 1000, false, "Laying a bundle while crawling over the joists."},
	{ArmTravel, "Working at arm's length", MinutesPerMetre, 2000, false, "Laying a bundle where only a hand gets in."},
	{Insulation, "Through insulation, added to the above", MinutesPerMetre, 500, false, "Parting it, finding the joists, putting it back."},
	{CrossJoist, "Crossing one joist", MinutesEach, 250, false, "Lifting the bundle over and fixing it."},
	{Pull, "Pulling one cable", MinutesPerMetre, 200, true, "Feeding, pulling and dressing each cable of the bundle."},
	{Cable, "The cable itself", Elsewhere, 0, true, "The mean price per metre of the job's cables, each from its type."},
	{BendFree, "One bend of one cable", MinutesEach, 200, true, "Easing a cable round a corner without pulling it tight."},
	{BendAtHole, "One bend of one cable at a hole", MinutesEach, 500, true, "As above, where the cable leaves a hole."},
	{BoreFromAbove, "One hole in a plate, bored from the attic", MinutesEach, 8_000, false, "Measure, find the plate, bore, fish, seal."},
	{BoreFromBelow, "One hole in a plate, bored from the box opening", MinutesEach, 18_000, false, "The same with a long flexible bit, and no sight of where it comes out."},
	{BoreSoleFromSpace, "One hole in a bottom plate, bored from below", MinutesEach, 7_000, false, "Measure, find the wall over the floor, bore up, fish, seal."},
	{BoreSoleFromBox, "One hole in a bottom plate, bored from the box opening", MinutesEach, 16_000, false, "Down through plate and floor with a long flexible bit, and no sight of where it comes out."},
	{BoreBlock, "One hole in a fire block", MinutesEach, 12_000, false, "Bored with a long flexible bit and sealed again."},
	{BoreStud, "One hole in a stud behind the board", MinutesEach, 6_000, false, "Bored through an opening that is patched."},
	{BoreJoist, "One hole in a joist over a ceiling", MinutesEach, 8_000, false, "Bored through an opening that is patched."},
	{BoreWall, "One hole through a wall from room to room or to the outside", MinutesEach, 10_000, false, "Between the studs, from face to face, sleeved and sealed."},
	{BoreMasonry, "One hole through masonry", MinutesEach, 25_000, false, "With a hammer drill, sleeved and sealed."},
	{BoreFloor, "One hole through a floor, in a channel", MinutesEach, 20_000, false, "Look under it, through finish and boards beside the wall, sleeved, sealed against fire."},
	{BoreGable, "One hole through the wall under a gable", MinutesEach, 20_000, false, "Bored, sleeved and sealed against the weather."},
	{LiftBoard, "Lifting one board of decking", MinutesEach, 6_000, false, "And putting it back."},
	{Rod, "One rod shot", MinutesEach, 8_000, false, "Finding the end, hooking on, pulling back."},
	{RodPush, "Pushing the rods", MinutesPerMetre, 2_000, false, "Joining one more, and the worse aim of a long shot."},
	{FishConduit, "Fishing one conduit", MinutesEach, 6_000, false, "A line through it, and the bundle after the line."},
	{FishBay, "Fishing a bay from plate to plate", MinutesEach, 8_000, false, "A chain down from the attic, caught below; no box opens into the bay."},
	{OutOfBack, "Out of the back of a wall into the attic behind it", MinutesEach, 6_000, false, "A hole through what is there, at the height of the box."},
	{FishChase, "Fishing one storey of a chase", MinutesEach, 5_000, false, "A line down it, and the bundle after the line."},
	{PassAttic, "One way from attic to attic", MinutesEach, 15_000, false, "A hole through the sheathing or a gap that is there, fished and closed again."},
	{RacewayRun, "A channel on the face of a wall", MoneyPerMetre, 14_000, false, "Channel and mounting, its looks counted in."},
	{RacewayDoor, "A channel round one door", MinutesEach, 15_000, false, "Up, over and down the casing: four corners."},
	{OutsideRun, "Fixing a bundle outside along a wall", MinutesPerMetre, 2_500, false, "From a ladder, with clips for out of doors."},
	{OutsideAnchors, "Fixing a bundle outside along brick, stone or stucco", MinutesPerMetre, 5_000, false, "The same, with a hammer drill and anchors."},
	{OpenSoffit, "Opening the soffit where it does not open by itself", MinutesEach, 20_000, false, "Taking a panel down or cutting, and closing."},
	{CutBox, "Cutting one box opening", MinutesEach, 10_000, false, "Mark, check for what is behind, cut, clean up."},
	{CutCeiling, "Cutting one ceiling hole", MinutesEach, 10_000, false, "The same overhead."},
	{MountBox, "Mounting one box or device", MinutesEach, 8_000, false, "Bracket, plate, dressing the cables."},
	{Patch, "Patching one opening in board", MinutesEach, 90_000, false, "Cut, fill, sand and paint, over two visits."},
	{Shift, "Moving a place from where it was wished", MinutesPerMetre, 10_000, false, "So that the wished place wins where it can."},

	{Change, "Changes that would allow a way", Elsewhere, 0, false, "The sum of those below that a way needs."},
	{ChangeMovePlate, "Change: the homeowner agrees to another place", MinutesEach, 15_000, false, "Asking, showing, marking again."},
	{ChangeMoveDevice, "Change: a power device is moved", MoneyEach, 250_000, false, "A licensed electrician's visit."},
	{ChangeMovePower, "Change: a power run is moved", MoneyEach, 60_000, false, "For each stretch between two lines; a licensed electrician's work."},
	{ChangeLongerBit, "Change: a longer bit is bought", MoneyEach, 70_000, false, "With its extension."},
	{ChangeLongerRods, "Change: more rods are bought", MoneyEach, 60_000, false, "One more set."},
	{ChangeBaffle, "Change: an eave baffle is taken out and put back", MinutesEach, 30_000, false, "From the attic or the soffit."},
	{ChangePatching, "Change: patching is allowed in a wall", MinutesEach, 30_000, false, "Asking, and coming back to paint."},
	{ChangeRaceway, "Change: a surface raceway", MoneyPerMetre, 60_000, false, "The last resort: channel on the face of the rooms, its looks counted in."},
	{ChangeCrowded, "Change: a place takes more cables than there is room for", MoneyEach, 1_000_000, false, "So dear that every other way is taken first."},
}
