// Package cable holds the kinds of cable a job may use, as data.
//
// Nothing comes in; a Type goes out by its id. Sizes are typical of the kind:
// the jacket of the cable at hand decides. Nothing here knows where a cable
// goes.
package cable

import (
	"slices"

	"topplate/plan/measure"
)

// A Type is one kind of cable.
type Type struct {
	ID    string // as a job file names it
	Title string
	// Diameter is over the jacket.
	Diameter measure.Length
	// FourPair is true for four-pair category cable, the kind that the limit
	// for the length of a link is about.
	FourPair bool
	// MinBendDiameters is the least inside radius of a bend once the cable is
	// installed, in diameters of the cable.
	MinBendDiameters int
	// PricePerMetre is in thousandths of the currency's unit.
	PricePerMetre int64
	// Source says where the diameter, the bend and the price come from.
	Source string
}

const tenthMM = measure.Millimetre / 10

// Where the numbers come from. The table is a maker's, brand withheld; the
// bend is quoted by a university's and a maker's installation guides.
const (
	tableDiameter  = "diameter: published table of riser cable"
	memoryDiameter = "diameter: from memory"
	tiaBend        = "; bend: ANSI/TIA-568.0, as quoted"
	memoryBend     = "; bend: from memory"
	habitPrice     = "; price: common practice, no source"
)

// types is in the order of use, most used first. Where the table gives a
// range, the thickest is taken.
var types = []Type{
	{"cat6", "Category 6, 4-pair, indoor", 60 * tenthMM, true, 4, 700, tableDiameter + tiaBend + habitPrice},
	{"cat6-outdoor", "Category 6, 4-pair, outdoor jacket", 65 * tenthMM, true, 4, 1000, memoryDiameter + tiaBend + habitPrice},
	{"cat6a", "Category 6A, 4-pair, indoor", 86 * tenthMM, true, 4, 1300, tableDiameter + tiaBend + habitPrice},
	{"cat5e", "Category 5e, 4-pair, indoor", 48 * tenthMM, true, 4, 400, tableDiameter + tiaBend + habitPrice},
	{"coax6", "Coaxial, series 6", 69 * tenthMM, false, 10, 600, memoryDiameter + memoryBend + habitPrice},
	{"speaker2", "Speaker, 2-core", 65 * tenthMM, false, 5, 900, memoryDiameter + memoryBend + habitPrice},
	{"speaker4", "Speaker, 4-core", 80 * tenthMM, false, 5, 1500, memoryDiameter + memoryBend + habitPrice},
}

// Lookup returns the type with this id.
func Lookup(id string) (Type, bool) {
	i := slices.IndexFunc(types, func(t Type) bool { return t.ID == id })
	if i < 0 {
		return Type{}, false
	}
	return types[i], true
}

// IDs lists the ids of all types, in the order of use.
func IDs() []string {
	out := make([]string, len(types))
	for i := range types {
		out[i] = types[i].ID
	}
	return out
}
