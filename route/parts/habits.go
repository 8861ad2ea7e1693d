package parts

import (
	"fmt"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Habit is a number that a count rests on.
type Habit struct {
	ID     string
	Title  string
	Value  int64
	Least  int64 // of a share: what it comes to at least
	Unit   string
	Source rule.Source
}

// The habits. Lengths are in nanometres.
var (
	jackSpares = Habit{
		ID: "jack-spares", Title: "Spare jacks, of those that are put on", Value: 10, Least: 1, Unit: "per cent", Source: practice,
	}
	plugSpares = Habit{
		ID: "plug-spares", Title: "Spare plugs, of those that are put on: one that is crimped badly is lost",
		Value: 20, Least: 2, Unit: "per cent", Source: practice,
	}
	retermination = habit("re-termination", "Cable that one termination costs", int64(measure.Inch), "nm")
	sealOfPlate   = habit("seal-of-plate", "Fire sealant to one hole in a plate or block", 30, "ml")
	sealOfCeiling = habit("seal-of-ceiling", "Sealant to one opening in a ceiling", 20, "ml")
	sealOfOutside = habit("seal-of-outside", "Sealant to one hole to the outside", 30, "ml")
	tube          = habit("tube", "Sealant in a tube", 300, "ml")
	strapSpacing  = habit("strap-spacing", "Distance of straps along a bundle in the attic", int64(4*measure.Foot), "nm")
	hookSpacing   = Habit{
		ID: "hook-spacing", Title: "Distance of hooks along a bundle under open joists", Value: int64(60 * measure.Inch), Unit: "nm",
		Source: rule.Source{Document: "ANSI/TIA-569", Printed: "1.5 m (5 ft)", Status: rule.FromMemory},
	}
	clipSpacing   = habit("clip-spacing", "Distance of clips along a bundle on an outer wall", int64(24*measure.Inch), "nm")
	channelLength = habit("channel-length", "Length of one piece of channel", int64(2*measure.Metre), "nm")
	cablesToTape  = habit("cables-to-tape", "Cables pulled with a roll of tape", 20, "cables")
	stringOnSpool = habit("string-on-spool", "Pull string on a spool", int64(150*measure.Metre), "nm")
	dripClips     = habit("drip-clips", "Clips to the drip loop of a cable", 2, "pieces")
	shieldsToHole = habit("shields-to-hole", "Steel plates to a hole in the middle of the wood, one for each face", 2, "pieces")
)

func habit(id, title string, value int64, unit string) Habit {
	return Habit{ID: id, Title: title, Value: value, Unit: unit, Source: practice}
}

// Habits lists all habits, in the order in which they are printed.
func Habits() []Habit {
	return []Habit{
		jackSpares, plugSpares, retermination, sealOfPlate, sealOfCeiling, sealOfOutside, tube, strapSpacing, hookSpacing, clipSpacing, channelLength,
		cablesToTape, stringOnSpool, dripClips, shieldsToHole,
	}
}

// share is a share of n, rounded up, but some at least. There is none of none.
func (h Habit) share(n int64) int64 {
	if n == 0 {
		return 0
	}
	return max(h.Least, up(n*h.Value, 100))
}

// up is a/b rounded up, for a that is not negative.
func up(a, b int64) int64 { return (a + b - 1) / b }

// counted writes a number with what is counted.
func counted(n int64, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
