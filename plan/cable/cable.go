// Package cable is the list of cables that a job may ask for.
//
// Nothing comes in. What goes out is, for each type, what routing and the
// schedules need: how thick it is, how tight it may be bent, what a metre of
// it costs. Nothing here knows where a cable goes.
package cable

import "topplate/plan/measure"

// A Type is one type of cable.
type Type struct {
	ID    string // as a job file names it
	Title string
	// Diameter is over the jacket.
	Diameter measure.Length
	// FourPair is true for four-pair category cable, the only kind with a
	// limit to the length of a link.
	FourPair bool
	// MinBendDiameters is the smallest inside radius of an installed bend, in
	// diameters of the cable.
	MinBendDiameters int
	// PricePerMetre is in thousandths of the currency's unit, by common
	// practice, without a source.
	PricePerMetre int64
	// DiameterSource and BendSource say where those two come from. Makers
	// differ: what is printed on the box comes first.
	DiameterSource, BendSource string
}

// A thousandth of an inch, the unit in which jackets are listed.
const mil = measure.Inch / 1000

const (
	makerTable    = "maker's table of riser cable, brand withheld"
	fromMemory    = "from memory"
	tiaBend       = "ANSI/TIA-568.0, four diameters for four-pair unscreened cable, as quoted by installation guides of a university and a cable maker"
	buildingWires = "common practice, no source"
)

// types is the list, in the order it is offered in.
var types = []Type{
	{"cat5e", "Category 5e", 189 * mil, true, 4, 350, makerTable, tiaBend},
	{"cat6", "Category 6", 236 * mil, true, 4, 500, makerTable + ", thickest listed", tiaBend},
	{"cat6a", "Category 6A", 340 * mil, true, 4, 1_000, makerTable, tiaBend},
	{"cat6-outdoor", "Category 6, outdoor", 252 * mil, true, 4, 800, fromMemory, tiaBend},
	{"coax6", "Coaxial cable, series 6", 275 * mil, false, 10, 500, fromMemory, fromMemory},
	{"speaker2", "Speaker cable, 2 conductors", 260 * mil, false, 5, 800, fromMemory, buildingWires},
	{"speaker4", "Speaker cable, 4 conductors", 330 * mil, false, 5, 1_500, fromMemory, buildingWires},
}

// Lookup returns the type with this id.
func Lookup(id string) (Type, bool) {
	for _, t := range types {
		if t.ID == id {
			return t, true
		}
	}
	return Type{}, false
}

// IDs lists the types, in the order they are offered in.
func IDs() []string {
	out := make([]string, len(types))
	for i, t := range types {
		out[i] = t.ID
	}
	return out
}
