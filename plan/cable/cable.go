// Package cable holds the kinds of cable a job may use, as data.
//
// Nothing comes in; a Type goes out by its id. Sizes are typical of the kind:
// the jacket of the cable at hand decides, and a job may give its own. Nothing
// here knows where a cable goes.
package cable

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Type is one kind of cable. Zero stands for what is not known only where a
// field says so.
type Type struct {
	ID    string // as a job file names it
	Title string
	// Category is "5e", "6" or "6A" of four-pair cable, otherwise "coax" or
	// "speaker".
	Category string
	// Diameter is over the jacket.
	Diameter measure.Length
	// FourPair is true for four-pair category cable, the kind that the limit
	// for the length of a link is about.
	FourPair bool
	// Conductors is how many insulated conductors there are. The shield of a
	// coaxial cable is none.
	Conductors int
	// Gauge is the American wire gauge of one conductor.
	Gauge int
	// Conductor is the diameter of one bare conductor, of all its strands
	// together if it is Stranded.
	Conductor measure.Length
	Stranded  bool
	// Core is the diameter of one conductor over its insulation.
	Core measure.Length
	// MinBendDiameters is the least inside radius of a bend once the cable is
	// installed, in diameters of the cable.
	MinBendDiameters int
	// MaxPull is the most that it may be pulled with, in thousandths of a
	// newton.
	MaxPull int64
	// Mass is in milligrams per metre: 40 kg/km is 40 000.
	Mass int64
	// Resistance is that of one conductor to direct current at 20 °C, in
	// millionths of an ohm per metre: 6.68 ohm/100 m is 66 800.
	Resistance int64
	// Jacket is what the cable is listed for.
	Jacket Jacket
	// Sunlight is true if the jacket is made for the sun.
	Sunlight bool
	// Cold and Hot bound the temperatures that it may lie in, in thousandths
	// of a degree Celsius.
	Cold, Hot int64
	// Screened is true if there is a metal foil or braid round the pairs or
	// the whole.
	Screened bool
	// PricePerMetre is in thousandths of the currency's unit.
	PricePerMetre int64
	// Sources say where each property comes from.
	Sources [Properties]rule.Source
}

// A Jacket is what a cable is listed for, as printed on it.
type Jacket string

// The jackets. Where they may be laid is for the rules to say.
const (
	CM   Jacket = "CM"   // general use
	CMR  Jacket = "CMR"  // risers, from floor to floor
	CMP  Jacket = "CMP"  // plenums: ducts and spaces that air is moved through
	CMX  Jacket = "CMX"  // limited use
	CATV Jacket = "CATV" // coaxial cable, general use
	CL2  Jacket = "CL2"  // Class 2 circuits, general use
	CL3  Jacket = "CL3"  // Class 3 circuits, general use
	// Outdoor is not listed for buildings at all: outside-plant cable, often
	// filled with gel.
	Outdoor Jacket = "outdoor"
)

// Jackets lists all jackets.
func Jackets() []string {
	return []string{string(CM), string(CMR), string(CMP), string(CMX), string(CATV), string(CL2), string(CL3), string(Outdoor)}
}

// Listed reports whether the cable may be laid in buildings at any length.
func (j Jacket) Listed() bool { return j != Outdoor }

// A Property is one of the values of a Type that has a source.
type Property uint8

// The properties. OfTemperature is both Cold and Hot; OfConductor is its
// diameter and whether it is stranded.
const (
	OfDiameter Property = iota
	OfGauge
	OfConductor
	OfCore
	OfBend
	OfPull
	OfMass
	OfResistance
	OfJacket
	OfSunlight
	OfTemperature
	OfScreen
	OfPrice

	Properties = iota
)

var propertyNames = [Properties]string{
	"diameter", "gauge", "conductor", "core", "bend", "pull", "mass", "resistance",
	"jacket", "sunlight", "temperature", "screen", "price",
}

func (p Property) String() string { return propertyNames[p] }

// Lookup returns the built-in type with this id.
func Lookup(id string) (Type, bool) {
	i := slices.IndexFunc(types, func(t Type) bool { return t.ID == id })
	if i < 0 {
		return Type{}, false
	}
	return types[i], true
}

// IDs lists the ids of all built-in types, in the order of use.
func IDs() []string {
	out := make([]string, len(types))
	for i := range types {
		out[i] = types[i].ID
	}
	return out
}
