// Package connector holds the plugs and jacks that cable ends in, as data.
//
// Nothing comes in; a Type goes out by its id. The names are our own, and the
// ranges are what makers print for parts of the kind: the data sheet of the
// part at hand decides, and a job may give its own. Nothing here holds a cable
// against a part.
package connector

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Kind is one of the two kinds of end.
type Kind uint8

// Kinds of end. A plug is crimped on a cable that goes straight into a device;
// a jack sits in a wall plate or a panel.
const (
	Jack Kind = iota
	Plug
)

var kindNames = [...]string{"jack", "plug"}

func (k Kind) String() string { return kindNames[k] }

// Kinds lists the kinds as a job file names them.
func Kinds() []string { return slices.Clone(kindNames[:]) }

// A Type is one kind of plug or jack.
type Type struct {
	ID    string // as a job file names it
	Title string
	Kind  Kind
	// FourPair is true for the eight positions of four-pair cable.
	FourPair bool
	// Thickest and Thinnest are the American wire gauges of the conductors
	// that it takes. A thicker wire has a lower number.
	Thickest, Thinnest int
	// Solid and Stranded tell which conductors it takes, one of them at
	// least.
	Solid, Stranded bool
	// Core is the diameter that a conductor may have over its insulation, and
	// Jacket that of the cable. A range of zero to zero is not known.
	Core, Jacket measure.Range
	// PassThrough is true for a plug whose conductors come out in front and
	// are cut off there.
	PassThrough bool
	Source      rule.Source
}

// Known reports whether a range of a Type is known.
func Known(r measure.Range) bool { return r.Max > 0 }

// Lookup returns the built-in type with this id.
func Lookup(id string) (Type, bool) {
	i := slices.IndexFunc(types, func(t Type) bool { return t.ID == id })
	if i < 0 {
		return Type{}, false
	}
	return types[i], true
}

// IDs lists the ids of all built-in types.
func IDs() []string {
	out := make([]string, len(types))
	for i := range types {
		out[i] = types[i].ID
	}
	return out
}

// usual are the plug and the jack of each category of cable.
var usual = map[string][2]string{
	"5e":   {Jack: "jack-5e", Plug: "plug-5e"},
	"6":    {Jack: "jack-6", Plug: "plug-6"},
	"6A":   {Jack: "jack-6a", Plug: "plug-6a-wide"},
	"coax": {Jack: "coax-jack", Plug: "coax-plug"},
}

// Usual returns the plug or jack that cable of a category ends in unless the
// job says otherwise. ok is false for a category that has none: speaker cable
// ends under screws.
func Usual(category string, k Kind) (t Type, ok bool) {
	pair, ok := usual[category]
	if !ok {
		return Type{}, false
	}
	return Lookup(pair[k])
}
