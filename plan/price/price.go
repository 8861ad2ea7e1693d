// Package price holds what the work costs: every term that a route is charged
// with, as data, and the arithmetic that turns minutes and money into one
// unit.
//
// The user's own numbers and the hourly rate come in; whole cost units go out.
// A cost unit is one millionth of the currency's unit. Nothing here knows a
// route.
package price

import (
	"math/bits"

	"topplate/plan/measure"
)

// An ID names a cost term in the job file and in the output.
type ID string

// A Unit says what a term's value counts.
type Unit uint8

// Units of a term's value, which is in thousandths of them.
const (
	MinutesEach Unit = iota
	MinutesPerMetre
	MoneyEach
	MoneyPerMetre
)

var unitNames = [...]string{"minutes each", "minutes per metre", "money each", "money per metre"}

func (u Unit) String() string { return unitNames[u] }

// A Term is one thing that costs something.
type Term struct {
	ID       ID
	Title    string
	Unit     Unit
	Value    int64 // thousandths of Unit
	PerCable bool  // paid by every cable; otherwise once for all that share it
	Doc      string
}

// Source is what every default rests on: no published figure was found for
// them.
const Source = "common practice, no source"

// Ids of the terms.
const (
	Walk          ID = "walk"
	CrawlTravel   ID = "crawl"
	ArmTravel     ID = "arm-reach"
	Insulation    ID = "through-insulation"
	CrossJoist    ID = "cross-joist"
	Pull          ID = "pull-cable"
	Cable         ID = "cable"
	BendFree      ID = "bend"
	BendAtHole    ID = "bend-at-hole"
	BoreFromAbove ID = "bore-plate-from-attic"
	BoreFromBelow ID = "bore-plate-from-box"
	BoreBlock     ID = "bore-fire-block"
	BoreStud      ID = "bore-stud"
	BoreGable     ID = "bore-gable-wall"
	LiftBoard     ID = "lift-board"
	Rod           ID = "rod-shot"
	OpenSoffit    ID = "open-soffit"
	CutBox        ID = "cut-box-opening"
	CutCeiling    ID = "cut-ceiling-hole"
	MountBox      ID = "mount-box"
	Patch         ID = "patch-board"
	Shift         ID = "move-place"
	Change        ID = "change"

	ChangeMovePlate  ID = "change-move-plate"
	ChangeMoveDevice ID = "change-move-device"
	ChangeMovePower  ID = "change-move-power"
	ChangeLongerBit  ID = "change-longer-bit"
	ChangeLongerRods ID = "change-longer-rods"
	ChangeBaffle     ID = "change-baffle"
	ChangePatching   ID = "change-patching"
	ChangeRaceway    ID = "change-raceway"
)

// Terms is the whole table, in the order in which it is printed.
var Terms = []Term{
	{Walk, "Getting about where one can stand", MinutesPerMetre, 300, false, "Laying a bundle while walking on the joists or on decking."},
	{CrawlTravel, "Getting about on hands and knees", MinutesPerMetre, 1000, false, "Laying a bundle while crawling over the joists."},
	{ArmTravel, "Working at arm's length", MinutesPerMetre, 2000, false, "Laying a bundle where only a hand gets in."},
	{Insulation, "Through insulation, added to the above", MinutesPerMetre, 500, false, "Parting it, finding the joists, putting it back."},
	{CrossJoist, "Crossing one joist", MinutesEach, 250, false, "Lifting the bundle over and fixing it."},
	{Pull, "Pulling one cable", MinutesPerMetre, 200, true, "Feeding, pulling and dressing each cable of the bundle."},
	{Cable, "The cable itself", MoneyPerMetre, 0, true, "The mean price per metre of the job's cables; set in the cable's record."},
	{BendFree, "One bend of one cable", MinutesEach, 200, true, "Easing a cable round a corner without pulling it tight."},
	{BendAtHole, "One bend of one cable at a hole", MinutesEach, 500, true, "As above, where the cable leaves a hole."},
	{BoreFromAbove, "One hole in a plate, bored from the attic", MinutesEach, 8_000, false, "Measure, find the plate, bore, fish, seal."},
	{BoreFromBelow, "One hole in a plate, bored from the box opening", MinutesEach, 18_000, false, "The same with a long flexible bit, and no sight of where it comes out."},
	{BoreBlock, "One hole in a fire block", MinutesEach, 12_000, false, "Bored with a long flexible bit and sealed again."},
	{BoreStud, "One hole in a stud behind the board", MinutesEach, 6_000, false, "Bored through an opening that is patched."},
	{BoreGable, "One hole through the wall under a gable", MinutesEach, 20_000, false, "Bored, sleeved and sealed against the weather."},
	{LiftBoard, "Lifting one board of decking", MinutesEach, 6_000, false, "And putting it back."},
	{Rod, "One rod shot", MinutesEach, 10_000, false, "Joining the rods, finding the end, pulling back."},
	{OpenSoffit, "Opening the soffit where it does not open by itself", MinutesEach, 20_000, false, "Taking a panel down or cutting, and closing."},
	{CutBox, "Cutting one box opening", MinutesEach, 10_000, false, "Mark, check for what is behind, cut, clean up."},
	{CutCeiling, "Cutting one ceiling hole", MinutesEach, 10_000, false, "The same overhead."},
	{MountBox, "Mounting one box or device", MinutesEach, 8_000, false, "Bracket, plate, dressing the cables."},
	{Patch, "Patching one opening in board", MinutesEach, 90_000, false, "Cut, fill, sand and paint, over two visits."},
	{Shift, "Moving a place from where it was wished", MinutesPerMetre, 10_000, false, "So that the wished place wins where it can."},
	{ChangeMovePlate, "Change: the homeowner agrees to another place", MinutesEach, 15_000, false, "Asking, showing, marking again."},
	{ChangeMoveDevice, "Change: a power device is moved", MoneyEach, 250_000, false, "A licensed electrician's visit."},
	{ChangeMovePower, "Change: a power run is moved", MoneyEach, 60_000, false, "For each stretch between two lines; a licensed electrician's work."},
	{ChangeLongerBit, "Change: a longer bit is bought", MoneyEach, 70_000, false, "With its extension."},
	{ChangeLongerRods, "Change: more rods are bought", MoneyEach, 60_000, false, "One more set."},
	{ChangeBaffle, "Change: an eave baffle is taken out and put back", MinutesEach, 30_000, false, "From the attic or the soffit."},
	{ChangePatching, "Change: patching is allowed in a wall", MinutesEach, 30_000, false, "Asking, and coming back to paint."},
	{ChangeRaceway, "Change: a surface raceway", MinutesPerMetre, 60_000, false, "The last resort: channel on the face of the rooms, its looks counted in."},
}

// A Table is the terms with a user's own values and his rate.
type Table struct {
	value map[ID]int64
	unit  map[ID]Unit
	hour  int64
}

// NewTable makes a table from the defaults, the user's values (thousandths of
// the term's unit, by id) and the rate in thousandths of the currency's unit
// per hour.
func NewTable(own map[string]int64, hour int64) Table {
	t := Table{value: map[ID]int64{}, unit: map[ID]Unit{}, hour: hour}
	for _, term := range Terms {
		t.value[term.ID], t.unit[term.ID] = term.Value, term.Unit
		if v, ok := own[string(term.ID)]; ok {
			t.value[term.ID] = v
		}
	}
	return t
}

// Each is the price of one of a term that is paid by the piece, in cost
// units.
func (t Table) Each(id ID) int64 {
	if u := t.unit[id]; u == MoneyEach || u == MoneyPerMetre {
		return t.value[id] * 1000
	}
	// Thousandths of a minute times thousandths of money an hour, through
	// sixty minutes, are 60 000 000ths of the currency's unit.
	return mulDiv(t.value[id], t.hour, 60)
}

// PerMetre is the price of a length of a term that is paid by length, in cost
// units, to the nearest unit.
func (t Table) PerMetre(id ID, l measure.Length) int64 {
	return mulDiv(t.Each(id), int64(l), int64(measure.Metre))
}

// ByLength is the price of a length at so many thousandths of the currency's
// unit per metre, in cost units.
func ByLength(thousandths int64, l measure.Length) int64 {
	return mulDiv(thousandths*1000, int64(l), int64(measure.Metre))
}

// mulDiv is a*b/c to the nearest whole, for values that are not negative and
// a result that fits.
func mulDiv(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	lo, carry := bits.Add64(lo, uint64(c)/2, 0)
	q, _ := bits.Div64(hi+carry, lo, uint64(c))
	return int64(q)
}

// IDs lists the ids of all terms.
func IDs() []string {
	out := make([]string, len(Terms))
	for i, t := range Terms {
		out[i] = string(t.ID)
	}
	return out
}

// Lookup returns the term with this id.
func Lookup(id ID) (Term, bool) {
	for _, t := range Terms {
		if t.ID == id {
			return t, true
		}
	}
	return Term{}, false
}
