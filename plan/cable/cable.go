// Package cable holds the kinds of cable a job may use, as data.
//
// Nothing comes in; a Type goes out by its id. Sizes are typical of the kind:
// the jacket of the cable at hand decides.
package cable

import (
	"slices"

	"topplate/plan/measure"
)

// A Type is one kind of cable.
type Type struct {
	ID    string
	Title string
	// Diameter is over the jacket.
	Diameter measure.Length
	// PricePerMetre is in thousandths of the currency's unit.
	PricePerMetre int64
	Source        string
}

const tenthMM = measure.Millimetre / 10

// types is in the order of use, most used first.
var types = []Type{
	{"cat6", "Category 6, 4-pair, indoor", 60 * tenthMM, 700, "diameter: 5.1-6.0 mm in a published cable table; price from memory"},
	{"cat6-outdoor", "Category 6, 4-pair, outdoor jacket", 65 * tenthMM, 1000, "diameter and price from memory"},
	{"cat6a", "Category 6A, 4-pair, indoor", 86 * tenthMM, 1300, "diameter: 8.6 mm in a published cable table; price from memory"},
	{"cat5e", "Category 5e, 4-pair, indoor", 48 * tenthMM, 400, "diameter: 4.8 mm in a published cable table; price from memory"},
	{"coax6", "Coaxial, series 6", 69 * tenthMM, 600, "diameter and price from memory"},
	{"speaker2", "Speaker, 2-core", 65 * tenthMM, 900, "diameter and price from memory"},
	{"speaker4", "Speaker, 4-core", 80 * tenthMM, 1500, "diameter and price from memory"},
}

// Lookup returns the type with this id.
func Lookup(id string) (Type, bool) {
	i := slices.IndexFunc(types, func(t Type) bool { return t.ID == id })
	if i < 0 {
		return Type{}, false
	}
	return types[i], true
}

// IDs lists the ids of all types.
func IDs() []string {
	out := make([]string, len(types))
	for i, t := range types {
		out[i] = t.ID
	}
	return out
}
